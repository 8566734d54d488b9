#include "keydrift/formats/printed_ends_by_structure.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_end_habits.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_goes_on.hpp"
#include "keydrift/formats/printed_group_names.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/formats/printed_words_before_epithets.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kWideGap = 3;  // blanks that set a name apart

class StructureMender {
 public:
  StructureMender(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
                  std::vector<ReadLead>& reads, std::vector<Finding>& findings)
      : grouping_{grouping},
        reads_{reads},
        findings_{findings},
        cutter_{key, sorted, findings},
        home_{homes_of(grouping, reads.size())} {}

  bool run() && {
    std::size_t named = 0;
    std::size_t dotted = 0;
    std::size_t plain = 0;
    std::size_t genusless = 0;
    std::size_t genera = 0;
    for (auto const& read : reads_) {
      if (read.to.form != DestinationForm::taxa) continue;
      ++named;
      if (is_latin_genus(read.to.taxa.taxa.front().name)) ++genera;
      if (read.to.taxa.taxa.front().genusless) ++genusless;
      if (read.leaders == LeaderKind::dots) ++dotted;
      if (read.leaders == LeaderKind::blank) ++plain;
    }
    usually_dotted_ = dotted * 2 > named;
    often_plain_ = plain * 4 > named;
    constexpr std::size_t kFewestGenera = 3;
    often_genera_ = genera >= kFewestGenera && genera * 4 >= named * 3 && !has_capital_nouns();
    names_have_genera_ = named > 0 && genusless * 3 <= named;
    bool const places_tell = grouping_.goes_on && !lead_to_numbers();
    auto const below = couplets_below(grouping_, reads_);
    if (places_tell) look_at_leaves(below, named);
    bool changed = false;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      // A lead without rival was put there by accident.
      if (home_[i] == kNone || grouping_.couplets[home_[i]].member_count < 2) continue;
      if (places_tell && has_couplet_behind(i)) {
        changed = give_back(i) || changed;
      } else if ((places_tell || !grouping_.goes_on) && below[i] == kNone) {
        changed = end_in_name(i) || changed;
      }
    }
    return changed;
  }

 private:
  // Where hardly a name was read so far, most leads with nothing beneath them may end alike: in an
  // epithet, "Wings dark bus", or in one with the number of its species, "Wings dark. bus, 7."
  void look_at_leaves(std::vector<std::uint32_t> const& below, std::size_t named) {
    constexpr std::size_t kFewest = 4;
    std::size_t leaves = 0;
    std::size_t loose = 0;
    std::size_t counted = 0;
    std::uint32_t last = 0;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (!is_open(reads_[i]) || below[i] != kNone || home_[i] == kNone) continue;
      if (has_couplet_behind(i)) continue;
      ++leaves;
      if (named * 2 > reads_.size()) return;
      auto const joined = cutter_.join(i);
      if (loose_name(joined.raw)) ++loose;
      auto const end = counted_epithet(joined.raw);
      if (end && end->number > last) {
        ++counted;
        last = end->number;
      }
    }
    if (leaves < kFewest || named >= leaves) return;
    if (loose * 2 > leaves) often_plain_ = true;
    counted_ = counted * 3 >= leaves * 2;
  }

  // "bus, 7." at the end of "Wings dark. bus, 7."
  struct CountedEpithet {
    std::size_t begin{};
    std::uint32_t number{};
  };
  [[nodiscard]] static std::optional<CountedEpithet> counted_epithet(std::string_view text) {
    constexpr std::size_t kMostDigits = 4;
    constexpr std::size_t kShortest = 4;  // bytes of an epithet, with its comma
    text = trim_right(text);
    if (text.ends_with('.')) text.remove_suffix(1);
    auto const digits = last_word_begin(text);
    auto const number = text.substr(digits);
    bool const counts = !number.empty() && number.size() <= kMostDigits && only_figures(number);
    if (!counts) return std::nullopt;
    auto const before = trim_right(text.substr(0, digits));
    auto const begin = last_word_begin(before);
    auto const epithet = before.substr(begin);
    if (begin == 0 || !epithet.ends_with(',')) return std::nullopt;
    if (!is_epithet(without_end(epithet)) || epithet.size() < kShortest) return std::nullopt;
    // "bus cus, 171.": a subspecies
    auto const species = last_word_begin(trim_right(before.substr(0, begin)));
    bool const two =
        species > 0 && is_latin_epithet(trim_right(before.substr(species, begin - species)));
    return CountedEpithet{two ? species : begin, number_of(number)};
  }

  [[nodiscard]] bool lead_to_numbers() const {
    auto const numbered = std::count_if(reads_.begin(), reads_.end(), [](ReadLead const& read) {
      return read.to.form == DestinationForm::couplet;
    });
    return static_cast<std::size_t>(numbered) * 5 >= reads_.size();
  }

  // The next lead opens a couplet of the same part, wherever it is set.
  [[nodiscard]] bool has_couplet_behind(std::size_t i) const {
    if (i + 1 >= reads_.size() || !opens_couplet(grouping_, home_, i + 1)) return false;
    auto const& next = grouping_.couplets[home_[i + 1]];
    return next.part == grouping_.couplets[home_[i]].part && next.member_count >= 2;
  }

  bool give_back(std::size_t i) {
    auto& read = reads_[i];
    // "… Fruit a capsule . . . . I. Auseae." names the group of those beneath.
    bool const group = is_numbered_group(read.lead.destination_printed);
    if (read.leaders != LeaderKind::blank && !group) return false;
    if (read.to.form == DestinationForm::couplet) {
      // "Stigmas 2"
      auto const& next = grouping_.couplets[home_[i + 1]];
      if (number_key(read.to.couplet) == number_key(next.key)) return false;
    }
    auto const& place = read.lead.destination_place;
    std::erase_if(findings_, [&place](Finding const& one) {
      bool const code = one.code == "assumed-destination" || one.code == "ambiguous-number";
      return code && one.place.begin == place.begin;
    });
    auto const joined = cutter_.join(i);
    read.leaders = LeaderKind::none;
    cutter_.cut(read, joined, trim_right(joined.raw).size(), joined.raw.size());
    return true;
  }

  bool end_in_name(std::size_t i) {
    auto& read = reads_[i];
    if (!is_open(read)) return false;
    auto const joined = cutter_.join(i);
    auto const begin = name_at_end(joined);
    if (!begin) return false;
    read.leaders = LeaderKind::blank;
    cutter_.cut(read, joined, trim_right(std::string_view{joined.raw}.substr(0, *begin)).size(),
                *begin);
    cutter_.say_name_taken(read);
    return true;
  }

  [[nodiscard]] std::optional<std::size_t> name_at_end(JoinedText const& joined) const {
    std::string_view const text = joined.raw;
    if (auto const end = counted_ ? counted_epithet(text) : std::nullopt) return end->begin;
    auto const last_line = joined.spans.back().raw_begin;
    auto const words_end = trim_right(text).size();
    for (auto at = words_end; at-- > last_line + kWideGap;) {
      if (text[at - 1] != ' ' || text[at - 2] != ' ' || text[at - 3] != ' ') continue;
      if (text[at] == ' ') continue;
      if (is_name(text.substr(at, words_end - at))) return at;
      break;
    }
    if (joined.spans.size() > 1 && is_name(text.substr(last_line, words_end - last_line))) {
      return last_line;
    }
    if (joined.spans.size() > 1 && is_lone_genus(text.substr(last_line, words_end - last_line))) {
      return last_line;
    }
    // "… Basses-Cévrines . bus, n. sp.": a single dot.
    auto const dot = text.rfind(" . ");
    if (dot != std::string_view::npos && dot + 3 < words_end &&
        is_name(text.substr(dot + 3, words_end - dot - 3))) {
      return dot + 3;
    }
    if (auto const alone = word_behind_sentence(text)) return alone;
    auto const begin = trailing_name(text);
    bool const sure = begin && (!usually_dotted_ || is_certain_name(text.substr(*begin)) ||
                                ends_in_two_dots(trim_right(text.substr(0, *begin))));
    if (sure) return begin;
    if (auto const genus = often_genera_ ? genus_behind_words(text) : std::nullopt) return genus;
    if (!often_plain_) return std::nullopt;
    if (auto const loose = loose_name(text, names_have_genera_)) return loose;
    // "… throughout their length royi", "… on area III royi Dorn"
    auto last = last_word_begin(text);
    if (is_capitalised(trim_right(text.substr(last))) && last > 0) {
      last = last_word_begin(trim_right(text.substr(0, last)));
    }
    auto const word = text.substr(last, text.find(' ', last) - last);
    return is_genitive(word) && last > 0 ? std::optional{last} : std::nullopt;
  }

  // "virens" of "… head long. virens.": no sentence is one word in small letters.
  [[nodiscard]] static std::optional<std::size_t> word_behind_sentence(std::string_view text) {
    constexpr std::size_t kShortest = 4;  // bytes, of the epithet and of the word before it
    text = trim_right(text);
    if (text.ends_with('.')) text.remove_suffix(1);
    auto const begin = last_word_begin(text);
    if (text.size() - begin < kShortest || !is_epithet(text.substr(begin))) return std::nullopt;
    auto const sentence = trim_right(text.substr(0, begin));
    auto const closing = sentence.substr(last_word_begin(sentence));
    bool const closed = closing.ends_with('.') && closing.size() >= kShortest && !is_rank(closing);
    return closed ? std::optional{begin} : std::nullopt;
  }

  // Of eight words within sentences one has a capital, as the nouns of German have.
  [[nodiscard]] bool has_capital_nouns() const {
    std::size_t words = 0;
    std::size_t capitals = 0;
    for (auto const& read : reads_) {
      auto const all = words_of(read.lead.text);
      for (std::size_t w = 1; w < all.size(); ++w) {
        if (all[w - 1].ends_with('.') || !is_plain_word(without_end(all[w]))) continue;
        ++words;
        if (is_capitalised(all[w])) ++capitals;
      }
    }
    return capitals * 8 > words;
  }

  // "Ausella" of "… reduced to a stub Ausella": hardly a sentence ends in such a word where nouns
  // have no capitals.
  [[nodiscard]] static std::optional<std::size_t> genus_behind_words(std::string_view text) {
    constexpr std::size_t kShortest = 5;  // bytes
    static constexpr std::array kNever{"and"sv,   "or"sv,   "as"sv,  "like"sv, "than"sv,
                                       "from"sv,  "with"sv, "see"sv, "by"sv,   "to"sv,
                                       "genus"sv, "e"sv,    "y"sv,   "et"sv};
    text = trim_right(text);
    auto const begin = last_word_begin(text);
    auto const name = text.substr(begin);
    bool const genus = begin > 0 && name.size() >= kShortest && is_plain_word(name) &&
                       is_latin_genus(name) && has_latin_ending(name) && !name.ends_with("e"sv) &&
                       !name.ends_with("en"sv);
    if (!genus) return std::nullopt;
    auto const words = trim_right(text.substr(0, begin));
    auto const before = words.substr(last_word_begin(words));
    // "… fore tibiae broad (Fig. 15A) Ausella"
    bool const word = before.ends_with(')') ||
                      (is_plain_word(before) && is_lower(code_point_at(before, 0).value));
    if (is_region(fold(name))) return std::nullopt;
    if (!word || stands_before_noun(before) || is_one_of(kNever, before)) return std::nullopt;
    return begin;
  }

  // "Aus", "Aus (Bus)"
  [[nodiscard]] static bool is_lone_genus(std::string_view text) {
    auto const words = words_of(start_of(text, kLongestTrailingName), 3);
    if (words.empty() || words.size() > 2 || !is_latin_genus(words[0])) return false;
    return words.size() == 1 || (words[1].front() == '(' && words[1].back() == ')');
  }

  // "… the basal part. . Aus bus": a row of dots for which there was hardly room.
  [[nodiscard]] static bool ends_in_two_dots(std::string_view words) {
    return words.ends_with(". .") || words.ends_with("..") || words.ends_with("…");
  }

  // Of the whole text, wherever it stands.
  [[nodiscard]] static bool is_name(std::string_view text) {
    if (text.size() > kLongestTrailingName || has_numbered_name_within(text)) return false;
    // "bus, n. sp. (p. 67)"
    auto const page = text.ends_with(')') ? text.rfind(" (p. ") : std::string_view::npos;
    if (page != std::string_view::npos) text = trim_right(text.substr(0, page));
    return is_latin_name(text) || is_epithet_or_name(text);
  }

  Grouping const& grouping_;
  std::vector<ReadLead>& reads_;
  std::vector<Finding>& findings_;
  LeadCutter cutter_;
  std::vector<std::uint32_t> home_;  // by lead: its couplet
  bool usually_dotted_{false};       // names stand behind rows of dots
  bool often_plain_{false};          // nothing but a blank sets them apart
  bool names_have_genera_{false};    // most of them, in full or cut short
  bool often_genera_{false};         // leads lead to genera rather than species
  bool counted_{false};              // the number of its species stands behind an epithet
};

}  // namespace

bool end_by_structure(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
                      std::vector<ReadLead>& reads, std::vector<Finding>& findings) {
  if (key.numbering.exact) return false;
  if (!StructureMender{key, sorted, grouping, reads, findings}.run()) return false;
  LeadCutter cutter{key, sorted, findings};
  give_words_back(key, cutter, reads);
  return true;
}

}  // namespace keydrift::printed
