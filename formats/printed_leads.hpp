#pragma once
// From the lines of a lead to its words and its destination as printed.  Inner header of formats.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/told_names.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

struct ReadLead {
  Lead lead;  // destination not yet resolved
  LeaderKind leaders{LeaderKind::none};
  DestinationReading to;
};
// Nothing shows where it leads.
[[nodiscard]] inline bool is_open(ReadLead const& read) {
  return read.to.form == DestinationForm::none && read.leaders == LeaderKind::none;
}

// Everything the stages of reading share.
struct KeyText {
  std::string_view name;  // of the source, for findings
  std::string_view text;
  std::vector<SourceLine> const& lines;
  Numbering const& numbering;
  ToldNames const* told{nullptr};  // names that the origin tells, once leads are read
};

// One entry for each raw lead.  Marks the lines of `sorted` that hold only a destination.
[[nodiscard]] std::vector<ReadLead> read_leads(KeyText const& key, SortedLines& sorted,
                                               std::vector<Finding>& findings);

// The remark's words, lines joined by blanks.
[[nodiscard]] std::string joined_text(KeyText const& key, std::vector<Piece> const& pieces);

}  // namespace keydrift::printed
