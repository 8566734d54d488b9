#pragma once
// From evidence to verdict, each distinct evidence judged once.  Inner header of redetermination.

#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "keydrift/redetermination/evidence.hpp"
#include "keydrift/redetermination/evidence_path.hpp"
#include "keydrift/redetermination/ground.hpp"

namespace keydrift {

// What one record is worth, before any keying.
struct SpecimenEvidence {
  RecordedEvidence recorded;     // its `any`: a character that can be used
  std::string name;              // as judged (qualified ones one rank higher)
  std::optional<TaxonId> named;  // by somebody who looked
  std::string untied;            // "x and y": recorded, but of what character of the key?
  std::string loose;             // recorded, and tied to the key with low confidence
  EditionUse use;                // with which edition it was named
  ScopeAnswer old_scope{ScopeAnswer::unknown};
  ScopeAnswer new_scope{ScopeAnswer::unknown};
};

// A verdict, with what else all its specimens share.
struct JudgedEvidence {
  Verdict verdict;
  std::string key;   // of the evidence: equal bytes, equal verdicts
  std::string name;  // as judged
  bool any{false};   // a character is recorded that can be used
  bool untied{false};
  std::string new_names;  // possible ones joined by " | "
  bool look{false};       // somebody must look at its specimens
  bool relabel{false};    // the record alone gives another name
  std::string question;   // equal where the same is asked; filled in where `look`
};
using JudgedEvidencePointer = std::shared_ptr<JudgedEvidence const>;

// What any thread has judged, for all of them.
class SharedVerdicts {
 public:
  [[nodiscard]] JudgedEvidencePointer find(std::string const& key);
  // What is kept: that of whoever came first.
  [[nodiscard]] JudgedEvidencePointer keep(JudgedEvidencePointer judged);
  void clear();  // whoever has a verdict still has it

 private:
  std::mutex mutex_;
  std::unordered_map<std::string_view, JudgedEvidencePointer> by_key_;  // borrow their keys
};

class VerdictTable {
 public:
  VerdictTable(RedeterminationGround const& ground, std::shared_ptr<SharedVerdicts> shared)
      : ground_{ground}, path_{ground.old_key, ground.new_key}, shared_{std::move(shared)} {}

  // A verdict and its specimens, as far as they were counted here.
  struct Entry {
    JudgedEvidencePointer judged;
    std::uint64_t specimens{};
    std::uint64_t first_place{};  // of the first of them
  };

  [[nodiscard]] std::size_t find(SpecimenEvidence const& evidence);
  // The same verdict out of another table.
  [[nodiscard]] std::size_t take(Entry const& entry);
  // Specimens of a verdict; `place`: of the first of them.
  void count(std::size_t index, std::uint64_t specimens, std::uint64_t place);

  [[nodiscard]] EvidencePath& path() { return path_; }
  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  [[nodiscard]] JudgedEvidence const& operator[](std::size_t index) const {
    return *entries_[index].judged;
  }
  [[nodiscard]] Entry const& entry(std::size_t index) const { return entries_[index]; }
  // Ends the table, verdict by verdict: this one is not asked for again, and nothing is looked up.
  void drop(std::size_t index) { entries_[index].judged.reset(); }

 private:
  [[nodiscard]] Determination const& determination_of(std::string const& name);
  [[nodiscard]] Verdict judge(SpecimenEvidence const& evidence);
  [[nodiscard]] JudgedEvidencePointer judge_whole(SpecimenEvidence const& evidence);
  std::size_t add(JudgedEvidencePointer judged);
  // By which edition a name is judged: only a table of citations makes a difference.
  [[nodiscard]] EditionRole role_of(SpecimenEvidence const& evidence) const;
  void apply_scope(Verdict& verdict, SpecimenEvidence const& evidence,
                   Determination const& determination, bool by_new) const;

  RedeterminationGround const& ground_;
  EvidencePath path_;
  std::shared_ptr<SharedVerdicts> shared_;
  std::vector<Entry> entries_;
  std::unordered_map<std::string_view, std::size_t> by_key_;  // borrow the keys of the entries
  std::unordered_map<std::string, Determination> determinations_;
  std::string key_;
};

// A name with "cf.", "aff." or "?" is certain only one rank higher (standard of the herbarium
// transfer format HISPID, read as a summary).
[[nodiscard]] std::string judged_name(std::string_view scientific_name, std::string_view qualifier);

[[nodiscard]] std::string join_names(Edition const& edition, std::vector<TaxonId> const& taxa,
                                     std::string_view with);

// Equal for specimens of which the same is asked, with the same consequences.
[[nodiscard]] std::string question_key(Verdict const& verdict, Edition const& new_edition);

}  // namespace keydrift
