#pragma once
// How hard the couplets of a key are to answer, by what the lexicon says of its characters.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

inline constexpr std::size_t kDifficulties = 4;

// By row of Edition::couplets: the difficulty of the easiest character that two leads of the
// couplet speak of (or any lead, where no two speak of one).  nullopt where the lexicon does not
// know the characters: all of them, or one that may be easier than those it knows.
[[nodiscard]] std::vector<std::optional<Difficulty>> couplet_difficulties(Edition const& edition,
                                                                          Lexicon const& lexicon);

// "Hard" is what needs a microscope or dissection.
[[nodiscard]] inline bool hard(std::optional<Difficulty> difficulty) {
  return difficulty && *difficulty >= Difficulty::microscope;
}

// A hard couplet above a couplet that is easier: common practice puts easy characters first (Walter
// & Winterton 2007, Annual Review of Entomology 52: 193-208, third recommendation, from a summary).
struct HardEarly {
  CoupletId couplet;
  Difficulty difficulty{};
  CoupletId easier;  // the nearest below, in printed order of leads
};
[[nodiscard]] std::vector<HardEarly> hard_early(
    Edition const& edition, KeyGraph const& graph,
    std::span<std::optional<Difficulty> const> difficulties);

struct DifficultyNumbers {
  std::array<std::size_t, kDifficulties> couplets{};  // by Difficulty
  std::size_t unrated{};
  std::size_t hard_early{};  // hard couplets above easier ones
  // What goes by routes; nullopt where taxa stand behind a circle.
  std::optional<double> mean_cost;  // over taxa: sum of cost_of() along the route; unrated costs as
                                    // naked eye
  std::optional<std::size_t> taxa_behind_hard;  // whose every route, or the one, answers a hard
                                                // couplet
  std::size_t taxa{};                           // that the start leads to
};
[[nodiscard]] DifficultyNumbers difficulty_numbers(
    Edition const& edition, KeyGraph const& graph,
    std::span<std::optional<Difficulty> const> difficulties);

// How often a couplet is answered wrongly.
struct ErrorRates {
  double rate{};  // of couplets for whose difficulty nothing else is said
  std::array<std::optional<double>, kDifficulties> by_difficulty{};
  [[nodiscard]] double of(std::optional<Difficulty> difficulty) const;
};

struct TaxonChance {
  TaxonId taxon;
  double chance{};
};
// The share of determinations that come out right under stated error rates; see
// chances_of_right() for the formula, its source and what it takes for granted.
struct ExpectedRight {
  ErrorRates rates;
  double mean{};                         // over taxa, equally frequent
  std::optional<double> frequency_mean;  // under the frequencies given
  std::vector<TaxonChance> taxa;         // lowest chance first, equal ones in order of first naming
};
// `weights` by row of Edition::taxa, or empty.  nullopt when the start leads to no taxon, or
// taxa stand behind a circle.
[[nodiscard]] std::optional<ExpectedRight> expected_right(
    Edition const& edition, KeyGraph const& graph,
    std::span<std::optional<Difficulty> const> difficulties, ErrorRates const& rates,
    std::span<double const> weights);

}  // namespace keydrift
