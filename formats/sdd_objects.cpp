#include "keydrift/formats/sdd_objects.hpp"

#include <array>
#include <charconv>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_front.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/sdd_text.hpp"
#include "keydrift/formats/sdd_write.hpp"
#include "keydrift/formats/text_encodings.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::sdd {
namespace {

using namespace std::string_view_literals;
using xml::FlowText;

// "en-us" and "EN" are one language here.
bool same_language(std::string_view a, std::string_view b) {
  auto const primary = [](std::string_view tag) {
    return printed::fold(tag.substr(0, tag.find_first_of("-_")));
  };
  return primary(a) == primary(b);
}

// Length of "<i>", "</sub>", "<br/>" at the front, 0 for anything else: what the proposal that
// accompanies the standard allows within texts, escaped.
std::size_t tag_length(std::string_view text) {
  static constexpr std::array kTags{"strong"sv, "em"sv, "b"sv, "i"sv, "sub"sv, "sup"sv, "br"sv};
  auto const close = text.substr(0, 16).find('>');
  if (close == std::string_view::npos) return 0;
  auto name = text.substr(1, close - 1);
  if (!name.empty() && name.front() == '/') name.remove_prefix(1);
  if (!name.empty() && name.back() == '/') name.remove_suffix(1);
  while (!name.empty() && name.back() == ' ') name.remove_suffix(1);
  return is_one_of(kTags, name) ? close + 1 : 0;
}

FlowText without_tags(FlowText const& flow) {
  if (flow.text.find('<') == std::string::npos) return flow;
  FlowText out;
  auto rest = flow;
  for (;;) {
    std::size_t at = 0;
    std::size_t length = 0;
    while ((at = rest.text.find('<', at)) != std::string::npos) {
      length = tag_length(std::string_view{rest.text}.substr(at));
      if (length > 0) break;
      ++at;
    }
    if (at == std::string::npos) break;
    auto front = rest;
    front.text.resize(at);
    std::erase_if(front.stretches, [at](auto const& one) { return one.text_begin >= at; });
    front.marks.clear();
    bool const line_break = rest.text[at + 1] == 'b' && rest.text[at + 2] == 'r';
    bool const needs_blank = line_break && !front.text.empty() && front.text.back() != ' ';
    out.append(front, "");
    if (needs_blank) out.text += ' ';
    rest.drop_front(at + length);
  }
  out.append(rest, "");
  return out;
}

template <class Visit>
void walk(pugi::xml_node top, Visit visit) {
  auto node = top.first_child();
  while (node) {
    visit(node);
    if (node.first_child()) {
      node = node.first_child();
      continue;
    }
    while (node != top && !node.next_sibling()) node = node.parent();
    node = node == top ? pugi::xml_node{} : node.next_sibling();
  }
}

std::string own_prefix(pugi::xml_node root) {
  for (auto const& attribute : root.attributes()) {
    std::string_view const name = attribute.name();
    if (name.substr(0, 6) == "xmlns:" && std::string_view{attribute.value()} == kSddOwn) {
      return std::string{name.substr(6)} + ":";
    }
  }
  return {};
}

std::optional<int> year_of(std::string_view date) {
  int year = 0;
  auto const digits = date.substr(0, 4);
  auto const [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), year);
  if (error != std::errc{} || end != digits.data() + digits.size() || digits.size() < 4) {
    return std::nullopt;
  }
  return year;
}

}  // namespace

pugi::xml_node child(pugi::xml_node node, std::string_view name) {
  for (auto one : node.children()) {
    if (xml::local_name(one) == name) return one;
  }
  return {};
}

std::vector<pugi::xml_node> children(pugi::xml_node node, std::string_view name) {
  std::vector<pugi::xml_node> found;
  for (auto one : node.children()) {
    if (xml::local_name(one) == name) found.push_back(one);
  }
  return found;
}

