#include "keydrift/formats/printed_name_findings.hpp"

#include "keydrift/formats/wording.hpp"

namespace keydrift::printed {
namespace {

std::string and_further(std::size_t count) {
  return "here and in " + tables::counted(count - 1, "further name", "further names");
}

}  // namespace

void NameFindings::assume(std::string const& printed, std::string const& whole, std::string others,
                          std::string const& name, Place const& place) {
  auto& assumption = assumptions_[{printed, whole}];
  if (assumption.count++ > 0) return;
  assumption.others = std::move(others);
  assumption.example = name;
  assumption.place = place;
}

void NameFindings::keep_as_printed(std::string const& beginning, std::string const& name,
                                   Place const& place) {
  auto& unknown = unknown_[beginning];
  if (unknown.count++ > 0) return;
  unknown.name = name;
  unknown.place = place;
}

void NameFindings::part(std::string printed, std::string name, Place const& place) {
  parted_.push_back({std::move(printed), std::move(name), place});
}

void NameFindings::report(std::vector<Finding>& findings) const {
  auto const add = [&](std::string code, Severity severity, Place const& place,
                       std::string printed) -> Finding& {
    auto& finding = findings.emplace_back();
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = file_;
    finding.place = place;
    finding.printed = std::move(printed);
    return finding;
  };
  for (auto const& [read, assumption] : assumptions_) {
    auto const& [printed, whole] = read;
    bool const doubtful = !assumption.others.empty();
    auto const rest = assumption.example.substr(whole.size() + 1);
    auto& finding = add(doubtful ? "ambiguous-abbreviation" : "expanded-name",
                        doubtful ? Severity::warning : Severity::information, assumption.place,
                        printed.empty() ? rest : printed + " " + rest);
    finding.message = printed.empty() ? "the genus is not printed; it was read as \"" + whole + "\""
                                      : "\"" + printed + "\" was read as \"" + whole + "\"";
    if (assumption.count > 1) finding.message += " " + and_further(assumption.count);
    if (doubtful) finding.message += ", the nearest before it; it may also be " + assumption.others;
    finding.remedy = "print the genus in full where this is wrong";
  }
  for (auto const& [beginning, unknown] : unknown_) {
    auto& finding = add("genus-unknown", Severity::warning, unknown.place, unknown.name);
    finding.message = beginning.empty()
                          ? "the genus is not printed, and the text does not tell it"
                          : "the text does not tell which genus \"" + beginning + "\" is";
    if (unknown.count > 1) finding.message += ", " + and_further(unknown.count);
    finding.message += "; names stay as they are printed";
    finding.remedy = "print the genus in full, or name it in the key's title";
  }
  for (auto const& parted : parted_) {
    auto& finding = add("fused-name", Severity::warning, parted.place, parted.printed);
    finding.message = "\"" + parted.printed + "\" was read as \"" + parted.name +
                      "\": the source names both words elsewhere";
    finding.remedy = "print a blank between genus and epithet, or the right name";
  }
}

}  // namespace keydrift::printed
