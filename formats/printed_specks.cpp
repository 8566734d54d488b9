#include "keydrift/formats/printed_specks.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSpeckDots = 3;
constexpr std::size_t kLongestTail = 80;  // bytes behind a row of dots

// Signs that no number and no name begins with or ends in.
bool is_speck_for_dot(char32_t c) {
  static constexpr std::u32string_view kSpecks =
      U"\u25A0\u25AA\u2022\u00B7\u00BB\u00B0^|`~_\u2018\u2019\u00B4'\u201D\u00AC";
  return kSpecks.find(c) != std::u32string_view::npos;
}

// Dirt that stands nowhere in print.
bool is_block(char32_t c) { return c == 0x25A0 || c == 0x25AA || c == 0x2022 || c == '^'; }

// The last row of dots of a line, with blanks and dirt among them.
struct SpeckRow {
  std::size_t begin{};
  std::size_t tail{};  // of what stands behind it
};

// A dot of the row at `at`, or dirt between two: a sign, or a letter that touches both.
bool is_of_row(std::string_view line, std::size_t at) {
  auto const c = code_point_at(line, at);
  if (c.value == '.' || c.value == ' ' || is_speck_for_dot(c.value)) return true;
  if (c.value == ',' || c.value == ';') return true;
  // "....r..."
  return is_lower(c.value) && line.substr(0, at).ends_with("..") &&
         line.substr(at + c.length).starts_with("..");
}

std::optional<SpeckRow> last_row(std::string_view line) {
  for (auto dot = line.rfind('.'); dot != std::string_view::npos && dot > 0;
       dot = line.rfind('.', dot - 1)) {
    // To the left of the dot, over all that may be of the row.
    auto begin = dot;
    std::size_t dots = 1;
    std::size_t signs = 1;  // dots, and dirt that is likely one
    auto tail = dot + 1;
    while (tail < line.size()) {
      auto const c = code_point_at(line, tail);
      if (c.value != ' ' && c.value != ',' && c.value != ';' && !is_speck_for_dot(c.value)) break;
      if (c.value != ' ') ++signs;
      tail += c.length;
    }
    while (begin > 0) {
      auto const before = code_point_before(line, begin);
      auto const at = begin - before.length;
      if (!is_of_row(line, at)) break;
      if (before.value == '.') ++dots;
      if (before.value != ' ') ++signs;
      begin = at;
    }
    if (dots >= kFewestSpeckDots || (dots + 1 == kFewestSpeckDots && signs > kFewestSpeckDots)) {
      // Signs that touch a word are the word's.
      auto const first = line[begin] == ' ' ? begin : std::min(line.find('.', begin), dot);
      return SpeckRow{first, tail};
    }
    if (begin == 0) break;
    dot = begin;
  }
  return std::nullopt;
}

bool begins_tail(std::string_view tail) {
  auto const first = code_point_at(tail, 0).value;
  return is_digit(first) || is_letter(first);
}

// What stands for a sign of so many bytes, so that neither columns nor bytes are counted otherwise.
std::string_view dot_for(CodePoint sign) {
  return sign.length == 1 ? "." : sign.length == 2 ? "\u00B7" : "\u2024";
}
std::string_view blank_for(CodePoint sign) {
  return sign.length == 1 ? " " : sign.length == 2 ? "\u00A0" : "\u2002";
}
// Blanks for all of the text.
std::string blanks_for(std::string_view text) {
  std::string blanks;
  for (std::size_t at = 0; at < text.size();) {
    auto const sign = code_point_at(text, at);
    blanks += blank_for(sign);
    at += sign.length;
  }
  return blanks;
}

// Runs `mend` on each line with a row of dots and something behind it; counts those that changed.
std::size_t for_rows(
    std::string& text,
    std::function<std::optional<std::string>(std::string_view, SpeckRow const&)> const& mend) {
  if (text.find("...") == std::string::npos && text.find(". .") == std::string::npos) return 0;
  std::string changed;
  std::size_t lines = 0;
  std::size_t done = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const line = std::string_view{text}.substr(begin, end - begin);
    auto const row = line.size() < 1000 ? last_row(line) : std::nullopt;
    if (row && row->tail < line.size() && line.size() - row->tail <= kLongestTail) {
      if (auto mended = mend(line, *row)) {
        changed.append(text, done, begin - done).append(*mended);
        done = end;
        ++lines;
      }
    }
    begin = end + 1;
  }
  if (lines == 0) return 0;
  changed.append(text, done);
  text = std::move(changed);
  return lines;
}

