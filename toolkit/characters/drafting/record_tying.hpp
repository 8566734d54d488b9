#pragma once
// Tying what an archive records to the characters of a drafted lexicon, by words.
//
// Whoever recorded "leaf-margin: scabrid" did not know what the draft would call its characters.
// The column names the structure (and often the property), the cell the state: where the two
// together say what a lead of the key says, the record is tied to it.  Every tie is told with its
// confidence; what evidently speaks of the key and cannot be tied is told as well, and leaves its
// specimen open (Specimen::untied).

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/characters/specimen.hpp"

namespace keydrift {

enum class TieConfidence {
  same_words,  // column and cell together say what the lead says, and nothing else
  like_words,  // the structure's own noun and the state, or its first words
  kind_of,     // the column names what the structure is a kind of: "fruit" for "nut"
};
[[nodiscard]] char const* to_word(TieConfidence confidence);  // "high", "medium", "low"

// One column and value, and what it was taken for.
struct RecordTie {
  std::string column{};     // as recorded
  std::string value{};      // as recorded; "" for all numbers of the column
  std::string character{};  // id; empty: not tied
  std::string label{};      // of the character
  std::string state{};      // ids joined by " | "; empty for numbers
  TieConfidence confidence{TieConfidence::same_words};
  std::uint64_t records{};
};

class RecordTying {
 public:
  explicit RecordTying(Lexicon const& drafted);
  ~RecordTying();
  RecordTying(RecordTying const&) = delete;
  RecordTying& operator=(RecordTying const&) = delete;

  // Gives the observations the character's id and the state's, drops those that do not speak of
  // the key (no word of the column is a structure of the key, no word of the cell one of its
  // words), and moves those that speak of it but cannot be tied to Specimen::untied.  Those tied
  // with low confidence are named in Specimen::loosely_tied.
  void tie(Specimen& specimen);

  // Takes in what another one tied.  Precondition: it was made of the same lexicon.
  void absorb(RecordTying const& other);

  // Whatever was tied or could not be, by column, then value.
  [[nodiscard]] std::vector<RecordTie> ties() const;

 private:
  struct Words;
  struct Result {
    RecordTie tie;
    bool speaks_of_key{false};
  };
  [[nodiscard]] Result find(Observation const& observation) const;
  std::unique_ptr<Words> words_;
  // By column, value and unit.  What does not speak of the key is no tie, and kept only for speed.
  std::unordered_map<std::string, Result> known_;
  std::unordered_set<std::string> silent_;
};

}  // namespace keydrift
