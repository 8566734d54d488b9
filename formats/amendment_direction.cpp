#include "keydrift/formats/amendment_direction.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostArticles = 2;  // words between "not" and what it denies: "not the word"

class DirectionFinder {
 public:
  DirectionFinder(std::vector<Token> const& tokens, std::size_t first, std::size_t second)
      : tokens_{tokens}, first_{first}, second_{second} {}

  [[nodiscard]] PairDirection find() const {
    if (has(Sense::remove, 0, tokens_.size())) return taken_out();
    auto const between = last_rejection(first_ + 1, second_);
    if (between < second_) {
      // "'pale' is not right, read 'dark'".
      if (has(Sense::read, between, second_)) {
        return denies(between) ? PairDirection::old_first : PairDirection::other_words;
      }
      return rejected_between(between);
    }
    bool const verb =
        has(Sense::change, 0, tokens_.size()) || has(Sense::replace, 0, tokens_.size());
    return verb ? by_verb() : by_reading();
  }

 private:
  [[nodiscard]] bool has(Sense sense, std::size_t begin, std::size_t end) const {
    return std::any_of(tokens_.begin() + static_cast<std::ptrdiff_t>(begin),
                       tokens_.begin() + static_cast<std::ptrdiff_t>(end),
                       [&](Token const& token) { return token.sense == sense; });
  }
  template <std::size_t n>
  [[nodiscard]] bool has_word(std::array<std::string_view, n> const& words, std::size_t begin,
                              std::size_t end) const {
    return std::any_of(tokens_.begin() + static_cast<std::ptrdiff_t>(begin),
                       tokens_.begin() + static_cast<std::ptrdiff_t>(end), [&](Token const& token) {
                         return token.sense != Sense::quote &&
                                is_one_of(words, plain_words(token.text));
                       });
  }

  // "not", "rather than", "instead of", "for".
  [[nodiscard]] bool rejects(std::size_t i) const {
    return tokens_[i].sense == Sense::instead || denies(i);
  }
  // "No" counts couplets in English and denies in Spanish.
  [[nodiscard]] bool denies(std::size_t i) const {
    static constexpr std::array kDenials{"not"sv, "nicht"sv, "non"sv, "nao"sv, "no"sv};
    if (i + 1 < tokens_.size() && tokens_[i + 1].sense == Sense::label) return false;
    auto const word = plain_words(tokens_[i].text);
    return is_one_of(kDenials, word) ||
           (word == "than" && i > 0 && plain_words(tokens_[i - 1].text) == "rather");
  }
  // Also "for", which parts old words from new ones in either order.
  [[nodiscard]] bool is_plain_for(std::size_t i) const {
    static constexpr std::array kWords{"for"sv, "fur"sv, "pour"sv, "pro"sv};
    return is_one_of(kWords, plain_words(tokens_[i].text));
  }

  // The last such word; `end` for none.
  [[nodiscard]] std::size_t last_rejection(std::size_t begin, std::size_t end) const {
    for (auto i = end; i-- > begin;) {
      if (tokens_[i].sense != Sense::quote && rejects(i)) return i;
    }
    return end;
  }

  // Nothing but articles and the like between the token and the quotation.
  [[nodiscard]] bool stands_before(std::size_t i, std::size_t quotation) const {
    if (quotation - i > kMostArticles + 1) return false;
    return std::all_of(tokens_.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                       tokens_.begin() + static_cast<std::ptrdiff_t>(quotation),
                       [](Token const& token) {
                         return token.sense == Sense::other || token.sense == Sense::colon;
                       });
  }

