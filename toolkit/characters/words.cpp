#include "keydrift/characters/lexicon.hpp"

namespace keydrift {

char const* to_word(CharacterKind kind) {
  switch (kind) {
    case CharacterKind::categorical: return "categorical";
    case CharacterKind::measurement: return "measurement";
    case CharacterKind::count: return "count";
  }
  return "categorical";
}

std::optional<CharacterKind> character_kind_from_word(std::string_view word) {
  for (auto const kind :
       {CharacterKind::categorical, CharacterKind::measurement, CharacterKind::count}) {
    if (word == to_word(kind)) return kind;
  }
  return std::nullopt;
}

char const* to_word(Difficulty difficulty) {
  switch (difficulty) {
    case Difficulty::naked_eye: return "naked eye";
    case Difficulty::hand_lens: return "hand lens";
    case Difficulty::microscope: return "microscope";
    case Difficulty::dissection: return "dissection";
  }
  return "naked eye";
}

std::optional<Difficulty> difficulty_from_word(std::string_view word) {
  for (auto const difficulty : {Difficulty::naked_eye, Difficulty::hand_lens,
                                Difficulty::microscope, Difficulty::dissection}) {
    if (word == to_word(difficulty)) return difficulty;
  }
  return std::nullopt;
}

double cost_of(Difficulty difficulty) {
  switch (difficulty) {
    case Difficulty::naked_eye: return 1;
    case Difficulty::hand_lens: return 2;
    case Difficulty::microscope: return 4;
    case Difficulty::dissection: return 8;
  }
  return 1;
}

}  // namespace keydrift
