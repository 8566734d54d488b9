// Do the leads end where a lead may end?

#include <algorithm>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/part_titles.hpp"
#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

class DestinationCheck {
 public:
  explicit DestinationCheck(ProofContext& context) : context_{context}, titles_{context.edition} {}

  void check(LeadId id) {
    auto const& lead = context_.edition[id];
    if (auto const* unresolved = std::get_if<Unresolved>(&lead.destination)) {
      check_unresolved(id, lead, unresolved->printed);
    } else if (auto const* to_key = std::get_if<ToKey>(&lead.destination)) {
      check_key(id, lead, to_key->key);
    } else if (auto const* to_couplet = std::get_if<ToCouplet>(&lead.destination)) {
      check_name_beside(id, lead, to_couplet->couplet);
      check_backward(id, lead, to_couplet->couplet);
    } else {
      check_number_beside(id, lead);
    }
  }

  void check_alike(CoupletId id) {
    auto const& couplet = context_.edition[id];
    auto const& leads = couplet.leads;
    if (leads.size() < 2 || std::holds_alternative<Unresolved>(leads.front().destination)) return;
    bool const alike = std::all_of(leads.begin() + 1, leads.end(), [&](Lead const& lead) {
      return lead.destination == leads.front().destination;
    });
    if (!alike) return;
    context_.report("same-destination", couplet.place, leads.front().destination_printed,
                    "all leads of couplet " + in_quotes(couplet.label) +
                        " lead to the same place, so it decides nothing",
                    "mend one of the destinations, or leave the couplet out");
  }

 private:
  void check_unresolved(LeadId id, Lead const& lead, std::string const& printed) {
    if (fold_words(printed).empty()) {
      context_.report("lead-without-destination", lead.place, printed_lead(lead),
                      "lead " + context_.lead(id) + " leads nowhere",
                      "print the couplet or the taxon that it leads to");
      return;
    }
    auto const label = label_in_destination(printed);
    if (label.empty()) {
      context_.report("unclear-destination", lead.destination_place, printed,
                      "lead " + context_.lead(id) + " ends in " + in_quotes(printed) +
                          ", which is neither a couplet of this edition nor a taxon",
                      "print the number of a couplet or the name of a taxon");
      return;
    }
    auto remedy = context_.second_of_its_label(label, context_.labels.part_of(id.couplet));
    if (remedy.empty()) {
      remedy = context_.near_labels(label, context_.labels.part_of(id.couplet));
    }
    if (remedy.empty()) remedy = "mend the number, or print the couplet that is missing";
    context_.report("dangling-couplet", lead.destination_place, printed,
                    "lead " + context_.lead(id) + " leads to couplet " + in_quotes(label) +
                        ", which this edition lacks",
                    std::move(remedy));
  }

  void check_key(LeadId id, Lead const& lead, std::string const& key) {
    if (titles_.find(key)) return;
    auto remedy = near_keys(context_, key);
    if (remedy.empty()) remedy = "determinations stop here unless that key is at hand";
    context_.report("key-elsewhere", lead.destination_place, key,
                    "lead " + context_.lead(id) + " leads to another key, " + in_quotes(key) +
                        ", which is not in this file",
                    std::move(remedy));
  }

  // "Aus bus 8" where Aus bus keys out by itself; a group's name before the number ("Aus group, 6")
  // is common practice and no fault.
  void check_name_beside(LeadId id, Lead const& lead, CoupletId to) {
    auto const& printed = lead.destination_printed;
    auto const number = printed.rfind(context_.label(to));
    if (number == std::string::npos || number == 0) return;
    auto name = printed.substr(0, number);
    while (!name.empty() && std::string_view{" \t.,;:-("}.find(name.back()) != std::string::npos) {
      name.pop_back();
    }
    if (!keys_out(name)) return;
    report_two(id, lead, name, context_.label(to));
  }

  // Most keys print nothing beside a number, and never ask.
  bool keys_out(std::string const& name) {
    if (names_.empty()) {
      for (auto const& taxon : context_.edition.taxa) names_.push_back(fold_words(taxon.name));
      std::sort(names_.begin(), names_.end());
    }
    return std::binary_search(names_.begin(), names_.end(), fold_words(name));
  }

  // "Aus bus 8" read as a taxon, where nothing else leads to couplet 8.
  void check_number_beside(LeadId id, Lead const& lead) {
    auto const& printed = lead.destination_printed;
    auto const blank = printed.rfind(' ');
    if (blank == std::string::npos) return;
    auto const label = label_in_destination(printed);
    if (label.empty()) return;
    auto const couplet = context_.labels.find(label, context_.labels.part_of(id.couplet));
    if (!couplet || context_.reached[couplet->index] != 0) return;
    report_two(id, lead, printed.substr(0, blank), label);
  }

  void report_two(LeadId id, Lead const& lead, std::string const& name, std::string const& label) {
    context_.report("two-destinations", lead.destination_place, lead.destination_printed,
                    "lead " + context_.lead(id) + " ends in both the taxon " + in_quotes(name) +
                        " and couplet " + in_quotes(label),
                    "keep the one that is meant");
  }

  // Towards a number printed before: a merge of branches, or a slip.
  void check_backward(LeadId id, Lead const& lead, CoupletId to) {
    if (to >= id.couplet) return;
    context_.report("backward-lead", lead.destination_place, lead.destination_printed,
                    "lead " + context_.lead(id) + " leads back to couplet " +
                        in_quotes(context_.label(to)) + ", printed before it",
                    "see whether this is meant");
  }

  ProofContext& context_;
  PartTitles titles_;
  std::vector<std::string> names_;  // of terminals, folded; sorted; made when first asked for
};

}  // namespace

void check_destinations(ProofContext& context) {
  DestinationCheck check{context};
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) {
    auto const& leads = context.edition[c].leads;
    for (std::uint32_t ordinal = 0; ordinal < leads.size(); ++ordinal) check.check({c, ordinal});
    check.check_alike(c);
  }
}

}  // namespace keydrift::proofing
