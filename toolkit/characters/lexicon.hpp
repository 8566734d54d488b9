#pragma once
// The lexicon: ties words to characters and states.  A value; formats/ reads and writes it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/finding.hpp"

namespace keydrift {

enum class CharacterKind {
  categorical,  // named states
  measurement,  // a continuous number with a unit (or a ratio, unit "")
  count,        // a whole number, unit "1"
};
[[nodiscard]] char const* to_word(CharacterKind kind);
[[nodiscard]] std::optional<CharacterKind> character_kind_from_word(std::string_view word);

// How hard it is to see.  The cost of one look, used to rank questions, is 1, 2, 4, 8.
enum class Difficulty { naked_eye, hand_lens, microscope, dissection };
[[nodiscard]] char const* to_word(Difficulty difficulty);  // "naked eye", "hand lens", …
[[nodiscard]] std::optional<Difficulty> difficulty_from_word(std::string_view word);
[[nodiscard]] double cost_of(Difficulty difficulty);

// Words as they stand in leads.  Matched on whole words after Unicode case folding, with hyphens,
// blanks and dashes alike.
struct Phrase {
  std::string text{};
  std::string language{};  // BCP 47; empty: any
  bool operator==(Phrase const&) const = default;
};

// What an entry rests on, in words for people; nothing is concluded from it.
struct Support {
  std::string confidence{};  // "high", "medium", "low"; or whatever somebody wrote
  std::string evidence{};    // "contrasted in 2 couplets (1998: 5, 19)"
  [[nodiscard]] bool empty() const { return confidence.empty() && evidence.empty(); }
  bool operator==(Support const&) const = default;
};

struct LexiconState {
  std::string id{};               // unique within the character; lower case, blanks allowed
  std::vector<Phrase> phrases{};  // the id itself always counts as a phrase
  // States of the same character that may be seen together with this one, or be the same thing in
  // other words: nothing says that the two exclude each other.  Mutual: one mention is enough.
  // States are exclusive otherwise.
  std::vector<std::string> not_told_from{};
  Support support{};
};

// "only if a beak is present"
struct Applicability {
  std::string character{};
  std::vector<std::string> states{};  // applicable when the character shows one of these
};

struct LexiconCharacter {
  std::string id{};                // unique; lower-case letters, digits, hyphens
  std::string label{};             // for people; the id when empty
  std::string structure{};         // the organ: "utricle"
  std::string property{};          // "beak tip", "length"
  std::vector<Phrase> subjects{};  // words that name the structure (and property) in leads
  CharacterKind kind{CharacterKind::categorical};
  std::string unit{};  // measurement: "mm" …; count: "1"
  Difficulty difficulty{Difficulty::naked_eye};
  std::optional<Applicability> applicable_if{};
  double tolerance{0.1};               // by which "ca.", "about", "±" widen a limit (share of it)
  std::vector<LexiconState> states{};  // categorical only
  Support support{};                   // of a number; states have their own
  Place place{};                       // in the lexicon's file
};

struct Lexicon {
  std::string name{};   // file
  bool drafted{false};  // made from the editions themselves (draft_lexicon), by nobody's hand
  std::vector<LexiconCharacter> characters{};
  // By id, label or (case-folded) either; nullptr when unknown.
  [[nodiscard]] LexiconCharacter const* find(std::string_view id_or_label) const;
};

// Duplicate ids, states without phrases, applicability naming unknown characters or states, cycles
// of applicability, units unknown, states told from states that are not there.
[[nodiscard]] std::vector<Finding> check_lexicon(Lexicon const& lexicon);

}  // namespace keydrift
