// What becomes of the specimens, as sections of an HTML page.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "keydrift/reports/html_parts.hpp"
#include "keydrift/reports/taken_back.hpp"
#include "keydrift/reports/wording_editions.hpp"

namespace keydrift::reports {
namespace {

std::uint64_t total(Redetermination const& result, std::initializer_list<Outcome> outcomes) {
  std::uint64_t sum = 0;
  for (auto const outcome : outcomes) sum += result.totals[static_cast<std::size_t>(outcome)];
  return sum;
}

// "HLVN 0012 (holotype of …)", types and vouchers marked.
void write_sheet(HtmlWriter& html, Specimen const& specimen) {
  html.raw("<span class=\"outcome-word\">").text(specimen_name(specimen));
  auto const special = type_or_voucher(specimen);
  if (!special.empty()) html.raw(" <b>(").text(special).raw(")</b>");
  html.raw("</span>");
}

// Groups of equal question, whatever the storage: for reading at the desk.  The worklist CSV has
// the order of the cabinets.
struct QuestionGroup {
  std::size_t verdict{};
  std::vector<std::size_t> specimens;
};

void write_question(HtmlWriter& html, CollationView const& view, Redetermination const& result,
                    QuestionGroup const& group, HtmlLimits const& limits) {
  auto const& verdict = result.verdicts[group.verdict];
  html.raw("<div class=\"work\" data-row>\n<h3><i class=\"taxon\">");
  html.text(taxon_names(view.old_edition, verdict.old_taxa, ", "));
  html.raw("</i> — ").text(to_word(verdict.outcome));
  html.text(fmt::format(", {}", counted(group.specimens.size(), "sheet"))).raw("</h3>\n");
  html.element("p", sentence(capitalised(reason(verdict, view.old_edition, view.new_edition))));
  if (!verdict.questions.empty()) {
    auto const& question = verdict.questions.front();
    html.raw("<p>Look at <b>").text(question.label).raw("</b> (");
    html.text(to_word(question.difficulty)).raw("):</p>\n<ul class=\"plain answers\">\n");
    for (auto const& answer : question.answers) {
      html.raw("<li>").text(answer.words).raw(" → ");
      html.text(follows(verdict, answer, view.new_edition)).raw("</li>\n");
    }
    html.raw("</ul>\n");
    if (verdict.questions.size() > 1) {
      html.element("p", sentence(capitalised(look_at(verdict, view.new_edition))),
                   "class=\"small\"");
    }
  }
  std::map<std::string, std::vector<std::size_t>> shelves;
  std::vector<std::string> order;
  for (auto const i : group.specimens) {
    auto const& storage = result.to_look_at[i].specimen.storage;
    auto const [at, fresh] = shelves.try_emplace(storage);
    if (fresh) order.push_back(storage);
    at->second.push_back(i);
  }
  html.raw("<p class=\"sheets\">");
  std::size_t named = 0;
  for (auto const& storage : order) {
    if (named >= limits.specimens_per_group) break;
    html.raw("<span class=\"sub\">");
    html.text(storage.empty() ? "no storage recorded" : storage).raw(":</span> ");
    bool first = true;
    for (auto const i : shelves[storage]) {
      if (named++ >= limits.specimens_per_group) break;
      if (!first) html.raw(", ");
      first = false;
      write_sheet(html, result.to_look_at[i].specimen);
    }
    html.raw(". ");
  }
  if (group.specimens.size() > limits.specimens_per_group) {
    html.text(fmt::format("And {} more: see the worklist.",
                          grouped(group.specimens.size() - limits.specimens_per_group)));
  }
  html.raw("</p>\n</div>\n");
}

std::vector<QuestionGroup> group_by_question(CollationView const& view,
                                             Redetermination const& result) {
  // In the order of the worklist: types first, then storage, then cost.  Verdicts that differ only
  // in what else is recorded ask the same.
  std::vector<QuestionGroup> groups;
  std::map<std::string, std::size_t> known;
  for (auto const& work : result.worklist) {
    for (auto const i : work.specimens) {
      auto const verdict = result.to_look_at[i].verdict;
      auto const& told = result.verdicts[verdict];
      auto const key = fmt::format("{}|{}|{}", to_word(told.outcome),
                                   taxon_names(view.old_edition, told.old_taxa), work.question);
      auto const [at, fresh] = known.try_emplace(key, groups.size());
      if (fresh) groups.push_back({verdict, {}});
      groups[at->second].specimens.push_back(i);
    }
  }
  return groups;
}

}  // namespace

void write_outcomes(HtmlWriter& html, CollationView const& view, Redetermination const& result) {
  html.open_section("outcomes", "What becomes of the specimens");
  html.raw(
      "<table><thead><tr><th>outcome</th><th class=\"n\">specimens</th><th class=\"n\">share</th>"
      "<th></th><th>which means</th></tr></thead><tbody>\n");
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    auto const outcome = static_cast<Outcome>(i);
    auto const number = result.totals[i];
    html.raw("<tr><td class=\"outcome-word\">").text(to_word(outcome));
    html.raw("</td><td class=\"n\">").text(grouped(number));
    html.raw("</td><td class=\"n\">").text(share(number, result.read)).raw("</td><td>");
    if (number > 0) {
      // A picture of the share, drawn in characters so that it needs no style of its own.
      auto const bars =
          std::max<std::uint64_t>(1, number * 20 / std::max<std::uint64_t>(1, result.read));
      for (std::uint64_t b = 0; b < bars; ++b) html.raw("▬");
    }
    html.raw("</td><td>").text(meaning_of(outcome)).raw("</td></tr>\n");
  }
  html.raw("</tbody></table>\n");
  html.raw("<div class=\"figures\">\n");
  auto const figure = [&](std::string_view left, std::string const& right) {
    html.raw("<div><span>").text(left).raw("</span><span class=\"dots\"></span><span class=\"n\">");
    html.text(right).raw("</span></div>\n");
  };
  figure("Records read", grouped(result.read));
  if (result.rejected > 0) figure("Rows set aside as unreadable", grouped(result.rejected));
  figure("Names to update without looking", grouped(total(result, {Outcome::renamed})));
  figure("Sheets that somebody must look at", grouped(result.sheets_to_look_at));
  figure("Judged by name alone", grouped(result.name_only));
  figure("Judged by recorded characters as well", grouped(result.with_characters));
  figure("Outcomes that depend on how a lead is read", grouped(result.reading_dependent));
  html.raw("</div>\n");
  if (result.reading_dependent > 0) {
    html.raw("<p class=\"small\">");
    html.text(fmt::format("The reading used is {}. ", to_word(result.reading)));
    std::vector<std::string> couplets;
    for (auto const& dependence : result.reading_couplets) {
      if (couplets.size() == 12) break;
      couplets.push_back(fmt::format("couplet {} ({})", view.new_edition[dependence.couplet].label,
                                     grouped(dependence.specimens)));
    }
    if (!couplets.empty()) html.text(fmt::format("It matters at {}.", enumerated(couplets)));
    html.raw("</p>\n");
  }
  html.element("p", examined_in_words(result));
  html.close_section();
}

