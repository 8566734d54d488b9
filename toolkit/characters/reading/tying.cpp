#include "keydrift/characters/reading/tying.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <numeric>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/characters/reading/contrasting.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

// Components of states; two that meet in one lead are never joined.
class Components {
 public:
  explicit Components(std::size_t size) : parent_(size), leads_(size) {
    for (Index i = 0; i < size; ++i) parent_[i] = i;
  }
  void stands_in(Index state, Index lead) {
    auto& leads = leads_[state];
    if (!leads.empty() && leads.back() == lead) return;
    leads.push_back(lead);
    note_last(state);
  }

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
    auto const& fewer = leads_[b];
    if (std::any_of(fewer.begin(), fewer.end(), [&](Index lead) { return has(a, lead); })) return;
    for (auto const lead : fewer) {
      leads_[a].push_back(lead);
      note_last(a);
    }
    leads_[b] = {};
    parent_[b] = a;
  }

 private:
  // Short lists are looked through, the leads of longer ones stand in one table besides.
  static constexpr std::size_t kShort = 12;

  static std::uint64_t key(Index component, Index lead) {
    return std::uint64_t{component} << 32U | lead;
  }
  void note_last(Index component) {
    auto const& leads = leads_[component];
    if (leads.size() == kShort + 1) {
      for (auto const lead : leads) table_.insert(key(component, lead));
    } else if (leads.size() > kShort + 1) {
      table_.insert(key(component, leads.back()));
    }
  }
  [[nodiscard]] bool has(Index component, Index lead) const {
    auto const& leads = leads_[component];
    if (leads.size() > kShort) return table_.contains(key(component, lead));
    return std::find(leads.begin(), leads.end(), lead) != leads.end();
  }

  std::vector<Index> parent_;
  std::vector<std::vector<Index>> leads_;
  std::unordered_set<std::uint64_t> table_;
};

// Calls use(atom, number of its lead) for couplets begin … end; leads are numbered from the first
// of these.
template <class Use>
void for_opaque_atoms(std::vector<CoupletDrafts> const& couplets, std::size_t begin,
                      std::size_t end, Use const& use) {
  Index lead_number = 0;
  for (auto c = begin; c < end; ++c) {
    for (auto* lead : couplets[c]) {
      for (auto& draft : *lead) {
        for (auto& atom : draft.any_of) {
          if (atom.opaque) use(atom, lead_number);
        }
      }
      ++lead_number;
    }
  }
}

// The words of opaque atoms, each once, in alphabetical order, so that nothing hangs on the order
// of couplets.  Every atom is given its number among them.
std::vector<std::string> number_states(std::vector<CoupletDrafts> const& couplets) {
  std::unordered_map<std::string_view, Index> known;
  std::vector<std::string_view> met;
  for_opaque_atoms(couplets, 0, couplets.size(), [&](DraftAtom& atom, Index) {
    auto const [found, fresh] = known.try_emplace(words_of(atom), static_cast<Index>(met.size()));
    if (fresh) met.push_back(found->first);
    atom.state = found->second;
  });
  std::vector<Index> order(met.size());
  std::iota(order.begin(), order.end(), Index{0});
  std::sort(order.begin(), order.end(), [&](Index a, Index b) { return met[a] < met[b]; });
  std::vector<Index> rank(met.size());
  std::vector<std::string> words;
  words.reserve(met.size());
  for (auto const at : order) {
    rank[at] = static_cast<Index>(words.size());
    words.emplace_back(met[at]);
  }
  for_opaque_atoms(couplets, 0, couplets.size(),
                   [&](DraftAtom& atom, Index) { atom.state = rank[atom.state]; });
  return words;
}

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
std::vector<std::string> alternatives(Index state, std::vector<std::string> const& words,
                                      std::vector<Index> const& roots) {
  auto const& whole = words[state];
  std::vector<std::string> found{whole};
  if (whole.find("or") == std::string::npos) return found;
  auto const said = words_in(whole);
  if (!said.contains("or")) return found;
  auto const first = whole.substr(0, whole.find(' ') + 1);  // the structure, with its blank
  // States are in alphabetical order: those of the same structure stand together.
  auto const begin = std::lower_bound(words.begin(), words.end(), first);
  for (auto at = begin; at != words.end() && at->starts_with(first); ++at) {
    auto const other = static_cast<Index>(at - words.begin());
    if (other == state || roots[other] != roots[state]) continue;
    auto const part = words_in(*at);
    if (std::includes(said.begin(), said.end(), part.begin(), part.end())) found.push_back(*at);
  }
  std::sort(found.begin(), found.end());
  return found;
}

