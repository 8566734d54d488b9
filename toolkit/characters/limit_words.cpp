#include "keydrift/characters/limit_words.hpp"

#include "keydrift/characters/reading.hpp"

namespace keydrift {

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
