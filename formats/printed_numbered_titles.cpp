#include "keydrift/formats/printed_numbered_titles.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestNumberedHead = 120;     // bytes
constexpr std::size_t kMostWordsOfNumberedHead = 14;  // of a head
constexpr std::size_t kMostDescription = 60;          // lines between a head and its key
constexpr std::size_t kLongestNumberedTitle = 60;     // bytes
constexpr std::uint32_t kTitleFarIn = 8;              // columns

// How much the words of a line say that it is a head.
enum class HeadWords : std::uint8_t {
  none,
  name,  // "Ausella": a lead of an outline may say no more
  sure,  // "Ausella Roe", "AUSACEAE", "Genus Ausella", "Key to the species"
};

using Words = std::span<std::string_view const>;

bool has_digit(std::string_view word) {
  return std::any_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// "– Marshwort", "(Marshwort, Bogwort)", ", Marshwort": the common name, and nothing else.
bool is_common_name(Words words) {
  constexpr std::size_t kMost = 8;  // words
  if (words.empty()) return true;
  bool const dash = is_lone_dash(words.front());
  bool const bracket = words.front().starts_with('(') && words.back().ends_with(')');
  if (!dash && !bracket) return false;
  if (words.size() > kMost || (dash && words.size() == 1)) return false;
  // "– Leaves in pairs." is a description, "(3 species)" says how many there are.
  if (dash && words.back().ends_with('.')) return false;
  return bracket || std::none_of(words.begin(), words.end(), has_digit);
}

// "Roe", "(Roe) Dorn & al., 1900"; the words behind them are in `words` then.
bool take_authors(Words& words) {
  auto const begins = words;
  while (!words.empty() && !is_lone_dash(words.front()) &&
         (is_authorish(words.front()) || is_particle(without_end(words.front())))) {
    // "(Dwarf Weed)" behind an author is a common name.
    if (words.front().starts_with('(') && words.size() < begins.size()) break;
    words = words.subspan(1);
  }
  return words.size() < begins.size();
}

HeadWords words_of_head(std::string_view text) {
  if (mentions_key(text) && starts_with_upper(text)) {
    bool const ends_in_number = is_digit(code_point_before(text, text.size()).value);
    return ends_in_number ? HeadWords::none : HeadWords::sure;
  }
  auto const all = words_of(text, kMostWordsOfNumberedHead + 1);
  if (all.empty() || all.size() > kMostWordsOfNumberedHead) return HeadWords::none;
  Words words{all};
  auto const rank = fold(without_closing_marks(words.front()));
  bool const ranked = words.size() > 1 && starts_with_upper(words.front()) &&
                      (is_rank_noun(rank) || says_genus(rank));
  if (ranked) words = words.subspan(1);
  auto const name = without_closing_marks(words.front());
  constexpr std::size_t kShortest = 3;  // letters
  if (name.size() < kShortest || !is_capitalised(name)) return HeadWords::none;
  auto const genus = full_genus(name);
  auto const folded = fold(genus);
  if (is_title_word(folded)) return HeadWords::none;
  bool const closed = words.front().ends_with(';') || words.front().ends_with(':');
  bool const higher = has_higher_ending(folded);
  bool const latin = higher || has_strict_latin_ending(folded);
  // "Auson ROE. 1851"
  bool const dated = words.size() > 2 && is_year(without_end(words.back()));
  if (closed || !(latin || ((ranked || dated) && has_latin_ending(folded)))) return HeadWords::none;
  bool const ends = name.size() < words.front().size();
  words = words.subspan(1);
  // "2. Ausella busa Roe" above the key to its subspecies.
  bool const species = !ends && !words.empty() && is_latin_epithet(without_end(words.front()));
  if (species) words = words.subspan(1);
  bool const authored = !ends && take_authors(words);
  if (!is_common_name(words)) return HeadWords::none;
  bool const capitals = genus != name;
  return ranked || authored || higher || capitals ? HeadWords::sure : HeadWords::name;
}

// "Ausella Roe, Syn. II. (1822) 39. — Busella § 2.": a genus, its author and where it was
// published.
bool begins_with_cited_genus(std::string_view text) {
  auto const all = words_of(text, kMostWordsOfNumberedHead + 1);
  if (all.size() < 3) return false;
  Words words{all};
  auto const name = without_closing_marks(words.front());
  bool const genus =
      is_capitalised(name) && name.size() > 3 && has_strict_latin_ending(fold(full_genus(name)));
  words = words.subspan(1);
  return genus && take_authors(words) &&
         std::any_of(words.begin(), words.end(), [](std::string_view word) {
           return is_year(without_closing_marks(word.starts_with('(') ? word.substr(1) : word));
         });
}

enum class TitleMark : std::uint8_t {
  none,
  head,
  listed,  // "1. Ausella Roe" / "2. Busella Roe", line by line: no lead, and no head of what
           // follows
};

class HeadFinder {
 public:
  explicit HeadFinder(std::vector<SourceLine> const& lines) : lines_{lines} {
    labels_.reserve(lines.size());
    for (auto const& line : lines) labels_.push_back(label_of(line));
  }

  std::vector<TitleMark> find() && {
    marks_.assign(lines_.size(), TitleMark::none);
    // From the end on: a head may stand above another one.
    for (auto i = lines_.size(); i-- > 0;) {
      if (may_be_head(i)) judge(i);
      if (labels_[i] && !is_count(i)) next_labelled_ = i;
      if (!lines_[i].text.empty()) next_filled_ = i;
    }
    mark_heads_without_keys();
    return std::move(marks_);
  }

 private:
  static std::optional<Label> label_of(SourceLine const& line) {
    if (line.text.empty() || line.markup.role != LineRole::told_by_text) return std::nullopt;
    auto label = read_label(line.text);
    bool const counted = label && (label->is_dash() || label->family == LabelFamily::digits);
    if (!counted || label->decimal || label->text_at >= line.text.size()) return std::nullopt;
    return label;
  }

  [[nodiscard]] bool may_be_head(std::size_t i) const {
    auto const& label = labels_[i];
    if (!label || label->family != LabelFamily::digits || label->number == 0) return false;
    if (!label->letter.empty() || label->marks > 0 || !label->back.empty()) return false;
    auto const text = lines_[i].text;
    if (text.size() > kLongestNumberedHead || has_row_of_dots(text)) return false;
    // "412     AUSACEAE" stands at the head of page 412.
    auto const first = text.substr(label->text_at, text.find(' ', label->text_at) - label->text_at);
    bool const page = label->end == LabelEnd::none &&
                      (label->text_at > label->printed.size() + 1 || is_in_capitals(first, 2) ||
                       has_higher_ending(fold(without_closing_marks(first))));
    return !page;
  }

  // "3 species in the marshes", "2n = 24": numbers of a description.
  [[nodiscard]] bool is_count(std::size_t i) const {
    auto const& label = *labels_[i];
    return label.family == LabelFamily::digits && label.end == LabelEnd::none &&
           label.number != 1 && !starts_with_upper(lines_[i].text.substr(label.text_at));
  }

  [[nodiscard]] bool gap_before(std::size_t i) const {
    return i == 0 || lines_[i - 1].text.empty();
  }
  [[nodiscard]] bool gap_after(std::size_t i) const {
    return i + 1 >= lines_.size() || lines_[i + 1].text.empty();
  }
  // "Calyx-teeth minute or none": the line ends within a lead.
  [[nodiscard]] bool goes_on(std::size_t i) const {
    auto const text = lines_[i].text;
    return is_lower(code_point_before(text, text.size()).value);
  }
  [[nodiscard]] HeadWords words_at(std::size_t i) const {
    return words_of_head(lines_[i].text.substr(labels_[i]->text_at));
  }

  // "6. Ausella Roe, Syn. II. (1822) 39." above "Clavis specierum.", with its description between
  // them: the outline's own labels are letters.
  [[nodiscard]] bool is_cited_above_title(std::size_t i) const {
    if (!gap_before(i) || !begins_with_cited_genus(lines_[i].text.substr(labels_[i]->text_at))) {
      return false;
    }
    auto const end = std::min(lines_.size(), i + kMostDescription);
    for (auto below = i + 1; below < end; ++below) {
      if (labels_[below] && !is_count(below)) return false;
      auto const text = lines_[below].text;
      if (text.empty() || !gap_before(below) || !gap_after(below)) continue;
      if (text.size() <= kLongestNumberedTitle && starts_with_upper(text) && mentions_key(text)) {
        return true;
      }
    }
    return false;
  }

  // `next_labelled_` and `next_filled_` are the lines below line i.
  void judge(std::size_t i) {
    if (is_cited_above_title(i)) {
      marks_[i] = TitleMark::head;
      return;
    }
    auto const next = next_labelled_;
    if (next >= lines_.size() || next - i > kMostDescription) return;
    bool const adjacent = next == next_filled_;
    bool const below_head = marks_[next] != TitleMark::none;
    // What is no head, and not followed by the first couplet, is told by that: most lines.
    if (!below_head && (labels_[next]->is_dash() || labels_[next]->number != 1)) return;
    // Set far in beneath words, "1. Ausella Roe" is what they lead to.
    bool const far_in = lines_[i].indent >= lines_[next].indent + kTitleFarIn;
    if (!gap_before(i) && (!adjacent || far_in)) return;
    // Where blank lines part paragraphs, a head is not set close to the words above it, which do
    // not end there.
    if (!gap_before(i) && gap_after(i) && goes_on(i - 1)) return;
    auto const words = words_at(i);
    if (words == HeadWords::none) return;
    if (below_head) {
      bool const list =
          adjacent && !gap_after(i) && labels_[next]->number == labels_[i]->number + 1;
      if (list) marks_[i] = marks_[next] = TitleMark::listed;
      if (!list && words == HeadWords::sure && gap_before(i)) marks_[i] = TitleMark::head;
      return;
    }
    bool const apart = gap_before(i) && gap_after(i) && adjacent;
    auto const rival = behind_first_lead(next);
    bool const answered =
        rival < lines_.size() && (labels_[rival]->is_dash() || labels_[rival]->number == 1);
    // Where no blank lines part leads, those around a head set it apart.
    bool const dense = rival < lines_.size() && !gap_before(rival) && gap_before(i);
    bool const head = words == HeadWords::sure ? answered || dense : answered && apart;
    if (head) marks_[i] = TitleMark::head;
  }

  // The line of the label behind that of the first lead of couplet 1.
  [[nodiscard]] std::size_t behind_first_lead(std::size_t first) const {
    auto const end = std::min(lines_.size(), first + kMostDescription);
    auto i = first + 1;
    while (i < end && !labels_[i]) ++i;
    return i < end ? i : lines_.size();
  }

  // "3. Busella Roe" behind the key of "2. Ausella Roe": a genus of one species needs no key.
  void mark_heads_without_keys() {
    std::uint32_t last = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      bool const counts = last > 0 && may_be_head(i) && labels_[i]->number == last + 1;
      if (marks_[i] == TitleMark::none && counts && gap_before(i) && gap_after(i) &&
          words_at(i) == HeadWords::sure) {
        marks_[i] = TitleMark::head;
      }
      if (marks_[i] == TitleMark::head) last = labels_[i]->number;
    }
  }

  std::vector<SourceLine> const& lines_;
  std::vector<std::optional<Label>> labels_;  // by line: numbers and dashes before words
  std::vector<TitleMark> marks_;              // by line
  std::size_t next_labelled_{SIZE_MAX};       // below the line at hand
  std::size_t next_filled_{SIZE_MAX};
};

// "3.2  KEY TO THE SNAILS" above "1.1  Shell high" / "1.2  Shell flat": a section of a book.
void mark_decimal_titles(std::vector<SourceLine>& lines) {
  std::optional<std::size_t> title;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.text.empty() || line.markup.role != LineRole::told_by_text) continue;
    auto const label = read_label(line.text);
    if (!label || !label->decimal) continue;
    if (title && label->number == 1) lines[*title].is_no_lead = lines[*title].is_title = true;
    title.reset();
    auto const words = line.text.substr(label->text_at);
    bool const head = line.text.size() <= kLongestNumberedHead && !has_row_of_dots(line.text) &&
                      words_of_head(words) == HeadWords::sure && mentions_key(words);
    if (head) title = i;
  }
}

}  // namespace

void mark_numbered_titles(std::vector<SourceLine>& lines) {
  mark_decimal_titles(lines);
  auto const marks = HeadFinder{lines}.find();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (marks[i] == TitleMark::none) continue;
    lines[i].is_no_lead = true;
    lines[i].is_title = marks[i] == TitleMark::head;
  }
}

}  // namespace keydrift::printed
