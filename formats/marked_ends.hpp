#pragma once
// Where a lead ends and its destination begins, by what markup and leaders show, in article XML,
// pages and manuscripts.  Inner header of formats.

#include <cstddef>
#include <string_view>

#include "keydrift/formats/xml_text.hpp"

namespace keydrift::marked {

// A couplet's number and nothing else, "go to" aside.
[[nodiscard]] bool is_number(std::string_view text);

// "or", "&", ",": what stands between the taxa at one end.
[[nodiscard]] bool joins_names(std::string_view between);

// The byte where the destination that ends the line begins, if it is marked up as a name or a
// number and nothing says that it is compared with ("as in Aus bus"); else kNotTold.
[[nodiscard]] std::size_t marked_destination(xml::FlowText const& line);

// The byte where a line begins that is a destination for certain: no label, a name marked up, and
// a remark about it: "<i>Aus</i> (winter only)", "<i>Aus</i> sp., cannot be named"; else kNotTold.
[[nodiscard]] std::size_t name_with_remark(xml::FlowText const& line);

// "2. <b>Aus</b>", "<i>Aus bus</i> Roe": the title of what is told of one taxon.
[[nodiscard]] bool is_taxon_title(xml::FlowText const& title);

// Leaders or "go to" in the words: then the text tells more than markup does.
[[nodiscard]] bool shows_destination(std::string_view words);

// marked_destination() or common_name_or_key(), but where the text tells more.
[[nodiscard]] std::size_t told_destination(xml::FlowText const& line);

// Cuts marks off where the text ends, whose blanks there were taken off.
void keep_marks_within(xml::FlowText& line);

// Begins the text as leads and destinations do, with a capital, a figure or a dash, and not as
// "(Fig. 2)" and "p. 34" go on?
[[nodiscard]] bool begins_lead_or_end(std::string_view text);

// Takes the dots in front of a destination off; all of what is nothing but dots.
void drop_leaders(xml::FlowText& destination);
[[nodiscard]] bool is_only_leaders(std::string_view text);

}  // namespace keydrift::marked
