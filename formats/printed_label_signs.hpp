#pragma once
// Labels that scanning took apart or whose signs it made others of, put right in the text itself
// before it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "a 1 . Carapace", "b 2. Spine": a letter with an index below or above the line (common practice
// of outlines of few columns) that scanning parted, "d l ." and "6 1 ." and "c- ." among them, and
// "d^." and "d-." where the count tells the index; they are closed to "a1." where several pairs
// stand so, "a." and "a 1 ." or "a 1 ." and "a 2 .", and the blanks stand at the line's end
// instead.  Returns the number of lines.
std::size_t close_indexed_labels(std::string& text);

// "c\\ Wings", "c-. Wings", "6^. Wings" and "cl^. Wings" where others begin with "a^." and "b'.": a
// letter with a raised index, c, c, b and d.  Returns the number of lines.
std::size_t restore_raised_labels(std::string& text);

// "H'. Abdomen" and "H?. Abdomen" where others begin with "A1." and "A2.": H1 and H2.  Returns the
// number of lines.
std::size_t restore_capital_indices(std::string& text);

// "ll' — Wings" beneath "11 — Wings", where other second leads are marked so: the number.  Returns
// the number of lines.
std::size_t restore_marked_numbers(std::string& text);

// "V Eyes small" for 1' or 7', whichever the couplets that are labelled 1" and 1' miss.  Returns
// the number of lines.
std::size_t restore_fused_primes(std::string& text);

// "c\\ — Lait blanc" where others begin with "a'. —" and "b'. —": the backslash was a prime.
// Returns the number of lines.
std::size_t restore_stroked_primes(std::string& text);

// "5 Petals yellow" / "5; Petals white" beside "6 Leaves" / "6: Leaves": the semicolon was a colon,
// and "I7 Leaves" above "17: Leaves" is the first lead of 17.  Returns the number of lines.
std::size_t restore_colons_of_labels(std::string& text);

// "■ — Wings" where other lines begin with "— Wings": the square is dirt.  Columns stay.  Returns
// the number of lines.
std::size_t clear_squares_before_dashes(std::string& text);

// "DI). Callus bald" and "CC Rhizomes none" beside "D." and "C." above and "AA." elsewhere: the
// letter twice, and its full stop.  Returns the number of lines.
std::size_t restore_doubled_letters(std::string& text);

// "cl\". Back grey" beneath "c\". Back green", and "d!\". Smaller" for d'": a letter that came out
// as two, and a prime that came out as a stroke.  Returns the number of lines.
std::size_t restore_parted_letters(std::string& text);

// "li. Beak hooked" where "h. Beak straight" stands above and every letter labels two leads.
std::size_t restore_letters_of_pairs(std::string& text);

}  // namespace keydrift::printed
