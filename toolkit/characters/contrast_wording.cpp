// Wording that leaves a reader without an answer: comparisons with nothing, units that change
// within a couplet, statements about one sex or stage only, one thing under several names.

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <unordered_map>

#include "keydrift/characters/contrast_words.hpp"
#include "keydrift/characters/printed_scale.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/key/fold.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::contrast {

std::vector<std::string> words_of(Statement const& statement) {
  std::string_view text{statement.text};
  if (!statement.hedge.empty() && text.starts_with(statement.hedge)) {
    text.remove_prefix(statement.hedge.size());
  }
  auto const normalised = normalised_words(text);
  std::vector<std::string> words;
  for (std::size_t begin = 0; begin < normalised.size();) {
    auto const end = std::min(normalised.find(' ', begin), normalised.size());
    if (end > begin) words.push_back(normalised.substr(begin, end - begin));
    begin = end + 1;
  }
  return words;
}

bool has_words(Statement const& statement) {
  return std::any_of(statement.text.begin(), statement.text.end(), [](char c) {
    // Beyond ASCII dashes and signs begin with E2, letters with others.
    auto const byte = static_cast<unsigned char>(c);
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (byte >= 0xC3 && byte != 0xE2);
  });
}

bool tells_of_knowledge(Statement const& statement) {
  static constexpr std::array<std::string_view, 12> kPointers{
      "siehe auch ", "see also ", "voir aussi ", "véase también ", "ver también ", "ver também ",
      "vgl. auch ",  "vgl. ",     "cf. ",        "see couplet ",   "siehe zahl ",  "zie ook "};
  static constexpr std::array<std::string_view, 20> kSexes{
      "♀",      "♂",        "male",    "males",  "female",  "females",  "männchen",
      "mann",   "weibchen", "mâle",    "mâles",  "femelle", "femelles", "macho",
      "machos", "hembra",   "hembras", "femina", "larva",   "larve"};
  static constexpr std::array<std::string_view, 20> kKnown{
      "unknown",  "known",    "undescribed",  "unbekannt",    "bekannt",
      "inconnu",  "inconnus", "inconnue",     "inconnues",    "connu",
      "connus",   "connue",   "connues",      "desconocido",  "desconocida",
      "conocido", "conocida", "desconhecido", "desconhecida", "ignotus"};
  auto const text = fold_words(statement.text);
  auto const points = [&text](std::string_view one) { return text.starts_with(one); };
  if (std::any_of(kPointers.begin(), kPointers.end(), points)) return true;
  bool sex = false;
  bool known = false;
  std::string word;
  for (char const c : text + " ") {
    if (c != ' ' && c != ',' && c != '(' && c != ')' && c != '.') {
      word += c;
      continue;
    }
    sex = sex || is_one_of(kSexes, word);
    known = known || is_one_of(kKnown, word);
    word.clear();
  }
  return sex && known;
}

bool denies(Statement const& denying, Statement const& said) {
  static constexpr std::array<std::string_view, 6> kWithout{"without", "ohne", "sans",
                                                            "sin",     "sem",  "senza"};
  auto const words = words_of(denying);
  auto const without = std::find_if(words.begin(), words.end(), [](std::string const& word) {
    return is_one_of(kWithout, word);
  });
  if (without == words.end() || without + 1 == words.end()) return false;
  auto const others = words_of(said);
  return std::all_of(without + 1, words.end(), [&others](std::string const& word) {
    return std::any_of(others.begin(), others.end(),
                       [&word](std::string const& other) { return same_stem(word, other); });
  });
}

bool same_stem(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  return !a.empty() && (a == b || (a.size() >= 4 && b.starts_with(a) && b.size() <= a.size() + 2));
}

namespace {

// "12 13" of "as in Figs 12, 13": what is cited, in order.
std::string figures_cited(std::string_view text) {
  std::string cited;
  bool citing = false;
  for (auto const& token : reading::tokenise(text)) {
    if (token.kind == reading::TokenKind::word) {
      // "Fig. 3a", "Pl. IV"; longer words go on with the sentence.
      bool const figure = reading::word_info(token.word, "").is(reading::kFigure);
      citing = figure || (citing && token.word.size() <= 3);
      if (figure) continue;
    }
    if (token.kind == reading::TokenKind::sign && (token.sign == U')' || token.sign == U';')) {
      citing = false;
    }
    if (citing && !token.word.empty()) cited += token.word + ' ';
  }
  return cited;
}

bool are_other_figures(std::string_view a, std::string_view b) {
  auto const cited = figures_cited(a);
  if (cited.empty()) return false;
  auto const other = figures_cited(b);
  return !other.empty() && other != cited;
}

}  // namespace

bool cite_other_figures(Statement const& a, Statement const& b) {
  return are_other_figures(a.text, b.text);
}
bool cite_other_figures(Lead const& a, Lead const& b) { return are_other_figures(a.text, b.text); }

