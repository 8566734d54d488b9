// A key in CommonMark (spec 0.31: https://spec.commonmark.org/0.31/).

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "keydrift/reports/key_pages.hpp"
#include "keydrift/reports/key_parts.hpp"

namespace keydrift {
namespace {

using namespace reports;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Foreign words within a line: what CommonMark (and its widespread extensions: tables, struck-out
// words, formulas) would take for markup gets a backslash (spec, 2.4), line ends become blanks.
std::string in_line(std::string_view text) {
  static constexpr std::string_view kMarkup{"\\`*_[]<>&~|$"};
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char const c = text[i];
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
      out += ' ';
      continue;
    }
    // "![" would be an image; "[" is escaped anyhow, but a "!" before it stays as it is.
    if (kMarkup.find(c) != std::string_view::npos) out += '\\';
    out += c;
  }
  return out;
}

// Foreign words at the front of a line: what would open a list, a heading or a ruled line.
std::string at_front(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  auto out = in_line(text);
  if (out.empty()) return out;
  if (std::string_view{"#+-=:"}.find(out[0]) != std::string_view::npos) return '\\' + out;
  std::size_t digits = 0;
  while (digits < out.size() && is_digit(out[digits])) ++digits;
  if (digits > 0 && digits < out.size() && (out[digits] == '.' || out[digits] == ')')) {
    out.insert(digits, 1, '\\');
  }
  return out;
}

// A heading's closing row of "#" (spec, 4.2) belongs to the words.
std::string in_heading(std::string_view text) {
  auto out = in_line(text);
  if (!out.empty() && out.back() == '#') out.insert(out.size() - 1, 1, '\\');
  return out;
}

class Markdown {
 public:
  explicit Markdown(Edition const& edition) : edition_{edition} {}

  std::string write() && {
    out_ += "# " + in_heading(page_title(edition_)) + "\n";
    if (auto const line = byline(edition_.front); !line.empty()) {
      out_ += "\n" + at_front(line) + "\n";
    }
    write_front();
    auto const between = between_couplets(edition_);
    for (std::size_t c = 0; c < edition_.couplets.size(); ++c) {
      write_between(between[c]);
      write_couplet(edition_.couplets[c]);
    }
    write_between(between.back());
    write_unnamed();
    return std::move(out_);
  }

 private:
  // Lines of one paragraph; a backslash at the end breaks the line (spec, 6.7).
  void write_lines(std::vector<std::string> const& lines) {
    if (lines.empty()) return;
    out_ += '\n';
    for (std::size_t i = 0; i < lines.size(); ++i) {
      out_ += lines[i] + (i + 1 < lines.size() ? "\\\n" : "\n");
    }
  }

  void write_front() {
    std::vector<std::string> lines;
    for (auto const& [name, value] : lines_below_title(edition_.front)) {
      lines.push_back("**" + in_line(name) + "** " + in_line(value));
    }
    write_lines(lines);
  }

  void write_between(std::vector<Between> const& between) {
    for (auto const& one : between) {
      if (!one.title) {
        out_ += "\n" + at_front(edition_.notes[one.index].text) + "\n";
      } else if (edition_.parts[one.index].title != page_title(edition_)) {
        out_ += "\n## " + in_heading(edition_.parts[one.index].title) + "\n";
      }
    }
  }

  void write_couplet(Couplet const& couplet) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < couplet.leads.size(); ++i) {
      auto const& lead = couplet.leads[i];
      auto line = "**" + (i == 0 ? in_line(couplet.label) : std::string{"–"}) + "** ";
      if (i == 0) line += back_references(couplet);
      line += in_line(lead.text);
      auto const destination = destination_of(lead);
      if (!destination.empty()) line += " … " + destination;
      lines.push_back(std::move(line));
      for (auto const& note : lead.notes) lines.push_back("Note: " + in_line(note));
    }
    for (auto const& note : couplet.notes) {
      lines.push_back("Note on couplet " + in_line(couplet.label) + ": " + in_line(note));
    }
    write_lines(lines);
  }

  [[nodiscard]] static std::string back_references(Couplet const& couplet) {
    std::string text;
    for (auto const& one : couplet.back_references) {
      text += (text.empty() ? "(" : ", ") + in_line(one.label);
    }
    return text.empty() ? text : text + ") ";
  }

  [[nodiscard]] std::string destination_of(Lead const& lead) {
    std::string text;
    bool remark_first = false;
    if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
      remark_first = true;  // "Aus group, 6"
      text = "**" + in_line(edition_[couplet->couplet].label) + "**";
    } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
      text = "**" + in_line(key->key) + "**";
    } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
      for (std::size_t i = 0; i < taxa->taxa.size(); ++i) {
        if (i > 0) text += i + 1 == taxa->taxa.size() ? " or " : ", ";
        text += taxon_text(taxa->taxa[i]);
      }
    } else {
      text = in_line(std::get<Unresolved>(lead.destination).printed);
    }
    if (auto const& remark = lead.taxon_remark; !remark.empty()) {
      text = remark_first ? in_line(remark) + ", " + text
                          : text + (text.empty() ? "" : ", ") + in_line(remark);
    }
    for (auto const& figure : further_figures(lead)) text += " (" + in_line(figure) + ")";
    return text;
  }

  [[nodiscard]] std::string taxon_text(TaxonId id) {
    auto const& taxon = edition_[id];
    auto text = in_line(taxon.name);
    // Signs beside letters would not open emphasis (spec, 6.2), and names have none.
    if (is_set_in_italics(taxon.name)) text = "*" + text + "*";
    if (named_.size() < edition_.taxa.size()) named_.resize(edition_.taxa.size());
    if (!named_[id.index] && !taxon.authorship.empty()) text += " " + in_line(taxon.authorship);
    named_[id.index] = true;
    return text;
  }

  void write_unnamed() {
    auto const unnamed = unnamed_taxa(edition_);
    if (unnamed.empty()) return;
    out_ += "\nTaxa to which no lead leads: ";
    for (std::size_t i = 0; i < unnamed.size(); ++i) {
      out_ += (i == 0 ? "" : "; ") + taxon_text(unnamed[i]);
    }
    out_ += "\n";
  }

  Edition const& edition_;
  std::vector<bool> named_;  // taxa whose author has been printed
  std::string out_;
};

}  // namespace

std::string key_markdown(Edition const& edition) { return Markdown{edition}.write(); }

}  // namespace keydrift
