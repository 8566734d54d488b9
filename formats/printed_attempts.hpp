#pragma once
// The ways a key's lines may be read, and the one that hangs together best.  Inner header of
// formats.

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_judge.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// The lines sorted, the leads read; which of them make up a couplet is still to be told.
struct LeadsRead {
  Numbering numbering;
  std::optional<LeadPlan> plan;  // for outlines: where leads begin
  Edition edition;               // front matter only
  SortedLines sorted;
  std::vector<ReadLead> reads;
  std::vector<Finding> findings;  // of the reading so far
};

struct Attempt {
  std::shared_ptr<LeadsRead> read;  // shared by attempts that group the same leads
  Grouping grouping;                // empty when there are no leads
  Judgement judgement;
  // No reading found leads and couplets that hang together; this one shows where it fails.
  bool refused{false};
};

// The best reading of `lines`.  A reading by printed numbers is kept unless another one is clearly
// better; where another comes close and differs, a finding `ambiguous-layout` says so.
[[nodiscard]] Attempt choose_reading(DecodedText const& text, std::vector<SourceLine> const& lines);

// The reading of `lines` as `found` says that leads begin and couplets are numbered there.
[[nodiscard]] Attempt read_as_planned(DecodedText const& text, std::vector<SourceLine> const& lines,
                                      NumberedPlan found);

// By more than a misprint or two may cause.
[[nodiscard]] bool is_clearly_better(Attempt const& one, Attempt const& other);

// "an indented key": what messages call it.
[[nodiscard]] std::string_view to_word(Layout layout);

}  // namespace keydrift::printed
