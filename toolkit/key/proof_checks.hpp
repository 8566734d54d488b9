#pragma once
// What the checks of proof.cpp share.  Internal to this folder.

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/labels.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/key/repeated_keys.hpp"

namespace keydrift::proofing {

// Beyond this many comparisons in all, "did you mean" is left out: it must not make the proof of a
// long, thoroughly broken key quadratic.  Ten thousand labels against a thousand mistakes.
constexpr std::size_t kNearComparisons = 10'000'000;

struct ProofContext {
  Edition const& edition;
  KeyGraph const& graph;
  LabelIndex const& labels;
  std::vector<char> reached;        // by couplet: from the start of any part
  std::vector<std::size_t> key_of;  // by couplet: the row in Edition::parts of its key; 0 without
  std::vector<char> keys_led_to;    // by row of Edition::parts: by a lead of another key
  std::vector<RepeatedKey> repeated;
  std::vector<Finding>& findings;
  std::size_t near_comparisons{0};

  // The severity is that of the table of finding kinds.
  Finding& report(std::string_view code, Place const& place, std::string printed,
                  std::string message, std::string remedy = {});
  // "did you mean …" for a couplet label that `part` lacks; couplets that nothing reaches first.
  [[nodiscard]] std::string near_labels(std::string_view label, std::size_t part);
  // Where couplet 7 occurs twice and 8 is missing, a lead to 8 means the second 7; "" elsewhere.
  [[nodiscard]] std::string second_of_its_label(std::string_view label, std::size_t part);
  [[nodiscard]] std::string near_names(std::string_view name,
                                       std::vector<std::string> const& known);

  [[nodiscard]] std::string lead(LeadId id) const { return lead_name(edition, id); }
  // Whether it stands in the repetition of a key.
  [[nodiscard]] bool is_repeated(CoupletId couplet) const {
    return std::any_of(repeated.begin(), repeated.end(), [couplet](RepeatedKey const& key) {
      return key.begin <= couplet && couplet < key.end;
    });
  }
  [[nodiscard]] std::string const& label(CoupletId id) const { return edition[id].label; }
  // `the key "Key B"`, "the second key": how prose calls it.
  [[nodiscard]] std::string key_name(std::size_t part) const;
};

// The lead as printed, its words cut to a line's length.
[[nodiscard]] std::string printed_lead(Lead const& lead);
// The couplet label that an unresolved destination seems to print ("→ 27", "go to 27"), or "".
[[nodiscard]] std::string label_in_destination(std::string_view printed);

// Numbering: missing, duplicate, skipped, misnumbered, unlabelled.
void check_numbering(ProofContext& context);
// Leads' ends: dangling, without destination, with two, to another key, all alike, backward.
void check_destinations(ProofContext& context);
// Shape: unreachable, cycles, lone and missing leads, polytomies.
void check_shape(ProofContext& context);
void check_back_references(ProofContext& context);
// Keys that stand in the file a second time.
void check_repeated_keys(ProofContext& context);
// Keys of a file that lead to one another, and those that no other leads to.
void check_keys(ProofContext& context);
[[nodiscard]] std::vector<std::size_t> keys_of_couplets(Edition const& edition);
[[nodiscard]] std::vector<char> find_keys_led_to(Edition const& edition, KeyGraph const& graph,
                                                 std::vector<std::size_t> const& key_of);
// "did you mean …" for the title of a key that the file lacks.  "Group 1" is not what "Group 3" was
// meant to be, unless nothing leads to it.
[[nodiscard]] std::string near_keys(ProofContext& context, std::string_view title);
// Taxa: listed and keyed, excluded and keyed, several times.
void check_taxa(ProofContext& context);
// Words: same text, no words, "not as above", exceptions naming nothing.
void check_words(ProofContext& context);

}  // namespace keydrift::proofing
