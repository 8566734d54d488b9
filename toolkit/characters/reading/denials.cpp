#include "keydrift/characters/reading/denials.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::reading {
namespace {

using StateWords = std::set<std::string_view>;

StateWords state_words_of(std::string_view text) {
  StateWords words;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find(' ', begin), text.size());
    words.insert(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return words;
}

// "Flat or rolled" is not denied by "not flat".
bool leaves_a_choice(StateWords const& words) {
  return std::any_of(words.begin(), words.end(),
                     [](std::string_view word) { return word_info(word, "").is(kOr); });
}

bool denies_itself(StateWords const& words) {
  static constexpr std::array<std::string_view, 12> kDenials{"not",   "never", "without", "lacking",
                                                             "nicht", "ohne",  "kein",    "keine",
                                                             "pas",   "sans",  "sin",     "sem"};
  return std::any_of(words.begin(), words.end(),
                     [](std::string_view word) { return is_one_of(kDenials, word); });
}

}  // namespace

std::map<std::uint32_t, std::vector<std::uint32_t>> denied_besides(
    std::vector<std::pair<std::uint32_t, std::uint32_t>> contrasted,
    std::vector<std::string_view> const& words) {
  std::sort(contrasted.begin(), contrasted.end());
  contrasted.erase(std::unique(contrasted.begin(), contrasted.end()), contrasted.end());
  std::map<std::uint32_t, std::vector<std::uint32_t>> besides;
  for (auto at = contrasted.begin(); at != contrasted.end();) {
    auto const denied = at->first;
    auto const end =
        std::find_if(at, contrasted.end(), [&](auto const& pair) { return pair.first != denied; });
    bool const one_thing = end == at + 1;
    auto const denied_words = state_words_of(words[denied]);
    for (; at != end; ++at) {
      if (at->second == denied) continue;
      auto const other = state_words_of(words[at->second]);
      bool const finer =
          !denies_itself(other) &&
          std::includes(other.begin(), other.end(), denied_words.begin(), denied_words.end());
      if ((one_thing || finer) && !leaves_a_choice(other)) {
        besides[denied].push_back(at->second);
      }
    }
  }
  return besides;
}

}  // namespace keydrift::reading
