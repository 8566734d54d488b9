#pragma once
// Lines that a page has beside the key's own: its number, its running head, ruled lines.  Told by
// what was read before them and by what follows.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leads_so_far.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_remarks_so_far.hpp"

namespace keydrift::printed {

// The line that is asked about, and what stands directly before it.
struct LineOnPage {
  std::size_t at{};  // index into the lines
  bool gap{false};   // blank lines
  bool page{false};  // a page's number or head, with nothing but blank lines between
};

enum class Furniture : std::uint8_t {
  none,
  number_of_name,  // no furniture, though a number alone: of the author or the species before
  page_number,
  stray_number,  // a number alone where no destination is missing
  ruled_line,
  head_in_lead,     // parts a lead from its rest, between blank lines or cut short, or leaders from
                    // their name
  caption_in_lead,  // of a figure, or its letters or words, within a lead or behind one
  words_in_lead     // head_in_lead, in a text of which nearly all lines have blank lines between
};

// Borrows what was read before the line at hand, and what looks beyond it.
class PageFurniture {
 public:
  // `plan`: where leads begin, when that is known beforehand; may be null.
  PageFurniture(std::vector<SourceLine> const& lines, Numbering const& numbering,
                LeadPlan const* plan, LinesAhead const& ahead, LeadsSoFar const& leads,
                RemarksSoFar const& remarks)
      : lines_{lines},
        numbering_{numbering},
        plan_{plan},
        ahead_{ahead},
        leads_{leads},
        remarks_{remarks},
        largest_{largest_of_key(numbering)} {}

  [[nodiscard]] Furniture of(LineOnPage here) const;

  // Behind a page's number and head: the line goes on with the lead before them, and the blank
  // lines around them part nothing.
  [[nodiscard]] bool goes_on_behind_page(std::size_t at) const;

  // "Wings clear 2" / "Roe: Beetles of Ausella": with the words of the line the lead before would
  // have no end, and the leads of the file have one as a rule.
  [[nodiscard]] bool follows_ended_lead(std::size_t at) const;

 private:
  [[nodiscard]] bool is_number_of_name(LineOnPage here) const;
  // A line or two between blank ones within a lead that has no end yet, whose words go on with a
  // small letter and end in a destination: what a page ends with and the next one begins with.
  [[nodiscard]] bool parts_a_lead(LineOnPage here) const;
  // "Revision of the genus Ausella...", a page's number below it.
  [[nodiscard]] bool is_title_cut_short(std::size_t at) const;
  [[nodiscard]] bool is_caption_in_lead(std::size_t at) const;
  [[nodiscard]] bool are_letters_of_figures(LineOnPage here) const;
  // Small words directly above a caption, behind a lead that has its end.
  [[nodiscard]] bool are_words_of_figure(LineOnPage here) const;
  // A page's number and head between leaders and the name that they lead to, blank lines or not.
  [[nodiscard]] bool parts_leaders(LineOnPage here) const;
  // Blank lines stand behind nearly all of the lines before this one.
  [[nodiscard]] bool is_double_spaced(std::size_t at) const;
  // A number alone on its line: a destination or a label whose words follow, and no page number.
  [[nodiscard]] bool number_is_of_key(std::size_t at) const;

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LeadPlan const* plan_;
  LinesAhead const& ahead_;
  LeadsSoFar const& leads_;
  RemarksSoFar const& remarks_;
  std::uint32_t largest_;  // number of the key
};

}  // namespace keydrift::printed
