#include "keydrift/characters/reading/number_kinds.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "keydrift/characters/reading/contrasting.hpp"

namespace keydrift::reading {
namespace {

void take_for_words(Draft& draft) {
  DraftAtom atom;
  atom.opaque = true;
  atom.atom.states = {draft.plain};
  draft.any_of = {std::move(atom)};
  draft.origin = Origin::opaque;
}

bool might_be_words(Draft const& draft) {
  return draft.origin == Origin::number && draft.any_of.size() == 1 && !draft.plain.empty() &&
         draft.any_of.front().atom.character.starts_with("~n:");
}

bool meet(Interval const& a, Interval const& b) {
  auto const below = [](Interval const& x, Interval const& y) {
    return x.high < y.low || (x.high == y.low && (x.high_open || y.low_open));
  };
  return !below(a, b) && !below(b, a);
}

bool exclude_each_other(Draft const& a, Draft const& b) {
  auto const& x = a.any_of.front().atom;
  auto const& y = b.any_of.front().atom;
  if (x.character != y.character || x.negated || y.negated || a.limits != b.limits) return false;
  return std::none_of(x.ranges.begin(), x.ranges.end(), [&](NumericRange const& one) {
    return std::any_of(y.ranges.begin(), y.ranges.end(),
                       [&](NumericRange const& other) { return meet(one.extreme, other.extreme); });
  });
}

}  // namespace

void take_doubtful_numbers_for_words(std::vector<Draft>& drafts) {
  std::vector<Draft*> numbers;
  for (auto& draft : drafts) {
    if (!might_be_words(draft)) continue;
    auto const& name = draft.any_of.front().atom.character;
    if (name == "~n:|1" || name == "~n:|") {
      take_for_words(draft);
    } else {
      numbers.push_back(&draft);
    }
  }
  // Lists without end are no prose: see kMostStatements.
  if (numbers.size() < 2 || numbers.size() > kMostStatements) return;
  std::vector<Draft*> doubtful;
  for (auto* one : numbers) {
    bool const excluded = std::any_of(numbers.begin(), numbers.end(), [&](Draft const* other) {
      return other != one && exclude_each_other(*one, *other);
    });
    if (excluded) doubtful.push_back(one);
  }
  for (auto* draft : doubtful) take_for_words(*draft);
}

void measure_what_has_decimals(AllDrafts const& all) {
  auto const each_number = [&](auto const& use) {
    for (auto* drafts : all.each_once) {
      for (auto& draft : *drafts) {
        for (auto& atom : draft.any_of) {
          if (atom.atom.character.starts_with("~n:")) use(atom.atom);
        }
      }
    }
  };
  std::unordered_set<std::string> measured;
  each_number([&](Atom const& atom) {
    if (atom.character.ends_with('|')) measured.insert(atom.character);
  });
  if (measured.empty()) return;
  // "0.05–0.3. 6–8.": where a lead has both, they are of two things.
  for (auto const* drafts : all.each_once) {
    for (auto const& draft : *drafts) {
      for (auto const& atom : draft.any_of) {
        auto const& name = atom.atom.character;
        if (!name.starts_with("~n:") || !name.ends_with("|1")) continue;
        auto const other = std::string_view{name}.substr(0, name.size() - 1);
        bool const both = std::any_of(drafts->begin(), drafts->end(), [&](Draft const& beside) {
          return std::any_of(
              beside.any_of.begin(), beside.any_of.end(),
              [&](DraftAtom const& number) { return number.atom.character == other; });
        });
        if (both) measured.erase(std::string{other});
      }
    }
  }
  each_number([&](Atom& atom) {
    if (!atom.character.ends_with("|1")) return;
    auto name = atom.character.substr(0, atom.character.size() - 1);
    if (!measured.contains(name)) return;
    atom.character = std::move(name);
    atom.unit.clear();
  });
}

void turn_lone_counts_into_words(AllDrafts const& all) {
  auto const& couplets = all.couplets;
  // Counts and ratios that contrast with their like somewhere stay numbers everywhere.
  WordsOfNumbers lone;
  std::unordered_set<std::string> contrasted;
  for (auto const& couplet : couplets) {
    std::set<std::string> before;
    for (auto const* lead : couplet) {
      std::set<std::string> here;
      for (auto const& draft : *lead) {
        for (auto const& atom : draft.any_of) {
          auto const& id = atom.atom.character;
          if (id.starts_with("~n:") && (id.ends_with("|1") || id.ends_with("|"))) here.insert(id);
        }
      }
      for (auto const& id : here) {
        if (before.contains(id)) contrasted.insert(id);
        lone.insert(id);
      }
      before.insert(here.begin(), here.end());
    }
  }
  std::erase_if(lone, [&](std::string const& id) { return contrasted.contains(id); });
  if (lone.empty()) return;
  WordsOfNumbers words;
  auto const note = [&](Draft const& draft) {
    if (!draft.any_of.front().opaque) words.insert(draft.any_of.front().atom.character);
  };
  for (auto const& couplet : couplets) {
    for (std::size_t i = 0; i < couplet.size(); ++i) {
      for (auto j = i + 1; j < end_of_rivals(couplet.size(), i); ++j) {
        for_contrasts(*couplet[i], *couplet[j], lone, [&](Draft const& a, Draft const& b) {
          note(a);
          note(b);
        });
      }
    }
  }
  for (auto* drafts : all.each_once) {
    for (auto& draft : *drafts) {
      if (draft.any_of.size() != 1 || draft.plain.empty() ||
          !words.contains(draft.any_of.front().atom.character)) {
        continue;
      }
      take_for_words(draft);
    }
  }
}

}  // namespace keydrift::reading
