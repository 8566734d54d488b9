#pragma once
// JSON (RFC 8259) as a tree in which every value knows its place.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::tables {

enum class JsonType { null, boolean, number, text, list, object };
[[nodiscard]] char const* to_phrase(JsonType type);  // "a number", "an object", …

struct JsonMember;
struct JsonValue {
  JsonType type{JsonType::null};
  bool boolean{false};
  double number{};
  bool whole{false};  // the number is an integer that a double holds exactly
  std::string text;   // NFC; control characters but tab and line feed have become blanks
  std::vector<JsonValue> items;
  std::vector<JsonMember> members;
  Place place;  // of the token; of the opening bracket
};
struct JsonMember {
  std::string name;
  Place place;
  JsonValue value;
};

struct JsonLimits {
  std::size_t maximum_depth{64};  // deeper trees are not ours, and freeing them would recurse
};

// Errors: malformed-json, json-too-deep, repeated-field (one object, two members of a name).
[[nodiscard]] Loaded<JsonValue> parse_json(DecodedText const& source,
                                           JsonLimits const& limits = {});

// "keydrift" and the like must be 1.  Adds no-version (with `remedy`), newer-version.
void check_json_version(JsonValue const& root, std::string_view field, std::string_view file,
                        std::vector<Finding>& findings);

}  // namespace keydrift::tables
