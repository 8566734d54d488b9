#include "keydrift/formats/printed_slips.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostSlips = 2;  // in one word

// What text layers confuse, either for the other.
constexpr std::array<std::pair<std::string_view, std::string_view>, 45> kSlips{
    {{"n", "u"},   {"rn", "m"},  {"m", "in"},  {"m", "ni"},  {"m", "nn"}, {"n", "ri"}, {"n", "ii"},
     {"u", "ii"},  {"u", "li"},  {"h", "b"},   {"h", "li"},  {"b", "li"}, {"c", "e"},  {"e", "o"},
     {"c", "o"},   {"a", "o"},   {"a", "u"},   {"i", "l"},   {"l", "t"},  {"i", "t"},  {"i", "j"},
     {"t", "f"},   {"f", "s"},   {"fi", "fl"}, {"u", "ll"},  {"u", "il"}, {"d", "cl"}, {"w", "vv"},
     {"v", "y"},   {"g", "q"},   {"r", "v"},   {"ae", "oe"}, {"k", "h"},  {"a", "n"},  {"hi", "lu"},
     {"id", "ul"}, {"tt", "u"},  {"y", "j"},   {"ti", "n"},  {"il", "d"}, {"k", "lc"}, {"d", "ci"},
     {"ae", "ce"}, {"ae", "cc"}, {"ae", "se"}}};

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

// Upright strokes of a letter; 0 for others.
std::size_t strokes_of(char letter) {
  switch (letter) {
    case 'm':
    case 'w':
      return 3;
    case 'n':
    case 'u':
    case 'v':
      return 2;
    case 'i':
    case 'j':
    case 'l':
    case 't':
    case 'r':
    case 'f':
      return 1;
    default:
      return 0;
  }
}

constexpr std::size_t kMostRegrouped = 2;  // letters in a row

// All of the letters' strokes; 0 where one is none of them.
std::size_t strokes_of(std::string_view letters) {
  std::size_t strokes = 0;
  for (char const letter : letters) {
    auto const own = strokes_of(letter);
    if (own == 0) return 0;
    strokes += own;
  }
  return strokes;
}

// "vi" for m, "tm" for un: as many strokes in one place, parted into letters otherwise.
bool are_regrouped(std::string_view word, std::string_view other) {
  constexpr std::size_t kShortest = 6;  // letters; shorter words are alike by chance
  if (word.size() < kShortest || other.size() < kShortest) return false;
  while (!word.empty() && !other.empty() && word.front() == other.front()) {
    word.remove_prefix(1);
    other.remove_prefix(1);
  }
  while (!word.empty() && !other.empty() && word.back() == other.back()) {
    word.remove_suffix(1);
    other.remove_suffix(1);
  }
  if (word.empty() || other.empty()) return false;
  if (word.size() > kMostRegrouped || other.size() > kMostRegrouped) return false;
  auto const strokes = strokes_of(word);
  if (strokes == 0 || strokes != strokes_of(other)) return false;
  // "lu" for "ru" is another letter, and no other parting.
  return word.size() != other.size() || strokes_of(word.front()) != strokes_of(other.front());
}

// Hashes of the word and of those that one slip makes of it.
std::vector<std::size_t> hashes_near(std::string_view word) {
  std::hash<std::string_view> const hash;
  std::vector<std::size_t> near{hash(word)};
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
    // The strokes of one letter or two in place of these.
    for (std::size_t size = 1; size <= kMostRegrouped && at + size <= word.size(); ++size) {
      auto const strokes = strokes_of(word.substr(at, size));
      if (strokes == 0) continue;
      slipped.assign(word.substr(0, at)).append(1, static_cast<char>('0' + strokes));
      slipped.append(word.substr(at + size));
      near.push_back(hash(slipped));
    }
  }
  return near;
}

}  // namespace

bool may_be_misread(std::string_view word, std::string_view other) {
  return word != other && (differ_by_slips(word, other, kMostSlips) || are_regrouped(word, other));
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
