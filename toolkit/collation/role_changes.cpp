#include <algorithm>
#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

#include "keydrift/collation/divided_leads.hpp"
#include "keydrift/collation/ground.hpp"
#include "keydrift/collation/numbers.hpp"

namespace keydrift::collating {
namespace {

std::vector<Atom> atoms_of(Statement const& statement, std::string_view character) {
  std::vector<Atom> atoms;
  for (auto const& atom : statement.any_of) {
    if (atom.character == character) atoms.push_back(atom);
  }
  return atoms;
}

// Values of the limits that `others` lack.
std::vector<std::string> only_in(std::vector<Limit> const& limits,
                                 std::vector<Limit> const& others) {
  std::vector<std::string> values;
  for (auto const& limit : limits) {
    if (std::find(others.begin(), others.end(), limit) == others.end()) {
      values.push_back(limit.value);
    }
  }
  return values;
}

// Of two different strengths.
std::optional<RoleTransition> change_of_strength(Strength was, Strength is) {
  if (was == is) return std::nullopt;
  switch (is) {
    case Strength::firm:
      return RoleTransition::became_firm;
    case Strength::noted:
      return RoleTransition::became_note;
    case Strength::excepted:
      return was == Strength::firm ? RoleTransition::became_exception
                                   : RoleTransition::became_stronger;
    case Strength::hedged:
      return was == Strength::noted ? RoleTransition::became_stronger
                                    : RoleTransition::became_hedged;
  }
  return std::nullopt;
}

TaxonSet::Order order_of(KeyGraph const& graph) {
  std::vector<TaxonId> order;
  auto const count = static_cast<std::uint32_t>(graph.taxon_count());
  order.reserve(count);
  for (std::uint32_t at = 0; at < count; ++at) order.push_back(graph.taxon_at(at));
  return std::make_shared<std::vector<TaxonId> const>(std::move(order));
}

class Casting {
 public:
  explicit Casting(Ground const& ground)
      : ground_{ground},
        leads_{ground},
        order_{order_of(*ground.old_side.graph), order_of(*ground.new_side.graph)} {}

  std::vector<RoleChange> run() && {
    auto const& old_side = ground_.old_side;
    auto const& new_side = ground_.new_side;
    for (std::uint32_t row = 0; row < new_side.leads.size(); ++row) {
      auto const there = leads_.counterpart(Of::new_edition, row);
      if (there == none) {
        alone(Of::new_edition, new_side.leads[row]);
      } else if (leads_.divided(Of::new_edition, row)) {
        paired(old_side.leads[there], new_side.leads[row],
               compare_leads(old_side.lead(there), new_side.lead(row), ground_.exceptions));
      } else {
        paired(old_side.leads[there], new_side.leads[row], ground_.lead_changes[there]);
      }
    }
    for (std::uint32_t row = 0; row < old_side.leads.size(); ++row) {
      if (leads_.counterpart(Of::old_edition, row) == none) {
        alone(Of::old_edition, old_side.leads[row]);
      }
    }
    // What has a place in the new edition comes first, by that place; the rest by the old one's.
    std::stable_sort(changes_.begin(), changes_.end(),
                     [](RoleChange const& a, RoleChange const& b) {
                       auto const key = [](RoleChange const& c) {
                         return std::tuple{c.transition, !c.new_lead.has_value(), c.new_lead,
                                           c.old_lead,   c.new_statement,         c.old_statement};
                       };
                       return key(a) < key(b);
                     });
    return std::move(changes_);
  }

 private:
  RoleChange& add(RoleTransition transition, std::string character, std::optional<LeadId> old_lead,
                  std::optional<LeadId> new_lead) {
    RoleChange change;
    change.character = std::move(character);
    change.transition = transition;
    change.old_lead = old_lead;
    change.new_lead = new_lead;
    if (old_lead) {
      change.old_taxa = {order_[0], ground_.old_side.graph->taxa_below(*old_lead)};
    }
    if (new_lead) {
      change.new_taxa = {order_[1], ground_.new_side.graph->taxa_below(*new_lead)};
    }
    changes_.push_back(std::move(change));
    return changes_.back();
  }

  // Every statement of a lead without counterpart came or went.
  void alone(Of of, LeadId lead) {
    auto const count =
        static_cast<std::uint32_t>((*ground_.side(of).edition)[lead].statements.size());
    for (std::uint32_t i = 0; i < count; ++i) {
      if (of == Of::old_edition) {
        went({lead, i}, std::nullopt);
      } else {
        came({lead, i}, std::nullopt);
      }
    }
  }

  void paired(LeadId old_lead, LeadId new_lead, LeadChange const& lead_change) {
    auto const& olds = (*ground_.old_side.edition)[old_lead].statements;
    auto const& news = (*ground_.new_side.edition)[new_lead].statements;
    for (auto const& pair : lead_change.statements) {
      if (pair.same) continue;
      if (pair.old_statement && pair.new_statement) {
        compare(StatementId{old_lead, *pair.old_statement},
                StatementId{new_lead, *pair.new_statement}, olds[*pair.old_statement],
                news[*pair.new_statement]);
      } else if (pair.new_statement) {
        came({new_lead, *pair.new_statement}, old_lead);
      } else {
        went({old_lead, *pair.old_statement}, new_lead);
      }
    }
  }

