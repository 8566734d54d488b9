#include "keydrift/reports/wording_editions.hpp"

#include <fmt/format.h>

#include <map>

namespace keydrift::reports {
namespace {

constexpr std::size_t kWorksListed = 5;

std::string line_of(EditionCount const& count, std::string const& old_name) {
  switch (count.basis) {
    case EditionBasis::unknown:
      return fmt::format("not known, {} presumed", old_name);
    case EditionBasis::contradictory:
      return fmt::format("{} cited, but dated before it was published: {} presumed", count.edition,
                         old_name);
    case EditionBasis::cited:
    case EditionBasis::by_date:
      break;
  }
  auto const name = count.edition.empty() ? "an older work than any that is named" : count.edition;
  auto text = fmt::format("{}, {}", name, to_word(count.basis));
  if (count.role == EditionRole::new_edition) text += ": the name is its own already";
  if (count.role == EditionRole::other) {
    text += fmt::format(": not judged by the leads of {}", old_name);
  }
  return text;
}

// Without a table all are judged as named by the old edition, and what speaks against it is told.
EditionWords undecided(EditionCounts const& editions, std::string const& old_name,
                       std::string const& new_name) {
  EditionWords words;
  std::uint64_t cited = 0;
  std::uint64_t presumed = 0;
  std::uint64_t by_new = 0;
  std::uint64_t too_old = 0;
  for (auto const& count : editions.counts) {
    bool const is_cited = count.basis == EditionBasis::cited;
    if (count.role == EditionRole::old_edition && is_cited) {
      cited += count.specimens;
    } else {
      presumed += count.specimens;
    }
    if (count.role == EditionRole::new_edition) by_new += count.specimens;
    bool const contradicts = count.basis == EditionBasis::contradictory;
    if (count.role == EditionRole::other || contradicts) too_old += count.specimens;
  }
  words.lines.push_back({fmt::format("{} cited by the record", old_name), cited});
  words.lines.push_back({fmt::format("{} presumed", old_name), presumed});
  if (by_new > 0) {
    words.lines.push_back(
        {fmt::format("of these, seemingly determined with {}", new_name), by_new});
  }
  if (too_old > 0) {
    words.lines.push_back(
        {fmt::format("of these, dated before {} was published", old_name), too_old});
  }
  if (by_new > 0 || too_old > 0) {
    words.advice = fmt::format(
        "These were judged as if {} had given their names. --citations TABLE tells the editions "
        "apart.",
        old_name);
  }
  return words;
}

}  // namespace

EditionWords editions_in_words(EditionCounts const& editions, std::string const& old_name,
                               std::string const& new_name) {
  if (!editions.decides) return undecided(editions, old_name, new_name);
  EditionWords words;
  std::map<std::string, std::uint64_t> others;
  for (auto const& count : editions.counts) {
    words.lines.push_back({line_of(count, old_name), count.specimens});
    bool const other = count.role == EditionRole::other && !count.edition.empty();
    if (other) others[count.edition] += count.specimens;
  }
  if (editions.unnamed > 0) {
    words.lines.push_back(
        {"citing only works that the table of citations does not name", editions.unnamed});
  }
  for (auto const& [work, specimens] : editions.unnamed_works) {
    if (words.unnamed_works.size() == kWorksListed) break;
    words.unnamed_works.push_back({work, specimens});
  }
  words.more_works = editions.unnamed_works.size() - words.unnamed_works.size();
  if (!others.empty()) {
    auto most = others.begin();
    for (auto at = others.begin(); at != others.end(); ++at) {
      if (at->second > most->second) most = at;
    }
    words.advice = fmt::format(
        "What the leads of {0} say is not known of specimens that another edition named. Keyed "
        "from that edition, as in `redetermine {1} {2}`, their names tell more.",
        old_name, most->first, new_name);
  }
  return words;
}

std::vector<EditionLine> choices_in_words(DeterminationCounts const& history) {
  std::vector<EditionLine> lines;
  auto const add = [&](char const* what, std::uint64_t specimens) {
    if (specimens > 0) lines.push_back({what, specimens});
  };
  add("the one that is marked as accepted", history.accepted);
  add("the one that the archive's own row repeats", history.by_core);
  add("the latest by date", history.latest);
  add("of these, chosen among several", history.several);
  return lines;
}

std::string repeat_in_words(RepeatedId const& repeat) {
  if (repeat.first_file == repeat.file) {
    return fmt::format("{}: {}, lines {} and {}", repeat.id, repeat.file, repeat.first_line,
                       repeat.line);
  }
  return fmt::format("{}: {}, line {}, and {}, line {}", repeat.id, repeat.first_file,
                     repeat.first_line, repeat.file, repeat.line);
}

}  // namespace keydrift::reports
