#pragma once
// Pages at the ends of leads that scanning damaged, and epithets that touch what stands before
// them: mended in the text itself before it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "busa, new species, p. l5." and "BUSA, 165l." where other lines end in "p. 14." or "1650.":
// letters that stand for figures of pages and of species.  Returns the number of lines.
std::size_t restore_pages(std::string& text);

// "A. busa,p. 356." where other lines end in "p. 14.": the blank behind the comma.  Returns the
// number of pages.
std::size_t part_pages(std::string& text);

// "… width of the wing.busa, new species, p. 13." where other lines end in "p. 14.": the blank
// behind the full stop.  Returns the number of epithets.
std::size_t part_epithets_from_stops(std::string& text);

}  // namespace keydrift::printed
