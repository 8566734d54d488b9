// The published schemas of the JSON forms, held against files that use every field.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "golden.hpp"

namespace keydrift {
namespace {

using Names = std::set<std::string>;
using Json = nlohmann::json;

Json load(std::string const& path) {
  return Json::parse(test::slurp(std::string{KEYDRIFT_SOURCE_DIR} + path));
}

// Names of the members of every object below `value`.
void collect_names(Json const& value, Names& names) {
  if (value.is_object()) {
    for (auto const& [name, member] : value.items()) names.insert(name);
  }
  if (value.is_structured()) {
    for (auto const& member : value) collect_names(member, names);
  }
}

// Names that the schema gives to members anywhere.
void collect_properties(Json const& schema, Names& names) {
  if (schema.is_object() && schema.contains("properties")) {
    for (auto const& [name, member] : schema["properties"].items()) names.insert(name);
  }
  if (schema.is_structured()) {
    for (auto const& member : schema) collect_properties(member, names);
  }
}

void expect_same_names(std::string const& schema, std::string const& golden) {
  Names described;
  collect_properties(load("/formats/schemas/" + schema), described);
  described.erase("$schema");
  Names written;
  collect_names(load("/tests/golden/" + golden), written);
  EXPECT_EQ(described, written);
}

TEST(Schemas, DescribeEveryFieldOfAKeyAndNoOther) {
  expect_same_names("key.schema.json", "key_json/full.json");
}

TEST(Schemas, DescribeEveryFieldOfALexiconAndNoOther) {
  expect_same_names("lexicon.schema.json", "lexicon/full.json");
}

}  // namespace
}  // namespace keydrift
