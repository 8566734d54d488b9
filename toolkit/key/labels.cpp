#include "keydrift/key/labels.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdlib>
#include <utility>

#include "keydrift/key/near.hpp"

namespace keydrift {
namespace {

// All that print uses for a prime: U+2019, U+2018, U+2032, U+00B4, U+02B9, grave accent.
constexpr std::array<std::string_view, 6> kPrimes{"\u2019", "\u2018", "\u2032",
                                                  "\u00B4", "\u02B9", "`"};
constexpr std::size_t kLongestSuffix = 3;

}  // namespace

std::string label_key(std::string_view label) {
  auto const first = label.find_first_not_of(" \t([");
  if (first == std::string_view::npos) return std::string{label};
  auto const last = label.find_last_not_of(" \t.:,;)]");
  if (last == std::string_view::npos || last < first) return std::string{label};
  label = label.substr(first, last - first + 1);
  std::string key;
  while (!label.empty()) {
    auto const prime = std::find_if(kPrimes.begin(), kPrimes.end(),
                                    [&](auto const sign) { return label.starts_with(sign); });
    key += prime == kPrimes.end() ? label.front() : '\'';
    label.remove_prefix(prime == kPrimes.end() ? 1 : prime->size());
  }
  return key;
}

std::optional<LabelNumber> label_number(std::string_view label) {
  auto const key = label_key(label);
  LabelNumber result;
  auto const [rest, error] = std::from_chars(key.data(), key.data() + key.size(), result.number);
  if (error != std::errc{}) return std::nullopt;
  result.suffix.assign(rest, key.data() + key.size());
  auto const unfit = [](char c) { return (c >= '0' && c <= '9') || c == '.' || c == ' '; };
  if (result.suffix.size() > kLongestSuffix ||
      std::any_of(result.suffix.begin(), result.suffix.end(), unfit)) {
    return std::nullopt;
  }
  return result;
}

LabelIndex::LabelIndex(Edition const& edition) : edition_{&edition} {
  starts_.push_back(0);
  for (auto const& part : edition.parts) {
    if (part.start.index < edition.couplets.size()) starts_.push_back(part.start.index);
  }
  std::sort(starts_.begin(), starts_.end());
  starts_.erase(std::unique(starts_.begin(), starts_.end()), starts_.end());
  // The first part may start keying below its first couplet; it is one part all the same.
  if (!edition.parts.empty() && edition.parts.front().start.index != 0 && starts_.size() > 1 &&
      starts_[1] == edition.parts.front().start.index) {
    starts_.erase(starts_.begin() + 1);
  }

  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    CoupletId const id{c};
    couplets_.push_back({label_key(edition.couplets[c].label), part_of(id), id});
  }
  std::sort(couplets_.begin(), couplets_.end());
}

std::size_t LabelIndex::part_of(CoupletId couplet) const {
  auto const after = std::upper_bound(starts_.begin(), starts_.end(), couplet.index);
  return static_cast<std::size_t>(after - starts_.begin()) - 1;
}

CoupletId LabelIndex::part_end(std::size_t part) const {
  return CoupletId{part + 1 < starts_.size()
                       ? starts_[part + 1]
                       : static_cast<std::uint32_t>(edition_->couplets.size())};
}

std::optional<CoupletId> LabelIndex::find(std::string_view label, std::size_t part) const {
  auto const key = label_key(label);
  if (key.empty()) return std::nullopt;
  auto const first = std::lower_bound(couplets_.begin(), couplets_.end(), Entry{key, part, {}});
  if (first != couplets_.end() && first->key == key && first->part == part) return first->couplet;
  auto const before = [](Entry const& a, Entry const& b) { return a.key < b.key; };
  auto const [from, to] =
      std::equal_range(couplets_.begin(), couplets_.end(), Entry{key, 0, {}}, before);
  if (from == to || from->part != (to - 1)->part) return std::nullopt;
  return from->couplet;
}

std::optional<LeadId> LabelIndex::find_lead(std::string_view label, std::size_t part) const {
  auto const key = label_key(label);
  for (auto length = key.size(); length-- > 1;) {
    auto const couplet = find(std::string_view{key}.substr(0, length), part);
    if (!couplet) continue;
    auto const& leads = (*edition_)[*couplet].leads;
    for (std::uint32_t ordinal = 0; ordinal < leads.size(); ++ordinal) {
      LeadId const lead{*couplet, ordinal};
      if (label_key(leads[ordinal].label) == key || lead_name(*edition_, lead) == key) return lead;
    }
  }
  return std::nullopt;
}

std::vector<std::string> LabelIndex::near(std::string_view label, std::size_t part,
                                          std::vector<char> const& reached) const {
  auto const wanted = label_key(label);
  auto const number = label_number(wanted);
  using Rank = std::tuple<bool, std::size_t, std::uint64_t, std::uint32_t>;
  std::vector<Rank> ranked;
  for (auto const& entry : couplets_) {
    if (entry.part != part) continue;
    auto const c = entry.couplet.index;
    // One slip of the pen, or two in labels long enough to bear them.
    std::size_t const most = wanted.size() > 4 ? 2 : 1;
    auto const slips = count_slips(wanted, entry.key, most);
    if (slips == 0 || slips > most) continue;
    bool const unlikely = reached[c] != 0;
    if (unlikely && wanted.size() < 2) continue;  // every one-digit label is one slip away
    auto const theirs = label_number(entry.key);
    std::uint64_t apart = 0;
    if (number && theirs) {
      apart = std::max(number->number, theirs->number) - std::min(number->number, theirs->number);
    }
    ranked.emplace_back(unlikely, slips, apart, c);
  }
  std::sort(ranked.begin(), ranked.end());
  // A couplet that nothing else leads to is by far the likeliest to be meant.
  bool const certain = !ranked.empty() && !std::get<0>(ranked.front());
  std::vector<std::string> labels;
  for (auto const& rank : ranked) {
    if (labels.size() == 3 || (certain && std::get<0>(rank))) break;
    auto const& text = edition_->couplets[std::get<3>(rank)].label;
    if (std::find(labels.begin(), labels.end(), text) == labels.end()) labels.push_back(text);
  }
  return labels;
}

}  // namespace keydrift
