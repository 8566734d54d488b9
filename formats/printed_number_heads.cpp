#include "keydrift/formats/printed_number_heads.hpp"

#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::uint32_t kMostLetteredLeads = 8;  // leads of a couplet that bear letters
constexpr std::size_t kLongestHeadNumber = 4;    // digits
constexpr std::uint32_t kLargestRoman = 89;      // beyond, letters are likelier meant

// Words before a couplet's number.
constexpr std::array kCoupletWords{
    "couplet"sv,   "couple"sv, "no"sv,      "nr"sv,    "n"sv,      "step"sv,        "schritt"sv,
    "question"sv,  "frage"sv,  "dilemma"sv, "pair"sv,  "paar"sv,   "coppia"sv,      "par"sv,
    "dicotomía"sv, "paso"sv,   "étape"sv,   "point"sv, "punkt"sv,  "alternative"sv, "stage"sv,
    "choice"sv,    "dilema"sv, "passo"sv,   "lead"sv,  "number"sv, "character"sv};

std::size_t digits_of_head(std::string_view line, std::size_t at) {
  std::size_t end = at;
  while (end < line.size() && is_digit(static_cast<unsigned char>(line[end]))) ++end;
  return end - at;
}

bool is_word_end(std::string_view line, std::size_t at) {
  auto const c = code_point_at(line, at).value;
  return !is_letter(c);
}

// Signs that close a number besides those of every label: "1,", "1°", "1;", "1>".
std::size_t odd_close_at(std::string_view line, std::size_t at) {
  auto const c = code_point_at(line, at);
  bool const ring = c.value == 0xB0 || c.value == 0xBA || c.value == 0xAA;
  bool const sign = c.value == ',' || c.value == ';' || c.value == '>' || c.value == '/';
  if (!ring && !sign) return 0;
  auto const next = code_point_at(line, at + c.length).value;
  return is_digit(next) ? 0 : c.length;
}

// " bis." of "9 bis. Wings", " ter." of the third lead; "2 bis 3 spines" is a count.
std::size_t second_word_at(std::string_view line, std::size_t at) {
  for (auto const word : {" bis."sv, " ter."sv, " bis)"sv, " ter)"sv}) {
    if (line.substr(at, word.size()) == word) return word.size() - 1;
  }
  return 0;
}

}  // namespace

std::size_t behind_number_word(std::string_view line) {
  std::size_t end = 0;
  while (is_letter(code_point_at(line, end).value)) end += code_point_at(line, end).length;
  if (end == 0) return 0;
  auto const word = fold(line.substr(0, end));
  if (!is_one_of(kCoupletWords, word)) return 0;
  auto sign = code_point_at(line, end);
  bool const ring = sign.value == 0xB0 || sign.value == 0xBA;
  if (word == "n" && !ring && sign.value != '.') return 0;
  if (ring || sign.value == '.' || sign.value == ':') end += sign.length;
  auto const number = skip_blanks(line, end);
  return number > end || ring ? number : 0;
}

bool is_bullet(char32_t c) {
  return c == 0x2022 || c == 0x25CB || c == 0x25CF || c == 0x25AA || c == 0x25E6;
}

std::optional<NumberHead> NumberReader::head(std::string_view line) const {
  std::size_t at = 0;
  NumberHead head;
  if (scheme_.worded) {
    at = behind_number_word(line);
    if (at == 0) return std::nullopt;
    head.strong = true;
  }
  auto const open = code_point_at(line, at).value;
  bool const enclosed = open == '(' || open == '[';
  if (enclosed || open == '#' || open == 0xA7) ++at;
  if (open == 0xA7) ++at;  // two bytes
  head.strong = head.strong || enclosed || open == '#' || open == 0xA7;
  auto const begin = at;
  if (!read_number(line, at, head.label)) return std::nullopt;
  head.label.printed = line.substr(0, at);
  if (auto const second = second_word_at(line, at); second > 0) at += second;
  if (auto const odd = odd_close_at(line, at); odd > 0) {
    at += odd;
    head.label.end = LabelEnd::dot;
  } else {
    take_close_letter(line, at, head);
  }
  if (scheme_.script == NumberScript::letters && head.ordinal == 0 &&
      code_point_at(line, at).value == '.') {
    return std::nullopt;  // "A. bus"
  }
  auto const label = read_label_tail(line, at, enclosed, head.label);
  if (!label) return std::nullopt;
  head.label = *label;
  head.label.printed = trim_right(head.label.printed);
  if (begin > head.label.printed.size()) return std::nullopt;
  take_spaced_letter(line, head);
  head.alone = head.label.text_at >= line.size();
  head.strong = head.strong || head.label.end != LabelEnd::none || head.ordinal > 0;
  if (scheme_.script == NumberScript::letters && head.ordinal == 0 && !head.strong)
    return std::nullopt;
  return head;
}

