#include "keydrift/formats/printed_sorter.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_cells.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_exact.hpp"
#include "keydrift/formats/printed_footnotes.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_lead_begins.hpp"
#include "keydrift/formats/printed_leads_so_far.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_furniture.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_remarks_so_far.hpp"
#include "keydrift/formats/printed_running_heads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_title_lines.hpp"

namespace keydrift::printed {
namespace {

class Sorter {
 public:
  Sorter(std::vector<SourceLine> const& lines, Numbering const& numbering,
         std::vector<LineAccount> accounts, LeadPlan const* plan)
      : lines_{lines},
        numbering_{numbering},
        plan_{plan},
        ahead_{lines, numbering, plan},
        leads_{lines, numbering, ahead_},
        begins_{lines, numbering, plan, ahead_, leads_, remarks_},
        furniture_{lines, numbering, plan, ahead_, leads_, remarks_},
        heads_{find_running_heads(lines, numbering)},
        cells_{plan == nullptr && !numbering.exact ? find_cells(lines, numbering) : std::nullopt} {
    ahead_.know_heads(heads_);
    if (plan == nullptr && !numbering.exact) footnotes_ = find_footnotes(lines, numbering, ahead_);
    sorted_.accounts = std::move(accounts);
    sorted_.accounts.reserve(lines.size());
    // A number beside "XML", or beside a name that comes back, is a label's cell and no page's.
    auto const has_page = [](std::string_view text) {
      return !text.empty() && (is_digit(static_cast<unsigned char>(text.front())) ||
                               is_digit(static_cast<unsigned char>(text.back())));
    };
    for (std::size_t s = 0; cells_ && s < cells_->starts.size(); ++s) {
      auto const line = cells_->starts[s].line;
      if (line > 0 && !has_page(lines[line - 1].text)) heads_[line - 1] = false;
      if (line + 1 < lines.size() && !has_page(lines[line + 1].text)) heads_[line + 1] = false;
    }
  }

  SortedLines run(std::size_t first_line) && {
    for (at_ = first_line; at_ < lines_.size(); ++at_) take_line();
    std::move(leads_).hand_over(sorted_);
    sorted_.remarks = std::move(remarks_).all();
    return std::move(sorted_);
  }

 private:
  void take_line() {
    auto const& line = lines_[at_];
    if (line.text.empty()) {
      account(LineKind::blank, "");
      gap_ = true;
      remarks_.close();
      in_key_note_ = false;
      return;
    }
    if (numbering_.exact && take_key_note(line)) return;
    bool const told = line.told && plan_ == nullptr;
    bool const claimed =
        !told && (take_marked(line) || (!numbering_.exact && take_head()) || take_title(line) ||
                  take_planned() || (!numbering_.exact && take_page_furniture()));
    if (!claimed && (told || !take_footnote(line))) take_words(line);
    // What stands beneath a title is no part of what stands above it.
    gap_ = line.markup.role == LineRole::heading;
  }

  void take_words(SourceLine const& line) {
    page_above_ = std::exchange(page_turned_, false);
    // The blank lines around a page's number and head do not part a lead from its rest.
    if (page_above_ && furniture_.goes_on_behind_page(at_)) gap_ = false;
    // What begins no lead goes on with one only where that lacks its destination.
    bool const lacks = leads_.progress() == Progress::open ||
                       leads_.progress() == Progress::leaders ||
                       (line.goes_on && leads_.progress() == Progress::soft);
    bool const outside = line.is_no_lead && !lacks;
    if (take_wrapped(line)) return;
    if (outside || (!take_label() && !take_in_title(line) && !take_in_lead(line)))
      take_outside(line);
  }

  // "Note on the key: …", up to the next blank line.
  bool take_key_note(SourceLine const& line) {
    if (in_key_note_) {
      remarks_.extend(piece_of(line, 0));
      account(LineKind::note, "goes on with the note on the key");
      return true;
    }
    in_key_note_ = gap_ && line.text.starts_with(kNoteOnTheKey);
    if (!in_key_note_) return false;
    auto const from = skip_blanks(line.text, kNoteOnTheKey.size());
    remarks_.open(RemarkKind::footnote, piece_of(line, from), last_lead());
    if (leads_.progress() != Progress::none) leads_.set_progress(Progress::done);
    account(LineKind::note, "note on the key");
    gap_ = false;
    return true;
  }

