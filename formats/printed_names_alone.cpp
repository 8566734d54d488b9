// Names on the lines ahead that stand on lines of their own.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "bus cus (p. 66)", "bus (p. 71)": the last words of a lead may be wrapped as far in.
bool is_epithet_beyond_doubt(std::string_view text) {
  auto const words = words_of(start_of(text, 80));
  if (words.size() < 2 || !is_bare_epithet(text)) return false;
  bool const two = is_epithet(words[1]) && has_strict_latin_ending(words[0]) &&
                   has_strict_latin_ending(without_end(words[1]));
  return two || (words.size() > 2 && is_page(words[1], words[2]));
}

// "busipes, p. 136" and nothing else.
bool is_epithet_with_page(std::string_view text) {
  auto const words = words_of(start_of(text, 80), 4);
  return words.size() == 3 && words[0].ends_with(',') && is_epithet(words[0]) &&
         has_epithet_ending(without_end(words[0])) && is_page(words[1], words[2]);
}

}  // namespace

bool LinesAhead::is_far_in(std::size_t i) const { return is_set_in(i, kDestinationIndent); }

bool LinesAhead::is_set_in(std::size_t i, std::uint32_t columns) const {
  if (i == 0 || lines_[i - 1].text.empty()) return false;
  // Behind a label, words begin further in than the line.
  auto const& before = lines_[i - 1];
  auto const label = label_at(i - 1);
  auto const words =
      before.indent + (label ? count_code_points(before.text.substr(0, label->text_at)) : 0);
  return lines_[i].indent >= words + columns;
}

bool LinesAhead::is_taxon_far_in(std::size_t i) const {
  if (i == 0 || lines_[i - 1].text.empty()) return false;
  // "8. Corolla lobes red" and its rival, a tab further in than the lead above, are leads.
  return lines_[i].indent >= lines_[i - 1].indent + kDestinationIndent &&
         is_numbered_taxon(lines_[i].text) && !is_answered(i);
}

std::vector<bool> LinesAhead::find_epithets_alone(std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 3;
  constexpr std::size_t kLongest = 80;  // bytes
  std::vector<bool> alone(lines.size());
  std::size_t found = 0;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.size() > kLongest || !lines[i - 1].text.ends_with('.')) continue;
    if (lines[i].indent == 0 || !is_genusless_name(text)) continue;
    alone[i] = true;
    ++found;
  }
  if (found < kFewest) alone.assign(lines.size(), false);
  return alone;
}

bool LinesAhead::is_numbered_species(std::size_t i) const {
  auto const text = lines_[i].text;
  if (text.empty() || !is_digit(code_point_at(text, 0).value)) return false;
  auto const words = words_of(text, 4);
  bool const full = words.size() > 1 && !is_abbreviated(words[1]);
  // "1. Ausella busa, sp. n." below a blank line is the title of an account.
  if (full && i > 0 && lines_[i - 1].text.empty()) return false;
  // Line after line they are a list of species.
  auto const own = genus_of_numbered_species(text);
  auto const beside = [this, own](std::size_t other) {
    return other < lines_.size() && !own.empty() &&
           genus_of_numbered_species(lines_[other].text) == own;
  };
  if (full && (beside(i + 1) || (i > 0 && beside(i - 1)))) return false;
  if (is_numbered_name(text) || is_numbered_name_in_full(text)) return true;
  if (own.empty()) return is_numbered_epithet_alone(i);
  if (words.size() > 3) return false;
  if (!numbered_genera_) numbered_genera_ = genera_of_numbered_species(lines_);
  return numbered_genera_->contains(own);
}

bool LinesAhead::is_numbered_epithet_alone(std::size_t i) const {
  // Of "… 4. busa", "4. busa Roe", "4. busa n. sp."
  auto const number_at = [](std::string_view text) {
    constexpr std::size_t kLongest = 48;  // bytes of the number and the name
    auto const named = without_mark_of_new(without_closing_marks(text));
    auto const at = numbered_end(named, kLongest, is_numbered_epithet);
    return at < named.size() ? at : text.size();
  };
  auto const is_alone = [&](std::size_t line) {
    return line < lines_.size() && !lines_[line].text.empty() && number_at(lines_[line].text) == 0;
  };
  // Line after line they are a list.
  if (!is_alone(i) || is_alone(i + 1) || (i > 0 && is_alone(i - 1))) return false;
  if (!epithets_are_numbered_) {
    constexpr std::ptrdiff_t kFewest = 3;
    epithets_are_numbered_ =
        std::count_if(lines_.begin(), lines_.end(), [&](SourceLine const& line) {
          auto const begin = number_at(line.text);
          return begin > 0 && begin < line.text.size();
        }) >= kFewest;
  }
  return *epithets_are_numbered_;
}

