#pragma once
// An edition as a page to read, to print or to put on the web.

#include <string>

#include "keydrift/key/edition.hpp"

namespace keydrift {

// One HTML file: a printed key with hanging indents and dot leaders, the couplets linked with each
// other.  No script, no request, a content-security policy inside; everything foreign is escaped.
// A couplet's number leads back to where it is reached from.
[[nodiscard]] std::string key_html(Edition const& edition);

// CommonMark 0.31: a paragraph for each couplet, its leads on lines of their own, labels and
// destinations bold, scientific names in italics.  Everything foreign is escaped, so that it shows
// as printed; no HTML is used, which many renderers would drop.
[[nodiscard]] std::string key_markdown(Edition const& edition);

}  // namespace keydrift
