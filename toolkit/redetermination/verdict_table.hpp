#pragma once
// From evidence to verdict, each distinct evidence judged once.  Inner header of redetermination.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "keydrift/redetermination/evidence.hpp"
#include "keydrift/redetermination/evidence_path.hpp"
#include "keydrift/redetermination/ground.hpp"
#include "keydrift/redetermination/verdict_ledger.hpp"

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
  std::string name;  // as judged
  bool any{false};   // a character is recorded that can be used
  bool untied{false};
};
// As it is stored: the bytes of the verdict first.
[[nodiscard]] std::string stored_form(JudgedEvidence const& judged);
[[nodiscard]] JudgedEvidence read_judged(VerdictLedger const& ledger, std::uint64_t address);

// What one thread has met lately; everything else is in the ledger.
class VerdictTable {
 public:
  VerdictTable(RedeterminationGround const& ground, std::shared_ptr<VerdictLedger> ledger)
      : ground_{ground}, path_{ground.old_key, ground.new_key}, ledger_{std::move(ledger)} {}

  [[nodiscard]] std::size_t find(SpecimenEvidence const& evidence);
  // Specimens of a verdict; `place`: of the first of them.
  void count(std::size_t index, std::uint64_t specimens, std::uint64_t place);
  // Writes all into the ledger and is empty again: indexes have lost their meaning.
  void settle();

  [[nodiscard]] EvidencePath& path() { return path_; }
  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  [[nodiscard]] JudgedSummary const& operator[](std::size_t index) const {
    return entries_[index].judged;
  }

 private:
  [[nodiscard]] Determination const& determination_of(std::string const& name);
  [[nodiscard]] Verdict judge(SpecimenEvidence const& evidence);
  [[nodiscard]] JudgedSummary judge_whole(SpecimenEvidence const& evidence, Fingerprint const& id);
  // By which edition a name is judged: only a table of citations makes a difference.
  [[nodiscard]] EditionRole role_of(SpecimenEvidence const& evidence) const;
  void apply_scope(Verdict& verdict, SpecimenEvidence const& evidence,
                   Determination const& determination, bool by_new) const;

  RedeterminationGround const& ground_;
  EvidencePath path_;
  // A verdict and its specimens, as far as they were counted here.
  struct Entry {
    JudgedSummary judged;
    std::uint64_t specimens{};
    std::uint64_t first_place{};
  };
  std::shared_ptr<VerdictLedger> ledger_;
  std::vector<Entry> entries_;
  std::unordered_map<Fingerprint, std::size_t> by_id_;
  std::unordered_map<std::string, Determination> determinations_;
  std::string key_;
};

// A name with "cf.", "aff." or "?" is certain only one rank higher (standard of the herbarium
// transfer format HISPID, read as a summary).  `authorship`, recorded by itself, belongs to a name
// without one: scientificName is "the full scientific name, with authorship and date information if
// known", scientificNameAuthorship "the authorship information for the scientificName" (Darwin Core
// list of terms).
[[nodiscard]] std::string judged_name(std::string_view scientific_name, std::string_view qualifier,
                                      std::string_view authorship);

// Possible ones joined by " | ".
[[nodiscard]] std::string new_names_of(Verdict const& verdict, Edition const& new_edition);

// Equal for specimens of which the same is asked, with the same consequences.
[[nodiscard]] std::string question_key(Verdict const& verdict, Edition const& new_edition);

}  // namespace keydrift
