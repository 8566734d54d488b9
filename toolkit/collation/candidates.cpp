#include "keydrift/collation/candidates.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace keydrift::collating {
namespace {

constexpr std::array both_editions{Of::old_edition, Of::new_edition};

// A bucket that pairs no more than this is taken whole.
constexpr std::size_t whole_bucket = 36;
// Of a larger one each couplet meets this many neighbours on either side.
constexpr std::size_t reach = 2;
// Rare features looked up for each couplet.
constexpr std::size_t features_asked = 4;

// One couplet under one key of an index.
struct Posting {
  std::uint64_t key{};
  std::uint64_t order{};  // within the bucket: couplets of like order are met first
  std::uint32_t rank{};   // of the couplet
  friend bool operator<(Posting const& a, Posting const& b) {
    if (a.key != b.key) return a.key < b.key;
    if (a.order != b.order) return a.order < b.order;
    return a.rank < b.rank;
  }
};
using Postings = std::array<std::vector<Posting>, 2>;

void sort_postings(Postings& postings) {
  for (auto& list : postings) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end(),
                           [](Posting const& a, Posting const& b) {
                             return a.key == b.key && a.rank == b.rank && a.order == b.order;
                           }),
               list.end());
  }
}

// The postings of one key in both editions.
struct Bucket {
  std::array<std::size_t, 2> begin{};
  std::array<std::size_t, 2> end{};
  [[nodiscard]] std::size_t size(std::size_t of) const { return end[of] - begin[of]; }
};

template <class Take>
void for_each_shared_bucket(Postings const& postings, Take const& take) {
  std::size_t i = 0;
  std::size_t j = 0;
  auto const& [olds, news] = postings;
  while (i < olds.size() && j < news.size()) {
    if (olds[i].key < news[j].key) {
      ++i;
    } else if (news[j].key < olds[i].key) {
      ++j;
    } else {
      Bucket bucket;
      bucket.begin = {i, j};
      auto const key = olds[i].key;
      while (i < olds.size() && olds[i].key == key) ++i;
      while (j < news.size() && news[j].key == key) ++j;
      bucket.end = {i, j};
      take(bucket);
    }
  }
}

class Search {
 public:
  explicit Search(Comparison const& comparison) : comparison_{comparison} {
    for (auto const of : both_editions) {
      auto const& rank = comparison_.side(of).rank;
      auto& at = couplet_at_[index_of(of)];
      at.resize(rank.size());
      for (std::uint32_t i = 0; i < rank.size(); ++i) at[rank[i]] = i;
    }
  }

  Candidates find() && {
    settle_equals();
    by_same_taxa();
    by_like_taxa();
    by_words();
    std::sort(pairs_.begin(), pairs_.end());
    pairs_.erase(std::unique(pairs_.begin(), pairs_.end()), pairs_.end());
    return {std::move(pairs_), std::move(settled_)};
  }

 private:
  void add(Posting const& old_posting, Posting const& new_posting) {
    pairs_.push_back({couplet_at_[0][old_posting.rank], couplet_at_[1][new_posting.rank]});
  }
  [[nodiscard]] bool settled(Of of, std::uint32_t couplet) const {
    return settled_[index_of(of)][couplet] != 0;
  }

