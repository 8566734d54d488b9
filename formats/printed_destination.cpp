#include "keydrift/formats/printed_destination.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestKeyWord = 12;  // bytes
constexpr std::size_t kGapBlanks = 3;        // two blanks end many a sentence
constexpr std::size_t kLongestDestinationWords = 40;
constexpr std::size_t kWordsOfEpithet = 6;         // of a numbered epithet with its author
constexpr std::size_t kLongestDestination = 2000;  // bytes; bounds the work on lines of dots

bool is_leader_dot(char32_t c) {
  switch (c) {
    case '.':
    case '_':
    case 0xB7:    // middle dot
    case 0x2022:  // bullet
    case 0x2024:  // one dot leader
    case 0x2025:  // two dot leader
    case 0x2026:  // ellipsis
    case 0x2027:  // hyphenation point
    case 0x2219:  // bullet operator
    case 0x22C5:  // dot operator
    case 0x22EF:  // midline ellipsis
      return true;
    default:
      return false;
  }
}

bool is_arrow(char32_t c) {
  return c == 0x2192 || c == 0x21D2 || c == 0x27F6 || c == 0x2794 || c == 0x279C || c == 0x27A1 ||
         c == 0x25BA || c == 0x25B6 || c == 0x21E8;
}

struct Run {
  std::size_t begin{};
  std::size_t end{};
  bool leader{false};
};

// The run of leader characters and blanks between them that starts at `at`.
Run dot_run(std::string_view text, std::size_t at) {
  Run run{at, at, false};
  std::size_t dots = 0;  // dots in a row
  std::size_t longest = 0;
  std::size_t groups = 0;  // rows of dots separated by blanks
  std::size_t first_group = 0;
  std::size_t second_begin = 0;
  bool ellipsis = false;
  bool low_lines_only = true;
  std::size_t i = at;
  while (i < text.size()) {
    auto const c = code_point_at(text, i);
    if (is_leader_dot(c.value)) {
      ellipsis = ellipsis || c.value == 0x2026 || c.value == 0x22EF;
      low_lines_only = low_lines_only && c.value == '_';
      if (dots == 0) {
        ++groups;
        if (groups == 2) second_begin = i;
      }
      dots += c.value == 0x2026 || c.value == 0x22EF ? 3 : c.value == 0x2025 ? 2 : 1;
      longest = std::max(longest, dots);
      if (groups == 1) first_group = dots;
      i += c.length;
      run.end = i;
    } else if (is_blank(c.value) && c.value != '\n') {
      dots = 0;
      i += c.length;
    } else {
      break;
    }
  }
  bool const after_blank = at == 0 || is_blank(code_point_before(text, at).value);
  bool const spaced = groups >= 3;
  // Dots that stand alone between blanks are what is left of leaders on a full line.
  auto const behind = code_point_at(text, run.end);
  bool const alone = after_blank && at > 0 && longest == 1 && text[at] == '.' &&
                     (behind.length == 0 || is_blank(behind.value));
  run.leader = ellipsis || spaced || alone || longest >= 3 ||
               (longest == 2 && !low_lines_only && (after_blank || groups > 1));
  if (low_lines_only && longest < 3) run.leader = false;
  // "clear. ....... 5": the first dot ends the sentence.
  if (run.leader && first_group == 1 && !after_blank && !spaced && second_begin > 0) {
    run.begin = second_begin;
  }
  if (run.leader && first_group == 1 && !after_blank && spaced && longest >= 3) {
    run.begin = second_begin;
  }
  return run;
}

std::size_t arrow_length(std::string_view text, std::size_t at) {
  auto const c = code_point_at(text, at);
  if (is_arrow(c.value)) return c.length;
  if (is_dash(c.value) || c.value == '=') {
    std::size_t end = at + c.length;
    while (is_dash(code_point_at(text, end).value)) end += code_point_at(text, end).length;
    if (code_point_at(text, end).value == '>') return end + 1 - at;
  }
  return 0;
}

std::string_view strip_word_marks(std::string_view word) {
  while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
  while (!word.empty() && (word.back() == '.' || word.back() == ',' || word.back() == ':' ||
                           word.back() == ';' || word.back() == ')' || word.back() == ']')) {
    word.remove_suffix(1);
  }
  return word;
}

