#include "keydrift/formats/printed_leaders.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_end_habits.hpp"
#include "keydrift/formats/printed_leader_runs.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_stray_signs.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewestGapBlanks = 3;  // two blanks end many a sentence
constexpr std::size_t kWideGapBlanks = 6;

// ASCII characters that no leader, gap or border is made of, by value.
constexpr auto kPlainCharacters = [] {
  std::array<bool, 256> plain{};
  for (std::size_t c = 'a'; c <= 'z'; ++c) plain[c] = plain[c - 'a' + 'A'] = true;
  for (std::size_t c = '0'; c <= '9'; ++c) plain[c] = true;
  for (char const c : {',', ';', '(', ')', '[', ']', '/', '%', '&', '"'}) {
    plain[static_cast<unsigned char>(c)] = true;
  }
  return plain;
}();
bool is_plain_character(char c) { return kPlainCharacters[static_cast<unsigned char>(c)]; }

bool is_arrow(char32_t c) {
  return c == 0x2192 || c == 0x21D2 || c == 0x27F6 || c == 0x2794 || c == 0x279C || c == 0x27A1 ||
         c == 0x25BA || c == 0x25B6 || c == 0x21E8;
}

// Behind leaders: ": Aus bus", "= Aus bus".
std::size_t skip_leader_signs(std::string_view text, std::size_t at) {
  at = skip_blanks(text, at);
  while (at < text.size() && (text[at] == ':' || text[at] == '=') && arrow_length(text, at) == 0) {
    at = skip_blanks(text, at + 1);
  }
  return at;
}

class Splitter {
 public:
  Splitter(std::string_view text, Numbering const& numbering) : text_{text}, numbering_{numbering} {
    best_.words_end = best_.destination_begin = text.size();
    gap_ = narrow_ = dash_ = best_;
  }

  TailSplit split() && {
    for (std::size_t at = 0; at < text_.size();) {
      // Most of a line is words and single blanks, of which nothing is to be said.
      auto const* const word_end =
          std::find_if_not(text_.data() + at, text_.data() + text_.size(), is_plain_character);
      at = static_cast<std::size_t>(word_end - text_.data());
      if (at == text_.size()) break;
      at = is_between_words(at) ? at + 1 : look_at(at);
    }
    if (best_.kind != LeaderKind::none) {
      auto const tail = text_.substr(best_.destination_begin);
      if (tail.empty() || numbering_.exact || plausible_destination(tail, numbering_)) return best_;
      // "..... 2•", "..... s"
      auto const specked =
          numbering_.family == LabelFamily::digits && best_.kind == LeaderKind::dots
              ? number_beside_specks(tail)
              : std::nullopt;
      if (specked && numbering_.has_number(*specked)) return best_;
    }
    if (gap_.kind == LeaderKind::gap && gap_leads_somewhere()) return gap_;
    if (dash_.kind == LeaderKind::dash && !text_.ends_with(',') &&
        !has_numbered_name_within(text_.substr(dash_.destination_begin)) &&
        certain_destination(text_.substr(dash_.destination_begin), numbering_) &&
        !explains_name()) {
      return with_number_before(dash_);
    }
    if (auto const end = by_habit()) return *end;
    // Two blanks end many a sentence: what stands behind them has to be beyond doubt.
    if (narrow_.kind == LeaderKind::gap) {
      auto const tail = text_.substr(narrow_.destination_begin);
      if (begins_sentence(tail)) return no_end();
      if (certain_destination(tail, numbering_) || is_genusless_name(tail)) return narrow_;
    }
    return no_end();
  }

 private:
  [[nodiscard]] TailSplit no_end() const {
    TailSplit none;
    none.words_end = none.destination_begin = text_.size();
    return none;
  }

  // "… glaucous. 2017. — A. busa Roe": the number of the species stands before the dash.
  [[nodiscard]] TailSplit with_number_before(TailSplit split) const {
    auto const before = text_.substr(0, split.words_end);
    auto const at = last_word_begin(before);
    auto const words = trim_right(before.substr(0, at));
    bool const counted = at > 0 && is_species_number(before.substr(at)) && !words.empty() &&
                         is_numbered_name(text_.substr(at));
    if (!counted) return split;
    return {split.kind, words.size(), at};
  }

