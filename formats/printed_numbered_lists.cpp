#include "keydrift/formats/printed_numbered_lists.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// A line that begins with a number or a dash.
struct Item {
  std::uint32_t line{};    // index into the lines
  std::uint32_t number{};  // 0 for a dash
  std::size_t words_at{};  // byte of the line's text
  bool serial{false};      // it names its rival, "1 (4)"
  bool plain{false};       // nothing but the number and its punctuation
};

// "Key to the species": no blank line need stand there.
bool is_list_title(SourceLine const& line) {
  if (line.is_title) return true;
  bool const short_line = !line.text.empty() && line.text.size() <= kLongestHeading;
  return short_line && !read_label(line.text) && !has_row_of_dots(line.text) &&
         starts_with_upper(line.text) && mentions_key(line.text);
}

class ListFinder {
 public:
  explicit ListFinder(std::vector<SourceLine> const& lines) : lines_{lines} {
    breaks_before_.reserve(lines.size());
    std::uint32_t breaks = 0;
    for (std::uint32_t i = 0; i < lines.size(); ++i) {
      breaks_before_.push_back(breaks);
      if (lines[i].text.empty() || is_list_title(lines[i]) || heads_key(i)) ++breaks;
      add_item(i);
    }
    for (auto const& item : items_) largest_ = std::max(largest_, item.number);
  }

  // The lines of lists, by the first couplet that each stands before, and those behind the last
  // key.
  std::vector<std::uint32_t> find() && {
    std::vector<std::uint32_t> found;
    std::size_t last_key = items_.size();
    for (std::size_t i = 0; i < items_.size(); ++i) {
      if (is_starred_note(i)) found.push_back(items_[i].line);
      if (!opens_key(i)) continue;
      last_key = i;
      auto const first = matter_before(list_before(i));
      for (auto j = first; j < i; ++j) found.push_back(items_[j].line);
    }
    if (last_key < items_.size()) {
      for (auto j = list_behind(last_key); j < items_.size(); ++j) {
        found.push_back(items_[j].line);
      }
      find_dashes(found);
    }
    return found;
  }

 private:
  // "Females" between the sentence that ends a list and couplet 1.
  [[nodiscard]] bool heads_key(std::size_t i) const {
    constexpr std::size_t kMostWords = 3;
    auto const text = lines_[i].text;
    if (i == 0 || i + 1 == lines_.size() || !lines_[i - 1].text.ends_with('.')) return false;
    if (!is_upper(code_point_at(text, 0).value) || read_label(text)) return false;
    bool const word = is_letter(code_point_before(text, text.size()).value) &&
                      words_of(text, kMostWords + 1).size() <= kMostWords;
    auto const label = word ? read_label(lines_[i + 1].text) : std::nullopt;
    return label && label->family == LabelFamily::digits && label->number == 1;
  }

  void add_item(std::uint32_t i) {
    auto const& line = lines_[i];
    if (line.text.empty() || line.is_no_lead) return;
    if (line.markup.role != LineRole::told_by_text) return;
    auto const label = read_label(line.text);
    if (!label || label->decimal || label->text_at >= line.text.size()) return;
    if (!label->is_dash() && label->family != LabelFamily::digits) return;
    bool const plain =
        !label->is_dash() && label->letter.empty() && label->marks == 0 && label->back.empty();
    items_.push_back({i, label->number, label->text_at, !label->back.empty(), plain});
  }

  [[nodiscard]] bool parted(std::size_t first, std::size_t second) const {
    return breaks_before_[items_[second].line] > breaks_before_[items_[first].line];
  }
  [[nodiscard]] bool is_rival_of(std::size_t i, std::uint32_t number) const {
    return i < items_.size() && (items_[i].number == 0 || items_[i].number == number);
  }