namespace {

// "Ausella busa, p. 461", ".Ausella busa (p. 466)": heads of accounts bear no pages.
bool is_species_with_page(std::string_view text) {
  constexpr std::size_t kMostWords = 6;  // with an author
  while (text.starts_with('.')) text.remove_prefix(1);
  auto const words = words_of(text, kMostWords + 1);
  if (words.size() < 4 || words.size() > kMostWords || !is_capitalised(words[0])) return false;
  auto const page_at = words.size() - 2;
  bool const behind = page_at == 2 || is_authorish(words[2]);
  return behind && is_epithet(without_closing_marks(words[1])) &&
         is_page(words[page_at], words.back());
}

// "cf 15—18 mm. 40—44 Ringe", "Lg. 4 mm": the size of the species named above, the sign of its sex
// as scans have it.
bool begins_with_size(std::string_view text) {
  static constexpr std::array kBefore{"cf"sv,  "Cf"sv, "\u2642"sv, "\u2640"sv, "Q"sv,
                                      "Lg."sv, "L."sv, "Long."sv,  "Länge"sv,  "Length"sv};
  auto const words = words_of(text, 2);
  return words.size() == 2 && is_one_of(kBefore, words[0]) &&
         is_digit(code_point_at(words[1], 0).value);
}

// "Ausella busa (scab mite; for those of the ear see p. 174)": the name.
std::string_view without_long_remark(std::string_view text) {
  auto const open = text.ends_with(')') ? text.find(" (") : std::string_view::npos;
  if (open == std::string_view::npos || text.find(')') + 1 != text.size()) return text;
  auto const name = text.substr(0, open);
  return words_of(name).size() > 1 ? name : text;
}

}  // namespace