  // --- lines whose markup says what they are --------------------------------------------------

  bool take_marked(SourceLine const& line) {
    switch (line.markup.role) {
      case LineRole::told_by_text:
        return false;
      case LineRole::lead:
        take_marked_lead(line);
        return true;
      case LineRole::heading:
        add_heading(line);
        account(LineKind::heading, "marked up as a title");
        break;
      case LineRole::note:
        remarks_.add(leads_.empty() ? RemarkKind::footnote : RemarkKind::lead_note,
                     piece_of(line, 0), last_lead());
        account(LineKind::note, "a row of its own under a lead");
        break;
      case LineRole::aside:
        remarks_.add(RemarkKind::footnote, piece_of(line, 0), last_lead());
        account(LineKind::note, "stands beside the key");
        break;
    }
    remarks_.close();
    if (leads_.progress() != Progress::none) leads_.set_progress(Progress::done);
    return true;
  }

  void take_marked_lead(SourceLine const& line) {
    auto const words_begin = line.markup.words_begin;
    bool const cell = words_begin != kNotTold;
    auto const cell_size =
        cell ? std::min(std::max(words_begin, line.begin) - line.begin, line.text.size()) : 0;
    // A label's cell is the label, whatever style the others have.
    auto const within = cell ? trim_right(line.text.substr(0, cell_size)) : line.text;
    auto label = read_label(within);
    if (label && (cell ? label->text_at < within.size() : !numbering_.accepts(*label))) {
      label.reset();
    }
    bool misprinted = false;
    if (!label && !within.empty()) {
      label = read_misprinted_label(within, leads_.number() + 1, true);
      if (!label) label = read_misprinted_label(within, leads_.number(), true);
      misprinted = label.has_value();
    }
    if (label && cell) label->text_at = skip_blanks(line.text, cell_size);
    Label none;
    none.family = LabelFamily::dash;
    start_lead(label.value_or(none), misprinted);
    leads_.last().unlabelled = !label;
    if (!label) sorted_.accounts.back().reason = "a row without label";
    if (line.markup.destination_begin != kNotTold) leads_.set_progress(Progress::done);
  }

  // "2. Ausella Roe" between two keys, told by the count that begins anew behind it.
  bool take_title(SourceLine const& line) {
    if (!line.is_title || !line.is_no_lead) return false;
    add_heading(line);
    account(LineKind::heading, "numbered, and the count of couplets begins anew behind it");
    return true;
  }

  // Lines whose part is told by more than their words: cells, braces, genera, accounts, couplets'
  // numbers above their leads.
  bool take_planned() {
    auto const* plan = cells_ ? &*cells_ : plan_;
    if (plan == nullptr || plan->parts.empty()) return false;
    if (auto const* start = plan->at(at_)) {
      start_planned(*start);
      return true;
    }
    auto const part = plan->part(at_);
    if (part == LinePart::number) {
      remarks_.close();
      if (leads_.progress() != Progress::none) leads_.set_progress(Progress::done);
      account(LineKind::heading, plan->braces ? "the number of the couplet in the brace"
                                              : "the number of the couplet below");
      return true;
    }
    if (part == LinePart::genus) {
      take_genus(lines_[at_]);
      return true;
    }
    if (part == LinePart::account && !leads_.empty()) {
      take_account(*plan);
      return true;
    }
    if (part == LinePart::brace) {
      account(LineKind::continuation, "a piece of a brace");
      return true;
    }
    if (part == LinePart::other || leads_.empty()) return false;
    leads_.add_piece(at_, 0);
    bool const destination = part == LinePart::destination;
    leads_.last().destination_told = destination;
    // In a brace the last of the words may end the lead, and accounts may follow the key.
    auto const text = lines_[at_].text;
    // "B. busa Roe." beneath the words
    bool const named = is_abbreviated(text.substr(0, text.find(' '))) && is_latin_name(text);
    if (destination || named || !plan->braces) {
      bool const ends = destination || named || has_led_end(text, numbering_);
      leads_.set_progress(ends ? Progress::done : Progress::open);
    }
    account(destination ? LineKind::destination : LineKind::continuation,
            destination    ? "the last line before the next label"
            : plan->braces ? "goes on with the lead in the brace"
                           : "stands beneath its label");
    return true;
  }

