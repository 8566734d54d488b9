#include "keydrift/taxa/name_text.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <utility>

namespace keydrift::name_parts {
namespace {

// Calls take(code point) for every valid code point; invalid bytes are left out.
template <class Take>
void for_each_code_point(std::string_view text, Take take) {
  auto const* bytes = reinterpret_cast<utf8proc_uint8_t const*>(text.data());
  auto left = static_cast<utf8proc_ssize_t>(text.size());
  while (left > 0) {
    utf8proc_int32_t point = 0;
    auto const used = utf8proc_iterate(bytes, left, &point);
    if (used > 0) take(point);
    auto const step = used > 0 ? used : 1;
    bytes += step;
    left -= step;
  }
}

void append(std::string& text, utf8proc_int32_t point) {
  std::array<utf8proc_uint8_t, 4> bytes{};
  auto const used = utf8proc_encode_char(point, bytes.data());
  text.append(reinterpret_cast<char const*>(bytes.data()), static_cast<std::size_t>(used));
}

std::string mapped(std::string const& valid, int options) {
  utf8proc_uint8_t* out = nullptr;
  auto const size = utf8proc_map(reinterpret_cast<utf8proc_uint8_t const*>(valid.data()),
                                 static_cast<utf8proc_ssize_t>(valid.size()), &out,
                                 static_cast<utf8proc_option_t>(options));
  if (size < 0) return valid;
  std::string result(reinterpret_cast<char const*>(out), static_cast<std::size_t>(size));
  std::free(out);  // NOLINT: allocated by utf8proc_map
  return result;
}

// An ASCII character of a name made plain.
constexpr char plain_ascii(char c) {
  if (c == '`') return '\'';
  return c < ' ' || c == 0x7F ? ' ' : c;
}

// One code point of a name made plain; 0 drops it.
utf8proc_int32_t plain_point(utf8proc_int32_t point) {
  if (point < 0x80) return plain_ascii(static_cast<char>(point));
  switch (point) {
    case 0x2020:  // dagger: extinct
    case 0x2021:
      return 0;
    case 0x2018:
    case 0x2019:
    case 0x02BC:
    case 0x00B4:
      return '\'';
    case 0x201C:
    case 0x201D:
    case 0x201E:
      return '"';
    case 0x2715:
    case 0x2716:
    case 0x2A09:
    case 0x2A2F:
      return 0xD7;
    case 0x2212:
      return '-';
    default:
      break;
  }
  switch (utf8proc_category(point)) {
    case UTF8PROC_CATEGORY_CC:
    case UTF8PROC_CATEGORY_ZS:
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
      return ' ';
    case UTF8PROC_CATEGORY_CF:
      return 0;
    case UTF8PROC_CATEGORY_PD:
      return '-';
    default:
      return point;
  }
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

std::string squeezed(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (char const c : text) {
    if (c != ' ' || (!result.empty() && result.back() != ' ')) result += c;
  }
  if (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

bool vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u' || c == 'y'; }
bool consonant(char c) { return c >= 'a' && c <= 'z' && !vowel(c); }

// Letters that Unicode does not decompose.
std::string_view letters_of(utf8proc_int32_t point, Marks marks) {
  bool const transcribed = marks == Marks::transcribed;
  switch (point) {
    case 0xE6:
      return "ae";  // æ
    case 0x153:
      return "oe";  // œ
    case 0xF8:
      return transcribed ? "oe" : "o";  // ø
    case 0x142:
      return "l";  // ł
    case 0x111:
      return "d";  // đ
    case 0x131:
      return "i";  // ı
    case 0xFE:
      return "th";  // þ
    case 0xF0:
      return "d";  // ð
    case 0xDF:
      return "ss";  // ß
    default:
      return {};
  }
}

struct Number {
  std::string_view digits;
  std::string_view latin;
};
// Forms in use in compound epithets; from memory.
constexpr std::array kNumbers{
    Number{"2", "bi"},
    Number{"3", "tri"},
    Number{"4", "quadri"},
    Number{"5", "quinque"},
    Number{"6", "sex"},
    Number{"7", "septem"},
    Number{"8", "octo"},
    Number{"9", "novem"},
    Number{"10", "decem"},
    Number{"11", "undecim"},
    Number{"12", "duodecim"},
    Number{"13", "tredecim"},
    Number{"14", "quatuordecim"},
    Number{"15", "quindecim"},
    Number{"16", "sedecim"},
    Number{"18", "octodecim"},
    Number{"19", "novemdecim"},
    Number{"20", "viginti"},
    Number{"22", "vigintiduo"},
    Number{"24", "vigintiquatuor"},
};

bool ends(std::string_view word, std::string_view ending) { return word.ends_with(ending); }

// Adjectives whose neuter looks like a genitive plural: multiflorum, semaphorum, clarum …
bool neuter_like_genitive(std::string_view word) {
  static constexpr std::array<std::string_view, 11> kEndings{
      "florum",  "phorum",  "sporum", "chorum", "odorum", "decorum",
      "sonorum", "canorum", "clarum", "amarum", "avarum"};
  return word == "rarum" || word == "carum" ||
         std::any_of(kEndings.begin(), kEndings.end(),
                     [&](std::string_view ending) { return ends(word, ending); });
}

}  // namespace

bool ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

std::string cleaned_name(std::string_view text) {
  std::string valid;
  valid.reserve(text.size());
  if (ascii(text)) {
    for (char const c : text) valid += plain_ascii(c);
  } else {
    std::string raw;
    raw.reserve(text.size());
    for_each_code_point(text, [&](utf8proc_int32_t point) { append(raw, point); });
    auto const composed = mapped(raw, UTF8PROC_STABLE | UTF8PROC_COMPOSE);
    for_each_code_point(composed, [&](utf8proc_int32_t point) {
      if (auto const plain = plain_point(point); plain != 0) append(valid, plain);
    });
  }
  if (valid.find('&') != std::string::npos) {
    replace_all(valid, "&times;", "\xC3\x97");
    replace_all(valid, "&amp;", "&");
  }
  return squeezed(valid);
}

Initial initial_of(std::string_view word) {
  auto result = Initial::none;
  bool found = false;
  auto const* bytes = reinterpret_cast<utf8proc_uint8_t const*>(word.data());
  auto left = static_cast<utf8proc_ssize_t>(word.size());
  while (left > 0 && !found) {
    utf8proc_int32_t point = 0;
    auto const used = utf8proc_iterate(bytes, left, &point);
    if (used > 0) {
      found = true;
      switch (utf8proc_category(point)) {
        case UTF8PROC_CATEGORY_LU:
        case UTF8PROC_CATEGORY_LT:
          result = Initial::capital;
          break;
        case UTF8PROC_CATEGORY_LL:
        case UTF8PROC_CATEGORY_LM:
        case UTF8PROC_CATEGORY_LO:
          result = Initial::small;
          break;
        case UTF8PROC_CATEGORY_ND:
          result = Initial::digit;
          break;
        default:
          found = false;
      }
    }
    auto const step = used > 0 ? used : 1;
    bytes += step;
    left -= step;
  }
  return result;
}

std::string folded_word(std::string_view word, Marks marks) {
  std::string text{word};
  bool const numbered = !text.empty() && text.front() >= '0' && text.front() <= '9';
  for (auto const& number : kNumbers) {
    if (!numbered) break;
    auto const& digits = number.digits;
    if (text.size() > digits.size() && text.starts_with(digits) && text[digits.size()] == '-') {
      text.replace(0, digits.size(), number.latin);
      break;
    }
  }
  std::string result;
  result.reserve(text.size());
  if (ascii(text)) {
    for (char const c : text) {
      if (c >= 'A' && c <= 'Z') {
        result += static_cast<char>(c - 'A' + 'a');
      } else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
        result += c;
      }
    }
    return result;
  }
  std::string valid;
  for_each_code_point(text, [&](utf8proc_int32_t point) { append(valid, point); });
  auto const folded = mapped(valid, UTF8PROC_STABLE | UTF8PROC_CASEFOLD | UTF8PROC_DECOMPOSE);
  for_each_code_point(folded, [&](utf8proc_int32_t point) {
    if (auto const letters = letters_of(point, marks); !letters.empty()) {
      result += letters;
      return;
    }
    bool const after_vowel = result.size() >= 2 && vowel(result[result.size() - 2]);
    if (marks == Marks::transcribed && !result.empty()) {
      char const last = result.back();
      if (point == 0x308 && (last == 'a' || last == 'o' || last == 'u') && !after_vowel) {
        result += 'e';
        return;
      }
      if (point == 0x30A && last == 'a') {
        result += 'o';
        return;
      }
    }
    switch (utf8proc_category(point)) {
      case UTF8PROC_CATEGORY_LU:
      case UTF8PROC_CATEGORY_LL:
      case UTF8PROC_CATEGORY_LT:
      case UTF8PROC_CATEGORY_LM:
      case UTF8PROC_CATEGORY_LO:
      case UTF8PROC_CATEGORY_ND:
        append(result, point);
        break;
      default:
        break;
    }
  });
  return result;
}

std::string gender_stem(std::string_view folded) {
  std::string_view stem = folded;
  bool const genitive = ends(folded, "ae") || ends(folded, "i") ||
                        ((ends(folded, "orum") || ends(folded, "arum")) && folded.size() > 4 &&
                         !neuter_like_genitive(folded));
  if (genitive) return std::string{folded};
  auto const cut = [&](std::string_view ending) {
    if (!ends(stem, ending) || stem.size() < ending.size() + 2) return false;
    stem.remove_suffix(ending.size());
    return true;
  };
  bool const comparative = ends(stem, "ior") || ends(stem, "minor") || ends(stem, "major");
  if (comparative) {
    cut("or");
  } else if (!cut("us") && !cut("um") && !cut("is") && !cut("a")) {
    cut("e");
  }
  std::string result{stem};
  // niger / nigra and asper / aspera alike.
  if (result.size() > 3 && ends(result, "er")) result.replace(result.size() - 2, 2, "r");
  return result;
}

std::string variant_stem(std::string_view folded, bool epithet) {
  std::string text{folded};
  std::string_view ending;
  if (epithet) {
    struct Ending {
      std::string_view from, to;
    };
    static constexpr std::array<Ending, 8> kGenitives{
        Ending{"iorum", "*orum"}, Ending{"iarum", "*arum"}, Ending{"orum", "*orum"},
        Ending{"arum", "*arum"},  Ending{"iae", "*ae"},     Ending{"ae", "*ae"},
        Ending{"ii", "*i"},       Ending{"i", "*i"}};
    for (auto const& [from, to] : kGenitives) {
      if (text.size() >= from.size() + 2 && ends(text, from) && !neuter_like_genitive(text)) {
        text.resize(text.size() - from.size());
        ending = to;
        break;
      }
    }
    if (ending.empty()) {
      if (ends(text, "iensis") || ends(text, "iense")) {
        text.erase(text.rfind("iens"), 1);
      }
      if (text.size() > 4 && (ends(text, "os") || ends(text, "on"))) {
        text.resize(text.size() - 2);
      } else {
        text = gender_stem(text);
      }
    }
  }
  std::string result;
  result.reserve(text.size() + ending.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    char c = text[i];
    char const next = i + 1 < text.size() ? text[i + 1] : '\0';
    if ((c == 'a' || c == 'o') && next == 'e') continue;
    if (c == 'e' && (next == 'i' || next == 'j')) continue;
    if (c == 'p' && next == 'h') {
      c = 'f';
      ++i;
    }
    bool const silent =
        (c == 'c' && next == 't') || (c == 'h' && !result.empty() && consonant(result.back()));
    if (silent) continue;
    switch (c) {
      case 'y':
      case 'j':
        c = 'i';
        break;
      case 'v':
        c = 'u';
        break;
      case 'k':
        c = 'c';
        break;
      default:
        break;
    }
    bool const doubled = !result.empty() && result.back() == c && (consonant(c) || c == 'i');
    if (!doubled) result += c;
  }
  result += ending;
  return result;
}

std::optional<std::size_t> edit_distance(std::string_view a, std::string_view b,
                                         std::size_t limit) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > limit) return std::nullopt;
  // What they share at both ends costs nothing.
  while (!a.empty() && a.front() == b.front()) a.remove_prefix(1), b.remove_prefix(1);
  while (!a.empty() && a.back() == b.back()) a.remove_suffix(1), b.remove_suffix(1);
  if (a.empty()) return b.size();
  auto const none = limit + 1;
  // Row i holds the distances of a[0, i) to b[0, j) for |i - j| <= limit.  Names are short, so the
  // rows nearly always fit on the stack.
  std::array<std::size_t, std::size_t{3} * 64> small;
  std::vector<std::size_t> large;
  auto const width = b.size() + 1;
  if (width > 64) large.resize(3 * width);
  auto* const rows = width > 64 ? large.data() : small.data();
  std::fill(rows, rows + 3 * width, none);
  auto *before = rows, *last = rows + width, *row = rows + 2 * width;
  for (std::size_t j = 0; j <= std::min(b.size(), limit); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto const from = i > limit ? i - limit : 0;
    auto const to = std::min(b.size(), i + limit);
    if (from > 0) row[from - 1] = none;
    std::size_t least = none;
    for (auto j = from; j <= to; ++j) {
      std::size_t best = std::min(none, i);
      if (j > 0) {
        best = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
        best = std::min(best, row[j - 1] + 1);
        if (j < i + limit) best = std::min(best, last[j] + 1);
        if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
          best = std::min(best, before[j - 2] + 1);
        }
      }
      row[j] = std::min(best, none);
      least = std::min(least, row[j]);
    }
    if (to < b.size()) row[to + 1] = none;
    if (least >= none) return std::nullopt;
    auto* const free = before;
    before = last;
    last = row;
    row = free;
  }
  return last[b.size()] < none ? std::optional{last[b.size()]} : std::nullopt;
}

}  // namespace keydrift::name_parts
