// A key as one HTML file.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <variant>
#include <vector>

#include "keydrift/reports/html_writer.hpp"
#include "keydrift/reports/key_assets.hpp"
#include "keydrift/reports/key_pages.hpp"
#include "keydrift/reports/key_parts.hpp"

namespace keydrift {
namespace {

using namespace reports;

constexpr std::size_t kRoomForLabel = 9;  // characters of a label with its back-references

class KeyPage {
 public:
  explicit KeyPage(Edition const& edition)
      : edition_{edition},
        parents_(edition.couplets.size(), kNone),
        named_(edition.taxa.size(), false) {
    for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
      by_label_.emplace(edition.couplets[c].label, c);
      for (auto const& lead : edition.couplets[c].leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to != nullptr && parents_[to->couplet.index] == kNone) {
          parents_[to->couplet.index] = c;
        }
      }
    }
  }

  std::string write() && {
    html_.raw("<header>\n").element("h1", page_title(edition_)).raw("\n");
    if (auto const line = byline(edition_.front); !line.empty()) {
      html_.element("p", line, "class=\"by\"").raw("\n");
    }
    html_.raw("</header>\n");
    write_front();
    html_.raw(refers_back() ? "<main class=\"refs\">\n" : "<main>\n");
    auto const between = between_couplets(edition_);
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      write_between(between[c]);
      write_couplet(c);
    }
    write_between(between.back());
    html_.raw("</main>\n");
    write_unnamed();
    return framed(std::move(html_).take());
  }

 private:
  static constexpr std::uint32_t kNone = 0xFFFFFFFFU;

  [[nodiscard]] std::string framed(std::string const& body) const {
    std::string out;
    out.reserve(body.size() + kKeyStyle.size() + 1024);
    out += "<!DOCTYPE html>\n<html lang=\"";
    append_escaped(out, edition_.front.language.empty() ? "en" : edition_.front.language);
    out += "\">\n<head>\n<meta charset=\"utf-8\">\n";
    out += "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src '";
    out += kKeyStyleHash;
    // Without an icon of its own a browser asks the server for one.
    out += "'; img-src data:; base-uri 'none'; form-action 'none'\">\n";
    out += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
    out += "<link rel=\"icon\" href=\"data:,\">\n<title>";
    append_escaped(out, page_title(edition_));
    out += "</title>\n<style>";
    out += kKeyStyle;
    out += "</style>\n</head>\n<body>\n";
    out += body;
    out += "</body>\n</html>\n";
    return out;
  }

  [[nodiscard]] bool refers_back() const {
    return std::any_of(edition_.couplets.begin(), edition_.couplets.end(),
                       [](Couplet const& couplet) { return !couplet.back_references.empty(); });
  }

  void write_front() {
    auto const lines = lines_below_title(edition_.front);
    if (lines.empty()) return;
    html_.raw("<dl class=\"front\">\n");
    for (auto const& [name, value] : lines) {
      html_.raw("<div>").element("dt", name).element("dd", value).raw("</div>\n");
    }
    html_.raw("</dl>\n");
  }

  void write_between(std::vector<Between> const& between) {
    for (auto const& one : between) {
      if (!one.title) {
        html_.element("p", edition_.notes[one.index].text, "class=\"between\"").raw("\n");
      } else if (edition_.parts[one.index].title != page_title(edition_)) {
        html_.element("h2", edition_.parts[one.index].title,
                      "id=\"k" + std::to_string(one.index + 1) + "\"");
        html_.raw("\n");
      }
    }
  }

  // --- couplets --------------------------------------------------------------------------------

  [[nodiscard]] static std::string address(std::uint32_t couplet) {
    return "#c" + std::to_string(couplet + 1);
  }

  void link(std::string const& to, std::string_view text, std::string_view title = {}) {
    html_.raw("<a href=\"" + to + "\"");
    if (!title.empty()) html_.raw(" title=\"").text(title).raw("\"");
    html_.raw(">").text(text).raw("</a>");
  }

  void write_couplet(std::uint32_t c) {
    auto const& couplet = edition_.couplets[c];
    html_.raw("<section class=\"c\" id=\"c" + std::to_string(c + 1) + "\">\n");
    for (std::uint32_t i = 0; i < couplet.leads.size(); ++i) {
      html_.raw("<div class=\"lead\">");
      write_label(c, i);
      html_.element("span", couplet.leads[i].text, "class=\"t\"").raw(" ");
      write_destination(couplet.leads[i]);
      html_.raw("</div>\n");
      for (auto const& note : couplet.leads[i].notes) {
        html_.element("p", "Note: " + note, "class=\"note\"").raw("\n");
      }
    }
    for (auto const& note : couplet.notes) {
      html_.element("p", "Note on couplet " + couplet.label + ": " + note, "class=\"note\"")
          .raw("\n");
    }
    html_.raw("</section>\n");
  }

  // The number, linked to where the couplet is reached from, and the back-references.
  void write_label(std::uint32_t c, std::uint32_t lead) {
    auto const& couplet = edition_.couplets[c];
    if (lead > 0) {
      html_.raw("<span class=\"l\">–</span>");
      return;
    }
    std::size_t width = couplet.label.size();
    for (auto const& one : couplet.back_references) width += one.label.size() + 2;
    html_.raw(width > kRoomForLabel ? "<span class=\"l wide\">" : "<span class=\"l\">");
    if (auto const parent = parents_[c]; parent != kNone) {
      link(address(parent), couplet.label, "from " + edition_.couplets[parent].label);
    } else {
      html_.text(couplet.label);
    }
    for (std::size_t b = 0; b < couplet.back_references.size(); ++b) {
      auto const& label = couplet.back_references[b].label;
      html_.raw(b == 0 ? " <span class=\"back\">(" : ", ");
      if (auto const found = by_label_.find(label); found != by_label_.end()) {
        link(address(found->second), label);
      } else {
        html_.text(label);
      }
    }
    html_.raw(couplet.back_references.empty() ? "</span>" : ")</span></span>");
  }

  void write_destination(Lead const& lead) {
    html_.raw("<span class=\"d\">");
    bool const to_couplet = std::holds_alternative<ToCouplet>(lead.destination);
    auto const& remark = lead.taxon_remark;
    if (to_couplet && !remark.empty()) html_.text(remark + ", ");  // "Aus group, 6"
    std::visit([this](auto const& to) { write_to(to); }, lead.destination);
    if (!to_couplet && !remark.empty()) html_.text(", " + remark);
    for (auto const& figure : further_figures(lead)) html_.text(" (" + figure + ")");
    html_.raw("</span>");
  }

  void write_to(Unresolved const& to) { html_.text(to.printed); }
  void write_to(ToCouplet const& to) {
    link(address(to.couplet.index), edition_[to.couplet].label);
  }
  void write_to(ToKey const& to) {
    for (std::size_t p = 0; p < edition_.parts.size(); ++p) {
      if (edition_.parts[p].title != to.key || to.key == page_title(edition_)) continue;
      link("#k" + std::to_string(p + 1), to.key);
      return;
    }
    html_.text(to.key);
  }
  void write_to(ToTaxa const& to) {
    for (std::size_t i = 0; i < to.taxa.size(); ++i) {
      if (i > 0) html_.text(i + 1 == to.taxa.size() ? " or " : ", ");
      write_taxon(to.taxa[i]);
    }
  }

  // The author stands where a taxon is named first.
  void write_taxon(TaxonId id) {
    auto const& taxon = edition_[id];
    if (is_set_in_italics(taxon.name)) {
      html_.element("i", taxon.name);
    } else {
      html_.text(taxon.name);
    }
    if (!named_[id.index] && !taxon.authorship.empty()) html_.text(" " + taxon.authorship);
    named_[id.index] = true;
  }

  void write_unnamed() {
    auto const unnamed = unnamed_taxa(edition_);
    if (unnamed.empty()) return;
    html_.raw("<footer><p>Taxa to which no lead leads: ");
    for (std::size_t i = 0; i < unnamed.size(); ++i) {
      if (i > 0) html_.raw("; ");
      write_taxon(unnamed[i]);
    }
    html_.raw("</p></footer>\n");
  }

  Edition const& edition_;
  std::vector<std::uint32_t> parents_;  // the first couplet that leads to each
  std::unordered_map<std::string_view, std::uint32_t> by_label_;
  std::vector<bool> named_;
  HtmlWriter html_;
};

}  // namespace

std::string key_html(Edition const& edition) { return KeyPage{edition}.write(); }

}  // namespace keydrift
