#include "keydrift/formats/printed_words_before_epithets.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// How the leads of a key end.
struct EpithetHabit {
  bool mostly{};               // in epithets alone
  bool if_led{};               // so do all that have leaders or lines of their own
  bool dashes{};               // are the leaders of a third of the leads
  std::size_t of_one_word{};   // epithets alone
  std::size_t of_two_words{};  // the same
  std::unordered_map<std::string, std::size_t> genera;  // first words of first names

  [[nodiscard]] bool comes_again(std::string const& genus) const {
    auto const found = genera.find(genus);
    return found != genera.end() && found->second > 1;
  }
};

// Leaders stand before the destination.  `dashes`: those of many leads are dashes; of a few they
// stand before places, "Long. 2 mm. — Tessen bus".
bool has_leaders(ReadLead const& read, bool dashes) {
  return read.leaders != LeaderKind::blank && (dashes || read.leaders != LeaderKind::dash);
}

// Leaders stand before the destination, or it has a line of its own.
bool is_led(LeadCutter& cutter, ReadLead const& read, std::size_t i, bool dashes) {
  if (has_leaders(read, dashes)) return true;
  auto const joined = cutter.join(i);
  auto const& last = joined.spans.back();
  return joined.spans.size() > 1 &&
         joined.raw.compare(last.raw_begin, std::string::npos, read.lead.destination_printed) == 0;
}

bool are_dashes_leaders(std::vector<ReadLead> const& reads) {
  std::size_t named = 0;
  std::size_t dashes = 0;
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::taxa) continue;
    ++named;
    if (read.leaders == LeaderKind::dash) ++dashes;
  }
  return dashes * 3 >= named;
}

EpithetHabit habit_of(LeadCutter& cutter, std::vector<ReadLead> const& reads) {
  constexpr std::size_t kFewestLed = 2;
  EpithetHabit habit;
  habit.dashes = are_dashes_leaders(reads);
  std::size_t genusless = 0;
  std::size_t named = 0;
  std::size_t led = 0;
  std::size_t led_in_full = 0;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const& read = reads[i];
    if (read.to.form != DestinationForm::taxa) continue;
    auto const& taxon = read.to.taxa.taxa.front();
    ++named;
    if (taxon.genusless) ++genusless;
    if (is_led(cutter, read, i, habit.dashes)) ++(taxon.genusless ? led : led_in_full);
    if (taxon.genusless && taxon.name.find(' ') != std::string::npos) ++habit.of_two_words;
    ++habit.genera[first_word(taxon.name)];
  }
  habit.of_one_word = genusless - habit.of_two_words;
  habit.mostly = genusless * 2 > named;
  habit.if_led = led >= kFewestLed && led_in_full * 2 <= led;
  return habit;
}

// The taxon before whose epithet words stand: the last one of "Texas and Coahuila bus", the first
// of "Hintertibia bus Roe und cus Dorn"; none where the list is one of names.
TaxonReading const* taxon_behind_words(std::vector<TaxonReading> const& listed) {
  bool const places = std::all_of(listed.begin(), listed.end() - 1, [](TaxonReading const& one) {
    return !one.genusless && one.name.find(' ') == std::string::npos;
  });
  if (places) return &listed.back();
  bool const epithets = std::all_of(listed.begin() + 1, listed.end(),
                                    [](TaxonReading const& one) { return one.genusless; });
  return epithets ? &listed.front() : nullptr;
}

}  // namespace

bool may_stand_before_place(std::string_view text) {
  static constexpr std::array kWords{
      "northern"sv,     "southern"sv,     "eastern"sv,      "western"sv,
      "central"sv,      "from"sv,         "of"sv,           "de"sv,
      "du"sv,           "von"sv,          "aus"sv,          "in"sv,
      "nördliches"sv,   "südliches"sv,    "östliches"sv,    "westliches"sv,
      "northeastern"sv, "southeastern"sv, "northwestern"sv, "southwestern"sv,
      "and"sv,          "et"sv,           "und"sv,          "to"sv};
  text = trim_right(text);
  if (text.empty()) return false;
  auto const last = code_point_before(text, text.size()).value;
  if (last == ',' || last == ';' || last == ':' || is_dash(last)) return true;
  auto const word = text.substr(last_word_begin(text));
  return is_one_of(kWords, fold(word)) || (is_capitalised(word) && !word.ends_with('.'));
}

