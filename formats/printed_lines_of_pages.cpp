#include "keydrift/formats/printed_lines_of_pages.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_stamps.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "of", "&", "et": words that titles and lists of authors have between capitals.
bool is_joint_of_title(std::string_view word) {
  static constexpr std::array kWords{"of"sv, "the"sv, "and"sv,  "&"sv,   "et"sv,  "de"sv,  "des"sv,
                                     "du"sv, "la"sv,  "der"sv,  "die"sv, "und"sv, "von"sv, "van"sv,
                                     "in"sv, "for"sv, "from"sv, "y"sv,   "e"sv};
  return is_one_of(kWords, word);
}

// "Morrow & Fentz", "Bulletin of the Halvern Museum": words of a title or names, and none of a
// sentence.
bool is_set_as_title(std::string_view text) {
  auto const words = words_of(text);
  return !words.empty() && starts_with_upper(text) &&
         std::all_of(words.begin(), words.end(), [](std::string_view word) {
           return is_upper(code_point_at(word, 0).value) || is_joint_of_title(word);
         });
}

// "Revision of Ausella", "Revisión del género Ausella"; not "Wings clear, with".
bool reads_as_title(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 2 || !starts_with_upper(text)) return false;
  bool const name_last = is_upper(code_point_at(words.back(), 0).value) &&
                         text.find_first_of(",;") == std::string_view::npos;
  return name_last || is_set_as_title(text);
}

// "MORROW: Revision of Ausella": the author in capitals, and a title.  "MALE: Wings clear" begins
// so as well.
bool is_author_with_his_title(std::string_view text) {
  auto const colon = text.find(": ");
  if (colon == std::string_view::npos) return false;
  auto const authors = words_of(text.substr(0, colon));
  auto const title = text.substr(colon + 2);
  return !authors.empty() && is_all_capitals(authors.back()) && reads_as_title(title) &&
         std::all_of(authors.begin(), authors.end(), [](std::string_view word) {
           return is_upper(code_point_at(word, 0).value) || word == "&";
         });
}

// "Vol. 14, No. 2", "[Vol. 14]"
bool is_volume_alone(std::string_view text) {
  static constexpr std::array kWords{"vol"sv, "volume"sv, "no"sv,   "nos"sv,  "number"sv, "part"sv,
                                     "bd"sv,  "band"sv,   "heft"sv, "tome"sv, "fasc"sv,   "art"sv};
  static constexpr std::array kVolumes{"vol"sv, "volume"sv, "bd"sv, "band"sv, "tome"sv};
  if (text.starts_with('[') && text.ends_with(']')) text = text.substr(1, text.size() - 2);
  auto const words = words_of(text);
  if (words.size() < 2 || words.size() % 2 != 0) return false;
  // "No. 2" alone is the number of a species.
  if (!is_one_of(kVolumes, fold(without_full_stop(words[0])))) return false;
  for (std::size_t i = 0; i < words.size(); i += 2) {
    auto number = words[i + 1];
    if (number.ends_with(',') || number.ends_with('.')) number.remove_suffix(1);
    bool const counted = !number.empty() &&
                         (only_figures(number) || number.find_first_not_of("IVXLC") == number.npos);
    if (!counted || !is_one_of(kWords, fold(without_full_stop(words[i])))) return false;
  }
  return true;
}

// "Ann. Halv. Mus. 14: 112 (1998)", "Marsh Studies 12(3): 45-98, 2014": the foot of a page.
bool is_foot_of_journal(std::string_view text) {
  constexpr std::size_t kYear = 4;  // figures
  auto rest = without_full_stop(text);
  if (rest.ends_with(')')) rest.remove_suffix(1);
  if (rest.size() < kYear || !only_figures(rest.substr(rest.size() - kYear))) return false;
  auto const year = number_of(rest.substr(rest.size() - kYear));
  if (year < 1700 || year > 2100) return false;
  rest.remove_suffix(kYear);
  if (rest.ends_with('(')) rest.remove_suffix(1);
  rest = trim_right(rest);
  if (rest.ends_with(',')) rest.remove_suffix(1);
  auto const colon = rest.rfind(": ");
  if (colon == std::string_view::npos || colon == 0) return false;
  auto const volume = code_point_before(rest, colon).value;
  auto pages = rest.substr(colon + 2);
  auto const first = leading_figures(pages);
  if ((!is_digit(volume) && volume != ')') || first == 0) return false;
  pages.remove_prefix(first);
  if (auto const dash = code_point_at(pages, 0); is_dash(dash.value)) {
    pages.remove_prefix(dash.length);
  }
  auto const title = words_of(rest.substr(0, colon), 2);
  return only_figures(pages) && !title.empty() && starts_with_upper(title[0]) &&
         !is_latin_name(text);
}

