#include "keydrift/formats/printed_rank_damage.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

class RankMender {
 public:
  RankMender(std::vector<SourceLine> const& lines, LineRanks& ranks, LineRanks& numerals)
      : lines_{lines}, ranks_{ranks}, numerals_{numerals} {}

  void run() {
    read_misread_indices();
    read_misread_b();
    read_damaged_letters();
    read_drawn_signs();
    read_misread_ones();
    read_misread_letters();
    read_misread_single_l();
    read_misread_double_l();
    read_fused_b();
  }

 private:
  static constexpr std::size_t kMostLines = 200;  // between a label and what tells it

  [[nodiscard]] static bool is_of(std::optional<RankLabel> const& rank, Alphabet alphabet,
                                  LabelEnd end) {
    return rank && rank->alphabet == alphabet && rank->label.end == end && rank->repeats == 0 &&
           rank->decimal.empty();
  }

  // The ordinal of the nearest label of its kind above line `at`, or below it; 0 without.
  [[nodiscard]] std::uint32_t ordinal_above(std::size_t at, Alphabet alphabet, LabelEnd end) const {
    for (auto i = at; i-- > 0 && i + kMostLines > at;) {
      if (is_of(ranks_[i], alphabet, end)) return ranks_[i]->ordinal;
    }
    return 0;
  }
  [[nodiscard]] std::uint32_t ordinal_below(std::size_t at, Alphabet alphabet, LabelEnd end) const {
    for (auto i = at + 1; i < std::min(lines_.size(), at + kMostLines); ++i) {
      if (is_of(ranks_[i], alphabet, end)) return ranks_[i]->ordinal;
    }
    return 0;
  }
  [[nodiscard]] bool stands_near(std::size_t at, Alphabet alphabet, std::uint32_t ordinal,
                                 LabelEnd end) const {
    auto const first = ranks_.begin() + static_cast<std::ptrdiff_t>(at - std::min(at, kMostLines));
    return std::any_of(first, ranks_.begin() + static_cast<std::ptrdiff_t>(at),
                       [&](std::optional<RankLabel> const& rank) {
                         return is_of(rank, alphabet, end) && rank->ordinal == ordinal;
                       });
  }

  // What line i begins with is `sign` misread.
  void read_as(std::size_t i, std::string const& sign, Label const& misread) {
    auto const stop = misread.end == LabelEnd::dot ? "." : ")";
    auto readings = read_rank_labels(sign + stop + " ");
    if (readings.empty()) return;
    readings.front().label.printed = misread.printed;
    readings.front().label.text_at = misread.text_at;
    ranks_[i] = readings.front();
    numerals_[i].reset();
  }
  [[nodiscard]] static bool is_closed(Label const& label) {
    return label.end == LabelEnd::dot || label.end == LabelEnd::parenthesis;
  }

