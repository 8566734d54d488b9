#include "keydrift/formats/printed_footnotes.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

bool is_star(Label const& label) {
  return label.is_dash() && !label.printed.empty() &&
         label.printed.find_first_not_of('*') == std::string_view::npos;
}

class FootnoteFinder {
 public:
  FootnoteFinder(std::vector<SourceLine> const& lines, Numbering const& numbering,
                 LinesAhead const& ahead)
      : lines_{lines},
        numbering_{numbering},
        ahead_{ahead},
        notes_(lines.size(), FootnoteLine::none) {}

  std::vector<FootnoteLine> find() && {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const label = ahead_.label_at(i);
      auto const end = end_of_note(i, label);
      if (end > i) candidates_.emplace_back(i, end);
      if (label && end == i) follow(*label);
    }
    constexpr std::size_t kMostStars = 2;
    bool const stars_mark = stars_ > kMostStars || rivals_ < stars_ * 2;
    if (candidates_.empty() || !others_have_ends()) return std::move(notes_);
    for (auto const& [first, end] : candidates_) {
      if (stars_mark && lines_[first].text.starts_with('*')) continue;
      notes_[first] = FootnoteLine::first;
      std::fill(notes_.begin() + static_cast<std::ptrdiff_t>(first) + 1,
                notes_.begin() + static_cast<std::ptrdiff_t>(end), FootnoteLine::further);
    }
    return std::move(notes_);
  }

 private:
  // Notes which couplets have two leads, one directly behind the other.
  void follow(Label const& label) {
    bool const rival = label.is_dash() || label.number == number_;
    if (!rival) {
      if (label.number == 1) complete_.clear();  // another key
      number_ = label.number;
      open_ = true;
      return;
    }
    complete_.insert(number_);
    open_ = false;
    ++rivals_;
  }

  // The line behind the note that begins at line i; i where none does.
  [[nodiscard]] std::size_t end_of_note(std::size_t i, std::optional<Label> const& label) {
    if (number_ == 0 || lines_[i].text.empty()) return i;
    auto const text = lines_[i].text;
    auto const first = static_cast<unsigned char>(text.front());
    if (!is_digit(first) && first != '*') return i;
    if (ahead_.is_numbered_species(i)) return i;
    auto const sign = label ? label : read_label(text);
    if (!sign || sign->text_at >= text.size()) return i;
    if (!starts_with_upper(text.substr(sign->text_at))) return i;
    if (is_star(*sign)) {
      if (label) ++stars_;
    } else if (!is_number_of_note(*sign) || (label && !complete_.contains(sign->number))) {
      return i;
    }
    auto const words = text.substr(sign->text_at);
    bool const genus =
        words.find(' ') == std::string_view::npos && is_latin_genus(without_full_stop(words));
    auto above = i;
    while (above > 0 && lines_[above - 1].text.empty()) --above;
    bool const open = above > 0 && !ahead_.ends_in_destination(above - 1);
    if ((genus && open) || is_genus_alone(words)) return i;
    auto const end = end_of_sentence(i);
    return end > i && stands_at_foot(i, end) ? end : i;
  }

  // "1 Female unknown."
  [[nodiscard]] static bool is_number_of_note(Label const& label) {
    constexpr std::uint32_t kMost = 9;  // notes on a page
    return label.family == LabelFamily::digits && label.letter.empty() && label.marks == 0 &&
           label.back.empty() && !label.decimal && label.number > 0 && label.number <= kMost;
  }

  // A sentence of a few lines without leaders or a destination.
  [[nodiscard]] std::size_t end_of_sentence(std::size_t i) const {
    constexpr std::size_t kMostLines = 3;
    for (auto at = i; at < std::min(lines_.size(), i + kMostLines); ++at) {
      auto const text = lines_[at].text;
      if (text.empty() || (at > i && ahead_.label_at(at)) || has_row_of_dots(text)) return i;
      if (!text.ends_with('.')) continue;
      if (is_name_broken_off(at)) return i;
      auto const reference = trailing_reference(text, &numbering_);
      bool const leads = (reference && numbering_.has_number(reference->reference.number)) ||
                         ahead_.ends_in_name(text);
      return leads ? i : at + 1;
    }
    return i;
  }

  // "… as long as wide    A." / "bus"
  [[nodiscard]] bool is_name_broken_off(std::size_t i) const {
    auto const text = lines_[i].text;
    if (i + 1 >= lines_.size() || !is_abbreviated(text.substr(last_word_begin(text)))) return false;
    auto const next = lines_[i + 1].text;
    return is_epithet(without_end(next.substr(0, next.find(' '))));
  }

  // The count of couplets goes on behind the note, or the lead that it parts; and above stands a
  // lead, not the title of another key.
  [[nodiscard]] bool stands_at_foot(std::size_t i, std::size_t end) const {
    auto above = i;
    while (above > 0 && (lines_[above - 1].text.empty() || is_ruled(lines_[above - 1].text))) {
      --above;
    }
    constexpr std::size_t kMostLines = 12;  // of a lead
    auto begin = above;
    while (begin > 0 && above - begin < kMostLines && !ahead_.label_at(begin - 1)) {
      if (lines_[begin - 1].text.empty()) return false;
      --begin;
    }
    if (begin == 0 || above - begin == kMostLines) return false;
    auto const next = ahead_.next_filled(end);
    // "* Aus dus is not included." as the last line of all, beneath the second of two leads.
    if (next == lines_.size()) return lines_[i].text.front() == '*' && complete_.contains(number_);
    auto const label = ahead_.label_at(next);
    if (!label) return is_lower(code_point_at(lines_[next].text, 0).value);
    if (label->is_dash()) return open_ && !is_star(*label);
    return label->number > number_ || (open_ && label->number == number_);
  }

  // Four of five other leads reach a destination.
  [[nodiscard]] bool others_have_ends() const {
    std::size_t leads = 0;
    std::size_t ended = 0;
    std::size_t c = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      while (c < candidates_.size() && candidates_[c].second <= i) ++c;
      if (!ahead_.label_at(i) || (c < candidates_.size() && candidates_[c].first <= i)) continue;
      ++leads;
      // A note may part the lead from its end.
      bool const parted = c < candidates_.size() && candidates_[c].first <= i + 2;
      if (parted || ahead_.ends_in_destination(i)) ++ended;
    }
    return ended * 5 >= leads * 4;
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LinesAhead const& ahead_;
  std::vector<FootnoteLine> notes_;
  std::vector<std::pair<std::size_t, std::size_t>> candidates_;  // first line, line behind
  std::unordered_set<std::uint32_t> complete_;                   // couplets with two leads
  bool open_{false};                                             // the last one has one
  std::uint32_t number_{};                                       // of the last lead; 0 before all
  std::size_t rivals_{};  // leads that are not the first of their couplets
  std::size_t stars_{};   // lines that a star marks
};

}  // namespace

