#pragma once
// Couplets of a page whose question stands over the answers.  Inner header of formats.

#include <cstddef>
#include <string_view>
#include <unordered_map>

#include "keydrift/formats/hypertext_lists.hpp"

namespace keydrift::hypertext {

// Adds to `labels`, by the offset of the tag that begins the line,
//   <h3>1. Areola</h3><ul><li>Grooves touching … Go to 2<li>Grooves apart … Go to 3</ul>
//   <p><b>Question 2: are the eyes large?</b></p><p>Yes … Go to 5</p><p>No … Aus bus</p>
//   <dt>3. Rostrum<dd>Sharp … Go to 4<dd>Blunt … Aus cus
// and what is like these: a number with words of its own over a few answers, which are the leads.
// The question is set aside, the leads are labelled by its number, and an end on a line of its own
// goes on with the words.  Numbers count up, and a fair part of the leads ends in one of them.
// Lines that `labels` has keep what they have.  Linear in the text.
void label_answers(std::string_view text, std::unordered_map<std::size_t, ListLine>& labels);

}  // namespace keydrift::hypertext
