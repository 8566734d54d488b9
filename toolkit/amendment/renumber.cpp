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

// "Amended in couplets 3 and 3a.": the note that amending leaves names couplets as they are called.
// "… and 5 more" counts them.
void renumber_note(std::string& text, std::map<std::string, std::string> const& fresh) {
  if (!text.starts_with(kAmendedNote)) return;
  auto told = std::string{kAmendedNote};
  for (auto at = told.size(); at < text.size();) {
    auto const end = std::min(text.find_first_of(" ,.", at), text.size());
    auto const found = fresh.find(label_key(text.substr(at, end - at)));
    bool const counts = text.compare(end, 5, " more") == 0;
    told += found == fresh.end() || counts ? text.substr(at, end - at) : found->second;
    auto const next = std::min(text.find_first_not_of(" ,.", end), text.size());
    told += text.substr(end, next - end);
    at = next;
  }
  text = std::move(told);
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
  // Of several keys in a file nothing says which the note means.
  if (by_part.size() == 1) {
    for (auto& note : edition.notes) renumber_note(note.text, by_part[0]);
  }
  return changed;
}

}  // namespace keydrift
