#include "keydrift/formats/cell_codes.hpp"

#include <utility>

namespace keydrift::tables {

WordCode CellCodes::add(std::string_view cell, std::string_view cleaned) {
  if (slots_.size() < 2 * (used_ + 1)) grow();
  Slot slot{.key = key_of(cell), .code = kNoWord, .cell = 0, .used = true};
  if (cell.size() > 16) {
    slot.cell = static_cast<std::uint32_t>(cells_.size());
    cells_.emplace_back(cell);
  }
  if (!cleaned.empty()) {
    words_.emplace_back(cleaned);
    slot.code = static_cast<WordCode>(words_.size());
  }
  put(slot);
  ++used_;
  return slot.code;
}

void CellCodes::put(Slot const& slot) {
  auto const mask = slots_.size() - 1;
  auto at = spread(slot.key) & mask;
  while (slots_[at].used) at = (at + 1) & mask;
  slots_[at] = slot;
}

void CellCodes::grow() {
  auto const old = std::exchange(slots_, {});
  slots_.resize(old.empty() ? 16 : old.size() * 2);
  for (auto const& slot : old) {
    if (slot.used) put(slot);
  }
}

}  // namespace keydrift::tables
