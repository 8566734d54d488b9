#pragma once
// Whether a lead begins at a line: by its label, by one that was misprinted, or by no label at all.
// Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leads_so_far.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_remarks_so_far.hpp"

namespace keydrift::printed {

// The line that is asked about.
struct LineAtHand {
  std::size_t at{};  // index into the lines
  bool gap{false};   // blank lines stand directly before it
  bool page{false};  // and a page's number or head
};

// The label that a lead begins with.
struct BeginningLabel {
  Label label;
  bool misprinted{false};  // its digits or its bracket were put right: "la" for 1a, "30 (31 Wings"
};

// Borrows what was read before the line at hand, and what looks beyond it.
class LeadBegins {
 public:
  // `plan`: for outlines, which lines begin leads; may be null.
  LeadBegins(std::vector<SourceLine> const& lines, Numbering const& numbering, LeadPlan const* plan,
             LinesAhead const& ahead, LeadsSoFar const& leads, RemarksSoFar const& remarks)
      : lines_{lines},
        numbering_{numbering},
        plan_{plan},
        ahead_{ahead},
        leads_{leads},
        remarks_{remarks} {}

  // The label of the lead that begins here, where no plan tells the leads; nullopt where none does,
  // whatever the line may begin with.
  [[nodiscard]] std::optional<BeginningLabel> label_of_lead(LineAtHand here) const;

  // In keys of which only first leads are labelled: a line with a capital that leads somewhere,
  // where the couplet's second lead is due.
  [[nodiscard]] bool begins_second_lead(LineAtHand here) const;

  // Before all labels: a line that leads to couplet 2, where couplet 1 prints no number, or one of
  // two that lead to keys.
  [[nodiscard]] bool begins_first_couplet(LineAtHand here) const;

  // Behind a lead with its destination: a line without label that leads somewhere.
  [[nodiscard]] bool begins_unlabelled_lead(LineAtHand here) const;

 private:
  [[nodiscard]] bool begins_labelled_lead(LineAtHand here, Label const& label) const;
  [[nodiscard]] bool begins_at_dash(LineAtHand here, Label const& label) const;
  [[nodiscard]] bool begins_at_number(LineAtHand here, Label const& label) const;
  // A label that carries the count on once its misread digits are put right.
  [[nodiscard]] std::optional<Label> misprinted_label(LineAtHand here) const;
  // The same of the letter l, misread as a 1.
  [[nodiscard]] std::optional<Label> misread_l(std::string_view line) const;
  // The same of the first lead of a couplet beneath one that goes on with it.
  [[nodiscard]] std::optional<Label> misprinted_beneath(LineAtHand here) const;
  // The same of the rival of a lead far above, as indented keys have it.
  [[nodiscard]] std::optional<Label> misprinted_rival(LineAtHand here) const;
  // No couplet bears the number before this one, nor the one behind it.
  [[nodiscard]] bool is_far_from_couplets(std::uint32_t number) const;
  // The words begin with a small letter, where those of all other leads begin with a capital.
  [[nodiscard]] bool has_odd_case(std::string_view words) const;
  // "B." of "7. A. …" / "B. …": several lines begin so, and it is no 8.
  [[nodiscard]] bool is_usual_letter(std::string_view line) const;
  // A blank line stands among lines [first, end).
  [[nodiscard]] bool has_blank_between(std::size_t first, std::size_t end) const;

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LeadPlan const* plan_;
  LinesAhead const& ahead_;
  LeadsSoFar const& leads_;
  RemarksSoFar const& remarks_;
  // Counted when first asked for: lines by the letter that begins them, "A."; blank lines by line.
  mutable std::vector<std::size_t> letters_;
  mutable std::vector<std::uint32_t> blanks_before_;
};

}  // namespace keydrift::printed
