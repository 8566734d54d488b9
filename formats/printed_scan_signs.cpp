#include "keydrift/formats/printed_scan_signs.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

// How many times `sign` stands before a blank and a capital at the front of the line.
// `other` may stand for some of them, "tf" for two.
std::size_t strokes(std::string_view line, char sign, char other = '\0') {
  constexpr std::size_t kMost = 3;
  std::size_t count = 0;
  while (count < line.size() && (line[count] == sign || (other != '\0' && line[count] == other))) {
    ++count;
  }
  if (count == 0 || count > kMost || !is_blank(code_point_at(line, count).value)) return 0;
  return is_upper(code_point_at(line, skip_blanks(line, count)).value) ? count : 0;
}

// "f† Annuals", "†t Annuals", "+f Gills": one of two signs came out as a letter.  `sign`: the
// other.
std::optional<TextChange> half_misread(TextLine const& line, std::string_view sign) {
  auto const text = line.text;
  bool const behind = text.starts_with(sign);
  auto const letter = behind ? sign.size() : 0;
  if (letter >= text.size() || (text[letter] != 'f' && text[letter] != 't')) return std::nullopt;
  if (!behind && !text.substr(1).starts_with(sign)) return std::nullopt;
  auto const end = sign.size() + 1;
  if (!is_blank(code_point_at(text, end).value)) return std::nullopt;
  if (!is_upper(code_point_at(text, skip_blanks(text, end)).value)) return std::nullopt;
  return TextChange{line.begin, end, std::string{sign} + std::string{sign}};
}

// Crosses at the front of a line.
struct Crosses {
  std::size_t count{};
  std::size_t bytes{};
  bool misread{false};
};

// A dash and what a scan makes of the upright stroke behind it: "-|", "—\\", "-f".
std::size_t half_cross(std::string_view line, std::size_t at) {
  auto const dash = code_point_at(line, at);
  if (!is_dash(dash.value) || at + dash.length >= line.size()) return 0;
  static constexpr std::string_view kUprights = "|\\/!jfhtlI{}[]4)";
  return kUprights.find(line[at + dash.length]) != std::string_view::npos ? dash.length + 1 : 0;
}

Crosses crosses_at_front(std::string_view line) {
  constexpr std::size_t kMost = 4;
  Crosses found;
  std::size_t at = 0;
  while (at < line.size()) {
    auto const next = found.count > 0 && line[at] == ' ' ? at + 1 : at;
    auto const half = half_cross(line, next);
    bool const whole = next < line.size() && line[next] == '+';
    if (half == 0 && !whole) break;
    ++found.count;
    found.misread = found.misread || half > 0;
    at = next + (whole ? 1 : half);
    // "-|-": the dash behind the stroke.
    auto const behind = code_point_at(line, at);
    bool const closes = half > 0 && is_dash(behind.value) &&
                        is_blank(code_point_at(line, at + behind.length).value);
    if (closes) at += behind.length;
  }
  found.bytes = at;
  bool const words = is_blank(code_point_at(line, at).value) &&
                     is_upper(code_point_at(line, skip_blanks(line, at)).value);
  return found.count > 0 && found.count <= kMost && words ? found : Crosses{};
}

// like_beta and like_gamma: letters that a scan may have for one, beside true Greek ones.
enum class Greek { none, latin_a, alpha, beta, like_beta, like_gamma };

struct GreekLabel {
  Greek letter{Greek::none};
  std::size_t bytes{};
  char end{};
  bool misread{false};  // no Greek letter as it stands
  bool comma{false};    // for the full stop behind it, "ß, Stamens"
};

