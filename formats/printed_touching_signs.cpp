#include "keydrift/formats/printed_touching_signs.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <set>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_text_changes.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewestSoSet = 3;  // that show how others are set

bool is_big(char c) { return c >= 'A' && c <= 'Z'; }

// Behind other words of its line, where no label stands.
bool is_within_line(std::string_view text, std::size_t at) {
  while (at > 0 && (text[at - 1] == ' ' || text[at - 1] == '\t')) --at;
  return at > 0 && text[at - 1] != '\n';
}

// "P. alba": a capital, a full stop, a blank and small letters, behind other words.
bool is_parted_name(std::string_view text, std::size_t at) {
  return is_within_line(text, at) && text[at - 1] == ' ' && at + 5 < text.size() &&
         is_big(text[at]) && text[at + 1] == '.' && text[at + 2] == ' ' && is_small(text[at + 3]) &&
         is_small(text[at + 4]) && is_small(text[at + 5]);
}

// Small letters from `at` on.
std::size_t small_letters(std::string_view text, std::size_t at) {
  auto end = at;
  while (end < text.size() && is_small(text[end])) ++end;
  return end - at;
}

std::uint32_t label_number(std::string_view line) {
  auto const label = read_label(line);
  bool const number = label && label->family == LabelFamily::digits && !label->decimal &&
                      label->text_at < line.size();
  return number ? label->number : 0;
}

// The figures that the line ends in, before a full stop or not; empty without.
std::string_view figures_at_end(std::string_view line) {
  line = trim_right(without_full_stop(trim_right(line)));
  auto begin = line.size();
  while (begin > 0 && is_digit(static_cast<unsigned char>(line[begin - 1]))) --begin;
  return line.substr(begin);
}

// "… below", "… ratio of length to width": a sign and a measure may follow.
bool is_before_measure(std::string_view words) {
  static constexpr std::array kMeasures{"width"sv, "length"sv, "below"sv, "above"sv, "to"sv,
                                        "of"sv,    "than"sv,   "ratio"sv, "about"sv, "least"sv,
                                        "most"sv,  "index"sv,  "ca"sv,    "is"sv,    "or"sv};
  words = trim_right(words);
  return is_one_of(kMeasures, words.substr(last_word_begin(words)));
}

// A label, a dash or a capital.
bool opens_lead(std::string_view line) {
  line = trim(line);
  return read_label(line).has_value() || is_upper(code_point_at(line, 0).value);
}

}  // namespace

std::size_t part_initials(std::string& text) {
  constexpr std::size_t kShortest = 4;  // letters of an epithet
  std::array<std::size_t, 26> parted{};
  for (std::size_t at = 0; at + 5 < text.size(); ++at) {
    if (is_big(text[at]) && is_parted_name(text, at)) {
      ++parted[static_cast<std::size_t>(text[at] - 'A')];
    }
  }
  std::vector<TextChange> changes;
  for (std::size_t at = 0; at + 5 < text.size(); ++at) {
    if (!is_big(text[at])) continue;
    bool const opens = is_within_line(text, at) && (text[at - 1] == ' ' || text[at - 1] == '.');
    if (!opens || parted[static_cast<std::size_t>(text[at] - 'A')] < kFewestSoSet) continue;
    auto const epithet = [&](std::size_t from) {
      auto const letters = small_letters(text, from);
      return letters >= kShortest &&
             has_epithet_ending(std::string_view{text}.substr(from, letters));
    };
    if (text[at + 1] == '.' && epithet(at + 2)) {
      changes.push_back({at + 2, 0, " "});
    } else if (text[at + 1] == '\'' && text[at + 2] == '.' && text[at + 3] == ' ' &&
               epithet(at + 4)) {
      changes.push_back({at + 1, 1, ""});
    }
  }
  make_changes(changes, text);
  return changes.size();
}

