#include "keydrift/characters/reading/tokens.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace keydrift::reading {
namespace {

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_ascii_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

struct CodePoint {
  char32_t value{0xFFFD};
  std::uint32_t bytes{1};
};

CodePoint code_point_at(std::string_view text, std::size_t at) {
  if (static_cast<unsigned char>(text[at]) < 0x80) {
    return {static_cast<char32_t>(text[at]), 1};
  }
  utf8proc_int32_t value = 0;
  auto const read = utf8proc_iterate(
      reinterpret_cast<utf8proc_uint8_t const*>(text.data()) + at,
      static_cast<utf8proc_ssize_t>(std::min<std::size_t>(text.size() - at, 4)), &value);
  if (read <= 0) return {};
  return {static_cast<char32_t>(value), static_cast<std::uint32_t>(read)};
}

bool is_letter(char32_t c) {
  if (c < 0x80) return is_ascii_letter(static_cast<char>(c));
  switch (utf8proc_category(static_cast<utf8proc_int32_t>(c))) {
    case UTF8PROC_CATEGORY_LU:
    case UTF8PROC_CATEGORY_LL:
    case UTF8PROC_CATEGORY_LT:
    case UTF8PROC_CATEGORY_LM:
    case UTF8PROC_CATEGORY_LO:
    case UTF8PROC_CATEGORY_MN:
    case UTF8PROC_CATEGORY_MC:
      return true;
    default:
      return false;
  }
}

bool is_upper(char32_t c) {
  if (c < 0x80) return c >= U'A' && c <= U'Z';
  auto const category = utf8proc_category(static_cast<utf8proc_int32_t>(c));
  return category == UTF8PROC_CATEGORY_LU || category == UTF8PROC_CATEGORY_LT;
}

bool is_blank(char32_t c) {
  if (c < 0x80) return c == U' ' || (c >= U'\t' && c <= U'\r');
  return c == 0xA0 || c == 0x202F || c == 0x3000 || (c >= 0x2000 && c <= 0x200B);
}

char32_t unify(char32_t c) {
  switch (c) {
    case 0x2010:
    case 0x2011:
    case 0x2012:
    case 0x2013:
    case 0x2014:
    case 0x2015:
    case 0x2212:
    case 0xFE58:
    case 0xFE63:
    case 0xFF0D:
      return U'-';
    case 0x2019:
    case 0x2018:
    case 0x02BC:
    case 0x00B4:
      return U'\'';
    case 0x201C:
    case 0x201D:
    case 0x2033:
      return U'"';
    case 0x00BA:  // the ordinal sign is typed for the degree sign
      return 0x00B0;
    default:
      return c;
  }
}

// ½ and its like; 0 for all else.
double fraction_value(char32_t c) {
  switch (c) {
    case 0xBC:
      return 0.25;
    case 0xBD:
      return 0.5;
    case 0xBE:
      return 0.75;
    case 0x2153:
      return 1.0 / 3;
    case 0x2154:
      return 2.0 / 3;
    case 0x2155:
      return 0.2;
    case 0x215B:
      return 0.125;
    default:
      return 0;
  }
}

std::string plain_digits(double value) {
  std::array<char, 40> buffer{};
  auto const written = std::to_chars(buffer.data(), buffer.data() + buffer.size(), clean(value));
  return {buffer.data(), written.ptr};
}

double parse_plain(std::string_view digits) {
  double value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

// ".5": a decimal part whose nought is not printed.  A point behind a word or a number is its own
// or ends a sentence.
bool opens_decimal_part(std::string_view text, std::size_t at) {
  auto const point = text.substr(at).starts_with("\u00B7") ? std::size_t{2} : std::size_t{1};
  if (point == 1 && text[at] != '.') return false;
  if (at + point >= text.size() || !is_digit(text[at + point])) return false;
  auto before = text.substr(0, at);
  if (before.empty()) return true;
  if (before.back() == ' ') {
    before.remove_suffix(1);
    return before.empty() || !is_digit(before.back());
  }
  static constexpr std::array<std::string_view, 17> kInFront{
      "-)",     "\u2013)", "(",      "[", "-", "\u2010", "\u2011", "\u2012", "\u2013",
      "\u2014", "\u2212",  "\u00B1", "<", ">", "=",      "\u2264", "\u2265"};
  return std::any_of(kInFront.begin(), kInFront.end(),
                     [&](std::string_view sign) { return before.ends_with(sign); });
}

// One or more digits with an optional decimal or thousands part, or a plain fraction; or a decimal
// part alone.
Token number_at(std::string_view text, std::size_t at) {
  Token token{.begin = static_cast<std::uint32_t>(at), .kind = TokenKind::number};
  auto const digits_from = [&](std::size_t from) {
    auto end = from;
    while (end < text.size() && is_digit(text[end])) ++end;
    return end;
  };
  auto end = digits_from(at);
  std::string digits{text.substr(at, end - at)};
  if (digits.empty()) digits = "0";
  // "1,000": groups of three behind a comma are thousands, anything else behind it a decimal part.
  bool thousands = false;
  while (digits.size() <= 9 && digits[0] != '0' && end + 3 < text.size() + 0 && text[end] == ',' &&
         digits_from(end + 1) == end + 4 && (thousands || end - at <= 3)) {
    digits += text.substr(end + 1, 3);
    end += 4;
    thousands = true;
  }
  // "4·5", as older British print has it.
  auto const point = text.substr(end).starts_with("\u00B7") ? std::size_t{2} : std::size_t{1};
  if (end + point < text.size() && is_digit(text[end + point]) &&
      (point == 2 || text[end] == '.' || (text[end] == ',' && !thousands))) {
    auto const stop = digits_from(end + point);
    digits += '.';
    digits += text.substr(end + point, stop - end - point);
    end = stop;
    token.value = parse_plain(digits);
  } else {
    token.value = parse_plain(digits);
    // "2/3": a proper fraction of small numbers.
    if (end + 1 < text.size() && text[end] == '/' && is_digit(text[end + 1])) {
      auto const stop = digits_from(end + 1);
      auto const below = parse_plain(text.substr(end + 1, stop - end - 1));
      if (below <= 10 && token.value < below && token.value > 0) {
        token.value /= below;
        token.is_fraction = true;
        end = stop;
      }
    }
  }
  if (end < text.size()) {
    auto const next = code_point_at(text, end);
    if (auto const part = fraction_value(next.value); part > 0) {
      token.value += part;
      token.is_fraction = true;
      end += next.bytes;
    }
  }
  token.end = static_cast<std::uint32_t>(end);
  token.word = plain_digits(token.value);
  return token;
}

bool is_ordinal_ending(std::string_view text, std::size_t at) {
  if (at + 2 > text.size()) return false;
  if (at + 2 < text.size() && is_letter(code_point_at(text, at + 2).value)) return false;
  std::array<char, 2> const two{lower(text[at]), lower(text[at + 1])};
  std::string_view const ending{two.data(), 2};
  return ending == "st" || ending == "nd" || ending == "rd" || ending == "th";
}

std::size_t word_end(std::string_view text, std::size_t at) {
  while (at < text.size()) {
    if (is_ascii_letter(text[at])) {
      ++at;
      continue;
    }
    auto const c = code_point_at(text, at);
    if (is_letter(c.value) || (c.value < 0x80 && is_digit(static_cast<char>(c.value)))) {
      at += c.bytes;
      continue;
    }
    // An apostrophe with a letter behind it belongs to the word.
    if (unify(c.value) == U'\'' && at + c.bytes < text.size() &&
        is_letter(code_point_at(text, at + c.bytes).value)) {
      at += c.bytes;
      continue;
    }
    break;
  }
  return at;
}

// Behind the "}" that ends the mark which begins at `at`; 0 where there is none or another begins.
std::uint32_t closing_brace(std::string_view text, std::size_t at) {
  auto const brace = text.find_first_of("{}", at + 1);
  if (brace == std::string_view::npos || text[brace] == '{') return 0;
  return static_cast<std::uint32_t>(brace + 1);
}

std::string folded_word(std::string_view word) {
  auto folded = fold(word);
  if (is_ascii(word)) return folded;
  // Typographic apostrophes count as the plain one.
  std::string plain;
  for (std::size_t at = 0; at < folded.size();) {
    auto const c = code_point_at(folded, at);
    if (unify(c.value) == U'\'') {
      plain.push_back('\'');
    } else {
      plain.append(folded, at, c.bytes);
    }
    at += c.bytes;
  }
  return plain;
}

// "1 1/2", "1 ½": a whole number and its fraction, with a blank between.
bool completes(Token const& whole, Token const& part) {
  return whole.kind == TokenKind::number && part.kind == TokenKind::number && part.blank_before &&
         part.value > 0 && part.value < 1 && whole.word.find('.') == std::string::npos &&
         part.is_fraction && !whole.is_fraction;
}

}  // namespace

std::size_t plain_word_end(std::string_view text, std::size_t at) {
  static constexpr auto kInWord = [] {
    std::array<bool, 256> in_word{};
    for (std::size_t c = 0; c < 128; ++c) {
      in_word[c] = is_ascii_letter(static_cast<char>(c)) || is_digit(static_cast<char>(c));
    }
    return in_word;
  }();
  auto end = at;
  while (end < text.size() && kInWord[static_cast<unsigned char>(text[end])]) ++end;
  bool const goes_on =
      end < text.size() && (text[end] == '\'' || static_cast<unsigned char>(text[end]) >= 0x80);
  return goes_on ? at : end;
}

void append_plain_word(std::string& to, std::string_view word) {
  auto const size = to.size();
  to.append(word);
  // The bit that makes letters small is set in digits.
  auto* const begin = to.data() + size;
  for (std::size_t i = 0; i < word.size(); ++i) begin[i] = static_cast<char>(begin[i] | 0x20);
}

double clean(double value) {
  if (!std::isfinite(value)) return value;
  std::array<char, 40> buffer{};
  auto const written = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                     std::chars_format::scientific, 11);
  double rounded = value;
  std::from_chars(buffer.data(), written.ptr, rounded);
  return rounded;
}

