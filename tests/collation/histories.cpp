#include "histories.hpp"

#include <algorithm>
#include <set>

namespace keydrift::test {
namespace {

constexpr std::array syllables{"va",  "lo",  "mi",  "re",  "tu",  "sha", "no",  "ke",  "pri",
                               "dra", "sto", "fen", "gul", "bex", "wor", "zim", "hal", "cyt"};

std::string word(Dice& dice, std::size_t vocabulary) {
  auto number = dice.below(vocabulary);
  std::string text;
  for (int i = 0; i < 3; ++i) {
    text += syllables[number % syllables.size()];
    number /= syllables.size();
  }
  return text;
}

std::string words(Draft const& draft, Dice& dice, std::size_t count) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text += (i == 0 ? "" : " ") + word(dice, draft.words);
  return text;
}

// One to three characters, each with contrasting statements: two in three with states or numbers
// that a lexicon knows, the others in words of their own.
void write_statements(Draft& draft, std::vector<DraftLead>& leads, Dice& dice) {
  for (auto& lead : leads) lead.statements.clear();
  auto const count = 1 + dice.below(3);
  auto const first_character = dice.below(draft.characters);
  for (std::size_t i = 0; i < count; ++i) {
    auto const kind = dice.below(6);
    auto const character = "c" + std::to_string((first_character + i * 37) % draft.characters);
    auto const first = dice.below(4);
    auto const subject = words(draft, dice, 2);
    auto const limit = 2 + dice.below(30);
    std::size_t ordinal = 0;
    for (auto& lead : leads) {
      DraftStatement statement;
      statement.id = draft.next_id++;
      statement.words = subject + " " + words(draft, dice, 2);
      if (kind < 3) {
        statement.character = character;
        statement.value = "s" + std::to_string(first + ordinal);
      } else if (kind == 3) {
        statement.character = character + "n";
        statement.value =
            (ordinal == 0 ? "< " : ">= ") + std::to_string(limit + ordinal / 2) + " mm";
      }
      lead.statements.push_back(std::move(statement));
      ++ordinal;
    }
  }
}

DraftLead to_taxon(Draft& draft, std::size_t taxon) {
  return {.id = draft.next_id++, .statements = {}, .node = terminal, .taxon = taxon};
}
DraftLead to_node(Draft& draft, std::size_t node) {
  return {.id = draft.next_id++, .statements = {}, .node = node, .taxon = 0};
}

// A taxon whose name no other taxon of the draft has: "Vavaus lolicus", by number.
std::size_t new_taxon(Draft& draft) {
  auto number = draft.taxa.size() + 1000 * (draft.next_id % 7);
  std::string genus;
  for (int i = 0; i < 3; ++i) {
    genus += syllables[number % syllables.size()];
    number /= syllables.size();
  }
  std::string name{static_cast<char>(genus[0] - 'a' + 'A')};
  name += genus.substr(1) + "us ";
  for (std::size_t n = draft.taxa.size() + 1;;) {
    name += syllables[n % syllables.size()];
    n /= syllables.size();
    if (n == 0) break;
  }
  draft.taxa.push_back(name + "icus");
  return draft.taxa.size() - 1;
}

// --- what a draft looks like ---------------------------------------------------------------------

bool is_below(Draft const& draft, std::size_t node, std::size_t above) {
  std::vector<std::size_t> waiting{above};
  std::vector<char> seen(draft.nodes.size(), 0);
  while (!waiting.empty()) {
    auto const here = waiting.back();
    waiting.pop_back();
    if (here == node) return true;
    if (seen[here] != 0) continue;
    seen[here] = 1;
    for (auto const& lead : draft.nodes[here].leads) {
      if (lead.node != terminal) waiting.push_back(lead.node);
    }
  }
  return false;
}

std::size_t leads_to_node(Draft const& draft, std::size_t node) {
  std::size_t count = node == draft.root ? 1 : 0;
  for (auto const& other : draft.nodes) {
    if (!other.alive) continue;
    for (auto const& lead : other.leads) count += lead.node == node ? 1U : 0U;
  }
  return count;
}

// What only these leads lead to goes with them.
bool reached(Draft const& draft, std::size_t node) { return is_below(draft, node, draft.root); }

std::vector<std::size_t> ends_of(Draft const& draft) {  // by taxon
  std::vector<std::size_t> ends(draft.taxa.size(), 0);
  for (std::size_t i = 0; i < draft.nodes.size(); ++i) {
    if (!draft.nodes[i].alive) continue;
    for (auto const& lead : draft.nodes[i].leads) {
      if (lead.node == terminal) ++ends[lead.taxon];
    }
  }
  return ends;
}

bool excepted(Draft const& draft, std::size_t taxon) {
  for (auto const& node : draft.nodes) {
    if (!node.alive) continue;
    for (auto const& lead : node.leads) {
      for (auto const& statement : lead.statements) {
        auto const& except = statement.except;
        if (std::find(except.begin(), except.end(), taxon) != except.end()) return true;
      }
    }
  }
  return false;
}

std::vector<std::size_t> taxa_below(Draft const& draft, DraftLead const& lead) {
  std::vector<std::size_t> taxa;
  std::vector<DraftLead const*> waiting{&lead};
  std::vector<char> seen(draft.nodes.size(), 0);
  while (!waiting.empty()) {
    auto const* here = waiting.back();
    waiting.pop_back();
    if (here->node == terminal) {
      if (std::find(taxa.begin(), taxa.end(), here->taxon) == taxa.end())
        taxa.push_back(here->taxon);
      continue;
    }
    if (seen[here->node] != 0) continue;
    seen[here->node] = 1;
    for (auto const& next : draft.nodes[here->node].leads) waiting.push_back(&next);
  }
  return taxa;
}

// Puts `replacement` where `node` hung.
void replace(Draft& draft, std::size_t node, DraftLead const& replacement) {
  if (draft.root == node) draft.root = replacement.node;
  for (auto& parent : draft.nodes) {
    if (!parent.alive) continue;
    for (auto& lead : parent.leads) {
      if (lead.node == node) {
        lead.node = replacement.node;
        lead.taxon = replacement.taxon;
      }
    }
  }
}

// --- the edits -----------------------------------------------------------------------------------

class Editing {
 public:
  Editing(Draft& draft, History& history)
      : draft_{draft}, history_{history}, printed_{draft.nodes.size()} {}

