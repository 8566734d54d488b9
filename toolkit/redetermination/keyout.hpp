#pragma once
// Keying one specimen out through one edition, with the route as a person would follow it.

#include <string>
#include <vector>

#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

enum class Truth { fails, unknown, holds };

enum class LeadFit {
  refuted,            // a firm statement fails, and none holds
  conflict,           // some hold, a firm one fails: counts as refuted, but is reported
  open,               // none fails, some are unknown
  through_exception,  // an excepted statement fails, the rest hold
  fits,
};
[[nodiscard]] char const* to_word(LeadFit fit);  // "does not fit", "partly fits", "open", …

struct StatementFit {
  std::uint32_t statement{};
  Truth truth{Truth::unknown};
  std::string known{};  // what the specimen shows, in words; "" = not recorded
};

struct LeadAssessment {
  LeadId lead{};
  LeadFit fit{LeadFit::open};
  std::vector<StatementFit> statements{};
  bool followed{false};  // some completion of the evidence takes it
};

struct CoupletVisit {
  CoupletId couplet{};
  std::uint32_t level{};  // number of couplets answered before, on the way shown
  std::vector<LeadAssessment> leads{};
};

struct KeyOut {
  std::vector<CoupletVisit> visits{};          // depth first, leads in printed order
  std::vector<PossibleTerminal> terminals{};   // by taxon
  std::vector<CoupletId> strands_at{};         // when no terminal is possible: where it ends
  std::vector<std::string> open_characters{};  // characters that, if seen, would narrow the result
  bool complete{true};
};

}  // namespace keydrift
