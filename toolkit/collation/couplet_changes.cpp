#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "keydrift/collation/ground.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::collating {
namespace {

// Couplets without counterpart that are looked through before the search is given up; what was
// found so far then has to do.
constexpr std::size_t most_looked_through = 4096;

// What stands behind a lead, or before a couplet, once couplets without counterpart are looked
// through.  All in terms of the new edition, so that both editions' can be compared; sorted.
struct View {
  std::vector<std::uint32_t> couplets;  // new couplets
  std::vector<std::uint32_t> leads;     // rows of new leads
  std::vector<std::uint64_t> taxa;      // see taxon_number()
  std::vector<std::string> words;       // other destinations, as printed
  bool start{false};
  bool names_taxa{false};  // shared ones or not
};

template <class T>
void tidy(std::vector<T>& list) {
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

template <class T>
bool lists_meet(std::vector<T> const& a, std::vector<T> const& b) {
  auto i = a.begin();
  auto j = b.begin();
  while (i != a.end() && j != b.end()) {
    if (*i == *j) return true;
    if (*i < *j) {
      ++i;
    } else {
      ++j;
    }
  }
  return false;
}

class Looking {
 public:
  explicit Looking(Ground const& ground) : ground_{ground} {
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      seen_[index_of(of)].assign(ground_.side(of).couplet_count(), 0);
      Edition const& edition = *ground_.side(of).edition;
      ties_[index_of(of)].resize(edition.taxa.size());
      starts_[index_of(of)].assign(edition.couplets.size(), 0);
      for (auto const& part : edition.parts) {
        if (part.start.index < edition.couplets.size()) {
          starts_[index_of(of)][part.start.index] = 1;
        }
      }
    }
    std::uint64_t tie = 0;
    for (auto const& match : ground_.matching.matches) {
      if (match.relation == Relation::disjoint) continue;
      ties_[0][match.old_taxon.index].push_back(tie);
      ties_[1][match.new_taxon.index].push_back(tie);
      ++tie;
    }
  }

  View behind_lead(Of of, std::uint32_t row) {
    View view;
    begin();
    rows_.assign(1, row);
    std::size_t looked_through = 0;
    auto const& side = ground_.side(of);
    while (!rows_.empty()) {
      auto const next = rows_.back();
      rows_.pop_back();
      auto const couplet = side.behind[next];
      if (couplet == none) {
        add_end(of, side.lead(next), view);
        continue;
      }
      auto const counterpart = ground_.counterparts.couplet[index_of(of)][couplet];
      if (counterpart != none) {
        view.couplets.push_back(of == Of::old_edition ? counterpart : couplet);
        continue;
      }
      if (!see(of, couplet) || ++looked_through > most_looked_through) continue;
      for (auto k = side.first_lead[couplet]; k < side.end_lead(couplet); ++k) rows_.push_back(k);
    }
    tidy(view.couplets);
    tidy(view.taxa);
    tidy(view.words);
    return view;
  }

  // Both leads name taxa: is a shared one named by one of them only?
  [[nodiscard]] bool other_taxa(Lead const& was, Lead const& is) const {
    auto const* old_taxa = std::get_if<ToTaxa>(&was.destination);
    auto const* new_taxa = std::get_if<ToTaxa>(&is.destination);
    if (old_taxa == nullptr || new_taxa == nullptr) return false;
    auto const lacks = [&](Of of, ToTaxa const& named, ToTaxa const& others) {
      return std::any_of(named.taxa.begin(), named.taxa.end(), [&](TaxonId taxon) {
        auto const& mine = ties_[index_of(of)][taxon.index];
        return !mine.empty() &&
               std::none_of(others.taxa.begin(), others.taxa.end(), [&](TaxonId candidate) {
                 return lists_meet(mine, ties_[index_of(other(of))][candidate.index]);
               });
      });
    };
    return lacks(Of::old_edition, *old_taxa, *new_taxa) ||
           lacks(Of::new_edition, *new_taxa, *old_taxa);
  }

  View before_couplet(Of of, std::uint32_t couplet) {
    View view;
    begin();
    couplets_.assign(1, couplet);
    std::size_t looked_through = 0;
    auto const& side = ground_.side(of);
    while (!couplets_.empty()) {
      auto const here = couplets_.back();
      couplets_.pop_back();
      if (starts_[index_of(of)][here] != 0) view.start = true;
      for (auto const lead : side.graph->leads_to(CoupletId{here})) {
        auto const parent = lead.couplet.index;
        if (ground_.counterparts.couplet[index_of(of)][parent] != none) {
          auto const row = side.row(lead);
          auto const there = ground_.counterparts.lead[index_of(of)][row];
          // A lead that was dropped or added has no like in the other edition.
          if (there != none) view.leads.push_back(of == Of::old_edition ? there : row);
        } else if (see(of, parent) && ++looked_through <= most_looked_through) {
          couplets_.push_back(parent);
        }
      }
    }
    tidy(view.leads);
    return view;
  }

 private:
  void begin() { ++stamp_; }
  bool see(Of of, std::uint32_t couplet) {
    auto& stamp = seen_[index_of(of)][couplet];
    if (stamp == stamp_) return false;
    stamp = stamp_;
    return true;
  }

  void add_end(Of of, Lead const& lead, View& view) const {
    if (auto const* to = std::get_if<ToTaxa>(&lead.destination)) {
      for (auto const taxon : to->taxa) {
        auto const& ties = ties_[index_of(of)][taxon.index];
        view.taxa.insert(view.taxa.end(), ties.begin(), ties.end());
        view.names_taxa = true;
      }
    } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
      view.words.push_back(key->key);
    } else if (auto const* printed = std::get_if<Unresolved>(&lead.destination)) {
      view.words.push_back(printed->printed);
    }
  }

