#include "keydrift/key/prose.hpp"

namespace keydrift {

std::string in_quotes(std::string_view text) { return '"' + std::string{text} + '"'; }

std::string in_prose(std::vector<std::string> const& items, std::size_t most) {
  std::string text;
  auto const shown = items.size() > most ? most - 1 : items.size();
  for (std::size_t i = 0; i < shown; ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  if (shown < items.size()) text += " and " + std::to_string(items.size() - shown) + " more";
  return text;
}

}  // namespace keydrift
