#include "keydrift/characters/reading/contrasting.hpp"

#include <algorithm>
#include <array>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/key/sort_stably.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

bool is_plain_opaque(Draft const& draft) {
  return draft.any_of.size() == 1 && draft.any_of.front().opaque && !draft.anaphora;
}

bool may_contrast(Draft const& draft, WordsOfNumbers const& as_words) {
  if (is_plain_opaque(draft)) return true;
  return draft.any_of.size() == 1 && !draft.plain.empty() &&
         as_words.contains(draft.any_of.front().atom.character);
}

bool stems_name_part(Draft const& draft) {
  return std::any_of(draft.stems.begin(), draft.stems.end(),
                     [](std::string const& stem) { return word_info(stem, "").is(kPart); });
}

// "Herbs", "tall shrubs or lianas": what kind of plant it is.
bool tells_growth(Draft const& draft) {
  static constexpr std::array<std::string_view, 36> kGrowths{"herb",
                                                             "shrub",
                                                             "subshrub",
                                                             "undershrub",
                                                             "shrublet",
                                                             "tree",
                                                             "treelet",
                                                             "liana",
                                                             "liane",
                                                             "climber",
                                                             "vine",
                                                             "annual",
                                                             "biennial",
                                                             "perennial",
                                                             "epiphyte",
                                                             "kräuter",
                                                             "kraut",
                                                             "strauch",
                                                             "sträucher",
                                                             "baum",
                                                             "bäume",
                                                             "halbstrauch",
                                                             "halbsträucher",
                                                             "stauden",
                                                             "herbe",
                                                             "arbuste",
                                                             "arbrisseau",
                                                             "arbre",
                                                             "sous-arbrisseau",
                                                             "hierba",
                                                             "arbusto",
                                                             "árbol",
                                                             "árbole",
                                                             "erva",
                                                             "árvore",
                                                             "bejuco"};
  // "tall shrubs"
  for (std::size_t i = 0; i < std::min<std::size_t>(draft.stems.size(), 2); ++i) {
    if (is_one_of(kGrowths, draft.stems[i])) return true;
    if (word_info(draft.stems[i], "").is(kPart)) return false;
  }
  return false;
}

// A statement that may contrast with another one.
struct Contender {
  Index draft{};
  std::vector<std::string_view> stems;  // sorted, each once
  bool growth{false};                   // see tells_growth()
};

std::vector<Contender> contenders(std::vector<Draft> const& drafts,
                                  WordsOfNumbers const& as_words) {
  std::vector<Contender> found;
  for (Index i = 0; i < drafts.size(); ++i) {
    if (!may_contrast(drafts[i], as_words)) continue;
    std::vector<std::string_view> stems{drafts[i].stems.begin(), drafts[i].stems.end()};
    std::sort(stems.begin(), stems.end());
    stems.erase(std::unique(stems.begin(), stems.end()), stems.end());
    found.push_back({i, std::move(stems), tells_growth(drafts[i])});
  }
  return found;
}

// Share of the words that two statements have in common.
double overlap(std::vector<std::string_view> const& a, std::vector<std::string_view> const& b) {
  std::size_t common = 0;
  for (auto i = a.begin(), j = b.begin(); i != a.end() && j != b.end();) {
    auto const order = *i <=> *j;
    common += order == 0 ? 1U : 0U;
    if (order <= 0) ++i;
    if (order >= 0) ++j;
  }
  auto const all = a.size() + b.size() - common;
  return all == 0 ? 0 : static_cast<double>(common) / static_cast<double>(all);
}

struct Pair {
  double score{};
  std::size_t apart{};
  std::size_t place{};
  Index first{};
  Index second{};
};

double likeness(Draft const& a, Contender const& in_a, Draft const& b, Contender const& in_b) {
  if (words_of(a) == words_of(b)) return 10;
  auto const shared = overlap(in_a.stems, in_b.stems);
  if (in_a.growth && in_b.growth) return 2 + shared;
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

}  // namespace

std::string const& words_of(Draft const& draft) {
  return draft.any_of.front().opaque ? words_of(draft.any_of.front()) : draft.plain;
}

void for_contrasts(std::vector<Draft> const& a, std::vector<Draft> const& b,
                   WordsOfNumbers const& as_words,
                   std::function<void(Draft const&, Draft const&)> const& use) {
  if (a.empty() || b.empty()) return;
  auto left = contenders(a, as_words);
  auto right = contenders(b, as_words);
  if (left.size() > kMostStatements || right.size() > kMostStatements) return;
  std::vector<Pair> pairs;
  for (auto const& x : left) {
    for (auto const& y : right) {
      auto const i = x.draft;
      auto const j = y.draft;
      auto const score = likeness(a[i], x, b[j], y);
      if (score <= 0) continue;
      pairs.push_back({.score = score,
                       .apart = i > j ? i - j : j - i,
                       .place = std::size_t{i} + j,
                       .first = i,
                       .second = j});
    }
  }
  sort_stably(pairs, [&](Pair const& x, Pair const& y) {
    if (x.score != y.score) return x.score > y.score;
    if (x.apart != y.apart) return x.apart < y.apart;
    if (x.place != y.place) return x.place < y.place;
    // The same whichever lead comes first.
    return in_order(words_of(a[x.first]), words_of(b[x.second])) <
           in_order(words_of(a[y.first]), words_of(b[y.second]));
  });
  std::vector<char> taken_left(a.size(), 0);
  std::vector<char> taken_right(b.size(), 0);
  auto const take = [&](Index i, Index j) {
    taken_left[i] = 1;
    taken_right[j] = 1;
    use(a[i], b[j]);
  };
  for (auto const& pair : pairs) {
    if (taken_left[pair.first] != 0 || taken_right[pair.second] != 0) continue;
    take(pair.first, pair.second);
  }
  // What is left over on both sides in the same position contrasts, unless it speaks of two
  // different parts.
  std::erase_if(left, [&](Contender const& x) { return taken_left[x.draft] != 0; });
  std::erase_if(right, [&](Contender const& y) { return taken_right[y.draft] != 0; });
  if (left.size() != 1 || right.size() != 1 || left.front().draft != right.front().draft) return;
  auto const place = left.front().draft;
  if (!(stems_name_part(a[place]) && stems_name_part(b[place]))) take(place, place);
}

}  // namespace keydrift::reading
