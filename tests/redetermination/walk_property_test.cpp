// The walk against a person's plain keying, completion by completion, on random small keys.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "keydrift/redetermination/evidence_path.hpp"
#include "statements.hpp"
#include "two_editions.hpp"

namespace keydrift::test {
namespace {

constexpr int kCharacters = 4;

std::string character(int i) { return "c" + std::to_string(i); }

// Characters c0, c1: states a b c; c2: numbers cut at 2 and 5; c3: applicable only if c0 is a.
// For odd seeds nothing tells the states b and c of c1 apart: a specimen may show both.
bool together(unsigned seed) { return seed % 2 == 1; }

Lexicon small_lexicon(unsigned seed) {
  Lexicon lexicon;
  for (int i = 0; i < kCharacters; ++i) {
    LexiconCharacter one;
    one.id = character(i);
    if (i == 2) {
      one.kind = CharacterKind::count;
      one.unit = "1";
    } else {
      one.states = {{"a", {}}, {"b", {}}, {"c", {}}};
    }
    if (i == 1 && together(seed)) one.states[1].not_told_from = {"c"};
    if (i == 3) one.applicable_if = Applicability{.character = "c0", .states = {"a"}};
    lexicon.characters.push_back(one);
  }
  return lexicon;
}

// A value of each character for one imagined specimen; "b c" for both; "other" and "n/a" for the
// hidden cells.
using Completion = std::map<std::string, std::string>;

std::vector<Completion> all_completions(unsigned seed) {
  std::vector<Completion> all;
  for (auto const* c0 : {"a", "b", "c", "other"}) {
    for (auto const* c1 : {"a", "b", "c", "other", "b c"}) {
      if (std::string{c1} == "b c" && !together(seed)) continue;
      for (auto const* c2 : {"1", "2", "3", "5", "6"}) {
        for (auto const* c3 : {"a", "b", "c", "other", "n/a"}) {
          bool const applicable = std::string{c0} == "a";
          if (applicable == (std::string{c3} == "n/a")) continue;
          all.push_back({{"c0", c0}, {"c1", c1}, {"c2", c2}, {"c3", c3}});
        }
      }
    }
  }
  return all;
}

bool shows(std::string const& value, std::string const& state) {
  return (' ' + value + ' ').find(' ' + state + ' ') != std::string::npos;
}

bool holds(Statement const& statement, Completion const& specimen) {
  for (auto const& atom : statement.any_of) {
    auto const& value = specimen.at(atom.character);
    if (value == "n/a") continue;
    if (!atom.ranges.empty()) {
      double const number = std::stod(value);
      auto const& in = atom.ranges.front().extreme;
      bool const inside = (in.low_open ? number > in.low : number >= in.low) &&
                          (in.high_open ? number < in.high : number <= in.high);
      if (inside) return true;
      continue;
    }
    bool const listed = std::any_of(atom.states.begin(), atom.states.end(),
                                    [&](std::string const& state) { return shows(value, state); });
    if (listed != atom.negated) return true;
  }
  return false;
}

bool names_group(Statement const& statement, std::string const& taxon) {
  return std::any_of(statement.except.begin(), statement.except.end(), [&](std::string const& g) {
    return taxon == g || taxon.substr(0, taxon.find(' ')) == g;
  });
}

// Strict keying of one complete specimen, as 2-meaning tells it, by plain recursion.
void key_strictly(Edition const& edition, CoupletId at, Completion const& specimen,
                  std::vector<Statement const*> excused, std::set<std::string>& names) {
  for (auto const& lead : edition[at].leads) {
    bool refuted = false;
    auto with = excused;
    for (auto const& statement : lead.statements) {
      if (statement.strength == Strength::hedged || holds(statement, specimen)) continue;
      if (statement.strength == Strength::excepted) {
        with.push_back(&statement);
      } else {
        refuted = true;
      }
    }
    if (refuted) continue;
    if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
      key_strictly(edition, to->couplet, specimen, with, names);
    } else if (auto const* ends = std::get_if<ToTaxa>(&lead.destination)) {
      for (auto const taxon : ends->taxa) {
        auto const& name = edition[taxon].name;
        bool const allowed = std::all_of(with.begin(), with.end(), [&](Statement const* statement) {
          return names_group(*statement, name);
        });
        if (allowed) names.insert(name);
      }
    }
  }
}

class RandomKey {
 public:
  explicit RandomKey(unsigned seed) : random_{seed} {}

