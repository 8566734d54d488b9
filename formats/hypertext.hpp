#pragma once
// Keys that are pasted with their HTML, from pages, wikis and data bases: tables, paragraphs, line
// breaks and character references in plain text.  Elements are those of HTML 4.01 and of the
// WHATWG's living standard, names of characters those of HTML 4.01, section 24.

#include <cstddef>
#include <string_view>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Does the text hold HTML: tags that close, rows or breaks, or several named characters?  Bytes of
// any encoding that has ASCII's characters in their places; linear.
[[nodiscard]] bool is_hypertext(std::string_view bytes);

// Rows and paragraphs become lines, cells are parted by tabs, headings are titles, named and
// numbered characters the characters.  Scripts, styles and comments say nothing of a key; menus,
// contents and what readers wrote beneath a page are set aside.  Tags need not be closed nor nested
// well.  A page that is not UTF-8 is in the encoding that it declares.  Places stand in the source.
// Codes: those of read_printed_key, and hypertext (information: how many tags were taken for what
// they set).
[[nodiscard]] Loaded<PrintedReading> read_hypertext(Source source, ReadLimits const& limits = {});

}  // namespace keydrift