  void make(Edit const& edit) {
    auto node = edit.node;
    if (edit.on_part) {
      auto const& parts = history_.parts;
      auto const split = std::find_if(parts.begin(), parts.end(),
                                      [&](auto const& pair) { return pair.first == node; });
      if (split == parts.end()) return;
      node = split->second;
    }
    if (node >= draft_.nodes.size() || !draft_.nodes[node].alive) return;
    Dice dice{edit.seed};
    if (make(edit.kind, node, dice)) history_.done.push_back(edit.kind);
  }

 private:
  std::vector<DraftLead>& leads(std::size_t node) { return draft_.nodes[node].leads; }

  // A taxon with one end that no exception names and no other edit has touched.
  bool simple(std::size_t taxon) {
    return ends_of(draft_)[taxon] == 1 && !excepted(draft_, taxon) &&
           std::find(touched_.begin(), touched_.end(), taxon) == touched_.end();
  }
  // Ordinal of a lead that names such a taxon, or the number of leads.
  std::size_t simple_end(std::size_t node) {
    auto const& list = leads(node);
    for (std::size_t i = 0; i < list.size(); ++i) {
      if (list[i].node == terminal && simple(list[i].taxon)) return i;
    }
    return list.size();
  }

  std::size_t add_node(std::vector<DraftLead> fresh, Dice& dice) {
    write_statements(draft_, fresh, dice);
    draft_.nodes.push_back({.leads = std::move(fresh)});
    return draft_.nodes.size() - 1;
  }

  void relate(std::string const& old_name, Relation relation, std::size_t is) {
    history_.rows.push_back({.old_name = old_name,
                             .relation = relation,
                             .new_name = draft_.taxa[is],
                             .note = "",
                             .place = {}});
  }

  // A statement of a random lead, of the kind asked for; nullptr where there is none.  What stands
  // in several leads is left alone.
  template <class Wanted>
  DraftStatement* pick(std::size_t node, Dice& dice, Wanted const& wanted) {
    std::vector<DraftStatement*> found;
    for (auto& lead : leads(node)) {
      for (auto& statement : lead.statements) {
        if (!statement.copied && wanted(statement)) found.push_back(&statement);
      }
    }
    return found.empty() ? nullptr : found[dice.below(found.size())];
  }

