// The assignment and the reckoning in taxa against libraries made for other things, asked by the
// scripts of tests/oracles.

#include <sys/wait.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <set>

#include "benchmark.hpp"
#include "history_cases.hpp"
#include "keydrift/collation/assignment.hpp"
#include "keydrift/collation/candidates.hpp"
#include "keydrift/collation/comparison.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift::bench {
namespace {

using namespace collating;
using test::Case;

// A case with what comparing it needs; stays where it is.
struct Compared {
  explicit Compared(test::CaseSpec const& spec)
      : made{test::make_case(spec)},
        old_graph{made.old_edition},
        new_graph{made.new_edition},
        map{.name = "map", .rows = made.history.rows},
        matching{match_taxa(made.old_edition, made.new_edition, map.rows.empty() ? nullptr : &map)},
        old_side{make_side(made.old_edition, old_graph)},
        new_side{make_side(made.new_edition, new_graph)},
        comparison{old_side, new_side, matching} {}
  Compared(Compared const&) = delete;
  Compared& operator=(Compared const&) = delete;

  Case made;
  KeyGraph old_graph;
  KeyGraph new_graph;
  ConceptMap map;
  TaxonMatching matching;
  Side old_side;
  Side new_side;
  Comparison comparison;
};

void print_assignments(Settings const& settings) {
  std::string input;
  std::vector<std::int64_t> ours;
  for (std::uint64_t seed = 1; seed <= 10 * settings.seeds; ++seed) {
    Compared const compared{{.seed = seed,
                             .couplets = 100,
                             .percent = 50,
                             .shape = test::all_shapes[seed % test::all_shapes.size()],
                             .vocabulary = test::Vocabulary::poor}};
    std::vector<Offer> offers;
    std::vector<std::uint32_t> pairing;
    for (auto const& pair : find_candidates(compared.comparison).pairs) {
      auto const result = compared.comparison.compare(pair.old_couplet, pair.new_couplet, pairing);
      auto const worth = std::int64_t{9} * result.taxa + std::int64_t{7} * result.statements;
      if (worth > 0) offers.push_back({pair.old_couplet, pair.new_couplet, worth});
    }
    auto const rows = compared.old_side.couplet_count();
    auto const columns = compared.new_side.couplet_count();
    std::int64_t sum = 0;
    for (auto const chosen : heaviest_assignment(rows, columns, offers)) {
      if (chosen < offers.size()) sum += offers[chosen].worth;
    }
    ours.push_back(sum);
    input += std::to_string(rows) + " " + std::to_string(columns) + " " +
             std::to_string(offers.size()) + "\n";
    for (auto const& offer : offers) {
      input += std::to_string(offer.row) + " " + std::to_string(offer.column) + " " +
               std::to_string(offer.worth) + "\n";
    }
  }
  auto const theirs = run_script(settings.oracles / "assignment.py", input);
  if (!theirs) return;
  std::size_t equal = 0;
  for (std::size_t i = 0; i < std::min(ours.size(), theirs->size()); ++i) {
    equal += std::stoll((*theirs)[i]) == ours[i] ? 1U : 0U;
  }
  std::printf("worth of the assignment as scipy's linear_sum_assignment: %zu of %zu graphs\n",
              equal, ours.size());
}

// The key as a tree of its taxa.
std::string newick(Edition const& edition) {
  std::vector<std::string> below(edition.couplets.size());
  // Couplets printed later stand below, as histories print them.
  for (std::size_t i = edition.couplets.size(); i-- > 0;) {
    for (auto const& lead : edition.couplets[i].leads) {
      below[i] += below[i].empty() ? "(" : ",";
      if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
        below[i] += below[to->couplet.index];
      } else {
        below[i] += "'" + lead.destination_printed + "'";
      }
    }
    below[i] += ")";
  }
  return below.front() + ";";
}

void print_clusters(Settings const& settings) {
  std::string input;
  std::vector<std::size_t> ours;
  for (std::uint64_t seed = 1; seed <= 10 * settings.seeds; ++seed) {
    // Subtrees are moved about: every taxon stays, once.
    Compared const compared{{.seed = seed,
                             .couplets = 8 + seed % 20,
                             .percent = 60,
                             .shape = test::Shape::bushy,
                             .kind = test::EditKind::move}};
    std::array<std::set<std::uint64_t>, 2> clusters;
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      for (std::uint32_t i = 0; i < compared.comparison.side(of).couplet_count(); ++i) {
        clusters[static_cast<std::size_t>(of)].insert(
            compared.comparison.below_couplet(of, i).fingerprint);
      }
    }
    std::vector<std::uint64_t> alone;
    std::set_symmetric_difference(clusters[0].begin(), clusters[0].end(), clusters[1].begin(),
                                  clusters[1].end(), std::back_inserter(alone));
    ours.push_back(alone.size());
    input += newick(compared.made.old_edition) + "\n" + newick(compared.made.new_edition) + "\n";
  }
  auto const theirs = run_script(settings.oracles / "clusters.py", input);
  if (!theirs) return;
  std::size_t equal = 0;
  std::size_t apart = 0;
  for (std::size_t i = 0; i < std::min(ours.size(), theirs->size()); ++i) {
    equal += std::stoul((*theirs)[i]) == ours[i] ? 1U : 0U;
    apart += ours[i] > 0 ? 1U : 0U;
  }
  std::printf("cluster distance as dendropy's: %zu of %zu pairs of trees (%zu differ at all)\n",
              equal, ours.size(), apart);
}

}  // namespace

std::optional<std::vector<std::string>> run_script(std::filesystem::path const& script,
                                                   std::string const& input) {
  auto const base = std::filesystem::temp_directory_path() /
                    ("alignment-benchmark-" + std::to_string(::getpid()));
  auto const in = base.string() + ".in";
  auto const out = base.string() + ".out";
  std::ofstream{in} << input;
  auto const command = "/usr/bin/python3 '" + script.string() + "' < '" + in + "' > '" + out + "'";
  auto const status = std::system(command.c_str());
  std::vector<std::string> lines;
  std::ifstream file{out};
  for (std::string line; std::getline(file, line);) lines.push_back(line);
  std::filesystem::remove(in);
  std::filesystem::remove(out);
  if (status == 0) return lines;
  std::printf("(%s left out: %s)\n", script.filename().c_str(),
              WIFEXITED(status) && WEXITSTATUS(status) == 77 ? "its library is not installed"
                                                             : "python3 did not run it");
  return std::nullopt;
}

void print_oracles(Settings const& settings) {
  std::printf("\nAgainst other libraries\n");
  print_assignments(settings);
  print_clusters(settings);
}

}  // namespace keydrift::bench