// "Ausella" of "(Ausella," and "Ausella:".
std::string_view letters_of(std::string_view word) {
  constexpr std::string_view kSigns = "()[].,;:'\"*?!";
  auto const first = word.find_first_not_of(kSigns);
  if (first == std::string_view::npos) return word;
  return word.substr(first, word.find_last_not_of(kSigns) + 1 - first);
}

// Its figures are all alike: "Ann. Halv. Mus. ##: ### (####)".
std::string shape_without_figures(std::string_view text) {
  std::string shape;
  for (char const c : text) {
    bool const figure = is_digit(static_cast<unsigned char>(c));
    if (!figure) {
      shape += c;
    } else if (shape.empty() || shape.back() != '#') {
      shape += '#';
    }
  }
  return shape;
}

class LinesOfPages {
 public:
  explicit LinesOfPages(std::vector<SourceLine> const& lines)
      : lines_{lines}, kinds_(lines.size()) {}

  // By line; without a reason where it stays.
  [[nodiscard]] std::vector<LineAccount> find() && {
    find_by_wording();
    find_in_leads();
    find_by_shape();
    find_blank_lines();
    return std::move(kinds_);
  }

 private:
  [[nodiscard]] bool is_taken(std::size_t i) const { return !kinds_[i].reason.empty(); }

  void take(std::size_t i, LineKind kind, std::string_view reason) {
    kinds_[i] = {lines_[i].number, kind, reason};
  }

  [[nodiscard]] Numbering const& numbering() {
    if (!numbering_) {
      numbering_ = decide_numbering(lines_);
      largest_ = largest_of_key(*numbering_);
    }
    return *numbering_;
  }

