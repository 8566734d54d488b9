// What the leads that begin on the lines ahead end in.

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <unordered_map>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostLinesWithoutEnd = 40;  // no lead is longer than this without its end

}  // namespace

bool LinesAhead::ends_in_leaders(std::size_t i) const {
  auto const last = std::min(lines_.size(), i + kMostLinesWithoutEnd);
  for (std::size_t j = i; j < last && !lines_[j].text.empty(); ++j) {
    if (j > i && label_at(j)) return false;
    if (j > i && heads_ != nullptr && (*heads_)[j]) continue;  // "CARABIDAE      53"
    auto const kind = split_at_leader(lines_[j].text, numbering_).kind;
    bool const habit = numbering_.ends.dash || numbering_.ends.colon;
    if (kind != LeaderKind::none && (habit || kind != LeaderKind::dash)) return true;
  }
  return false;
}

bool LinesAhead::trails_off(std::size_t i) const {
  auto const text = lines_[i].text;
  bool const last = i + 1 >= lines_.size() || lines_[i + 1].text.empty();
  auto const split = split_at_leader(text, numbering_);
  return last && split.kind != LeaderKind::none && split.destination_begin >= text.size();
}

bool LinesAhead::ends_in_destination(std::size_t i) const {
  auto const limit = std::min(lines_.size(), i + kMostLinesWithoutEnd);
  auto last = i;
  for (std::size_t j = i; j < limit && !lines_[j].text.empty(); ++j) {
    auto const text = lines_[j].text;
    if (j > i && is_number_only(text)) return true;
    if (j > i && label_at(j)) break;
    if (lines_[j].markup.destination_begin != kNotTold) return true;
    if (split_at_leader(text, numbering_).kind != LeaderKind::none) return true;
    if (j > i && is_name_on_its_own(j)) return true;
    last = j;
  }
  auto const text = lines_[last].text;
  auto const reference = trailing_reference(text, &numbering_);
  if (reference && (reference->pointed || numbering_.has_number(reference->reference.number))) {
    return true;
  }
  // "… more or less convex G"
  auto const figure = second_leads_unlabelled_ ? figure_at_end(text) : 0;
  return (figure > 1 && numbering_.has_number(figure)) || ends_in_name(text);
}

bool LinesAhead::leads_have_ends() const {
  if (have_ends_) return *have_ends_;
  std::size_t leads = 0;
  std::size_t ended = 0;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (!label_at(i)) continue;
    ++leads;
    if (ends_in_destination(i)) ++ended;
  }
  have_ends_ = ended * 4 >= leads * 3;
  return *have_ends_;
}

bool LinesAhead::lacks_rival(std::uint32_t number) const {
  if (!without_rival_) {
    std::unordered_map<std::uint32_t, std::size_t> labels;  // by number
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const label = label_at(i);
      if (label && label->family == LabelFamily::digits) ++labels[label->number];
    }
    without_rival_.emplace();
    std::size_t paired = 0;
    for (auto const& [one, times] : labels) {
      if (times == 1) without_rival_->insert(one);
      if (times == 2) ++paired;
    }
    if (paired * 5 < labels.size() * 3) without_rival_->clear();
  }
  return without_rival_->contains(number);
}

bool LinesAhead::ends_stand_alone() const {
  constexpr std::size_t kFewest = 4;
  if (ends_alone_) return *ends_alone_;
  std::size_t leads = 0;
  std::size_t alone = 0;
  auto last = lines_.size();  // of the lead at hand
  for (std::size_t i = 0; i <= lines_.size(); ++i) {
    bool const words = i < lines_.size() && !lines_[i].text.empty();
    auto const label = words ? label_at(i) : std::nullopt;
    bool const begins = label && label->text_at < lines_[i].text.size();
    if (last < lines_.size() && (begins || !words)) {
      if (is_end_alone(last)) ++alone;
      last = lines_.size();
    }
    if (begins) ++leads;
    if (begins || (words && last < lines_.size())) last = i;
  }
  ends_alone_ = leads >= kFewest && alone * 4 >= leads * 3;
  return *ends_alone_;
}

bool LinesAhead::is_end_alone(std::size_t i) const {
  if (i >= lines_.size() || lines_[i].text.empty()) return false;
  auto const text = lines_[i].text;
  auto const reference = numbering_.read(strip_pointer(text));
  return reference ? numbering_.has_number(reference->number) : is_latin_name(text);
}

namespace {

// "… rows 3. dispar, p. 214." without the page.
std::string_view before_last_page(std::string_view text) {
  auto const last = last_word_begin(text);
  auto const before = trim_right(text.substr(0, last));
  auto const sign = last_word_begin(before);
  if (sign == 0 || !is_page(before.substr(sign), text.substr(last))) return text;
  auto const named = trim_right(before.substr(0, sign));
  return named.ends_with(',') ? named.substr(0, named.size() - 1) : named;
}

}  // namespace

bool LinesAhead::ends_in_name(std::string_view text) const {
  if (text.ends_with(',') || text.ends_with(';') || text.ends_with(':')) return false;
  if (genus_authors_.genus_at_end(text)) return true;
  // "… scales in 17 rows 3. dispar, p. 214."
  constexpr std::size_t kLongestEnd = 60;  // bytes
  auto const named = before_last_page(text);
  auto const numbered = numbered_end(named, kLongestEnd, is_numbered_epithet);
  if (numbered > 0 && numbered < named.size()) return true;
  auto const begin = trailing_name(text);
  return begin && (!usually_led_ || is_certain_name(text.substr(*begin)));
}

bool LinesAhead::opens_key(std::size_t i) const {
  if (!ends_in_leaders(i)) return false;
  auto const limit = std::min(lines_.size(), i + kMostLinesWithoutEnd);
  std::size_t j = i;
  while (j < limit && split_at_leader(lines_[j].text, numbering_).kind == LeaderKind::none) ++j;
  auto next = next_filled(j + 1);
  // The second lead may bear no label.
  if (next < lines_.size() && !read_label(lines_[next].text)) {
    auto last = next;
    while (last < limit && !lines_[last].text.empty() &&
           split_at_leader(lines_[last].text, numbering_).kind == LeaderKind::none) {
      ++last;
    }
    if (last < limit && !lines_[last].text.empty()) next = next_filled(last + 1);
  }
  if (next >= lines_.size()) return false;
  if (read_misprinted_label(lines_[next].text, 1, false)) return true;
  auto const label = read_label(lines_[next].text);
  return label && (label->is_dash() || (numbering_.accepts(*label) && label->number <= 2));
}

}  // namespace keydrift::printed
