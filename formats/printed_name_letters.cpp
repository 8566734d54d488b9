#include "keydrift/formats/printed_name_letters.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// The text with `word`, which is a part of it, case-folded.
std::string with_folded(std::string const& text, std::string_view word) {
  auto const begin = static_cast<std::size_t>(word.data() - text.data());
  return text.substr(0, begin) + fold(word) + text.substr(begin + word.size());
}

// Chinese characters and kana.
bool is_ideograph(std::uint32_t c) {
  return (c >= 0x3041 && c <= 0x30FF) || (c >= 0x3400 && c <= 0x9FFF);
}

// Where Chinese or Japanese words and Latin ones meet.
class ScriptBorders {
 public:
  enum class Border : std::uint8_t { none, ideographs, latin };
  // Which kind of letters begins with `c`, directly behind the other or behind a number.
  Border pass(std::uint32_t c) {
    auto const before = std::exchange(before_, c);
    seen_ = seen_ || is_ideograph(c);
    if (seen_ && is_upper(c) && (is_ideograph(before) || before == ')')) return Border::latin;
    return is_ideograph(c) && (before == '.' || is_digit(before)) ? Border::ideographs
                                                                  : Border::none;
  }

 private:
  std::uint32_t before_{};
  bool seen_{false};
};

// "1.黑绒苣C. bus" prints no blanks: puts them between the number, the vernacular name and the
// Latin one.
void part_scripts(std::string& text) {
  std::string parted;
  ScriptBorders borders;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (borders.pass(c.value) != ScriptBorders::Border::none) parted += ' ';
    parted.append(text, at, c.length);
    at += c.length;
  }
  if (parted.size() > text.size()) text = std::move(parted);
}

// "BOX KELLIN (Aus bus)": two words in Latin form close the text in brackets, so that those before
// them are none.
bool is_explained_in_brackets(std::vector<std::string_view> const& words) {
  if (words.size() < 4) return false;
  auto genus = words[words.size() - 2];
  auto epithet = words.back();
  if (genus.front() != '(' || !epithet.ends_with(')')) return false;
  genus.remove_prefix(1);
  epithet.remove_suffix(1);
  return is_capitalised(genus) && !is_all_capitals(genus) && has_latin_ending(genus) &&
         is_epithet(epithet) && has_epithet_ending(epithet);
}

// "T" for the Cyrillic letter that looks like it, in "T. bus": a genus cut short; else 0.
char latin_initial(std::string_view text, std::size_t at, CodePoint c) {
  static constexpr std::array<std::pair<char32_t, char>, 11> kAlike{{{0x410, 'A'},
                                                                     {0x412, 'B'},
                                                                     {0x415, 'E'},
                                                                     {0x41A, 'K'},
                                                                     {0x41C, 'M'},
                                                                     {0x41D, 'H'},
                                                                     {0x41E, 'O'},
                                                                     {0x420, 'P'},
                                                                     {0x421, 'C'},
                                                                     {0x422, 'T'},
                                                                     {0x425, 'X'}}};
  if (at > 0 && text[at - 1] != ' ') return '\0';
  auto const stop = at + c.length;
  if (stop >= text.size() || text[stop] != '.') return '\0';
  auto const epithet = code_point_at(text, skip_blanks(text, stop + 1)).value;
  if (epithet < 'a' || epithet > 'z') return '\0';
  auto const found = std::find_if(kAlike.begin(), kAlike.end(),
                                  [c](auto const& pair) { return pair.first == c.value; });
  return found == kAlike.end() ? '\0' : found->second;
}

// "A.", and "7. A." behind the number of the species.
bool is_short_genus(std::string_view text) {
  auto const digits = leading_figures(text);
  if (digits > 0 && text.substr(digits, 2) == ". ") text.remove_prefix(digits + 2);
  return text.size() >= 2 && text.size() <= 4 && is_abbreviated(text);
}

}  // namespace

bool has_name_behind_ideograph(std::string_view text) {
  ScriptBorders borders;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (borders.pass(c.value) == ScriptBorders::Border::latin) return true;
    at += c.length;
  }
  return false;
}

bool may_have_stress(std::string_view words) {
  // The first bytes of "à" to "ý", "ă" to "ŭ", "ọ", and of marks that stand apart.
  return words.find_first_of("\xC3\xC4\xC5\xCC\xCD\xE1") != std::string_view::npos;
}

std::string without_stress(std::string_view words) {
  constexpr utf8proc_int32_t kGrave = 0x300;
  constexpr utf8proc_int32_t kAcute = 0x301;
  // "Auso̲ma", "Ausọma": a line or a dot beneath the vowel, or a breve above it.
  static constexpr std::array<char32_t, 4> kApart{0x323, 0x331, 0x332, 0x306};
  auto const is_stress = [](utf8proc_int32_t c) {
    return c == kGrave || c == kAcute ||
           std::find(kApart.begin(), kApart.end(), static_cast<char32_t>(c)) != kApart.end();
  };
  std::string plain;
  if (!may_have_stress(words)) return plain.append(words);
  for (std::size_t at = 0; at < words.size();) {
    auto const c = code_point_at(words, at);
    at += c.length;
    std::array<utf8proc_int32_t, 4> parts{};
    auto const count = utf8proc_decompose_char(static_cast<utf8proc_int32_t>(c.value), parts.data(),
                                               parts.size(), UTF8PROC_DECOMPOSE, nullptr);
    bool const stressed = count == 2 && is_stress(parts[1]);
    if (is_stress(static_cast<utf8proc_int32_t>(c.value))) continue;
    if (stressed && parts[0] < 0x80) {
      plain += static_cast<char>(parts[0]);
    } else {
      plain.append(words.substr(at - c.length, c.length));
    }
  }
  return plain;
}