// The line with its row without dirt; specks around what the row leads to become blanks.
std::optional<std::string> without_specks(std::string_view line, SpeckRow const& row) {
  std::string mended{line.substr(0, row.begin)};
  bool dirty = false;
  for (auto at = row.begin; at < row.tail;) {
    auto const c = code_point_at(line, at);
    bool const clean = c.value == '.' || c.value == ' ';
    dirty = dirty || !clean;
    mended += clean ? line.substr(at, 1) : dot_for(c);
    at += c.length;
  }
  auto at = row.tail;
  while (at < line.size() && (line[at] == ' ' || line[at] == '\t')) mended += line[at++];
  // "'A. busa"
  while (at < line.size() && is_speck_for_dot(code_point_at(line, at).value)) {
    auto const c = code_point_at(line, at);
    auto const behind = skip_blanks(line, at + c.length);
    if (!is_letter(code_point_at(line, behind).value)) break;
    mended += blank_for(c);
    dirty = true;
    at += c.length;
  }
  auto const tail = line.substr(at);
  if (!begins_tail(tail)) return std::nullopt;
  // "… . . , in fresh ones glossy and smooth": words go on behind the dots.
  constexpr std::size_t kMostWords = 3;
  bool const words =
      is_lower(code_point_at(tail, 0).value) && words_of(tail, kMostWords + 1).size() > kMostWords;
  if (words) return std::nullopt;
  // "A. busa Roe■"; what stands beside a number is told by the numbers of couplets.
  auto kept = trim_right(tail).size();
  while (kept > 0 && is_block(code_point_before(tail, kept).value)) {
    kept = trim_right(tail.substr(0, kept - code_point_before(tail, kept).length)).size();
  }
  bool const numbered = is_digit(code_point_at(tail, 0).value);
  // "..... 4 .": the stop that closes the lead.
  auto const digits = leading_figures(tail);
  if (numbered && trim(tail.substr(digits)) == "." && tail[digits] == ' ') {
    return mended.append(tail.substr(0, digits)).append(tail.size() - digits, ' ');
  }
  if (numbered || kept == trim_right(tail).size()) {
    return dirty ? std::optional{mended.append(tail)} : std::nullopt;
  }
  mended.append(tail.substr(0, kept)).append(blanks_for(tail.substr(kept)));
  return mended;
}

// Bytes of "7. " before "M. busa", "M, busa"; 0 where no such number begins the tail.
std::size_t bytes_of_number(std::string_view tail) {
  auto const digits = leading_figures(tail);
  return digits > 0 && tail.substr(digits, 2) == ". " ? skip_blanks(tail, digits + 1) : 0;
}

// 'M' of "M. busa", "7. M. busa"; 0 where the tail begins otherwise.
char initial_at(std::string_view tail) {
  tail.remove_prefix(bytes_of_number(tail));
  bool const short_genus = tail.size() > 4 && tail[0] >= 'A' && tail[0] <= 'Z' && tail[1] == '.' &&
                           tail[2] == ' ' && tail[3] >= 'a' && tail[3] <= 'z';
  return short_genus ? tail[0] : '\0';
}

// "M. busa …", "busa …"
bool begins_species(std::string_view tail) {
  auto const words = words_of(tail, 2);
  if (words.empty()) return false;
  bool const abbreviated = words.size() == 2 && is_abbreviated(words[0]);
  auto const epithet = without_closing_marks(words[abbreviated ? 1 : 0]);
  return is_epithet(epithet) && has_epithet_ending(epithet);
}

