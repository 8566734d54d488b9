#pragma once
// Names that their form does not tell from words, but their genus does, since other leads lead to
// its species.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

class KnownGenera {
 public:
  // Those of the species that leads lead to, in full or abbreviated, as printed.
  explicit KnownGenera(std::vector<ReadLead> const& reads);

  // Begin of the name, or of the list of names, that ends the text: "… of the ocellus Aus dispar",
  // "… with 3 setae A. bus Roe, A. cus Dorn (see table 2)"; not one that is compared with.
  [[nodiscard]] std::optional<std::size_t> trailing_name(std::string_view text) const;

 private:
  [[nodiscard]] bool ends_in_names(std::string_view tail) const;
  std::unordered_map<std::string, std::size_t> species_;  // of each genus
};

// Begin of the bracket that ends the text with a name in Latin form behind a vernacular one: "Tail
// forked, Marsh Tern (Aus bus)".
[[nodiscard]] std::optional<std::size_t> bracketed_name(std::string_view text);

// Begin of the genus or higher name with its vernacular one that ends the text behind a sentence:
// "No teeth. Aus (marsh mice)".
[[nodiscard]] std::optional<std::size_t> explained_name(std::string_view text);

}  // namespace keydrift::printed
