// Ranges, units, ratios and negations in every way that they are printed in.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <random>
#include <string>
#include <vector>

#include "reading_support.hpp"
#include "seeds.hpp"

namespace keydrift::test {
namespace {

// What a random range is printed from; its numbers are quarters, so that fractions can print them.
struct Printed {
  int least{};  // quarters
  int low{};
  int high{};
  int greatest{};
  bool has_least{false};
  bool has_greatest{false};
};

struct Unit {
  char const* printed;
  double millimetres;
};
// The inch is 25.4 mm and the foot 12 inches by the agreement of 1959; a line is the twelfth part
// of an inch (common practice).
constexpr std::array kPropertyUnits{
    Unit{"mm", 1},     Unit{"cm", 10},      Unit{"dm", 100},         Unit{"m", 1000},
    Unit{"µm", 0.001}, Unit{"μm", 0.001},   Unit{"inches", 25.4},    Unit{"in.", 25.4},
    Unit{"ft", 304.8}, Unit{"feet", 304.8}, Unit{"lines", 25.4 / 12}};

struct Tongue {
  char const* language;
  char const* to;
  char const* about;
  char const* length;  // behind the unit
  char decimal;
  std::size_t units;  // of kPropertyUnits, from the front, that are printed in it
};
constexpr std::array kTongues{Tongue{"en", "to", "ca.", "long", '.', kPropertyUnits.size()},
                              Tongue{"de", "bis", "etwa", "lang", ',', 6},
                              Tongue{"fr", "à", "environ", "de long", ',', 6},
                              Tongue{"es", "a", "unos", "de largo", ',', 6},
                              Tongue{"pt", "a", "cerca de", "de comprimento", ',', 6},
                              Tongue{"la", "ad", "circa", "longa", ',', 6}};

class Printer {
 public:
  Printer(std::mt19937& random, Tongue const& tongue) : random_{random}, tongue_{tongue} {
    style_ = static_cast<int>(below(4));
  }

  std::string number(int quarters) const {
    auto const whole = quarters / 4;
    auto const part = static_cast<std::size_t>(quarters % 4);
    static constexpr std::array<char const*, 4> kSigns{"", "¼", "½", "¾"};
    static constexpr std::array<char const*, 4> kSlashes{"", "1/4", "1/2", "3/4"};
    static constexpr std::array<char const*, 4> kDecimals{"", "25", "5", "75"};
    auto const front = whole == 0 ? std::string{} : std::to_string(whole);
    if (part == 0) return std::to_string(whole);
    if (style_ == 1) return front + kSigns.at(part);
    if (style_ == 2) return front + (front.empty() ? "" : " ") + kSlashes.at(part);
    return std::to_string(whole) + tongue_.decimal + kDecimals.at(part);
  }

  std::string range(Printed const& value, std::string const& unit) {
    static constexpr std::array<char const*, 7> kDashes{"-", "–", "—", "−", "--", " – ", " - "};
    auto dash = std::string{kDashes.at(below(kDashes.size()))};
    auto const wide = dash.front() == ' ' ? std::string{"–"} : dash;  // within parentheses
    bool const in_words = below(5) == 0;
    auto const between = in_words ? ' ' + std::string{tongue_.to} + ' ' : dash;
    std::string text;
    auto const blank = std::string{below(2) == 0 ? "" : " "};
    bool const bare = value.has_least && value.has_greatest && below(4) == 0;
    if (value.has_least) {
      text +=
          bare ? '(' + number(value.least) + ") " : '(' + number(value.least) + wide + ')' + blank;
    }
    text += number(value.low);
    bool const extremes = value.has_least || value.has_greatest;
    if (value.high != value.low) {
      if (!extremes && below(3) == 0) text += ' ' + unit;  // "3 mm – 5 mm"
      text += between + number(value.high);
    }
    if (value.has_greatest) {
      text += bare ? " (" + number(value.greatest) + ')'
                   : blank + '(' + wide + number(value.greatest) + ')';
    }
    static constexpr std::array<char const*, 4> kBlanks{" ", "\u00A0", "\u2009", " "};
    return text + kBlanks.at(below(kBlanks.size())) + unit;
  }

  std::size_t below(std::size_t limit) { return random_() % limit; }