  // "AUSELLA (after Dr. Aus). Herbs …": the title ends at the first full stop, that behind the
  // bracket where there is one; the rest is said of the genus.
  void take_genus(SourceLine const& line) {
    auto title = piece_of(line, 0);
    auto const stop =
        line.text.find(". ", line.text.find(')') == line.text.npos ? 0 : line.text.find(')'));
    if (stop != std::string_view::npos) title.end = line.begin + stop;
    remarks_.add_heading(title, last_lead());
    if (leads_.progress() != Progress::none) leads_.set_progress(Progress::done);
    if (stop != std::string_view::npos) {
      remarks_.open(RemarkKind::prose, piece_of(line, skip_blanks(line.text, stop + 1)),
                    last_lead());
    }
    account(LineKind::heading, "begins with the genus whose key follows");
  }

  // The account of a species beneath the lead that leads to it.
  void take_account(LeadPlan const& plan) {
    auto const& line = lines_[at_];
    auto const found =
        std::lower_bound(plan.accounts.begin(), plan.accounts.end(), at_,
                         [](AccountName const& name, std::size_t at) { return name.line < at; });
    bool const begins = found != plan.accounts.end() && found->line == at_;
    leads_.set_progress(Progress::done);
    if (begins) {
      Piece const name{line.begin + found->begin, line.begin + found->end,
                       static_cast<std::uint32_t>(at_)};
      sorted_.names.push_back({last_lead(), name});
    }
    if (begins || !remarks_.is_open()) {
      remarks_.open(RemarkKind::lead_note, piece_of(line, 0), last_lead());
    } else {
      remarks_.extend(piece_of(line, 0));
    }
    account(begins ? LineKind::destination : LineKind::note,
            begins ? "an account beneath the lead: its species is the destination"
                   : "goes on with the account");
  }

  // --- page numbers, running heads, ruled lines ---------------------------------------------

  // "3" above the words of its lead is no page's number.
  [[nodiscard]] bool is_number_above() const {
    auto const& told = lines_[at_].told;
    return told && told->text_at == lines_[at_].text.size() && !lines_[at_].is_no_lead;
  }

  bool take_head() {
    if (!heads_[at_] || is_number_above()) return false;
    account(LineKind::running_head, "stands at the border of a page");
    page_turned_ = true;
    return true;
  }

  bool take_page_furniture() {
    if (is_number_above()) return false;
    auto furniture = furniture_.of({at_, gap_, page_turned_});
    // An overrun: carry_overrun_pages() put it there.
    bool const overrun =
        furniture == Furniture::page_number && lines_[at_].goes_on && last_lead() != kNone;
    if (overrun) furniture = Furniture::number_of_name;
    switch (furniture) {
      case Furniture::none:
        return false;
      case Furniture::number_of_name: {
        bool const done = leads_.progress() == Progress::done;
        leads_.add_piece(at_, 0);
        leads_.set_progress(done ? Progress::done : Progress::named);
        account(LineKind::continuation, "goes on with the name before");
        return true;
      }
      case Furniture::ruled_line:
        account(LineKind::skipped, "ruled line");
        return true;
      case Furniture::page_number:
        account(LineKind::page_number, "page number");
        break;
      case Furniture::stray_number:
        account(LineKind::page_number, "a number alone, where no destination is missing");
        break;
      case Furniture::head_in_lead:
        account(LineKind::running_head, "parts a lead");
        break;
      case Furniture::caption_in_lead:
        remarks_.add(RemarkKind::caption, piece_of(lines_[at_], 0), last_lead());
        account(LineKind::figure, leads_.progress() == Progress::open
                                      ? "a caption that parts a lead"
                                      : "letters or words of a figure");
        return true;
      case Furniture::words_in_lead:
        leads_.add_piece(at_, 0);
        account(LineKind::continuation, "the lead before has no end yet");
        break;  // no blank line parts it from its rest
    }
    page_turned_ = true;
    return true;
  }

