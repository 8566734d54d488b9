#pragma once
// The numbers themselves, "(3–)4–6(–8) mm or more", and the words in front of them.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/units.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::reading {

enum class Bound { none, at_least, at_most, more_than, less_than };
[[nodiscard]] Bound opposite(Bound bound);

// Words in front of a number.
struct LeadIn {
  Bound bound{Bound::none};
  bool about{false};
  bool negated{false};
  std::string dimension;  // "longer than 3 mm"
};

// The bare numbers of one range, in the printed units.
struct Core {
  double low{};
  double high{};
  double least{};  // extremes
  double greatest{};
  std::optional<CanonicalUnit> unit;
  bool backwards{false};
  bool or_rarely{false};
  bool or_more{false};
  bool or_less{false};
};

// Finds its way about the tokens of one stretch of text.  Tokens that have been read as something
// else than hedges, and those of formulas, are not used.
class CoreReader {
 public:
  CoreReader(LeadText const& text, std::uint32_t stop) : text_{text}, stop_{stop} {}

 protected:
  using Index = std::uint32_t;

  [[nodiscard]] bool usable(Index at) const {
    return at < stop_ && (text_.is_open(at) || text_.roles[at] == Role::hedge) &&
           !text_.tokens[at].formula;
  }
  [[nodiscard]] bool sign(Index at, char32_t wanted) const {
    return usable(at) && text_.is_sign(at, wanted);
  }
  [[nodiscard]] bool word(Index at, std::string_view wanted) const {
    return usable(at) && text_.is_word(at, wanted);
  }
  [[nodiscard]] bool is(Index at, std::uint32_t classes) const {
    return usable(at) && text_.info[at].is(classes);
  }
  [[nodiscard]] bool times_sign(Index at) const { return sign(at, 0xD7) || word(at, "x"); }
  [[nodiscard]] bool number(Index at) const;
  [[nodiscard]] bool counts_single(Index at) const;
  [[nodiscard]] double value(Index at) const {
    return text_.tokens[at].kind == TokenKind::number ? text_.tokens[at].value
                                                      : text_.info[at].numeral;
  }
  // Passes over bounds and approximators, and stands on the number or comparison behind them.
  // Where neither follows, nothing is passed over.
  Index lead_in(Index at, LeadIn& words) const;
  static bool stands_before_numbers(Sense sense);
  [[nodiscard]] bool begins_number(Index at) const;
  [[nodiscard]] bool begins_comparison(Index at) const;
  [[nodiscard]] double factor_word(Index at) const;
  // "a third", "one-half", "two-thirds", "three quarters"; `at` stands behind it.
  bool fraction_at(Index& at, double& value) const;
  // A comparative and the word that joins it to what it compares with: "longer than", "länger als",
  // "plus long que", "más larga que".
  struct Comparative {
    std::string_view dimension{};
    int direction{};  // 1: more, -1: less
    Index end{};
  };
  [[nodiscard]] std::optional<Comparative> comparative_at(Index at) const;
  [[nodiscard]] bool span_sign(Index at) const {
    return sign(at, U'-') || is(at, kTo) || spans_numbers(at);
  }
  // "9.2~10.1", as Chinese and Japanese keys print it; "2,1 a 2,4", "2,4 à 2,7", "3 bis 5" where
  // the language is not told: nothing else stands so between two numbers.
  [[nodiscard]] bool spans_numbers(Index at) const {
    if (at == 0 || !number(at - 1) || !number(at + 1)) return false;
    if (word(at, "a") || word(at, "à") || word(at, "bis")) return true;
    return (sign(at, U'~') || sign(at, 0xFF5E)) && !text_.tokens[at].blank_before;
  }
  // "(3–)", "((1–)2–)" in front of a number: the least number, and where it ends.
  bool low_extremes(Index& at, double& least) const;
  // "(–8)", "(to 8)", "(rarely 8)", "(or 10)", "(-5(-9))" behind a number.
  bool high_extremes(Index& at, Core& core) const;
  [[nodiscard]] std::optional<CanonicalUnit> unit_at(Index at, Index& end) const;
  void take_unit(Index& at, Core& core) const;
  // A number, a span, their extremes and unit; `at` stands behind them.
  std::optional<Core> core_at(Index& at) const;
  // "or more", "+", "or rarely 8", ", rarely to 8 mm".
  void take_tail(Index& at, Core& core) const;
  [[nodiscard]] bool amount_follows(Index at) const;
  static NumericRange range_of(Core const& core, Bound bound, double factor, bool about);

  LeadText const& text_;
  Index stop_;
};

}  // namespace keydrift::reading
