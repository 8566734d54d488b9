#include "keydrift/formats/citations_file.hpp"

#include <array>
#include <map>
#include <string>
#include <utility>

#include "keydrift/formats/side_table.hpp"
#include "keydrift/key/fold.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {

using namespace tables;

namespace {

enum CitationColumn : std::size_t { kCitation, kEdition, kPublished };
constexpr std::array kCitationColumns{WantedColumn{"citation", true}, WantedColumn{"edition", true},
                                      WantedColumn{"published", false}};

}  // namespace

Loaded<CitationTable> read_citations(Source source) {
  Loaded<CitationTable> loaded;
  auto read = read_side_table(source, "table of citations", kCitationColumns);
  loaded.findings = std::move(read.findings);
  if (!read) return loaded;
  CitationTable table{.name = std::string{source.name}, .rows = {}};
  auto const tell = [&](std::string code, Severity severity, Place const& place,
                        std::string printed, std::string message, std::string remedy) {
    loaded.findings.push_back({.code = std::move(code),
                               .severity = severity,
                               .file = table.name,
                               .place = place,
                               .printed = std::move(printed),
                               .message = std::move(message),
                               .remedy = std::move(remedy),
                               .related = {}});
  };
  std::map<std::string, std::string> edition_of;                       // by folded citation
  std::map<std::string, std::pair<Period, std::string>> published_of;  // by folded edition
  for (auto const& row : read.value->rows) {
    auto const& citation = row.cells[kCitation];
    auto const& edition = row.cells[kEdition];
    auto const& published = row.cells[kPublished];
    if (edition.empty()) {
      tell("missing-edition", Severity::error, row.places[kEdition], "",
           citation.empty() ? "the row names no edition"
                            : "the row of " + in_quotes(citation) + " names no edition",
           "write the label of the edition, or OLD or NEW");
      continue;
    }
    CitationRow made{.citation = citation, .edition = edition, .published = {}, .place = row.place};
    auto const label = fold_words(edition);
    if (!published.empty()) {
      made.published = read_period(published);
      if (!made.published) {
        tell("unclear-day", Severity::error, row.places[kPublished], published,
             in_quotes(published) + " does not say when the edition was published",
             "write the year, or a date as in 1998-07 or 1998-07-14");
        continue;
      }
      auto const [at, fresh] = published_of.try_emplace(label, *made.published, published);
      if (!fresh && at->second.first != *made.published) {
        tell("two-days", Severity::error, row.places[kPublished], published,
             "another row says that the edition " + in_quotes(edition) + " was published in " +
                 at->second.second,
             "keep the one that is right");
        continue;
      }
    }
    if (!citation.empty()) {
      auto const [at, fresh] = edition_of.try_emplace(fold_words(citation), edition);
      if (!fresh && fold_words(at->second) != label) {
        tell("two-editions", Severity::error, row.places[kCitation], citation,
             "another row says that this is the edition " + in_quotes(at->second),
             "keep the one that is right");
        continue;
      }
    } else if (published.empty()) {
      tell("idle-row", Severity::warning, row.place, edition,
           "the row has neither a citation nor a date, and says nothing",
           "write the work as it is cited, or when the edition was published");
      continue;
    }
    table.rows.push_back(std::move(made));
  }
  sort_findings(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = std::move(table);
  return loaded;
}

}  // namespace keydrift
