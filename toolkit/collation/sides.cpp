#include "keydrift/collation/sides.hpp"

#include <variant>

#include "keydrift/key/part_titles.hpp"

namespace keydrift::collating {

namespace {

std::uint32_t couplet_behind(Edition const& edition, PartTitles const& titles, Lead const& lead) {
  auto behind = none;
  if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) behind = to->couplet.index;
  if (auto const* to = std::get_if<ToKey>(&lead.destination)) {
    if (auto const part = titles.find(to->key)) behind = edition.parts[*part].start.index;
  }
  return behind < edition.couplets.size() ? behind : none;
}

}  // namespace

Side make_side(Edition const& edition, KeyGraph const& graph) {
  Side side;
  side.edition = &edition;
  side.graph = &graph;
  auto const count = static_cast<std::uint32_t>(edition.couplets.size());
  side.first_lead.reserve(count + std::size_t{1});
  PartTitles const titles{edition};
  std::uint32_t row = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    side.first_lead.push_back(row);
    auto const leads = static_cast<std::uint32_t>(edition.couplets[i].leads.size());
    for (std::uint32_t k = 0; k < leads; ++k) {
      side.leads.push_back({CoupletId{i}, k});
      side.behind.push_back(couplet_behind(edition, titles, edition.couplets[i].leads[k]));
    }
    row += leads;
  }
  side.first_lead.push_back(row);

  side.rank.assign(count, none);
  std::uint32_t next_rank = 0;
  std::vector<std::uint32_t> waiting;
  auto const walk_from = [&](std::uint32_t start) {
    waiting.push_back(start);
    while (!waiting.empty()) {
      auto const couplet = waiting.back();
      waiting.pop_back();
      if (couplet >= count || side.rank[couplet] != none) continue;
      side.rank[couplet] = next_rank++;
      for (auto k = side.end_lead(couplet); k-- > side.first_lead[couplet];) {
        if (side.behind[k] != none) waiting.push_back(side.behind[k]);
      }
    }
  };
  for (auto const& part : edition.parts) walk_from(part.start.index);
  for (std::uint32_t i = 0; i < count; ++i) walk_from(i);
  return side;
}

}  // namespace keydrift::collating
