// What a collation must report of a generated history.

#include <algorithm>
#include <array>
#include <iterator>
#include <map>

#include "history_cases.hpp"

namespace keydrift::test {
namespace {

// A lead by what persists: its couplet and itself.
using LeadKey = std::pair<std::size_t, std::size_t>;

// One side of a case, looked at through its draft.
class Look {
 public:
  Look(Draft const& draft, std::vector<std::size_t> const& order) : draft_{draft} {
    label_.assign(draft.nodes.size(), 0);
    for (std::size_t i = 0; i < order.size(); ++i) label_[order[i]] = i + 1;
    parents_.resize(draft.nodes.size());
    ends_.resize(draft.taxa.size());
    for (auto const node : order) {
      auto const& leads = draft.nodes[node].leads;
      for (std::size_t i = 0; i < leads.size(); ++i) {
        auto& list = leads[i].node == terminal ? ends_[leads[i].taxon] : parents_[leads[i].node];
        list.emplace_back(node, i);
        leads_.emplace(LeadKey{node, leads[i].id}, &leads[i]);
        names_.emplace(LeadKey{node, leads[i].id},
                       std::to_string(label_[node]) + static_cast<char>('a' + i));
      }
    }
  }

  [[nodiscard]] Draft const& draft() const { return draft_; }
  [[nodiscard]] bool has(std::size_t node) const {
    return node < label_.size() && label_[node] != 0;
  }
  [[nodiscard]] std::size_t ends(std::size_t taxon) const {
    return taxon < ends_.size() ? ends_[taxon].size() : 0;
  }
  [[nodiscard]] DraftLead const* lead(LeadKey const& key) const {
    auto const found = leads_.find(key);
    return found == leads_.end() ? nullptr : found->second;
  }
  [[nodiscard]] std::map<LeadKey, DraftLead const*> const& leads() const { return leads_; }
  [[nodiscard]] std::string const& name(LeadKey const& key) const { return names_.at(key); }

  // A lead on a way and the couplet that it leads to there.
  using Step = std::pair<LeadKey, std::size_t>;
  // Every lead on some way to the taxon; with `without_exceptions` those left out one of whose
  // statements excepts it.
  [[nodiscard]] std::set<Step> ways(std::size_t taxon, bool without_exceptions = false) const {
    std::set<Step> found;
    std::vector<char> seen(parents_.size(), 0);
    std::vector<std::size_t> waiting;
    auto const take = [&](std::vector<std::pair<std::size_t, std::size_t>> const& list) {
      for (auto const& [node, ordinal] : list) {
        auto const& lead = draft_.nodes[node].leads[ordinal];
        if (without_exceptions && excepts(lead, taxon)) continue;
        found.emplace(LeadKey{node, lead.id}, lead.node);
        if (seen[node] != 0) continue;
        seen[node] = 1;
        waiting.push_back(node);
      }
    };
    if (taxon < ends_.size()) take(ends_[taxon]);
    while (!waiting.empty()) {
      auto const node = waiting.back();
      waiting.pop_back();
      take(parents_[node]);
    }
    return found;
  }
  [[nodiscard]] bool only_by_exception(std::size_t taxon) const {
    auto const from_start = [&](std::set<Step> const& ways) {
      return std::any_of(ways.begin(), ways.end(),
                         [&](Step const& step) { return step.first.first == draft_.root; });
    };
    return from_start(ways(taxon)) && !from_start(ways(taxon, true));
  }

 private:
  [[nodiscard]] static bool excepts(DraftLead const& lead, std::size_t taxon) {
    return std::any_of(
        lead.statements.begin(), lead.statements.end(), [&](DraftStatement const& s) {
          return std::find(s.except.begin(), s.except.end(), taxon) != s.except.end();
        });
  }

