// What a collation must report of characters in a generated history.

#include <algorithm>
#include <array>
#include <map>
#include <optional>

#include "history_look.hpp"

namespace keydrift::test {
namespace {

std::string role_line(char const* transition, std::string const& character, std::string const& was,
                      std::string const& is, std::vector<std::string> added = {},
                      std::vector<std::string> removed = {}) {
  std::string line = character.empty() || character.front() == '~' ? "~" : character;
  line += ", " + tick(was, is) + ": " + transition;
  std::sort(added.begin(), added.end());
  std::sort(removed.begin(), removed.end());
  for (auto const& group : added) line += " for " + group;
  for (auto const& group : removed) line += " not for " + group;
  return line;
}

RoleTransition change_of_strength(Strength was, Strength is) {
  if (is == Strength::firm) return RoleTransition::became_firm;
  if (is == Strength::noted) return RoleTransition::became_note;
  if (is == Strength::excepted) {
    return was == Strength::firm ? RoleTransition::became_exception
                                 : RoleTransition::became_stronger;
  }
  return was == Strength::noted ? RoleTransition::became_stronger : RoleTransition::became_hedged;
}

class Casting {
 public:
  Casting(Look const& olds, Look const& news, std::set<std::size_t> doubtful_leads)
      : old_{olds}, new_{news}, doubtful_leads_{std::move(doubtful_leads)} {}

  Lines run() && {
    for (auto const* look : {&old_, &new_}) {
      for (auto const& [key, lead] : look->leads()) {
        auto const index = look == &old_ ? 0U : 1U;
        lead_of_[index].emplace(key.second, key);
        if (!divided(key.first)) continue;
        for (auto const& s : lead->statements) said_[index].emplace(s.id, std::pair{key, &s});
      }
    }
    for (auto const& [key, lead] : old_.leads()) {
      auto const there = answer(0, key);
      if (doubtful(key) || (there && doubtful(*there))) continue;
      if (there) {
        compare(*lead, *new_.lead(*there), key, *there);
      } else {
        for (auto const& s : lead->statements) went(s, key, "-");
      }
    }
    for (auto const& [key, lead] : new_.leads()) {
      if (answer(1, key) || doubtful(key)) continue;
      for (auto const& s : lead->statements) came(s, "-", key);
    }
    return std::move(lines_);
  }

 private:
  [[nodiscard]] bool doubtful(LeadKey const& key) const {
    return doubtful_leads_.count(key.second) != 0;
  }
  [[nodiscard]] bool divided(std::size_t node) const {
    return new_.draft().nodes[node].split_or_merged;
  }
  // The same lead in the other edition: of a couplet that was split or merged in any of its parts.
  [[nodiscard]] std::optional<LeadKey> answer(std::size_t index, LeadKey const& key) const {
    auto const& there = lead_of_[1 - index];
    auto const found = there.find(key.second);
    if (found == there.end()) return std::nullopt;
    auto const& other = found->second;
    if (other.first != key.first && !(divided(key.first) && divided(other.first))) {
      return std::nullopt;
    }
    return other;
  }
  // What stands in other parts of a couplet that was split or merged neither came nor went.
  [[nodiscard]] bool elsewhere(std::size_t index, DraftStatement const& s,
                               LeadKey const& key) const {
    return divided(key.first) && said_[1 - index].count(s.id) != 0;
  }
  void went(DraftStatement const& s, LeadKey const& key, std::string const& is) {
    if (!elsewhere(0, s, key)) alone("dropped", s, old_.name(key), is);
  }
  void came(DraftStatement const& s, std::string const& was, LeadKey const& key) {
    if (!elsewhere(1, s, key)) alone("introduced", s, was, new_.name(key));
  }
  void alone(char const* transition, DraftStatement const& s, std::string const& was,
             std::string const& is) {
    lines_.insert(role_line(transition, s.character, was, is));
  }