  int below(int limit) { return std::uniform_int_distribution<int>{0, limit - 1}(random_); }

  Statement statement() {
    int const which = below(kCharacters);
    Statement one;
    if (which == 2) {
      one = range(character(which),
                  below(2) == 0
                      ? Interval{.high = below(2) == 0 ? 2.0 : 5.0, .high_open = below(2) == 0}
                      : Interval{.low = below(2) == 0 ? 2.0 : 5.0},
                  "1");
    } else {
      std::vector<std::string> allowed{std::string(1, static_cast<char>('a' + below(3)))};
      if (below(4) == 0 && allowed.front() != "c") allowed.emplace_back("c");
      one = states(character(which), allowed);
      one.any_of.front().negated = below(6) == 0;
    }
    if (below(6) == 0) {  // an either-or over another character
      auto second = states(character(which == 1 ? 0 : 1), {"b"});
      one.any_of.push_back(second.any_of.front());
    }
    int const strength = below(8);
    if (strength == 0) one.strength = Strength::hedged;
    if (strength == 1) {
      one.strength = Strength::excepted;
      one.except = {below(2) == 0 ? "Aus" : "Bus bus"};
    }
    return one;
  }

  Edition edition(char const* name) {
    int const couplets = 2 + below(4);
    std::vector<CoupletSketch> sketch;
    static constexpr char const* kTaxa[] = {"Aus albus", "Aus bus", "Bus bus", "Cus cus",
                                            "Dus dus"};
    for (int c = 0; c < couplets; ++c) {
      CoupletSketch couplet{std::to_string(c + 1), {}};
      int const leads = below(5) == 0 ? 3 : 2;
      for (int l = 0; l < leads; ++l) {
        bool const on = c + 1 < couplets && (l == 0 || below(3) == 0);
        couplet.leads.push_back(
            {"text", on ? std::to_string(c + 2 + below(couplets - c - 1)) : kTaxa[below(5)]});
      }
      sketch.push_back(couplet);
    }
    auto made = make_edition(name, sketch);
    for (auto& couplet : made.couplets) {
      for (auto& lead : couplet.leads) {
        for (int s = 1 + below(2); s > 0; --s) lead.statements.push_back(statement());
      }
    }
    return made;
  }

  // Some characters recorded: the completion's values with the rest left out.
  TwoEditions::Record record(Completion const& from, int known) {
    TwoEditions::Record values;
    for (auto const& [id, value] : from) {
      if (value == "other" || below(4) >= known) continue;
      // Of what is seen together, one is recorded.
      values.emplace_back(id, value == "b c" ? (below(2) == 0 ? "b" : "c") : value);
    }
    return values;
  }

