#include "keydrift/formats/printed_rank_letters.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kDeepest = 12;  // A to L

// A capital that tells a depth, and what the scan made of the sign behind it.
struct DepthLetter {
  std::size_t line{};
  std::size_t depth{};    // A is 0
  std::size_t sign_at{};  // in the line: where the sign ends
  std::size_t text_at{};
  bool whole{false};   // the sign is one that print uses, and tells the first lead or the second
  bool second{false};  // as its whole sign tells
};

// "'.", "^.", "-", "\"-": up to three signs and figures, then blanks and a capital.
std::optional<DepthLetter> depth_letter(std::string_view text, std::size_t line) {
  constexpr std::size_t kMostSigns = 3;
  if (text.size() < 4 || text[0] < 'A' || text[0] >= static_cast<char>('A' + kDeepest)) {
    return std::nullopt;
  }
  DepthLetter found;
  found.line = line;
  found.depth = static_cast<std::size_t>(text[0] - 'A');
  std::size_t at = 1;
  std::string sign;
  for (std::size_t signs = 0; at < text.size(); ++signs) {
    auto const c = code_point_at(text, at);
    if (is_blank(c.value)) break;
    if (is_letter(c.value) || signs == kMostSigns) return std::nullopt;
    sign += text.substr(at, c.length);
    at += c.length;
  }
  found.sign_at = at;
  found.text_at = skip_blanks(text, at);
  auto const first = code_point_at(text, found.text_at);
  auto const next = code_point_at(text, found.text_at + first.length);
  if (!is_upper(first.value) || !is_lower(next.value)) return std::nullopt;
  static constexpr std::array<std::string_view, 4> kFirsts{"'.", "'", "1.", "1"};
  static constexpr std::array<std::string_view, 8> kSeconds{"\".", "\"", "''.", "''",
                                                            "2.",  "2",  "^.",  "^"};
  for (auto const whole : kFirsts) found.whole = found.whole || sign == whole;
  for (auto const whole : kSeconds) found.second = found.second || sign == whole;
  found.whole = found.whole || found.second;
  return found;
}

class LetterCourse {
 public:
  explicit LetterCourse(std::vector<DepthLetter> const& letters) : letters_{letters} {}

  // Reads on from letter `from`; how many letters the key has, 0 where they do not agree.
  std::size_t read(std::size_t from) {
    leads_.fill(0);
    second_.clear();
    std::size_t depth = 0;
    std::size_t i = from;
    std::size_t complete = 0;
    for (; i < letters_.size(); ++i) {
      auto const& letter = letters_[i];
      bool const deeper = i > from && letter.depth == depth + 1;
      if (i == from || deeper) {
        if (leads_[letter.depth] != 0) break;
        leads_[letter.depth] = 1;
      } else if (letter.depth <= depth && leads_[letter.depth] == 1 && closes(letter.depth)) {
        leads_[letter.depth] = 2;
      } else {
        break;
      }
      depth = letter.depth;
      second_.push_back(leads_[depth] == 2);
      if (closes_all()) complete = i + 1 - from;
    }
    return complete;
  }
  [[nodiscard]] bool is_second(std::size_t i) const { return second_[i]; }

 private:
  // Every couplet beneath `depth` has both leads; they are done with.
  bool closes(std::size_t depth) {
    for (auto i = depth + 1; i < kDeepest; ++i) {
      if (leads_[i] == 1) return false;
      leads_[i] = 0;
    }
    return true;
  }
  [[nodiscard]] bool closes_all() const {
    for (auto const leads : leads_) {
      if (leads == 1) return false;
    }
    return true;
  }

  std::vector<DepthLetter> const& letters_;
  std::array<std::uint8_t, kDeepest> leads_{};  // by depth: of the couplet that is open there
  std::vector<bool> second_;                    // by letter read
};

}  // namespace

void mend_letter_ranks(std::vector<SourceLine> const& lines, LineRanks& ranks,
                       LineRanks& numerals) {
  constexpr std::size_t kFewest = 10;  // leads
  std::vector<DepthLetter> letters;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (auto const letter = depth_letter(lines[i].text, i)) letters.push_back(*letter);
  }
  if (letters.size() < kFewest) return;
  LetterCourse course{letters};
  for (std::size_t from = 0; from + kFewest <= letters.size(); ++from) {
    if (letters[from].depth != 0) continue;
    auto const count = course.read(from);
    if (count < kFewest) continue;
    std::size_t damaged = 0;
    std::size_t contradicted = 0;
    for (std::size_t i = 0; i < count; ++i) {
      auto const& letter = letters[from + i];
      if (!letter.whole) ++damaged;
      if (letter.whole && letter.second != course.is_second(i)) ++contradicted;
    }
    // A key all of whose signs are whole is read as it stands; plain letters have no signs to lose.
    if (damaged + contradicted > 0 && damaged * 2 < count && contradicted * 4 < count) {
      for (std::size_t i = 0; i < count; ++i) {
        auto const& letter = letters[from + i];
        std::string const sign = course.is_second(i) ? "\". " : "'. ";
        auto readings = read_rank_labels(std::string{lines[letter.line].text.substr(0, 1)} + sign);
        if (readings.empty()) continue;
        readings.front().label.printed = lines[letter.line].text.substr(0, letter.sign_at);
        readings.front().label.text_at = letter.text_at;
        ranks[letter.line] = readings.front();
        numerals[letter.line].reset();
      }
    }
    from += count - 1;
  }
}

}  // namespace keydrift::printed
