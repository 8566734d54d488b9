#include "amendment_support.hpp"

#include <variant>

#include "keydrift/formats/amendment_reader.hpp"

namespace keydrift::test {
namespace {

std::string ranges(std::vector<LabelRange> const& labels) {
  std::string text;
  for (auto const& one : labels) {
    text += (text.empty() ? "" : ",") + one.first;
    if (one.last != one.first) text += "-" + one.last;
    if (one.onwards) text += "+";
  }
  return text;
}

std::string couplets(Amendment const& amendment, std::vector<CoupletId> const& ids) {
  std::string text;
  for (auto const id : ids) {
    auto const& couplet = amendment.piece[id];
    text += " " + (couplet.label.empty() ? std::string{"?"} : couplet.label);
    if (couplet.leads.size() != 2) text += "(" + std::to_string(couplet.leads.size()) + ")";
  }
  return text;
}

std::string where(AmendmentTarget const& target) {
  auto text = target.label.empty() ? std::string{"key"} : target.label;
  if (target.lead) text += " lead " + std::to_string(*target.lead + 1);
  if (target.line) text += " line " + std::to_string(*target.line);
  return text;
}

struct Teller {
  Amendment const& amendment;
  std::string operator()(PlaceByNumber const& one) const {
    return std::string{one.inserts ? "new " : ""} +
           "by number:" + couplets(amendment, one.couplets);
  }
  std::string operator()(ReplaceCouplets const& one) const {
    return "replace " + ranges(one.labels) + ":" + couplets(amendment, one.couplets);
  }
  std::string operator()(InsertCouplets const& one) const {
    return std::string{"insert "} + (one.before ? "before " : "after ") + one.beside + ":" +
           couplets(amendment, one.couplets);
  }
  std::string operator()(RemoveCouplets const& one) const { return "remove " + ranges(one.labels); }
  std::string operator()(AddToCouplet const& one) const {
    return "add to " + where(one.target) + ":" + couplets(amendment, one.couplets) +
           (one.words.empty() ? "" : " {" + one.words + "}");
  }
  std::string operator()(RedirectLead const& one) const {
    return "redirect " + where(one.target) + ": " + one.to;
  }
  std::string operator()(RenumberCouplets const& one) const {
    return "renumber " + ranges(one.from) + " as " + ranges(one.to);
  }
  std::string operator()(ChangeWords const& one) const {
    return "change " + where(one.target) + ": {" + one.from + "} {" + one.to + "}" +
           (one.throughout ? " throughout" : "");
  }
};

}  // namespace

std::string in_short(Amendment const& amendment) {
  std::string text;
  for (auto const& one : amendment.instructions) {
    text += std::visit(Teller{amendment}, one.step) + "\n";
  }
  return text;
}

std::string amendment_in_short(std::string_view text) {
  auto const loaded = read_amendment({.name = "piece.txt", .bytes = text});
  auto told = loaded ? in_short(*loaded.value) : std::string{"nothing\n"};
  if (loaded) {
    for (auto const& finding : loaded.value->not_understood) told += finding.code + "\n";
  }
  for (auto const& finding : loaded.findings) {
    if (finding.severity != Severity::information) told += finding.code + "\n";
  }
  return told;
}

}  // namespace keydrift::test
