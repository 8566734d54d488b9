#include "keydrift/program/explanations.hpp"

#include <algorithm>
#include <array>
#include <ostream>
#include <span>
#include <string_view>

#include "keydrift/amendment/amendment_kinds.hpp"
#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/lexicon_use.hpp"
#include "keydrift/characters/reading_kinds.hpp"
#include "keydrift/editions/source_kinds.hpp"
#include "keydrift/formats/reader_kinds.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/redetermination/redetermination_kinds.hpp"
#include "keydrift/redetermination/taking_back.hpp"
#include "keydrift/reports/page.hpp"
#include "keydrift/taxa/taxa_kinds.hpp"

namespace keydrift::program {
namespace {

constexpr std::array kOutputKinds{
    FindingKind{"other-columns", Severity::error, "A history of determinations in another form",
                "Determinations are only added to a file that this program began, because its\n"
                "columns must be known. Nothing was written."},
    FindingKind{"unwritable-output", Severity::error, "An output cannot be written",
                "The system refuses it: rights, a full disk, a folder that is missing.  No output\n"
                "of the command was written."},
};

// Some titles stand within sentences elsewhere.
std::string capitalised_title(FindingKind const& kind) {
  std::string title{kind.title};
  if (title.front() >= 'a' && title.front() <= 'z') {
    title.front() = static_cast<char>(title.front() - 'a' + 'A');
  }
  return title;
}

}  // namespace

std::vector<FindingKind> all_finding_kinds() {
  std::vector<FindingKind> kinds;
  for (auto const table :
       {structural_finding_kinds(), contrast_finding_kinds(), style_finding_kinds(),
        statement_finding_kinds(), lexicon_finding_kinds(), lexicon_use_finding_kinds(),
        source_finding_kinds(), reader_finding_kinds(), taxa_finding_kinds(),
        redetermination_finding_kinds(), refusal_kinds(), amendment_finding_kinds(),
        std::span<FindingKind const>{kOutputKinds}}) {
    kinds.insert(kinds.end(), table.begin(), table.end());
  }
  // A code that two folders report, of the same meaning, is explained by the first.
  std::stable_sort(kinds.begin(), kinds.end(),
                   [](auto const& a, auto const& b) { return a.code < b.code; });
  kinds.erase(std::unique(kinds.begin(), kinds.end(),
                          [](auto const& a, auto const& b) { return a.code == b.code; }),
              kinds.end());
  return kinds;
}

ExitCode explain_finding(std::string const& code, StyleOptions const& style, Context& context) {
  auto const kinds = all_finding_kinds();
  reports::Page page{style.apply(context.style)};
  if (code.empty()) {
    std::size_t width = 0;
    for (auto const& kind : kinds) width = std::max(width, kind.code.size() + 2);
    for (auto const& kind : kinds) page.item(kind.code, capitalised_title(kind), 0, width);
    context.out << page.take();
    return kNothingToReport;
  }
  auto const found =
      std::find_if(kinds.begin(), kinds.end(), [&](auto const& kind) { return kind.code == code; });
  if (found == kinds.end()) {
    std::vector<std::string> codes;
    for (auto const& kind : kinds) codes.emplace_back(kind.code);
    context.err << "keydrift: no finding is called \"" << code << "\"\n";
    auto const near = did_you_mean(near_words(code, codes));
    context.err << "  " << (near.empty() ? "keydrift proof --explain-finding lists them all" : near)
                << '\n';
    return kBadUsage;
  }
  std::string words{found->explanation};
  std::replace(words.begin(), words.end(), '\n', ' ');
  page.paragraph(std::string{found->code} + " (" + to_word(found->severity) +
                 "): " + capitalised_title(*found));
  page.blank();
  page.paragraph(words);
  context.out << page.take();
  return kNothingToReport;
}

}  // namespace keydrift::program
