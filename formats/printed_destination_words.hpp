#pragma once
// The words that a lead's destination is printed with, and what they may begin or end.  Inner
// header of formats.

#include <algorithm>
#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {

// Words are counted from 0; beyond the last one all are empty.  Views `text`, which must outlive
// it.
class DestinationWords {
 public:
  explicit DestinationWords(std::string_view text) : words_{words_of(text)} {}

  [[nodiscard]] std::size_t size() const { return words_.size(); }
  [[nodiscard]] std::string_view word(std::size_t i) const {
    return i < words_.size() ? words_[i] : std::string_view{};
  }
  [[nodiscard]] std::span<std::string_view const> from(std::size_t i) const {
    return std::span{words_}.subspan(std::min(i, words_.size()));
  }

  // Takes off the bracket that opens word `at` and its other half, where that ends a word.  Returns
  // the place behind that word, 0 where the other half was not taken.
  std::size_t open_bracket(std::size_t at);

  // An author's word; or "P." of "P. Roe", which is a page elsewhere.
  [[nodiscard]] bool is_author_at(std::size_t i) const;

  // "van" of "van Roe", "&" of "Roe & Dorn", "(de" of "(de Roe)"; `within`: a bracket is open.
  [[nodiscard]] bool is_particle_at(std::size_t i, bool within) const;

  // "Fr.": cut short, as an author is and a common name is not.
  [[nodiscard]] bool is_short_author_at(std::size_t i) const;

  // Behind an author: "f." of "Roe f.", "al." of "Roe & al.", ":" of "Roe : Fr."
  [[nodiscard]] bool closes_author(std::size_t i) const;

  // "gr. A. bus", which is "A. gr. bus" to others.
  [[nodiscard]] bool begins_group(std::size_t i) const;

  // How many words behind an author say that a group is meant: 1 of "group", "complex", 2 of
  // "species complex".  They close the name: "complex in the south" is said of it.
  [[nodiscard]] std::size_t group_at(std::size_t i) const;

  // "cus, dus" to the end: nothing else is said in words like these.
  [[nodiscard]] bool closes_in_epithets(std::size_t i) const;

  // A name with its epithet, rank or quotation mark, as it stands in a list.
  [[nodiscard]] bool starts_taxon(std::size_t i) const;

  // How many words are "sp. 1", "Species A" or a lone "sp." without a genus before them.
  [[nodiscard]] std::size_t unnamed_at(std::size_t i) const;

  // "bus cus (p. 66)": a subspecies without its genus.
  [[nodiscard]] bool is_subspecies(std::size_t i) const;

  // "subsp. n.", "var. nov.": the name before it is new.
  [[nodiscard]] bool marks_new_rank(std::size_t i) const;

  // What may stand behind an epithet without its genus: "(p. 12)", "var. cus", "n. sp.".
  [[nodiscard]] bool closes_epithet(std::size_t i) const;

  // A bracket with the first author, "(Smith, 1900)", or with the year alone behind an author;
  // `begin`: where the authors begin.
  [[nodiscard]] bool holds_author(std::size_t i, std::size_t begin) const;

  // A year among the next six words.
  [[nodiscard]] bool has_year_soon(std::size_t at) const;

  // After a comma: a year, or a further author ("Smith, Jones & Roe, 1900").
  [[nodiscard]] bool goes_on_with_author(std::size_t at) const;

  [[nodiscard]] bool has_separator_from(std::size_t at) const;

  // "… or, in the north, Arctic Mouse A. bus": how many words stand before the other taxon, whose
  // genus is that of the name `before`; 0 where none follows.
  [[nodiscard]] std::size_t words_to_other(std::size_t i, std::string_view before) const;

  // "A. bus sp. nov. / A. cus": how many words say before another taxon that this one is new.
  [[nodiscard]] std::size_t marks_between(std::size_t at) const;

  // "AUSIDAE (p. 6) and BUSIDAE, p. 9": how many words tell of the page between two taxa.
  [[nodiscard]] std::size_t bracket_between(std::size_t at) const;

 private:
  [[nodiscard]] bool starts_unnamed(std::string_view genus, std::size_t next) const;

  std::vector<std::string_view> words_;
};

}  // namespace keydrift::printed
