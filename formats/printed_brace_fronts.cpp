#include "keydrift/formats/printed_brace_fronts.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestBraceNumber = 4;  // digits
constexpr std::u32string_view kPlainBraces = U"{}\\<|¦⎧⎨⎩⎪⎰⎱⎛⎜⎝⎡⎢⎣⎸│┤├┌└╭╰❴｛";
constexpr std::u32string_view kBrackets = U"[(/!";
constexpr std::u32string_view kLettersForBraces = U"fFIliJjrLt";
constexpr std::u32string_view kOpeningBraces = U"⎧⎰⎛⎡┌╭/fFr";
constexpr std::u32string_view kClosing = U"⎩⎱⎝⎣└╰\\L";

bool is_in(std::u32string_view signs, char32_t c) {
  return signs.find(c) != std::u32string_view::npos;
}

// Behind the digits, "." and ")" are the number's own.
bool take_brace_number(std::string_view line, std::size_t& at, BraceFront& front) {
  auto end = at;
  std::uint32_t number = 0;
  while (end < line.size() && is_digit(static_cast<unsigned char>(line[end]))) {
    number = number * 10 + static_cast<std::uint32_t>(line[end] - '0');
    if (++end - at > kLongestBraceNumber) return false;
  }
  if (end == at || number == 0) return false;
  auto const digits_end = end;
  if (end < line.size() && (line[end] == '.' || line[end] == ')' || line[end] == ':')) ++end;
  auto const next = code_point_at(line, end);
  bool const apart = next.length == 0 || is_blank(next.value) || is_in(kPlainBraces, next.value) ||
                     is_in(kBrackets, next.value);
  if (!apart) return false;
  front.number = number;
  front.printed = line.substr(at, digits_end - at);
  at = skip_blanks(line, end);
  return true;
}

// "(3)", "(3, 12)": where the number was led to.
void take_back(std::string_view line, std::size_t& at, BraceFront& front) {
  if (at >= line.size() || line[at] != '(') return;
  auto const close = line.find(')', at);
  if (close == std::string_view::npos) return;
  auto const inside = line.substr(at + 1, close - at - 1);
  if (!read_references(inside)) return;
  front.back = inside;
  at = skip_blanks(line, close + 1);
  if (at < line.size() && line[at] == '.') at = skip_blanks(line, at + 1);
}

bool closes_behind(std::string_view line, std::size_t at, char close) {
  return line.find(close, at) != std::string_view::npos;
}

void take_sign(std::string_view line, std::size_t& at, BraceFront& front) {
  auto const c = code_point_at(line, at);
  if (c.length == 0) return;
  auto const behind = at + c.length;
  auto const next = code_point_at(line, behind);
  bool const apart = next.length == 0 || is_blank(next.value);
  bool taken = is_in(kPlainBraces, c.value);
  // A table's stroke comes again.
  if (c.value == '|' && closes_behind(line, behind, '|')) taken = false;
  if (c.value == '(') taken = apart || !closes_behind(line, behind, ')');
  if (c.value == '[') taken = apart || !closes_behind(line, behind, ']');
  if (c.value == '/' || c.value == '!') taken = apart;
  // "6 ) chestnut", "5 ]": the other half, as scanned.
  if (c.value == ')' || c.value == ']') taken = apart;
  if (is_in(kLettersForBraces, c.value)) {
    // "I" at a line's end, or before words that one blank parts from it.
    taken = apart && (next.length == 0 || skip_blanks(line, behind) < line.size());
  }
  if (!taken) return;
  front.sign = c.value;
  at = skip_blanks(line, behind);
}

// "1 ^", "9 ' Head": what else a piece of a brace behind a number comes out as.
void take_garbled_sign(std::string_view line, std::size_t& at, BraceFront& front) {
  constexpr std::u32string_view kGarbled = U"^'’‘~1";
  auto const c = code_point_at(line, at);
  auto const behind = at + c.length;
  auto const next = code_point_at(line, behind);
  if (c.length == 0 || !is_in(kGarbled, c.value)) return;
  if (next.length > 0 && !is_blank(next.value)) return;
  front.sign = c.value;
  at = skip_blanks(line, behind);
}

}  // namespace

BraceFront read_brace_front(std::string_view line) {
  BraceFront front;
  std::size_t at = 0;
  if (take_brace_number(line, at, front)) {
    take_back(line, at, front);
    take_sign(line, at, front);
    if (front.sign == 0) take_garbled_sign(line, at, front);
  } else {
    take_sign(line, at, front);
    // "{ 3 Wings", "{ 3": the number within the brace.
    bool const plain = front.sign != 0 && is_plain_brace(front.sign);
    if (plain && take_brace_number(line, at, front)) take_back(line, at, front);
  }
  front.words_at = at;
  return front;
}

std::optional<BraceFront> read_misread_front(std::string_view line, std::uint32_t number) {
  std::size_t end = 0;
  while (end < line.size() && !is_blank(code_point_at(line, end).value)) {
    end += code_point_at(line, end).length;
  }
  auto const first = line.substr(0, end);
  if (misread_number(first) != number) return std::nullopt;
  BraceFront front;
  std::size_t at = skip_blanks(line, end);
  take_sign(line, at, front);
  if (front.sign == 0) return std::nullopt;
  front.number = number;
  front.misread = true;
  front.printed = first;
  front.words_at = at;
  return front;
}

std::optional<BraceFront> read_lost_front(std::string_view line, std::uint32_t number) {
  constexpr std::size_t kMostSigns = 2;
  std::size_t end = 0;
  std::size_t signs = 0;
  while (end < line.size() && !is_blank(code_point_at(line, end).value)) {
    end += code_point_at(line, end).length;
    if (++signs > kMostSigns) return std::nullopt;
  }
  if (end >= line.size()) return std::nullopt;
  BraceFront front;
  auto at = skip_blanks(line, end);
  take_sign(line, at, front);
  if (front.sign == 0) take_garbled_sign(line, at, front);
  if (front.sign == 0) return std::nullopt;
  front.number = number;
  front.misread = true;
  front.printed = line.substr(0, end);
  front.words_at = at;
  return front;
}

bool opens_brace(char32_t sign) { return is_in(kOpeningBraces, sign); }

bool closes_brace(char32_t sign) { return is_in(kClosing, sign); }

bool is_plain_brace(char32_t sign) { return is_in(kPlainBraces, sign); }

}  // namespace keydrift::printed
