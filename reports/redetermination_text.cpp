// What becomes of an archive's specimens, for a terminal.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <set>
#include <unordered_map>

#include "keydrift/key/spill/fingerprint.hpp"
#include "keydrift/key/spill/spill_sort.hpp"
#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/taken_back.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/wording_editions.hpp"

namespace keydrift {

using namespace reports;
namespace {

using Totals = std::array<std::uint64_t, kOutcomes>;

// Lists longer than this are cut in a terminal report; the tables have them whole.
constexpr std::size_t kListed = 20;
constexpr std::size_t kMostRows = 24;

std::uint64_t sum(Totals const& totals) {
  return std::accumulate(totals.begin(), totals.end(), std::uint64_t{0});
}

std::uint64_t count_of_outcome(Totals const& totals, Outcome outcome) {
  return totals[static_cast<std::size_t>(outcome)];
}

// "12 stands, 3 open".
std::string outcomes_in_words(Totals const& totals) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    if (totals[i] == 0) continue;
    parts.push_back(fmt::format("{} {}", grouped(totals[i]), to_word(static_cast<Outcome>(i))));
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

struct View {
  Edition const& old_edition;
  Edition const& new_edition;
  Redetermination const& result;
  EditionNames called;
  std::optional<Finding>* failure;
};

void set_totals(Page& page, View const& view) {
  auto const& totals = view.result.totals;
  auto const all = sum(totals);
  page.heading("Outcomes");
  auto const row = [&](std::string_view label, std::string_view text, std::uint64_t count) {
    page.entry({.label = {{std::string{label}, Face::bold}},
                .label_width = 14,
                .text = {{std::string{text}, Face::plain}},
                .destination = {{fmt::format("{}{:>9}", grouped(count),
                                             count == 0 ? "" : share(count, all)),
                                 Face::plain}}},
               2);
  };
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    auto const outcome = static_cast<Outcome>(i);
    row(to_word(outcome), meaning_of(outcome), totals[i]);
  }
  row("together", "", all);
}

void set_statements(Page& page, View const& view) {
  auto const& totals = view.result.totals;
  page.heading("Names updated, specimens not examined");
  page.leader("Same taxon, name updated without looking (renamed)",
              grouped(count_of_outcome(totals, Outcome::renamed)), 2);
  page.leader("Another taxon by the record alone (changes)",
              grouped(count_of_outcome(totals, Outcome::changes)), 2);
  page.leader("Still to be examined: on the worklist", grouped(view.result.sheets_to_look_at), 2);
  page.leader("Examined: answers were taken back",
              view.result.examined == 0 ? "none" : grouped(view.result.examined), 2);
  page.blank();
  page.paragraph(examined_in_words(view.result), 2);
}

void set_from_to(Page& page, View const& view) {
  auto const& rows = view.result.from_to;
  if (rows.empty()) return;
  page.heading(fmt::format("From {} to {}", view.called.old_name, view.called.new_name));
  // Rows in which nothing happens are summed up in one.
  std::uint64_t standing = 0;
  std::uint64_t standing_rows = 0;
  std::uint64_t beyond = 0;
  std::size_t listed = 0;
  for (auto const& row : rows) {
    if (count_of_outcome(row.by_outcome, Outcome::stands) == row.specimens) {
      standing += row.specimens;
      ++standing_rows;
      continue;
    }
    if (listed++ >= kMostRows) {
      beyond += row.specimens;
      continue;
    }
    std::string names = row.from.empty() ? "(no usable name)" : row.from;
    // What is in brackets is no name.
    if (row.to.starts_with('('))
      names += " " + row.to;
    else if (!row.to.empty() && row.to != row.from)
      names += " to " + few_names(row.to);
    auto const outcomes =
        static_cast<std::size_t>(std::count_if(row.by_outcome.begin(), row.by_outcome.end(),
                                               [](std::uint64_t count) { return count > 0; }));
    if (outcomes == 1 && !row.to.starts_with('(')) {
      auto const at = std::find_if(row.by_outcome.begin(), row.by_outcome.end(),
                                   [](std::uint64_t count) { return count > 0; });
      names += fmt::format(": {}", to_word(static_cast<Outcome>(at - row.by_outcome.begin())));
    }
    page.leader(names, grouped(row.specimens), 2);
    if (outcomes > 1) {
      page.paragraph(Words{{outcomes_in_words(row.by_outcome), Face::dim}}, 6, 2);
    }
  }
  if (listed > kMostRows) {
    page.leader(fmt::format("and {} in the other reports", counted(listed - kMostRows, "more row")),
                grouped(beyond), 2);
  }
  if (standing_rows > 0) {
    page.leader(
        fmt::format("{} under {}", standing_rows == rows.size() ? "All unchanged" : "Unchanged",
                    counted(standing_rows, "name")),
        grouped(standing), 2);
  }
}

using Counts = std::vector<std::pair<std::string, std::size_t>>;

void add_to_counts(Counts& counts, std::unordered_map<std::string, std::size_t>& index,
                   std::string const& name, std::size_t number) {
  auto const [at, fresh] = index.try_emplace(name, counts.size());
  if (fresh) counts.emplace_back(name, 0);
  counts[at->second].second += number;
}

// "Cabinet 3" of "Cabinet 3 / Shelf 2 / Folder 7".
std::string widest_part(std::string const& place) {
  return place.substr(0, std::min(place.find(" / "), place.find_first_of(";,/|")));
}

// Storage places with their specimens, in the order of the worklist.
Counts places_of(StoredList<WorkGroup> const& worklist, bool widest) {
  Counts counts;
  std::unordered_map<std::string, std::size_t> index;
  for (auto const& group : worklist) {
    add_to_counts(counts, index, widest ? widest_part(group.storage) : group.storage, group.sheets);
  }
  return counts;
}

void set_places(Page& page, StoredList<WorkGroup> const& worklist) {
  auto places = places_of(worklist, false);
  bool const widest = places.size() > kListed;
  if (widest) places = places_of(worklist, true);
  page.subheading("Specimens to pull, by storage place");
  std::size_t listed = 0;
  std::size_t nowhere = 0;
  for (auto const& [place, count] : places) {
    if (place.empty())
      nowhere = count;
    else if (listed++ < kListed)
      page.leader(place, grouped(count), 2);
  }
  if (listed > kListed) {
    page.paragraph(fmt::format("and {} more in the worklist.", counted(listed - kListed, "place")),
                   2);
  }
  if (nowhere > 0) page.leader("(no place recorded)", grouped(nowhere), 2);
}

// Different questions of a worklist; there may be as many as there are sheets.
struct Questions {
  std::uint64_t all{};
  Counts first;  // with the sheets that each settles: most sheets first, then as in the worklist
};

Questions questions_by_words(View const& view) {
  // By their words, which may be the same for different groups; with their places in the worklist.
  constexpr std::size_t kMemory = std::size_t{4} << 20;
  SpillSort sorted{kMemory};
  std::uint64_t place = 0;
  std::string payload;
  for (auto const& group : view.result.worklist) {
    payload.clear();
    ByteWriter writer{payload};
    auto const words = question_in_words(view.result.verdicts[group.verdict], view.new_edition);
    writer.number(place++);
    writer.number(group.sheets);
    writer.text(words);
    sorted.add(fingerprint_of(words).high, payload);
  }
  sorted.sort();

  struct Question {
    std::string words;
    std::uint64_t place{}, sheets{};
  };
  Questions questions;
  std::vector<Question> first, met;
  auto const before = [](Question const& a, Question const& b) {
    return a.sheets != b.sheets ? a.sheets > b.sheets : a.place < b.place;
  };
  auto const take_met = [&] {
    questions.all += met.size();
    for (auto& question : met) first.push_back(std::move(question));
    met.clear();
    std::sort(first.begin(), first.end(), before);
    if (first.size() > kListed) first.resize(kListed);
  };
  std::uint64_t key = 0;
  SpillSort::Record record;
  while (sorted.next(record)) {
    if (record.key != key) take_met();
    key = record.key;
    ByteReader reader{record.payload};
    auto const at = reader.number();
    auto const sheets = reader.number();
    auto const words = reader.text();
    auto const known = std::find_if(met.begin(), met.end(),
                                    [&](Question const& each) { return each.words == words; });
    if (known == met.end()) {
      met.push_back({std::string{words}, at, sheets});
    } else {
      known->sheets += sheets;
      known->place = std::min(known->place, at);
    }
  }
  take_met();
  if (view.failure != nullptr) *view.failure = sorted.failure();
  for (auto& question : first) {
    questions.first.emplace_back(std::move(question.words), question.sheets);
  }
  return questions;
}

void set_questions(Page& page, Questions const& questions) {
  page.subheading("Questions, and the specimens that each settles");
  for (auto const& [question, count] : questions.first) page.leader(question, grouped(count), 2);
  if (questions.all > kListed) {
    page.paragraph(
        fmt::format("and {} more in the worklist.", counted(questions.all - kListed, "question")),
        2);
  }
}

void set_worklist(Page& page, View const& view) {
  auto const& worklist = view.result.worklist;
  if (worklist.empty()) return;
  page.heading("Worklist");
  std::uint64_t sheets = 0;
  std::size_t types = 0;
  std::set<std::string> places;
  for (auto const& group : worklist) {
    sheets += group.sheets;
    types += group.has_types ? 1 : 0;
    if (!group.storage.empty()) places.insert(group.storage);
  }
  auto const questions = questions_by_words(view);
  page.paragraph(fmt::format("{} to look at{}, with {} to answer.", counted(sheets, "specimen"),
                             places.empty() ? std::string{}
                                            : ", from " + counted(places.size(), "storage place"),
                             counted(questions.all, "different question")),
                 2);
  if (types > 0) {
    page.paragraph(fmt::format("{} of {} with types; these stand first.", grouped(types),
                               counted(worklist.size(), "group")),
                   2);
  }
  set_questions(page, questions);
  if (!places.empty()) set_places(page, worklist);
}

std::string let_through(Edition const& edition, std::vector<TaxonId> const& taxa,
                        std::optional<CoupletId> const& stop) {
  if (!taxa.empty()) return "passes as " + taxon_names(edition, taxa, " or ");
  if (stop) return fmt::format("is stopped at couplet {}", edition[*stop].label);
  return "is stopped";
}

void set_look_alikes(Page& page, View const& view) {
  auto const& look_alikes = view.result.look_alikes;
  if (look_alikes.empty()) return;
  page.heading("Look-alikes");
  page.paragraph("Taxa from outside the key, which it should stop.", 2);
  page.blank();
  auto const count = [&](bool by_old, bool by_new) {
    return grouped(static_cast<std::uint64_t>(
        std::count_if(look_alikes.begin(), look_alikes.end(), [&](LookAlikeResult const& each) {
          return each.old_taxa.empty() != by_old && each.new_taxa.empty() != by_new;
        })));
  };
  page.leader("stopped by both editions", count(false, false), 2);
  page.leader(fmt::format("let through by {} only", view.called.old_name), count(true, false), 2);
  page.leader(fmt::format("let through by {} only", view.called.new_name), count(false, true), 2);
  page.leader("let through by both editions", count(true, true), 2);
  for (auto const& look_alike : look_alikes) {
    page.blank();
    auto name = specimen_name(look_alike.specimen);
    if (!look_alike.specimen.scientific_name.empty()) {
      name += fmt::format(", {}", look_alike.specimen.scientific_name);
    }
    page.paragraph(Words{{name, Face::bold}}, 2, 2);
    page.item(
        view.called.old_name,
        let_through(view.old_edition, look_alike.old_taxa, look_alike.old_stop), 4,
        std::max(display_width(view.called.old_name), display_width(view.called.new_name)) + 2);
    page.item(
        view.called.new_name,
        let_through(view.new_edition, look_alike.new_taxa, look_alike.new_stop), 4,
        std::max(display_width(view.called.old_name), display_width(view.called.new_name)) + 2);
    for (auto const& fit : look_alike.partly) {
      page.paragraph("partly fits " + partial_fit_in_words(fit, view.old_edition, view.new_edition),
                     4, 2);
    }
  }
}

void set_expectations(Page& page, View const& view) {
  auto const& result = view.result;
  if (result.expected == 0) return;
  page.heading("Types and vouchers");
  page.paragraph(
      fmt::format("{} must key out to the recorded name; {}.", counted(result.expected, "specimen"),
                  result.failed == 0 ? std::string{"all do"}
                                     : counted(result.failed, "does not", "do not")),
      2);
  constexpr std::size_t kFailuresListed = 50;
  for (std::size_t i = 0; i < std::min(result.failures.size(), kFailuresListed); ++i) {
    auto const& failure = result.failures[i];
    auto const& outcome = result.expectations[failure.specimen];
    auto const& verdict = result.verdicts[outcome.verdict];
    page.blank();
    page.paragraph(Words{{fmt::format("{}, {}", specimen_name(outcome.specimen),
                                      outcome.specimen.scientific_name),
                          Face::bold},
                         {fmt::format(" ({})", type_or_voucher(outcome.specimen)), Face::plain}},
                   2, 2);
    page.paragraph(
        fmt::format("fails in {}: {}; {}",
                    failure.in_new ? view.called.new_name : view.called.old_name + " already",
                    to_word(verdict.outcome), reason(verdict, view.old_edition, view.new_edition)),
        4, 2);
  }
  if (result.failed > kFailuresListed) {
    page.blank();
    page.paragraph(fmt::format("and {} more.", grouped(result.failed - kFailuresListed)), 2);
  }
}

void set_reading(Page& page, View const& view) {
  auto const& result = view.result;
  page.heading("How far the outcomes hang on the way of reading");
  page.paragraph(
      fmt::format("Leads were read in the {} way. {} under another reading (strict, primary-first, "
                  "best-overall).",
                  to_word(result.reading),
                  result.reading_dependent == 0 ? std::string{"No outcome would differ"}
                  : result.reading_dependent == 1
                      ? std::string{"1 outcome would differ"}
                      : grouped(result.reading_dependent) + " outcomes would differ"),
      2);
  if (result.reading_dependent > 0) {
    page.blank();
    for (std::size_t i = 0; i < kReadings; ++i) {
      page.item(to_word(static_cast<Reading>(i)), outcomes_in_words(result.totals_by_reading[i]), 2,
                15);
    }
  }
  std::size_t listed = 0;
  for (auto const& dependence : result.reading_couplets) {
    if (listed++ == kListed) break;
    if (listed == 1) page.blank();
    page.leader(fmt::format("because of couplet {} of {}",
                            view.new_edition[dependence.couplet].label, view.called.new_name),
                grouped(dependence.specimens), 2);
  }
}

// What the reader had to decide: names among several determinations, ids that stand twice.
void set_archive(Page& page, View const& view) {
  auto const& archive = view.result.archive;
  if (archive.history) {
    auto const lines = choices_in_words(*archive.history);
    page.subheading("Name taken from the history of determinations");
    for (auto const& line : lines) page.leader(line.what, grouped(line.specimens), 2);
    if (lines.empty()) page.paragraph("No specimen has one.", 2);
  }
  if (archive.repeated_ids == 0) return;
  page.subheading("Rows whose number or id an earlier row has; all are used");
  page.leader("Rows", grouped(archive.repeated_ids), 2);
  constexpr std::size_t kTold = 5;
  for (std::size_t i = 0; i < archive.repeats.size() && i < kTold; ++i) {
    page.paragraph(repeat_in_words(archive.repeats[i]), 4, 2);
  }
  if (archive.repeated_ids > kTold) {
    page.paragraph(fmt::format("and {}.", counted(archive.repeated_ids - kTold, "more row")), 4);
  }
}

// With which editions the specimens were determined.
void set_editions(Page& page, View const& view) {
  auto const words =
      editions_in_words(view.result.editions, view.called.old_name, view.called.new_name);
  page.subheading("Determined with");
  for (auto const& line : words.lines) page.leader(line.what, grouped(line.specimens), 2);
  for (auto const& work : words.unnamed_works) {
    page.leader(in_curly_quotes(work.what), grouped(work.specimens), 4);
  }
  if (words.more_works > 0) {
    page.paragraph(fmt::format("and {} in the JSON.", counted(words.more_works, "more work")), 4);
  }
  if (!words.advice.empty()) {
    page.blank();
    page.paragraph(words.advice, 2);
  }
}

void set_evidence(Page& page, View const& view, Collation const& collation) {
  auto const& result = view.result;
  page.heading("What the outcomes rest on");
  page.leader("Specimens with at least one recorded character", grouped(result.with_characters), 2);
  page.leader("Specimens with a name only", grouped(result.name_only), 2);
  page.blank();
  auto const understood = [&page](std::string_view name, Coverage const& coverage) {
    page.paragraph(sentence(fmt::format("{}: {}", name, coverage_in_words(coverage))), 2, 2);
  };
  understood(view.called.old_name, collation.old_coverage);
  understood(view.called.new_name, collation.new_coverage);
  page.blank();
  for (std::size_t i = 0; i < kFootings; ++i) {
    auto const count = sum(result.by_footing[i]);
    if (count > 0) page.leader(meaning_of(static_cast<Footing>(i)), grouped(count), 2);
  }
  set_editions(page, view);
  set_archive(page, view);
}

// Without a lexicon, columns and cells are tied to the key by their words; that is told in full.
void set_ties(Page& page, View const& view) {
  auto const ties = ties_in_words(view.result);
  if (ties.empty()) return;
  page.heading("What recorded characters were taken for, by their words");
  for (auto const& tie : ties) page.leader(tie.what, grouped(tie.records), 2);
  page.blank();
  page.paragraph(
      "A lexicon whose characters are headed like the columns leaves nothing to be told "
      "from words: `keydrift lexicon draft` makes one to begin with.",
      2);
}

}  // namespace

