#include "keydrift/reports/worklist_html.hpp"

#include <fmt/format.h>

#include <set>

#include "keydrift/reports/html_writer.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/worklist_assets.hpp"

namespace keydrift {

using namespace reports;
namespace {

void write_estimate(HtmlWriter& html, Redetermination const& result) {
  std::set<std::string> places;
  for (auto const& group : result.worklist) places.insert(group.storage);
  html.element("p", fmt::format("{} to pull from {}, with {} to answer.",
                                counted(result.sheets_to_look_at, "sheet"),
                                counted(places.size(), "place"),
                                counted(result.different_questions, "different question")))
      .raw("\n");
  html.element("p",
               "Tick one box a sheet, or write the name if no box fits; add your name and the "
               "day. Then enter the lines into the worklist's CSV file, where the columns are "
               "called answer, newName, by and date.",
               "class=\"key\"")
      .raw("\n");
}

}  // namespace

std::string worklist_html_begin(Edition const& old_edition, Edition const& new_edition,
                                Redetermination const& result) {
  auto const called = edition_names(old_edition, new_edition);
  auto const title =
      fmt::format("Worklist: sheets to look at, {} to {}", called.old_name, called.new_name);
  auto const head = html_head(title, kWorklistStyle, kWorklistStyleHash);
  HtmlWriter html;
  html.element("h1", title).raw("\n");
  write_estimate(html, result);
  return head + std::move(html).take();
}

void append_group_begin(std::string& out, Edition const& new_edition, Redetermination const& result,
                        WorkGroup const& group, bool first_of_storage) {
  HtmlWriter html;
  std::string const place = group.storage.empty() ? "No storage location" : group.storage;
  if (first_of_storage) html.element("h2", place).raw("\n");
  html.raw(
      "<table><colgroup><col><col><col><col><col><col></colgroup>\n"
      "<thead><tr><th colspan=\"3\" class=\"q\">");
  html.text(capitalised(question_in_words(result.verdicts[group.verdict], new_edition)));
  html.raw("<th colspan=\"3\" class=\"p\">").text(place);
  html.raw(
      "\n<tr><th>number<th>name on the sheet<th>answer<th>new name<th>by<th>date</thead><tbody>\n");
  out += std::move(html).take();
}

void append_group_end(std::string& out) { out += "</tbody></table>\n"; }

std::string worklist_html_end() { return "</body>\n</html>\n"; }

std::string answer_boxes(Verdict const& verdict) {
  HtmlWriter html;
  html.raw("<td class=\"a\">");
  if (!verdict.questions.empty()) {
    for (auto const& answer : verdict.questions.front().answers) {
      html.raw("<span><i></i>").text(answer.words).raw("</span> ");
    }
  }
  html.raw("<span><i></i>not visible</span>");
  for (auto const* column : {"w", "b", "d"}) {
    html.raw("<td class=\"").raw(column).raw("\"><span class=\"f\"></span>");
  }
  html.raw("\n");
  return std::move(html).take();
}

void append_work_line(std::string& out, Specimen const& specimen, std::string_view boxes) {
  out += "<tr><td class=\"n\">";
  append_escaped(out, specimen_name(specimen));
  out += "<td class=\"s\">";
  append_escaped(out, specimen.scientific_name);
  if (auto const mark = type_or_voucher(specimen); !mark.empty()) {
    out += "<b>";
    append_escaped(out, mark);
    out += "</b>";
  }
  out += boxes;
}

}  // namespace keydrift
