#pragma once
// A random key with a random history, printed as two editions, and what a collation of them must
// report: told from the identities that persist through the edits, without aligning anything.

#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "histories.hpp"
#include "keydrift/collation/collation.hpp"

namespace keydrift::test {

// Enough to make a case again.
struct CaseSpec {
  std::uint64_t seed{1};
  std::size_t couplets{60};
  std::size_t percent{30};
  Shape shape{Shape::bushy};
  Vocabulary vocabulary{Vocabulary::rich};
  std::optional<EditKind> kind{};                  // all kinds where absent
  bool gathered{false};                            // several edits of the same couplets
  std::optional<Recipe> recipe{};                  // of these; all where absent
  std::optional<std::vector<std::size_t>> kept{};  // of the planned edits; all where absent
};

struct Case {
  Draft old_draft;
  Draft new_draft;
  History history;
  std::vector<Edit> edits;
  Edition old_edition;
  Edition new_edition;
  std::vector<std::size_t> old_nodes;  // by couplet
  std::vector<std::size_t> new_nodes;
};

// Seeds to be tried: `few`, or as many as KEYDRIFT_SEEDS says.
[[nodiscard]] std::uint64_t seeds(std::uint64_t few);

[[nodiscard]] Case make_case(CaseSpec const& spec);
[[nodiscard]] Collation collated(Case const& made);

// The smallest case found that still fails: fewer couplets first, then fewer edits.
[[nodiscard]] CaseSpec shrunk(CaseSpec spec, std::function<bool(Case const&)> const& fails);
// Seed and sizes, the edits made, and both editions line by line.
[[nodiscard]] std::string described(CaseSpec const& spec);

// --- what was planted and what is reported -------------------------------------------------------

struct Tally {
  std::size_t right{};
  std::size_t reported{};
  std::size_t planted{};
  void add(Tally const& other);
  [[nodiscard]] double precision() const;
  [[nodiscard]] double recall() const;
  [[nodiscard]] double f1() const;
};

// Pairs (old couplet, new couplet).  Of a couplet that was split or merged either part will do. One
// of which neither a third of the statements nor three quarters of how it parts the taxa have
// stayed is neither asked for nor wrong.
using Pairs = std::vector<std::pair<std::uint32_t, std::uint32_t>>;
[[nodiscard]] Pairs pairs_of(Alignment const& alignment);
[[nodiscard]] Tally tally_pairs(Case const& made, Pairs const& pairs);

// Changes as lines of text, "Aus bus → Aus cus: renamed".  Of taxa: every event but "same route".
// Of roles: every transition with both leads and the groups of exceptions; statements that no
// lexicon knows go by "~".
using Lines = std::multiset<std::string>;
[[nodiscard]] Lines planted_taxa(Case const& made);
[[nodiscard]] Lines reported_taxa(Case const& made, Collation const& collation);
[[nodiscard]] Lines planted_roles(Case const& made);
[[nodiscard]] Lines reported_roles(Case const& made, Collation const& collation);
[[nodiscard]] Tally tally_lines(Lines const& planted, Lines const& reported);
// "planted, not reported: …" and the other way round, the first few of each.
[[nodiscard]] std::string difference(Lines const& planted, Lines const& reported);

}  // namespace keydrift::test