  // "'X' instead of 'Y'", "'X' and not 'Y'": Y is wrong, unless the words tell what was printed.
  [[nodiscard]] PairDirection rejected_between(std::size_t at) const {
    if (!stands_before(at, second_)) return PairDirection::unknown;
    if (is_told_wrong(at)) return PairDirection::old_first;
    if (!is_plain_for(at)) {
      return tells_what_is_printed() ? PairDirection::unknown : PairDirection::new_first;
    }
    static constexpr std::array kSubstitutes{"substitute"sv,    "substituted"sv,
                                             "substitue"sv,     "substituatur"sv,
                                             "substituantur"sv, "substituendus"sv};
    if (has_word(kSubstitutes, 0, tokens_.size())) return PairDirection::new_first;
    if (has(Sense::change, 0, tokens_.size())) return PairDirection::old_first;
    if (has(Sense::replace, 0, tokens_.size())) return PairDirection::unknown;
    return has(Sense::read, 0, first_) ? PairDirection::new_first : PairDirection::unknown;
  }

  // "'X' is a misprint for 'Y'", "'X' was printed instead of 'Y'"; not "misprint: read 'X' for
  // 'Y'".
  [[nodiscard]] bool is_told_wrong(std::size_t rejection) const {
    for (std::size_t i = 0; i < rejection; ++i) {
      if (tokens_[i].sense == Sense::quote || !tells_of_error(i)) continue;
      bool const asked = i < first_ && has(Sense::read, i + 1, first_);
      if (!asked) return true;
    }
    return false;
  }
  [[nodiscard]] bool tells_of_error(std::size_t i) const {
    static constexpr std::array kErrors{"misprint"sv,
                                        "misprinted"sv,
                                        "error"sv,
                                        "errors"sv,
                                        "erroneous"sv,
                                        "erroneously"sv,
                                        "wrongly"sv,
                                        "mistake"sv,
                                        "mistakenly"sv,
                                        "incorrectly"sv,
                                        "typo"sv,
                                        "druckfehler"sv,
                                        "fehler"sv,
                                        "falschlich"sv,
                                        "falschlicherweise"sv,
                                        "irrtumlich"sv,
                                        "irrtumlicherweise"sv,
                                        "versehentlich"sv,
                                        "steht"sv,
                                        "gedruckt"sv,
                                        "erreur"sv,
                                        "coquille"sv,
                                        "imprime"sv,
                                        "erroneamente"sv,
                                        "dice"sv,
                                        "erro"sv,
                                        "impresso"sv,
                                        "errore"sv,
                                        "perperam"sv,
                                        "falso"sv,
                                        "legge"sv};
    static constexpr std::array kWas{"was"sv, "is"sv, "were"sv, "are"sv, "appears"sv};
    auto const word = plain_words(tokens_[i].text);
    if (is_one_of(kErrors, word)) return true;
    auto const before = i > 0 ? plain_words(tokens_[i - 1].text) : std::string{};
    return (word == "printed" && is_one_of(kWas, before)) ||
           ((word == "lit" || word == "lee") && (before == "on" || before == "se"));
  }

  // "Couplet 4 reads 'X' instead of 'Y'": as printed, or as it is to be?
  [[nodiscard]] bool tells_what_is_printed() const {
    static constexpr std::array kVerbs{"reads"sv, "heisst"sv, "lautet"sv, "lit"sv};
    static constexpr std::array kAsItShould{
        "now"sv,  "correctly"sv, "richtig"sv, "richtigerweise"sv, "nun"sv,     "jetzt"sv,
        "soll"sv, "muss"sv,      "should"sv,  "desormais"sv,      "rightly"sv, "must"sv};
    return has_word(kVerbs, 0, first_) && !has_word(kAsItShould, 0, first_);
  }

  // "Delete 'pale' and insert 'dark'".
  [[nodiscard]] PairDirection taken_out() const {
    bool const put = has(Sense::insert, first_, second_) || has(Sense::add, first_, second_) ||
                     has(Sense::replace, first_, second_);
    return put && has(Sense::remove, 0, first_) ? PairDirection::old_first : PairDirection::unknown;
  }