 private:
  std::mt19937& random_;
  Tongue const& tongue_;
  int style_{};
};

Printed random_range(std::mt19937& random) {
  auto const up_to = [&](int most) {
    return static_cast<int>(random() % static_cast<unsigned>(most));
  };
  Printed value;
  value.least = 1 + up_to(40);
  value.low = value.least + 1 + up_to(40);
  value.high = value.low + (up_to(4) == 0 ? 0 : 1 + up_to(40));
  value.greatest = value.high + 1 + up_to(40);
  value.has_least = up_to(3) == 0;
  value.has_greatest = up_to(3) == 0;
  return value;
}

void expect_near(double a, double b, std::string const& text) {
  ASSERT_LE(std::abs(a - b), 1e-9 * std::max(std::abs(a), std::abs(b))) << text;
}

// The one number that a lead states; no ranges where it states anything else.
Atom only_number(std::string const& text, std::string const& language) {
  auto edition = couplet_of({text}, language);
  read_statements(edition, Lexicon{});
  auto const& statements = edition.couplets[0].leads[0].statements;
  if (statements.size() != 1 || statements[0].any_of.size() != 1) return {};
  return statements[0].any_of[0];
}

TEST(NumberProperties, ARangeIsReadBackFromEveryWayOfPrintingIt) {
  auto const run = seeds(400);
  for (auto seed = run.begin; seed < run.end; ++seed) {
    std::mt19937 random{seed};
    auto const& tongue = kTongues[random() % kTongues.size()];
    auto const& unit = kPropertyUnits[random() % tongue.units];
    auto const value = random_range(random);
    Printer printer{random, tongue};
    auto const text = "Ligula " + printer.range(value, unit.printed) + ' ' + tongue.length;
    auto const atom = only_number(text, tongue.language);
    ASSERT_EQ(atom.ranges.size(), 1U) << tongue.language << ": " << text;
    ASSERT_EQ(atom.unit, "mm") << text;
    ASSERT_EQ(atom.character, "~n:ligula length|mm") << text;
    auto const& range = atom.ranges.front();
    auto const mm = [&](int quarters) { return quarters / 4.0 * unit.millimetres; };
    expect_near(range.usual.low, mm(value.low), text);
    expect_near(range.usual.high, mm(value.high), text);
    expect_near(range.extreme.low, mm(value.has_least ? value.least : value.low), text);
    expect_near(range.extreme.high, mm(value.has_greatest ? value.greatest : value.high), text);
    ASSERT_FALSE(range.usual.low_open || range.usual.high_open) << text;
    ASSERT_FALSE(range.approximate) << text;
  }
}

TEST(NumberProperties, AnApproximateRangeIsWidenedByATenth) {
  auto const run = seeds(60);
  for (auto seed = run.begin; seed < run.end; ++seed) {
    std::mt19937 random{seed};
    auto const& tongue = kTongues[random() % kTongues.size()];
    auto value = random_range(random);
    value.has_least = value.has_greatest = false;
    Printer printer{random, tongue};
    auto const text = std::string{"Ligula "} + tongue.about + ' ' + printer.range(value, "mm");
    auto const atom = only_number(text, tongue.language);
    ASSERT_EQ(atom.ranges.size(), 1U) << tongue.language << ": " << text;
    ASSERT_TRUE(atom.ranges.front().approximate) << text;
    expect_near(atom.ranges.front().usual.low, value.low / 4.0 * 0.9, text);
    expect_near(atom.ranges.front().usual.high, value.high / 4.0 * 1.1, text);
  }
}

// One length printed in two units is one predicate.
TEST(NumberProperties, AUnitDoesNotMatter) {
  static constexpr std::array<Unit, 4> kMetric{Unit{"mm", 1}, Unit{"cm", 10}, Unit{"dm", 100},
                                               Unit{"m", 1000}};
  auto const run = seeds(60);
  for (auto seed = run.begin; seed < run.end; ++seed) {
    std::mt19937 random{seed};
    auto const low = 1 + random() % 9000;
    auto const high = low + 1 + random() % 900;
    auto const printed = [&](Unit const& unit) {
      std::array<char, 80> text{};
      std::snprintf(text.data(), text.size(), "Spike %.10g–%.10g %s long",
                    static_cast<double>(low) / unit.millimetres,
                    static_cast<double>(high) / unit.millimetres, unit.printed);
      return std::string{text.data()};
    };
    auto const in_mm = only_number(printed(kMetric[0]), "en");
    ASSERT_EQ(in_mm.ranges.size(), 1U) << printed(kMetric[0]);
    for (auto const& unit : kMetric)
      EXPECT_EQ(only_number(printed(unit), "en"), in_mm) << printed(unit);
  }
}

// "Beak 2–3 times as long as wide", and the same the other way round.
TEST(NumberProperties, ARatioIsReadBackAndTurnsRound) {
  static constexpr std::array<char const*, 5> kTimes{" times", "×", " ×", "x", " x"};
  static constexpr std::array<char const*, 3> kWidths{"wide", "broad", "wide"};
  auto const run = seeds(120);
  for (auto seed = run.begin; seed < run.end; ++seed) {
    std::mt19937 random{seed};
    auto const value = random_range(random);
    Printer printer{random, kTongues[0]};
    auto const factor = printer.range(value, "");
    auto const times = kTimes[random() % kTimes.size()];
    std::string const width = kWidths[random() % kWidths.size()];
    auto const number = factor.substr(0, factor.find_last_not_of(" \u00A0\u2009") + 1) + times;
    auto const long_first = only_number("Beak " + number + " as long as " + width, "en");
    auto const wide_first = only_number("Beak " + number + " as " + width + " as long", "en");
    ASSERT_EQ(long_first.ranges.size(), 1U) << number;
    ASSERT_EQ(wide_first.ranges.size(), 1U) << number;
    ASSERT_EQ(long_first.character, "~n:beak length/width|") << number;
    ASSERT_EQ(wide_first.character, long_first.character) << number;
    auto const least = (value.has_least ? value.least : value.low) / 4.0;
    auto const greatest = (value.has_greatest ? value.greatest : value.high) / 4.0;
    expect_near(long_first.ranges[0].usual.low, value.low / 4.0, number);
    expect_near(long_first.ranges[0].usual.high, value.high / 4.0, number);
    expect_near(long_first.ranges[0].extreme.low, least, number);
    expect_near(long_first.ranges[0].extreme.high, greatest, number);
    expect_near(wide_first.ranges[0].usual.low, 4.0 / value.high, number);
    expect_near(wide_first.ranges[0].usual.high, 4.0 / value.low, number);
    expect_near(wide_first.ranges[0].extreme.low, 1 / greatest, number);
    expect_near(wide_first.ranges[0].extreme.high, 1 / least, number);
  }
}

// The number's own piece, read beside its subject alone, is the same predicate.
TEST(PieceProperties, ANumberReadAgainIsTheSame) {
  auto const run = seeds(120);
  for (auto seed = run.begin; seed < run.end; ++seed) {
    std::mt19937 random{seed};
    auto const value = random_range(random);
    Printer printer{random, kTongues[0]};
    auto const number =
        printer.range(value, kPropertyUnits[random() % kPropertyUnits.size()].printed) + " long";
    auto edition =
        couplet_of({"Leaves hairy; spike usually " + number + ", except in Aus; sap red"});
    read_statements(edition, Lexicon{});
    auto const& lead = edition.couplets[0].leads[0];
    ASSERT_EQ(lead.statements.size(), 3U) << lead.text;
    auto const& statement = lead.statements[1];
    auto const& pieces = statement.pieces;
    auto const piece = std::find_if(pieces.begin(), pieces.end(), [](Piece const& each) {
      return each.kind == PieceKind::number;
    });
    ASSERT_NE(piece, pieces.end()) << lead.text;
    auto const again = lead.text.substr(piece->begin, piece->end - piece->begin);
    ASSERT_EQ(again, number);
    ASSERT_EQ(only_number("Spike " + again, "en"), statement.any_of[0]) << again;
  }
}

// "not" turns a state round, and "not un-" turns it back.
TEST(NegationProperties, TurnEveryStateRoundAndBack) {
  for (auto const& lexicon : {plant_lexicon(), animal_lexicon()}) {
    for (auto const& character : lexicon.characters) {
      for (auto const& state : character.states) {
        // "present" and "absent" deny each other; "longer" is half a phrase; nothing is
        // "unv-shaped".
        if (state.id == "present" || state.id == "absent" || character.id == "bract-reach" ||
            state.id == "v-shaped")
          continue;
        auto const subject = character.subjects.front().text;
        auto const plain = reading_of(subject + ' ' + state.id, lexicon);
        auto const denied = reading_of(subject + " not " + state.id, lexicon);
        auto const undone = reading_of(subject + " not un" + state.id, lexicon);
        auto const un = reading_of(subject + " un" + state.id, lexicon);
        ASSERT_NE(plain.find(" = " + state.id), std::string::npos) << plain;
        auto turned = plain;
        turned.replace(turned.find(" = "), 3, " ≠ ");
        EXPECT_EQ(denied, turned);
        EXPECT_EQ(un, turned);
        EXPECT_EQ(undone, plain);
      }
    }
  }
}

}  // namespace
}  // namespace keydrift::test
