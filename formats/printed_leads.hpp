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
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// What kind of destination is printed; which couplet or taxon it is, is seen later.
enum class DestinationForm : std::uint8_t { none, couplet, key, taxa };

struct DestinationReading {
  DestinationForm form{DestinationForm::none};
  LabelKey couplet{};    // for form couplet
  std::string number;    // for form couplet: "8", as printed
  TaxaReading taxa;      // for form taxa; its figures for every form
  std::string key_name;  // for form key
  std::string remark;    // "Aus group" of "Aus group, 6", "in part" of "Aus bus, in part"
};

// `printed`: the destination without leaders, blanks squeezed.
[[nodiscard]] DestinationReading read_destination(std::string const& printed,
                                                  Numbering const& numbering);

struct ReadLead {
  Lead lead;  // destination not yet resolved
  LeaderKind leaders{LeaderKind::none};
  DestinationReading to;
};

// Everything the stages of reading share.
struct KeyText {
  std::string_view name;  // of the source, for findings
  std::string_view text;
  std::vector<SourceLine> const& lines;
  Numbering const& numbering;
};

// One entry for each raw lead.  Marks the lines of `sorted` that hold only a destination.
[[nodiscard]] std::vector<ReadLead> read_leads(KeyText const& key, SortedLines& sorted,
                                               std::vector<Finding>& findings);

// The remark's words, lines joined by blanks.
[[nodiscard]] std::string joined_text(KeyText const& key, std::vector<Piece> const& pieces);

}  // namespace keydrift::printed
