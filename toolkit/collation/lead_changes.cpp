#include "keydrift/collation/lead_changes.hpp"

#include <algorithm>
#include <string>

#include "keydrift/characters/reading.hpp"
#include "keydrift/collation/sayings.hpp"

namespace keydrift::collating {
namespace {

template <class T>
bool same_in_any_order(std::vector<T> const& a, std::vector<T> const& b) {
  return a.size() == b.size() && std::is_permutation(a.begin(), a.end(), b.begin());
}

std::size_t shared_characters(Statement const& a, Statement const& b) {
  std::size_t count = 0;
  for (auto const& x : a.any_of) {
    count += std::any_of(b.any_of.begin(), b.any_of.end(),
                         [&](Atom const& y) { return x.character == y.character; })
                 ? 1U
                 : 0U;
  }
  return count;
}

// An opaque statement tells what it speaks of by nothing but its words, which are its state.
bool is_opaque(Statement const& s) {
  return !s.any_of.empty() && std::all_of(s.any_of.begin(), s.any_of.end(), [](Atom const& atom) {
    return atom.character.starts_with('~') && !atom.states.empty();
  });
}

using WordNumbers = ShortList<std::uint64_t, 12>;

WordNumbers words_of(Statement const& statement) {
  WordNumbers words;
  for (auto const& atom : statement.any_of) {
    for (auto const& state : atom.states) add_words(state, words);
  }
  std::sort(words.begin(), words.end());
  return words;
}

bool share_a_value(Statement const& a, Statement const& b) {
  return std::any_of(a.any_of.begin(), a.any_of.end(), [&](Atom const& x) {
    return std::any_of(b.any_of.begin(), b.any_of.end(), [&](Atom const& y) {
      return x.character == y.character && x.negated == y.negated &&
             std::any_of(x.states.begin(), x.states.end(), [&](std::string const& state) {
               return std::binary_search(y.states.begin(), y.states.end(), state);
             });
    });
  });
}

WordNumbers printed_words_of(Statement const& statement) {
  WordNumbers words;
  add_words(words_without_marks(statement.text), words);
  std::sort(words.begin(), words.end());
  return words;
}

// Of several statements on one character those belong together that share a state or words.
unsigned closeness(Statement const& a, Statement const& b) {
  auto const words = overlap_of_words(numbers(printed_words_of(a)), numbers(printed_words_of(b)));
  return (share_a_value(a, b) ? 12U : 0U) + static_cast<unsigned>(words / (whole / 12));
}

// How strongly two statements of paired leads ask to be paired; 0: not at all.
unsigned likeness(Statement const& a, Statement const& b) {
  unsigned score = 0;
  if (!a.any_of.empty() && same_atoms(a.any_of, b.any_of)) {
    score = 160;
  } else if (auto const shared = shared_characters(a, b); shared > 0) {
    score = shared == std::max(a.any_of.size(), b.any_of.size()) ? 120 : 80;
    score += closeness(a, b);
  } else if (is_opaque(a) && is_opaque(b)) {
    auto const words = overlap_of_words(numbers(words_of(a)), numbers(words_of(b)));
    if (words >= whole / 2) score = 20 + static_cast<unsigned>(words / (whole / 40));
  }
  if (score == 0) return 0;
  if (same_in_any_order(a.limits, b.limits)) score += 8;
  if (a.strength == b.strength) score += 4;
  if (a.except == b.except) score += 2;
  if (a.text == b.text) score += 1;
  return score;
}

bool decides(Statement const& statement) { return statement.strength != Strength::noted; }

bool same_words(std::string const& a, std::string const& b) {
  return a == b || words_without_marks(a) == words_without_marks(b);
}

bool same_words(std::vector<std::string> const& a, std::vector<std::string> const& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](std::string const& x, std::string const& y) { return same_words(x, y); });
}

}  // namespace

std::vector<std::string> characters_of(Statement const& statement) {
  std::vector<std::string> characters;
  for (auto const& atom : statement.any_of) {
    if (std::find(characters.begin(), characters.end(), atom.character) == characters.end()) {
      characters.push_back(atom.character);
    }
  }
  if (characters.empty()) characters.push_back("~" + normalised_words(statement.text));
  return characters;
}

bool same_atoms(std::vector<Atom> const& a, std::vector<Atom> const& b) {
  return same_in_any_order(a, b);
}

bool same_statement(Statement const& a, Statement const& b, Exceptions const& exceptions) {
  return a.strength == b.strength && same_atoms(a.any_of, b.any_of) &&
         same_in_any_order(a.limits, b.limits) &&
         (a.except == b.except ||
          (exceptions.not_covered(Of::old_edition, a.except, b.except).empty() &&
           exceptions.not_covered(Of::new_edition, b.except, a.except).empty()));
}

LeadChange compare_leads(Lead const& old_lead, Lead const& new_lead, Exceptions const& exceptions) {
  LeadChange change;
  change.reworded = !same_words(old_lead.text, new_lead.text) ||
                    !same_words(old_lead.notes, new_lead.notes) ||
                    !same_words(old_lead.taxon_remark, new_lead.taxon_remark);

  auto const& olds = old_lead.statements;
  auto const& news = new_lead.statements;
  struct Cell {
    unsigned score;
    std::uint32_t i;
    std::uint32_t j;
  };
  std::vector<Cell> cells;
  for (std::uint32_t i = 0; i < olds.size(); ++i) {
    for (std::uint32_t j = 0; j < news.size(); ++j) {
      if (auto const score = likeness(olds[i], news[j]); score > 0) cells.push_back({score, i, j});
    }
  }
  std::sort(cells.begin(), cells.end(), [](Cell const& a, Cell const& b) {
    if (a.score != b.score) return a.score > b.score;
    if (a.i + a.j != b.i + b.j) return a.i + a.j < b.i + b.j;
    return std::max(a.i, a.j) < std::max(b.i, b.j);
  });
  std::vector<std::uint32_t> old_of_new(news.size(), none);
  std::vector<char> used(olds.size(), 0);
  for (auto const& cell : cells) {
    if (used[cell.i] != 0 || old_of_new[cell.j] != none) continue;
    used[cell.i] = 1;
    old_of_new[cell.j] = cell.i;
  }
  for (std::uint32_t j = 0; j < news.size(); ++j) {
    StatementPair pair{.old_statement = std::nullopt, .new_statement = j};
    if (old_of_new[j] != none) {
      auto const& old_statement = olds[old_of_new[j]];
      pair.old_statement = old_of_new[j];
      pair.same = same_statement(old_statement, news[j], exceptions);
      change.restated =
          change.restated || (!pair.same && (decides(old_statement) || decides(news[j])));
    } else {
      change.restated = change.restated || decides(news[j]);
    }
    change.statements.push_back(pair);
  }
  for (std::uint32_t i = 0; i < olds.size(); ++i) {
    if (used[i] != 0) continue;
    change.restated = change.restated || decides(olds[i]);
    change.statements.push_back({.old_statement = i, .new_statement = std::nullopt});
  }
  return change;
}

}  // namespace keydrift::collating
