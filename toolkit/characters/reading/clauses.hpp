#pragma once
// Cutting a lead's text into clauses, and setting aside what is no statement.

#include <cstdint>
#include <vector>

#include "keydrift/characters/reading/lead_text.hpp"

namespace keydrift::reading {

struct Clause {
  std::uint32_t begin{};  // tokens, half open
  std::uint32_t end{};
  bool noted{false};           // "[…]", "Note: …"
  bool begins_sentence{true};  // behind a full stop or at the very beginning
};

// Gives figure and plate references the role `figure` ("(Figs 3–5)", "(54,55)", "see Fig. 7").
void set_aside_figures(LeadText& text);

// Clauses in order of their beginnings.  They end at semicolons, at full stops that end a sentence
// (not at those of abbreviations) and at dashes between blanks.  Notes in brackets are clauses of
// their own inside another one.
[[nodiscard]] std::vector<Clause> split_clauses(LeadText const& text);

}  // namespace keydrift::reading