  // "Sect. 1. Eudrusa.", before the dash and the characters of the section.
  [[nodiscard]] static bool titles_section(std::string_view text) {
    static constexpr std::array kGroups{"sect."sv,    "sectio"sv,     "section"sv,   "subsect."sv,
                                        "subg."sv,    "subgen."sv,    "ser."sv,      "series"sv,
                                        "subgenus"sv, "sous-genre"sv, "untergatt."sv};
    constexpr std::size_t kMostWords = 4;
    auto const words = words_of(text, kMostWords + 1);
    if (words.size() < 2 || words.size() > kMostWords || !text.ends_with('.')) return false;
    return std::find(kGroups.begin(), kGroups.end(), fold(words.front())) != kGroups.end();
  }

  // "… A. bus Roe – Ausella azzurra": behind the dash stands a common name.
  [[nodiscard]] bool explains_name() const {
    auto const tail = text_.substr(dash_.destination_begin);
    auto const first = code_point_at(tail, 0).value;
    if (!is_letter(first) || is_abbreviated(words_of(tail, 1).front())) return false;
    if (strip_pointer(tail).size() < tail.size() || names_a_key(tail)) return false;
    if (!read_taxa(tail).taxa.front().authorship.empty() && is_latin_name(tail)) return false;
    return authored_name_at_end(text_.substr(0, dash_.words_end)).has_value();
  }

  // "… from above.  Eyes retractile": of the form of a name, but behind a full stop, and two words
  // without an author.
  [[nodiscard]] bool begins_sentence(std::string_view tail) const {
    auto const words = words_of(tail);
    return narrow_.words_end > 0 && text_[narrow_.words_end - 1] == '.' && words.size() == 2 &&
           is_capitalised(words[0]) && !has_strict_latin_ending(words[0]);
  }

  // What the rest of the file sets destinations apart by.
  [[nodiscard]] std::optional<TailSplit> by_habit() const {
    auto const& habits = numbering_.ends;
    if (auto const bracket = habits.brackets ? bracketed_end(text_) : std::nullopt) {
      // "Aus bus (Roe)": no author alone is an end; "A. bus Roe (A. cus Dorn)": a synonym.
      if (authored_name_at_end(text_.substr(0, bracket->open))) return std::nullopt;
      if (certain_destination(bracket->inside, numbering_) || leads_by_name(bracket->inside)) {
        return TailSplit{LeaderKind::gap, end_before_blanks(text_, bracket->open), bracket->open};
      }
    }
    if (habits.colon && colon_ > 0) {
      auto const tail = text_.substr(skip_blanks(text_, colon_ + 1));
      if (certain_destination(tail, numbering_) || leads_by_name(tail)) {
        return TailSplit{LeaderKind::dash, colon_, skip_blanks(text_, colon_ + 1)};
      }
    }
    if (habits.dash && dash_.kind == LeaderKind::dash) {
      auto const tail = text_.substr(dash_.destination_begin);
      if (leads_by_name(tail) && !has_numbered_name_within(tail) && !explains_name()) {
        return with_number_before(dash_);
      }
    }
    return std::nullopt;
  }

  // "bus or cus" may be ends, "olive or bleached" and "red, purple or black" are words.
  [[nodiscard]] static bool may_list_taxa(TaxaReading const& reading) {
    return std::all_of(reading.taxa.begin(), reading.taxa.end(), [](TaxonReading const& taxon) {
      return is_upper(code_point_at(taxon.name, 0).value) || has_epithet_ending(taxon.name);
    });
  }