// Words that announce a couplet's number (English, German, French, Spanish, Portuguese, Latin).
constexpr std::array kPointerWords{
    "to"sv,      "goto"sv,      "go"sv,     "see"sv,       "couplet"sv, "couplets"sv, "turn"sv,
    "proceed"sv, "continue"sv,  "with"sv,   "at"sv,        "now"sv,     "siehe"sv,    "s"sv,
    "weiter"sv,  "bei"sv,       "mit"sv,    "zu"sv,        "nr"sv,      "no"sv,       "voir"sv,
    "aller"sv,   "à"sv,         "au"sv,     "véase"sv,     "vease"sv,   "ver"sv,      "ir"sv,
    "a"sv,       "al"sv,        "vide"sv,   "vid"sv,       "para"sv,    "passe"sv,    "vá"sv,
    "pase"sv,    "continuer"sv, "dilema"sv, "dichotomie"sv};
// Of these, the ones that announce a number; the others only go along with them.
constexpr std::array kStrongPointers{
    "goto"sv, "go"sv,    "see"sv,   "couplet"sv,    "couplets"sv, "turn"sv, "proceed"sv, "siehe"sv,
    "voir"sv, "véase"sv, "vease"sv, "ver"sv,        "vide"sv,     "vid"sv,  "weiter"sv,  "aller"sv,
    "ir"sv,   "passe"sv, "pase"sv,  "dichotomie"sv, "dilema"sv,   "vá"sv};
// Words whose number is no couplet's.
constexpr std::array kNumberedThings{
    "fig"sv,     "figs"sv,  "figure"sv,   "figures"sv,   "p"sv,       "pp"sv,      "page"sv,
    "pages"sv,   "pl"sv,    "pls"sv,      "plate"sv,     "plates"sv,  "abb"sv,     "taf"sv,
    "tafel"sv,   "tab"sv,   "table"sv,    "map"sv,       "maps"sv,    "seite"sv,   "lám"sv,
    "lam"sv,     "est"sv,   "chapter"sv,  "chap"sv,      "kapitel"sv, "species"sv, "sp"sv,
    "article"sv, "no"sv,    "nr"sv,       "vol"sv,       "ca"sv,      "c"sv,       "about"sv,
    "than"sv,    "least"sv, "most"sv,     "until"sv,     "since"sv,   "karte"sv,   "carte"sv,
    "página"sv,  "pag"sv,   "text-fig"sv, "text-figs"sv, "x"sv,       "×"sv};

template <std::size_t N>
bool is_one_of(std::array<std::string_view, N> const& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Begin of the last word of text[0, end); end when there is none.
std::size_t last_word_begin(std::string_view text, std::size_t end) {
  std::size_t begin = end;
  while (begin > 0) {
    auto const c = code_point_before(text, begin);
    if (is_blank(c.value)) break;
    begin -= c.length;
  }
  return begin;
}

std::size_t end_before_blanks(std::string_view text, std::size_t end) {
  return trim_right(text.substr(0, end)).size();
}

}  // namespace

bool names_a_key(std::string_view text) {
  static constexpr std::array kKeyWords{
      "key"sv,    "keys"sv,  "group"sv,   "section"sv, "part"sv,  "table"sv,  "schlüssel"sv,
      "gruppe"sv, "teil"sv,  "tabelle"sv, "clé"sv,     "cle"sv,   "clef"sv,   "groupe"sv,
      "clave"sv,  "grupo"sv, "chave"sv,   "clavis"sv,  "parte"sv, "subkey"sv, "sub-key"sv};
  if (!explicit_key_title(text).empty()) return true;
  auto const first_end = text.find(' ');
  if (first_end == std::string_view::npos || first_end > kLongestKeyWord) return false;
  auto const first = fold(strip_word_marks(text.substr(0, first_end)));
  if (!is_one_of(kKeyWords, first)) return false;
  auto const words = words_of(start_of(text, 400));
  if (words.size() < 2 || words.size() > 20) return false;
  auto const second = strip_word_marks(words[1]);
  bool const numbered = read_reference(second).has_value() ||
                        std::all_of(second.begin(), second.end(),
                                    [](char c) { return c == 'I' || c == 'V' || c == 'X'; });
  static constexpr std::array kLinks{"to"sv, "of"sv,   "for"sv,  "zu"sv,  "der"sv, "des"sv, "für"sv,
                                     "de"sv, "para"sv, "pour"sv, "aux"sv, "das"sv, "dos"sv};
  bool const linked = is_one_of(kLinks, fold(second));
  return numbered || (linked && (first == "key" || first.substr(0, 3) == "sch" ||
                                 first.substr(0, 2) == "cl" || first == "chave"));
}

