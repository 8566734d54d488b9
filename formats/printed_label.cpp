#include "keydrift/formats/printed_label.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label_parts.hpp"
#include "keydrift/formats/printed_name_words.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMaximumBackBytes = 200;  // a longer bracket is a remark

// "la" of "2a(la)", "l4" of "21(l4)": a misread number with its letter, or with a figure that is
// right, close behind a label.
bool is_misread_reference(std::string_view text, std::size_t open, std::string_view inside) {
  constexpr std::size_t kLongest = 4;  // bytes
  if (open == 0 || is_blank(value_at(text, open - 1)) || inside.size() < 2) return false;
  bool const lettered = inside.back() >= 'a' && inside.back() <= 'd';
  if (inside.size() > kLongest ||
      !(lettered || is_digit(static_cast<unsigned char>(inside.back()))))
    return false;
  return misread_number(lettered ? inside.substr(0, inside.size() - 1) : inside).has_value();
}

// The bracket with back-references at `at`, if one stands there.
struct BackBracket {
  std::string_view inside;
  std::size_t length{};
};

std::optional<BackBracket> back_bracket_at(std::string_view text, std::size_t at) {
  char32_t const open = value_at(text, at);
  if (open != '(' && open != '[') return std::nullopt;
  auto const close = text.substr(0, at + kMaximumBackBytes).find(open == '(' ? ')' : ']', at);
  if (close == std::string_view::npos) return std::nullopt;
  auto inside = trim(text.substr(at + 1, close - at - 1));
  // "3(1–)." follows from the second lead of couplet 1.
  auto const last = code_point_before(inside, inside.size());
  bool const second = is_dash(last.value) && inside.size() > last.length &&
                      is_digit(value_at(inside, inside.size() - last.length - 1));
  if (second) inside.remove_suffix(last.length);
  if (inside.empty() || !(read_references(inside) || is_misread_reference(text, at, inside))) {
    return std::nullopt;
  }
  return BackBracket{inside, close + 1 - at};
}

// "(–)" at `at`, as the first couplet has it where others bear back-references: bytes of it.
std::size_t empty_back_bracket_at(std::string_view text, std::size_t at) {
  if (value_at(text, at) != '(') return 0;
  auto const dash = code_point_at(text, at + 1);
  bool const alone = is_dash(dash.value) && value_at(text, at + 1 + dash.length) == ')';
  return alone ? dash.length + 2 : 0;
}

// "1° Wings": how French, Spanish and Italian works count, for "primo".
bool is_ordinal_sign(std::string_view text, std::size_t at) {
  auto const c = code_point_at(text, at);
  auto const behind = at + c.length;
  return (c.value == 0xB0 || c.value == 0xBA) && is_blank(value_at(text, behind)) &&
         is_upper(value_at(text, skip_blanks(text, behind)));
}

// "1/ Wings": how some French works close their labels.
bool is_closing_stroke(std::string_view text, std::size_t at) {
  return value_at(text, at) == '/' && is_blank(value_at(text, at + 1)) &&
         is_upper(value_at(text, skip_blanks(text, at + 1)));
}

// "3-5 setae", "3,5 mm", "5 %": the number measures or counts something.
bool continues_as_quantity(std::string_view text, std::size_t at) {
  auto const c = code_point_at(text, at);
  if (is_ordinal_sign(text, at) || is_closing_stroke(text, at)) return false;
  if (marks_at(text, at).count > 0) return false;
  if (c.value == '%' || c.value == 0xB0 || c.value == 0xD7 || c.value == '+' || c.value == '/') {
    return true;
  }
  bool const joins = is_dash(c.value) || c.value == ',' || c.value == '.' || c.value == ':';
  return joins && is_digit(value_at(text, at + c.length));
}

// "or" of "2- or 3-jointed".
bool joins_counts(std::string_view words) {
  for (auto const word :
       {std::string_view{"or "}, std::string_view{"to "}, std::string_view{"and "},
        std::string_view{"oder "}, std::string_view{"bis "}, std::string_view{"und "},
        std::string_view{"ou "}, std::string_view{"eller "}, std::string_view{"à "},
        std::string_view{"o "}, std::string_view{"of "}}) {
    if (words.starts_with(word)) return true;
  }
  return false;
}

