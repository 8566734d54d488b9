#include "keydrift/formats/printed_plan.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_answered.hpp"
#include "keydrift/formats/printed_breaks.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_plan_leaves.hpp"
#include "keydrift/formats/printed_rank_damage.hpp"
#include "keydrift/formats/printed_rank_letters.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// What the labels of one rank are like over the whole file.
struct RankTally {
  std::size_t labels{};
  std::size_t firsts{};   // A, a, I, 1
  std::size_t seconds{};  // B, b, II, 2
  std::size_t repeats{};  // AA, a', **
  std::size_t twice{};    // AAA, a'', a2
  std::size_t upper{};    // words begin with a capital
  std::size_t full{};     // words stand on the label's line
  std::uint32_t seen{};   // ordinals of letters, a bit for each
  std::uint32_t again{};  // the same, of those that stand more than once

  [[nodiscard]] std::size_t plain() const { return labels - repeats; }
  [[nodiscard]] bool mostly_upper() const { return upper * 2 > labels; }
};

using RankTallies = std::array<RankTally, RankLabel::kRanks>;

bool is_bare_rank(RankLabel const& rank) { return rank.label.end == LabelEnd::none; }

// "a. 1st abdominal segment long"
bool is_ordinal_word(std::string_view text, std::size_t at) {
  auto end = at;
  while (end < text.size() && is_digit(static_cast<unsigned char>(text[end]))) ++end;
  if (end == at || end == text.size()) return false;
  auto const ending = text.substr(end, 2);
  bool const known = ending == "st" || ending == "nd" || ending == "rd" || ending == "th";
  return known && is_blank(code_point_at(text, end + ending.size()).value);
}

bool words_upper(SourceLine const& line, Label const& label) {
  return starts_with_upper(line.text.substr(label.text_at));
}

// "                    3. bus, Roe, p. 218." beneath "a. Wings clear.": a species with its number,
// set far to the right of where the line before begins, for the lead had no room for it.
bool is_name_set_apart(SourceLine const& line, std::uint32_t indent_before) {
  constexpr std::uint32_t kFar = 12;  // columns
  if (line.indent < indent_before + kFar) return false;
  return epithet_behind_number(line.text).has_value();
}

// "1. bus, p. 170." beneath "… ventrals 201-214 ..": the line before leads to it.
bool answers_leaders(std::vector<SourceLine> const& lines, std::size_t i) {
  if (i == 0 || lines[i - 1].text.empty()) return false;
  auto const before = lines[i - 1].text;
  bool const led = before.ends_with("..") || before.ends_with(". .") || before.ends_with("…");
  return led && epithet_behind_number(lines[i].text);
}

// "... first ......   bus,": the page that follows stands in the margin above.
bool ends_in_led_word(std::string_view text) {
  auto const blank = text.rfind(' ');
  return blank != std::string_view::npos && trim_right(text.substr(0, blank)).ends_with("...");
}

// "1. Aus bus.", "3. A. bus Roe."
bool names_account(std::string_view line) {
  constexpr std::size_t kMostWords = 6;
  auto const words = words_of(start_of(line, 80), kMostWords + 1);
  bool const binomial =
      words.size() > 2 && words.size() <= kMostWords && is_species_number(words[0]) &&
      is_capitalised(words[1]) && is_epithet(without_end(words[2])) &&
      has_strict_latin_ending(without_end(words[2])) &&
      (words.size() == 3 || is_authorish(words[3]) || words[3] == "sp." || words[3] == "n.");
  // "1. AUS BUS Roe. foliis obovatis"
  bool const in_capitals = words.size() > 3 && is_species_number(words[0]) &&
                           is_in_capitals(words[1], 2) && is_in_capitals(words[2], 2) &&
                           titles_account(line.substr(words[0].size() + 1));
  return binomial || in_capitals || is_numbered_name(line) || is_numbered_taxon(line);
}

// "1. Ausella busa.": nothing but a number and a name.
bool is_binomial_alone(std::string_view line) {
  constexpr std::size_t kWords = 3;
  return words_of(start_of(line, 80), kWords + 1).size() == kWords;
}

class LabelPlanner {
 public:
  explicit LabelPlanner(std::vector<SourceLine> const& lines) : lines_{lines}, breaks_{lines} {}

