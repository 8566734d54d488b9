// The number of a couplet that ends a lead without leaders, with the words that point to it.

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_pointer_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "s. 9" is "see 9"; "S. 9" is page 9.
bool is_short_see(std::string_view printed) { return printed == "s." || printed == "s.u."; }

// "… leaves entire."
bool ends_in_long_word(std::string_view text) {
  constexpr std::size_t kShortest = 4;  // letters; shorter words are cut short
  if (!text.ends_with('.')) return false;
  auto const word = text.substr(last_word_begin(text));
  return word.size() > kShortest && is_plain_word(word.substr(0, word.size() - 1));
}

// No key has so many couplets that leaders would not be printed before their numbers.
bool is_year_number(Reference const& reference) {
  return reference.number >= 1700 && reference.number < 2100 && reference.printed.size() == 4;
}

// "entire.4": bytes before the number of the next couplet that a sentence's full stop was all the
// room for; 0 for "fig.4" and the like.
std::size_t word_before_number(std::string_view word) {
  constexpr std::size_t kShortest = 4;  // letters; shorter ones are cut short
  auto const stop = word.rfind('.');
  if (stop == std::string_view::npos || stop + 1 >= word.size()) return 0;
  auto const before = word.substr(0, stop);
  bool const digits = word.find_first_not_of("0123456789"sv, stop + 1) == std::string_view::npos;
  bool const whole = before.size() >= kShortest && is_plain_word(before);
  return digits && whole && !is_numbered_thing(fold(before)) ? stop + 1 : 0;
}

// Where "(p. 22)", "(page 22)" at the end of the text opens; 0 where none stands.
std::size_t page_in_brackets(std::string_view text) {
  if (!text.ends_with(')')) return 0;
  auto const open = text.rfind(" (");
  if (open == std::string_view::npos || open == 0) return 0;
  auto const words = words_of(text.substr(open + 2, text.size() - open - 3));
  return words.size() == 2 && is_page(words[0], words[1]) ? open : 0;
}

}  // namespace