// Couplets that are worth handing to another thread.
constexpr std::size_t kWorthAThread = 500;

// The contrasts of all couplets as pairs of states, those met most often first, then in
// alphabetical order.
std::vector<std::pair<Index, Index>> contrasts_in(std::vector<CoupletDrafts> const& couplets) {
  std::vector<std::vector<std::pair<Index, Index>>> met(couplets.size());
  in_parts(couplets.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
    for (auto c = begin; c < end; ++c) {
      auto const& couplet = couplets[c];
      for (std::size_t i = 0; i < couplet.size(); ++i) {
        for (std::size_t j = i + 1; j < couplet.size(); ++j) {
          for_contrasts(*couplet[i], *couplet[j], {}, [&](Draft const& a, Draft const& b) {
            auto const x = a.any_of.front().state;
            auto const y = b.any_of.front().state;
            if (x != y) met[c].push_back(std::minmax(x, y));
          });
        }
      }
    }
  });
  std::vector<std::pair<Index, Index>> all;
  for (auto const& some : met) all.insert(all.end(), some.begin(), some.end());
  std::sort(all.begin(), all.end());
  struct Counted {
    std::size_t count{};
    std::pair<Index, Index> pair;
  };
  std::vector<Counted> counted;
  for (auto const& pair : all) {
    if (counted.empty() || counted.back().pair != pair) counted.push_back({0, pair});
    ++counted.back().count;
  }
  std::stable_sort(counted.begin(), counted.end(),
                   [](Counted const& a, Counted const& b) { return a.count > b.count; });
  all.clear();
  for (auto const& one : counted) all.push_back(one.pair);
  return all;
}

}  // namespace

void tie_opaque(std::vector<CoupletDrafts> const& couplets) {
  auto const words = number_states(couplets);
  Components components{words.size()};
  for_opaque_atoms(couplets, 0, couplets.size(), [&](DraftAtom const& atom, Index lead) {
    components.stands_in(atom.state, lead);
  });
  for (auto const& [a, b] : contrasts_in(couplets)) components.join(a, b);
  std::vector<Index> roots(words.size());
  std::vector<Index> first(words.size(), static_cast<Index>(words.size()));  // by root
  for (Index state = 0; state < words.size(); ++state) {
    roots[state] = components.root(state);
    first[roots[state]] = std::min(first[roots[state]], state);
  }
  std::vector<std::vector<std::string>> allowed(words.size());
  in_parts(words.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
    for (auto state = begin; state < end; ++state) {
      allowed[state] = alternatives(static_cast<Index>(state), words, roots);
    }
  });
  in_parts(couplets.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
    for_opaque_atoms(couplets, begin, end, [&](DraftAtom& atom, Index) {
      atom.atom.character = "~" + words[first[roots[atom.state]]];
      atom.atom.states = allowed[atom.state];
    });
  });
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
  each_atom([&](DraftAtom const& atom) {
    if (!atom.bare_of.empty()) return;
    auto const& id = atom.atom.character;
    if (!id.starts_with("~n:") || !id.ends_with("|mm")) return;
    auto const words = id.substr(3, id.size() - 6);
    auto const blank = words.rfind(' ');
    if (blank == std::string::npos) return;
    dimensions[words.substr(0, blank)].insert(words.substr(blank + 1));
  });
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
