#pragma once
// Where the leads of a made key lead, as they were read.

#include <string>
#include <variant>

#include "keydrift/key/edition.hpp"

namespace keydrift::test {

// Where the lead leads that begins with these words: a name, or the words of the first lead of a
// couplet; empty where no lead begins so.
[[nodiscard]] inline std::string destination_of(Edition const& edition, std::string const& words) {
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      if (!lead.text.starts_with(words)) continue;
      if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
        return edition[to->couplet].leads.front().text;
      }
      auto const* taxa = std::get_if<ToTaxa>(&lead.destination);
      return taxa != nullptr && taxa->taxa.size() == 1 ? edition[taxa->taxa.front()].name
                                                       : std::string{};
    }
  }
  return {};
}

}  // namespace keydrift::test
