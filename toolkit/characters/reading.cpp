#include "keydrift/characters/reading.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "keydrift/characters/reading/lead_reader.hpp"
#include "keydrift/characters/reading/lexicon_index.hpp"
#include "keydrift/characters/reading/tying.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift {
namespace {

using reading::Complaint;
using reading::CoupletDrafts;
using reading::Draft;

constexpr auto no_lead = std::numeric_limits<std::size_t>::max();

// One lead while it is read.
struct LeadInHand {
  Edition const* edition{};
  Lead* lead{};
  std::vector<Draft> drafts{};
  std::vector<Complaint> complaints{};
  std::vector<Statement> kept{};  // came in with predicates (JSON)
  std::size_t same{no_lead};      // the next lead of the same words
};

// A text that leads have.
struct LeadWords {
  std::string_view text;
  std::string_view language;
  std::size_t first{};  // the leads that have it, by LeadInHand::same
  std::size_t last{};
};

// What a draft has that calls for a pass over all leads: most editions want few of these.
enum : unsigned {
  kRivals = 1U << 0U,
  kRest = 1U << 1U,  // words that the lexicon left over
  kAnaphora = 1U << 2U,
  kBareNumber = 1U << 3U,  // printed without its dimension
  kCount = 1U << 4U,       // or a ratio, read without the lexicon
};

unsigned passes_for(Draft const& draft) {
  unsigned passes = (draft.rest.empty() ? 0U : kRest) | (draft.anaphora ? kAnaphora : 0U);
  for (auto const& atom : draft.any_of) {
    if (!atom.rivals.empty()) passes |= kRivals;
    if (!atom.bare_of.empty()) passes |= kBareNumber;
    auto const& id = atom.atom.character;
    if (id.starts_with("~n:") && (id.ends_with("|1") || id.ends_with("|"))) passes |= kCount;
  }
  return passes;
}

// With fewer leads another thread is not worth its start.
constexpr std::size_t worth_a_thread = 1000;

class Reader {
 public:
  Reader(std::span<Edition* const> editions, Lexicon const& lexicon, ReadOptions const& options)
      : editions_{editions}, index_{lexicon} {
    collect_genera();
    rules_ = {.lexicon = &index_, .genera = &genera_, .tolerance = options.tolerance};
  }

  std::vector<Finding> run() {
    for (auto* edition : editions_) {
      for (auto& couplet : edition->couplets) {
        first_leads_.push_back(leads_.size());
        for (auto& lead : couplet.leads) leads_.push_back({edition, &lead});
      }
    }
    first_leads_.push_back(leads_.size());
    read_texts();
    for (auto& in_hand : leads_) {
      for (auto const& complaint : in_hand.complaints) report(in_hand, complaint);
      in_hand.complaints = {};
    }
    std::vector<CoupletDrafts> couplets;
    for (std::size_t c = 0; c + 1 < first_leads_.size(); ++c) {
      CoupletDrafts couplet;
      for (auto i = first_leads_[c]; i < first_leads_[c + 1]; ++i) {
        couplet.push_back(&leads_[i].drafts);
      }
      if ((passes_ & kRivals) != 0) resolve_rivals(first_leads_[c], first_leads_[c + 1]);
      couplets.push_back(std::move(couplet));
    }
    if ((passes_ & kRest) != 0) reading::keep_deciding_words(couplets);
    if ((passes_ & kAnaphora) != 0) reading::read_contraries(couplets);
    if ((passes_ & kBareNumber) != 0) reading::name_bare_numbers(couplets);
    if ((passes_ & kCount) != 0) reading::turn_lone_counts_into_words(couplets);
    reading::tie_opaque(couplets);
    in_parts(leads_.size(), worth_a_thread, [this](std::size_t begin, std::size_t end) {
      for (auto i = begin; i < end; ++i) write(leads_[i]);
    });
    sort_findings(findings_);
    return std::move(findings_);
  }

 private:
  void collect_genera() {
    auto const add = [&](std::string_view name) {
      auto const word = name.substr(0, name.find(' '));
      if (word.size() > 2) genera_.insert(reading::fold(word));
    };
    for (auto const* edition : editions_) {
      for (auto const& taxon : edition->taxa) add(taxon.name);
      for (auto const& name : edition->front.scope.listed_taxa) add(name);
      for (auto const& name : edition->front.scope.excluded_taxa) add(name);
      for (auto const& synonymy : edition->front.synonyms) {
        add(synonymy.accepted);
        add(synonymy.synonym);
      }
    }
  }