std::string without_ligatures(std::string_view words) {
  std::string plain;
  for (std::size_t at = 0; at < words.size();) {
    auto const c = code_point_at(words, at);
    if (c.value == 0xE6 || c.value == 0x153) {
      plain += c.value == 0xE6 ? "ae" : "oe";
    } else {
      plain.append(words.substr(at, c.length));
    }
    at += c.length;
  }
  return plain;
}

std::string in_plain_letters(std::string_view text) {
  if (text.starts_with('"')) return std::string{text};  // a name as it stands
  static constexpr std::array<std::string_view, 7> kLigatures{"ff"sv,  "fi"sv, "fl"sv, "ffi"sv,
                                                              "ffl"sv, "st"sv, "st"sv};
  std::string plain;
  plain.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    // Nothing is to be done for words in plain letters.
    auto const begin = at;
    while (at < text.size() && (text[at] == ' ' || (text[at] >= 'a' && text[at] <= 'z') ||
                                (text[at] >= 'A' && text[at] <= 'Z'))) {
      ++at;
    }
    plain.append(text, begin, at - begin);
    if (at == text.size()) break;
    auto const c = code_point_at(text, at);
    if (c.value >= 0xFB00 && c.value <= 0xFB06) {
      plain += kLigatures[c.value - 0xFB00];
    } else if (auto const latin = latin_initial(text, at, c); latin != '\0') {
      plain += latin;
    } else {
      plain.append(text.substr(at, c.length));
    }
    at += c.length;
    bool const initial = c.value == '.' && is_lower(code_point_at(text, at).value) &&
                         is_lower(code_point_at(text, at + 1).value);
    if (initial && is_short_genus(plain)) plain += ' ';
  }
  part_scripts(plain);
  auto const words = words_of(plain);
  if (words.empty()) return plain;
  // "1. A. BUS, Roe": the number and the short genus are as they should be.
  std::size_t begin_at = 0;
  if (is_digit(code_point_at(words[0], 0).value) && words.size() > 1) begin_at = 1;
  if (is_abbreviated(words[begin_at]) && begin_at + 1 < words.size()) {
    auto const epithet = without_end(words[begin_at + 1]);
    bool const capitals = is_all_capitals(epithet) && has_epithet_ending(fold(epithet));
    constexpr std::size_t kShortGenus = 3;  // bytes; "Gen. Ausella" is one
    // "A. Smithi Roe": as older works print it.
    bool const capital =
        is_capitalised(epithet) && epithet.size() > 4 &&
        (epithet.ends_with('i') || epithet.ends_with("ensis") || is_epithet_of_person(epithet) ||
         (begin_at > 0 && words[begin_at].size() <= kShortGenus &&
          has_strict_latin_ending(epithet)));  // "10. A. Candida"
    if (!capitals && !capital) return plain;
    return with_folded(plain, epithet);
  }
  auto const genus = without_end(words[0]);
  if (words.size() > 1 && !ends_item(words[0]) && is_capitalised(genus) &&
      !is_all_capitals(genus) && has_strict_latin_ending(genus) &&
      is_epithet_of_person(without_end(words[1]))) {
    return with_folded(plain, without_end(words[1]));
  }
  if (!is_all_capitals(genus)) return plain;
  auto const folded = fold(genus);
  if (!has_latin_ending(folded) || is_explained_in_brackets(words)) return plain;
  if (words_in_capitals_before_binomial(words) > 0) return plain;
  if (words_before_bracketed_binomial(words) > 0) return plain;
  auto out = in_small_letters(genus);
  bool family = folded.size() > 6 && (folded.ends_with("idae") || folded.ends_with("inae") ||
                                      folded.ends_with("aceae") || folded.ends_with("ales"));
  std::size_t done = genus.size();
  for (std::size_t w = 1; w < std::min<std::size_t>(words.size(), 3) && !family; ++w) {
    auto const printed = without_end(words[w]);
    bool const author = w + 1 < words.size() && is_year(words[w + 1]);
    if (!is_all_capitals(printed) || author || !has_epithet_ending(fold(printed)) ||
        words[w - 1].size() != without_end(words[w - 1]).size()) {
      break;
    }
    auto const begin = static_cast<std::size_t>(printed.data() - plain.data());
    out.append(plain, done, begin - done).append(fold(printed));
    done = begin + printed.size();
  }
  out.append(plain, done);
  return out;
}

}  // namespace keydrift::printed
