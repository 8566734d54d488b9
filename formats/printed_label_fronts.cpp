#include "keydrift/formats/printed_label_fronts.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label_habits.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_second_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

bool is_unaccented(unsigned char c) { return is_letter(c) && c < 0x80; }

bool may_be_label(std::string_view text) {
  constexpr std::size_t kLongestLabel = 12;
  auto const front = text.substr(0, std::min(text.find_first_of(" \t"), kLongestLabel));
  if (front.size() <= 3) return true;
  bool const letters = std::all_of(front.begin(), front.end(), [](char c) {
    auto const sign = static_cast<unsigned char>(c);
    return sign >= 0x80 || is_letter(sign) || c == ',' || c == '-' || c == ';';
  });
  return !letters || static_cast<unsigned char>(front[0]) >= 0x80;
}

// The line of a title that mentions the key, above the first sound "1" by a few lines: what stands
// above it is no lead without a label.  0 where there is none.
std::size_t title_above_first_couplet(std::vector<SourceLine> const& lines) {
  constexpr std::size_t kMostLines = 6;  // between the title and the couplet
  constexpr std::size_t kLongest = 80;   // bytes of a title
  std::size_t title = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.empty()) continue;
    auto const label = read_label(text);
    if (label && label->family == LabelFamily::digits && label->number == 1 && !label->decimal &&
        !lines[i].is_no_lead) {
      return title > 0 && i - title <= kMostLines ? title : 0;
    }
    if (!label && text.size() <= kLongest && starts_with_upper(text) && mentions_key(text)) {
      title = i;
    }
  }
  return 0;
}

// Between blank lines.
bool is_between_blanks(std::vector<SourceLine> const& lines, std::size_t i) {
  return (i == 0 || lines[i - 1].text.empty()) &&
         (i + 1 == lines.size() || lines[i + 1].text.empty());
}

// Of what stands above the head of a page the line that ended the last lead of the page before,
// where only its foot stands behind that: footnotes, the sheet's signature.  `above` where none is.
template <class Ends>
std::size_t above_foot(std::vector<SourceLine> const& lines, std::size_t above, Ends const& ends) {
  constexpr std::size_t kMostOfFoot = 6;  // lines
  std::size_t passed = 0;
  for (auto i = above; i < lines.size() && passed <= kMostOfFoot; --i) {
    if (lines[i].text.empty()) continue;
    if (ends(i)) return i;
    if (read_label(lines[i].text)) break;
    ++passed;
  }
  return above;
}

// "Marsh Leaflets  Vol. III — N.º" before the number, in the head of a page.
bool ends_in_issue(std::string_view text) {
  static constexpr std::array kVolumes{"vol"sv, "bd"sv, "band"sv, "tome"sv, "tomo"sv, "jahrg"sv};
  static constexpr std::array kIssues{"no"sv,       "nr"sv,      "n"sv,
                                      "n\u00B0"sv,  "n\u00BA"sv, "n.\u00BA"sv,
                                      "n.\u00B0"sv, "heft"sv,    "fasc"sv};
  auto const bare = [](std::string_view word) {
    return fold(
        without_closing_marks(word.ends_with('.') ? word.substr(0, word.size() - 1) : word));
  };
  auto const words = words_of(text);
  if (words.empty() || !is_one_of(kIssues, bare(words.back()))) return false;
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return is_one_of(kVolumes, bare(word)); });
}

}  // namespace

std::vector<LineFront> line_fronts(std::vector<SourceLine> const& lines) {
  std::vector<LineFront> fronts(lines.size());
  auto const title = title_above_first_couplet(lines);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    auto& front = fronts[i];
    front.empty = text.empty() || lines[i].is_title;
    front.is_no_lead = lines[i].is_no_lead;
    if (front.empty) continue;
    front.may_be_label = may_be_label(text) && !names_numbered_species(text);
    // ". Genus Ausella" behind a line that ends in dots
    auto const above = i > 0 ? lines[i - 1].text : std::string_view{};
    bool const dots = text.starts_with(". ") && (above.ends_with("..") || above.ends_with(" ."));
    if (dots) front.may_be_label = false;
    front.label = read_label(text);
    front.may_be_words = i >= title && !front.is_no_lead &&
                         (is_upper(code_point_at(text, 0).value) || starts_with_ditto(text)) &&
                         !starts_note(text) && !starts_caption(text) && !is_page_furniture(text) &&
                         !is_author_alone(text) && !mentions_key(text) &&
                         !is_in_capitals(without_closing_marks(text.substr(0, text.find(' '))), 3);
  }
  return fronts;
}

