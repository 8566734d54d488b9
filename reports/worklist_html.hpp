#pragma once
// The worklist as a page for the printer: one line a sheet, a box for each answer.

#include <string>

#include "keydrift/key/edition.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

// One HTML file without script or request, made to be printed on A4 or Letter: groups by storage
// location and question in the order of the worklist, and for each sheet its number, name, the
// boxes to tick, and lines for the new name, who looked and when.  It begins with how many sheets
// are to be pulled from how many places and how many questions there are.
[[nodiscard]] std::string worklist_html(Edition const& old_edition, Edition const& new_edition,
                                        Redetermination const& redetermination);

}  // namespace keydrift
