#include "keydrift/amendment/draft.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/key/near.hpp"

namespace keydrift::amending {
namespace {

std::size_t marks_of(std::string_view suffix) {
  return suffix.find_first_not_of("'*") == std::string_view::npos ? suffix.size() : 0;
}

bool bears_numbers(Couplet const& couplet) {
  for (auto const& lead : couplet.leads) {
    auto const number = label_number(lead.label);
    bool const first = &lead == &couplet.leads.front();
    bool const same = label_key(lead.label) == label_key(couplet.label);
    if (!number || !number->suffix.empty() || same != first) return false;
  }
  return couplet.leads.size() > 1;
}

}  // namespace

Draft::Draft(Edition const& original) : edition{original} {
  LabelIndex const labels{original};
  part_count = labels.part_count();
  for (std::uint32_t c = 0; c < original.couplets.size(); ++c) {
    order.push_back(c);
    part.push_back(labels.part_of(CoupletId{c}));
    by_label_[label_key(original.couplets[c].label)].push_back(c);
    serial.push_back(bears_numbers(original.couplets[c]) ? 1 : 0);
  }
  gone.assign(original.couplets.size(), 0);
}

std::vector<CoupletId> Draft::all(std::string_view label) const {
  std::vector<CoupletId> found;
  auto const rows = by_label_.find(label_key(label));
  if (rows == by_label_.end()) return found;
  for (auto const row : rows->second) {
    if (gone[row] == 0) found.push_back({row});
  }
  return found;
}

std::optional<CoupletId> Draft::find(std::string_view label) const {
  auto const found = all(label);
  return found.size() == 1 ? std::optional{found.front()} : std::nullopt;
}

std::optional<CoupletId> Draft::find(std::string_view label, std::size_t in_part) const {
  auto const found = all(label);
  for (auto const id : found) {
    if (part[id.index] == in_part) return id;
  }
  return found.size() == 1 ? std::optional{found.front()} : std::nullopt;
}

std::optional<std::uint32_t> Draft::ordinal_of(CoupletId couplet, std::string_view label) const {
  auto const key = label_key(label);
  auto const& leads = edition[couplet].leads;
  for (std::uint32_t ordinal = 0; ordinal < leads.size(); ++ordinal) {
    if (label_key(leads[ordinal].label) == key ||
        label_key(lead_name(edition, {couplet, ordinal})) == key) {
      return ordinal;
    }
  }
  // Letters and primes count the leads, whatever the edition prints.
  auto const own = label_key(edition[couplet].label);
  if (!key.starts_with(own)) return std::nullopt;
  auto const suffix = std::string_view{key}.substr(own.size());
  if (suffix.empty()) return std::nullopt;
  auto const marks = marks_of(suffix);
  if (marks > 0 && marks < leads.size()) return static_cast<std::uint32_t>(marks);
  bool const letter = suffix.size() == 1 && suffix[0] >= 'a' && suffix[0] <= 'z';
  auto const ordinal = static_cast<std::uint32_t>(suffix[0] - 'a');
  return letter && ordinal < leads.size() ? std::optional{ordinal} : std::nullopt;
}

std::optional<LeadId> Draft::find_lead(std::string_view label) const {
  auto const key = label_key(label);
  for (auto length = key.size(); length-- > 1;) {
    auto const couplet = find(std::string_view{key}.substr(0, length));
    if (!couplet) continue;
    if (auto const ordinal = ordinal_of(*couplet, key)) return LeadId{*couplet, *ordinal};
  }
  return find_serial_lead(label);
}

std::optional<LeadId> Draft::find_serial_lead(std::string_view label) const {
  auto const key = label_key(label);
  std::optional<LeadId> found;
  for (auto const row : order) {
    if (gone[row] != 0 || serial[row] == 0) continue;
    auto const& leads = edition.couplets[row].leads;
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      if (label_key(leads[i].label) != key) continue;
      if (found) return std::nullopt;
      found = LeadId{CoupletId{row}, i};
    }
  }
  return found;
}

std::size_t Draft::position(CoupletId id) const {
  return static_cast<std::size_t>(std::find(order.begin(), order.end(), id.index) - order.begin());
}

std::size_t Draft::position_behind(CoupletId anchor, std::string_view label) const {
  auto at = position(anchor) + 1;
  auto const number = label_number(label);
  if (!number) return at;
  while (at < order.size() && part[order[at]] == part[anchor.index]) {
    auto const other = label_number(edition.couplets[order[at]].label);
    if (!other || other->number != number->number || other->suffix >= number->suffix) break;
    ++at;
  }
  return at;
}

CoupletId Draft::insert(Couplet couplet, std::size_t at, std::size_t in_part) {
  auto const row = static_cast<std::uint32_t>(edition.couplets.size());
  by_label_[label_key(couplet.label)].push_back(row);
  edition.couplets.push_back(std::move(couplet));
  order.insert(order.begin() + static_cast<std::ptrdiff_t>(at), row);
  gone.push_back(0);
  serial.push_back(bears_numbers(edition.couplets.back()) ? 1 : 0);
  part.push_back(in_part);
  return {row};
}

void Draft::remove(CoupletId id) { gone[id.index] = 1; }

void Draft::relabel(CoupletId id, std::string label) {
  auto& rows = by_label_[label_key(edition[id].label)];
  std::erase(rows, id.index);
  by_label_[label_key(label)].push_back(id.index);
  edition[id].label = std::move(label);
}

