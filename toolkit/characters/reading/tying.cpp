#include "keydrift/characters/reading/tying.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/characters/reading/contrasting.hpp"
#include "keydrift/characters/reading/denials.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

// Couplets, leads or states that are worth handing to another thread.
constexpr std::size_t kWorthAThread = 500;

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

// The opaque atoms of all drafts, each once, and the states that they are in.
//
// States are the different words of these atoms, numbered in alphabetical order, so that nothing
// hangs on the order of couplets.
class OpaqueStates {
 public:
  explicit OpaqueStates(AllDrafts const& all) {
    collect(all.each_once);
    sort(tell_apart());
    in_parts(atoms_.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
      for (auto i = begin; i < end; ++i) atoms_[i].atom->state = atoms_[i].state;
    });
  }

  // The words of each state.
  [[nodiscard]] std::vector<std::string_view> const& words() const { return words_; }

  // Calls use(state) for the atoms of one entry of each_once.
  template <class Use>
  void for_states_of(Index entry, Use const& use) const {
    for (auto i = begins_[entry]; i < begins_[entry + 1]; ++i) use(atoms_[i].state);
  }

  // Calls use(atom) for all of them, on several threads.
  template <class Use>
  void for_atoms(Use const& use) const {
    in_parts(atoms_.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
      for (auto i = begin; i < end; ++i) use(*atoms_[i].atom);
    });
  }

 private:
  struct Opaque {
    DraftAtom* atom{};
    std::size_t hash{};  // of its words
    Index state{};       // until states are sorted: its number among those of its shard
  };
  struct Word {
    std::string_view text;
    Index shard{}, number{};
  };
  using Shard = std::vector<Word>;
  static constexpr std::size_t kShards = 8;

  static std::size_t shard_of(std::size_t hash) { return hash % kShards; }

  void collect(std::vector<std::vector<Draft>*> const& entries) {
    struct Part {
      std::vector<Opaque> atoms;
      std::vector<std::size_t> counts;
    };
    auto const parts =
        made_in_parts(entries.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
          Part part;
          for (auto i = begin; i < end; ++i) {
            auto const before = part.atoms.size();
            for (auto& draft : *entries[i]) {
              for (auto& atom : draft.any_of) {
                if (!atom.opaque) continue;
                part.atoms.push_back({&atom, std::hash<std::string_view>{}(words_of(atom))});
              }
            }
            part.counts.push_back(part.atoms.size() - before);
          }
          return part;
        });
    begins_.reserve(entries.size() + 1);
    begins_.push_back(0);
    for (auto const& part : parts) {
      for (auto const count : part.counts) begins_.push_back(begins_.back() + count);
      atoms_.insert(atoms_.end(), part.atoms.begin(), part.atoms.end());
    }
  }

  // The different words, those of a shard in alphabetical order.
  std::vector<Shard> tell_apart() {
    struct Hashed {
      std::string_view text;
      std::size_t hash{};
      bool operator==(Hashed const& other) const {
        return hash == other.hash && text == other.text;
      }
    };
    struct Hash {
      std::size_t operator()(Hashed const& word) const { return word.hash; }
    };
    std::vector<Shard> shards(kShards);
    in_parts(kShards, 1, [&](std::size_t begin, std::size_t end) {
      for (auto s = begin; s < end; ++s) {
        std::unordered_map<Hashed, Index, Hash> known;
        auto& met = shards[s];
        for (auto& opaque : atoms_) {
          if (shard_of(opaque.hash) != s) continue;
          auto const next = static_cast<Index>(met.size());
          auto const [found, fresh] =
              known.try_emplace({words_of(*opaque.atom), opaque.hash}, next);
          if (fresh) met.push_back({found->first.text, static_cast<Index>(s), next});
          opaque.state = found->second;
        }
        std::sort(met.begin(), met.end(), in_order);
      }
    });
    return shards;
  }
  static bool in_order(Word const& a, Word const& b) { return a.text < b.text; }

  void sort(std::vector<Shard> shards) {
    std::vector<std::vector<Index>> rank(kShards);
    for (std::size_t s = 0; s < kShards; ++s) rank[s].resize(shards[s].size());
    while (shards.size() > 1) {
      std::vector<Shard> merged(shards.size() / 2);
      in_parts(merged.size(), 1, [&](std::size_t begin, std::size_t end) {
        for (auto i = begin; i < end; ++i) {
          auto const& a = shards[2 * i];
          auto const& b = shards[2 * i + 1];
          merged[i].resize(a.size() + b.size());
          std::merge(a.begin(), a.end(), b.begin(), b.end(), merged[i].begin(), in_order);
        }
      });
      shards = std::move(merged);
    }
    auto const& all = shards.front();
    // The atoms get other words in the end: these are kept.
    std::size_t bytes = 0;
    for (auto const& word : all) bytes += word.text.size();
    kept_.reserve(bytes);
    words_.reserve(all.size());
    for (auto const& word : all) {
      rank[word.shard][word.number] = static_cast<Index>(words_.size());
      kept_ += word.text;
      words_.push_back(std::string_view{kept_}.substr(kept_.size() - word.text.size()));
    }
    for (auto& opaque : atoms_) opaque.state = rank[shard_of(opaque.hash)][opaque.state];
  }

  std::vector<Opaque> atoms_;
  std::vector<std::size_t> begins_;  // of the atoms of every entry, and one behind the last
  std::string kept_;
  std::vector<std::string_view> words_;
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
std::vector<std::string> alternatives(Index state, std::vector<std::string_view> const& words,
                                      std::vector<Index> const& roots) {
  auto const whole = words[state];
  std::vector<std::string> found;
  found.emplace_back(whole);
  if (whole.find(" or ") == std::string_view::npos && !whole.starts_with("or ") &&
      !whole.ends_with(" or") && whole != "or") {
    return found;
  }
  auto const said = words_in(whole);
  auto const first = whole.substr(0, whole.find(' ') + 1);  // the structure, with its blank
  // States are in alphabetical order: those of the same structure stand together.
  auto const begin = std::lower_bound(words.begin(), words.end(), first);
  for (auto at = begin; at != words.end() && at->starts_with(first); ++at) {
    auto const other = static_cast<Index>(at - words.begin());
    if (other == state || roots[other] != roots[state]) continue;
    auto const part = words_in(*at);
    if (std::includes(said.begin(), said.end(), part.begin(), part.end())) found.emplace_back(*at);
  }
  std::sort(found.begin(), found.end());
  return found;
}

