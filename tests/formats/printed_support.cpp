#include "printed_support.hpp"

#include <gtest/gtest.h>

#include <variant>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"

namespace keydrift::test {
namespace {

struct DestinationWords {
  Edition const& edition;

  std::string operator()(Unresolved const& none) const { return "?" + none.printed; }
  std::string operator()(ToCouplet const& to) const { return edition[to.couplet].label; }
  std::string operator()(ToKey const& to) const { return "key: " + to.key; }
  std::string operator()(ToTaxa const& to) const {
    std::string text;
    for (auto const taxon : to.taxa) text += (text.empty() ? "" : " + ") + edition[taxon].name;
    return text;
  }
};

}  // namespace

PrintedReading read_key(std::string_view text) {
  auto loaded = read_printed_key({.name = "key.txt", .bytes = text});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return std::move(*loaded.value);
}

std::string sketch(Edition const& edition) {
  std::string text;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      text += couplet.label + "[" + lead.label + "] " + lead.text + " -> " +
              std::visit(DestinationWords{edition}, lead.destination);
      if (!lead.taxon_remark.empty()) text += " (" + lead.taxon_remark + ")";
      text += "\n";
    }
  }
  return text;
}

std::string sketch(std::string_view text) { return sketch(read_key(text).edition); }

std::string sketch_page(std::string_view page) {
  auto const loaded = read_edition({.name = "key.html", .bytes = page});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return sketch(loaded.value->edition);
}

std::string led_to(std::string_view destination) {
  auto const whole =
      sketch("1. Wings clear ..... Zus yus\n– Wings dark ..... " + std::string{destination} +
             "\n2. Legs pale ..... Aus bus\n– Legs dark ..... Aus cus\n");
  auto const begin = whole.find("Wings dark -> ") + 14;
  return whole.substr(begin, whole.find('\n', begin) - begin);
}

std::string line_kinds(std::string_view text) {
  std::string kinds;
  for (auto const& line : read_key(text).source.lines) {
    kinds += (kinds.empty() ? "" : ", ") + std::string{to_word(line.kind)};
  }
  return kinds;
}

std::string all_with(std::string text, std::string_view right, std::string_view put) {
  for (auto at = text.find(right); at != std::string::npos;
       at = text.find(right, at + put.size())) {
    text.replace(at, right.size(), put);
  }
  return text;
}

std::vector<std::string> findings_of(std::string_view text) {
  return one_line_each(read_printed_key({.name = "key.txt", .bytes = text}).findings);
}

}  // namespace keydrift::test
