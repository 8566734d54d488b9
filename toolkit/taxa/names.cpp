#include "keydrift/taxa/names.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <utility>

#include "keydrift/taxa/name_text.hpp"

namespace keydrift {
namespace {

constexpr std::string_view kTimes = "\xC3\x97";

template <std::size_t N>
bool one_of(std::string_view word, std::array<std::string_view, N> const& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string lowered(std::string_view text) {
  std::string result{text};
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

// A blank-separated word, a group in parentheses or brackets, a quoted epithet, or the sign ×.
struct Token {
  std::string text;
  bool comma{false};  // a comma, semicolon or colon followed it
  [[nodiscard]] bool group() const { return text.starts_with('(') || text.starts_with('['); }
  [[nodiscard]] std::string_view inside() const {
    std::string_view inner{text};
    inner.remove_prefix(1);
    if (inner.ends_with(')') || inner.ends_with(']')) inner.remove_suffix(1);
    return inner;
  }
};

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> tokens;
  std::string word;
  auto const flush = [&] {
    if (word.empty()) return;
    Token token{.text = std::move(word), .comma = false};
    while (!token.text.empty() &&
           (token.text.back() == ',' || token.text.back() == ';' || token.text.back() == ':')) {
      token.text.pop_back();
      token.comma = true;
    }
    if (!token.text.empty()) {
      tokens.push_back(std::move(token));
    } else if (!tokens.empty()) {
      tokens.back().comma = true;
    }
    word.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    char const c = text[i];
    if (c == ' ') {
      flush();
    } else if (c == '(' || c == '[') {
      flush();
      std::size_t depth = 0;
      for (; i < text.size(); ++i) {
        if (text[i] == '(' || text[i] == '[') ++depth;
        if (text[i] == ')' || text[i] == ']') --depth;
        word += text[i];
        if (depth == 0) break;
      }
      tokens.push_back({.text = std::move(word), .comma = false});
      word.clear();
    } else if (text.substr(i).starts_with(kTimes)) {
      flush();
      tokens.push_back({.text = std::string{kTimes}, .comma = false});
      i += kTimes.size() - 1;
    } else if ((c == '\'' || c == '"') && word.empty() && !tokens.empty()) {
      auto const close = text.find(c, i + 1);
      bool const quoted =
          close != std::string_view::npos && close > i + 1 &&
          (close + 1 == text.size() || text[close + 1] == ' ' || text[close + 1] == ',');
      if (quoted) {
        tokens.push_back(
            {.text = "'" + std::string{text.substr(i + 1, close - i - 1)} + "'", .comma = false});
        i = close;
      } else {
        word += c;
      }
    } else {
      word += c;
    }
  }
  flush();
  return tokens;
}

struct RankWord {
  std::string_view printed;
  std::string_view rank;
};
// Print forms, without a final stop (standards: ICN 24, 26; common practice for the short ones).
constexpr std::array kRankWords{
    RankWord{"subsp", "subspecies"},
    RankWord{"ssp", "subspecies"},
    RankWord{"subspecies", "subspecies"},
    RankWord{"nothosubsp", "subspecies"},
    RankWord{"nothossp", "subspecies"},
    RankWord{"nsubsp", "subspecies"},
    RankWord{"n-subsp", "subspecies"},
    RankWord{"var", "variety"},
    RankWord{"varietas", "variety"},
    RankWord{"variety", "variety"},
    RankWord{"v", "variety"},
    RankWord{"nothovar", "variety"},
    RankWord{"nvar", "variety"},
    RankWord{"n-var", "variety"},
    RankWord{"subvar", "subvariety"},
    RankWord{"f", "form"},
    RankWord{"fo", "form"},
    RankWord{"fm", "form"},
    RankWord{"forma", "form"},
    RankWord{"form", "form"},
    RankWord{"nothof", "form"},
    RankWord{"subf", "subform"},
    RankWord{"subforma", "subform"},
    RankWord{"ab", "aberration"},
    RankWord{"aberr", "aberration"},
    RankWord{"morph", "morph"},
    RankWord{"natio", "natio"},
};
constexpr std::array kGroupRanks{
    RankWord{"subg", "subgenus"}, RankWord{"subgen", "subgenus"}, RankWord{"subgenus", "subgenus"},
    RankWord{"sect", "section"},  RankWord{"section", "section"}, RankWord{"subsect", "subsection"},
    RankWord{"ser", "series"},    RankWord{"series", "series"},   RankWord{"subser", "subseries"},
};
constexpr std::array kPlainRanks{
    RankWord{"subsp.", "subspecies"},  RankWord{"var.", "variety"},
    RankWord{"subvar.", "subvariety"}, RankWord{"f.", "form"},
    RankWord{"subf.", "subform"},      RankWord{"f. sp.", "special form"},
    RankWord{"ab.", "aberration"},     RankWord{"morph", "morph"},
    RankWord{"natio", "natio"},        RankWord{"subg.", "subgenus"},
    RankWord{"sect.", "section"},      RankWord{"subsect.", "subsection"},
    RankWord{"ser.", "series"},        RankWord{"subser.", "subseries"},
};

template <std::size_t N>
std::string_view rank_of(std::string_view word, std::array<RankWord, N> const& table) {
  bool const stopped = word.ends_with('.');
  if (stopped) word.remove_suffix(1);
  // "v", "f", "ab", "ser" only count with their stop.
  if (!stopped && word.size() <= 2) return {};
  auto const lower = lowered(word);
  auto const found = std::find_if(table.begin(), table.end(),
                                  [&](RankWord const& entry) { return entry.printed == lower; });
  return found == table.end() ? std::string_view{} : found->rank;
}

constexpr std::array<std::string_view, 22> kParticles{
    "de",  "da",  "do",  "du", "des", "del", "della", "der", "den", "di", "d'",
    "von", "van", "vom", "zu", "zur", "la",  "le",    "ter", "ten", "af", "dos"};
constexpr std::array<std::string_view, 10> kAuthorLinks{"ex", "in",  "et",   "and", "und",
                                                        "y",  "al.", "apud", "&",   "al"};
constexpr std::array<std::string_view, 8> kAggregates{"agg.",  "agg",     "aggr.",     "gr.",
                                                      "group", "complex", "aggregate", "gp."};
constexpr std::array<std::string_view, 8> kQualifiers{"cf.", "cf",  "aff.", "aff",
                                                      "nr",  "nr.", "near", "prox."};
constexpr std::array<std::string_view, 8> kOpenSpecies{"sp.",   "sp",    "spp.",    "spp",
                                                       "spec.", "sspp.", "species", "sp.,"};

// A word that can be an epithet: small letters (or a number and a hyphen first), no stop inside.
bool epithet_like(Token const& token) {
  if (token.group() || token.text.starts_with('\'')) return false;
  auto const initial = initial_of(token.text);
  if (initial == Initial::digit) {
    auto const hyphen = token.text.find('-');
    return hyphen != std::string::npos && hyphen > 0 && hyphen + 2 < token.text.size();
  }
  return initial == Initial::small && token.text.find('.') == std::string::npos &&
         token.text.find('&') == std::string::npos && token.text.find('/') == std::string::npos;
}

bool all_capitals(std::string_view word) {
  std::size_t letters = 0;
  for (char const c : word) {
    if (c >= 'a' && c <= 'z') return false;
    if (c >= 'A' && c <= 'Z') ++letters;
    if (c == '.' || c == '&' || c == '\'') return false;
  }
  return letters >= 2;
}

// "AUSIDAE" -> "Ausidae"; "velunaca" -> "Velunaca".
std::string capitalised(std::string_view word, bool first_upper) {
  std::string valid{word};
  std::string result;
  result.reserve(valid.size());
  auto const* bytes = reinterpret_cast<utf8proc_uint8_t const*>(valid.data());
  auto left = static_cast<utf8proc_ssize_t>(valid.size());
  bool first = true;
  while (left > 0) {
    utf8proc_int32_t point = 0;
    auto const used = utf8proc_iterate(bytes, left, &point);
    if (used <= 0) return valid;
    auto const shown = first && first_upper ? utf8proc_toupper(point) : utf8proc_tolower(point);
    std::array<utf8proc_uint8_t, 4> out{};
    auto const size = utf8proc_encode_char(shown, out.data());
    result.append(reinterpret_cast<char const*>(out.data()), static_cast<std::size_t>(size));
    first = false;
    bytes += used;
    left -= used;
  }
  return result;
}

class Parser {
 public:
  explicit Parser(std::vector<Token> tokens) : tokens_{std::move(tokens)} {}

  ParsedName parse() {
    skip_rank_noun();
    if (!take_genus()) return std::move(name_);
    while (at_ < tokens_.size()) {
      if (starts_sensu()) {
        take_sensu();
      } else if (!take_sign() && !take_qualifier() && !take_open_species() && !take_aggregate() &&
                 !take_rank() && !take_subgenus() && !take_epithet()) {
        take_author();
      }
    }
    finish();
    return std::move(name_);
  }

 private:
  [[nodiscard]] Token const* peek(std::size_t ahead = 0) const {
    return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
  }
  [[nodiscard]] std::string low(std::size_t ahead = 0) const {
    auto const* token = peek(ahead);
    return token == nullptr ? std::string{} : lowered(token->text);
  }
  static void join(std::string& text, std::string_view word) {
    if (!text.empty()) text += ' ';
    text += word;
  }

  // "Family Ausidae", "genus Aus".
  void skip_rank_noun() {
    static constexpr std::array<std::string_view, 13> kNouns{
        "family", "fam.",   "genus", "gen.", "subfamily", "subfam.", "tribe",
        "trib.",  "tribus", "order", "ordo", "species",   "genus:"};
    auto const* next = peek(1);
    if (next != nullptr && !next->group() && initial_of(next->text) == Initial::capital &&
        one_of(low(), kNouns)) {
      ++at_;
    }
  }

  bool take_genus() {
    while (at_ < tokens_.size()) {
      auto const& token = tokens_[at_];
      if (token.text == kTimes) {
        name_.hybrid = name_.hybrid_genus = true;
      } else if (token.text == "?") {
        join(name_.qualifier, "?");
      } else if ((low() == "x" || low() == "cf." || low() == "aff.") && peek(1) != nullptr) {
        if (low() == "x") {
          name_.hybrid = name_.hybrid_genus = true;
        } else {
          join(name_.qualifier, token.text);
        }
      } else {
        break;
      }
      ++at_;
    }
    if (at_ >= tokens_.size()) return false;
    std::string word{tokens_[at_].group() ? std::string{tokens_[at_].inside()} : tokens_[at_].text};
    strip_doubt(word);
    while (word.starts_with('"') || word.starts_with('\'')) word.erase(0, 1);
    while (word.ends_with('"') || word.ends_with('\'')) word.pop_back();
    // A glued x only before a capital: "xAus".
    if (word.size() > 2 && word[0] == 'x' && word[1] >= 'A' && word[1] <= 'Z') {
      name_.hybrid = name_.hybrid_genus = true;
      word.erase(0, 1);
    }
    bool const comma = tokens_[at_].comma;
    auto const* next = peek(1);
    bool const before_epithet =
        next != nullptr && !comma && (epithet_like(*next) || next->text == kTimes);
    // "Ausidae." ends a sentence; "A." and "Aus." before an epithet are short for a genus.
    if (word.ends_with('.') && word.size() > 1 && word.size() > 6 && !before_epithet) {
      word.pop_back();
    }
    if (word.size() >= 3 && all_capitals(word)) {
      if (next != nullptr && !comma && !next->group() && all_capitals(next->text) && !next->comma) {
        capital_epithet_ = true;
      }
      word = capitalised(word, true);
    } else if (before_epithet && initial_of(word) == Initial::small) {
      word = capitalised(word, true);
    }
    name_.genus = std::move(word);
    closed_ = comma;
    ++at_;
    if (initial_of(name_.genus) == Initial::none) name_.genus.clear();
    return true;
  }

  void strip_doubt(std::string& word) {
    bool doubt = false;
    while (word.starts_with('?')) {
      word.erase(0, 1);
      doubt = true;
    }
    while (word.ends_with('?')) {
      word.pop_back();
      doubt = true;
    }
    if (doubt) join(name_.qualifier, "?");
  }

  // "sensu …", "s. l.", "auct. non …", "sp. nov.", "(part)": said about the name.
  [[nodiscard]] bool starts_sensu() const {
    static constexpr std::array<std::string_view, 29> kSensu{
        "sensu",  "sec.",   "sec",   "secundum", "auct.", "auct",  "auctt.", "auctorum",
        "emend.", "emend",  "non",   "nec",      "nom.",  "orth.", "syn.",   "s.l.",
        "s.lat.", "s.str.", "s.s.",  "s.ampl.",  "p.p.",  "pr.p.", "excl.",  "mut.",
        "s.l",    "s.str",  "s.lat", "comb.",    "stat."};
    static constexpr std::array<std::string_view, 8> kAfterS{"l.",   "l",   "lat.", "lat",
                                                             "str.", "str", "s.",   "ampl."};
    auto const word = low();
    if (one_of(word, kSensu)) return true;
    auto const next = low(1);
    if (word == "s." && one_of(next, kAfterS)) return true;
    if (word == "p." && next == "p.") return true;
    if (word == "pro" && (next == "parte" || next == "syn." || next == "sp.")) return true;
    if (word == "in" && (next == "part" || next == "parte")) return true;
    if ((word == "n." || word == "nov.") && (next == "sp." || next == "comb." || next == "gen.")) {
      return true;
    }
    if (word == "gen." && (next == "n." || next == "nov.")) return true;
    bool const has_epithet = !name_.species.empty();
    if (has_epithet && (word == "sp." || word == "spec." || word == "ssp." || word == "subsp.") &&
        (next == "n." || next == "nov." || next == "n" || next == "nov")) {
      return true;
    }
    auto const* token = peek();
    if (token->group() && has_epithet) {
      auto const inside = token->inside();
      auto const blank = inside.find(' ');
      bool const particle = one_of(lowered(inside.substr(0, blank)), kParticles);
      return initial_of(inside) == Initial::small && !particle;
    }
    return false;
  }

  void take_sensu() {
    for (; at_ < tokens_.size(); ++at_) {
      join(name_.sensu, tokens_[at_].text);
      if (tokens_[at_].comma && at_ + 1 < tokens_.size()) name_.sensu += ',';
    }
  }

  bool take_sign() {
    auto const* token = peek();
    bool const letter = token->text == "x" || token->text == "X";
    if (token->text != kTimes && !(letter && peek(1) != nullptr)) return false;
    name_.hybrid = true;
    ++at_;
    return true;
  }

  bool take_qualifier() {
    auto const word = low();
    if (word == "?") {
      join(name_.qualifier, "?");
    } else if (one_of(word, kQualifiers) && peek(1) != nullptr && !author_started_) {
      join(name_.qualifier, tokens_[at_].text);
    } else {
      return false;
    }
    ++at_;
    return true;
  }

  // "Aus sp.", "Aus spp.", "Aus sp. nr bus", "Aus sp. 1".
  bool take_open_species() {
    auto const word = low();
    if (!name_.species.empty() || author_started_ || !one_of(word, kOpenSpecies)) return false;
    ++at_;
    auto const* next = peek();
    if (next == nullptr) return true;
    auto const after = low();
    if (one_of(after, kQualifiers) || after == "prope") {
      join(name_.qualifier, "sp.");
      for (; at_ < tokens_.size() && !starts_sensu(); ++at_) {
        join(name_.qualifier, tokens_[at_].text);
      }
    } else if (after == "nov." || after == "n." || after == "indet." || after == "indet" ||
               after == "ind.") {
      join(name_.qualifier, "sp. " + tokens_[at_].text);
      ++at_;
    } else if (provisional(*next)) {
      name_.species = "sp. " + next->text;
      ++at_;
    }
    return true;
  }

  // A label instead of an epithet: "1", "12b", "A".
  [[nodiscard]] static bool provisional(Token const& token) {
    auto const& text = token.text;
    if (token.group() || text.empty() || text.size() > 3) return false;
    if (text[0] >= '0' && text[0] <= '9') return true;
    return text.size() == 1 && text[0] >= 'A' && text[0] <= 'Z';
  }

  bool take_aggregate() {
    if (!one_of(low(), kAggregates) || author_started_) return false;
    if (name_.rank.empty() && name_.infraspecies.empty()) name_.rank = "aggregate";
    ++at_;
    return true;
  }

  bool take_rank() {
    auto const* token = peek();
    if (token->group()) return false;
    auto const* next = peek(1);
    if (name_.species.empty() && !author_started_) {
      if (auto const rank = rank_of(token->text, kGroupRanks);
          !rank.empty() && next != nullptr && !next->group()) {
        name_.subgenus = next->text;
        group_rank_ = rank;
        at_ += 2;
        return true;
      }
      if (low() == "nothosp." || low() == "nsp." || low() == "n-sp.") {
        name_.hybrid = true;
        ++at_;
        return true;
      }
    }
    auto const rank = rank_of(token->text, kRankWords);
    if (rank.empty() || next == nullptr) return false;
    std::size_t epithet = 1;
    auto canonical = rank;
    if (rank == "form" && low(1) == "sp." && peek(2) != nullptr) {
      canonical = "special form";
      epithet = 2;
    }
    bool const sign = low(epithet) == "x" || peek(epithet)->text == kTimes;
    if (sign) ++epithet;
    auto const* word = peek(epithet);
    if (word == nullptr || !epithet_like(*word) || one_of(lowered(word->text), kAuthorLinks)) {
      return false;
    }
    // A particle with a name behind it goes on with the author: "L. f. de Bus".
    if (one_of(lowered(word->text), kParticles) && peek(epithet + 1) != nullptr &&
        initial_of(peek(epithet + 1)->text) == Initial::capital) {
      return false;
    }
    name_.hybrid = name_.hybrid || sign || lowered(token->text).starts_with('n');
    at_ += epithet;
    if (name_.species.empty()) {
      // A rank without a species is no Code's form; the epithet is all that is known.
      name_.species = word->text;
      canonical = "";
    } else {
      if (species_author_.empty() && name_.infraspecies.empty()) {
        species_author_ = name_.authorship;
      }
      name_.infraspecies = word->text;
      strip_doubt(name_.infraspecies);
    }
    name_.rank = canonical;
    name_.authorship.clear();
    author_started_ = false;
    closed_ = tokens_[at_].comma;
    ++at_;
    return true;
  }

  // "Aus (Bus) cus", "Aus (Bus)", "Aus (sect. Bus) cus"; "Aus (Smith) Jones" is none.
  bool take_subgenus() {
    auto const* token = peek();
    if (!token->text.starts_with('(') || !name_.species.empty() || author_started_ ||
        !name_.subgenus.empty()) {
      return false;
    }
    auto const inside = token->inside();
    if (initial_of(inside) == Initial::small) {  // an aggregate or a section, not counted
      name_.subgenus = std::string{inside};
      ++at_;
      return true;
    }
    bool const one_word = inside.find_first_of(" .,&0123456789") == std::string_view::npos;
    auto const* next = peek(1);
    bool const year_behind = next != nullptr && peek(2) != nullptr && next->comma &&
                             initial_of(peek(2)->text) == Initial::digit;
    bool const author_behind =
        next != nullptr && initial_of(next->text) == Initial::capital && !year_behind;
    if (!one_word || initial_of(inside) != Initial::capital || author_behind) return false;
    name_.subgenus = std::string{inside};
    if (next == nullptr || year_behind) group_rank_ = "subgenus";
    ++at_;
    return true;
  }

  bool take_epithet() {
    auto const* token = peek();
    if (author_started_) return false;
    if (closed_) {
      // Behind a comma only an author or a year still belongs to the name.
      bool const author = initial_of(token->text) != Initial::small || token->group() ||
                          (one_of(low(), kParticles) && peek(1) != nullptr);
      if (author) return false;
      take_sensu();
      return true;
    }
    if (token->text.starts_with('\'') && token->text.size() > 2) {
      name_.infraspecies = token->text.substr(1, token->text.size() - 2);
      name_.rank = "cultivar";
      closed_ = token->comma;
      ++at_;
      return true;
    }
    bool const capital =
        capital_epithet_ && name_.species.empty() && !token->group() && all_capitals(token->text);
    if (name_.species.empty() && provisional(*token) && !capital) {
      name_.species = token->text;
      closed_ = true;
      ++at_;
      return true;
    }
    if (!capital && !epithet_like(*token)) return false;
    auto const word = low();
    if (one_of(word, kAuthorLinks)) return false;
    auto const* next = peek(1);
    if (one_of(word, kParticles) && next != nullptr && !token->comma &&
        (initial_of(next->text) == Initial::capital || one_of(low(1), kParticles))) {
      return false;
    }
    std::string epithet = capital ? capitalised(token->text, false) : token->text;
    strip_doubt(epithet);
    if (name_.species.empty()) {
      name_.species = std::move(epithet);
    } else {
      name_.infraspecies = std::move(epithet);
      name_.rank.clear();
    }
    closed_ = token->comma;
    ++at_;
    return true;
  }

  void take_author() {
    auto const& token = tokens_[at_];
    author_started_ = true;
    join(name_.authorship, token.text);
    if (token.comma && at_ + 1 < tokens_.size()) name_.authorship += ',';
    ++at_;
  }

  void finish() {
    // Autonyms take the species' author (ICN 26.1; ICZN 47.1).
    if (!name_.infraspecies.empty() && name_.infraspecies == name_.species &&
        name_.authorship.empty()) {
      name_.authorship = species_author_;
    }
    if (name_.species.empty() && !group_rank_.empty()) name_.rank = group_rank_;
    name_.genus_only = !name_.genus.empty() && name_.species.empty() &&
                       name_.infraspecies.empty() && name_.rank.empty();
  }

  std::vector<Token> tokens_;
  std::size_t at_{0};
  ParsedName name_;
  std::string species_author_;
  std::string_view group_rank_;
  bool author_started_{false};
  bool capital_epithet_{false};
  bool closed_{false};
};

// Where a formula "Aus bus × Aus cus" is cut: a sign behind a genus and epithet, or between two
// genera.  "Aus × bus" and "× Aus bus" are names.
std::vector<std::vector<Token>> parents_of(std::vector<Token> const& tokens) {
  std::vector<std::vector<Token>> parents(1);
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    auto const& token = tokens[i];
    bool const sign = token.text == kTimes || ((token.text == "x" || token.text == "X") && i > 0);
    auto const& before = parents.back();
    bool cut = false;
    if (sign && !before.empty() && i + 1 < tokens.size()) {
      auto const& next = tokens[i + 1];
      bool const epithet_before =
          std::any_of(before.begin() + 1, before.end(), [](Token const& word) {
            return epithet_like(word) && rank_of(word.text, kRankWords).empty();
          });
      bool const rank_before =
          !rank_of(before.back().text, kRankWords).empty() && before.back().text != "f.";
      cut = !rank_before && before.front().text != kTimes &&
            (epithet_before || (!next.group() && initial_of(next.text) == Initial::capital));
    }
    if (cut) {
      parents.emplace_back();
    } else {
      parents.back().push_back(token);
    }
  }
  return parents;
}

std::string plain_of(ParsedName const& name) {
  std::string plain;
  auto const join = [&](std::string_view word) {
    if (word.empty()) return;
    if (!plain.empty()) plain += ' ';
    plain += word;
  };
  if (name.hybrid_genus) join(kTimes);
  join(name.genus);
  if (name.hybrid && !name.hybrid_genus && name.other_parent.empty() && !name.species.empty()) {
    join(kTimes);
  }
  join(name.species);
  auto const rank = std::find_if(kPlainRanks.begin(), kPlainRanks.end(),
                                 [&](RankWord const& entry) { return entry.rank == name.rank; });
  if (name.rank == "aggregate") {
    join(name.species.empty() ? "group" : "agg.");
  } else if (name.rank == "cultivar") {
    join("'" + name.infraspecies + "'");
  } else {
    if (rank != kPlainRanks.end()) join(rank->printed);
    join(name.infraspecies.empty() && name.species.empty() && !name.rank.empty()
             ? name.subgenus
             : name.infraspecies);
  }
  if (!name.other_parent.empty()) {
    join(kTimes);
    join(name.other_parent);
  }
  return plain;
}

}  // namespace

ParsedName parse_name(std::string_view name) {
  auto const parents = parents_of(tokens_of(cleaned_name(name)));
  ParsedName first = Parser{parents.front()}.parse();
  for (std::size_t i = 1; i < parents.size(); ++i) {
    auto tokens = parents[i];
    // "Aus bus × cus" and "Aus bus × A. cus": the genus is the first parent's.
    bool const no_genus = !tokens.empty() && epithet_like(tokens.front());
    if (no_genus) tokens.insert(tokens.begin(), Token{.text = first.genus, .comma = false});
    ParsedName next = Parser{std::move(tokens)}.parse();
    if (next.genus.ends_with('.') &&
        first.genus.starts_with(next.genus.substr(0, next.genus.size() - 1))) {
      next.genus = first.genus;
    }
    first.hybrid = true;
    first.genus_only = false;
    if (!first.other_parent.empty()) first.other_parent += " " + std::string{kTimes} + " ";
    first.other_parent += plain_of(next);
    if (!next.sensu.empty() && first.sensu.empty()) first.sensu = next.sensu;
  }
  if (first.genus.empty() && first.species.empty()) {
    // Nothing that looks like a name: the first word with a letter or digit stands for it.
    for (auto const& token : tokens_of(cleaned_name(name))) {
      if (initial_of(token.text) == Initial::none) continue;
      first.genus = token.text;
      first.genus_only = true;
      break;
    }
  }
  return first;
}

std::string plain_name(std::string_view name) { return plain_of(parse_name(name)); }

}  // namespace keydrift
