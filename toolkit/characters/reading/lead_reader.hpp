#pragma once
// Reading one lead: its clauses, its marks.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/reading/clause_reader.hpp"
#include "keydrift/characters/reading/draft.hpp"

namespace keydrift::reading {

// Something wrong in the lead's text; the caller knows file and place.
struct Complaint {
  std::uint32_t begin{};  // bytes of the text
  std::uint32_t end{};
  std::string code;
  Severity severity{Severity::warning};
  std::string message;
  std::string remedy;
};

struct LeadReading {
  std::vector<Draft> drafts;  // in order of their beginnings
  std::vector<Complaint> complaints;
};

[[nodiscard]] LeadReading read_lead(std::string_view text, std::string_view language,
                                    ReadingRules const& rules);

}  // namespace keydrift::reading