// "-a." of "1-a. Wings", "1-A. Wings": bytes of the dash, where a letter that belongs to the number
// follows it.
std::size_t dash_before_letter(std::string_view line, std::size_t at) {
  auto const dash = code_point_at(line, at);
  if (!is_dash(dash.value)) return 0;
  auto const behind = at + dash.length;
  auto const letter = value_at(line, behind);
  auto const sign = value_at(line, behind + 1);
  bool const few = (letter >= 'a' && letter <= 'h') || (letter >= 'A' && letter <= 'H');
  bool const closed = few && (sign == '.' || sign == ')') && is_blank(value_at(line, behind + 2)) &&
                      is_upper(value_at(line, skip_blanks(line, behind + 2)));
  return closed ? dash.length : 0;
}

// Reads what may follow the label proper: marks, punctuation, back-references, in print's orders.
// Leaves `at` behind it.
void read_label_end(std::string_view line, std::size_t& at, Label& label) {
  if (label.end == LabelEnd::none && is_ordinal_sign(line, at)) {
    label.end = LabelEnd::degree;
    at += code_point_at(line, at).length;
    return;
  }
  if (label.end == LabelEnd::none && is_closing_stroke(line, at)) {
    label.end = LabelEnd::colon;  // as rare, and no less sure
    ++at;
    return;
  }
  for (int part = 0; part < 4; ++part) {
    auto const after_blanks = skip_blanks(line, at);
    if (label.back.empty()) {
      if (auto const bracket = back_bracket_at(line, after_blanks)) {
        label.back = bracket->inside;
        at = after_blanks + bracket->length;
        continue;
      }
      if (auto const empty = empty_back_bracket_at(line, after_blanks); empty > 0) {
        at = after_blanks + empty;
        continue;
      }
    }
    char32_t const c = value_at(line, at);
    if ((c == '.' || c == ')' || c == ':') &&
        (label.end == LabelEnd::none || label.end == LabelEnd::dot)) {
      if (c == '.' && value_at(line, at + 1) == '.') break;  // dot leaders begin here
      label.end = c == '.' ? LabelEnd::dot : c == ')' ? LabelEnd::parenthesis : LabelEnd::colon;
      ++at;
      auto const marks = marks_at(line, at);
      auto const behind = value_at(line, at + marks.length);
      if (marks.count > 0 && (is_blank(behind) || behind == 0)) {
        label.marks = static_cast<std::uint8_t>(label.marks + marks.count);
        at += marks.length;
        auto const begin = static_cast<std::size_t>(label.printed.data() - line.data());
        label.printed = line.substr(begin, at - begin);
      }
      continue;
    }
    // "(1). Wings"
    if (c == '.' && label.end == LabelEnd::enclosed && value_at(line, at - 1) != '.' &&
        is_blank(value_at(line, at + 1))) {
      ++at;
      continue;
    }
    // "15 (14), Wings", "16 (15) . Wings"
    auto const sign = value_at(line, after_blanks);
    bool const closes = !label.back.empty() && label.end == LabelEnd::none &&
                        (sign == ',' || sign == ';' || sign == '.') &&
                        is_blank(value_at(line, after_blanks + 1)) &&
                        is_upper(value_at(line, skip_blanks(line, after_blanks + 1)));
    // "cc . Wings"
    bool const parted = label.end == LabelEnd::none && label.family != LabelFamily::digits &&
                        after_blanks > at && sign == '.' &&
                        is_blank(value_at(line, after_blanks + 1)) &&
                        is_upper(value_at(line, skip_blanks(line, after_blanks + 1)));
    if (parted) label.end = LabelEnd::dot;
    if (closes || parted) at = after_blanks + 1;
    break;
  }
  // "4.– Wings", "4 - Wings", and the dash of an empty column: part of the label, unless a number
  // follows ("4 - 6 mm").
  auto const dash_at = skip_blanks(line, at);
  auto const dash = code_point_at(line, dash_at);
  if (dash.length > 0 && is_dash(dash.value)) {
    auto const behind = dash_at + dash.length;
    auto const next = value_at(line, behind);
    // "2-C absent": a name of a part, and no label.
    bool const fused = dash.value == '-' && dash_at == at && label.end == LabelEnd::none &&
                       label.back.empty() && is_letter(next) &&
                       !is_letter(value_at(line, behind + 1));
    if (fused) return;
    // "a. — 4 setae": a long dash behind a stop parts the label from a count.
    bool const long_dash = dash.value != '-' && dash_at > at && is_blank(next) &&
                           (label.end == LabelEnd::dot || label.end == LabelEnd::parenthesis);
    bool const number = !long_dash && is_digit(value_at(line, skip_blanks(line, behind)));
    // "2- or 3-jointed"
    if (dash.value == '-' && dash_at == at &&
        joins_counts(line.substr(skip_blanks(line, behind)))) {
      return;
    }
    if (!number && (is_blank(next) || is_upper(next))) {
      at = behind;
      if (label.end == LabelEnd::none) label.end = LabelEnd::dash;
      // "1. — (4). Wings"
      auto const bracket_at = skip_blanks(line, at);
      if (auto const bracket = back_bracket_at(line, bracket_at); bracket && label.back.empty()) {
        label.back = bracket->inside;
        at = bracket_at + bracket->length;
        if (value_at(line, at) == '.' && value_at(line, at + 1) != '.') ++at;
      }
    }
  }
}