using StatePairs = std::vector<std::pair<Index, Index>>;

// The contrasts of all couplets as pairs of states, those met most often first, then in
// alphabetical order.  `denials`: see denied_besides().
StatePairs contrasts_in(std::vector<CoupletDrafts> const& couplets, StatePairs& denials) {
  struct Part {
    StatePairs met;
    StatePairs denials;
  };
  auto const parts =
      made_in_parts(couplets.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
        Part part;
        auto& met = part.met;
        for (auto c = begin; c < end; ++c) {
          auto const& couplet = couplets[c];
          for (std::size_t i = 0; i < couplet.size(); ++i) {
            for (auto j = i + 1; j < end_of_rivals(couplet.size(), i); ++j) {
              for_contrasts(*couplet[i], *couplet[j], {}, [&](Draft const& a, Draft const& b) {
                auto const x = a.any_of.front().state;
                auto const y = b.any_of.front().state;
                if (x != y) met.push_back(std::minmax(x, y));
                bool const negated = a.any_of.front().atom.negated;
                if (negated != b.any_of.front().atom.negated) {
                  part.denials.emplace_back(negated ? x : y, negated ? y : x);
                }
              });
            }
          }
        }
        std::sort(met.begin(), met.end());
        return part;
      });
  StatePairs all;
  for (auto const& part : parts) {
    auto const& some = part.met;
    denials.insert(denials.end(), part.denials.begin(), part.denials.end());
    auto const before = static_cast<std::ptrdiff_t>(all.size());
    all.insert(all.end(), some.begin(), some.end());
    std::inplace_merge(all.begin(), all.begin() + before, all.end());
  }
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

