#include "keydrift/formats/printed_own_lines.hpp"

#include <algorithm>
#include <cstdint>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

// "411." at the end of "… taste bitter. 411.", whose name stands on the next line.
std::optional<std::size_t> species_number_before(std::string_view words) {
  auto const begin = last_word_begin(words);
  if (begin < 2 || !words.ends_with('.') || !is_species_number(words.substr(begin))) {
    return std::nullopt;
  }
  auto const stop = words[trim_right(words.substr(0, begin)).size() - 1];
  return stop == '.' || stop == ';' ? std::optional{begin} : std::nullopt;
}

// "busa Roe (1)" where a line not far behind begins with "(1) ": the mark of a note, no couplet's
// number.
bool is_name_with_note(KeyText const& key, std::string_view text, std::size_t line) {
  constexpr std::size_t kMostLines = 500;  // the note stands below its page, or the key
  auto const mark = text.substr(last_word_begin(text));
  bool const number = mark.size() > 2 && mark.front() == '(' && mark.back() == ')' &&
                      is_number_only(mark.substr(1, mark.size() - 2));
  if (!number || !is_genusless_name(trim_right(text.substr(0, text.size() - mark.size())))) {
    return false;
  }
  auto const begin = key.lines.begin() + static_cast<std::ptrdiff_t>(line);
  auto const end = begin + std::min<std::ptrdiff_t>(kMostLines, key.lines.end() - begin);
  return std::any_of(begin, end, [mark](SourceLine const& below) {
    return below.text.size() > mark.size() && below.text.starts_with(mark) &&
           below.text[mark.size()] == ' ';
  });
}

}  // namespace

bool GeneraInLines::has(std::string_view word) const {
  if (!words_) look();
  return words_->contains(word);
}

bool GeneraInLines::has_short(std::string_view abbreviation) const {
  if (!words_) look();
  auto const beginning = abbreviation.substr(0, abbreviation.find('.'));
  auto const first = words_->lower_bound(beginning);
  return first != words_->end() && first->starts_with(beginning);
}

void GeneraInLines::look() const {
  words_.emplace();
  for (auto const& line : lines_) {
    auto const words = words_of(line.text);
    bool const title = line.text.size() <= kLongestHeading && mentions_key(line.text);
    for (std::size_t w = 0; w < words.size(); ++w) {
      if (!is_capitalised(words[w])) continue;
      bool const named = w + 1 < words.size() && is_latin_epithet(words[w + 1]);
      if (named || (title && w > 0 && is_latin_genus(words[w]))) words_->insert(words[w]);
    }
  }
}

