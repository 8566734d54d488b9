#pragma once
// The character space of one or several editions: every character with a finite domain of cells.
//
// A categorical character has one cell per named state, one for "some other state", and one for
// "inapplicable".  Where nothing says that two states exclude each other (opaque characters,
// drafted lexicons), a cell stands for exactly the states that are seen: one cell for each set of
// states that may be seen together.  A numeric character is cut at every limit that any of the
// editions uses, so that no limit runs through a cell; cells are single values or open intervals.
// A Box is a product of cell sets: what is possible, character by character.  Completions of a box
// are the choices of one cell per character that agree with the applicability conditions.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/id.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift {

using CharacterIndex = Id<struct CharacterTag>;

// A set of cells of one character: bit i of word i/64 is cell i.
using Cells = std::vector<std::uint64_t>;

struct Domain {
  std::string id{};
  std::string label{};
  CharacterKind kind{CharacterKind::categorical};
  std::string unit{};
  Difficulty difficulty{Difficulty::naked_eye};
  bool opaque{false};
  std::vector<std::string> states{};  // categorical: cells 0 … show this state and no other
  // Categorical: the cells behind show these states (rows of `states`) together; then comes
  // "other".
  std::vector<std::vector<std::uint32_t>> together{};
  std::vector<Interval> intervals{};  // numeric: cells 0 …, ascending
  std::uint32_t cells{};              // with "other" (categorical) and, last, "inapplicable"
  std::uint32_t offset{};             // first word in a Box
  std::uint32_t words{};

  // Every cell that shows the state.
  void add_state(std::span<std::uint64_t> to, std::uint32_t state) const;

  std::optional<CharacterIndex> condition{};  // applicable only if that character …
  Cells condition_cells{};                    // … shows one of these

  [[nodiscard]] std::uint32_t inapplicable() const { return cells - 1; }
  [[nodiscard]] std::optional<std::uint32_t> other() const {
    if (kind != CharacterKind::categorical) return std::nullopt;
    return cells - 2;
  }
};

// What is possible for a specimen, character by character; laid out by a CharacterSpace.
using Box = std::vector<std::uint64_t>;

// What a record says of one character.
struct ObservedCells {
  Cells cells{};          // empty: the value says that nothing is known
  std::string problem{};  // not empty: the value cannot be used; says why, with a remedy
};

class CharacterSpace {
 public:
  // Precondition: read_statements() was run on the editions together.  Borrows nothing.
  CharacterSpace(std::span<Edition const* const> editions, Lexicon const& lexicon);

  [[nodiscard]] std::size_t size() const { return domains_.size(); }
  [[nodiscard]] Domain const& operator[](CharacterIndex index) const {
    return domains_[index.index];
  }
  [[nodiscard]] std::optional<CharacterIndex> find(std::string_view id) const;
  // By id or label of the space or the lexicon, letter case and blanks/hyphens ignored: how a
  // column of an archive names its character.
  [[nodiscard]] std::optional<CharacterIndex> find_column(std::string_view header) const;
  // The names find_column() answers to.
  [[nodiscard]] std::vector<std::string> column_names() const;

  [[nodiscard]] std::size_t box_words() const { return words_; }
  // Nothing known.  Characters without a condition are taken to be applicable.
  [[nodiscard]] Box const& anything() const { return anything_; }

  // The cells that satisfy the atom: by the extremes (allowed) / by the usual range (supported).
  [[nodiscard]] Cells allowed(Atom const& atom) const;
  [[nodiscard]] Cells supported(Atom const& atom) const;
  // Cells that meet / do not meet a limit ("male").
  [[nodiscard]] std::optional<CharacterIndex> limit_character(LimitKind kind) const;
  [[nodiscard]] Cells limit_cells(Limit const& limit) const;

  [[nodiscard]] ObservedCells observe(CharacterIndex character, std::string_view value,
                                      std::string_view unit) const;
  [[nodiscard]] ObservedCells observe_limit(LimitKind kind, std::string_view value) const;

  // Draws the conclusions of the applicability conditions; false: no completion is left.
  [[nodiscard]] bool settle(Box& box) const;

  // "bifid", "bifid or entire", "less than 3 mm", "3–5 mm", "not recorded" for all cells.
  [[nodiscard]] std::string words(CharacterIndex character, std::span<std::uint64_t const> cells,
                                  bool or_other = true) const;

  [[nodiscard]] std::span<std::uint64_t const> part(Box const& box, CharacterIndex c) const {
    return std::span{box}.subspan(domains_[c.index].offset, domains_[c.index].words);
  }
  [[nodiscard]] std::span<std::uint64_t> part(Box& box, CharacterIndex c) const {
    return std::span{box}.subspan(domains_[c.index].offset, domains_[c.index].words);
  }

 private:
  [[nodiscard]] Cells cells_of(Atom const& atom, bool usual) const;
  void lay_out();

  std::vector<Domain> domains_{};  // by id
  std::vector<std::uint32_t> conditional_{};
  std::unordered_map<std::string, std::uint32_t> by_id_;
  std::unordered_map<std::string, std::uint32_t> by_column_;
  // (domain, normalised phrase) -> state cell
  std::vector<std::unordered_map<std::string, std::uint32_t>> phrases_{};
  std::vector<std::string> column_names_{};
  std::size_t words_{};
  Box anything_{};
};

// Set operations on words of equal length.
[[nodiscard]] bool is_empty(std::span<std::uint64_t const> cells);
[[nodiscard]] bool is_subset(std::span<std::uint64_t const> a, std::span<std::uint64_t const> b);
[[nodiscard]] bool meets(std::span<std::uint64_t const> a, std::span<std::uint64_t const> b);
[[nodiscard]] std::size_t count_cells(std::span<std::uint64_t const> cells);
void intersect(std::span<std::uint64_t> a, std::span<std::uint64_t const> b);
void remove(std::span<std::uint64_t> a, std::span<std::uint64_t const> b);
[[nodiscard]] inline bool has_cell(std::span<std::uint64_t const> cells, std::uint32_t cell) {
  return ((cells[cell / 64] >> (cell % 64)) & 1U) != 0;
}
inline void add_cell(std::span<std::uint64_t> cells, std::uint32_t cell) {
  cells[cell / 64] |= std::uint64_t{1} << (cell % 64);
}

}  // namespace keydrift