  // An epithet or a name that its form alone would not tell from words.
  [[nodiscard]] static bool leads_by_name(std::string_view tail) {
    constexpr std::size_t kWords = 8;
    constexpr std::size_t kEpithets = 3;
    auto const words = words_of(tail);
    if (words.empty() || words.size() > kWords || tail.find(';') != std::string_view::npos) {
      return false;
    }
    if (is_bare_epithet(tail) || is_genusless_name(tail)) return true;
    auto const taxa = read_taxa(tail);
    if (is_latin_name(tail) || (taxa.taxa.size() > 1 && may_list_taxa(taxa))) return true;
    if (!taxa.before.empty() && words_of(taxa.taxa.front().name).size() >= 2) return true;
    return words.size() <= kEpithets && is_latin_genus(words.front());
  }

  [[nodiscard]] bool is_between_words(std::size_t at) const {
    return text_[at] == ' ' && at + 1 < text_.size() && is_plain_character(text_[at + 1]);
  }

  // Looks at the character at `at`; returns where to look next.
  std::size_t look_at(std::size_t at) {
    auto const c = code_point_at(text_, at);
    if (is_leader_dot(c.value)) {
      auto const run = dot_run(text_, at);
      if (run.leader) take_row(run);
      return std::max(run.end, at + c.length);
    }
    if (auto const arrow = arrow_length(text_, at); arrow > 0) {
      if (changes_colour(skip_blanks(text_, at + arrow))) return at + arrow;
      // An arrow at the end of dots: the dots are leaders too.
      bool const after_dots = best_.kind != LeaderKind::none && best_.destination_begin == at;
      auto const words_end = after_dots ? best_.words_end : end_before_blanks(text_, at);
      best_ = {LeaderKind::arrow, words_end, skip_blanks(text_, at + arrow)};
      return at + arrow;
    }
    if (is_dash(c.value) && at > 0) return look_at_dash(at);
    if (is_blank(c.value)) return look_at_blanks(at);
    if (c.value == ':') colon_ = at;
    // "Wings clear | 2": the border of a cell.
    auto const behind = code_point_at(text_, at + 1);
    bool const border = c.value == '|' && at > 0 && is_blank(code_point_before(text_, at).value) &&
                        is_blank(behind.value);
    if (border) {
      gap_ = {LeaderKind::gap, end_before_blanks(text_, at), skip_blanks(text_, at + 1)};
      wide_ = true;
    }
    return at + c.length;
  }

  // "K+ yellow → red": an arrow between words.
  [[nodiscard]] bool changes_colour(std::size_t behind) const {
    static constexpr std::array kColours{
        "red"sv,      "yellow"sv,  "orange"sv,  "brown"sv,    "violet"sv,   "purple"sv,
        "blue"sv,     "green"sv,   "black"sv,   "pink"sv,     "rot"sv,      "gelb"sv,
        "braun"sv,    "violett"sv, "blau"sv,    "grün"sv,     "schwarz"sv,  "rouge"sv,
        "jaune"sv,    "brun"sv,    "bleu"sv,    "vert"sv,     "noir"sv,     "rojo"sv,
        "amarillo"sv, "naranja"sv, "pardo"sv,   "azul"sv,     "verde"sv,    "negro"sv,
        "vermelho"sv, "amarelo"sv, "laranja"sv, "rosso"sv,    "giallo"sv,   "colourless"sv,
        "pale"sv,     "dark"sv,    "reddish"sv, "brownish"sv, "yellowish"sv};
    // "→ green frog" is where a lead leads.
    auto const words = words_of(start_of(text_.substr(behind), 40), 2);
    if (words.empty()) return false;
    auto const after =
        text_.substr(static_cast<std::size_t>(words[0].data() - text_.data()) + words[0].size());
    bool const closed = words.size() == 1 || words[1].front() == '(' || ends_item(words[0]) ||
                        words[0].ends_with('.') || after.starts_with("  ") ||
                        after.starts_with('\t');
    return closed && is_one_of(kColours, without_closing_marks(words[0]));
  }

  void take_row(Run const& run) {
    auto const after = skip_leader_signs(text_, run.end);
    auto const tail = text_.substr(after);
    if (tail.empty() && closes_destination(run)) return;
    bool const only = tail.empty() || best_.kind == LeaderKind::none;
    if (only || numbering_.exact || plausible_destination(tail, numbering_)) {
      best_ = {LeaderKind::dots, end_before_blanks(text_, run.begin), after};
    }
  }

