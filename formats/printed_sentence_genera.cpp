#include "keydrift/formats/printed_sentence_genera.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestWithAuthors = 4;  // ends that make a habit
constexpr std::size_t kFewestSentenceGenera = 6;
constexpr std::size_t kLeastClosing = 4;           // one end of so many stands before a label
constexpr std::size_t kShortestSentenceGenus = 5;  // bytes
constexpr std::size_t kMostAuthorWords = 3;        // "Roe & Dorn"

struct GenusEnd {
  std::size_t line{};  // where the genus begins
  std::size_t at{};    // byte of the line's text
  std::size_t last{};  // line that it ends in
  std::string genus;
  std::string author;  // empty where it stands alone
};

bool is_author(std::string_view author) {
  auto const words = words_of(author, kMostAuthorWords + 1);
  if (words.empty() || words.size() > kMostAuthorWords) return false;
  return is_capitalised(without_closing_marks(words.back())) &&
         std::all_of(words.begin(), words.end(), [](std::string_view word) {
           bool const name = is_capitalised(without_closing_marks(word)) && is_authorish(word);
           return (name && !is_digit(code_point_at(word, 0).value)) || is_particle(word);
         });
}

// Behind an author's name any Latin ending will do.
bool may_be_genus_of_sentence(std::string_view word, bool authored = false) {
  return word.size() >= kShortestSentenceGenus && is_plain_word(word) && is_capitalised(word) &&
         !is_in_capitals(word) &&
         (authored ? has_latin_ending(word) : has_strict_latin_ending(fold(word)));
}

// "behaart.", and not "N." nor "Calif.": the words before end a sentence.
bool closes_sentence_before(std::string_view before, bool authored) {
  before = trim_right(before);
  if (!before.ends_with('.')) return false;
  auto const word = before.substr(last_word_begin(before), std::string_view::npos);
  if (authored) return word.size() > 2 || is_digit(code_point_at(word, 0).value);
  constexpr std::size_t kShortest = 5;  // bytes, with the full stop
  auto const plain = word.substr(0, word.size() - 1);
  // "Florida. Africa." names places.
  return word.size() >= kShortest && is_plain_word(plain) && !may_be_genus_of_sentence(plain);
}

class GenusEndFinder {
 public:
  explicit GenusEndFinder(std::vector<SourceLine> const& lines) : lines_{lines} {}

  [[nodiscard]] std::optional<GenusEnd> end_at(std::size_t i) const {
    auto const& line = lines_[i];
    bool const free = !line.text.empty() && !line.is_no_lead &&
                      line.markup.destination_begin == kNotTold && !has_row_of_dots(line.text);
    if (!free) return std::nullopt;
    // The last word, or one of those before it with an author behind.
    auto begin = line.text.size();
    for (std::size_t behind = 0; behind <= kMostAuthorWords && begin > 0; ++behind) {
      auto const author = line.text.substr(begin);
      auto const before = trim_right(line.text.substr(0, begin));
      begin = last_word_begin(before);
      auto const word = before.substr(begin);
      auto const genus = behind == 0 ? without_full_stop(word) : word;
      auto const below = behind == 0 && genus == word ? author_below(i) : std::string_view{};
      bool const authored = behind > 0 || !below.empty();
      bool const named =
          may_be_genus_of_sentence(genus, authored) && (behind == 0 || is_author(author));
      if (named && stands_behind_sentence(i, begin, authored)) {
        return GenusEnd{i, begin, below.empty() ? i : i + 1, std::string{genus},
                        std::string{below.empty() ? author : below}};
      }
    }
    return broken_end(i);
  }

 private:
  [[nodiscard]] bool stands_behind_sentence(std::size_t i, std::size_t at, bool authored) const {
    if (at > 0) return closes_sentence_before(lines_[i].text.substr(0, at), authored);
    return i > 0 && closes_sentence_before(lines_[i - 1].text, authored);
  }

  // "… gezähnt. Ausella" / "Roe.": the line below, where it holds nothing but an author.
  [[nodiscard]] std::string_view author_below(std::size_t i) const {
    if (i + 1 >= lines_.size()) return {};
    auto const text = lines_[i + 1].text;
    return text.ends_with('.') && is_author(text) ? text : std::string_view{};
  }

