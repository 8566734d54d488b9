#include "keydrift/formats/jats_read.hpp"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "keydrift/formats/jats_rows.hpp"
#include "keydrift/formats/jats_sections.hpp"
#include "keydrift/formats/jats_text.hpp"
#include "keydrift/formats/jats_told_names.hpp"
#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift {
namespace {

using jats::KeyZone;

// The first element of that local name below `top`, itself included.
pugi::xml_node find_element(pugi::xml_node top, std::string_view name) {
  if (xml::local_name(top) == name) return top;
  auto node = top.first_child();
  while (node) {
    if (xml::local_name(node) == name) return node;
    if (node.first_child()) {
      node = node.first_child();
      continue;
    }
    while (node != top && !node.next_sibling()) node = node.parent();
    node = node == top ? pugi::xml_node{} : node.next_sibling();
  }
  return {};
}

std::string words_within(xml::Document const& document, pugi::xml_node node) {
  return node ? xml::read_flow(document, node).joined().text : std::string{};
}

std::string author(xml::Document const& document, pugi::xml_node contributor) {
  if (auto const name = contributor.child("name")) {
    auto const given = words_within(document, name.child("given-names"));
    auto const surname = words_within(document, name.child("surname"));
    return given.empty() || surname.empty() ? given + surname : given + " " + surname;
  }
  for (auto const* other : {"string-name", "collab"}) {
    if (auto const node = contributor.child(other)) return words_within(document, node);
  }
  return {};
}

std::optional<int> year_of_article(pugi::xml_node meta) {
  for (auto const& date : meta.children("pub-date")) {
    std::string_view const text = date.child("year").text().get();
    int value = 0;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error == std::errc{} && end == text.data() + text.size()) return value;
  }
  return std::nullopt;
}

// The elements that hold an article, a book or a chapter of one (BITS, ANSI/NISO Z39.102).
pugi::xml_node find_whole(xml::Document const& document) {
  for (auto const* name : {"article", "book", "book-part"}) {
    if (auto const node = find_element(document.root(), name)) return node;
  }
  return {};
}

// The description of an article; of the book's only chapter, else of the book.
pugi::xml_node find_meta(pugi::xml_node whole) {
  if (auto const meta = whole.child("front").child("article-meta")) return meta;
  if (auto const meta = whole.child("book-part-meta")) return meta;
  auto const body = whole.child("book-body");
  auto const chapter = body.child("book-part");
  if (chapter && !chapter.next_sibling("book-part")) {
    if (auto const meta = chapter.child("book-part-meta")) return meta;
  }
  return whole.child("book-meta");
}

FrontMatter read_article_front(xml::Document const& document, pugi::xml_node article) {
  FrontMatter front;
  auto const meta = find_meta(article);
  auto titles = meta.child("title-group");
  if (!titles) titles = meta.child("book-title-group");
  for (auto const* name : {"article-title", "title", "book-title"}) {
    if (front.title.empty()) front.title = words_within(document, titles.child(name));
  }
  if (auto const more = words_within(document, titles.child("subtitle")); !more.empty()) {
    front.title += front.title.empty() ? more : ": " + more;
  }
  for (auto const& group : meta.children("contrib-group")) {
    for (auto const& contributor : group.children("contrib")) {
      std::string_view const type = contributor.attribute("contrib-type").value();
      if (!type.empty() && type != "author") continue;
      if (auto name = author(document, contributor); !name.empty()) {
        front.authors.push_back(std::move(name));
      }
    }
  }
  front.year = year_of_article(meta);
  front.language = article.attribute("xml:lang").value();
  return front;
}

std::size_t count_leads(Edition const& edition) {
  std::size_t leads = 0;
  for (auto const& couplet : edition.couplets) leads += couplet.leads.size();
  return leads;
}

