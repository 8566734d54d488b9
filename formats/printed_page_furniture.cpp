#include "keydrift/formats/printed_page_furniture.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

Furniture PageFurniture::of(LineOnPage here) const {
  auto const& text = lines_[here.at].text;
  if (is_number_of_name(here)) return Furniture::number_of_name;
  if (is_page_number(text) &&
      !(leads_.progress() == Progress::done && !here.gap && leads_.hangs_open())) {
    return Furniture::page_number;
  }
  bool const wanted = leads_.progress() == Progress::open || leads_.progress() == Progress::soft ||
                      leads_.progress() == Progress::leaders;
  bool const leaders = wanted && !here.gap && text.front() == '.';
  if (is_ruled(text) && !leaders) return Furniture::ruled_line;
  if (is_number_only(text) && !number_is_of_key(here.at)) return Furniture::stray_number;
  if (is_title_cut_short(here.at)) return Furniture::head_in_lead;
  if (parts_leaders(here)) {
    return is_number_only(text) ? Furniture::stray_number : Furniture::head_in_lead;
  }
  if (is_caption_in_lead(here.at) || are_letters_of_figures(here) || are_words_of_figure(here)) {
    return Furniture::caption_in_lead;
  }
  if (!parts_a_lead(here)) return Furniture::none;
  return is_double_spaced(here.at) ? Furniture::words_in_lead : Furniture::head_in_lead;
}

bool PageFurniture::goes_on_behind_page(std::size_t at) const {
  auto const& text = lines_[at].text;
  // What ends the page may only look like a name.
  bool const named = leads_.progress() == Progress::named || leads_.progress() == Progress::soft;
  bool const broken = !leads_.empty() && leads_.last_line().ends_with('-');  // "A. bu-"
  bool const goes_on = (named || broken) && is_lower(code_point_at(text, 0).value);
  return (goes_on || !leads_.are_complete()) && !starts_caption(text) && !starts_note(text) &&
         !names_a_key(text);
}

bool PageFurniture::follows_ended_lead(std::size_t at) const {
  auto const text = lines_[at].text;
  if (numbering_.exact || plan_ != nullptr || is_lower(code_point_at(text, 0).value)) return false;
  if (!(ahead_.label_follows(at) || ahead_.gap_after(at)) || !ahead_.leads_have_ends()) {
    return false;
  }
  auto const reference = trailing_reference(leads_.last_line(), &numbering_);
  if (!reference || !numbering_.has_number(reference->reference.number)) return false;
  // "… as in Figs 3, 4" / "A. bus Roe"
  if (is_abbreviated(words_of(text, 1).front()) && is_latin_name(text)) return false;
  auto const end = trailing_name(text);
  if (!end) return !ahead_.ends_in_destination(at);
  // "Review of Ausella" is no destination.
  auto const words = trim_right(text.substr(0, *end));
  return fold(words.substr(last_word_begin(words))) == "of";
}

// "… Aus bus Smith," / "1900.", "…... Aus sp." / "1"
bool PageFurniture::is_number_of_name(LineOnPage here) const {
  if (leads_.progress() == Progress::none || here.gap || remarks_.is_open()) return false;
  bool const year = is_year(lines_[here.at].text) && leads_.last_line().ends_with(',');
  return year || (is_number_only(lines_[here.at].text) && leads_.continues_with_number(here.at));
}

bool PageFurniture::parts_a_lead(LineOnPage here) const {
  constexpr std::size_t kMostLines = 3;  // feet, heads
  constexpr std::size_t kLongest = 120;  // bytes
  if (plan_ != nullptr || leads_.empty() || !(here.gap || here.page)) return false;
  bool const broken = leads_.last_line().ends_with('-');  // "A. bu-"
  if (leads_.progress() != Progress::open && !broken) return false;
  auto const& text = lines_[here.at].text;
  if (starts_note(text) || starts_caption(text) || names_a_key(text)) return false;
  auto at = here.at;
  for (std::size_t n = 0; n < kMostLines; ++n) {
    auto const is_page = [this](std::size_t i) {
      return i < lines_.size() && is_number_only(lines_[i].text) && !number_is_of_key(i);
    };
    if (lines_[at].text.size() > kLongest || (ahead_.label_at(at) && !is_page(at))) return false;
    if (!ahead_.gap_after(at) && !is_page(at + 1)) return false;
    at = ahead_.next_filled(at + 1);
    if (at == lines_.size()) return false;
    if (is_lower(code_point_at(lines_[at].text, 0).value)) {
      return broken || ahead_.ends_in_destination(at);
    }
  }
  return false;
}

