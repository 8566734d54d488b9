#include "keydrift/reports/worklist_html.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

#include "keydrift/reports/html_writer.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/worklist_assets.hpp"

namespace keydrift {

using namespace reports;
namespace {

class WorklistPage {
 public:
  WorklistPage(Edition const& old_edition, Edition const& new_edition,
               Redetermination const& result)
      : new_edition_{new_edition},
        result_{result},
        called_{edition_names(old_edition, new_edition)} {}

  std::string write() && {
    auto const title =
        fmt::format("Worklist: sheets to look at, {} to {}", called_.old_name, called_.new_name);
    html_.element("h1", title).raw("\n");
    write_estimate();
    std::string const* storage = nullptr;
    for (auto const& group : result_.worklist) {
      if (storage == nullptr || *storage != group.storage) {
        html_.element("h2", group.storage.empty() ? "No storage location" : group.storage)
            .raw("\n");
        storage = &group.storage;
      }
      write_group(group);
    }
    return framed(title, std::move(html_).take());
  }

 private:
  void write_estimate() {
    std::set<std::string_view> places;
    std::set<std::string_view> questions;
    for (auto const& group : result_.worklist) {
      places.insert(group.storage);
      questions.insert(group.question);
    }
    html_
        .element("p", fmt::format("{} to pull from {}, with {} to answer.",
                                  counted(result_.to_look_at.size(), "sheet"),
                                  counted(places.size(), "place"),
                                  counted(questions.size(), "different question")))
        .raw("\n");
    html_
        .element("p",
                 "Tick one box a sheet, or write the name if no box fits; add your name and the "
                 "day. Then enter the lines into the worklist's CSV file, where the columns are "
                 "called answer, newName, by and date.",
                 "class=\"key\"")
        .raw("\n");
  }

  void write_group(WorkGroup const& group) {
    auto const& first = result_.to_look_at[group.specimens.front()];
    auto const& verdict = result_.verdicts[first.verdict];
    html_.element("h3", capitalised(question_in_words(verdict, new_edition_))).raw("\n");
    html_.raw(
        "<table><thead><tr><th>number<th>name on the sheet<th>answer<th>new name<th>by<th>date"
        "</thead><tbody>\n");
    for (auto const index : group.specimens) {
      auto const& outcome = result_.to_look_at[index];
      write_sheet(outcome, result_.verdicts[outcome.verdict]);
    }
    html_.raw("</tbody></table>\n");
  }

  void write_sheet(SpecimenOutcome const& outcome, Verdict const& verdict) {
    html_.raw("<tr><td class=\"n\">").text(specimen_name(outcome.specimen));
    html_.raw("<td class=\"s\">").text(outcome.specimen.scientific_name);
    if (auto const mark = type_or_voucher(outcome.specimen); !mark.empty()) {
      html_.element("b", mark);
    }
    html_.raw("<td class=\"a\">");
    if (!verdict.questions.empty()) {
      for (auto const& answer : verdict.questions.front().answers) {
        html_.raw("<span><i></i>").text(answer.words).raw("</span> ");
      }
    }
    html_.raw("<span><i></i>not visible</span>");
    for (auto const* column : {"w", "b", "d"}) {
      html_.raw("<td class=\"").raw(column).raw("\"><span class=\"f\"></span>");
    }
    html_.raw("\n");
  }

  static std::string framed(std::string_view title, std::string const& body) {
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n";
    out += "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src '";
    out += kWorklistStyleHash;
    out += "'; img-src data:; base-uri 'none'; form-action 'none'\">\n";
    out += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
    out += "<link rel=\"icon\" href=\"data:,\">\n<title>";
    append_escaped(out, title);
    out += "</title>\n<style>";
    out += kWorklistStyle;
    out += "</style>\n</head>\n<body>\n";
    out += body;
    out += "</body>\n</html>\n";
    return out;
  }

  Edition const& new_edition_;
  Redetermination const& result_;
  EditionNames called_;
  HtmlWriter html_;
};

}  // namespace

std::string worklist_html(Edition const& old_edition, Edition const& new_edition,
                          Redetermination const& redetermination) {
  return WorklistPage{old_edition, new_edition, redetermination}.write();
}

}  // namespace keydrift
