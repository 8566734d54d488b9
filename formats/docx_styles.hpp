#pragma once
// The styles of a manuscript (ISO/IEC 29500-1, 17.7), as far as they decide what is printed where.
// Inner header of formats.

#include <map>
#include <pugixml.hpp>
#include <string>
#include <string_view>

#include "keydrift/formats/docx_numbering.hpp"

namespace keydrift::docx {

// How a paragraph looks, after its styles, its numbering and itself.
struct ParagraphLook {
  ParagraphProperties properties;
  std::uint32_t num_id{};  // 0: no automatic number
  std::uint32_t level{};
  bool hidden{false};    // by its style, unless a run says otherwise
  bool emphatic{false};  // bold or underlined, by its style, unless a run says otherwise
  std::uint32_t size{};  // of its type in half points, unless a run says otherwise
};

class Styles {
 public:
  // Adds what the styles part defines; tells `numbering` which styles stand for numberings.
  void add(pugi::xml_node styles, Numbering& numbering);

  // `properties`: the paragraph's own (w:pPr); may be empty.
  [[nodiscard]] ParagraphLook look_of(pugi::xml_node properties, Numbering const& numbering) const;

  // Whether a run of those properties (w:rPr) in a paragraph of that look is hidden text.
  [[nodiscard]] bool hides(pugi::xml_node run_properties, ParagraphLook const& look) const;

  // Whether such a run is set in italics, by itself or its style.
  [[nodiscard]] bool is_italic(pugi::xml_node run_properties) const;

  // Whether such a run is bold or underlined.
  [[nodiscard]] bool is_emphatic(pugi::xml_node run_properties, ParagraphLook const& look) const;

  // The size of its type in half points.
  [[nodiscard]] std::uint32_t size_of(pugi::xml_node run_properties,
                                      ParagraphLook const& look) const;

  // The font of a run by itself or its style; "" where neither says.
  [[nodiscard]] std::string font_of(pugi::xml_node run_properties) const;

 private:
  struct Style {
    std::string based_on;
    ParagraphProperties properties;
    std::optional<bool> hidden;
    std::optional<bool> italic;
    std::optional<bool> emphatic;
    std::optional<std::uint32_t> size;
    std::string font;
  };
  // From the style up to its farthest ancestor; ends where ancestors go round in a ring.
  [[nodiscard]] std::vector<std::pair<std::string, Style const*>> chain_of(
      std::string_view id) const;
  [[nodiscard]] bool is_hidden(std::string_view id) const;
  [[nodiscard]] bool is_emphatic_style(std::string_view id) const;
  [[nodiscard]] std::uint32_t size_by_style(std::string_view id, std::uint32_t otherwise) const;

  std::map<std::string, Style, std::less<>> styles_;
  std::string default_paragraph_style_;
  ParagraphProperties defaults_;
  std::uint32_t default_size_{20};  // half points (17.3.2.38)
};

}  // namespace keydrift::docx