  // Editions share most of their leads: what one text says is read once.  A reading hangs on
  // nothing but the text, its language and the rules, so that threads may share the texts.
  void read_texts() {
    std::vector<LeadWords> texts;
    std::map<std::string_view, std::unordered_map<std::string_view, std::size_t>> known;
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto& in_hand = leads_[i];
      bool const has_words = keep_given(in_hand);
      in_hand.lead->statements.clear();
      if (!has_words) continue;
      std::string_view const language = in_hand.edition->front.language;
      auto const [found, fresh] = known[language].try_emplace(in_hand.lead->text, texts.size());
      if (fresh) {
        texts.push_back({in_hand.lead->text, language, i, i});
      } else {
        auto& last = texts[found->second].last;
        leads_[last].same = i;
        last = i;
      }
    }
    auto const called_for =
        made_in_parts(texts.size(), worth_a_thread, [&](std::size_t begin, std::size_t end) {
          unsigned passes = 0;
          for (auto i = begin; i < end; ++i) {
            auto reading = reading::read_lead(texts[i].text, texts[i].language, rules_);
            for (auto const& draft : reading.drafts) passes |= passes_for(draft);
            for (auto at = texts[i].first; at != texts[i].last; at = leads_[at].same) {
              take(leads_[at], reading);
            }
            take(leads_[texts[i].last], std::move(reading));
          }
          return passes;
        });
    for (auto const passes : called_for) passes_ |= passes;
  }

  static void take(LeadInHand& in_hand, reading::LeadReading reading) {
    in_hand.complaints = std::move(reading.complaints);
    for (auto& draft : reading.drafts) {
      bool const given =
          std::any_of(in_hand.kept.begin(), in_hand.kept.end(), [&](Statement const& statement) {
            return draft.begin < statement.text_begin + statement.text.size() &&
                   draft.end > statement.text_begin;
          });
      if (given) continue;
      complain_of_numbers(draft, in_hand.lead->text, in_hand.complaints);
      in_hand.drafts.push_back(std::move(draft));
    }
  }

  // Statements that came in with predicates.  False when they cannot be found in the text, so that
  // what they leave unsaid cannot be told: then they are all there is.
  bool keep_given(LeadInHand& in_hand) {
    auto const& text = in_hand.lead->text;
    bool all_found = true;
    for (auto& statement : in_hand.lead->statements) {
      bool const given = statement.origin == Origin::mark && !statement.any_of.empty() &&
                         statement.text.find('{') == std::string::npos &&
                         statement.text.find('}') == std::string::npos;
      if (!given) continue;
      auto at = std::string::npos;
      if (!statement.text.empty()) {
        if (statement.text_begin < text.size() &&
            text.compare(statement.text_begin, statement.text.size(), statement.text) == 0) {
          at = statement.text_begin;
        } else {
          at = text.find(statement.text);
        }
      }
      if (at == std::string::npos) {
        all_found = false;
        statement.place = in_hand.lead->place;
      } else {
        statement.text_begin = at;
        statement.place = place_in_text(*in_hand.lead, at, statement.text.size());
      }
      in_hand.kept.push_back(std::move(statement));
    }
    return all_found;
  }

  static void complain_of_numbers(Draft const& draft, std::string const& text,
                                  std::vector<Complaint>& complaints) {
    auto const words = '"' + text.substr(draft.begin, draft.end - draft.begin) + '"';
    if (draft.backwards) {
      complaints.push_back({.begin = draft.begin,
                            .end = draft.end,
                            .code = "backwards-range",
                            .severity = Severity::warning,
                            .message = "a range in " + words + " ends below its beginning",
                            .remedy = "print the smaller number first; it is read that way round"});
    }
    if (draft.unitless) {
      complaints.push_back({.begin = draft.begin,
                            .end = draft.end,
                            .code = "missing-unit",
                            .severity = Severity::warning,
                            .message = "a measurement in " + words + " has no unit",
                            .remedy = "print the unit behind the number"});
    }
  }

  void report(LeadInHand const& in_hand, Complaint const& complaint) {
    auto const length = complaint.end - complaint.begin;
    findings_.push_back({.code = complaint.code,
                         .severity = complaint.severity,
                         .file = in_hand.edition->name,
                         .place = place_in_text(*in_hand.lead, complaint.begin, length),
                         .printed = in_hand.lead->text.substr(complaint.begin, length),
                         .message = complaint.message,
                         .remedy = complaint.remedy,
                         .related = {}});
  }

  // Words that mean states of several characters: the one that a sibling lead speaks of is meant.
  void resolve_rivals(std::size_t first, std::size_t last) {
    for (auto i = first; i < last; ++i) {
      for (auto& draft : leads_[i].drafts) {
        for (auto& atom : draft.any_of) {
          if (atom.rivals.empty()) continue;
          prefer(atom, contrasted(first, last, i));
          complain_of_rivals(leads_[i], draft, atom);
          atom.rivals.clear();
        }
      }
    }
  }

  [[nodiscard]] std::vector<std::string> contrasted(std::size_t first, std::size_t last,
                                                    std::size_t self) const {
    std::vector<std::string> characters;
    for (auto i = first; i < last; ++i) {
      if (i == self) continue;
      for (auto const& draft : leads_[i].drafts) {
        for (auto const& atom : draft.any_of) {
          if (!atom.opaque && atom.rivals.empty()) characters.push_back(atom.atom.character);
        }
      }
    }
    return characters;
  }

