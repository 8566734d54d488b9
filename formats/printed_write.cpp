// Writes an edition as a bracketed key that reads back with the same content.

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_front.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_wrap.hpp"

namespace keydrift {
namespace {

using namespace printed;

constexpr std::size_t kLeastWidth = 30;        // columns; below, nothing fits
constexpr std::size_t kLeastDots = 3;          // a row of leaders
constexpr std::size_t kWidestLabelField = 12;  // columns; longer labels push the words
constexpr std::size_t kValueIndent = 4;

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

class Writer {
 public:
  Writer(Edition const& edition, PrintOptions const& options)
      : edition_{edition},
        options_{options},
        width_{std::max(options.width, kLeastWidth)},
        numbering_{numbering_of(edition)},
        named_(edition.taxa.size(), false) {
    if (options.back_references == BackReferences::from_graph) find_parents();
    for (auto const& couplet : edition.couplets) {
      field_ = std::max(field_, columns_of(first_label(couplet)) + 2);
    }
    field_ = std::min(field_, kWidestLabelField);
  }

  std::string write() && {
    write_front();
    std::size_t part = 0;
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      bool const starts = part < edition_.parts.size() && edition_.parts[part].start.index == c;
      if (starts) {
        write_opening(part++, c);
      } else {
        write_notes_before(edition_.couplets[c].place);
      }
      write_couplet(c);
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
  }

  void separate() {
    if (!out_.empty()) out_ += '\n';
  }

  // A part's title and the notes around it.  What looks like a heading must not come between the
  // title and the couplet, unless the title is one beyond doubt; without a title it has to wait.
  void write_opening(std::size_t part, std::uint32_t couplet) {
    auto const& title = edition_.parts[part].title;
    if (title.empty()) return;
    bool const certain = mentions_key(title);
    write_notes_before(certain ? edition_.parts[part].place : edition_.couplets[couplet].place);
    separate();
    bool const plain = part == 0 || (names_a_key(title) && explicit_key_title(title).empty());
    out_ += (plain ? "" : "Key: ") + title + "\n";
    auto end = next_note_;
    while (end < edition_.notes.size() && !mentions_key(edition_.notes[end].text) &&
           edition_.notes[end].place.begin <= edition_.couplets[couplet].place.begin) {
      ++end;
    }
    write_notes(end);
  }

  void write_notes_before(Place const& place) {
    auto end = next_note_;
    while (end < edition_.notes.size() && edition_.notes[end].place.begin <= place.begin) ++end;
    write_notes(end);
  }

  void write_notes(std::size_t end) {
    for (; next_note_ < end; ++next_note_) {
      separate();
      for (auto const& line : wrap(edition_.notes[next_note_].text, width_, width_)) {
        out_ += line + "\n";
      }
    }
  }

  // "Note: …", further lines set deeper.
  void write_note(std::string const& start, std::string const& note) {
    auto const room = width_ - field_;
    auto const first = room - std::min(room - 1, columns_of(start));
    auto const lines = wrap(note, first, room - 2);
    out_ += std::string(field_, ' ') + start + lines.front() + "\n";
    for (std::size_t i = 1; i < lines.size(); ++i) {
      out_ += std::string(field_ + 2, ' ') + lines[i] + "\n";
    }
  }

  // --- couplets --------------------------------------------------------------------------------

  [[nodiscard]] std::string first_label(Couplet const& couplet) const {
    std::string back;
    if (options_.back_references == BackReferences::as_printed) {
      for (auto const& one : couplet.back_references)
        back += (back.empty() ? "" : ", ") + one.label;
    } else if (options_.back_references == BackReferences::from_graph) {
      auto const index = static_cast<std::uint32_t>(&couplet - edition_.couplets.data());
      if (auto const parents = parents_.find(index); parents != parents_.end()) {
        back = parents->second;
      }
    }
    return couplet.label + (back.empty() ? "" : " (" + back + ")") + ".";
  }

  // Dashes answer plain numbers; letters are answered by what cannot be taken for a lead's letter.
  [[nodiscard]] static std::string further_label(Couplet const& couplet, std::size_t ordinal) {
    auto const last = couplet.label.empty() ? '0' : couplet.label.back();
    if (is_one_letter(couplet.label)) return std::string(ordinal + 1, couplet.label[0]) + ".";
    if (is_letter(static_cast<unsigned char>(last))) {
      return couplet.label + std::string(ordinal, '\'') + ".";
    }
    return "–";
  }