  // "B. Shell white." / "I. Epidermis hairy" / "2. Epidermis bare": the 2 has no other 1.
  void read_misread_ones() {
    constexpr std::uint32_t kL = 12;  // the letter l
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      bool const numeral = numerals_[i] && numerals_[i]->alphabet == Alphabet::roman_upper &&
                           numerals_[i]->ordinal == 1 && numerals_[i]->repeats == 0;
      bool const letter = ranks_[i] && ranks_[i]->alphabet == Alphabet::lower &&
                          ranks_[i]->ordinal == kL && ranks_[i]->repeats == 0;
      if (!numeral && !letter) continue;
      auto const label = numeral ? numerals_[i]->label : ranks_[i]->label;
      if (!is_closed(label) || !stands_near(i, Alphabet::digits, 2, label.end)) continue;
      bool const wanted = ordinal_below(i, Alphabet::digits, label.end) == 2 &&
                          ordinal_above(i, Alphabet::digits, label.end) != 1;
      if (wanted) read_as(i, "1", label);
    }
  }

  // "a. Shell large" / "h. Shell small" without a g: a letter that looks like the one that is due.
  void read_misread_letters() {
    struct Look {
      Alphabet seen{};
      std::uint32_t ordinal{};
      char meant{};
    };
    static constexpr std::array kLooks{
        Look{Alphabet::lower, 8, 'b'},   Look{Alphabet::digits, 6, 'b'},
        Look{Alphabet::lower, 5, 'c'},   Look{Alphabet::digits, 8, 'B'},
        Look{Alphabet::digits, 13, 'B'}, Look{Alphabet::upper, 7, 'C'}};
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!ranks_[i] || ranks_[i]->repeats > 0 || !is_closed(ranks_[i]->label)) continue;
      auto const rank = *ranks_[i];
      auto const end = rank.label.end;
      for (auto const& look : kLooks) {
        if (!is_of(rank, look.seen, end) || rank.ordinal != look.ordinal) continue;
        bool const upper = look.meant < 'a';
        auto const due = static_cast<std::uint32_t>(look.meant - (upper ? 'A' : 'a') + 1);
        auto const letters = upper ? Alphabet::upper : Alphabet::lower;
        bool const wanted = ordinal_above(i, letters, end) + 1 == due && due > 1 &&
                            ordinal_below(i, letters, end) != due &&
                            !stands_near(i, look.seen, look.ordinal - 1, end);
        if (wanted) read_as(i, {look.meant}, rank.label);
      }
    }
  }

  // "k. Stem tall … l." / "1. Petals red" / "l. Petals white": the 1 has no 2 and its rival is an
  // l.
  void read_misread_single_l() {
    constexpr std::uint32_t kL = 12;  // the letter l
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!ranks_[i] || !is_closed(ranks_[i]->label)) continue;
      auto const& label = ranks_[i]->label;
      bool const one = is_of(*ranks_[i], Alphabet::digits, label.end) && ranks_[i]->ordinal == 1;
      bool const wanted = one && starts_with_upper(lines_[i].text.substr(label.text_at)) &&
                          ordinal_above(i, Alphabet::lower, label.end) == kL - 1 &&
                          ordinal_below(i, Alphabet::lower, label.end) == kL &&
                          ordinal_below(i, Alphabet::digits, label.end) != 2;
      if (wanted) read_as(i, "l", Label{label});
    }
  }

  // "l. Lip thin" / "11. Lip thick" beside "k." and "kk.": the 11 has no 10 and no 12, the l no ll.
  void read_misread_double_l() {
    constexpr std::size_t kFewest = 2;  // letters that are doubled
    constexpr std::uint32_t kL = 12;    // the letter l
    std::size_t doubled = 0;
    std::vector<std::size_t> elevens;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!ranks_[i]) continue;
      auto const& rank = *ranks_[i];
      bool const twice = rank.alphabet == Alphabet::lower && rank.repeats == 1;
      if (twice && rank.ordinal == kL) return;
      if (twice) ++doubled;
      if (is_of(rank, Alphabet::digits, rank.label.end) && rank.ordinal == 11) elevens.push_back(i);
    }
    if (doubled < kFewest || elevens.size() != 1) return;
    auto const i = elevens.front();
    auto const& label = ranks_[i]->label;
    bool const wanted = is_closed(label) &&
                        starts_with_upper(lines_[i].text.substr(label.text_at)) &&
                        stands_near(i, Alphabet::lower, kL, label.end) &&
                        ordinal_above(i, Alphabet::digits, label.end) != 10 &&
                        ordinal_below(i, Alphabet::digits, label.end) != 12;
    if (wanted) read_as(i, "ll", Label{label});
  }

  // "V. Legs thin" for b', which the a' above lacks, where no line bears another Roman numeral.
  void read_fused_b() {
    constexpr std::uint32_t kFive = 5;
    auto const is_small = [](std::optional<RankLabel> const& rank, std::uint32_t ordinal,
                             std::uint8_t marks) {
      return rank && rank->alphabet == Alphabet::lower && rank->ordinal == ordinal &&
             rank->label.marks == marks;
    };
    std::size_t others = 0;
    for (auto const& numeral : numerals_) {
      if (numeral && numeral->alphabet == Alphabet::roman_upper && numeral->ordinal != kFive) {
        ++others;
      }
    }
    if (others > 0) return;
    bool wanted = false;  // an a' above that no b' has answered
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (is_small(ranks_[i], 1, 1)) wanted = true;
      if (is_small(ranks_[i], 2, 1) || is_small(ranks_[i], 1, 0) || is_small(ranks_[i], 2, 0)) {
        wanted = false;
      }
      bool const five = numerals_[i] && numerals_[i]->alphabet == Alphabet::roman_upper &&
                        numerals_[i]->ordinal == kFive && numerals_[i]->label.marks == 0 &&
                        numerals_[i]->label.end == LabelEnd::dot;
      if (!five || !wanted) continue;
      read_as(i, "b'", Label{numerals_[i]->label});
      wanted = false;
    }
  }

  // "O Plants woody" and "X Calyx hairy" beside "= Leaves linear": a ring and a cross.
  void read_drawn_signs() {
    constexpr std::size_t kFewest = 2;  // of each
    auto const is_drawn = [this](std::size_t i, char letter) {
      auto const text = lines_[i].text;
      return text.size() > 3 && text[0] == letter && text[1] == ' ' &&
             is_upper(code_point_at(text, skip_blanks(text, 1)).value);
    };
    std::size_t signs = 0;
    for (auto const& rank : ranks_) {
      if (rank && rank->alphabet == Alphabet::sign) ++signs;
    }
    if (signs < kFewest) return;
    for (auto const& [letter, sign] :
         {std::pair{'O', char32_t{0x25CB}}, std::pair{'X', char32_t{0xD7}}}) {
      std::vector<std::size_t> drawn;
      for (std::size_t i = 0; i < lines_.size(); ++i) {
        if (is_drawn(i, letter)) drawn.push_back(i);
      }
      if (drawn.size() < kFewest) continue;
      for (auto const i : drawn) {
        RankLabel rank;
        rank.alphabet = Alphabet::sign;
        rank.sign = sign;
        rank.label.family = LabelFamily::dash;
        rank.label.printed = lines_[i].text.substr(0, 1);
        rank.label.text_at = skip_blanks(lines_[i].text, 1);
        ranks_[i] = rank;
        numerals_[i].reset();
      }
    }
  }

  // "d?. Wings" behind "d1.", "al. Wings" beside "b1." and "a2.", "Bl. Beak" beside "B2.": an index
  // that was misread.
  void read_misread_indices() {
    auto const is_latin = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    auto const ends = [](char c) { return c == '.' || c == ')' || c == ' '; };
    std::size_t indexed = 0;
    std::array<bool, 128> seconds{};  // by letter: "b2."
    for (auto const& line : lines_) {
      auto const text = line.text;
      bool const index =
          text.size() > 3 && is_latin(text[0]) && text[1] >= '1' && text[1] <= '9' && ends(text[2]);
      if (index) ++indexed;
      if (index && text[1] == '2') seconds[static_cast<unsigned char>(text[0])] = true;
    }
    if (indexed < 2) return;
    std::array<char, 128> last{};  // by letter: the index read last
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (text.size() < 5 || (text[2] != '.' && text[2] != ')')) continue;
      char letter = text[0];
      char index = text[1];
      if (is_latin(letter) && index >= '1' && index <= '9') {
        last[static_cast<unsigned char>(letter)] = index;
        continue;
      }
      char const above = is_latin(letter) ? last[static_cast<unsigned char>(letter)] : '\0';
      bool const worn = std::string_view{"?^*\"!%&"}.find(index) != std::string_view::npos;
      if (worn && above > 0 && above < '9' &&
          starts_with_upper(text.substr(skip_blanks(text, 3)))) {
        index = static_cast<char>(above + 1);  // "d1. Scales few" / "d?. Scales many"
      } else if (is_latin(letter) && (index == 'l' || index == 'I')) {
        index = '1';
        if (!seconds[static_cast<unsigned char>(letter)]) continue;
      } else if (letter == '6' && index >= '1' && index <= '9' && is_misread_b(i)) {
        letter = 'b';
      } else {
        continue;
      }
      auto const readings = read_rank_labels(std::string{letter, index} + ". ");
      if (readings.empty()) continue;
      auto reading = readings.front();
      reading.label.printed = text.substr(0, 2);
      reading.label.text_at = skip_blanks(text, 3);
      if (reading.label.text_at < text.size()) ranks_[i] = reading;
    }
  }

  // "DD, Wings", "D D. Wings" for "DD.", "oa. Wings" for "aa.", "d'} Wings" for "d')", where the
  // letter stands above.
  void read_damaged_letters() {
    FewestRepeats above;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (i > 0 && ranks_[i - 1]) see(*ranks_[i - 1], above);
      auto const text = lines_[i].text;
      constexpr std::size_t kShortest = 6;  // bytes, with the first of the words
      if (text.size() < kShortest) continue;
      char const letter = text[0];
      bool const latin = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
      if (!latin) continue;
      std::string label;
      std::size_t printed = 2;
      bool first = false;
      if (!ranks_[i] && text[1] == letter && text[2] == ',') {
        label = {letter, letter, '.'};
      } else if (!ranks_[i] && text[1] == ',' && text[2] == ' ' && is_first_of_rivals(letter)) {
        label = {letter, '.'};
        printed = 1;
        first = true;
      } else if (text[1] == ' ' && text[2] == letter && text[3] == '.') {
        label = {letter, letter, '.'};
        printed = 3;
      } else if (!ranks_[i] && text[2] == '.' && are_one_letter(letter, text[1]) != '\0') {
        auto const meant = are_one_letter(letter, text[1]);
        label = {meant, meant, '.'};
      } else if (!ranks_[i] && is_mark(static_cast<unsigned char>(text[1])) && text[2] == '}') {
        label = {letter, text[1], ')'};
      } else {
        continue;
      }
      auto const words = skip_blanks(text, printed + 1);
      bool const apart = is_blank(code_point_at(text, printed + 1).value);
      if (!apart || !is_upper(code_point_at(text, words).value)) continue;
      auto readings = read_rank_labels(label + " ");
      if (readings.empty() || (!first && !stands_above(readings.front(), above))) continue;
      readings.front().label.printed = text.substr(0, printed);
      readings.front().label.text_at = words;
      ranks_[i] = readings.front();
    }
  }

  // "D, Wings" above "DD. Wings", where no line begins "D. ".
  [[nodiscard]] bool is_first_of_rivals(char letter) {
    if (auto const known = first_of_rivals_.find(letter); known != first_of_rivals_.end()) {
      return known->second;
    }
    bool answered = false;
    bool stands = false;
    for (auto const& line : lines_) {
      auto const text = line.text;
      if (text.size() < 3 || text[0] != letter) continue;
      stands = stands || (text[1] == '.' && text[2] == ' ');
      answered = answered || (text[1] == letter && (text[2] == '.' || text[2] == ','));
    }
    return first_of_rivals_[letter] = answered && !stands;
  }

  // 'a' of "oa." for "aa.": one of the two letters looks like the other; 0 where neither does.
  [[nodiscard]] static char are_one_letter(char first, char second) {
    for (auto const& [look, meant] :
         {std::pair{'o', 'a'}, std::pair{'h', 'b'}, std::pair{'e', 'c'}}) {
      bool const so = (first == look && second == meant) || (first == meant && second == look);
      if (so) return meant;
    }
    return '\0';
  }

  // By rank and ordinal, how often a label repeats its sign at the least, of the lines so far.
  using FewestRepeats = std::unordered_map<std::uint64_t, std::uint32_t>;
  [[nodiscard]] static std::uint64_t slot_of(RankLabel const& rank) {
    return (static_cast<std::uint64_t>(rank.ordinal) << 32U) | rank.rank();
  }
  static void see(RankLabel const& rank, FewestRepeats& above) {
    auto const at = above.try_emplace(slot_of(rank), rank.repeats).first;
    at->second = std::min(at->second, rank.repeats);
  }
  // The first of the leads that `rival` answers, with the same sign behind it.
  [[nodiscard]] static bool stands_above(RankLabel const& rival, FewestRepeats const& above) {
    auto const found = above.find(slot_of(rival));
    return found != above.end() && found->second < rival.repeats;
  }

  // "6. Wings" for "b.", which "bb. Wings" answers and nothing else does.
  void read_misread_b() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& six = ranks_[i];
      bool const alone = six && six->alphabet == Alphabet::digits && six->ordinal == 6 &&
                         six->repeats == 0 && six->decimal.empty() &&
                         starts_with_upper(lines_[i].text.substr(six->label.text_at));
      if (!alone || !is_answered_by_two_b(i, six->label.end)) continue;
      auto readings = read_rank_labels("b" + std::string{lines_[i].text.substr(1, 1)} + " ");
      if (readings.empty()) continue;
      auto reading = readings.front();
      reading.label.printed = lines_[i].text.substr(0, 1);
      reading.label.text_at = six->label.text_at;
      ranks_[i] = reading;
    }
  }

  [[nodiscard]] bool is_answered_by_two_b(std::size_t at, LabelEnd end) const {
    for (auto i = at + 1; i < std::min(lines_.size(), at + kMostLines); ++i) {
      auto const& rank = ranks_[i];
      if (!rank) continue;
      if (rank->alphabet == Alphabet::digits && rank->ordinal >= 5 && rank->ordinal <= 7)
        return false;
      if (rank->alphabet != Alphabet::lower || rank->ordinal > 2) continue;
      return rank->ordinal == 2 && rank->repeats == 1 && rank->label.end == end;
    }
    return false;
  }

  // "62. Wings" for "b2.": an "a2." stands above and no 61 or 63 is near by.
  [[nodiscard]] bool is_misread_b(std::size_t at) const {
    auto const text = lines_[at].text;
    if (!is_upper(code_point_at(text, skip_blanks(text, 3)).value)) return false;
    char const index = text[1];
    constexpr std::size_t kMostMisread = 8;  // of the same label; more are a couplet 62
    std::size_t alike = 0;
    bool answers = false;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const other = lines_[i].text;
      if (i == at || other.size() < 3 || other[2] != text[2]) continue;
      if (other[0] == '6' && other[1] == index && ++alike == kMostMisread) return false;
      if (i < at && other[0] == 'a' && other[1] == index) answers = true;
      bool const beside = other[0] == '6' && (other[1] == index - 1 || other[1] == index + 1);
      if (beside) return false;
    }
    return answers;
  }

  std::vector<SourceLine> const& lines_;
  LineRanks& ranks_;
  LineRanks& numerals_;
  std::unordered_map<char, bool> first_of_rivals_;  // by letter, of those asked for
};

}  // namespace

void mend_rank_labels(std::vector<SourceLine> const& lines, LineRanks& ranks, LineRanks& numerals) {
  RankMender{lines, ranks, numerals}.run();
}

}  // namespace keydrift::printed
