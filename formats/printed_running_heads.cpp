#include "keydrift/formats/printed_running_heads.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_author_heads.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_heads_among_leads.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

// "Species group 31", "Gruppe 10": the title of a key that some lead names.
bool titles_counted_group(std::string_view text) {
  constexpr std::size_t kMostWords = 3;
  auto const words = words_of(text, kMostWords + 1);
  return words.size() <= kMostWords && !mostly_capitals(text) && says_group(fold(text));
}

bool are_answered_by_dashes(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  std::size_t numbers = 0;
  std::size_t dashes = 0;
  for (auto const& line : lines) {
    auto const label = numbering.label_of(line);
    if (label) ++(label->is_dash() ? dashes : numbers);
  }
  return dashes * 4 >= numbers * 3;
}

// "Marsh Fauna, part 7.   3" over "— 34 —": what stands alone and far in above a page's number is
// of the page, unless it is a destination.
void find_feet_over_page_numbers(std::vector<SourceLine> const& lines, Numbering const& numbering,
                                 std::vector<bool>& heads) {
  constexpr std::uint32_t kCentred = 8;     // columns further in than labels
  constexpr std::size_t kLongestFoot = 80;  // bytes
  constexpr std::size_t kBlanks = 3;        // lines between the two
  for (std::size_t i = 1; i < lines.size(); ++i) {
    if (!is_page_number(lines[i].text)) continue;
    auto foot = i;
    while (foot > 0 && i - foot <= kBlanks && (foot == i || lines[foot].text.empty())) --foot;
    auto const& line = lines[foot];
    bool const alone = foot > 0 && lines[foot - 1].text.empty() && foot + 1 < i;
    if (!alone || line.text.empty() || line.text.size() > kLongestFoot) continue;
    if (line.indent < numbering.label_indent + kCentred || numbering.label_of(line)) continue;
    bool const leads = split_at_leader(line.text, numbering).kind == LeaderKind::dots;
    if (leads || is_number_only(line.text) || certain_destination(line.text, numbering)) continue;
    heads[foot] = true;
  }
}

// "Step 1b. Wings dark    3", "#2a Legs pale    4": a couplet's number behind a word or a sign, and
// no page's behind a title.
bool is_lead_behind_word(std::string_view line) {
  bool const worded = !line.starts_with('#');
  auto const head = NumberReader{{NumberScript::digits, worded}}.head(line);
  bool const sure =
      head && !head->alone && (head->ordinal > 0 || (worded && head->label.end != LabelEnd::none));
  return sure && starts_with_upper(line.substr(head->label.text_at)) && !mostly_capitals(line);
}

// A label, a tab, words.
bool is_tabbed(SourceLine const& line, Label const& label) {
  return label.text_at > 0 && label.text_at < line.text.size() &&
         line.text[label.text_at - 1] == '\t';
}

// By line, whether a lead begins with its label in a cell of its own, where that is the rule: no
// page's number, though it stands as far from the words.
std::vector<bool> find_leads_in_cells(std::vector<SourceLine> const& lines,
                                      Numbering const& numbering) {
  std::vector<bool> leads(lines.size());
  std::size_t labels = 0;
  std::unordered_map<std::uint32_t, std::size_t> tabbed;  // by number; dashes are 0
  for (auto const& line : lines) {
    auto const label = numbering.label_of(line);
    if (!label) continue;
    ++labels;
    if (is_tabbed(line, *label)) ++tabbed[label->number];
  }
  std::size_t all = 0;
  for (auto const& [number, count] : tabbed) all += count;
  if (all <= 2 || all * 5 < labels * 4) return leads;
  auto const count_of = [&tabbed](std::uint32_t number) {
    auto const found = tabbed.find(number);
    return found == tabbed.end() ? 0 : found->second;
  };
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const label = numbering.label_of(lines[i]);
    if (!label || !is_tabbed(lines[i], *label)) continue;
    auto const n = label->number;
    leads[i] = label->is_dash() || n == 1 || count_of(n - 1) + count_of(n) + count_of(n + 1) > 1;
  }
  return leads;
}

