#include "keydrift/characters/reading/formulas.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>

#include "keydrift/characters/units.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

class FormulaMarker {
 public:
  explicit FormulaMarker(LeadText& text) : text_{text} {}

  void run() {
    for (Index i = 0; i < text_.size();) {
      auto end = i;
      if (number(i)) {
        end = end_of_numbers(i);
        if (is_formula(i, end)) {
          if (has_sum(i, end)) end = end_of_range(end);
          mark(begin_with_name(i), end);
        }
      } else if (roman(i)) {
        end = end_of_fin(i);
        if (end != i) mark(begin_with_letter(i), end);
      }
      i = std::max(i + 1, end);
    }
  }

 private:
  [[nodiscard]] bool open(Index at) const { return at < text_.size() && text_.is_open(at); }
  [[nodiscard]] bool number(Index at) const {
    return open(at) && text_.tokens[at].kind == TokenKind::number;
  }
  [[nodiscard]] bool sign(Index at, char32_t wanted) const {
    return open(at) && text_.is_sign(at, wanted);
  }
  [[nodiscard]] bool joins(Index at) const {
    return sign(at, U'-') || sign(at, U'+') || sign(at, U'/') || sign(at, U':');
  }
  // "XII" as it is printed.
  [[nodiscard]] bool roman(Index at) const {
    if (!open(at) || !text_.is_word(at) || !text_.tokens[at].capital) return false;
    auto const printed = text_.slice(at, at);
    return std::all_of(printed.begin(), printed.end(),
                       [](char c) { return c == 'I' || c == 'V' || c == 'X' || c == 'L'; });
  }

  // "2.4.4", without blanks.
  [[nodiscard]] bool joins_closely(Index at) const {
    return sign(at, U'.') && !text_.tokens[at].blank_before && number(at + 1) &&
           !text_.tokens[at + 1].blank_before;
  }

  // Behind the numbers that "-", "+", "/", ":" and "." join.
  [[nodiscard]] Index end_of_numbers(Index at) const {
    auto end = at + 1;
    while ((joins(end) && number(end + 1)) || joins_closely(end)) end += 2;
    return end;
  }

  // "6 + 12 or 13", "I, 11 to 13": behind the rest of the last number.
  [[nodiscard]] Index end_of_range(Index at) const {
    while (open(at) && text_.is_word(at) && text_.info[at].is(kOr | kTo) && number(at + 1)) {
      at = end_of_numbers(at + 1);
    }
    return at;
  }

  // "3-2-1", "10 + 14", "1:1.5", and "4123" behind "formula"; not "3–5", nor "4–4.6–5 mm" with the
  // mean between, nor the sides of "8-10/5-6 µm".
  [[nodiscard]] bool is_formula(Index begin, Index end) const {
    if (continues_name(begin) || behind_formula(begin)) return true;
    if (end == begin + 1) return false;
    bool ascending = true;
    for (auto i = begin + 1; i < end; i += 2) {
      if (text_.is_sign(i, U'/') && unit_behind(end)) return false;
      if (!text_.is_sign(i, U'-')) return true;
      ascending = ascending && text_.tokens[i - 1].value < text_.tokens[i + 1].value;
    }
    if (end > begin + 3) return !(ascending && unit_behind(end));
    // "2-2" is no range.
    return text_.tokens[begin].value == text_.tokens[begin + 2].value && !unit_behind(end);
  }

  [[nodiscard]] bool has_sum(Index begin, Index end) const {
    for (auto i = begin; i < end; ++i) {
      if (text_.is_sign(i, U'+')) return true;
    }
    return false;
  }

  [[nodiscard]] bool unit_behind(Index at) const {
    if (!open(at)) return false;
    bool const sign = text_.is_sign(at, U'%') || text_.is_sign(at, 0xB0);
    return sign || (text_.is_word(at) && !text_.is_word(at, "in") &&
                    canonical_unit(text_.tokens[at].word).has_value());
  }

  // "R4+5": the number goes on with a name.
  [[nodiscard]] bool continues_name(Index begin) const {
    return begin > 1 && sign(begin - 1, U'+') && !text_.tokens[begin - 1].blank_before &&
           !text_.tokens[begin].blank_before && text_.is_word(begin - 2);
  }
  [[nodiscard]] Index begin_with_name(Index begin) const {
    return continues_name(begin) ? begin - 1 : begin;
  }

  // "leg formula 4123", "formula: 3-4"
  [[nodiscard]] bool behind_formula(Index begin) const {
    static constexpr std::array<std::string_view, 5> kWords{"formula", "formulae", "formulas",
                                                            "formel", "formule"};
    auto i = begin;
    while (i > 0 && (sign(i - 1, U':') || sign(i - 1, U'=') ||
                     (text_.is_word(i - 1) && text_.info[i - 1].is(kCopula)))) {
      --i;
    }
    return i > 0 && text_.is_word(i - 1) &&
           std::find(kWords.begin(), kWords.end(), text_.tokens[i - 1].word) != kWords.end();
  }

  // "XII, 14–16", "X–XI, 8", "VIII-I, 9": spines and rays of a fin.  "tergite V, 3 spots" is none.
  // The same place when none begins there.
  [[nodiscard]] Index end_of_fin(Index at) const {
    if (at > 0 && text_.is_word(at - 1) && text_.info[at - 1].is(kLabelled)) return at;
    auto i = at + 1;
    while (joins(i) && roman(i + 1)) i += 2;
    if (joins(i) || sign(i, U',')) ++i;
    if (!number(i)) return at;
    i = end_of_range(end_of_numbers(i));
    bool const counts = open(i) && text_.is_content(i) && !text_.is_word(i, "rays") &&
                        !text_.is_word(i, "soft") && !text_.is_word(i, "branched");
    return counts || unit_behind(i) ? at : i;
  }

  // "D. XII": the letter is the fin's name, even where it might be an article ("A. III").
  [[nodiscard]] Index begin_with_letter(Index at) const {
    auto const letter = [&](Index i) {
      return text_.is_word(i) && text_.tokens[i].capital && text_.slice(i, i).size() == 1;
    };
    if (at > 1 && sign(at - 1, U'.') && letter(at - 2)) return at - 2;
    return at > 0 && text_.is_open(at - 1) && letter(at - 1) ? at - 1 : at;
  }

  void mark(Index begin, Index end) {
    for (auto i = begin; i < end; ++i) {
      auto& token = text_.tokens[i];
      token.formula = true;
      if (token.kind == TokenKind::sign && token.sign < 0x80 && token.sign != U'.') {
        token.word.assign(1, static_cast<char>(token.sign));
      }
    }
  }

  LeadText& text_;
};

}  // namespace

void mark_formulas(LeadText& text) { FormulaMarker{text}.run(); }

}  // namespace keydrift::reading