std::string_view explicit_key_title(std::string_view text) {
  static constexpr auto kStart = "key:"sv;
  if (text.size() <= kStart.size() || text[kStart.size() - 1] != ':') return {};
  if (fold(start_of(text, kStart.size())) != kStart) return {};
  return trim(text.substr(kStart.size()));
}

bool points_into_other_work(std::string_view text) {
  auto const comma = text.find(", in "sv);
  return comma != std::string_view::npos && read_reference(text.substr(0, comma)) &&
         starts_with_upper(text.substr(comma + 5));
}

std::string_view strip_pointer(std::string_view text) {
  text = trim(text);
  bool const number_first = !text.empty() && is_digit(code_point_at(text, 0).value);
  for (bool again = !number_first; again;) {
    again = false;
    if (auto const arrow = arrow_length(text, 0); arrow > 0) {
      text = trim_left(text.substr(arrow));
      again = true;
    }
    std::size_t end = 0;
    while (end < text.size() && !is_blank(code_point_at(text, end).value)) {
      end += code_point_at(text, end).length;
    }
    auto const word = text.substr(0, end);
    if (end < text.size() && is_one_of(kPointerWords, fold(strip_word_marks(word))) &&
        (word.size() > 1 || word == "a") && word != "S.") {
      text = trim_left(text.substr(end));
      again = true;
    }
  }
  // "(2)." as a sentence's end.
  if (text.size() > 3 && text.back() == '.' && (text.front() == '(' || text.front() == '[') &&
      (text[text.size() - 2] == ')' || text[text.size() - 2] == ']')) {
    text.remove_suffix(1);
  }
  if (text.size() > 2 && (text.front() == '(' || text.front() == '[') &&
      (text.back() == ')' || text.back() == ']') &&
      read_reference(text.substr(1, text.size() - 2))) {
    text = trim(text.substr(1, text.size() - 2));
  }
  while (text.size() > 1 && text.back() == '.' && read_reference(text.substr(0, text.size() - 1))) {
    text.remove_suffix(1);
  }
  return text;
}

void take_brackets(std::string_view& rest, std::string& remark, std::vector<std::string>& figures) {
  for (;;) {
    if (rest.size() < 4) return;
    bool const square = rest.back() == ']';
    if (!square && rest.back() != ')') return;
    auto const open = rest.rfind(square ? " [" : " (");
    if (open == std::string_view::npos || open == 0) return;
    auto const inside = rest.substr(open + 2, rest.size() - open - 3);
    if (square) {
      if (!remark.empty()) return;
      remark = squeeze(inside);
    } else {
      auto const found = figures_in(inside);
      if (found.size() != 1 || found.front() != inside) return;
      figures.insert(figures.begin(), found.front());
    }
    rest = trim_right(rest.substr(0, open));
  }
}

bool plausible_destination(std::string_view text, Numbering const& numbering) {
  text = trim(text);
  if (text.empty() || text.size() > kLongestDestination) return false;
  std::string remark;
  std::vector<std::string> figures;
  take_brackets(text, remark, figures);
  auto const stripped = strip_pointer(text);
  if (auto const reference = read_reference(stripped)) {
    return reference->family == LabelFamily::digits || reference->family == numbering.family;
  }
  if (names_a_key(stripped) || points_into_other_work(stripped)) return true;
  auto const words = words_of(text);
  if (words.size() > kLongestDestinationWords) return false;
  auto const first = code_point_at(text, 0);
  if (is_upper(first.value) || first.value == 0xD7 || first.value == 0x2020) return true;
  if (is_digit(first.value)) {  // "3. Aus bus", "12 Aus bus", "4. bus, Roe"
    if (words.size() < 2) return false;
    bool const numbered = words[0].back() == '.' && words.size() <= kWordsOfEpithet &&
                          is_letter(code_point_at(words[1], 0).value);
    return starts_with_upper(words[1]) || numbered;
  }
  if (is_lower(first.value)) {
    // A name without its genus, or a vernacular one.
    return words.size() == 1 || (words.size() <= 8 && starts_with_upper(words[1])) ||
           (words.size() <= 4 && text.find_first_of(";:") == std::string_view::npos);
  }
  return is_letter(first.value) || first.value == '"' || first.value == '(' || first.value == '[' ||
         first.value == '?' || first.value == 0x201C;
}

