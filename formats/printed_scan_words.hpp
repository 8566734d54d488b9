#pragma once
// Words of keys that scanning made others of, put right in the text itself before it is parted into
// lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "busa n, sp.", "busa, new spccies": what says that a species is new.  Lines keep their length.
// Returns the number of places.
std::size_t restore_marks_of_new(std::string& text);

// "anten¬" at the end of a line: text layers write a hyphen that parts a word so.  Lines keep their
// length.  Returns the number of lines.
std::size_t restore_soft_hyphens(std::string& text);

// "T. Iatifasciatus": the capital I that an epithet begins with behind an initial is l.  Returns
// the number of epithets.
std::size_t restore_first_l(std::string& text);

// "… punctate_busa Roe", "… black _ busa", "… border _ 9": what a row of low lines before an end
// became; a blank takes its place, so that columns stay.  Returns the number of lines.
std::size_t clear_low_lines(std::string& text);

// "decej)tor", "l)ody": a bracket within a word that no other one opens is the bowl of p and b.
// The line is filled up with blanks at its end.  Returns the number of words.
std::size_t restore_bowls(std::string& text);

// "..... busa,Roe." where others have "cusa, Roe.": a blank behind the epithet's comma.  Returns
// the number of places.
std::size_t part_authors_from_epithets(std::string& text);

// "Stem  equal  or  clavate": some text layers set two blanks between all words, and only wider
// gaps tell columns then.  One of them goes to the line's end, so that lines keep their length.
// Returns the number of lines.
std::size_t close_double_blanks(std::string& text);

}  // namespace keydrift::printed
