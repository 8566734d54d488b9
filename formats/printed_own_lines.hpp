#pragma once
// Destinations without leaders on the last line of a lead.  Inner header of formats.

#include <cstddef>
#include <optional>

#include "keydrift/formats/printed_joins.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// Where the destination begins in the joined text, if the last line of several holds nothing but a
// number or a name: "… with long hairs" / "Aus bus Roe".
[[nodiscard]] std::optional<std::size_t> own_line_destination(KeyText const& key,
                                                              JoinedText const& joined);

}  // namespace keydrift::printed
