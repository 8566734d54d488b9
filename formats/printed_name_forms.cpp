#include <algorithm>
#include <array>
#include <cstddef>
#include <span>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

namespace {

// An author with the year: whatever stands before it is a name.
bool ends_in_year(std::string_view authorship) {
  auto const words = words_of(authorship);
  return words.size() >= 2 && is_year(words.back());
}

// "Eyes small Ausella Roe, 1889": words that lead to a genus, though they look like a name whose
// author is called Ausella Roe.
bool leads_to_genus(std::string_view text) {
  auto const begin = trailing_name(text);
  if (!begin || *begin == 0) return false;
  auto const genus = words_of(text.substr(*begin), 1).front();
  return has_strict_latin_ending(without_end(genus));
}

}  // namespace

bool is_latin_name(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 2) return false;
  if (!is_capitalised(words[0]) && !is_abbreviated(words[0])) return false;
  auto const reading = read_taxa(text);
  if (reading.taxa.size() != 1 && words.size() > 12) return false;
  if (!reading.before.empty()) return false;
  auto const& first = reading.taxa.front();
  auto name_words = words_of(first.name);
  bool const subgenus = name_words.size() >= 3 && name_words[1].front() == '(';
  while (subgenus && name_words.size() >= 2) {
    bool const closes = name_words[1].back() == ')';
    name_words.erase(name_words.begin() + 1);
    if (closes) break;
  }
  // "A. bus group"
  if (name_words.size() >= 3 && is_group_word(fold(name_words.back()))) name_words.pop_back();
  // "Aus cf. bus", "Aus × bus"
  if (name_words.size() >= 3 && is_rank(name_words[1])) name_words.erase(name_words.begin() + 1);
  // "Spitze sinusförmig gebogen longicauda": words, without a rank between.
  bool const four = name_words.size() == 4 && !is_rank(name_words[2]);
  if (four && !(is_latin_epithet(name_words[1]) && is_latin_epithet(name_words[2]))) return false;
  return name_words.size() >= 2 && name_words.size() <= 4 && is_epithet(name_words[1]) &&
         (is_abbreviated(name_words[0]) || has_latin_ending(name_words[0])) &&
         (has_epithet_ending(name_words.back()) || ends_in_year(first.authorship));
}

bool is_unnamed_species(std::string_view text) {
  constexpr std::size_t kMost = 10;  // words
  auto const words = words_of(start_of(text, 200), kMost + 1);
  return words.size() >= 2 && words.size() <= kMost &&
         (words[1] == "sp." || words[1] == "spp." || words[1] == "spec.") &&
         (is_latin_genus(words[0]) || (is_abbreviated(words[0]) && words.size() == 3));
}

bool is_dated_genus(std::string_view text) {
  constexpr std::size_t kMost = 7;  // words
  if (text.ends_with('.')) text.remove_suffix(1);
  auto const words = words_of(start_of(text, 100), kMost + 1);
  if (words.size() < 3 || words.size() > kMost || !is_year(words.back())) return false;
  // "Ausellini" of a tribe is no Latin genus.
  return is_capitalised(words[0]) && has_strict_latin_ending(words[0]) && !ends_item(words[0]) &&
         is_authorish(words[1]) && !is_year(words[1]) &&
         std::all_of(words.begin() + 1, words.end(), [](std::string_view word) {
           return is_authorish(word) || is_particle(without_end(word));
         });
}