// What a scan has for the letters: "a" and "«" for alpha; "ß", "/3", "/S", "/?" and "jS" for
// beta.
GreekLabel greek_letter(std::string_view line) {
  auto const c = code_point_at(line, 0);
  constexpr char32_t kGuillemet = 0xAB;
  constexpr char32_t kSharpS = 0xDF;
  if (c.value == 0x3B1) return {Greek::alpha, c.length, 0, false};
  if (c.value == 0x3B2) return {Greek::beta, c.length, 0, false};
  if (c.value == 'a') return {Greek::latin_a, 1, 0, true};
  if (c.value == kGuillemet && line.find("»") == std::string_view::npos) {
    return {Greek::alpha, c.length, 0, true};
  }
  if (c.value == kSharpS) return {Greek::beta, c.length, 0, true};
  if (c.value == 'p' || c.value == 'P') return {Greek::like_beta, 1, 0, true};
  if (c.value == 'y' || c.value == 'v') return {Greek::like_gamma, 1, 0, true};
  constexpr std::array<std::string_view, 4> kForms{"/3", "/S", "/?", "jS"};
  for (auto const form : kForms) {
    if (line.starts_with(form)) return {Greek::beta, form.size(), 0, true};
  }
  return {};
}

GreekLabel greek_label(std::string_view line) {
  auto label = greek_letter(line);
  if (label.letter == Greek::none || label.bytes >= line.size()) return {};
  label.comma = line[label.bytes] == ',' && label.letter == Greek::beta && label.misread;
  char const end = label.comma ? '.' : line[label.bytes];
  bool const closed = end == ')' || end == '.' || end == ' ' || end == '\t';
  auto at = skip_blanks(line, label.bytes + 1);
  auto const dash = code_point_at(line, at);
  bool const dashed = is_dash(dash.value) && is_blank(code_point_at(line, at + dash.length).value);
  if (dashed) at = skip_blanks(line, at + dash.length);  // "α. — 4 setae"
  auto const first = code_point_at(line, at).value;
  // "a. (5 Flowers …": a sign read as a bracket and a figure.
  bool const sign = first == '(' && is_digit(code_point_at(line, at + 1).value);
  bool const words = closed && (is_letter(first) || sign || (dashed && is_digit(first)));
  label.end = end == '\t' ? ' ' : end;
  return words ? label : GreekLabel{};
}

// A blank, the beginning of a line or an opening bracket stands before the word at `begin`.
bool begins_word(std::string_view text, std::size_t begin) {
  return begin == 0 || std::string_view{" \n\t("}.find(text[begin - 1]) != std::string_view::npos;
}

}  // namespace

std::size_t restore_daggers(std::string& text) {
  static constexpr std::string_view kDaggers = "†††";
  static constexpr std::string_view kDoubleDaggers = "‡‡";
  constexpr std::size_t kBytes = 3;  // of a dagger
  // By letter, the lines that begin with it once or more.
  struct Found {
    std::vector<TextChange> lines;
    bool two{false};
  };
  Found t;
  Found f;
  std::vector<TextChange> pluses;
  std::vector<TextChange> halves;
  bool dagger = false;
  bool double_dagger = false;
  bool plus = false;
  bool lettered = false;
  bool star = false;
  bool stars = false;
  for (auto const& line : lines_of(text)) {
    auto const first = code_point_at(line.text, 0).value;
    star = star || strokes(line.text, '*') == 1;
    stars = stars || strokes(line.text, '*') == 2;
    dagger = dagger || first == 0x2020;
    double_dagger = double_dagger || first == 0x2021;
    // In a lettered key "t" stands behind "s", and "f" behind "e".
    lettered = lettered || strokes(line.text, 's') > 0 || strokes(line.text, 'e') > 0;
    if (auto change = half_misread(line, "†")) halves.push_back(*std::move(change));
    auto const add = [&line](Found& found, std::size_t count) {
      if (count == 0) return;
      found.lines.push_back({line.begin, count, std::string{kDaggers.substr(0, count * kBytes)}});
      found.two = found.two || count == 2;
    };
    auto const ts = strokes(line.text, 't');
    auto const fs = strokes(line.text, 'f');
    add(t, ts);
    add(f, ts + fs > 0 ? fs : strokes(line.text, 'f', 't'));  // "tf"
    auto const crosses = strokes(line.text, '+');
    plus = plus || crosses == 1;
    if (crosses == 2) pluses.push_back({line.begin, 2, std::string{kDoubleDaggers}});
  }
  std::vector<TextChange> changes;
  auto const take = [&changes](std::vector<TextChange> const& lines) {
    changes.insert(changes.end(), lines.begin(), lines.end());
  };
  if (!lettered && t.two && (dagger || t.lines.size() >= 2)) take(t.lines);
  // Beneath stars daggers are the next signs.
  constexpr std::size_t kFewest = 4;
  bool const beneath_stars = star && stars && f.lines.size() >= kFewest;
  if (!lettered && f.two && (dagger || beneath_stars)) take(f.lines);
  if (double_dagger && !plus) take(pluses);
  if (dagger) take(halves);
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, text);
  return changes.size();
}

