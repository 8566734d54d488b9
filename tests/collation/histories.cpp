#include "histories.hpp"

#include <algorithm>
#include <array>

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

// A taxon name that no other taxon of the draft has: "Vava lolo", by number.
std::string new_taxon(Draft& draft) {
  auto number = draft.taxa++;
  std::string genus;
  for (int i = 0; i < 3; ++i) {
    genus += syllables[number % syllables.size()];
    number /= syllables.size();
  }
  std::string name{static_cast<char>(genus[0] - 'a' + 'A')};
  name += genus.substr(1) + "us ";
  for (std::size_t n = draft.taxa;;) {
    name += syllables[n % syllables.size()];
    n /= syllables.size();
    if (n == 0) break;
  }
  return name + "icus";
}

// One to three characters, each with contrasting statements: two in three with states that a
// lexicon knows, the others in words of their own.
void write_statements(DraftNode& node, Dice& dice) {
  for (auto& lead : node.leads) lead.statements.clear();
  auto const count = 1 + dice.below(3);
  for (std::size_t i = 0; i < count; ++i) {
    auto const kind = dice.below(6);
    auto const character = "c" + std::to_string(dice.below(120));
    auto const first = dice.below(4);
    auto const subject = word(dice, 300) + " " + word(dice, 300);
    auto const limit = 2 + dice.below(30);
    std::size_t ordinal = 0;
    for (auto& lead : node.leads) {
      if (kind < 3) {
        lead.statements.push_back(character + ": s" + std::to_string(first + ordinal));
      } else if (kind == 3) {
        lead.statements.push_back(character + "n: " + (ordinal == 0 ? "< " : ">= ") +
                                  std::to_string(limit + ordinal / 2) + " mm");
      } else {
        lead.statements.push_back(subject + " " + word(dice, 300) + " " + word(dice, 300));
      }
      ++ordinal;
    }
  }
}

struct Edge {
  std::size_t node;
  std::size_t lead;
};

std::vector<std::size_t> alive(Draft const& draft) {
  std::vector<std::size_t> nodes;
  for (std::size_t i = 0; i < draft.nodes.size(); ++i) {
    if (draft.nodes[i].alive) nodes.push_back(i);
  }
  return nodes;
}

// Puts `replacement` where `node` hung.
void replace(Draft& draft, std::size_t node, DraftLead const& replacement) {
  if (draft.root == node) {
    draft.root = replacement.node;
    return;
  }
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

bool is_below(Draft const& draft, std::size_t node, std::size_t above) {
  std::vector<std::size_t> waiting{above};
  while (!waiting.empty()) {
    auto const here = waiting.back();
    waiting.pop_back();
    if (here == node) return true;
    for (auto const& lead : draft.nodes[here].leads) {
      if (lead.node != terminal) waiting.push_back(lead.node);
    }
  }
  return false;
}

std::size_t add_node(Draft& draft, DraftLead first, DraftLead second, Dice& dice) {
  DraftNode node;
  node.leads = {std::move(first), std::move(second)};
  write_statements(node, dice);
  draft.nodes.push_back(std::move(node));
  return draft.nodes.size() - 1;
}

void reword(Draft& draft, std::size_t node, Dice& dice) {
  auto& leads = draft.nodes[node].leads;
  auto const count = leads.front().statements.size();
  auto const which = dice.below(count);
  if (dice.one_in(4)) {
    write_statements(draft.nodes[node], dice);  // another set of characters altogether
    return;
  }
  for (auto& lead : leads) {
    if (which >= lead.statements.size()) continue;
    auto& statement = lead.statements[which];
    if (statement.find(": ") == std::string::npos) {
      statement += " " + word(dice, 300);
    } else if (statement.compare(0, 8, "usually ") != 0) {
      statement = "usually " + statement;
    }
  }
}

}  // namespace

Draft make_draft(std::size_t couplets, Shape shape, Dice& dice) {
  Draft draft;
  std::vector<Edge> open;
  DraftNode root;
  root.leads = {{{}, terminal, ""}, {{}, terminal, ""}};
  draft.nodes.push_back(root);
  open = {{0, 0}, {0, 1}};
  while (draft.nodes.size() < couplets) {
    auto const pick = shape == Shape::comb ? open.size() - 1 : dice.below(open.size());
    auto const edge = open[pick];
    open[pick] = open.back();
    open.pop_back();
    auto const node = draft.nodes.size();
    draft.nodes[edge.node].leads[edge.lead].node = node;
    DraftNode fresh;
    fresh.leads.assign(dice.one_in(12) ? 3 : 2, {{}, terminal, ""});
    draft.nodes.push_back(fresh);
    for (std::size_t k = 0; k < fresh.leads.size(); ++k) open.push_back({node, k});
  }
  for (auto& node : draft.nodes) {
    write_statements(node, dice);
    for (auto& lead : node.leads) {
      if (lead.node == terminal) lead.taxon = new_taxon(draft);
    }
  }
  return draft;
}