  bool make(EditKind kind, std::size_t node, Dice& dice) {
    switch (kind) {
      case EditKind::insert: {
        auto newcomer = to_taxon(draft_, new_taxon(draft_));
        auto const fresh = draft_.nodes.size();
        replace(draft_, node, {.id = 0, .statements = {}, .node = fresh, .taxon = 0});
        std::vector<DraftLead> both{to_node(draft_, node), std::move(newcomer)};
        both.front().goes_on = true;
        if (dice.one_in(2)) std::swap(both[0], both[1]);
        add_node(std::move(both), dice);
        return true;
      }
      case EditKind::remove: {
        auto const end = simple_end(node);
        if (leads(node).size() != 2 || end == leads(node).size()) return false;
        auto const rest = leads(node)[1 - end];
        if (node == draft_.root && rest.node == terminal) return false;
        replace(draft_, node, rest);
        draft_.nodes[node].alive = false;
        return true;
      }
      case EditKind::split:
        return split(node);
      case EditKind::merge:
        return merge(node);
      case EditKind::move:
        return move(node, dice);
      case EditKind::renumber:
        draft_.breadth_first = !draft_.breadth_first;
        return true;
      case EditKind::synonyms: {
        bool any = false;
        for (auto& lead : leads(node)) {
          for (auto& statement : lead.statements) {
            if (statement.character.empty()) continue;
            statement.words = words(draft_, dice, 4);
            any = true;
          }
        }
        return any;
      }
      case EditKind::clause_order: {
        if (leads(node).front().statements.size() < 2) return false;
        for (auto& lead : leads(node)) {
          std::reverse(lead.statements.begin(), lead.statements.end());
        }
        return true;
      }
      case EditKind::hedge: {
        auto* statement =
            pick(node, dice, [](DraftStatement const& s) { return !s.noted && s.except.empty(); });
        if (statement == nullptr) return false;
        statement->hedged = !statement->hedged;
        return true;
      }
      case EditKind::rewrite:
        if (draft_.nodes[node].split_or_merged) return false;
        write_statements(draft_, leads(node), dice);
        return true;
      case EditKind::swap_leads:
        std::swap(leads(node).front(), leads(node).back());
        return true;
      case EditKind::add_taxon: {
        leads(node).push_back(to_taxon(draft_, new_taxon(draft_)));
        auto& lead = leads(node).back();
        for (std::size_t i = 0; i < leads(node).front().statements.size(); ++i) {
          lead.statements.push_back({.id = draft_.next_id++, .words = words(draft_, dice, 4)});
        }
        return true;
      }
      case EditKind::drop_taxon: {
        auto const end = simple_end(node);
        if (leads(node).size() < 3 || end == leads(node).size()) return false;
        leads(node).erase(leads(node).begin() + static_cast<std::ptrdiff_t>(end));
        return true;
      }
      case EditKind::rename_taxon: {
        auto const end = simple_end(node);
        if (end == leads(node).size()) return false;
        auto const taxon = leads(node)[end].taxon;
        auto const old_name = draft_.taxa[taxon];
        draft_.taxa[taxon] = "Renatus " + old_name.substr(old_name.find(' ') + 1);
        touched_.push_back(taxon);
        relate(old_name, Relation::congruent, taxon);
        return true;
      }
      case EditKind::split_taxon: {
        auto const end = simple_end(node);
        if (end == leads(node).size()) return false;
        auto const taxon = leads(node)[end].taxon;
        auto const part = new_taxon(draft_);
        auto const fresh = add_node({to_taxon(draft_, taxon), to_taxon(draft_, part)}, dice);
        leads(fresh).front().goes_on = true;
        leads(node)[end].node = fresh;
        touched_.insert(touched_.end(), {taxon, part});
        for (auto const to : {taxon, part}) {
          relate(draft_.taxa[taxon], Relation::includes, to);
          history_.split_taxa.emplace_back(taxon, to);
        }
        return true;
      }
      case EditKind::lump_taxa: {
        auto const& list = leads(node);
        if (list.size() != 2 || node == draft_.root || list[0].node != terminal ||
            list[1].node != terminal || list[0].taxon == list[1].taxon || !simple(list[0].taxon) ||
            !simple(list[1].taxon)) {
          return false;
        }
        auto const kept = list[0].taxon;
        auto const gone = list[1].taxon;
        replace(draft_, node, list[0]);
        draft_.nodes[node].alive = false;
        touched_.insert(touched_.end(), {kept, gone});
        for (auto const from : {kept, gone}) {
          relate(draft_.taxa[from], Relation::included_in, kept);
          history_.lumped_taxa.emplace_back(from, kept);
        }
        return true;
      }
      case EditKind::limits: {
        auto* statement =
            pick(node, dice, [](DraftStatement const& s) { return !s.character.empty(); });
        if (statement == nullptr) return false;
        auto& value = statement->value;
        if (value.ends_with(" mm")) {
          auto const at = value.find(' ') + 1;
          value = value.substr(0, at) + std::to_string(std::stoul(value.substr(at)) + 1) + " mm";
        } else {
          value = value.find('|') == std::string::npos ? value + " | s9"
                                                       : value.substr(0, value.find(" |"));
        }
        return true;
      }
      case EditKind::exception:
        return exception(node, dice);
      case EditKind::sex: {
        auto* statement = pick(node, dice, [](DraftStatement const&) { return true; });
        if (statement == nullptr) return false;
        statement->sex = statement->sex.empty() ? "male" : "";
        return true;
      }
      case EditKind::note: {
        auto* statement =
            pick(node, dice, [](DraftStatement const& s) { return !s.hedged && s.except.empty(); });
        if (statement == nullptr) return false;
        statement->noted = !statement->noted;
        return true;
      }
      case EditKind::statement: {
        if (leads(node).front().statements.size() > 1 && dice.one_in(2) &&
            !draft_.nodes[node].split_or_merged) {
          for (auto& lead : leads(node)) {
            if (lead.statements.size() > 1) lead.statements.pop_back();
          }
          return true;
        }
        auto const subject = words(draft_, dice, 2);
        auto const character = "d" + std::to_string(dice.below(40));
        for (auto const& lead : leads(node)) {
          for (auto const& statement : lead.statements) {
            if (statement.character == character) return false;
          }
        }
        std::size_t ordinal = 0;
        for (auto& lead : leads(node)) {
          lead.statements.push_back({.id = draft_.next_id++,
                                     .words = subject + " " + words(draft_, dice, 2),
                                     .character = character,
                                     .value = "s" + std::to_string(ordinal++)});
        }
        return true;
      }
      case EditKind::repeat_taxon: {
        std::vector<std::size_t> known;
        auto const ends = ends_of(draft_);
        for (std::size_t i = 0; i < ends.size(); ++i) {
          if (ends[i] == 1 && simple(i)) known.push_back(i);
        }
        if (known.empty()) return false;
        auto const taxon = known[dice.below(known.size())];
        auto const fresh = draft_.nodes.size();
        replace(draft_, node, {.id = 0, .statements = {}, .node = fresh, .taxon = 0});
        add_node({to_node(draft_, node), to_taxon(draft_, taxon)}, dice);
        leads(fresh).front().goes_on = true;
        touched_.push_back(taxon);
        return true;
      }
    }
    return false;
  }

