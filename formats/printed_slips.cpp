#include "keydrift/formats/printed_slips.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostSlips = 2;  // in one word

// What text layers confuse, either for the other.
constexpr std::array<std::pair<std::string_view, std::string_view>, 40> kSlips{
    {{"n", "u"},   {"rn", "m"}, {"m", "in"},  {"m", "ni"},  {"m", "nn"}, {"n", "ri"}, {"n", "ii"},
     {"u", "ii"},  {"u", "li"}, {"h", "b"},   {"h", "li"},  {"b", "li"}, {"c", "e"},  {"e", "o"},
     {"c", "o"},   {"a", "o"},  {"a", "u"},   {"i", "l"},   {"l", "t"},  {"i", "t"},  {"i", "j"},
     {"t", "f"},   {"f", "s"},  {"fi", "fl"}, {"u", "ll"},  {"u", "il"}, {"d", "cl"}, {"w", "vv"},
     {"v", "y"},   {"g", "q"},  {"r", "v"},   {"ae", "oe"}, {"k", "h"},  {"a", "n"},  {"hi", "lu"},
     {"id", "ul"}, {"tt", "u"}, {"y", "j"},   {"ti", "n"},  {"il", "d"}}};

bool differ_by_slips(std::string_view one, std::string_view other, std::size_t left) {
  while (!one.empty() && !other.empty() && one.front() == other.front()) {
    // "fi" and "fl" begin alike: what follows tells.
    one.remove_prefix(1);
    other.remove_prefix(1);
  }
  if (one.empty() || other.empty()) return one.empty() && other.empty();
  if (left == 0) return false;
  return std::any_of(kSlips.begin(), kSlips.end(), [&](auto const& slip) {
    for (auto const& [from, to] : {slip, std::pair{slip.second, slip.first}}) {
      bool const here = one.starts_with(from) && other.starts_with(to);
      if (here && differ_by_slips(one.substr(from.size()), other.substr(to.size()), left - 1)) {
        return true;
      }
    }
    return false;
  });
}

// The word by its strokes: scans confuse letters of as many upright ones ("m" for "vi", "un" for
// "tm"), and round or tall letters with their like.
std::string strokes_of(std::string_view word) {
  std::string strokes;
  for (char const c : word) {
    switch (c) {
      case 'm':
      case 'w':
        strokes += "iii";
        break;
      case 'n':
      case 'u':
      case 'v':
        strokes += "ii";
        break;
      case 'i':
      case 'j':
      case 'l':
      case 't':
      case 'r':
      case 'f':
        strokes += 'i';
        break;
      case 'b':
      case 'h':
        strokes += 'b';
        break;
      case 'c':
      case 'e':
      case 'o':
        strokes += 'o';
        break;
      default:
        strokes += c;
    }
  }
  return strokes;
}

bool have_like_strokes(std::string_view word, std::string_view other) {
  constexpr std::size_t kShortest = 6;  // letters; shorter words are alike by chance
  return word.size() >= kShortest && other.size() >= kShortest &&
         strokes_of(word) == strokes_of(other);
}

// Hashes of the word and of those that one slip makes of it.
std::vector<std::size_t> hashes_near(std::string_view word) {
  std::hash<std::string_view> const hash;
  std::vector<std::size_t> near{hash(word), hash("=" + strokes_of(word))};
  std::string slipped;
  auto const slip_at = [&](std::size_t at, std::string_view from, std::string_view to) {
    if (!word.substr(at).starts_with(from)) return;
    slipped.assign(word.substr(0, at)).append(to).append(word.substr(at + from.size()));
    near.push_back(hash(slipped));
  };
  for (std::size_t at = 0; at < word.size(); ++at) {
    for (auto const& [one, other] : kSlips) {
      slip_at(at, one, other);
      slip_at(at, other, one);
    }
  }
  return near;
}

}  // namespace

bool may_be_misread(std::string_view word, std::string_view other) {
  return word != other &&
         (differ_by_slips(word, other, kMostSlips) || have_like_strokes(word, other));
}

void MisreadWords::add(std::string word) {
  for (auto const hash : hashes_near(word)) {
    near_[hash].push_back(static_cast<std::uint32_t>(words_.size()));
  }
  words_.push_back(std::move(word));
}

std::vector<std::size_t> MisreadWords::like(std::string_view other) const {
  std::vector<std::size_t> found;
  for (auto const hash : hashes_near(other)) {
    auto const near = near_.find(hash);
    if (near != near_.end()) found.insert(found.end(), near->second.begin(), near->second.end());
  }
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  std::erase_if(found, [&](std::size_t one) { return !may_be_misread(words_[one], other); });
  return found;
}

}  // namespace keydrift::printed