std::size_t restore_crosses(std::string& text) {
  static constexpr std::string_view kCrosses = "++++";
  static constexpr std::string_view kSaltires = "×××";
  constexpr std::size_t kBytes = 2;  // of a saltire
  std::vector<TextChange> crosses;
  std::vector<TextChange> saltires;
  bool crossed = false;
  bool starred = false;
  bool one = false;
  bool two = false;
  std::vector<TextChange> small;  // "x Divisions obtuses" beside "× Divisions aiguës"
  bool true_saltires = false;
  for (auto const& line : lines_of(text)) {
    starred = starred || strokes(line.text, '*') > 0;
    if (strokes(line.text, 'x', 'X') == 1) small.push_back({line.begin, 1, std::string{"×"}});
    constexpr std::string_view kSaltire = "× ";
    true_saltires = true_saltires || (line.text.starts_with(kSaltire) &&
                                      is_upper(code_point_at(line.text, kSaltire.size()).value));
    if (auto const count = strokes(line.text, 'X'); count > 0) {
      one = one || count == 1;
      two = two || count == 2;
      saltires.push_back({line.begin, count, std::string{kSaltires.substr(0, count * kBytes)}});
      continue;
    }
    if (auto change = half_misread(line, "+")) {
      crosses.push_back(*std::move(change));
      continue;
    }
    auto const found = crosses_at_front(line.text);
    crossed = crossed || (found.count > 0 && !found.misread);
    if (found.misread) {
      crosses.push_back({line.begin, found.bytes, std::string{kCrosses.substr(0, found.count)}});
    }
  }
  std::vector<TextChange> changes;
  if (crossed) changes = std::move(crosses);
  // "XX" is a number too, where nothing else is marked by signs.
  bool const signs = crossed && starred && one && two;
  if (signs) changes.insert(changes.end(), saltires.begin(), saltires.end());
  if (true_saltires) changes.insert(changes.end(), small.begin(), small.end());
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, text);
  return changes.size();
}

std::size_t restore_rings(std::string& text) {
  constexpr std::size_t kFewest = 2;  // true ones
  std::vector<TextChange> rings;
  std::size_t true_rings = 0;
  bool other_signs = false;
  for (auto const& line : lines_of(text)) {
    if (strokes(line.text, 'O') == 1) ++true_rings;
    auto const crosses = crosses_at_front(line.text);
    other_signs =
        other_signs || strokes(line.text, '*') > 0 || (crosses.count > 0 && !crosses.misread);
    for (auto const ring : {std::string_view{"© "}, std::string_view{"0 "}}) {
      bool const capital =
          line.text.starts_with(ring) && is_upper(code_point_at(line.text, ring.size()).value);
      if (capital) rings.push_back({line.begin, ring.size(), "O "});
    }
  }
  if (true_rings < kFewest || !other_signs) return 0;
  make_changes(rings, text);
  return rings.size();
}

