// Lead text: a couplet of two leads, parted by the first line feed of the input.

#include <variant>

#include "checks.hpp"
#include "keydrift/formats/text.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  auto const decoded = decode_text({.name = "words", .bytes = fuzz::as_text(data, size)});
  fuzz::check_loaded(decoded);
  if (!decoded) return 0;
  auto const& text = decoded.value->text;
  auto const border = text.find('\n');
  Edition edition;
  edition.parts.push_back({"", CoupletId{0}, {}});
  edition.taxa = {{"Aus bus", "", {}}, {"Aus cus", "", {}}};
  Couplet couplet;
  couplet.label = "1";
  for (std::uint32_t i = 0; i < 2; ++i) {
    Lead lead;
    lead.label = i == 0 ? "1a" : "1b";
    auto words = i == 0 ? text.substr(0, border)
                        : (border == std::string::npos ? "" : text.substr(border + 1));
    // Readers end lines and pages; no lead holds either.
    for (auto& c : words) c = c == '\n' || c == '\f' ? ' ' : c;
    lead.text = std::move(words);
    lead.destination = ToTaxa{{TaxonId{i}}};
    couplet.leads.push_back(std::move(lead));
  }
  edition.couplets.push_back(std::move(couplet));
  fuzz::check_edition(edition);
  return 0;
}
