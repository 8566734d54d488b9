// The concept map's rows against the two editions.

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "keydrift/key/near.hpp"
#include "keydrift/taxa/matching_parts.hpp"

namespace keydrift {
namespace {

std::string quoted(std::string_view text) {
  std::string result{'"'};
  result += text;
  result += '"';
  return result;
}

std::string row_words(ConceptRow const& row) {
  return row.old_name + " " + to_word(row.relation) + " " + row.new_name;
}

class MapReader {
 public:
  MapReader(ConceptMap const& map, Edition const& old_edition, Edition const& new_edition,
            TaxonTable const& old, TaxonTable const& new_table, std::vector<Finding>& findings)
      : map_{map},
        old_edition_{old_edition},
        new_edition_{new_edition},
        old_{old},
        new_{new_table},
        findings_{findings} {}

  std::vector<TaxonMatch> read() {
    for (auto const& row : map_.rows) {
      auto const o = look_up(row, row.old_name, true);
      auto const n = look_up(row, row.new_name, false);
      if (o && n) take(row, *o, *n);
    }
    check_together();
    std::vector<TaxonMatch> matches;
    for (auto const& entry : taken_) {
      matches.push_back({.old_taxon = entry.old_taxon,
                         .new_taxon = entry.new_taxon,
                         .relation = entry.row->relation,
                         .basis = MatchBasis::concept_map,
                         .note = entry.row->note});
    }
    return matches;
  }

 private:
  struct Entry {
    ConceptRow const* row;
    TaxonId old_taxon;
    TaxonId new_taxon;
  };

  Finding& add(std::string code, Severity severity, ConceptRow const& row, std::string printed,
               std::string message, std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = map_.name;
    finding.place = row.place;
    finding.printed = std::move(printed);
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    findings_.push_back(std::move(finding));
    return findings_.back();
  }

  // The terminal that a cell means.  Names as the other edition prints them, and synonyms of
  // either front matter, are not guessed at: the map speaks of terminals.
  std::optional<TaxonId> look_up(ConceptRow const& row, std::string const& name, bool old_side) {
    auto const& table = old_side ? old_ : new_;
    auto const& other = old_side ? new_ : old_;
    auto const& edition = old_side ? old_edition_ : new_edition_;
    std::string const side = old_side ? "old" : "new";
    if (auto const taxon = table.find(name)) return taxon;
    auto const several = table.all(name);
    if (several.size() > 1) {
      std::string names;
      for (auto const taxon : several) {
        names += (names.empty() ? "" : ", ") + quoted(table[taxon].plain);
      }
      add("concept-ambiguous", Severity::error, row, name,
          quoted(name) + " fits several taxa of the " + side + " edition: " + names,
          "write the name in full");
    } else if (other.find(name)) {
      add("concept-wrong-edition", Severity::error, row, name,
          "the " + side + " edition, " + edition.name + ", has no taxon " + quoted(name) +
              "; the " + (old_side ? "new" : "old") + " one has",
          "exchange the columns of the row, or name the " + side + " edition's taxon");
    } else {
      auto& names = old_side ? old_near_ : new_near_;
      if (!names) names.emplace(table.plain_names());
      auto remedy = did_you_mean(names->find(name));
      if (remedy.empty()) remedy = "write the name as the edition's key does, or drop the row";
      add("concept-unknown-taxon", Severity::error, row, name,
          "the " + side + " edition, " + edition.name + ", has no taxon " + quoted(name),
          std::move(remedy));
    }
    return std::nullopt;
  }

  void take(ConceptRow const& row, TaxonId o, TaxonId n) {
    auto const [at, fresh] = by_pair_.emplace(std::pair{o, n}, taken_.size());
    if (fresh) {
      taken_.push_back({&row, o, n});
      return;
    }
    auto const& first = *taken_[at->second].row;
    bool const same = first.relation == row.relation;
    auto& finding = same ? add("concept-doubled", Severity::information, row, row_words(row),
                               quoted(row_words(row)) + " is said twice", "drop one of the rows")
                         : add("concept-contradiction", Severity::error, row, row_words(row),
                               quoted(row_words(row)) + " and " + quoted(row_words(first)) +
                                   " cannot both hold; the first is kept",
                               "keep the row that is right");
    finding.related.push_back({.place = first.place, .message = "first said here"});
  }

