// Statements against what the routes above them have settled.
//
// Each couplet carries, character by character, the values that some route to it allows: cut by
// the firm statements along a lead, joined where routes meet.  Where each couplet has one route
// that is exact; where routes meet, taking characters one by one only ever allows more, so that a
// lead called dead is dead.

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "keydrift/characters/contrast_parts.hpp"
#include "keydrift/characters/printed_scale.hpp"
#include "keydrift/characters/reading/contrasting.hpp"

namespace keydrift::contrast {
namespace {

// A value of more parts than this is taken for "anything": sets stay small, findings stay true.
constexpr std::size_t kMostParts = 64;
// Steps that joining routes may take per lead of the edition; beyond, nothing is taken for settled.
constexpr std::uint64_t kJoinStepsPerLead = 64;
// Leads that all searches for the statement that a dead lead contradicts may look at.
constexpr std::size_t kMostSearchSteps = 200'000;

using ValueId = std::uint32_t;  // 0: anything

// Every value once.
class ValueStore {
 public:
  ValueStore() : values_(1) { values_[0].all_but = true; }
  ValueId add(Values values) {
    auto const parts = values.states.size() + values.intervals.size();
    if (parts > kMostParts || is_everything(values)) return 0;
    auto const next = static_cast<ValueId>(values_.size());
    auto const [at, fresh] = ids_.emplace(values, next);
    if (fresh) values_.push_back(std::move(values));
    return at->second;
  }
  [[nodiscard]] Values const& operator[](ValueId id) const { return values_[id]; }

  // What both allow; where the two cannot be compared, the first.
  ValueId cut(ValueId a, ValueId b) {
    if (a == 0 || a == b) return b;
    if (b == 0 || !comparable(values_[a], values_[b])) return a;
    auto const common = add(intersection(values_[a], values_[b]));
    return common == 0 ? a : common;
  }
  ValueId join(ValueId a, ValueId b) {
    if (a == b) return a;
    if (a == 0 || b == 0 || !comparable(values_[a], values_[b])) return 0;
    return add(joined(values_[a], values_[b]));
  }

 private:
  std::vector<Values> values_;
  std::map<Values, ValueId> ids_;
};

// Persistent maps from character to value: a trie of eight-way nodes that shares what two maps
// have in common, counted references, depth bounded by the number of characters.
class ValueMaps {
 public:
  using Map = std::uint32_t;  // 0: nothing is settled
  ValueMaps(ValueStore& store, std::size_t characters) : store_{store}, nodes_(1) {
    for (std::size_t span = kWidth; span < characters; span *= kWidth) ++levels_;
  }

  [[nodiscard]] ValueId get(Map map, std::uint32_t character) const {
    for (auto level = levels_; map != 0; --level) {
      auto const slot = (character >> (3 * level)) & (kWidth - 1);
      map = nodes_[map].child[slot];
      if (level == 0) return map;
    }
    return 0;
  }
  // A new map; the caller owns one reference to it and keeps its own to `map`.
  [[nodiscard]] Map set(Map map, std::uint32_t character, ValueId value) {
    return set_below(map, character, value, levels_);
  }
  [[nodiscard]] Map join(Map a, Map b) { return join_below(a, b, levels_); }
  void keep(Map map) {
    if (map != 0) ++nodes_[map].references;
  }
  void drop(Map map) { drop_below(map, levels_); }

  // Joining gives up when this runs out.
  std::uint64_t steps_left{0};

 private:
  static constexpr std::uint32_t kWidth = 8;
  struct Node {
    std::array<std::uint32_t, kWidth> child{};
    std::uint32_t references{1};
  };

  Map make(Node node) {
    bool const any = std::any_of(node.child.begin(), node.child.end(),
                                 [](std::uint32_t child) { return child != 0; });
    if (!any) return 0;
    node.references = 1;
    if (!free_.empty()) {
      auto const at = free_.back();
      free_.pop_back();
      nodes_[at] = node;
      return at;
    }
    nodes_.push_back(node);
    return static_cast<Map>(nodes_.size() - 1);
  }

  Map set_below(Map map, std::uint32_t character, ValueId value, unsigned level) {
    auto const slot = (character >> (3 * level)) & (kWidth - 1);
    Node node = nodes_[map];
    if (level > 0) {
      for (auto const child : node.child) keep(child);
      auto const old = node.child[slot];
      node.child[slot] = set_below(old, character, value, level - 1);
      drop_below(old, level - 1);
    } else {
      node.child[slot] = value;
    }
    return make(node);
  }