namespace {

// "FIGURE 3. Ausella busa": the number is closed and a sentence begins; "Fig. 3 and wings" goes on.
bool opens_caption(std::string_view text) {
  if (!starts_caption(text)) return false;
  auto const number = text.find_first_of("0123456789");
  if (number == std::string_view::npos) return false;
  auto const stop = text.find_first_of(".:", number);
  if (stop == std::string_view::npos || stop + 1 >= text.size()) return false;
  bool const number_only = text.substr(number, stop - number).find(' ') == std::string_view::npos;
  auto const words = skip_blanks(text, stop + 1);
  return number_only && words > stop + 1 && is_upper(code_point_at(text, words).value);
}

// The full stop behind a word, and none behind "3 mm."
bool ends_in_full_stop(std::string_view text) {
  constexpr std::size_t kShortest = 4;  // bytes, with the full stop
  auto const last = text.substr(last_word_begin(text));
  return last.ends_with('.') && (last.size() >= kShortest || last.find_first_of("0123456789") == 0);
}

// "Scale bars: 1 mm.", "Scale line = 0.5 mm"
bool tells_scale(std::string_view text) {
  static constexpr std::array kScales{"scale"sv,    "scales"sv, "échelle"sv,
                                      "massstab"sv, "escala"sv, "scala"sv};  // folded
  auto const words = words_of(text);
  return std::any_of(words.begin(), words.end(), [](std::string_view word) {
    return is_one_of(kScales, fold(word.substr(0, word.find_first_of(":=,."))));
  });
}

// "1 mm.", "A, B = 0.2 mm"
bool ends_in_length(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 2) return false;
  return is_unit_of_length(without_full_stop(words.back())) &&
         is_digit(static_cast<unsigned char>(words[words.size() - 2].back()));
}

}  // namespace

// "… in lateral view" / "FIGURE 3. Ausella busa, male habitus." / "strongly curved ..... 2": the
// words around hang together, and no small letter follows a full stop.
bool PageFurniture::is_caption_in_lead(std::size_t at) const {
  constexpr std::size_t kMostLines = 8;
  if (numbering_.exact || leads_.progress() != Progress::open) return false;
  auto const words = leads_.last_line();
  if (!is_letter(code_point_before(words, words.size()).value)) return false;
  auto const part = [this](std::size_t i) {
    return !lines_[i].text.empty() && !has_row_of_dots(lines_[i].text) && !ahead_.label_at(i);
  };
  auto first = at;
  while (first > 0 && at - first < kMostLines && !opens_caption(lines_[first].text) &&
         part(first)) {
    --first;
  }
  if (!opens_caption(lines_[first].text) || !leads_.end_directly_above(first)) return false;
  bool scaled = false;
  for (auto i = first; i + 1 < lines_.size() && i < first + kMostLines && part(i); ++i) {
    scaled = scaled || tells_scale(lines_[i].text);
    bool const closed =
        ends_in_full_stop(lines_[i].text) || (scaled && ends_in_length(lines_[i].text));
    bool const ends = i >= at && closed && is_lower(code_point_at(lines_[i + 1].text, 0).value);
    if (ends) return ahead_.ends_in_destination(i + 1);
  }
  return false;
}

// "a" and "c  d" between blank lines, "31   32": the letters and numbers of the figures of a plate.
bool PageFurniture::are_letters_of_figures(LineOnPage here) const {
  constexpr std::size_t kLongest = 24;  // bytes
  auto const text = lines_[here.at].text;
  bool const free = plan_ == nullptr && !numbering_.exact && !leads_.empty() &&
                    numbering_.family == LabelFamily::digits && text.size() <= kLongest;
  bool const above = here.at > 0 && lines_[here.at - 1].text.empty();
  if (!free || !above || !ahead_.gap_after(here.at)) return false;
  auto const words = words_of(text);
  bool const numbers = words.size() > 1 && std::all_of(words.begin(), words.end(), is_number_only);
  bool const letters = std::all_of(words.begin(), words.end(), [](std::string_view word) {
    return word.size() == 1 && is_lower(code_point_at(word, 0).value);
  });
  return numbers || (letters && !ahead_.label_at(here.at));
}

