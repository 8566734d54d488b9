#pragma once
// What each line of a printed key is: sorts lines into leads, notes, headings and the rest.  Inner
// header of formats.

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

inline constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

// A stretch of one source line, in bytes of the decoded text.
struct Piece {
  std::size_t begin{};
  std::size_t end{};
  std::uint32_t line{};  // index into the lines
};

// A lead before its words and its destination are told apart.
struct RawLead {
  Label label;  // a dash without text when the lead prints no label
  bool unlabelled{false};
  bool misprinted{false};        // "la" for 1a, "30 (31" for 30 (31)
  bool destination_told{false};  // its last piece is the destination, whatever it says
  std::uint32_t line{};          // index of its first line
  std::uint32_t first_piece{};
  std::uint32_t piece_count{};
  std::uint32_t further_taxa{};       // of its last pieces, lines that hold one each
  std::uint32_t last_heading{kNone};  // the heading printed directly before it
};

enum class RemarkKind : std::uint8_t { lead_note, couplet_note, prose, heading, caption, footnote };

// Text that is no lead: under lead `lead` (the last one before it), or before all (kNone).
struct Remark {
  RemarkKind kind{RemarkKind::prose};
  std::uint32_t lead{kNone};
  std::vector<Piece> pieces;
};

// The name of a species whose account stands beneath a lead.
struct NameBeneath {
  std::uint32_t lead{};
  Piece name;
};

struct SortedLines {
  std::vector<Piece> pieces;  // of all leads, lead by lead
  std::vector<RawLead> leads;
  std::vector<NameBeneath> names;  // in printed order; where there are any, they tell the leaves
  std::vector<Remark> remarks;     // in printed order
  std::vector<LineAccount> accounts;
};

// The line is of a lead or of what it leads to.
[[nodiscard]] inline bool is_of_lead(LineAccount const& account) {
  return account.kind == LineKind::lead || account.kind == LineKind::continuation ||
         account.kind == LineKind::destination;
}

// `first_line`: index of the first line that the front matter has not taken; `accounts` has the
// accounts of the lines before it.  `plan`: where leads begin, when that is known beforehand.
[[nodiscard]] SortedLines sort_lines(std::vector<SourceLine> const& lines,
                                     Numbering const& numbering, std::size_t first_line,
                                     std::vector<LineAccount> accounts,
                                     LeadPlan const* plan = nullptr);

}  // namespace keydrift::printed
