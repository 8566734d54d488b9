#include "keydrift/formats/printed_key_pointers.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_pointer_words.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

namespace {

bool is_word_for_a_group(std::string_view folded) {
  static constexpr std::array kGroupWords{
      "genus"sv,      "gattung"sv,   "genre"sv,        "género"sv,       "genero"sv,
      "gênero"sv,     "genere"sv,    "geslacht"sv,     "subgenus"sv,     "untergattung"sv,
      "family"sv,     "familie"sv,   "famille"sv,      "familia"sv,      "família"sv,
      "famiglia"sv,   "subfamily"sv, "unterfamilie"sv, "sous-famille"sv, "subfamilia"sv,
      "subfamília"sv, "tribe"sv,     "tribus"sv,       "tribu"sv,        "order"sv,
      "ordnung"sv,    "ordre"sv,     "orden"sv,        "ordem"sv,        "ordo"sv};
  return is_one_of(kGroupWords, folded);
}

// "p. 44", "S. 44–46", "Seite 3", or nothing.
bool is_page_or_nothing(std::string_view text) {
  static constexpr std::array kBesides{"pagina"sv, "on"sv, "auf"sv};
  auto const words = words_of(text);
  return std::all_of(words.begin(), words.end(), [](std::string_view word) {
    auto const bare = strip_word_marks(word);
    return bare.empty() || is_digit(code_point_at(bare, 0).value) || is_page_word(bare) ||
           is_one_of(kBesides, fold(bare));
  });
}

}  // namespace

std::string_view pointed_group(std::string_view text) {
  text = trim(text);
  if (text.starts_with('(') && text.find(')') == text.size() - 1) {
    text = trim(text.substr(1, text.size() - 2));
  }
  auto const first = fold(strip_word_marks(text.substr(0, text.find(' '))));
  if (!is_strong_pointer(first) && first != "s") return {};
  auto const named = strip_pointer(text);
  auto const words = words_of(named);
  if (words.size() < 2 || !is_word_for_a_group(fold(words[0]))) return {};
  auto const name = strip_word_marks(words[1]);
  constexpr std::size_t kShortestGroup = 3;  // letters
  if (name.size() < kShortestGroup || !is_upper(code_point_at(name, 0).value)) return {};
  auto const end = static_cast<std::size_t>(name.data() + name.size() - named.data());
  return is_page_or_nothing(named.substr(end)) ? named.substr(0, end) : std::string_view{};
}

std::optional<std::size_t> key_pointer_at_end(std::string_view text) {
  constexpr std::size_t kMostWords = 14;
  static constexpr std::array kPointers{
      "see key to "sv,   "see the key to "sv, "see key of "sv,   "siehe schlüssel der "sv,
      "voir clé des "sv, "ver clave de "sv,   "go to key to "sv, "go to the key to "sv};
  constexpr std::size_t kLongest = 120;  // bytes
  auto const from = text.size() > kLongest ? text.size() - kLongest : 0;
  for (auto at = from; at + 1 < text.size(); ++at) {
    bool const opens = text[at] == '(' || text[at] == '.' || text[at] == ';' || text[at] == ',';
    if (!opens || at == 0) continue;
    auto const begin = skip_blanks(text, at + 1);
    static constexpr auto kInitials = "sSvVgG"sv;
    if (begin >= text.size() || kInitials.find(text[begin]) == std::string_view::npos) continue;
    auto const folded = fold(text.substr(begin));
    bool const points = std::any_of(kPointers.begin(), kPointers.end(),
                                    [&](std::string_view one) { return folded.starts_with(one); });
    // Words behind a bracket that closes go on about something else.
    auto const close = text.find(')', begin);
    auto const rest = close == std::string_view::npos ? std::string_view{} : text.substr(close + 1);
    bool const last = rest.find_first_not_of(". ") == std::string_view::npos;
    if (points && last && words_of(text.substr(begin)).size() <= kMostWords) return begin;
  }
  return std::nullopt;
}

}  // namespace keydrift::printed