Finding finding_at_title(xml::Document const& document, pugi::xml_node node, std::string code,
                         Severity severity, std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = document.name();
  finding.place = document.place(node);
  finding.printed = jats::title_of(document, node);
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

// The zones in which couplets are found; what is said of the others.
std::vector<KeyZone> only_keys(xml::Document const& document, std::vector<KeyZone> zones,
                               ReadLimits const& limits, std::vector<Finding>& findings) {
  std::vector<KeyZone> keys;
  for (auto& zone : zones) {
    if (read_manuscript(document.name(), zone.lines, limits)) {
      keys.push_back(std::move(zone));
    } else {
      findings.push_back(finding_at_title(
          document, zone.element, "unread-section", Severity::information,
          "this section speaks of a key, but no couplets were found in it; it was left aside", ""));
    }
  }
  return keys;
}

// Every couplet has rivals, and every lead leads somewhere.
bool is_whole(Edition const& edition) {
  return std::all_of(edition.couplets.begin(), edition.couplets.end(), [](Couplet const& couplet) {
    return couplet.leads.size() > 1 &&
           std::none_of(couplet.leads.begin(), couplet.leads.end(), [](Lead const& lead) {
             return std::holds_alternative<Unresolved>(lead.destination);
           });
  });
}

// Of sections that no word calls keys, those that are hardly anything else, or hold a whole one.
std::vector<KeyZone> keys_by_shape(xml::Document const& document, std::vector<KeyZone> zones,
                                   ReadLimits const& limits) {
  std::vector<KeyZone> keys;
  for (auto& zone : zones) {
    auto const reading = read_manuscript(document.name(), zone.lines, limits);
    if (!reading) continue;
    auto const& edition = reading.value->edition;
    bool const mostly = count_leads(edition) * 2 > zone.lines.size();
    if (edition.couplets.size() > 1 && (mostly || is_whole(edition))) {
      keys.push_back(std::move(zone));
    }
  }
  return keys;
}

// Footnotes at the article's end, whose marks stand in the keys: they follow the key that has the
// first of their marks.
void append_notes(xml::Document const& document, pugi::xml_node article,
                  std::vector<KeyZone>& zones) {
  std::map<std::string_view, pugi::xml_node> notes;  // by their ids
  auto const for_each = [](pugi::xml_node top, auto take) {
    top.find_node([&take](pugi::xml_node node) {
      take(node, xml::local_name(node));
      return false;
    });
  };
  for_each(article, [&notes](pugi::xml_node node, std::string_view name) {
    std::string_view const id = node.attribute("id").value();
    if (name == "fn" && !id.empty()) notes.emplace(id, node);
  });
  if (notes.empty()) return;
  // Those within a key were read with it.
  for (auto const& zone : zones) {
    for_each(zone.element, [&notes](pugi::xml_node node, std::string_view name) {
      if (name == "fn") notes.erase(node.attribute("id").value());
    });
  }
  for (auto& zone : zones) {
    for_each(zone.element, [&](pugi::xml_node node, std::string_view name) {
      auto const note = name == "xref" ? notes.find(node.attribute("rid").value()) : notes.end();
      if (note == notes.end()) return;
      auto lines = jats::whole_line(document, note->second, LineRole::aside);
      std::move(lines.begin(), lines.end(), std::back_inserter(zone.lines));
      notes.erase(note);
    });
  }
}

// Names are cut short whose genus no key tells: the article's title may.
bool lacks_genus(Loaded<PrintedReading> const& reading) {
  return std::any_of(reading.findings.begin(), reading.findings.end(),
                     [](Finding const& finding) { return finding.code == "genus-unknown"; });
}
std::optional<ManuscriptLine> title_line(xml::Document const& document, pugi::xml_node article) {
  auto const titles = find_meta(article).child("title-group");
  for (auto const* name : {"article-title", "title"}) {
    auto lines = jats::whole_line(document, titles.child(name), LineRole::heading);
    if (!lines.empty()) return std::move(lines.front());
  }
  return std::nullopt;
}

}  // namespace

bool is_jats(xml::Document const& document) { return static_cast<bool>(find_whole(document)); }

Loaded<PrintedReading> read_jats(xml::Document const& document, ReadLimits const& limits) {
  Loaded<PrintedReading> loaded;
  auto const article = find_whole(document);
  auto zones =
      only_keys(document, jats::find_key_zones(document, article), limits, loaded.findings);
  auto others = keys_by_shape(document, jats::other_sections(document, article, zones), limits);
  std::move(others.begin(), others.end(), std::back_inserter(zones));
  std::stable_sort(zones.begin(), zones.end(), [&](KeyZone const& a, KeyZone const& b) {
    return document.offset(a.element) < document.offset(b.element);
  });
  if (zones.empty()) {
    loaded.findings.push_back(finding_at_title(
        document, article, "no-couplets", Severity::error,
        "no key was found in the article: no table and no section has numbered leads",
        "check that the file is the whole article; a key that is a picture, or in another file, "
        "cannot be read"));
    sort_findings(loaded.findings);
    return loaded;
  }
  append_notes(document, article, zones);
  std::vector<ManuscriptLine> lines;
  for (auto& zone : zones) {
    std::move(zone.lines.begin(), zone.lines.end(), std::back_inserter(lines));
  }
  ToldNames told;
  for (auto const& zone : zones) jats::tell_names(zone.element, told);
  auto reading = read_manuscript(document.name(), lines, limits, told);
  if (lacks_genus(reading)) {
    if (auto title = title_line(document, article)) {
      lines.insert(lines.begin(), *std::move(title));
      reading = read_manuscript(document.name(), lines, limits, told);
    }
  }
  loaded.findings.insert(loaded.findings.end(), std::make_move_iterator(reading.findings.begin()),
                         std::make_move_iterator(reading.findings.end()));
  sort_findings(loaded.findings);
  if (!reading) return loaded;
  reading.value->edition.front = read_article_front(document, article);
  reading.value->source.layout_note = "article XML; " + reading.value->source.layout_note +
                                      "; what stands outside its keys was left aside";
  loaded.value = std::move(reading.value);
  return loaded;
}

}  // namespace keydrift