// "12          Guide to Marshes No. 38", where "Guide to Marshes No. 38" stands elsewhere as a
// line.
void find_heads_that_repeat_a_title(std::vector<SourceLine> const& lines,
                                    std::vector<bool>& heads) {
  constexpr std::size_t kTitleBlanks = 5;  // between the page's number and the title
  constexpr std::size_t kFewestWords = 3;  // of a title
  std::unordered_set<std::string_view> titles;
  for (auto const& line : lines) {
    auto const text = line.text;
    bool const digit = !text.empty() && is_digit(static_cast<unsigned char>(text.front()));
    if (!digit && !text.empty() && may_be_running_head(text)) titles.insert(text);
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    auto const digits = leading_figures(text);
    if (digits == 0 || digits > kLongestPageNumber) continue;
    auto const words = text.substr(skip_blanks(text, digits));
    if (words.size() + digits + kTitleBlanks > text.size() || !titles.contains(words)) continue;
    if (words_of(words).size() >= kFewestWords) heads[i] = true;
  }
}

// "62 V. Ordnung: Ausopoda" between blank lines: the page, the chapter's numeral and its group.
void find_heads_that_name_ranks(std::vector<SourceLine> const& lines, std::vector<bool>& heads) {
  constexpr std::size_t kMostWords = 3;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    bool const apart = (i == 0 || lines[i - 1].text.empty()) &&
                       (i + 1 == lines.size() || lines[i + 1].text.empty());
    if (!apart || !may_be_running_head(lines[i].text)) continue;
    auto const words = words_of(without_page_number(lines[i].text), kMostWords + 1);
    if (words.size() < 2 || words.size() > kMostWords) continue;
    auto const rank = words[words.size() - 2];
    bool const counted = words.size() == 2 ||
                         roman_number(without_closing_marks(words[0]), kLargestGroupNumeral) > 0;
    heads[i] = heads[i] || (counted && rank.ends_with(':') && is_capitalised(words.back()) &&
                            is_rank_noun(fold(rank.substr(0, rank.size() - 1))));
  }
}

// "16*" at the foot of a page, above the next one's head: it tells the binder how sheets are
// folded.
void find_signatures(std::vector<SourceLine> const& lines, std::vector<bool>& heads) {
  auto signature = lines.size();  // its line
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.empty()) continue;
    if (signature < lines.size() && heads[i]) heads[signature] = true;
    signature = lines.size();
    bool const gap = i == 0 || lines[i - 1].text.empty();
    bool const below = i + 1 < lines.size() && lines[i + 1].text.empty();
    if (!gap || !below || text.size() > kLongestPageNumber || !text.ends_with('*')) continue;
    if (text.find_first_not_of("0123456789") == text.size() - 1) signature = i;
  }
}