bool is_genus_with_remark(std::string_view text) {
  if (text.ends_with('.') && !text.ends_with("nov.") && !text.ends_with(" n.")) {
    text.remove_suffix(1);
  }
  if (text.ends_with(')') || text.ends_with(']')) {
    auto const open = text.rfind(text.ends_with(')') ? '(' : '[');
    return open != std::string_view::npos && is_dated_genus(trim_right(text.substr(0, open)));
  }
  // "Ausella Roe, gen. nov.", "Ausella, new genus"
  static constexpr std::array kMarks{"gen. nov."sv, "gen. nov"sv,  "gen. n."sv,  "n. gen."sv,
                                     "nov. gen."sv, "new genus"sv, "gen.n."sv,   "n.gen."sv,
                                     "gen.nov."sv,  "n. gen"sv,    "nov. gen"sv, "n.gen"sv};
  auto const mark = std::find_if(kMarks.begin(), kMarks.end(),
                                 [text](std::string_view one) { return text.ends_with(one); });
  if (mark == kMarks.end()) return false;
  auto const words = words_of(text.substr(0, text.size() - mark->size()), 6);
  return !words.empty() && words.size() < 6 && is_capitalised(without_end(words[0])) &&
         has_strict_latin_ending(without_end(words[0])) &&
         std::all_of(words.begin() + 1, words.end(), [](std::string_view word) {
           return is_authorish(word) || is_particle(without_end(word));
         });
}

bool is_dated_name(std::string_view text) {
  constexpr std::size_t kLongest = 100;  // bytes
  if (text.size() > kLongest || !is_latin_name(text)) return false;
  auto const reading = read_taxa(text);
  return reading.taxa.size() == 1 && reading.remark.empty() &&
         ends_in_year(reading.taxa.front().authorship) && !leads_to_genus(text);
}

bool is_name_with_figures(std::string_view text) {
  // Quick: most texts are words.
  if (text.find_first_of("0123456789") == std::string_view::npos) return false;
  auto const first = without_end(text.substr(0, text.find(' ')));
  bool const words = is_plain_word(first) && !has_strict_latin_ending(fold(first));
  if (words || !is_latin_name(text)) return false;
  auto const reading = read_taxa(text);
  if (reading.taxa.size() != 1 || reading.taxa.front().authorship.empty()) return false;
  auto const genus = words_of(reading.taxa.front().name, 1).front();
  return (is_abbreviated(genus) || has_strict_latin_ending(genus)) &&
         is_digit(code_point_at(reading.remark, 0).value);
}

bool is_short_name(std::string_view text) {
  auto const words = words_of(start_of(text, 120));
  if (words.size() < 3 || !is_abbreviated(words[0]) || !is_epithet(words[1])) return false;
  // "A. cochlear, n. sp.", "A. cochlear Roe, 1900", "A. cochlear (p. 4)"
  auto const next = words[2];
  bool const fresh = next == "n." || next == "sp." || next == "nov." || next == "new";
  bool const page = words.size() > 3 && is_page(next, words[3]);
  auto const reading = read_taxa(text);
  bool const authored =
      is_authorish(next) && !reading.taxa.front().authorship.empty() && reading.taxa.size() == 1;
  constexpr std::size_t kLongestMark = 24;
  return (fresh || page || authored) && reading.remark.size() <= kLongestMark;
}

namespace {

// "busa, sp. n. (figs. 1, 2).": without the figures.
std::string_view without_figures_behind(std::string_view text) {
  auto const open = text.rfind(" (");
  if (open == std::string_view::npos || !without_full_stop(text).ends_with(')')) return text;
  return starts_caption(text.substr(open + 2)) ? text.substr(0, open) : text;
}

}  // namespace

