// "… Prothorax red. Bifasciella; ROE.": monographs of the nineteenth century end their leads in the
// epithet with a capital, a semicolon and its author in capitals (common practice).

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestEpithetEnds = 3;        // ends that make a habit
constexpr std::size_t kShortestAuthoredEpithet = 4;  // bytes of an epithet
constexpr std::size_t kWordsOfAuthor = 3;            // "DE LA ROE"
constexpr std::size_t kLongestEpithetAuthor = 40;    // bytes

struct EpithetEnd {
  std::size_t line{};  // where the epithet begins
  std::size_t at{};    // byte of the line's text
  std::size_t last{};  // line where its author ends
};

bool are_capitals(std::string_view author) {
  auto const words = words_of(author);
  if (words.empty() || words.size() > kWordsOfAuthor || author.size() > kLongestEpithetAuthor) {
    return false;
  }
  auto last = words.back();
  if (last.ends_with('.') || last.ends_with('-')) last.remove_suffix(1);
  return is_in_capitals(last, 2) && is_in_capitals(words.front().substr(0, 1), 1);
}

class EpithetEndFinder {
 public:
  explicit EpithetEndFinder(std::vector<SourceLine> const& lines) : lines_{lines} {}

  [[nodiscard]] std::optional<EpithetEnd> end_at(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const semicolon = text.rfind(';');
    if (semicolon == std::string_view::npos || lines_[i].is_no_lead) return std::nullopt;
    auto const last = line_of_author_end(i, text.substr(semicolon + 1));
    if (!last) return std::nullopt;
    auto const before = text.substr(0, semicolon);
    auto const at = last_word_begin(before);
    auto const word = before.substr(at);
    if (is_capital_epithet(word)) {
      auto const sentence = trim_right(before.substr(0, at));
      bool const closed = at > 0 ? sentence.ends_with('.') : above_ends_in('.', i);
      return closed ? std::optional{EpithetEnd{i, at, *last}} : std::nullopt;
    }
    // "… Vires-" / "centula; ROE."
    if (at > 0 || !above_ends_in('-', i)) return std::nullopt;
    auto const above = lines_[i - 1].text.substr(0, lines_[i - 1].text.size() - 1);
    auto const begin = last_word_begin(above);
    bool const whole = is_capital_epithet(std::string{above.substr(begin)} + std::string{word}) &&
                       trim_right(above.substr(0, begin)).ends_with('.');
    return whole ? std::optional{EpithetEnd{i - 1, begin, *last}} : std::nullopt;
  }

 private:
  [[nodiscard]] static bool is_capital_epithet(std::string_view word) {
    return word.size() >= kShortestAuthoredEpithet && is_capitalised(word) &&
           !is_in_capitals(word) && is_plain_word(word) && has_epithet_ending(fold(word));
  }

  [[nodiscard]] bool above_ends_in(char sign, std::size_t i) const {
    return i > 0 && lines_[i - 1].text.ends_with(sign);
  }

  // Of the author that begins behind the semicolon of line `i`.
  [[nodiscard]] std::optional<std::size_t> line_of_author_end(std::size_t i,
                                                              std::string_view behind) const {
    behind = trim(behind);
    bool const goes_on = behind.empty() || behind.ends_with('-');
    if (!behind.empty() && !are_capitals(behind)) return std::nullopt;
    if (!goes_on) return behind.ends_with('.') ? std::optional{i} : std::nullopt;
    bool const below = i + 1 < lines_.size() && lines_[i + 1].text.ends_with('.') &&
                       are_capitals(lines_[i + 1].text);
    return below ? std::optional{i + 1} : std::nullopt;
  }

  std::vector<SourceLine> const& lines_;
};

}  // namespace

void mark_epithets_before_authors(std::vector<SourceLine>& lines) {
  std::vector<EpithetEnd> ends;
  EpithetEndFinder const finder{lines};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].markup.destination_begin != kNotTold) continue;
    if (auto const end = finder.end_at(i)) ends.push_back(*end);
  }
  if (ends.size() < kFewestEpithetEnds) return;
  for (auto const& end : ends) mark_end_over_lines(lines, end.line, end.at, end.last);
}

}  // namespace keydrift::printed
