#include "keydrift/formats/amendment_words.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>
#include <optional>
#include <unordered_map>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// The phrases, parted by "|"; common practice of errata and of keys in each language.  Folded,
// without accents; a hyphen counts as a blank ("leia-se" is "leia se").
struct Vocabulary {
  Sense sense;
  std::string_view phrases;
};
constexpr std::array kVocabulary{
    Vocabulary{Sense::couplet,
               "couplet|couplets|lead|leads|half couplet|number|numbers|no|nos|dichotomy|"
               "dichotomies|nr|nrn|nummer|nummern|ziffer|ziffern|gabelpunkt|gabelpunkte|"
               "gabelpunkten|gabelpunkts|gabelpunktes|punkt|punkte|punkten|schlusselpunkt|"
               "schlusselpunkte|schlusselpunkten|schritt|schritte|schritten|alternative|"
               "alternativen|gegensatzpaar|"
               "gegensatzpaare|dichotomie|dichotomies|alinea|alineas|numero|numeros|entree|"
               "entrees|point|points|dilema|dilemas|disyuntiva|disyuntivas|copla|coplas|paso|"
               "pasos|punto|puntos|entrada|entradas|passo|passos|dicotomia|dicotomias|parelha|"
               "parelhas|item|itens|num|numerus|numeri|numerum|numeris|dichotomia|dichotomiam|"
               "dichotomiae|n|n°"},
    Vocabulary{Sense::replace,
               "replace|replaced|replaces|replacing|substitute|substituted|ersetzen|ersetze|"
               "ersetzt|remplacer|remplace|remplacee|remplaces|remplacees|remplacez|reemplazar|"
               "reemplaza|reemplazan|reemplazado|reemplazada|reemplazados|reemplazadas|"
               "reemplacese|reemplacense|sustituir|sustituirse|reemplazarse|sustituye|sustituyen|"
               "sustituido|sustituida|"
               "sustituidos|sustituidas|sustituyase|sustituyanse|substituir|substitui|"
               "substituido|substituida|substituidos|substituidas|substitua|substituam|"
               "substituatur|substituantur|substituendus|substituendi|substitue"},
    Vocabulary{
        Sense::read,
        "read|reads|should be|lies|lese|lesen|lautet|lauten|heisst|heissen|lire|lisez|"
        "lit|lu|lease|leanse|leerse|debe decir|deben decir|digase|leia|leiam|leia se|"
        "ler se|le se agora|queda como sigue|quedan como sigue|queda asi|quedan asi|passa a ter|"
        "passam a ter|passa a ser|passam a ser|passa a "
        "ler|lege|legatur|legantur|legendus|legendi|legendum|"
        "legenda|recte|leggere|leggi|leggasi|legga"},
    Vocabulary{Sense::insert,
               "insert|inserts|inserted|inserting|interpolate|einfugen|einzufugen|eingefugt|"
               "einfuegen|einzuschieben|einschieben|eingeschoben|fuge|inserer|insere|inseree|"
               "inseres|inserees|inserez|intercaler|intercale|intercalee|intercales|intercalees|"
               "intercalez|insertar|insertarse|intercalarse|inserte|insertese|insertense|inserta|"
               "insertan|intercalar|"
               "intercalese|intercalense|intercala|intercalan|inserir|insira|insiram|insere se|"
               "inseratur|inserantur|inserendus|inserendum|inserendi|interpone|interponatur"},
    Vocabulary{Sense::add,
               "add|added|adding|append|hinzufugen|hinzuzufugen|erganzen|erganze|"
               "anfugen|anzufugen|anzuschliessen|ajouter|ajoutez|ajoute|ajoutee|ajoutes|anadir|"
               "anadirse|agregarse|"
               "anade|anadase|"
               "anadanse|agregar|agregue|agreguese|acrescentar|acrescente|acrescentem|adicionar|"
               "adicione|adde|addatur|addantur|addendum"},
    Vocabulary{Sense::remove,
               "delete|deleted|deletes|deleting|remove|removed|omit|omitted|suppress|suppressed|"
               "cancel|cancelled|strike|streichen|streiche|gestrichen|entfallt|entfallen|"
               "weglassen|supprimer|supprime|supprimee|supprimes|supprimees|supprimez|biffer|"
               "effacer|suprimir|suprimirse|eliminarse|omitirse|borrarse|suprime|suprimen|"
               "suprimase|suprimanse|suprimido|suprimida|"
               "suprimidos|suprima|suprimam|eliminar|elimina|eliminan|eliminese|eliminense|"
               "elimine|eliminado|eliminada|borrar|borrese|omitir|omita|omitase|dele|deleatur|"
               "deleantur|delendus|delendi|delendum|omittatur|omittantur"},
    Vocabulary{
        Sense::change,
        "change|changed|changes|changing|exchange|exchanged|altering|correcting|emended|adapted|"
        "expanded|revised|alter|altered|amend|amended|amending|"
        "modify|modified|"
        "modifying|correct|corrected|andern|geandert|abandern|abgeandert|zu andern|"
        "changer|changez|modifier|modifie|modifiee|modifies|modifiees|corriger|corrigez|"
        "cambiar|cambie|cambiese|cambia|modificar|modifica|modifican|modifiquese|"
        "modificado|modificada|modificados|corregir|corrijase|mudar|mude|alterar|altere|"
        "alterado|alterada|alterados|corrigir|corrija|muta|mutetur|mutentur|corrige|"
        "corrigatur"},
    Vocabulary{Sense::modification,
               "modification|modifications|amendment|amendments|emendation|emendations|"
               "correction|corrections|anderung|anderungen|berichtigung|berichtigungen|"
               "modificacion|modificaciones|correccion|correcciones|modificacao|modificacoes|"
               "alteracao|alteracoes|correcao|correcoes|mutatio|mutationes|emendatio|"
               "emendationes"},
    Vocabulary{Sense::after,
               "after|behind|im anschluss an|anschliessend an|a la suite de|a la suite du|a la "
               "suite des|a "
               "continuacion de|a continuacion del|em seguida a|em seguida ao|a seguir a|a seguir "
               "ao|nach|hinter|apres|despues de|despues del|tras|depois "
               "de|depois do|apos|post"},
    Vocabulary{Sense::before, "before|vor|avant|antes de|antes del|antes do|ante"},
    Vocabulary{Sense::between, "between|zwischen|entre|inter"},
    Vocabulary{
        Sense::instead,
        "for|instead of|in place of|in lieu of|statt|anstatt|anstelle|anstelle von|an stelle|"
        "an stelle von|fur|au lieu de|a la place de|a la place du|pour|en lugar de|en vez de|donde "
        "dice|donde se lee|em vez de|em lugar de|onde "
        "se le|pro|loco|invece di|anziche|al posto di"},
    Vocabulary{Sense::becomes, "to|by|with|into|in|durch|zu|mit|par|en|por|con|a|per|ad"},
    Vocabulary{Sense::leads_to,
               "leads to|lead to|leads now to|now leads to|goes to|go to|goes now to|keys to|now "
               "keys to|keys "
               "now to|runs to|now runs to|runs now to|fuhrt zu|"
               "fuhrt nach|fuhrt auf|fuhrt nun zu|fuhrt jetzt zu|weiter mit|weiter bei|renvoie "
               "a|renvoie au|mene a|mene au|conduit a|conduit au|conduce a|conduce al|lleva a|"
               "lleva al|remite a|remite al|conduz a|conduz ao|leva a|leva ao|remete a|remete "
               "ao|ducit ad"},
    Vocabulary{Sense::throughout,
               "throughout|everywhere|durchweg|durchgehend|uberall|partout|en toda la clave|en "
               "todas partes|em toda a chave|ubique"},
    Vocabulary{Sense::page, "p|pp|page|pages|seite|seiten|s|pag|pags|pagina|paginas"},
    Vocabulary{Sense::line, "line|lines|zeile|zeilen|ligne|lignes|linea|lineas|linha|linhas"},
    Vocabulary{Sense::onwards,
               "ff|f|et seq|et sqq|seqq|sqq|and following|und folgende|et suivants|et suivantes|"
               "et suiv|y siguientes|y ss|e seguintes|e ss|et sequentes|onwards"},
    Vocabulary{Sense::through, "through|until|bis|hasta|ate|al|au|usque ad"},
    Vocabulary{Sense::joins, "and|und|et|y|e|as well as|sowie"},
};

