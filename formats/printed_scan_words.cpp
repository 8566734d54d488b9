#include "keydrift/formats/printed_scan_words.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_slips.hpp"
#include "keydrift/formats/printed_take_out.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_text_changes.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {
namespace {

// What is printed, and the byte of it that is put right.
struct SpeciesMark {
  std::string_view printed;
  std::size_t at;
  char right;
};
constexpr std::array kSpeciesMarks{
    SpeciesMark{" n, sp.", 2, '.'},   SpeciesMark{" n, sp,", 2, '.'},
    SpeciesMark{" sp, n.", 3, '.'},   SpeciesMark{" n. ap.", 4, 's'},
    SpeciesMark{" n. gp.", 4, 's'},   SpeciesMark{" u. sp.", 1, 'n'},
    SpeciesMark{" nov, sp.", 4, '.'}, SpeciesMark{" sp, nov.", 3, '.'}};

// Words of the text that begin with l, as they stand there.
std::unordered_set<std::string> words_in_l(std::string_view text) {
  std::unordered_set<std::string> words;
  for (auto at = text.find('l'); at != std::string_view::npos; at = text.find('l', at + 1)) {
    if (at > 0 && text[at - 1] != ' ' && text[at - 1] != '\n') continue;
    auto end = at;
    while (end < text.size() && is_small(text[end])) ++end;
    if (!is_letter(code_point_at(text, end).value)) words.emplace(text.substr(at, end - at));
  }
  return words;
}

}  // namespace

std::size_t restore_marks_of_new(std::string& text) {
  std::size_t restored = 0;
  for (auto const& mark : kSpeciesMarks) {
    for (auto at = text.find(mark.printed); at != std::string::npos;
         at = text.find(mark.printed, at + 1)) {
      text[at + mark.at] = mark.right;
      ++restored;
    }
  }
  constexpr std::string_view kNew = " new ";
  constexpr std::string_view kSpecies = "species";
  for (auto at = text.find(kNew); at != std::string::npos; at = text.find(kNew, at + 1)) {
    auto const begin = at + kNew.size();
    auto const word = std::string_view{text}.substr(begin, kSpecies.size());
    bool const ends = begin + word.size() >= text.size() ||
                      !is_letter(code_point_at(text, begin + word.size()).value);
    bool const misread = word != kSpecies && std::all_of(word.begin(), word.end(), is_small) &&
                         may_be_misread(word, kSpecies);
    if (!ends || !misread || word.size() != kSpecies.size()) continue;
    text.replace(begin, kSpecies.size(), kSpecies);
    ++restored;
  }
  return restored;
}

std::size_t restore_soft_hyphens(std::string& text) {
  constexpr std::string_view kNot = "\u00AC";
  std::size_t restored = 0;
  for (auto at = text.find(kNot); at != std::string::npos; at = text.find(kNot, at + 1)) {
    auto const behind = text.find_first_not_of(" \t\r", at + kNot.size());
    bool const ends = behind == std::string::npos || text[behind] == '\n';
    if (!ends || at == 0 || !is_letter(code_point_before(text, at).value)) continue;
    text.replace(at, kNot.size(), "- ");
    ++restored;
  }
  return restored;
}

std::size_t restore_first_l(std::string& text) {
  constexpr std::size_t kShortest = 5;  // bytes of an epithet
  std::size_t restored = 0;
  std::optional<std::unordered_set<std::string>> others;  // looked for where a figure calls for it
  for (auto at = text.find_first_of("I1"); at != std::string::npos;
       at = text.find_first_of("I1", at + 1)) {
    if (at < 2 || std::string_view{" \n."}.find(text[at - 1]) == std::string_view::npos) continue;
    auto const begin = at;
    auto end = begin + 1;
    while (end < text.size() && is_small(text[end])) ++end;
    auto const word = "l" + text.substr(begin + 1, end - begin - 1);
    if (word.size() < kShortest || !has_strict_latin_ending(word)) continue;
    // ". . ." / "1ineolatus Roe, 1878", where "Ausella lineolatus" stands elsewhere.
    if (text[begin] == '1') {
      if (!others) others = words_in_l(text);
      if (others->contains(word)) {
        text[begin] = 'l';
        ++restored;
        continue;
      }
    }
    if (text[at - 1] != ' ') continue;
    // "I. Inflorescentiae" is a word; l begins epithets before vowels alone.
    bool const vowel = begin + 1 < text.size() &&
                       std::string_view{"aeiouy"}.find(text[begin + 1]) != std::string_view::npos;
    if (!vowel) continue;
    auto const before = std::string_view{text}.substr(0, at - 1);
    auto const genus = before.substr(before.find_last_of(" \n\t.", before.size() - 2) + 1);
    bool const initial = genus.size() == 2 && genus[0] >= 'A' && genus[0] <= 'Z' && genus[1] == '.';
    // A figure is no word's first letter: "Ausella 1ongicauda", "St. 1ineola".
    bool const figure = text[begin] == '1' && (is_abbreviated(genus) || full_genus(genus) == genus);
    if (!initial && !figure) continue;
    text[begin] = 'l';
    if (others) others->insert(word);
    ++restored;
  }
  return restored;
}