std::optional<std::size_t> own_line_destination(KeyText const& key, JoinedText const& joined,
                                                GeneraInLines const& genera) {
  if (joined.spans.size() < 2) return std::nullopt;
  auto const begin = joined.spans.back().raw_begin;
  // "… Ausella brun-" / "nea Roe": the line begins within a word.
  if (begin > 0 && !is_blank(code_point_before(joined.raw, begin).value)) return std::nullopt;
  auto const text = std::string_view{joined.raw}.substr(begin);
  auto const words = trim_right(std::string_view{joined.raw}.substr(0, begin));
  if (is_year(text) && words.ends_with(',')) return std::nullopt;
  // "Hidral-" / "go, 1911"
  if (words.ends_with('-') && is_lower(code_point_at(text, 0).value)) return std::nullopt;
  // "… bus, p. 172, and" / "cus, p. 173"
  auto const before_line = words_of(words.substr(last_word_begin(words)));
  if (!before_line.empty() && is_separator(before_line.back())) return std::nullopt;
  if (leaves_bracket_open(words)) return std::nullopt;  // "… A. bus (Fig." / "12)"
  // "… with white hairs. A." / "bus Roe"
  // "… below Mt. Tarn." / "bus Roe": the end of a sentence, where no genus begins so.
  constexpr std::size_t kLongestSure = 3;  // bytes
  bool const short_genus =
      !before_line.empty() && is_abbreviated(before_line.back()) &&
      (before_line.back().size() <= kLongestSure || genera.has_short(before_line.back()));
  if (short_genus && (is_genusless_name(text) || is_bare_epithet(text))) {
    auto const name = last_word_begin(words);
    if (!is_latin_name(std::string_view{joined.raw}.substr(name))) return std::nullopt;
    // "… with white hairs — 1. A." / "bus Roe"
    auto const front = trim_right(words.substr(0, name));
    auto const number = last_word_begin(front);
    auto const dash = trim_right(front.substr(0, number));
    bool const counted = is_species_number(front.substr(number)) &&
                         is_dash(code_point_before(dash, dash.size()).value);
    return counted ? number : name;
  }
  // "… the claws simple Ausella" / "flavipes Roe"
  bool const genus = !before_line.empty() && is_epithet(text.substr(0, text.find(' '))) &&
                     genera.has(before_line.back());
  if (genus) {
    auto const name = last_word_begin(words);
    auto const whole = std::string_view{joined.raw}.substr(name);
    bool const sentence = words.substr(0, name).ends_with(". ") &&
                          read_taxa(std::string{whole}).taxa.front().authorship.empty();
    if (!sentence && is_latin_name(whole)) return name;
  }
  if (has_numbered_name_within(text)) return std::nullopt;
  if (is_name_with_note(key, text, joined.spans.back().line)) return begin;
  auto const stripped = strip_pointer(text);
  // "… anal rays 9" / "to 11."
  bool const range = text.starts_with("to ") && !words.empty() &&
                     is_digit(static_cast<unsigned char>(words.back())) &&
                     !trailing_reference(joined.raw, &key.numbering);
  if (range) return std::nullopt;
  // "… in its narrowest" / "part 6": the couplet, behind the last of the words
  auto const number = read_reference(stripped.substr(last_word_begin(stripped)));
  bool const word = is_lower(code_point_at(text, 0).value) && words_of(text).size() == 2 &&
                    number && number->family == LabelFamily::digits &&
                    key.numbering.has_number(number->number);
  if (word && names_a_key(stripped)) return std::nullopt;
  if (couplet_number(stripped, key.numbering) || names_a_key(stripped)) return begin;
  if (text.size() > kLongestTrailingName || text.find(';') != std::string_view::npos) {
    return std::nullopt;
  }
  if (names_species_group(text)) return begin;
  // "*busa n. sp."
  auto const sign = signs_before_name(text);
  if (sign > 0 && is_genusless_name(text.substr(sign))) return begin;
  if (text.find(',') != std::string_view::npos && is_bare_epithet(text)) return begin;
  bool const numbered = is_numbered_epithet(text) || is_genusless_name(text);
  bool const taxon = is_numbered_taxon(text);
  if (!numbered && !taxon && !is_upper(code_point_at(text, 0).value)) return std::nullopt;
  auto const before_it = words_of(words.substr(last_word_begin(words)));
  bool const author = !before_it.empty() && is_latin_epithet(before_it.back());
  if (!numbered && !taxon && is_name_behind_common_one(text)) return begin;
  if (has_certain_name_behind(text)) return std::nullopt;
  if (!numbered && (is_latin_name(text) || is_named_in_capitals(text))) {
    return species_number_before(words).value_or(begin);
  }
  if (!author && is_name_with_page(text)) return begin;
  auto const& line = key.lines[joined.spans.back().line];
  auto const& span = joined.spans[joined.spans.size() - 2];
  auto const& before = key.lines[span.line];
  auto const label = count_code_points(before.text.substr(0, span.source_begin - before.begin));
  bool const far_in = line.indent >= before.indent + label + kDestinationIndent;
  return far_in ? std::optional{begin} : std::nullopt;
}

}  // namespace keydrift::printed