namespace {

// Words that compare; beside nothing to compare with they need a second specimen.
constexpr std::array<std::string_view, 39> kComparatives{
    "larger",  "smaller", "bigger",    "longer",   "shorter",  "wider",   "narrower", "broader",
    "thicker", "thinner", "darker",    "paler",    "lighter",  "stouter", "taller",   "heavier",
    "finer",   "coarser", "slenderer", "shinier",  "duller",   "hairier", "denser",   "sparser",
    "deeper",  "weaker",  "stronger",  "brighter", "smoother", "größer",  "grösser",  "kleiner",
    "länger",  "kürzer",  "breiter",   "schmaler", "dunkler",  "heller",  "blasser"};
// What a comparison is made with stands behind one of these.
constexpr std::array<std::string_view, 12> kComparedBy{
    "than", "as", "times", "×", "twice", "als", "wie", "mal", "que", "like", "quam", "equal"};

bool compares_with_something(std::vector<std::string> const& words) {
  return std::any_of(words.begin(), words.end(),
                     [](std::string const& word) { return is_one_of(kComparedBy, word); });
}

// "Body larger", "body more robust"; a comparative before its noun ("larger leaves toothed") says
// which, and needs no second specimen.
bool compares_with_nothing(Statement const& statement) {
  // The lexicon and marks say what is meant; a number is a measure.
  if (!decides(statement) || statement.origin != Origin::opaque) return false;
  auto const words = words_of(statement);
  if (words.empty() || compares_with_something(words)) return false;
  if (is_one_of(kComparatives, words.back())) return true;
  return words.size() > 2 &&
         (words[words.size() - 2] == "more" || words[words.size() - 2] == "less");
}

// Cheaply, before words are normalised: all comparatives end in "er", or stand behind one of two.
bool may_compare(std::string_view text) {
  auto const last = text.find_last_not_of(" .,;:)");
  if (last == std::string_view::npos) return false;
  return text.substr(0, last + 1).ends_with("er") || text.find("more ") != std::string_view::npos ||
         text.find("less ") != std::string_view::npos;
}

void check_comparisons(ContrastContext& context, CoupletId id) {
  struct Bare {
    LeadId lead;
    Statement const* statement;
  };
  std::vector<Bare> bare;
  auto const& leads = context.edition[id].leads;
  for (std::uint32_t i = 0; i < leads.size(); ++i) {
    auto const& statements = leads[i].statements;
    for (std::size_t k = 0; k < statements.size(); ++k) {
      if (!may_compare(statements[k].text) || !compares_with_nothing(statements[k])) continue;
      // "Leaves larger, 5–7 cm long": the measure follows.
      bool const measured = k + 1 < statements.size() && decides(statements[k + 1]) &&
                            !statements[k + 1].any_of.front().ranges.empty();
      if (!measured) bare.push_back({LeadId{id, i}, &statements[k]});
    }
  }
  if (bare.empty()) return;
  // "Antennae longer than the body" / "antennae shorter"
  std::set<std::string> answered;  // first words of statements that do compare with something
  for (auto const& lead : leads) {
    for (auto const& statement : lead.statements) {
      auto const words = words_of(statement);
      if (!words.empty() && compares_with_something(words)) answered.insert(words.front());
    }
  }
  for (auto const& [lead, statement] : bare) {
    if (answered.contains(words_of(*statement).front())) continue;
    context.report("needs-second-specimen", Severity::warning, *statement,
                   quoted(statement->text) + " of lead " + context.lead(lead) +
                       " compares with nothing, so that it takes a second specimen to tell",
                   "give a measure, or say what it is compared with");
  }
}

void check_printed_units(ContrastContext& context, CoupletId id) {
  struct Use {
    LeadId lead;
    Statement const* statement;
    std::string word;
  };
  std::map<std::pair<std::string, std::string>, Use> first;  // by character and canonical unit
  auto const& leads = context.edition[id].leads;
  for (std::uint32_t i = 0; i < leads.size(); ++i) {
    for (auto const& statement : leads[i].statements) {
      if (!decides(statement) || statement.any_of.front().ranges.empty()) continue;
      for (auto const& [unit, word] : units_printed(statement.text)) {
        auto const [at, fresh] = first.try_emplace({statement.any_of.front().character, unit},
                                                   Use{LeadId{id, i}, &statement, word});
        auto const& other = at->second;
        if (fresh || other.word == word || other.lead.ordinal == i) continue;
        auto& finding = context.report("units-differ", Severity::information, statement,
                                       "lead " + context.lead(LeadId{id, i}) + " measures in " +
                                           word + " what lead " + context.lead(other.lead) +
                                           " measures in " + other.word,
                                       "print the same unit in both leads");
        finding.related.push_back({.place = other.statement->place,
                                   .message = "lead " + context.lead(other.lead) + " says " +
                                              quoted(other.statement->text)});
      }
    }
  }
}

// All that decides in the couplet is said of one sex, or of one life stage.
void check_limits(ContrastContext& context, CoupletId id) {
  auto const& couplet = context.edition[id];
  if (couplet.leads.size() < 2) return;
  auto const& scope = context.edition.front.scope;
  for (auto const kind : {LimitKind::sex, LimitKind::life_stage}) {
    auto const& covered = kind == LimitKind::sex ? scope.sex : scope.life_stage;
    std::set<std::string> values;
    Statement const* first = nullptr;
    bool all = true;
    for (auto const& lead : couplet.leads) {
      bool any = false;
      for (auto const& statement : lead.statements) {
        if (!decides(statement)) continue;
        any = true;
        if (first == nullptr) first = &statement;
        auto const limit = std::find_if(statement.limits.begin(), statement.limits.end(),
                                        [&](Limit const& one) { return one.kind == kind; });
        all = all && limit != statement.limits.end();
        if (limit != statement.limits.end()) values.insert(limit->value);
      }
      all = all && any;
    }
    if (!all || values.size() != 1 || *values.begin() == covered) continue;
    auto const& value = *values.begin();
    bool const sex = kind == LimitKind::sex;
    context.report("limited-couplet", Severity::warning, *first,
                   "couplet " + quoted(couplet.label) + " speaks of " +
                       (sex ? value + "s" : "the stage " + quoted(value)) +
                       " only, so nothing else can be keyed past it",
                   std::string{"add a character that "} +
                       (sex ? "both sexes show" : "the other stages show") +
                       ", or say in the front matter that the key is for no other");
  }
}

// The words that the lexicon knows a character's structure by, as the leads use them.
class TermCheck {
 public:
  explicit TermCheck(ContrastContext& context) : context_{context} {}

