#include "keydrift/redetermination/row_check.hpp"

#include <zlib.h>

#include "keydrift/redetermination/sheet_numbers.hpp"

namespace keydrift {
namespace {

// Sixteen that are not easily mistaken for each other.
constexpr std::string_view kLetters = "BCDFHJKLMPRTVWXZ";
constexpr int kShown = 6;  // letters of four bits

// The cell's letters and digits, with an end that no cell holds.
std::string plain(std::string_view cell) {
  std::string text;
  for (char const c : cell) {
    bool const capital = c >= 'A' && c <= 'Z';
    if (capital) text += static_cast<char>(c - 'A' + 'a');
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) text += c;
  }
  text += '\n';
  return text;
}

std::uint32_t added(std::uint32_t sum, std::string_view cell) {
  auto const text = plain(cell);
  return static_cast<std::uint32_t>(
      ::crc32(sum, reinterpret_cast<Bytef const*>(text.data()), static_cast<uInt>(text.size())));
}

}  // namespace

RowCheck::RowCheck(std::string_view question, std::string_view character)
    : sum_{added(added(static_cast<std::uint32_t>(::crc32(0, nullptr, 0)), question),
                 loose_number(character))} {}

std::string RowCheck::of(std::string_view number, std::string_view occurrence_id,
                         std::string_view scientific_name) const {
  auto sum = added(sum_, loose_number(number));
  sum = added(sum, loose_number(occurrence_id));
  sum = added(sum, scientific_name);
  std::string letters;
  for (int i = 0; i < kShown; ++i, sum >>= 4) letters += kLetters[sum & 0xFU];
  return letters;
}

}  // namespace keydrift