  void find_parents() {
    for (auto const& couplet : edition_.couplets) {
      for (auto const& lead : couplet.leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to == nullptr) continue;
        auto& parents = parents_[to->couplet.index];
        if (parents.size() >= couplet.label.size() &&
            parents.substr(parents.size() - couplet.label.size()) == couplet.label &&
            (parents.size() == couplet.label.size() ||
             parents[parents.size() - couplet.label.size() - 1] == ' ')) {
          continue;  // both leads of one couplet lead here
        }
        parents += (parents.empty() ? "" : ", ") + couplet.label;
      }
    }
  }

  void write_couplet(std::uint32_t index) {
    auto const& couplet = edition_.couplets[index];
    separate();
    for (std::size_t i = 0; i < couplet.leads.size(); ++i) {
      auto const& lead = couplet.leads[i];
      write_lead(i == 0 ? first_label(couplet) : further_label(couplet, i), lead);
      for (auto const& note : lead.notes) write_note(note_start(note), note);
    }
    for (auto const& note : couplet.notes) {
      write_note("Note on couplet " + couplet.label + ": ", note);
    }
  }

  // A note that announces itself otherwise ("N.B. …") needs no word before it.
  [[nodiscard]] static std::string note_start(std::string const& note) {
    bool const plain = fold(printed::start_of(note, 4)) == "note";
    return !plain && starts_note(note) ? "" : "Note: ";
  }

  void write_lead(std::string const& label, Lead const& lead) {
    auto head = label;
    head.append(std::max<std::size_t>(1, field_ - std::min(field_, columns_of(label))), ' ');
    auto const hang = std::string(field_, ' ');
    auto const room = width_ - field_;
    auto const first_room = width_ - std::min(width_ - 1, columns_of(head));
    // Words with leaders of their own would be cut in the wrong place by a line's end.
    bool const unbroken = split_at_leader(lead.text, numbering_).kind != LeaderKind::none ||
                          lead.text.find("...") != std::string::npos ||
                          lead.text.find("…") != std::string::npos;
    auto lines = unbroken ? std::vector<std::string>{lead.text} : wrap(lead.text, first_room, room);
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
      out_ += (i == 0 ? head : hang) + lines[i] + "\n";
    }
    auto const& last = lines.back();
    bool const single = lines.size() == 1;
    write_end((single ? head : hang) + last, destination_of(lead), unbroken);
  }