  // Item i is the first lead of a key: couplet 1, with its rival beneath it, or with couplet 2 and
  // its rival.  No blank line parts its leads, so that those around the key mean something.
  [[nodiscard]] bool opens_key(std::size_t i) const {
    if (items_[i].number != 1 || i + 1 >= items_.size() || parted(i, i + 1)) return false;
    if (items_[i].serial || is_rival_of(i + 1, 1)) return true;
    // The second lead of a couplet 1 is followed by couplet 2 as well.
    bool const second = i > 0 && is_rival_of(i - 1, 1);
    return !second && items_[i + 1].number == 2 && is_rival_of(i + 2, 2);
  }

  // "* Known from the female only." between the last lead of a key and the title of the next.
  [[nodiscard]] bool is_starred_note(std::size_t i) const {
    auto const at = items_[i].line;
    auto const text = lines_[at].text;
    bool const complete = i > 1 && is_rival_of(i - 1, items_[i - 2].number);
    if (items_[i].number > 0 || !complete || at + 1 == lines_.size()) return false;
    return text.starts_with('*') && text.ends_with('.') && is_list_title(lines_[at + 1]) &&
           !has_row_of_dots(text) && !ends_in_name(i);
  }

  // May the line be one of a list?  Contents lead to pages, and no line of a list leads to a taxon.
  [[nodiscard]] bool may_be_listed(std::size_t i) const {
    auto const text = lines_[items_[i].line].text;
    bool const page = is_digit(code_point_before(text, text.size()).value);
    return items_[i].plain && (page || !has_row_of_dots(text));
  }

  // The first item of the list that ends before item `key`; `key` where there is none.
  [[nodiscard]] std::size_t list_before(std::size_t key) const {
    if (key == 0 || !parted(key - 1, key)) return key;
    auto first = key;
    while (first > 0 && may_be_listed(first - 1) &&
           (first == key || items_[first - 1].number + 1 == items_[first].number)) {
      --first;
      if (items_[first].number == 1) break;
    }
    return stands_alone(first, key) ? first : key;
  }

  // The first of the items above item `first` that are matter of an article: the addresses of its
  // authors, lists and prose that happens to begin a line with a number, paragraph by paragraph.
  [[nodiscard]] std::size_t matter_before(std::size_t first) const {
    while (first > 0 && parted(first - 1, first)) {
      auto next = paragraph_before(first);
      if (next == first) next = list_before(first);  // contents have dots as leads have
      if (next == first) break;
      first = next;
    }
    return first;
  }

  // The first item of the paragraph that ends before item `end`; `end` where couplets or leads may
  // stand in it.
  [[nodiscard]] std::size_t paragraph_before(std::size_t end) const {
    auto begin = end - 1;
    while (begin > 0 && !parted(begin - 1, begin)) --begin;
    // "1. Wings clear" and, behind a blank line, "– Wings dark"
    bool const line_apart = lines_[items_[end].line - 1].text.empty();
    if (line_apart && items_[end - 1].number > 0 && is_rival_of(end, items_[end - 1].number)) {
      return end;
    }
    std::size_t led = 0;
    for (auto i = begin; i < end; ++i) {
      bool const rivals =
          i > begin && items_[i - 1].number > 0 && is_rival_of(i, items_[i - 1].number);
      if (rivals || !(items_[i].plain || items_[i].number == 0)) return end;
      auto const to = end_of_item(i);
      if (to == End::leaders) return end;
      if (to == End::destination) ++led;
    }
    return led * 2 < end - begin ? begin : end;
  }

  enum class End : std::uint8_t { none, destination, leaders };

  // What the paragraph ends in that item i begins.
  [[nodiscard]] End end_of_item(std::size_t i) const {
    auto const next = i + 1 < items_.size() ? items_[i + 1].line : lines_.size();
    auto at = items_[i].line;
    for (;; ++at) {
      if (has_row_of_dots(lines_[at].text)) return End::leaders;
      if (at + 1 >= next || lines_[at + 1].text.empty()) break;
    }
    auto const text = lines_[at].text;
    auto const to = trailing_reference(text);
    if (to && to->reference.number > 1 && to->reference.number <= largest_) {
      return End::destination;
    }
    auto const name = trailing_name(text);
    bool const behind_words = name && (at > items_[i].line || *name > items_[i].words_at);
    return behind_words && !lists_two(i) ? End::destination : End::none;
  }

