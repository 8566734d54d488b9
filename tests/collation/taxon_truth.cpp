// What a collation must report of taxa in a generated history.

#include <algorithm>
#include <optional>

#include "history_look.hpp"

namespace keydrift::test {
namespace {

bool restated(DraftLead const& was, DraftLead const& is) {
  auto const deciding = [](DraftLead const& lead) {
    std::vector<DraftStatement> statements;
    for (auto const& statement : lead.statements) {
      if (statement.decides()) statements.push_back(statement);
    }
    return statements;
  };
  auto const olds = deciding(was);
  auto const news = deciding(is);
  return olds.size() != news.size() ||
         !std::is_permutation(olds.begin(), olds.end(), news.begin(), same_statement);
}

struct Match {
  std::size_t was{};
  std::size_t is{};
  std::optional<TaxonEvent> relation;
};

std::vector<Match> matches_of(Case const& made, Look const& olds, Look const& news) {
  std::vector<Match> matches;
  std::set<std::size_t> related;
  auto const add = [&](std::size_t was, std::size_t is, std::optional<TaxonEvent> relation) {
    if (olds.ends(was) > 0 && news.ends(is) > 0) matches.push_back({was, is, relation});
  };
  for (auto const& [was, is] : made.history.split_taxa) {
    add(was, is, TaxonEvent::split);
    related.insert({was, is});
  }
  for (auto const& [was, is] : made.history.lumped_taxa) {
    add(was, is, TaxonEvent::lumped);
    related.insert({was, is});
  }
  for (std::size_t i = 0; i < made.new_draft.taxa.size(); ++i) {
    if (related.count(i) != 0) continue;
    bool const renamed =
        i < made.old_draft.taxa.size() && made.old_draft.taxa[i] != made.new_draft.taxa[i];
    add(i, i, renamed ? std::optional{TaxonEvent::renamed} : std::nullopt);
  }
  return matches;
}

// Is the line about the way of one of these taxa?
bool of_doubtful_way(std::string const& line, std::set<std::string> const& taxa) {
  auto const colon = line.rfind(": ");
  auto const event = line.substr(colon + 2);
  return (event == to_word(TaxonEvent::other_route) ||
          event == to_word(TaxonEvent::restated_route)) &&
         taxa.count(line.substr(0, colon)) != 0;
}

// Taxa, as lines call them, with a way by a couplet that may as well be taken for another.
std::set<std::string> taxa_on_doubtful_ways(Case const& made) {
  auto const doubt = doubtful(made).couplets;
  std::set<std::string> taxa;
  if (doubt.empty()) return taxa;
  Look const olds{made.old_draft, made.old_nodes};
  Look const news{made.new_draft, made.new_nodes};
  for (auto const& [was, is, relation] : matches_of(made, olds, news)) {
    for (auto const& ways : {olds.ways(was), news.ways(is)}) {
      if (std::any_of(ways.begin(), ways.end(),
                      [&](Look::Step const& step) { return doubt.count(step.first.first) != 0; })) {
        taxa.insert(tick(made.old_draft.taxa[was], made.new_draft.taxa[is]));
      }
    }
  }
  return taxa;
}

Lines without_doubtful(Case const& made, Lines lines) {
  auto const taxa = taxa_on_doubtful_ways(made);
  std::erase_if(lines, [&](std::string const& line) { return of_doubtful_way(line, taxa); });
  return lines;
}

}  // namespace

Lines planted_taxa(Case const& made) {
  Look const olds{made.old_draft, made.old_nodes};
  Look const news{made.new_draft, made.new_nodes};
  Lines lines;
  auto const& old_names = made.old_draft.taxa;
  auto const& new_names = made.new_draft.taxa;
  std::set<std::size_t> old_matched;
  std::set<std::size_t> new_matched;
  for (auto const& [was, is, relation] : matches_of(made, olds, news)) {
    old_matched.insert(was);
    new_matched.insert(is);
    auto const tell = [&, was = was, is = is](TaxonEvent event) {
      lines.insert(tick(old_names[was], new_names[is]) + ": " + to_word(event));
    };
    if (relation) tell(*relation);
    if (news.ends(is) > olds.ends(was)) tell(TaxonEvent::more_ends);
    if (news.ends(is) < olds.ends(was)) tell(TaxonEvent::fewer_ends);
    auto const old_ways = olds.ways(was);
    if (old_ways != news.ways(is)) {
      tell(TaxonEvent::other_route);
    } else if (std::any_of(old_ways.begin(), old_ways.end(), [&](Look::Step const& step) {
                 return restated(*olds.lead(step.first), *news.lead(step.first));
               })) {
      tell(TaxonEvent::restated_route);
    }
    bool const before = olds.only_by_exception(was);
    bool const after = news.only_by_exception(is);
    if (after && !before) tell(TaxonEvent::only_by_exception);
    if (before && !after) tell(TaxonEvent::no_longer_by_exception);
  }
  for (std::size_t i = 0; i < new_names.size(); ++i) {
    if (olds.ends(i) > 0 && old_matched.count(i) == 0) {
      lines.insert(tick(old_names[i], "-") + ": " + to_word(TaxonEvent::left));
    }
    if (news.ends(i) > 0 && new_matched.count(i) == 0) {
      lines.insert(tick("-", new_names[i]) + ": " + to_word(TaxonEvent::entered));
    }
  }
  return without_doubtful(made, std::move(lines));
}

Lines reported_taxa(Case const& made, Collation const& collation) {
  Lines lines;
  auto const name = [](Edition const& edition, std::vector<TaxonId> const& taxa) {
    return taxa.empty() ? std::string{"-"} : edition[taxa.front()].name;
  };
  for (auto const& change : collation.taxa) {
    auto const who =
        tick(name(made.old_edition, change.old_taxa), name(made.new_edition, change.new_taxa));
    for (auto const event : change.events) {
      if (event != TaxonEvent::same_route) lines.insert(who + ": " + to_word(event));
    }
  }
  return without_doubtful(made, std::move(lines));
}

}  // namespace keydrift::test
