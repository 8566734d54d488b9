#pragma once
// The species that a list, or the accounts around a key, number.  Inner header of formats.

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// The number of the species at a lead's end: 12 of "12. A. busa", 1899 of "busa, 1899."; 0 for
// other ends.
[[nodiscard]] std::uint32_t species_number_at(std::string_view end);

struct ListedSpecies {
  std::string name;      // "A. busa" or "Ausella busa", without its author
  std::uint32_t line{};  // its number
};

// "5. A. busa Roe          12. A. cusa Roe", "5. AUSELLA BUSA Roe, Trans. …": in lines that are of
// no lead.  Of several with one number, the first that stands.
class NumberedSpecies {
 public:
  NumberedSpecies(KeyText const& key, SortedLines const& sorted);

  // nullptr where no species has that number.
  [[nodiscard]] ListedSpecies const* find(std::uint32_t number) const;

 private:
  void look_at(SourceLine const& line);
  void add(std::uint32_t number, std::string_view printed, std::uint32_t line);

  std::unordered_map<std::uint32_t, ListedSpecies> listed_;
};

}  // namespace keydrift::printed
