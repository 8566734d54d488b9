#include "keydrift/formats/printed_indent_ends.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_numbered_species.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestNameAtEnd = 100;  // bytes of a name at a line's end

class IndentEndFinder {
 public:
  IndentEndFinder(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {}

  IndentEnds find() && {
    look_at_lines();
    drop_lines_around();
    return std::move(found_);
  }

 private:
  // A name in Latin form at the end, of two words at least.
  [[nodiscard]] static bool ends_in_name(std::string_view text) {
    if (text.size() > kLongestNameAtEnd) {
      auto const blank = text.find(' ', text.size() - kLongestNameAtEnd);
      if (blank == std::string_view::npos) return false;
      text.remove_prefix(blank + 1);
    }
    auto const words = words_of(text);
    auto const first = words.size() > kWordsOfNameAtEnd ? words.size() - kWordsOfNameAtEnd : 0;
    for (auto w = first; w < words.size(); ++w) {
      if (!is_capitalised(words[w]) && !is_abbreviated(words[w])) continue;
      auto const name = text.substr(static_cast<std::size_t>(words[w].data() - text.data()));
      if (is_latin_name(name)) return true;
    }
    return false;
  }

  // "… weakly serrate. BUSA", "… weakly serrate. busa Roe"
  [[nodiscard]] static bool ends_in_lone_name(std::string_view text) {
    constexpr std::size_t kShortest = 4;  // letters of a word in capitals
    auto const stop = text.rfind(". ");
    if (stop == std::string_view::npos || stop == 0) return false;
    auto const tail = without_closing_marks(text.substr(stop + 2));
    if (tail.find(' ') == std::string_view::npos && is_in_capitals(tail, kShortest)) return true;
    return is_bare_epithet(tail) || is_genusless_name(tail);
  }

  // "busa Roe", "BUSA", "3. A. busa" on lines of their own, where these are the rule.
  void find_ends_alone() {
    constexpr std::size_t kFewest = 4;
    constexpr std::size_t kShortest = 4;  // letters of a word in capitals
    found_.alone.assign(lines_.size(), false);
    std::vector<std::size_t> alone;
    for (std::size_t i = 1; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || found_.ends[i] || is_beside_leads(lines_[i].text) ||
          lines_[i].indent == 0)
        continue;
      bool const capitals = is_in_capitals(text, kShortest) && is_plain_word(text) &&
                            has_strict_latin_ending(fold(text));
      if (capitals || is_bare_epithet(text) || is_genusless_name(text) || is_numbered_name(text) ||
          is_numbered_name_in_full(text)) {
        alone.push_back(i);
      }
    }
    if (alone.size() < kFewest || alone.size() < found_.led.size()) alone = counted_alone_;
    std::erase_if(alone, [this](std::size_t i) { return found_.ends[i]; });
    for (auto const i : alone) found_.alone[i] = found_.ends[i] = true;
    found_.led.insert(found_.led.end(), alone.begin(), alone.end());
    std::sort(found_.led.begin(), found_.led.end());
  }

  // "… puberulous all over  6. A. busa"
  [[nodiscard]] static bool ends_in_numbered_name(std::string_view text) {
    auto const gap = text.rfind("  ");
    return gap != std::string_view::npos && is_numbered_name(trim_left(text.substr(gap)));
  }