  Draft const& draft_;
  std::vector<std::size_t> label_;
  std::vector<std::vector<std::pair<std::size_t, std::size_t>>> parents_;
  std::vector<std::vector<std::pair<std::size_t, std::size_t>>> ends_;
  std::map<LeadKey, DraftLead const*> leads_;
  std::map<LeadKey, std::string> names_;
};

Strength strength_of(DraftStatement const& statement) {
  if (statement.noted) return Strength::noted;
  if (!statement.except.empty()) return Strength::excepted;
  return statement.hedged ? Strength::hedged : Strength::firm;
}

std::vector<std::string> states_of(std::string const& value) {
  std::vector<std::string> states;
  std::size_t begin = 0;
  for (;;) {
    auto const end = value.find(" | ", begin);
    states.push_back(value.substr(begin, end - begin));
    if (end == std::string::npos) break;
    begin = end + 3;
  }
  std::sort(states.begin(), states.end());
  return states;
}

bool same_predicate(DraftStatement const& a, DraftStatement const& b) {
  if (a.character != b.character) return false;
  return a.character.empty() ? a.words == b.words : states_of(a.value) == states_of(b.value);
}

bool same_statement(DraftStatement const& a, DraftStatement const& b) {
  auto except_a = a.except;
  auto except_b = b.except;
  std::sort(except_a.begin(), except_a.end());
  std::sort(except_b.begin(), except_b.end());
  return same_predicate(a, b) && strength_of(a) == strength_of(b) && a.sex == b.sex &&
         except_a == except_b;
}

bool restated(DraftLead const& was, DraftLead const& is) {
  auto const deciding = [](DraftLead const& lead) {
    std::vector<DraftStatement> statements;
    for (auto const& statement : lead.statements) {
      if (statement.decides()) statements.push_back(statement);
    }
    return statements;
  };
  auto const olds = deciding(was);
  auto const news = deciding(is);
  return olds.size() != news.size() ||
         !std::is_permutation(olds.begin(), olds.end(), news.begin(), same_statement);
}

std::string tick(std::string const& was, std::string const& is) { return was + " → " + is; }

// --- roles ---------------------------------------------------------------------------------------

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
  Casting(Look const& olds, Look const& news, std::set<std::size_t> doubtful)
      : old_{olds}, new_{news}, doubtful_{std::move(doubtful)} {}

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
  [[nodiscard]] bool doubtful(LeadKey const& key) const { return doubtful_.count(key.first) != 0; }
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
  std::set<std::size_t> doubtful_;
  std::array<std::map<std::size_t, LeadKey>, 2> lead_of_;  // by id
  // By id, in couplets that were split or merged.
  std::array<std::map<std::size_t, std::pair<LeadKey, DraftStatement const*>>, 2> said_;
  Lines lines_;
};

// --- taxa ----------------------------------------------------------------------------------------

struct Match {
  std::size_t was{};
  std::size_t is{};
  std::optional<TaxonEvent> relation;
};

std::vector<Match> matches_of(Case const& made, Look const& olds, Look const& news) {
  std::vector<Match> matches;
  std::set<std::size_t> related;
  auto const add = [&](std::size_t was, std::size_t is, std::optional<TaxonEvent> relation) {
    if (olds.ends(was) > 0 && news.ends(is) > 0) matches.push_back({was, is, relation});
  };
  for (auto const& [was, is] : made.history.split_taxa) {
    add(was, is, TaxonEvent::split);
    related.insert({was, is});
  }
  for (auto const& [was, is] : made.history.lumped_taxa) {
    add(was, is, TaxonEvent::lumped);
    related.insert({was, is});
  }
  for (std::size_t i = 0; i < made.new_draft.taxa.size(); ++i) {
    if (related.count(i) != 0) continue;
    bool const renamed =
        i < made.old_draft.taxa.size() && made.old_draft.taxa[i] != made.new_draft.taxa[i];
    add(i, i, renamed ? std::optional{TaxonEvent::renamed} : std::nullopt);
  }
  return matches;
}

std::set<std::string> names_below(Draft const& draft, DraftLead const& lead) {
  std::set<std::string> names;
  std::set<std::size_t> seen;
  std::vector<DraftLead const*> waiting{&lead};
  while (!waiting.empty()) {
    auto const* here = waiting.back();
    waiting.pop_back();
    if (here->node == terminal) {
      names.insert(std::to_string(here->taxon));
    } else if (seen.insert(here->node).second) {
      for (auto const& next : draft.nodes[here->node].leads) waiting.push_back(&next);
    }
  }
  return names;
}

// Has a third of its statements stayed, or three quarters of how it parts the taxa?
bool recognisable(Case const& made, std::size_t node) {
  auto const& olds = made.old_draft.nodes[node].leads;
  auto const& news = made.new_draft.nodes[node].leads;
  std::map<std::size_t, DraftStatement const*> said;
  for (auto const& lead : news) {
    for (auto const& s : lead.statements) said.emplace(s.id, &s);
  }
  std::size_t statements = 0;
  std::size_t stayed = 0;
  double taxa = 0;
  for (auto const& lead : olds) {
    for (auto const& s : lead.statements) {
      ++statements;
      auto const found = said.find(s.id);
      stayed += found != said.end() && (!s.character.empty() || s.words == found->second->words);
    }
    auto const is = std::find_if(news.begin(), news.end(),
                                 [&](DraftLead const& other) { return other.id == lead.id; });
    if (is == news.end()) continue;
    auto const before = names_below(made.old_draft, lead);
    auto const after = names_below(made.new_draft, *is);
    std::vector<std::string> both;
    std::set_intersection(before.begin(), before.end(), after.begin(), after.end(),
                          std::back_inserter(both));
    taxa += static_cast<double>(both.size()) / static_cast<double>(std::max<std::size_t>(
                                                   before.size() + after.size() - both.size(), 1));
  }
  return 3 * stayed >= statements || 4 * taxa >= 3 * static_cast<double>(olds.size());
}

// Couplets of both editions that may as well be taken for others.
std::set<std::size_t> doubtful_nodes(Case const& made) {
  std::set<std::size_t> doubtful;
  std::set<std::size_t> const news{made.new_nodes.begin(), made.new_nodes.end()};
  for (auto const node : made.old_nodes) {
    if (news.count(node) != 0 && !recognisable(made, node)) doubtful.insert(node);
  }
  return doubtful;
}

// Is the line about the way of one of these taxa?
bool of_doubtful_way(std::string const& line, std::set<std::string> const& taxa) {
  auto const colon = line.rfind(": ");
  auto const event = line.substr(colon + 2);
  return (event == to_word(TaxonEvent::other_route) ||
          event == to_word(TaxonEvent::restated_route)) &&
         taxa.count(line.substr(0, colon)) != 0;
}

}  // namespace