  // The first item behind the last key from which on numbers count one by one to the end.
  [[nodiscard]] std::size_t list_behind(std::size_t key) const {
    auto first = items_.size();
    while (first > key + 1 && may_be_listed(first - 1) &&
           (first == items_.size() || items_[first - 1].number + 1 == items_[first].number)) {
      --first;
    }
    // The key may end in leads whose numbers the list carries on.
    while (first < items_.size() && !parted(first - 1, first) && !heads_section(first)) ++first;
    return stands_alone(first, items_.size()) ? first : items_.size();
  }

  // "1. Introduction" directly behind the last lead, which a dash begins.
  [[nodiscard]] bool heads_section(std::size_t i) const {
    constexpr std::size_t kMostWords = 4;
    auto const words = lines_[items_[i].line].text.substr(items_[i].words_at);
    return items_[i].number == 1 && items_[i - 1].number == 0 && starts_with_upper(words) &&
           words_of(words, kMostWords + 1).size() <= kMostWords && !trailing_reference(words) &&
           !ends_in_name(i);
  }

  // None of items [first, end) is the rival of the one before them, and no lead; where they do not
  // open the count, each is set apart as a heading is.
  [[nodiscard]] bool stands_alone(std::size_t first, std::size_t end) const {
    if (first >= end) return false;
    if (first > 0 && items_[first - 1].number == items_[first].number &&
        !(first > 1 && is_rival_of(first - 2, items_[first].number))) {
      return false;
    }
    if (items_[first].number == 1) return !are_leads(first, end);
    for (auto i = first; i < end; ++i) {
      auto const at = items_[i].line;
      bool const apart = at > 0 && lines_[at - 1].text.empty() &&
                         (at + 1 == lines_.size() || lines_[at + 1].text.empty());
      if (!apart || has_row_of_dots(lines_[at].text) || ends_in_name(i)) return false;
    }
    return true;
  }

  // A key whose second leads bear no labels counts its couplets so.  It has a line with leaders
  // that lead to a taxon, or items that end in couplets' numbers or names.
  [[nodiscard]] bool are_leads(std::size_t first, std::size_t end) const {
    auto const last_line = end < items_.size() ? items_[end].line : items_[end - 1].line + 1;
    for (auto at = items_[first].line; at < last_line; ++at) {
      auto const text = lines_[at].text;
      bool const page = is_digit(code_point_before(text, text.size()).value);
      if (!page && has_row_of_dots(text)) return true;
    }
    std::size_t led = 0;
    for (auto i = first; i < end; ++i) {
      auto const text = lines_[items_[i].line].text;
      if (has_row_of_dots(text)) continue;
      auto const to = trailing_reference(text);
      bool const couplet =
          to && to->reference.number > 1 && to->reference.number <= end - first + 1;
      if (couplet || ends_in_name(i)) ++led;
    }
    return led > 1 && led * 2 >= end - first;
  }

  // "1. A. busa Roe                8. A. cusa Roe": a list in two columns.
  [[nodiscard]] bool lists_two(std::size_t i) const {
    auto const text = lines_[items_[i].line].text.substr(items_[i].words_at);
    auto const gap = text.find("  ");
    if (gap == std::string_view::npos || !is_latin_name(text.substr(0, gap))) return false;
    auto const other = trim_left(text.substr(gap));
    auto const label = read_label(other);
    return label && label->family == LabelFamily::digits && label->end == LabelEnd::dot &&
           is_latin_name(other.substr(label->text_at));
  }