void write_specimens(HtmlWriter& html, CollationView const& view, Redetermination const& result,
                     HtmlLimits const& limits) {
  html.open_section("specimens", "Sheets to look at");
  auto const groups = group_by_question(view, result);
  if (groups.empty()) html.element("p", "None.", "class=\"none\"");
  std::size_t left_sheets = 0;
  for (std::size_t i = 0; i < groups.size(); ++i) {
    if (i < limits.groups) {
      write_question(html, view, result, groups[i], limits);
    } else {
      left_sheets += groups[i].specimens.size();
    }
  }
  if (left_sheets > 0) {
    html.element("p",
                 fmt::format("And {} in {} more: see the worklist.", counted(left_sheets, "sheet"),
                             counted(groups.size() - limits.groups, "question")));
  }
  if (result.sheets_to_look_at > result.to_look_at.size()) {
    html.element("p",
                 fmt::format("Sheets are told by their numbers for the first {} of {}: all "
                             "stand in the worklist.",
                             grouped(result.to_look_at.size()), grouped(result.sheets_to_look_at)));
  }
  html.close_section();

  html.open_section("names", "From name to name");
  html.raw(
      "<table><thead><tr><th>recorded name means, in the old edition</th>"
      "<th>may key, in the new edition, to</th><th>outcomes</th>"
      "<th class=\"n\">specimens</th></tr></thead><tbody>\n");
  std::size_t rows = 0;
  for (auto const& row : result.from_to) {
    if (rows++ >= limits.from_to_rows) break;
    html.raw("<tr data-row><td>").text(row.from.empty() ? "(no name)" : row.from);
    html.raw("</td><td>").text(row.to.empty() ? "–" : few_names(row.to)).raw("</td><td>");
    std::vector<std::string> outcomes;
    for (std::size_t i = 0; i < kOutcomes; ++i) {
      if (row.by_outcome[i] == 0) continue;
      outcomes.push_back(
          row.by_outcome[i] == row.specimens
              ? std::string{to_word(static_cast<Outcome>(i))}
              : fmt::format("{} {}", to_word(static_cast<Outcome>(i)), grouped(row.by_outcome[i])));
    }
    html.text(fmt::format("{}", fmt::join(outcomes, ", ")));
    html.raw("</td><td class=\"n\">").text(grouped(row.specimens)).raw("</td></tr>\n");
  }
  html.raw("</tbody></table>\n");
  if (result.from_to.size() > limits.from_to_rows) {
    html.element("p", fmt::format("And {} more rows: see the JSON.",
                                  grouped(result.from_to.size() - limits.from_to_rows)));
  }
  html.close_section();
}