std::optional<TrailingReference> trailing_reference(std::string_view text,
                                                    Numbering const* numbering) {
  text = trim_right(text);
  if (auto const page = page_in_brackets(text); page > 0) {  // "go to 2 (p. 22)"
    auto const found = trailing_reference(text.substr(0, page), numbering);
    if (found && found->pointed) return found;
  }
  auto const begin = last_word_begin(text);
  auto word = text.substr(begin);
  if (begin == 0 || word.empty()) return std::nullopt;
  if (word.size() > 1 && (word.back() == '.' || word.back() == ';')) word.remove_suffix(1);
  bool const bracketed = word.size() > 2 && ((word.front() == '(' && word.back() == ')') ||
                                             (word.front() == '[' && word.back() == ']'));
  if (bracketed) word = word.substr(1, word.size() - 2);
  // "(go to 5)", "[go to 5]"
  bool const square = !bracketed && word.size() > 1 && word.back() == ']';
  bool const closes = square || (!bracketed && word.size() > 1 && word.back() == ')');
  if (closes) word.remove_suffix(1);
  if (word.size() > 1 && word.front() == '#') word.remove_prefix(1);
  std::size_t glued = 0;  // bytes of the word before the number
  auto reference = read_reference(word);
  if (!reference && numbering != nullptr) {
    glued = word_before_number(word);
    if (glued > 0) reference = read_reference(word.substr(glued));
    if (reference && !numbering->has_number(reference->number)) return std::nullopt;
  }
  bool const roman = numbering != nullptr && numbering->roman;
  if (auto const number = roman ? roman_number(word) : 0; number > 0) {
    reference = Reference{.number = number, .letter = {}, .printed = word};
  }
  if (!reference) return std::nullopt;
  bool const letter = reference->family != LabelFamily::digits;
  if (letter && (numbering == nullptr || numbering->family != reference->family)) {
    return std::nullopt;
  }
  TrailingReference found;
  found.reference = *reference;
  found.destination_begin = begin + glued;
  found.words_end = glued > 0 ? begin + glued : end_before_blanks(text, begin);
  // Take in all of "go to couplet".
  bool opened = false;
  bool strong = false;
  std::size_t end = found.words_end;
  std::size_t phrase_begin = found.destination_begin;
  while (end > 0) {
    auto const word_begin = last_word_begin(text.substr(0, end));
    auto const printed = text.substr(word_begin, end - word_begin);
    auto const bare = strip_word_marks(printed);
    if (is_initial(printed) || !is_pointer_word(bare)) break;
    auto const before = fold(bare);
    if (found.pointed && is_number_word(before)) break;
    strong = strong || is_strong_pointer(before);
    found.pointed = strong || found.pointed || is_short_see(printed);
    phrase_begin = word_begin;
    end = end_before_blanks(text, word_begin);
    opened = opened || printed.front() == (square ? '[' : '(');
    if (opened) break;
  }
  // "see 3)", where labels are "3)": nothing was opened before.
  bool const within =
      std::count(text.begin(), text.end(), '(') >= std::count(text.begin(), text.end(), ')');
  if (closes && !opened && (within || !found.pointed)) return std::nullopt;
  if (square && !(opened && found.pointed)) return std::nullopt;
  // "anal rays 9 to 11."
  bool const range = text.substr(phrase_begin, found.destination_begin - phrase_begin) == "to " &&
                     end > 0 && phrase_begin == end + 1 &&
                     is_digit(static_cast<unsigned char>(text[end - 1])) &&
                     (numbering == nullptr || !numbering->has_number(reference->number));
  if (range) return std::nullopt;
  bool const known = numbering != nullptr && numbering->has_number(reference->number);
  // "Blad kala A. bus Roe s. 33": in Swedish it is a page.
  if (found.pointed && !strong && numbering != nullptr && !known) {
    auto const name = trailing_name(text.substr(0, end));
    if (name && is_certain_name(text.substr(*name, end - *name))) return std::nullopt;
  }
  // Behind a sentence words announce a number that stand before other figures as well: "… leaves
  // entire. Nr. 2", "… leaves entire. cf. 2".
  bool const apart =
      phrase_begin < found.destination_begin && ends_in_long_word(text.substr(0, end));
  if (found.pointed || (apart && known && !letter)) {
    found.pointed = true;
    found.destination_begin = phrase_begin;
    found.words_end = end;
    return found;
  }
  if ((letter && !numbering->ends.letters) || is_year_number(found.reference)) return std::nullopt;
  // "Corolle bleue v. 2": nothing else is said so of a couplet's number, if it is one.
  static constexpr std::array kPlain{"v."sv, "cf."sv, "cfr."sv, "см."sv, "naar"sv, "se"sv, "к"sv};
  if (known && end > 0 &&
      is_one_of(kPlain, text.substr(phrase_begin, found.words_end - phrase_begin))) {
    found.destination_begin = phrase_begin;
    found.words_end = end;
    return found;
  }
  auto const before_begin = last_word_begin(text.substr(0, found.words_end));
  auto const before = text.substr(before_begin, found.words_end - before_begin);
  constexpr std::size_t kLongestShortened = 5;  // bytes: "long."
  found.after_sentence = glued > 0 || (before.size() > kLongestShortened && before.back() == '.') ||
                         text[begin] == '[' || (bracketed && text.ends_with('.'));
  // "Ausella sp. nov. 1", "Ausella busa (1)", "busa Roe (1)"
  auto const words = text.substr(0, found.words_end);
  bool const fresh = (before == "nov." || before == "n.") &&
                     trim_right(text.substr(0, before_begin)).ends_with(" sp.");
  bool const round = bracketed && text[begin] == '(';
  auto const name = round ? trailing_name(words) : std::nullopt;
  bool const named =
      (name && is_latin_name(words.substr(*name))) || (round && is_genusless_name(words));
  if (fresh || named) return std::nullopt;
  bool const closed = before.back() == ')' || before.back() == ']';  // "(3 species) 6"
  // "Seite 4", "Band 4"; in small letters a band may be dark.
  if (before == "S." || before == "Band" ||
      (!closed && is_numbered_thing(fold(strip_word_marks(before))))) {
    return std::nullopt;
  }
  return found;
}

}  // namespace keydrift::printed
