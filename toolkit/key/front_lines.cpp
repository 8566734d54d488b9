#include "keydrift/key/front_lines.hpp"

#include <string_view>
#include <utility>

namespace keydrift {
namespace {

std::string joined(std::vector<std::string> const& items) {
  std::string text;
  for (auto const& item : items) text += (text.empty() ? "" : "; ") + item;
  return text;
}

}  // namespace

std::vector<FrontLine> front_lines(FrontMatter const& front) {
  std::vector<FrontLine> lines;
  auto const add = [&lines](std::string_view name, std::string value) {
    if (!value.empty()) lines.push_back({std::string{name}, std::move(value)});
  };
  add("Title", front.title);
  add("Edition", front.edition);
  if (front.year) add("Year", std::to_string(*front.year));
  add("Authors", joined(front.authors));
  add("Language", front.language);
  add("Taxa", front.scope.taxa);
  add("Region", front.scope.region);
  add("Places", joined(front.scope.places));
  add("Excludes", joined(front.scope.excluded_taxa));
  add("Lists", joined(front.scope.listed_taxa));
  add("Life stage", front.scope.life_stage);
  add("Sex", front.scope.sex);
  add("Material", front.scope.material);
  std::vector<std::string> synonyms;
  synonyms.reserve(front.synonyms.size());
  for (auto const& one : front.synonyms) synonyms.push_back(one.accepted + " = " + one.synonym);
  add("Synonyms", joined(synonyms));
  for (auto const& [name, value] : front.other) add(name, value);
  return lines;
}

}  // namespace keydrift