namespace {

// "folium lata": of no one name.
bool differ_in_gender(std::string_view word, std::string_view other) {
  constexpr std::array kEndings{"um"sv, "us"sv, "a"sv};
  auto const ending = [&kEndings](std::string_view one) {
    return std::find_if(kEndings.begin(), kEndings.end(),
                        [one](std::string_view end) { return one.ends_with(end); });
  };
  return ending(word) != kEndings.end() && ending(other) != kEndings.end() &&
         ending(word) != ending(other);
}

// "… coxae IV yellow; southern Brazil flavicoxa": the epithet behind a place, though it ends as
// words of other languages do as well.
void take_epithet_behind_place(LeadCutter& cutter, std::vector<ReadLead>& reads, std::size_t i) {
  auto const joined = cutter.join(i);
  auto const text = without_full_stop(trim_right(joined.raw));
  auto const begin = last_word_begin(text);
  auto const epithet = text.substr(begin);
  auto const before = trim_right(text.substr(0, begin));
  auto const place = last_word_begin(before);
  // "Grübchen; Kopf schmäler": where nouns have capitals, adjectives stand behind them.
  bool const latin = has_strict_latin_ending(epithet) || epithet.ends_with('a');
  bool const behind = is_capitalised(before.substr(place)) && !before.ends_with('.') &&
                      may_stand_before_place(before.substr(0, place));
  // "… not modified (Fig. 15) procera"
  bool const figure = before.ends_with(')') && has_strict_latin_ending(epithet);
  bool const noun =
      has_strict_latin_ending(epithet) && differ_in_gender(before.substr(place), epithet);
  bool const named = is_epithet(epithet) && latin && place > 0 && (behind || figure || noun);
  if (!named) return;
  reads[i].leaders = LeaderKind::blank;
  cutter.cut(reads[i], joined, before.size(), begin);
}

// "… Hinterschenkel beborstet. — 7 mm. — Alpen minuta Strgl.": an epithet and its author, where
// other leads end so.
void take_authored_epithet(LeadCutter& cutter, std::vector<ReadLead>& reads, std::size_t i) {
  constexpr std::size_t kShortest = 3;  // bytes of an author
  auto const joined = cutter.join(i);
  auto const text = trim_right(joined.raw);
  auto const at = last_word_begin(text);
  auto const author = text.substr(at);
  auto const before = trim_right(text.substr(0, at));
  auto const begin = last_word_begin(before);
  auto const epithet = before.substr(begin);
  // "keulenförmiger Börstchen", "dell'Isola Rocalina" are words, "var. busa Roe" goes with more.
  static constexpr std::array kEndings{"us"sv, "um"sv,  "a"sv,   "is"sv, "ae"sv,
                                       "i"sv,  "ens"sv, "ans"sv, "or"sv};
  bool const latin =
      std::all_of(epithet.begin(), epithet.end(), [](char c) { return c >= 'a' && c <= 'z'; }) &&
      std::any_of(kEndings.begin(), kEndings.end(),
                  [epithet](std::string_view end) { return epithet.ends_with(end); });
  auto const words = trim_right(before.substr(0, begin));
  bool const named = author.size() >= kShortest && is_authorish(author) && begin > 0 && latin &&
                     is_epithet(epithet) && has_strict_latin_ending(epithet) &&
                     !is_rank(words.substr(last_word_begin(words)));
  if (!named) return;
  reads[i].leaders = LeaderKind::blank;
  cutter.cut(reads[i], joined, words.size(), begin);
}

// "… — Insel Orbe busa m.", "… bei Tarn gesammelt Dorni n. sp.": the author's own species.
void take_own_epithet(LeadCutter& cutter, std::vector<ReadLead>& reads, std::size_t i) {
  auto const joined = cutter.join(i);
  auto const text = trim_right(joined.raw);
  auto name = without_mark_of_new(text);
  bool const is_new = name.size() < text.size();
  if (!is_new && text.ends_with(" m.")) name = trim_right(text.substr(0, text.size() - 3));
  if (name.size() == text.size()) return;
  auto const begin = last_word_begin(name);
  auto const epithet = name.substr(begin);
  bool const of_person = is_new && is_capitalised(epithet) && epithet.ends_with('i');
  bool const plain = is_epithet(epithet) && has_epithet_ending(epithet) &&
                     (is_new || has_strict_latin_ending(epithet) || epithet.ends_with("ex"));
  if (begin == 0 || !(plain || of_person)) return;
  reads[i].leaders = LeaderKind::blank;
  cutter.cut(reads[i], joined, trim_right(text.substr(0, begin)).size(), begin);
}

// "… at the sides only, pauper, Roe, p. 30": the author is no genus.
void take_epithet_before_author(LeadCutter& cutter, std::vector<ReadLead>& reads, std::size_t i) {
  auto const& taxa = reads[i].to.taxa.taxa;
  if (reads[i].to.form != DestinationForm::taxa || taxa.size() != 1) return;
  auto const& name = taxa.front().name;
  if (taxa.front().genusless || name.find(' ') != std::string::npos) return;
  auto const joined = cutter.join(i);
  std::string_view const text = joined.raw;
  auto const author = text.rfind(name);
  if (author == std::string_view::npos || author == 0 || !is_authorish(name)) return;
  auto const before = trim_right(text.substr(0, author));
  if (!before.ends_with(',')) return;
  auto const begin = last_word_begin(before);
  auto const epithet = before.substr(begin, before.size() - 1 - begin);
  auto const words = trim_right(before.substr(0, begin));
  if (!words.ends_with(',') || !is_epithet(epithet) || !has_epithet_ending(epithet)) return;
  cutter.cut(reads[i], joined, words.size() - 1, begin);
}

// "… with a white folium lata", "… a narrow septum (Fig. 40) septata", where hardly another end has
// two words.
void give_noun_back(LeadCutter& cutter, std::vector<ReadLead>& reads, std::size_t i,
                    std::unordered_set<std::string> const& of_leads, EpithetHabit const& habit) {
  auto const& to = reads[i].to;
  if (reads[i].leaders != LeaderKind::blank || to.form != DestinationForm::taxa) return;
  if (to.taxa.taxa.size() != 1 || !to.taxa.taxa.front().genusless) return;
  auto const& name = to.taxa.taxa.front().name;
  bool const two = name.find(' ') != std::string::npos;
  bool const figure = !two && !to.remark.empty() && is_epithet(to.remark) &&
                      has_strict_latin_ending(to.remark) &&
                      reads[i].lead.destination_printed.ends_with(") " + to.remark);
  if (!two && !figure) return;
  auto const joined = cutter.join(i);
  auto const text = trim_right(joined.raw);
  auto const last = two ? name.substr(name.find(' ') + 1) : to.remark;
  auto const begin = text.rfind(last);
  if (begin == std::string_view::npos || begin == 0 || last.find(' ') != std::string::npos) return;
  if (!is_epithet(last) || !has_epithet_ending(last)) return;
  // "pictus cockburni": a subspecies.  "bífida sigmoides": no name has an accent.
  auto const first = first_word(name);
  bool const stressed = text.substr(0, begin).find(first) == std::string_view::npos;
  bool const english = first.ends_with("eous");  // "testaceous"
  bool const word =
      of_leads.contains(first) || differ_in_gender(first, last) || stressed || english;
  if (two && (!word || habit.comes_again(first))) return;
  cutter.cut(reads[i], joined, trim_right(text.substr(0, begin)).size(), begin);
}

// "Borda anterior do cefalotorax lisa." in the accounts: the words that end sentences behind
// others in small letters, as no name of a species does.
void add_words_of_prose(KeyText const& key, std::unordered_set<std::string>& words) {
  constexpr std::size_t kMostLines = 20000;
  auto const is_small_word = [](std::string_view word) {
    return word.size() > 1 &&
           std::all_of(word.begin(), word.end(), [](char c) { return c < 0 || is_small(c); });
  };
  for (std::size_t i = 0; i < std::min(key.lines.size(), kMostLines); ++i) {
    std::string_view before;
    for (auto const word : words_of(key.lines[i].text)) {
      auto const bare = without_closing_marks(word);
      bool const ends = bare.size() < word.size() &&
                        std::string_view{".,;"}.find(word.back()) != std::string_view::npos;
      if (ends && is_small_word(bare) && is_small_word(before)) words.emplace(bare);
      before = word;
    }
  }
}

}  // namespace

