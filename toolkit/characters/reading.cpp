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
#include "keydrift/characters/reading/number_kinds.hpp"
#include "keydrift/characters/reading/tying.hpp"
#include "keydrift/key/side_by_side.hpp"
#include "keydrift/key/sort_stably.hpp"

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
  std::vector<Draft> own{};     // where it shares with no other lead
  std::size_t shared{no_lead};  // otherwise: the text whose drafts it has
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
  std::vector<Draft> drafts{};  // of those among them that share
  std::size_t number{no_lead};  // of these drafts in AllDrafts::each_once
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
constexpr std::size_t texts_worth_a_thread = 1000;

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
    if ((passes_ & kRivals) != 0) {
      for (std::size_t c = 0; c + 1 < first_leads_.size(); ++c) {
        resolve_rivals(first_leads_[c], first_leads_[c + 1]);
      }
    }
    auto const all = all_drafts();
    if ((passes_ & kRest) != 0) reading::keep_deciding_words(all);
    if ((passes_ & kAnaphora) != 0) reading::read_contraries(all.couplets);
    if ((passes_ & kBareNumber) != 0) reading::name_bare_numbers(all);
    if ((passes_ & kCount) != 0) reading::measure_what_has_decimals(all);
    if ((passes_ & kCount) != 0) reading::turn_lone_counts_into_words(all);
    reading::tie_opaque(all);
    write_statements();
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

  [[nodiscard]] std::vector<Draft>& drafts_of(LeadInHand& in_hand) {
    return in_hand.shared == no_lead ? in_hand.own : texts_[in_hand.shared].drafts;
  }

  [[nodiscard]] reading::AllDrafts all_drafts() {
    reading::AllDrafts all;
    all.couplets.reserve(first_leads_.size());
    all.which.reserve(leads_.size());
    for (std::size_t c = 0; c + 1 < first_leads_.size(); ++c) {
      CoupletDrafts couplet;
      couplet.reserve(first_leads_[c + 1] - first_leads_[c]);
      for (auto i = first_leads_[c]; i < first_leads_[c + 1]; ++i) {
        couplet.push_back(&drafts_of(leads_[i]));
        auto own = no_lead;
        auto& number = leads_[i].shared == no_lead ? own : texts_[leads_[i].shared].number;
        if (number == no_lead) {
          number = all.each_once.size();
          all.each_once.push_back(couplet.back());
        }
        all.which.push_back(static_cast<std::uint32_t>(number));
      }
      all.couplets.push_back(std::move(couplet));
    }
    return all;
  }

  // Editions share most of their leads: what one text says is read once.  A reading hangs on
  // nothing but the text, its language and the rules, so that threads may share the texts.
  void read_texts() {
    std::map<std::string_view, std::unordered_map<std::string_view, std::size_t>> known;
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto& in_hand = leads_[i];
      bool const has_words = keep_given(in_hand);
      in_hand.lead->statements.clear();
      if (!has_words) continue;
      std::string_view const language = in_hand.edition->front.language;
      auto const [found, fresh] = known[language].try_emplace(in_hand.lead->text, texts_.size());
      if (fresh) {
        texts_.push_back({.text = in_hand.lead->text, .language = language, .first = i, .last = i});
      } else {
        auto& last = texts_[found->second].last;
        leads_[last].same = i;
        last = i;
      }
    }
    auto const called_for =
        made_in_parts(texts_.size(), texts_worth_a_thread, [&](std::size_t begin, std::size_t end) {
          unsigned passes = 0;
          for (auto i = begin; i < end; ++i) passes |= read_text(i);
          return passes;
        });
    for (auto const passes : called_for) passes_ |= passes;
  }

  // Returns the passes that its drafts call for.
  unsigned read_text(std::size_t number) {
    auto& text = texts_[number];
    auto reading = reading::read_lead(text.text, text.language, rules_);
    unsigned passes = 0;
    for (auto const& draft : reading.drafts) passes |= passes_for(draft);
    // What these passes make of a draft hangs on its couplet.
    bool const alone = (passes & (kRivals | kAnaphora)) != 0;
    for (auto at = text.first; at != no_lead; at = leads_[at].same) {
      auto& in_hand = leads_[at];
      in_hand.complaints = reading.complaints;
      bool const shares = !alone && in_hand.kept.empty();
      if (shares) in_hand.shared = number;
      for (auto const& draft : reading.drafts) {
        if (!shares && is_given(in_hand, draft)) continue;
        complain_of_numbers(draft, in_hand.lead->text, in_hand.complaints);
        if (!shares) in_hand.own.push_back(draft);
      }
    }
    text.drafts = std::move(reading.drafts);
    return passes;
  }

  static bool is_given(LeadInHand const& in_hand, Draft const& draft) {
    return std::any_of(in_hand.kept.begin(), in_hand.kept.end(), [&](Statement const& statement) {
      return draft.begin < statement.text_begin + statement.text.size() &&
             draft.end > statement.text_begin;
    });
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
    if (!draft.backwards && !draft.unitless) return;
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
      for (auto& draft : drafts_of(leads_[i])) {
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
                                                    std::size_t self) {
    std::vector<std::string> characters;
    for (auto i = first; i < last; ++i) {
      if (i == self) continue;
      for (auto const& draft : drafts_of(leads_[i])) {
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

  void write_statements() {
    in_parts(texts_.size(), texts_worth_a_thread, [this](std::size_t begin, std::size_t end) {
      for (auto i = begin; i < end; ++i) {
        auto last = no_lead;  // of those that share: it takes the drafts
        for (auto at = texts_[i].first; at != no_lead; at = leads_[at].same) {
          if (leads_[at].shared != i) continue;
          if (last != no_lead) write(leads_[last], texts_[i].drafts, false);
          last = at;
        }
        if (last != no_lead) write(leads_[last], texts_[i].drafts, true);
        texts_[i].drafts = {};
      }
    });
    in_parts(leads_.size(), texts_worth_a_thread, [this](std::size_t begin, std::size_t end) {
      for (auto i = begin; i < end; ++i) {
        if (leads_[i].shared == no_lead) write(leads_[i], leads_[i].own, true);
      }
    });
  }

  static void write(LeadInHand& in_hand, std::vector<Draft>& drafts, bool takes_them) {
    auto const taken = [&](auto& value) { return takes_them ? std::move(value) : value; };
    auto& lead = *in_hand.lead;
    auto& statements = lead.statements;
    statements.reserve(drafts.size() + in_hand.kept.size());
    for (auto& draft : drafts) {
      auto& statement = statements.emplace_back();
      statement.text = lead.text.substr(draft.begin, draft.end - draft.begin);
      statement.text_begin = draft.begin;
      statement.place = place_in_text(lead, draft.begin, draft.end - draft.begin);
      statement.strength = draft.strength;
      statement.any_of.reserve(draft.any_of.size());
      for (auto& atom : draft.any_of) statement.any_of.push_back(taken(atom.atom));
      statement.except = taken(draft.except);
      statement.exception_words = taken(draft.exception_words);
      statement.hedge = taken(draft.hedge);
      statement.limits = taken(draft.limits);
      statement.origin = draft.origin;
      statement.pieces = taken(draft.pieces);
    }
    for (auto& statement : in_hand.kept) statements.push_back(std::move(statement));
    sort_stably(statements,
                [](Statement const& a, Statement const& b) { return a.text_begin < b.text_begin; });
  }

  std::span<Edition* const> editions_;
  reading::LexiconIndex index_;
  reading::Genera genera_;
  reading::ReadingRules rules_;
  std::vector<LeadInHand> leads_;
  std::vector<LeadWords> texts_;  // each once
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
