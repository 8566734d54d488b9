// match_taxa: the map's rows, then names, then synonymy, then names within names.

#include <algorithm>
#include <numeric>
#include <optional>
#include <unordered_set>
#include <utility>

#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/matching_parts.hpp"
#include "keydrift/taxa/taxon_table.hpp"

namespace keydrift {
namespace {

using PairKey = std::uint64_t;
PairKey pair_key(TaxonId old_taxon, TaxonId new_taxon) {
  return (PairKey{old_taxon.index} << 32) | new_taxon.index;
}

class Matcher {
 public:
  Matcher(Edition const& old_edition, Edition const& new_edition)
      : old_edition_{old_edition},
        new_edition_{new_edition},
        old_{old_edition},
        new_{new_edition},
        groups_{old_edition, new_edition, old_, new_},
        of_old_(old_edition.taxa.size()),
        of_new_(new_edition.taxa.size()),
        old_mapped_(old_edition.taxa.size()),
        new_mapped_(new_edition.taxa.size()) {}

  TaxonMatching run(ConceptMap const* map) {
    if (map != nullptr) take_map(*map);
    match_names();
    match_synonyms();
    match_containment();
    finish();
    return std::move(result_);
  }

 private:
  void take_map(ConceptMap const& map) {
    auto rows = resolve_map(map, old_edition_, new_edition_, old_, new_, result_.findings);
    for (auto& match : rows) {
      if (match.relation != Relation::disjoint) {
        old_mapped_[match.old_taxon.index] = new_mapped_[match.new_taxon.index] = true;
      }
      add(std::move(match));
    }
  }

  void add(TaxonMatch match) {
    match.same_name = old_[match.old_taxon].plain == new_[match.new_taxon].plain;
    if (match.relation != Relation::disjoint) {
      of_old_[match.old_taxon.index].push_back(result_.matches.size());
      of_new_[match.new_taxon.index].push_back(result_.matches.size());
    }
    pairs_.insert(pair_key(match.old_taxon, match.new_taxon));
    result_.matches.push_back(std::move(match));
  }

  [[nodiscard]] bool known(TaxonId o, TaxonId n) const { return pairs_.contains(pair_key(o, n)); }

