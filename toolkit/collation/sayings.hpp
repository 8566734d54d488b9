#pragma once
// What leads say, in a form that compares fast: numbers for words, characters and states.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/collation/sides.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::collating {

// One atom.  Texts are stood for by text_number(), equal in both editions for equal texts.
struct SaidAtom {
  std::uint64_t character{};
  std::vector<std::uint64_t> states;  // sorted; empty for numbers
  std::vector<std::uint64_t> words;   // of an opaque atom's states, sorted, with repeats
  std::vector<Interval> ranges;       // the extreme ones
  std::uint64_t predicate{};          // of everything in the atom
  bool opaque{false};
  bool negated{false};
};

struct SaidStatement {
  std::vector<SaidAtom> atoms;
  std::uint64_t predicate{};  // of the atoms in any order; strength and exceptions left out
};

struct SaidLead {
  std::vector<SaidStatement> statements;
  std::vector<std::uint64_t> words;  // of the whole text, sorted, with repeats
  std::uint64_t text{};              // of the normalised text
  std::uint64_t predicate{};         // of the statements in any order, strengths included
};

[[nodiscard]] SaidLead read_saying(Lead const& lead);

// By row of lead.
[[nodiscard]] std::vector<SaidLead> read_sayings(Edition const& edition);

// Agreement of two statements: 1 for the same predicate; the same character with other states or
// limits at least a half; opaque statements by their words.  How firmly it is said is no part of
// it: a character that became an exception note is still the same character.
[[nodiscard]] Grade agreement(SaidStatement const& a, SaidStatement const& b);

// Agreement of what two leads say: statements matched best first, and (a quarter) the words.
// Symmetric; `whole` iff both the predicates and the words are the same.
[[nodiscard]] Grade agreement(SaidLead const& a, SaidLead const& b);

// Of the statements alone; of the words where a lead has none.
[[nodiscard]] Grade agreement_of_statements(SaidLead const& a, SaidLead const& b);

// The statements of two leads that this agreement matches with each other, by their indexes in
// SaidLead::statements, best first.
struct SaidPair {
  std::uint32_t a{};
  std::uint32_t b{};
  Grade grade{};
};
[[nodiscard]] std::vector<SaidPair> matched_statements(SaidLead const& a, SaidLead const& b);

// normalised_words() of a lead's text without the inline marks ("{lip: white}"), which are no part
// of the words.
[[nodiscard]] std::string words_without_marks(std::string_view text);

// Appends the number of each word of a text that normalised_words() has been through.
void add_words(std::string_view text, std::vector<std::uint64_t>& words);

// Dice's coefficient of two sorted multisets: twice the common part over the sum; two empty ones
// agree.
[[nodiscard]] Grade overlap_of_words(std::vector<std::uint64_t> const& a,
                                     std::vector<std::uint64_t> const& b);

}  // namespace keydrift::collating