std::string redetermination_text(Edition const& old_edition, Edition const& new_edition,
                                 Collation const& collation, Redetermination const& redetermination,
                                 TerminalStyle style, std::optional<Finding>* failure) {
  View const view{old_edition, new_edition, redetermination,
                  edition_names(old_edition, new_edition), failure};
  Page page{style};
  page.title(fmt::format("Specimens named by {}, keyed by {}", view.called.old_name,
                         view.called.new_name));
  auto const kept = sum(redetermination.totals);
  page.paragraph(fmt::format("{} read: {} judged, {} set aside as unreadable.",
                             counted(kept + redetermination.rejected, "record"),
                             counted(kept, "specimen"), grouped(redetermination.rejected)),
                 2);
  set_totals(page, view);
  set_statements(page, view);
  set_from_to(page, view);
  set_worklist(page, view);
  set_look_alikes(page, view);
  set_expectations(page, view);
  set_reading(page, view);
  set_evidence(page, view, collation);
  set_ties(page, view);
  if (!redetermination.findings.empty()) {
    page.heading("Remarks on the records");
    bool first = true;
    for (auto const& finding : redetermination.findings) {
      if (!first) page.blank();
      first = false;
      set_finding(page, finding);
    }
  }
  page.heading("Caution");
  page.paragraph(caution(), 2);
  return page.take();
}

}  // namespace keydrift