  bool take_footnote(SourceLine const& line) {
    if (footnotes_.empty() || footnotes_[at_] == FootnoteLine::none) return false;
    if (footnotes_[at_] == FootnoteLine::first) {
      remarks_.close();
      remarks_.add(RemarkKind::footnote, piece_of(line, 0), last_lead());
      account(LineKind::footnote, "a sentence with the sign of a note, beside leads");
    } else {
      remarks_.extend(piece_of(line, 0));
      account(LineKind::footnote, "goes on with the footnote");
    }
    page_turned_ = true;
    return true;
  }

  // --- leads ----------------------------------------------------------------------------------

  // "2. Hind legs red" behind "… spots on tergites 1 and": mark_wrapped_lines() found it.
  bool take_wrapped(SourceLine const& line) {
    bool const wrapped = line.goes_on && !line.told && plan_ == nullptr && !gap_;
    if (!wrapped || !leads_.end_directly_above(at_)) return false;
    leads_.set_progress(Progress::open);
    leads_.add_piece(at_, 0);
    account(LineKind::continuation, "goes on with the words before");
    return true;
  }

  bool take_label() {
    if (plan_ != nullptr) {
      bool const planned = ahead_.label_at(at_).has_value();
      if (planned) start_planned(*plan_->at(at_));
      return planned;
    }
    auto const begun = begins_.label_of_lead(here());
    if (begun) start_lead(begun->label, begun->misprinted);
    return begun.has_value();
  }

  void start_planned(LeadStart const& start) {
    start_lead(start.rank.label, start.misread);
    bool const braces = plan_ != nullptr && plan_->braces;
    if (braces && !start.misread) {
      bool const first = start.rank.alphabet == Alphabet::digits;
      sorted_.accounts.back().reason =
          first ? "the first lead in its brace" : "a further lead in the brace";
    }
    if (!start.unlabelled) return;
    leads_.last().unlabelled = true;
    sorted_.accounts.back().reason =
        braces ? "a further lead in the brace" : "no label, but a line of its own";
  }

  void start_lead(Label const& label, bool misprinted) {
    RawLead lead;
    lead.label = label;
    lead.misprinted = misprinted;
    lead.last_heading = remarks_.take_heading();
    leads_.begin(lead, at_, gap_);
    remarks_.close();
    leads_.add_piece(at_, label.text_at);
    account(LineKind::lead, misprinted ? "label misprinted" : "label");
  }

  // The second line of a key's title.
  bool take_in_title(SourceLine const& line) {
    if (gap_ || numbering_.exact || !remarks_.has_heading()) return false;
    auto const& above = remarks_.heading_end();
    if (above.line + 1 != at_ ||
        !goes_on_with_title(title_up_to(above.line), line.text, numbering_))
      return false;
    // "Key to females of" / "Ausella" / "from the marshes": as web pages set what is in italics.
    auto const ends = [this](std::size_t at) {
      return ahead_.gap_after(at) || ahead_.label_follows(at);
    };
    bool const third = at_ + 1 < lines_.size() && ends(at_ + 1) &&
                       is_lower(code_point_at(lines_[at_ + 1].text, 0).value);
    if (!ends(at_) && !third) return false;
    remarks_.extend_heading(piece_of(line, 0));
    account(LineKind::heading, "goes on with the title above");
    return true;
  }