  void find_by_wording() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      bool const below = i > 0 && kinds_[i - 1].reason == kStamp;
      if (is_stamp(text) || (below && goes_on_with_stamp(text))) {
        take(i, LineKind::running_head, kStamp);
      } else if (tells_place_of_plate(text)) {
        take(i, LineKind::running_head, "tells where a plate or a table belongs");
      }
    }
  }

  // --- what stands around a line --------------------------------------------------------------

  // The next line with words above or below that is not taken, or none.
  [[nodiscard]] std::optional<std::size_t> above(std::size_t i) const {
    while (i-- > 0) {
      if (!lines_[i].text.empty() && !is_taken(i)) return i;
    }
    return std::nullopt;
  }
  [[nodiscard]] std::optional<std::size_t> below(std::size_t i) const {
    while (++i < lines_.size()) {
      if (!lines_[i].text.empty() && !is_taken(i)) return i;
    }
    return std::nullopt;
  }

  // Words that visibly go on: no full stop, no leaders, no name or couplet at their end.
  [[nodiscard]] bool lacks_end(std::size_t i) {
    auto const text = lines_[i].text;
    auto const last = code_point_before(text, text.size()).value;
    if (lines_[i].is_title || lines_[i].markup.role != LineRole::told_by_text) return false;
    if (text.ends_with('-')) return true;  // "emar-"
    if (!is_letter(last) && last != ',' && last != ';' && last != ')' && !is_digit(last)) {
      return false;
    }
    if (is_page_furniture(text) || has_row_of_dots(text) || mentions_key(text) ||
        starts_caption(text) || starts_note(text)) {
      return false;
    }
    return !trailing_name(text) && !trailing_reference(text, &numbering());
  }

  // A small letter that begins a word and no label, as in "a. Wings clear".
  [[nodiscard]] bool goes_on(std::size_t i) {
    auto const text = lines_[i].text;
    if (!is_lower(code_point_at(text, 0).value) || lines_[i].told || starts_note(text))
      return false;
    auto const words = words_of(text, 2);
    auto const stop = words[0].find_last_of(".):");
    bool const closed = stop != std::string_view::npos && stop + 1 == words[0].size() &&
                        words[0].size() <= kLongestLabel;
    bool const letter =
        words[0].size() == 1 && words.size() > 1 && !is_lower(code_point_at(words[1], 0).value);
    return !closed && !letter && !starts_caption(text) && !numbering().label_of(lines_[i]);
  }

  // Between a line that lacks its end and one that goes on in small letters.
  [[nodiscard]] bool parts_words(std::size_t i) {
    auto const before = above(i);
    auto const behind = below(i);
    return before && behind && goes_on(*behind) && lacks_end(*before);
  }

  [[nodiscard]] bool begins_lead(std::size_t i) {
    auto const text = lines_[i].text;
    return numbering().label_of(lines_[i]).has_value() || !read_rank_labels(text).empty();
  }

  // Between the words of a lead that prints no destination of its own, as the file has others, and
  // the next lead.
  [[nodiscard]] bool follows_lead_without_end(std::size_t i) {
    auto const before = above(i);
    auto const behind = below(i);
    if (!before || !behind || *before + 1 != i || *behind != i + 1) return false;
    if (!begins_lead(*behind) || !lacks_end(*before)) return false;
    return leads_without_end() > 1;
  }

  // Lines that begin a lead, lack an end, and stand directly above another lead.
  [[nodiscard]] std::size_t leads_without_end() {
    if (!without_end_) {
      without_end_ = 0;
      for (std::size_t i = 0; i + 1 < lines_.size(); ++i) {
        bool const both = !lines_[i].text.empty() && !lines_[i + 1].text.empty() &&
                          begins_lead(i) && begins_lead(i + 1);
        if (both && lacks_end(i)) ++*without_end_;
      }
    }
    return *without_end_;
  }

  // --- what a line says -----------------------------------------------------------------------

  // "—— 114 ——", "[114]"
  [[nodiscard]] static bool is_framed_page(std::string_view text) {
    auto const first = code_point_at(text, 0).value;
    auto const last = code_point_before(text, text.size()).value;
    return is_page_number(text) &&
           ((is_dash(first) && is_dash(last)) || (first == '[' && last == ']'));
  }

  // "118          Morrow & Fentz": a page's number beyond those of the key, and a title or names.
  [[nodiscard]] bool is_head_with_number(std::size_t i) {
    auto const edge = number_at_edge(lines_[i]);
    if (!edge || edge->number < kLeastPage || !is_set_as_title(edge->words)) return false;
    if (lines_[i].text.find('\t') != std::string_view::npos) return false;
    bool const front = edge->words.data() != lines_[i].text.data();
    auto const& all = numbering();
    if (is_of_key(edge->number, all) || edge->number <= largest_) return false;
    bool const far = edge->number > largest_ + kFar;
    bool const wide = edge->blanks >= kWideBlanks;
    return wide || (far && front && edge->blanks >= 2);
  }

  // No other line nearby begins or ends so: names that leads lead to have numbers as well, and then
  // more than one in a page.
  [[nodiscard]] bool is_alone_with_number(std::size_t i) {
    auto const first = i - std::min(i, kLinesOfAPage - 1);
    for (auto j = first; j < std::min(lines_.size(), i + kLinesOfAPage); ++j) {
      if (j == i || lines_[j].text.empty() || is_taken(j)) continue;
      auto const edge = number_at_edge(lines_[j]);
      if (edge && edge->number > largest_ && is_set_as_title(edge->words) &&
          !mostly_capitals(edge->words)) {
        return false;
      }
    }
    return !names_numbered_taxa();
  }

  [[nodiscard]] bool names_numbered_taxa() {
    if (!numbered_taxa_) {
      numbered_taxa_ = std::any_of(lines_.begin(), lines_.end(), [](SourceLine const& line) {
        return names_numbered_taxon(line.text);
      });
    }
    return *numbered_taxa_;
  }

  // "..... 118. Ausella"
  [[nodiscard]] static bool names_numbered_taxon(std::string_view text) {
    auto const dots = text.rfind("..");
    if (dots == std::string_view::npos) return false;
    auto const words = words_of(text.substr(dots + 2), 2);
    return words.size() == 2 && is_digit(static_cast<unsigned char>(words[0].front())) &&
           is_capitalised(words[1]);
  }

  // "118   Ausella" may be where a lead leads to; the genus of the whole key is not.
  [[nodiscard]] bool is_no_destination(std::size_t i) {
    constexpr std::size_t kFewest = 3;  // lines
    auto const core = without_page_number(lines_[i].text);
    auto const words = words_of(core, 3);
    bool const title = std::any_of(words.begin(), words.end(), is_joint_of_title);
    if (title || words.size() > 2) return true;
    if (words.empty()) return false;
    // The line itself is one of them.
    return lines_with(words[0]) > kFewest;
  }

  [[nodiscard]] std::size_t lines_with(std::string_view word) {
    if (word_lines_.empty()) {
      std::unordered_map<std::string_view, std::size_t> last;
      for (std::size_t i = 0; i < lines_.size(); ++i) {
        for (auto const one : words_of(lines_[i].text)) {
          auto const [line, fresh] = last.try_emplace(letters_of(one), i);
          if (fresh || line->second != i) ++word_lines_[line->first];
          line->second = i;
        }
      }
    }
    auto const found = word_lines_.find(letters_of(word));
    return found == word_lines_.end() ? 0 : found->second;
  }

  // --- in leads -------------------------------------------------------------------------------

  void find_in_leads() {
    for (std::size_t i = 1; i + 1 < lines_.size(); ++i) {
      auto const& line = lines_[i];
      auto const text = line.text;
      bool const free = !text.empty() && may_be_running_head(text) && !is_taken(i) && !line.told &&
                        !line.is_title && line.markup.role == LineRole::told_by_text;
      if (!free || is_lower(code_point_at(text, 0).value)) continue;
      if (is_framed_page(text)) {
        if (parts_words(i)) take(i, LineKind::page_number, "a page's number that parts a lead");
        continue;
      }
      if (is_head_of_plate(text)) {
        if (parts_words(i) || follows_lead_without_end(i)) {
          take(i, LineKind::running_head, "the head of a plate, which parts a lead");
        }
        continue;
      }
      bool const volume = is_volume_alone(text) || is_foot_of_journal(text);
      bool const head = is_head_with_number(i);
      bool const page = line.starts_page && is_set_as_title(text);
      if (volume || head || page || is_author_with_his_title(text)) {
        bool const told = parts_words(i) ||
                          (follows_lead_without_end(i) &&
                           (volume || (head && is_alone_with_number(i) && is_no_destination(i))));
        if (told) take_as_head(i);
      }
    }
  }

  void take_as_head(std::size_t i) {
    take(i, LineKind::running_head, "the head or foot of a page, which parts a lead");
    shapes_.insert(shape_without_figures(lines_[i].text));
  }

  // --- what comes back ------------------------------------------------------------------------

  void find_by_shape() {
    if (shapes_.empty()) return;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty() || is_taken(i)) continue;
      if (!may_be_running_head(lines_[i].text)) continue;
      if (!shapes_.contains(shape_without_figures(lines_[i].text))) continue;
      take(i, LineKind::running_head, "comes back where pages turn");
    }
  }

  // Around what was taken the lead goes on: they part nothing.  Lines in a row are looked at
  // together, for a file may hold hardly anything but stamps.
  void find_blank_lines() {
    for (std::size_t i = 0; i < lines_.size();) {
      auto const begin = i;
      bool any = false;
      for (; i < lines_.size() && (is_taken(i) || lines_[i].text.empty()); ++i) {
        any = any || !lines_[i].text.empty();
      }
      if (any && parts_words(begin)) {
        for (auto j = begin; j < i; ++j) {
          if (lines_[j].text.empty()) take(j, LineKind::blank, "parts nothing");
        }
      }
      if (i == begin) ++i;
    }
  }

  static constexpr std::string_view kStamp = "stamped on the page";
  static constexpr std::size_t kLongestLabel = 4;  // bytes, with its sign
  static constexpr std::uint32_t kLeastPage = 10;
  static constexpr std::uint32_t kFar = 30;        // beyond the key's numbers
  static constexpr std::size_t kWideBlanks = 5;    // fewer may part a label from its words
  static constexpr std::size_t kLinesOfAPage = 8;  // at least

  std::vector<SourceLine> const& lines_;
  std::vector<LineAccount> kinds_;      // by line
  std::optional<Numbering> numbering_;  // looked for where it matters
  std::uint32_t largest_{};
  std::optional<std::size_t> without_end_;
  std::optional<bool> numbered_taxa_;
  std::unordered_map<std::string_view, std::size_t> word_lines_;  // how many lines have the word
  std::unordered_set<std::string> shapes_;                        // of heads and feet within leads
};

}  // namespace

std::vector<TakenLine> take_out_lines_of_pages(std::vector<SourceLine>& lines) {
  std::vector<TakenLine> taken;
  auto const accounts = LinesOfPages{lines}.find();
  bool const none = std::all_of(accounts.begin(), accounts.end(),
                                [](LineAccount const& one) { return one.reason.empty(); });
  if (none) return taken;
  std::vector<SourceLine> kept;
  kept.reserve(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (accounts[i].reason.empty()) {
      kept.push_back(lines[i]);
    } else {
      taken.push_back({lines[i], accounts[i]});
    }
  }
  lines = std::move(kept);
  return taken;
}

}  // namespace keydrift::printed
