#include "keydrift/formats/printed_author_heads.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

namespace {

// "M.T.", "L.", "J.-P."
bool is_initials(std::string_view word) {
  bool letter = false;  // the one before
  for (std::size_t at = 0; at < word.size();) {
    auto const c = code_point_at(word, at);
    if (letter ? c.value != '.' : !(is_upper(c.value) || (at > 0 && c.value == '-'))) return false;
    letter = is_upper(c.value);
    at += c.length;
  }
  return !word.empty() && !letter;
}

// "Roe, M.T. & Dorn, L.O.", "Roe, M. T. et al."
bool lists_authors(std::vector<std::string_view> const& words) {
  constexpr std::size_t kShortest = 3;  // bytes of a surname
  bool surname = false;                 // the word before
  std::size_t authors = 0;
  for (std::size_t i = 0; i < words.size(); ++i) {
    auto const bare = without_end(words[i]);
    if (is_initials(bare)) {
      if (i == 0) return false;
      if (surname) ++authors;
      surname = false;
    } else if (authors > 0 && i + 2 == words.size() && words[i] == "et" && words[i + 1] == "al.") {
      return true;
    } else if (is_separator(words[i])) {
      if (surname || authors == 0) return false;
    } else {
      if (surname || !words[i].ends_with(',') || bare.size() < kShortest || !is_capitalised(bare)) {
        return false;
      }
      surname = true;
    }
  }
  return authors > 0 && !surname;
}

// "Roe & Dorn", "Roe, Dorn & Vorn", "Roe et al.": surnames by turns with what joins them.
bool joins_surnames(std::vector<std::string_view> const& words) {
  constexpr std::size_t kMost = 7;
  if (words.size() < 3 || words.size() > kMost) return false;
  if (words.size() == 3 && words[1] == "et" && words[2] == "al.") return is_capitalised(words[0]);
  bool due = true;  // a surname
  for (auto const word : words) {
    if (due ? !is_capitalised(without_end(word)) : !is_separator(word)) return false;
    due = !due || word.ends_with(',');
  }
  return !due;
}

constexpr std::size_t kLongestNames = 120;  // bytes

// Between the number of a page and a head, each directly beside it.
bool is_between_page_and_head(std::vector<SourceLine> const& lines, std::size_t i,
                              std::vector<bool> const& heads) {
  if (i == 0 || i + 1 >= lines.size()) return false;
  auto const page = [&](std::size_t j) { return is_number_only(lines[j].text); };
  return (page(i - 1) && heads[i + 1]) || (heads[i - 1] && page(i + 1));
}

}  // namespace

void find_heads_of_authors(std::vector<SourceLine> const& lines, Numbering const& numbering,
                           std::vector<bool>& heads) {
  constexpr std::size_t kShortest = 3;  // letters of a surname
  constexpr std::size_t kMostInitials = 3;
  constexpr std::uint32_t kLeastPage = 10;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    bool const apart = (i == 0 || lines[i - 1].text.empty()) &&
                       (i + 1 == lines.size() || lines[i + 1].text.empty());
    if (!apart || !may_be_running_head(lines[i].text)) continue;
    auto const edge = number_at_edge(lines[i]);
    if (!edge || edge->number < kLeastPage || is_of_key(edge->number, numbering)) continue;
    auto const words = words_of(edge->words);
    if (lists_authors(words)) heads[i] = true;
    std::size_t initials = 0;
    while (initials < words.size() && initials < kMostInitials && words[initials].size() == 2 &&
           is_abbreviated(words[initials])) {
      ++initials;
    }
    if (initials == 0 || initials >= words.size()) continue;
    auto const surname = words[initials];
    bool const named = ends_item(surname) && is_in_capitals(without_end(surname), kShortest);
    if (named && initials + 1 < words.size()) heads[i] = true;
  }
}

void find_authors_beside_heads(std::vector<SourceLine> const& lines, std::vector<bool>& heads) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    bool const between = !lines[i].text.empty() && is_between_page_and_head(lines, i, heads);
    if (between && joins_surnames(words_of(start_of(lines[i].text, kLongestNames)))) {
      heads[i] = true;
    }
  }
}

bool is_author_with_title(std::string_view words) {
  constexpr std::size_t kMostWords = 8;
  auto const all = words_of(words, kMostWords + 1);
  if (all.size() < 3 || all.size() > kMostWords || !is_capitalised(all.front())) return false;
  auto const dash = std::find_if(all.begin(), all.end(), [](std::string_view word) {
    auto const first = code_point_at(word, 0);
    return is_dash(first.value) && first.length == word.size();
  });
  if (dash == all.begin() || dash == all.end() || dash + 1 == all.end()) return false;
  return std::all_of(all.begin(), all.end(), [](std::string_view word) {
    auto const first = code_point_at(word, 0).value;
    return is_upper(first) || is_dash(first) || word == "and" || word == "&" || word == "of";
  });
}

}  // namespace keydrift::printed
