#pragma once
// Low lines that stand for underlining, as typescripts and plain text mark names.  Inner header of
// formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "_A. busa_ Roe": a low line alone before or behind a word is taken out, where two of them or
// more stand so; rows of them are leaders and stay.  Returns the number of lines.
std::size_t clear_underlining(std::string& text);

}  // namespace keydrift::printed