void write_expectations(HtmlWriter& html, CollationView const& view,
                        Redetermination const& result) {
  html.open_section("tests", "Types, vouchers and look-alikes");
  html.element("p", fmt::format("{} marked as type or voucher; {} not key out to their names.",
                                counted(result.expected, "specimen is", "specimens are"),
                                result.failed == 0 ? "none does" : grouped(result.failed) + " do"));
  if (!result.failures.empty()) {
    html.raw("<ul class=\"plain\">\n");
    for (auto const& failure : result.failures) {
      auto const& outcome = result.expectations[failure.specimen];
      html.raw("<li data-row>");
      write_sheet(html, outcome.specimen);
      html.raw(", <i class=\"taxon\">").text(outcome.specimen.scientific_name).raw("</i>: ");
      html.text(
          sentence(reason(result.verdicts[outcome.verdict], view.old_edition, view.new_edition)));
      html.raw("</li>\n");
    }
    html.raw("</ul>\n");
    if (result.failed > result.failures.size()) {
      html.element("p",
                   fmt::format("And {} more.", grouped(result.failed - result.failures.size())));
    }
  }
  if (!result.look_alikes.empty()) {
    html.raw(
        "<table><caption>Look-alikes from outside the "
        "scope</caption><thead><tr><th>look-alike</th><th>");
    html.text("in " + view.called.old_name).raw("</th><th>");
    html.text("in " + view.called.new_name).raw("</th><th>partly fits</th></tr></thead><tbody>\n");
    auto const cell = [&](Edition const& edition, std::vector<TaxonId> const& taxa,
                          std::optional<CoupletId> const& stop) {
      html.raw("<td>");
      if (!taxa.empty()) {
        html.text("slips through as " + taxon_names(edition, taxa, " or "));
      } else if (stop) {
        html.text("stopped at couplet " + edition[*stop].label);
      } else {
        html.text("stopped");
      }
      html.raw("</td>");
    };
    for (auto const& look_alike : result.look_alikes) {
      html.raw("<tr data-row><td>").text(specimen_name(look_alike.specimen));
      html.raw(", <i class=\"taxon\">").text(look_alike.specimen.scientific_name).raw("</i></td>");
      cell(view.old_edition, look_alike.old_taxa, look_alike.old_stop);
      cell(view.new_edition, look_alike.new_taxa, look_alike.new_stop);
      html.raw("<td class=\"small\">");
      for (std::size_t i = 0; i < look_alike.partly.size() && i < 4; ++i) {
        if (i > 0) html.raw("; ");
        html.text(partial_fit_in_words(look_alike.partly[i], view.old_edition, view.new_edition));
      }
      if (look_alike.partly.size() > 4) {
        html.text(fmt::format("; and {} more", look_alike.partly.size() - 4));
      }
      html.raw("</td></tr>\n");
    }
    html.raw("</tbody></table>\n");
  }
  html.close_section();
}

