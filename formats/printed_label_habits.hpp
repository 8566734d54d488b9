#pragma once
// How the leads of a key are labelled, as a rule that tells each label.  Inner header of formats.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_ranks.hpp"

namespace keydrift::printed {

enum class LabelSign : std::uint8_t {
  number,         // of the couplet
  place,          // of the lead among all, with the rival's in brackets
  upper,          // A for the leads of the first rank, B for the second
  lower,          // the same in small letters
  upper_counted,  // A for the first couplet, B for the second
  lower_counted,  // the same in small letters
  ranks           // each rank has labels of its own: A, B; I, II; a, b; 1, 2; *, **; a', b'; a", b"
};
enum class SecondSign : std::uint8_t {
  dash,         // "–"
  repeated,     // as the first
  marked,       // 4'
  two_and_one,  // 4" for the first, 4' for the second
  lettered,     // 4b
  letter,       // b, beneath 4a
  unlabelled,   // none
  doubled,      // AA
  raised,       // a²
  counted       // the next of its alphabet
};

// What the labels of a rank are taken from.
struct RankAlphabet {
  Alphabet alphabet{};
  char32_t sign{};        // for Alphabet::sign, repeated for each lead but the first
  std::uint32_t marks{};  // behind the letters: 1 of a' or a1, 2 of a" or a2
  bool figures{false};    // these are figures: a1, a2
  bool enclosed{false};   // (a), (1)
  char32_t end{};         // '.', ')'; 0 for none, and for signs
};

struct LabelHabit {
  LabelSign sign{};
  SecondSign second{};
  bool nested{false};               // couplets stand beneath the leads that lead to them
  bool back{false};                 // the numbers of couplets that lead there stand in brackets
  bool second_back{false};          // behind the labels of second leads as well
  char32_t end{};                   // '.', ')', ':'; 0 for none; each of the ranks has its own
  char32_t second_end{};            // the same of second leads with a number: "1" and "1'."
  bool enclosed{false};             // (4), (aa)
  std::vector<RankAlphabet> ranks;  // for LabelSign::ranks, from the first rank on
  bool runs_on{false};              // the letters of a rank go on from couplet to couplet
  char32_t dash{};                  // of further leads, as most are printed

  // The label of a couplet's lead: `count` is the couplet's number, its rank or the lead's place,
  // `half` 1 for its first lead; where letters run on it is the lead's place in its rank.
  [[nodiscard]] std::u32string expected(std::uint32_t count, std::uint32_t half) const;
  // The same to be printed; figures in brackets are `back`, without brackets where that is 0.
  [[nodiscard]] std::string printed(std::uint32_t count, std::uint32_t half,
                                    std::uint32_t back) const;
};

// "1. A. busa (p. 112)": the number is no label.
[[nodiscard]] bool names_numbered_species(std::string_view text);

// Those that the labels of the lines speak for.  `upper`: words begin with a capital.
[[nodiscard]] std::vector<LabelHabit> label_habits(std::vector<SourceLine> const& lines,
                                                   bool upper);

}  // namespace keydrift::printed
