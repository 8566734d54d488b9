#include "keydrift/collation/sayings.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <string>
#include <string_view>

#include "keydrift/characters/reading.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::collating {
namespace {

std::uint64_t value_number(double value) {
  return mix(std::bit_cast<std::uint64_t>(value == 0.0 ? 0.0 : value));  // -0 is 0
}

std::uint64_t value_number(Interval const& interval) {
  return mix(value_number(interval.low) + 3 * value_number(interval.high) +
             (interval.low_open ? 1U : 0U) + (interval.high_open ? 2U : 0U));
}

void read_atom(Atom const& atom, SaidAtom& said) {
  said.character = text_number(atom.character);
  // A number read without a lexicon has a character of its own and no words to go by.
  said.opaque = atom.character.starts_with('~') && !atom.states.empty();
  said.negated = atom.negated;
  std::uint64_t predicate = said.character + (atom.negated ? 1U : 0U);
  for (auto const& state : atom.states) {
    said.states.push_back(text_number(state));
    predicate += mix(said.states.back());
    if (said.opaque) add_words(state, said.words);
  }
  std::sort(said.states.begin(), said.states.end());
  std::sort(said.words.begin(), said.words.end());
  for (auto const word : said.words) said.word_bits |= std::uint64_t{1} << word % 64;
  predicate += 5 * text_number(atom.unit);
  for (auto const& range : atom.ranges) {
    said.ranges.push_back(range.extreme);
    predicate += mix(value_number(range.extreme) + 7 * value_number(range.usual) +
                     (range.approximate ? 1U : 0U));
  }
  said.predicate = mix(predicate);
}

std::size_t common_count(Numbers a, Numbers b) {
  std::size_t count = 0;
  auto i = a.begin();
  auto j = b.begin();
  while (i != a.end() && j != b.end()) {
    if (*i == *j) {
      ++count;
      ++i;
      ++j;
    } else if (*i < *j) {
      ++i;
    } else {
      ++j;
    }
  }
  return count;
}

Grade share(std::uint64_t part, std::uint64_t of) {
  return static_cast<Grade>(std::uint64_t{whole} * part / of);
}

bool intervals_meet(Interval const& a, Interval const& b) {
  if (a.high < b.low || b.high < a.low) return false;
  if (a.high == b.low && (a.high_open || b.low_open)) return false;
  if (b.high == a.low && (b.high_open || a.low_open)) return false;
  return true;
}

// Of one character.
Grade agreement_of_values(SaidAtom const& a, SaidAtom const& b) {
  if (a.predicate == b.predicate) return whole;
  if (a.negated != b.negated) return 0;
  if (!a.states.empty() && !b.states.empty()) {
    auto const common = common_count(numbers(a.states), numbers(b.states));
    return share(common, a.states.size() + b.states.size() - common);
  }
  for (auto const& x : a.ranges) {
    for (auto const& y : b.ranges) {
      // A limit moved: nearer to the same than to another thing, however far it moved.
      if (intervals_meet(x, y)) return whole / 2;
    }
  }
  return 0;
}

// Surely: most pairs of statements that are compared have nothing in common.
bool share_no_word(SaidAtom const& a, SaidAtom const& b) {
  return (a.word_bits & b.word_bits) == 0 && (a.word_bits | b.word_bits) != 0;
}

Grade agreement(SaidAtom const& a, SaidAtom const& b) {
  if (a.predicate == b.predicate) return whole;
  bool const same_character = a.character == b.character;
  if (a.opaque && b.opaque) {
    // Of the opaque character's states one is ours and the others its contrasts: same words
    // differently contrasted are nearly the same, the contrast of the same words is not.
    auto const words =
        share_no_word(a, b) ? Grade{0} : overlap_of_words(numbers(a.words), numbers(b.words));
    return same_character ? (whole / 4 + words / 4 * 3) : words;
  }
  return same_character ? whole / 2 + agreement_of_values(a, b) / 2 : Grade{0};
}

using Pairs = ShortList<SaidPair, 16>;

// Things that agree at all, matched best first.
template <class List>
Pairs match_best_first(List const& a, List const& b) {
  Pairs cells;
  cells.reserve(a.size() * b.size());
  for (std::uint32_t i = 0; i < a.size(); ++i) {
    for (std::uint32_t j = 0; j < b.size(); ++j) {
      auto const grade = agreement(a[i], b[j]);
      if (grade > 0) cells.push_back({i, j, grade});
    }
  }
  if (cells.size() < 2) return cells;
  std::sort(cells.begin(), cells.end(), [](SaidPair const& x, SaidPair const& y) {
    if (x.grade != y.grade) return x.grade > y.grade;
    if (x.a + x.b != y.a + y.b) return x.a + x.b < y.a + y.b;
    return std::min(x.a, x.b) < std::min(y.a, y.b);
  });
  ShortList<char, 16> used_a(a.size(), 0);
  ShortList<char, 16> used_b(b.size(), 0);
  auto const taken = std::remove_if(cells.begin(), cells.end(), [&](SaidPair const& cell) {
    if (used_a[cell.a] != 0 || used_b[cell.b] != 0) return true;
    used_a[cell.a] = used_b[cell.b] = 1;
    return false;
  });
  cells.erase(taken, cells.end());
  return cells;
}

// The sum of the agreements of pairs, over the mean of the two counts.
template <class List>
Grade best_first(List const& a, List const& b) {
  if (a.empty() && b.empty()) return whole;
  if (a.empty() || b.empty()) return 0;
  if (a.size() == 1 && b.size() == 1) return agreement(a.front(), b.front());
  std::uint64_t sum = 0;
  for (auto const& pair : match_best_first(a, b)) sum += pair.grade;
  return static_cast<Grade>(2 * sum / (a.size() + b.size()));
}

}  // namespace