// Heads that stand once each, told by their pages' numbers: two that follow each other, or one over
// capitals or with blank lines on both sides; never a number that the key counts with.
void find_heads_by_page(std::vector<SourceLine> const& lines, Numbering const& numbering,
                        std::vector<bool>& heads) {
  constexpr std::size_t kPagesApart = 2;
  constexpr std::size_t kEdgeBlanks = 5;    // fewer part a label or a destination from the words
  constexpr std::uint32_t kLeastPage = 10;  // "GROUP 2" is a heading
  constexpr std::size_t kLongestLoneHead = 80;  // bytes of the words; a lead's go on for longer
  constexpr std::uint32_t kMostOfAKey = 150;    // of a key; larger numbers over a sign are pages
  constexpr std::size_t kLinesOfAPage = 8;      // at least
  struct LoneHead {
    std::size_t line{};
    std::uint32_t number{};
  };
  std::vector<std::size_t> strange;  // lines that end in a number of no couplet, far from the words
  std::optional<LoneHead> lone;      // the last line between blank ones that may be a page's head
  std::optional<std::size_t> before;
  std::uint32_t number_before = 0;
  auto const largest = largest_of_key(numbering);
  // "12  ROE ET AL." over "12. Wings …", where dashes answer the numbers: each stands once.
  std::optional<bool> answered;                             // looked for where it matters
  std::unordered_map<std::uint32_t, std::size_t> labelled;  // lines by number; looked for once
  // "10        MARSH BULLETIN" where "10  Wings …" stands elsewhere and dashes answer numbers.
  auto const is_labelled_elsewhere = [&](std::size_t i, std::uint32_t number) {
    if (labelled.empty()) {
      for (auto const& line : lines) {
        auto const label = numbering.label_of(line);
        bool const plain = label && label->family == LabelFamily::digits && label->letter.empty();
        ++labelled[plain ? label->number : 0];
      }
    }
    auto const own = numbering.label_of(lines[i]);
    bool const counted =
        own && own->family == LabelFamily::digits && own->letter.empty() && own->number == number;
    auto const found = labelled.find(number);
    if (found == labelled.end() || found->second <= (counted ? 1U : 0U)) return false;
    if (!answered) answered = are_answered_by_dashes(lines, numbering);
    return *answered;
  };
  auto const stands_twice = [&](std::size_t i, std::uint32_t number) {
    if (!is_digit(static_cast<unsigned char>(lines[i].text.front()))) return false;
    auto next = i + 1;
    while (next < lines.size() && lines[next].text.empty()) ++next;
    if (next == lines.size()) return false;
    auto const label = numbering.label_of(lines[next]);
    bool const again = label && label->family == LabelFamily::digits && label->number == number &&
                       label->letter.empty() && label->marks == 0;
    if (again && !answered) answered = are_answered_by_dashes(lines, numbering);
    return again && *answered;
  };
  auto const in_cells = find_leads_in_cells(lines, numbering);
  // A key that is set in capitals throughout; looked for where it matters.
  std::optional<bool> set_in_capitals;
  auto const in_capitals = [&lines, &set_in_capitals] {
    if (!set_in_capitals) set_in_capitals = is_set_in_capitals(lines);
    return *set_in_capitals;
  };
  auto const apart = [&lines](std::size_t i) {
    return (i == 0 || lines[i - 1].text.empty()) &&
           (i + 1 == lines.size() || lines[i + 1].text.empty());
  };
  for (std::size_t i = 0; i < lines.size(); ++i) {
    bool const owned = may_be_running_head(lines[i].text) &&
                       lines[i].text.find("\u00A9") != std::string_view::npos;
    if (owned) {
      auto const label = numbering.label_of(lines[i]);
      heads[i] = !label || !numbering.has_number(label->number) || label->number > kMostOfAKey;
      continue;
    }
    auto const edge = number_at_edge(lines[i]);
    if (!edge) continue;
    auto const label = read_label(lines[i].text);
    if (in_cells[i] || is_lead_behind_word(lines[i].text)) continue;
    if (mostly_capitals(edge->words) && stands_twice(i, edge->number)) heads[i] = true;
    if (edge->blanks >= kEdgeBlanks && apart(i) && mostly_capitals(edge->words) &&
        is_labelled_elsewhere(i, edge->number)) {
      heads[i] = true;
    }
    if (apart(i) && i > 0 && is_head_of_family(lines[i].text)) heads[i] = true;
    if (is_of_key(edge->number, numbering)) continue;
    // "62  Roe & Dorn / Marsh Studies 412: 45–98 (2014)", whatever lines stand around it
    if (edge->number > largest && names_volume_and_pages(edge->words)) heads[i] = true;
    // "214 MARSH STATE SURVEY" between lines: a number far beyond the key's.
    constexpr std::uint32_t kFar = 30;
    constexpr std::size_t kFewestWordsOfHead = 3;
    constexpr std::uint32_t kLeastYear = 1700;
    bool const beyond = !numbering.numbers.empty() && edge->number > largest + kFar && i > 0 &&
                        edge->number < kLeastYear;
    if (beyond && mostly_capitals(edge->words) &&
        words_of(edge->words).size() >= kFewestWordsOfHead && !in_capitals()) {
      heads[i] = true;
    }
    if (beyond && apart(i) && is_author_with_title(edge->words)) heads[i] = true;
    bool const alone = apart(i) && edge->words.size() <= kLongestLoneHead &&
                       !names_a_key(edge->words) && !names_a_key(lines[i].text) &&
                       !titles_counted_group(lines[i].text) && !starts_caption(edge->words);
    bool const capitals = mostly_capitals(edge->words);
    // "AUS Roe 1805" on the first line is a title.
    bool const page = capitals && edge->number >= kLeastPage && i > 0;
    if (alone && (edge->blanks >= kGapBlanks || page)) heads[i] = true;
    // "98 K. Roe:" a page below "Keys to the Marsh Beetles. 97"
    // "Legs red ; lamellae 18" is no head.
    bool const sentence = edge->words.find(';') != std::string_view::npos;
    if (alone && edge->number >= kLeastPage && !sentence &&
        !certain_destination(edge->words, numbering)) {
      bool const turned = lone && i - lone->line >= kLinesOfAPage && edge->number > lone->number &&
                          edge->number - lone->number <= kPagesApart;
      if (turned) heads[i] = heads[lone->line] = true;
      lone = LoneHead{i, edge->number};
    }
    if (edge->blanks < kEdgeBlanks) continue;
    // "Species of the Marsh          225" between leads: no couplet has that number.
    constexpr std::size_t kFewestWords = 3;
    if (!label && edge->blanks > kTabBlanks && edge->number > kLeastPage &&
        words_of(edge->words).size() >= kFewestWords) {
      strange.push_back(i);
    }
    if (capitals || (!label && names_a_volume(edge->words))) heads[i] = true;
    bool const next_page =
        before && edge->number > number_before && edge->number - number_before <= kPagesApart;
    if (next_page) heads[i] = heads[*before] = true;
    before = i;
    number_before = edge->number;
  }
  // Where many lines end so, leads lead to pages.
  constexpr std::size_t kMostStrange = 2;
  if (strange.size() <= kMostStrange && numbering.numbers.size() > kMostStrange * 2) {
    for (auto const i : strange) heads[i] = true;
  }
}

