// Does "9 (3, 12)" tell the truth: do leads of couplets 3 and 12 lead to couplet 9, and no others?

#include <algorithm>

#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

// An author who prints back-references at three couplets in four meant to print them throughout.
constexpr std::size_t kHabitOutOf = 4;
constexpr std::size_t kHabit = 3;
constexpr std::size_t kFewestForHabit = 4;

// Whether back-references are printed as a habit, told apart for couplets whose only lead stands in
// the couplet just before (many authors leave those out) and for all others.
struct Habit {
  std::size_t with{};
  std::size_t without{};
  void count(bool printed) { ++(printed ? with : without); }
  [[nodiscard]] bool holds() const {
    return with + without >= kFewestForHabit && with * kHabitOutOf >= (with + without) * kHabit;
  }
};

bool follows_its_only_lead(CoupletId couplet, std::span<LeadId const> leads) {
  return leads.size() == 1 && leads.front().couplet.index + 1 == couplet.index;
}

class BackReferenceCheck {
 public:
  explicit BackReferenceCheck(ProofContext& context) : context_{context} {
    for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) {
      auto const leads = context.graph.leads_to(c);
      if (!leads.empty()) habit(c, leads).count(!context.edition[c].back_references.empty());
    }
  }

  void check(CoupletId id) {
    auto const& couplet = context_.edition[id];
    auto const leads = context_.graph.leads_to(id);
    std::vector<char> told(leads.size(), 0);
    std::size_t mistaken = 0;
    for (auto const& reference : couplet.back_references) {
      if (leads.empty() && label_key(reference.label) == "0") continue;  // "1 (0)": the start
      if (!agrees(id, reference, leads, told)) ++mistaken;
    }
    bool const expected = !couplet.back_references.empty() || habit(id, leads).holds();
    if (!expected) return;
    std::vector<std::string> untold;
    for (std::size_t i = 0; i < leads.size(); ++i) {
      if (told[i] == 0) untold.push_back(context_.lead(leads[i]));
    }
    // A mistaken reference stands in for the right one and was reported with it.
    if (untold.size() <= mistaken) return;
    auto const name = "couplet " + in_quotes(couplet.label);
    bool const one = untold.size() == 1;
    auto& finding = context_.report("missing-back-reference", couplet.place, couplet.label,
                                    name + " does not say that " + (one ? "lead " : "leads ") +
                                        in_prose(untold) + (one ? " leads" : " lead") + " to it",
                                    one ? "add the back-reference" : "add the back-references");
    for (std::size_t i = 0; i < leads.size(); ++i) {
      if (told[i] == 0) {
        finding.related.push_back({context_.edition[leads[i]].destination_place,
                                   "lead " + context_.lead(leads[i]) + " leads to it here"});
      }
    }
  }

 private:
  Habit& habit(CoupletId couplet, std::span<LeadId const> leads) {
    return follows_its_only_lead(couplet, leads) ? after_its_lead_ : elsewhere_;
  }

  // Marks the leads that the reference tells of; reports it if there are none.
  bool agrees(CoupletId id, BackReference const& reference, std::span<LeadId const> leads,
              std::vector<char>& told) {
    auto const part = context_.labels.part_of(id);
    auto const couplet = context_.labels.find(reference.label, part);
    auto const lead = couplet ? std::nullopt : context_.labels.find_lead(reference.label, part);
    bool is_true = false;
    for (std::size_t i = 0; i < leads.size(); ++i) {
      if ((couplet && leads[i].couplet == *couplet) || (lead && leads[i] == *lead)) {
        told[i] = 1;
        is_true = true;
      }
    }
    if (is_true) return true;
    auto const name = "couplet " + in_quotes(context_.label(id));
    std::vector<std::string> truth;
    for (auto const to : leads) truth.push_back(context_.lead(to));
    std::string remedy = "mend the back-reference or the lead that should lead here";
    if (!truth.empty()) {
      remedy = std::string{truth.size() == 1 ? "lead " : "leads "} + in_prose(truth) +
               (truth.size() == 1 ? " leads" : " lead") + " to it: mend the one or the other";
    }
    if (!couplet && !lead) {
      context_.report("dangling-back-reference", reference.place, reference.label,
                      name + " says that it is reached from " + in_quotes(reference.label) +
                          ", which this edition lacks",
                      std::move(remedy));
    } else {
      context_.report("wrong-back-reference", reference.place, reference.label,
                      name + " says that it is reached from " + in_quotes(reference.label) +
                          ", but no lead there leads to it",
                      std::move(remedy));
    }
    return false;
  }

  ProofContext& context_;
  Habit after_its_lead_;
  Habit elsewhere_;
};

}  // namespace

void check_back_references(ProofContext& context) {
  BackReferenceCheck check{context};
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) check.check(c);
}

}  // namespace keydrift::proofing
