#include "keydrift/formats/docx_numbering.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/docx_symbols.hpp"
#include "keydrift/formats/docx_xml.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift::docx {
namespace {

constexpr std::size_t kMostTabs = 64;  // of a paragraph, as word processors have it (from memory)
constexpr int kMostLinks = 8;          // of numbering to style to numbering

// "a" to "z", then "aa", "bb", … (ISO/IEC 29500-1, 17.18.59, lowerLetter).
std::string letters(std::uint32_t number, char first) {
  constexpr std::uint32_t kMost = 26 * 20;
  if (number == 0 || number > kMost) return std::to_string(number);
  return std::string((number - 1) / 26 + 1,
                     static_cast<char>(static_cast<unsigned char>(first) + (number - 1) % 26));
}

std::string roman(std::uint32_t number, bool upper) {
  if (number == 0 || number > 3999) return std::to_string(number);
  struct Digit {
    std::uint32_t value;
    char const* text;
  };
  constexpr std::array kDigits{
      Digit{1000, "m"}, Digit{900, "cm"}, Digit{500, "d"}, Digit{400, "cd"}, Digit{100, "c"},
      Digit{90, "xc"},  Digit{50, "l"},   Digit{40, "xl"}, Digit{10, "x"},   Digit{9, "ix"},
      Digit{5, "v"},    Digit{4, "iv"},   Digit{1, "i"}};
  std::string text;
  for (auto const& digit : kDigits) {
    for (; number >= digit.value; number -= digit.value) text += digit.text;
  }
  if (upper) {
    for (char& c : text) c = static_cast<char>(c - ('a' - 'A'));
  }
  return text;
}

std::string ordinal(std::uint32_t number) {
  auto const tens = number % 100 / 10;
  auto const ones = tens == 1 ? 0 : number % 10;
  return std::to_string(number) + (ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th");
}

void merge_tabs(std::vector<TabStop>& tabs, std::vector<TabStop> const& over) {
  for (auto const& tab : over) {
    auto const at = std::lower_bound(tabs.begin(), tabs.end(), tab.at,
                                     [](TabStop const& a, std::int32_t b) { return a.at < b; });
    if (at != tabs.end() && at->at == tab.at) {
      *at = tab;
    } else if (tabs.size() < kMostTabs) {
      tabs.insert(at, tab);
    }
  }
}

}  // namespace

void ParagraphProperties::put_over(ParagraphProperties const& over) {
  if (over.left) left = over.left;
  if (over.first_line) first_line = over.first_line;
  if (over.num_id) num_id = over.num_id;
  if (over.level) level = over.level;
  if (over.outline) outline = over.outline;
  if (over.centred) centred = over.centred;
  if (over.kept) kept = over.kept;
  merge_tabs(tabs, over.tabs);
}

ParagraphProperties read_paragraph_properties(pugi::xml_node properties) {
  ParagraphProperties read;
  if (!properties) return read;
  auto const indent = child(properties, "ind");
  read.left = twips(attribute(indent, "left"));
  if (!read.left) read.left = twips(attribute(indent, "start"));  // the strict form
  read.first_line = twips(attribute(indent, "firstLine"));
  if (auto const hanging = twips(attribute(indent, "hanging"))) read.first_line = -*hanging;
  auto const numbering = child(properties, "numPr");
  read.num_id = whole(value_of(numbering, "numId"));
  read.level = whole(value_of(numbering, "ilvl"));
  read.outline = whole(value_of(properties, "outlineLvl"));
  if (auto const set = value_of(properties, "jc")) read.centred = *set == "center";
  read.kept = on_off(properties, "keepNext");
  for (auto const tab : child(properties, "tabs").children()) {
    auto const at = twips(attribute(tab, "pos"));
    if (!at) continue;
    auto const kind = attribute(tab, "val");
    auto const leader = attribute(tab, "leader");
    merge_tabs(
        read.tabs,
        {{.at = *at, .leader = leader && *leader != "none", .cleared = kind && *kind == "clear"}});
  }
  return read;
}

Numbering::Level Numbering::read_level(pugi::xml_node node) {
  Level level;
  level.defined = true;
  level.start = whole(value_of(node, "start")).value_or(0);
  level.format = value_of(node, "numFmt").value_or("decimal");
  auto const fonts = child(child(node, "rPr"), "rFonts");
  level.text =
      in_font(value_of(node, "lvlText").value_or(""), attribute(fonts, "ascii").value_or("")).text;
  level.restart = whole(value_of(node, "lvlRestart"));
  level.legal = on_off(node, "isLgl").value_or(false);
  level.blank_after = value_of(node, "suff").value_or("tab") != "nothing";
  level.style = value_of(node, "pStyle").value_or("");
  level.look = read_paragraph_properties(child(node, "pPr"));
  return level;
}

void Numbering::add(pugi::xml_node numbering) {
  for (auto const node : numbering.children()) {
    auto const name = xml::local_name(node);
    if (name == "abstractNum") {
      auto const id = whole(attribute(node, "abstractNumId"));
      if (!id) continue;
      auto& made = abstracts_[*id];
      made.style_link = value_of(node, "numStyleLink").value_or("");
      for (auto const one : node.children()) {
        if (xml::local_name(one) != "lvl") continue;
        auto const level = whole(attribute(one, "ilvl"));
        if (level && *level < kLevels) made.levels[*level] = read_level(one);
      }
    } else if (name == "num") {
      auto const id = whole(attribute(node, "numId"));
      auto const abstract_id = whole(value_of(node, "abstractNumId"));
      if (!id || !abstract_id) continue;
      auto& num = nums_[*id];
      num.abstract_id = *abstract_id;
      for (auto const one : node.children()) {
        if (xml::local_name(one) != "lvlOverride") continue;
        auto const level = whole(attribute(one, "ilvl"));
        if (!level || *level >= kLevels) continue;
        num.starts[*level] = whole(value_of(one, "startOverride"));
        if (auto const replaced = child(one, "lvl")) num.levels[*level] = read_level(replaced);
      }
    }
  }
}

void Numbering::link_style(std::string style, std::uint32_t num_id) {
  styles_[std::move(style)] = num_id;
}

std::optional<std::uint32_t> Numbering::abstract_of(Num const& num) const {
  auto id = num.abstract_id;
  for (int i = 0; i < kMostLinks; ++i) {
    auto const found = abstracts_.find(id);
    if (found == abstracts_.end()) return std::nullopt;
    if (found->second.style_link.empty()) return id;
    auto const style = styles_.find(found->second.style_link);
    if (style == styles_.end()) return std::nullopt;
    auto const linked = nums_.find(style->second);
    if (linked == nums_.end()) return std::nullopt;
    id = linked->second.abstract_id;
  }
  return std::nullopt;
}

Numbering::Level const* Numbering::level_of(std::uint32_t num_id, std::uint32_t level) const {
  auto const num = nums_.find(num_id);
  if (num == nums_.end() || level >= kLevels) return nullptr;
  auto const id = abstract_of(num->second);
  if (!id) return nullptr;
  auto const own = num->second.levels.find(level);
  if (own != num->second.levels.end()) return &own->second;
  auto const& inherited = abstracts_.at(*id).levels[level];
  return inherited.defined ? &inherited : nullptr;
}

ParagraphProperties const* Numbering::look(std::uint32_t num_id, std::uint32_t level) const {
  auto const* const found = level_of(num_id, level);
  return found != nullptr ? &found->look : nullptr;
}

std::optional<std::uint32_t> Numbering::level_of_style(std::uint32_t num_id,
                                                       std::string_view style) const {
  for (std::uint32_t level = 0; level < kLevels; ++level) {
    auto const* const one = level_of(num_id, level);
    if (one != nullptr && !one->style.empty() && one->style == style) return level;
  }
  return std::nullopt;
}

std::string Numbering::render(std::uint32_t number, std::string const& format) {
  if (format == "decimal") return std::to_string(number);
  if (format == "decimalZero") return (number < 10 ? "0" : "") + std::to_string(number);
  if (format == "lowerLetter") return letters(number, 'a');
  if (format == "upperLetter") return letters(number, 'A');
  if (format == "lowerRoman") return roman(number, false);
  if (format == "upperRoman") return roman(number, true);
  if (format == "ordinal") return ordinal(number);
  if (format == "none" || format == "bullet") return "";
  unknown_formats_.insert(format);
  return std::to_string(number);
}

std::string Numbering::next(std::uint32_t num_id, std::uint32_t level) {
  auto const* const printed = level_of(num_id, level);
  if (printed == nullptr) return "";
  auto& num = nums_[num_id];
  auto& counters = abstracts_.at(*abstract_of(num)).counters;
  // Lists made from the same abstract numbering count on together, until one of them that starts
  // anew comes for the first time (17.9.26).
  auto const start_of = [&](std::uint32_t one) {
    auto const* const known = level_of(num_id, one);
    return num.starts[one].value_or(known != nullptr ? known->start : 1);
  };
  if (!num.used) {
    num.used = true;
    for (std::uint32_t i = 0; i < kLevels; ++i) {
      if (num.starts[i]) counters[i].reset();
    }
  }
  for (std::uint32_t i = 0; i < level; ++i) {
    if (!counters[i]) counters[i] = start_of(i);
  }
  counters[level] = counters[level] ? *counters[level] + 1 : start_of(level);
  for (std::uint32_t i = level + 1; i < kLevels; ++i) {
    auto const* const deeper = level_of(num_id, i);
    auto const after = deeper != nullptr ? deeper->restart : std::nullopt;
    if (!after || (*after != 0 && level < *after)) counters[i].reset();
  }
  std::string text;
  for (std::size_t i = 0; i < printed->text.size(); ++i) {
    char const c = printed->text[i];
    char const digit = i + 1 < printed->text.size() ? printed->text[i + 1] : '\0';
    if (c != '%' || digit < '1' || digit > '9') {
      text += c;
      continue;
    }
    auto const one = static_cast<std::uint32_t>(digit - '1');
    auto const* const known = level_of(num_id, one);
    auto const format = known != nullptr ? known->format : std::string{"decimal"};
    text += render(counters[one].value_or(start_of(one)),
                   printed->legal && format != "none" ? "decimal" : format);
    ++i;
  }
  if (!text.empty() && printed->blank_after) text += ' ';
  return text;
}

}  // namespace keydrift::docx