  // A polytomy is resolved into two couplets.
  bool split(std::size_t node) {
    if (leads(node).size() != 3 || draft_.nodes[node].split_or_merged) return false;
    auto const part = draft_.nodes.size();
    draft_.nodes.push_back({.leads = {leads(node)[1], leads(node)[2]}, .split_or_merged = true});
    auto joint = to_node(draft_, part);
    joint.statements = leads(node)[1].statements;
    auto const& others = leads(node)[2].statements;
    joint.statements.insert(joint.statements.end(), others.begin(), others.end());
    for (auto& statement : joint.statements) statement.copied = true;
    joint.joint = true;
    leads(node).resize(1);
    leads(node).push_back(std::move(joint));
    draft_.nodes[node].split_or_merged = true;
    history_.parts.emplace_back(node, part);
    return true;
  }

  // A couplet and one that hangs on it alone become one of three leads.
  bool merge(std::size_t node) {
    if (leads(node).size() != 2 || draft_.nodes[node].split_or_merged) return false;
    for (std::size_t i = 0; i < 2; ++i) {
      auto const child = leads(node)[i].node;
      if (child == terminal || leads(child).size() != 2 || leads_to_node(draft_, child) != 1 ||
          draft_.nodes[child].split_or_merged || leads(node)[1 - i].node == child) {
        continue;
      }
      if (child >= printed_) {
        take_in(node, i, child);
        return true;
      }
      auto joint = leads(node)[i];
      for (auto& statement : joint.statements) statement.copied = true;
      auto below = leads(child);
      draft_.nodes[child].alive = false;
      draft_.nodes[child].split_or_merged = true;
      draft_.nodes[node].split_or_merged = true;
      leads(node).erase(leads(node).begin() + static_cast<std::ptrdiff_t>(i));
      for (auto& lead : below) {
        lead.statements.insert(lead.statements.begin(), joint.statements.begin(),
                               joint.statements.end());
        leads(node).push_back(std::move(lead));
      }
      history_.parts.emplace_back(child, node);
      return true;
    }
    return false;
  }