// Behind the upright stroke that closes a label's cell, "1a | Wings clear | 2", or the bullet that
// both leads bear: "1 • Wings clear" / "• Wings dark".
std::size_t skip_border(std::string_view line, std::size_t at) {
  auto const sign = code_point_at(line, at);
  bool const bullet = sign.value == 0x2022 || sign.value == 0x25CF || sign.value == 0x25AA;
  bool const border =
      at > 0 && (sign.value == '|' || bullet) && is_blank(value_at(line, at + sign.length));
  return border ? skip_blanks(line, at + sign.length) : at;
}

// "88 (1901); Roe in Marsh Bull. 1936: 57": page and year of a work.
bool is_year_of_work(std::string_view line, std::string_view back) {
  if (!is_year(back)) return false;
  auto const behind = static_cast<std::size_t>(back.data() - line.data()) + back.size() + 1;
  return value_at(line, behind) == ';' || value_at(line, behind) == ',';
}

std::optional<Label> finish(std::string_view line, std::size_t at, Label label) {
  auto const c = value_at(line, at);
  bool const loose = c == 0 || is_blank(c);
  if (is_year_of_work(line, label.back)) return std::nullopt;
  bool const closed = label.end != LabelEnd::none || !label.back.empty();
  bool const bare =
      label.family == LabelFamily::digits && label.marks == 0 && !label.decimal && !closed;
  // "2Cu" is a vein.
  if (bare && is_capital_of_word(line, at) && is_lower(value_at(line, at + 2))) {
    label.end = LabelEnd::touching;
    label.text_at = at;
    return label;
  }
  if (!loose && !(closed && (is_letter(c) || c == '(' || c == '"' || c >= 0x80))) {
    return std::nullopt;
  }
  label.text_at = skip_border(line, skip_blanks(line, at));
  return label;
}

std::optional<Label> read_dash(std::string_view line) {
  bool const enclosed = line[0] == '(' || line[0] == '[';
  bool const stopped = line[0] == '.' && is_dash(value_at(line, 1));  // ".- Wings" under "1.-"
  std::size_t const begin = enclosed || stopped ? 1 : 0;
  auto at = begin;
  auto c = code_point_at(line, at);
  if (line.starts_with("----")) return std::nullopt;  // leaders that go on from the line before
  if (is_dash(c.value)) {
    // "--", "- -" and "–." are dashes too.
    while (is_dash(c.value)) {
      at += c.length;
      auto const next = skip_blanks(line, at);
      c = code_point_at(line, at);
      if (!is_dash(c.value) && is_dash(value_at(line, next))) {
        at = next;
        c = code_point_at(line, at);
      }
    }
  } else if (line.starts_with("0. ") && is_upper(value_at(line, skip_blanks(line, 3)))) {
    // "0. Folia pilosa": the other lead of old floras
    c = code_point_at(line, ++at);
  } else if (c.value == '+' && !enclosed) {
    // "+ Leaves cauline": the other lead of floras on line.
    at += c.length;
    c = code_point_at(line, at);
    auto const first = value_at(line, skip_blanks(line, at));
    if (!is_blank(c.value) || !is_letter(first) || is_lower(first)) return std::nullopt;
  } else if (auto const marks = marks_at(line, at);
             marks.count > 0 && marks.count <= 3 && c.value != U'^' && c.value != U'\\') {
    at += marks.length;
    c = code_point_at(line, at);
    if (!enclosed && !is_blank(c.value)) return std::nullopt;
  } else {
    return std::nullopt;
  }
  Label label;
  label.family = LabelFamily::dash;
  label.printed = trim_right(line.substr(begin, at - begin));
  if (enclosed) {
    if (c.value != (line[0] == '(' ? U')' : U']')) return std::nullopt;
    ++at;
    c = code_point_at(line, at);
  }
  if (c.value == '.' && value_at(line, at + 1) != '.') ++at;
  if (c.value == ')' && !enclosed && is_dash(code_point_at(line, 0).value)) ++at;  // "-) Wings"
  if (!enclosed && is_dash(code_point_at(line, 0).value) && is_closing_stroke(line, at)) {
    ++at;  // "-/ Wings" under "1/ Wings"
  }
  // "—• Wings": a speck
  bool const speck = (c.value == 0x2022 || c.value == 0x25A0 || c.value == 0xB7) &&
                     is_blank(value_at(line, at + c.length)) &&
                     is_upper(value_at(line, skip_blanks(line, at + c.length)));
  if (speck && !enclosed && is_dash(code_point_at(line, 0).value)) at += c.length;
  auto const bracket_at = skip_blanks(line, at);
  if (auto const bracket = back_bracket_at(line, bracket_at)) {
    label.back = bracket->inside;
    at = bracket_at + bracket->length;
  }
  auto const next = value_at(line, at);
  if (next != 0 && !is_blank(next) && !is_upper(next) && label.back.empty()) return std::nullopt;
  label.text_at = skip_border(line, skip_blanks(line, at));
  // ". - . - 3" are leaders.
  if (stopped && !(is_blank(next) && is_letter(value_at(line, label.text_at)))) return std::nullopt;
  return label;
}