  void take(LeadId id) {
    for (auto const& statement : context_.edition[id].statements) {
      if (!decides(statement) || statement.origin != Origin::lexicon) continue;
      auto const* character = context_.character(statement.any_of.front().character);
      if (character == nullptr || character->subjects.size() < 2) continue;
      if (auto const term = term_in(*character, statement.text); !term.empty()) {
        auto& uses = by_character_[character->id];
        auto const same = std::find_if(uses.begin(), uses.end(),
                                       [&](Use const& use) { return one_term(use.term, term); });
        if (same == uses.end()) {
          uses.push_back({term, id, &statement, 1});
        } else {
          ++same->count;
        }
      }
    }
  }

  // One finding for each pair of terms, however many characters it is found in.
  void report() {
    std::set<std::pair<std::string, std::string>> told;
    for (auto& [character, uses] : by_character_) {
      if (uses.size() < 2) continue;
      std::stable_sort(uses.begin(), uses.end(),
                       [](Use const& a, Use const& b) { return a.count > b.count; });
      auto const& usual = uses.front();
      for (std::size_t i = 1; i < uses.size(); ++i) {
        auto const& other = uses[i];
        if (told.contains({other.term, usual.term})) continue;
        if (!told.emplace(usual.term, other.term).second) continue;
        auto& finding = context_.report(
            "inconsistent-terms", Severity::warning, *other.statement,
            "lead " + context_.lead(other.lead) + " calls " + quoted(other.term) + " what lead " +
                context_.lead(usual.lead) + " calls " + quoted(usual.term),
            "call it " + quoted(usual.term) + " throughout");
        finding.related.push_back({.place = usual.statement->place,
                                   .message = "lead " + context_.lead(usual.lead) + " says " +
                                              quoted(usual.statement->text)});
      }
    }
  }

 private:
  struct Use {
    std::string term;
    LeadId lead;
    Statement const* statement;
    std::size_t count;
  };

  // "beak" and "beak of the utricle" are one term, so are "spike" and "spikes".
  static bool one_term(std::string_view a, std::string_view b) {
    if (a.size() > b.size()) std::swap(a, b);
    return same_stem(a, b) ||
           (" " + std::string{b} + " ").find(" " + std::string{a} + " ") != std::string::npos ||
           same_stem(a.substr(a.rfind(' ') + 1), b.substr(b.rfind(' ') + 1));
  }

  // The longest subject phrase that stands in the statement.
  std::string term_in(LexiconCharacter const& character, std::string_view text) {
    auto const words = " " + normalised_words(text) + " ";
    std::string term;
    auto const [known, fresh] = subjects_.try_emplace(&character);
    if (fresh) {
      for (auto const& subject : character.subjects) {
        known->second.push_back(normalised_words(subject.text));
      }
    }
    for (auto const& phrase : known->second) {
      if (phrase.size() > term.size() && words.find(" " + phrase + " ") != std::string::npos) {
        term = phrase;
      }
    }
    return term;
  }

  ContrastContext& context_;
  std::map<std::string, std::vector<Use>> by_character_;
  std::unordered_map<LexiconCharacter const*, std::vector<std::string>> subjects_;  // normalised
};

}  // namespace

void check_wording(ContrastContext& context) {
  TermCheck terms{context};
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) {
    check_comparisons(context, c);
    check_printed_units(context, c);
    check_limits(context, c);
    for (std::uint32_t i = 0; i < context.edition[c].leads.size(); ++i) terms.take(LeadId{c, i});
  }
  terms.report();
}

}  // namespace keydrift::contrast
