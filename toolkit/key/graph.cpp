#include "keydrift/key/graph.hpp"

// Boost's depth-first search, on which strong_components and topological_sort are built, keeps its
// stack on the heap unless this is defined.
#ifdef BOOST_RECURSIVE_DFS
#error "keys are as deep as they are long: BOOST_RECURSIVE_DFS would overflow the stack"
#endif

#include <algorithm>
#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/depth_first_search.hpp>
#include <boost/graph/filtered_graph.hpp>
#include <boost/graph/strong_components.hpp>
#include <boost/graph/topological_sort.hpp>
#include <boost/property_map/property_map.hpp>
#include <iterator>
#include <type_traits>
#include <utility>

#include "keydrift/key/part_titles.hpp"

namespace keydrift {
namespace {

using Vertex = std::uint32_t;  // couplets first, then terminals
using Edge = std::uint32_t;    // row in the lists of edges, which follow printed order
using Graph =
    boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, boost::no_property,
                                       boost::no_property, Vertex, Edge>;

constexpr std::uint32_t kUnseen = 0xFFFFFFFFU;
constexpr std::uint64_t kMostRoutes = std::uint64_t{1} << 63;

std::uint64_t saturating_sum(std::uint64_t a, std::uint64_t b) {
  return a >= kMostRoutes - std::min(b, kMostRoutes) ? kMostRoutes : a + b;
}

// Where a stretch of a pool of runs lies.
struct Stretch {
  std::uint64_t begin{};
  std::uint64_t size{};
};

template <class Map>
auto as_map(Map& values, Graph const& graph) {
  return boost::make_iterator_property_map(values.begin(), get(boost::vertex_index, graph));
}

// Notes the couplets answered on the shortest way to each vertex.
class DepthVisitor : public boost::default_bfs_visitor {
 public:
  explicit DepthVisitor(std::vector<std::uint32_t>& depth) : depth_{&depth} {}
  template <class E, class G>
  void tree_edge(E edge, G const& graph) const {
    (*depth_)[target(edge, graph)] = (*depth_)[source(edge, graph)] + 1;
  }

 private:
  std::vector<std::uint32_t>* depth_;
};

// Notes the terminals in the order in which a depth-first walk meets them.
class TerminalVisitor : public boost::default_dfs_visitor {
 public:
  TerminalVisitor(Vertex couplets, std::vector<TaxonId>& met) : couplets_{couplets}, met_{&met} {}
  template <class V, class G>
  void discover_vertex(V vertex, G const&) const {
    if (vertex >= couplets_) met_->push_back(TaxonId{vertex - couplets_});
  }

 private:
  Vertex couplets_;
  std::vector<TaxonId>* met_;
};

// Keeps the couplets that a way from the start may use.
struct OnSoundWays {
  std::vector<char> const* keep{};
  bool operator()(Vertex vertex) const { return (*keep)[vertex] != 0; }
};

void merge_runs(std::vector<TaxonRun>& runs) {
  std::sort(runs.begin(), runs.end(), [](TaxonRun a, TaxonRun b) { return a.begin < b.begin; });
  std::size_t kept = 0;
  for (auto const run : runs) {
    if (kept > 0 && run.begin <= runs[kept - 1].end) {
      runs[kept - 1].end = std::max(runs[kept - 1].end, run.end);
    } else {
      runs[kept++] = run;
    }
  }
  runs.resize(kept);
}

}  // namespace

struct KeyGraph::Parts {
  Vertex couplets{};
  Vertex taxa{};
  Graph graph;
  std::vector<std::uint32_t> first_lead;  // by couplet, and one past the last: row in first_edge
  std::vector<Edge> first_edge;           // by lead, and one past the last
  std::vector<Edge> first_incoming;       // by vertex, and one past the last: row in incoming
  std::vector<LeadId> incoming;
  Vertex start{kUnseen};
  std::vector<std::uint32_t> depth;  // by vertex; kUnseen when unreachable
  std::vector<std::vector<CoupletId>> cycles;
  std::vector<char> on_cycle;  // by couplet
  std::vector<CoupletId> order;
  std::vector<TaxonId> taxon_at;
  std::vector<std::uint32_t> position_of;
  std::vector<TaxonRun> pool;
  std::vector<Stretch> below_couplet;
  std::vector<Stretch> below_lead;
  std::vector<std::uint64_t> route_count;  // by vertex

