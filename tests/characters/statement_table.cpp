#include "statement_table.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <set>
#include <stdexcept>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/tokens.hpp"

namespace keydrift::test {
namespace {

using Words = std::vector<std::string>;

std::string trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return std::string{text};
}

Words split(std::string_view text, std::string_view separator) {
  Words parts;
  for (;;) {
    auto const at = text.find(separator);
    parts.push_back(trimmed(text.substr(0, at)));
    if (at == std::string_view::npos) return parts;
    text.remove_prefix(at + separator.size());
  }
}

bool take(std::string_view& text, std::string_view prefix) {
  if (!text.starts_with(prefix)) return false;
  text.remove_prefix(prefix.size());
  return true;
}

// One line of what a lead says.
class LineReader {
 public:
  TrueStatement read(std::string const& line) {
    TrueStatement statement;
    statement.printed = line;
    auto const bracket = line.find(" [");
    for (auto const& alternative : split(line.substr(0, bracket), " OR ")) {
      statement.any_of.push_back(atom(alternative));
    }
    if (bracket != std::string::npos) qualify(line.substr(bracket + 1), statement);
    return statement;
  }

 private:
  [[noreturn]] static void refuse(std::string const& what) { throw std::runtime_error{what}; }

  static void qualify(std::string_view rest, TrueStatement& statement) {
    while (!rest.empty()) {
      auto const close = rest.find(']');
      if (rest.front() != '[' || close == std::string_view::npos) refuse("brackets");
      auto inside = rest.substr(1, close - 1);
      if (inside == "note") {
        statement.note = true;
      } else if (take(inside, "hedge: ")) {
        statement.hedge = inside;
      } else if (take(inside, "except: ")) {
        statement.except = split(inside, ",");
      } else if (take(inside, "limit: ")) {
        statement.limits.emplace_back(inside);
      } else {
        refuse("unknown bracket");
      }
      rest.remove_prefix(close + 1);
      while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    }
  }

  static TrueAtom atom(std::string_view text) {
    TrueAtom atom;
    auto const quoted = text.find("“");
    if (quoted != std::string_view::npos) {
      atom.negated = text.starts_with("not ");
      auto const end = text.find("”");
      if (end == std::string_view::npos) refuse("quotation marks");
      auto const begin = quoted + std::string_view{"“"}.size();
      atom.states = {std::string{text.substr(begin, end - begin)}};
      return atom;
    }
    auto const colon = text.find(": ");
    if (colon == std::string_view::npos) refuse("no colon");
    atom.character = text.substr(0, colon);
    auto value = text.substr(colon + 2);
    if (is_number(value)) {
      numbers(value, atom);
    } else {
      atom.negated = take(value, "not ");
      atom.states = split(value, "|");
      std::sort(atom.states.begin(), atom.states.end());
    }
    return atom;
  }

  static bool is_number(std::string_view value) {
    for (std::string_view const sign : {"about ", ">", "<", "≥", "≤"}) {
      if (value.starts_with(sign)) return true;
    }
    return !value.empty() && value.front() >= '0' && value.front() <= '9';
  }

  static void numbers(std::string_view value, TrueAtom& atom) {
    for (std::string_view const unit : {"mm2", "mm", "°", "%"}) {
      if (!value.ends_with(unit)) continue;
      atom.unit = unit;
      value.remove_suffix(unit.size());
      break;
    }
    if (atom.unit.empty() && atom.character.find('/') == std::string::npos &&
        atom.character.find("ratio") == std::string::npos) {
      atom.unit = "1";
    }
    bool const about = take(value, "about ");
    for (auto const& part : split(value, "|")) {
      NumericRange range;
      range.approximate = about;
      auto const open = part.find('(');
      range.usual = interval(part.substr(0, open));
      range.extreme = open == std::string::npos
                          ? range.usual
                          : interval(part.substr(open + 1, part.find(')') - open - 1));
      if (about) {
        for (auto* each : {&range.usual, &range.extreme}) {
          each->low *= 0.9;
          each->high *= 1.1;
        }
      }
      atom.ranges.push_back(range);
    }
  }

  static Interval interval(std::string_view text) {
    Interval interval;
    bool bounded = false;
    for (;;) {
      while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
      if (text.empty()) return interval;
      if (take(text, ">")) {
        interval.low = number(text);
        interval.low_open = true;
      } else if (take(text, "≥")) {
        interval.low = number(text);
      } else if (take(text, "<")) {
        interval.high = number(text);
        interval.high_open = true;
      } else if (take(text, "≤")) {
        interval.high = number(text);
      } else if (bounded) {
        refuse("numbers");
      } else {
        interval.low = interval.high = number(text);
        if (take(text, "–")) interval.high = number(text);
      }
      bounded = true;
    }
  }

  static double number(std::string_view& text) {
    double value = 0;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{}) refuse("no number: " + std::string{text});
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    return value;
  }
};

