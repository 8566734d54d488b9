#include <algorithm>
#include <array>

#include "keydrift/taxa/name_tokens.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

struct PrintedRank {
  std::string_view printed;
  std::string_view rank;
};
constexpr std::array kPlainRanks{
    PrintedRank{"subsp.", "subspecies"},  PrintedRank{"var.", "variety"},
    PrintedRank{"subvar.", "subvariety"}, PrintedRank{"f.", "form"},
    PrintedRank{"subf.", "subform"},      PrintedRank{"f. sp.", "special form"},
    PrintedRank{"ab.", "aberration"},     PrintedRank{"morph", "morph"},
    PrintedRank{"natio", "natio"},        PrintedRank{"subg.", "subgenus"},
    PrintedRank{"sect.", "section"},      PrintedRank{"subsect.", "subsection"},
    PrintedRank{"ser.", "series"},        PrintedRank{"subser.", "subseries"},
};

}  // namespace

std::string plain_name(ParsedName const& name) {
  std::string plain;
  auto const join = [&](std::string_view word) {
    if (word.empty()) return;
    if (!plain.empty()) plain += ' ';
    plain += word;
  };
  if (name.hybrid_genus) join(kTimes);
  join(name.genus);
  if (name.hybrid && !name.hybrid_genus && name.other_parent.empty() && !name.species.empty()) {
    join(kTimes);
  }
  join(name.species);
  auto const rank = std::find_if(kPlainRanks.begin(), kPlainRanks.end(),
                                 [&](PrintedRank const& entry) { return entry.rank == name.rank; });
  if (name.rank == "aggregate") {
    join(name.species.empty() ? "group" : "agg.");
  } else if (name.rank == "cultivar") {
    join("'" + name.infraspecies + "'");
  } else {
    if (rank != kPlainRanks.end()) join(rank->printed);
    join(name.infraspecies.empty() && name.species.empty() && !name.rank.empty()
             ? name.subgenus
             : name.infraspecies);
  }
  if (!name.other_parent.empty()) {
    join(kTimes);
    join(name.other_parent);
  }
  return plain;
}

std::string plain_name(std::string_view name) { return plain_name(parse_name(name)); }

}  // namespace keydrift