 private:
  std::mt19937 random_;
};

bool agrees(Completion const& completion, TwoEditions::Record const& record) {
  return std::all_of(record.begin(), record.end(), [&](auto const& known) {
    return shows(completion.at(known.first), known.second);
  });
}

std::set<std::string> names_of(Edition const& edition, Walk const& ways) {
  std::set<std::string> names;
  for (auto const& leaf : ways.leaves) names.insert(edition[leaf.taxon].name);
  return names;
}

class AgainstPlainKeying : public testing::TestWithParam<unsigned> {};

TEST_P(AgainstPlainKeying, WalksEqualTheUnionOverAllCompletions) {
  RandomKey random{GetParam()};
  TwoEditions const two{random.edition("old"), random.edition("new"), small_lexicon(GetParam())};
  auto const completions = all_completions(GetParam());
  for (int round = 0; round < 12; ++round) {
    auto const& seed =
        completions[static_cast<std::size_t>(random.below(static_cast<int>(completions.size())))];
    auto const record = random.record(seed, round % 5);
    std::set<std::string> expected_names;
    std::set<std::pair<std::string, std::string>> expected_pairs;
    for (auto const& completion : completions) {
      if (!agrees(completion, record)) continue;
      std::set<std::string> old_names;
      std::set<std::string> new_names;
      key_strictly(two.old_edition, CoupletId{0}, completion, {}, old_names);
      key_strictly(two.new_edition, CoupletId{0}, completion, {}, new_names);
      expected_names.insert(new_names.begin(), new_names.end());
      for (auto const& old_name : old_names) {
        for (auto const& new_name : new_names) expected_pairs.insert({old_name, new_name});
      }
    }
    EXPECT_EQ(names_of(two.new_edition, walk(two.new_key, two.record(record), Reading::strict)),
              expected_names)
        << "seed " << GetParam() << ", round " << round;
    if (record.empty()) continue;
    auto const verdict = two.verdict("", record);
    if (verdict.outcome == Outcome::doubtful || verdict.pairs.empty()) continue;
    std::set<std::pair<std::string, std::string>> pairs;
    for (auto const& pair : verdict.pairs) {
      if (pair.old_taxon && pair.new_taxon) {
        pairs.insert(
            {two.old_edition[*pair.old_taxon].name, two.new_edition[*pair.new_taxon].name});
      }
    }
    if (!pairs.empty() || verdict.outcome != Outcome::stranded) {
      EXPECT_EQ(pairs, expected_pairs) << "seed " << GetParam() << ", round " << round;
    }
  }
}

TEST_P(AgainstPlainKeying, MoreEvidenceNeverWidensTheResult) {
  RandomKey random{GetParam()};
  TwoEditions const two{random.edition("old"), random.edition("new"), small_lexicon(GetParam())};
  auto const completions = all_completions(GetParam());
  for (int round = 0; round < 12; ++round) {
    auto const& seed =
        completions[static_cast<std::size_t>(random.below(static_cast<int>(completions.size())))];
    auto const more = random.record(seed, 3);
    auto less = more;
    if (!less.empty()) less.pop_back();
    for (auto const reading : {Reading::strict, Reading::primary_first, Reading::best_overall}) {
      auto const narrow = names_of(two.new_edition, walk(two.new_key, two.record(more), reading));
      auto const wide = names_of(two.new_edition, walk(two.new_key, two.record(less), reading));
      EXPECT_TRUE(std::includes(wide.begin(), wide.end(), narrow.begin(), narrow.end()))
          << "seed " << GetParam() << ", round " << round << ", " << to_word(reading);
    }
  }
}

TEST_P(AgainstPlainKeying, AnsweringTheQuestionGivesWhatItPromised) {
  RandomKey random{GetParam()};
  TwoEditions const two{random.edition("old"), random.edition("new"), small_lexicon(GetParam())};
  for (auto const& taxon : two.old_edition.taxa) {
    auto const verdict = two.verdict(taxon.name, {});
    if (verdict.questions.empty()) continue;
    auto const& question = verdict.questions.front();
    for (auto const& answer : question.answers) {
      if (answer.words.find(" ") != std::string::npos) continue;  // single recordable states only
      auto const then = two.verdict(taxon.name, {{question.character, answer.words}});
      std::vector<TaxonId> taxa;
      for (auto const& terminal : then.terminals) taxa.push_back(terminal.taxon);
      EXPECT_EQ(taxa, answer.new_taxa) << "seed " << GetParam() << ", " << taxon.name << ", "
                                       << question.character << " " << answer.words;
      EXPECT_EQ(then.outcome, answer.outcome)
          << "seed " << GetParam() << ", " << taxon.name << ", " << answer.words;
    }
  }
}

// What spares judging two walks for each way that is found.
TEST(SureRoutes, AreTakenUnderEveryReadingAndNoOtherIs) {
  std::size_t sure = 0;
  std::size_t unsure = 0;
  for (unsigned seed = 1; seed <= 150; ++seed) {
    RandomKey random{seed};
    TwoEditions const two{random.edition("old"), random.edition("new"), small_lexicon(seed)};
    auto const completions = all_completions(seed);
    for (int round = 0; round < 6; ++round) {
      auto const at = random.below(static_cast<int>(completions.size()));
      auto const record = random.record(completions[static_cast<std::size_t>(at)], round);
      for (auto const reading : {Reading::strict, Reading::primary_first, Reading::best_overall}) {
        for (auto const& leaf : walk(two.new_key, two.record(record), reading).leaves) {
          // A vote does not settle what it assumes.
          auto box = leaf.box;
          if (!two.new_key.space->settle(box)) continue;
          if (!surely_takes(two.new_key, box, leaf.route)) {
            ++unsure;
            continue;
          }
          ++sure;
          for (auto const other :
               {Reading::strict, Reading::primary_first, Reading::best_overall}) {
            auto const ways = walk(two.new_key, box, other);
            // An either-or parts the completions, but not their ways.
            ASSERT_FALSE(ways.leaves.empty()) << "seed " << seed << ", " << to_word(other);
            for (auto const& way : ways.leaves) {
              EXPECT_EQ(way.route, leaf.route) << "seed " << seed << ", " << to_word(other);
              EXPECT_EQ(way.taxon, leaf.taxon) << "seed " << seed << ", " << to_word(other);
            }
          }
        }
      }
    }
  }
  EXPECT_GT(sure, 200U);
  EXPECT_GT(unsure, 1000U);
}

// Everything that reports tell of a verdict, in one line.
std::string told(Verdict const& verdict) {
  std::string text = to_word(verdict.outcome);
  auto const add = [&text](std::string const& more) { text += "/" + more; };
  for (auto const one : verdict.by_reading) add(to_word(one));
  auto const add_lead = [&](LeadId lead) {
    add(std::to_string(lead.couplet.index) + "." + std::to_string(lead.ordinal));
  };
  for (auto const& terminal : verdict.terminals) {
    add(std::to_string(terminal.taxon.index) + to_word(terminal.arrival));
    for (auto const lead : terminal.route) add_lead(lead);
    for (auto const& id : terminal.rests_on) add(id);
  }
  for (auto const& fit : verdict.partly) {
    add_lead(fit.lead);
    for (auto const one : fit.holds) add(std::to_string(one));
    for (auto const one : fit.fails) add("not " + std::to_string(one));
  }
  if (verdict.strands_at) add("at " + std::to_string(verdict.strands_at->index));
  if (verdict.parting) {
    for (auto const& one : verdict.parting->deciding) {
      add_lead(one.lead);
      add(one.known);
    }
  }
  for (auto const& question : verdict.questions) add(question.character);
  return text;
}

// Whatever is recorded, and be it nothing: what the path leaves out does not tell.
TEST_P(AgainstPlainKeying, RecordsOfOnePathShareTheirVerdict) {
  RandomKey random{GetParam()};
  TwoEditions const two{random.edition("old"), random.edition("new"), small_lexicon(GetParam())};
  auto const completions = all_completions(GetParam());
  EvidencePath path{two.old_key, two.new_key};
  std::vector<std::string> names{""};
  for (auto const& taxon : two.old_edition.taxa) names.push_back(taxon.name);
  std::map<std::string, std::string> verdicts;
  std::map<std::string, std::uint32_t> numbers;
  for (int round = 0; round < 60; ++round) {
    auto const& seed =
        completions[static_cast<std::size_t>(random.below(static_cast<int>(completions.size())))];
    auto const record = random.record(seed, 4 - round % 4);
    auto box = two.record(record);
    if (record.empty() || !two.space.settle(box)) continue;
    std::string cells;
    path.append(box, cells);
    auto const [numbered, first] = numbers.emplace(cells, path.number_of(box));
    EXPECT_EQ(numbered->second, path.number_of(box)) << "seed " << GetParam();
    if (first) {
      auto const same = std::count_if(numbers.begin(), numbers.end(), [&](auto const& other) {
        return other.second == numbered->second;
      });
      EXPECT_EQ(same, 1) << "seed " << GetParam();
    }
    for (auto const& name : names) {
      Determination determination;
      if (!name.empty()) {
        determination = {.named = true,
                         .name = name,
                         .in_old = two.old_names.place(name),
                         .in_new = two.new_names.place(name)};
      }
      auto const now = told(two.judge.judge(determination, box, true, Reading::strict));
      auto const [at, fresh] = verdicts.emplace(name + "\n" + cells, now);
      if (fresh) continue;
      EXPECT_EQ(at->second, now) << "seed " << GetParam() << ", " << name;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, AgainstPlainKeying, testing::Range(1U, 151U));

}  // namespace
}  // namespace keydrift::test
