#include "keydrift/formats/printed_odd_initials.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestOfGenus = 6;  // species with the initial that the odd one stands for
constexpr std::size_t kMostOdd = 2;
constexpr std::size_t kLongestOddInitial = 3;       // letters of an abbreviation
constexpr std::size_t kShortestGenusOfInitial = 4;  // bytes

// Capitals that are taken for each other, italics above all (common practice).
constexpr std::array<std::string_view, 16> kAlikeCapitals{
    "FV", "BR", "KR", "FP", "CG", "CO", "CE", "OQ", "IT", "IJ", "IL", "EF", "BE", "DO", "HN", "AN"};
bool look_alike(char a, char b) {
  auto const pair = a < b ? std::string{a, b} : std::string{b, a};
  return std::find(kAlikeCapitals.begin(), kAlikeCapitals.end(), pair) != kAlikeCapitals.end();
}

// Capitals that come out as two signs.
struct PartedInitial {
  char capital;
  std::string_view signs;
};
constexpr std::array kParted{
    PartedInitial{'H', "JI"}, PartedInitial{'H', "II"}, PartedInitial{'H', "IT"},
    PartedInitial{'H', "TI"}, PartedInitial{'M', "AI"}, PartedInitial{'M', "IM"},
    PartedInitial{'M', "JM"}, PartedInitial{'N', "IN"}, PartedInitial{'K', "IC"},
    PartedInitial{'D', "IJ"}, PartedInitial{'U', "LI"}, PartedInitial{'R', "IR"},
    PartedInitial{'P', "IP"}, PartedInitial{'T', "IT"}};
bool is_parted(char capital, std::string_view signs) {
  return std::any_of(kParted.begin(), kParted.end(), [&](PartedInitial const& one) {
    return one.capital == capital && one.signs == signs;
  });
}

// Figures and strokes that capitals come out as, behind the number of a species: "7. 1. busa" for
// "7. I. busa", "/. busa".
struct CapitalSigns {
  char capital;
  std::string_view seen;
};
constexpr std::array kSignsOfCapitals{
    CapitalSigns{'I', "1/|l"}, CapitalSigns{'J', "1/"}, CapitalSigns{'L', "1/"},
    CapitalSigns{'T', "7/1"},  CapitalSigns{'B', "85"}, CapitalSigns{'S', "58"},
    CapitalSigns{'G', "6"},    CapitalSigns{'O', "0"},  CapitalSigns{'D', "0"},
    CapitalSigns{'Z', "2"},    CapitalSigns{'A', "4"}};
bool is_sign_of(char capital, char seen) {
  return std::any_of(
      kSignsOfCapitals.begin(), kSignsOfCapitals.end(), [&](CapitalSigns const& one) {
        return one.capital == capital && one.seen.find(seen) != std::string_view::npos;
      });
}

// By abbreviation, where it stands before an epithet: "V" of "V. busa", "Pl" of "Pl. busa".
using Places = std::map<std::string, std::vector<std::size_t>>;

