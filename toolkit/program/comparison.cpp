#include "keydrift/program/comparison.hpp"

#include <array>

#include "keydrift/characters/reading.hpp"

namespace keydrift::program {

std::unique_ptr<Comparison> compare(std::string const& old_spec, std::string const& new_spec,
                                    SideTableOptions const& table_options, Context& context) {
  // All inputs are tried before giving up, so that one run shows everything that is wrong.
  auto old_input = load_edition(old_spec, context);
  auto new_input = load_edition(new_spec, context);
  auto tables = load_side_tables(table_options, context);
  if (!old_input || !new_input || !tables) return nullptr;

  auto comparison = std::make_unique<Comparison>(
      Comparison{std::move(*old_input), std::move(*new_input), std::move(*tables), {}, {}, {}});
  std::array<Edition*, 2> const editions{&comparison->old_input.edition,
                                         &comparison->new_input.edition};
  auto findings = read_statements(editions, comparison->tables.lexicon);
  comparison->old_graph = std::make_unique<KeyGraph>(comparison->old_edition());
  comparison->new_graph = std::make_unique<KeyGraph>(comparison->new_edition());
  auto const* map = comparison->tables.concepts ? &*comparison->tables.concepts : nullptr;
  comparison->collation =
      collate(comparison->old_edition(), *comparison->old_graph, comparison->new_edition(),
              *comparison->new_graph, comparison->tables.lexicon, map, comparison->tables.parents);
  findings.insert(findings.end(), comparison->collation.taxa_matching.findings.begin(),
                  comparison->collation.taxa_matching.findings.end());
  print_findings(context, findings);
  if (has_error(findings)) return nullptr;
  return comparison;
}

}  // namespace keydrift::program
