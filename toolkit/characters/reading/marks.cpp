#include "keydrift/characters/reading/marks.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/near.hpp"
#include "keydrift/characters/reading/numbers.hpp"
#include "keydrift/characters/units.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::reading {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

std::vector<std::string_view> split_at_bars(std::string_view text) {
  std::vector<std::string_view> parts;
  for (;;) {
    auto const bar = text.find('|');
    parts.push_back(trimmed(text.substr(0, bar)));
    if (bar == std::string_view::npos) return parts;
    text.remove_prefix(bar + 1);
  }
}

// A number expression that fills the whole text.
std::optional<Measure> whole_measure(std::string_view printed, std::string_view language) {
  LeadText const text{printed, language};
  if (text.tokens.empty()) return std::nullopt;
  auto measures = measures_at(text, 0, text.size());
  if (measures.size() != 1 || measures.front().end != text.size()) return std::nullopt;
  return std::move(measures.front());
}

class MarkReader {
 public:
  MarkReader(std::string_view mark, std::uint32_t at, std::string_view language,
             ReadingRules const& rules, std::vector<Complaint>& complaints)
      : mark_{mark}, at_{at}, language_{language}, rules_{rules}, complaints_{complaints} {}

  std::optional<Atom> read() {
    auto const inside = mark_.substr(1, mark_.size() - 2);
    auto const colon = inside.find(':');
    auto const name = trimmed(inside.substr(0, colon));
    if (colon == std::string_view::npos || name.empty()) {
      complain("malformed-mark",
               "the mark " + in_quotes(mark_) + " does not name a character and a state",
               "write it as {character: state}");
      return std::nullopt;
    }
    auto value = trimmed(inside.substr(colon + 1));
    Atom atom;
    if (value.starts_with("not ")) {
      atom.negated = true;
      value = trimmed(value.substr(4));
    }
    if (value.empty()) {
      complain("malformed-mark",
               "the mark " + in_quotes(mark_) + " names no state of " + in_quotes(name),
               "write it as {character: state}");
      return std::nullopt;
    }
    if (rules_.lexicon->empty()) return defining(name, value, std::move(atom));
    return by_lexicon(name, value, std::move(atom));
  }

 private:
  void complain(std::string code, std::string message, std::string remedy) {
    complaints_.push_back({.begin = at_,
                           .end = at_ + static_cast<std::uint32_t>(mark_.size()),
                           .code = std::move(code),
                           .severity = Severity::error,
                           .message = std::move(message),
                           .remedy = std::move(remedy)});
  }

  std::optional<Atom> defining(std::string_view name, std::string_view value, Atom atom) {
    atom.character = normalised_words(name);
    if (atom.character.empty()) {
      complain("malformed-mark",
               "the mark " + in_quotes(mark_) + " does not name a character and a state",
               "write it as {character: state}");
      return std::nullopt;
    }
    std::replace(atom.character.begin(), atom.character.end(), ' ', '-');
    for (auto const part : split_at_bars(value)) {
      if (auto measure = whole_measure(part, language_)) {
        atom.unit = measure->ratio ? "" : measure->unit;
        for (auto const& range : measure->ranges) {
          atom.ranges.push_back(widened(range, rules_.tolerance));
        }
      } else if (auto words = normalised_words(part); !words.empty()) {
        atom.states.push_back(std::move(words));
      }
    }
    return finish(std::move(atom));
  }

  std::optional<Atom> by_lexicon(std::string_view name, std::string_view value, Atom atom) {
    auto const& lexicon = rules_.lexicon->lexicon();
    auto const row = rules_.lexicon->row_of(lexicon.find(name));
    if (!row) {
      std::vector<std::string> known;
      for (auto const& character : lexicon.characters) {
        known.push_back(character.id);
        if (!character.label.empty() && character.label != character.id) {
          known.push_back(character.label);
        }
      }
      complain("unknown-character",
               "the mark " + in_quotes(mark_) + " names the character " + in_quotes(name) +
                   ", which the lexicon lacks",
               did_you_mean(near_names(name, known)));
      return std::nullopt;
    }
    auto const& character = lexicon.characters[*row];
    atom.character = character.id;
    for (auto const part : split_at_bars(value)) {
      bool const read = character.kind == CharacterKind::categorical
                            ? take_state(*row, part, atom)
                            : take_number(*row, part, atom);
      if (!read) return std::nullopt;
    }
    return finish(std::move(atom));
  }

  bool take_state(std::uint32_t row, std::string_view printed, Atom& atom) {
    auto const& character = rules_.lexicon->character(row);
    if (auto const state = rules_.lexicon->find_state(row, printed)) {
      atom.states.push_back(character.states[*state].id);
      return true;
    }
    std::vector<std::string> known;
    std::string all;
    for (auto const& state : character.states) {
      known.push_back(state.id);
      all += (all.empty() ? "" : ", ") + in_quotes(state.id);
    }
    auto hint = did_you_mean(near_names(printed, known));
    if (hint.empty()) hint = "its states are " + all;
    complain("unknown-state",
             "the mark " + in_quotes(mark_) + " names the state " + in_quotes(printed) +
                 ", which the character " + in_quotes(character.id) + " lacks",
             std::move(hint));
    return false;
  }

