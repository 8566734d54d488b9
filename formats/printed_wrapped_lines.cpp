#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// No sentence ends in these; a number may follow (English, German, French, Spanish, Portuguese).
constexpr std::array kHanging{
    "the"sv,     "at"sv,         "about"sv,    "least"sv,   "most"sv,   "only"sv,   "nearly"sv,
    "almost"sv,  "between"sv,    "has"sv,      "have"sv,    "having"sv, "is"sv,     "are"sv,
    "bearing"sv, "ca."sv,        "ca"sv,       "c."sv,      "cf."sv,    "(cf."sv,   "(see"sv,
    "fig."sv,    "figs"sv,       "figs."sv,    "(fig."sv,   "(figs"sv,  "(figs."sv, "figure"sv,
    "(p."sv,     "(pp."sv,       "(page"sv,    "figures"sv, "plate"sv,  "pl."sv,    "abb."sv,
    "(abb."sv,   "compare"sv,    "(compare"sv, "mit"sv,     "bis"sv,    "auf"sv,    "etwa"sv,
    "nur"sv,     "mindestens"sv, "ist"sv,      "sind"sv,    "hat"sv,    "haben"sv,  "que"sv,
    "avec"sv,    "environ"sv,    "con"sv,      "com"sv,     "en"sv,     "em"sv,     "y"sv,
    "e"sv,       "×"sv,          "x"sv,        "="sv,       "+"sv,      "of"sv,     "des"sv,
    "der"sv,     "dem"sv,        "den"sv,      "das"sv,     "die"sv,    "zum"sv,    "zur"sv,
    "vom"sv,     "am"sv,         "im"sv,       "beim"sv,    "du"sv,     "de"sv,     "les"sv,
    "au"sv,      "aux"sv,        "del"sv,      "los"sv,     "las"sv,    "dos"sv,    "do"sv,
    "da"sv,      "della"sv,      "dei"sv};

constexpr std::size_t kMostLinesBack = 8;  // of a lead, looked back at

// Behind the digits of "2 – 3 ..... 4", "1 + 2 setae", "1 : 2", a sign and another number.
bool goes_on_as_formula(std::string_view text, bool labels_bear_dashes) {
  std::size_t at = 0;
  while (at < text.size() && is_digit(static_cast<unsigned char>(text[at]))) ++at;
  if (at == 0 || skip_blanks(text, at) == at) return false;  // "Ann. Marsh." / "2: 460"
  at = skip_blanks(text, at);
  auto const sign = code_point_at(text, at);
  bool const dash = is_dash(sign.value) && !labels_bear_dashes;
  if (!dash && sign.value != '+' && sign.value != ':' && sign.value != 0xD7) return false;
  return is_digit(code_point_at(text, skip_blanks(text, at + sign.length)).value);
}

bool begins_with_dots(std::string_view words) {
  return words.starts_with("...") || words.starts_with(". .") || words.starts_with("\u2026");
}

bool ends_in_word(std::string_view text) {
  return is_letter(code_point_before(text, text.size()).value);
}

bool hangs_on_words(std::string_view text) {
  auto const word = text.substr(last_word_begin(text));
  if (word.empty()) return false;
  auto const folded = fold(word);
  bool const of_list = word.ends_with(',') && is_digit(static_cast<unsigned char>(word.front()));
  return of_list || word == "(" || is_comparing(folded) || is_separator(folded) ||
         is_one_of(kHanging, folded);
}

