#include "keydrift/formats/printed_leader_runs.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// What recognition of characters makes of a dot that was badly printed.
bool is_spoilt_dot(char32_t c) {
  return c == ',' || c == ':' || c == ';' || c == '\'' || c == '`' || c == 0x2018 || c == 0x2019 ||
         c == '-' || c == '~' || c == '*' || c == 0x2013 || c == 0x2014;
}

// Behind a spoilt dot the row of dots has to go on.
bool dots_go_on(std::string_view text, std::size_t at) {
  for (int spoilt = 0; spoilt < 3; ++spoilt) {
    at = skip_blanks(text, at);
    auto const c = code_point_at(text, at);
    if (is_leader_dot(c.value)) return true;
    if (!is_spoilt_dot(c.value)) return false;
    at += c.length;
  }
  return false;
}

}  // namespace

bool is_leader_dot(char32_t c) {
  switch (c) {
    case '.':
    case '_':
    case 0xB7:    // middle dot
    case 0x2022:  // bullet
    case 0x2024:  // one dot leader
    case 0x2025:  // two dot leader
    case 0x2026:  // ellipsis
    case 0x2027:  // hyphenation point
    case 0x2219:  // bullet operator
    case 0x22C5:  // dot operator
    case 0x22EF:  // midline ellipsis
      return true;
    default:
      return false;
  }
}

Run dot_run(std::string_view text, std::size_t at) {
  Run run{at, at, false};
  std::size_t dots = 0;  // dots in a row
  std::size_t longest = 0;
  std::size_t groups = 0;  // rows of dots separated by blanks
  std::size_t first_group = 0;
  std::size_t second_begin = 0;
  bool ellipsis = false;
  bool low_lines_only = true;
  std::size_t i = at;
  while (i < text.size()) {
    auto const c = code_point_at(text, i);
    if (is_leader_dot(c.value)) {
      ellipsis = ellipsis || c.value == 0x2026 || c.value == 0x22EF;
      low_lines_only = low_lines_only && c.value == '_';
      if (dots == 0) {
        ++groups;
        if (groups == 2) second_begin = i;
      }
      dots += c.value == 0x2026 || c.value == 0x22EF ? 3 : c.value == 0x2025 ? 2 : 1;
      longest = std::max(longest, dots);
      if (groups == 1) first_group = dots;
      i += c.length;
      run.end = i;
    } else if (is_blank(c.value) && c.value != '\n') {
      dots = 0;
      i += c.length;
    } else if (is_spoilt_dot(c.value) && dots_go_on(text, i + c.length)) {
      dots = 0;
      i += c.length;
    } else {
      break;
    }
  }
  bool const after_blank = at == 0 || is_blank(code_point_before(text, at).value);
  bool const spaced = groups >= 3;
  // Dots that stand alone between blanks are what is left of leaders on a full line.
  auto const behind = code_point_at(text, run.end);
  bool const alone = after_blank && at > 0 && longest == 1 && text[at] == '.' &&
                     (behind.length == 0 || is_blank(behind.value));
  // " .A. bus": the last of them set close to an abbreviated genus.
  bool const behind_sentence = !after_blank && groups == 2 && second_begin + 1 == run.end;
  bool const glued = (behind_sentence || (after_blank && at > 0 && groups == 1)) && longest == 1 &&
                     is_upper(behind.value) &&
                     code_point_at(text, run.end + behind.length).value == '.';
  // "straight. . 2.": one dot is left, behind the sentence's own, and a number ends the line.
  auto number_end = skip_blanks(text, run.end);
  while (is_digit(code_point_at(text, number_end).value)) ++number_end;
  bool const counted = number_end > skip_blanks(text, run.end);
  if (counted && code_point_at(text, number_end).value == '.') ++number_end;
  bool const numbered = behind_sentence && longest == 1 && counted && number_end >= text.size();
  // "(Eastern ranges.)..Aus bus": of leaders on a full line two dots are left.
  auto const before = code_point_before(text, at).value;
  // "(Figs. 30, 33)..10"
  bool const bracket = (before == ')' || before == ']') &&
                       (is_upper(behind.value) || (counted && number_end >= text.size()));
  // "grey..bus Roe"
  bool const glued_words = is_lower(before) && is_letter(behind.value) && !after_blank;
  // "fig. 398. .busa", "fig. 398..busa" at the end of a lead
  bool const epithet = is_lower(behind.value) && is_bare_epithet(text.substr(run.end));
  bool const behind_figures = epithet && is_digit(before) && !after_blank;
  // "sparsely pilose..14. A. bus"
  bool const before_number =
      !after_blank && is_digit(behind.value) && is_numbered_name(text.substr(run.end));
  // "the knob brown..5."
  static constexpr std::array kOfFigures{"fig"sv, "figs"sv, "abb"sv, "pl"sv, "p"sv,
                                         "pp"sv,  "no"sv,   "nr"sv,  "cf"sv, "taf"sv};
  bool const last =
      is_lower(before) && is_digit(behind.value) && number_end >= text.size() &&
      !is_one_of(kOfFigures, text.substr(0, at).substr(last_word_begin(text.substr(0, at))));
  bool const close = longest == 2 && groups == 1 && !low_lines_only &&
                     (bracket || glued_words || behind_figures || before_number || last);
  // ". .Ausella sp. A": what is left of leaders on a full line, the last set close to the name.
  bool const last_two = after_blank && at > 0 && groups == 2 && longest == 1 &&
                        second_begin + 1 == run.end && (is_upper(behind.value) || epithet);
  // "about 2.6. .busa (Roe)"
  bool const named = behind_sentence && longest == 1 && is_lower(behind.value) &&
                     (epithet || is_genusless_name(text.substr(run.end)));
  run.leader = ellipsis || spaced || named || alone || glued || numbered || close || last_two ||
               longest >= 3 || (longest == 2 && !low_lines_only && (after_blank || groups > 1));
  // "spines__bus", "margin__ 10", "margin__ lO", "margin__ Aus bus", and "margin__" above its
  // destination: nothing else is set so.
  auto const next = code_point_at(text, skip_blanks(text, run.end)).value;
  bool const end =
      is_blank(behind.value) && ((counted && number_end >= text.size()) || is_upper(next) ||
                                 misread_number(text.substr(run.end)));
  bool const joined = longest == 2 && groups == 1 && !after_blank &&
                      (is_letter(behind.value) || end || behind.length == 0);
  constexpr std::size_t kRow = 4;  // of low lines between blanks
  if (low_lines_only && longest < 3) run.leader = joined || groups >= kRow;
  if ((glued && behind_sentence) || numbered || named) run.begin = second_begin;
  // "clear. ....... 5": the first dot ends the sentence.
  if (run.leader && first_group == 1 && !after_blank && !spaced && second_begin > 0) {
    run.begin = second_begin;
  }
  if (run.leader && first_group == 1 && !after_blank && spaced && longest >= 3) {
    run.begin = second_begin;
  }
  return run;
}

Run dash_run(std::string_view text, std::size_t at) {
  Run run{at, at, false};
  std::size_t dashes = 0;
  std::size_t long_dashes = 0;
  for (std::size_t i = at; i < text.size();) {
    auto const c = code_point_at(text, i);
    if (is_dash(c.value)) {
      ++dashes;
      if (c.value == 0x2014 || c.value == 0x2015) ++long_dashes;
      i += c.length;
      run.end = i;
    } else if (is_blank(c.value) && c.value != '\n') {
      i += c.length;
    } else {
      break;
    }
  }
  run.leader = dashes >= 3 || long_dashes >= 2;
  return run;
}

}  // namespace keydrift::printed