  std::optional<LeadPlan> plan() && {
    read_all();
    settle_numerals();
    find_rivals();
    tally();
    LeadPlan plan;
    plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    std::size_t before = lines_.size();  // the last line with text
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty()) continue;
      bool const gap = i == 0 || lines_[i - 1].text.empty();
      // "5. AUS Roe", "XXII. AUS." above "I. …": the genus has its number in a book.
      bool const number = ranks_[i] && (ranks_[i]->alphabet == Alphabet::digits ||
                                        ranks_[i]->alphabet == Alphabet::roman_upper);
      bool const title = plan.starts.empty() && number && ranks_[i]->ordinal > 1 &&
                         i + 1 < lines_.size() && lines_[i + 1].text.empty();
      if (ranks_[i] && !title && is_start(i, gap ? lines_.size() : before) &&
          (plan.starts.empty() || !goes_on_with_dash(i, plan.starts.back()))) {
        plan.start_at[i] = static_cast<std::uint32_t>(plan.starts.size());
        plan.starts.push_back({static_cast<std::uint32_t>(i), *ranks_[i], false});
      }
      before = i;
    }
    if (plan.starts.size() < 2) return std::nullopt;
    take_dashes_for_signs(plan);
    return plan;
  }

 private:
  // "□ Leaves long" / "  — Leaves ovate" / "  — Leaves linear": where all other leads bear signs,
  // the dash is the sign of a level, too, if each answers another.
  void take_dashes_for_signs(LeadPlan& plan) const {
    constexpr std::size_t kFewest = 4;            // leads with signs
    std::map<std::uint32_t, std::size_t> dashes;  // by indentation
    std::size_t signs = 0;
    for (auto const& start : plan.starts) {
      if (start.rank.alphabet == Alphabet::sign) ++signs;
      if (start.rank.alphabet == Alphabet::dash) ++dashes[lines_[start.line].indent];
    }
    bool const paired =
        std::all_of(dashes.begin(), dashes.end(), [](auto const& one) { return one.second > 1; });
    auto const all =
        std::accumulate(dashes.begin(), dashes.end(), signs,
                        [](std::size_t sum, auto const& one) { return sum + one.second; });
    if (dashes.empty() || !paired || signs < kFewest || all != plan.starts.size()) return;
    for (auto& start : plan.starts) {
      if (start.rank.alphabet != Alphabet::dash) continue;
      start.rank.alphabet = Alphabet::sign;
      start.rank.sign = RankLabel::kDashAsSign;
    }
  }

  // "H. Roe." above the key that this author wrote.
  [[nodiscard]] bool is_author_between_blanks(std::size_t i) const {
    auto const words = words_of(start_of(lines_[i].text, 60), 3);
    if (words.size() != 2 || !is_abbreviated(words[0]) || words[0].size() != 2) return false;
    bool const apart = (i == 0 || lines_[i - 1].text.empty()) &&
                       (i + 1 >= lines_.size() || lines_[i + 1].text.empty());
    auto const name = without_closing_marks(words[1]);
    return apart && words[0].front() != 'A' && is_capitalised(name) && is_authorish(name);
  }

  // "a.", "b-c." and no more
  [[nodiscard]] bool is_left_of_column(std::size_t i) const {
    constexpr std::size_t kLongest = 5;  // bytes
    auto const line = i < lines_.size() ? lines_[i].text : std::string_view{};
    return !line.empty() && line.size() <= kLongest && line.ends_with('.') &&
           line.find(' ') == std::string_view::npos;
  }

  void read_all() {
    ranks_.resize(lines_.size());
    numerals_.resize(lines_.size());
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].goes_on) continue;  // "… length 4.5-5.2" / "mm."
      // "2. Ausella": an end, by its number
      if (lines_[i].is_no_lead && lines_[i].is_told_destination()) continue;
      if (is_author_between_blanks(i)) continue;
      for (auto& reading : read_rank_labels(lines_[i].text)) {
        // "(1) ...... Aus bus": a footnote's sign at the end of a lead's words.
        auto const text = lines_[i].text;
        if (text.substr(reading.label.text_at, 3) == "..." && text.front() == '(') continue;
        if (reading.alphabet == Alphabet::digits && reading.ordinal > kMostCouplets) continue;
        // "a." / "b-c." / "d.": what is left of a column.
        if (is_left_of_column(i) &&
            (is_left_of_column(i + 1) || (i > 0 && is_left_of_column(i - 1)))) {
          continue;
        }
        if (reading.alphabet == Alphabet::digits &&
            titles_group(lines_, i, reading.label.text_at)) {
          continue;
        }
        bool const roman =
            reading.alphabet == Alphabet::roman_upper || reading.alphabet == Alphabet::roman_lower;
        (roman ? numerals_ : ranks_)[i] = reading;
      }
    }
    mend_rank_labels(lines_, ranks_, numerals_);
    mend_letter_ranks(lines_, ranks_, numerals_);
    drop_names_of_their_own();
  }

  // Lines by their label and the word behind it: "7. Thallus" of "7. Thallus crustose".
  [[nodiscard]] std::map<std::string_view, std::size_t> count_fronts() const {
    std::map<std::string_view, std::size_t> fronts;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (ranks_[i]) ++fronts[front_of(i)];
    }
    return fronts;
  }
  [[nodiscard]] std::string_view front_of(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const words = std::min(ranks_[i]->label.text_at, text.size());
    return text.substr(0, std::min(text.find(' ', words), text.size()));
  }

  void drop_names_of_their_own() {
    auto const fronts = count_fronts();
    std::uint32_t before = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty()) continue;
      bool const below = i > 0 && !lines_[i - 1].text.empty();
      // "1. Aus bus." between blank lines: the head of an account.
      bool const alone = !below && (i + 1 == lines_.size() || lines_[i + 1].text.empty());
      bool const answers =
          below && (is_numbered_name(lines_[i].text) || answers_leaders(lines_, i));
      // "A. busa Roe." behind words that lead to it: a genus cut short, and no letter that counts.
      bool const named = ranks_[i] && ranks_[i]->alphabet == Alphabet::upper &&
                         !words_upper(lines_[i], ranks_[i]->label) &&
                         (is_latin_name(lines_[i].text) ||
                          describes_species(lines_[i].text.substr(ranks_[i]->label.text_at)));
      // "7. Thallus crustose" answers "7. Thallus fruticose, erect".
      bool const like_rival = !alone && ranks_[i] && fronts.at(front_of(i)) > 1;
      bool const binomial = is_binomial_alone(lines_[i].text) && !like_rival;
      if (ranks_[i] && (named || ((alone || binomial) && names_account(lines_[i].text)) ||
                        answers || is_name_set_apart(lines_[i], before))) {
        ranks_[i].reset();
      } else {
        before = lines_[i].indent;
      }
    }
  }

  // Are I, V and X numerals, or the letters after H, U and W?  Decided for each kind of label: they
  // are numerals where one and two occur and no H does.
  void settle_numerals() {
    RankTallies numerals{};
    std::array<bool, RankLabel::kRanks> has_h{};
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (auto const& numeral = numerals_[i]) {
        auto& tally = numerals[numeral->rank()];
        if (numeral->ordinal == 1) ++tally.firsts;
        if (numeral->ordinal == 2 || (numeral->ordinal == 1 && numeral->repeats > 0)) {
          ++tally.seconds;
        }
      }
      if (auto const& letter = ranks_[i]; letter && letter->ordinal == 8) {
        bool const upper = letter->alphabet == Alphabet::upper;
        if (upper || letter->alphabet == Alphabet::lower) {
          auto numeral = *letter;
          numeral.alphabet = upper ? Alphabet::roman_upper : Alphabet::roman_lower;
          has_h[numeral.rank()] = true;
        }
      }
    }
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& numeral = numerals_[i];
      if (!numeral) continue;
      auto const& tally = numerals[numeral->rank()];
      if (tally.firsts > 0 && tally.seconds > 0 && !has_h[numeral->rank()]) ranks_[i] = numeral;
    }
  }

  void find_rivals() {
    LabelKinds kinds(lines_.size());
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!ranks_[i]) continue;
      bool const dash = ranks_[i]->alphabet == Alphabet::dash;
      kinds[i] = dash ? kAnswersAll : ranks_[i]->rank() + 1;
    }
    answered_ = find_answered(lines_, kinds);
  }

  void tally() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& rank = ranks_[i];
      if (!rank) continue;
      auto& tally = tallies_[rank->rank()];
      ++tally.labels;
      bool const decimal = !rank->decimal.empty();
      if (rank->repeats > 0 || decimal) ++tally.repeats;
      if (rank->repeats > 1) ++tally.twice;
      if (rank->repeats == 0 && rank->ordinal == 1) ++tally.firsts;
      if (rank->repeats == 0 && rank->ordinal == 2) ++tally.seconds;
      if (words_upper(lines_[i], rank->label)) ++tally.upper;
      if (rank->label.text_at < lines_[i].text.size()) ++tally.full;
      if (rank->ordinal < 32) {
        auto const bit = std::uint32_t{1} << rank->ordinal;
        tally.again |= tally.seen & bit;
        tally.seen |= bit;
      }
    }
    for (std::uint32_t rank = 0; rank < RankLabel::kRanks; ++rank) {
      accepted_[rank] = is_in_use(tallies_[rank]);
    }
    auto const levels = levels_by_sign([this](std::uint32_t rank) {
      return tallies_[rank].labels >= 2 && tallies_[rank].repeats == 0;
    });
    for (auto const rank : levels) accepted_[rank] = true;
  }

  [[nodiscard]] static bool is_in_use(RankTally const& tally) {
    if (tally.labels < 2) return false;
    bool const counted = tally.firsts > 0 && (tally.seconds > 0 || tally.firsts > 1);
    bool const repeated =
        tally.repeats > 0 && tally.plain() > 0 && tally.repeats * 4 >= tally.plain();
    bool const indexed = tally.plain() == 0 && tally.twice > 0;
    return counted || repeated || indexed;
  }

  // "1. Plants of both sexes; fruit without nerves." / "   – Marshes, rare": a dash beneath the
  // words of the lead, and no second one to answer it.
  [[nodiscard]] bool goes_on_with_dash(std::size_t i, LeadStart const& last) const {
    auto const& line = lines_[i];
    auto const& start = lines_[last.line];
    if (ranks_[i]->alphabet != Alphabet::dash || last.rank.alphabet == Alphabet::dash) return false;
    if (lines_[i - 1].text.empty() || last.unlabelled) return false;
    auto const words =
        start.indent + count_code_points(start.text.substr(0, last.rank.label.text_at));
    if (line.indent != words) return false;
    for (auto next = i + 1; next < lines_.size(); ++next) {
      auto const& rank = ranks_[next];
      if (!rank || lines_[next].indent > line.indent) continue;
      return rank->alphabet != Alphabet::dash || lines_[next].indent != line.indent;
    }
    return true;
  }

  [[nodiscard]] bool is_start(std::size_t i, std::size_t before) const {
    auto const& rank = *ranks_[i];
    auto const& line = lines_[i];
    if (starts_caption(line.text) || is_ruled(line.text)) return false;
    bool const upper = words_upper(line, rank.label);
    bool const alone = rank.label.text_at >= line.text.size();
    if (rank.alphabet == Alphabet::dash) {
      // A dash answers labels; a line that goes on with one is not set so.
      bool const meant = upper || before == lines_.size() || !breaks_.forced(before, i);
      return !alone && (meant || counts_as_lead(i, before));
    }
    if (!accepted_[rank.rank()]) return false;
    auto const& tally = tallies_[rank.rank()];
    bool const letter = rank.alphabet == Alphabet::upper || rank.alphabet == Alphabet::lower;
    // "n. 341": the number of a specimen.
    constexpr std::uint32_t kLetterN = 14;
    bool const above = (tally.seen >> (kLetterN - 1) & 1U) != 0;  // "m."
    if (rank.alphabet == Alphabet::lower && rank.ordinal == kLetterN && rank.repeats == 0 &&
        !above && is_digit(code_point_at(line.text, rank.label.text_at).value)) {
      return false;
    }
    // "N. Australia, Roe": a letter that stands once, and neither M nor L before it.
    constexpr std::uint32_t kSurely = 3;  // A to C may stand without those before them
    // A letter of an excerpt, which a destination shows to be a lead; "I." and "H." may be
    // numerals.
    auto const sign = static_cast<char>('A' + rank.ordinal - 1);
    bool const led = std::string_view{"DHILMUVX"}.find(sign) == std::string_view::npos &&
                     has_row_of_dots(line.text);
    bool const lone = rank.alphabet == Alphabet::upper && rank.ordinal > kSurely &&
                      rank.ordinal < 32 && (tally.again >> rank.ordinal & 1U) == 0 && !led;
    bool const counts = !lone || (tally.seen >> (rank.ordinal - 2) & 3U) != 0;
    if (!counts) return false;
    if (alone) return !is_bare_rank(rank) || rank.repeats > 0;
    // "A. bus" is a name, "a leaf" and "5 spines" go on with a sentence; "a) 3 spines" does not.
    auto first_at = rank.label.text_at;
    auto const dash = code_point_at(line.text, first_at);
    if (is_dash(dash.value)) first_at = skip_blanks(line.text, first_at + dash.length);
    auto const first = code_point_at(line.text, first_at).value;  // "α. — 4 setae"
    bool const greek = rank.alphabet == Alphabet::greek_lower;
    bool const count = (is_digit(first) && !is_bare_rank(rank) &&
                        (letter || greek || rank.label.end == LabelEnd::parenthesis)) ||
                       (!is_bare_rank(rank) && is_ordinal_word(line.text, rank.label.text_at)) ||
                       counts_as_lead(i, before);
    if (tally.mostly_upper() && !upper && !count) return false;
    if (letter && is_bare_rank(rank) && tally.upper * 5 < tally.labels * 4 &&
        tally.repeats * 3 < tally.labels) {
      return false;
    }
    if (before == lines_.size()) return true;
    auto const hyphen = code_point_before(lines_[before].text, lines_[before].text.size()).value;
    // "… bus, Roe," / "b². Hind tibiae": an index is no word's.
    bool const indexed = rank.repeats > 0 && !is_bare_rank(rank) && upper;
    // "2. Peristome acute," / "a. Shell clear": a comma for the full stop of so short a lead.
    bool const opens = !is_bare_rank(rank) && upper &&
                       ((ranks_[before] && rank.ordinal == 1) || carries_on(i, rank));
    bool const goes = hyphen == ',' && (indexed || opens || ends_in_led_word(lines_[before].text));
    // "A. Lime-knots yellow—" / "a. Sporangia stalked—": no hyphen of a word.
    bool const word_parted = is_dash(hyphen) && !(hyphen == 0x2014 && opens);
    if (word_parted || (hyphen == ',' && !goes)) return false;
    return !is_bare_rank(rank) || rank.repeats > 0 || upper || count || !breaks_.forced(before, i);
  }

  // "– 2-flowered heads", "+ 5 stamens": words that begin with a count, and a rival stands as deep.
  // `before`: the last line with text, which has its end or is set in otherwise.
  [[nodiscard]] bool counts_as_lead(std::size_t i, std::size_t before) const {
    auto const& line = lines_[i];
    bool const count = is_digit(code_point_at(line.text, ranks_[i]->label.text_at).value);
    if (!count || !answered_[i]) return false;
    if (before == lines_.size() || lines_[before].indent != line.indent) return true;
    auto const split = split_at_leader(lines_[before].text, Numbering{});
    return split.kind != LeaderKind::none && split.destination_begin < lines_[before].text.size();
  }

  // "c. Scales" where the label above it is b.
  [[nodiscard]] bool carries_on(std::size_t at, RankLabel const& rank) const {
    constexpr std::size_t kMostLines = 8;  // of a lead
    for (auto i = at; i-- > 0 && i + kMostLines > at;) {
      auto const& above = ranks_[i];
      if (!above || !accepted_[above->rank()]) continue;
      return above->rank() == rank.rank() && above->ordinal + 1 == rank.ordinal &&
             above->repeats == 0 && rank.repeats == 0;
    }
    return false;
  }

  std::vector<SourceLine> const& lines_;
  LineBreaks breaks_;
  std::vector<std::optional<RankLabel>> ranks_;     // by line
  std::vector<std::optional<RankLabel>> numerals_;  // the same read as roman numerals
  std::vector<bool> answered_;                      // by line
  RankTallies tallies_{};
  std::array<bool, RankLabel::kRanks> accepted_{};
};

}  // namespace

std::optional<LeadPlan> plan_by_labels(std::vector<SourceLine> const& lines) {
  return LabelPlanner{lines}.plan();
}

std::optional<LeadPlan> plan_by_labels_and_leaves(std::vector<SourceLine> const& lines,
                                                  Numbering const& numbering) {
  auto plan = LabelPlanner{lines}.plan();
  if (!plan || !add_leaves(lines, numbering, *plan)) return std::nullopt;
  return plan;
}

}  // namespace keydrift::printed
