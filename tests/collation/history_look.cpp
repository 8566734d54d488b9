#include "history_look.hpp"

#include <algorithm>
#include <iterator>
#include <optional>

namespace keydrift::test {
namespace {

bool excepts(DraftLead const& lead, std::size_t taxon) {
  return std::any_of(lead.statements.begin(), lead.statements.end(), [&](DraftStatement const& s) {
    return std::find(s.except.begin(), s.except.end(), taxon) != s.except.end();
  });
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

bool leads_there_in_both(Case const& made, std::size_t node) {
  std::set<std::size_t> olds;
  for (auto const parent : made.old_nodes) {
    for (auto const& lead : made.old_draft.nodes[parent].leads) {
      if (lead.node == node) olds.insert(lead.id);
    }
  }
  return std::any_of(made.new_nodes.begin(), made.new_nodes.end(), [&](std::size_t parent) {
    auto const& leads = made.new_draft.nodes[parent].leads;
    return std::any_of(leads.begin(), leads.end(), [&](DraftLead const& lead) {
      return lead.node == node && olds.count(lead.id) != 0;
    });
  });
}

// Has a third of its statements stayed, or three quarters of how it parts the taxa?  And does more
// than one character tell it, or its words, taxa or place?  `is`: the couplet that it was merged
// into, or itself.
bool recognisable(Case const& made, std::size_t was, std::size_t is) {
  auto const& olds = made.old_draft.nodes[was].leads;
  auto const& news = made.new_draft.nodes[is].leads;
  std::map<std::size_t, DraftStatement const*> said;
  for (auto const& lead : news) {
    for (auto const& s : lead.statements) said.emplace(s.id, &s);
  }
  std::size_t statements = 0;
  std::size_t stayed = 0;
  std::size_t in_the_same_words = 0;
  double taxa = 0;
  for (auto const& lead : olds) {
    for (auto const& s : lead.statements) {
      ++statements;
      auto const found = said.find(s.id);
      if (found == said.end()) continue;
      bool const same_words = s.words == found->second->words;
      stayed += !s.character.empty() || same_words;
      in_the_same_words += same_words;
    }
    auto const same = std::find_if(news.begin(), news.end(),
                                   [&](DraftLead const& other) { return other.id == lead.id; });
    if (same == news.end()) continue;
    auto const before = names_below(made.old_draft, lead);
    auto const after = names_below(made.new_draft, *same);
    std::vector<std::string> both;
    std::set_intersection(before.begin(), before.end(), after.begin(), after.end(),
                          std::back_inserter(both));
    taxa += static_cast<double>(both.size()) / static_cast<double>(std::max<std::size_t>(
                                                   before.size() + after.size() - both.size(), 1));
  }
  if (in_the_same_words == 0 && stayed <= olds.size() && taxa == 0 &&
      !leads_there_in_both(made, is)) {
    return false;
  }
  return 3 * stayed >= statements || 4 * taxa >= 3 * static_cast<double>(olds.size());
}

}  // namespace

Look::Look(Draft const& draft, std::vector<std::size_t> const& order) : draft_{draft} {
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

DraftLead const* Look::lead(LeadKey const& key) const {
  auto const found = leads_.find(key);
  return found == leads_.end() ? nullptr : found->second;
}

std::set<Look::Step> Look::ways(std::size_t taxon, bool without_exceptions) const {
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

bool Look::only_by_exception(std::size_t taxon) const {
  auto const from_start = [&](std::set<Step> const& ways) {
    return std::any_of(ways.begin(), ways.end(),
                       [&](Step const& step) { return step.first.first == draft_.root; });
  };
  return from_start(ways(taxon)) && !from_start(ways(taxon, true));
}

Strength strength_of(DraftStatement const& statement) {
  if (statement.noted) return Strength::noted;
  if (!statement.except.empty()) return Strength::excepted;
  return statement.hedged ? Strength::hedged : Strength::firm;
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

std::string tick(std::string const& was, std::string const& is) { return was + " → " + is; }

Doubt doubtful(Case const& made) {
  std::set<std::size_t> const news{made.new_nodes.begin(), made.new_nodes.end()};
  std::map<std::size_t, std::size_t> merged;
  for (auto const& [was, is] : made.history.parts) {
    if (news.count(was) == 0) merged.emplace(was, is);
  }
  Doubt doubt;
  for (auto const node : made.old_nodes) {
    auto const found = merged.find(node);
    auto const is = found == merged.end() ? node : found->second;
    if (news.count(is) == 0 || recognisable(made, node, is)) continue;
    if (is == node) doubt.couplets.insert(node);
    for (auto const* draft : {&made.old_draft, &made.new_draft}) {
      for (auto const& lead : draft->nodes[node].leads) doubt.leads.insert(lead.id);
    }
  }
  return doubt;
}

}  // namespace keydrift::test