  // A couplet that this revision inserted is united with the one before it: the lead to it goes on
  // to where it did, and says more; the others are leads added.
  void take_in(std::size_t node, std::size_t ordinal, std::size_t child) {
    auto const joint = leads(node)[ordinal];
    auto below = leads(child);
    draft_.nodes[child].alive = false;
    leads(node).erase(leads(node).begin() + static_cast<std::ptrdiff_t>(ordinal));
    for (auto& lead : below) {
      auto said = joint.statements;
      if (lead.goes_on) {
        lead.id = joint.id;
        lead.goes_on = joint.goes_on;
      } else {
        for (auto& statement : said) statement.id = draft_.next_id++;
      }
      lead.statements.insert(lead.statements.begin(), said.begin(), said.end());
      leads(node).push_back(std::move(lead));
    }
  }

  // Exchanges what stands behind a lead with what stands behind one elsewhere.
  bool move(std::size_t node, Dice& dice) {
    for (int attempt = 0; attempt < 8; ++attempt) {
      auto const other = dice.below(draft_.nodes.size());
      if (!draft_.nodes[other].alive || other == node || !reached(draft_, other)) continue;
      auto& mine = leads(node)[dice.below(leads(node).size())];
      auto& theirs = leads(other)[dice.below(leads(other).size())];
      auto const reaches = [&](DraftLead const& lead, std::size_t goal) {
        return lead.node != terminal && is_below(draft_, goal, lead.node);
      };
      bool const same =
          mine.node == theirs.node && (mine.node != terminal || mine.taxon == theirs.taxon);
      if (same || mine.joint || theirs.joint) continue;
      if (reaches(mine, other) || reaches(theirs, node)) continue;
      std::swap(mine.node, theirs.node);
      std::swap(mine.taxon, theirs.taxon);
      return true;
    }
    return false;
  }

  bool exception(std::size_t node, Dice& dice) {
    auto& lead = leads(node)[dice.below(leads(node).size())];
    if (lead.statements.empty()) return false;
    auto& statement = lead.statements[dice.below(lead.statements.size())];
    if (statement.hedged || statement.noted || statement.copied) return false;
    if (!statement.except.empty() && dice.one_in(3)) {
      statement.except.pop_back();
      return true;
    }
    auto const below = taxa_below(draft_, lead);
    auto const taxon = below[dice.below(below.size())];
    auto const& except = statement.except;
    if (std::find(except.begin(), except.end(), taxon) != except.end()) return false;
    if (std::find(touched_.begin(), touched_.end(), taxon) != touched_.end()) return false;
    touched_.push_back(taxon);
    statement.except.push_back(taxon);
    return true;
  }

  Draft& draft_;
  History& history_;
  std::size_t printed_;               // couplets of the edition that is revised
  std::vector<std::size_t> touched_;  // taxa that an edit of theirs was made on
};

// Couplets that the root does not reach any more, by edits in a reticulate key.
void drop_unreached(Draft& draft) {
  std::vector<char> seen(draft.nodes.size(), 0);
  std::vector<std::size_t> waiting{draft.root};
  while (!waiting.empty()) {
    auto const here = waiting.back();
    waiting.pop_back();
    if (seen[here] != 0) continue;
    seen[here] = 1;
    for (auto const& lead : draft.nodes[here].leads) {
      if (lead.node != terminal) waiting.push_back(lead.node);
    }
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (seen[i] == 0) draft.nodes[i].alive = false;
  }
}

bool may_cut_off(EditKind kind) {
  return kind == EditKind::remove || kind == EditKind::move || kind == EditKind::lump_taxa ||
         kind == EditKind::merge;
}

std::vector<std::size_t> shuffled_nodes(Draft const& draft, std::size_t percent, Dice& dice) {
  std::vector<std::size_t> nodes;
  for (std::size_t i = 0; i < draft.nodes.size(); ++i) {
    if (draft.nodes[i].alive) nodes.push_back(i);
  }
  auto const count = nodes.size() * percent / 100;
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    std::swap(nodes[i], nodes[i + dice.below(nodes.size() - i)]);
  }
  nodes.resize(count);
  return nodes;
}

}  // namespace