class Marker {
 public:
  explicit Marker(std::vector<SourceLine>& lines)
      : lines_{lines}, numbering_{decide_numbering(lines)} {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& line = lines_[i];
      auto const label = numbering_.label_of(line);
      if (!label || is_numbered_name(line.text) || is_numbered_name_in_full(line.text)) continue;
      labelled_.push_back({i, *label});
      if (label->is_dash()) continue;
      ++numbers_;
      ++styles_[label->style()];
      if (starts_with_upper(lines_[i].text.substr(label->text_at))) ++upper_;
    }
    dashes_ = labelled_.size() - numbers_;
    main_style_ =
        static_cast<unsigned>(std::max_element(styles_.begin(), styles_.end()) - styles_.begin());
  }

  void mark() && {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      bool const label = next_ < labelled_.size() && labelled_[next_].line == i;
      if (i > 0 && (begins_with_unit(i, label) || is_page_in_bracket(i) ||
                    is_figure_behind_comma(i) || (label ? is_of_words() : is_end_of_lead(i)))) {
        lines_[i].goes_on = lines_[i].is_no_lead = true;
      }
      if (!label) continue;
      if (!lines_[i].goes_on) before_.push_back(labelled_[next_]);
      ++next_;
    }
  }

 private:
  struct Labelled {
    std::size_t line{};
    Label label;
  };

  [[nodiscard]] std::string_view above(std::size_t i) const { return lines_[i - 1].text; }

  [[nodiscard]] bool has_end(std::string_view text) const {
    auto const kind = split_at_leader(text, numbering_).kind;
    return kind != LeaderKind::none && kind != LeaderKind::dash && kind != LeaderKind::blank;
  }

  // "… directed cephalad," / "fig. 322 busa, p. 135"
  [[nodiscard]] bool is_figure_behind_comma(std::size_t i) const {
    auto const before = above(i);
    return before.ends_with(',') && is_lower(code_point_at(lines_[i].text, 0).value) &&
           starts_caption(lines_[i].text);
  }

  // "… length 4.5-5.2" / "mm."
  [[nodiscard]] bool begins_with_unit(std::size_t i, bool label) const {
    auto const before = above(i);
    if (before.empty()) return false;
    auto const text = lines_[i].text;
    auto const unit_at = [text](std::size_t at) {
      auto const word = text.substr(at, std::min(text.find(' ', at), text.size()) - at);
      return is_unit_of_length(without_closing_marks(word));
    };
    if (is_digit(static_cast<unsigned char>(before.back()))) return unit_at(0);
    // "… to tip of wings" / "9 mm. or more 9"
    auto const figures = std::min(text.find_first_not_of("0123456789.,"), text.size());
    // "5 mm" alone is the scale of a drawing.
    constexpr std::size_t kFewestWords = 4;
    bool const words = label || words_of(text, kFewestWords).size() == kFewestWords;
    return words && figures > 0 && figures < text.size() && text[figures] == ' ' &&
           ends_in_word(before) && unit_at(figures + 1) && !has_end(before);
  }

  // A lead begins above line `i` and has no leaders, with nothing but its own lines between.
  [[nodiscard]] bool is_open_above(std::size_t i) const {
    if (before_.empty() || i - before_.back().line > kMostLinesBack) return false;
    for (auto j = before_.back().line; j < i; ++j) {
      auto const text = lines_[j].text;
      bool const first = j == before_.back().line;
      if (text.empty()) return false;
      if (has_end(first ? text.substr(before_.back().label.text_at) : text)) return false;
    }
    return true;
  }

  // "FIGURE 9. Aus bus, male. G1, gnathopod; U3, uropod" / "3. Scale bars 1 mm."
  [[nodiscard]] bool is_in_caption(std::size_t i) const {
    constexpr std::size_t kFullLine = 60;  // bytes
    return above(i).size() >= kFullLine && starts_caption(above(i)) && ends_in_word(above(i)) &&
           !has_end(lines_[i].text);
  }

  // The number of the last couplet, or the next one.
  [[nodiscard]] bool is_due(std::uint32_t number) const {
    auto last = before_.rbegin();
    while (last != before_.rend() && last->label.is_dash()) ++last;
    auto const at = last == before_.rend() ? 0 : last->label.number;
    return number == at || number == at + 1;
  }

  // "… unicolorous ... (p." / "47) ... Aus bus"
  [[nodiscard]] bool is_page_in_bracket(std::size_t i) const {
    auto const before = above(i);
    auto const word = before.substr(last_word_begin(before));
    auto const text = lines_[i].text;
    auto const close = text.find_first_not_of("0123456789");
    return word.starts_with('(') && is_page_word(word.substr(1)) && close > 0 &&
           close != std::string_view::npos && text[close] == ')';
  }

  [[nodiscard]] bool is_of_words() const {
    auto const i = labelled_[next_].line;
    auto const& label = labelled_[next_].label;
    if (above(i).empty() || lines_[i].starts_page || lines_[i].told) return false;
    // "              12. bus (Roe)" beneath the words that lead to it.
    if (label.number > kMostCouplets || is_numbered_taxon(lines_[i].text)) return false;
    // "310-" / "380 µm" is joined as broken words are.
    if (is_dash(code_point_before(above(i), above(i).size()).value)) return false;
    if (is_in_caption(i) && !is_due(label.number)) return true;
    bool const number = label.family == LabelFamily::digits && is_number(i, label);
    bool const dash = label.is_dash() && (is_end_of_range(i, label) || is_between_rivals(i));
    return (number || dash) && is_open_above(i);
  }

  // "… 3.0" / "– 3.5 mm ...... 2"
  [[nodiscard]] bool is_end_of_range(std::size_t i, Label const& label) const {
    auto const text = lines_[i].text;
    bool const range = is_dash(code_point_at(text, 0).value) &&
                       is_digit(code_point_at(text, label.text_at).value) &&
                       is_digit(code_point_before(above(i), above(i).size()).value);
    return range && is_lead_too_many();
  }

  // "3a Wings clear." / "— In fens. bus Roe" / "3b Wings dark", where rivals bear numbers.
  [[nodiscard]] bool is_between_rivals(std::size_t i) const {
    if (trailing_reference(above(i), &numbering_)) return false;  // "… dark band, 2." / "— Wings"
    if (dashes_ * 3 >= numbers_ || before_.empty() || next_ + 1 >= labelled_.size()) return false;
    auto const& one = before_.back().label;
    auto const& other = labelled_[next_ + 1].label;
    bool const numbered = !one.is_dash() && one.number == other.number;
    return numbered && (one.letter != other.letter || one.marks != other.marks);
  }

  [[nodiscard]] bool is_number(std::size_t i, Label const& label) const {
    auto const words = lines_[i].text.substr(label.text_at);
    if (words.empty()) return false;
    bool const dashed = main_style_ % 16 / 2 == static_cast<unsigned>(LabelEnd::dash);
    if (goes_on_as_formula(lines_[i].text, dashed) || closes_bracket(i, label)) return true;
    bool const too_many = is_lead_too_many();
    bool const odd = is_odd(label);
    if (!too_many && !odd) return false;
    if (too_many && begins_with_dots(words)) return true;
    bool const small = is_lower(code_point_at(words, 0).value);
    if (small && upper_ * 4 >= (numbers_ - 1) * 3) return true;
    return hangs_on_words(above(i)) || (too_many && comes_again() && ends_in_word(above(i)));
  }

  // "(Figs 1," / "2) ...... 3"; labels such as "2)" need more than a bracket that was lost.
  [[nodiscard]] bool closes_bracket(std::size_t i, Label const& label) const {
    auto const text = lines_[i].text;
    auto const bracket = text.find_first_of("()");
    if (bracket == text.npos || text[bracket] == '(' || !leaves_bracket_open(above(i)))
      return false;
    bool const of_label = label.end == LabelEnd::parenthesis && bracket < label.text_at;
    return !of_label || main_style_ != label.style() || hangs_on_words(above(i));
  }

  // Hardly another label looks so.
  [[nodiscard]] bool is_odd(Label const& label) const {
    constexpr std::size_t kFew = 2;
    auto const alike = styles_[label.style()];
    return label.style() != main_style_ && alike <= kFew && styles_[main_style_] >= kFew * alike;
  }

  // Without this one couplets have their two leads, with it one has a single lead or three.
  [[nodiscard]] bool is_lead_too_many() const {
    if (before_.empty()) return false;
    return are_seconds_dashes() ? is_too_many_beside_dashes() : is_too_many_beside_numbers();
  }

  // Dashes of the couplet at hand, those before the label and behind it.
  [[nodiscard]] bool is_too_many_beside_dashes() const {
    constexpr std::size_t kMost = 3;  // more are no couplet of two leads
    auto const& label = labelled_[next_].label;
    std::size_t dashes = label.is_dash() ? 1 : 0;
    auto first = before_.size();
    while (first > 0 && before_[first - 1].label.is_dash() && dashes < kMost) --first, ++dashes;
    if (first == 0) return false;
    for (auto j = next_ + 1; j < labelled_.size() && dashes < kMost; ++j, ++dashes) {
      if (!labelled_[j].label.is_dash()) break;
    }
    return dashes == (label.is_dash() ? 2U : 1U);
  }

  // "1. … tergites 1 and" / "2. Hind legs red" / "1. …", and behind the second lead of couplet 1
  // where couplet 2 has three leads.
  [[nodiscard]] bool is_too_many_beside_numbers() const {
    auto const& label = labelled_[next_].label;
    if (next_ + 1 >= labelled_.size()) return false;
    auto const& one = before_.back().label;
    auto const& other = labelled_[next_ + 1].label;
    if (one.is_dash() || other.is_dash()) return false;
    if (one.number == other.number) {
      return label.number != one.number || label.style() != one.style() ||
             (!label.letter.empty() && label.letter == one.letter);
    }
    if (label.is_dash() || next_ + 2 >= labelled_.size()) return false;
    auto const& third = labelled_[next_ + 2].label;
    return one.number != label.number && other.number == label.number &&
           third.number == label.number && label.style() == other.style();
  }

  [[nodiscard]] bool are_seconds_dashes() const { return dashes_ * 2 >= numbers_; }

  // The couplet of that number begins further on.  Without dashes, its further leads do.
  [[nodiscard]] bool comes_again() const {
    constexpr std::size_t kMost = 4;  // labels on
    if (!are_seconds_dashes()) return false;
    auto const end = std::min(labelled_.size(), next_ + 1 + kMost);
    for (auto j = next_ + 1; j < end; ++j) {
      auto const& label = labelled_[j].label;
      if (!label.is_dash()) return label.number == labelled_[next_].label.number;
    }
    return false;
  }

  // "… epigyne as in" / "Fig. 8 ...... A. bus", "… setae on legs 1 +" / "2      4": the lead has no
  // other end.
  [[nodiscard]] bool is_end_of_lead(std::size_t i) const {
    auto const text = lines_[i].text;
    if (text.empty() || above(i).empty()) return false;
    if (starts_caption(text)) {
      // "… to a minute knob," / "fig. 519 ..... 7": a caption begins with a capital.
      bool const words = is_lower(code_point_at(text, 0).value) && above(i).ends_with(',');
      return (hangs_on_words(above(i)) || has_end(text)) && (is_open_above(i) || words);
    }
    if (!is_digit(static_cast<unsigned char>(text.front())) || !hangs_on_words(above(i))) {
      return false;
    }
    // "44      ROE ET AL." heads a page.
    auto const split = split_at_leader(text, numbering_);
    auto const destination = text.substr(split.destination_begin);
    bool const known = numbering_.read(destination).has_value() ||
                       is_abbreviated(destination.substr(0, destination.find(' ')));
    return is_number_only(text.substr(0, split.words_end)) && known && is_open_above(i);
  }

  std::vector<SourceLine>& lines_;
  Numbering numbering_;
  std::vector<Labelled> labelled_;
  std::size_t next_{};            // of these, the first at the line at hand or behind it
  std::vector<Labelled> before_;  // those before it, without numbers of the words
  std::array<std::size_t, Label::kStyles> styles_{};
  unsigned main_style_{};
  std::size_t numbers_{};
  std::size_t dashes_{};
  std::size_t upper_{};  // numbers with a capital behind them
};

}  // namespace

void mark_wrapped_lines(std::vector<SourceLine>& lines) { Marker{lines}.mark(); }

}  // namespace keydrift::printed