std::size_t part_numbers_from_signs(std::string& text) {
  std::set<std::uint32_t> labels;
  std::set<std::uint32_t> led_to;
  auto const lines = lines_of(text);
  struct Signed {
    std::size_t at{};  // of the sign
    std::uint32_t number{};
    std::uint32_t couplet{};
  };
  std::vector<Signed> found;
  std::uint32_t couplet = 0;
  for (std::size_t n = 0; n < lines.size(); ++n) {
    auto const& [at, line] = lines[n];
    if (auto const number = label_number(line); number > 0) {
      labels.insert(number);
      couplet = number;
    }
    constexpr std::size_t kMostFigures = 3;
    auto const figures = figures_at_end(line);
    if (figures.empty() || figures.size() > kMostFigures) continue;
    if (ends_in_page_cut_short(line.substr(
            0, static_cast<std::size_t>(figures.data() - line.data()) + figures.size())))
      continue;
    auto const begin = static_cast<std::size_t>(figures.data() - line.data());
    bool const sign = begin > 1 && (line[begin - 1] == '.' || line[begin - 1] == '-');
    bool const apart = sign && begin > 2 && line[begin - 2] == ' ' && is_small(line[begin - 3]) &&
                       !is_before_measure(line.substr(0, begin - 2));
    bool const ends_lead =
        n + 1 == lines.size() || trim(lines[n + 1].text).empty() || opens_lead(lines[n + 1].text);
    if (apart && ends_lead) {
      found.push_back({at + begin - 1, number_of(figures), couplet});
    } else if (!sign) {
      led_to.insert(number_of(figures));
    }
  }
  if (labels.size() < kFewestSoSet || led_to.size() < kFewestSoSet) return 0;
  std::vector<TextChange> changes;
  for (auto const& one : found) {
    bool const wanted =
        labels.contains(one.number) && !led_to.contains(one.number) && one.number > one.couplet;
    if (wanted) changes.push_back({one.at, 1, ""});
  }
  make_changes(changes, text);
  return changes.size();
}

std::size_t part_low_lines(std::string& text) {
  constexpr std::size_t kMostWords = 6;  // of what leaders lead to
  if (text.find('_') == std::string::npos) return 0;
  std::size_t lined = 0;  // lines with low lines
  std::vector<TextChange> changes;
  for (auto const& [at, line] : lines_of(text)) {
    auto const last = line.rfind('_');
    if (last == std::string_view::npos) continue;
    ++lined;
    auto const behind = line.substr(last + 1);
    auto const first = line.find_last_not_of("_'^", last);
    if (first == std::string_view::npos || behind.empty() || !is_small(behind.front())) continue;
    auto const before = line[first];
    bool const touches =
        is_small(before) || std::string_view{",;.)"}.find(before) != std::string_view::npos;
    if (!touches || words_of(behind, kMostWords + 1).size() > kMostWords) continue;
    changes.push_back({at + first + 1, last - first, " ... "});
  }
  if (lined < kFewestSoSet) return 0;
  make_changes(changes, text);
  return changes.size();
}

std::size_t close_commas(std::string& text) {
  std::vector<TextChange> changes;
  std::size_t closed = 0;
  for (std::size_t at = 1; at + 2 < text.size(); ++at) {
    if (text[at] != ',') continue;
    if (is_small(text[at - 1])) {
      ++closed;
    } else if (text[at - 1] == ' ' && at > 1 && is_small(text[at - 2]) && text[at + 1] == ' ') {
      // "densata , Roe", "mortlakei , sp. n."
      auto const behind = std::string_view{text}.substr(at + 2, 3);
      auto const before = std::string_view{text}.substr(0, at - 1);
      auto const begin = before.find_last_of(" \n\t");
      auto const epithet = before.substr(begin == std::string_view::npos ? 0 : begin + 1);
      bool const authored =
          is_upper(code_point_at(behind, 0).value) || behind == "sp." || behind == "n. ";
      if (authored && is_epithet(epithet) && has_epithet_ending(epithet)) {
        changes.push_back({at - 1, 1, ""});
      }
    }
  }
  // Where many commas stand apart that is how the work is set.
  if (changes.size() * 2 > closed) return 0;
  make_changes(changes, text);
  return changes.size();
}

std::size_t close_stops_of_labels(std::string& text) {
  std::vector<TextChange> changes;
  std::size_t closed = 0;
  for (auto const& [at, line] : lines_of(text)) {
    if (line.size() < 5 || !is_small(line[0])) continue;
    if (line[1] == '.' && line[2] == ' ' && is_big(line[3])) ++closed;
    if (line[1] == ' ' && line[2] == '.' && line[3] == ' ' && is_big(line[4])) {
      changes.push_back({at + 1, 1, ""});
    }
  }
  if (closed < kFewestSoSet || changes.size() > closed) return 0;
  make_changes(changes, text);
  return changes.size();
}

}  // namespace keydrift::printed