std::size_t restore_stars(std::string& text) {
  static constexpr std::string_view kStars = "**";
  std::vector<TextChange> changes;
  bool starred = false;
  for (auto const& line : lines_of(text)) {
    std::size_t at = 0;
    std::size_t stars = 0;
    bool other = false;
    for (; stars <= kStars.size(); ++stars) {
      auto const c = code_point_at(line.text, at);
      bool const like = c.value == 0x2666 || c.value == 0x25C6 || c.value == 0x2605;
      if (c.value != '*' && !like) break;
      other = other || like;
      at += c.length;
    }
    bool const apart =
        stars > 0 && stars <= kStars.size() && at < line.text.size() && line.text[at] == ' ';
    if (!apart) continue;
    starred = starred || !other;
    if (other) changes.push_back({line.begin, at, std::string{kStars.substr(0, stars)}});
  }
  if (!starred) return 0;
  make_changes(changes, text);
  return changes.size();
}

std::size_t restore_greek_labels(std::string& text) {
  struct Open {
    std::size_t at{};
    GreekLabel label;
    bool nested{false};  // directly beneath another "a": the upper one is Latin, this one Greek
  };
  std::vector<Open> open;  // "a" and alpha that no beta has answered yet
  std::vector<TextChange> changes;
  char answered = 0;  // how the labels end of which a true beta came last
  char above = 0;     // how the label of the line above ends, an "a"
  for (auto const& line : lines_of(text)) {
    if (line.text.empty()) continue;
    auto const label = greek_label(line.text);
    auto const a_above = std::exchange(above, label.letter == Greek::latin_a ? label.end : '\0');
    if (label.letter == Greek::none) continue;
    if (label.letter == Greek::like_gamma) {
      if (answered == label.end) changes.push_back({line.begin, label.bytes, "γ"});
      continue;
    }
    if (label.letter == Greek::like_beta) {
      bool const answers = !open.empty() && open.back().label.end == label.end &&
                           (open.back().nested || !open.back().label.misread);
      if (!answers) continue;
      auto const& first = open.back();
      if (first.label.misread) changes.push_back({first.at, first.label.bytes, "α"});
      changes.push_back({line.begin, label.bytes, "β"});
      open.pop_back();
      answered = label.end;
      continue;
    }
    answered = label.letter == Greek::beta && !label.misread ? label.end : '\0';
    if (label.letter != Greek::beta) {
      open.push_back(Open{line.begin, label, label.misread && a_above == label.end});
      continue;
    }
    while (!open.empty() && open.back().label.end != label.end) open.pop_back();
    if (open.empty()) continue;
    // A true beta answers the true alpha above it; "a" and "«" between them are words.
    auto const alpha = std::find_if(open.rbegin(), open.rend(), [&label](Open const& one) {
      return !one.label.misread && one.label.end == label.end;
    });
    if (!label.misread && alpha != open.rend()) {
      open.erase(std::prev(alpha.base()), open.end());
      continue;
    }
    auto const& first = open.back();
    if (first.label.misread) changes.push_back({first.at, first.label.bytes, "α"});
    if (label.comma) {
      changes.push_back({line.begin, label.bytes + 1, "β."});
    } else if (label.misread) {
      changes.push_back({line.begin, label.bytes, "β"});
    }
    open.pop_back();
  }
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, text);
  return changes.size();
}

std::size_t restore_capital_letters(std::string& text) {
  constexpr std::size_t kFewest = 6;  // signs of a word
  std::size_t restored = 0;
  for (auto at = text.find('0'); at != std::string::npos; at = text.find('0', at + 1)) {
    if (at < 2 || !is_capital(text[at - 1]) || at + 1 == text.size() || !is_capital(text[at + 1]))
      continue;
    auto begin = at;
    while (begin > 0 && (is_capital(text[begin - 1]) || text[begin - 1] == '0')) --begin;
    auto end = at;
    while (end < text.size() && (is_capital(text[end]) || text[end] == '0')) ++end;
    auto const word = std::string_view{text}.substr(begin, end - begin);
    bool const letters = std::count(word.begin(), word.end(), '0') <= 2 && word.size() >= kFewest &&
                         is_capital(word.front());
    bool const ends = end == text.size() ||
                      std::string_view{" \n\t\r.,;:)"}.find(text[end]) != std::string_view::npos;
    std::string meant{word};
    std::replace(meant.begin(), meant.end(), '0', 'O');
    // "DEB0ACFE" is a code.
    if (!letters || !ends || !begins_word(text, begin) || !has_strict_latin_ending(fold(meant))) {
      continue;
    }
    text.replace(begin, meant.size(), meant);
    ++restored;
  }
  return restored;
}

