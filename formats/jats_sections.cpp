#include "keydrift/formats/jats_sections.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/jats_rows.hpp"
#include "keydrift/formats/jats_text.hpp"
#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/xml_text.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::jats {
namespace {

using namespace std::string_view_literals;

bool is_named(pugi::xml_node node, std::string_view name) { return xml::local_name(node) == name; }

bool is_section(pugi::xml_node node) {
  auto const name = xml::local_name(node);
  return name == "sec" || name == "treatment-sec" || name == "app" || name == "boxed-text";
}

// Paragraphs and what is set like them.
bool is_text_block(pugi::xml_node node) {
  static constexpr std::array kBlocks{"p"sv,         "list"sv,        "disp-quote"sv, "def-list"sv,
                                      "preformat"sv, "verse-group"sv, "statement"sv,  "speech"sv};
  return is_one_of(kBlocks, xml::local_name(node));
}

pugi::xml_node child(pugi::xml_node node, std::string_view name) {
  for (auto one : node.children()) {
    if (is_named(one, name)) return one;
  }
  return {};
}

bool is_table(pugi::xml_node node) {
  auto const name = xml::local_name(node);
  // An array has its rows without a table around them.
  return name == "table" || name == "tgroup" || (name == "array" && child(node, "tbody"));
}

// Every node below `top` in document order.  `visit` says whether to go into it.
template <class Visit>
void walk(pugi::xml_node top, Visit visit) {
  auto node = top.first_child();
  while (node) {
    if (visit(node) && node.first_child()) {
      node = node.first_child();
      continue;
    }
    while (node != top && !node.next_sibling()) node = node.parent();
    node = node == top ? pugi::xml_node{} : node.next_sibling();
  }
}

bool section_speaks_of_key(xml::Document const& document, pugi::xml_node node) {
  std::string type = node.attribute("sec-type").value();
  if (type.empty()) type = node.attribute("content-type").value();
  std::replace(type.begin(), type.end(), '-', ' ');
  std::replace(type.begin(), type.end(), '_', ' ');
  return speaks_of_key(type) || speaks_of_key(title_of(document, node));
}

bool wrap_speaks_of_key(xml::Document const& document, pugi::xml_node wrap) {
  std::string type = wrap.attribute("content-type").value();
  std::replace(type.begin(), type.end(), '-', ' ');
  return speaks_of_key(type) || speaks_of_key(title_of(document, wrap));
}

void append(std::vector<ManuscriptLine>& lines, std::vector<ManuscriptLine>&& more) {
  lines.insert(lines.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

// The wrap of a table; the table itself when it has none.
pugi::xml_node wrap_of(pugi::xml_node table) {
  for (auto node = table.parent(); node; node = node.parent()) {
    if (is_named(node, "table-wrap") || is_named(node, "array")) return node;
    if (is_section(node)) break;
  }
  return table;
}

// A translation or a reply would give every key once more.
bool is_beside_article(std::string_view name) {
  static constexpr std::array kBeside{
      "front"sv,      "ref-list"sv,     "sub-article"sv, "response"sv, "book-meta"sv,
      "front-stub"sv, "front-matter"sv, "toc"sv,         "index"sv,    "book-part-meta"sv};
  return is_one_of(kBeside, name);
}

class Collector {
 public:
  explicit Collector(xml::Document const& document) : document_{document} {}

  // A table that stands in no section that speaks of a key.
  KeyZone lone_table(pugi::xml_node wrap) {
    KeyZone zone{.element = wrap, .lines = {}};
    bool const told = wrap_speaks_of_key(document_, wrap);
    std::vector<ManuscriptLine> rows;
    auto const take = [&](pugi::xml_node node) {
      if (!is_table(node)) return !is_named(node, "fn");
      append(rows, table_lines(document_, node));
      return false;
    };
    if (is_table(wrap)) {
      take(wrap);
    } else {
      walk(wrap, take);
    }
    if (rows.empty() || !(told || looks_like_key(rows))) return zone;
    zone.has_tables = true;
    auto heading = wrap_title(wrap, LineRole::heading);
    if (heading.empty()) heading = section_title(wrap);
    append(zone.lines, std::move(heading));
    append(zone.lines, std::move(rows));
    append(zone.lines, wrap_foot(wrap));
    return zone;
  }

  KeyZone section(pugi::xml_node section) {
    KeyZone zone{.element = section, .lines = taxon_title_above(section)};
    zone.has_tables = holds_key_table(section);
    // Inner sections that speak of a key: then the others tell of something else.
    bool inner = false;
    walk(section, [&](pugi::xml_node node) {
      inner = inner || (is_section(node) && section_speaks_of_key(document_, node));
      return !inner;
    });
    walk(section, [&](pugi::xml_node node) { return take(node, section, inner, zone); });
    return zone;
  }

  // Titles and text blocks of the section itself, not of those within it.
  template <class IsRead>
  KeyZone own_text(pugi::xml_node section, IsRead is_read) {
    KeyZone zone{.element = section, .lines = {}};
    for (auto node : section.children()) {
      if (is_read(node)) continue;
      if (is_named(node, "title") || is_named(node, "caption")) {
        append(zone.lines, whole_line(document_, node, LineRole::heading));
      } else if (is_text_block(node)) {
        append(zone.lines, text_lines(document_, node));
      }
    }
    return zone;
  }

 private:
  bool take(pugi::xml_node node, pugi::xml_node zone_top, bool inner, KeyZone& zone) {
    if (node.type() != pugi::node_element) return false;
    auto const parent = node.parent();
    if (is_section(node)) {
      // Goes in if a key's section; or where no section is told apart, or tables tell.
      bool const of_key = !inner || zone.has_tables || section_speaks_of_key(document_, node) ||
                          within_key(node, zone_top);
      if (!of_key) zone.left.push_back(node);
      return of_key;
    }
    if (is_named(node, "taxon-treatment")) {
      zone.left.push_back(node);
      return false;
    }
    if ((is_named(node, "title") || is_named(node, "caption")) && is_section(parent)) {
      if (take_number(node, zone_top)) return false;
      bool const wanted = parent == zone_top || !zone.has_tables || holds_key_table(parent);
      if (wanted) append(zone.lines, whole_line(document_, node, LineRole::heading));
      return false;
    }
    if (is_named(node, "table-wrap") || is_named(node, "array")) {
      take_wrap(node, zone);
      return false;
    }
    if (is_table(node)) {
      take_wrap(node, zone);
      return false;
    }
    if (is_named(node, "fig") || is_named(node, "fig-group")) {
      append(zone.lines, whole_line(document_, node, LineRole::aside));
      return false;
    }
    if (is_text_block(node)) {
      take_text(node, parent, zone_top, zone);
      return false;
    }
    if (is_named(node, "label") && is_section(parent) && title_of(document_, parent).empty()) {
      take_number(node, zone_top);
    }
    return !is_named(node, "fn") && !is_named(node, "label");
  }

  // "<sec><title>1</title><p>Wings clear ... 2</p><p>– Wings dark ... Aus bus</p></sec>": a section
  // for each couplet.
  bool take_number(pugi::xml_node node, pugi::xml_node zone_top) {
    if (node.parent() == zone_top) return false;
    auto words = xml::read_flow(document_, node).joined();
    bool const number = is_number_alone(words);
    if (number) couplet_ = std::move(words);
    return number;
  }

  [[nodiscard]] bool within_key(pugi::xml_node node, pugi::xml_node zone_top) const {
    for (node = node.parent(); node && node != zone_top; node = node.parent()) {
      if (is_section(node) && section_speaks_of_key(document_, node)) return true;
    }
    return false;
  }

  bool holds_key_table(pugi::xml_node section) {
    auto const [known, fresh] = holds_.emplace(section.hash_value(), false);
    if (!fresh) return known->second;
    bool found = false;
    walk(section, [&](pugi::xml_node node) {
      if (is_table(node)) found = found || is_key_table(node);
      return !found && !is_table(node);
    });
    return holds_[section.hash_value()] = found;
  }

  bool is_key_table(pugi::xml_node table) {
    auto const [known, fresh] = holds_.emplace(table.hash_value(), false);
    if (!fresh) return known->second;
    auto const rows = table_lines(document_, table);
    return holds_[table.hash_value()] = wrap_speaks_of_key(document_, wrap_of(table)) ||
                                        looks_like_key(rows) || may_be_of_key(rows);
  }

  void take_wrap(pugi::xml_node wrap, KeyZone& zone) {
    std::vector<ManuscriptLine> rows;
    bool const key = wrap_speaks_of_key(document_, wrap);
    auto const add = [&](pugi::xml_node node) {
      if (!is_table(node)) return !is_named(node, "fn");
      append(rows, table_lines(document_, node));
      return false;
    };
    if (is_table(wrap)) {
      add(wrap);
    } else {
      walk(wrap, add);
    }
    if (rows.empty() || !(key || looks_like_key(rows) || may_be_of_key(rows))) return;
    zone.has_tables = true;
    bool const told = speaks_of_key(title_of(document_, wrap));
    bool const headed = !zone.lines.empty() && zone.lines.back().markup.role == LineRole::heading;
    append(zone.lines, wrap_title(wrap, told || !headed ? LineRole::heading : LineRole::aside));
    append(zone.lines, std::move(rows));
    append(zone.lines, wrap_foot(wrap));
  }

  void take_text(pugi::xml_node node, pugi::xml_node parent, pugi::xml_node zone_top,
                 KeyZone& zone) {
    if (!zone.has_tables) {
      auto lines = text_lines(document_, node);
      auto const number = std::exchange(couplet_, {});
      if (!number.empty() && !lines.empty() && !printed::read_label(lines.front().text)) {
        put_before(to_line(xml::FlowText{number}, LineRole::lead), lines.front());
      }
      append(zone.lines, std::move(lines));
    } else if (parent == zone_top || (is_section(parent) && holds_key_table(parent))) {
      append(zone.lines, whole_line(document_, node, LineRole::aside));
      // A table may be set into a paragraph.
      walk(node, [&](pugi::xml_node inside) {
        if (is_named(inside, "table-wrap") || is_table(inside)) {
          take_wrap(inside, zone);
          return false;
        }
        return true;
      });
    }
  }

  // "Table 2. Key to the larvae": label and caption.
  std::vector<ManuscriptLine> wrap_title(pugi::xml_node wrap, LineRole role) {
    std::vector<ManuscriptLine> lines;
    xml::FlowText title = xml::read_flow(document_, child(wrap, "label")).joined();
    auto caption = xml::read_flow(document_, child(wrap, "caption"));
    if (!title.empty() && title.text.back() == '.') title.text.pop_back();
    if (!caption.lines.empty()) title.append(caption.lines.front(), ". ");
    if (!title.empty()) lines.push_back(to_line(std::move(title), role));
    for (std::size_t i = 1; i < caption.lines.size(); ++i) {
      lines.push_back(to_line(std::move(caption.lines[i]), LineRole::aside));
    }
    for (auto& footnote : caption.footnotes) {
      lines.push_back(to_line(std::move(footnote), LineRole::aside));
    }
    return lines;
  }

  std::vector<ManuscriptLine> section_title(pugi::xml_node node) {
    for (node = node.parent(); node && !is_section(node);) node = node.parent();
    auto const title = child(node, "title");
    return title ? whole_line(document_, title, LineRole::heading) : std::vector<ManuscriptLine>{};
  }

  // The genus whose account the key to its species stands in: names of the key are shortened by it.
  std::vector<ManuscriptLine> taxon_title_above(pugi::xml_node section) {
    for (auto node = section.parent(); node; node = node.parent()) {
      auto const title = is_section(node) ? child(node, "title") : pugi::xml_node{};
      if (!title) continue;
      auto words = xml::read_flow(document_, title).joined();
      if (!marked::is_taxon_title(words)) return {};
      std::vector<ManuscriptLine> lines;
      lines.push_back(to_line(std::move(words), LineRole::heading));
      return lines;
    }
    return {};
  }

  std::vector<ManuscriptLine> wrap_foot(pugi::xml_node wrap) {
    std::vector<ManuscriptLine> lines;
    for (auto const& part : wrap.children()) {
      if (!is_named(part, "table-wrap-foot") && !is_named(part, "attrib")) continue;
      auto flow = xml::read_flow(document_, part);
      for (auto& line : flow.lines) lines.push_back(to_line(std::move(line), LineRole::aside));
      for (auto& note : flow.footnotes) lines.push_back(to_line(std::move(note), LineRole::aside));
    }
    return lines;
  }

  xml::Document const& document_;
  std::unordered_map<std::size_t, bool> holds_;  // of sections and tables: is there a key's table?
  xml::FlowText couplet_;  // the number of the couplet whose leads come next; empty: none is told
};

}  // namespace

bool speaks_of_key(std::string_view words) {
  static constexpr std::array kKeys{"key"sv,   "keys"sv,   "chiave"sv, "chiavi"sv, "clé"sv,
                                    "clés"sv,  "clef"sv,   "clefs"sv,  "clave"sv,  "claves"sv,
                                    "chave"sv, "chaves"sv, "clavis"sv, "claves"sv};
  auto const is_key = [](std::string_view word) {
    auto folded = printed::fold(word);
    while (!folded.empty() && (folded.back() == ':' || folded.back() == '.' ||
                               folded.back() == ',' || folded.back() == ')')) {
      folded.pop_back();
    }
    if (!folded.empty() && folded.front() == '(') folded.erase(0, 1);
    if (folded.find("schlüssel") != std::string::npos) return true;  // also as a part of a word
    return is_one_of(kKeys, folded);
  };
  auto const all = printed::words_of(words);
  return std::any_of(all.begin(), all.end(), is_key);
}

std::string title_of(xml::Document const& document, pugi::xml_node element) {
  auto title = child(element, "title");
  if (!title) title = child(element, "caption");
  return title ? xml::read_flow(document, title).joined().text : std::string{};
}

std::vector<KeyZone> find_key_zones(xml::Document const& document, pugi::xml_node article) {
  std::vector<KeyZone> zones;
  Collector collector{document};
  auto const keep = [&](KeyZone&& zone) {
    if (!zone.lines.empty()) zones.push_back(std::move(zone));
  };
  walk(article, [&](pugi::xml_node node) {
    if (node.type() != pugi::node_element) return false;
    auto const name = xml::local_name(node);
    if (is_beside_article(name)) return false;
    if (is_section(node) && section_speaks_of_key(document, node)) {
      keep(collector.section(node));
      return false;
    }
    if (name == "table-wrap" || name == "array" || is_table(node)) {
      keep(collector.lone_table(node));
      return false;
    }
    if (name == "list" && speaks_of_key(node.attribute("list-content").value())) {
      keep({.element = node, .lines = text_lines(document, node)});
      return false;
    }
    return true;
  });
  return zones;
}

std::vector<KeyZone> other_sections(xml::Document const& document, pugi::xml_node article,
                                    std::vector<KeyZone> const& zones) {
  std::vector<KeyZone> others;
  Collector collector{document};
  std::unordered_set<std::size_t> read;
  for (auto const& zone : zones) read.insert(zone.element.hash_value());
  auto const is_read = [&read](pugi::xml_node node) { return read.contains(node.hash_value()); };
  auto const look = [&](pugi::xml_node node) {
    if (node.type() != pugi::node_element) return false;
    auto const name = xml::local_name(node);
    if (is_beside_article(name) || is_read(node)) return false;
    if (is_section(node) || name == "body") {
      auto zone = collector.own_text(node, is_read);
      if (!zone.lines.empty()) others.push_back(std::move(zone));
    }
    return true;
  };
  walk(article, look);
  for (auto const& zone : zones) {
    for (auto const left : zone.left) {
      if (look(left)) walk(left, look);
    }
  }
  return others;
}

}  // namespace keydrift::jats