// "A revision of the genus Ausella from the Sarna Mountains... 79" between leads, where another
// page's head has 78 or 80.
void find_heads_beside_pages(std::vector<SourceLine> const& lines, Numbering const& numbering,
                             std::vector<bool>& heads) {
  constexpr std::size_t kMost = 3;  // where more lines end so, leads lead to pages
  constexpr std::size_t kFewestWords = 4;
  std::unordered_set<std::uint32_t> pages;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const edge = heads[i] ? number_at_edge(lines[i]) : std::nullopt;
    if (edge) pages.insert(edge->number);
  }
  if (pages.empty()) return;
  std::vector<std::size_t> found;
  auto const largest = largest_of_key(numbering);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (heads[i] || !may_be_running_head(text) || numbering.label_of(lines[i])) continue;
    if (!starts_with_upper(text) || is_digit(static_cast<unsigned char>(text.front()))) continue;
    auto const at = last_word_begin(text);
    auto const page = text.substr(at);
    bool const digits = at > 0 && page.size() < kLongestPageNumber && only_figures(page);
    if (!digits || words_of(text).size() < kFewestWords) continue;
    // A title that is cut short.
    auto const title = trim_right(text.substr(0, at));
    bool const cut =
        (title.ends_with("...") && is_letter(code_point_before(title, title.size() - 3).value)) ||
        title.ends_with("\u2026");
    if (!cut) continue;
    auto const number = number_of(page);
    if (number <= largest || numbering.has_number(number)) continue;
    if (pages.contains(number - 1) || pages.contains(number + 1)) found.push_back(i);
  }
  if (found.size() > kMost) return;
  for (auto const i : found) heads[i] = true;
}

// "go to couplet 6" and no more, which a page may set on a line of its own
bool points_to_couplet(std::string_view text, Numbering const& numbering) {
  auto const found = trailing_reference(text);
  return found && found->pointed && found->words_end == 0 &&
         numbering.has_number(found->reference.number);
}

}  // namespace

