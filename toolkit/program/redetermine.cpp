#include <CLI/CLI.hpp>
#include <optional>
#include <ostream>

#include "keydrift/program/archive_rows.hpp"
#include "keydrift/program/archive_threads.hpp"
#include "keydrift/program/comparison.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/program/progress.hpp"
#include "keydrift/program/readings.hpp"
#include "keydrift/program/specimen_threads.hpp"
#include "keydrift/program/specimens.hpp"
#include "keydrift/program/take_back.hpp"
#include "keydrift/redetermination/redeterminer.hpp"
#include "keydrift/reports/csv.hpp"
#include "keydrift/reports/html.hpp"
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/summaries_csv.hpp"
#include "keydrift/reports/terminal.hpp"

namespace keydrift::program {
namespace {

struct RedetermineArguments {
  std::string old_edition;
  std::string new_edition;
  std::string archive;
  SideTableOptions tables;
  std::string measurements;
  std::string citations;
  std::string look_alikes;
  std::string html;
  std::string json;
  std::string worklist;
  std::string worklist_page;
  std::string summaries;
  std::string specimens;
  std::string rejects;
  TakeBackArguments take_back;
  unsigned threads{usual_threads()};
  bool all_are_vouchers{false};
  bool check_vouchers{false};
  Reading reading{Reading::strict};
};

// Where the rows of a run go.
class RowFiles {
 public:
  explicit RowFiles(RedetermineArguments const& arguments) {
    wanted_ = {.specimens = !arguments.specimens.empty(),
               .worklist = !arguments.worklist.empty(),
               .worklist_page = !arguments.worklist_page.empty(),
               .rejects = !arguments.rejects.empty()};
    if (wanted_.specimens) {
      specimens_.emplace(arguments.specimens);
      specimens_->write(specimens_csv_header());
    }
    if (wanted_.worklist) worklist_.emplace(arguments.worklist);
    if (wanted_.worklist_page) page_.emplace(arguments.worklist_page);
    if (wanted_.rejects) {
      rejects_.emplace(arguments.rejects);
      rejects_->write("line,code,message,raw\n");
    }
  }

  [[nodiscard]] RowsWanted wanted() const { return wanted_; }
  void add(RowTexts const& texts) {
    if (specimens_) specimens_->write(texts.specimens);
    if (rejects_) rejects_->write(texts.rejects);
    if (wanted_.sheets()) sheets_.add(texts.sheets);
  }
  // Nothing: all of them are among the outputs.
  [[nodiscard]] std::optional<Finding> finish(Comparison const& comparison,
                                              Redetermination const& result, Outputs& outputs) {
    if (wanted_.sheets()) {
      if (auto failure = sheets_.write(comparison, result, worklist_ ? &*worklist_ : nullptr,
                                       page_ ? &*page_ : nullptr)) {
        return failure;
      }
    }
    for (auto* file : {&specimens_, &worklist_, &page_, &rejects_}) {
      if (*file) outputs.add(std::move(**file));
    }
    return std::nullopt;
  }