bool LinesAhead::is_name_on_its_own(std::size_t i) const {
  auto const& line = lines_[i];
  if (epithets_alone_[i]) return true;
  if (line.is_told_destination()) return true;
  if (i + 1 < lines_.size() && lines_[i + 1].is_told_destination()) return false;
  // "Soralia white\t" / "A. busa": the tab leads over the line's end.
  if (i > 0 && lines_[i - 1].ends_in_tab && is_latin_name(line.text)) return true;
  // "3<tab>Tusks bare" / "<tab>Ausella (one species)": the last cell went on the next line.
  bool const tabbed = i > 0 && line.blanks == 1 && line.indent > 1 &&
                      lines_[i - 1].text.find('\t') != std::string_view::npos;
  auto const named = line.text.substr(0, std::min(line.text.find(" ("), line.text.size()));
  bool const bracket = named.size() == line.text.size() || line.text.ends_with(')');
  if (tabbed && bracket && is_latin_genus(named)) return true;
  if (is_taxon_far_in(i)) return true;
  if (i > 0 && !lines_[i - 1].text.empty() && is_separator(words_of(lines_[i - 1].text).back())) {
    return false;  // "… bus, p. 172, and" / "cus, p. 173"
  }
  // "… only at the" / "Spitze etwas gehoben. Stirn ohne Grübchen"
  if (i > 0 && !lines_[i - 1].text.empty() &&
      stands_before_noun(words_of(lines_[i - 1].text).back())) {
    return false;
  }
  if (is_far_in(i) && is_short_name(line.text)) return true;
  if (is_far_in(i) && is_latin_name(line.text)) {
    if (is_abbreviated(words_of(line.text, 1).front()) || is_certain_name(line.text)) return true;
  }
  // "(p. 36) AUSELLA Roe"
  if (line.text.starts_with('(') && is_far_in(i) && begins_with_page(line.text)) return true;
  if (i > 0 && is_numbered_species(i)) return true;
  bool const margin = is_set_in(i, 3 * kDestinationIndent);
  bool const epithet = is_epithet_beyond_doubt(line.text) ||
                       ((!usually_led_ || margin) && is_genusless_name(line.text)) ||
                       (margin && is_bare_epithet(line.text));
  if (epithet && is_far_in(i)) return true;
  // "… body unarmed. ." / "busipes, p. 136"
  if (i > 0 && is_epithet_with_page(line.text)) return true;
  if (i == 0 || line.text.size() > kLongestTrailingName ||
      !is_upper(code_point_at(line.text, 0).value) ||
      without_long_remark(line.text).find(';') != std::string_view::npos) {
    return false;
  }
  // "House finch and tree finch, Aus bus / Aus cus (hardly to be told)"
  if (is_set_in(i, kDestinationIndent / 2) && is_name_behind_common_one(line.text)) return true;
  constexpr std::size_t kWordsOfAName = 6;  // more are a sentence, however far in it hangs
  if (is_far_in(i) && plausible_destination(line.text, numbering_) && !line.text.ends_with('.') &&
      words_of(line.text).size() <= kWordsOfAName) {
    return true;
  }
  // "Ausella sp. 2"
  constexpr std::size_t kWordsOfUnnamed = 4;
  bool const unnamed = is_unnamed_species(line.text) &&
                       words_of(line.text, kWordsOfUnnamed + 1).size() <= kWordsOfUnnamed;
  if (!(is_latin_name(without_long_remark(line.text)) || unnamed) ||
      has_numbered_name_within(line.text))
    return false;
  if (has_certain_name_behind(line.text)) return false;
  if (i + 1 >= lines_.size() || lines_[i + 1].text.empty() || label_at(i + 1)) return true;
  // "… unlike that of" / "Aus bus" / "and smooth".
  auto const below = lines_[i + 1].text;
  // "a Aus Roe, Ann. Marsh. 1861": a note, whose letter is not raised.
  bool const note = below.size() > 2 && below[1] == ' ' && !is_separator(below.substr(0, 1)) &&
                    starts_with_upper(below.substr(2));
  if (lines_[i - 1].text.ends_with('.') && begins_with_size(below)) return true;
  bool const words_follow = is_lower(code_point_at(below, 0).value) && !note;
  return !words_follow && (!usually_led_ || is_species_with_page(line.text));
}

bool LinesAhead::is_name_between_blanks(std::size_t i) const {
  constexpr std::size_t kLongest = 80;  // bytes
  auto text = lines_[i].text;
  if (numbering_.exact || text.size() > kLongest || starts_note(text)) return false;
  text.remove_prefix(signs_before_name(text));  // "*A. bus"
  if (text.empty()) return false;
  auto const words = words_of(text);
  bool const short_name = words.size() >= 2 && is_abbreviated(words[0]) && words[0].size() == 2 &&
                          is_epithet(without_closing_marks(words[1])) && is_latin_name(text) &&
                          is_certain_name(text);
  // "R. Cabrenasi sp. nov."
  bool const honours = words.size() > 3 && is_abbreviated(words[0]) && words[0].size() == 2 &&
                       is_capitalised(words[1]) && has_epithet_ending(fold(words[1])) &&
                       without_mark_of_new(text).size() < text.size();
  // "bus, 1055.", "BUS, 1055."
  constexpr std::size_t kShortest = 4;  // letters of a word in capitals
  auto const first = words.empty() ? std::string_view{} : without_end(words[0]);
  bool const counted = words.size() == 2 && words[0].ends_with(',') &&
                       (is_epithet(first) ||
                        (is_in_capitals(first, kShortest) && has_epithet_ending(fold(first)))) &&
                       words[1].find_first_not_of("0123456789.") == std::string_view::npos;
  // "BUS. 12." of those that count up
  bool const told = lines_[i].markup.destination_begin == lines_[i].begin;
  bool const named =
      short_name || honours || counted || told || is_genusless_name(text) || is_numbered_name(text);
  if (!named && !is_species_with_page(text)) return false;
  return i + 1 >= lines_.size() || lines_[i + 1].text.empty() || label_at(i + 1).has_value();
}

}  // namespace keydrift::printed