std::vector<FootnoteLine> find_footnotes(std::vector<SourceLine> const& lines,
                                         Numbering const& numbering, LinesAhead const& ahead) {
  return FootnoteFinder{lines, numbering, ahead}.find();
}

namespace {

constexpr std::size_t kMostSigns = 3;  // "***"

// "*", "†", "‡", "§", "¹": what footnotes are marked with beside digits.
bool is_footnote_sign(char32_t c) {
  return c == '*' || c == 0xA7 || c == 0xB9 || c == 0xB2 || c == 0xB3 || c == 0x2020 ||
         c == 0x2021 || (c >= 0x2074 && c <= 0x2079);
}

// May the sign at `at` stand behind the word before it?  "mm²" is a unit, "B2" a code.
bool marks_word(std::string_view text, std::size_t at, bool digit) {
  std::size_t letters = 0;
  auto begin = at;
  while (begin > 0) {
    auto const c = code_point_before(text, begin);
    if (!is_letter(c.value) || (digit && !is_lower(c.value) && letters == 0)) break;
    begin -= c.length;
    ++letters;
  }
  constexpr std::size_t kFewestBeforeDigit = 4;
  constexpr std::size_t kFewestBeforeSign = 3;
  bool const star = !digit && text[at] == '*';
  bool const bracket = !digit && at > 0 && text[at - 1] == ')';
  return star || bracket || letters >= (digit ? kFewestBeforeDigit : kFewestBeforeSign);
}

// Where the text bears the sign behind a word; npos where it does not.
std::size_t find_sign(std::string_view text, std::string_view sign) {
  bool const digit = is_digit(code_point_at(sign, 0).value);
  for (auto at = text.find(sign); at != std::string_view::npos; at = text.find(sign, at + 1)) {
    auto const before = code_point_before(text, at).value;
    auto const behind = code_point_at(text, at + sign.size()).value;
    bool const touches = at > 0 && (is_letter(before) || before == ')');
    bool const ends = behind == 0 || is_blank(behind) || behind == ',' || behind == ';' ||
                      behind == ':' || behind == '.';
    if (touches && ends && marks_word(text, at, digit)) return at;
  }
  return std::string_view::npos;
}

// The remark holds nothing but the sign, which touches the name: "Aus bus 2" has a number.
bool name_bears(Lead const& lead, std::string_view sign) {
  if (lead.taxon_remark != sign) return false;
  bool const in_front = lead.destination_printed.starts_with(sign) && sign.front() == '*';
  return in_front || find_sign(lead.destination_printed, sign) != std::string::npos;
}

// What stands behind it goes on with the source where it stood.
void erase_in_words(Lead& lead, std::size_t at, std::size_t size) {
  auto const behind = place_in_text(lead, at + size, 0);
  lead.text.erase(at, size);
  bool const rest = at < lead.text.size();
  std::vector<TextRun> runs;
  bool told = lead.runs.empty() || !rest;
  for (auto run : lead.runs) {
    if (!told && run.text_begin > at) {
      if (run.text_begin > at + size) runs.push_back({at, behind});
      told = true;
    }
    if (run.text_begin > at) run.text_begin -= std::min(size, run.text_begin - at);
    if (run.text_begin < lead.text.size() || runs.empty()) runs.push_back(run);
  }
  if (!told) runs.push_back({at, behind});
  lead.runs = std::move(runs);
}

}  // namespace