 private:
  RowsWanted wanted_;
  std::optional<OutputFile> specimens_, worklist_, page_, rejects_;
  WorklistSheets sheets_;
};

// Finds the sheets that the filled-in rows mean.
bool find_sheets(RedetermineArguments const& arguments, TakingBack& taking, Context& context) {
  Progress progress{context, "specimens looked through for the worklist"};
  ArchiveRun const run{.path = arguments.archive,
                       .measurements = "",
                       .characters = {},
                       .all_are_vouchers = false,
                       .on_specimen =
                           [&](Specimen const& specimen) {
                             taking.meet(specimen);
                             progress.step();
                           },
                       .on_reject = {},
                       .stop = {},
                       .quiet = true};
  if (!run_archive(run, context)) return false;
  taking.end_of_first_run();
  return true;
}

// Counts the specimens one by one, with what came back of them.
bool take_back(ArchiveRun run, ThreadedRun const& where,
               std::function<Specimen const&(Specimen const&)> const& tied, TakingBack& taking,
               Context& context) {
  RowWriter writer{where.comparison, where.redeterminer, where.wanted};
  RowTexts texts;
  auto const row_done = [&] {
    where.in_order(texts);
    texts.clear();
    where.progress->step();
  };
  run.on_specimen = [&](Specimen const& specimen) {
    auto const& known = tied(specimen);
    writer.write(known, taking.count(where.redeterminer, known), texts);
    row_done();
  };
  run.on_reject = [&](Reject const& reject) {
    writer.reject(reject, texts);
    row_done();
  };
  if (!run_archive(run, context)) return false;
  return true;
}

ExitCode redetermine(RedetermineArguments const& arguments, StyleOptions const& style,
                     Context& context) {
  auto const comparison = compare(arguments.old_edition, arguments.new_edition, arguments.tables,
                                  context, WithoutLexicon::by_draft);
  if (!comparison) return kUnreadableInput;
  std::optional<CitationTable> citations;
  if (!arguments.citations.empty()) {
    citations = load_citations(arguments.citations, context);
    if (!citations) return kUnreadableInput;
  }
  auto const* const table = citations ? &*citations : nullptr;
  constexpr std::size_t kSpecimensListed = 5'000;
  bool const listed = !arguments.html.empty() || !arguments.json.empty();
  auto const& old_edition = comparison->old_edition();
  auto const& new_edition = comparison->new_edition();
  Redeterminer redeterminer{old_edition,
                            *comparison->old_graph,
                            new_edition,
                            *comparison->new_graph,
                            comparison->collation,
                            comparison->tables.lexicon,
                            comparison->tables.parents,
                            {.reading = arguments.reading,
                             .citations = table,
                             // Who writes no report that tells them needs none.
                             .to_look_at_kept = listed ? kSpecimensListed : 0,
                             .to_relabel_kept = arguments.json.empty() ? 0 : kSpecimensListed}};
  auto const characters = redeterminer.space().column_names();
  // Nobody has headed columns by a lexicon that was drafted just now.
  std::optional<RecordTying> tying;
  if (comparison->tables.lexicon.drafted) tying.emplace(comparison->tables.lexicon);
  Specimen retold;  // what was tied last
  auto const tied = [&](Specimen const& specimen) -> Specimen const& {
    if (!tying) return specimen;
    retold = specimen;
    tying->tie(retold);
    return retold;
  };

  std::optional<FilledIn> filled;
  std::optional<TakingBack> taking;
  if (!arguments.take_back.worklists.empty()) {
    filled = load_filled(arguments.take_back, context);
    if (!filled) return kUnreadableInput;
    taking.emplace(std::move(filled->rows));
    if (!find_sheets(arguments, *taking, context)) return kUnreadableInput;
  }

  RowFiles files{arguments};
  ArchiveCounts met;
  {
    Progress progress{context, "specimens"};
    ArchiveRun run{.path = arguments.archive,
                   .measurements = arguments.measurements,
                   .characters = characters,
                   .all_are_vouchers = arguments.all_are_vouchers,
                   .any_character = tying.has_value(),
                   .on_specimen = {},
                   .on_reject = {},
                   .stop = {},
                   .counts = &met};
    ThreadedRun const threaded{.comparison = *comparison,
                               .redeterminer = redeterminer,
                               .wanted = files.wanted(),
                               .threads = arguments.threads,
                               .in_order = [&](RowTexts const& some) { files.add(some); },
                               .progress = &progress};
    // Answers that came back are weighed in the order of the rows; columns that are tied by their
    // words, and tables that are joined, are read specimen by specimen.
    std::optional<bool> sound;
    if (taking) {
      sound = take_back(run, threaded, tied, *taking, context);
    } else if (!tying) {
      sound = count_archive(run, threaded, context);
    }
    if (!sound) {
      SpecimenThreads threads{threaded, comparison->tables.lexicon, tying ? &*tying : nullptr};
      run.on_specimen = [&](Specimen const& specimen) { threads.add(specimen); };
      run.on_reject = [&](Reject const& reject) { threads.add(reject); };
      sound = run_archive(run, context);
      threads.finish();
    }
    if (!*sound) return kUnreadableInput;
  }
  if (!arguments.look_alikes.empty()) {
    ArchiveRun const run{
        .path = arguments.look_alikes,
        .measurements = "",
        .characters = characters,
        .all_are_vouchers = false,
        .any_character = tying.has_value(),
        .on_specimen =
            [&](Specimen const& specimen) { redeterminer.add_look_alike(tied(specimen)); },
        .on_reject = {},
        .stop = {}};
    if (!run_archive(run, context)) return kUnreadableInput;
  }
  auto result = std::move(redeterminer).finish();
  result.archive = std::move(met);
  if (tying) result.ties = tying->ties();
  for (auto& finding : result.findings) {
    if (finding.file.empty()) finding.file = arguments.archive;
    print_finding(context, finding);
  }

  auto const& collation = comparison->collation;
  Outputs outputs;
  TakenBack taken;
  if (taking) {
    taken = std::move(*taking).finish();
    add_unreadable(taken, std::move(*filled));
    if (!arguments.take_back.log.empty()) {
      outputs.add(arguments.take_back.log, taken_back_csv(taken));
    }
  }
  if (taking && !arguments.take_back.identifications.empty()) {
    auto const history = with_history(arguments.take_back.identifications, taken, context);
    if (!history) return kUnwritableOutput;
    outputs.add(arguments.take_back.identifications, history->text);
  }
  if (auto const failure = files.finish(*comparison, result, outputs)) {
    print_finding(context, *failure);
    return kUnwritableOutput;
  }
  auto const written = [&outputs](std::string const& path, auto const& write) {
    OutputFile file{path};
    write([&file](std::string_view bytes) { file.write(bytes); });
    outputs.add(std::move(file));
  };
  if (!arguments.summaries.empty()) {
    written(arguments.summaries, [&](TextSink const& sink) { write_summaries_csv(result, sink); });
  }
  if (!arguments.html.empty()) {
    outputs.add(arguments.html, redetermination_html(old_edition, new_edition, collation, result));
  }
  if (!arguments.json.empty()) {
    written(arguments.json, [&](TextSink const& sink) {
      write_redetermination_json(old_edition, new_edition, collation, result, sink);
    });
  }
  std::optional<Finding> broken;
  auto const text = redetermination_text(old_edition, new_edition, collation, result,
                                         style.apply(context.style), &broken);
  if (auto const failure = result.failure()) broken = failure;
  if (broken) {
    print_finding(context, *broken);
    return kUnwritableOutput;
  }
  if (auto const failure = outputs.commit()) {
    print_finding(context, *failure);
    return kUnwritableOutput;
  }
  context.out << text;
  if (taking) context.out << taken_back_text(filled->files, taken, style.apply(context.style));
  if (result.rejected > 0 && arguments.rejects.empty()) {
    context.err << arguments.archive << ": " << result.rejected
                << " rows could not be used; --rejects FILE writes them out\n";
  }
  bool const refused = taken.counts[static_cast<std::size_t>(Taken::refused)] > 0;
  bool const failed = arguments.check_vouchers && result.failed > 0;
  return refused || failed ? kFindings : kNothingToReport;
}

}  // namespace

void add_redetermine(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand(
      "redetermine", "Re-key an archive: which specimens change, why, and what to look at");
  auto arguments = std::make_shared<RedetermineArguments>();
  auto style = std::make_shared<StyleOptions>();
  command->add_option("OLD", arguments->old_edition, "The edition the names were given by")
      ->type_name("")
      ->required();
  command->add_option("NEW", arguments->new_edition, "The edition to re-key by")
      ->type_name("")
      ->required();
  command
      ->add_option("SPECIMENS", arguments->archive,
                   "Archive: Darwin Core occurrences as CSV or TSV, plain or gzip; or a Darwin "
                   "Core archive: its zip file, folder or meta.xml")
      ->type_name("")
      ->required();
  add_side_table_options(*command, arguments->tables);
  auto const file = [&](char const* name, std::string& target, char const* about) {
    command->add_option(name, target, about)->type_name("FILE");
  };
  file("--measurements", arguments->measurements, "Measurement rows beside the archive (CSV)");
  file("--citations", arguments->citations,
       "Which cited work is which edition (CSV): a name is judged by the edition that gave it");
  file("--look-alikes", arguments->look_alikes,
       "Specimens from outside the scope, to run through both editions (CSV)");
  file("--worklist", arguments->worklist, "Write the sheets to look at as CSV, in storage order");
  file("--worklist-html", arguments->worklist_page,
       "Write them as a page to print, with boxes to tick");
  file("--specimens", arguments->specimens, "Write one row per specimen as CSV, in input order");
  file("--summaries", arguments->summaries,
       "Write the sums by name, storage, people, decade, region (CSV)");
  file("--html", arguments->html, "Write the report as one HTML file");
  file("--json", arguments->json, "Write the result as JSON");
  file("--rejects", arguments->rejects, "Write the rows that could not be used as CSV");
  add_take_back_options(*command, arguments->take_back);
  command->add_flag("--all-are-vouchers", arguments->all_are_vouchers,
                    "Take every specimen for a voucher: it must key out to its name");
  command
      ->add_option("--threads", arguments->threads,
                   "Threads that judge specimens; nothing that is written hangs on their number "
                   "(default: one for each core)")
      ->type_name("NUMBER")
      ->check(CLI::Range(1, 16).description(""));
  command->add_flag("--check-vouchers", arguments->check_vouchers,
                    "Exit status 1 when a type or voucher does not key out to its name");
  add_reading_option(*command, arguments->reading);
  add_style_options(*command, style);
  command->footer(
      "Nothing in the archive is changed: a re-keyed name is a hypothesis until somebody looks.\n"
      "With --take-back the archive is read twice, and the exit status is 1 when a row was "
      "refused.\n"
      "\n"
      "Examples:\n"
      "  keydrift redetermine key-1998.txt key-2024.txt sheets.csv \\\n"
      "      --worklist worklist.csv\n"
      "  keydrift redetermine flora@v1998:key.txt flora@v2024:key.txt sheets.csv.gz \\\n"
      "      --lexicon lexicon.csv --concepts concepts.csv --html report.html \\\n"
      "      --specimens outcomes.csv --look-alikes strays.csv --check-vouchers\n"
      "  keydrift redetermine key-1998.txt key-2024.txt sheets.csv \\\n"
      "      --take-back worklist.csv --identifications history.csv \\\n"
      "      --take-back-log log.csv --worklist next.csv");
  command->callback([arguments, style, &invocation] {
    invocation.run = [arguments, style](Context& context) {
      return redetermine(*arguments, *style, context);
    };
  });
}

}  // namespace keydrift::program
