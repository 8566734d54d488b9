#include "keydrift/formats/printed_page.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>
#include <variant>

#include "keydrift/formats/printed_arrange.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_ends.hpp"
#include "keydrift/formats/printed_exact.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_wrap.hpp"
#include "keydrift/key/front_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLeastWidth = 30;        // columns; below, nothing fits
constexpr std::size_t kLeastDots = 3;          // a row of leaders, of dots or of blanks
constexpr std::size_t kWidestLabelField = 12;  // columns; longer labels push the words
constexpr std::size_t kValueIndent = 4;
constexpr std::size_t kIndentStep = 2;          // columns for each couplet on the way
constexpr std::size_t kDeepestLeadIndent = 24;  // columns; beyond, the numbers have to tell

bool is_one_letter(std::string_view label) {
  return label.size() == 1 && label[0] >= 'A' && label[0] <= 'z' &&
         is_letter(static_cast<unsigned char>(label[0]));
}

// What the written file's readers will know of its numbers.
Numbering numbering_of(Edition const& edition) {
  Numbering numbering;
  bool letters = !edition.couplets.empty();
  for (auto const& couplet : edition.couplets) {
    letters = letters && is_one_letter(couplet.label);
    if (auto const reference = read_reference(couplet.label);
        reference && reference->family == LabelFamily::digits) {
      numbering.numbers.push_back(reference->number);
    }
  }
  if (letters) {
    bool const upper = is_upper(static_cast<unsigned char>(edition.couplets[0].label[0]));
    numbering.family = upper ? LabelFamily::upper : LabelFamily::lower;
  }
  std::sort(numbering.numbers.begin(), numbering.numbers.end());
  return numbering;
}

class Page {
 public:
  Page(Edition const& edition, PrintOptions const& options, PrintManner manner,
       PrintWordings const& wordings)
      : edition_{edition},
        options_{options},
        manner_{manner},
        wordings_{wordings},
        width_{std::max(options.width, kLeastWidth)},
        numbering_{numbering_of(edition)},
        ends_{edition, numbering_},
        order_{print_order(edition, options.layout).leads} {
    if (options.layout == PrintLayout::serial) number_leads();
    for (auto const& one : order_) {
      if (one.lead.ordinal == 0) field_ = std::max(field_, columns_of(label_of(one)) + 2);
    }
    field_ = std::min(field_, kWidestLabelField);
  }

  std::string write() && {
    write_front();
    std::size_t part = 0;
    for (std::size_t i = 0; i < order_.size(); ++i) {
      auto const& one = order_[i];
      auto const couplet = one.lead.couplet.index;
      bool const opens = part < edition_.parts.size() && one.lead.ordinal == 0 &&
                         edition_.parts[part].start.index == couplet;
      if (opens) {
        write_opening(part++, couplet);
      } else if (one.lead.ordinal == 0) {
        write_notes_before(edition_.couplets[couplet].place);
      }
      write_lead_block(one);
    }
    write_notes(edition_.notes.size());
    return std::move(out_);
  }

 private:
  // --- front matter, titles, notes -------------------------------------------------------------

  void write_front() {
    for (auto const& [name, value] : front_lines(edition_.front)) {
      auto const start = name + ": ";
      auto const lines =
          wrap(value, width_ - std::min(width_ - 1, columns_of(start)), width_ - kValueIndent);
      out_ += start + lines.front() + "\n";
      for (std::size_t i = 1; i < lines.size(); ++i) {
        out_ += std::string(kValueIndent, ' ') + lines[i] + "\n";
      }
    }
    if (manner_ != PrintManner::plain) {
      out_ += layout_line(options_.layout) + "\n";
    }
    block_ended_ = true;
  }

  void separate() {
    if (!out_.empty()) out_ += '\n';
  }