std::string_view sign_of_footnote(std::string_view text) {
  auto const first = code_point_at(text, 0);
  std::size_t end = 0;
  if (is_digit(first.value)) {
    end = first.value == '0' ? 0 : 1;
  } else {
    for (std::size_t i = 0; i < kMostSigns; ++i) {
      auto const c = code_point_at(text, end);
      if (!is_footnote_sign(c.value)) break;
      end += c.length;
    }
  }
  if (end == 0 || end >= text.size()) return {};
  auto words = end;
  if (text[words] == ')' || text[words] == '.') ++words;
  auto const blanks = skip_blanks(text, words);
  if (is_digit(first.value) && blanks == words) return {};
  return is_upper(code_point_at(text, blanks).value) ? text.substr(0, end) : std::string_view{};
}

namespace {

// "* Introduced. ** Extinct.", "1 In water. 2 Only the type.": several notes in one paragraph.
bool holds_another_footnote(std::string_view text, std::string_view sign) {
  bool const digit = is_digit(code_point_at(sign, 0).value);
  for (auto stop = text.find(". "); stop != std::string_view::npos;
       stop = text.find(". ", stop + 1)) {
    auto const behind = text.substr(stop + 2);
    auto const next = sign_of_footnote(behind);
    if (next.empty()) continue;
    bool const next_digit = is_digit(code_point_at(next, 0).value);
    if (!digit && !next_digit) return true;
    // "1 Only the type. 3 Females are known." counts them.
    if (digit && next_digit && next.front() == sign.front() + 1) return true;
  }
  return false;
}

}  // namespace

bool put_footnote_to_lead(Edition& edition, std::span<LeadId const> leads, std::string_view text) {
  auto const sign = sign_of_footnote(text);
  if (sign.empty()) return false;
  Lead* found = nullptr;
  for (auto const id : leads) {
    auto& lead = edition[id];
    bool const bears = find_sign(lead.text, sign) != std::string::npos || name_bears(lead, sign);
    // "Carabus ruber *": behind a blank the sign may be the footnote's, or say something of its
    // own.
    if (!bears && lead.taxon_remark != sign) continue;
    if (!bears || found != nullptr) return false;
    found = &lead;
  }
  if (found == nullptr || holds_another_footnote(text, sign)) return false;
  if (auto const at = find_sign(found->text, sign); at != std::string::npos) {
    erase_in_words(*found, at, sign.size());
  } else {
    found->taxon_remark.clear();
  }
  auto words = sign.size();
  if (text[words] == ')' || text[words] == '.') ++words;
  found->notes.push_back(squeeze(text.substr(words)));
  return true;
}

}  // namespace keydrift::printed