std::string fold(std::string_view text) {
  if (is_ascii(text)) {
    std::string folded{text};
    std::transform(folded.begin(), folded.end(), folded.begin(), lower);
    return folded;
  }
  utf8proc_uint8_t* mapped = nullptr;
  auto const length = utf8proc_map(
      reinterpret_cast<utf8proc_uint8_t const*>(text.data()),
      static_cast<utf8proc_ssize_t>(text.size()), &mapped,
      static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD));
  if (length < 0) {
    std::string folded{text};
    std::transform(folded.begin(), folded.end(), folded.begin(), lower);
    return folded;
  }
  std::string folded{reinterpret_cast<char const*>(mapped), static_cast<std::size_t>(length)};
  std::free(mapped);  // NOLINT: utf8proc hands out memory of malloc
  return folded;
}

std::vector<Token> tokenise(std::string_view text) {
  std::vector<Token> tokens;
  tokens.reserve(text.size() / 5 + 4);
  bool blank = true;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (is_blank(c.value)) {
      blank = true;
      at += c.bytes;
      continue;
    }
    Token token{.begin = static_cast<std::uint32_t>(at)};
    if (c.value == U'{' && closing_brace(text, at) != 0) {
      token.kind = TokenKind::mark;
      token.end = closing_brace(text, at);
    } else if ((c.value < 0x80 && is_digit(static_cast<char>(c.value))) ||
               opens_decimal_part(text, at)) {
      token = number_at(text, at);
      if (is_ordinal_ending(text, token.end)) {
        token.kind = TokenKind::word;
        token.end += 2;
        token.word = fold(text.substr(at, token.end - at));
      }
    } else if (auto const part = fraction_value(c.value); part > 0) {
      token.kind = TokenKind::number;
      token.end = static_cast<std::uint32_t>(at + c.bytes);
      token.value = part;
      token.is_fraction = true;
      token.word = plain_digits(part);
    } else if (auto const end = is_ascii_letter(text[at]) ? plain_word_end(text, at) : at;
               end != at) {
      token.kind = TokenKind::word;
      token.capital = text[at] <= 'Z';
      token.end = static_cast<std::uint32_t>(end);
      append_plain_word(token.word, text.substr(at, end - at));
    } else if (is_letter(c.value)) {
      token.kind = TokenKind::word;
      token.capital = is_upper(c.value);
      token.end = static_cast<std::uint32_t>(word_end(text, at));
      token.word = folded_word(text.substr(at, token.end - at));
    } else {
      token.end = static_cast<std::uint32_t>(at + c.bytes);
      token.sign = unify(c.value);
      // "--" is a dash as typewriters make it.
      while (token.sign == U'-' && token.end < text.size()) {
        auto const next = code_point_at(text, token.end);
        if (unify(next.value) != U'-') break;
        token.end += next.bytes;
      }
    }
    token.blank_before = blank;
    blank = false;
    at = token.end;
    if (!tokens.empty() && completes(tokens.back(), token)) {
      tokens.back().end = token.end;
      tokens.back().value += token.value;
      tokens.back().word = plain_digits(tokens.back().value);
      continue;
    }
    tokens.push_back(std::move(token));
  }
  return tokens;
}

std::string join_words(std::vector<std::string_view> const& words) {
  std::string joined;
  std::size_t bytes = words.size();
  for (auto const word : words) bytes += word.size();
  joined.reserve(bytes);
  for (auto const word : words) {
    if (!joined.empty()) joined += ' ';
    joined += word;
  }
  return joined;
}

}  // namespace keydrift::reading
