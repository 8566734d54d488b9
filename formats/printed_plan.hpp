#pragma once
// Which lines begin leads, decided from all lines before they are sorted: outlines, cells, braces,
// numbers of unusual kinds.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_ranks.hpp"

namespace keydrift::printed {

// Couplets that a piece of a key set in cells may leave out.
inline constexpr std::size_t kMostCoupletsLeftOut = 30;

struct LeadStart {
  std::uint32_t line{};  // index into the lines
  RankLabel rank;        // a dash without text where no label is printed
  bool unlabelled{false};
  bool misread{false};    // its number was put right
  bool opens_key{false};  // another key of the file begins
};

// What a line holds of a lead, where that is told by more than its words.
enum class LinePart : std::uint8_t {
  other,
  words,
  destination,
  number,   // of the couplet whose leads follow, or stand in the brace beside it
  brace,    // a piece of a brace
  genus,    // the first line of what is said of a genus, its key and accounts
  account,  // of the species that the lead above leads to
};

// The name that an account of a species begins with, in bytes of its line's text.
struct AccountName {
  std::uint32_t line{};
  std::size_t begin{};
  std::size_t end{};
  bool numbered{false};
};

// Decided from all lines before they are sorted.
struct LeadPlan {
  std::vector<LeadStart> starts;        // in printed order
  std::vector<std::uint32_t> start_at;  // by line: index into `starts`, or kNoStart
  std::vector<LinePart> parts;          // by line; empty where the words decide
  std::vector<AccountName> accounts;    // beneath leads; their species are where those lead to
  bool braces{false};                   // each couplet stands in a brace
  static constexpr std::uint32_t kNoStart = 0xFFFFFFFFU;
  [[nodiscard]] LinePart part(std::size_t line) const {
    return parts.empty() ? LinePart::other : parts[line];
  }
  [[nodiscard]] LeadStart const* at(std::size_t line) const {
    return start_at[line] == kNoStart ? nullptr : &starts[start_at[line]];
  }
};

// Leads begin with labels of ranks that the file uses in order: I, A, a, α, 1, 1.1, *, – and so
// on.  nullopt when there are none.
[[nodiscard]] std::optional<LeadPlan> plan_by_labels(std::vector<SourceLine> const& lines);

// The same, and leads without labels beneath those of the deepest ranks: "A. Wings clear." / "Legs
// pale ..... Aus bus" / "Legs dark ..... Aus cus".  nullopt when there are none of the latter.
[[nodiscard]] std::optional<LeadPlan> plan_by_labels_and_leaves(
    std::vector<SourceLine> const& lines, Numbering const& numbering);

// Leads bear no labels: a lead begins where the line before ends in a destination, or was broken
// off before its time.  nullopt when hardly a line ends in a destination.
[[nodiscard]] std::optional<LeadPlan> plan_by_indentation(std::vector<SourceLine> const& lines,
                                                          Numbering const& numbering);

// Label, words and destination stand on lines of their own.  nullopt when few lines hold nothing
// but a label.
[[nodiscard]] std::optional<LeadPlan> plan_by_cells(std::vector<SourceLine> const& lines);

// Only the first lead of a couplet bears a label; its rivals' words stand beneath its own.  nullopt
// when hardly a lead is found so.
[[nodiscard]] std::optional<LeadPlan> plan_by_words(std::vector<SourceLine> const& lines,
                                                    Numbering const& numbering);

// Where leads begin, and how couplets are numbered there.
struct NumberedPlan {
  LeadPlan plan;
  Numbering numbering;
};

// Couplets' numbers stand above their leads, behind a word, are roman, or are closed by unusual
// signs; leads may bear letters of their own.  One plan for each kind of number that is found.
[[nodiscard]] std::vector<NumberedPlan> plans_by_numbers(std::vector<SourceLine> const& lines);

// What parts leads of which only a couplet's first bears a label.
enum class LeadBorders : std::uint8_t {
  blanks,   // each is a paragraph between blank lines
  ends,     // each ends in a line that holds nothing but its destination
  indents,  // each begins with a line that is set in as the labelled ones are, others less
};
// nullopt when more than one couplet in four has no other paragraph that ends in a destination.
[[nodiscard]] std::optional<NumberedPlan> plan_by_paragraphs(std::vector<SourceLine> const& lines,
                                                             LeadBorders borders);

}  // namespace keydrift::printed
