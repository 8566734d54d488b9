#include "keydrift/formats/printed_fragment.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_edition.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_run_on.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

Edition read_fragment(std::string_view name, std::string_view text, std::vector<SourceLine> lines,
                      std::vector<Finding>& findings) {
  Edition edition;
  edition.name = std::string{name};
  lines = part_run_on_lines(std::move(lines));
  auto const numbering = decide_numbering(lines, DecimalLabels::sections, Extent::fragment);
  auto sorted = sort_lines(lines, numbering, 0, {}, nullptr);
  KeyText const key{name, text, lines, numbering};
  auto reads = read_leads(key, sorted, findings);
  auto const grouping =
      sorted.leads.empty() ? Grouping{} : group_leads(key, sorted, reads, Layout::parallel);
  build_edition(key, sorted, grouping, std::move(reads), edition, findings);
  // The edition that is amended tells the genera of short names.
  std::erase_if(findings, [](Finding const& finding) { return finding.code == "genus-unknown"; });
  for (auto& part : edition.parts) {
    if (!part.title.empty()) edition.notes.push_back({std::move(part.title), part.place});
  }
  edition.parts.clear();
  std::stable_sort(edition.notes.begin(), edition.notes.end(),
                   [](Note const& a, Note const& b) { return a.place.begin < b.place.begin; });
  return edition;
}

}  // namespace keydrift::printed