void give_words_back(KeyText const& key, LeadCutter& cutter, std::vector<ReadLead>& reads) {
  auto const habit = habit_of(cutter, reads);
  if (!habit.mostly && !habit.if_led) return;
  if (habit.of_two_words * 2 <= habit.of_one_word) {
    std::unordered_set<std::string> of_leads;  // words, without those that end them
    for (auto const& read : reads) {
      for (auto const word : words_of(read.lead.text)) {
        of_leads.emplace(without_closing_marks(word));
      }
    }
    if (habit.of_two_words > 0) add_words_of_prose(key, of_leads);
    for (std::size_t i = 0; i < reads.size(); ++i)
      give_noun_back(cutter, reads, i, of_leads, habit);
  }
  if (habit.mostly) {
    for (std::size_t i = 0; i < reads.size(); ++i) {
      if (is_open(reads[i])) take_own_epithet(cutter, reads, i);
    }
  }
  if (habit.if_led) {
    for (std::size_t i = 0; i < reads.size(); ++i) {
      if (is_open(reads[i])) take_epithet_behind_place(cutter, reads, i);
      if (is_open(reads[i])) take_authored_epithet(cutter, reads, i);
    }
  }
  for (std::size_t i = 0; i < reads.size(); ++i) take_epithet_before_author(cutter, reads, i);
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const& read = reads[i];
    if (read.to.form != DestinationForm::taxa) continue;
    auto const& listed = read.to.taxa.taxa;
    auto const* const taxon = taxon_behind_words(listed);
    if (taxon == nullptr) continue;
    auto const genus = first_word(taxon->name);
    // "— Krim. busa Roe": a place that is cut short.
    auto const whole = genus.ends_with('.') ? genus.substr(0, genus.size() - 1) : genus;
    constexpr std::size_t kShortestPlace = 4;  // bytes
    if (whole.size() < genus.size() && whole.size() < kShortestPlace) continue;
    if (listed.size() > 1 && habit.comes_again(first_word(listed.front().name))) continue;
    if (taxon->genusless || !is_capitalised(whole) || genus.size() == taxon->name.size()) continue;
    // "2. Dorni Roe": an epithet with its capital, and its author.
    if (!is_lower(code_point_at(taxon->name, genus.size() + 1).value)) continue;
    auto const joined = cutter.join(i);
    std::string_view const text = joined.raw;
    auto const begin = text.rfind(genus + " ");
    if (begin == std::string_view::npos) continue;
    bool const place = may_stand_before_place(text.substr(0, begin));
    // "… Long. 1 mm. —" / "Tessen busa Roe": only the line ends there.
    bool const wrapped = place && joined.spans.size() > 1 &&
                         begin >= joined.spans.back().raw_begin &&
                         (read.leaders == LeaderKind::gap || read.leaders == LeaderKind::cell);
    bool const apart = has_leaders(read, habit.dashes) && !wrapped;
    // "… hoch wie ein halbes Auge. busa Roe": the word ends a sentence.
    bool const sentence = habit.mostly && !habit.comes_again(genus);
    if (whole.size() < genus.size() && !place && !sentence) continue;
    if (!(habit.if_led && place) && (apart || !habit.mostly)) continue;
    // "Erdőkben alba", twice: hardly a genus ends so.
    bool const again = habit.comes_again(genus) && has_strict_latin_ending(genus);
    if (again && !(place && habit.if_led)) continue;
    auto const words_end = begin + genus.size();
    cutter.cut(reads[i], joined, words_end, skip_blanks(text, words_end));
  }
}

}  // namespace keydrift::printed