char const* to_word(Shape shape) {
  constexpr std::array words{"balanced",   "bushy",      "comb",
                             "polytomous", "reticulate", "repeated taxa"};
  return words[static_cast<std::size_t>(shape)];
}

char const* to_word(EditKind kind) {
  constexpr std::array<char const*, edit_kinds> words{"couplet inserted",
                                                      "couplet removed",
                                                      "couplet split",
                                                      "couplets merged",
                                                      "subtrees moved",
                                                      "renumbered",
                                                      "synonyms",
                                                      "order of clauses",
                                                      "hedge",
                                                      "rewritten",
                                                      "leads swapped",
                                                      "taxon added",
                                                      "taxon dropped",
                                                      "taxon renamed",
                                                      "taxon split",
                                                      "taxa lumped",
                                                      "limits, states",
                                                      "exception",
                                                      "limit to a sex",
                                                      "note",
                                                      "statement added, dropped",
                                                      "taxon repeated"};
  return words[static_cast<std::size_t>(kind)];
}

char const* to_word(Recipe recipe) {
  constexpr std::array<char const*, recipes> words{
      "split and reworded",   "merged and reworded",   "roles in split couplets",
      "roles in merged ones", "lumped in moved parts", "rewritten in moved parts",
      "moved and reworded",   "restated all over",     "inserted in a row",
      "taxa of one couplet",  "subtrees reordered"};
  return words[static_cast<std::size_t>(recipe)];
}

Draft make_draft(std::size_t couplets, Shape shape, Dice& dice, Vocabulary vocabulary) {
  Draft draft;
  if (vocabulary == Vocabulary::poor) {
    draft.words = 24;
    draft.characters = 11;
  }
  struct Edge {
    std::size_t node;
    std::size_t lead;
  };
  std::vector<Edge> open;
  std::size_t next = 0;  // of a balanced key: its open leads from the root outwards
  auto const add = [&] {
    auto const node = draft.nodes.size();
    auto const three = shape == Shape::polytomous ? !dice.one_in(3) : dice.one_in(12);
    auto const count = shape == Shape::polytomous && dice.one_in(6) ? std::size_t{4}
                       : three                                      ? std::size_t{3}
                                                                    : std::size_t{2};
    DraftNode fresh;
    for (std::size_t k = 0; k < count; ++k) fresh.leads.push_back(to_node(draft, terminal));
    draft.nodes.push_back(std::move(fresh));
    for (std::size_t k = 0; k < count; ++k) open.push_back({node, k});
    return node;
  };
  add();
  while (draft.nodes.size() < couplets) {
    Edge edge{};
    if (shape == Shape::balanced) {
      edge = open[next++];
    } else {
      auto const pick = shape == Shape::comb ? open.size() - 1 : dice.below(open.size());
      edge = open[pick];
      open[pick] = open.back();
      open.pop_back();
    }
    // A fifth of the leads of a reticulate key lead to a couplet that is there already; one that
    // was made later is never above.
    if (shape == Shape::reticulate && dice.one_in(5) && edge.node + 1 < draft.nodes.size()) {
      draft.nodes[edge.node].leads[edge.lead].node =
          edge.node + 1 + dice.below(draft.nodes.size() - edge.node - 1);
      if (open.size() < 2) add();
      continue;
    }
    auto const node = add();
    draft.nodes[edge.node].leads[edge.lead].node = node;
  }
  drop_unreached(draft);
  for (std::size_t i = 0; i < draft.nodes.size(); ++i) {
    auto& node = draft.nodes[i];
    if (!node.alive) continue;
    write_statements(draft, node.leads, dice);
    for (auto& lead : node.leads) {
      if (lead.node != terminal) continue;
      bool const again = shape == Shape::repeated && draft.taxa.size() > 4 && dice.one_in(5);
      lead.taxon = again ? dice.below(draft.taxa.size()) : new_taxon(draft);
    }
  }
  return draft;
}