bool is_genusless_name(std::string_view text) {
  text = without_figures_behind(text);
  auto const words = words_of(start_of(text, 200));
  if (words.size() < 2 || words.size() > 12 || text.find(';') != std::string_view::npos)
    return false;
  if (!is_epithet(words[0])) return false;
  bool const fresh = words.size() == 3 && (words[1] == "n." || words[1] == "sp." ||
                                           words[1] == "nov." || words[1] == "new");
  // "dentifemur, sp. n.": the mark leaves no doubt.
  bool const marked = fresh && words[0].ends_with(',') && words[1].ends_with('.');
  if (!marked && !has_epithet_ending(without_end(words[0]))) return false;
  if (fresh || (words.size() == 2 && is_mark_of_new(words[1]))) return true;
  // "bus, new species (p. 14)."
  if (auto const page = text.rfind(" (p. "); page != std::string_view::npos) {
    auto const named = trim_right(text.substr(0, page));
    auto const bare = without_mark_of_new(named);
    if (bare.size() < named.size() && bare == without_end(words[0])) return true;
  }
  if (!is_authorish(words[1])) return false;
  // "convex G": the figure of a couplet, rather than an author
  if (words.size() == 2 && words[1].size() == 1) return false;
  // "Stem glabrous Ausella": an English word and the genus behind it.
  bool const genus = words.size() == 2 || ends_item(words[1]);
  if (words[0].ends_with("ous") && genus && is_latin_genus(words[1])) return false;
  if (words.size() == 2 && words[0].ends_with(',')) return true;  // "bus, Roe."
  auto const reading = read_taxa(text);
  constexpr std::size_t kLongestMark = 12;  // "sp. nov."
  return reading.taxa.size() == 1 && reading.taxa.front().genusless &&
         !reading.taxa.front().authorship.empty() && reading.remark.size() <= kLongestMark;
}

bool is_bare_epithet(std::string_view text) {
  if (text.size() > 4 && text.ends_with('.') && text.find(' ') == std::string_view::npos) {
    text.remove_suffix(1);  // of the lead
  }
  auto words = words_of(start_of(text, 80));
  // "bus or cus (see the notes)", "bus cus (p. 66)": two of them leave no doubt.
  bool const listed = words.size() >= 3 && is_separator(words[1]) && is_latin_epithet(words[0]) &&
                      is_latin_epithet(words[2]);
  bool const subspecies =
      words.size() >= 2 && !ends_item(words[0]) && is_latin_epithet(words[0]) &&
      (is_latin_epithet(words[1]) || (words.size() > 2 && is_paged_epithet(words[1], words[2])));
  if (listed || subspecies) {
    std::size_t const next = listed ? 3 : 2;
    bool const ends = words.size() == next || words[next].front() == '(' ||
                      words[next].front() == '[' || words[next] == "n." || words[next] == "nov." ||
                      words[next] == "new" || words[next] == "subsp." || words[next] == "ssp." ||
                      is_authorish(words[next]);
    return ends && text.find(';') == std::string_view::npos;
  }
  if (words.empty() || words.size() > 6 || text.find(';') != std::string_view::npos) return false;
  if (!is_epithet(words[0])) return false;
  if (words[0].ends_with(',')) {  // "bus, p. 51"
    bool const page = words.size() == 3 && is_page(words[1], words[2]);
    return page && has_epithet_ending(without_end(words[0]));
  }
  if (words.size() == 1) return has_strict_latin_ending(words[0]) || words[0].ends_with("or");
  if (!has_epithet_ending(words[0])) return false;
  bool const sense = words[1] == "s.l." || words[1] == "s.lat." || words[1] == "s.str.";
  return is_genusless_name(text) || (sense && words.size() == 2) || is_rank(words[1]) ||
         is_limit_word(words[1]) || words[1].front() == '(' || words[1].front() == '[';
}

bool is_epithet_or_name(std::string_view text) {
  return is_bare_epithet(text) || is_genusless_name(text) || is_name_with_page(text);
}

