#include "keydrift/characters/units.hpp"

#include <array>
#include <cmath>

#include "keydrift/characters/reading/numbers.hpp"

namespace keydrift {
namespace {

struct UnitRow {
  std::string_view words;  // folded, separated by blanks
  std::string_view unit;
  double factor;
};

// Lengths: the inch is 25.4 mm exactly (international yard and pound agreement of 1959).
constexpr std::array kUnits{
    UnitRow{"mm millimetre millimetres millimeter millimeters", "mm", 1},
    UnitRow{"cm centimetre centimetres centimeter centimeters", "mm", 10},
    UnitRow{"dm decimetre decimetres decimeter decimeters", "mm", 100},
    UnitRow{"m metre metres meter meters", "mm", 1000},
    UnitRow{"km kilometre kilometres kilometer kilometers", "mm", 1e6},
    UnitRow{"μm um micron microns micrometre micrometres micrometer micrometers", "mm", 0.001},
    UnitRow{"nm nanometre nanometres nanometer nanometers", "mm", 1e-6},
    UnitRow{"in inch inches \"", "mm", 25.4},
    // The twelfth part of an inch in botany and entomology (common practice).
    UnitRow{"line lines", "mm", 25.4 / 12},
    UnitRow{"ft foot feet", "mm", 304.8},
    UnitRow{"mm2 mm² sq-mm square-mm", "mm2", 1},
    UnitRow{"cm2 cm² sq-cm square-cm", "mm2", 100},
    UnitRow{"m2 m² sq-m square-m", "mm2", 1e6},
    UnitRow{"mg", "mg", 1},
    UnitRow{"g gram grams gramme grammes", "mg", 1000},
    UnitRow{"kg", "mg", 1e6},
    UnitRow{"° degree degrees deg", "°", 1},
    UnitRow{"% percent per-cent pct prozent", "%", 1},
    UnitRow{"1", "1", 1},
};

bool contains_word(std::string_view words, std::string_view wanted) {
  while (!words.empty()) {
    auto const blank = words.find(' ');
    if (words.substr(0, blank) == wanted) return true;
    if (blank == std::string_view::npos) return false;
    words.remove_prefix(blank + 1);
  }
  return false;
}

std::string_view trimmed(std::string_view text) {
  auto const blank = [](char c) { return c == ' ' || c == '\t'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

}  // namespace

std::optional<CanonicalUnit> canonical_unit(std::string_view printed) {
  auto folded = reading::fold(trimmed(printed));
  if (folded.size() > 1 && folded.back() == '.') folded.pop_back();
  // The micro sign folds to the Greek letter; blanks inside count as hyphens.
  for (auto& c : folded) {
    if (c == ' ') c = '-';
  }
  if (folded.empty()) return CanonicalUnit{.unit = "", .factor = 1};
  for (auto const& row : kUnits) {
    if (contains_word(row.words, folded)) {
      return CanonicalUnit{.unit = std::string{row.unit}, .factor = row.factor};
    }
  }
  return std::nullopt;
}

std::optional<RecordedNumber> read_number(std::string_view text, std::string_view default_unit) {
  reading::LeadText const words{text, ""};
  if (words.tokens.empty()) return std::nullopt;
  auto const measures = reading::measures_at(words, 0, words.size());
  if (measures.size() != 1) return std::nullopt;
  auto const& measure = measures.front();
  bool rest = measure.end != words.size();
  // A full stop behind an abbreviated unit says nothing.
  if (measure.end + 1 == words.size() && words.is_sign(measure.end, U'.')) rest = false;
  if (rest || measure.ratio || measure.negated || measure.ranges.size() != 1) return std::nullopt;
  // An approximate record is taken to be off by a tenth at most (common practice).
  auto const extreme = reading::widened(measure.ranges.front(), 0.1).extreme;
  RecordedNumber recorded{.low = extreme.low, .high = extreme.high, .unit = measure.unit};
  if (!measure.unit_printed) {
    auto const unit = canonical_unit(default_unit);
    if (!unit) return std::nullopt;
    recorded.low = reading::clean(recorded.low * unit->factor);
    recorded.high = reading::clean(recorded.high * unit->factor);
    recorded.unit = unit->unit;
  }
  return recorded;
}

}  // namespace keydrift