  // A statement that nothing in the corresponding lead answers to.  Where couplets were split or
  // merged it may have stood in another part; what a lead from part to part says of a character
  // that the other edition's parts speak of sums up and is no change.
  void came(StatementId is, std::optional<LeadId> old_lead) {
    auto const& statement = (*ground_.new_side.edition)[is.lead].statements[is.ordinal];
    auto const row = ground_.new_side.row(is.lead);
    if (auto const was = leads_.said_there(Of::new_edition, row, statement); was.row != none) {
      if (!leads_.is_joint(Of::new_edition, row)) {
        across({ground_.old_side.leads[was.row], was.statement}, is);
      }
      return;
    }
    for (auto& character : characters_of(statement)) {
      add(RoleTransition::introduced, std::move(character), old_lead, is.lead).new_statement = is;
    }
  }
  void went(StatementId was, std::optional<LeadId> new_lead) {
    auto const& statement = (*ground_.old_side.edition)[was.lead].statements[was.ordinal];
    auto const row = ground_.old_side.row(was.lead);
    if (auto const is = leads_.said_there(Of::old_edition, row, statement); is.row != none) {
      if (!leads_.is_joint(Of::old_edition, row)) {
        across(was, {ground_.new_side.leads[is.row], is.statement});
      }
      return;
    }
    for (auto& character : characters_of(statement)) {
      add(RoleTransition::dropped, std::move(character), was.lead, new_lead).old_statement = was;
    }
  }

  // Statements of different parts; one may be asked for from both sides.
  void across(StatementId old_id, StatementId new_id) {
    auto const& was = (*ground_.old_side.edition)[old_id.lead].statements[old_id.ordinal];
    auto const& is = (*ground_.new_side.edition)[new_id.lead].statements[new_id.ordinal];
    if (same_statement(was, is, ground_.exceptions)) return;
    if (told_across_.emplace(old_id, new_id).second) compare(old_id, new_id, was, is);
  }

  void compare(StatementId old_id, StatementId new_id, Statement const& was, Statement const& is) {
    auto const tell = [&](RoleTransition transition, std::string const& character) -> RoleChange& {
      auto& change = add(transition, character, old_id.lead, new_id.lead);
      change.old_statement = old_id;
      change.new_statement = new_id;
      return change;
    };
    auto const removed = ground_.exceptions.not_covered(Of::old_edition, was.except, is.except);
    auto const added = ground_.exceptions.not_covered(Of::new_edition, is.except, was.except);
    auto const before = characters_of(was);
    auto const after = characters_of(is);
    auto const has = [](std::vector<std::string> const& list, std::string const& character) {
      return std::find(list.begin(), list.end(), character) != list.end();
    };
    // Two opaque statements in other words are the same character said otherwise.
    bool const one_each_in_other_words = before.size() == 1 && after.size() == 1 && before != after;

    for (auto const& character : after) {
      bool const common = has(before, character) || one_each_in_other_words;
      if (!common) {
        tell(RoleTransition::introduced, character).old_statement.reset();
        continue;
      }
      if (auto const transition = change_of_strength(was.strength, is.strength)) {
        auto& change = tell(*transition, character);
        change.exceptions_added = added;
        change.exceptions_removed = removed;
      } else if (!added.empty() || !removed.empty()) {
        auto& change = tell(removed.empty() ? RoleTransition::exception_widened
                            : added.empty() ? RoleTransition::exception_narrowed
                                            : RoleTransition::exception_replaced,
                            character);
        change.exceptions_added = added;
        change.exceptions_removed = removed;
      }
      auto const old_atoms = atoms_of(was, one_each_in_other_words ? before.front() : character);
      auto const new_atoms = atoms_of(is, character);
      if (!same_atoms(old_atoms, new_atoms)) {
        bool const numeric = old_atoms.size() == 1 && new_atoms.size() == 1 &&
                             !old_atoms.front().ranges.empty() && !new_atoms.front().ranges.empty();
        auto& change = tell(
            numeric ? RoleTransition::limits_changed : RoleTransition::states_changed, character);
        if (numeric) change.numbers = change_in_words(old_atoms.front(), new_atoms.front());
      }
      if (auto limits = only_in(is.limits, was.limits); !limits.empty()) {
        tell(RoleTransition::scope_limit_added, character).limits = std::move(limits);
      }
      if (auto limits = only_in(was.limits, is.limits); !limits.empty()) {
        tell(RoleTransition::scope_limit_removed, character).limits = std::move(limits);
      }
    }
    for (auto const& character : before) {
      if (has(after, character) || one_each_in_other_words) continue;
      tell(RoleTransition::dropped, character).new_statement.reset();
    }
  }

  Ground const& ground_;
  DividedLeads const leads_;
  std::array<TaxonSet::Order, 2> order_;
  std::set<std::pair<StatementId, StatementId>> told_across_;
  std::vector<RoleChange> changes_;
};

}  // namespace

std::vector<RoleChange> role_changes(Ground const& ground) { return Casting{ground}.run(); }

}  // namespace keydrift::collating
