#include "keydrift/formats/docx_styles.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/docx_xml.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift::docx {
namespace {

constexpr std::size_t kLongestChain = 64;

std::string font_in(pugi::xml_node run_properties) {
  auto const fonts = child(run_properties, "rFonts");
  auto const font = attribute(fonts, "ascii");
  return std::string{font ? *font : attribute(fonts, "hAnsi").value_or("")};
}

// "Bold, not underlined" is bold; nullopt where nothing is said.
std::optional<bool> emphasis_in(pugi::xml_node run_properties) {
  auto const bold = on_off(run_properties, "b");
  auto const underline = value_of(run_properties, "u");
  if (!bold && !underline) return std::nullopt;
  return bold.value_or(false) || (underline && *underline != "none");
}

}  // namespace

void Styles::add(pugi::xml_node styles, Numbering& numbering) {
  auto const defaults = child(child(styles, "docDefaults"), "pPrDefault");
  defaults_ = read_paragraph_properties(child(defaults, "pPr"));
  auto const run_defaults = child(child(child(styles, "docDefaults"), "rPrDefault"), "rPr");
  default_size_ = whole(value_of(run_defaults, "sz")).value_or(default_size_);
  for (auto const node : styles.children()) {
    if (xml::local_name(node) != "style") continue;
    std::string id{attribute(node, "styleId").value_or("")};
    Style style;
    style.based_on = value_of(node, "basedOn").value_or("");
    style.properties = read_paragraph_properties(child(node, "pPr"));
    auto const run = child(node, "rPr");
    style.hidden = on_off(run, "vanish");
    style.italic = on_off(run, "i");
    style.emphatic = emphasis_in(run);
    style.size = whole(value_of(run, "sz"));
    style.font = font_in(run);
    auto const is_default = attribute(node, "default").value_or("0");
    if (attribute(node, "type") == "paragraph" && is_default != "0" && is_default != "false") {
      default_paragraph_style_ = id;
    }
    if (style.properties.num_id) numbering.link_style(id, *style.properties.num_id);
    styles_.insert_or_assign(std::move(id), std::move(style));
  }
}

std::vector<std::pair<std::string, Styles::Style const*>> Styles::chain_of(
    std::string_view id) const {
  std::vector<std::pair<std::string, Style const*>> chain;
  auto next = styles_.find(id);
  while (next != styles_.end() && chain.size() < kLongestChain) {
    chain.emplace_back(next->first, &next->second);
    next = styles_.find(next->second.based_on);
  }
  return chain;
}

ParagraphLook Styles::look_of(pugi::xml_node properties, Numbering const& numbering) const {
  auto const own = read_paragraph_properties(properties);
  std::string const style{value_of(properties, "pStyle").value_or(default_paragraph_style_)};
  auto const chain = chain_of(style);
  ParagraphLook look;
  look.properties = defaults_;
  std::optional<std::uint32_t> tied_level;
  // A numbering's look is put over the styles before the one that asks for it, and under that
  // style's own (17.9.22 and 17.7.2).
  auto const put_numbering = [&](std::uint32_t num_id, std::uint32_t level) {
    if (auto const* const above = numbering.look(num_id, level)) look.properties.put_over(*above);
  };
  for (auto at = chain.rbegin(); at != chain.rend(); ++at) {
    auto const& [id, one] = *at;
    if (one->properties.num_id) {
      tied_level = numbering.level_of_style(*one->properties.num_id, id);
      put_numbering(*one->properties.num_id,
                    tied_level.value_or(one->properties.level.value_or(0)));
    } else if (look.properties.num_id) {
      // A style based on a numbered one may be tied to another level of the same numbering.
      if (auto const tied = numbering.level_of_style(*look.properties.num_id, id)) {
        tied_level = tied;
        put_numbering(*look.properties.num_id, *tied);
      }
    }
    look.properties.put_over(one->properties);
  }
  auto const num_id = own.num_id ? own.num_id : look.properties.num_id;
  auto const styled_level = tied_level.value_or(look.properties.level.value_or(0));
  look.num_id = num_id.value_or(0);
  look.level = own.level.value_or(own.num_id ? 0 : styled_level);
  if (own.num_id) put_numbering(*own.num_id, look.level);
  look.properties.put_over(own);
  look.hidden = is_hidden(style);
  look.emphatic = is_emphatic_style(style);
  look.size = size_by_style(style, default_size_);
  return look;
}

bool Styles::is_hidden(std::string_view id) const {
  for (auto const& [name, style] : chain_of(id)) {
    if (style->hidden) return *style->hidden;
  }
  return false;
}

bool Styles::is_emphatic_style(std::string_view id) const {
  for (auto const& [name, style] : chain_of(id)) {
    if (style->emphatic) return *style->emphatic;
  }
  return false;
}

std::uint32_t Styles::size_by_style(std::string_view id, std::uint32_t otherwise) const {
  for (auto const& [name, style] : chain_of(id)) {
    if (style->size) return *style->size;
  }
  return otherwise;
}

std::uint32_t Styles::size_of(pugi::xml_node run_properties, ParagraphLook const& look) const {
  if (auto const own = whole(value_of(run_properties, "sz"))) return *own;
  auto const style = value_of(run_properties, "rStyle");
  return style ? size_by_style(*style, look.size) : look.size;
}

bool Styles::is_emphatic(pugi::xml_node run_properties, ParagraphLook const& look) const {
  if (auto const own = emphasis_in(run_properties)) return *own;
  auto const style = value_of(run_properties, "rStyle");
  return look.emphatic || (style && is_emphatic_style(*style));
}

bool Styles::hides(pugi::xml_node run_properties, ParagraphLook const& look) const {
  if (auto const own = on_off(run_properties, "vanish")) return *own;
  auto const style = value_of(run_properties, "rStyle");
  // A property that toggles: set by both styles it is off again (17.7.3).
  return look.hidden != (style && is_hidden(*style));
}

bool Styles::is_italic(pugi::xml_node run_properties) const {
  if (auto const own = on_off(run_properties, "i")) return *own;
  for (auto const& [name, style] : chain_of(value_of(run_properties, "rStyle").value_or(""))) {
    if (style->italic) return *style->italic;
  }
  return false;
}

std::string Styles::font_of(pugi::xml_node run_properties) const {
  auto own = font_in(run_properties);
  if (!own.empty()) return own;
  auto const style = value_of(run_properties, "rStyle");
  if (!style) return own;
  for (auto const& [name, one] : chain_of(*style)) {
    if (!one->font.empty()) return one->font;
  }
  return own;
}

}  // namespace keydrift::docx