void Draft::renumber(std::unordered_map<std::uint32_t, std::string> const& fresh) {
  for (auto const row : order) {
    for (auto& reference : edition.couplets[row].back_references) {
      auto const couplet = find(reference.label, part[row]);
      auto const found = couplet ? fresh.find(couplet->index) : fresh.end();
      if (found != fresh.end()) reference.label = found->second;
    }
  }
  for (auto const row : order) {
    for (auto& lead : edition.couplets[row].leads) {
      auto const* to = std::get_if<ToCouplet>(&lead.destination);
      auto const found = to != nullptr ? fresh.find(to->couplet.index) : fresh.end();
      if (found != fresh.end()) lead.destination_printed = found->second;
    }
  }
  for (auto const& [row, label] : fresh) {
    auto& couplet = edition.couplets[row];
    for (auto& lead : couplet.leads) {
      if (!couplet.label.empty() && lead.label.starts_with(couplet.label)) {
        lead.label.replace(0, couplet.label.size(), label);
      }
    }
    std::erase(by_label_[label_key(couplet.label)], row);
  }
  for (auto const row : order) {
    auto const found = fresh.find(row);
    if (found == fresh.end()) continue;
    by_label_[label_key(found->second)].push_back(row);
    edition.couplets[row].label = found->second;
  }
}

std::string Draft::free_label(std::string_view beside) const {
  auto const number = label_number(beside);
  auto const base = number ? std::to_string(number->number) : std::string{beside};
  std::string suffix = "a";
  while (!all(base + suffix).empty()) {
    if (suffix.back() == 'z') {
      suffix.back() = 'a';
      suffix += 'a';
    } else {
      ++suffix.back();
    }
  }
  return base + suffix;
}

std::string Draft::nearest(std::string_view label) const {
  auto const wanted = label_number(label);
  if (!wanted) {
    std::vector<std::string> known;
    for (auto const row : order) {
      if (gone[row] == 0) known.push_back(edition.couplets[row].label);
    }
    return did_you_mean(near_words(label, known));
  }
  std::optional<std::pair<LabelNumber, std::uint32_t>> below;
  std::optional<std::pair<LabelNumber, std::uint32_t>> above;
  for (auto const row : order) {
    auto const number = label_number(edition.couplets[row].label);
    if (gone[row] != 0 || !number) continue;
    if (*number < *wanted && (!below || below->first < *number)) below = {*number, row};
    if (*wanted < *number && (!above || *number < above->first)) above = {*number, row};
  }
  auto const name = [&](auto const& one) { return edition.couplets[one->second].label; };
  if (below && above) {
    return "the nearest couplets are " + name(below) + " and " + name(above);
  }
  if (below) return "the last couplet is " + name(below);
  return above ? "the first couplet is " + name(above) : std::string{};
}

std::string Draft::full_name(std::string const& name, bool& completed) const {
  auto const blank = name.find(' ');
  if (blank == std::string::npos || blank < 2 || name[blank - 1] != '.') return name;
  auto const beginning = name.substr(0, blank - 1);
  auto const rest = name.substr(blank);
  std::vector<std::string> genera;
  for (auto const& taxon : edition.taxa) {
    if (!taxon.name.starts_with(beginning)) continue;
    auto const genus = taxon.name.substr(0, taxon.name.find(' '));
    if (genus.ends_with('.')) continue;
    if (taxon.name == genus + rest) return taxon.name;
    if (std::find(genera.begin(), genera.end(), genus) == genera.end()) genera.push_back(genus);
  }
  completed = genera.size() == 1;
  return completed ? genera.front() + rest : name;
}

TaxonId Draft::taxon(std::string name, std::string const& authorship, Place const& place,
                     bool& completed) {
  completed = true;
  name = full_name(name, completed);
  for (std::uint32_t t = 0; t < edition.taxa.size(); ++t) {
    if (edition.taxa[t].name != name) continue;
    if (edition.taxa[t].authorship.empty()) edition.taxa[t].authorship = authorship;
    return {t};
  }
  edition.taxa.push_back({std::move(name), authorship, place});
  return {static_cast<std::uint32_t>(edition.taxa.size() - 1)};
}

LeadAsPrinted Draft::as_printed(LeadId id) const {
  auto const& lead = edition[id];
  return {lead_name(edition, id), lead.text, destination_words(edition, lead)};
}

std::vector<LeadAsPrinted> Draft::as_printed(CoupletId id) const {
  std::vector<LeadAsPrinted> leads;
  for (std::uint32_t i = 0; i < edition[id].leads.size(); ++i) {
    leads.push_back(as_printed(LeadId{id, i}));
  }
  return leads;
}

std::vector<LeadId> Draft::leads_to(CoupletId id) const {
  std::vector<LeadId> leads;
  for (auto const row : order) {
    if (gone[row] != 0) continue;
    auto const& couplet = edition.couplets[row];
    for (std::uint32_t i = 0; i < couplet.leads.size(); ++i) {
      auto const* to = std::get_if<ToCouplet>(&couplet.leads[i].destination);
      if (to != nullptr && to->couplet == id) leads.push_back({CoupletId{row}, i});
    }
  }
  return leads;
}

std::string destination_words(Edition const& edition, Lead const& lead) {
  std::string words;
  if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
    words = edition[to->couplet].label;
  } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    for (auto const taxon : taxa->taxa) {
      words += (words.empty() ? "" : ", ") + edition[taxon].name;
    }
  } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
    words = key->key;
  } else {
    return std::get<Unresolved>(lead.destination).printed;
  }
  return lead.taxon_remark.empty() ? words : words + " [" + lead.taxon_remark + "]";
}

}  // namespace keydrift::amending