std::vector<CoupletSketch> print(Draft const& draft, std::vector<std::size_t>& order) {
  order.clear();
  std::vector<std::size_t> label(draft.nodes.size(), 0);
  std::vector<std::size_t> waiting{draft.root};
  while (!waiting.empty()) {
    auto const node = waiting.back();
    waiting.pop_back();
    order.push_back(node);
    label[node] = order.size();
    auto const& leads = draft.nodes[node].leads;
    for (auto lead = leads.rbegin(); lead != leads.rend(); ++lead) {
      if (lead->node != terminal) waiting.push_back(lead->node);
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
        text += statement;
      }
      couplet.leads.push_back(
          {text, lead.node == terminal ? lead.taxon : std::to_string(label[lead.node])});
    }
    sketch.push_back(std::move(couplet));
  }
  return sketch;
}

History revise(Draft& draft, std::size_t percent, Dice& dice) {
  History history;
  std::vector<std::size_t> nodes = alive(draft);
  auto const count = nodes.size() * percent / 100;
  // Each edit takes a couplet of its own, so that `percent` is what it says.
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    std::swap(nodes[i], nodes[i + dice.below(nodes.size() - i)]);
  }
  nodes.resize(count);
  std::vector<std::size_t> renamed;
  for (auto const node : nodes) {
    if (!draft.nodes[node].alive) continue;
    auto& leads = draft.nodes[node].leads;
    auto const end = std::find_if(leads.begin(), leads.end(),
                                  [](DraftLead const& lead) { return lead.node == terminal; });
    switch (dice.below(10)) {
      case 0:
      case 1:
      case 2:
        reword(draft, node, dice);
        break;
      case 3:
        std::swap(leads.front(), leads.back());
        break;
      case 4: {  // inserted before, with a newcomer
        DraftLead newcomer{{}, terminal, new_taxon(draft)};
        auto const fresh = draft.nodes.size();
        replace(draft, node, {{}, fresh, ""});
        add_node(draft, {{}, node, ""}, std::move(newcomer), dice);
        break;
      }
      case 5: {  // removed, with a taxon
        if (leads.size() != 2 || end == leads.end()) break;
        auto const rest = leads[end == leads.begin() ? 1 : 0];
        if (node == draft.root && rest.node == terminal) break;
        replace(draft, node, rest);
        draft.nodes[node].alive = false;
        break;
      }
      case 6: {  // exchanges a lead's end with one elsewhere
        auto const other = nodes[dice.below(nodes.size())];
        if (!draft.nodes[other].alive || other == node) break;
        auto& mine = leads[dice.below(leads.size())];
        auto& theirs = draft.nodes[other].leads[dice.below(draft.nodes[other].leads.size())];
        auto const reaches = [&](DraftLead const& lead, std::size_t goal) {
          return lead.node != terminal && is_below(draft, goal, lead.node);
        };
        if (reaches(mine, other) || reaches(theirs, node)) break;
        std::swap(mine.node, theirs.node);
        std::swap(mine.taxon, theirs.taxon);
        break;
      }
      case 7: {  // a taxon is split in two by a new couplet
        if (end == leads.end()) break;
        auto const which = static_cast<std::size_t>(end - leads.begin());
        auto const name = end->taxon;
        auto const part = new_taxon(draft);
        if (std::any_of(history.rows.begin(), history.rows.end(), [&](ConceptRow const& row) {
              return row.old_name == name || row.new_name == name;
            })) {
          break;
        }
        auto const fresh = add_node(draft, {{}, terminal, name}, {{}, terminal, part}, dice);
        draft.nodes[node].leads[which].node = fresh;
        draft.nodes[node].leads[which].taxon.clear();
        for (auto const& to : {name, part}) {
          history.rows.push_back({.old_name = name,
                                  .relation = Relation::includes,
                                  .new_name = to,
                                  .note = "",
                                  .place = {}});
        }
        break;
      }
      case 8: {  // a taxon gets another name
        if (end == leads.end()) break;
        auto const name = end->taxon;
        if (std::any_of(history.rows.begin(), history.rows.end(), [&](ConceptRow const& row) {
              return row.old_name == name || row.new_name == name;
            })) {
          break;
        }
        end->taxon = new_taxon(draft);
        history.rows.push_back({.old_name = name,
                                .relation = Relation::congruent,
                                .new_name = end->taxon,
                                .note = "",
                                .place = {}});
        break;
      }
      default: {  // a polytomy is resolved into two couplets
        if (leads.size() != 3) {
          reword(draft, node, dice);
          break;
        }
        DraftNode fresh;
        fresh.leads = {leads[1], leads[2]};
        auto const part = draft.nodes.size();
        auto& joint = leads[1].statements;
        joint.insert(joint.end(), leads[2].statements.begin(), leads[2].statements.end());
        leads[1].node = part;
        leads[1].taxon.clear();
        leads.pop_back();
        draft.nodes.push_back(std::move(fresh));
        history.parts.emplace_back(node, part);
        break;
      }
    }
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