// "*1. Folia pilosa" beside "1. Folia glabra": the mark stands in front.
std::optional<Label> read_mark_before_number(std::string_view line) {
  if (!line.starts_with('*') || !is_digit(value_at(line, 1))) return std::nullopt;
  auto label = read_label(line.substr(1));
  if (!label || label->family != LabelFamily::digits || label->marks > 0) return std::nullopt;
  bool const closed = label->end == LabelEnd::dot || label->end == LabelEnd::parenthesis;
  ++label->text_at;
  if (!closed || label->decimal || !is_upper(value_at(line, label->text_at))) return std::nullopt;
  label->marks = 1;
  label->printed = line.substr(0, 1 + label->printed.size());
  return label;
}

std::optional<Label> read_lettered(std::string_view line, std::size_t at, bool enclosed) {
  auto const first = value_at(line, at);
  bool const upper = first >= 'A' && first <= 'Z';
  if (!upper && !(first >= 'a' && first <= 'z')) return std::nullopt;
  std::size_t length = 1;
  while (value_at(line, at + length) == first) ++length;
  if (length > kMaximumRepetition || is_letter(value_at(line, at + length))) return std::nullopt;
  // "S. 89", "p. 12": a page.
  bool const page_sign = first == 'S' || first == 'p' || first == 'P';
  bool const stop = length == 1 && value_at(line, at + 1) == '.';
  if (page_sign && stop && is_digit(value_at(line, skip_blanks(line, at + 2)))) return std::nullopt;
  Label label;
  label.family = upper ? LabelFamily::upper : LabelFamily::lower;
  label.number = 1 + first - (upper ? U'A' : U'a');
  label.marks = static_cast<std::uint8_t>(length - 1);
  label.printed = line.substr(at, length);
  return read_label_tail(line, at + length, enclosed, label);
}

// "12a. Wings", "12a) Wings", "12 Wings": what nearly all labels are, read as below and ten times
// as fast.  Every line is asked for its label several times.
std::optional<Label> read_plain_label(std::string_view line) {
  auto const is_latin = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  auto const digits = digits_at(line, 0);
  constexpr std::size_t kRest = 5;  // a letter, a sign, a blank, two letters
  if (digits == 0 || digits > kMaximumDigits || line.size() < digits + kRest) return std::nullopt;
  Label label;
  std::size_t at = digits;
  if (is_latin(line[at])) label.letter = line.substr(at++, 1);
  label.printed = line.substr(0, at);
  if (line[at] == '.' || line[at] == ')') {
    label.end = line[at++] == '.' ? LabelEnd::dot : LabelEnd::parenthesis;
  }
  if (line[at] != ' ') return std::nullopt;
  at = line.find_first_not_of(' ', at);
  if (at == std::string_view::npos || at + 1 >= line.size()) return std::nullopt;
  if (!is_latin(line[at]) || !is_latin(line[at + 1])) return std::nullopt;
  if (inserted_at(line, at) > 0) return std::nullopt;
  label.number = number_of(line.substr(0, digits));
  if (label.number == 0) return std::nullopt;  // see read_dash()
  label.text_at = at;
  return label;
}

}  // namespace

std::optional<Label> read_label_tail(std::string_view line, std::size_t at, bool enclosed,
                                     Label label) {
  auto const begin = static_cast<std::size_t>(label.printed.data() - line.data());
  auto const marks = marks_at(line, at);
  label.marks = static_cast<std::uint8_t>(label.marks + marks.count);
  at += marks.length;
  label.printed = line.substr(begin, at - begin);
  if (enclosed) {
    if (value_at(line, at) != ')' && value_at(line, at) != ']') return std::nullopt;
    ++at;
    label.end = LabelEnd::enclosed;
  }
  read_label_end(line, at, label);
  return finish(line, at, label);
}