  Ground const& ground_;
  std::array<std::vector<std::vector<std::uint64_t>>, 2> ties_;  // by taxon
  std::array<std::vector<char>, 2> starts_;
  std::array<std::vector<std::uint32_t>, 2> seen_;
  std::uint32_t stamp_{0};
  std::vector<std::uint32_t> rows_;
  std::vector<std::uint32_t> couplets_;
};

// A lead goes elsewhere when nothing that it led to stands behind it any more.
bool goes_elsewhere(View const& was, View const& is) {
  bool const was_nothing = was.couplets.empty() && was.words.empty() && !was.names_taxa;
  bool const is_nothing = is.couplets.empty() && is.words.empty() && !is.names_taxa;
  if (was_nothing && is_nothing) return false;
  return !lists_meet(was.couplets, is.couplets) && !lists_meet(was.taxa, is.taxa) &&
         !lists_meet(was.words, is.words);
}

bool hangs_elsewhere(View const& was, View const& is) {
  if (was.start && is.start) return false;
  bool const nowhere_was = !was.start && was.leads.empty();
  bool const nowhere_is = !is.start && is.leads.empty();
  if (nowhere_was && nowhere_is) return false;
  return !lists_meet(was.leads, is.leads);
}

bool changes_meaning(CoupletEvent event) {
  switch (event) {
    case CoupletEvent::kept:
    case CoupletEvent::renumbered:
    case CoupletEvent::leads_swapped:
    case CoupletEvent::reworded:
      return false;
    case CoupletEvent::restated:
    case CoupletEvent::redirected:
    case CoupletEvent::moved:
    case CoupletEvent::lead_added:
    case CoupletEvent::lead_dropped:
    case CoupletEvent::split:
    case CoupletEvent::merged:
    case CoupletEvent::inserted:
    case CoupletEvent::removed:
      return true;
  }
  return true;
}