// Bytes of "No. " before "2. M. busa"; 0 without.
std::size_t words_before_number(std::string_view tail) {
  for (auto const word : {std::string_view{"No. "}, std::string_view{"Nr. "}}) {
    if (!tail.starts_with(word)) continue;
    auto const rest = tail.substr(word.size());
    auto const digits = leading_figures(rest);
    bool const number = digits > 0 && rest.substr(digits, 2) == ". ";
    return number && begins_species(rest.substr(digits + 2)) ? word.size() : 0;
  }
  return 0;
}

}  // namespace

std::size_t close_full_stops(std::string& text) {
  std::size_t lines = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const line = trim_right(std::string_view{text}.substr(begin, end - begin));
    // Otherwise it may be what is left of leaders that lead to the next line.
    auto const next = end + 1 < text.size() ? text[end + 1] : '\n';
    bool const closes = next == '\n' || next == '\r' || is_digit(static_cast<unsigned char>(next));
    bool const apart = closes && line.size() > 2 && line.ends_with(" .") &&
                       is_letter(code_point_before(line, line.size() - 2).value) &&
                       line.find(". .") == std::string_view::npos &&
                       line.find("..") == std::string_view::npos;
    if (apart) {
      std::swap(text[begin + line.size() - 2], text[begin + line.size() - 1]);
      ++lines;
    }
    begin = end + 1;
  }
  return lines;
}

std::size_t clear_specks(std::string& text) { return for_rows(text, without_specks); }

std::size_t restore_initials(std::string& text) {
  constexpr std::size_t kFewest = 2;
  std::map<char, std::size_t> initials;
  for_rows(text, [&](std::string_view line, SpeckRow const& row) -> std::optional<std::string> {
    if (auto const initial = initial_at(trim(line.substr(row.tail))); initial != '\0') {
      ++initials[initial];
    }
    return std::nullopt;
  });
  auto const most =
      std::max_element(initials.begin(), initials.end(),
                       [](auto const& a, auto const& b) { return a.second < b.second; });
  // Of one genus: elsewhere "A" and "M" may both be meant.
  constexpr std::size_t kManyMore = 6;  // than all others, which may be damaged
  std::size_t others = 0;
  for (auto const& [initial, times] : initials) others += times;
  if (most == initials.end() || most->second < kFewest) return 0;
  others -= most->second;
  if (others > 0 && most->second < others * kManyMore) return 0;
  auto const genus = most->first;
  return for_rows(
      text, [genus](std::string_view line, SpeckRow const& row) -> std::optional<std::string> {
        auto at = skip_blanks(line, row.tail);
        at += bytes_of_number(line.substr(at));
        auto const tail = line.substr(at);
        if (tail.size() < 6) return std::nullopt;
        std::string mended{line};
        auto const is_epithet_at = [tail](std::size_t begin) {
          auto const word =
              without_closing_marks(tail.substr(begin, tail.find(' ', begin) - begin));
          return is_epithet(word) && has_epithet_ending(word);
        };
        // "M . busa", "M, busa"
        if (tail[0] == genus && tail.substr(1, 3) == " . " && is_epithet_at(4)) {
          return mended.replace(at + 1, 2, ". ");
        }
        if (tail[0] == genus && tail.substr(1, 2) == ", " && is_epithet_at(3)) {
          return mended.replace(at + 1, 1, ".");
        }
        // "iM. busa"
        bool const before = (tail[0] == 'i' || tail[0] == 'l' || tail[0] == 'j') &&
                            tail[1] == genus && tail.substr(2, 2) == ". " && is_epithet_at(4);
        if (before) return mended.replace(at, 1, " ");
        return std::nullopt;
      });
}

std::size_t restore_initial_o(std::string& text) {
  constexpr std::size_t kFewest = 2;
  // Where "O" or "0" stands between a species' number and an epithet.
  auto const places_of = [&text](std::string_view initial) {
    std::vector<std::size_t> places;
    for (auto at = text.find(initial); at != std::string::npos; at = text.find(initial, at + 1)) {
      auto const rest = std::string_view{text}.substr(at + initial.size());
      auto const word = rest.substr(0, rest.find_first_of(" \n"));
      bool const number = at > 0 && is_digit(static_cast<unsigned char>(text[at - 1]));
      auto const epithet = without_closing_marks(word);
      if (number && is_epithet(epithet) && has_epithet_ending(epithet)) places.push_back(at + 2);
    }
    return places;
  };
  auto const zeros = places_of(". 0. ");
  if (zeros.empty() || places_of(". O. ").size() < std::max(kFewest, zeros.size())) return 0;
  for (auto const at : zeros) text[at] = 'O';
  return zeros.size();
}

