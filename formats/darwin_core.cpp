#include "keydrift/formats/darwin_core.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/wording.hpp"
#include "keydrift/key/fold.hpp"

namespace keydrift::tables {
namespace {

bool is_digit_of_shape(char c) { return c >= '0' && c <= '9'; }

// "scientificName-2023-06-28" (a version's IRI) without the date.
std::string_view without_version(std::string_view name) {
  constexpr std::string_view kShape = "-dddd-dd-dd";
  if (name.size() <= kShape.size()) return name;
  auto const tail = name.substr(name.size() - kShape.size());
  bool const dated = std::equal(tail.begin(), tail.end(), kShape.begin(), [](char c, char shape) {
    return shape == 'd' ? is_digit_of_shape(c) : c == shape;
  });
  return dated ? name.substr(0, name.size() - kShape.size()) : name;
}

}  // namespace

std::string term_key(std::string_view header) {
  constexpr std::array<std::string_view, 6> kPrefixes{
      "dwc:", "dwciri:", "dcterms:", "dc:", "ltc:", "obis:"};
  auto name = trimmed(header);
  if (name.find("://") != std::string_view::npos) {
    name = without_version(name.substr(name.find_last_of("/#") + 1));
  }
  auto key = column_key(name);
  for (auto const prefix : kPrefixes) {
    if (key.compare(0, prefix.size(), prefix) == 0) return key.substr(prefix.size());
  }
  return key;
}

CharacterColumns::CharacterColumns(std::vector<std::string> const& ids_and_labels)
    : names_{ids_and_labels} {
  for (auto const& name : ids_and_labels) folded_.push_back(fold_words(name));
  std::sort(folded_.begin(), folded_.end());
}

bool CharacterColumns::known(std::string_view name) const {
  auto const folded = fold_words(name);
  return !folded.empty() && std::binary_search(folded_.begin(), folded_.end(), folded);
}

bool CharacterColumns::find(std::string_view header, CharacterHeader& out) const {
  auto const whole = trimmed(header);
  if (known(whole)) {
    out = {std::string{whole}, ""};
    return true;
  }
  if (whole.empty() || (whole.back() != ')' && whole.back() != ']')) return false;
  auto const open = whole.find_last_of(whole.back() == ')' ? '(' : '[');
  if (open == std::string_view::npos) return false;
  auto const name = trimmed(whole.substr(0, open));
  if (!known(name)) return false;
  out = {std::string{name}, std::string{trimmed(whole.substr(open + 1, whole.size() - open - 2))}};
  return true;
}

std::string CharacterColumns::near(std::string_view header) const {
  std::vector<std::string_view> const names{names_.begin(), names_.end()};
  return nearest_word(trimmed(header), names);
}

}  // namespace keydrift::tables
