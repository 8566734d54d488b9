#include "keydrift/formats/printed_page_words.hpp"

#include <array>
#include <cstddef>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "12", "12-14)", "xii": of one letter alone it is more often something else, as in "s. l.".
bool begins_with_number(std::string_view word) {
  if (is_digit(code_point_at(word, 0).value)) return true;
  auto const end = word.find_last_not_of(".,;)");
  return end != std::string_view::npos && end >= 1 &&
         word.substr(0, end + 1).find_first_not_of("ivxlc") == std::string_view::npos;
}

}  // namespace

bool is_page_word(std::string_view word) {
  static constexpr std::array kWords{"p"sv,   "pp"sv,   "page"sv,   "pages"sv, "s"sv, "seite"sv,
                                     "pág"sv, "págs"sv, "página"sv, "pag"sv,   "с"sv, "стр"sv,
                                     "str"sv, "sid"sv,  "side"sv,   "blz"sv,   "lk"sv};
  constexpr std::size_t kLongest = 8;  // bytes, with the full stop
  if (word.ends_with('.')) word.remove_suffix(1);
  if (word.empty() || word.size() > kLongest) return false;
  return is_one_of(kWords, fold(word));
}

bool is_page(std::string_view word, std::string_view number) {
  return begins_with_number(number) && is_page_word(word.substr(word.starts_with('(') ? 1 : 0));
}

bool ends_in_page(std::string_view text) {
  constexpr std::size_t kLookedAt = 80;  // bytes
  if (text.size() > kLookedAt) text.remove_prefix(text.size() - kLookedAt);
  auto const words = words_of(text);
  return words.size() > 2 && is_page(words[words.size() - 2], words.back());
}

bool ends_in_page_cut_short(std::string_view text) {
  if (!ends_in_page(text)) return false;
  auto const number = trim_right(text.substr(0, last_word_begin(trim_right(text))));
  return number.ends_with('.');
}

bool starts_with_page(std::string_view text) {
  constexpr std::size_t kLookedAt = 24;  // bytes
  auto const start = start_of(text, kLookedAt);
  auto const words = words_of(start, 2);
  if (words.size() == 2 && is_page(words[0], words[1])) return true;
  auto const digits = start.find_first_of("0123456789");
  return digits != std::string_view::npos && is_page_word(start.substr(0, digits));  // "p.12"
}

bool is_open_page(std::string_view text) {
  constexpr std::size_t kLongest = 14;  // bytes
  return text.size() > 3 && text.size() <= kLongest && text.front() == '[' &&
         text.find(']') == std::string_view::npos && starts_with_page(text.substr(1));
}

std::string_view without_open_page(std::string_view text) {
  auto const open = text.rfind('[');
  bool const page = open != std::string_view::npos && open > 0 && is_open_page(text.substr(open));
  return page ? trim_right(text.substr(0, open)) : text;
}

}  // namespace keydrift::printed
