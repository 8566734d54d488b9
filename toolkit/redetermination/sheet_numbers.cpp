#include "keydrift/redetermination/sheet_numbers.hpp"

#include <algorithm>

#include "keydrift/redetermination/digits.hpp"

namespace keydrift {

std::string sheet_number(Specimen const& specimen) {
  if (!specimen.catalog_number.empty()) return specimen.catalog_number;
  if (!specimen.occurrence_id.empty()) return specimen.occurrence_id;
  return "line " + std::to_string(specimen.line);
}

std::string loose_number(std::string_view number) {
  std::string plain;
  for (char const c : number) {
    if (c != ' ' && c != '\'' && c != '\t') plain += c;
  }
  constexpr std::string_view kNoBreakSpace = "\xC2\xA0";
  for (auto at = plain.find(kNoBreakSpace); at != std::string::npos;
       at = plain.find(kNoBreakSpace)) {
    plain.erase(at, kNoBreakSpace.size());
  }
  auto const digits = static_cast<std::size_t>(
      std::find_if_not(plain.begin(), plain.end(), is_digit) - plain.begin());
  auto const tail = std::string_view{plain}.substr(digits);
  bool const zeros = tail.size() > 1 && (tail.front() == '.' || tail.front() == ',') &&
                     tail.find_first_not_of('0', 1) == std::string_view::npos;
  if (digits == 0 || (!tail.empty() && !zeros)) return plain;
  plain.resize(digits);
  plain.erase(0, std::min(plain.find_first_not_of('0'), plain.size() - 1));
  return plain;
}

bool looks_like_power_of_ten(std::string_view number) {
  auto const e = number.find_first_of("eE");
  if (e == std::string_view::npos || e == 0 || e + 2 >= number.size()) return false;
  auto const mantissa = number.substr(0, e);
  auto const exponent = number.substr(e + 1);
  if (exponent.front() != '+' && exponent.front() != '-') return false;
  return std::all_of(exponent.begin() + 1, exponent.end(), is_digit) &&
         is_digit(mantissa.front()) && std::all_of(mantissa.begin(), mantissa.end(), [](char c) {
           return is_digit(c) || c == '.' || c == ',';
         });
}

}  // namespace keydrift
