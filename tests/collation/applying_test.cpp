// The events are complete: the old edition with the reported events applied to it, and nothing
// else, is the new edition.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "history_cases.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {
namespace {

using test::Case;
using test::CaseSpec;

// What an edition says, line by line; words without the statements' notation being parted.
std::vector<std::string> lines_of(Edition const& edition) {
  std::vector<std::string> lines;
  for (auto const& couplet : edition.couplets) {
    std::size_t ordinal = 0;
    for (auto const& lead : couplet.leads) {
      lines.push_back(couplet.label + static_cast<char>('a' + ordinal++) + " " + lead.text + " … " +
                      lead.destination_printed);
    }
  }
  return lines;
}

bool tells_any(CoupletChange const& change, std::initializer_list<CoupletEvent> events) {
  return std::any_of(events.begin(), events.end(), [&](CoupletEvent event) {
    return std::find(change.events.begin(), change.events.end(), event) != change.events.end();
  });
}

// Takes from the new edition only what the collation says is new: whole couplets that were inserted
// or are parts, leads that were added, words that were changed, destinations that were redirected.
// Everything else is the old edition's, under the new numbers and names where these are told.
class Applying {
 public:
  Applying(Edition const& old_edition, Edition const& new_edition, Collation const& collation)
      : old_{old_edition}, new_{new_edition}, collation_{collation} {
    for (auto const& pair : collation.alignment.pairs) {
      of_old_[pair.old_couplet.index] = pair.new_couplet.index;
      of_new_[pair.new_couplet.index] = pair.old_couplet.index;
    }
    for (auto const& change : collation.taxa) {
      for (auto const was : change.old_taxa) {
        for (auto const is : change.new_taxa) {
          names_[old_[was].name].insert(new_[is].name);
        }
      }
    }
    for (auto const& change : collation.couplets) {
      for (auto const couplet : change.new_couplets)
        label_[couplet.index] = label_of(change, couplet);
    }
  }

  std::vector<std::string> lines() {
    // A part of a couplet that was split may be printed far behind the other.
    std::map<std::uint32_t, std::vector<std::string>> by_place;
    for (auto const& change : collation_.couplets) {
      for (auto const couplet : change.new_couplets) {
        auto const label = label_.at(couplet.index);
        std::size_t ordinal = 0;
        for (auto const& lead : leads_of(change, couplet)) {
          by_place[couplet.index].push_back(label + static_cast<char>('a' + ordinal++) + " " +
                                            lead);
        }
      }
    }
    std::vector<std::string> lines;
    for (auto const& [place, some] : by_place) lines.insert(lines.end(), some.begin(), some.end());
    return lines;
  }

 private:
  [[nodiscard]] bool is_pair(CoupletId couplet) const { return of_new_.count(couplet.index) != 0; }

  [[nodiscard]] std::string label_of(CoupletChange const& change, CoupletId couplet) const {
    if (!is_pair(couplet) ||
        tells_any(change, {CoupletEvent::renumbered, CoupletEvent::split, CoupletEvent::merged})) {
      return new_[couplet].label;
    }
    return old_.couplets[of_new_.at(couplet.index)].label;
  }

  std::vector<std::string> leads_of(CoupletChange const& change, CoupletId couplet) {
    std::vector<std::string> leads;
    if (!is_pair(couplet)) {
      for (auto const& lead : new_[couplet].leads) {
        leads.push_back(lead.text + " … " + destination_there(lead));
      }
      return leads;
    }
    auto pairs = change.leads;
    std::erase_if(pairs, [](LeadPair const& pair) { return !pair.new_lead; });
    if (!tells_any(change, {CoupletEvent::leads_swapped})) {
      // In the old order; leads that were added keep the places that they have.
      std::vector<LeadPair> olds;
      for (auto const& pair : pairs) {
        if (pair.old_lead) olds.push_back(pair);
      }
      std::sort(olds.begin(), olds.end(),
                [](LeadPair const& a, LeadPair const& b) { return *a.old_lead < *b.old_lead; });
      auto next = olds.begin();
      for (auto& pair : pairs) {
        if (pair.old_lead) pair = *next++;
      }
    }
    for (auto const& pair : pairs) {
      auto const& is = new_[couplet].leads[*pair.new_lead];
      if (!pair.old_lead) {
        EXPECT_TRUE(tells_any(change, {CoupletEvent::lead_added, CoupletEvent::merged}))
            << "nobody told that " << is.label << " was added";
        leads.push_back(is.text + " … " + destination_there(is));
        continue;
      }
      auto const& was = old_.couplets[of_new_.at(couplet.index)].leads[*pair.old_lead];
      bool const other_words = tells_any(change, {CoupletEvent::restated, CoupletEvent::reworded,
                                                  CoupletEvent::split, CoupletEvent::merged});
      leads.push_back((other_words ? is.text : was.text) + " … " +
                      (tells_any(change, {CoupletEvent::redirected}) ? destination_there(is)
                                                                     : destination(was, is)));
    }
    return leads;
  }

