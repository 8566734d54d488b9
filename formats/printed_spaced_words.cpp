#include "keydrift/formats/printed_spaced_words.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSpacedLetters = 5;  // "a b c d" are parts of a figure
constexpr std::size_t kFewestOfPart = 3;         // before or behind the hyphen of a broken one

// What stands spaced at the front of a text.
struct Spaced {
  std::size_t letters{};
  std::size_t bytes{};  // up to and with the last letter
  bool counted{true};   // "a b c d e", "p q r t v"
};

// "D i a n d r e 1 1 a"
bool is_figure_for_letter(char32_t c) { return c == '1' || c == '0'; }

// Figures, each with a blank behind it, and a letter alone: "1 1 a".
bool goes_on_in_letters(std::string_view text, std::size_t at) {
  while (at + 1 < text.size() && is_figure_for_letter(static_cast<unsigned char>(text[at]))) {
    if (text[at + 1] != ' ') return false;
    at += 2;
  }
  auto const letter = code_point_at(text, at);
  return at < text.size() && is_letter(letter.value) &&
         !is_letter(code_point_at(text, at + letter.length).value);
}

Spaced spaced_letters(std::string_view text) {
  Spaced found;
  char32_t before = 0;
  bool capitals = false;
  for (std::size_t at = 0;;) {
    auto const c = code_point_at(text, at);
    if (!is_letter(c.value) && !(found.letters > 1 && is_figure_for_letter(c.value))) return {};
    // A capital and small letters behind it, or nothing but capitals.
    if (found.letters == 1) capitals = is_upper(before) && is_upper(c.value);
    if (found.letters > 0 && is_upper(c.value) != capitals) break;
    found.counted = found.counted && (found.letters == 0 || c.value > before);
    before = c.value;
    ++found.letters;
    found.bytes = at + c.length;
    auto const next = code_point_at(text, found.bytes + 1);
    bool const more = found.bytes + 1 < text.size() && text[found.bytes] == ' ' &&
                      (is_letter(next.value) || (found.letters > 1 && !capitals &&
                                                 goes_on_in_letters(text, found.bytes + 1))) &&
                      !is_letter(code_point_at(text, found.bytes + 1 + next.length).value);
    if (!more) break;
    at = found.bytes + 1;
  }
  return found;
}

// Bytes of " -" behind the letters where it ends the line; 0 where a word is not broken.
std::size_t break_behind(std::string_view text, Spaced const& letters) {
  auto const rest = text.substr(letters.bytes);
  for (auto const hyphen : {std::string_view{" -"}, std::string_view{"-"}}) {
    if (!rest.starts_with(hyphen)) continue;
    auto const end = std::min(rest.find_first_not_of(" \r", hyphen.size()), rest.size());
    if (end == rest.size() || rest[end] == '\n') return hyphen.size();
  }
  return 0;
}

// The letters that the line below begins with.
Spaced letters_below(std::string_view text) {
  auto const end = text.find('\n');
  if (end == std::string_view::npos) return {};
  auto const below = text.substr(skip_blanks(text, end + 1));
  bool const small = is_lower(code_point_at(below, 0).value);
  return small ? spaced_letters(below) : Spaced{};
}

// A text is looked through only where it has what is looked for.
bool has_spaced_letters(std::string_view text) {
  for (auto at = text.find(' '); at != std::string_view::npos; at = text.find(' ', at + 1)) {
    auto const first = code_point_at(text, at + 1);
    if (!is_letter(first.value) || code_point_at(text, at + 1 + first.length).value != ' ') {
      continue;
    }
    auto const second_at = at + 2 + first.length;
    auto const second = code_point_at(text, second_at);
    if (is_letter(second.value) && code_point_at(text, second_at + second.length).value == ' ') {
      return true;
    }
  }
  return false;
}

class Closer {
 public:
  explicit Closer(std::string_view text) : text_{text} { closed_.reserve(text.size()); }

  std::size_t close() {
    for (std::size_t at = 0; at < text_.size();) {
      if (text_[at] == '\n') {
        end_line();
        closed_.push_back(text_[at++]);
        continue;
      }
      bool const begins = at == 0 || text_[at - 1] == ' ' || text_[at - 1] == '\n';
      at = begins ? take(at) : copy(at, at + 1);
    }
    end_line();
    return words_;
  }
  [[nodiscard]] std::string text() && { return std::move(closed_); }

 private:
  // The word at `at`, closed if it is spaced; returns where to go on.
  std::size_t take(std::size_t at) {
    auto const rest = text_.substr(at);
    auto const letters = spaced_letters(rest);
    if (letters.letters == 0) return copy(at, at + 1);
    if (goes_on_) {
      goes_on_ = false;
      return put(at, letters);
    }
    if (letters.letters >= kFewestSpacedLetters && !letters.counted) {
      ++words_;
      goes_on_ = is_broken(rest, letters);
      return goes_on_ ? put_broken(at, letters) : put(at, letters);
    }
    bool const part = letters.letters >= kFewestOfPart && is_broken(rest, letters);
    if (!part) return copy(at, at + 1);
    ++words_;
    goes_on_ = true;
    return put_broken(at, letters);
  }

  [[nodiscard]] static bool is_broken(std::string_view rest, Spaced const& letters) {
    if (break_behind(rest, letters) == 0) return false;
    auto const below = letters_below(rest);
    return below.letters >= kFewestOfPart &&
           letters.letters + below.letters >= kFewestSpacedLetters &&
           !(letters.counted && below.counted);
  }

  std::size_t put(std::size_t at, Spaced const& letters) {
    for (std::size_t i = at; i < at + letters.bytes; ++i) {
      if (text_[i] == ' ') {
        ++blanks_;
      } else {
        closed_.push_back(text_[i] == '1' ? 'l' : text_[i] == '0' ? 'o' : text_[i]);
      }
    }
    return at + letters.bytes;
  }

  std::size_t put_broken(std::size_t at, Spaced const& letters) {
    auto const end = put(at, letters);
    auto const hyphen = break_behind(text_.substr(at), letters);
    blanks_ += hyphen - 1;
    closed_.push_back('-');
    return end + hyphen;
  }

  std::size_t copy(std::size_t from, std::size_t to) {
    closed_.append(text_.substr(from, to - from));
    return to;
  }

  void end_line() {
    closed_.append(blanks_, ' ');
    blanks_ = 0;
  }

  std::string_view text_;
  std::string closed_;
  std::size_t blanks_{};  // taken out of this line
  std::size_t words_{};
  bool goes_on_{false};  // the word at the end of the line above
};

}  // namespace

std::size_t close_spaced_words(std::string& text) {
  if (!has_spaced_letters(text)) return 0;
  Closer closer{text};
  auto const words = closer.close();
  if (words > 0) text = std::move(closer).text();
  return words;
}

}  // namespace keydrift::printed
