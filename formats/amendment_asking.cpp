#include "keydrift/formats/amendment_asking.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "keydrift/formats/amendment_renumbering.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostWordsBeforeNumber = 6;  // "In the second half of couplet 3"

bool has_sense(std::vector<Token> const& tokens, Sense sense) {
  return std::any_of(tokens.begin(), tokens.end(),
                     [sense](Token const& token) { return token.sense == sense; });
}

std::size_t quotations_among(std::vector<Token> const& tokens) {
  return static_cast<std::size_t>(
      std::count_if(tokens.begin(), tokens.end(),
                    [](Token const& token) { return token.sense == Sense::quote; }));
}

// "Change", not "the following changes are necessary".
bool asks_to_change(std::vector<Token> const& tokens) {
  return std::any_of(tokens.begin(), tokens.end(), [](Token const& token) {
    return token.sense == Sense::change && plain_words(token.text) != "changes";
  });
}

bool speaks_of_misprint(std::vector<Token> const& tokens) {
  return std::any_of(tokens.begin(), tokens.end(), [](Token const& token) {
    return token.sense != Sense::quote && plain_words(token.text).starts_with("misprint");
  });
}

// "In the second lead of couplet 3"; not "Aus bus runs to couplet 3".
bool stands_in_front(std::vector<Token> const& tokens, std::size_t number) {
  static constexpr std::array kWords{
      "the"sv, "of"sv,  "for"sv, "at"sv,   "im"sv,   "am"sv,     "den"sv,    "der"sv,   "dem"sv,
      "des"sv, "bei"sv, "von"sv, "au"sv,   "aux"sv,  "dans"sv,   "le"sv,     "la"sv,    "les"sv,
      "du"sv,  "de"sv,  "el"sv,  "los"sv,  "del"sv,  "no"sv,     "na"sv,     "nos"sv,   "o"sv,
      "os"sv,  "do"sv,  "da"sv,  "half"sv, "teil"sv, "halfte"sv, "moitie"sv, "mitad"sv, "metade"sv};
  if (number > kMostWordsBeforeNumber) return false;
  return std::all_of(tokens.begin(), tokens.begin() + static_cast<std::ptrdiff_t>(number),
                     [](Token const& token) {
                       return token.sense == Sense::couplet || token.sense == Sense::ordinal ||
                              token.sense == Sense::becomes || token.sense == Sense::joins ||
                              token.sense == Sense::instead || token.sense == Sense::page ||
                              token.sense == Sense::line || token.sense == Sense::label ||
                              token.sense == Sense::colon || token.sense == Sense::bracket ||
                              is_one_of(kWords, plain_words(token.text));
                     });
}

// "Couplets 1–7 remain as they are", "Errata to couplet 3" ask for nothing.
bool leaves_as_it_is(std::vector<Token> const& tokens) {
  static constexpr std::array kWords{
      "unchanged"sv, "remain"sv,     "remains"sv,   "same"sv,      "unverandert"sv, "bleibt"sv,
      "bleiben"sv,   "inchange"sv,   "inchanges"sv, "igual"sv,     "iguales"sv,     "iguais"sv,
      "manent"sv,    "original"sv,   "addition"sv,  "additions"sv, "erratum"sv,     "errata"sv,
      "addenda"sv,   "corrigenda"sv, "nachtrag"sv,  "nachtrage"sv, "adiciones"sv,   "adicoes"sv};
  return std::any_of(tokens.begin(), tokens.end(),
                     [](Token const& token) { return is_one_of(kWords, plain_words(token.text)); });
}

}  // namespace

bool asks_for_change(std::vector<Token> const& tokens, std::vector<NumberList> const& couplets) {
  bool const verb = has_sense(tokens, Sense::replace) || has_sense(tokens, Sense::insert) ||
                    has_sense(tokens, Sense::remove) || has_sense(tokens, Sense::add) ||
                    asks_to_change(tokens) ||
                    (has_sense(tokens, Sense::instead) && has_sense(tokens, Sense::read)) ||
                    (has_sense(tokens, Sense::read) && quotations_among(tokens) >= 2);
  auto const named = std::find_if(couplets.begin(), couplets.end(),
                                  [](NumberList const& one) { return one.noun; });
  if (named == couplets.end()) return verb && quotations_among(tokens) >= 2;
  if (verb || speaks_of_swapping(tokens) || speaks_of_renumbering(tokens)) return true;
  if (speaks_of_misprint(tokens)) return true;
  return stands_in_front(tokens, named->first) && tokens.size() > named->last + 1 &&
         !has_sense(tokens, Sense::modification) && !leaves_as_it_is(tokens);
}

bool speaks_of_swapping(std::vector<Token> const& tokens) {
  static constexpr std::array kWords{
      "swap"sv,        "swapped"sv,      "transpose"sv,      "transposed"sv, "transposes"sv,
      "interchange"sv, "interchanged"sv, "reverse"sv,        "reversed"sv,   "invert"sv,
      "inverted"sv,    "vertauschen"sv,  "vertauscht"sv,     "tauschen"sv,   "intervertir"sv,
      "intervertis"sv, "permuter"sv,     "inverser"sv,       "transponer"sv, "intercambiar"sv,
      "invertir"sv,    "trocar"sv,       "intercambiense"sv, "trocadas"sv,   "inverter"sv,
      "permutentur"sv};
  return std::any_of(tokens.begin(), tokens.end(), [](Token const& token) {
    return token.sense != Sense::quote && is_one_of(kWords, plain_words(token.text));
  });
}

}  // namespace keydrift::printed