Tally tally_pairs(Case const& made, Pairs const& pairs) {
  std::set<std::size_t> const news{made.new_nodes.begin(), made.new_nodes.end()};
  std::set<std::pair<std::size_t, std::size_t>> const parts{made.history.parts.begin(),
                                                            made.history.parts.end()};
  Tally tally;
  auto const doubtful = doubtful_nodes(made);
  auto const asked_for = [&](std::size_t node) {
    return news.count(node) != 0 && doubtful.count(node) == 0;
  };
  for (auto const node : made.old_nodes) tally.planted += asked_for(node) ? 1U : 0U;
  for (auto const& [was, is] : pairs) {
    auto const old_node = made.old_nodes[was];
    auto const new_node = made.new_nodes[is];
    if (old_node == new_node && !asked_for(old_node)) continue;
    ++tally.reported;
    if (old_node == new_node || parts.count({old_node, new_node}) != 0) ++tally.right;
  }
  return tally;
}

namespace {

// Taxa, as lines call them, with a way by a couplet that may as well be taken for another.
std::set<std::string> taxa_on_doubtful_ways(Case const& made) {
  auto const doubtful = doubtful_nodes(made);
  std::set<std::string> taxa;
  if (doubtful.empty()) return taxa;
  Look const olds{made.old_draft, made.old_nodes};
  Look const news{made.new_draft, made.new_nodes};
  for (auto const& [was, is, relation] : matches_of(made, olds, news)) {
    for (auto const& ways : {olds.ways(was), news.ways(is)}) {
      if (std::any_of(ways.begin(), ways.end(), [&](Look::Step const& step) {
            return doubtful.count(step.first.first) != 0;
          })) {
        taxa.insert(tick(made.old_draft.taxa[was], made.new_draft.taxa[is]));
      }
    }
  }
  return taxa;
}

Lines without_doubtful(Case const& made, Lines lines) {
  auto const taxa = taxa_on_doubtful_ways(made);
  std::erase_if(lines, [&](std::string const& line) { return of_doubtful_way(line, taxa); });
  return lines;
}

}  // namespace