constexpr std::array<std::pair<std::string_view, std::uint32_t>, 27> kOrdinals{{
    {"first", 1},    {"1st", 1},       {"second", 2},    {"2nd", 2},      {"third", 3},
    {"3rd", 3},      {"erste", 1},     {"ersten", 1},    {"erster", 1},   {"zweite", 2},
    {"zweiten", 2},  {"zweiter", 2},   {"dritte", 3},    {"premiere", 1}, {"premier", 1},
    {"deuxieme", 2}, {"seconde", 2},   {"troisieme", 3}, {"primera", 1},  {"primer", 1},
    {"segunda", 2},  {"segundo", 2},   {"tercera", 3},   {"primeira", 1}, {"primeiro", 1},
    {"prior", 1},    {"posterior", 2},
}};

constexpr std::size_t kLongestPhrase = 4;           // words
constexpr std::size_t kLongestCoupletBracket = 60;  // bytes; that may name a couplet

class Phrases {
 public:
  Phrases() {
    for (auto const& [sense, phrases] : kVocabulary) {
      for (auto rest = phrases; !rest.empty();) {
        auto const bar = rest.find('|');
        senses_.emplace(std::string{rest.substr(0, bar)}, sense);
        rest = bar == std::string_view::npos ? std::string_view{} : rest.substr(bar + 1);
      }
    }
  }
  [[nodiscard]] std::optional<Sense> find(std::string const& phrase) const {
    auto const found = senses_.find(phrase);
    return found == senses_.end() ? std::nullopt : std::optional{found->second};
  }