  // The lines of the title that ends in line `last`, from the one that speaks of a key.
  [[nodiscard]] std::string title_up_to(std::size_t last) const {
    constexpr std::size_t kMostLines = 3;
    auto first = last;
    while (first > 0 && last - first + 1 < kMostLines && !mentions_key(lines_[first].text) &&
           !lines_[first - 1].text.empty()) {
      --first;
    }
    if (!mentions_key(lines_[first].text)) first = last;
    std::string title{lines_[first].text};
    for (auto i = first + 1; i <= last; ++i) title += " " + std::string{lines_[i].text};
    return title;
  }

  // Lines without a label of their own that belong to the lead before.
  bool take_in_lead(SourceLine const& line) {
    if (!numbering_.exact && leads_.resumes_leaders(line)) {
      remarks_.close();
      leads_.set_progress(Progress::leaders);
      leads_.add_piece(at_, 0);
      account(LineKind::destination, "goes on with the leaders of the lead before");
      return true;
    }
    // "… — Tuscany." above "busa Roe": what stands behind the dash only looks like a genus.
    bool const soft = leads_.progress() == Progress::soft;
    if (gap_ && (soft || leads_.progress() == Progress::open) && !leads_.empty() &&
        !remarks_.is_open() && ahead_.is_name_between_blanks(at_) &&
        (!ahead_.ends_in_name(leads_.last_line()) || (soft && is_genusless_name(line.text)))) {
      take_destination();
      return true;
    }
    switch (leads_.progress()) {
      case Progress::none:
        if (!begins_.begins_first_couplet(here())) return false;
        start_unlabelled();
        return true;
      case Progress::leaders:
        // Leaders to nothing: a blank line or a note says that nothing will come.
        if (remarks_.is_open() || starts_note(line.text) ||
            (gap_ && !leads_.usually_apart() && !ahead_.is_name_on_its_own(at_))) {
          return false;
        }
        leads_.add_piece(at_, 0);
        account(LineKind::destination, "after the leaders of the line before");
        return true;
      case Progress::open:
        return !(numbering_.exact && gap_) && take_in_open_lead(line);
      case Progress::soft:
      case Progress::named:
      case Progress::done:
        return take_after_destination(line);
    }
    return false;
  }

  bool take_in_open_lead(SourceLine const& line) {
    if (gap_ && !continues_after_blank(line)) return false;
    if (starts_note(line.text)) return false;
    // "… or none" / "14. AUSELLA (Marshwort)." ends the last lead, and the accounts begin.
    if (gap_ && is_numbered_genus_alone(leads_.last_line())) return false;
    // "… projecting busa, p. 117." / "20. Ausella cusa, Roe.": the first account.
    if (!numbering_.exact && heads_account_in_full(line.text) && ends_in_page(leads_.last_line())) {
      return false;
    }
    // A note in the middle of a lead goes on until leaders show that the lead does.
    if (remarks_.is_open() && !gap_ &&
        split_at_leader(line.text, numbering_).kind == LeaderKind::none) {
      return false;
    }
    bool const leads_on = split_at_leader(line.text, numbering_).kind != LeaderKind::none;
    if (remarks_.is_caption() && !gap_ && !leads_on) return false;
    if (starts_caption(line.text) && (gap_ || remarks_.is_caption() || ahead_.gap_after(at_)))
      return false;
    remarks_.close();
    if (begins_.begins_second_lead(here())) {
      start_unlabelled();
      return true;
    }
    bool const below_number = !numbering_.exact && !gap_ && leads_.ends_in_species_number() &&
                              is_species_alone(line.text);
    // "… a shallow emar-" / "gination busa (Roe)"
    bool const within_word =
        leads_.last_line().ends_with('-') && is_lower(code_point_at(line.text, 0).value);
    bool const name =
        below_number || (!numbering_.exact && !gap_ && !within_word && !line.goes_on &&
                         ahead_.is_name_on_its_own(at_) && !leads_on);
    auto const number = read_reference(strip_pointer(line.text));
    // "… the coxa" / "II.": no couplet is numbered so.
    bool const of_key =
        number && (number->family == LabelFamily::digits || number->family == numbering_.family);
    // "… truncate behind (fig." / "4)"
    bool const in_bracket = line.text.ends_with(')') && leaves_bracket_open(leads_.last_line());
    bool const alone = name || (of_key && !in_bracket && !line.goes_on);
    leads_.add_piece(at_, 0);
    leads_.last().destination_told = name;
    if (alone) leads_.set_progress(Progress::done);
    account(alone ? LineKind::destination : LineKind::continuation,
            alone ? "destination on a line of its own" : "the lead before has no end yet");
    return true;
  }

