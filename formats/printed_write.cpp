#include "keydrift/formats/printed_write.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <variant>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/printed_difference.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_page.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {
namespace printed {
namespace {

using tables::counted;

constexpr std::size_t kMostRefusals = 20;
constexpr int kMostAttempts = 2;  // to word only those ends more plainly that are read otherwise

Finding about(Edition const& edition, std::string code, Severity severity, std::string message,
              std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = edition.name;
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

// What the text says otherwise than the edition, or not at all.
void tell_losses(Edition const& edition, Edition const& printed, PrintOptions const& options,
                 std::vector<Finding>& findings) {
  std::size_t before = 0;
  std::size_t after = 0;
  for (auto const& couplet : edition.couplets) before += couplet.back_references.size();
  for (auto const& couplet : printed.couplets) after += couplet.back_references.size();
  if (options.layout == PrintLayout::serial) {
    findings.push_back(about(edition, "renumbered", Severity::information,
                             "the serial layout numbers the leads, so couplets got the numbers of "
                             "their first leads",
                             ""));
  }
  if (options.back_references == BackReferences::as_printed && after < before) {
    findings.push_back(about(edition, "back-references-left-out", Severity::information,
                             counted(before - after, "back-reference is", "back-references are") +
                                 " not printed" +
                                 (options.layout == PrintLayout::serial
                                      ? ": in serial layout the brackets hold the rivals' numbers"
                                      : ": they name couplets that the key lacks"),
                             ""));
  }
  if (printed.taxa.size() < edition.taxa.size()) {
    findings.push_back(
        about(edition, "unnamed-taxa", Severity::information,
              counted(edition.taxa.size() - printed.taxa.size(), "taxon that no lead names is",
                      "taxa that no lead names are") +
                  " not printed",
              "list them in the front matter (\"Lists: …\") if the key claims to hold them"));
  }
}

// A couplet without leads has nothing to print.
void refuse_empty_couplets(Edition const& edition, std::vector<Finding>& findings) {
  for (auto const& couplet : edition.couplets) {
    if (!couplet.leads.empty() || findings.size() >= kMostRefusals) continue;
    auto finding = about(edition, "not-printable", Severity::error,
                         "couplet \"" + couplet.label + "\" has no leads to print",
                         "give it leads, or take it out");
    finding.place = couplet.place;
    findings.push_back(std::move(finding));
  }
}

std::vector<PrintManner> manners(PrintLayout layout) {
  if (layout == PrintLayout::parallel) return {PrintManner::plain, PrintManner::exact};
  return {PrintManner::plain, PrintManner::exact, PrintManner::numbered};
}

// How to have the edition in print after all.
std::string remedy(PrintOptions const& options) {
  if (options.leaders != PrintLeaders::dots) return "print dot leaders, or write another form";
  if (!options.renumber && options.layout != PrintLayout::serial) {
    return "number the couplets anew (--renumber) if the labels are the matter, mend the words "
           "named here, or write another form";
  }
  return "mend the words named here, or write another form, such as JSON";
}

Loaded<PrintedReading> read_back(std::string const& text) {
  ReadLimits limits;
  limits.bytes = std::max<std::uint64_t>(limits.bytes, text.size());
  limits.line_bytes = std::max(limits.line_bytes, text.size());
  return read_printed_key({.name = "written", .bytes = text}, limits);
}

}  // namespace
}  // namespace printed

Loaded<std::string> print_key(Edition const& edition, PrintOptions const& options) {
  using namespace printed;
  Loaded<std::string> loaded;
  refuse_empty_couplets(edition, loaded.findings);
  if (!loaded.findings.empty()) return loaded;
  auto const printed = as_printed(edition, options);
  std::vector<Difference> differing;
  PrintWordings wordings{printed};
  for (auto const manner : manners(options.layout)) {
    auto worded = wordings;
    for (int attempt = 0;; ++attempt) {
      auto text = print_page(printed, options, manner, worded);
      auto const reading = read_back(text);
      if (reading && same_content(printed, reading.value->edition)) {
        tell_losses(edition, printed, options, loaded.findings);
        loaded.value = std::move(text);
        return loaded;
      }
      // The last manner says most plainly what stands in the way.
      differing =
          reading ? differences(printed, reading.value->edition, kMostRefusals)
                  : std::vector<Difference>{{"this key", reading.findings.empty()
                                                             ? "nothing would be read"
                                                             : reading.findings.back().message}};
      bool const plainer = reading && attempt < kMostAttempts &&
                           worded.make_plainer(printed, reading.value->edition);
      if (attempt == 0) wordings = worded;
      if (!plainer && !worded.make_plainest()) break;
    }
  }
  for (auto const& one : differing) {
    loaded.findings.push_back(about(
        edition, "not-printable", Severity::error,
        one.what + " cannot be printed so that it reads back: " + one.happens, remedy(options)));
  }
  return loaded;
}

}  // namespace keydrift
