#pragma once
// The worklist as a page for the printer: one line a sheet, a box for each answer.
//
// One HTML file without script or request, made to be printed on A4 or Letter: groups by storage
// location and question in the order of the worklist, and for each sheet its number, name, the
// boxes to tick, and lines for the new name, who looked and when.  It begins with how many sheets
// are to be pulled from how many places and how many questions there are.
//
// It is written piece by piece, since nobody holds all sheets of a large archive: the beginning,
// then for each group of Redetermination::worklist its beginning, its sheets and its end, and the
// end of the page.

#include <string>
#include <string_view>

#include "keydrift/key/edition.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

[[nodiscard]] std::string worklist_html_begin(Edition const& old_edition,
                                              Edition const& new_edition,
                                              Redetermination const& result);
[[nodiscard]] std::string worklist_html_end();

// `first_of_storage`: another storage unit than that of the group before.
void append_group_begin(std::string& out, Edition const& new_edition, Redetermination const& result,
                        WorkGroup const& group, bool first_of_storage);
void append_group_end(std::string& out);

// The cells of a sheet's line that all sheets of one verdict share.
[[nodiscard]] std::string answer_boxes(Verdict const& verdict);
void append_work_line(std::string& out, Specimen const& specimen, std::string_view boxes);

}  // namespace keydrift