  explicit Parts(Edition const& edition);

  void add_edges(Edition const& edition);
  void find_depths();
  std::vector<Vertex> find_cycles();
  void find_positions();
  void find_taxa_below(std::vector<Vertex> const& component);
  void find_order();
  void count_routes();

  [[nodiscard]] std::uint32_t lead_row(LeadId lead) const {
    return first_lead[lead.couplet.index] + lead.ordinal;
  }
  [[nodiscard]] Vertex vertex(TaxonId taxon) const { return couplets + taxon.index; }
  // The vertices that a lead leads to: none, one, or several terminals.
  [[nodiscard]] auto targets(std::uint32_t row, Vertex couplet) const {
    auto const edges = out_edges(couplet, graph).first;
    using Steps = typename std::iterator_traits<std::remove_cv_t<decltype(edges)>>::difference_type;
    auto const base = first_edge[first_lead[couplet]];
    return std::pair{edges + static_cast<Steps>(first_edge[row] - base),
                     edges + static_cast<Steps>(first_edge[row + 1] - base)};
  }
  // Calls act(row of the lead, vertex it leads to) for every edge out of the couplet.
  template <class Act>
  void each_edge(Vertex couplet, Act act) const {
    for (auto row = first_lead[couplet]; row < first_lead[couplet + 1]; ++row) {
      auto [edge, last] = targets(row, couplet);
      for (; edge != last; ++edge) act(row, target(*edge, graph));
    }
  }
  [[nodiscard]] std::span<LeadId const> leads_to(Vertex to) const {
    return std::span{incoming}.subspan(first_incoming[to],
                                       first_incoming[to + 1] - first_incoming[to]);
  }
  [[nodiscard]] std::span<TaxonRun const> runs(Stretch stretch) const {
    return std::span{pool}.subspan(stretch.begin, stretch.size);
  }
  [[nodiscard]] Routes routes_to(Vertex to, std::size_t maximum) const;
};

KeyGraph::Parts::Parts(Edition const& edition)
    : couplets{static_cast<Vertex>(edition.couplets.size())},
      taxa{static_cast<Vertex>(edition.taxa.size())} {
  add_edges(edition);
  if (!edition.parts.empty()) {
    start = edition.parts.front().start.index;
  } else if (couplets > 0) {
    start = 0;
  }
  find_depths();
  auto const component = find_cycles();
  find_positions();
  find_taxa_below(component);
  find_order();
  count_routes();
}

void KeyGraph::Parts::add_edges(Edition const& edition) {
  PartTitles const parts{edition};
  std::vector<std::pair<Vertex, Vertex>> edges;
  std::vector<LeadId> lead_of;  // by edge
  first_lead.reserve(couplets + std::size_t{1});
  for (Vertex c = 0; c < couplets; ++c) {
    first_lead.push_back(static_cast<std::uint32_t>(first_edge.size()));
    auto const& leads = edition.couplets[c].leads;
    for (std::uint32_t ordinal = 0; ordinal < leads.size(); ++ordinal) {
      auto const begin = edges.size();
      first_edge.push_back(static_cast<Edge>(begin));
      auto const lead_to = [&](Vertex to) {
        // A lead that names a taxon twice is still one way to it.
        auto const same = [&](auto const& edge) { return edge.second == to; };
        auto const first = edges.begin() + static_cast<std::ptrdiff_t>(begin);
        if (std::none_of(first, edges.end(), same)) edges.emplace_back(c, to);
      };
      auto const& destination = leads[ordinal].destination;
      if (auto const* to_couplet = std::get_if<ToCouplet>(&destination)) {
        lead_to(to_couplet->couplet.index);
      } else if (auto const* to_taxa = std::get_if<ToTaxa>(&destination)) {
        for (auto const taxon : to_taxa->taxa) lead_to(vertex(taxon));
      } else if (auto const* to_key = std::get_if<ToKey>(&destination)) {
        if (auto const part = parts.find(to_key->key)) {
          lead_to(edition.parts[*part].start.index);
        }
      }
      lead_of.resize(edges.size(), LeadId{CoupletId{c}, ordinal});
    }
  }
  first_lead.push_back(static_cast<std::uint32_t>(first_edge.size()));
  first_edge.push_back(static_cast<Edge>(edges.size()));

  first_incoming.assign(std::size_t{couplets} + taxa + 1, 0);
  for (auto const& edge : edges) ++first_incoming[edge.second + std::size_t{1}];
  for (std::size_t v = 1; v < first_incoming.size(); ++v)
    first_incoming[v] += first_incoming[v - 1];
  incoming.resize(edges.size());
  auto next = first_incoming;
  for (std::size_t e = 0; e < edges.size(); ++e) incoming[next[edges[e].second]++] = lead_of[e];

  graph = Graph{boost::edges_are_sorted, edges.begin(), edges.end(), couplets + taxa};
}

void KeyGraph::Parts::find_depths() {
  depth.assign(num_vertices(graph), kUnseen);
  if (start == kUnseen) return;
  depth[start] = 1;
  boost::breadth_first_search(graph, start, boost::visitor(DepthVisitor{depth}));
}

// Returns the strongly connected component of every vertex; a component has a higher number than
// those it leads to (Tarjan's order).
std::vector<Vertex> KeyGraph::Parts::find_cycles() {
  std::vector<Vertex> component(num_vertices(graph));
  on_cycle.assign(couplets, 0);
  if (component.empty()) return component;
  auto const count = boost::strong_components(graph, as_map(component, graph));
  std::vector<std::uint32_t> size(count, 0);
  for (Vertex c = 0; c < couplets; ++c) ++size[component[c]];
  std::vector<std::uint32_t> cycle_of(count, kUnseen);
  for (Vertex c = 0; c < couplets; ++c) {
    auto const mine = component[c];
    bool turns_back = size[mine] > 1;
    each_edge(c, [&](std::uint32_t, Vertex to) { turns_back = turns_back || to == c; });
    if (!turns_back) continue;
    on_cycle[c] = 1;
    if (cycle_of[mine] == kUnseen) {
      cycle_of[mine] = static_cast<std::uint32_t>(cycles.size());
      cycles.emplace_back();
    }
    cycles[cycle_of[mine]].push_back(CoupletId{c});
  }
  return component;
}

void KeyGraph::Parts::find_positions() {
  taxon_at.reserve(taxa);
  TerminalVisitor const visitor{couplets, taxon_at};
  if (start == kUnseen) {
    boost::depth_first_search(graph, boost::visitor(visitor));
  } else {
    boost::depth_first_search(graph, boost::visitor(visitor).root_vertex(start));
  }
  position_of.resize(taxa);
  for (std::uint32_t p = 0; p < taxa; ++p) position_of[taxon_at[p].index] = p;
}

void KeyGraph::Parts::find_taxa_below(std::vector<Vertex> const& component) {
  // Components from the ends of the key upwards, each with its couplets.
  std::vector<Vertex> upwards(couplets);
  for (Vertex c = 0; c < couplets; ++c) upwards[c] = c;
  std::stable_sort(upwards.begin(), upwards.end(),
                   [&](Vertex a, Vertex b) { return component[a] < component[b]; });

  below_couplet.resize(couplets);
  below_lead.resize(first_edge.size() - 1);
  std::vector<TaxonRun> scratch;
  auto const keep = [&] {
    Stretch const kept{pool.size(), scratch.size()};
    pool.insert(pool.end(), scratch.begin(), scratch.end());
    return kept;
  };
  for (auto first = upwards.begin(); first != upwards.end();) {
    auto const mine = component[*first];
    auto const last =
        std::find_if(first, upwards.end(), [&](Vertex c) { return component[c] != mine; });

    // What the leads name themselves, or what lies below components done before.
    std::vector<TaxonRun> all;
    for (auto c = first; c != last; ++c) {
      for (auto row = first_lead[*c]; row < first_lead[*c + 1]; ++row) {
        auto [edge, end] = targets(row, *c);
        if (edge == end) continue;
        if (auto const to = target(*edge, graph); to < couplets) {
          below_lead[row] = below_couplet[to];  // still empty within the component
        } else {
          scratch.clear();
          for (; edge != end; ++edge) {
            auto const position = position_of[target(*edge, graph) - couplets];
            scratch.push_back({position, position + 1});
          }
          merge_runs(scratch);
          below_lead[row] = keep();
        }
        auto const runs_of_lead = runs(below_lead[row]);
        all.insert(all.end(), runs_of_lead.begin(), runs_of_lead.end());
      }
    }
    scratch.swap(all);
    merge_runs(scratch);
    auto const kept = keep();
    for (auto c = first; c != last; ++c) below_couplet[*c] = kept;
    // Leads that stay within a cycle lead to all of it.
    if (on_cycle[*first] != 0) {
      for (auto c = first; c != last; ++c) {
        each_edge(*c, [&](std::uint32_t row, Vertex to) {
          if (to < couplets && component[to] == mine) below_lead[row] = kept;
        });
      }
    }
    first = last;
  }
  pool.shrink_to_fit();
}

void KeyGraph::Parts::find_order() {
  std::vector<char> sound(num_vertices(graph), 0);
  for (Vertex c = 0; c < couplets; ++c) sound[c] = depth[c] != kUnseen && on_cycle[c] == 0;
  if (start != kUnseen) {
    boost::filtered_graph<Graph, boost::keep_all, OnSoundWays> const ways{graph, {}, {&sound}};
    std::vector<Vertex> backwards;
    boost::topological_sort(ways, std::back_inserter(backwards),
                            boost::vertex_index_map(get(boost::vertex_index, graph)));
    order.reserve(backwards.size());
    for (auto c = backwards.rbegin(); c != backwards.rend(); ++c) order.push_back(CoupletId{*c});
  }
  for (Vertex c = 0; c < couplets; ++c) {
    if (depth[c] != kUnseen && on_cycle[c] != 0) order.push_back(CoupletId{c});
  }
}

void KeyGraph::Parts::count_routes() {
  route_count.assign(num_vertices(graph), 0);
  if (start == kUnseen || on_cycle[start] != 0) return;
  route_count[start] = 1;
  for (auto const couplet : order) {
    auto const ways = route_count[couplet.index];
    if (ways == 0) continue;
    each_edge(couplet.index, [&](std::uint32_t, Vertex to) {
      if (to < couplets && on_cycle[to] != 0) return;
      route_count[to] = saturating_sum(route_count[to], ways);
    });
  }
}

Routes KeyGraph::Parts::routes_to(Vertex to, std::size_t maximum) const {
  Routes found;
  found.complete = route_count[to] <= maximum;
  if (route_count[to] == 0 || maximum == 0) return found;

  // Mark what lies on some way to the goal, so that the walk below never enters a blind alley: its
  // work is bounded by the length of what it lists.
  std::vector<char> on_way(num_vertices(graph), 0);
  std::vector<Vertex> pending{to};
  on_way[to] = 1;
  while (!pending.empty()) {
    auto const reached = pending.back();
    pending.pop_back();
    for (auto const lead : leads_to(reached)) {
      auto const from = lead.couplet.index;
      if (on_way[from] != 0 || route_count[from] == 0) continue;
      on_way[from] = 1;
      pending.push_back(from);
    }
  }

  struct Step {
    Vertex couplet;
    std::uint32_t next_row;  // the lead to try next
  };
  std::vector<Step> walk{{start, first_lead[start]}};
  Route taken;
  if (to == start) {
    found.routes.emplace_back();
    return found;
  }
  while (!walk.empty()) {
    auto& step = walk.back();
    if (step.next_row == first_lead[step.couplet + 1]) {
      walk.pop_back();
      if (!taken.empty()) taken.pop_back();
      continue;
    }
    auto const row = step.next_row++;
    auto [edge, last] = targets(row, step.couplet);
    for (; edge != last; ++edge) {
      auto const next = target(*edge, graph);
      if (on_way[next] == 0) continue;
      LeadId const lead{CoupletId{step.couplet}, row - first_lead[step.couplet]};
      taken.push_back(lead);
      if (next == to) {
        found.routes.push_back(taken);
        taken.pop_back();
        if (found.routes.size() == maximum) return found;
      } else {
        walk.push_back({next, first_lead[next]});
      }
      break;  // a lead is one way on
    }
  }
  return found;
}

KeyGraph::KeyGraph(Edition const& edition) : parts_{std::make_unique<Parts>(edition)} {}
KeyGraph::~KeyGraph() = default;
KeyGraph::KeyGraph(KeyGraph&&) noexcept = default;
KeyGraph& KeyGraph::operator=(KeyGraph&&) noexcept = default;

std::size_t KeyGraph::couplet_count() const { return parts_->couplets; }
std::size_t KeyGraph::taxon_count() const { return parts_->taxa; }

std::span<LeadId const> KeyGraph::leads_to(CoupletId couplet) const& {
  return parts_->leads_to(couplet.index);
}
std::span<LeadId const> KeyGraph::leads_to(TaxonId taxon) const& {
  return parts_->leads_to(parts_->vertex(taxon));
}

bool KeyGraph::reachable(CoupletId couplet) const {
  return parts_->depth[couplet.index] != kUnseen;
}

std::vector<std::vector<CoupletId>> const& KeyGraph::cycles() const& { return parts_->cycles; }

std::span<CoupletId const> KeyGraph::topological_order() const& { return parts_->order; }

std::span<TaxonRun const> KeyGraph::taxa_below(LeadId lead) const& {
  return parts_->runs(parts_->below_lead[parts_->lead_row(lead)]);
}
std::span<TaxonRun const> KeyGraph::taxa_below(CoupletId couplet) const& {
  return parts_->runs(parts_->below_couplet[couplet.index]);
}

TaxonId KeyGraph::taxon_at(std::uint32_t position) const { return parts_->taxon_at[position]; }
std::uint32_t KeyGraph::position_of(TaxonId taxon) const {
  return parts_->position_of[taxon.index];
}

std::vector<TaxonId> KeyGraph::list(std::span<TaxonRun const> runs) const {
  std::vector<TaxonId> taxa;
  for (auto const run : runs) {
    for (auto p = run.begin; p < run.end; ++p) taxa.push_back(taxon_at(p));
  }
  return taxa;
}

std::uint64_t KeyGraph::route_count(CoupletId couplet) const {
  return parts_->route_count[couplet.index];
}
std::uint64_t KeyGraph::route_count(TaxonId taxon) const {
  return parts_->route_count[parts_->vertex(taxon)];
}

Routes KeyGraph::routes_to(TaxonId taxon, std::size_t maximum) const {
  return parts_->routes_to(parts_->vertex(taxon), maximum);
}
Routes KeyGraph::routes_to(CoupletId couplet, std::size_t maximum) const {
  return parts_->routes_to(couplet.index, maximum);
}

std::optional<std::uint32_t> KeyGraph::depth(CoupletId couplet) const {
  auto const depth = parts_->depth[couplet.index];
  return depth == kUnseen ? std::nullopt : std::optional{depth};
}

}  // namespace keydrift