  // Terminals of one edition exclude each other, so a taxon that equals or lies within one of them
  // shares nothing with the next (composition of RCC-5 relations with "disjoint").
  void check_together() {
    std::map<TaxonId, std::vector<std::size_t>> by_old, by_new;
    for (std::size_t i = 0; i < taken_.size(); ++i) {
      if (taken_[i].row->relation == Relation::disjoint) continue;
      by_old[taken_[i].old_taxon].push_back(i);
      by_new[taken_[i].new_taxon].push_back(i);
    }
    auto const within = [&](std::size_t i, bool old_side) {
      auto const relation = taken_[i].row->relation;
      auto const seen = old_side ? relation : converse(relation);
      return seen == Relation::congruent || seen == Relation::included_in;
    };
    auto const nested = [&](std::size_t a, std::size_t b, bool old_side) {
      auto const& x = old_side ? new_[taken_[a].new_taxon] : old_[taken_[a].old_taxon];
      auto const& y = old_side ? new_[taken_[b].new_taxon] : old_[taken_[b].old_taxon];
      auto const holds = [](TaxonRow const& inner, TaxonRow const& outer) {
        auto const names = containing_names(inner.parsed);
        return std::any_of(names.begin(), names.end(),
                           [&](std::string const& name) { return name == outer.plain; });
      };
      return holds(x, y) || holds(y, x);
    };
    auto const check = [&](std::map<TaxonId, std::vector<std::size_t>> const& groups,
                           bool old_side) {
      for (auto const& [taxon, rows] : groups) {
        auto const base = std::find_if(rows.begin(), rows.end(),
                                       [&](std::size_t i) { return within(i, old_side); });
        if (base == rows.end()) continue;
        for (auto const i : rows) {
          if (i == *base || nested(*base, i, old_side)) continue;
          report_together(*base, i, old_side);
        }
      }
    };
    check(by_old, true);
    check(by_new, false);
  }

  void report_together(std::size_t a, std::size_t b, bool old_side) {
    auto const [first, second] = std::minmax(a, b);
    auto const& x = *taken_[first].row;
    auto const& y = *taken_[second].row;
    auto const name = [&](ConceptRow const& row) {
      return quoted(old_side ? row.new_name : row.old_name);
    };
    auto& finding =
        add("concept-contradiction", Severity::warning, y, row_words(y),
            quoted(row_words(x)) + " and " + quoted(row_words(y)) +
                " cannot both hold, as the key sets " + name(x) + " and " + name(y) + " apart",
            old_side ? "a taxon that was split includes its parts, and one that shares more "
                       "overlaps them"
                     : "taxa that were lumped are included in the new one, and those that share "
                       "less overlap it");
    finding.related.push_back({.place = x.place, .message = "the other row"});
  }

  ConceptMap const& map_;
  Edition const& old_edition_;
  Edition const& new_edition_;
  TaxonTable const& old_;
  TaxonTable const& new_;
  std::vector<Finding>& findings_;
  std::optional<NearNames> old_near_, new_near_;  // made when first needed
  std::vector<Entry> taken_;
  std::map<std::pair<TaxonId, TaxonId>, std::size_t> by_pair_;
};

}  // namespace

std::vector<TaxonMatch> resolve_map(ConceptMap const& map, Edition const& old_edition,
                                    Edition const& new_edition, TaxonTable const& old,
                                    TaxonTable const& new_table, std::vector<Finding>& findings) {
  return MapReader{map, old_edition, new_edition, old, new_table, findings}.read();
}

}  // namespace keydrift