Objects::Objects(xml::Document const& document, pugi::xml_node data_set,
                 std::vector<Finding>& findings)
    : document_{document},
      data_set_{data_set},
      language_{data_set.attribute("xml:lang").value()},
      prefix_{own_prefix(document.root())} {
  walk(document.root(), [&](pugi::xml_node node) {
    std::string_view const id = node.attribute("id").value();
    if (id.empty()) return;
    auto const [first, fresh] = by_id_.emplace(id, node);
    if (fresh) return;
    Finding finding;
    finding.code = "repeated-id";
    finding.severity = Severity::warning;
    finding.file = document.name();
    finding.place = document.place(node);
    finding.printed = std::string{id};
    finding.message =
        "the id \"" + std::string{id} + "\" stands twice; references to it mean the first";
    finding.remedy = "give one of the two another id";
    finding.related.push_back({document.place(first->second), "the first"});
    findings.push_back(std::move(finding));
  });
}

pugi::xml_node Objects::find(std::string_view id, std::string_view name) const {
  auto const found = by_id_.find(id);
  if (found == by_id_.end() || xml::local_name(found->second) != name) return {};
  return found->second;
}

FlowText Objects::pick(std::vector<pugi::xml_node> const& texts) const {
  pugi::xml_node best;
  for (auto const& text : texts) {
    std::string_view const language = text.attribute("xml:lang").value();
    bool const fits = language.empty() || same_language(language, language_);
    if (fits) {
      best = text;
      break;
    }
  }
  if (!best && !texts.empty()) best = texts.front();
  for (auto const& text : texts) {
    std::string_view const language = text.attribute("xml:lang").value();
    if (text != best && !language.empty() &&
        !same_language(language, best.attribute("xml:lang").as_string(language_.c_str()))) {
      ++passed_over_;
    }
  }
  if (!best) return {};
  // The primer wraps texts: Statement/Label, or Statement/Representation/Label.
  if (auto const wrapped = child(best, "Representation")) best = wrapped;
  if (auto const labels = children(best, "Label"); !labels.empty()) best = labels.front();
  auto flow = xml::read_flow(document_, best).joined();
  return is_own() ? flow : without_tags(flow);
}

std::string Objects::label(pugi::xml_node object) const {
  auto const representation = child(object, "Representation");
  std::vector<pugi::xml_node> full;
  auto labels = children(representation, "Label");
  for (auto const& one : labels) {
    std::string_view const role = one.attribute("role").value();
    if (role.empty() || role == "Full") full.push_back(one);
  }
  auto const details = children(representation, "Detail");
  // A label that write_sdd had to cut stands in full beside it.
  if (is_own() && !details.empty()) return pick(details).text;
  auto text = pick(full.empty() ? labels : full).text;
  return text.empty() ? pick(details).text : text;
}

TaxonLabel Objects::taxon(pugi::xml_node object) const {
  auto const whole = label(object);
  auto const text = [&](char const* element) {
    auto const simple = child(child(object, element), "Simple");
    return simple ? without_tags(xml::read_flow(document_, simple).joined()).text : std::string{};
  };
  auto name = text("CanonicalName");
  if (!name.empty()) return {std::move(name), text("CanonicalAuthorship")};
  if (whole.empty()) return {};
  // Only a label that is all name and author is parted.
  auto const reading = printed::read_taxa(whole);
  if (reading.taxa.size() == 1 && reading.remark.empty() && reading.figures.empty() &&
      !reading.taxa[0].authorship.empty() &&
      reading.taxa[0].name + " " + reading.taxa[0].authorship == whole) {
    return {reading.taxa[0].name, reading.taxa[0].authorship};
  }
  return {whole, {}};
}

std::string Objects::labels(pugi::xml_node scope, std::string_view reference,
                            std::string_view object) const {
  std::string all;
  for (auto const& one : children(scope, reference)) {
    auto const text = label(find(one.attribute("ref").value(), object));
    if (!text.empty()) all += (all.empty() ? "" : "; ") + text;
  }
  return all;
}

