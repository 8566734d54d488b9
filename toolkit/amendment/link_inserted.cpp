// What leads to the couplets that a piece inserted without saying so.
#include <algorithm>
#include <set>

#include "keydrift/amendment/application.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::amending {
namespace {

class Linker {
 public:
  explicit Linker(Application& application) : a_{application}, draft_{application.draft} {
    for (auto const& one : a_.inserted) fresh_.insert(one.couplet.index);
  }

  void run() {
    for (auto const& one : a_.inserted) {
      if (is_start(one.couplet) || !draft_.leads_to(one.couplet).empty()) continue;
      if (one.before) {
        link_before(one);
      } else {
        link_behind(one);
      }
    }
  }

 private:
  [[nodiscard]] bool is_start(CoupletId id) const {
    return std::any_of(draft_.edition.parts.begin(), draft_.edition.parts.end(),
                       [&](KeyPart const& part) { return part.start == id; });
  }

  // Whatever led to the couplet that this one stands before leads here, if this one leads on to it.
  void link_before(Application::Inserted const& one) {
    auto const exits = exits_of(one.couplet);
    bool const leads_on =
        std::find(exits.begin(), exits.end(), Destination{ToCouplet{one.beside}}) != exits.end();
    if (!leads_on) {
      link_behind(one);
      return;
    }
    bool linked = false;
    for (auto const lead : draft_.leads_to(one.beside)) {
      if (fresh_.count(lead.couplet.index) != 0) continue;
      lead_to(lead, one);
      linked = true;
    }
    for (auto& part : draft_.edition.parts) {
      if (part.start != one.beside) continue;
      part.start = one.couplet;
      linked = true;
    }
    if (!linked) refuse(one);
  }

  // A lead that leads where the inserted couplet leads on: of the couplets that its back-reference
  // names, else of the one that it stands behind, else of any, if there is but one.
  void link_behind(Application::Inserted const& one) {
    auto const exits = exits_of(one.couplet);
    std::vector<LeadId> from;
    auto const& references = draft_.edition[one.couplet].back_references;
    for (auto const& reference : references) {
      if (auto const parent = draft_.find(reference.label, draft_.part[one.couplet.index])) {
        gather(*parent, exits, from);
      } else if (auto const lead = draft_.find_lead(reference.label)) {
        from.push_back(*lead);  // "7a (7b)" says which
      }
    }
    if (references.empty()) gather(one.beside, exits, from);
    if (from.empty() && references.empty()) {
      for (auto const row : draft_.order) {
        if (draft_.gone[row] == 0 && row != one.beside.index) gather({row}, exits, from);
      }
    }
    if (from.size() != 1) {
      refuse(one, from);
      return;
    }
    lead_to(from.front(), one);
  }

  void gather(CoupletId couplet, std::vector<Destination> const& exits,
              std::vector<LeadId>& from) const {
    if (fresh_.count(couplet.index) != 0) return;
    auto const& leads = draft_.edition[couplet].leads;
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      if (std::find(exits.begin(), exits.end(), leads[i].destination) != exits.end()) {
        from.push_back({couplet, i});
      }
    }
  }

  // Where the couplet leads, through other inserted ones, out into the edition.
  [[nodiscard]] std::vector<Destination> exits_of(CoupletId couplet) const {
    std::vector<Destination> exits;
    std::vector<CoupletId> pending{couplet};
    std::set<std::uint32_t> seen{couplet.index};
    while (!pending.empty()) {
      auto const at = pending.back();
      pending.pop_back();
      for (auto const& lead : draft_.edition[at].leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to != nullptr && fresh_.count(to->couplet.index) != 0) {
          if (seen.insert(to->couplet.index).second) pending.push_back(to->couplet);
        } else if (!std::holds_alternative<Unresolved>(lead.destination)) {
          exits.push_back(lead.destination);
        }
      }
    }
    return exits;
  }

  void lead_to(LeadId lead, Application::Inserted const& one) {
    auto& open = a_.record(AmendmentAct::redirected, lead.couplet, *one.instruction);
    open.deed.before = {draft_.as_printed(lead)};
    open.leads = {lead.ordinal};
    auto const& label = draft_.edition[one.couplet].label;
    open.deed.detail = "because couplet " + label + " was inserted";
    auto& now = draft_.edition[lead];
    now.destination = ToCouplet{one.couplet};
    now.destination_printed = label;
    now.taxon_remark.clear();
  }

  void refuse(Application::Inserted const& one, std::vector<LeadId> const& possible = {}) {
    auto const& couplet = draft_.edition[one.couplet];
    std::string remedy = "print the lead that leads to it in the piece as well";
    if (!possible.empty()) {
      std::vector<std::string> names;
      for (auto const lead : possible) names.push_back(lead_name(draft_.edition, lead));
      remedy = "say which of the leads " + in_prose(names) + " leads to it";
    } else {
      std::vector<std::string> names;
      for (auto const& lead : draft_.as_printed(one.beside)) {
        names.push_back(lead.name + " (now to " + lead.destination + ")");
      }
      remedy += "; the nearest leads are " + in_prose(names);
    }
    auto const words = couplet.leads.empty() ? std::string{} : couplet.leads.front().text;
    a_.refuse("unlinked-couplet", unmarked(couplet.place), words,
              "couplet " + couplet.label + " was inserted, but " +
                  (possible.empty() ? "nothing leads to it"
                                    : "several leads could lead to it, and none does"),
              remedy);
  }

  Application& a_;
  Draft& draft_;
  std::set<std::uint32_t> fresh_;
};

}  // namespace

void link_inserted(Application& application) { Linker{application}.run(); }

}  // namespace keydrift::amending
