#pragma once
// The running words of XML elements, with the place of each.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift::xml {

// Words that an element sets apart within a text.
enum class InlineKind : std::uint8_t { name, italic, emphasis, pointer };
struct InlineMark {
  InlineKind kind{InlineKind::emphasis};
  std::size_t begin{};  // bytes of FlowText::text
  std::size_t end{};
};

// Blanks are squeezed to one, none at the ends; a no-break space is none.
struct FlowText {
  std::string text;
  std::vector<ManuscriptStretch> stretches;
  std::vector<InlineMark> marks;  // in order of their ends

  [[nodiscard]] bool empty() const { return text.empty(); }
  // Puts `joint` between the two unless one is empty.
  void append(FlowText const& more, std::string_view joint);
  // Drops the first `count` bytes.
  void drop_front(std::size_t count);
};

// What one element says: a text for each paragraph or line that it is broken into (none of them
// empty), and the footnotes and captions of figures that stand in it.
struct Flow {
  std::vector<FlowText> lines;
  std::vector<FlowText> footnotes;

  [[nodiscard]] FlowText joined() const;  // lines joined by blanks
};

// Elements of the Journal Article Tag Suite (ANSI/NISO Z39.96) and of its extension for taxonomy
// that are set within words pass their words on; what is not printed in the words (object
// identifiers, pictures, formulas' sources, marks of footnotes) is left out; raised and lowered
// digits become such characters.  No recursion.
[[nodiscard]] Flow read_flow(Document const& document, pugi::xml_node element);

}  // namespace keydrift::xml