void tie_opaque(AllDrafts const& all) {
  OpaqueStates const states{all};
  auto const& words = states.words();
  Components components{words.size()};
  for (Index lead = 0; lead < all.which.size(); ++lead) {
    states.for_states_of(all.which[lead], [&](Index state) { components.stands_in(state, lead); });
  }
  StatePairs denials;
  for (auto const& [a, b] : contrasts_in(all.couplets, denials)) components.join(a, b);
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
  auto const besides = denied_besides(std::move(denials), words);
  states.for_atoms([&](DraftAtom& atom) {
    auto const character = words[first[roots[atom.state]]];
    atom.atom.character.reserve(character.size() + 1);
    atom.atom.character = "~";
    atom.atom.character += character;
    atom.atom.states = allowed[atom.state];
    if (!atom.atom.negated) return;
    auto const more = besides.find(atom.state);
    if (more == besides.end()) return;
    for (auto const other : more->second) {
      if (roots[other] == roots[atom.state]) atom.atom.states.emplace_back(words[other]);
    }
    auto& denied = atom.atom.states;
    std::sort(denied.begin(), denied.end());
    denied.erase(std::unique(denied.begin(), denied.end()), denied.end());
  });
}

void name_bare_numbers(AllDrafts const& all) {
  auto const& entries = all.each_once;
  auto const each_atom = [&](std::size_t begin, std::size_t end, auto const& use) {
    for (auto i = begin; i < end; ++i) {
      for (auto& draft : *entries[i]) {
        for (auto& atom : draft.any_of) use(atom);
      }
    }
  };
  // What is measured -> its printed dimensions.
  using Dimensions = std::map<std::string, std::set<std::string>>;
  auto const parts =
      made_in_parts(entries.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
        Dimensions found;
        each_atom(begin, end, [&](DraftAtom const& atom) {
          if (!atom.bare_of.empty()) return;
          auto const& id = atom.atom.character;
          if (!id.starts_with("~n:") || !id.ends_with("|mm")) return;
          auto const words = id.substr(3, id.size() - 6);
          auto const blank = words.rfind(' ');
          if (blank == std::string::npos) return;
          found[words.substr(0, blank)].insert(words.substr(blank + 1));
        });
        return found;
      });
  Dimensions dimensions;
  for (auto const& part : parts) {
    for (auto const& [measured, of_it] : part)
      dimensions[measured].insert(of_it.begin(), of_it.end());
  }
  in_parts(entries.size(), kWorthAThread, [&](std::size_t begin, std::size_t end) {
    each_atom(begin, end, [&](DraftAtom& atom) {
      if (atom.bare_of.empty()) return;
      auto const known = dimensions.find(atom.bare_of);
      if (known == dimensions.end() || known->second.size() != 1) return;
      // What has a width may well have a length beside it.
      auto const& dimension = *known->second.begin();
      if (dimension != "height" && dimension != "diameter") return;
      atom.atom.character = "~n:" + atom.bare_of + " " + dimension + "|mm";
    });
  });
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

void keep_deciding_words(AllDrafts const& all) {
  auto const& couplets = all.couplets;
  std::set<std::string> deciding;
  for (auto const& couplet : couplets) {
    for (std::size_t i = 0; i < couplet.size(); ++i) {
      for (auto j = i + 1; j < end_of_rivals(couplet.size(), i); ++j) {
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
  for (auto* drafts : all.each_once) {
    for (std::size_t d = 0; d < drafts->size(); ++d) {
      if (!deciding.contains((*drafts)[d].whole)) continue;
      Draft extra = (*drafts)[d];
      (*drafts)[d].whole.clear();
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
      drafts->insert(drafts->begin() + static_cast<std::ptrdiff_t>(d) + 1, std::move(extra));
      ++d;
    }
  }
}

}  // namespace keydrift::reading
