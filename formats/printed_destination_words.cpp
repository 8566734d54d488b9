#include "keydrift/formats/printed_destination_words.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_unnamed_species.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

std::size_t DestinationWords::open_bracket(std::size_t at) {
  char const close = words_[at].front() == '(' ? ')' : ']';
  words_[at].remove_prefix(1);
  std::size_t depth = 1;
  for (std::size_t i = at; i < words_.size(); ++i) {
    for (std::size_t c = 0; c < words_[i].size(); ++c) {
      char const sign = words_[i][c];
      if (sign == (close == ')' ? '(' : '[')) ++depth;
      if (sign != close || --depth > 0) continue;
      if (c + 1 == words_[i].size() || c + 2 == words_[i].size()) {
        words_[i] = words_[i].substr(0, c);
        if (words_[i].empty()) words_.erase(words_.begin() + static_cast<std::ptrdiff_t>(i));
        return i + 1;
      }
      return 0;
    }
  }
  return 0;
}

bool DestinationWords::is_author_at(std::size_t i) const {
  auto initial = word(i);
  if (is_authorish(initial)) return true;
  while (!initial.empty() && initial.front() == '(') initial.remove_prefix(1);
  if (initial != "P." && initial != "S.") return false;
  // "P. Roe", "Roe & S."; "S. 12" is a page.
  bool const second = i > 0 && (word(i - 1) == "&" || word(i - 1) == "et");
  auto const next = code_point_at(word(i + 1), 0).value;
  return is_upper(next) || (second && !is_digit(next));
}

bool DestinationWords::is_particle_at(std::size_t i, bool within) const {
  auto const printed = without_end(word(i));
  bool const particle =
      printed.starts_with('(') ? is_surname_particle(printed.substr(1)) : is_particle(printed);
  return particle && (within || is_author_at(i + 1) || is_particle(without_end(word(i + 1))));
}

bool DestinationWords::is_short_author_at(std::size_t i) const {
  return is_author_at(i) && without_end(word(i)).ends_with('.');
}

bool DestinationWords::closes_author(std::size_t i) const {
  if (i == 0) return false;
  auto const before = word(i - 1);
  auto const bare = without_end(word(i));
  if (bare == "al.") return before == "&" || before == "et";
  if (!is_author_at(i - 1) || ends_item(before)) return false;
  // "Aus bus L. f. minor" is a form.
  if (bare == "f." || bare == "fil.") {
    return !is_epithet(without_closing_marks(word(i + 1))) || is_rank(word(i + 1));
  }
  return bare == ":" && is_short_author_at(i + 1);
}

bool DestinationWords::begins_group(std::size_t i) const {
  bool const group = word(i) == "gr." || word(i) == "grp.";
  return group && starts_taxon(i + 1) && is_epithet(word(i + 2));
}

std::size_t DestinationWords::group_at(std::size_t i) const {
  auto const count = word(i) == "species" ? 2U : 1U;
  auto const group = word(i + count - 1);
  auto const next = word(i + count);
  bool const closes = i + count >= words_.size() || ends_item(group) || is_separator(next) ||
                      next.front() == '(' || next.front() == '[';
  return is_group_word(fold(without_end(group))) && closes ? count : 0;
}

bool DestinationWords::closes_in_epithets(std::size_t i) const {
  if (i >= words_.size()) return false;
  for (; i < words_.size(); ++i) {
    bool const last = i + 1 == words_.size();
    if (!is_latin_epithet(word(i)) || last == ends_item(word(i))) return false;
  }
  return true;
}

bool DestinationWords::starts_taxon(std::size_t i) const {
  auto const first = word(i);
  if (!first.empty() && first.front() == '"') return true;
  if (!is_capitalised(without_end(first)) && !is_abbreviated(first)) return false;
  auto next = i + 1;
  if (!word(next).empty() && word(next).front() == '(' && word(next).back() == ')') ++next;
  // "Aus bus, Dorn f.": the son is an author.
  bool const son = word(next) == "f." && next + 1 >= words_.size();
  return !ends_item(first) && !son &&
         (is_epithet(word(next)) || is_rank(word(next)) || starts_unnamed(first, next));
}

// "Aus sp. B" in a list; "Roe & Dorn sp. n." is an author.
bool DestinationWords::starts_unnamed(std::string_view genus, std::size_t next) const {
  auto const mark = without_end(word(next + 1));
  if (mark == "n." || mark == "nov." || mark == "n" || mark == "nov") return false;
  if (!is_abbreviated(genus) && !has_strict_latin_ending(genus)) return false;
  auto const rest = from(next);
  auto const count = words_of_unnamed_species(rest);
  if (count >= 2) return true;
  // "Microta spp." at the end, before a bracket or in a list
  auto const behind = word(next + 1);
  return count == 1 && has_strict_latin_ending(without_end(genus)) &&
         (behind.empty() || ends_item(word(next)) || is_separator(behind) ||
          behind.front() == '(' || behind.front() == '[');
}

std::size_t DestinationWords::unnamed_at(std::size_t i) const {
  auto const first = word(i);
  if ((first == "Species" || first == "Morphospecies") &&
      words_of_unnamed_species(std::array{"species"sv, word(i + 1)}) == 2) {
    return 2;
  }
  if (first != "sp." && first != "spec.") return 0;
  return words_of_unnamed_species(from(i));
}

