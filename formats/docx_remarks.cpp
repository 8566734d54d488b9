#include "keydrift/formats/docx_remarks.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "keydrift/formats/docx_xml.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/wording.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::docx {
namespace {

constexpr std::size_t kMostPlaces = 20;  // more would bury the first
constexpr std::size_t kShown = 80;       // bytes of printed words

using tables::counted;

std::string shown(std::string_view text) {
  auto const squeezed = printed::squeeze(text);
  auto const start = printed::start_of(squeezed, kShown);
  return std::string{start} + (start.size() < squeezed.size() ? "…" : "");
}

Place place_of_mark(Marked const& mark) {
  return {.line = mark.number, .column = mark.column, .begin = 0, .end = 0};
}

// All text of runs below a node, without the codes of fields.
std::string text_below(pugi::xml_node root) {
  struct Gather : pugi::xml_tree_walker {
    std::string text;
    bool for_each(pugi::xml_node& node) override {
      if (xml::local_name(node) == "t") text += node.text().get();
      return text.size() < 4096;
    }
  };
  Gather gather;
  root.traverse(gather);
  return gather.text;
}

class Remarks {
 public:
  Remarks(std::string_view file, std::vector<Marked> const& marks) : file_{file} {
    for (auto const& mark : marks) by_kind_[mark.mark].push_back(&mark);
  }

  [[nodiscard]] std::vector<Marked const*> const& all(Mark kind) { return by_kind_[kind]; }

  Finding& add(std::string code, Severity severity, std::string message, std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = std::string{file_};
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    return findings_.emplace_back(std::move(finding));
  }
  // About these marks: the first is its place, some others are related.
  Finding& add_about(std::vector<Marked const*> const& marks, std::string code, Severity severity,
                     std::string message, std::string remedy) {
    auto& finding = add(std::move(code), severity, std::move(message), std::move(remedy));
    finding.place = place_of_mark(*marks.front());
    std::uint32_t last = marks.front()->number;
    for (auto const* mark : marks) {
      if (mark->number == last || finding.related.size() == kMostPlaces) continue;
      last = mark->number;
      finding.related.push_back({place_of_mark(*mark), "here too"});
    }
    return finding;
  }
  std::vector<Finding> take() { return std::move(findings_); }

