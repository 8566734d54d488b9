#include "keydrift/formats/printed_second_leads.hpp"

#include <algorithm>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_end_habits.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

bool is_author_alone(std::string_view text) {
  constexpr std::size_t kMostWords = 3;
  // "Roe (p. 227)."
  auto const bracket = text.rfind(" (");
  if (bracket != std::string_view::npos && bracket > 0 &&
      starts_with_page(text.substr(bracket + 2))) {
    auto const author = trim_right(text.substr(0, bracket));
    return is_capitalised(author) && !has_strict_latin_ending(fold(author));
  }
  auto const words = words_of(text, kMostWords + 1);
  if (words.empty()) return false;
  bool const authors = std::all_of(words.begin(), words.end(), [](std::string_view word) {
    return is_authorish(word) || is_year(without_end(word)) || is_particle(word);
  });
  return authors && words.size() <= kMostWords &&
         (text.starts_with('(') || text.ends_with('.') || is_year(without_end(words.back())));
}

bool SecondLeads::ends_lead(std::size_t line) const {
  auto const told = lines_[line].markup.destination_begin;
  if (told != kNotTold && told < lines_[line].begin + lines_[line].text.size()) return true;
  auto const text = lines_[line].text;
  auto const split = split_at_leader(text, numbering_);
  if (split.kind != LeaderKind::none) return split.destination_begin < text.size();
  return trailing_reference(text, &numbering_).has_value() || trailing_name(text).has_value();
}

std::optional<std::size_t> SecondLeads::second_of(std::size_t first, std::size_t words_at,
                                                  std::size_t end) const {
  constexpr std::size_t kOpening = 60;  // bytes
  auto const opening = words_of(start_of(lines_[first].text.substr(words_at), kOpening), 1);
  std::optional<std::size_t> found;
  for (auto i = first + 1; i < end && !lines_[i].text.empty(); ++i) {
    if (!may_begin(i) || !may_end(i - 1)) continue;
    bool const alike = words_of(start_of(lines_[i].text, kOpening), 1) == opening;
    if (!found || alike) found = i;
    if (alike) break;
  }
  if (found) {
    auto const last = last_of_paragraph(*found, end);
    return may_end(last) || name_stands_below(last, end) ? found : std::nullopt;
  }
  auto const above = end < lines_.size() ? paragraph_above(first, end) : std::nullopt;
  return above ? above : paragraph_below(first, words_at, end);
}

bool ends_in_epithet(std::string_view text) {
  text = without_full_stop(trim_right(text));
  auto const epithet = text.substr(last_word_begin(text));
  return is_epithet(epithet) && (has_strict_latin_ending(epithet) || is_genitive(epithet));
}

bool answers_in_words(std::string_view line, std::string_view words, std::string_view last_line) {
  constexpr std::size_t kAlike = 2;     // words
  constexpr std::size_t kOpening = 80;  // bytes
  auto const ours = words_of(start_of(line, kOpening), kAlike);
  return ours.size() == kAlike && ours == words_of(start_of(words, kOpening), kAlike) &&
         ends_in_epithet(last_line);
}

bool SecondLeads::may_begin(std::size_t line) const {
  auto const text = lines_[line].text;
  return (starts_with_upper(text) || starts_with_ditto(text)) && !starts_note(text) &&
         !starts_caption(text) && !is_author_alone(text) && !heads_page(line);
}

bool SecondLeads::may_end(std::size_t line) const {
  constexpr std::size_t kMostLines = 3;  // of authors
  for (std::size_t i = 0; i < kMostLines && line > 0 && is_author_alone(lines_[line].text); ++i) {
    --line;
  }
  auto const text = lines_[line].text;
  // "… busa (Cole-" / "man)"
  bool const broken = line > 0 && text.ends_with(')') && text.find('(') == std::string_view::npos &&
                      text.find(' ') == std::string_view::npos &&
                      lines_[line - 1].text.ends_with('-');
  if (broken) {
    auto const whole = std::string{lines_[line - 1].text} + std::string{text};
    return trailing_name(whole).has_value() || loose_name(whole) || is_genusless_name(whole);
  }
  return ends_lead(line) || ends_in_page(text) || loose_name(text) || is_genusless_name(text) ||
         authors_.knows(authored_end(text)) || ends_in_figure(text);
}

bool SecondLeads::ends_in_figure(std::string_view text) const {
  auto const figure = figure_at_end(text);
  // Before the numbers are known, any may be.
  return figure > 1 && (numbering_.numbers.empty() || numbering_.has_number(figure));
}

// "8. busa" between blank lines behind the paragraph that ends with the line.
bool SecondLeads::name_stands_below(std::size_t line, std::size_t end) const {
  auto next = line + 1;
  while (next < lines_.size() && lines_[next].text.empty()) ++next;
  // Its number may be taken for the next couplet's.
  bool const alone = next > line + 1 && next <= end && next < lines_.size() &&
                     (next + 1 == lines_.size() || lines_[next + 1].text.empty());
  return alone && is_numbered_epithet(lines_[next].text);
}

std::size_t SecondLeads::last_of_paragraph(std::size_t line, std::size_t end) const {
  while (line + 1 < end) {
    auto next = line + 1;
    while (next < end && lines_[next].text.empty()) ++next;
    // A page turns within the lead: it goes on with a small letter.
    bool const parted =
        next > line + 1 && next < end && !is_lower(code_point_at(lines_[next].text, 0).value);
    if (next == end || parted) break;
    line = next;
  }
  return line;
}

// A page turned, or a note parts the two: the paragraph directly above the next couplet.
std::optional<std::size_t> SecondLeads::paragraph_above(std::size_t first, std::size_t end) const {
  if (lines_[end - 1].text.empty() || !may_end(end - 1)) return std::nullopt;
  auto begin = end - 1;
  while (begin > first && !lines_[begin - 1].text.empty()) --begin;
  bool const led = begin > first + 1 && may_end(last_of_paragraph(first, end));
  return led && may_begin(begin) ? std::optional{begin} : std::nullopt;
}

// The next paragraph, where it begins with the words that the first lead begins with and no
// couplet's number stands between.
std::optional<std::size_t> SecondLeads::paragraph_below(std::size_t first, std::size_t words_at,
                                                        std::size_t end) const {
  constexpr std::size_t kAlike = 2;     // words
  constexpr std::size_t kOpening = 60;  // bytes
  auto last = first;
  while (last + 1 < lines_.size() && !lines_[last + 1].text.empty()) ++last;
  auto begin = last + 1;
  while (begin < lines_.size() && lines_[begin].text.empty()) ++begin;
  if (begin >= end || begin > last + 2 || !may_end(last) || !may_begin(begin)) {
    return std::nullopt;
  }
  auto const opening = words_of(start_of(lines_[first].text.substr(words_at), kOpening), kAlike);
  bool const alike = opening.size() == kAlike &&
                     words_of(start_of(lines_[begin].text, kOpening), kAlike) == opening;
  auto close = begin;
  while (close + 1 < end && !lines_[close + 1].text.empty()) ++close;
  return alike && may_end(close) ? std::optional{begin} : std::nullopt;
}

}  // namespace keydrift::printed