namespace {

void write_count(HtmlWriter& html, std::string_view what, std::uint64_t count) {
  html.raw("<tr><td>").text(what).raw("</td><td class=\"n\">").text(grouped(count));
  html.raw("</td></tr>\n");
}

void write_editions_used(HtmlWriter& html, CollationView const& view,
                         Redetermination const& result) {
  auto const words = editions_in_words(result.editions, view.called.old_name, view.called.new_name);
  html.raw("<table class=\"small\"><caption>Determined with</caption><tbody>\n");
  for (auto const& line : words.lines) write_count(html, line.what, line.specimens);
  for (auto const& work : words.unnamed_works) {
    write_count(html, in_curly_quotes(work.what), work.specimens);
  }
  html.raw("</tbody></table>\n");
  if (words.more_works > 0) {
    html.element("p", fmt::format("And {} in the JSON.", counted(words.more_works, "more work")));
  }
  if (!words.advice.empty()) html.element("p", words.advice);
}

void write_archive(HtmlWriter& html, ArchiveCounts const& archive) {
  if (archive.history) {
    html.raw(
        "<table class=\"small\"><caption>Name taken from the history of "
        "determinations</caption><tbody>\n");
    for (auto const& line : choices_in_words(*archive.history)) {
      write_count(html, line.what, line.specimens);
    }
    html.raw("</tbody></table>\n");
  }
  if (archive.repeated_ids == 0) return;
  html.element("p", fmt::format("{} the number or id of an earlier row; all are used.",
                                counted(archive.repeated_ids, "row has", "rows have")));
  html.raw("<ul class=\"plain small\">\n");
  for (auto const& repeat : archive.repeats) html.element("li", repeat_in_words(repeat));
  if (archive.repeated_ids > archive.repeats.size()) {
    html.element("li", fmt::format("and {}", counted(archive.repeated_ids - archive.repeats.size(),
                                                     "more row")));
  }
  html.raw("</ul>\n");
}

void write_footing(HtmlWriter& html, CollationView const& view, Redetermination const& result) {
  html.open_section("rests-on", "What the outcomes rest on");
  html.raw("<table class=\"small\"><tbody>\n");
  for (std::size_t i = 0; i < kFootings; ++i) {
    std::uint64_t count = 0;
    for (auto const each : result.by_footing[i]) count += each;
    if (count > 0) write_count(html, meaning_of(static_cast<Footing>(i)), count);
  }
  for (auto const& tie : ties_in_words(result)) write_count(html, tie.what, tie.records);
  html.raw("</tbody></table>\n");
  write_editions_used(html, view, result);
  write_archive(html, result.archive);
  html.close_section();
}

}  // namespace
}  // namespace keydrift::reports

namespace keydrift {

using namespace reports;

std::string redetermination_html(Edition const& old_edition, Edition const& new_edition,
                                 Collation const& collation, Redetermination const& redetermination,
                                 HtmlLimits const& limits) {
  CollationView const view{old_edition, new_edition, collation,
                           edition_names(old_edition, new_edition),
                           CharacterLabels{collation.characters}};
  HtmlWriter html;
  auto const title =
      fmt::format("From {} to {}: the archive", view.called.old_name, view.called.new_name);
  html.raw("<header>\n").element("h1", title).raw("\n");
  html.element("p", new_edition.front.title, "class=\"sub\"");
  html.raw("</header>\n");
  write_contents(html, true);
  html.element("p", caution(), "class=\"caution\"");
  write_outcomes(html, view, redetermination);
  write_editions(html, view);
  write_specimens(html, view, redetermination, limits);
  write_expectations(html, view, redetermination);
  write_collation_summary(html, view);
  write_taxa(html, view);
  write_roles(html, view);
  write_couplets(html, view);
  write_faults(html, view);
  write_coverage(html, view);
  write_footing(html, view, redetermination);
  return html_page(title, std::move(html).take());
}

}  // namespace keydrift