 private:
  std::string_view file_;
  std::map<Mark, std::vector<Marked const*>> by_kind_;
  std::vector<Finding> findings_;
};

void report_changes(Remarks& remarks) {
  std::vector<Marked const*> changes;
  std::vector<std::string> counts;
  auto const take = [&](Mark kind, char const* one, char const* several) {
    auto const& all = remarks.all(kind);
    if (all.empty()) return;
    counts.push_back(counted(all.size(), one, several));
    changes.insert(changes.end(), all.begin(), all.end());
  };
  take(Mark::insertion, "insertion", "insertions");
  take(Mark::deletion, "deletion", "deletions");
  take(Mark::move, "move", "moves");
  if (changes.empty()) return;
  std::stable_sort(changes.begin(), changes.end(), [](auto const* a, auto const* b) {
    return std::pair{a->number, a->column} < std::pair{b->number, b->column};
  });
  std::string first;
  std::string last;
  for (auto const* change : changes) {
    if (change->text.empty()) continue;
    if (first.empty() || change->text < first) first = change->text;
    last = std::max(last, change->text);
  }
  auto message = "tracked changes are read as accepted: " + in_prose(counts);
  if (!first.empty()) message += first == last ? " of " + first : " of " + first + " to " + last;
  remarks.add_about(changes, "tracked-changes", Severity::information, std::move(message),
                    "accept or reject them in the word processor if that is not what is meant");
}

void report_losses(Remarks& remarks, Numbering const& numbering) {
  if (auto const& all = remarks.all(Mark::hidden_text); !all.empty()) {
    auto& finding = remarks.add_about(
        all, "hidden-text", Severity::warning,
        "hidden text was left out" +
            (all.size() == 1 ? std::string{} : " at " + std::to_string(all.size()) + " places"),
        "unhide it in the word processor if it belongs to the key");
    finding.printed = shown(all.front()->text);
  }
  if (auto const& all = remarks.all(Mark::struck_text); !all.empty()) {
    auto& finding = remarks.add_about(
        all, "struck-text", Severity::warning,
        "text that is struck through was read like any other" +
            (all.size() == 1 ? std::string{} : ", at " + std::to_string(all.size()) + " places"),
        "delete it in the word processor if it does not belong to the key");
    finding.printed = shown(all.front()->text);
  }
  if (auto const& all = remarks.all(Mark::unknown_symbol); !all.empty()) {
    auto const& font = all.front()->text;
    remarks.add_about(
        all, "unknown-symbol", Severity::warning,
        (all.size() == 1 ? "a symbol" : std::to_string(all.size()) + " symbols") +
            std::string{font.empty() ? " of an unnamed font" : " of the font " + in_quotes(font)} +
            " cannot be told and " + (all.size() == 1 ? "is" : "are") + " read as \"□\"",
        "type the character itself in the word processor");
  }
  if (auto const& all = remarks.all(Mark::open_field); !all.empty()) {
    auto& finding = remarks.add_about(all, "damaged-field", Severity::warning,
                                      "a field does not end; its code was kept as text",
                                      "update the fields in the word processor and save it again");
    finding.printed = shown(all.front()->text);
  }
  if (auto const& all = remarks.all(Mark::embedded); !all.empty()) {
    remarks.add_about(all, "embedded-document", Severity::warning,
                      "another document that is to be put in here was not read",
                      "open the manuscript in the word processor and save it again");
  }
  auto const& formats = numbering.unknown_formats();
  if (!formats.empty()) {
    std::vector<std::string> names;
    for (auto const& format : formats) names.push_back(in_quotes(format));
    remarks.add(
        "numbering-format", Severity::warning,
        "automatic numbers of the format " + in_prose(names) + " are read as decimal numbers",
        "compare the labels of the couplets with the printed manuscript");
  }
}

void report_what_stands_beside(Remarks& remarks, Package const& package) {
  if (auto const& all = remarks.all(Mark::comment); !all.empty()) {
    auto& finding = remarks.add_about(
        all, "comments", Severity::information,
        "the manuscript has " + counted(all.size(), "comment, which is", "comments, which are") +
            " not read",
        "put into the text what belongs to the key");
    if (package.comments) {
      for (auto const comment : package.comments->root().children()) {
        if (attribute(comment, "id") != all.front()->text) continue;
        finding.printed = shown(text_below(comment));
        break;
      }
    }
  }
  auto notes = remarks.all(Mark::footnote);
  auto const& endnotes = remarks.all(Mark::endnote);
  notes.insert(notes.end(), endnotes.begin(), endnotes.end());
  if (!notes.empty()) {
    remarks.add_about(
        notes, "footnotes", Severity::information,
        counted(notes.size(), "footnote was kept as a note", "footnotes were kept as notes"), "");
  }
  if (auto const& all = remarks.all(Mark::text_box); !all.empty()) {
    remarks.add_about(all, "text-boxes", Severity::information,
                      counted(all.size(), "text box was read after the paragraph that it is",
                              "text boxes were read after the paragraphs that they are") +
                          " anchored in",
                      "see whether its text is meant to stand there");
  }
  std::size_t margins = 0;
  std::string first;
  for (auto const& part : package.margins) {
    auto const text = shown(text_below(part.root()));
    if (text.empty()) continue;
    if (margins++ == 0) first = text;
  }
  if (margins > 0) {
    remarks
        .add("headers", Severity::information,
             counted(margins, "header or footer is not read", "headers and footers are not read"),
             "")
        .printed = first;
  }
}

}  // namespace

std::vector<Finding> remarks_on(std::string_view file, Package const& package,
                                std::vector<Marked> const& marks, Numbering const& numbering) {
  Remarks remarks{file, marks};
  report_changes(remarks);
  report_losses(remarks, numbering);
  report_what_stands_beside(remarks, package);
  return remarks.take();
}

}  // namespace keydrift::docx
