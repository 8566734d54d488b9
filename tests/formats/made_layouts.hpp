#pragma once
// One key of eight couplets, printed in many ways: labels, ends, wraps, indentation and names as
// journals and floras set them, one choice for each.

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace keydrift::test {

class Scan;

// What a lead leads to: the first words of a couplet, or the name of a taxon.
struct MadeLead {
  std::string words;  // the first of its words, which no other lead begins with
  std::string to;
};

struct MadeLayout {
  std::string text;
  std::string choices;  // what was chosen, for messages
};

// The leads, whatever the layout.  The genus is `genus`.
[[nodiscard]] std::vector<MadeLead> made_leads(std::string const& genus);

// Couplets stand one behind the other, leads end in numbers.  Each seed chooses another layout;
// what `scan` damages, if there is one, is damaged.
[[nodiscard]] MadeLayout made_parallel(std::uint32_t seed, std::string const& genus,
                                       Scan* scan = nullptr);
// Couplets stand beneath their leads.
[[nodiscard]] MadeLayout made_nested(std::uint32_t seed, std::string const& genus,
                                     Scan* scan = nullptr);

// The genera of the layouts by seed; their initials are also numerals and letters of labels.
[[nodiscard]] std::string made_genus(std::uint32_t seed);

}  // namespace keydrift::test