  // A part's title and the notes around it.  What looks like a heading must not come between the
  // title and the couplet, unless the title is one beyond doubt; without a title it has to wait.
  void write_opening(std::size_t part, std::uint32_t couplet) {
    auto const& title = edition_.parts[part].title;
    block_ended_ = true;
    if (title.empty()) return;
    bool const kept = manner_ == PrintManner::plain && wordings_.has_title_as_printed(part);
    bool const certain = mentions_key(title);
    write_notes_before(certain || kept ? edition_.parts[part].place
                                       : edition_.couplets[couplet].place);
    separate();
    bool const named =
        manner_ == PrintManner::plain && names_a_key(title) && explicit_key_title(title).empty();
    bool const plain = title.size() <= kLongestHeading && (part == 0 || named || kept);
    out_ += (plain ? "" : "Key: ") + title + "\n";
    auto end = next_note_;
    while (end < edition_.notes.size() && (kept || !mentions_key(edition_.notes[end].text)) &&
           edition_.notes[end].place.begin <= edition_.couplets[couplet].place.begin) {
      ++end;
    }
    write_notes(end, kept && !certain);
  }

  void write_notes_before(Place const& place) {
    auto end = next_note_;
    while (end < edition_.notes.size() && edition_.notes[end].place.begin <= place.begin) ++end;
    write_notes(end);
  }

  // `beneath`: what is said of a genus stands directly beneath its title.
  void write_notes(std::size_t end, bool beneath = false) {
    for (; next_note_ < end; ++next_note_) {
      if (!std::exchange(beneath, false)) separate();
      write_key_note(next_note_);
      block_ended_ = true;
    }
  }

  void write_key_note(std::size_t note) {
    auto text = edition_.notes[note].text;
    bool const kept = wordings_.has_key_note_as_printed(note);
    if (!kept && manner_ == PrintManner::plain) {
      out_ += text + "\n";
      return;
    }
    if (!kept) text = std::string{kNoteOnTheKey} + " " + text;
    for (auto const& line : wrap(text, width_, width_)) out_ += line + "\n";
  }

  // "Note: …" beneath a lead, further lines set deeper.
  void write_note(std::size_t indent, std::string const& start, std::string const& note) {
    auto const room = width_ - indent;
    auto const first = room - std::min(room - 1, columns_of(start));
    auto const lines = wrap(note, first, room - 2);
    out_ += std::string(indent, ' ') + start + lines.front() + "\n";
    for (std::size_t i = 1; i < lines.size(); ++i) {
      out_ += std::string(indent + 2, ' ') + lines[i] + "\n";
    }
  }

  // A note that announces itself otherwise ("N.B. …") needs no word before it.
  [[nodiscard]] static std::string note_start(std::string const& note, bool as_printed) {
    bool const plain = fold(printed::start_of(note, 4)) == "note";
    bool const told = starts_note(note) || (as_printed && announced(note));
    return !plain && told ? "" : "Note: ";
  }
  // "Distribution: …", "[Plate 12]"
  [[nodiscard]] static bool announced(std::string_view note) {
    constexpr std::size_t kLongestWord = 24;  // bytes before the colon
    auto const colon = note.find(": ");
    bool const named = colon <= kLongestWord && is_upper(code_point_at(note, 0).value) &&
                       note.find_first_of(".,;") > colon;
    return named || (note.starts_with('[') && note.find(']') + 1 == note.size());
  }

  // --- labels ----------------------------------------------------------------------------------

  [[nodiscard]] std::string label_of(PrintedLead const& one) const {
    auto const& couplet = edition_[one.lead.couplet];
    switch (options_.layout) {
      case PrintLayout::serial:
        return serial_label(one);
      case PrintLayout::indented:
        return one.lead.ordinal == 0 ? first_label(couplet) : couplet.label + ".";
      case PrintLayout::parallel:
        break;
    }
    return one.lead.ordinal == 0 ? first_label(couplet) : further_label(couplet, one.lead.ordinal);
  }

  [[nodiscard]] static std::string first_label(Couplet const& couplet) {
    std::string back;
    for (auto const& one : couplet.back_references) back += (back.empty() ? "" : ", ") + one.label;
    return couplet.label + (back.empty() ? "" : " (" + back + ")") + ".";
  }