  // Of a lead that is new, or of which it is told that it leads elsewhere.
  [[nodiscard]] std::string destination_there(Lead const& lead) const {
    if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
      return label_.at(to->couplet.index);
    }
    return lead.destination_printed;
  }

  struct Goals {
    std::set<std::uint32_t> couplets;  // of the new edition
    std::set<std::string> taxa;        // names of the new edition
  };
  // Where a lead of the old edition leads, couplets that went being seen through.
  Goals goals_of(Lead const& lead) const {
    Goals goals;
    std::vector<Lead const*> waiting{&lead};
    std::set<std::uint32_t> seen;
    while (!waiting.empty()) {
      auto const* next = waiting.back();
      waiting.pop_back();
      if (auto const* taxa = std::get_if<ToTaxa>(&next->destination)) {
        for (auto const taxon : taxa->taxa) {
          auto const found = names_.find(old_[taxon].name);
          if (found != names_.end()) goals.taxa.insert(found->second.begin(), found->second.end());
        }
      } else if (auto const* to = std::get_if<ToCouplet>(&next->destination)) {
        auto const found = of_old_.find(to->couplet.index);
        if (found != of_old_.end()) {
          goals.couplets.insert(found->second);
        } else if (seen.insert(to->couplet.index).second) {
          for (auto const& behind : old_[to->couplet].leads) waiting.push_back(&behind);
        }
      }
    }
    return goals;
  }

  // The old lead's destination, by way of couplets that are told to be inserted between.
  std::string destination(Lead const& was, Lead const& is) const {
    auto const goals = goals_of(was);
    std::vector<Lead const*> waiting{&is};
    std::set<std::uint32_t> seen;
    while (!waiting.empty()) {
      auto const* next = waiting.back();
      waiting.pop_back();
      if (auto const* taxa = std::get_if<ToTaxa>(&next->destination)) {
        if (std::any_of(taxa->taxa.begin(), taxa->taxa.end(),
                        [&](TaxonId taxon) { return goals.taxa.count(new_[taxon].name) != 0; })) {
          return destination_there(is);
        }
      } else if (auto const* to = std::get_if<ToCouplet>(&next->destination)) {
        if (goals.couplets.count(to->couplet.index) != 0) return destination_there(is);
        if (!is_pair(to->couplet) && seen.insert(to->couplet.index).second) {
          for (auto const& behind : new_[to->couplet].leads) waiting.push_back(&behind);
        }
      }
    }
    if (!goals.couplets.empty()) return label_.at(*goals.couplets.begin());
    return goals.taxa.empty() ? "nowhere" : *goals.taxa.begin();
  }

  Edition const& old_;
  Edition const& new_;
  Collation const& collation_;
  std::map<std::uint32_t, std::uint32_t> of_old_;
  std::map<std::uint32_t, std::uint32_t> of_new_;
  std::map<std::string, std::set<std::string>> names_;
  std::map<std::uint32_t, std::string> label_;  // by new couplet
};

std::vector<std::string> applied(Case const& made, Collation const& collation) {
  return Applying{made.old_edition, made.new_edition, collation}.lines();
}

// The names of the new edition, by what is told of the taxa of the old one.
std::set<std::string> taxa_applied(Case const& made, Collation const& collation) {
  std::set<std::string> names;
  for (auto const& taxon : made.old_edition.taxa) names.insert(taxon.name);
  std::set<std::string> gone;
  std::set<std::string> come;
  for (auto const& change : collation.taxa) {
    for (auto const taxon : change.old_taxa) gone.insert(made.old_edition[taxon].name);
    for (auto const taxon : change.new_taxa) come.insert(made.new_edition[taxon].name);
  }
  for (auto const& name : gone) names.erase(name);
  names.insert(come.begin(), come.end());
  return names;
}

