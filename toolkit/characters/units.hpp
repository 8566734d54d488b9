#pragma once
// Units of measurement in leads and records, reduced to one canonical unit per dimension.

#include <optional>
#include <string>
#include <string_view>

namespace keydrift {

struct CanonicalUnit {
  std::string unit;   // "mm", "mm2", "°", "%", "1" (count), "" (ratio)
  double factor{1.0};  // value in canonical unit = printed value * factor
};

// "cm" -> {"mm", 10}; "µm", "m", "in", "inch", "ft", "%", "°", "degrees" …; nullopt when unknown.
// "in" is the inch only directly behind a number; the caller decides that.
[[nodiscard]] std::optional<CanonicalUnit> canonical_unit(std::string_view printed);

// A recorded value: "4.5", "4,5", "4.5 mm", "0.45 cm", "4.5-6.2", "(3-)4-6(-8) mm", "ca. 5 mm".
// `default_unit` applies where none is written.  nullopt when it is not a number.
struct RecordedNumber {
  double low{};
  double high{};
  std::string unit;  // canonical
};
[[nodiscard]] std::optional<RecordedNumber> read_number(std::string_view text,
                                                        std::string_view default_unit);

}  // namespace keydrift
