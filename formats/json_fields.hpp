#pragma once
// Reads the fields of one JSON object and reports what is wrong with them.  Inner header of
// formats.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/json_tree.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::tables {

// Where findings about a JSON file go.  Borrows both.
class JsonProblems {
 public:
  JsonProblems(std::string_view file, std::vector<Finding>& findings)
      : file_{file}, findings_{findings} {}
  Finding& add(std::string code, Severity severity, Place place, std::string message,
               std::string remedy);
  void wrong_type(std::string_view field, JsonValue const& value, std::string_view wanted);

 private:
  std::string_view file_;
  std::vector<Finding>& findings_;
};

// A field that is missing or null reads as nothing.  One of the wrong type is reported
// (wrong-type, error) and reads as nothing too.  Borrows the object.
class JsonFields {
 public:
  // `what` names the object in messages: "lead".  An `object` that is none is reported.
  JsonFields(JsonValue const& object, std::string_view what, JsonProblems& problems);

  [[nodiscard]] JsonValue const* any(std::string_view name);  // nullptr: missing or null
  [[nodiscard]] JsonValue const* of_type(std::string_view name, JsonType type);
  [[nodiscard]] std::string text(std::string_view name);
  [[nodiscard]] std::string required_text(std::string_view name);  // missing-field when absent
  // `places`, if given, get those of the texts, one for one.
  [[nodiscard]] std::vector<std::string> texts(std::string_view name,
                                               std::vector<Place>* places = nullptr);
  [[nodiscard]] std::optional<double> number(std::string_view name);
  [[nodiscard]] std::optional<std::uint64_t> whole_number(std::string_view name);
  [[nodiscard]] bool flag(std::string_view name);
  // {"line": 3, "column": 1, "begin": 120, "end": 166}; `otherwise` when missing.
  [[nodiscard]] Place source(std::string_view name, Place otherwise);
  // The items of a list of objects; empty when missing.
  [[nodiscard]] std::vector<JsonValue> const& objects(std::string_view name);

  [[nodiscard]] Place place() const { return object_.place; }
  [[nodiscard]] bool has(std::string_view name) const;

  // Call last: reports the fields that nobody asked for (unknown-field, a warning).  "$schema" and
  // names with "x-" in front are let be.
  void finish();

 private:
  [[nodiscard]] JsonValue const* find(std::string_view name) const;

  JsonValue const& object_;
  std::string_view what_;
  JsonProblems& problems_;
  std::vector<std::string_view> asked_;
};

}  // namespace keydrift::tables