  bool take_number(std::uint32_t row, std::string_view printed, Atom& atom) {
    auto const& character = rules_.lexicon->character(row);
    auto const& unit = rules_.lexicon->unit(row);
    auto const measure = whole_measure(printed, language_);
    if (!measure) {
      complain(
          "mark-without-number",
          "the mark " + in_quotes(mark_) + " gives " + in_quotes(printed) + " for the character " +
              in_quotes(character.id) + ", which is a " + to_word(character.kind),
          "write a number or a range like {" + character.id + ": 3-5" +
              (character.unit.empty() || character.unit == "1" ? "" : " " + character.unit) + "}");
      return false;
    }
    double factor = 1;
    if (!measure->unit_printed) {
      if (auto const own = canonical_unit(character.unit)) factor = own->factor;
    } else if (measure->unit != unit) {
      complain("unit-in-mark",
               "the mark " + in_quotes(mark_) + " gives " + in_quotes(printed) +
                   " for the character " + in_quotes(character.id) + ", which is measured in " +
                   (character.unit.empty() ? "no unit" : in_quotes(character.unit)),
               "write the number in that unit");
      return false;
    }
    atom.unit = unit;
    for (auto range : measure->ranges) {
      for (auto* interval : {&range.usual, &range.extreme}) {
        interval->low = clean(interval->low * factor);
        interval->high = clean(interval->high * factor);
      }
      atom.ranges.push_back(widened(range, character.tolerance));
    }
    return true;
  }

  std::optional<Atom> finish(Atom atom) {
    std::sort(atom.states.begin(), atom.states.end());
    atom.states.erase(std::unique(atom.states.begin(), atom.states.end()), atom.states.end());
    if (!atom.ranges.empty() && !atom.states.empty()) {
      complain("malformed-mark", "the mark " + in_quotes(mark_) + " mixes numbers and states",
               "write either numbers or states");
      return std::nullopt;
    }
    if (atom.ranges.empty() && atom.states.empty()) {
      complain("malformed-mark", "the mark " + in_quotes(mark_) + " names no state made of words",
               "write it as {character: state}");
      return std::nullopt;
    }
    return atom;
  }

  std::string_view mark_;
  std::uint32_t at_;
  std::string_view language_;
  ReadingRules const& rules_;
  std::vector<Complaint>& complaints_;
};

}  // namespace

std::optional<Atom> read_mark(std::string_view mark, std::uint32_t at, std::string_view language,
                              ReadingRules const& rules, std::vector<Complaint>& complaints) {
  return MarkReader{mark, at, language, rules, complaints}.read();
}

void apply_marks(LeadText const& text, ReadingRules const& rules, LeadReading& reading) {
  std::vector<std::uint32_t> marks;
  for (std::uint32_t i = 0; i < text.size(); ++i) {
    if (text.tokens[i].kind == TokenKind::mark) marks.push_back(i);
  }
  if (marks.empty()) return;
  auto& drafts = reading.drafts;
  for (std::size_t d = 0; d < drafts.size();) {
    // Drafts of one stretch ("4–6 × 2–3 mm") are replaced together.
    auto stop = d + 1;
    while (stop < drafts.size() && drafts[stop].begin == drafts[d].begin &&
           drafts[stop].end == drafts[d].end) {
      ++stop;
    }
    std::vector<Draft> marked;
    auto begin = drafts[d].begin;
    auto const first = std::lower_bound(
        marks.begin(), marks.end(), drafts[d].begin,
        [&](std::uint32_t mark, std::uint32_t at) { return text.tokens[mark].begin < at; });
    for (auto at = first; at != marks.end() && text.tokens[*at].end <= drafts[d].end; ++at) {
      auto const i = *at;
      auto const& token = text.tokens[i];
      auto atom =
          read_mark(text.slice(i, i), token.begin, text.language, rules, reading.complaints);
      if (!atom) continue;
      Draft draft = drafts[d];
      draft.begin = begin;
      draft.end = token.end;
      draft.origin = Origin::mark;
      draft.anaphora = false;
      draft.rest.clear();
      draft.any_of = {
          {.atom = std::move(*atom), .opaque = false, .rivals = {}, .printed = {}, .bare_of = {}}};
      marked.push_back(std::move(draft));
      begin = i + 1 < text.size() ? text.tokens[i + 1].begin : token.end;
    }
    if (marked.empty()) {
      d = stop;
      continue;
    }
    marked.back().end = drafts[d].end;
    auto const count = marked.size();
    drafts.erase(drafts.begin() + static_cast<std::ptrdiff_t>(d),
                 drafts.begin() + static_cast<std::ptrdiff_t>(stop));
    drafts.insert(drafts.begin() + static_cast<std::ptrdiff_t>(d),
                  std::make_move_iterator(marked.begin()), std::make_move_iterator(marked.end()));
    d += count;
  }
}

}  // namespace keydrift::reading
