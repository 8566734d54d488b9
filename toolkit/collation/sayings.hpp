#pragma once
// What leads say, in a form that compares fast: numbers for words, characters and states.

#include <algorithm>
#include <boost/container/small_vector.hpp>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/collation/sides.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::collating {

// Most lists of a lead are short, and a comparison of large editions asks for millions of them:
// they lie where the lead lies.
template <class T, std::size_t Usual>
using ShortList = boost::container::small_vector<T, Usual>;
using Numbers = std::span<std::uint64_t const>;
template <std::size_t Usual>
[[nodiscard]] Numbers numbers(ShortList<std::uint64_t, Usual> const& list) {
  return {list.data(), list.size()};
}

// One atom.  Texts are stood for by text_number(), equal in both editions for equal texts.
struct SaidAtom {
  std::uint64_t character{};
  ShortList<std::uint64_t, 1> states;  // sorted; empty for numbers
  ShortList<std::uint64_t, 5> words;   // of an opaque atom's states, sorted, with repeats
  ShortList<Interval, 1> ranges;       // the extreme ones
  std::uint64_t word_bits{};           // a bit for each word: no bit in common, no word in common
  std::uint64_t predicate{};           // of everything in the atom
  bool opaque{false};
  bool negated{false};
};

struct SaidStatement {
  ShortList<SaidAtom, 1> atoms;
  std::uint64_t predicate{};  // of the atoms in any order; strength and exceptions left out
};

struct SaidLead {
  std::vector<SaidStatement> statements;
  ShortList<std::uint64_t, 12> words;  // of the whole text, sorted, with repeats
  std::uint64_t text{};                // of the normalised text
  std::uint64_t predicate{};           // of the statements in any order, strengths included
};

[[nodiscard]] SaidLead read_saying(Lead const& lead);

// What must hold where one lead follows the other.
[[nodiscard]] SaidLead both_said(SaidLead first, SaidLead const& second);

// By row of lead.
[[nodiscard]] std::vector<SaidLead> read_sayings(Edition const& edition);

// Agreement of two statements: 1 for the same predicate; the same character with other states or
// limits at least a half; opaque statements by their words.  How firmly it is said is no part of
// it: a character that became an exception note is still the same character.
[[nodiscard]] Grade agreement(SaidStatement const& a, SaidStatement const& b);

// Agreement of what two leads say: statements matched best first, and (a quarter; an eighth where
// several statements are all the same) the words.  Symmetric; `whole` iff both the predicates and
// the words are the same.
[[nodiscard]] Grade agreement(SaidLead const& a, SaidLead const& b);
// The same for who has agreement_of_statements() of the two.
[[nodiscard]] Grade agreement(SaidLead const& a, SaidLead const& b, Grade of_statements);

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
template <class List>
void add_words(std::string_view text, List& words) {
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find(' ', begin), text.size());
    if (end > begin) words.push_back(text_number(text.substr(begin, end - begin)));
    begin = end + 1;
  }
}

// Dice's coefficient of two sorted multisets: twice the common part over the sum; two empty ones
// agree.
[[nodiscard]] Grade overlap_of_words(Numbers a, Numbers b);

}  // namespace keydrift::collating