std::size_t clear_low_lines(std::string& text) {
  constexpr std::size_t kLongestEnd = 48;  // bytes behind it
  std::size_t lines = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const line = std::string_view{text}.substr(begin, end - begin);
    auto const last = line.find_last_of('_');
    auto const words = last == std::string_view::npos ? last : line.find_last_not_of("_ ", last);
    // Longer ones are leaders beyond doubt.
    bool const row = words != std::string_view::npos &&
                     std::count(line.begin(), line.end(), '_') == 1 &&
                     line.size() - last <= kLongestEnd;
    auto const next = row ? skip_blanks(line, last + 1) : line.size();
    auto const before =
        words == std::string_view::npos ? char32_t{0} : code_point_before(line, words + 1).value;
    bool const ends = next < line.size() && (is_letter(before) || before == ')') &&
                      (is_letter(code_point_at(line, next).value) ||
                       is_digit(static_cast<unsigned char>(line[next])));
    if (ends) {
      text[begin + last] = ' ';
      ++lines;
    }
    begin = end + 1;
  }
  return lines;
}

std::size_t restore_bowls(std::string& text) {
  std::size_t restored = 0;
  for (auto bracket = text.find(')'); bracket != std::string::npos;
       bracket = text.find(')', bracket + 1)) {
    bool const within = bracket > 1 && bracket + 1 < text.size() && is_small(text[bracket + 1]);
    if (!within || (text[bracket - 1] != 'j' && text[bracket - 1] != 'l')) continue;
    auto const line = text.rfind('\n', bracket);
    auto const begin = line == std::string::npos ? 0 : line + 1;
    auto const before = std::string_view{text}.substr(begin, bracket - begin);
    bool const open = std::count(before.begin(), before.end(), '(') >
                      std::count(before.begin(), before.end(), ')');
    // "l) ody" is no word, nor is the label of "l)eg".
    if (open || bracket - 1 == begin) continue;
    text[bracket - 1] = text[bracket - 1] == 'j' ? 'p' : 'b';
    text.erase(bracket, 1);
    auto const end = std::min(text.find('\n', bracket), text.size());
    text.insert(end > 0 && text[end - 1] == '\r' ? end - 1 : end, 1, ' ');
    ++restored;
  }
  return restored;
}

std::size_t part_authors_from_epithets(std::string& text) {
  constexpr std::size_t kFewest = 2;  // with the blank
  constexpr std::size_t kShortest = 5;
  std::vector<TextChange> changes;
  std::size_t parted = 0;
  for (auto comma = text.find(','); comma != std::string::npos; comma = text.find(',', comma + 1)) {
    auto begin = comma;
    while (begin > 0 && is_small(text[begin - 1])) --begin;
    auto const word = std::string_view{text}.substr(begin, comma - begin);
    bool const apart = begin > 0 && text[begin - 1] == ' ';
    auto const next = comma + 1 < text.size() && text[comma + 1] == ' ' ? comma + 2 : comma + 1;
    bool const author = next + 1 < text.size() && is_upper(code_point_at(text, next).value) &&
                        is_letter(static_cast<unsigned char>(text[next + 1]));
    if (word.size() < kShortest || !apart || !author || !has_strict_latin_ending(word)) continue;
    if (next == comma + 2) {
      ++parted;
    } else {
      changes.push_back({next, 0, " "});
    }
  }
  if (parted < kFewest) return 0;
  make_changes(changes, text);
  return changes.size();
}

std::size_t close_double_blanks(std::string& text) {
  constexpr std::size_t kFewest = 50;
  constexpr std::size_t kPerSingle = 9;
  std::vector<Signs> second_blanks;
  std::size_t singles = 0;
  std::size_t lines = 0;
  std::size_t counted_to = 0;  // end of the line that was counted last
  for (auto blank = text.find(' '); blank != std::string::npos; blank = text.find(' ', blank)) {
    auto const end = std::min(text.find_first_not_of(' ', blank), text.size());
    bool const within = blank > 0 && text[blank - 1] != '\n' && end < text.size() &&
                        text[end] != '\n' && text[end] != '\r';
    if (within && end - blank == 1) ++singles;
    if (within && end - blank == 2) {
      second_blanks.push_back({end - 1, end});
      if (blank >= counted_to) {
        ++lines;
        counted_to = std::min(text.find('\n', blank), text.size());
      }
    }
    blank = end;
  }
  if (second_blanks.size() < kFewest || second_blanks.size() < singles * kPerSingle) return 0;
  take_out(text, second_blanks);
  return lines;
}

}  // namespace keydrift::printed