  Map join_below(Map a, Map b, unsigned level) {
    if (a == b) {
      keep(a);
      return a;
    }
    if (a == 0 || b == 0 || steps_left == 0) return 0;
    --steps_left;
    Node const x = nodes_[a], y = nodes_[b];
    Node node;
    for (std::size_t slot = 0; slot < kWidth; ++slot) {
      node.child[slot] = level == 0 ? store_.join(x.child[slot], y.child[slot])
                                    : join_below(x.child[slot], y.child[slot], level - 1);
    }
    return make(node);
  }

  void drop_below(Map map, unsigned level) {
    if (map == 0 || --nodes_[map].references > 0) return;
    if (level > 0) {
      auto const children = nodes_[map].child;
      for (auto const child : children) drop_below(child, level - 1);
    }
    free_.push_back(map);
  }

  ValueStore& store_;
  std::vector<Node> nodes_;
  std::vector<Map> free_{};
  unsigned levels_{0};
};

// The states of an opaque character are words that were not understood: "smooth" may well lie in
// "smooth or ridged".  All that is known is that the leads of one couplet are meant to differ.
bool opaque(std::string_view character) { return character.starts_with('~'); }

// The statements that settle something: firm, of one character, for all specimens.
bool settles(Statement const& statement) {
  return statement.strength == Strength::firm && statement.limits.empty() &&
         !statement.any_of.empty();
}

class RouteCheck {
 public:
  explicit RouteCheck(ContrastContext& context)
      : context_{context}, edition_{context.edition}, graph_{context.graph} {}

  void run() {
    number_characters();
    if (characters_.empty()) return;
    maps_.emplace(values_, characters_.size());
    std::uint64_t leads = 0;
    for (auto const& couplet : edition_.couplets) leads += couplet.leads.size();
    maps_->steps_left = kJoinStepsPerLead * leads;
    arrivals_.resize(edition_.couplets.size());
    for (auto const& part : edition_.parts) {
      if (part.start.index < arrivals_.size()) arrivals_[part.start.index].entry = true;
    }
    std::vector<bool> circular(edition_.couplets.size());
    for (auto const& cycle : graph_.cycles()) {
      for (auto const couplet : cycle) circular[couplet.index] = true;
    }
    std::vector<bool> done(edition_.couplets.size());
    for (auto const couplet : graph_.topological_order()) {
      check(couplet, circular[couplet.index] || !all_parents(couplet, done));
      done[couplet.index] = true;
    }
  }

 private:
  // What the routes so far bring to a couplet.
  struct Arrival {
    ValueMaps::Map map{0};
    bool alive{false};  // some route that does not contradict itself
    bool entry{false};  // a key starts here: nothing is settled
  };

  // Only a character that several statements on one route could speak of can settle or contradict
  // anything: one of two couplets or more, or twice in one lead.
  void number_characters() {
    struct Use {
      LeadId last{};
      bool several{false};
    };
    std::unordered_map<std::string_view, Use> uses;
    std::vector<std::string_view> order;
    for (CoupletId c; c.index < edition_.couplets.size(); ++c.index) {
      auto const leads = static_cast<std::uint32_t>(edition_[c].leads.size());
      for (std::uint32_t i = 0; i < leads; ++i) {
        LeadId const lead{c, i};
        for (auto const& statement : edition_[lead].statements) {
          if (!settles(statement)) continue;
          for (auto const& atom : statement.any_of) {
            auto const [at, fresh] = uses.try_emplace(atom.character, Use{.last = lead});
            auto& use = at->second;
            if (fresh) {
              order.push_back(at->first);
            } else if (use.last == lead || use.last.couplet != c) {
              use.several = true;
            }
            use.last = lead;
          }
        }
      }
    }
    for (auto const character : order) {
      if (!uses.at(character).several) continue;
      characters_.emplace(character, static_cast<std::uint32_t>(characters_.size()));
    }
  }

  [[nodiscard]] bool all_parents(CoupletId couplet, std::vector<bool> const& done) const {
    auto const leads = graph_.leads_to(couplet);
    return std::all_of(leads.begin(), leads.end(), [&](LeadId lead) {
      return done[lead.couplet.index] || !graph_.reachable(lead.couplet);
    });
  }