  void compare(DraftLead const& was, DraftLead const& is, LeadKey const& old_key,
               LeadKey const& new_key) {
    auto const& old_name = old_.name(old_key);
    auto const& new_name = new_.name(new_key);
    // A statement is itself; else a character that is known is the same character.
    auto const answer_in = [](DraftLead const& lead, DraftStatement const& s) {
      auto const itself = std::find_if(lead.statements.begin(), lead.statements.end(),
                                       [&](DraftStatement const& t) { return s.id == t.id; });
      if (itself != lead.statements.end() || s.character.empty()) return itself;
      return std::find_if(lead.statements.begin(), lead.statements.end(),
                          [&](DraftStatement const& t) { return s.character == t.character; });
    };
    for (auto const& s : was.statements) {
      auto const found = answer_in(is, s);
      if (found == is.statements.end()) {
        went(s, old_key, new_name);
      } else {
        compare(s, *found, old_name, new_name);
      }
    }
    for (auto const& s : is.statements) {
      if (answer_in(was, s) == was.statements.end()) came(s, old_name, new_key);
    }
  }

  void compare(DraftStatement const& was, DraftStatement const& is, std::string const& old_name,
               std::string const& new_name) {
    auto const groups = [](Draft const& draft, std::vector<std::size_t> const& of,
                           std::vector<std::size_t> const& others) {
      std::vector<std::string> names;
      for (auto const taxon : of) {
        if (std::find(others.begin(), others.end(), taxon) == others.end()) {
          names.push_back(draft.taxa[taxon]);
        }
      }
      return names;
    };
    auto const added = groups(new_.draft(), is.except, was.except);
    auto const removed = groups(old_.draft(), was.except, is.except);
    auto const tell = [&](RoleTransition transition, bool with_groups) {
      lines_.insert(role_line(to_word(transition), is.character, old_name, new_name,
                              with_groups ? added : std::vector<std::string>{},
                              with_groups ? removed : std::vector<std::string>{}));
    };
    if (strength_of(was) != strength_of(is)) {
      tell(change_of_strength(strength_of(was), strength_of(is)), true);
    } else if (!added.empty() || !removed.empty()) {
      tell(removed.empty() ? RoleTransition::exception_widened
           : added.empty() ? RoleTransition::exception_narrowed
                           : RoleTransition::exception_replaced,
           true);
    }
    if (!same_predicate(was, is)) {
      tell(was.value.ends_with(" mm") ? RoleTransition::limits_changed
                                      : RoleTransition::states_changed,
           false);
    }
    if (was.sex != is.sex) {
      tell(is.sex.empty() ? RoleTransition::scope_limit_removed : RoleTransition::scope_limit_added,
           false);
    }
  }

  Look const& old_;
  Look const& new_;
  std::set<std::size_t> doubtful_leads_;                   // ids
  std::array<std::map<std::size_t, LeadKey>, 2> lead_of_;  // by id
  // By id, in couplets that were split or merged.
  std::array<std::map<std::size_t, std::pair<LeadKey, DraftStatement const*>>, 2> said_;
  Lines lines_;
};

}  // namespace

Lines planted_roles(Case const& made) {
  Look const olds{made.old_draft, made.old_nodes};
  Look const news{made.new_draft, made.new_nodes};
  return Casting{olds, news, doubtful(made).leads}.run();
}

Lines reported_roles(Case const& made, Collation const& collation) {
  Lines lines;
  auto const doubt = doubtful(made);
  auto const in_doubt = [&](Draft const& draft, std::vector<std::size_t> const& nodes,
                            std::optional<LeadId> const& lead) {
    return lead &&
           doubt.leads.count(draft.nodes[nodes[lead->couplet.index]].leads[lead->ordinal].id) != 0;
  };
  for (auto const& role : collation.roles) {
    if (in_doubt(made.old_draft, made.old_nodes, role.old_lead) ||
        in_doubt(made.new_draft, made.new_nodes, role.new_lead)) {
      continue;
    }
    lines.insert(
        role_line(to_word(role.transition), role.character,
                  role.old_lead ? made.old_edition[*role.old_lead].label : std::string{"-"},
                  role.new_lead ? made.new_edition[*role.new_lead].label : std::string{"-"},
                  role.exceptions_added, role.exceptions_removed));
  }
  return lines;
}

}  // namespace keydrift::test
