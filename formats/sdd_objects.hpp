#pragma once
// The objects of an SDD document: identifiers, labels, texts by language.  Inner header of formats.

#include <cstdint>
#include <limits>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/formats/xml_document.hpp"
#include "keydrift/formats/xml_text.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::sdd {

// No couplet and no lead, among their numbers.
inline constexpr auto kNowhere = std::numeric_limits<std::uint32_t>::max();

// Children by local name; elements of our own namespace are no children in this sense.
[[nodiscard]] pugi::xml_node child(pugi::xml_node node, std::string_view name);
[[nodiscard]] std::vector<pugi::xml_node> children(pugi::xml_node node, std::string_view name);

struct TaxonLabel {
  std::string name;
  std::string authorship;
};

class Objects {
 public:
  // Borrows the document.  Adds repeated-id.
  Objects(xml::Document const& document, pugi::xml_node data_set, std::vector<Finding>& findings);

  [[nodiscard]] xml::Document const& document() const { return document_; }
  [[nodiscard]] pugi::xml_node data_set() const { return data_set_; }
  // The element that the reference names; none if it is missing or of another kind.
  [[nodiscard]] pugi::xml_node find(std::string_view id, std::string_view name) const;

  // The text of the data set's language, else the first; inline markup of the texts is taken out.
  [[nodiscard]] xml::FlowText pick(std::vector<pugi::xml_node> const& texts) const;
  // The label of an object's Representation, else its first detail.
  [[nodiscard]] std::string label(pugi::xml_node object) const;
  [[nodiscard]] TaxonLabel taxon(pugi::xml_node object) const;
  // Labels of all objects that the scope's references of that name name, joined.
  [[nodiscard]] std::string labels(pugi::xml_node scope, std::string_view reference,
                                   std::string_view object) const;

  // Attributes and elements of our own; "" and none if the document has none.
  [[nodiscard]] std::string own(pugi::xml_node node, std::string_view attribute) const;
  [[nodiscard]] std::vector<std::string> own_texts(pugi::xml_node node,
                                                   std::string_view name) const;
  [[nodiscard]] std::vector<pugi::xml_node> own_children(pugi::xml_node node,
                                                         std::string_view name) const;
  [[nodiscard]] bool is_own() const { return !prefix_.empty(); }  // written by write_sdd
  // Texts in languages that were not picked.
  [[nodiscard]] std::size_t passed_over() const { return passed_over_; }

 private:
  xml::Document const& document_;
  pugi::xml_node data_set_;
  std::string language_;
  std::string prefix_;  // of our own namespace, with the colon
  std::unordered_map<std::string_view, pugi::xml_node> by_id_;
  mutable std::size_t passed_over_{};
};

// Title, authors, language, scope of the data set; what write_sdd kept in words of its own.
[[nodiscard]] FrontMatter read_front(Objects const& objects, pugi::xml_node key,
                                     std::vector<Finding>& findings);

}  // namespace keydrift::sdd