 private:
  std::unordered_map<std::string, Sense> senses_;
};

Phrases const& phrases() {
  static Phrases const table;
  return table;
}

// The mark that closes a quotation opened by `open`; 0 for none.  „…“, “…”, ‘…’, ‚…‘, «…», »…«.
bool closes_quotation(char32_t open, char32_t c) {
  switch (open) {
    case '"':
      return c == '"';
    case '\'':
      return c == '\'';
    case 0x201C:
      return c == 0x201D || c == 0x201C;
    case 0x201D:
      return c == 0x201D;
    case 0x201E:
      return c == 0x201C || c == 0x201D;
    case 0x2018:
      return c == 0x2019;
    case 0x2019:
      return c == 0x2019;
    case 0x201A:
      return c == 0x2018 || c == 0x2019;
    case 0xAB:
      return c == 0xBB;
    case 0xBB:
      return c == 0xAB;
    case 0x2039:
      return c == 0x203A;
    default:
      return false;
  }
}

class WordReader {
 public:
  explicit WordReader(std::string_view text) : text_{text} {}

  std::vector<Token> read() && {
    while (at_ < text_.size()) take();
    take_lea_for_verb();
    take_following_for_after();
    return std::move(tokens_);
  }

 private:
  void take() {
    auto const c = code_point_at(text_, at_);
    if (is_blank(c.value) || is_invisible(c.value)) {
      at_ += c.length;
    } else if (take_quote(c) || take_bracket(c) || take_label(c) || take_word(c)) {
      return;
    } else {
      auto const sense = c.value == ':'                                       ? Sense::colon
                         : c.value == '.' || c.value == ';'                   ? Sense::stop
                         : c.value == ',' || c.value == '&' || c.value == '/' ? Sense::joins
                         : is_dash(c.value) && after_label()                  ? Sense::through
                                                                              : Sense::other;
      push(sense, at_, at_ + c.length);
      at_ += c.length;
    }
  }