Places abbreviations_in(std::string_view text) {
  Places places;
  for (auto stop = text.find('.'); stop != std::string_view::npos;
       stop = text.find('.', stop + 1)) {
    auto begin = stop;
    while (begin > 0 && is_small(text[begin - 1])) --begin;
    while (begin > 0 && is_capital(text[begin - 1])) --begin;
    auto const letters = stop - begin;
    if (letters == 0 || letters > kLongestOddInitial || !is_capital(text[begin])) continue;
    auto const before = begin > 0 ? code_point_before(text, begin).value : char32_t{' '};
    if (!is_blank(before) && before != '.' && before != '(') continue;
    if (text.substr(stop + 1, 1) != " ") continue;
    auto const rest = text.substr(stop + 2);
    auto const word = rest.substr(0, rest.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"));
    if (!is_epithet(word) || !has_epithet_ending(word)) continue;
    places[std::string{text.substr(begin, letters)}].push_back(begin);
  }
  return places;
}

// "busa", "busa Roe": an epithet in small letters at the begin of the text.
bool starts_with_epithet(std::string_view text) {
  auto const word = text.substr(0, text.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"));
  return is_epithet(word) && has_epithet_ending(word);
}

// The name of an author, or nothing, follows the epithet that the text begins with.
bool ends_with_author(std::string_view text) {
  auto const behind = text.find_first_of(" \n");
  if (behind == std::string_view::npos) return true;
  auto const next = text.substr(skip_blanks(text, behind), 2);
  return next.empty() || next[0] == '\n' || is_capital(next[0]) ||
         (next.size() == 2 && next[0] == '(' && is_capital(next[1]));
}

// A dot of leaders, or a full stop behind a blank, ends the text.
bool ends_in_leader(std::string_view text) {
  text = trim_right(text);
  if (!text.ends_with('.')) return false;
  text.remove_suffix(1);
  return text.ends_with('.') || text.ends_with(' ');
}

// Where such a sign stands for `capital` between the number of a species and its epithet: "7. 1.
// organensis", "11. /. hirta", "3. P, mallea", ". . P, mallea"; behind leaders with a quotation
// mark, ". . 5'. albida"; without its full stop, "S albida Roe" on a line of its own.
std::vector<TextChange> signs_for(char capital, std::string_view text) {
  std::vector<TextChange> changes;
  auto const put = std::string{capital} + ". ";
  for (std::size_t at = 3; at + 3 < text.size(); ++at) {
    auto const seen = text[at];
    bool const own = seen == capital;
    if (!own && !is_sign_of(capital, seen)) continue;
    auto end = at + 1;
    bool const quoted = text[end] == '\'' || text[end] == '"';
    if (quoted) ++end;
    bool const stop = text[end] == '.';
    bool const comma = text[end] == ',' && own && !quoted;
    // "A tibia" begins with an article.
    bool const bare = text[end] == ' ' && own && !quoted &&
                      std::string_view{"AEIOY"}.find(seen) == std::string_view::npos;
    if (!stop && !comma && !bare) continue;
    auto const epithet = bare ? end + 1 : end + 2;
    if (epithet >= text.size() || text[epithet - 1] != ' ') continue;
    auto const rest = text.substr(epithet);
    if (!starts_with_epithet(rest)) continue;
    auto const before = text.substr(0, at);
    bool const numbered =
        before.ends_with(". ") && is_digit(static_cast<unsigned char>(text[at - 3]));
    bool const led = ends_in_leader(before) && ends_with_author(rest);
    bool const begins = before.ends_with('\n') && ends_with_author(rest);
    bool const meant =
        bare     ? led || begins
        : quoted ? led
                 : (stop && !own && numbered) || (comma && (numbered || ends_in_leader(before)));
    if (meant) changes.push_back({at, epithet - at, put});
  }
  return changes;
}

// A word that begins so and may be a genus.  `species`: an epithet follows it.
bool names_genus(std::string_view text, std::string_view beginning, bool species) {
  for (auto at = text.find(beginning); at != std::string_view::npos;
       at = text.find(beginning, at + 1)) {
    if (at > 0 && is_letter(code_point_before(text, at).value)) continue;
    auto end = at + 1;
    while (end < text.size() && is_letter(static_cast<unsigned char>(text[end]))) ++end;
    auto const word = text.substr(at, end - at);
    bool const ends = has_latin_ending(fold(word));
    if (word.size() < kShortestGenusOfInitial || !ends) continue;
    if (!species) return true;
    auto const rest = text.substr(std::min(skip_blanks(text, end), text.size()));
    auto const next = rest.substr(0, rest.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"));
    if (is_epithet(next) && has_strict_latin_ending(next)) return true;
  }
  return false;
}

}  // namespace

std::size_t restore_odd_initials(std::string& text) {
  auto const places = abbreviations_in(text);
  std::size_t restored = 0;
  for (auto const& [letters, all] : places) {
    if (letters.size() != 2 || letters[1] != 'I') continue;
    auto const lower = std::string{letters[0], 'l'};
    if (!names_genus(text, lower, false) && !names_genus(text, std::string{letters[0], 'L'}, false))
      continue;
    for (auto const at : all) text[at + 1] = 'l';
    restored += all.size();
  }
  auto const most = std::max_element(
      places.begin(), places.end(),
      [](auto const& a, auto const& b) { return a.second.size() < b.second.size(); });
  if (most == places.end() || most->second.size() < kFewestOfGenus || most->first.size() != 1) {
    return restored;
  }
  auto changes = signs_for(most->first[0], text);
  for (auto const& [letters, all] : places) {
    if (all.size() > kMostOdd || !is_parted(most->first[0], letters)) continue;
    for (auto const at : all) changes.push_back({at, letters.size(), most->first});
  }
  for (auto const& [letters, all] : places) {
    bool const odd = letters.size() == 1 && all.size() <= kMostOdd && letters != most->first &&
                     look_alike(letters[0], most->first[0]);
    if (!odd || names_genus(text, letters, true)) continue;
    for (auto const at : all) text[at] = most->first[0];
    restored += all.size();
  }
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, text);
  return restored + changes.size();
}

std::size_t shorten_abbreviations(std::string& text) {
  constexpr std::size_t kFewest = 3;
  // What says more than a genus.
  static constexpr std::array<std::string_view, 6> kWords{"Pl", "Fig", "Est", "Lam", "Tab", "No"};
  std::vector<TextChange> changes;
  for (auto const& [letters, all] : abbreviations_in(text)) {
    bool const word = std::find(kWords.begin(), kWords.end(), letters) != kWords.end();
    if (!word || all.size() < kFewest) continue;
    auto capitals = letters;
    for (auto& c : capitals) c = is_small(c) ? static_cast<char>(c - 'a' + 'A') : c;
    if (!names_genus(text, letters, false) && !names_genus(text, capitals, false)) continue;
    for (auto const at : all) changes.push_back({at + 1, letters.size() - 1, {}});
  }
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, text);
  return changes.size();
}

}  // namespace keydrift::printed