  // The whole line is the lead's destination.
  void take_destination() {
    leads_.add_piece(at_, 0);
    leads_.last().destination_told = true;
    leads_.set_progress(Progress::done);
    account(LineKind::destination, "destination on a line of its own");
  }

  // A blank line within a lead whose destination is missing: manuscripts with blank lines
  // everywhere.
  [[nodiscard]] bool continues_after_blank(SourceLine const& line) const {
    if (starts_caption(line.text) || starts_note(line.text) || names_a_key(line.text)) return false;
    if (is_numbered_name_in_full(line.text)) return false;  // the title of an account
    if (leads_.ends_in_epithet_alone()) return false;
    auto const first = code_point_at(line.text, 0).value;
    // "88": a page.
    if (is_number_only(line.text) && !numbering_.numbers.empty()) {
      return numbering_.has_number(number_of(line.text.substr(0, line.text.find('.'))));
    }
    if (is_digit(first)) {
      // "1 For previous papers of this series see …": a footnote, where "4. A. busa Roe, 1853" may
      // be what the lead leads to.
      constexpr std::size_t kFewestWords = 8;
      auto const number = read_label(line.text);
      bool const sentence = number && number->end == LabelEnd::none &&
                            starts_with_upper(line.text.substr(number->text_at)) &&
                            words_of(line.text, kFewestWords).size() == kFewestWords;
      return !sentence;
    }
    if (is_lower(first)) return true;
    // "Long. 1,5 mm 11. busa Roe"
    constexpr std::size_t kLongestEnd = 60;  // bytes
    auto const text = without_closing_marks(line.text);
    auto const species = numbered_end(text, kLongestEnd, is_numbered_epithet);
    if (species > 0 && species < text.size()) return true;
    return ahead_.ends_in_leaders(at_) || line.indent > lines_[leads_.last().line].indent ||
           name_ends_before_label();
  }

  // "Toute la France." / "" / "busa Roe" / "" / "— Tibias jaunes": places, and the name that the
  // lead leads to, right before the next label.
  [[nodiscard]] bool name_ends_before_label() const {
    constexpr std::size_t kMostLines = 4;
    std::size_t filled = 0;
    auto last = at_;
    for (auto i = at_; i < lines_.size() && filled <= kMostLines; ++i) {
      if (lines_[i].text.empty()) continue;
      if (i > at_ && ahead_.label_at(i)) {
        auto const words = words_of(lines_[last].text);
        if (words.size() < 2) return false;
        auto const epithet = words[words.size() - 2];
        auto const name = lines_[last].text.substr(
            static_cast<std::size_t>(epithet.data() - lines_[last].text.data()));
        return is_genusless_name(name) && has_strict_latin_ending(epithet);
      }
      last = i;
      ++filled;
    }
    return false;
  }