std::optional<LeadSign> NumberReader::sub(std::string_view line) const {
  auto const bullet = code_point_at(line, 0);
  LeadSign sub;
  if (is_bullet(bullet.value) && is_blank(code_point_at(line, bullet.length).value)) {
    sub.label.family = LabelFamily::dash;
    sub.label.printed = line.substr(0, bullet.length);
    sub.label.text_at = skip_blanks(line, bullet.length);
    return sub;
  }
  auto const label = read_label(line);
  if (!label || label->text_at >= line.size()) return std::nullopt;
  sub.label = *label;
  if (label->is_dash()) return sub;
  if (label->family == LabelFamily::digits) {
    bool const own = scheme_.script != NumberScript::digits && label->end != LabelEnd::none;
    if (!own || label->decimal || !label->letter.empty()) return std::nullopt;
  }
  // "a … aa": the letter once more is the next lead.
  sub.ordinal = label->family == LabelFamily::digits     ? label->number
                : label->marks > 0 && label->number == 1 ? 1U + label->marks
                                                         : label->number;
  if (sub.ordinal > kMostLetteredLeads) return std::nullopt;
  auto const words = code_point_at(line, label->text_at).value;
  // "A. bus" is a name, "a leaf" goes on with a sentence.
  sub.like_name = label->family == LabelFamily::upper && is_lower(words);
  if (label->end == LabelEnd::none && !is_upper(words)) return std::nullopt;
  return sub;
}

bool NumberReader::read_number(std::string_view line, std::size_t& at, Label& label) const {
  if (scheme_.script == NumberScript::digits) {
    // "Step A1"
    bool const letter = scheme_.worded && at + 1 < line.size() && line[at] >= 'A' &&
                        line[at] <= 'Z' && digits_of_head(line, at + 1) > 0;
    if (letter) ++at;
    auto const digits = digits_of_head(line, at);
    if (digits == 0 || digits > kLongestHeadNumber) return false;
    label.family = LabelFamily::digits;
    for (std::size_t i = 0; i < digits; ++i) {
      label.number = label.number * 10 + static_cast<std::uint32_t>(line[at + i] - '0');
    }
    at += digits;
    // "1.2" is a measure or a section.
    bool const decimal = code_point_at(line, at).value == '.' && digits_of_head(line, at + 1) > 0;
    return !decimal && label.number > 0;
  }
  if (scheme_.script == NumberScript::roman) {
    auto end = at;
    while (end < line.size() && "IVXLivxl"sv.find(line[end]) != std::string_view::npos) ++end;
    label.family = LabelFamily::digits;
    label.number = roman_number(line.substr(at, end - at), kLargestRoman);
    if (label.number == 0 || is_lower(static_cast<unsigned char>(line[at]))) return false;
    at = end;
    return true;
  }
  auto const c = code_point_at(line, at).value;
  if (c < 'A' || c > 'Z') return false;
  label.family = LabelFamily::upper;
  label.number = 1 + c - U'A';
  ++at;
  return true;
}

void NumberReader::take_close_letter(std::string_view line, std::size_t& at,
                                     NumberHead& head) const {
  auto const c = code_point_at(line, at).value;
  bool const lower = c >= 'a' && c < U'a' + kMostLetteredLeads;
  bool const upper =
      c >= 'A' && c < U'A' + kMostLetteredLeads && scheme_.script == NumberScript::digits;
  bool const digit = scheme_.script != NumberScript::digits && c >= '1' && c <= '9';
  if (!(lower || upper || digit) || !is_word_end(line, at + 1)) return;
  if (digit && is_digit(code_point_at(line, at + 1).value)) return;
  head.label.letter = line.substr(at, 1);
  head.ordinal = digit ? c - U'0' : 1 + c - (lower ? U'a' : U'A');
  ++at;
  head.label.printed = line.substr(0, at);
}

void NumberReader::take_spaced_letter(std::string_view line, NumberHead& head) const {
  if (head.ordinal > 0) return;
  auto const rest = line.substr(head.label.text_at);
  auto const sub = this->sub(rest);
  if (!sub || sub->ordinal != 1 || sub->label.family == LabelFamily::digits) return;
  if (sub->like_name) return;
  head.ordinal = sub->ordinal;
  head.label.letter = "a";
  // "1. (a)" with both brackets
  auto end =
      static_cast<std::size_t>(sub->label.printed.data() - line.data()) + sub->label.printed.size();
  if (rest.starts_with('(') && line.substr(end).starts_with(')')) ++end;
  head.label.printed = trim_right(line.substr(0, end));
  if (!sub->label.back.empty()) head.label.back = sub->label.back;
  head.label.text_at += sub->label.text_at;
}

}  // namespace keydrift::printed
