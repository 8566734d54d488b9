#include "keydrift/formats/printed_pointer_words.hpp"

#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// Words that announce a couplet's number (English, German, French, Spanish, Portuguese, Italian,
// Dutch, Latin, Scandinavian, Czech, Russian).
constexpr std::array kPointerWords{
    "to"sv,     "goto"sv,     "go"sv,        "see"sv,       "couplet"sv,    "couplets"sv,
    "turn"sv,   "proceed"sv,  "continue"sv,  "with"sv,      "at"sv,         "now"sv,
    "siehe"sv,  "s"sv,        "s.u"sv,       "u"sv,         "weiter"sv,     "bei"sv,
    "mit"sv,    "zu"sv,       "unter"sv,     "nr"sv,        "no"sv,         "n°"sv,
    "nº"sv,     "num"sv,      "núm"sv,       "voir"sv,      "aller"sv,      "allez"sv,
    "passer"sv, "passez"sv,   "à"sv,         "au"sv,        "véase"sv,      "vease"sv,
    "ver"sv,    "ir"sv,       "vaya"sv,      "a"sv,         "al"sv,         "vide"sv,
    "vid"sv,    "para"sv,     "passe"sv,     "vá"sv,        "siga"sv,       "seguir"sv,
    "pase"sv,   "pasar"sv,    "continuer"sv, "dilema"sv,    "dilemma"sv,    "dichotomie"sv,
    "vgl"sv,    "vergl"sv,    "gehe"sv,      "dann"sv,      "punkt"sv,      "alternative"sv,
    "vedi"sv,   "vai"sv,      "andare"sv,    "zie"sv,       "ga"sv,         "naar"sv,
    "verder"sv, "bij"sv,      "dicotomía"sv, "numéro"sv,    "número"sv,     "numero"sv,
    "nummer"sv, "number"sv,   "dicotomia"sv, "step"sv,      "lead"sv,       "gå"sv,
    "till"sv,   "til"sv,      "se"sv,        "fortsätt"sv,  "fortsett"sv,   "el"sv,
    "n.º"sv,    "n.°"sv,      "n"sv,         "sigue"sv,     "segue"sv,      "continúa"sv,
    "en"sv,     "em"sv,       "si"sv,        "veda"sv,      "v"sv,          "cf"sv,
    "jdi"sv,    "na"sv,       "dále"sv,      "viz"sv,       "przejdź"sv,    "do"sv,
    "см"sv,     "смотри"sv,   "смотреть"sv,  "переходим"sv, "переходите"sv, "перейти"sv,
    "далее"sv,  "к"sv,        "п"sv,         "пункту"sv,    "passo"sv,      "paso"sv,
    "étape"sv,  "etapa"sv,    "schritt"sv,   "stap"sv,      "o"sv,          "question"sv,
    "frage"sv,  "pregunta"sv, "pergunta"sv,  "questão"sv,   "vraag"sv,      "domanda"sv,
    "fråga"sv};
// Of these, the ones that announce a number; the others only go along with them.
constexpr std::array kStrongPointers{
    "goto"sv,      "go"sv,        "see"sv,        "couplet"sv,  "couplets"sv,   "turn"sv,
    "proceed"sv,   "siehe"sv,     "voir"sv,       "véase"sv,    "vease"sv,      "ver"sv,
    "vide"sv,      "vid"sv,       "weiter"sv,     "aller"sv,    "allez"sv,      "ir"sv,
    "passe"sv,     "pase"sv,      "passer"sv,     "passez"sv,   "dichotomie"sv, "dilema"sv,
    "dilemma"sv,   "vá"sv,        "vaya"sv,       "siga"sv,     "vgl"sv,        "gehe"sv,
    "vedi"sv,      "vai"sv,       "zie"sv,        "ga"sv,       "verder"sv,     "s.u"sv,
    "dicotomía"sv, "dicotomia"sv, "gå"sv,         "fortsätt"sv, "fortsett"sv,   "sigue"sv,
    "segue"sv,     "veda"sv,      "jdi"sv,        "viz"sv,      "przejdź"sv,    "смотри"sv,
    "смотреть"sv,  "переходим"sv, "переходите"sv, "перейти"sv};
// Of these, the ones that stand right before a number: "If no, go to 3" says otherwise.
constexpr std::array kWordsBeforeNumber{"no"sv, "nr"sv, "n"sv, "n°"sv, "nº"sv, "n.º"sv, "n.°"sv};
// Words whose number is no couplet's.
constexpr std::array kNumberedThings{
    "fig"sv,     "figs"sv,  "figure"sv,   "figures"sv,   "p"sv,       "pp"sv,      "page"sv,
    "pages"sv,   "pl"sv,    "pls"sv,      "plate"sv,     "plates"sv,  "abb"sv,     "taf"sv,
    "tafel"sv,   "tab"sv,   "table"sv,    "map"sv,       "maps"sv,    "seite"sv,   "lám"sv,
    "lam"sv,     "est"sv,   "chapter"sv,  "chap"sv,      "kapitel"sv, "species"sv, "sp"sv,
    "article"sv, "no"sv,    "nr"sv,       "vol"sv,       "ca"sv,      "c"sv,       "about"sv,
    "than"sv,    "least"sv, "most"sv,     "until"sv,     "since"sv,   "karte"sv,   "carte"sv,
    "página"sv,  "pag"sv,   "text-fig"sv, "text-figs"sv, "x"sv,       "×"sv,       "photo"sv,
    "photos"sv,  "foto"sv,  "fotos"sv,    "photograph"sv};

}  // namespace

std::string_view strip_word_marks(std::string_view word) {
  while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
  while (!word.empty() && (word.back() == '.' || word.back() == ',' || word.back() == ':' ||
                           word.back() == ';' || word.back() == ')' || word.back() == ']')) {
    word.remove_suffix(1);
  }
  return word;
}

bool is_pointer_word(std::string_view word) {
  static constexpr auto kLengths = lengths_by_beginning(kPointerWords);
  auto const folded = fold(word);
  return may_be_among(kLengths, folded) && is_one_of(kPointerWords, folded);
}

bool is_initial(std::string_view printed) {
  return printed.size() == 2 && printed[1] == '.' && is_upper(code_point_at(printed, 0).value);
}

bool is_strong_pointer(std::string_view folded) { return is_one_of(kStrongPointers, folded); }

bool is_number_word(std::string_view folded) { return is_one_of(kWordsBeforeNumber, folded); }

bool is_numbered_thing(std::string_view folded) { return is_one_of(kNumberedThings, folded); }

}  // namespace keydrift::printed
