#include "keydrift/key/repeated_keys.hpp"

#include <algorithm>
#include <functional>
#include <limits>
#include <string_view>
#include <unordered_map>

namespace keydrift {
namespace {

// So short a key may well be alike by chance: "1 Male … 2 / 1 Female … 3" under two titles.
constexpr std::uint32_t kFewestCouplets = 2;

bool same_couplets(Couplet const& a, Couplet const& b) {
  return a.label == b.label && std::equal(a.leads.begin(), a.leads.end(), b.leads.begin(),
                                          b.leads.end(), [](Lead const& x, Lead const& y) {
                                            return x.text == y.text &&
                                                   x.destination_printed == y.destination_printed;
                                          });
}

std::size_t fingerprint(Couplet const& couplet) {
  std::size_t mixed = couplet.leads.size();
  auto const mix = [&mixed](std::string_view text) {
    mixed = mixed * 31 + std::hash<std::string_view>{}(text);
  };
  mix(couplet.label);
  for (auto const& lead : couplet.leads) {
    mix(lead.text);
    mix(lead.destination_printed);
  }
  return mixed;
}

}  // namespace

std::vector<RepeatedKey> repeated_keys(Edition const& edition) {
  std::vector<RepeatedKey> repeated;
  if (edition.parts.size() < 2) return repeated;
  std::vector<RepeatedKey> keys;
  for (std::size_t part = 0; part < edition.parts.size(); ++part) {
    keys.push_back({.part = part, .of = part, .begin = edition.parts[part].start});
  }
  std::sort(keys.begin(), keys.end(),
            [](RepeatedKey const& a, RepeatedKey const& b) { return a.begin < b.begin; });
  for (std::size_t i = 0; i < keys.size(); ++i) {
    keys[i].end = i + 1 < keys.size()
                      ? keys[i + 1].begin
                      : CoupletId{static_cast<std::uint32_t>(edition.couplets.size())};
  }
  std::unordered_multimap<std::size_t, std::size_t> met;  // by the first couplet
  for (std::size_t i = 0; i < keys.size(); ++i) {
    auto key = keys[i];
    if (key.begin >= key.end || key.end.index - key.begin.index < kFewestCouplets) continue;
    auto const mark = fingerprint(edition[key.begin]);
    auto const [from, to] = met.equal_range(mark);
    auto const first = std::find_if(from, to, [&](auto const& entry) {
      auto const& other = keys[entry.second];
      auto const couplets = edition.couplets.begin();
      return std::equal(couplets + key.begin.index, couplets + key.end.index,
                        couplets + other.begin.index, couplets + other.end.index, same_couplets);
    });
    if (first == to) {
      met.emplace(mark, i);
    } else {
      key.of = keys[first->second].part;
      repeated.push_back(key);
    }
  }
  return repeated;
}

void leave_out_repetitions(Edition const& edition, std::vector<RepeatedKey> const& repeated,
                           std::vector<Finding>& findings) {
  for (auto const& key : repeated) {
    auto const line_of = [&edition](CoupletId couplet) { return edition[couplet].place.line; };
    auto const begin = line_of(key.begin);
    auto const end = key.end.index < edition.couplets.size()
                         ? line_of(key.end)
                         : std::numeric_limits<std::uint32_t>::max();
    // What no text was read from has no places.
    if (begin <= line_of(edition.parts[key.of].start)) continue;
    std::erase_if(findings, [&](Finding const& finding) {
      return finding.code != "repeated-key" && finding.place.line >= begin &&
             finding.place.line < end;
    });
  }
}

}  // namespace keydrift