  // Couplets that are equal in all they say and in the shared taxa below each lead need no
  // comparing with others.
  void settle_equals() {
    Postings postings;
    for (auto const of : both_editions) {
      auto const& side = comparison_.side(of);
      settled_[index_of(of)].assign(side.couplet_count(), 0);
      for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
        if (comparison_.below_couplet(of, i).mass == 0) continue;
        std::uint64_t number = 0;
        for (auto row = side.first_lead[i]; row < side.end_lead(i); ++row) {
          auto const& said = comparison_.saying(of, row);
          number += mix(said.text ^ mix(said.predicate) ^
                        mix(comparison_.below_lead(of, row).fingerprint + 1));
        }
        postings[index_of(of)].push_back({number, 0, side.rank[i]});
      }
    }
    sort_postings(postings);
    for_each_shared_bucket(postings, [&](Bucket const& bucket) {
      if (bucket.size(0) != 1 || bucket.size(1) != 1) return;
      auto const& was = postings[0][bucket.begin[0]];
      auto const& is = postings[1][bucket.begin[1]];
      add(was, is);
      settled_[0][couplet_at_[0][was.rank]] = 1;
      settled_[1][couplet_at_[1][is.rank]] = 1;
    });
  }

  // Meets the couplets of a bucket: all of a small one; in a large one those nearest by order,
  // seen from either side, and those in the same place of the sequence (a run of couplets with
  // the same order, such as many leads with the same words).
  void meet(Postings const& postings, Bucket const& bucket) {
    auto const& [olds, news] = postings;
    if (bucket.size(0) * bucket.size(1) <= whole_bucket) {
      for (auto i = bucket.begin[0]; i < bucket.end[0]; ++i) {
        for (auto j = bucket.begin[1]; j < bucket.end[1]; ++j) {
          add(olds[i], news[j]);
        }
      }
      return;
    }
    for (std::size_t of = 0; of < 2; ++of) {
      auto const other = 1 - of;
      auto const& mine = postings[of];
      auto const& theirs = postings[other];
      auto const first = theirs.begin() + static_cast<std::ptrdiff_t>(bucket.begin[other]);
      auto const last = theirs.begin() + static_cast<std::ptrdiff_t>(bucket.end[other]);
      for (auto i = bucket.begin[of]; i < bucket.end[of]; ++i) {
        auto const from =
            std::lower_bound(first, last, mine[i].order,
                             [](Posting const& p, std::uint64_t order) { return p.order < order; });
        auto const to =
            std::upper_bound(from, last, mine[i].order,
                             [](std::uint64_t order, Posting const& p) { return order < p.order; });
        auto const meet_range = [&](std::size_t begin, std::size_t end) {
          for (auto j = std::max(begin, bucket.begin[other]); j < std::min(end, bucket.end[other]);
               ++j) {
            if (of == 0) {
              add(mine[i], theirs[j]);
            } else {
              add(theirs[j], mine[i]);
            }
          }
        };
        auto const low = static_cast<std::size_t>(from - theirs.begin());
        auto const high = static_cast<std::size_t>(to - theirs.begin());
        meet_range(low - std::min(low, reach), low);
        meet_range(high, high + reach);
        if (high - low <= 2 * reach) {
          meet_range(low, high);
          continue;
        }
        auto const place = low + (i - bucket.begin[of]) * (high - low) / bucket.size(of);
        meet_range(std::max(low, place - std::min(place, reach)),
                   std::min(high, place + reach + 1));
      }
    }
  }

  // The same set below the couplet, or below a lead of each.
  void by_same_taxa() {
    Postings couplets;
    Postings leads;
    for (auto const of : both_editions) {
      auto const index = index_of(of);
      auto const& side = comparison_.side(of);
      for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
        auto const& below = comparison_.below_couplet(of, i);
        if (below.mass > 0)
          couplets[index].push_back({below.fingerprint, side.rank[i], side.rank[i]});
      }
      for (std::uint32_t row = 0; row < side.leads.size(); ++row) {
        auto const& below = comparison_.below_lead(of, row);
        auto const couplet = side.leads[row].couplet.index;
        // Leads apart from couplets; of leads with the same set those come together whose
        // couplets have sets of like size.
        if (below.mass > 0 && !settled(of, couplet)) {
          leads[index].push_back(
              {below.fingerprint, comparison_.below_couplet(of, couplet).mass, side.rank[couplet]});
        }
      }
    }
    for (auto* postings : {&couplets, &leads}) {
      sort_postings(*postings);
      for_each_shared_bucket(*postings, [&](Bucket const& b) { meet(*postings, b); });
    }
  }

  // A great part of the set below: the same first tie in a shuffled order, and of those the ones
  // of like mass (in a tree they lie on one route, so that like mass is like set).
  void by_like_taxa() {
    auto const& shared = comparison_.shared();
    for (unsigned shuffle = 0; shuffle < SharedTaxa::shuffles; ++shuffle) {
      Postings postings;
      for (auto const of : both_editions) {
        auto const& side = comparison_.side(of);
        for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
          if (settled(of, i)) continue;
          auto const tie = shared.least(of, shuffle, side.graph->taxa_below(CoupletId{i}));
          if (tie == none) continue;
          postings[index_of(of)].push_back(
              {tie, comparison_.below_couplet(of, i).mass, side.rank[i]});
        }
      }
      sort_postings(postings);
      for_each_shared_bucket(postings, [&](Bucket const& b) { meet(postings, b); });
    }
  }

  // Features of what a couplet says: whole leads, statements, words.
  void features_of(Of of, std::uint32_t couplet, std::vector<std::uint64_t>& features) const {
    auto const& side = comparison_.side(of);
    features.clear();
    for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
      auto const& said = comparison_.saying(of, row);
      if (!said.words.empty()) features.push_back(mix(said.text + 1));
      if (said.statements.size() > 1) features.push_back(mix(said.predicate + 2));
      for (auto const& statement : said.statements) features.push_back(statement.predicate);
      features.insert(features.end(), said.words.begin(), said.words.end());
    }
    // The couplet as a whole: the leads in any order.
    std::uint64_t all = 3;
    for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
      all += mix(comparison_.saying(of, row).text);
    }
    features.push_back(mix(all));
    std::sort(features.begin(), features.end());
    features.erase(std::unique(features.begin(), features.end()), features.end());
  }

  void by_words() {
    Postings postings;
    std::vector<std::uint64_t> features;
    for (auto const of : both_editions) {
      auto const& side = comparison_.side(of);
      for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
        if (settled(of, i)) continue;
        features_of(of, i, features);
        for (auto const feature : features) {
          postings[index_of(of)].push_back({feature, side.rank[i], side.rank[i]});
        }
      }
    }
    sort_postings(postings);
    // For each couplet the features that pair the fewest others, then by number.
    struct Wanted {
      std::size_t pairs{};
      std::uint64_t key{};
      std::size_t bucket{};
    };
    std::vector<Bucket> buckets;
    std::array<std::vector<std::vector<Wanted>>, 2> wanted;
    for (auto const of : both_editions) {
      wanted[index_of(of)].resize(comparison_.side(of).couplet_count());
    }
    for_each_shared_bucket(postings, [&](Bucket const& bucket) {
      auto const pairs = bucket.size(0) * bucket.size(1);
      // Words that a great many couplets have say nothing about any of them.
      if (std::max(bucket.size(0), bucket.size(1)) > common_from_) return;
      for (std::size_t of = 0; of < 2; ++of) {
        for (auto i = bucket.begin[of]; i < bucket.end[of]; ++i) {
          wanted[of][postings[of][i].rank].push_back({pairs, postings[of][i].key, buckets.size()});
        }
      }
      buckets.push_back(bucket);
    });
    std::vector<char> asked(buckets.size(), 0);
    for (auto& side : wanted) {
      for (auto& list : side) {
        auto const count = std::min(features_asked, list.size());
        std::partial_sort(list.begin(), list.begin() + static_cast<std::ptrdiff_t>(count),
                          list.end(), [](Wanted const& a, Wanted const& b) {
                            return a.pairs != b.pairs ? a.pairs < b.pairs : a.key < b.key;
                          });
        for (std::size_t i = 0; i < count; ++i) asked[list[i].bucket] = 1;
      }
    }
    for (std::size_t i = 0; i < buckets.size(); ++i) {
      if (asked[i] != 0) meet(postings, buckets[i]);
    }
  }

  static constexpr std::size_t common_from_ = 256;
  Comparison const& comparison_;
  std::array<std::vector<std::uint32_t>, 2> couplet_at_;  // by rank
  std::vector<CandidatePair> pairs_;
  std::array<std::vector<char>, 2> settled_;
};

}  // namespace

Candidates find_candidates(Comparison const& comparison) { return Search{comparison}.find(); }

}  // namespace keydrift::collating