bool is_name_with_page(std::string_view text) {
  constexpr std::size_t kMostWords = 8;  // with authors
  if (text.ends_with('.')) text.remove_suffix(1);
  bool const bracketed = text.ends_with(')');
  if (bracketed) text.remove_suffix(1);
  if (text.empty() || text.back() < '0' || text.back() > '9') return false;
  auto const words = words_of(start_of(text, 120));
  if (words.size() < 3 || words.size() > kMostWords) return false;
  auto const number = words.back();
  if (!is_digit(code_point_at(number, 0).value) ||
      number.find_first_not_of("0123456789-–"sv) != std::string_view::npos) {
    return false;
  }
  auto page = words[words.size() - 2];
  if (bracketed != page.starts_with('(')) return false;
  if (bracketed) page.remove_prefix(1);
  if (!is_page_word(page)) return false;
  auto const name = std::span{words}.first(words.size() - 2);
  if (!bracketed && !ends_item(name.back())) return false;
  auto const first = without_end(name.front());
  bool const epithet =
      name.size() > 1 && is_epithet(first) && has_epithet_ending(first) && is_authorish(name[1]);
  if (first.size() < 4 || !(is_capitalised(first) || epithet)) return false;
  return std::all_of(name.begin() + 1, name.end(), [](std::string_view word) {
    return word == "&" || (is_authorish(word) && !is_digit(code_point_at(word, 0).value)) ||
           is_particle(word) || (is_epithet(word) && has_epithet_ending(without_end(word)));
  });
}

bool describes_species(std::string_view words) {
  auto const first = words_of(start_of(words, 80), 2);
  return first.size() > 1 && first[0].ends_with(',') && is_epithet(without_end(first[0])) &&
         has_epithet_ending(without_end(first[0])) &&
         (first[1] == "sp." || first[1] == "n." || first[1] == "nov." || is_authorish(first[1]));
}

std::size_t signs_before_name(std::string_view text) {
  constexpr int kMost = 3;
  std::size_t at = 0;
  for (int sign = 0; sign < kMost; ++sign) {
    auto const c = code_point_at(text, at);
    bool const known = c.value == '*' || c.value == '?' || c.value == '+' || c.value == '#' ||
                       c.value == 0xB9 || c.value == 0xB2 || c.value == 0xB3 || c.value == 0x2020 ||
                       c.value == 0x2021 || c.value == 0xB0 || c.value == 0x2022 ||
                       c.value == 0x25CF || c.value == '!' || c.value == 0x2640 ||
                       c.value == 0x2642 || c.value == 0xA7;  // "§ Latifoliae"
    if (!known) break;
    at += c.length;
  }
  if (at == 0) return 0;
  auto const behind = skip_blanks(text, at);
  return is_letter(code_point_at(text, behind).value) ? behind : 0;
}

std::vector<std::string> figures_in(std::string_view text) {
  static constexpr std::array kWords{"fig"sv, "figs"sv,  "figure"sv, "figures"sv, "abb"sv,
                                     "pl"sv,  "plate"sv, "taf"sv,    "lám"sv,     "est"sv};
  std::vector<std::string> figures;
  if (std::none_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; })) {
    return figures;
  }
  auto const words = words_of(text);
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (!is_digit(code_point_at(words[i + 1], 0).value)) continue;
    auto word = words[i];
    while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
    auto name = word;
    while (!name.empty() && name.back() == '.') name.remove_suffix(1);
    if (!is_one_of(kWords, fold(name))) continue;
    // Numbers, ranges and lists: "3", "3–5", "3, 4", "2a & b".
    std::size_t last = i + 1;
    auto const goes_on = [&words](std::size_t j) {
      auto const next = words[j];
      return is_digit(code_point_at(next, 0).value) ||
             ((next == "&" || next == "and") && j + 1 < words.size() &&
              is_digit(code_point_at(words[j + 1], 0).value));
    };
    while (last + 1 < words.size() &&
           (words[last].back() == ',' || words[last] == "&" || words[last] == "and" ||
            words[last + 1] == "&") &&
           goes_on(last + 1)) {
      ++last;
    }
    auto const begin = static_cast<std::size_t>(word.data() - text.data());
    auto const end =
        static_cast<std::size_t>(words[last].data() - text.data()) + words[last].size();
    auto printed = text.substr(begin, end - begin);
    while (!printed.empty() &&
           (printed.back() == ')' || printed.back() == ',' || printed.back() == ';' ||
            printed.back() == '.' || printed.back() == ']' || printed.back() == ':')) {
      printed.remove_suffix(1);
    }
    figures.emplace_back(printed);
    i = last;
  }
  return figures;
}

}  // namespace keydrift::printed