Lines planted_taxa(Case const& made) {
  Look const olds{made.old_draft, made.old_nodes};
  Look const news{made.new_draft, made.new_nodes};
  Lines lines;
  auto const& old_names = made.old_draft.taxa;
  auto const& new_names = made.new_draft.taxa;
  std::set<std::size_t> old_matched;
  std::set<std::size_t> new_matched;
  for (auto const& [was, is, relation] : matches_of(made, olds, news)) {
    old_matched.insert(was);
    new_matched.insert(is);
    auto const tell = [&, was = was, is = is](TaxonEvent event) {
      lines.insert(tick(old_names[was], new_names[is]) + ": " + to_word(event));
    };
    if (relation) tell(*relation);
    if (news.ends(is) > olds.ends(was)) tell(TaxonEvent::more_ends);
    if (news.ends(is) < olds.ends(was)) tell(TaxonEvent::fewer_ends);
    auto const old_ways = olds.ways(was);
    if (old_ways != news.ways(is)) {
      tell(TaxonEvent::other_route);
    } else if (std::any_of(old_ways.begin(), old_ways.end(), [&](Look::Step const& step) {
                 return restated(*olds.lead(step.first), *news.lead(step.first));
               })) {
      tell(TaxonEvent::restated_route);
    }
    bool const before = olds.only_by_exception(was);
    bool const after = news.only_by_exception(is);
    if (after && !before) tell(TaxonEvent::only_by_exception);
    if (before && !after) tell(TaxonEvent::no_longer_by_exception);
  }
  for (std::size_t i = 0; i < new_names.size(); ++i) {
    if (olds.ends(i) > 0 && old_matched.count(i) == 0) {
      lines.insert(tick(old_names[i], "-") + ": " + to_word(TaxonEvent::left));
    }
    if (news.ends(i) > 0 && new_matched.count(i) == 0) {
      lines.insert(tick("-", new_names[i]) + ": " + to_word(TaxonEvent::entered));
    }
  }
  return without_doubtful(made, std::move(lines));
}

Lines reported_taxa(Case const& made, Collation const& collation) {
  Lines lines;
  auto const name = [](Edition const& edition, std::vector<TaxonId> const& taxa) {
    return taxa.empty() ? std::string{"-"} : edition[taxa.front()].name;
  };
  for (auto const& change : collation.taxa) {
    auto const who =
        tick(name(made.old_edition, change.old_taxa), name(made.new_edition, change.new_taxa));
    for (auto const event : change.events) {
      if (event != TaxonEvent::same_route) lines.insert(who + ": " + to_word(event));
    }
  }
  return without_doubtful(made, std::move(lines));
}

Lines planted_roles(Case const& made) {
  Look const olds{made.old_draft, made.old_nodes};
  Look const news{made.new_draft, made.new_nodes};
  return Casting{olds, news, doubtful_nodes(made)}.run();
}

Lines reported_roles(Case const& made, Collation const& collation) {
  Lines lines;
  auto const doubtful = doubtful_nodes(made);
  for (auto const& role : collation.roles) {
    if (role.old_lead && doubtful.count(made.old_nodes[role.old_lead->couplet.index]) != 0)
      continue;
    if (role.new_lead && doubtful.count(made.new_nodes[role.new_lead->couplet.index]) != 0)
      continue;
    lines.insert(
        role_line(to_word(role.transition), role.character,
                  role.old_lead ? made.old_edition[*role.old_lead].label : std::string{"-"},
                  role.new_lead ? made.new_edition[*role.new_lead].label : std::string{"-"},
                  role.exceptions_added, role.exceptions_removed));
  }
  return lines;
}

}  // namespace keydrift::test
