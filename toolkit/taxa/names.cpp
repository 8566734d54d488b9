#include "keydrift/taxa/names.hpp"

#include <utility>

#include "keydrift/taxa/name_text.hpp"
#include "keydrift/taxa/name_tokens.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

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
  [[nodiscard]] std::string_view low(std::size_t ahead = 0) const {
    auto const* token = peek(ahead);
    return token == nullptr ? std::string_view{} : std::string_view{token->low};
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
      } else if (initial_of(token.text) == Initial::none) {
        // a mark without a name
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
  [[nodiscard]] bool starts_sensu(std::size_t ahead = 0) const {
    static constexpr std::array<std::string_view, 29> kSensu{
        "sensu",  "sec.",   "sec",   "secundum", "auct.", "auct",  "auctt.", "auctorum",
        "emend.", "emend",  "non",   "nec",      "nom.",  "orth.", "syn.",   "s.l.",
        "s.lat.", "s.str.", "s.s.",  "s.ampl.",  "p.p.",  "pr.p.", "excl.",  "mut.",
        "s.l",    "s.str",  "s.lat", "comb.",    "stat."};
    static constexpr std::array<std::string_view, 8> kAfterS{"l.",   "l",   "lat.", "lat",
                                                             "str.", "str", "s.",   "ampl."};
    auto const word = low(ahead);
    if (one_of(word, kSensu)) return true;
    auto const next = low(ahead + 1);
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
    auto const* token = peek(ahead);
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
      if (auto const rank = rank_above_species(token->text);
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
    auto const rank = rank_below_species(token->text);
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
    if (word == nullptr || !epithet_like(*word) || one_of(word->low, kAuthorLinks) ||
        starts_sensu(epithet) || !rank_below_species(word->text).empty()) {
      return false;
    }
    // A particle with a name behind it goes on with the author: "L. f. de Bus".
    if (one_of(word->low, kParticles) && peek(epithet + 1) != nullptr &&
        initial_of(peek(epithet + 1)->text) == Initial::capital) {
      return false;
    }
    name_.hybrid = name_.hybrid || sign || token->low.starts_with('n');
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
    // A lone word may be anything; the first word of a longer name is a genus.
    bool const longer = !name_.species.empty() || !name_.rank.empty();
    if (longer && initial_of(name_.genus) == Initial::small) {
      name_.genus = capitalised(name_.genus, true);
    }
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
  bool epithet_before = false;  // in the parent being gathered
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    auto const& token = tokens[i];
    auto& before = parents.back();
    bool const sign = token.sign() && (i > 0 || token.text == kTimes);
    bool cut = false;
    if (sign && !before.empty() && i + 1 < tokens.size()) {
      auto const& next = tokens[i + 1];
      auto const& last = before.back().text;
      bool const rank_before = !rank_below_species(last).empty() && last != "f.";
      cut = !rank_before && !before.front().sign() &&
            (epithet_before || (!next.group() && initial_of(next.text) == Initial::capital));
    }
    if (cut) {
      parents.emplace_back();
      epithet_before = false;
      continue;
    }
    epithet_before = epithet_before || (!before.empty() && !sign && epithet_like(token) &&
                                        rank_below_species(token.text).empty());
    before.push_back(token);
  }
  return parents;
}

}  // namespace

ParsedName parse_name(std::string_view name) {
  auto const parents = parents_of(tokens_of(cleaned_name(name)));
  ParsedName first = Parser{parents.front()}.parse();
  for (std::size_t i = 1; i < parents.size(); ++i) {
    auto tokens = parents[i];
    // "Aus bus × cus" and "Aus bus × A. cus": the genus is the first parent's.
    bool const no_genus = !tokens.empty() && epithet_like(tokens.front());
    if (no_genus)
      tokens.insert(tokens.begin(),
                    Token{.text = first.genus, .comma = false, .low = lowered(first.genus)});
    ParsedName next = Parser{std::move(tokens)}.parse();
    if (next.genus.ends_with('.') &&
        first.genus.starts_with(next.genus.substr(0, next.genus.size() - 1))) {
      next.genus = first.genus;
    }
    first.hybrid = true;
    first.genus_only = false;
    if (!first.other_parent.empty()) first.other_parent += " \xC3\x97 ";
    first.other_parent += plain_name(next);
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

}  // namespace keydrift