  // Dashes answer plain numbers; letters are answered by what cannot be taken for a lead's letter.
  [[nodiscard]] std::string further_label(Couplet const& couplet, std::size_t ordinal) const {
    if (manner_ != PrintManner::plain) return "–";
    auto const last = couplet.label.empty() ? '0' : couplet.label.back();
    if (is_one_letter(couplet.label)) return std::string(ordinal + 1, couplet.label[0]) + ".";
    if (is_letter(static_cast<unsigned char>(last))) {
      return couplet.label + std::string(ordinal, '\'') + ".";
    }
    return "–";
  }

  // "6 (1)": the numbers of its rivals in brackets.
  [[nodiscard]] std::string serial_label(PrintedLead const& one) const {
    auto const& numbers = numbers_[one.lead.couplet.index];
    std::string rivals;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      if (i == one.lead.ordinal) continue;
      rivals += (rivals.empty() ? "" : ", ") + std::to_string(numbers[i]);
    }
    return std::to_string(one.number) + (rivals.empty() ? "" : " (" + rivals + ")") + ".";
  }

  void number_leads() {
    numbers_.resize(edition_.couplets.size());
    numbering_.numbers.clear();
    for (auto const& one : order_) {
      numbers_[one.lead.couplet.index].push_back(one.number);
      numbering_.numbers.push_back(one.number);
    }
    std::sort(numbering_.numbers.begin(), numbering_.numbers.end());
  }

  // --- leads -----------------------------------------------------------------------------------

  void write_lead_block(PrintedLead const& one) {
    bool const parallel = options_.layout == PrintLayout::parallel;
    auto const& couplet = edition_[one.lead.couplet];
    auto const& lead = edition_[one.lead];
    bool const first = one.lead.ordinal == 0;
    if (block_ended_ || (parallel && first)) separate();
    block_ended_ = false;
    auto const cap = std::min(kDeepestLeadIndent, width_ / 4);
    auto const margin =
        options_.layout == PrintLayout::indented ? std::min(cap, one.depth * kIndentStep) : 0;
    write_lead(margin, one, lead);
    for (auto const& note : lead.notes) {
      write_note(margin + field_, note_start(note, wordings_.has_notes_as_printed(one.lead)), note);
    }
    // Behind the last lead where the leads stand together, else behind the first.
    if (parallel ? one.lead.ordinal + 1 == couplet.leads.size() : first) {
      for (auto const& note : couplet.notes) {
        write_note(margin + field_, "Note on couplet " + couplet.label + ": ", note);
      }
    }
  }

  void write_lead(std::size_t margin, PrintedLead const& one, Lead const& lead) {
    auto head = std::string(margin, ' ') + label_of(one);
    auto const hang_columns = margin + field_;
    head.append(std::max<std::size_t>(1, hang_columns - std::min(hang_columns, columns_of(head))),
                ' ');
    auto const hang = std::string(hang_columns, ' ');
    auto const room = width_ - hang_columns;
    auto const first_room = width_ - std::min(width_ - 1, columns_of(head));
    // Words with leaders of their own would be cut in the wrong place by a line's end.
    bool const unbroken = split_at_leader(lead.text, numbering_).kind != LeaderKind::none ||
                          lead.text.find("...") != std::string::npos ||
                          lead.text.find("…") != std::string::npos;
    auto lines = unbroken ? std::vector<std::string>{lead.text} : wrap(lead.text, first_room, room);
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
      out_ += (i == 0 ? head : hang) + lines[i] + "\n";
    }
    auto last = (lines.size() == 1 ? head : hang) + lines.back();
    auto const destination = ends_.destination_of(lead, wordings_.of(one.lead));
    auto const* to = std::get_if<ToCouplet>(&lead.destination);
    bool const next_line_tells = one.goes_on && manner_ != PrintManner::numbered &&
                                 destination == edition_[to->couplet].label;
    if (next_line_tells) {
      out_ += std::string{trim_right(last)} + "\n";
    } else if (destination.empty() || options_.leaders == PrintLeaders::dots) {
      write_dotted_end(std::move(last), hang_columns, destination, unbroken);
    } else {
      write_gap_end(std::move(last), hang_columns, destination);
    }
  }

  // The last line of words, leaders, and the destination at the right margin.
  void write_dotted_end(std::string line, std::size_t hang, std::string const& destination,
                        bool unbroken) {
    auto used = columns_of(line);
    auto const needed = columns_of(destination);
    bool const blank = !line.empty() && line.back() == ' ';
    bool const fits = used + (blank ? 0 : 1) + kLeastDots + 1 + needed <= width_;
    if (!fits && used > hang && !unbroken) {
      out_ += line + "\n";
      line = std::string(hang, ' ');
      used = hang;
    }
    if (line.back() != ' ') {
      line += ' ';
      ++used;
    }
    if (destination.empty()) {
      out_ += line + std::string(std::max(kLeastDots, width_ - std::min(width_, used)), '.') + "\n";
      return;
    }
    auto const taken = used + 1 + needed;
    auto const dots = std::max(kLeastDots, width_ - std::min(width_, taken));
    line += std::string(dots, '.') + " ";
    used += dots + 1;
    if (used + needed <= width_ || unbroken) {
      out_ += line + destination + "\n";
      return;
    }
    // A list of taxa longer than a line goes on below, broken after its commas.
    write_list(std::move(line), used, hang, destination);
  }

  // A tab, or blanks up to the right margin.  The words' end goes to the next line where they
  // leave no room, so that the gap stands between words and destination in one line.
  void write_gap_end(std::string line, std::size_t hang, std::string const& destination) {
    bool const tab = options_.leaders == PrintLeaders::tab;
    auto const needed = columns_of(destination);
    auto const gap = tab ? 1 : kLeastDots;
    auto used = columns_of(line);
    for (auto at = line.rfind(' '); used + gap + needed > width_; at = line.rfind(' ', at - 1)) {
      if (at == std::string::npos || at <= hang || columns_of(line.substr(0, at)) <= hang) break;
      auto const rest = line.substr(at + 1);
      if (rest.empty() || misleads(rest)) continue;
      out_ += line.substr(0, at) + "\n";
      line = std::string(hang, ' ') + rest;
      used = columns_of(line);
      break;
    }
    if (tab) {
      line += '\t';
    } else {
      line.append(std::max(gap, width_ - std::min(width_, used + needed)), ' ');
    }
    write_list(std::move(line), columns_of(line), hang, destination);
  }

  void write_list(std::string line, std::size_t used, std::size_t hang,
                  std::string const& destination) {
    auto const lines = break_list(destination, width_ - std::min(width_, used), width_ - hang - 2);
    out_ += line + lines.front() + "\n";
    for (std::size_t i = 1; i < lines.size(); ++i) {
      out_ += std::string(hang + 2, ' ') + lines[i] + "\n";
    }
  }

  [[nodiscard]] static std::vector<std::string> break_list(std::string_view list, std::size_t first,
                                                           std::size_t next) {
    std::vector<std::string> lines(1);
    std::size_t room = first;
    while (!list.empty()) {
      auto const comma = list.find(", ");
      auto const item = list.substr(0, comma == std::string_view::npos ? comma : comma + 1);
      auto& line = lines.back();
      bool const fits = columns_of(line) + 1 + columns_of(item) <= room;
      if (!line.empty() && !fits && !misleads(item)) {
        lines.emplace_back(item);
        room = next;
      } else {
        line += (line.empty() ? "" : " ") + std::string{item};
      }
      list.remove_prefix(comma == std::string_view::npos ? list.size() : comma + 2);
    }
    return lines;
  }

  Edition const& edition_;
  PrintOptions const& options_;
  PrintManner manner_;
  PrintWordings const& wordings_;
  std::size_t width_;
  Numbering numbering_;
  EndPrinter ends_;
  std::vector<PrintedLead> order_;
  std::vector<std::vector<std::uint32_t>> numbers_;  // of the leads, couplet by couplet; serial
  std::size_t field_{4};                             // columns of labels
  std::size_t next_note_{};
  bool block_ended_{false};  // front matter, a title or a note stands directly above
  std::string out_;
};

}  // namespace

std::string print_page(Edition const& printed, PrintOptions const& options, PrintManner manner,
                       PrintWordings const& wordings) {
  return Page{printed, options, manner, wordings}.write();
}

}  // namespace keydrift::printed