std::vector<CoupletSketch> print(Draft const& draft, std::vector<std::size_t>& order) {
  order.clear();
  std::vector<std::size_t> label(draft.nodes.size(), 0);
  std::vector<std::size_t> waiting{draft.root};
  for (std::size_t next = 0; draft.breadth_first ? next < waiting.size() : !waiting.empty();) {
    std::size_t node{};
    if (draft.breadth_first) {
      node = waiting[next++];
    } else {
      node = waiting.back();
      waiting.pop_back();
    }
    if (label[node] != 0) continue;
    order.push_back(node);
    label[node] = order.size();
    auto const& leads = draft.nodes[node].leads;
    for (std::size_t k = 0; k < leads.size(); ++k) {
      auto const& lead = leads[draft.breadth_first ? k : leads.size() - 1 - k];
      if (lead.node != terminal) waiting.push_back(lead.node);
    }
  }
  std::vector<CoupletSketch> sketch;
  sketch.reserve(order.size());
  for (auto const node : order) {
    CoupletSketch couplet;
    couplet.label = std::to_string(label[node]);
    for (auto const& lead : draft.nodes[node].leads) {
      std::string text;
      for (auto const& statement : lead.statements) {
        if (!text.empty()) text += "; ";
        if (statement.hedged) text += "usually ";
        if (statement.noted) text += "note ";
        if (!statement.sex.empty()) text += statement.sex + " ";
        text += statement.words;
        if (!statement.character.empty()) {
          text += " {" + statement.character + ": " + statement.value + "}";
        }
        for (std::size_t i = 0; i < statement.except.size(); ++i) {
          text += (i == 0 ? " except " : " | ") + draft.taxa[statement.except[i]];
        }
      }
      couplet.leads.push_back({std::move(text), lead.node == terminal
                                                    ? draft.taxa[lead.taxon]
                                                    : std::to_string(label[lead.node])});
    }
    sketch.push_back(std::move(couplet));
  }
  return sketch;
}

std::vector<Edit> plan_edits(Draft const& draft, std::size_t percent, Dice& dice) {
  // How often each kind is, in the order of EditKind.
  constexpr std::array<std::size_t, edit_kinds> often{4, 4, 2, 2, 3, 0, 4, 3, 3, 2, 3,
                                                      2, 1, 3, 3, 2, 4, 4, 2, 1, 3, 2};
  std::vector<EditKind> lots;
  for (std::size_t i = 0; i < edit_kinds; ++i) {
    lots.insert(lots.end(), often[i], static_cast<EditKind>(i));
  }
  std::vector<Edit> edits;
  for (auto const node : shuffled_nodes(draft, percent, dice)) {
    edits.push_back({lots[dice.below(lots.size())], node, dice.below(~std::size_t{0})});
  }
  // The whole key is numbered anew once in three revisions, besides what insertions do.
  if (!edits.empty() && dice.one_in(3)) edits.front().kind = EditKind::renumber;
  return edits;
}

std::vector<Edit> plan_edits(Draft const& draft, std::size_t percent, Dice& dice, EditKind kind) {
  std::vector<Edit> edits;
  for (auto const node : shuffled_nodes(draft, percent, dice)) {
    edits.push_back({kind, node, dice.below(~std::size_t{0})});
    if (kind == EditKind::renumber) break;
  }
  return edits;
}