  static void prefer(reading::DraftAtom& atom, std::vector<std::string> const& contrasted) {
    auto const is_contrasted = [&](std::string const& character) {
      return std::find(contrasted.begin(), contrasted.end(), character) != contrasted.end();
    };
    if (is_contrasted(atom.atom.character)) return;
    for (auto const& [character, state] : atom.rivals) {
      if (!is_contrasted(character)) continue;
      std::vector<std::string> states;
      for (auto const& [other, its_state] : atom.rivals) {
        if (other == character) states.push_back(its_state);
      }
      std::sort(states.begin(), states.end());
      states.erase(std::unique(states.begin(), states.end()), states.end());
      if (states.size() < atom.atom.states.size()) continue;
      auto const old = atom.atom.character;
      auto const old_state = atom.atom.states.front();
      atom.atom.character = character;
      atom.atom.states = std::move(states);
      atom.rivals.emplace_back(old, old_state);
      return;
    }
  }

  void complain_of_rivals(LeadInHand const& in_hand, Draft const& draft,
                          reading::DraftAtom const& atom) {
    std::string others;
    std::vector<std::string> named{atom.atom.character};
    for (auto const& [character, state] : atom.rivals) {
      if (std::find(named.begin(), named.end(), character) != named.end()) continue;
      named.push_back(character);
      others += (others.empty() ? "\"" : ", \"") + character + '"';
    }
    if (others.empty()) return;
    report(in_hand,
           {.begin = draft.begin,
            .end = draft.end,
            .code = "ambiguous-words",
            .severity = Severity::warning,
            .message = "\"" + atom.printed + "\" is read as a state of \"" + atom.atom.character +
                       "\" and may also mean " + others,
            .remedy = "name the structure in the words, or add a mark {character: state}"});
  }

  void write(LeadInHand& in_hand) {
    auto& lead = *in_hand.lead;
    auto& statements = lead.statements;
    for (auto& draft : in_hand.drafts) {
      Statement statement;
      statement.text = lead.text.substr(draft.begin, draft.end - draft.begin);
      statement.text_begin = draft.begin;
      statement.place = place_in_text(lead, draft.begin, draft.end - draft.begin);
      statement.strength = draft.strength;
      for (auto& atom : draft.any_of) statement.any_of.push_back(std::move(atom.atom));
      statement.except = std::move(draft.except);
      statement.exception_words = std::move(draft.exception_words);
      statement.hedge = std::move(draft.hedge);
      statement.limits = std::move(draft.limits);
      statement.origin = draft.origin;
      statement.pieces = std::move(draft.pieces);
      statements.push_back(std::move(statement));
    }
    in_hand.drafts = {};
    for (auto& statement : in_hand.kept) statements.push_back(std::move(statement));
    std::stable_sort(
        statements.begin(), statements.end(),
        [](Statement const& a, Statement const& b) { return a.text_begin < b.text_begin; });
  }

  std::span<Edition* const> editions_;
  reading::LexiconIndex index_;
  reading::Genera genera_;
  reading::ReadingRules rules_;
  std::vector<LeadInHand> leads_;
  unsigned passes_{0};
  std::vector<std::size_t> first_leads_;  // of every couplet, and one behind the last
  std::vector<Finding> findings_;
};

}  // namespace

std::vector<Finding> read_statements(std::span<Edition* const> editions, Lexicon const& lexicon,
                                     ReadOptions const& options) {
  return Reader{editions, lexicon, options}.run();
}

std::vector<Finding> read_statements(Edition& edition, Lexicon const& lexicon,
                                     ReadOptions const& options) {
  std::array<Edition*, 1> const one{&edition};
  return read_statements(one, lexicon, options);
}

std::string normalised_words(std::string_view text) {
  std::string joined;
  joined.reserve(text.size());
  for (auto const& token : reading::tokenise(text)) {
    if (token.kind == reading::TokenKind::sign || token.kind == reading::TokenKind::mark) continue;
    if (token.kind == reading::TokenKind::word && reading::is_article(token.word)) continue;
    if (!joined.empty()) joined += ' ';
    joined += token.word;
  }
  return joined;
}

Coverage coverage(Edition const& edition) {
  Coverage coverage;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      for (auto const& statement : lead.statements) {
        ++coverage.statements;
        switch (statement.origin) {
          case Origin::mark:
            ++coverage.by_mark;
            break;
          case Origin::lexicon:
            ++coverage.by_lexicon;
            break;
          case Origin::number:
            ++coverage.by_number;
            break;
          case Origin::opaque:
            ++coverage.opaque;
            break;
        }
      }
    }
  }
  return coverage;
}

}  // namespace keydrift