std::string Objects::own(pugi::xml_node node, std::string_view attribute) const {
  if (!is_own()) return {};
  return encodings::to_nfc(node.attribute((prefix_ + std::string{attribute}).c_str()).value());
}

std::vector<pugi::xml_node> Objects::own_children(pugi::xml_node node,
                                                  std::string_view name) const {
  std::vector<pugi::xml_node> found;
  if (!is_own()) return found;
  auto const full = prefix_ + std::string{name};
  for (auto const& one : node.children(full.c_str())) found.push_back(one);
  return found;
}

std::vector<std::string> Objects::own_texts(pugi::xml_node node, std::string_view name) const {
  std::vector<std::string> texts;
  for (auto const& one : own_children(node, name)) {
    texts.push_back(encodings::to_nfc(clean(one.text().get())));
  }
  return texts;
}

FrontMatter read_front(Objects const& objects, pugi::xml_node key, std::vector<Finding>& findings) {
  auto const data_set = objects.data_set();
  if (auto const own = objects.own_children(data_set, "front"); !own.empty() || objects.is_own()) {
    std::string text;
    for (auto const& line : own) {
      text += std::string{line.attribute("name").value()} + ": " +
              encodings::to_nfc(clean(line.text().get())) + "\n";
    }
    Edition edition;
    edition.name = objects.document().name();
    std::vector<Finding> more;
    auto const lines = printed::split_lines(text);
    static_cast<void>(printed::read_front_matter(lines, lines.size(), edition, more));
    for (auto& finding : more) {
      finding.place = objects.document().place(data_set);
      findings.push_back(std::move(finding));
    }
    for (auto& synonymy : edition.front.synonyms) {
      synonymy.place = objects.document().place(data_set);
    }
    for (auto* places :
         {&edition.front.scope.excluded_places, &edition.front.scope.listed_places}) {
      for (auto& place : *places) place = objects.document().place(data_set);
    }
    return std::move(edition.front);
  }
  FrontMatter front;
  front.title = objects.label(data_set);
  std::string_view const language = data_set.attribute("xml:lang").value();
  if (language != "und") front.language = language;
  auto const revision = child(data_set, "RevisionData");
  for (auto const& agent : children(child(revision, "Creators"), "Agent")) {
    std::string_view role = agent.attribute("role").value();
    if (auto const colon = role.find(':'); colon != std::string_view::npos) {
      role.remove_prefix(colon + 1);
    }
    auto name = objects.label(objects.find(agent.attribute("ref").value(), "Agent"));
    if (role == "aut" && !name.empty()) front.authors.push_back(std::move(name));
  }
  auto const version = child(revision, "Version");
  front.edition = version.attribute("major").value();
  std::string_view const minor = version.attribute("minor").value();
  if (!front.edition.empty() && !minor.empty() && minor != "0") {
    front.edition += "." + std::string{minor};
  }
  if (front.edition.empty()) front.edition = version.attribute("modifier").value();
  front.year = year_of(version.attribute("issued").value());
  for (auto const& scope : {child(key, "Scope"), child(data_set, "Scope")}) {
    auto const fill = [&](std::string& field, std::string value) {
      if (field.empty()) field = std::move(value);
    };
    fill(front.scope.taxa, objects.labels(scope, "TaxonName", "TaxonName"));
    fill(front.scope.region, objects.labels(scope, "GeographicArea", "GeographicArea"));
    fill(front.scope.life_stage,
         printed::fold(objects.labels(scope, "Stage", "DescriptiveConcept")));
    std::string_view const sex = child(scope, "Sex").text().get();
    if (sex == "Male") fill(front.scope.sex, "male");
    if (sex == "Female") fill(front.scope.sex, "female");
  }
  return front;
}

}  // namespace keydrift::sdd
