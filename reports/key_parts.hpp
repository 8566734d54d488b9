#pragma once
// What the pages of a key share: front matter in words, names, notes between couplets.  Internal to
// reports.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/front_lines.hpp"

namespace keydrift::reports {

// What the front matter says besides title and byline, in the order of printing.
[[nodiscard]] std::vector<FrontLine> lines_below_title(FrontMatter const& front);

// "2024 edition · E. R.; M. K.": empty when neither is said.
[[nodiscard]] std::string byline(FrontMatter const& front);

[[nodiscard]] std::string page_title(Edition const& edition);

// Is the name set in italics: a genus or below, in Latin form?
[[nodiscard]] bool is_set_in_italics(std::string_view name);

// Figures of the lead that its words do not name.
[[nodiscard]] std::vector<std::string> further_figures(Lead const& lead);

// Where notes and titles stand: before couplet i, in this order.
struct Between {
  bool title{};           // else a note
  std::uint32_t index{};  // into Edition::parts or Edition::notes
};
// One list for each couplet, and one for what stands behind the last.
[[nodiscard]] std::vector<std::vector<Between>> between_couplets(Edition const& edition);

// Taxa that no lead names.
[[nodiscard]] std::vector<TaxonId> unnamed_taxa(Edition const& edition);

}  // namespace keydrift::reports
