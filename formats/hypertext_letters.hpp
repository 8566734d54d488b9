#pragma once
// Letters of leads and numbers of couplets that stand in elements of their own.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/manuscript.hpp"

namespace keydrift::hypertext {

// <span>a</span><div>Wings clear</div><span>b</span><div>Wings dark</div>: lines of nothing but a
// letter go with the words beneath, parted from them by a tab, if there are several of "a" and of
// "b", as the fields of a data base have them.  Linear.
void join_letters(std::vector<ManuscriptLine>& lines);

// <span>3</span><h5>Step 3</h5>: numbers that stand before titles which say the same are no labels
// of leads.  Told by that before the first couplet, which no lead leads to.  Linear.
void set_badges_aside(std::vector<ManuscriptLine>& lines);

}  // namespace keydrift::hypertext