// The steps told of a taxon, taken by themselves, are a way to it in either edition.
void expect_ways(Case const& made, TaxonChange const& change) {
  if (change.steps_before > 0 || change.steps_after > 0) return;
  for (bool const of_new : {false, true}) {
    auto const& edition = of_new ? made.new_edition : made.old_edition;
    auto const& taxa = of_new ? change.new_taxa : change.old_taxa;
    if (taxa.empty()) continue;
    std::optional<CoupletId> here = CoupletId{0};
    bool ended = false;
    for (auto const& step : change.steps) {
      auto const& lead = of_new ? step.new_lead : step.old_lead;
      if (!lead) continue;
      ASSERT_TRUE(here.has_value()) << edition[taxa.front()].name;
      EXPECT_EQ(lead->couplet, *here) << edition[taxa.front()].name;
      here.reset();
      auto const& destination = edition[*lead].destination;
      if (auto const* to = std::get_if<ToCouplet>(&destination)) here = to->couplet;
      if (auto const* to = std::get_if<ToTaxa>(&destination)) {
        ended = std::find(to->taxa.begin(), to->taxa.end(), taxa.front()) != to->taxa.end();
      }
    }
    EXPECT_TRUE(ended) << edition[taxa.front()].name << " is not where its steps lead";
  }
}

void expect_events_of_steps(TaxonChange const& change) {
  if (change.old_taxa.empty() || change.new_taxa.empty()) return;
  auto const has = [&](TaxonEvent event) {
    return std::find(change.events.begin(), change.events.end(), event) != change.events.end();
  };
  bool const same_leads =
      std::all_of(change.steps.begin(), change.steps.end(),
                  [](RouteStep const& step) { return step.aligned && step.same_lead; });
  bool const restated = std::any_of(change.steps.begin(), change.steps.end(),
                                    [](RouteStep const& step) { return step.restated; });
  EXPECT_EQ(int{has(TaxonEvent::same_route)} + int{has(TaxonEvent::restated_route)} +
                int{has(TaxonEvent::other_route)},
            1);
  EXPECT_TRUE(!has(TaxonEvent::same_route) || (same_leads && !restated));
  EXPECT_TRUE(!has(TaxonEvent::restated_route) || (same_leads && restated));
}

bool comes_out(Case const& made) {
  return applied(made, collated(made)) == lines_of(made.new_edition);
}

TEST(Applying, TheReportedEventsMakeTheNewEditionOfTheOldOne) {
  for (auto const shape : test::all_shapes) {
    for (std::uint64_t seed = 1; seed <= test::seeds(6); ++seed) {
      CaseSpec const spec{
          .seed = seed, .couplets = 30, .percent = 50, .shape = shape, .gathered = seed % 3 == 0};
      auto const made = test::make_case(spec);
      auto const collation = collated(made);
      if (!comes_out(made)) {
        auto const small = test::shrunk(spec, [](Case const& one) { return !comes_out(one); });
        auto const smaller = test::make_case(small);
        EXPECT_EQ(applied(smaller, collated(smaller)), lines_of(smaller.new_edition))
            << test::described(small);
      }
      std::set<std::string> names;
      for (auto const& taxon : made.new_edition.taxa) names.insert(taxon.name);
      EXPECT_EQ(taxa_applied(made, collation), names) << test::described(spec);
      for (auto const& change : collation.taxa) {
        expect_ways(made, change);
        expect_events_of_steps(change);
      }
      if (HasFailure()) return;
    }
  }
}

// Nothing of the new edition comes in by another door: with an event left out it does not come out.
TEST(Applying, WithoutAnEventItIsAnotherEdition) {
  std::map<CoupletEvent, std::pair<std::size_t, std::size_t>> missed;  // of all
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    auto const made = test::make_case({.seed = seed, .couplets = 30, .percent = 50});
    auto const collation = collated(made);
    for (std::size_t i = 0; i < collation.couplets.size(); ++i) {
      for (auto const event :
           {CoupletEvent::renumbered, CoupletEvent::leads_swapped, CoupletEvent::reworded,
            CoupletEvent::restated, CoupletEvent::redirected}) {
        auto const& events = collation.couplets[i].events;
        if (std::find(events.begin(), events.end(), event) == events.end() ||
            tells_any(collation.couplets[i], {CoupletEvent::split, CoupletEvent::merged})) {
          continue;
        }
        auto silent = collation;
        std::erase(silent.couplets[i].events, event);
        auto& [without, all] = missed[event];
        ++all;
        if (applied(made, silent) != lines_of(made.new_edition)) ++without;
      }
    }
  }
  EXPECT_EQ(missed.size(), 5U);
  for (auto const& [event, counts] : missed) {
    EXPECT_EQ(counts.first, counts.second) << to_word(event);
  }
}

}  // namespace
}  // namespace keydrift
