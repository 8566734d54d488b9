#include <map>

#include "keydrift/amendment/amend.hpp"
#include "keydrift/key/labels.hpp"

namespace keydrift {
namespace {

// Every couplet's label as it is to be; those of keys with other labels than numbers stay.
std::vector<std::string> numbered(Edition const& edition, LabelIndex const& labels) {
  std::vector<std::string> fresh;
  fresh.reserve(edition.couplets.size());
  for (std::size_t part = 0; part < labels.part_count(); ++part) {
    auto const begin = labels.part_begin(part).index;
    auto const end = labels.part_end(part).index;
    bool numbers = true;
    for (auto c = begin; c < end; ++c) {
      auto const& label = edition.couplets[c].label;
      numbers = numbers && (label.empty() || label_number(label));
    }
    for (auto c = begin; c < end; ++c) {
      fresh.push_back(numbers ? std::to_string(c - begin + 1) : edition.couplets[c].label);
    }
  }
  return fresh;
}

}  // namespace

std::vector<std::pair<std::string, std::string>> renumber(Edition& edition) {
  LabelIndex const labels{edition};
  auto const fresh = numbered(edition, labels);
  std::vector<std::map<std::string, std::string>> by_part(labels.part_count());
  std::vector<std::size_t> part_of;
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    part_of.push_back(labels.part_of({c}));
    by_part[part_of.back()].emplace(label_key(edition.couplets[c].label), fresh[c]);
  }
  std::vector<std::pair<std::string, std::string>> changed;
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    auto& couplet = edition.couplets[c];
    for (auto& reference : couplet.back_references) {
      auto const& known = by_part[part_of[c]];
      auto const found = known.find(label_key(reference.label));
      if (found != known.end()) reference.label = found->second;
    }
    for (auto& lead : couplet.leads) {
      if (!couplet.label.empty() && lead.label.starts_with(couplet.label)) {
        lead.label.replace(0, couplet.label.size(), fresh[c]);
      }
      auto const* to = std::get_if<ToCouplet>(&lead.destination);
      if (to != nullptr) lead.destination_printed = fresh[to->couplet.index];
    }
    if (couplet.label == fresh[c]) continue;
    changed.emplace_back(couplet.label, fresh[c]);
    couplet.label = fresh[c];
  }
  return changed;
}

}  // namespace keydrift