  // "Lea en 3: …" asks to read; elsewhere Lea is an author.
  void take_lea_for_verb() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      bool const first = i == 0 || tokens_[i - 1].sense == Sense::colon;
      if (!first || tokens_[i].sense != Sense::other) continue;
      auto const word = plain_words(tokens_[i].text);
      if (word == "lea" || word == "lean") tokens_[i].sense = Sense::read;
    }
  }

  // "Following couplet 6, add: …" adds after it; "the following couplets" are those below.
  void take_following_for_after() {
    for (std::size_t i = 0; i + 2 < tokens_.size(); ++i) {
      bool const article = i > 0 && plain_words(tokens_[i - 1].text) == "the";
      bool const numbered =
          tokens_[i + 1].sense == Sense::couplet && tokens_[i + 2].sense == Sense::label;
      if (article || !numbered || tokens_[i].sense != Sense::other) continue;
      if (plain_words(tokens_[i].text) == "following") tokens_[i].sense = Sense::after;
    }
  }

  [[nodiscard]] bool after_label() const {
    return !tokens_.empty() && tokens_.back().sense == Sense::label;
  }

  void push(Sense sense, std::size_t begin, std::size_t end) {
    tokens_.push_back({sense, text_.substr(begin, end - begin), begin, end, 0});
  }

  // A straight quotation mark may be a prime or an apostrophe: it opens after a blank only, and
  // closes before anything but a letter or a digit.
  bool take_quote(CodePoint const& c) {
    auto const before = code_point_before(text_, at_).value;
    bool const opens = at_ == 0 || is_blank(before) || before == '(' || before == '[' ||
                       is_dash(before) || before == ':' || before == '/';
    if (!opens || !closes_somewhere(c.value)) return false;
    for (auto end = at_ + c.length; end < text_.size();) {
      auto const now = code_point_at(text_, end);
      auto const next = code_point_at(text_, end + now.length).value;
      if (closes_quotation(c.value, now.value) && !is_letter(next) && !is_digit(next) &&
          end > at_ + c.length) {
        auto const inside = trim(text_.substr(at_ + c.length, end - at_ - c.length));
        tokens_.push_back({Sense::quote, inside, at_, end + now.length, 0});
        at_ = end + now.length;
        return true;
      }
      end += now.length;
    }
    return false;
  }
  [[nodiscard]] static bool closes_somewhere(char32_t open) {
    return open == '"' || open == '\'' || open == 0xAB || open == 0xBB || open == 0x2039 ||
           (open >= 0x2018 && open <= 0x201E);
  }

  bool take_bracket(CodePoint const& c) {
    if (c.value != '(' && c.value != '[') return false;
    auto const close = text_.find(c.value == '(' ? ')' : ']', at_);
    if (close == std::string_view::npos) return false;
    // "(paso 8b)" is part of the sentence; "(Smith 1998: 44)" is not.
    auto const inside = text_.substr(at_ + 1, close - at_ - 1);
    if (inside.size() < kLongestCoupletBracket && names_couplet(inside)) return false;
    push(Sense::bracket, at_, close + 1);
    at_ = close + 1;
    return true;
  }

  [[nodiscard]] static bool names_couplet(std::string_view inside) {
    if (inside.find_first_of("([") != std::string_view::npos) return false;
    auto const tokens = WordReader{inside}.read();
    for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
      if (tokens[i].sense == Sense::couplet && tokens[i + 1].sense == Sense::label) return true;
    }
    return false;
  }

  // "7", "7a", "7a'", "1st"; and capitals where a couplet's number is due: "couplet AA".
  bool take_label(CodePoint const& c) {
    bool const due = !tokens_.empty() && tokens_.back().sense == Sense::couplet;
    if (!is_digit(c.value) && !(due && is_upper(c.value))) return false;
    std::size_t end = at_;
    while (end < text_.size()) {
      auto const now = code_point_at(text_, end);
      if (!is_digit(now.value) && !is_letter(now.value) && !(end > at_ && is_mark(now.value)))
        break;
      end += now.length;
    }
    auto const word = text_.substr(at_, end - at_);
    if (take_ordinal(word)) return true;
    if (read_reference(word)) {
      push(Sense::label, at_, end);
    } else if (is_digit(c.value)) {
      push(Sense::other, at_, end);
    } else {
      return false;
    }
    at_ = end;
    return true;
  }

  bool take_ordinal(std::string_view word) {
    auto const plain = plain_words(word);
    auto const found = std::find_if(kOrdinals.begin(), kOrdinals.end(),
                                    [&](auto const& one) { return one.first == plain; });
    if (found == kOrdinals.end()) return false;
    push(Sense::ordinal, at_, at_ + word.size());
    tokens_.back().number = found->second;
    at_ += word.size();
    return true;
  }

  // End of the word at `from`: letters, with the sign of "n°" and "nº".
  [[nodiscard]] std::size_t word_end(std::size_t from) const {
    auto end = from;
    while (end < text_.size()) {
      auto const now = code_point_at(text_, end);
      auto const c = now.value;
      // Letters, accents that stand apart, and the signs of "n°" and "nº".
      bool const mark = c >= 0x300 && c <= 0x36F;
      if (!is_letter(c) && !mark && c != 0xBA && c != 0xB0) break;
      end += now.length;
    }
    return end;
  }

  bool take_word(CodePoint const& c) {
    if (!is_letter(c.value)) return false;
    auto const first_end = word_end(at_);
    if (take_ordinal(text_.substr(at_, first_end - at_))) return true;
    // The longest phrase that begins here.
    std::string phrase;
    Sense best = Sense::other;
    auto best_end = first_end;
    auto from = at_;
    for (std::size_t words = 0; words < kLongestPhrase; ++words) {
      auto const end = word_end(from);
      if (end == from) break;
      phrase += (phrase.empty() ? "" : " ") + plain_words(text_.substr(from, end - from));
      if (auto const sense = phrases().find(phrase)) {
        best = *sense;
        best_end = end;
      }
      from = end;
      auto const joint = code_point_at(text_, from);
      bool const hyphen = joint.value == '-' && is_letter(code_point_at(text_, from + 1).value);
      bool const dotted = joint.value == '.' && words == 0 && phrase == "et";
      from = hyphen || dotted ? from + 1 : from;
      from = skip_blanks(text_, from);
    }
    push(best, at_, best_end);
    at_ = best_end;
    // "no.", "pp.", "ff.": the full stop belongs to the word.
    bool const abbreviates = best == Sense::couplet || best == Sense::page || best == Sense::line ||
                             best == Sense::onwards;
    if (abbreviates && at_ < text_.size() && text_[at_] == '.') ++at_;
    return true;
  }

  std::string_view text_;
  std::size_t at_{};
  std::vector<Token> tokens_;
};

}  // namespace

std::string plain_words(std::string_view text) {
  utf8proc_uint8_t* out = nullptr;
  auto const options = static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT |
                                                      UTF8PROC_STRIPMARK | UTF8PROC_CASEFOLD);
  auto const length = utf8proc_map(reinterpret_cast<utf8proc_uint8_t const*>(text.data()),
                                   static_cast<utf8proc_ssize_t>(text.size()), &out, options);
  std::unique_ptr<utf8proc_uint8_t, void (*)(void*)> const owner{out, std::free};
  if (length < 0) return std::string{text};
  return {reinterpret_cast<char const*>(out), static_cast<std::size_t>(length)};
}

std::vector<Token> read_words(std::string_view text) { return WordReader{text}.read(); }

}  // namespace keydrift::printed