  // New taxa of the same name, exact spelling first; homonyms are left out and noted.
  std::vector<TaxonId> namesakes(TaxonId o) {
    auto const& row = old_[o];
    std::vector<TaxonId> found;
    for (auto const& key : row.keys) {
      auto const& same = new_.with_key(key);
      found.insert(found.end(), same.begin(), same.end());
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    std::erase_if(found, [&](TaxonId n) {
      if (new_mapped_[n.index] || known(o, n)) return true;
      auto const& other = new_[n];
      bool const misapplied =
          (row.sense == Sense::misapplied) != (other.sense == Sense::misapplied);
      if (!misapplied && same_authorship(row.authorship, other.authorship)) return false;
      homonyms_.emplace_back(o, n);
      return true;
    });
    auto const rank = [&](TaxonId n) {
      return std::pair{new_[n].plain != row.plain, new_[n].sense != row.sense};
    };
    std::stable_sort(found.begin(), found.end(),
                     [&](TaxonId a, TaxonId b) { return rank(a) < rank(b); });
    return found;
  }

  void add_namesake(TaxonId o, TaxonId n) {
    auto const& a = old_[o];
    auto const& b = new_[n];
    TaxonMatch match{.old_taxon = o, .new_taxon = n, .note = {}};
    if (a.plain != b.plain) {
      match.basis = MatchBasis::spelling;
      match.note = how_spelled(a.plain, b.plain);
    }
    bool const a_wide = a.sense == Sense::wide, b_wide = b.sense == Sense::wide;
    if (a_wide && b.sense == Sense::narrow) match.relation = Relation::includes;
    if (b_wide && a.sense == Sense::narrow) match.relation = Relation::included_in;
    if (match.relation != Relation::congruent) {
      match.note = "printed \"" + a.parsed.sensu + "\" and \"" + b.parsed.sensu + "\"";
    }
    add(std::move(match));
  }

  void match_names() {
    std::vector<TaxonId> left;
    std::vector<bool> taken(new_.rows().size());
    std::vector<std::vector<TaxonId>> choices(old_.rows().size());
    for (std::uint32_t i = 0; i < old_.rows().size(); ++i) {
      TaxonId const o{i};
      if (old_mapped_[i]) continue;
      choices[i] = namesakes(o);
      // The names that are spelled alike find each other first.
      auto const exact = std::find_if(choices[i].begin(), choices[i].end(), [&](TaxonId n) {
        return !taken[n.index] && new_[n].plain == old_[o].plain && new_[n].sense == old_[o].sense;
      });
      if (exact != choices[i].end()) {
        taken[exact->index] = true;
        add_namesake(o, *exact);
      } else if (!choices[i].empty()) {
        left.push_back(o);
      }
    }
    for (auto const o : left) {
      auto const& found = choices[o.index];
      auto const free =
          std::find_if(found.begin(), found.end(), [&](TaxonId n) { return !taken[n.index]; });
      // A name that one edition prints in two spellings is one taxon: both find it.
      auto const n = free == found.end() ? found.front() : *free;
      taken[n.index] = true;
      add_namesake(o, n);
    }
    for (std::uint32_t i = 0; i < old_.rows().size(); ++i) {
      for (auto const n : choices[i]) {
        if (taken[n.index]) continue;
        taken[n.index] = true;
        add_namesake(TaxonId{i}, n);
      }
    }
    for (auto const& [o, n] : homonyms_) {
      if (of_old_[o.index].empty() || of_new_[n.index].empty()) {
        result_.findings.push_back(homonym_finding(o, n));
      }
    }
  }

  [[nodiscard]] Finding homonym_finding(TaxonId o, TaxonId n) const {
    auto const shown = [](TaxonRow const& row) {
      return row.full +
             (row.parsed.sensu.empty() || row.full.find(row.parsed.sensu) != std::string::npos
                  ? ""
                  : " " + row.parsed.sensu);
    };
    Finding finding;
    finding.code = "homonym";
    finding.severity = Severity::warning;
    finding.file = new_edition_.name;
    finding.place = new_edition_[n].place;
    finding.printed = shown(new_[n]);
    finding.message = "\"" + shown(old_[o]) + "\" of the old edition and \"" + shown(new_[n]) +
                      "\" of the new one share a name but not the author, so they are not matched";
    finding.remedy = "say in the concept map how the two relate";
    finding.related.push_back({.place = old_edition_[o].place,
                               .message = "\"" + shown(old_[o]) + "\" in " + old_edition_.name});
    return finding;
  }

  void match_synonyms() {
    std::vector<bool> old_named, new_named;
    for (auto const& found : of_old_) old_named.push_back(!found.empty());
    for (auto const& found : of_new_) new_named.push_back(!found.empty());
    std::vector<std::size_t> added;
    for (auto const& group : groups_.groups()) {
      for (auto const o : group.old_taxa) {
        for (auto const n : group.new_taxa) {
          bool const by_name = old_named[o.index] && new_named[n.index];
          if (by_name || old_mapped_[o.index] || new_mapped_[n.index] || known(o, n)) continue;
          added.push_back(result_.matches.size());
          add({.old_taxon = o,
               .new_taxon = n,
               .basis = MatchBasis::synonymy,
               .note = "synonyms in the front matter"});
        }
      }
    }
    // Several names that became synonyms of one: that one took them in (and the reverse).
    for (auto const index : added) {
      auto const o = result_.matches[index].old_taxon;
      auto const n = result_.matches[index].new_taxon;
      for (auto const other : of_old_[o.index]) relate_by_degree(result_.matches[other]);
      for (auto const other : of_new_[n.index]) relate_by_degree(result_.matches[other]);
    }
  }

  void relate_by_degree(TaxonMatch& match) {
    bool const several_new = of_old_[match.old_taxon.index].size() > 1;
    bool const several_old = of_new_[match.new_taxon.index].size() > 1;
    if (several_new && several_old) {
      match.relation = Relation::overlaps;
    } else if (several_new) {
      match.relation = Relation::includes;
    } else if (several_old) {
      match.relation = Relation::included_in;
    }
  }

  void match_containment() {
    // What is left on one side may be part of a taxon on the other, by its very name.
    std::vector<std::pair<TaxonId, TaxonId>> includes, included;
    for (std::uint32_t i = 0; i < new_.rows().size(); ++i) {
      TaxonId const n{i};
      if (!of_new_[i].empty()) continue;
      if (auto const o = container(new_[n], old_, &SynonymGroup::old_taxa, old_mapped_)) {
        includes.emplace_back(*o, n);
      }
    }
    for (std::uint32_t i = 0; i < old_.rows().size(); ++i) {
      TaxonId const o{i};
      if (!of_old_[i].empty()) continue;
      if (auto const n = container(old_[o], new_, &SynonymGroup::new_taxa, new_mapped_)) {
        included.emplace_back(o, *n);
      }
    }
    // One that holds parts itself has its counterparts in them.
    std::vector<bool> old_holds(of_old_.size()), new_holds(of_new_.size());
    for (auto const& pair : includes) old_holds[pair.first.index] = true;
    for (auto const& pair : included) new_holds[pair.second.index] = true;
    std::erase_if(includes, [&](auto const& pair) { return new_holds[pair.second.index]; });
    std::erase_if(included, [&](auto const& pair) { return old_holds[pair.first.index]; });
    for (auto const& [o, n] : includes) {
      if (known(o, n)) continue;
      // The namesake lost what is now keyed apart.
      for (auto const other : of_old_[o.index]) {
        auto& match = result_.matches[other];
        if (match.basis == MatchBasis::containment) continue;
        if (match.relation == Relation::congruent) match.relation = Relation::includes;
        if (match.relation == Relation::included_in) match.relation = Relation::overlaps;
        if (match.note.empty()) {
          match.note = "the new edition keys \"" + new_[n].plain + "\" apart from it";
        }
      }
      add({.old_taxon = o,
           .new_taxon = n,
           .relation = Relation::includes,
           .basis = MatchBasis::containment,
           .note = "\"" + new_[n].plain + "\" lies within \"" + old_[o].plain + "\" by its name"});
    }
    for (auto const& [o, n] : included) {
      if (known(o, n)) continue;
      for (auto const other : of_new_[n.index]) {
        auto& match = result_.matches[other];
        if (match.basis == MatchBasis::containment) continue;
        if (match.relation == Relation::congruent) match.relation = Relation::included_in;
        if (match.relation == Relation::includes) match.relation = Relation::overlaps;
        if (match.note.empty()) {
          match.note = "the old edition keyed \"" + old_[o].plain + "\" apart from it";
        }
      }
      add({.old_taxon = o,
           .new_taxon = n,
           .relation = Relation::included_in,
           .basis = MatchBasis::containment,
           .note = "\"" + old_[o].plain + "\" lies within \"" + new_[n].plain + "\" by its name"});
    }
  }

  // The nearest taxon of the other edition that the row's own name places it in.  A taxon that the
  // map speaks of is left to the map.
  [[nodiscard]] std::optional<TaxonId> container(TaxonRow const& row, TaxonTable const& other,
                                                 std::vector<TaxonId> SynonymGroup::*side,
                                                 std::vector<bool> const& mapped) const {
    for (auto const& name : containing_names(row.parsed)) {
      for (auto const& key : name_keys(name)) {
        for (auto const taxon : other.with_key(key)) {
          if (!mapped[taxon.index]) return taxon;
        }
        if (auto const* group = groups_.find(key)) {
          for (auto const taxon : group->*side) {
            if (!mapped[taxon.index]) return taxon;
          }
        }
      }
    }
    return std::nullopt;
  }

  void finish() {
    for (std::uint32_t i = 0; i < of_old_.size(); ++i) {
      if (of_old_[i].empty()) result_.only_old.push_back(TaxonId{i});
    }
    for (std::uint32_t i = 0; i < of_new_.size(); ++i) {
      if (of_new_[i].empty()) result_.only_new.push_back(TaxonId{i});
    }
    propose_likely_matches(old_edition_, new_edition_, old_, new_, result_);
    auto& matches = result_.matches;
    std::sort(matches.begin(), matches.end(), [](TaxonMatch const& a, TaxonMatch const& b) {
      return std::pair{a.old_taxon, a.new_taxon} < std::pair{b.old_taxon, b.new_taxon};
    });
    result_.by_new.resize(matches.size());
    std::iota(result_.by_new.begin(), result_.by_new.end(), 0U);
    std::stable_sort(result_.by_new.begin(), result_.by_new.end(),
                     [&](std::uint32_t a, std::uint32_t b) {
                       return matches[a].new_taxon < matches[b].new_taxon;
                     });
    sort_findings(result_.findings);
  }

  Edition const& old_edition_;
  Edition const& new_edition_;
  TaxonTable old_;
  TaxonTable new_;
  SynonymGroups groups_;
  TaxonMatching result_;
  std::unordered_set<PairKey> pairs_;             // that have a match, disjoint ones too
  std::vector<std::vector<std::size_t>> of_old_;  // matches that are not disjoint
  std::vector<std::vector<std::size_t>> of_new_;
  std::vector<bool> old_mapped_;
  std::vector<bool> new_mapped_;
  std::vector<std::pair<TaxonId, TaxonId>> homonyms_;
};

}  // namespace

TaxonMatching match_taxa(Edition const& old_edition, Edition const& new_edition,
                         ConceptMap const* map) {
  return Matcher{old_edition, new_edition}.run(map);
}

}  // namespace keydrift
