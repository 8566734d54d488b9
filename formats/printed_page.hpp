#pragma once
// The lines of a printed key.  Inner header of formats.

#include <cstdint>
#include <string>

#include "keydrift/formats/printed_ends.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// From what a reader would expect of such a key to what nobody can mistake.
enum class PrintManner : std::uint8_t {
  plain,
  exact,     // the front matter says the layout and that labels are whole
  numbered,  // and every lead prints the number that it leads to, even if that stands next
};

// `printed`: an edition as as_printed() gives it for these options.
[[nodiscard]] std::string print_page(Edition const& printed, PrintOptions const& options,
                                     PrintManner manner, PrintWordings const& wordings);

}  // namespace keydrift::printed