bool DestinationWords::is_subspecies(std::size_t i) const {
  if (i + 1 >= words_.size() || ends_item(word(i)) || !is_latin_epithet(word(i))) return false;
  if (!is_paged_epithet(word(i + 1), word(i + 2)) && !is_latin_epithet(without_end(word(i + 1)))) {
    // "bus cus, n. var."
    auto const mark = word(i + 2);
    bool const fresh = is_epithet(without_end(word(i + 1))) && ends_item(word(i + 1)) &&
                       (mark == "n." || mark == "nov." || mark == "new");
    if (!fresh) return false;
  }
  return i + 2 >= words_.size() || ends_item(word(i + 1)) || is_author_at(i + 2) ||
         closes_epithet(i + 2);
}

bool DestinationWords::marks_new_rank(std::size_t i) const {
  auto const mark = without_end(word(i + 1));
  return is_rank(word(i)) && (mark == "n." || mark == "nov.");
}

bool DestinationWords::closes_epithet(std::size_t i) const {
  auto const next = word(i);
  if (is_mark_of_new(next)) return true;
  // "subsp. n."
  if (is_rank(next)) return is_epithet(word(i + 1)) || marks_new_rank(i);
  if (is_limit_word(without_end(next)) || next == "s.l." || next == "s.lat." || next == "s.str.")
    return true;
  return next.front() == '(' || next.front() == '[' || next == "sp." || next == "n." ||
         next == "nov." || next == "nom." || next == "stat." || next == "new" ||
         is_page(next, word(i + 1)) || next == "p." || next == "pp.";  // pro parte
}

bool DestinationWords::holds_author(std::size_t i, std::size_t begin) const {
  auto first = word(i).substr(1);
  if (is_year(first)) return true;
  // "(de la Roe) Dorn"
  bool const particle = is_particle_at(i, false) && is_surname_particle(first);
  if (i > begin || !(is_author_at(i) || particle)) return false;
  while (!first.empty() && (first.back() == ')' || first.back() == ',')) first.remove_suffix(1);
  if (is_no_author(fold(first))) return false;
  if (particle) ++i;
  bool authored = !particle;
  for (; i < words_.size(); ++i) {
    auto printed = word(i);
    bool const closed = printed.find(')') != std::string_view::npos;
    while (!printed.empty() && (printed.back() == ')' || printed.back() == ',')) {
      printed.remove_suffix(1);
    }
    bool const author = is_authorish(printed) || is_author_at(i);
    if (!author && !is_particle(printed) && !is_year(printed)) {
      return false;
    }
    authored = authored || author;
    if (closed) return authored;
  }
  return false;
}

bool DestinationWords::has_year_soon(std::size_t at) const {
  for (std::size_t i = at; i < std::min(words_.size(), at + 6); ++i) {
    if (is_year(word(i))) return true;
  }
  return false;
}

bool DestinationWords::goes_on_with_author(std::size_t at) const {
  return is_year(word(at)) ||
         (is_author_at(at) && (has_year_soon(at) || is_separator(word(at + 1)))) ||
         // "Roe, Dorn, and Vorn"
         (is_separator(word(at)) && is_author_at(at + 1) && at + 2 == words_.size()) ||
         (is_particle(word(at)) && has_year_soon(at));
}

bool DestinationWords::has_separator_from(std::size_t at) const {
  for (std::size_t i = at; i < words_.size(); ++i) {
    if (is_separator(words_[i])) return true;
  }
  return false;
}

std::size_t DestinationWords::words_to_other(std::size_t i, std::string_view before) const {
  constexpr std::size_t kMost = 8;
  auto const genus = before.substr(0, before.find(' '));
  for (std::size_t n = 1; n <= kMost && i + n + 1 < words_.size(); ++n) {
    auto const next = word(i + n);
    bool const same = next == genus ||
                      (is_abbreviated(next) && genus.starts_with(next.substr(0, next.size() - 1)));
    auto const epithet = without_end(word(i + n + 1));
    bool const compared = is_comparing(fold(word(i + n - 1)));
    if (same && !compared && is_epithet(epithet) && has_epithet_ending(epithet)) return n;
  }
  return 0;
}

std::size_t DestinationWords::marks_between(std::size_t at) const {
  static constexpr std::array kMarks{"sp."sv, "gen."sv, "n."sv, "nov."sv, "new"sv, "species"sv};
  auto const is_mark = [](std::string_view word) {
    return is_one_of(kMarks, without_end(word)) || is_mark_of_new(without_end(word));
  };
  std::size_t n = 0;
  bool parted = false;  // "sp. nov., A. busa"
  while (!parted && is_mark(word(at + n))) parted = ends_item(word(at + n++));
  return n > 0 && (parted || is_separator(word(at + n))) ? n : 0;
}

std::size_t DestinationWords::bracket_between(std::size_t at) const {
  constexpr std::size_t kShort = 4;    // words
  constexpr std::size_t kLongest = 8;  // "(height 13–16 mm, map 69) or Bus cus"
  if (is_page(word(at), word(at + 1))) return 2;
  if (word(at).empty() || word(at).front() != '(') return 0;
  for (std::size_t n = 0; n < kLongest && at + n < words_.size(); ++n) {
    if (!without_end(word(at + n)).ends_with(')')) continue;
    return n < kShort || is_separator(word(at + n + 1)) ? n + 1 : 0;
  }
  return 0;
}

}  // namespace keydrift::printed