unsigned Label::style() const {
  bool const marked = end == LabelEnd::none && (!letter.empty() || marks > 0 || !back.empty());
  return static_cast<unsigned>(family) * 16 + static_cast<unsigned>(end) * 2 + (marked ? 1U : 0U);
}

std::optional<Label> read_label(std::string_view line) {
  if (line.empty()) return std::nullopt;
  if (auto plain = read_plain_label(line)) return plain;
  if (auto dash = read_dash(line)) return dash;
  if (auto marked = read_mark_before_number(line)) return marked;
  bool const enclosed = line[0] == '(' || line[0] == '[';
  std::size_t const begin = enclosed ? 1 : 0;
  auto const digits = digits_at(line, begin);
  if (digits == 0) return read_lettered(line, begin, enclosed);
  if (digits > kMaximumDigits) return std::nullopt;
  Label label;
  label.number = number_of(line.substr(begin, digits));
  std::size_t at = begin + digits;
  // Sections: "1.1", "2.3.1".
  while (value_at(line, at) == '.' && digits_at(line, at + 1) > 0 && digits_at(line, at + 1) <= 3) {
    at += 1 + digits_at(line, at + 1);
    label.decimal = true;
  }
  if (continues_as_quantity(line, at)) return std::nullopt;
  auto letter = letter_at(line, at);
  std::size_t letter_begin = at;
  if (letter == 0 && value_at(line, at) == '.') {  // "1.a Wings"
    auto const after = letter_at(line, at + 1);
    auto const behind = value_at(line, at + 1 + after);
    if (after == 1 && (is_blank(behind) || behind == ')')) {
      letter = 1;
      letter_begin = at + 1;
    }
  }
  if (auto const dash = dash_before_letter(line, at); letter == 0 && dash > 0 && !label.decimal) {
    letter = 1;
    letter_begin = at + dash;
  }
  if (letter == 0 && value_at(line, at) == ' ') {  // "9 bis. Wings"
    letter = inserted_at(line, at + 1);
    // "2 bis 3 spines" is a count.
    auto const behind = at + 1 + letter;
    auto const next = value_at(line, behind);
    bool const closes = next == '.' || next == ')' || next == ':' || is_mark(next) ||
                        (is_blank(next) && is_upper(value_at(line, skip_blanks(line, behind))));
    if (!closes) letter = 0;
    if (letter > 0) letter_begin = at + 1;
  }
  // "14e Genre. AUSELLA": the fourteenth one.
  if (letter == 1 && line[letter_begin] == 'e' &&
      line.substr(letter_begin + 1).starts_with(" Genre")) {
    return std::nullopt;
  }
  // "2n = 24": a count of chromosomes.
  if (letter > 0 && value_at(line, skip_blanks(line, letter_begin + letter)) == '=') {
    return std::nullopt;
  }
  if (letter > 0) {
    label.letter = line.substr(letter_begin, letter);
    at = letter_begin + letter;
  }
  // "1aa Wings" beside "1a Wings": the second lead, as b would be.
  bool doubled = letter == 0 && line.substr(at).starts_with("aa") && !label.decimal;
  if (doubled) {
    auto const behind = value_at(line, at + 2);
    doubled = is_blank(behind) || behind == '.' || behind == ')';
  }
  if (doubled) {
    label.letter = "b";
    at += 2;
  }
  auto const marks = marks_at(line, at);
  label.marks = marks.count;
  at += marks.length;
  label.printed = line.substr(begin, at - begin);
  if (enclosed) {
    auto const close = value_at(line, at);
    if (close != (line[0] == '(' ? U')' : U']')) return std::nullopt;
    ++at;
    label.end = LabelEnd::enclosed;
  }
  // "4 . Wings", "4 .Wings": a blank before the full stop.
  bool const set_off = value_at(line, at) == ' ' && value_at(line, at + 1) == '.' &&
                       is_upper(value_at(line, skip_blanks(line, at + 2)));
  if (set_off && label.end == LabelEnd::none) ++at;
  read_label_end(line, at, label);
  return finish(line, at, label);
}

std::optional<Label> label_alone(std::string_view text) {
  text = trim(text);
  auto label = read_label(text);
  return label && label->text_at >= text.size() ? label : std::nullopt;
}

}  // namespace keydrift::printed
