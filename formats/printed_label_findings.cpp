#include "keydrift/formats/printed_label_findings.hpp"

#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"

namespace keydrift::printed {

Finding label_misprinted(std::string_view file, Lead const& lead, Label const& label, bool told) {
  auto const quoted = "\"" + lead.label + "\"";
  auto const number = std::to_string(label.number);
  bool const digits = only_figures(lead.label);
  Finding finding;
  finding.code = "misprinted-label";
  finding.severity = Severity::warning;
  finding.file = std::string{file};
  finding.place = lead.place;
  finding.printed = lead.label;
  if (label.is_dash()) {
    finding.message = quoted + " was read as the dash of a further lead";
    finding.remedy = "print the sign that other such leads have";
  } else if (lead.label.empty() || lead.label == ".") {
    finding.printed = std::string{start_of(lead.text, 80)};
    finding.message =
        "no number is printed; the count tells that a lead of couplet " + number + " begins here";
    finding.remedy = "print the number";
  } else if (digits && told) {
    finding.message = "the sign behind " + quoted +
                      " is not the usual one; the count tells that a lead begins here";
    finding.remedy = "print what stands behind the other numbers";
  } else if (digits) {
    finding.message = "the bracket with the rival's number behind " + quoted +
                      " is misprinted; the count tells that a lead begins here";
    finding.remedy = "print the rival's number in brackets";
  } else {
    finding.message = quoted + " was read as a lead of couplet " + number;
    finding.remedy = told ? "print the label as the others are" : "print the number in digits";
  }
  return finding;
}

}  // namespace keydrift::printed