std::size_t restore_species_numbers(std::string& text) {
  constexpr std::size_t kFewest = 2;
  std::size_t numbered = 0;  // "2. M. busa", "2. busa"
  std::size_t worded = 0;    // "No. 2. M. busa"
  for_rows(text, [&](std::string_view line, SpeckRow const& row) -> std::optional<std::string> {
    auto const tail = trim(line.substr(row.tail));
    auto const number = bytes_of_number(tail);
    if (number > 0 && begins_species(tail.substr(number))) ++numbered;
    if (words_before_number(tail) > 0) ++worded;
    return std::nullopt;
  });
  if (numbered < kFewest && worded < kFewest) return 0;
  return for_rows(
      text,
      [numbered, worded](std::string_view line, SpeckRow const& row) -> std::optional<std::string> {
        auto const at = skip_blanks(line, row.tail);
        auto const tail = line.substr(at);
        std::string mended{line};
        if (worded >= kFewest) {
          auto const words = words_before_number(tail);
          if (words == 0) return std::nullopt;
          return mended.replace(at, words, words, ' ');
        }
        auto const digits = leading_figures(tail);
        bool const comma =
            digits > 0 && tail.substr(digits, 2) == ", " && begins_species(tail.substr(digits + 2));
        if (comma && numbered >= kFewest) return mended.replace(at + digits, 1, ".");
        bool const one =
            (tail.starts_with("l. ") || tail.starts_with("I. ")) && begins_species(tail.substr(3));
        if (one && numbered >= kFewest) return mended.replace(at, 1, "1");
        return std::nullopt;
      });
}

std::size_t take_pages_for_remarks(std::string& text) {
  std::uint32_t largest = 0;  // number that a line begins with
  std::string_view const whole = text;
  for (std::size_t begin = 0; begin < whole.size();) {
    auto const end = std::min(whole.find('\n', begin), whole.size());
    auto const line = trim(whole.substr(begin, std::min<std::size_t>(end - begin, 80)));
    if (auto const label = read_label(line); label && label->family == LabelFamily::digits) {
      largest = std::max(largest, label->number);
    }
    begin = end + 1;
  }
  return for_rows(
      text, [largest](std::string_view line, SpeckRow const& row) -> std::optional<std::string> {
        constexpr std::size_t kMostDigits = 4;
        auto const tail = trim(line.substr(row.tail));
        bool const told =
            tail.starts_with("p. ") || tail.starts_with("S. ") || tail.starts_with("pag. ");
        auto const digits = told ? trim(tail.substr(tail.find(' '))) : tail;
        auto const bare = digits.ends_with('.') ? digits.substr(0, digits.size() - 1) : digits;
        bool const number = !bare.empty() && bare.size() <= kMostDigits && only_figures(bare);
        if (!number || (!told && number_of(bare) <= largest)) return std::nullopt;
        auto const before = trim_right(line.substr(0, row.begin));
        auto const first = last_row(before);
        if (!first || first->tail >= before.size()) return std::nullopt;
        auto const name = trim(before.substr(first->tail));
        // A gap within: two columns side by side.
        bool const named = name.find("  ") == std::string_view::npos && is_latin_name(name);
        auto const room = row.tail - before.size();
        if (!named || room < 4) return std::nullopt;
        std::string mended{before};
        mended += told ? ',' : ' ';
        mended.append(room - (told ? 1 : 4), ' ');
        if (!told) {
          mended[before.size()] = ',';
          mended += "p. ";
        }
        return mended.append(line.substr(row.tail));
      });
}

}  // namespace keydrift::printed