  void look_at_lines() {
    found_.ends.assign(lines_.size(), false);
    dotted_.assign(lines_.size(), false);
    counted_.assign(lines_.size(), false);
    found_.hanging.assign(lines_.size(), false);
    std::vector<std::size_t> unled;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || is_beside_leads(lines_[i].text)) continue;
      auto const split = split_at_leader(text, numbering_);
      // "… reddish brown ....." / "18. A. busa."
      bool const answers = i > 0 && found_.hanging[i - 1] && is_numbered_name(text);
      bool const told = lines_[i].markup.destination_begin != kNotTold;
      bool const led = told ||
                       (split.kind != LeaderKind::none && split.destination_begin < text.size()) ||
                       ends_in_numbered_name(text) || answers;
      found_.ends[i] = led;
      dotted_[i] = split.kind == LeaderKind::dots;
      found_.hanging[i] = dotted_[i] && !led;
      if (!led && split.kind == LeaderKind::none) unled.push_back(i);
      if (!led) continue;
      counted_[i] = told;
      found_.led.push_back(i);
      auto const name = words_of(start_of(text.substr(split.destination_begin), kLongestNameAtEnd));
      if (!name.empty() && is_capitalised(name.front())) found_.genera.emplace(name.front());
    }
    take_ends_that_count(unled);
    find_ends_alone();
    // Names without leaders, where they are the rule.
    std::vector<std::size_t> named;
    std::map<std::string, std::size_t> first_words;  // of lines that may be a name
    for (auto const i : unled) {
      if (ends_in_name(lines_[i].text) || ends_in_lone_name(lines_[i].text)) named.push_back(i);
      if (is_latin_name(lines_[i].text)) ++first_words[first_word(lines_[i].text)];
    }
    if (named.size() < found_.led.size()) return;
    // "Leaves entire" looks like a name, but other lines do not name Leaves as often as the genus.
    // Nor where names have numbers before them.
    auto most =
        static_cast<std::size_t>(std::count_if(named.begin(), named.end(), [this](std::size_t i) {
          return is_name_numbered_at_end(lines_[i].text);
        }));
    for (auto const& [word, count] : first_words) most = std::max(most, count);
    for (auto const& [word, count] : first_words) {
      if (count * 3 > most) found_.genera.insert(word);
    }
    std::erase_if(named, [&](std::size_t i) {
      return is_latin_name(lines_[i].text) && !is_abbreviated(words_of(lines_[i].text).front()) &&
             !found_.genera.contains(first_word(lines_[i].text));
    });
    if (named.empty()) return;
    for (auto const i : named) found_.ends[i] = true;
    found_.led.insert(found_.led.end(), named.begin(), named.end());
    std::sort(found_.led.begin(), found_.led.end());
  }

  // "… terminal leaflet cuspidate 9. A. busa." between ends of 8. and 10.: the count tells it where
  // half of the ends have no leaders.
  void take_ends_that_count(std::vector<std::size_t>& unled) {
    constexpr std::size_t kFewest = 4;
    std::map<std::size_t, std::uint32_t> numbers;  // by line
    std::map<std::size_t, std::uint32_t> alone;    // by line, of names without words before them
    auto const look_at = [&](std::size_t i) {
      auto const text = without_closing_marks(lines_[i].text);
      auto const is_numbered = [](std::string_view end) {
        return is_numbered_name(end) || is_numbered_epithet(end);
      };
      auto const at = numbered_end(text, kLongestNameAtEnd, is_numbered);
      bool const behind_words = at > 0 && at < text.size();
      auto const number = behind_words ? species_number_at(text.substr(at)) : 0;
      if (number > 0) numbers[i] = number;
      if (at == 0 && is_numbered(text)) alone[i] = species_number_at(text);
    };
    for (auto const i : found_.led) look_at(i);
    for (auto const i : unled) look_at(i);
    auto all = numbers;
    all.insert(alone.begin(), alone.end());
    if (numbers.size() * 2 < all.size()) return;
    constexpr std::uint32_t kMostLeftOut = 2;  // ends that a line's end parts
    std::size_t counting = 0;
    std::uint32_t before = 0;
    for (auto const& [line, number] : all) {
      if (number > before && number <= before + 1 + kMostLeftOut) ++counting;
      before = number;
    }
    if (counting < kFewest || counting * 3 < numbers.size() * 2) return;
    // "… fruit black." / "15. O. busa.": the key goes on to the last that is due below its words.
    auto const last = numbers.rbegin()->first;
    before = numbers.rbegin()->second;
    for (auto behind = alone.upper_bound(last); behind != alone.end(); ++behind) {
      if (behind->second != before + 1) break;
      numbers[behind->first] = before = behind->second;
    }
    // "… spikelets purplish." / "2. A. busa" between ends of 1. and 3.
    auto const first = numbers.begin()->first;
    before = 0;
    for (auto const& [line, number] : all) {
      bool const due = before > 0 && number == before + 1 && lines_[line].indent > 0;
      if (due && line > first && alone.contains(line)) counted_alone_.push_back(line);
      before = number;
    }
    for (auto const i : unled) {
      if (numbers.contains(i)) found_.ends[i] = counted_[i] = true;
    }
    auto const counted = std::stable_partition(unled.begin(), unled.end(),
                                               [&](std::size_t i) { return !numbers.contains(i); });
    found_.led.insert(found_.led.end(), counted, unled.end());
    std::sort(found_.led.begin(), found_.led.end());
    unled.erase(counted, unled.end());
  }

  // Where rows of dots or numbered names are the rule, lines before the first of them and behind
  // the last that end otherwise are of running heads and accounts ("… aequali. — Tab. IV").
  void drop_lines_around() {
    // A row of dots may end the line above.
    auto const is_dotted = [this](std::size_t i) {
      return dotted_[i] || (i > 0 && found_.hanging[i - 1]);
    };
    // Ends that count go on with dotted ones.
    bool const dots = std::any_of(found_.led.begin(), found_.led.end(), is_dotted);
    if (dots && keep_between([&](std::size_t i) { return is_dotted(i) || counted_[i]; })) return;
    auto const numbered =
        std::count_if(found_.led.begin(), found_.led.end(),
                      [this](std::size_t i) { return is_name_numbered_at_end(lines_[i].text); });
    if (numbered * 2 < std::ssize(found_.led)) return;
    // "9. B. Tannerii."
    keep_between([this](std::size_t i) {
      return ends_in_abbreviated_name(lines_[i].text) || is_name_numbered_at_end(lines_[i].text);
    });
  }
  template <typename Is>
  bool keep_between(Is is_usual) {
    auto const first = std::find_if(found_.led.begin(), found_.led.end(), is_usual);
    if (first == found_.led.end()) return false;
    auto const last = std::find_if(found_.led.rbegin(), found_.led.rend(), is_usual).base();
    auto const usual = std::count_if(first, last, is_usual);
    if (usual * 4 < (last - first) * 3) return false;
    found_.led = std::vector<std::size_t>(first, last);
    return true;
  }
  // "… long. 1. A. busa.", "… long. I3. A. busa"
  [[nodiscard]] static bool ends_in_abbreviated_name(std::string_view text) {
    text = without_closing_marks(text);
    auto const epithet = last_word_begin(text);
    auto const before = trim_right(text.substr(0, epithet));
    return epithet > 0 && is_epithet(text.substr(epithet)) &&
           is_abbreviated(before.substr(last_word_begin(before)));
  }
  // "… 1–1.5 cm. long. 1. A. busa.", "6. A. busa"
  [[nodiscard]] static bool is_name_numbered_at_end(std::string_view text) {
    text = without_closing_marks(text);
    return numbered_end(text, kLongestNameAtEnd, is_numbered_name) < text.size();
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  IndentEnds found_;
  std::vector<bool> dotted_;                // by line: has a row of dots
  std::vector<std::size_t> counted_alone_;  // lines that are nothing but an end whose number is due
  std::vector<bool> counted_;  // by line: no leaders, but the number of a species that is due
};

}  // namespace

IndentEnds find_indent_ends(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  return IndentEndFinder{lines, numbering}.find();
}

bool is_beside_leads(std::string_view text) {
  return is_page_furniture(text) || starts_note(text) || starts_caption(text) ||
         starts_footnote(text);
}

}  // namespace keydrift::printed