  // "...... 11. B. busa .": the stop of the lead, set off by a blank.
  [[nodiscard]] bool closes_destination(Run const& run) const {
    if (best_.kind != LeaderKind::dots || run.end - run.begin != 1) return false;
    if (best_.destination_begin >= run.begin) return false;
    auto const named = text_.substr(best_.destination_begin, run.begin - best_.destination_begin);
    return certain_destination(trim_right(named), numbering_) ||
           is_numbered_name(trim_right(named));
  }

  [[nodiscard]] bool is_row_of_hyphens(Run const& run) const {
    constexpr std::size_t kFewest = 4;
    return run.end - run.begin >= kFewest &&
           text_.substr(run.begin, run.end - run.begin).find_first_not_of('-') ==
               std::string_view::npos;
  }

  std::size_t look_at_dash(std::size_t at) {
    auto const run = dash_run(text_, at);
    auto const after = skip_blanks(text_, run.end);
    auto const tail = text_.substr(after);
    // "dark------" before a destination on the next line
    bool const row = run.leader && tail.empty() && is_row_of_hyphens(run);
    if (row || (run.leader && !tail.empty() && plausible_destination(tail, numbering_))) {
      best_ = {LeaderKind::dots, end_before_blanks(text_, at), after};
      return run.end;
    }
    // "thorax--bus Roe"
    if (text_.substr(at, run.end - at) == "--" && after == run.end &&
        is_letter(code_point_before(text_, at).value) && is_genusless_name(tail)) {
      best_ = {LeaderKind::dots, at, after};
      return run.end;
    }
    // "dark — Aus bus", "dark—5"; never between numbers, which it joins.
    auto const words_end = end_before_blanks(text_, at);
    auto const before = code_point_before(text_, words_end).value;
    bool const apart = words_end < at && after > run.end;
    bool const wide = code_point_at(text_, at).value >= 0x2014 || text_.substr(at, 2) == "--";
    bool const titled = !apart && titles_section(text_.substr(0, words_end));
    if (words_end > 0 && (apart || wide) && !is_digit(before) && !titled && !stands_in_remark(at)) {
      dash_ = {LeaderKind::dash, words_end, after};
    }
    return run.end;
  }

  // "— Ausidae (marsh ants – they bite)"
  [[nodiscard]] bool stands_in_remark(std::size_t at) const {
    constexpr std::size_t kLongest = 120;  // bytes
    if (dash_.kind != LeaderKind::dash || !text_.ends_with(')')) return false;
    auto const tail = text_.substr(dash_.destination_begin);
    return tail.size() <= kLongest && starts_with_upper(tail) &&
           leaves_bracket_open(tail.substr(0, at - dash_.destination_begin));
  }

  std::size_t look_at_blanks(std::size_t at) {
    std::size_t end = at;
    std::size_t blanks = 0;
    bool tab = false;
    for (auto b = code_point_at(text_, at); b.length > 0 && is_blank(b.value);
         b = code_point_at(text_, end)) {
      tab = tab || b.value == '\t';
      ++blanks;
      end += b.length;
    }
    if (at > 0 && end < text_.size()) {
      bool const wide = tab || blanks >= kFewestGapBlanks;
      auto const tail = text_.substr(end);
      bool const apart = is_page_only(tail) || is_figures_only(tail);
      if (wide && !apart) {
        gap_ = {LeaderKind::gap, at, end};
        wide_ = tab || blanks >= kWideGapBlanks;
      }
      if (blanks == 2) narrow_ = {LeaderKind::gap, at, end};
    }
    return end;
  }

  // "(page 34)" in a column behind the destination's.
  [[nodiscard]] static bool is_page_only(std::string_view tail) {
    constexpr std::size_t kLongest = 14;  // bytes
    if (tail.size() < 4 || tail.size() > kLongest) return false;
    if (is_open_page(tail)) return true;  // the rest of the line below
    if (tail.front() != '(' || tail.back() != ')') return false;
    auto const words = words_of(tail.substr(1, tail.size() - 2), 3);
    return words.size() == 2 && is_page(words[0], words[1]);
  }