  void check(CoupletId couplet, bool unsure) {
    auto& arrival = arrivals_[couplet.index];
    // A lead may lead back here: what it brings is no part of what came before.
    auto map = std::exchange(arrival.map, 0);
    if (unsure || arrival.entry) {
      maps_->drop(map);
      map = 0;
    } else if (!arrival.alive) {
      return;  // only dead leads lead here: the first of them is the finding
    }
    auto const leads = static_cast<std::uint32_t>(edition_[couplet].leads.size());
    std::uint32_t open = 0;
    std::uint32_t dead_leads = 0;
    std::size_t last_dead = 0;  // its finding
    for (std::uint32_t i = 0; i < leads; ++i) {
      auto const passable = follow(LeadId{couplet, i}, map);
      if (passable == Passable::no_by_routes) {
        ++dead_leads;
        last_dead = context_.findings.size() - 1;
      }
      if (passable == Passable::yes) open = i;
    }
    if (dead_leads > 0) context_.dead_couplets[couplet.index] = 1;
    // A couplet of which one lead is left asks nothing.
    if (dead_leads > 0 && dead_leads + 1 == leads) {
      context_.findings[last_dead].related.push_back(
          {.place = edition_[LeadId{couplet, open}].place,
           .message = "so whatever comes to couplet " + quoted(edition_[couplet].label) +
                      " takes lead " + context_.lead(LeadId{couplet, open})});
    }
    maps_->drop(map);
    maps_->drop(std::exchange(arrival.map, 0));
  }

  enum class Passable { yes, no, no_by_routes };

  Passable follow(LeadId id, ValueMaps::Map above) {
    auto const& lead = edition_[id];
    auto const* onward = std::get_if<ToCouplet>(&lead.destination);
    auto map = above;
    maps_->keep(map);
    auto passable = Passable::yes;
    for (auto const& statement : lead.statements) {
      if (!settles(statement)) continue;
      passable = passable_by(id, statement, above, map);
      if (passable != Passable::yes) break;
      auto const values = settled_by(id, statement);
      if (!values) continue;
      auto const character = characters_.find(statement.any_of.front().character);
      if (character == characters_.end()) continue;
      auto const before = maps_->get(map, character->second);
      auto const after = values_.cut(before, values_.add(*values));
      if (before != 0 && !opaque(character->first) &&
          before == maps_->get(above, character->second) && comparable(values_[before], *values) &&
          is_within(values_[before], *values)) {
        report_settled(id, statement, values_[before]);
      }
      if (after == before) continue;
      auto const next = maps_->set(map, character->second, after);
      maps_->drop(map);
      map = next;
    }
    bool const alive = passable == Passable::yes;
    if (alive && onward != nullptr && onward->couplet.index < arrivals_.size()) {
      arrive(onward->couplet, map);
    }
    maps_->drop(map);
    return passable;
  }

  // What holds of the statement's character behind the lead.
  [[nodiscard]] std::optional<Values> settled_by(LeadId id, Statement const& statement) const {
    auto values = values_of(statement, Breadth::extreme);
    auto const& character = statement.any_of.front().character;
    if (!values || values->numeric || !opaque(character)) return values;
    Values refused;
    auto const& leads = edition_[id.couplet].leads;
    if (leads.size() > reading::kMostRivals) return std::nullopt;  // else quadratic work
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      if (i == id.ordinal) continue;
      for (auto const& other : leads[i].statements) {
        if (!settles(other) || other.any_of.front().character != character) continue;
        if (auto const more = values_of(other, Breadth::extreme)) {
          if (comparable(refused, *more)) refused = joined(refused, *more);
        }
      }
    }
    auto const others = intersection(refused, complement(*values));
    return others.all_but ? std::nullopt : std::optional{complement(others)};
  }

  void arrive(CoupletId couplet, ValueMaps::Map map) {
    auto& arrival = arrivals_[couplet.index];
    if (!arrival.alive) {
      arrival.alive = true;
      arrival.map = map;
      maps_->keep(map);
      return;
    }
    auto const joint = maps_->join(arrival.map, map);
    maps_->drop(arrival.map);
    arrival.map = joint;
  }

