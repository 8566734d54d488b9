#include "keydrift/characters/reading/tying.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

// A lead with more statements is none that somebody wrote; its statements are compared with
// nothing, so that the cost stays in proportion to the text.
constexpr std::size_t kMostStatements = 200;

bool is_plain_opaque(Draft const& draft) {
  return draft.any_of.size() == 1 && draft.any_of.front().opaque && !draft.anaphora;
}

std::string const& words_of(DraftAtom const& atom) { return atom.atom.states.front(); }

// Numeric characters whose statements might as well be words.
using WordsOfNumbers = std::unordered_set<std::string>;

bool may_contrast(Draft const& draft, WordsOfNumbers const& as_words) {
  if (is_plain_opaque(draft)) return true;
  return draft.any_of.size() == 1 && !draft.plain.empty() &&
         as_words.contains(draft.any_of.front().atom.character);
}

std::string const& words_of(Draft const& draft) {
  return draft.any_of.front().opaque ? words_of(draft.any_of.front()) : draft.plain;
}

bool names_part(Draft const& draft) {
  return std::any_of(draft.stems.begin(), draft.stems.end(),
                     [](std::string const& stem) { return word_info(stem, "").is(kPart); });
}

// Share of the words that two statements have in common.
double overlap(std::vector<std::string> a, std::vector<std::string> b) {
  for (auto* words : {&a, &b}) {
    std::sort(words->begin(), words->end());
    words->erase(std::unique(words->begin(), words->end()), words->end());
  }
  std::vector<std::string> common;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(common));
  auto const all = a.size() + b.size() - common.size();
  return all == 0 ? 0 : static_cast<double>(common.size()) / static_cast<double>(all);
}

struct Pair {
  double score{};
  std::size_t apart{};
  std::size_t place{};
  Index first{};
  Index second{};
};

double likeness(Draft const& a, Draft const& b) {
  if (words_of(a) == words_of(b)) return 10;
  auto const shared = overlap(a.stems, b.stems);
  if (!a.subject.empty() && a.subject == b.subject) return 2 + shared;
  if (shared >= 0.5) return 1 + shared;
  // Where one of them names its subject in a way that is not understood, one word may do.
  bool const told_apart = !a.subject.empty() && !b.subject.empty();
  bool const begin_alike = !a.stems.empty() && !b.stems.empty() && a.stems[0] == b.stems[0];
  return !told_apart && begin_alike ? 0.5 + shared : 0;
}

using WordPair = std::pair<std::string, std::string>;

WordPair in_order(std::string const& a, std::string const& b) {
  return a < b ? WordPair{a, b} : WordPair{b, a};
}

// Calls use(draft of a, draft of b) for the statements of two leads that contrast; each has at most
// one partner.  `as_words`: numeric characters whose statements take part.
template <class Use>
void for_contrasts(std::vector<Draft> const& a, std::vector<Draft> const& b,
                   WordsOfNumbers const& as_words, Use const& use) {
  std::vector<Index> left;
  std::vector<Index> right;
  for (Index i = 0; i < a.size(); ++i) {
    if (may_contrast(a[i], as_words)) left.push_back(i);
  }
  for (Index i = 0; i < b.size(); ++i) {
    if (may_contrast(b[i], as_words)) right.push_back(i);
  }
  if (left.size() > kMostStatements || right.size() > kMostStatements) return;
  std::vector<Pair> pairs;
  for (auto const i : left) {
    for (auto const j : right) {
      auto const score = likeness(a[i], b[j]);
      if (score <= 0) continue;
      pairs.push_back({.score = score,
                       .apart = i > j ? i - j : j - i,
                       .place = std::size_t{i} + j,
                       .first = i,
                       .second = j});
    }
  }
  std::stable_sort(pairs.begin(), pairs.end(), [&](Pair const& x, Pair const& y) {
    if (x.score != y.score) return x.score > y.score;
    if (x.apart != y.apart) return x.apart < y.apart;
    if (x.place != y.place) return x.place < y.place;
    // The same whichever lead comes first.
    return in_order(words_of(a[x.first]), words_of(b[x.second])) <
           in_order(words_of(a[y.first]), words_of(b[y.second]));
  });
  std::set<Index> taken_left;
  std::set<Index> taken_right;
  auto const take = [&](Index i, Index j) {
    taken_left.insert(i);
    taken_right.insert(j);
    use(a[i], b[j]);
  };
  for (auto const& pair : pairs) {
    if (taken_left.contains(pair.first) || taken_right.contains(pair.second)) continue;
    take(pair.first, pair.second);
  }
  // What is left over on both sides in the same position contrasts, unless it speaks of two
  // different parts.
  std::erase_if(left, [&](Index i) { return taken_left.contains(i); });
  std::erase_if(right, [&](Index j) { return taken_right.contains(j); });
  if (left.size() == 1 && right.size() == 1 && left.front() == right.front() &&
      !(names_part(a[left.front()]) && names_part(b[right.front()]))) {
    take(left.front(), right.front());
  }
}

