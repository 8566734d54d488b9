#include "reading_support.hpp"

#include <array>
#include <cmath>
#include <cstdio>
#include <utility>

#include "edition_builder.hpp"

namespace keydrift::test {
namespace {

std::vector<Phrase> phrases(std::vector<char const*> const& texts) {
  std::vector<Phrase> result;
  for (auto const* text : texts) result.push_back({text, ""});
  return result;
}

struct StateSketch {
  char const* id;
  std::vector<char const*> phrases;
};

LexiconCharacter states(char const* id, std::vector<char const*> const& subjects,
                        std::vector<StateSketch> const& sketches) {
  LexiconCharacter character;
  character.id = id;
  character.subjects = phrases(subjects);
  for (auto const& sketch : sketches) {
    character.states.push_back({sketch.id, phrases(sketch.phrases)});
  }
  return character;
}

LexiconCharacter number(char const* id, std::vector<char const*> const& subjects,
                        char const* property, CharacterKind kind, char const* unit) {
  LexiconCharacter character;
  character.id = id;
  character.property = property;
  character.subjects = phrases(subjects);
  character.kind = kind;
  character.unit = unit;
  return character;
}

std::string digits(double value) {
  std::array<char, 40> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%.6g", value);
  return buffer.data();
}

std::string interval_said(Interval const& interval) {
  bool const low = std::isfinite(interval.low);
  bool const high = std::isfinite(interval.high);
  if (low && high && interval.low == interval.high) return digits(interval.low);
  if (low && high && !interval.low_open && !interval.high_open) {
    return digits(interval.low) + "–" + digits(interval.high);
  }
  std::string text;
  if (low) text += (interval.low_open ? ">" : "≥") + digits(interval.low);
  if (high) text += (interval.high_open ? "<" : "≤") + digits(interval.high);
  return text.empty() ? "any" : text;
}

std::string atom_said(Atom const& atom) {
  std::string text = atom.character;
  if (!atom.states.empty()) {
    text += atom.negated ? " ≠ " : " = ";
    for (std::size_t i = 0; i < atom.states.size(); ++i) {
      text += (i == 0 ? "" : "|") + atom.states[i];
    }
    return text;
  }
  if (atom.negated) text += " not";
  for (std::size_t i = 0; i < atom.ranges.size(); ++i) {
    auto const& range = atom.ranges[i];
    text += i == 0 ? " " : " | ";
    if (range.approximate) text += "~";
    text += interval_said(range.usual);
    if (!(range.usual == range.extreme)) text += " (" + interval_said(range.extreme) + ")";
  }
  if (!atom.unit.empty() && atom.unit != "1") text += " " + atom.unit;
  return text;
}

}  // namespace

std::string said(Statement const& statement) {
  std::string text;
  for (auto const& atom : statement.any_of) {
    text += (text.empty() ? "" : " or ") + atom_said(atom);
  }
  switch (statement.strength) {
    case Strength::firm:
      break;
    case Strength::hedged:
      text += " [" + statement.hedge + "]";
      break;
    case Strength::noted:
      text += " [noted]";
      break;
    case Strength::excepted:
      break;
  }
  if (!statement.except.empty()) {
    text += " [except ";
    for (std::size_t i = 0; i < statement.except.size(); ++i) {
      text += (i == 0 ? "" : ", ") + statement.except[i];
    }
    text += "]";
  }
  for (auto const& limit : statement.limits) text += " [" + limit.value + "]";
  return text;
}

std::string said(std::vector<Statement> const& statements) {
  std::string text;
  for (auto const& statement : statements) {
    text += (text.empty() ? "" : " & ") + said(statement);
  }
  return text;
}

Edition couplet_of(std::vector<std::string> const& leads, std::string language) {
  static constexpr std::array<char const*, 6> kTaxa{"Aus", "Bus", "Cus", "Dus", "Eus", "Fus"};
  CoupletSketch sketch{.label = "1", .leads = {}};
  for (std::size_t i = 0; i < leads.size(); ++i) {
    sketch.leads.push_back({leads[i], kTaxa.at(i % kTaxa.size())});
  }
  auto edition = make_edition("test", {sketch});
  edition.front.language = std::move(language);
  return edition;
}

std::vector<std::string> readings_of(std::vector<std::string> const& leads, Lexicon const& lexicon,
                                     std::string language) {
  auto edition = couplet_of(leads, std::move(language));
  read_statements(edition, lexicon);
  std::vector<std::string> result;
  for (auto const& lead : edition.couplets.front().leads) result.push_back(said(lead.statements));
  return result;
}

std::string reading_of(std::string_view text, Lexicon const& lexicon, std::string language) {
  return readings_of({std::string{text}}, lexicon, std::move(language)).front();
}

Lexicon plant_lexicon() {
  Lexicon lexicon;
  lexicon.name = "plants.csv";
  auto& c = lexicon.characters;
  c.push_back(
      states("leaf-section", {"leaf", "leaf blade"},
             {{"flat", {}}, {"channelled", {"grooved"}}, {"inrolled", {"rolled inwards"}}}));
  c.push_back(states("leaf-shape", {"leaf"},
                     {{"ovate", {"egg-shaped"}},
                      {"lanceolate", {}},
                      {"linear", {}},
                      {"elliptic", {}},
                      {"v-shaped", {}}}));
  c.push_back(states("leaf-colour", {"leaf"}, {{"green", {}}, {"glaucous", {"blue-green"}}}));
  c.push_back(states("leaf-margin", {"leaf margin", "margin"},
                     {{"entire", {}}, {"toothed", {"dentate"}}, {"ciliate", {"with hairs"}}}));
  c.push_back(
      states("sheath-colour", {"sheath", "leaf sheath"}, {{"red", {"reddish"}}, {"brown", {}}}));
  c.push_back(states("utricle-beak", {"utricle"},
                     {{"beaked", {"with a beak"}}, {"beakless", {"without a beak"}}}));
  c.push_back(states("beak-tip", {"beak", "beak of utricle"},
                     {{"bifid", {"two-toothed"}}, {"entire", {}}, {"oblique", {}}}));
  c.push_back(states("awn", {"awn"}, {{"present", {}}, {"absent", {"wanting", "lacking"}}}));
  c.push_back(
      states("habit", {"plant"}, {{"tufted", {"in tufts"}}, {"creeping", {"with long runners"}}}));
  c.push_back(states("fruit-colour", {"fruit"}, {{"pale", {}}, {"dark", {}}, {"red", {}}}));
  c.push_back(states("fruit-skin", {"fruit"}, {{"pale", {}}, {"shining", {}}}));
  c.push_back(states("bract-reach", {"lowest bract"},
                     {{"longer", {"longer than the inflorescence"}},
                      {"shorter", {"shorter than the inflorescence"}}}));
  c.push_back(number("spike-length", {"spike"}, "length", CharacterKind::measurement, "cm"));
  c.push_back(number("spike-width", {"spike"}, "width", CharacterKind::measurement, "mm"));
  c.push_back(
      number("female-spike-length", {"female spike"}, "length", CharacterKind::measurement, "mm"));
  c.push_back(number("stigmas", {"stigma"}, "number", CharacterKind::count, "1"));
  c.push_back(
      number("ligule-ratio", {"ligule"}, "length to width", CharacterKind::measurement, ""));
  return lexicon;
}

Lexicon animal_lexicon() {
  Lexicon lexicon;
  lexicon.name = "animals.csv";
  auto& c = lexicon.characters;
  c.push_back(states("elytra-colour", {"elytra"}, {{"black", {}}, {"red", {}}, {"yellow", {}}}));
  c.push_back(states("leg-colour", {"leg"}, {{"black", {}}, {"yellow", {}}, {"ringed", {}}}));
  c.push_back(states("tibia-colour", {"tibia"}, {{"black", {}}, {"yellow", {}}, {"ringed", {}}}));
  c.push_back(states("rostrum", {"rostrum"}, {{"toothed", {}}, {"smooth", {"without teeth"}}}));
  c.push_back(states("claw-shape", {"claw"}, {{"slender", {}}, {"stout", {}}}));
  c.push_back(states("male-claw", {"male claw"}, {{"hooked", {}}, {"straight", {}}}));
  c.push_back(states("eyes", {"eye"}, {{"present", {}}, {"absent", {"missing"}}}));
  c.push_back(number("carapace-length", {"carapace"}, "length", CharacterKind::measurement, "mm"));
  c.push_back(
      number("antenna-segments", {"antenna"}, "number of segments", CharacterKind::count, "1"));
  c.push_back(
      number("rostrum-ratio", {"rostrum"}, "length against width", CharacterKind::measurement, ""));
  return lexicon;
}

}  // namespace keydrift::test
