#pragma once
// Elements of HTML that a style sheet sets apart where no tag does.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <unordered_map>

#include "keydrift/formats/hypertext_sheet.hpp"

namespace keydrift::hypertext {

struct Placed {
  bool line{false};        // begins a line; else a cell of the line before
  bool gap{false};         // the line stands apart from the one above, or begins a page
  std::uint32_t indent{};  // columns that the line is set in by
};

struct Placement {
  // By the offset of the tag that opens the element.
  std::unordered_map<std::size_t, Placed> elements;
  // Nearly all text is put where it stands by its own coordinates, as converters of pages do it:
  // other tags and line feeds part no lines.
  bool by_coordinates{false};
};

// Told are
//   <p style="position:absolute;top:90px;left:108px">1</p><p style="…;top:90px;left:140px">Wings …
// lines by their heights, cells of the same height; and
//   <span class="no">1</span><span class="words">Wings clear</span><span class="to">2</span>
// where letters or digits touch, and often: flexible boxes, grids and the like set them apart; and
//   <p>1 Wings clear<span style="float:right">2</span></p>
// and the same of a class that a style sheet sets at the right, at the end of its block.
// Linear in the text.
[[nodiscard]] Placement placement_of(std::string_view text, Sheet const& sheet);

}  // namespace keydrift::hypertext
