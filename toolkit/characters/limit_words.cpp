#include "keydrift/characters/limit_words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <utility>

#include "keydrift/characters/reading.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;

bool has_limit_word(std::string_view words, std::string_view word) {
  for (auto at = words.find(word); at != std::string_view::npos; at = words.find(word, at + 1)) {
    auto const end = at + word.size();
    bool const begins = at == 0 || words[at - 1] == ' ';
    if (begins && (end == words.size() || words[end] == ' ')) return true;
  }
  return false;
}

}  // namespace

bool measures_both_sexes(Statement const& statement) {
  std::size_t ranges = 0;
  for (auto const& atom : statement.any_of) ranges += atom.ranges.size();
  if (ranges < 2) return false;
  std::string_view const text = statement.text;
  auto const holds = [text](std::string_view sign) {
    return text.find(sign) != std::string_view::npos;
  };
  if (holds("♂") && holds("♀")) return true;
  static constexpr std::array kPairs{
      std::pair{"male"sv, "female"sv},       std::pair{"males"sv, "females"sv},
      std::pair{"männchen"sv, "weibchen"sv}, std::pair{"mâle"sv, "femelle"sv},
      std::pair{"macho"sv, "hembra"sv},      std::pair{"macho"sv, "fêmea"sv}};
  auto words = normalised_words(text);
  std::replace(words.begin(), words.end(), ':', ' ');
  return std::any_of(kPairs.begin(), kPairs.end(), [&words](auto const& pair) {
    return has_limit_word(words, pair.first) && has_limit_word(words, pair.second);
  });
}

std::string canonical_limit(LimitKind kind, std::string_view value) {
  auto word = normalised_words(value);
  if (word == "undetermined" || word == "indet" || word == "unknown") return {};
  if (kind == LimitKind::sex) {
    if (value == "♂" || value == "♂♂" || word == "m" || word == "males") return "male";
    if (value == "♀" || value == "♀♀" || word == "f" || word == "females") return "female";
  }
  if (kind == LimitKind::life_stage) {
    if (word == "adults" || word == "imago") return "adult";
    if (word == "larvae") return "larva";
    if (word == "juveniles") return "juvenile";
  }
  return word;
}

}  // namespace keydrift
