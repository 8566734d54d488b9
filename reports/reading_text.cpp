// How the lines of a source were taken, line by line, for a terminal.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/reports/page.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {

using namespace reports;
namespace {

constexpr std::size_t kNumberCells = 7;   // "123456", and a blank
constexpr std::size_t kKindCells = 14;    // "running head", and two blanks
constexpr std::size_t kQuotedWords = 24;  // code points of the words that a lead ends in

constexpr std::string_view kReasonLabel = "label";  // the reason of a line that begins with one

struct LeadOnLine {
  std::uint32_t line{};
  std::uint32_t column{};
  LeadId lead;
};

// All leads by the line that they begin in.
std::vector<LeadOnLine> leads_by_line(Edition const& edition) {
  std::vector<LeadOnLine> leads;
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    for (std::uint32_t l = 0; l < edition.couplets[c].leads.size(); ++l) {
      auto const& place = edition.couplets[c].leads[l].place;
      leads.push_back({place.line, place.column, LeadId{CoupletId{c}, l}});
    }
  }
  std::sort(leads.begin(), leads.end(), [](LeadOnLine const& a, LeadOnLine const& b) {
    return std::pair{a.line, a.column} < std::pair{b.line, b.column};
  });
  return leads;
}

std::size_t code_points(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

// The last words, at most kQuotedWords code points, begun at a blank where there is one.
std::string end_of(std::string_view text) {
  if (code_points(text) <= kQuotedWords) return std::string{text};
  std::size_t begin = text.size();
  for (std::size_t left = kQuotedWords; begin > 0 && left > 0; --left) {
    --begin;
    while (begin > 0 && (static_cast<unsigned char>(text[begin]) & 0xC0U) == 0x80U) --begin;
  }
  auto const blank = text.find(' ', begin);
  if (blank != std::string_view::npos && blank + 1 < text.size()) begin = blank + 1;
  return "… " + std::string{text.substr(begin)};
}

// "label “7a”: couplet 7, lead 1 of 2".
std::string label_in_words(Edition const& edition, LeadId id) {
  auto const& lead = edition[id];
  auto const& couplet = edition[id.couplet];
  auto const printed =
      lead.label.empty() ? std::string{"no label"} : "label " + in_curly_quotes(lead.label);
  return fmt::format("{}: couplet {}, lead {} of {}", printed, couplet.label, id.ordinal + 1,
                     couplet.leads.size());
}

// "words end in column 46: “… not banded”".
std::string words_in_words(Lead const& lead, std::uint32_t line) {
  if (lead.text.empty() || lead.runs.empty()) return "no words";
  auto const& last = lead.runs.back();
  auto const length = code_points(std::string_view{lead.text}.substr(last.text_begin));
  auto const column = last.place.column + length - 1;
  auto const where =
      last.place.line == line ? std::string{} : fmt::format(" of line {}", last.place.line);
  return fmt::format("words end in column {}{}: {}", column, where,
                     in_curly_quotes(end_of(lead.text)));
}

struct DestinationInWords {
  Edition const& edition;
  Lead const& lead;
  std::uint32_t line;  // that the lead begins in

  std::string operator()(Unresolved const& none) const {
    auto const& printed =
        lead.destination_printed.empty() ? none.printed : lead.destination_printed;
    if (printed.empty()) return "no destination was found";
    bool const number =
        std::any_of(printed.begin(), printed.end(), [](char c) { return c >= '0' && c <= '9'; });
    if (!number) return said(printed, "no couplet and no name");
    return said(printed, "a couplet, but none bears that number");
  }
  std::string operator()(ToCouplet const& to) const {
    auto const& couplet = edition[to.couplet];
    auto const target = fmt::format("couplet {}, line {}", couplet.label, couplet.place.line);
    if (lead.destination_printed.empty()) {
      return "no destination is printed; the lead goes on with " + target;
    }
    return said(lead.destination_printed, target);
  }
  std::string operator()(ToTaxa const& to) const {
    std::vector<std::string> names;
    for (auto const id : to.taxa) {
      auto const& taxon = edition[id];
      names.push_back(taxon.authorship.empty()
                          ? taxon.name
                          : fmt::format("{} (author: {})", taxon.name, taxon.authorship));
    }
    return said(lead.destination_printed,
                fmt::format("{} {}", to.taxa.size() == 1 ? "taxon" : "taxa", enumerated(names)));
  }
  std::string operator()(ToKey const& to) const {
    auto const found = std::find_if(edition.parts.begin(), edition.parts.end(),
                                    [&](KeyPart const& part) { return part.title == to.key; });
    return said(lead.destination_printed,
                found == edition.parts.end()
                    ? std::string{"another key, which this source does not hold"}
                    : fmt::format("another key, line {}", found->place.line));
  }

 private:
  [[nodiscard]] std::string said(std::string_view printed, std::string_view meaning) const {
    auto const where = lead.destination_place.line == line || lead.destination_printed.empty()
                           ? std::string{}
                           : fmt::format(" in line {}", lead.destination_place.line);
    auto words = fmt::format("destination {}{}: {}", in_curly_quotes(printed), where, meaning);
    if (!lead.taxon_remark.empty()) words += "; remark " + in_curly_quotes(lead.taxon_remark);
    return words;
  }
};

// The line without the blanks at its ends, cut where it would run into a second one.
std::string start_of_line(std::string_view line, std::size_t cells, bool unicode) {
  auto const text = clean_text(line, unicode);
  auto const begin = text.find_first_not_of(' ');
  if (begin == std::string::npos) return {};
  auto const trimmed = text.substr(begin, text.find_last_not_of(' ') - begin + 1);
  if (display_width(trimmed) <= cells) return trimmed;
  auto const ellipsis = std::string{unicode ? "…" : "..."};
  auto const room = cells - display_width(ellipsis);
  std::size_t end = 0;
  for (std::size_t used = 0; end < trimmed.size();) {
    std::size_t next = end + 1;
    while (next < trimmed.size() && (static_cast<unsigned char>(trimmed[next]) & 0xC0U) == 0x80U) {
      ++next;
    }
    used += display_width(std::string_view{trimmed}.substr(end, next - end));
    if (used > room) break;
    end = next;
  }
  return trimmed.substr(0, end) + ellipsis;
}

class ReadingPage {
 public:
  ReadingPage(Edition const& edition, SourceReading const& source, TerminalStyle style)
      : edition_{edition}, source_{source}, page_{style}, leads_{leads_by_line(edition)} {}

  std::string run() && {
    page_.title("How " + edition_.name + " was read");
    page_.paragraph(sentence(capitalised(source_.layout_note)));
    page_.blank();
    set_row("line", "taken for", {{"begins with; why", Face::plain}}, Face::bold);
    set_lines();
    set_totals();
    return page_.take();
  }

 private:
  void set_row(std::string const& number, std::string_view kind, Words words, Face face) {
    constexpr auto kLabelCells = kNumberCells + kKindCells;
    auto const padded = number.size() < kNumberCells - 1
                            ? std::string(kNumberCells - 1 - number.size(), ' ') + number
                            : number;
    auto label = padded + " " + std::string{kind};
    if (face != Face::plain) words.front().face = face;
    page_.entry({.label = {{label, face}},
                 .label_width = kLabelCells,
                 .text = std::move(words),
                 .destination = {}});
  }
  void set_detail(std::string const& words) {
    page_.paragraph({{words, Face::dim}}, kNumberCells + kKindCells + 2, 2);
  }

  void set_lines() {
    std::string_view rest = source_.text;
    for (std::size_t i = 0; i < source_.lines.size(); ++i) {
      auto const& account = source_.lines[i];
      auto const end = rest.find('\n');
      auto const text = rest.substr(0, end);
      rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
      ++counts_[static_cast<std::size_t>(account.kind)];
      if (account.kind == LineKind::blank) {
        // A row for every stretch of blank lines.
        if (i > 0 && source_.lines[i - 1].kind == LineKind::blank) continue;
        auto last = i;
        while (last + 1 < source_.lines.size() && source_.lines[last + 1].kind == LineKind::blank) {
          ++last;
        }
        auto number = fmt::format("{}", account.line);
        if (last > i) number += fmt::format("–{}", source_.lines[last].line);
        set_row(number, to_word(account.kind), {{"", Face::plain}}, Face::plain);
        continue;
      }
      auto const cells = page_.width() - kNumberCells - kKindCells;
      set_row(fmt::format("{}", account.line), to_word(account.kind),
              {{start_of_line(text, cells, page_.unicode()), Face::plain}}, Face::plain);
      set_reasons(i);
    }
  }

  void set_reasons(std::size_t at) {
    auto const& account = source_.lines[at];
    if (account.kind != LineKind::lead || account.reason != kReasonLabel) {
      set_detail(std::string{account.reason});
    }
    if (account.kind != LineKind::lead) return;
    while (next_ < leads_.size() && leads_[next_].line < account.line) ++next_;
    for (auto count = leads_begun(at); count > 0; --count, ++next_) {
      auto const& lead = edition_[leads_[next_].lead];
      set_detail(label_in_words(edition_, leads_[next_].lead));
      set_detail(words_in_words(lead, account.line));
      set_detail(std::visit(DestinationInWords{edition_, lead, account.line}, lead.destination));
    }
  }

  // Several leads may begin in one line, and several lines that were read may be one of the source
  // (rows of a table in HTML): then each line behind has one of its leads.
  [[nodiscard]] std::size_t leads_begun(std::size_t at) const {
    auto const line = source_.lines[at].line;
    std::size_t leads = 0;
    while (next_ + leads < leads_.size() && leads_[next_ + leads].line == line) ++leads;
    std::size_t later = 0;
    for (auto i = at + 1; i < source_.lines.size() && source_.lines[i].line == line; ++i) {
      auto const& other = source_.lines[i];
      if (other.kind == LineKind::lead && other.reason == kReasonLabel) ++later;
    }
    return leads - std::min(leads, later);
  }

  void set_totals() {
    page_.heading("The lines in numbers");
    std::size_t all = 0;
    for (std::size_t kind = 0; kind < counts_.size(); ++kind) {
      all += counts_[kind];
      if (counts_[kind] == 0) continue;
      page_.leader(capitalised(to_word(static_cast<LineKind>(kind))), grouped(counts_[kind]), 2);
    }
    page_.leader("All lines of the source", grouped(all), 2);
  }

  static constexpr std::size_t kKinds = static_cast<std::size_t>(LineKind::skipped) + 1;

  Edition const& edition_;
  SourceReading const& source_;
  Page page_;
  std::vector<LeadOnLine> leads_;
  std::size_t next_{};  // into leads_
  std::array<std::size_t, kKinds> counts_{};
};

}  // namespace

std::string reading_text(Edition const& edition, SourceReading const& source, TerminalStyle style) {
  return ReadingPage{edition, source, style}.run();
}

}  // namespace keydrift