std::string words_without_marks(std::string_view text) {
  if (text.find('{') == std::string_view::npos) return normalised_words(text);
  std::string plain;
  while (!text.empty()) {
    auto const open = text.find('{');
    plain += text.substr(0, open);
    if (open == std::string_view::npos) break;
    auto const close = text.find('}', open);
    if (close == std::string_view::npos) {  // no mark
      plain += text.substr(open);
      break;
    }
    text.remove_prefix(close + 1);
  }
  return normalised_words(plain);
}

Grade overlap_of_words(Numbers a, Numbers b) {
  if (a.empty() && b.empty()) return whole;
  return share(2 * common_count(a, b), a.size() + b.size());
}

SaidLead read_saying(Lead const& lead) {
  SaidLead said;
  auto const text = words_without_marks(lead.text);
  said.text = text_number(text);
  add_words(text, said.words);
  std::sort(said.words.begin(), said.words.end());
  said.statements.reserve(lead.statements.size());
  for (auto const& statement : lead.statements) {
    if (statement.any_of.empty()) continue;  // a note without a predicate: words alone
    auto& said_statement = said.statements.emplace_back();
    said_statement.atoms.resize(statement.any_of.size());
    for (std::size_t i = 0; i < statement.any_of.size(); ++i) {
      read_atom(statement.any_of[i], said_statement.atoms[i]);
      said_statement.predicate += mix(said_statement.atoms[i].predicate);
    }
    said_statement.predicate = mix(said_statement.predicate);
    said.predicate +=
        mix(said_statement.predicate + static_cast<std::uint64_t>(statement.strength));
  }
  return said;
}

SaidLead both_said(SaidLead first, SaidLead const& second) {
  first.statements.insert(first.statements.end(), second.statements.begin(),
                          second.statements.end());
  first.words.insert(first.words.end(), second.words.begin(), second.words.end());
  std::sort(first.words.begin(), first.words.end());
  first.text = mix(first.text ^ mix(second.text));
  first.predicate += second.predicate;
  return first;
}

std::vector<SaidLead> read_sayings(Edition const& edition) {
  std::vector<Lead const*> leads;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) leads.push_back(&lead);
  }
  std::vector<SaidLead> sayings(leads.size());
  constexpr std::size_t worth_a_thread = 1000;
  in_parts(leads.size(), worth_a_thread, [&](std::size_t begin, std::size_t end) {
    for (auto row = begin; row < end; ++row) sayings[row] = read_saying(*leads[row]);
  });
  return sayings;
}

Grade agreement(SaidStatement const& a, SaidStatement const& b) {
  if (a.predicate == b.predicate) return whole;
  return best_first(a.atoms, b.atoms);
}

std::vector<SaidPair> matched_statements(SaidLead const& a, SaidLead const& b) {
  auto const pairs = match_best_first(a.statements, b.statements);
  return {pairs.begin(), pairs.end()};
}

Grade agreement_of_statements(SaidLead const& a, SaidLead const& b) {
  if (a.statements.empty() || b.statements.empty()) {
    return a.text == b.text ? whole : overlap_of_words(numbers(a.words), numbers(b.words));
  }
  return a.predicate == b.predicate ? whole : best_first(a.statements, b.statements);
}

Grade agreement(SaidLead const& a, SaidLead const& b) {
  return agreement(a, b, agreement_of_statements(a, b));
}

Grade agreement(SaidLead const& a, SaidLead const& b, Grade of_statements) {
  // Where there are no statements the words alone are what is said.
  if (a.statements.empty() || b.statements.empty()) return of_statements;
  auto const words =
      a.text == b.text ? whole : overlap_of_words(numbers(a.words), numbers(b.words));
  bool const same_in_other_words = of_statements == whole && a.statements.size() > 1;
  return same_in_other_words ? whole / 8 * 7 + words / 8 : of_statements / 4 * 3 + words / 4;
}

}  // namespace keydrift::collating