  // Does the statement exclude all that the routes (and the statements before it) allow?
  Passable passable_by(LeadId id, Statement const& statement, ValueMaps::Map above,
                       ValueMaps::Map map) {
    bool by_routes = true;
    for (auto const& atom : statement.any_of) {
      auto const character = characters_.find(atom.character);
      if (character == characters_.end()) return Passable::yes;
      auto const values = values_of(atom, Breadth::extreme);
      auto const excludes = [&](ValueMaps::Map in) {
        auto const known = maps_->get(in, character->second);
        return known != 0 && comparable(values_[known], values) && disjoint(values_[known], values);
      };
      if (!excludes(map)) return Passable::yes;
      by_routes = by_routes && excludes(above);
    }
    report_dead(id, statement, by_routes);
    return by_routes ? Passable::no_by_routes : Passable::no;
  }

  struct Culprit {
    LeadId lead;
    Statement const* statement;
  };

  [[nodiscard]] Statement const* against(LeadId id, Statement const& statement,
                                         bool excluding) const {
    for (auto const& other : edition_[id].statements) {
      if (&other == &statement) return nullptr;
      if (!settles(other)) continue;
      auto const values = settled_by(id, other);
      if (!values) continue;
      for (auto const& atom : statement.any_of) {
        if (atom.character != other.any_of.front().character) continue;
        auto const own = values_of(atom, Breadth::extreme);
        if (!comparable(own, *values)) continue;
        if (!excluding || disjoint(own, *values)) return &other;
      }
    }
    return nullptr;
  }

  // The nearest lead on the first route that speaks of the statement's character: one that alone
  // excludes it, or else (several do so together) any.
  std::optional<Culprit> search_above(LeadId id, Statement const& statement, bool excluding) {
    auto at = id.couplet;
    for (;;) {
      auto const leads = graph_.leads_to(at);
      auto const parent = std::find_if(leads.begin(), leads.end(), [&](LeadId lead) {
        return graph_.reachable(lead.couplet) && lead.couplet != at;
      });
      if (parent == leads.end() || search_steps_ >= kMostSearchSteps) return std::nullopt;
      ++search_steps_;
      if (auto const* found = against(*parent, statement, excluding)) {
        return Culprit{*parent, found};
      }
      at = parent->couplet;
    }
  }

  void report_dead(LeadId id, Statement const& statement, bool by_routes) {
    auto const name = context_.lead(id);
    auto const said = quoted(statement.text);
    if (!by_routes) {
      auto const* other = against(id, statement, true);
      auto& finding =
          context_.report("dead-lead", Severity::error, statement,
                          "no specimen can pass lead " + name + ": " + said + " contradicts " +
                              (other == nullptr ? "what it and the leads above it say"
                                                : quoted(other->text) + " of the same lead"),
                          "mend one of the two statements");
      if (other != nullptr) {
        finding.related.push_back({.place = other->place, .message = "the other statement"});
      }
      return;
    }
    auto culprit = search_above(id, statement, true);
    if (!culprit) culprit = search_above(id, statement, false);
    bool const several = graph_.route_count(id.couplet) > 1;
    std::string against_what = "what the leads above it say";
    if (culprit) {
      against_what = quoted(culprit->statement->text) + " of lead " + context_.lead(culprit->lead) +
                     " above" + (several ? ", and every other route bars it too" : "");
    }
    auto& finding = context_.report(
        "dead-lead", Severity::error, statement,
        "no specimen can pass lead " + name + ": " + said + " contradicts " + against_what,
        "mend one of the two statements, or drop the couplet");
    if (culprit) {
      finding.related.push_back({.place = culprit->statement->place,
                                 .message = "lead " + context_.lead(culprit->lead) + " says " +
                                            quoted(culprit->statement->text)});
    }
  }

  void report_settled(LeadId id, Statement const& statement, Values const& known) {
    auto const scale = printed_scale(std::array{&statement}, known, edition_.front.language);
    context_.report("settled-above", Severity::information, statement,
                    quoted(statement.text) + " of lead " + context_.lead(id) +
                        " decides nothing: the leads above it leave " +
                        (known.all_but ? "" : "only ") + in_words(as_printed(known, scale)),
                    "leave it out, unless it is meant as a reminder");
  }

  ContrastContext& context_;
  Edition const& edition_;
  KeyGraph const& graph_;
  std::unordered_map<std::string_view, std::uint32_t> characters_{};
  ValueStore values_{};
  std::optional<ValueMaps> maps_{};
  std::vector<Arrival> arrivals_{};
  std::size_t search_steps_{0};
};

}  // namespace

void check_routes(ContrastContext& context) { RouteCheck{context}.run(); }

}  // namespace keydrift::contrast
