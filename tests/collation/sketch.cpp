#include "sketch.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <limits>
#include <string_view>

namespace keydrift::test {
namespace {

std::vector<std::string> split(std::string_view text, std::string_view by) {
  std::vector<std::string> parts;
  for (;;) {
    auto const at = text.find(by);
    parts.emplace_back(text.substr(0, at));
    if (at == std::string_view::npos) return parts;
    text.remove_prefix(at + by.size());
  }
}

bool take(std::string_view& text, std::string_view word) {
  if (text.substr(0, word.size()) != word) return false;
  text.remove_prefix(word.size());
  return true;
}

std::string lower(std::string_view text) {
  std::string result{text};
  std::transform(result.begin(), result.end(), result.begin(), [](char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  });
  return result;
}

double number(std::string_view text) { return std::strtod(std::string{text}.c_str(), nullptr); }

// "3..5", "(2..)3..5(..7)", "< 5", ">= 5"; the unit is split off before.
NumericRange range_of(std::string_view text) {
  NumericRange range;
  auto& usual = range.usual;
  if (take(text, "<= ")) {
    usual.high = number(text);
  } else if (take(text, "< ")) {
    usual.high = number(text);
    usual.high_open = true;
  } else if (take(text, ">= ")) {
    usual.low = number(text);
  } else if (take(text, "> ")) {
    usual.low = number(text);
    usual.low_open = true;
  } else {
    double least = std::numeric_limits<double>::quiet_NaN();
    double most = least;
    if (take(text, "(")) {
      least = number(text);
      text.remove_prefix(text.find(')') + 1);
    }
    if (auto const at = text.find('('); at != std::string_view::npos) {
      most = number(text.substr(at + 3));
      text = text.substr(0, at);
    }
    auto const dots = text.find("..");
    usual.low = number(text);
    usual.high = dots == std::string_view::npos ? usual.low : number(text.substr(dots + 2));
    range.extreme = usual;
    if (least == least) range.extreme.low = least;
    if (most == most) range.extreme.high = most;
    return range;
  }
  range.extreme = usual;
  return range;
}

bool is_number(std::string_view text) {
  return !text.empty() && (std::isdigit(static_cast<unsigned char>(text.front())) != 0 ||
                           text.front() == '<' || text.front() == '>' || text.front() == '(');
}

Atom atom_of(std::string_view text) {
  Atom atom;
  atom.negated = take(text, "not ");
  auto const colon = text.find(": ");
  if (colon == std::string_view::npos) {
    auto const words = lower(text);
    atom.character = "~" + words;
    atom.states = {words};
    return atom;
  }
  atom.character = text.substr(0, colon);
  auto values = text.substr(colon + 2);
  if (is_number(values)) {
    if (values.size() > 3 && values.substr(values.size() - 3) == " mm") {
      atom.unit = "mm";
      values.remove_suffix(3);
    } else {
      atom.unit = "1";
    }
    for (auto const& value : split(values, " | ")) atom.ranges.push_back(range_of(value));
  } else {
    atom.states = split(values, " | ");
    std::sort(atom.states.begin(), atom.states.end());
  }
  return atom;
}

Statement statement_of(std::string const& words) {
  Statement statement;
  statement.text = words;
  std::string_view text = words;
  if (take(text, "usually ")) {
    statement.strength = Strength::hedged;
    statement.hedge = "usually";
  } else if (take(text, "note ")) {
    statement.strength = Strength::noted;
  }
  for (auto const* sex : {"male", "female"}) {
    if (take(text, std::string{sex} + " ")) {
      statement.limits.push_back({.kind = LimitKind::sex, .value = sex});
    }
  }
  if (auto const at = text.find(" except "); at != std::string_view::npos) {
    statement.strength = Strength::excepted;
    statement.except = split(text.substr(at + 8), " | ");
    statement.exception_words = text.substr(at + 1);
    text = text.substr(0, at);
  }
  // "words {lip: white}": the words are what is printed, the predicate stands in the mark.
  if (auto const open = text.find('{'); open != std::string_view::npos) {
    text = text.substr(open + 1, text.find('}') - open - 1);
  }
  for (auto const& part : split(text, " or ")) statement.any_of.push_back(atom_of(part));
  auto const opaque = statement.any_of.front().character.front() == '~';
  statement.origin = opaque ? Origin::opaque : Origin::mark;
  return statement;
}

template <class Event>
std::string joined(std::vector<Event> const& events) {
  std::string text;
  for (auto const event : events) {
    if (!text.empty()) text += ", ";
    text += to_word(event);
  }
  return text;
}

std::string labels(std::vector<CoupletId> const& couplets, Edition const& edition) {
  std::string text;
  for (auto const couplet : couplets) {
    if (!text.empty()) text += ",";
    text += edition[couplet].label;
  }
  return text;
}

std::string name_of(std::optional<LeadId> const& lead, Edition const& edition) {
  return lead ? edition[*lead].label : std::string{"-"};
}

}  // namespace

void read_notation(Edition& edition) {
  for (auto& couplet : edition.couplets) {
    for (auto& lead : couplet.leads) {
      lead.statements.clear();
      if (lead.text.empty()) continue;
      for (auto const& part : split(lead.text, "; ")) lead.statements.push_back(statement_of(part));
    }
  }
}

Edition sketched(std::string name, std::vector<CoupletSketch> const& couplets) {
  auto edition = make_edition(std::move(name), couplets);
  read_notation(edition);
  return edition;
}

Collation collated(Edition const& old_edition, Edition const& new_edition,
                   Surroundings const& surroundings) {
  KeyGraph const old_graph{old_edition};
  KeyGraph const new_graph{new_edition};
  ConceptMap const map{.name = "map.csv", .rows = surroundings.rows};
  return collate(old_edition, old_graph, new_edition, new_graph, surroundings.lexicon,
                 map.rows.empty() ? nullptr : &map, surroundings.parents);
}

Collation collated(std::vector<CoupletSketch> const& old_sketch,
                   std::vector<CoupletSketch> const& new_sketch, Surroundings const& surroundings) {
  return collated(sketched("old", old_sketch), sketched("new", new_sketch), surroundings);
}

std::vector<CoupletSketch> snails() {
  return {
      {"1", {{"shell: smooth", "2"}, {"shell: ribbed", "4"}}},
      {"2", {{"spire: high", "3"}, {"spire: low", "Aus cus"}}},
      {"3", {{"lip: white", "Aus bus"}, {"lip: brown", "Aus dus"}}},
      {"4", {{"height: < 5 mm", "Bus eus"}, {"height: >= 5 mm", "5"}}},
      {"5", {{"mouth: round", "6"}, {"mouth: oval", "Bus gus"}}},
      {"6", {{"umbilicus: open", "Bus fus"}, {"umbilicus: closed", "Bus hus"}}},
  };
}

std::string told(Collation const& collation, Edition const& old_edition,
                 Edition const& new_edition) {
  std::string text;
  for (auto const& change : collation.couplets) {
    if (!text.empty()) text += "; ";
    text += labels(change.old_couplets, old_edition) + "-" +
            labels(change.new_couplets, new_edition) + " " + joined(change.events);
  }
  return text;
}

std::string events_of_new(Collation const& collation, Edition const& new_edition,
                          std::string const& label) {
  for (auto const& change : collation.couplets) {
    for (auto const couplet : change.new_couplets) {
      if (new_edition[couplet].label == label) return joined(change.events);
    }
  }
  return "no such couplet";
}

std::string events_of_old(Collation const& collation, Edition const& old_edition,
                          std::string const& label) {
  for (auto const& change : collation.couplets) {
    for (auto const couplet : change.old_couplets) {
      if (old_edition[couplet].label == label) return joined(change.events);
    }
  }
  return "no such couplet";
}

TaxonChange taxon_named(Collation const& collation, Edition const& old_edition,
                        Edition const& new_edition, std::string const& name) {
  for (auto const& change : collation.taxa) {
    if (!change.new_taxa.empty() && new_edition[change.new_taxa.front()].name == name) {
      return change;
    }
  }
  for (auto const& change : collation.taxa) {
    if (!change.old_taxa.empty() && old_edition[change.old_taxa.front()].name == name) {
      return change;
    }
  }
  ADD_FAILURE() << "no change tells of " << name;
  return {};
}

std::string words_of(std::vector<TaxonEvent> const& events) { return joined(events); }

std::string steps_of(TaxonChange const& change, Edition const& old_edition,
                     Edition const& new_edition) {
  std::string text;
  for (auto const& step : change.steps) {
    if (!text.empty()) text += " ";
    if (!step.aligned) {
      text += name_of(step.old_lead, old_edition) + name_of(step.new_lead, new_edition);
      continue;
    }
    text += name_of(step.old_lead, old_edition);
    text += !step.same_lead ? "/" : step.restated ? "~" : "=";
    text += name_of(step.new_lead, new_edition);
  }
  return text;
}

std::string roles_of(Collation const& collation, Edition const& old_edition,
                     Edition const& new_edition) {
  std::string text;
  for (auto const& role : collation.roles) {
    text += role.character + ": " + to_word(role.transition) + " " +
            name_of(role.old_lead, old_edition) + "→" + name_of(role.new_lead, new_edition);
    for (auto const& group : role.exceptions_added) text += " for " + group;
    for (auto const& group : role.exceptions_removed) text += " not for " + group;
    if (!role.numbers.empty()) text += " " + role.numbers;
    for (auto const& limit : role.limits) text += " " + limit;
    text += "\n";
  }
  return text;
}

}  // namespace keydrift::test