// Components of states; two that meet in one lead are never joined.
class Components {
 public:
  explicit Components(std::size_t size) : parent_(size), leads_(size) {
    for (Index i = 0; i < size; ++i) parent_[i] = i;
  }
  void stands_in(Index state, Index lead) { leads_[state].insert(lead); }

  Index root(Index state) {
    while (parent_[state] != state) {
      parent_[state] = parent_[parent_[state]];
      state = parent_[state];
    }
    return state;
  }

  void join(Index a, Index b) {
    a = root(a);
    b = root(b);
    if (a == b) return;
    if (leads_[a].size() < leads_[b].size()) std::swap(a, b);
    bool const together = std::any_of(leads_[b].begin(), leads_[b].end(),
                                      [&](Index lead) { return leads_[a].contains(lead); });
    if (together) return;
    leads_[a].insert(leads_[b].begin(), leads_[b].end());
    leads_[b].clear();
    parent_[b] = a;
  }

 private:
  std::vector<Index> parent_;
  std::vector<std::unordered_set<Index>> leads_;
};

std::set<std::string_view> words_in(std::string_view text) {
  std::set<std::string_view> words;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find(' ', begin), text.size());
    words.insert(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return words;
}

// "nuts smooth or ridged" takes in the state "nuts smooth" of the same character, and "nuts
// ridged", and of course itself: so a route that says the one and then the other does not
// contradict itself.
std::vector<std::string> alternatives(Index state, std::vector<std::string const*> const& words,
                                      Components& components) {
  auto const& whole = *words[state];
  std::vector<std::string> found{whole};
  auto const said = words_in(whole);
  if (!said.contains("or")) return found;
  auto const first = whole.substr(0, whole.find(' ') + 1);  // the structure, with its blank
  // States are in alphabetical order: those of the same structure stand together.
  auto const less = [](std::string const* a, std::string const& b) { return *a < b; };
  auto const begin = std::lower_bound(words.begin(), words.end(), first, less);
  for (auto at = begin; at != words.end() && (*at)->starts_with(first); ++at) {
    auto const other = static_cast<Index>(at - words.begin());
    if (other == state || components.root(other) != components.root(state)) continue;
    auto const part = words_in(**at);
    if (std::includes(said.begin(), said.end(), part.begin(), part.end())) found.push_back(**at);
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

void tie_opaque(std::vector<CoupletDrafts> const& couplets) {
  // States in alphabetical order, so that nothing hangs on the order of couplets.
  std::map<std::string, Index> states;
  for (auto const& couplet : couplets) {
    for (auto const* lead : couplet) {
      for (auto const& draft : *lead) {
        for (auto const& atom : draft.any_of) {
          if (atom.opaque) states.emplace(words_of(atom), 0);
        }
      }
    }
  }
  std::vector<std::string const*> words;
  for (auto& [state, number] : states) {
    number = static_cast<Index>(words.size());
    words.push_back(&state);
  }
  Components components{words.size()};
  std::map<WordPair, std::size_t> contrasts;
  Index lead_number = 0;
  for (auto const& couplet : couplets) {
    for (std::size_t i = 0; i < couplet.size(); ++i) {
      for (auto const& draft : *couplet[i]) {
        for (auto const& atom : draft.any_of) {
          if (atom.opaque) components.stands_in(states.at(words_of(atom)), lead_number);
        }
      }
      ++lead_number;
      for (std::size_t j = i + 1; j < couplet.size(); ++j) {
        for_contrasts(*couplet[i], *couplet[j], {}, [&](Draft const& a, Draft const& b) {
          if (words_of(a) != words_of(b)) ++contrasts[in_order(words_of(a), words_of(b))];
        });
      }
    }
  }
  // The contrasts met most often first.
  std::vector<std::pair<std::size_t, WordPair const*>> ordered;
  for (auto const& [pair, count] : contrasts) ordered.emplace_back(count, &pair);
  std::stable_sort(ordered.begin(), ordered.end(),
                   [](auto const& a, auto const& b) { return a.first > b.first; });
  for (auto const& [count, pair] : ordered) {
    components.join(states.at(pair->first), states.at(pair->second));
  }
  std::unordered_map<Index, std::string> names;
  for (Index state = 0; state < words.size(); ++state) {
    names.emplace(components.root(state), "~" + *words[state]);  // the first is the least
  }
  for (auto const& couplet : couplets) {
    for (auto* lead : couplet) {
      for (auto& draft : *lead) {
        for (auto& atom : draft.any_of) {
          if (!atom.opaque) continue;
          auto const state = states.at(words_of(atom));
          atom.atom.character = names.at(components.root(state));
          atom.atom.states = alternatives(state, words, components);
        }
      }
    }
  }
}

void name_bare_numbers(std::vector<CoupletDrafts> const& couplets) {
  auto const each_atom = [&](auto const& use) {
    for (auto const& couplet : couplets) {
      for (auto* lead : couplet) {
        for (auto& draft : *lead) {
          for (auto& atom : draft.any_of) use(atom);
        }
      }
    }
  };
  // What is measured -> its printed dimensions.
  std::map<std::string, std::set<std::string>> dimensions;
  bool any = false;
  each_atom([&](DraftAtom const& atom) {
    if (!atom.bare_of.empty()) {
      any = true;
      return;
    }
    auto const& id = atom.atom.character;
    if (!id.starts_with("~n:") || !id.ends_with("|mm")) return;
    auto const words = id.substr(3, id.size() - 6);
    auto const blank = words.rfind(' ');
    if (blank == std::string::npos) return;
    dimensions[words.substr(0, blank)].insert(words.substr(blank + 1));
  });
  if (!any) return;
  each_atom([&](DraftAtom& atom) {
    if (atom.bare_of.empty()) return;
    auto const known = dimensions.find(atom.bare_of);
    if (known == dimensions.end() || known->second.size() != 1) return;
    // What has a width may well have a length beside it.
    auto const& dimension = *known->second.begin();
    if (dimension != "height" && dimension != "diameter") return;
    atom.atom.character = "~n:" + atom.bare_of + " " + *known->second.begin() + "|mm";
  });
}

void turn_lone_counts_into_words(std::vector<CoupletDrafts> const& couplets) {
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
      for (std::size_t j = i + 1; j < couplet.size(); ++j) {
        for_contrasts(*couplet[i], *couplet[j], lone, [&](Draft const& a, Draft const& b) {
          note(a);
          note(b);
        });
      }
    }
  }
  for (auto const& couplet : couplets) {
    for (auto* lead : couplet) {
      for (auto& draft : *lead) {
        if (draft.any_of.size() != 1 || draft.plain.empty() ||
            !words.contains(draft.any_of.front().atom.character)) {
          continue;
        }
        DraftAtom atom;
        atom.opaque = true;
        atom.atom.states = {draft.plain};
        draft.any_of = {std::move(atom)};
        draft.origin = Origin::opaque;
      }
    }
  }
}

