#include "keydrift/formats/printed_months.hpp"

#include <cstddef>
#include <cstdint>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_ranks.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kLastMonth = 12;

bool is_month(std::string_view figures) {
  return figures.find_first_not_of("IVX") == std::string_view::npos &&
         roman_number(figures, kLastMonth) > 0;
}

}  // namespace

bool is_months(std::string_view word) {
  if (word.find_first_of("IVX") != 0) return false;
  while (!word.empty() && (word.back() == ',' || word.back() == ';' || word.back() == ')')) {
    word.remove_suffix(1);
  }
  // "VII." closes the lead; one letter with a full stop is an initial.
  if (word.size() > 2 && word.back() == '.') word.remove_suffix(1);
  auto const end = word.find_first_not_of("IVX");
  if (end == std::string_view::npos) return is_month(word);
  auto const between = code_point_at(word, end);
  if (!is_dash(between.value) && between.value != '/') return false;
  return is_month(word.substr(0, end)) && is_month(word.substr(end + between.length));
}

}  // namespace keydrift::printed