namespace {

// "88" between blank lines where "87" or "89" stands so as well, and the head beneath it: text
// layers part the two.
void find_heads_beneath_pages(std::vector<SourceLine> const& lines, Numbering const& numbering,
                              std::vector<bool>& heads) {
  constexpr std::size_t kLongestHead = 60;  // bytes
  constexpr std::size_t kMostBlanks = 5;    // lines between a page's number and its head
  constexpr std::uint32_t kFar = 30;
  constexpr std::size_t kFewestWords = 3;
  auto const alone = [&lines](std::size_t i) {
    bool const above = i == 0 || lines[i - 1].text.empty();
    return !lines[i].text.empty() && above && (i + 1 >= lines.size() || lines[i + 1].text.empty());
  };
  std::map<std::uint32_t, std::size_t> pages;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (!is_number_only(text) || !alone(i)) continue;
    auto const number = number_of(text.substr(0, text.find('.')));
    if (!is_of_key(number, numbering) && !numbering.has_number(number)) pages.emplace(number, i);
  }
  if (pages.empty()) return;
  auto const largest = largest_of_key(numbering);
  std::size_t first_label = 0;  // the line of the first couplet
  while (first_label < lines.size()) {
    auto const label = read_label(lines[first_label].text);
    if (label && label->family == LabelFamily::digits && label->number == 1) break;
    ++first_label;
  }
  for (auto const& [number, line] : pages) {
    auto head = line + 1;
    while (head < lines.size() && head - line <= kMostBlanks && lines[head].text.empty()) ++head;
    if (head >= lines.size() || !alone(head) || lines[head].text.size() > kLongestHead) continue;
    auto const text = lines[head].text;
    // "220" over "INSECTS OF THE OUTER ISLANDS. VOL. 3", where couplets end far below.
    auto const all = words_of(text);
    bool const genus = std::any_of(all.begin(), all.end(),
                                   [](std::string_view word) { return says_genus(fold(word)); });
    bool const title = mentions_key(text) || titles_genus(text);
    bool const labelled = numbering.label_of(lines[head]).has_value();
    bool const capitals = mostly_capitals(text) && !title && !genus;
    bool const alone_on_page = number > largest + kFar && capitals && !labelled &&
                               all.size() >= kFewestWords && first_label < line;
    if (!alone_on_page && !pages.contains(number + 1) && !pages.contains(number - 1)) continue;
    bool const word = starts_with_upper(text) && !labelled && !title && all.size() == 1;
    if (word || capitals) heads[line] = heads[head] = true;
  }
}

// "MARSH FISHES 23" over "24 KEY TO AUSELLA": the foot of a page, or its head, and that of the next
// one, where the two numbers are none of the key's.
void find_heads_at_turned_pages(std::vector<SourceLine> const& lines, Numbering const& numbering,
                                std::vector<bool>& heads) {
  // The number ends the first line and begins the second, or the other way round: "GROUP 11" over
  // "GROUP 12" are titles.
  auto const opens = [&](std::size_t i) { return leading_figures(lines[i].text) > 0; };
  auto const page_of = [&](std::size_t i) -> std::uint32_t {
    auto const text = lines[i].text;
    if (!may_be_running_head(text) || has_row_of_dots(text)) return 0;
    auto const core = without_page_number(text);
    if (core.empty() || !mostly_capitals(core)) return 0;
    auto const figures = leading_figures(text);
    auto const last = text.substr(last_word_begin(text));
    auto const number = figures > 0 ? text.substr(0, figures) : last;
    constexpr std::size_t kMostFigures = 4;
    return is_number_only(number) && number.size() <= kMostFigures ? number_of(number) : 0;
  };
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    if (lines[i].text.empty() || lines[i + 1].text.empty()) continue;
    auto const page = page_of(i);
    bool const turned = page > 0 && page_of(i + 1) == page + 1 && opens(i) != opens(i + 1) &&
                        !numbering.has_number(page) && !numbering.has_number(page + 1);
    if (turned) heads[i] = heads[i + 1] = true;
  }
}

// "Ausales 217" and "218 Ausales": the pages' numbers stand outside.  "Ausella 217" is a lead's end
// where "3 Ausella" titles a genus.
class FacingPages {
 public:
  // `core`: the text without the number.
  void add(std::string_view text, std::string_view core) {
    auto const edge = edge_of(text, core);
    (edge.before ? before_ : behind_)[core].insert(edge.number);
  }

  // Heads of the same words bear the number of the page that faces it, at the other edge, or of one
  // a leaf away.
  [[nodiscard]] bool are_told_by(std::string_view text, std::string_view core) const {
    auto const edge = edge_of(text, core);
    auto const& others = edge.before ? behind_ : before_;
    auto const found = others.find(core);
    if (found == others.end()) return false;
    return std::any_of(kApart.begin(), kApart.end(), [&](std::uint32_t apart) {
      return found->second.contains(edge.number + apart) ||
             (edge.number > apart && found->second.contains(edge.number - apart));
    });
  }