void read_contraries(std::vector<CoupletDrafts> const& couplets) {
  for (auto const& couplet : couplets) {
    for (auto* lead : couplet) {
      auto const found =
          std::find_if(lead->begin(), lead->end(), [](Draft const& d) { return d.anaphora; });
      if (found == lead->end()) continue;
      Draft const pattern = *found;
      std::vector<Draft> contraries;
      for (auto const* other : couplet) {
        if (other == lead) continue;
        Draft contrary = pattern;
        contrary.any_of.clear();
        contrary.anaphora = false;
        contrary.origin = Origin::mark;
        for (auto const& draft : *other) {
          bool const binding =
              draft.strength == Strength::firm || draft.strength == Strength::excepted;
          if (!binding || draft.any_of.size() != 1 || draft.anaphora || !draft.limits.empty()) {
            continue;
          }
          auto atom = draft.any_of.front();
          atom.atom.negated = !atom.atom.negated;
          contrary.any_of.push_back(std::move(atom));
          contrary.origin = std::max(contrary.origin, draft.origin);
        }
        if (!contrary.any_of.empty()) contraries.push_back(std::move(contrary));
      }
      auto const at = static_cast<std::size_t>(found - lead->begin());
      if (contraries.empty()) {
        // The words mean another thing in every couplet: they must not be tied.
        auto& opaque = (*lead)[at].any_of.front();
        std::string context;
        for (auto const* other : couplet) {
          if (other == lead) continue;
          for (auto const& draft : *other) {
            for (auto const& atom : draft.any_of) {
              if (!atom.atom.states.empty()) context += ' ' + atom.atom.states.front();
            }
          }
        }
        opaque.atom.states.front() += " (" + (context.empty() ? "" : context.substr(1)) + ")";
        continue;
      }
      lead->erase(lead->begin() + static_cast<std::ptrdiff_t>(at));
      lead->insert(lead->begin() + static_cast<std::ptrdiff_t>(at), contraries.begin(),
                   contraries.end());
    }
  }
}