  // "… filzig. Poly-" / "trichalia."
  [[nodiscard]] std::optional<GenusEnd> broken_end(std::size_t i) const {
    if (i == 0 || !lines_[i - 1].text.ends_with('-')) return std::nullopt;
    auto const text = lines_[i].text;
    auto const blank = std::min(text.find(' '), text.size());
    auto const rest = blank < text.size() ? text.substr(0, blank) : without_full_stop(text);
    auto const author = blank < text.size() ? text.substr(blank + 1) : std::string_view{};
    if (!is_lower(code_point_at(rest, 0).value)) return std::nullopt;
    if (!author.empty() && !is_author(author)) return std::nullopt;
    auto const above = lines_[i - 1].text.substr(0, lines_[i - 1].text.size() - 1);
    auto const begin = last_word_begin(above);
    auto genus = std::string{above.substr(begin)} + std::string{rest};
    bool const whole = begin > 0 && may_be_genus_of_sentence(genus, !author.empty()) &&
                       closes_sentence_before(above.substr(0, begin), !author.empty());
    if (!whole) return std::nullopt;
    return GenusEnd{i - 1, begin, i, std::move(genus), std::string{author}};
  }

  std::vector<SourceLine> const& lines_;
};

// Of those with authors: each author stands behind two genera, or is cut short where enough of
// these do.
std::vector<GenusEnd> with_shared_authors(std::vector<GenusEnd> const& ends) {
  std::map<std::string_view, std::set<std::string_view>> genera;
  for (auto const& end : ends) {
    if (!end.author.empty()) genera[end.author].insert(end.genus);
  }
  std::vector<GenusEnd> found;
  std::size_t shared = 0;
  for (auto const& end : ends) {
    if (end.author.empty()) continue;
    bool const again = genera[end.author].size() > 1;
    if (again) ++shared;
    if (again || end.author.ends_with('.')) found.push_back(end);
  }
  if (shared < kFewestWithAuthors) found.clear();
  return found;
}

// Of those without, unless one comes back.
std::vector<GenusEnd> alone(std::vector<GenusEnd> const& ends) {
  std::vector<GenusEnd> found;
  std::set<std::string_view> genera;
  for (auto const& end : ends) {
    if (!end.author.empty()) continue;
    if (!genera.insert(end.genus).second) return {};
    found.push_back(end);
  }
  if (found.size() < kFewestSentenceGenera) found.clear();
  return found;
}

// "A. busa": the key leads to species, and the words behind their authors name them in common.
bool names_species(std::string_view text) {
  constexpr std::size_t kLongestGenus = 4;  // bytes, cut short
  auto const words = words_of(text);
  for (std::size_t w = 1; w < words.size(); ++w) {
    bool const genus = words[w - 1].size() <= kLongestGenus && is_abbreviated(words[w - 1]);
    if (genus && is_latin_epithet(without_closing_marks(words[w]))) return true;
  }
  return false;
}

// A label, a blank line or nothing follows it.
bool stands_before_label(GenusEnd const& end, std::vector<SourceLine> const& lines) {
  auto const next = end.last + 1;
  return next >= lines.size() || lines[next].text.empty() || read_label(lines[next].text);
}

}  // namespace

void mark_genera_behind_sentences(std::vector<SourceLine>& lines) {
  std::vector<GenusEnd> ends;
  GenusEndFinder const finder{lines};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (auto end = finder.end_at(i)) ends.push_back(*std::move(end));
  }
  if (ends.size() < kFewestWithAuthors) return;
  auto const leads_otherwise = [](SourceLine const& line) {
    return has_row_of_dots(line.text) || names_species(line.text);
  };
  auto found = with_shared_authors(ends);
  if (found.empty() && std::none_of(lines.begin(), lines.end(), leads_otherwise)) {
    found = alone(ends);
  }
  // "Larvae on willows. Salix Roe." / "Legs red. Ausella busa Dorn": the lead goes on behind hosts.
  auto const closing = std::count_if(found.begin(), found.end(), [&lines](GenusEnd const& end) {
    return stands_before_label(end, lines);
  });
  if (static_cast<std::size_t>(closing) * kLeastClosing < found.size()) return;
  for (auto const& end : found) mark_end_over_lines(lines, end.line, end.at, end.last);
}

}  // namespace keydrift::printed