  // "Figs 1, 2" in a column behind the destination's.
  [[nodiscard]] static bool is_figures_only(std::string_view tail) {
    constexpr std::size_t kLongest = 40;  // bytes
    if (tail.empty() || tail.size() > kLongest) return false;
    auto const figures = figures_in(tail);
    return figures.size() == 1 && figures.front().size() + 2 >= tail.size();
  }

  // "bus Roe or cus Dorn, n. sp.", "bus (Roe), cus (Roe)"
  [[nodiscard]] static bool is_list_of_epithets(std::string_view tail) {
    constexpr std::size_t kLongest = 100;  // bytes
    if (tail.size() > kLongest || tail.find(';') != std::string_view::npos) return false;
    auto const taxa = read_taxa(tail).taxa;
    return taxa.size() > 1 && std::all_of(taxa.begin(), taxa.end(), [](TaxonReading const& taxon) {
             return taxon.genusless && has_epithet_ending(taxon.name) && !taxon.authorship.empty();
           });
  }

  [[nodiscard]] bool gap_leads_somewhere() {
    auto const tail = text_.substr(gap_.destination_begin);
    // Words are set apart by accident more often than a name begins with a small letter.
    auto const semicolon = tail.find(';');
    // "A. sp. 2 (Cape Tarn; one juvenile)"
    auto const part = trim_right(tail.substr(0, std::min(semicolon, tail.find('('))));
    bool const words = (semicolon != std::string_view::npos && !is_unnamed_species(part) &&
                        !certain_destination(tail.substr(0, semicolon), numbering_)) ||
                       (is_lower(code_point_at(tail, 0).value) && !numbering_.read(tail) &&
                        !trailing_reference(tail) && !misread_number(tail) &&
                        !(wide_ && (is_list_of_epithets(tail) || is_bare_epithet(tail) ||
                                    is_lettered_rank(tail))));
    if (words || !plausible_destination(tail, numbering_)) return false;
    // "dark —    Aus bus": the dash goes with the gap.
    auto const dash = code_point_before(text_, gap_.words_end);
    auto const before = end_before_blanks(text_, gap_.words_end - dash.length);
    if (is_dash(dash.value) && before > 0 && before + dash.length < gap_.words_end) {
      gap_.words_end = before;
    }
    return true;
  }

  std::string_view text_;
  Numbering const& numbering_;
  TailSplit best_;
  TailSplit gap_;
  bool wide_{false};  // the gap is a tab, or wider than any within words
  TailSplit narrow_;  // two blanks
  TailSplit dash_;
  std::size_t colon_{};  // the last one
};

}  // namespace

std::size_t arrow_length(std::string_view text, std::size_t at) {
  auto const c = code_point_at(text, at);
  if (is_arrow(c.value)) return c.length;
  // "Wings clear >> 2"
  if (text.substr(at, 2) == ">>") {
    bool const apart = at == 0 || is_blank(code_point_before(text, at).value);
    return apart && is_blank(code_point_at(text, at + 2).value) ? 2 : 0;
  }
  if (is_dash(c.value) || c.value == '=') {
    std::size_t end = at + c.length;
    while (is_dash(code_point_at(text, end).value)) end += code_point_at(text, end).length;
    if (code_point_at(text, end).value == '>') return end + 1 - at;
  }
  return 0;
}

bool has_row_of_dots(std::string_view text) {
  return text.find("...") != std::string_view::npos ||
         text.find(". . .") != std::string_view::npos ||
         text.find("\u2026") != std::string_view::npos;
}

bool has_led_end(std::string_view text, Numbering const& numbering) {
  auto const split = split_at_leader(text, numbering);
  return split.kind == LeaderKind::dots && split.destination_begin < text.size();
}

TailSplit split_at_leader(std::string_view text, Numbering const& numbering) {
  auto const named = without_open_page(text);
  auto split = Splitter{named, numbering}.split();
  if (split.kind == LeaderKind::none) split.words_end = split.destination_begin = text.size();
  return split;
}

}  // namespace keydrift::printed