  bool take_after_destination(SourceLine const& line) {
    if (remarks_.is_caption()) return false;
    bool const soft = leads_.progress() == Progress::soft;
    if (!gap_ && !numbering_.exact && leads_.continues_name_in_capitals(line)) {
      leads_.add_piece(at_, 0);
      leads_.set_progress(Progress::done);
      account(LineKind::continuation, "goes on with the name before");
      return true;
    }
    if (soft && !gap_ && !remarks_.is_open() && !numbering_.exact &&
        leads_.ends_in_species_number() &&
        (is_species_alone(line.text) || is_short_species_alone(line.text))) {
      leads_.add_piece(at_, 0);
      leads_.set_progress(Progress::named);
      account(LineKind::continuation, "the species whose number ends the line before");
      return true;
    }
    if (!gap_ && !remarks_.is_open() && !numbering_.exact && leads_.goes_on_with_taxon(line.text)) {
      leads_.add_piece(at_, 0);
      ++leads_.last().further_taxa;
      leads_.set_progress(Progress::done);
      account(LineKind::destination, "a further taxon that the lead above leads to");
      return true;
    }
    if (begins_.begins_second_lead(here())) {
      start_unlabelled();
      return true;
    }
    // What seemed to be the destination was one of the lead's words.
    bool const begins_with_leaders = leads_.progress() != Progress::done &&
                                     split_at_leader(line.text, numbering_).words_end == 0;
    bool const goes_on = leads_.progress() == Progress::named &&
                         !is_upper(code_point_at(line.text, 0).value) &&
                         !(line.text.front() == '(' && starts_with_page(line.text.substr(1)));
    // "… in meadows" / "               bus Roe": the words only looked like a name, or "— Elba"
    // like a destination.
    bool const named = leads_.progress() == Progress::named;
    if ((named || soft) && !gap_ && !remarks_.is_open() && !numbering_.exact &&
        ahead_.is_far_in(at_) && ahead_.is_name_on_its_own(at_)) {
      take_destination();
      return true;
    }
    // A heading parts the lead from what stands beneath it.
    bool const apart = gap_ || remarks_.is_open() || remarks_.has_heading();
    if (!apart && (goes_on || begins_with_leaders)) {
      leads_.set_progress(Progress::open);
      leads_.add_piece(at_, 0);
      account(LineKind::continuation, "goes on with the words before");
      return true;
    }
    if (!soft && !apart && leads_.continues_destination(at_)) {
      leads_.add_piece(at_, 0);
      leads_.set_progress(Progress::done);
      account(LineKind::continuation, "goes on with the destination before");
      return true;
    }
    if (starts_note(line.text) || starts_caption(line.text)) return false;
    if (soft && !apart && !furniture_.follows_ended_lead(at_)) {
      leads_.add_piece(at_, 0);
      account(LineKind::continuation, "the lead before may end in a number of its words");
      return true;
    }
    if (starts_footnote(line.text) || line.text.front() == '[' || line.text.front() == '(' ||
        names_a_key(line.text)) {
      return false;
    }
    if (begins_.begins_unlabelled_lead(here())) {
      start_unlabelled();
      sorted_.accounts.back().reason = "no label, but leaders and a destination";
      return true;
    }
    return false;
  }

  void start_unlabelled() {
    Label none;
    none.family = LabelFamily::dash;
    if (leads_.empty()) {  // of couplet 1, whose number is not printed
      none.family = LabelFamily::digits;
      none.number = 1;
    }
    start_lead(none, false);
    leads_.last().unlabelled = true;
    sorted_.accounts.back().reason = leads_.size() == 1
                                         ? "no label, but a destination before all labels"
                                         : "no label, as second leads here have none";
  }

  // --- notes, headings, prose -----------------------------------------------------------------

  void take_outside(SourceLine const& line) {
    bool const in_key = !leads_.empty();
    std::size_t text_at = 0;
    if (in_key && starts_couplet_note(line.text, text_at)) {
      remarks_.open(RemarkKind::couplet_note, piece_of(line, text_at), last_lead());
      account(LineKind::note, "note on a couplet");
    } else if (starts_caption(line.text) || remarks_.is_caption()) {
      remarks_.add_caption(piece_of(line, 0), last_lead());
      account(LineKind::figure, "caption");
    } else if (starts_footnote(line.text)) {
      remarks_.open(RemarkKind::footnote, piece_of(line, 0), last_lead());
      account(LineKind::footnote, "footnote sign");
    } else if (in_key && remarks_.is_open() && !gap_ && line.text.starts_with("Note: ")) {
      remarks_.open(RemarkKind::lead_note, piece_of(line, 0), last_lead());
      account(LineKind::note, "note");
    } else if (remarks_.is_open() && !gap_) {
      remarks_.extend(piece_of(line, 0));
      account(LineKind::note, "goes on with the text before");
    } else if (in_key && (starts_note(line.text) || is_remark_of_lead(line))) {
      remarks_.open(RemarkKind::lead_note, piece_of(line, 0), last_lead());
      account(LineKind::note, starts_note(line.text) ? "note" : "remark under a lead");
    } else if (is_heading(line)) {
      add_heading(line);
      account(LineKind::heading, in_key ? "heading between leads" : "heading before the key");
    } else if ((leads_.progress() == Progress::done || leads_.progress() == Progress::named) &&
               !gap_ && !remarks_.has_heading() && !is_dated_genus(lines_[at_ - 1].text)) {
      // Not behind a heading: there it is said of what that heads.
      remarks_.open(RemarkKind::lead_note, piece_of(line, 0), last_lead());
      account(LineKind::note, "stands directly beneath a lead");
    } else {
      remarks_.open(RemarkKind::prose, piece_of(line, 0), last_lead());
      account(LineKind::note, "prose");
    }
  }

