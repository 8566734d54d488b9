#pragma once
// JSON of the values that several reports hold.  Internal to reports.

#include <concepts>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/characters/reading.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/reasons.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift::reports::json_parts {

using Json = nlohmann::ordered_json;

// {"keydrift": 1, "report": "proof"}: how every report begins.
[[nodiscard]] Json begin(std::string_view report);
// Two blanks of indent; bytes that are no UTF-8 become U+FFFD.
[[nodiscard]] std::string dump(Json const& json);
// A report: that, and a line feed.
[[nodiscard]] std::string finish(Json const& json);

// Puts the member unless it is empty (a string, a list) or absent (an optional).
void put(Json& json, char const* name, std::string_view text);
template <std::same_as<Json> List>
void put(Json& json, char const* name, List list) {
  if (!list.empty()) json[name] = std::move(list);
}

[[nodiscard]] Json of(Edition const& edition, CoupletId couplet);
[[nodiscard]] Json of(Edition const& edition, LeadId lead);
[[nodiscard]] Json of(Edition const& edition, TaxonId taxon);
[[nodiscard]] Json of(Edition const& edition, StatementId statement);
template <class Id>
[[nodiscard]] Json list_of(Edition const& edition, std::span<Id const> ids) {
  auto json = Json::array();
  for (auto const& id : ids) json.push_back(of(edition, id));
  return json;
}

[[nodiscard]] Json of(std::span<std::string const> texts);
[[nodiscard]] Json of(Finding const& finding);
[[nodiscard]] Json of(std::span<Finding const> findings);
[[nodiscard]] Json of(Coverage const& coverage);
[[nodiscard]] Json of(Similarity const& similarity);
[[nodiscard]] Json of(Edition const& old_edition, Edition const& new_edition,
                      CoupletReasons const& reasons);
[[nodiscard]] Json of(Specimen const& specimen);
[[nodiscard]] Json of(Edition const& edition, PossibleTerminal const& terminal);

struct BothEditions {
  Edition const& old_edition;
  Edition const& new_edition;
  [[nodiscard]] Edition const& edition(bool of_new) const {
    return of_new ? new_edition : old_edition;
  }
};

template <class Id>
void put_side(Json& json, char const* name, Edition const& edition, std::optional<Id> const& id) {
  if (id) json[name] = of(edition, *id);
}

// Name, label and front matter.
[[nodiscard]] Json heading_of(Edition const& edition);
// The same with couplets, leads, statements and taxa.
[[nodiscard]] Json whole(Edition const& edition);

}  // namespace keydrift::reports::json_parts
