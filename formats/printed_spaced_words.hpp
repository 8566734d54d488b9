#pragma once
// Words that print spaces to make them stand out, put right in the text itself before it is parted
// into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "t r i d e n t a t u s", "M A R V I A", "F i s s i d a l m u s": five letters or more, small ones
// behind a capital or not, or all capitals, each parted by one blank, are a word that was spaced to
// stand out (common practice of German print, and of titles in capitals); "P o l y -" / "t r i c h
// a l i a." as well.  The blanks go and stand at the line's end instead, so that lines keep their
// length.  Returns the number of words.
std::size_t close_spaced_words(std::string& text);

}  // namespace keydrift::printed
