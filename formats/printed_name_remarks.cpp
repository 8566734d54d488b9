#include "keydrift/formats/printed_name_remarks.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/shifted_digits.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

// Bytes of the raised digit, or of another sign of a footnote, that the text begins with; 0
// without.
std::size_t footnote_sign(std::string_view text) {
  auto const c = code_point_at(text, 0);
  bool const sign = c.value == 0xB9 || c.value == 0xB2 || c.value == 0xB3 ||
                    (c.value >= 0x2074 && c.value <= 0x2079) || c.value == '*' ||
                    c.value == 0x2020 || c.value == 0x2021;
  if (c.length > 1 && is_one_of(kRaisedLetters, text.substr(0, c.length))) return c.length;
  return sign ? c.length : 0;
}

// "Aus2": the digit at `at` was raised and points to a footnote, since it ends a name's word and no
// name has one.  "sp1" and "B2" are codes, "Group2" is a group.
bool is_sunken_digit(std::string_view text, std::size_t at) {
  constexpr std::size_t kShortest = 4;  // letters of the word
  auto const digit = code_point_at(text, at).value;
  auto const behind = code_point_at(text, at + 1).value;
  if (!is_digit(digit) || digit == '0') return false;
  if (!is_blank(behind) && behind != 0 && behind != ',' && behind != ';') return false;
  std::size_t letters = 0;
  auto begin = at;
  while (begin > 0) {
    auto const c = code_point_before(text, begin);
    if (!is_letter(c.value) || (letters == 0 && !is_lower(c.value))) break;
    begin -= c.length;
    ++letters;
  }
  bool const whole = begin == 0 || is_blank(code_point_before(text, begin).value);
  return whole && letters >= kShortest && !says_group(fold(text.substr(begin, at - begin)));
}

// "(, p. 12)" of "(fig. 4, p. 12)", "(Plate 3, )", "(, )": the comma that parted a figure, which
// was taken out at `at`, from what stands beside it in its bracket; and a bracket that holds
// nothing.
void drop_lone_comma(std::string& rest, std::size_t at) {
  auto const is_comma = [](char c) { return c == ',' || c == ';' || c == ' '; };
  auto begin = at;
  while (begin > 0 && is_comma(rest[begin - 1])) --begin;
  auto end = at;
  while (end < rest.size() && is_comma(rest[end])) ++end;
  if (rest.substr(begin, end - begin).find_first_of(",;") == std::string::npos) return;
  bool const opens = begin > 0 && (rest[begin - 1] == '(' || rest[begin - 1] == '[');
  bool const closes = end < rest.size() && (rest[end] == ')' || rest[end] == ']');
  if (opens && closes) {
    rest.erase(begin - 1, end + 2 - begin);
  } else if (opens || closes) {
    rest.erase(begin, end - begin);
  }
}

}  // namespace

std::string with_notes_apart(std::string_view text) {
  std::string apart;
  std::string signs;
  apart.reserve(text.size() + 1);
  for (std::size_t at = 0; at < text.size(); ++at) {
    bool const sign = text[at] == '[' && at > 0 && text[at - 1] != ' ' && text[at - 1] != '(';
    if (sign && !text.starts_with('"')) apart += ' ';
    bool const within = (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;  // a code point
    auto length = within ? 0 : footnote_sign(text.substr(at));
    if (length == 0 && !within && is_sunken_digit(text, at)) length = 1;
    if (length > 0 && at > 0 && text[at - 1] != ' ' && !text.starts_with('"')) {
      // An author may follow: the sign goes behind all.
      signs.append(" [").append(text.substr(at, length)).append("]");
      at += length - 1;
      // "Aus bus*)": the sign closes as German notes do.
      if (at + 1 < text.size() && text[at + 1] == ')' && apart.find('(') == std::string::npos) ++at;
      continue;
    }
    apart += text[at];
  }
  return apart + signs;
}

std::string_view without_note_sign(std::string_view text) {
  auto rest = text;
  if (rest.ends_with(')') && rest.find('(') == std::string_view::npos) rest.remove_suffix(1);
  std::size_t signs = 0;
  while (!rest.empty()) {
    auto const last = code_point_before(rest, rest.size());
    if (footnote_sign(rest.substr(rest.size() - last.length)) == 0) break;
    rest.remove_suffix(last.length);
    ++signs;
  }
  return signs > 0 ? rest : text;
}

bool begins_remark(std::string_view word) {
  while (!word.empty() && word.front() == '(') word.remove_prefix(1);
  return word.substr(0, 4) == "part" || word == "p.p." || word == "pars" || word == "pars)" ||
         word.substr(0, 3) == "Fig" || word.substr(0, 3) == "fig";
}

std::string_view without_quotation_marks(std::string_view word) {
  static constexpr std::array kMarks{std::pair{U'"', U'"'}, std::pair{U'‘', U'’'},
                                     std::pair{U'“', U'”'}, std::pair{U'„', U'“'}};
  auto const open = code_point_at(word, 0);
  auto const close = code_point_before(word, word.size());
  if (word.size() <= open.length + close.length + 1) return {};
  bool const quoted = std::any_of(kMarks.begin(), kMarks.end(), [&](auto const& marks) {
    return open.value == marks.first && close.value == marks.second;
  });
  if (!quoted) return {};
  return word.substr(open.length, word.size() - open.length - close.length);
}

std::string remark_in(std::string rest, std::vector<std::string> const& figures) {
  for (auto const& figure : figures) {
    auto const found = rest.find(figure);
    if (found == std::string::npos) continue;
    auto begin = found;
    auto end = found + figure.size();
    // Its brackets and the comma before it go with it.
    if (begin > 0 && end < rest.size() && (rest[begin - 1] == '(' || rest[begin - 1] == '[') &&
        (rest[end] == ')' || rest[end] == ']')) {
      --begin;
      ++end;
    }
    rest.erase(begin, end - begin);
    drop_lone_comma(rest, begin);
  }
  std::string_view remark = trim(rest);
  auto const is_edge = [](char c) {
    return c == ',' || c == ';' || c == ' ' || c == ':' || c == '.';
  };
  while (!remark.empty() && is_edge(remark.front())) remark.remove_prefix(1);
  if (auto const dash = code_point_at(remark, 0);
      is_dash(dash.value) && is_blank(code_point_at(remark, dash.length).value)) {
    remark = trim(remark.substr(dash.length));
  }
  // "sp. n. (fig. 3)." leaves a full stop that stands apart.
  while (!remark.empty() && (remark.back() == ',' || remark.back() == ';' || remark.back() == ' ' ||
                             remark.ends_with(" ."))) {
    remark.remove_suffix(1);
  }
  if (remark.ends_with(").")) remark.remove_suffix(1);  // the stop of the lead
  // "Marshwort complex (Aus bus or Aus cus; seeds differ)": the bracket is that of the names.
  bool const of_names = remark.ends_with(')') && std::count(remark.begin(), remark.end(), ')') >
                                                     std::count(remark.begin(), remark.end(), '(');
  if (of_names) remark.remove_suffix(1);
  if (remark.size() > 2 && ((remark.front() == '(' && remark.find(')') == remark.size() - 1) ||
                            (remark.front() == '[' && remark.find(']') == remark.size() - 1))) {
    remark = remark.substr(1, remark.size() - 2);
  }
  return squeeze(remark);
}

}  // namespace keydrift::printed
