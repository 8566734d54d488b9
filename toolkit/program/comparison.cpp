#include "keydrift/program/comparison.hpp"

#include <array>
#include <future>
#include <span>
#include <sstream>
#include <utility>
#include <vector>

#include "keydrift/characters/drafting/draft_lexicon.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::program {
namespace {

// What the words alone gave is read again by the lexicon that they give.
void read_by_draft(Comparison& comparison, std::span<Edition* const> editions) {
  std::vector<Edition const*> const read{editions.begin(), editions.end()};
  auto lexicon = draft_lexicon(read);
  (void)read_statements(editions, lexicon);  // the findings of the words were told
  comparison.tables.lexicon = std::move(lexicon);
}

}  // namespace

std::shared_ptr<Comparison const> compare(std::string const& old_spec, std::string const& new_spec,
                                          SideTableOptions const& table_options, Context& context,
                                          WithoutLexicon without) {
  // All inputs are tried before giving up, so that one run shows everything that is wrong.
  // The editions are read side by side; what is wrong with them is told in order.
  std::ostringstream new_complaints;
  Context apart{context.out, new_complaints, context.style,
                false,       context.limits, context.encoding};
  auto new_loading = std::async(std::launch::async, [&] { return load_edition(new_spec, apart); });
  auto old_input = load_edition(old_spec, context);
  auto new_input = new_loading.get();
  context.err << new_complaints.str();
  auto tables = load_side_tables(table_options, context);
  if (!old_input || !new_input || !tables) return nullptr;

  auto comparison = std::make_shared<Comparison>();
  comparison->old_input = std::move(*old_input);
  comparison->new_input = std::move(*new_input);
  comparison->tables = std::move(*tables);
  std::array<Edition*, 2> const editions{&comparison->old_input.edition,
                                         &comparison->new_input.edition};
  // What hangs on no statement is made while these are read.
  auto aside = std::async(std::launch::async, [&comparison] {
    comparison->old_graph = std::make_unique<KeyGraph>(comparison->old_edition());
    comparison->new_graph = std::make_unique<KeyGraph>(comparison->new_edition());
    auto const& concepts = comparison->tables.concepts;
    return match_taxa(comparison->old_edition(), comparison->new_edition(),
                      concepts ? &*concepts : nullptr);
  });
  auto findings = read_statements(editions, comparison->tables.lexicon);
  if (table_options.lexicon.empty() && without == WithoutLexicon::by_draft) {
    read_by_draft(*comparison, editions);
  }
  auto matching = aside.get();  // and the graphs
  comparison->collation =
      collate(comparison->old_edition(), *comparison->old_graph, comparison->new_edition(),
              *comparison->new_graph, comparison->tables.lexicon, std::move(matching),
              comparison->tables.parents);
  bool const drafted = comparison->tables.lexicon.drafted;
  comparison->collation.old_coverage.drafted = drafted;
  comparison->collation.new_coverage.drafted = drafted;
  findings.insert(findings.end(), comparison->collation.taxa_matching.findings.begin(),
                  comparison->collation.taxa_matching.findings.end());
  print_findings(context, findings);
  if (has_error(findings)) return nullptr;
  context.kept.push_back(comparison);
  return comparison;
}

}  // namespace keydrift::program