namespace {

std::vector<std::string> minus(std::vector<std::string> const& a, std::vector<std::string> const& b,
                               bool with_degrees) {
  std::vector<std::string> left;
  for (auto const& word : a) {
    if (std::find(b.begin(), b.end(), word) != b.end()) continue;
    bool const degree =
        word_info(word, "").is(kDegree) || (word.size() > 4 && word.ends_with("ly"));
    if (with_degrees || !degree) left.push_back(word);
  }
  return left;
}

bool on_one_character(Draft const& a, Draft const& b) {
  return a.any_of.size() == 1 && b.any_of.size() == 1 && !a.any_of[0].opaque &&
         !b.any_of[0].opaque && a.any_of[0].atom.character == b.any_of[0].atom.character;
}

}  // namespace

void keep_deciding_words(std::vector<CoupletDrafts> const& couplets) {
  std::set<std::string> deciding;
  for (auto const& couplet : couplets) {
    for (std::size_t i = 0; i < couplet.size(); ++i) {
      for (std::size_t j = i + 1; j < couplet.size(); ++j) {
        if (couplet[i]->size() > kMostStatements || couplet[j]->size() > kMostStatements) continue;
        for (auto const& a : *couplet[i]) {
          for (auto const& b : *couplet[j]) {
            if ((a.rest.empty() && b.rest.empty()) || !on_one_character(a, b)) continue;
            bool const same = a.any_of[0].atom == b.any_of[0].atom;
            auto const only_a = minus(a.rest, b.rest, same);
            auto const only_b = minus(b.rest, a.rest, same);
            bool const decides =
                same ? !only_a.empty() || !only_b.empty() : !only_a.empty() && !only_b.empty();
            if (!decides) continue;
            deciding.insert(a.whole);
            deciding.insert(b.whole);
          }
        }
      }
    }
  }
  deciding.erase("");
  if (deciding.empty()) return;
  for (auto const& couplet : couplets) {
    for (auto* lead : couplet) {
      for (std::size_t d = 0; d < lead->size(); ++d) {
        if (!deciding.contains((*lead)[d].whole)) continue;
        Draft extra = (*lead)[d];
        (*lead)[d].whole.clear();
        DraftAtom atom;
        atom.opaque = true;
        atom.atom.states = {extra.whole};
        extra.any_of = {std::move(atom)};
        extra.origin = Origin::opaque;
        for (auto& piece : extra.pieces) {
          if (piece.kind == PieceKind::unread) piece.kind = PieceKind::state;
        }
        extra.whole.clear();
        extra.rest.clear();
        lead->insert(lead->begin() + static_cast<std::ptrdiff_t>(d) + 1, std::move(extra));
        ++d;
      }
    }
  }
}

}  // namespace keydrift::reading