 private:
  static constexpr std::array<std::uint32_t, 2> kApart{1, 3};
  struct Edge {
    std::uint32_t number{};
    bool before{false};
  };
  [[nodiscard]] static Edge edge_of(std::string_view text, std::string_view core) {
    bool const before = core.data() > text.data();
    auto const digits = before ? text.substr(0, leading_figures(text))
                               : text.substr(text.find_last_not_of("0123456789") + 1);
    return {number_of(digits), before};
  }

  using Numbers = std::unordered_map<std::string_view, std::unordered_set<std::uint32_t>>;
  Numbers before_;
  Numbers behind_;
};

}  // namespace

std::vector<bool> find_running_heads(std::vector<SourceLine> const& lines,
                                     Numbering const& numbering) {
  std::vector<bool> heads(lines.size(), false);
  auto const blank = [&lines](std::size_t i) { return lines[i].text.empty(); };
  auto const page_border = [&](std::size_t i) {
    bool const before = i == 0 || blank(i - 1);
    bool const after = i + 1 == lines.size() || blank(i + 1);
    auto const page_line = [&](std::size_t j) {
      return is_page_number(lines[j].text) || is_number_only(lines[j].text);
    };
    bool const beside_number =
        (i > 0 && page_line(i - 1)) || (i + 1 < lines.size() && page_line(i + 1));
    return lines[i].starts_page || beside_number || (before && after);
  };
  // Recurring texts, with the number of times.
  std::unordered_map<std::string_view, std::size_t> numbered;
  std::unordered_map<std::string_view, std::size_t> plain;
  FacingPages facing;
  std::vector<std::size_t> candidates;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.size() < 4 || !may_be_running_head(text) || is_page_number(text)) continue;
    auto const core = without_page_number(text);
    if (!page_border(i) && !(core.size() > 0 && mostly_capitals(core))) continue;
    if (split_at_leader(text, numbering).kind == LeaderKind::dots) continue;
    if (names_a_key(text) || starts_caption(text) || starts_note(text)) continue;
    candidates.push_back(i);
    if (!core.empty()) {
      ++numbered[core];
      facing.add(text, core);
    } else {
      ++plain[text];
    }
  }
  for (auto const i : candidates) {
    auto const core = without_page_number(lines[i].text);
    auto const label = numbering.label_of(lines[i]);
    bool const lead = label && label->is_dash();
    if (lead) continue;
    if (!core.empty()) {
      // "Group 1", "Group 2" are headings; a head says more, or says it in capitals.
      bool const telling = lines[i].starts_page || facing.are_told_by(lines[i].text, core) ||
                           mostly_capitals(core) || words_of(core).size() >= 3;
      // "Ausella busa Roe, 1988", led to twice: the number is a year.
      bool const dated = core.ends_with(',') && is_latin_name(lines[i].text);
      heads[i] = telling && numbered[core] >= 2 && !dated;
    } else {
      // A number of the key's own may be a destination on a line of its own.
      auto const page = [&](std::size_t j) {
        auto const text = lines[j].text;
        if (is_page_number(text)) return true;
        if (!is_number_only(text)) return false;
        auto const number = read_reference(strip_pointer(text));
        return mostly_capitals(lines[i].text) || !number || !numbering.has_number(number->number);
      };
      bool const beside_page =
          lines[i].starts_page || (i > 0 && page(i - 1)) || (i + 1 < lines.size() && page(i + 1));
      heads[i] = beside_page && (plain[lines[i].text] >= 2 || mostly_capitals(lines[i].text));
    }
  }
  find_heads_by_page(lines, numbering, heads);
  find_heads_beside_pages(lines, numbering, heads);
  find_feet_over_page_numbers(lines, numbering, heads);
  find_heads_that_repeat_a_title(lines, heads);
  find_heads_that_name_ranks(lines, heads);
  find_heads_of_authors(lines, numbering, heads);
  find_signatures(lines, heads);
  find_heads_beneath_pages(lines, numbering, heads);
  find_heads_among_leads(lines, numbering, heads);
  find_heads_at_turned_pages(lines, numbering, heads);
  find_authors_beside_heads(lines, heads);
  // "Gen. AUS Roe, 1890" and "go to couplet 6" end in a number as well.
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (heads[i] && (titles_genus(lines[i].text) || points_to_couplet(lines[i].text, numbering))) {
      heads[i] = false;
    }
  }
  return heads;
}

}  // namespace keydrift::printed
