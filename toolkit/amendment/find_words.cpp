#include "keydrift/amendment/find_words.hpp"

#include <algorithm>

#include "keydrift/key/fold.hpp"

namespace keydrift::amending {
namespace {

struct Sign {
  std::string value;  // one code point; dashes, quotation marks and blanks of every kind are one
  std::size_t begin{};
  std::size_t end{};
  bool word{false};  // a letter or a digit
};

std::size_t length_at(std::string_view text, std::size_t at) {
  auto const byte = static_cast<unsigned char>(text[at]);
  std::size_t const length = byte < 0x80 ? 1 : byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : 2;
  return std::min(length, text.size() - at);
}

std::string common_form(std::string_view sign) {
  static constexpr std::string_view kDashes = "\u2010\u2011\u2012\u2013\u2014\u2212";
  static constexpr std::string_view kMarks = "\u2018\u2019\u2032\u00B4";
  static constexpr std::string_view kDouble = "\u201C\u201D\u201E\u00AB\u00BB";
  static constexpr std::string_view kBlanks = "\u00A0\u2009\u202F";
  auto const is_of = [&](std::string_view set) {
    return sign.size() > 1 && set.find(sign) != std::string_view::npos;
  };
  if (is_of(kDashes)) return "-";
  if (is_of(kMarks)) return "'";
  if (is_of(kDouble)) return "\"";
  if (is_of(kBlanks)) return " ";
  return std::string{sign};
}

std::vector<Sign> signs_of(std::string_view text, bool fold) {
  std::vector<Sign> signs;
  for (std::size_t at = 0; at < text.size();) {
    auto const length = length_at(text, at);
    auto const raw = text.substr(at, length);
    auto value = common_form(raw);
    auto const first = static_cast<unsigned char>(value.front());
    // Letters beyond ASCII: from U+00C0 up to the general punctuation, and from U+3000 on.
    bool const far_letter = first >= 0xC3 && (first < 0xE2 || first >= 0xE3);
    bool const word = (first >= '0' && first <= '9') || (first >= 'A' && first <= 'Z') ||
                      (first >= 'a' && first <= 'z') || far_letter;
    if (fold && value != " ") value = fold_words(value);
    signs.push_back({std::move(value), at, at + length, word});
    at += length;
  }
  return signs;
}

std::vector<WordsAt> find(std::string_view text, std::string_view words, bool fold) {
  auto const where = signs_of(text, fold);
  auto const what = signs_of(words, fold);
  std::vector<WordsAt> found;
  if (what.empty()) return found;
  for (std::size_t i = 0; i + what.size() <= where.size();) {
    std::size_t k = 0;
    while (k < what.size() && where[i + k].value == what[k].value) ++k;
    auto const end = i + what.size();
    bool const whole = k == what.size() && !(i > 0 && where[i - 1].word && what.front().word) &&
                       !(end < where.size() && where[end].word && what.back().word);
    if (whole) {
      found.push_back({where[i].begin, where[end - 1].end});
      i = end;
    } else {
      ++i;
    }
  }
  return found;
}

bool is_capital(std::string_view text) { return !text.empty() && text[0] >= 'A' && text[0] <= 'Z'; }

}  // namespace

std::vector<WordsAt> find_words(std::string_view text, std::string_view words) {
  auto found = find(text, words, false);
  return found.empty() ? find(text, words, true) : found;
}

std::vector<WordsAt> find_words_as_cased(std::string_view text, std::string_view words) {
  return find(text, words, false);
}

std::string in_case_of(std::string_view replaced, std::string_view from, std::string to) {
  bool const raise =
      is_capital(replaced) && !is_capital(from) && !to.empty() && to[0] >= 'a' && to[0] <= 'z';
  if (raise) to[0] = static_cast<char>(to[0] - 'a' + 'A');
  return to;
}

}  // namespace keydrift::amending