  [[nodiscard]] PairDirection by_verb() const {
    static constexpr std::array kBy{"by"sv,  "with"sv, "durch"sv, "mit"sv,
                                    "par"sv, "por"sv,  "per"sv};
    // "For 'pale' substitute 'dark'".
    auto const before = last_rejection(0, first_);
    if (before < first_ && !denies(before) && stands_before(before, first_)) {
      return PairDirection::old_first;
    }
    auto verb = first_ + 1;
    while (verb < second_ && tokens_[verb].sense != Sense::change &&
           tokens_[verb].sense != Sense::replace) {
      ++verb;
    }
    if (verb < second_) {
      if (has(Sense::becomes, verb, second_)) return PairDirection::old_first;
      // "In 'Wings pale', replace 'pale' by dark".
      bool const asks =
          tokens_[verb - 1].sense == Sense::joins || tokens_[verb - 1].sense == Sense::colon;
      if (asks || has(Sense::becomes, second_, tokens_.size())) return PairDirection::other_words;
      return is_active(verb) ? PairDirection::new_first : PairDirection::unknown;
    }
    if (has(Sense::becomes, first_, second_) || is_arrow()) return PairDirection::old_first;
    // "durch „dunkel“ ist „blass“ zu ersetzen".
    for (std::size_t i = 0; i < first_; ++i) {
      bool const by = is_one_of(kBy, plain_words(tokens_[i].text));
      if (by && stands_before(i, first_)) return PairDirection::new_first;
    }
    return PairDirection::unknown;
  }
  // "'dark' replaces 'pale'".
  [[nodiscard]] bool is_active(std::size_t verb) const {
    static constexpr std::array kVerbs{"replaces"sv,  "replace"sv,   "ersetzt"sv,  "remplace"sv,
                                       "reemplaza"sv, "sustituye"sv, "substitui"sv};
    return is_one_of(kVerbs, plain_words(tokens_[verb].text));
  }

  [[nodiscard]] PairDirection by_reading() const {
    static constexpr std::array kBut{"but"sv, "sondern"sv, "mais"sv, "sino"sv, "mas"sv, "sed"sv};
    static constexpr std::array kAuxiliaries{"soll"sv, "sollte"sv, "muss"sv,
                                             "must"sv, "should"sv, "mussen"sv};
    auto const before = last_rejection(0, first_);
    bool const read = has(Sense::read, 0, tokens_.size());
    if (before < first_) {
      bool const but = has_word(kBut, first_ + 1, second_);
      bool const read_behind = has(Sense::read, first_, tokens_.size());
      if (denies(before)) {
        return but || has(Sense::read, first_, second_) ? PairDirection::old_first
                                                        : PairDirection::unknown;
      }
      bool const clear = stands_before(before, first_) && !is_plain_for(before);
      return but || read_behind || clear || (read && stands_before(before, first_))
                 ? PairDirection::old_first
                 : PairDirection::unknown;
    }
    // "In 'Wings pale', read 'dark' for pale".
    if (has(Sense::instead, second_, tokens_.size())) return PairDirection::other_words;
    bool const verb_last =
        has(Sense::read, second_, tokens_.size()) && has_word(kAuxiliaries, 0, second_);
    return has(Sense::read, first_, second_) || verb_last || is_arrow() ? PairDirection::old_first
                                                                        : PairDirection::unknown;
  }

  // "'pale' → 'dark'".
  [[nodiscard]] bool is_arrow() const {
    if (second_ == first_ + 2) return tokens_[first_ + 1].text == "→";
    return second_ == first_ + 3 && tokens_[first_ + 1].text == "-" &&
           tokens_[first_ + 2].text == ">";
  }

  std::vector<Token> const& tokens_;
  std::size_t first_;
  std::size_t second_;
};

}  // namespace

PairDirection direction_of(std::vector<Token> const& tokens, std::size_t first,
                           std::size_t second) {
  return DirectionFinder{tokens, first, second}.find();
}

}  // namespace keydrift::printed
