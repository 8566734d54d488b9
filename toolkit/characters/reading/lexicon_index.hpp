#pragma once
// The lexicon made ready for finding its phrases in leads.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/word_trie.hpp"

namespace keydrift::reading {

struct StateRef {
  std::uint32_t character{};  // row in Lexicon::characters
  std::uint32_t state{};
  std::string language;  // primary subtag; empty: any
  // The phrase with "without" in place of its "with": any state but this.
  bool denied{false};
};

struct SubjectRef {
  std::uint32_t character{};
  std::string language;
};

// The words of a phrase as they are compared: folded, without articles and signs.
[[nodiscard]] std::vector<std::string> phrase_words(std::string_view phrase);

// "without", "lacking", "devoid of", "with no", "no": all say the same of what follows.  Behind the
// last token of such words; `at` where none begin there.
[[nodiscard]] std::uint32_t absence_end(LeadText const& text, std::uint32_t at, std::uint32_t stop);
inline constexpr std::string_view kWithout = "without";

// Borrows the lexicon.
class LexiconIndex {
 public:
  explicit LexiconIndex(Lexicon const& lexicon);

  [[nodiscard]] bool empty() const { return lexicon_->characters.empty(); }
  [[nodiscard]] Lexicon const& lexicon() const { return *lexicon_; }
  [[nodiscard]] LexiconCharacter const& character(std::uint32_t row) const {
    return lexicon_->characters[row];
  }

  [[nodiscard]] WordTrie<StateRef> const& states() const { return states_; }
  [[nodiscard]] WordTrie<SubjectRef> const& subjects() const {
    return subjects_;
  }  // singular words

  // The word occurs in the character's subjects, structure, property, label or id.
  [[nodiscard]] bool knows(std::uint32_t row, std::string_view singular_word) const {
    return facts_[row].words.contains(std::string{singular_word});
  }
  // The other one of the two states "present" and "absent" where a character has no more.
  [[nodiscard]] std::optional<std::uint32_t> opposite_presence(std::uint32_t row,
                                                               std::uint32_t state) const;
  // States that say that the structure is there, or is not.
  [[nodiscard]] std::optional<std::uint32_t> absent_state(std::uint32_t row) const {
    return facts_[row].absent;
  }
  [[nodiscard]] std::optional<std::uint32_t> present_state(std::uint32_t row) const {
    return facts_[row].present;
  }
  // "length", "width" … that the character's names speak of, in their printed order.
  [[nodiscard]] std::vector<std::string> const& dimensions(std::uint32_t row) const {
    return facts_[row].dimensions;
  }
  // Canonical unit of a measurement; "1" of a count.
  [[nodiscard]] std::string const& unit(std::uint32_t row) const { return facts_[row].unit; }
  [[nodiscard]] bool has_subjects(std::uint32_t row) const {
    return !lexicon_->characters[row].subjects.empty();
  }
  [[nodiscard]] std::vector<std::uint32_t> const& numeric() const { return numeric_; }

  // The state whose id or phrase it is.
  [[nodiscard]] std::optional<std::uint32_t> find_state(std::uint32_t row,
                                                        std::string_view printed) const;
  [[nodiscard]] std::optional<std::uint32_t> row_of(LexiconCharacter const* character) const;

 private:
  struct Facts {
    std::unordered_set<std::string> words;
    std::optional<std::uint32_t> absent;
    std::optional<std::uint32_t> present;
    std::vector<std::string> dimensions;
    std::string unit;
  };
  void add_states(std::uint32_t row);
  void add_state(StateRef const& ref, std::vector<std::string> const& words);
  void add_subjects(std::uint32_t row);
  void add_facts(std::uint32_t row);

  Lexicon const* lexicon_;
  WordTrie<StateRef> states_;
  WordTrie<SubjectRef> subjects_;
  std::vector<Facts> facts_;
  std::vector<std::uint32_t> numeric_;
};

}  // namespace keydrift::reading
