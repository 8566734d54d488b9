#include "keydrift/formats/told_names.hpp"

namespace keydrift {

void ToldNames::enter(Table& table, std::string_view printed, std::string_view whole) {
  auto const [entry, fresh] = table.emplace(printed, whole);
  if (!fresh && entry->second != whole) entry->second.clear();
}

void ToldNames::tell(std::string_view printed, std::string_view whole) {
  if (!printed.empty() && printed != whole) enter(names_, printed, whole);
}

void ToldNames::tell_genus(std::string_view abbreviation, std::string_view genus) {
  if (abbreviation.ends_with('.')) abbreviation.remove_suffix(1);
  if (!abbreviation.empty() && abbreviation != genus) enter(genera_, abbreviation, genus);
}

std::string ToldNames::whole(std::string_view printed) const {
  auto const found = names_.find(std::string{printed});
  return found == names_.end() ? std::string{} : found->second;
}

std::unordered_map<std::string, std::string> ToldNames::genera() const {
  auto told = genera_;
  std::erase_if(told, [](auto const& one) { return one.second.empty(); });
  return told;
}

}  // namespace keydrift