TailSplit split_at_leader(std::string_view text, Numbering const& numbering) {
  TailSplit best;
  best.words_end = best.destination_begin = text.size();
  TailSplit gap = best;
  std::size_t at = 0;
  while (at < text.size()) {
    auto const c = code_point_at(text, at);
    if (is_leader_dot(c.value)) {
      auto const run = dot_run(text, at);
      if (run.leader) {
        auto const after = skip_blanks(text, run.end);
        auto const tail = text.substr(after);
        if (tail.empty() || plausible_destination(tail, numbering) ||
            best.kind == LeaderKind::none) {
          best = {LeaderKind::dots, end_before_blanks(text, run.begin), after};
        }
      }
      at = std::max(run.end, at + c.length);
      continue;
    }
    if (auto const arrow = arrow_length(text, at); arrow > 0) {
      // An arrow at the end of dots: the dots are leaders too.
      bool const after_dots = best.kind != LeaderKind::none && best.destination_begin == at;
      auto const words_end = after_dots ? best.words_end : end_before_blanks(text, at);
      best = {LeaderKind::arrow, words_end, skip_blanks(text, at + arrow)};
      at += arrow;
      continue;
    }
    if (is_blank(c.value)) {
      std::size_t end = at;
      std::size_t blanks = 0;
      bool tab = false;
      for (auto b = c; b.length > 0 && is_blank(b.value); b = code_point_at(text, end)) {
        tab = tab || b.value == '\t';
        ++blanks;
        end += b.length;
      }
      if ((tab || blanks >= kGapBlanks) && at > 0 && end < text.size()) {
        gap = {LeaderKind::gap, at, end};
      }
      at = end;
      continue;
    }
    at += c.length;
  }
  if (best.kind != LeaderKind::none) {
    auto const tail = text.substr(best.destination_begin);
    if (tail.empty() || plausible_destination(tail, numbering)) return best;
  }
  if (gap.kind == LeaderKind::gap) {
    auto const tail = text.substr(gap.destination_begin);
    // Words are set apart by accident more often than a name begins with a small letter.
    bool const words = tail.find(';') != std::string_view::npos ||
                       (is_lower(code_point_at(tail, 0).value) && !read_reference(tail) &&
                        !trailing_reference(tail));
    if (!words && plausible_destination(tail, numbering)) return gap;
  }
  TailSplit none;
  none.words_end = none.destination_begin = text.size();
  return none;
}

std::optional<TrailingReference> trailing_reference(std::string_view text) {
  text = trim_right(text);
  auto const begin = last_word_begin(text, text.size());
  auto word = text.substr(begin);
  if (begin == 0 || word.empty()) return std::nullopt;
  if (word.size() > 1 && word.back() == '.') word.remove_suffix(1);
  if (word.size() > 2 && word.front() == '(' && word.back() == ')') {
    word = word.substr(1, word.size() - 2);
  }
  auto const reference = read_reference(word);
  if (!reference || reference->family != LabelFamily::digits) return std::nullopt;
  TrailingReference found;
  found.reference = *reference;
  found.destination_begin = begin;
  found.words_end = end_before_blanks(text, begin);
  // Take in all of "go to couplet".
  std::size_t end = found.words_end;
  std::size_t phrase_begin = found.destination_begin;
  while (end > 0) {
    auto const word_begin = last_word_begin(text, end);
    auto const printed = text.substr(word_begin, end - word_begin);
    auto const before = fold(strip_word_marks(printed));
    if (printed == "S." || !is_one_of(kPointerWords, before)) break;
    found.pointed = found.pointed || is_one_of(kStrongPointers, before);
    phrase_begin = word_begin;
    end = end_before_blanks(text, word_begin);
  }
  if (found.pointed) {
    found.destination_begin = phrase_begin;
    found.words_end = end;
    return found;
  }
  auto const before_begin = last_word_begin(text, found.words_end);
  auto const before = text.substr(before_begin, found.words_end - before_begin);
  bool const closed = before.back() == ')' || before.back() == ']';  // "(3 species) 6"
  if (before == "S." || (!closed && is_one_of(kNumberedThings, fold(strip_word_marks(before))))) {
    return std::nullopt;
  }
  return found;
}

}  // namespace keydrift::printed
