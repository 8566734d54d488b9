#pragma once
// What a key tells apart: its ends.  Internal to this folder.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// What the frequencies of the taxa come to at the ends of the key.  Taxa that a lead names together
// are one end, of their weights together, and leads that name the same taxa are the same end; a
// taxon with several routes brings each of them an equal share.  So the mean route of the taxa is
// that of the ends, and no code for the ends has a lower mean than Huffman's.  `weights` is by row
// of Edition::taxa; those of taxa without a route do not count.  No taxon may stand behind a
// circle.
[[nodiscard]] std::vector<double> weights_of_ends(Edition const& edition, KeyGraph const& graph,
                                                  std::span<double const> weights);

// Different ends that the start leads to and that name several taxa.
[[nodiscard]] std::size_t count_unparted_ends(Edition const& edition, KeyGraph const& graph);

// How even a key is: 1 for the most even one that couplets of these widths make of as many ends, 0
// for a comb of them, each lead that names taxa counted as an end.  nullopt where there is no room
// between the two, and where ways that run together again leave no such key to compare with.
[[nodiscard]] std::optional<double> evenness_of_ends(Edition const& edition, KeyGraph const& graph);

// Colless's index over its value for a comb, by leads that name taxa; nullopt for fewer than three.
[[nodiscard]] std::optional<double> colless_of_ends(Edition const& edition, KeyGraph const& graph);

}  // namespace keydrift
