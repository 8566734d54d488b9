#include "keydrift/formats/docx_xml.hpp"

#include <array>
#include <charconv>

#include "keydrift/formats/xml_document.hpp"

namespace keydrift::docx {
namespace {

struct Unit {
  std::string_view name;
  double twips;
};
constexpr std::array kUnits{Unit{"pt", 20},   Unit{"pc", 240},         Unit{"pi", 240},
                            Unit{"in", 1440}, Unit{"cm", 1440 / 2.54}, Unit{"mm", 144 / 2.54}};
constexpr double kWidest = 31'680;  // twips: 22 inches, the widest page of word processors

std::string_view without_prefix(std::string_view name) {
  auto const colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

}  // namespace

pugi::xml_node child(pugi::xml_node node, std::string_view name) {
  for (auto const one : node.children()) {
    if (xml::local_name(one) == name) return one;
  }
  return {};
}

std::optional<std::string_view> attribute(pugi::xml_node node, std::string_view name) {
  for (auto const one : node.attributes()) {
    if (without_prefix(one.name()) == name) return one.value();
  }
  return std::nullopt;
}

std::optional<std::string_view> value_of(pugi::xml_node node, std::string_view name) {
  return attribute(child(node, name), "val");
}

std::optional<bool> on_off(pugi::xml_node node, std::string_view name) {
  auto const property = child(node, name);
  if (!property) return std::nullopt;
  auto const value = attribute(property, "val");
  return !value || (*value != "0" && *value != "false" && *value != "off");
}

std::optional<std::int32_t> twips(std::optional<std::string_view> text) {
  if (!text || text->empty()) return std::nullopt;
  double value = 0;
  auto const* const end = text->data() + text->size();
  auto const [after, error] = std::from_chars(text->data(), end, value);
  if (error != std::errc{}) return std::nullopt;
  std::string_view const unit{after, static_cast<std::size_t>(end - after)};
  for (auto const& known : kUnits) {
    if (unit == known.name) value *= known.twips;
  }
  if (!(value >= -kWidest && value <= kWidest)) return std::nullopt;
  return static_cast<std::int32_t>(value);
}

std::optional<std::uint32_t> whole(std::optional<std::string_view> text) {
  if (!text) return std::nullopt;
  std::uint32_t value = 0;
  auto const* const end = text->data() + text->size();
  auto const [after, error] = std::from_chars(text->data(), end, value);
  if (error != std::errc{} || after != end) return std::nullopt;
  return value;
}

}  // namespace keydrift::docx
