#pragma once
// One side of a generated history, looked at through its draft, and what persists from one side to
// the other: the ground that the truths about taxa (taxon_truth.cpp) and roles (role_truth.cpp)
// stand on.

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "history_cases.hpp"

namespace keydrift::test {

// A lead by what persists: its couplet and itself.
using LeadKey = std::pair<std::size_t, std::size_t>;

// Borrows the draft.
class Look {
 public:
  // `order`: the node of each couplet, as print() gives it.
  Look(Draft const& draft, std::vector<std::size_t> const& order);

  [[nodiscard]] Draft const& draft() const { return draft_; }
  [[nodiscard]] std::size_t ends(std::size_t taxon) const {
    return taxon < ends_.size() ? ends_[taxon].size() : 0;
  }
  // nullptr where the edition has no such lead.
  [[nodiscard]] DraftLead const* lead(LeadKey const& key) const;
  [[nodiscard]] std::map<LeadKey, DraftLead const*> const& leads() const { return leads_; }
  // As printed, "12b".
  [[nodiscard]] std::string const& name(LeadKey const& key) const { return names_.at(key); }

  // A lead on a way and the couplet that it leads to there.
  using Step = std::pair<LeadKey, std::size_t>;
  // Every lead on some way to the taxon; with `without_exceptions` those left out one of whose
  // statements excepts it.
  [[nodiscard]] std::set<Step> ways(std::size_t taxon, bool without_exceptions = false) const;
  [[nodiscard]] bool only_by_exception(std::size_t taxon) const;

 private:
  Draft const& draft_;
  std::vector<std::size_t> label_;
  std::vector<std::vector<std::pair<std::size_t, std::size_t>>> parents_;
  std::vector<std::vector<std::pair<std::size_t, std::size_t>>> ends_;
  std::map<LeadKey, DraftLead const*> leads_;
  std::map<LeadKey, std::string> names_;
};

[[nodiscard]] Strength strength_of(DraftStatement const& statement);
// The same character and states, or of an opaque statement the same words.
[[nodiscard]] bool same_predicate(DraftStatement const& a, DraftStatement const& b);
// …and strength, exceptions and limits.
[[nodiscard]] bool same_statement(DraftStatement const& a, DraftStatement const& b);

// "was → is"
[[nodiscard]] std::string tick(std::string const& was, std::string const& is);

// What may as well be taken for something else, so that nothing is asked of it (Recipe says why).
struct Doubt {
  std::set<std::size_t> couplets;  // nodes of both editions
  std::set<std::size_t> leads;     // ids; those of further parts included
};
[[nodiscard]] Doubt doubtful(Case const& made);

}  // namespace keydrift::test
