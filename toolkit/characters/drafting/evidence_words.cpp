#include "keydrift/characters/drafting/evidence_words.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "keydrift/key/labels.hpp"

namespace keydrift::drafting {
namespace {

constexpr std::size_t kCoupletsNamed = 6;  // of one edition

bool stands_before(std::string const& a, std::string const& b) {
  auto const number_a = label_number(a);
  auto const number_b = label_number(b);
  if (number_a && number_b && *number_a != *number_b) return *number_a < *number_b;
  if (number_a.has_value() != number_b.has_value()) return number_a.has_value();
  return a < b;
}

}  // namespace

EvidenceWords::EvidenceWords(std::span<Edition const* const> editions)
    : editions_{editions}, rank_(editions.size()) {
  std::vector<std::size_t> order(editions.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    auto const key = [&](std::size_t i) {
      return std::tuple{editions[i]->front.year.value_or(0), short_label(*editions[i]),
                        editions[i]->name};
    };
    return key(a) < key(b);
  });
  for (std::size_t i = 0; i < order.size(); ++i) rank_[order[i]] = i;
}

std::string EvidenceWords::words(std::string_view what,
                                 std::set<CoupletSpot> const& couplets) const {
  std::map<std::size_t, std::pair<std::string, std::vector<std::string>>> by_edition;
  for (auto const& [edition, couplet] : couplets) {
    auto& entry = by_edition[rank_[edition]];
    entry.first = short_label(*editions_[edition]);
    entry.second.push_back(label_key(editions_[edition]->couplets[couplet].label));
  }
  std::string text = std::string{what} + ' ' + std::to_string(couplets.size()) +
                     (couplets.size() == 1 ? " couplet (" : " couplets (");
  bool first = true;
  for (auto& [rank, entry] : by_edition) {
    auto& [name, labels] = entry;
    std::sort(labels.begin(), labels.end(), stands_before);
    if (!first) text += "; ";
    first = false;
    if (editions_.size() > 1 || !name.empty()) text += name + ": ";
    for (std::size_t i = 0; i < std::min(labels.size(), kCoupletsNamed); ++i) {
      text += (i == 0 ? "" : ", ") + labels[i];
    }
    if (labels.size() > kCoupletsNamed) {
      text += " and " + std::to_string(labels.size() - kCoupletsNamed) + " more";
    }
  }
  return text + ')';
}

}  // namespace keydrift::drafting