std::size_t restore_letters(std::string& text) {
  constexpr std::size_t kFewestWithFigures = 5;
  constexpr std::size_t kMostFigures = 2;
  std::size_t restored = 0;
  auto const is_figure = [](char c) { return c == '1' || c == '0'; };
  auto const is_letter_here = [](char c) { return is_small(c) || (c >= 'A' && c <= 'Z'); };
  for (auto at = text.find_first_of("10"); at != std::string::npos;
       at = text.find_first_of("10", at + 1)) {
    if (at == 0 || !is_letter_here(text[at - 1])) continue;
    auto begin = at;
    while (begin > 0 && (is_letter_here(text[begin - 1]) || is_figure(text[begin - 1]))) --begin;
    auto end = at;
    std::size_t figures = 0;
    std::size_t behind = 0;  // letters behind the last figure
    while (end < text.size() && (is_small(text[end]) || is_figure(text[end]))) {
      behind = is_figure(text[end]) ? 0 : behind + 1;
      if (is_figure(text[end])) ++figures;
      ++end;
    }
    // "Fig.10b", "x1y", "H10rs": signs, not words.
    bool const small = std::all_of(text.begin() + static_cast<std::ptrdiff_t>(begin) + 1,
                                   text.begin() + static_cast<std::ptrdiff_t>(at), is_small);
    bool const apart = begins_word(text, begin);
    bool const ends = end == text.size() ||
                      std::string_view{" \n\t\r.,;:)"}.find(text[end]) != std::string_view::npos;
    // "www.mar1ens.org" goes on behind its full stop.
    bool const goes_on = end + 1 < text.size() && text[end] == '.' && is_small(text[end + 1]);
    bool const enough = behind >= 2 || (behind == 1 && at - begin >= 4);  // "parvu1a"
    bool const word = is_letter_here(text[begin]) && (is_small(text[begin]) || at > begin + 1) &&
                      small && apart && ends && !goes_on && enough && figures <= kMostFigures &&
                      end - begin >= kFewestWithFigures;
    if (word) {
      for (auto i = at; i < end; ++i) {
        if (is_figure(text[i])) text[i] = text[i] == '1' ? 'l' : 'o';
      }
      restored += figures;
    }
    at = end - 1;
  }
  return restored;
}

std::size_t restore_small_l(std::string& text) {
  constexpr std::size_t kFewestBefore = 2;
  constexpr std::size_t kShortest = 5;  // bytes
  std::size_t restored = 0;
  for (auto at = text.find('I'); at != std::string::npos; at = text.find('I', at + 1)) {
    bool const between =
        at > 0 && is_small(text[at - 1]) && at + 1 < text.size() && is_small(text[at + 1]);
    if (!between) continue;
    auto begin = at;
    while (begin > 0 && is_small(text[begin - 1])) --begin;
    auto end = at + 1;
    while (end < text.size() && is_small(text[end])) ++end;
    // "McIntosh" begins with a capital; "mcIntoshi", "laIandei" are particles before names.
    static constexpr std::array<std::string_view, 8> kParticles{"mc", "de", "di", "du",
                                                                "da", "la", "le", "el"};
    auto const before = std::string_view{text}.substr(begin, at - begin);
    if (std::find(kParticles.begin(), kParticles.end(), before) != kParticles.end()) continue;
    if (!begins_word(text, begin) || at - begin < kFewestBefore || end - begin < kShortest)
      continue;
    text[at] = 'l';
    ++restored;
  }
  return restored;
}

}  // namespace keydrift::printed
