#include "keydrift/formats/lexicon_parts.hpp"

#include <array>
#include <charconv>
#include <span>
#include <utility>

#include "keydrift/formats/wording.hpp"
#include "keydrift/key/fold.hpp"

namespace keydrift::tables {
namespace {

constexpr std::array<std::string_view, 3> kKinds{"categorical", "measurement", "count"};
constexpr std::array<std::string_view, 4> kDifficulties{"naked eye", "hand lens", "microscope",
                                                        "dissection"};

void report_word(std::string code, std::string const& word, std::string_view what,
                 std::span<std::string_view const> known, Place place, std::string_view file,
                 std::vector<Finding>& findings) {
  findings.push_back({std::move(code),
                      Severity::error,
                      std::string{file},
                      place,
                      word,
                      "\"" + word + "\" is not a " + std::string{what},
                      suggestion(word, known, "write one of " + quoted_list(known)),
                      {}});
}

}  // namespace

CharacterKind read_kind(std::string const& word, Place place, std::string_view file,
                        std::vector<Finding>& findings) {
  if (word.empty()) return CharacterKind::categorical;
  if (auto const kind = character_kind_from_word(fold_words(word))) return *kind;
  report_word("unknown-kind", word, "kind of character", kKinds, place, file, findings);
  return CharacterKind::categorical;
}

Difficulty read_difficulty(std::string const& word, Place place, std::string_view file,
                           std::vector<Finding>& findings) {
  if (word.empty()) return Difficulty::naked_eye;
  if (auto const difficulty = difficulty_from_word(fold_words(word))) return *difficulty;
  report_word("unknown-difficulty", word, "difficulty", kDifficulties, place, file, findings);
  return Difficulty::naked_eye;
}

std::string shortest_number(double number) {
  std::array<char, 32> digits{};
  auto const end = std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr;
  return {digits.data(), end};
}

}  // namespace keydrift::tables