// "Revision of the genus Ausella..." / "59": the running title of a page, as journals cut it.
bool PageFurniture::is_title_cut_short(std::size_t at) const {
  constexpr std::string_view kCut = "...";
  auto text = lines_[at].text;
  bool const free = plan_ == nullptr && !numbering_.exact && leads_.progress() == Progress::open;
  if (!free || !text.ends_with(kCut) || !starts_with_upper(text) || ahead_.label_at(at))
    return false;
  text.remove_suffix(kCut.size());
  if (!is_letter(code_point_before(text, text.size()).value)) return false;
  if (at + 1 >= lines_.size() || !is_number_only(lines_[at + 1].text)) return false;
  return number_of(without_full_stop(lines_[at + 1].text)) > largest_;
}

// "..... Ausella busa" / "hollow spines   low tubercles" / "Fig. 3   Fig. 4": what parts of a
// drawing are named by, directly above its caption.
bool PageFurniture::are_words_of_figure(LineOnPage here) const {
  constexpr std::size_t kMostLines = 4;
  constexpr std::size_t kMostWords = 6;
  bool const free = plan_ == nullptr && !numbering_.exact && !here.gap && !leads_.empty();
  bool const ended = leads_.progress() == Progress::named || leads_.progress() == Progress::done;
  if (!free || !ended || !has_row_of_dots(leads_.last_line())) return false;
  auto const names_parts = [](std::string_view text) {
    auto const words = words_of(text, kMostWords + 1);
    return !words.empty() && words.size() <= kMostWords &&
           std::all_of(words.begin(), words.end(), [](std::string_view word) {
             return is_lower(code_point_at(word, 0).value) && is_plain_word(word);
           });
  };
  auto at = here.at;
  while (at < lines_.size() && at - here.at < kMostLines && names_parts(lines_[at].text)) ++at;
  return at > here.at && at < lines_.size() && starts_caption(lines_[at].text);
}

// "… as long as wide ........." / "17" / "A. busa Roe": the name is what the leaders lead to, not
// the page's number and head that stand between.
bool PageFurniture::parts_leaders(LineOnPage here) const {
  constexpr std::size_t kMostLines = 3;  // feet, heads
  constexpr std::size_t kLongest = 120;  // bytes
  if (plan_ != nullptr || numbering_.exact || leads_.progress() != Progress::leaders) return false;
  bool turned = here.page;
  auto at = here.at;
  for (std::size_t n = 0; n <= kMostLines && at < lines_.size(); ++n) {
    auto const& text = lines_[at].text;
    bool const number =
        is_number_only(text) && !text.ends_with('.') && !numbering_.has_number(number_of(text));
    if (!number && ahead_.label_at(at)) return false;
    if (is_latin_name(text)) return n > 0 && turned;
    if (text.size() > kLongest || starts_note(text) || starts_caption(text)) return false;
    // ". . . A. busa Roe, 1964"
    if (is_name_with_page(text) || text.starts_with('.')) return false;
    auto const edge = number_at_edge(lines_[at]);
    turned = turned || number || (edge && edge->number > largest_);
    at = ahead_.next_filled(at + 1);
  }
  return false;
}

bool PageFurniture::is_double_spaced(std::size_t at) const {
  constexpr std::size_t kLines = 6;  // looked at
  std::size_t filled = 0;
  std::size_t spaced = 0;
  for (auto i = at; i-- > 0 && filled < kLines;) {
    if (lines_[i].text.empty() || is_page_furniture(lines_[i].text)) continue;
    ++filled;
    if (ahead_.gap_after(i)) ++spaced;
  }
  return filled > 0 && spaced * 3 >= filled * 2;
}

bool PageFurniture::number_is_of_key(std::size_t at) const {
  auto const& text = lines_[at].text;
  auto const label = numbering_.label_of(text);
  if (label && leads_.follows(*label) && leads_.are_complete() && label->end != LabelEnd::none) {
    return true;
  }
  if (leads_.progress() == Progress::leaders) return true;
  if (leads_.progress() != Progress::open) return false;
  auto const reference = read_reference(strip_pointer(text));
  if (!reference || !numbering_.has_number(reference->number)) return false;
  // "213" alone on its line looks like a label where labels are bare.
  constexpr std::uint32_t kFar = 30;
  if (numbering_.extent == Extent::whole && reference->number > largest_ + kFar) return false;
  if (ahead_.is_far_in(at)) return true;
  auto const next = ahead_.next_of_key(at + 1);
  if (next == lines_.size() || ahead_.gap_after(at) || ahead_.label_at(next)) return true;
  // "1. … open at the tip." / "2." / "Capsule closed ..... 4": second leads bear no labels.
  return ahead_.second_leads_unlabelled() && text.ends_with('.') && leads_.end_directly_above(at) &&
         leads_.last_line().ends_with('.') && starts_with_upper(lines_[next].text);
}

}  // namespace keydrift::printed
