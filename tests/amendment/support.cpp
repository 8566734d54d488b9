#include "support.hpp"

#include <stdexcept>

#include "keydrift/formats/amendment_reader.hpp"
#include "keydrift/formats/printed_key.hpp"

namespace keydrift::test {
namespace {

char const* to_word(AmendmentAct act) {
  switch (act) {
    case AmendmentAct::replaced:
      return "replaced";
    case AmendmentAct::inserted:
      return "inserted";
    case AmendmentAct::removed:
      return "removed";
    case AmendmentAct::added:
      return "added";
    case AmendmentAct::redirected:
      return "redirected";
    case AmendmentAct::reworded:
      return "reworded";
    case AmendmentAct::renamed:
      return "renamed";
    case AmendmentAct::noted:
      return "noted";
    case AmendmentAct::renumbered:
      return "renumbered";
    case AmendmentAct::back_references:
      return "back-references";
  }
  return "?";
}

std::string destination(Edition const& edition, Lead const& lead) {
  if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
    return edition[to->couplet].label;
  }
  if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    std::string names;
    for (auto const taxon : taxa->taxa) names += (names.empty() ? "" : ", ") + edition[taxon].name;
    return names;
  }
  if (auto const* key = std::get_if<ToKey>(&lead.destination)) return key->key;
  return "?" + std::get<Unresolved>(lead.destination).printed;
}

std::string in_short(Edition const& edition, Couplet const& couplet) {
  auto text = couplet.label;
  if (!couplet.back_references.empty()) {
    std::string labels;
    for (auto const& one : couplet.back_references) {
      labels += (labels.empty() ? "" : ", ") + one.label;
    }
    text += " (" + labels + ")";
  }
  text += ":";
  for (auto const& lead : couplet.leads) {
    text += (&lead == &couplet.leads.front() ? " " : " | ") + lead.text + " > " +
            destination(edition, lead);
    for (auto const& note : lead.notes) text += " {" + note + "}";
  }
  for (auto const& note : couplet.notes) text += " {{" + note + "}}";
  return text + "\n";
}

}  // namespace

std::string_view small_key() {
  return "Title: Key to Aus and Bus\n"
         "Edition: 1998\n"
         "\n"
         "1      Wings clear ..... 2\n"
         "–      Wings dark ..... 3\n"
         "2 (1)  Legs pale ..... Aus bus Smith\n"
         "–      Legs dark ..... Aus cus\n"
         "3 (1)  Head red ..... 4\n"
         "–      Head blue ..... Bus dus\n"
         "4 (3)  Tail long; 4 setae ..... Bus eus\n"
         "–      Tail short ..... Bus fus\n";
}

Edition read_key(std::string_view text) {
  auto loaded = read_printed_key({.name = "key.txt", .bytes = text});
  if (!loaded) throw std::runtime_error{"no key: " + told(loaded.findings)};
  return std::move(loaded.value->edition);
}

Amendment read_piece(std::string_view text, std::string_view name) {
  auto loaded = read_amendment({.name = name, .bytes = text});
  if (!loaded) throw std::runtime_error{"no piece: " + told(loaded.findings)};
  return std::move(*loaded.value);
}

Amended amended(std::string_view key, std::string_view piece) {
  auto const amendment = read_piece(piece);
  return amend(read_key(key), {&amendment, 1});
}

std::string key_in_short(Edition const& edition) {
  std::string text;
  for (auto const& couplet : edition.couplets) text += in_short(edition, couplet);
  return text;
}

std::string couplet_in_short(Edition const& edition, std::string_view label) {
  for (auto const& couplet : edition.couplets) {
    if (couplet.label == label) return in_short(edition, couplet);
  }
  return "none";
}

std::string deeds_in_short(Amended const& amended) {
  std::string text;
  for (auto const& deed : amended.deeds) {
    text += std::string{to_word(deed.act)} + " " + deed.couplet +
            (deed.detail.empty() ? "" : ": " + deed.detail) + "\n";
  }
  return text;
}

std::string told(std::vector<Finding> const& findings) {
  std::string text;
  for (auto const& finding : findings) text += to_text(finding);
  return text;
}

}  // namespace keydrift::test