// The words of a character that no lexicon names: "length of the spike" is "spike length".
std::set<std::string> name_words(std::string_view name) {
  static std::set<std::string> const kDropped{"of", "the", "in", "number", ""};
  std::set<std::string> words;
  for (auto const& word : split(name, " ")) {
    if (kDropped.count(word) == 0) words.insert(reading::singular(word));
  }
  return words;
}

bool near(double a, double b) {
  if (a == b) return true;
  return std::abs(a - b) <= 1e-7 * std::max(std::abs(a), std::abs(b));
}

bool same(Interval const& a, Interval const& b) {
  return near(a.low, b.low) && near(a.high, b.high) && a.low_open == b.low_open &&
         a.high_open == b.high_open;
}

Interval inverse(Interval const& interval) {
  auto const flip = [](double value) {
    return std::isinf(value) ? 0.0 : value == 0 ? HUGE_VAL : 1 / value;
  };
  Interval flipped{.low = std::isinf(interval.high) ? -HUGE_VAL : flip(interval.high),
                   .high = std::isinf(interval.low) ? HUGE_VAL : flip(interval.low),
                   .low_open = interval.high_open,
                   .high_open = interval.low_open};
  return flipped;
}

bool same_ranges(TrueAtom const& truth, Atom const& read, bool inverted) {
  if (truth.ranges.size() != read.ranges.size()) return false;
  for (std::size_t i = 0; i < truth.ranges.size(); ++i) {
    auto const& a = truth.ranges[i];
    auto const& b = read.ranges[i];
    auto const turned = [&](Interval const& interval) {
      return inverted ? inverse(interval) : interval;
    };
    if (a.approximate != b.approximate || !same(turned(a.usual), b.usual) ||
        !same(turned(a.extreme), b.extreme)) {
      return false;
    }
  }
  return true;
}

bool same_number(TrueAtom const& truth, Atom const& read) {
  if (read.negated || read.unit != truth.unit) return false;
  if (read.character == truth.character) return same_ranges(truth, read, false);
  std::string_view name{read.character};
  if (!take(name, "~n:")) return false;
  name = name.substr(0, name.rfind('|'));
  auto const wanted = split(truth.character, " / ");
  auto const found = split(name, " / ");
  if (wanted.size() != found.size()) return false;
  if (wanted.size() == 1) {
    return name_words(wanted[0]) == name_words(found[0]) && same_ranges(truth, read, false);
  }
  if (name_words(wanted[0]) == name_words(found[0]) &&
      name_words(wanted[1]) == name_words(found[1])) {
    return same_ranges(truth, read, false);
  }
  return name_words(wanted[0]) == name_words(found[1]) &&
         name_words(wanted[1]) == name_words(found[0]) && same_ranges(truth, read, true);
}

bool same_atom(TrueAtom const& truth, Atom const& read) {
  if (!truth.ranges.empty()) return same_number(truth, read);
  if (truth.negated != read.negated) return false;
  if (!truth.character.empty()) {
    return truth.character == read.character && truth.states == read.states;
  }
  return read.character.starts_with("~") && !read.character.starts_with("~n:") &&
         read.states == Words{normalised_words(truth.states.front())};
}

Words sorted(Words words) {
  std::sort(words.begin(), words.end());
  return words;
}

}  // namespace

std::vector<TrueLead> read_statement_table(std::string_view text) {
  std::vector<TrueLead> leads;
  TrueLead ahead;
  std::size_t number = 0;
  while (!text.empty()) {
    auto const end = text.find('\n');
    std::string const line{text.substr(0, end)};
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    ++number;
    std::string_view value{line};
    if (line.empty() || line.front() == '#') continue;
    if (take(value, "language: ")) {
      ahead.language = value;
    } else if (take(value, "lexicon: ")) {
      ahead.lexicon = value;
    } else if (take(value, "kind: ")) {
      ahead.kind = value;
    } else if (line.front() != ' ') {
      ahead.text = line;
      ahead.line = number;
      leads.push_back(ahead);
    } else {
      try {
        leads.back().says.push_back(LineReader{}.read(trimmed(line)));
      } catch (std::runtime_error const& error) {
        throw std::runtime_error{"line " + std::to_string(number) + ": " + error.what()};
      }
    }
  }
  return leads;
}

bool agrees(TrueStatement const& truth, Statement const& read) {
  auto const strength = truth.note              ? Strength::noted
                        : !truth.hedge.empty()  ? Strength::hedged
                        : !truth.except.empty() ? Strength::excepted
                                                : Strength::firm;
  if (read.strength != strength || read.hedge != truth.hedge) return false;
  if (sorted(read.except) != sorted(truth.except)) return false;
  Words limits;
  for (auto const& limit : read.limits) limits.push_back(limit.value);
  if (sorted(limits) != sorted(truth.limits)) return false;
  if (read.any_of.size() != truth.any_of.size()) return false;
  return std::all_of(truth.any_of.begin(), truth.any_of.end(), [&](TrueAtom const& atom) {
    return std::any_of(read.any_of.begin(), read.any_of.end(),
                       [&](Atom const& other) { return same_atom(atom, other); });
  });
}

}  // namespace keydrift::test