class CoupletTelling {
 public:
  explicit CoupletTelling(Ground const& ground) : ground_{ground}, looking_{ground} {
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      auto const& owners = ground_.divisions[index_of(of)];
      for (std::uint32_t i = 0; i < owners.size(); ++i) {
        if (owners[i] != none) parts_[index_of(of)].emplace_back(owners[i], i);
      }
      std::sort(parts_[index_of(of)].begin(), parts_[index_of(of)].end());
    }
  }

  std::vector<CoupletChange> run() && {
    struct Placed {
      std::uint32_t new_index{};  // after which it stands, counted from 1
      std::uint32_t old_index{};  // 0 for what is in the new edition itself
      CoupletChange change;
    };
    std::vector<Placed> placed;
    for (auto const& pair : ground_.alignment.pairs) {
      auto change = tell(pair);
      auto const first = change.new_couplets.front().index;
      placed.push_back({first + 1, 0, std::move(change)});
    }
    for (auto const couplet : ground_.alignment.only_new) {
      if (ground_.divisions[1][couplet.index] != none) continue;
      placed.push_back({couplet.index + 1, 0, alone(Of::new_edition, couplet)});
    }
    // Removed couplets follow the nearest couplet before them that is still there.
    std::uint32_t after = 0;
    auto removed = ground_.alignment.only_old.begin();
    for (std::uint32_t i = 0; i < ground_.old_side.couplet_count(); ++i) {
      if (removed != ground_.alignment.only_old.end() && removed->index == i) {
        ++removed;
        if (ground_.divisions[0][i] != none) continue;
        placed.push_back({after, i + 1, alone(Of::old_edition, CoupletId{i})});
      } else {
        after = ground_.counterparts.couplet[0][i] + 1;
      }
    }
    std::stable_sort(placed.begin(), placed.end(), [](Placed const& a, Placed const& b) {
      return a.new_index != b.new_index ? a.new_index < b.new_index : a.old_index < b.old_index;
    });
    std::vector<CoupletChange> changes;
    changes.reserve(placed.size());
    for (auto& entry : placed) changes.push_back(std::move(entry.change));
    return changes;
  }

 private:
  static CoupletChange alone(Of of, CoupletId couplet) {
    CoupletChange change;
    bool const is_new = of == Of::new_edition;
    (is_new ? change.new_couplets : change.old_couplets).push_back(couplet);
    change.events = {is_new ? CoupletEvent::inserted : CoupletEvent::removed};
    change.changes_meaning = true;
    return change;
  }

  // Adds the parts of edition `of` that belong to the other edition's couplet `whole_couplet`.
  void add_parts(Of of, std::uint32_t whole_couplet, std::vector<CoupletId>& couplets) const {
    auto const& parts = parts_[index_of(of)];
    for (auto part = std::lower_bound(parts.begin(), parts.end(),
                                      std::pair{whole_couplet, std::uint32_t{0}});
         part != parts.end() && part->first == whole_couplet; ++part) {
      couplets.push_back(CoupletId{part->second});
    }
  }

  CoupletChange tell(CoupletPair const& pair) {
    CoupletChange change;
    change.old_couplets = {pair.old_couplet};
    change.new_couplets = {pair.new_couplet};
    change.similarity = pair.similarity;
    change.leads = pair.leads;
    auto const old_couplet = pair.old_couplet.index;
    auto const new_couplet = pair.new_couplet.index;
    add_parts(Of::new_edition, old_couplet, change.new_couplets);
    add_parts(Of::old_edition, new_couplet, change.old_couplets);
    std::sort(change.new_couplets.begin(), change.new_couplets.end());
    std::sort(change.old_couplets.begin(), change.old_couplets.end());
    bool const split = change.new_couplets.size() > 1;
    bool const merged = change.old_couplets.size() > 1;

    auto& events = change.events;
    auto const& old_side = ground_.old_side;
    auto const& new_side = ground_.new_side;
    // Of several couplets one may well have kept the number.
    if (std::none_of(change.old_couplets.begin(), change.old_couplets.end(), [&](CoupletId was) {
          return std::any_of(
              change.new_couplets.begin(), change.new_couplets.end(), [&](CoupletId is) {
                return old_side.couplet(was.index).label == new_side.couplet(is.index).label;
              });
        })) {
      events.push_back(CoupletEvent::renumbered);
    }
    bool swapped = false;
    bool reworded = false;
    bool restated = false;
    bool redirected = false;
    std::size_t added = 0;
    std::size_t dropped = 0;
    std::optional<std::uint32_t> last;
    for (auto const& leads : pair.leads) {
      if (!leads.old_lead || !leads.new_lead) {
        ++(leads.old_lead ? dropped : added);
        continue;
      }
      swapped = swapped || (last && *leads.old_lead < *last);
      last = *leads.old_lead;
      auto const old_row = old_side.row({pair.old_couplet, *leads.old_lead});
      auto const new_row = new_side.row({pair.new_couplet, *leads.new_lead});
      auto const& lead_change = ground_.lead_changes[old_row];
      reworded = reworded || lead_change.reworded;
      restated = restated || lead_change.restated;
      redirected = redirected ||
                   looking_.other_taxa(old_side.lead(old_row), new_side.lead(new_row)) ||
                   goes_elsewhere(looking_.behind_lead(Of::old_edition, old_row),
                                  looking_.behind_lead(Of::new_edition, new_row));
    }
    reworded =
        reworded || old_side.couplet(old_couplet).notes != new_side.couplet(new_couplet).notes;
    if (swapped) events.push_back(CoupletEvent::leads_swapped);
    // A couplet that was split or merged says less or more than before by that alone.
    if (restated && !((split || merged) && said_elsewhere(change))) {
      events.push_back(CoupletEvent::restated);
    } else if (reworded && !restated) {
      events.push_back(CoupletEvent::reworded);
    }
    if (redirected) events.push_back(CoupletEvent::redirected);
    if (hangs_elsewhere(looking_.before_couplet(Of::old_edition, old_couplet),
                        looking_.before_couplet(Of::new_edition, new_couplet))) {
      events.push_back(CoupletEvent::moved);
    }
    if (added > 0 && !merged) events.push_back(CoupletEvent::lead_added);
    if (dropped > 0 && !split) events.push_back(CoupletEvent::lead_dropped);
    if (split) events.push_back(CoupletEvent::split);
    if (merged) events.push_back(CoupletEvent::merged);
    if (events.empty()) events.push_back(CoupletEvent::kept);
    std::sort(events.begin(), events.end());
    change.changes_meaning = std::any_of(events.begin(), events.end(),
                                         [](CoupletEvent e) { return changes_meaning(e); });
    return change;
  }

  // Is everything that the old couplets say said by the new ones, and nothing else?  A lead from
  // one part to another may sum up what the parts say.
  [[nodiscard]] bool said_elsewhere(CoupletChange const& change) const {
    enum class Joints { with, without };
    auto const statements = [&](Of of, std::vector<CoupletId> const& couplets, Joints joints) {
      std::vector<std::uint64_t> all;
      auto const& side = ground_.side(of);
      for (auto const couplet : couplets) {
        for (auto row = side.first_lead[couplet.index]; row < side.end_lead(couplet.index); ++row) {
          bool const joint =
              std::binary_search(couplets.begin(), couplets.end(), CoupletId{side.behind[row]});
          if (joint && joints == Joints::without) continue;
          for (auto const& said : ground_.comparison.saying(of, row).statements) {
            all.push_back(said.predicate);
          }
        }
      }
      tidy(all);
      return all;
    };
    auto const covers = [&](Of of, std::vector<CoupletId> const& couplets,
                            std::vector<CoupletId> const& others) {
      auto const all = statements(of, couplets, Joints::with);
      auto const asked = statements(other(of), others, Joints::without);
      return std::includes(all.begin(), all.end(), asked.begin(), asked.end());
    };
    return covers(Of::new_edition, change.new_couplets, change.old_couplets) &&
           covers(Of::old_edition, change.old_couplets, change.new_couplets);
  }

  Ground const& ground_;
  Looking looking_;
  // (couplet of the other edition, part), sorted
  std::array<std::vector<std::pair<std::uint32_t, std::uint32_t>>, 2> parts_;
};

}  // namespace

std::vector<LeadChange> compare_aligned_leads(Side const& old_side, Side const& new_side,
                                              Counterparts const& counterparts,
                                              Exceptions const& exceptions) {
  std::vector<LeadChange> changes(old_side.leads.size());
  constexpr std::size_t worth_a_thread = 1000;
  in_parts(changes.size(), worth_a_thread, [&](std::size_t begin, std::size_t end) {
    for (auto row = static_cast<std::uint32_t>(begin); row < end; ++row) {
      auto const there = counterparts.lead[0][row];
      if (there == none) continue;
      changes[row] = compare_leads(old_side.lead(row), new_side.lead(there), exceptions);
    }
  });
  return changes;
}

std::vector<CoupletChange> couplet_changes(Ground const& ground) {
  return CoupletTelling{ground}.run();
}

}  // namespace keydrift::collating