  // Behind words: "3. Roe in Ausella busa", and not "3. Ausella busa".
  [[nodiscard]] bool ends_in_name(std::size_t i) const {
    auto const name = trailing_name(lines_[items_[i].line].text);
    return name && *name > items_[i].words_at && !lists_two(i);
  }

  // "References" / "Roe, P. 1904. Notes on beetles." / "– 1906. More notes": the couplet above has
  // its two leads, and text stands between.
  void find_dashes(std::vector<std::uint32_t>& found) const {
    bool in_key = false;
    bool apart = false;    // the dash before belongs to no couplet
    bool tripled = false;  // couplets may have three leads: the text may be a page's head
    for (std::size_t i = 0; i < items_.size(); ++i) {
      if (items_[i].number > 0) {
        in_key = in_key || opens_key(i);
        apart = false;
        continue;
      }
      bool const complete = i > 1 && is_rival_of(i - 1, items_[i - 2].number);
      bool const announced = complete && is_announced(items_[i].line);
      bool const third =
          i > 1 && items_[i - 1].number == 0 && !apart && !announced && !parted(i - 1, i);
      tripled = tripled || third;
      if (!in_key || tripled || has_row_of_dots(lines_[items_[i].line].text)) continue;
      apart = apart || announced || (complete && text_between(items_[i - 1].line, items_[i].line));
      if (apart) found.push_back(items_[i].line);
    }
  }

  // "The genus is recognised by:" stands above, directly beneath the name that a lead leads to.
  [[nodiscard]] bool is_announced(std::uint32_t at) const {
    if (at < 2) return false;
    auto const text = lines_[at - 1].text;
    return text.ends_with(':') && starts_with_upper(text) && !read_label(text) &&
           trailing_name(lines_[at - 2].text).has_value();
  }

  // Text that begins with a capital behind a blank line, and is more than the head of a page: two
  // lines, or one that the second line goes on with.
  [[nodiscard]] bool text_between(std::uint32_t first, std::uint32_t second) const {
    bool gap = false;
    bool goes_on = false;
    std::size_t count = 0;
    for (auto i = first + 1; i < second; ++i) {
      auto const text = lines_[i].text;
      gap = gap || text.empty();
      if (!gap || text.empty() || !starts_with_upper(text) || has_row_of_dots(text)) continue;
      ++count;
      goes_on = i + 1 == second || text.ends_with(':');
    }
    return count > 1 || goes_on;
  }

  std::vector<SourceLine> const& lines_;
  std::vector<std::uint32_t> breaks_before_;  // by line: blank lines and titles above it
  std::vector<Item> items_;
  std::uint32_t largest_{};  // number of an item
};

}  // namespace

void mark_numbered_lists(std::vector<SourceLine>& lines) {
  for (auto const line : ListFinder{lines}.find()) lines[line].is_no_lead = true;
}

std::optional<std::vector<SourceLine>> with_all_above_title_marked(
    std::vector<SourceLine> const& lines) {
  auto const title = std::find_if(lines.begin(), lines.end(), [](SourceLine const& line) {
    return is_list_title(line) && !line.text.ends_with('.');
  });
  if (title == lines.end()) return std::nullopt;
  std::size_t like_leads = 0;
  std::size_t led = 0;
  for (auto line = lines.begin(); line != title; ++line) {
    auto const text = line->text;
    auto const label = text.empty() ? std::nullopt : read_label(text);
    bool const dots = has_row_of_dots(text);
    if (!label && !dots) continue;
    ++like_leads;
    // Another key may stand there; contents lead to pages.
    if (dots && !is_digit(code_point_before(text, text.size()).value)) return std::nullopt;
    auto const name = trailing_name(text);
    if (name && (!label || *name > label->text_at)) ++led;
  }
  if (like_leads == 0 || led * 2 >= like_leads) return std::nullopt;
  auto marked = lines;
  for (auto at = marked.begin(); at != marked.begin() + (title - lines.begin()); ++at) {
    at->is_no_lead = true;
  }
  return marked;
}

}  // namespace keydrift::printed