std::set<std::uint32_t> numbers_at_ends(std::vector<SourceLine> const& lines) {
  std::set<std::uint32_t> numbers;
  constexpr std::size_t kMostDigits = 3;
  for (auto const& line : lines) {
    auto const text = trim_right(without_full_stop(line.text));
    auto const digits = text.substr(text.find_last_not_of("0123456789") + 1);
    if (ends_in_page_cut_short(text)) continue;  // "busa Roe, p. 15"
    if (ends_in_issue(text.substr(0, text.size() - digits.size()))) continue;
    if (!digits.empty() && digits.size() <= kMostDigits) numbers.insert(number_of(digits));
  }
  return numbers;
}

std::vector<bool> ended_above(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  SecondLeads const ends{lines, numbering};
  // "8" on a line of its own
  constexpr std::uint32_t kMostLost = 2;  // couplets behind the last one whose number is sound
  auto const last = numbering.numbers.empty() ? 0 : numbering.numbers.back() + kMostLost;
  auto const is_end = [last](std::string_view text) {
    return is_number_only(text) && number_of(text.substr(0, text.find('.'))) <= last;
  };
  bool const capitals = is_set_in_capitals(lines);
  std::vector<bool> ended(lines.size());
  std::size_t above = lines.size();
  std::string_view words;  // of the last lead that bears a label
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    ended[i] = above < lines.size() &&
               (is_end(lines[above].text) || ends.may_end(above) ||
                (above + 1 < i && starts_with_upper(text) &&
                 lines[above].text.find(' ') != std::string_view::npos &&
                 ends_in_epithet(lines[above].text)) ||
                (above + 1 == i && answers_in_words(text, words, lines[above].text)));
    if (auto const label = read_label(text); label && !label->is_dash()) {
      words = text.substr(label->text_at);
    }
    bool const head =
        !is_end(text) && is_between_blanks(lines, i) && !capitals && is_head_in_capitals(text);
    if (head) {
      above = above_foot(lines, above, [&](std::size_t line) {
        return is_end(lines[line].text) || ends.may_end(line);
      });
    } else if (!text.empty() && (is_end(text) || !is_page_furniture(text))) {
      above = i;
    }
  }
  return ended;
}

namespace {

// A word with a capital follows, and one without.
bool goes_on_in_words(std::string_view line, std::size_t at) {
  auto const words = words_of(line.substr(at), 2);
  return words.size() == 2 && is_upper(code_point_at(words[0], 0).value) &&
         std::all_of(words[1].begin(), words[1].end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

}  // namespace

bool may_begin_with_label(std::string_view line) {
  constexpr std::size_t kMostWords = 3;
  constexpr std::size_t kLongest = 6;  // bytes of a word
  bool sign = false;
  std::size_t at = 0;
  for (std::size_t words = 0; words < kMostWords; ++words) {
    auto const word = line.substr(at, line.find_first_of(" \t", at) - at);
    auto const first = code_point_at(word, 0).value;
    bool const capital = is_upper(first) && is_lower(code_point_at(word, 1).value);
    if (capital) return (sign || words > 0) && word.size() > 2;
    auto const letters = static_cast<std::size_t>(
        std::count_if(word.begin(), word.end(), [](unsigned char c) { return is_unaccented(c); }));
    if (word.empty() || word.size() > kLongest || letters > 2) return false;
    sign = sign || letters < word.size();
    // "B. Roe", "C. crenatus": an initial; "E. Margin of the shield" is none
    if (is_upper(first) && word.ends_with('.') && !goes_on_in_words(line, at + word.size())) {
      return false;
    }
    at = skip_blanks(line, at + word.size());
  }
  return false;
}

}  // namespace keydrift::printed
