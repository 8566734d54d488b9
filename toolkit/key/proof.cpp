#include "keydrift/key/proof.hpp"

#include <algorithm>

#include "keydrift/key/near.hpp"
#include "keydrift/key/proof_checks.hpp"

namespace keydrift {
namespace proofing {
namespace {

// Code points of a lead that a finding repeats.
constexpr std::size_t kShownWords = 72;

std::string shortened(std::string_view text) {
  std::size_t points = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if ((static_cast<unsigned char>(text[i]) & 0xC0U) == 0x80U) continue;
    if (++points > kShownWords) return std::string{text.substr(0, i)} + "…";
  }
  return std::string{text};
}

// A file may hold several keys; each has a start of its own.
std::vector<char> reached_from_starts(Edition const& edition) {
  std::vector<char> reached(edition.couplets.size(), 0);
  std::vector<CoupletId> pending;
  auto const reach = [&](CoupletId couplet) {
    if (reached[couplet.index] != 0) return;
    reached[couplet.index] = 1;
    pending.push_back(couplet);
  };
  for (auto const& part : edition.parts) reach(part.start);
  if (edition.parts.empty() && !edition.couplets.empty()) reach(CoupletId{0});
  while (!pending.empty()) {
    auto const couplet = pending.back();
    pending.pop_back();
    for (auto const& lead : edition[couplet].leads) {
      if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) reach(to->couplet);
    }
  }
  return reached;
}

}  // namespace

Finding& ProofContext::report(std::string_view code, Place const& place, std::string printed,
                              std::string message, std::string remedy) {
  auto const kinds = structural_finding_kinds();
  auto const kind = std::find_if(kinds.begin(), kinds.end(),
                                 [&](FindingKind const& entry) { return entry.code == code; });
  findings.push_back({.code = std::string{code},
                      .severity = kind->severity,
                      .file = edition.name,
                      .place = place,
                      .printed = std::move(printed),
                      .message = std::move(message),
                      .remedy = std::move(remedy),
                      .related = {}});
  return findings.back();
}

std::string ProofContext::near_labels(std::string_view text, std::size_t part) {
  near_comparisons += edition.couplets.size();
  if (near_comparisons > kNearComparisons) return {};
  return did_you_mean(labels.near(text, part, reached));
}

std::string ProofContext::second_of_its_label(std::string_view label, std::size_t part) {
  auto const number = label_number(label);
  if (!number || !number->suffix.empty() || number->number < 2) return {};
  auto const before = std::to_string(number->number - 1);
  auto const first = labels.find(before, part);
  if (!first || labels.part_of(*first) != part) return {};
  for (auto c = CoupletId{first->index + 1}; c < labels.part_end(part); ++c.index) {
    if (++near_comparisons > kNearComparisons) return {};
    if (label_key(edition[c].label) != before || !graph.leads_to(c).empty()) continue;
    return "the second couplet " + in_quotes(before) + ", in line " +
           std::to_string(edition[c].place.line) + ", is probably this one: give it the number " +
           in_quotes(std::string{label});
  }
  return {};
}

std::string ProofContext::near_names(std::string_view name, std::vector<std::string> const& known) {
  near_comparisons += known.size();
  return near_comparisons > kNearComparisons ? std::string{}
                                             : did_you_mean(near_words(name, known));
}

std::string ProofContext::key_name(std::size_t part) const {
  auto const& title = edition.parts[part].title;
  if (!title.empty()) return "the key " + in_quotes(title);
  return part == 0 ? "the first key"
                   : "the key in line " + std::to_string(edition.parts[part].place.line);
}

std::string printed_lead(Lead const& lead) {
  auto text = lead.label;
  auto const add = [&](std::string_view joint, std::string const& more) {
    if (more.empty()) return;
    if (!text.empty()) text += joint;
    text += more;
  };
  add(" ", shortened(lead.text));
  add(" … ", lead.destination_printed);
  return text;
}

std::string label_in_destination(std::string_view printed) {
  auto const last = printed.find_last_of(" \t\xA0");
  auto const token = last == std::string_view::npos ? printed : printed.substr(last + 1);
  return label_number(token) ? label_key(token) : std::string{};
}

}  // namespace proofing

std::vector<Finding> proof_structure(Edition const& edition, KeyGraph const& graph) {
  using namespace proofing;
  std::vector<Finding> findings;
  LabelIndex const labels{edition};
  auto key_of = keys_of_couplets(edition);
  auto led_to = find_keys_led_to(edition, graph, key_of);
  ProofContext context{.edition = edition,
                       .graph = graph,
                       .labels = labels,
                       .reached = reached_from_starts(edition),
                       .key_of = std::move(key_of),
                       .keys_led_to = std::move(led_to),
                       .repeated = repeated_keys(edition),
                       .findings = findings};
  check_shape(context);
  check_numbering(context);
  check_destinations(context);
  check_back_references(context);
  check_keys(context);
  check_repeated_keys(context);
  check_taxa(context);
  check_words(context);
  leave_out_repetitions(edition, context.repeated, findings);
  sort_findings(findings);
  return findings;
}

}  // namespace keydrift
