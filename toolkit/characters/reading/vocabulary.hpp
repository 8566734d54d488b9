#pragma once
// The words that qualify a statement, in the languages that keys are printed in.
//
// The classes of hedges, bounds, exclusions and conditions are common practice; what each word does
// is said beside its table.  No probability is attached to any of them.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::reading {

// What a phrase does to the words around it.
enum class Sense : std::uint8_t {
  majority,   // "usually": the contrary occurs
  minority,   // "rarely": this occurs beside something commoner
  nearly,     // "±", "almost": not quite; in front of a number, approximately
  about,      // "ca.": in front of a number only
  exception,  // "except in"
  condition,  // "unless", "if so"
  at_least,   // in front of a number
  at_most,
  more_than,
  less_than,
  between,
  or_more,  // behind a number
  or_less,
  times,     // "times", "×"
  negation,  // "not"
  without,   // "without", "lacking"
  either,
  both,      // "and/or"
  note,      // "Note:"
  anaphora,  // "not as above": the contrary of the sibling leads
  sex,       // limits; Phrase::value is the canonical value
  life_stage,
  material,
  season,
};

struct Sensed {
  Sense sense{};
  std::string_view value{};   // canonical value of a limit
  bool needs_context{false};  // limits: only beside "in", "when", ":" … ("male flowers" is none)
};

// Classes of single words, as bits.
enum WordClass : std::uint32_t {
  kArticle = 1U << 0,
  kFunction = 1U << 1,  // carries no content of its own (articles are function words, too)
  kOr = 1U << 2,
  kAnd = 1U << 3,
  kTo = 1U << 4,
  kOf = 1U << 5,
  kPreposition = 1U << 6,        // begins a phrase that belongs to the word in front of it
  kDegree = 1U << 7,             // "deeply", "rather"
  kPart = 1U << 8,               // names a part of an organism
  kPosition = 1U << 9,           // "upper", "basal": makes another part of the part behind it
  kNumeral = 1U << 10,           // "three"
  kAbbreviation = 1U << 11,      // a full stop behind it does not end a clause
  kSoftAbbreviation = 1U << 12,  // … unless a capital follows
  kLabelled = 1U << 13,          // numbered parts: "tergite 2" names one
  kFigure = 1U << 14,            // "fig", "plate"
  kCopula = 1U << 15,
  kWith = 1U << 16,
  kNumbered = 1U << 17,  // parts that stand in a row: "tergite 2", "tergites 2–4" name some of them
};

struct WordInfo {
  std::uint32_t classes{};
  double numeral{};              // of kNumeral
  std::string_view dimension{};  // "length" for "long", "longer", "length"; else empty
  int comparative{};             // +1 "longer", -1 "shorter", 0 none
  [[nodiscard]] bool is(std::uint32_t wanted) const { return (classes & wanted) != 0; }
};

// `language` is BCP 47; it decides words like "o" (or) and "bis" (to) that mean other things
// elsewhere.  Unknown words have no class.
[[nodiscard]] WordInfo word_info(std::string_view folded, std::string_view language);

// An article of any language that keys are read in: nothing that words are told apart by.
[[nodiscard]] bool is_article(std::string_view folded);

// 3 for "third" and "thirds"; 0 for what parts nothing.
[[nodiscard]] double denominator(std::string_view folded);

struct Phrased {
  Sensed meaning;
  std::uint32_t end{};  // behind its last token
};

// Where a search for qualifying phrases that begin with this token starts; kNoPhrase when none
// does.
inline constexpr std::uint32_t kNoPhrase = 0xFFFFFFFF;
[[nodiscard]] std::uint32_t phrase_root(Token const& token);

}  // namespace keydrift::reading