std::vector<Edit> plan_gathered_edits(Draft const& draft, std::size_t percent, Dice& dice,
                                      std::optional<Recipe> recipe) {
  std::vector<Edit> edits;
  std::set<std::size_t> edited;
  auto const nodes = shuffled_nodes(draft, 100, dice);
  auto const wanted = nodes.size() * percent / 100;
  auto const add = [&](EditKind kind, std::size_t node, bool on_part = false) {
    edits.push_back({kind, node, dice.below(~std::size_t{0}), on_part});
    edited.insert(node);
  };
  for (auto const node : nodes) {
    if (edited.size() >= wanted) break;
    auto const& leads = draft.nodes[node].leads;
    std::vector<std::size_t> below;
    for (auto const& lead : leads) {
      if (lead.node != terminal) below.push_back(lead.node);
    }
    bool const can_split = leads.size() == 3;
    bool const can_merge = leads.size() == 2 && !below.empty();
    auto const chosen = recipe ? *recipe : static_cast<Recipe>(dice.below(recipes));
    switch (chosen) {
      case Recipe::split_and_reworded:
        if (!can_split) continue;
        add(EditKind::split, node);
        add(EditKind::synonyms, node, true);
        add(EditKind::synonyms, node);
        add(EditKind::swap_leads, node, dice.one_in(2));
        add(EditKind::clause_order, node, dice.one_in(2));
        break;
      case Recipe::merged_and_reworded:
        if (!can_merge) continue;
        add(EditKind::merge, node);
        add(EditKind::synonyms, node);
        add(EditKind::swap_leads, node);
        add(EditKind::clause_order, node);
        break;
      case Recipe::roles_in_split:
        if (!can_split) continue;
        add(EditKind::split, node);
        for (bool const on_part : {true, false}) {
          add(EditKind::hedge, node, on_part);
          add(EditKind::limits, node, on_part);
          add(dice.one_in(2) ? EditKind::exception : EditKind::note, node, on_part);
        }
        break;
      case Recipe::roles_in_merged:
        if (!can_merge) continue;
        add(EditKind::merge, node);
        add(EditKind::limits, node);
        add(EditKind::hedge, node);
        add(EditKind::exception, node);
        add(EditKind::sex, node);
        break;
      case Recipe::lumped_in_moved:
      case Recipe::rewritten_in_moved:
        if (below.empty()) continue;
        for (auto const child : below) {
          add(chosen == Recipe::lumped_in_moved ? EditKind::lump_taxa : EditKind::rewrite, child);
        }
        add(EditKind::move, node);
        break;
      case Recipe::moved_and_reworded:
        add(EditKind::move, node);
        add(EditKind::synonyms, node);
        add(EditKind::clause_order, node);
        break;
      case Recipe::restated_all_over:
        add(EditKind::hedge, node);
        add(EditKind::limits, node);
        add(EditKind::statement, node);
        add(EditKind::synonyms, node);
        break;
      case Recipe::inserted_in_a_row:
        add(EditKind::insert, node);
        add(EditKind::insert, node);
        add(EditKind::swap_leads, node);
        break;
      case Recipe::taxa_changed:
        add(EditKind::rename_taxon, node);
        add(EditKind::split_taxon, node);
        add(EditKind::add_taxon, node);
        add(EditKind::swap_leads, node);
        break;
      case Recipe::reordered: {
        constexpr std::size_t most = 12;
        std::vector<std::size_t> waiting{node};
        for (std::size_t next = 0; next < waiting.size() && next < most; ++next) {
          if (edited.count(waiting[next]) == 0) add(EditKind::swap_leads, waiting[next]);
          for (auto const& lead : draft.nodes[waiting[next]].leads) {
            if (lead.node != terminal) waiting.push_back(lead.node);
          }
        }
        break;
      }
    }
  }
  if (!edits.empty() && dice.one_in(3)) {
    edits.push_back({EditKind::renumber, nodes.front(), 0, false});
  }
  return edits;
}

History apply_edits(Draft& draft, std::vector<Edit> const& edits) {
  History history;
  Editing editing{draft, history};
  for (auto const& edit : edits) {
    editing.make(edit);
    if (may_cut_off(edit.kind)) drop_unreached(draft);
  }
  return history;
}

std::vector<CoupletSketch> make_tangle(std::size_t couplets, std::size_t taxa, Tangle kind,
                                       Dice& dice) {
  std::vector<CoupletSketch> sketch;
  for (std::size_t i = 0; i < couplets; ++i) {
    CoupletSketch couplet{std::to_string(i + 1), {}};
    bool const broken = kind == Tangle::broken;
    auto const leads = broken ? 1 + dice.below(3) : 2;
    for (std::size_t k = 0; k < leads; ++k) {
      auto const goal =
          broken && dice.one_in(4) ? dice.below(couplets) : i + 1 + dice.below(couplets);
      std::string to = "Aus t" + std::to_string(dice.below(taxa));
      if (goal < couplets) to = std::to_string(goal + 1);
      if (broken && dice.one_in(12)) to.clear();
      if (broken && goal >= couplets && !to.empty() && dice.one_in(6))
        to += " | Aus t" + std::to_string(dice.below(taxa));
      couplet.leads.push_back({"c" + std::to_string(dice.below(9)) + ": s" +
                                   std::to_string(dice.below(3)) + "; " + word(dice, 40),
                               to});
    }
    sketch.push_back(std::move(couplet));
  }
  return sketch;
}

}  // namespace keydrift::test