  // The last line of words, leaders, and the destination at the right margin.
  void write_end(std::string line, std::string const& destination, bool unbroken) {
    auto used = columns_of(line);
    auto const needed = columns_of(destination);
    bool const blank = !line.empty() && line.back() == ' ';
    bool const fits = used + (blank ? 0 : 1) + kLeastDots + 1 + needed <= width_;
    if (!fits && used > field_ && !unbroken) {
      out_ += line + "\n";
      line = std::string(field_, ' ');
      used = field_;
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
    auto const lines = break_list(destination, width_ - std::min(width_, used));
    out_ += line + lines.front() + "\n";
    for (std::size_t i = 1; i < lines.size(); ++i) {
      out_ += std::string(field_ + 2, ' ') + lines[i] + "\n";
    }
  }

  [[nodiscard]] std::vector<std::string> break_list(std::string_view list,
                                                    std::size_t first) const {
    std::vector<std::string> lines(1);
    std::size_t room = first;
    while (!list.empty()) {
      auto const comma = list.find(", ");
      auto const item = list.substr(0, comma == std::string_view::npos ? comma : comma + 1);
      auto& line = lines.back();
      bool const fits = columns_of(line) + 1 + columns_of(item) <= room;
      if (!line.empty() && !fits && !misleads(item)) {
        lines.emplace_back(item);
        room = width_ - field_ - 2;
      } else {
        line += (line.empty() ? "" : " ") + std::string{item};
      }
      list.remove_prefix(comma == std::string_view::npos ? list.size() : comma + 2);
    }
    return lines;
  }

  // --- destinations ----------------------------------------------------------------------------

  [[nodiscard]] std::string destination_of(Lead const& lead) {
    std::string text;
    if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
      text = with_group(edition_[couplet->couplet].label, lead.taxon_remark, figures_of(lead));
    } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
      bool const plain = (names_a_key(key->key) && explicit_key_title(key->key).empty()) ||
                         points_into_other_work(key->key);
      text = bracketed((plain ? "" : "Key: ") + key->key + figures_of(lead), lead.taxon_remark);
    } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
      text = taxa_text(taxa->taxa, lead.taxon_remark) + figures_of(lead);
    } else {
      text = std::get<Unresolved>(lead.destination).printed;
      if (!text.empty()) text = bracketed(text, lead.taxon_remark);
    }
    return text;
  }

  [[nodiscard]] static std::string bracketed(std::string text, std::string const& remark) {
    return remark.empty() ? text : text + " [" + remark + "]";
  }

  // "Aus group, 6" where that reads back, else "6 [Aus group]".
  [[nodiscard]] std::string with_group(std::string const& label, std::string const& group,
                                       std::string const& figures) const {
    if (group.empty()) return label + figures;
    auto natural = group + ", " + label;
    auto const reading = read_destination(natural, numbering_);
    auto const reference = read_reference(label);
    bool const same = reading.form == DestinationForm::couplet && reading.remark == group &&
                      reference && reading.couplet == key_of(*reference) &&
                      plausible_destination(natural, numbering_);
    return same ? natural + figures : bracketed(label + figures, group);
  }

  // Figures that the words do not name themselves.
  [[nodiscard]] static std::string figures_of(Lead const& lead) {
    auto const in_words = figures_in(lead.text);
    std::string text;
    for (std::size_t i = 0; i < lead.figures.size(); ++i) {
      bool const told = i < in_words.size() && in_words[i] == lead.figures[i];
      if (!told) text += " (" + lead.figures[i] + ")";
    }
    return text;
  }

  [[nodiscard]] std::string taxa_text(std::vector<TaxonId> const& taxa, std::string const& remark) {
    std::vector<std::string> remark_forms{", " + remark, " [" + remark + "]"};
    if (remark.empty()) remark_forms = {""};
    std::string text;
    for (bool const quoted : {false, true}) {
      for (auto const& remark_form : remark_forms) {
        text = list_of(taxa, quoted) + remark_form;
        if (reads_back(text, taxa, remark)) {
          for (auto const taxon : taxa) named_[taxon.index] = true;
          return text;
        }
      }
    }
    for (auto const taxon : taxa) named_[taxon.index] = true;
    return text;
  }

  [[nodiscard]] std::string list_of(std::vector<TaxonId> const& taxa, bool quoted) const {
    std::string text;
    for (std::size_t i = 0; i < taxa.size(); ++i) {
      if (i > 0) text += i + 1 == taxa.size() ? " or " : ", ";
      auto const& taxon = edition_[taxa[i]];
      text += quoted ? "\"" + taxon.name + "\"" : taxon.name;
      if (!named_[taxa[i].index] && !taxon.authorship.empty()) text += " " + taxon.authorship;
    }
    return text;
  }

  [[nodiscard]] bool reads_back(std::string const& text, std::vector<TaxonId> const& taxa,
                                std::string const& remark) const {
    if (!plausible_destination(text, numbering_)) return false;
    auto const reading = read_destination(text, numbering_);
    if (reading.form != DestinationForm::taxa || reading.remark != remark ||
        reading.taxa.taxa.size() != taxa.size()) {
      return false;
    }
    for (std::size_t i = 0; i < taxa.size(); ++i) {
      auto const& taxon = edition_[taxa[i]];
      auto const& read = reading.taxa.taxa[i];
      auto const& author = named_[taxa[i].index] ? std::string{} : taxon.authorship;
      // What a reader would complete from other names has to stand in quotation marks.
      bool const completed = read.genusless || is_abbreviated(words_of(taxon.name).front());
      if ((completed && !read.literal) || read.name != taxon.name || read.authorship != author)
        return false;
    }
    return true;
  }

  Edition const& edition_;
  PrintOptions const& options_;
  std::size_t width_;
  Numbering numbering_;
  std::vector<bool> named_;  // taxa whose author has been printed
  std::size_t field_{4};     // columns of labels
  std::map<std::uint32_t, std::string> parents_;
  std::size_t next_note_{};
  std::string out_;
};

}  // namespace

std::string write_printed_key(Edition const& edition, PrintOptions const& options) {
  return Writer{edition, options}.write();
}

}  // namespace keydrift