  [[nodiscard]] bool is_remark_of_lead(SourceLine const& line) const {
    if (leads_.progress() == Progress::none) return false;
    bool const bracketed = line.text.front() == '[' || line.text.front() == '(';
    bool const deeper = line.indent > lines_[leads_.last().line].indent;
    if (gap_) return bracketed && deeper;
    return bracketed || deeper;
  }

  [[nodiscard]] bool is_heading(SourceLine const& line) const {
    if (line.is_title || !explicit_key_title(line.text).empty()) return true;
    if (line.text.size() > kLongestHeading) return false;
    if (names_a_key(line.text) || titles_genus(line.text) || is_dated_genus(line.text)) return true;
    if (auto const head = gap_ ? read_group_head(line.text) : std::nullopt; head && head->sure) {
      return true;
    }
    char const last = line.text.back();
    bool const stop = last == '.' && !ends_in_authored_genus(line.text);
    bool const sentence = stop || last == ';' || last == ',';
    bool const alone =
        ahead_.gap_after(at_) || ahead_.label_follows(at_) || at_ + 1 == lines_.size();
    return !sentence && alone;
  }
  void add_heading(SourceLine const& line) {
    remarks_.add_heading(piece_of(line, 0), last_lead());
    // What follows a heading belongs to no lead before it.
    if (leads_.progress() != Progress::none) leads_.set_progress(Progress::done);
  }

  [[nodiscard]] LineAtHand here() const { return {at_, gap_, page_above_}; }

  [[nodiscard]] std::uint32_t last_lead() const {
    return leads_.empty() ? kNone : static_cast<std::uint32_t>(leads_.size() - 1);
  }

  [[nodiscard]] Piece piece_of(SourceLine const& line, std::size_t from) const {
    return {line.begin + from, line.begin + line.text.size(), static_cast<std::uint32_t>(at_)};
  }

  void account(LineKind kind, std::string_view reason) {
    sorted_.accounts.push_back({lines_[at_].number, kind, reason});
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LeadPlan const* plan_;
  LinesAhead ahead_;
  LeadsSoFar leads_;
  RemarksSoFar remarks_;
  LeadBegins begins_;
  PageFurniture furniture_;
  std::vector<bool> heads_;
  std::vector<FootnoteLine> footnotes_;  // by line; empty where a plan tells the leads
  std::optional<LeadPlan> cells_;        // without a plan for all lines: those of a table's cells
  SortedLines sorted_;
  std::size_t at_{};
  bool gap_{true};           // blank lines stand directly before this line
  bool page_turned_{false};  // a page's number or head was read since the last line of words
  bool page_above_{false};   // one stands before the line at hand
  bool in_key_note_{false};  // of a key whose labels are exact
};

}  // namespace

SortedLines sort_lines(std::vector<SourceLine> const& lines, Numbering const& numbering,
                       std::size_t first_line, std::vector<LineAccount> accounts,
                       LeadPlan const* plan) {
  return Sorter{lines, numbering, std::move(accounts), plan}.run(first_line);
}

}  // namespace keydrift::printed
