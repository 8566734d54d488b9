#include "keydrift/formats/printed_misread_pages.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestPaged = 3;       // lines that end in a page
constexpr std::size_t kMostDigitsOfPage = 4;  // or of a species

bool is_plain_figure(char c) { return is_digit(static_cast<unsigned char>(c)); }

// The page that a line ends in, "14" of "busa Roe, p. 14.": its place in the line and its bytes.
struct PageAtEnd {
  std::size_t at{};
  std::size_t bytes{};
  bool sound{true};  // of figures alone
};

PageAtEnd page_at_end(std::string_view line) {
  auto end = trim_right(line).size();
  while (end > 0 && (line[end - 1] == '.' || line[end - 1] == ')')) --end;
  auto begin = end;
  PageAtEnd page;
  while (begin > 0 && end - begin < kMostDigitsOfPage) {
    auto const c = line[begin - 1];
    if (!is_plain_figure(c)) {
      if (!figure_seen_in(static_cast<unsigned char>(c))) break;
      page.sound = false;
    }
    --begin;
  }
  auto const before = line.substr(0, begin);
  bool const page_word = before.ends_with("p. ") && before.size() > 3 &&
                         !is_letter(static_cast<unsigned char>(before[before.size() - 4]));
  if (begin == end || !page_word) return {};
  page.at = begin;
  page.bytes = end - begin;
  return page;
}

bool are_paged(std::vector<TextLine> const& lines) {
  auto const paged = std::count_if(lines.begin(), lines.end(), [](TextLine const& line) {
    auto const page = page_at_end(line.text);
    return page.bytes > 0 && page.sound;
  });
  return static_cast<std::size_t>(paged) >= kFewestPaged;
}

// The number of a species behind its epithet at the end of a line, "1651" of "BUSA, 1651.".
struct SpeciesAtEnd {
  std::size_t at{};
  std::size_t bytes{};
};

SpeciesAtEnd species_at_end(std::string_view line) {
  constexpr std::size_t kFewestFigures = 3;
  auto const end = without_full_stop(trim_right(line));
  auto const begin = last_word_begin(end);
  auto const number = end.substr(begin);
  auto const before = trim_right(end.substr(0, begin));
  bool const sized = number.size() >= kFewestFigures && number.size() <= kMostDigitsOfPage;
  if (!sized || !before.ends_with(',') || !is_plain_figure(number.front())) return {};
  auto const epithet =
      before.substr(last_word_begin(before), before.size() - last_word_begin(before) - 1);
  bool const capitals = is_in_capitals(epithet, kFewestFigures);
  bool const named = has_epithet_ending(fold(epithet)) && (capitals || is_epithet(epithet));
  return named ? SpeciesAtEnd{begin, number.size()} : SpeciesAtEnd{};
}

// "BUSA, 165l." between "1650." and "1652.": a letter that stands for the figure of a species.
void restore_numbers_of_species(std::vector<TextLine> const& lines,
                                std::vector<TextChange>& changes) {
  std::set<std::uint32_t> sound;
  std::vector<std::pair<std::size_t, std::string_view>> damaged;  // place in the text
  for (auto const& line : lines) {
    auto const found = species_at_end(line.text);
    if (found.bytes == 0) continue;
    auto const number = line.text.substr(found.at, found.bytes);
    if (std::all_of(number.begin(), number.end(), is_plain_figure)) {
      sound.insert(number_of(number));
    } else {
      damaged.emplace_back(line.begin + found.at, number);
    }
  }
  if (sound.size() < kFewestPaged) return;
  for (auto const& [at, number] : damaged) {
    std::string figures;
    for (auto const c : number) {
      auto const figure = figure_seen_in(static_cast<unsigned char>(c));
      if (!is_plain_figure(c) && !figure) break;
      figures += is_plain_figure(c) ? c : static_cast<char>('0' + *figure);
    }
    if (figures.size() != number.size()) continue;
    auto const meant = number_of(figures);
    bool const due =
        !sound.contains(meant) && meant + 1 >= *sound.begin() && meant <= *sound.rbegin() + 1;
    if (due) changes.push_back({at, number.size(), std::move(figures)});
  }
}

}  // namespace

std::size_t restore_pages(std::string& text) {
  auto const lines = lines_of(text);
  std::vector<TextChange> changes;
  restore_numbers_of_species(lines, changes);
  bool const paged = are_paged(lines);
  for (auto const& line : lines) {
    auto const page = paged ? page_at_end(line.text) : PageAtEnd{};
    if (page.bytes == 0 || page.sound) continue;
    // "p. II" is a Roman number, "p. B" none; "…, p. S" is 8 or 5.
    auto const printed = line.text.substr(page.at, page.bytes);
    bool const figure = std::any_of(printed.begin(), printed.end(), is_plain_figure) ||
                        (printed == "S" && line.text.substr(0, page.at).ends_with(", p. "));
    if (!figure) continue;
    std::string figures;
    for (auto const c : printed) {
      figures += static_cast<char>('0' + figure_seen_in(static_cast<unsigned char>(c)).value_or(0));
    }
    changes.push_back({line.begin + page.at, page.bytes, std::move(figures)});
  }
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, text);
  return changes.size();
}

std::size_t part_pages(std::string& text) {
  auto const lines = lines_of(text);
  if (!are_paged(lines)) return 0;
  std::vector<TextChange> changes;
  for (auto const& line : lines) {
    auto const touching = line.text.rfind(",p. ");
    bool const meant = touching != std::string_view::npos && touching + 4 < line.text.size() &&
                       is_plain_figure(line.text[touching + 4]);
    if (meant) changes.push_back({line.begin + touching + 1, 0, " "});
  }
  make_changes(changes, text);
  return changes.size();
}

std::size_t part_epithets_from_stops(std::string& text) {
  constexpr std::size_t kShortest = 5;  // letters of an epithet
  auto const lines = lines_of(text);
  if (!are_paged(lines)) return 0;
  std::vector<TextChange> changes;
  for (auto const& line : lines) {
    if (page_at_end(line.text).bytes == 0) continue;
    if (line.text.find("www.") != std::string_view::npos) continue;
    auto const words = line.text;
    for (auto stop = words.find('.'); stop != std::string_view::npos;
         stop = words.find('.', stop + 1)) {
      if (stop < 2 || !is_small(words[stop - 1]) || !is_small(words[stop - 2])) continue;
      auto end = stop + 1;
      while (end < words.size() && is_small(words[end])) ++end;
      auto const epithet = words.substr(stop + 1, end - stop - 1);
      bool const behind = words.substr(end).starts_with(", ") ||
                          (end + 1 < words.size() && words[end] == ' ' &&
                           is_upper(static_cast<unsigned char>(words[end + 1])));
      bool const meant = epithet.size() >= kShortest && behind && is_epithet(epithet) &&
                         has_epithet_ending(epithet);
      if (meant) changes.push_back({line.begin + stop + 1, 0, " "});
    }
  }
  make_changes(changes, text);
  return changes.size();
}

}  // namespace keydrift::printed
