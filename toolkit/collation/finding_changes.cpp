#include <algorithm>
#include <map>
#include <string>
#include <tuple>
#include <utility>

#include "keydrift/characters/reading.hpp"
#include "keydrift/collation/ground.hpp"

namespace keydrift::collating {
namespace {

// Finds the couplet that a place belongs to: the last one that begins at or before it.
class Places {
 public:
  explicit Places(Side const& side) {
    for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
      auto const& couplet = side.couplet(i);
      begins_.emplace_back(couplet.place.line, couplet.place.column, i);
      for (auto const& lead : couplet.leads) {
        begins_.emplace_back(lead.place.line, lead.place.column, i);
      }
    }
    std::sort(begins_.begin(), begins_.end());
  }
  [[nodiscard]] std::uint32_t couplet_at(Place const& place) const {
    auto const after = std::upper_bound(begins_.begin(), begins_.end(),
                                        std::tuple{place.line, place.column, none});
    return after == begins_.begin() ? none : std::get<2>(*std::prev(after));
  }

 private:
  std::vector<std::tuple<std::uint32_t, std::uint32_t, std::uint32_t>> begins_;
};

// What makes two findings the same one.  Lines and numbers of couplets are no part of it.
struct Identity {
  std::string code;
  std::uint32_t couplet{none};  // of the new edition
  bool of_lost_couplet{false};  // in a couplet that the other edition lacks: equal to none
  std::string words;
  auto operator<=>(Identity const&) const = default;
};

}  // namespace

FindingChanges finding_changes(Ground const& ground, std::vector<Finding> old_findings,
                               std::vector<Finding> new_findings) {
  Places const old_places{ground.old_side};
  Places const new_places{ground.new_side};
  std::vector<Identity> old_identity;
  std::vector<Identity> new_identity;
  for (auto const& finding : old_findings) {
    auto const couplet = old_places.couplet_at(finding.place);
    auto const there = couplet == none ? none : ground.counterparts.couplet[0][couplet];
    old_identity.push_back(
        {finding.code, there, couplet != none && there == none, normalised_words(finding.printed)});
  }
  for (auto const& finding : new_findings) {
    auto const couplet = new_places.couplet_at(finding.place);
    bool const lost = couplet != none && ground.counterparts.couplet[1][couplet] == none;
    new_identity.push_back({finding.code, couplet, lost, normalised_words(finding.printed)});
  }

  std::vector<char> old_taken(old_findings.size(), 0);
  std::vector<char> new_taken(new_findings.size(), 0);
  // First by code, couplet and words, then by code and couplet: a lead that was reworded and still
  // does not contrast has the finding that it had.
  for (bool const by_words : {true, false}) {
    std::map<Identity, std::vector<std::size_t>> waiting;
    auto const key = [&](Identity identity) {
      if (!by_words) identity.words.clear();
      return identity;
    };
    for (std::size_t i = old_findings.size(); i-- > 0;) {
      if (old_taken[i] == 0 && !old_identity[i].of_lost_couplet) {
        waiting[key(old_identity[i])].push_back(i);
      }
    }
    for (std::size_t j = 0; j < new_findings.size(); ++j) {
      if (new_taken[j] != 0 || new_identity[j].of_lost_couplet) continue;
      auto const found = waiting.find(key(new_identity[j]));
      if (found == waiting.end() || found->second.empty()) continue;
      old_taken[found->second.back()] = 1;
      found->second.pop_back();
      new_taken[j] = 1;
    }
  }

  FindingChanges changes;
  for (std::size_t i = 0; i < old_findings.size(); ++i) {
    if (old_taken[i] == 0) changes.mended.push_back(std::move(old_findings[i]));
  }
  for (std::size_t j = 0; j < new_findings.size(); ++j) {
    (new_taken[j] != 0 ? changes.lasting : changes.introduced)
        .push_back(std::move(new_findings[j]));
  }
  sort_findings(changes.mended);
  sort_findings(changes.introduced);
  sort_findings(changes.lasting);
  return changes;
}

}  // namespace keydrift::collating
