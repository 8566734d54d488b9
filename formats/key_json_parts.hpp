#pragma once
// Pieces of the interchange form that key_json_read.cpp and key_json_write.cpp are built from.
// Inner header of formats.

#include <string>
#include <string_view>

#include "keydrift/formats/json_fields.hpp"
#include "keydrift/formats/json_tree.hpp"
#include "keydrift/formats/json_writer.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::tables {

// `lead_text` and `from`: where to look for the statement's words when "textBegin" is missing.
[[nodiscard]] Statement read_json_statement(JsonValue const& value, std::string_view lead_text,
                                            std::size_t from, JsonProblems& problems);

void write_json_statement(JsonWriter& json, Statement const& statement);

// "name": {"line": …, "column": …, "begin": …, "end": …}; begin and end are left out when both
// are 0.
void write_json_source(JsonWriter& json, std::string_view name, Place const& place);

}  // namespace keydrift::tables
