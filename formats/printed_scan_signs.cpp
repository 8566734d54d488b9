#include "keydrift/formats/printed_scan_signs.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLetters = 5;  // of a spaced word: "a b c d" are parts of a figure

bool is_small(char c) { return c >= 'a' && c <= 'z'; }

struct Line {
  std::size_t begin{};
  std::string_view text;  // without the blanks before it
};

std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const first = std::min(skip_blanks(text, begin), end);
    lines.push_back({first, text.substr(first, end - first)});
    begin = end + 1;
  }
  return lines;
}

// Bytes of "t r i d e n t a t u s" at the front of `text`; 0 where no spaced word stands.
std::size_t spaced_word(std::string_view text) {
  std::size_t letters = 0;
  std::size_t at = 0;
  bool counted = true;  // "a b c d e"
  for (;; at += 2) {
    if (at >= text.size() || !is_small(text[at])) return 0;
    counted = counted && (letters == 0 || text[at] == text[at - 2] + 1);
    ++letters;
    bool const more = at + 2 < text.size() && text[at + 1] == ' ' && is_small(text[at + 2]) &&
                      (at + 3 >= text.size() || !is_letter(code_point_at(text, at + 3).value));
    if (!more) break;
  }
  return letters >= kFewestLetters && !counted ? at + 1 : 0;
}

// A text is looked through only where it has what is looked for.
bool has_spaced_letters(std::string_view text) {
  for (std::size_t at = 0; at + 4 < text.size(); ++at) {
    if (text[at] == ' ' && is_small(text[at + 1]) && text[at + 2] == ' ' &&
        is_small(text[at + 3]) && text[at + 4] == ' ') {
      return true;
    }
  }
  return false;
}

// How many times `sign` stands before a blank and a capital at the front of the line.
std::size_t strokes(std::string_view line, char sign) {
  constexpr std::size_t kMost = 3;
  std::size_t count = 0;
  while (count < line.size() && line[count] == sign) ++count;
  if (count == 0 || count > kMost || !is_blank(code_point_at(line, count).value)) return 0;
  return is_upper(code_point_at(line, skip_blanks(line, count)).value) ? count : 0;
}

enum class Greek { none, latin_a, alpha, beta };

struct GreekLabel {
  Greek letter{Greek::none};
  std::size_t bytes{};
  char end{};
};

GreekLabel greek_label(std::string_view line) {
  auto const c = code_point_at(line, 0);
  auto const letter = c.value == 'a'                        ? Greek::latin_a
                      : c.value == 0x3B1                    ? Greek::alpha
                      : c.value == 0xDF || c.value == 0x3B2 ? Greek::beta
                                                            : Greek::none;
  if (letter == Greek::none || c.length >= line.size()) return {};
  char const end = line[c.length];
  bool const label = end == ')' || end == '.' || end == ' ' || end == '\t';
  bool const words = label && is_letter(code_point_at(line, skip_blanks(line, c.length + 1)).value);
  return words ? GreekLabel{letter, c.length, end == '\t' ? ' ' : end} : GreekLabel{};
}

struct Change {
  std::size_t at{};
  std::size_t bytes{};
  std::string_view put;
};

// `changes`: in the order of their places.
void apply(std::vector<Change> const& changes, std::string& text) {
  std::string changed;
  changed.reserve(text.size() + changes.size() * 2);
  std::size_t done = 0;
  for (auto const& change : changes) {
    changed.append(text, done, change.at - done).append(change.put);
    done = change.at + change.bytes;
  }
  changed.append(text, done);
  text = std::move(changed);
}

}  // namespace

std::size_t close_spaced_words(std::string& text) {
  if (!has_spaced_letters(text)) return 0;
  std::size_t words = 0;
  std::string closed;
  closed.reserve(text.size());
  std::size_t blanks = 0;  // taken out of this line
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == '\n') {
      closed.append(blanks, ' ').push_back('\n');
      blanks = 0;
      ++at;
      continue;
    }
    bool const begins = at == 0 || text[at - 1] == ' ' || text[at - 1] == '\n';
    auto const length = begins ? spaced_word(std::string_view{text}.substr(at)) : 0;
    if (length == 0) {
      closed.push_back(text[at++]);
      continue;
    }
    for (std::size_t letter = 0; letter < length; letter += 2) closed.push_back(text[at + letter]);
    blanks += length / 2;
    at += length;
    ++words;
  }
  closed.append(blanks, ' ');
  text = std::move(closed);
  return words;
}

std::size_t restore_daggers(std::string& text) {
  static constexpr std::string_view kDaggers = "†††";
  constexpr std::size_t kBytes = 3;  // of a dagger
  std::vector<Change> changes;
  bool two = false;
  for (auto const& line : lines_of(text)) {
    // In a lettered key "t" stands behind "s".
    if (strokes(line.text, 's') > 0) return 0;
    auto const count = strokes(line.text, 't');
    if (count == 0) continue;
    two = two || count == 2;
    changes.push_back({line.begin, count, kDaggers.substr(0, count * kBytes)});
  }
  if (changes.size() < 2 || !two) return 0;
  apply(changes, text);
  return changes.size();
}

std::size_t restore_greek_labels(std::string& text) {
  if (text.find("ß") == std::string::npos && text.find("β") == std::string::npos) return 0;
  struct Open {
    std::size_t at{};
    GreekLabel label;
  };
  std::vector<Open> open;  // "a" and alpha that no beta has answered yet
  std::vector<Change> changes;
  for (auto const& line : lines_of(text)) {
    auto const label = greek_label(line.text);
    if (label.letter == Greek::none) continue;
    if (label.letter != Greek::beta) {
      open.push_back({line.begin, label});
      continue;
    }
    while (!open.empty() && open.back().label.end != label.end) open.pop_back();
    if (open.empty()) continue;
    auto const& first = open.back();
    if (first.label.letter == Greek::latin_a) changes.push_back({first.at, 1, "α"});
    bool const sharp = code_point_at(line.text, 0).value == 0xDF;
    if (sharp) changes.push_back({line.begin, label.bytes, "β"});
    open.pop_back();
  }
  std::sort(changes.begin(), changes.end(),
            [](Change const& a, Change const& b) { return a.at < b.at; });
  apply(changes, text);
  return changes.size();
}

}  // namespace keydrift::printed
