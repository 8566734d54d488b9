#pragma once
// A specimen whose recorded words are known by number.
//
// Archives repeat themselves: in most columns few different words stand in many rows.  A reader
// that numbers them spares everybody behind it the words: what a word means is found out once, and
// then looked up.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

// The columns whose words count for a specimen as a whole.
enum class CodedTerm : std::uint8_t {
  scientific_name,
  qualifier,
  identified_by,
  date_identified,
  identification_references,
  type_status,
  sex,
  life_stage,
  reproductive_condition,
  storage,
  recorded_by,
  authorship,
};
inline constexpr std::size_t kCodedTerms = 12;

using WordCode = std::uint32_t;
inline constexpr WordCode kNoWord = 0;  // the cell is empty
// One of too many different words in its column: CodedWords tells that of the specimen at hand.
inline constexpr WordCode kUnnumbered = ~WordCode{};

struct CodedSpecimen {
  std::uint64_t line{};
  bool voucher{false};
  std::array<WordCode, kCodedTerms> terms{};
  std::span<WordCode const> places{};      // country, stateProvince …: one column each
  std::span<WordCode const> characters{};  // one column each

  [[nodiscard]] WordCode term(CodedTerm which) const {
    return terms[static_cast<std::size_t>(which)];
  }
};

// A column that holds a character.
struct CodedCharacter {
  std::string_view character{};  // as headed, without the unit
  std::string_view unit{};
};

// The words behind the numbers.  Numbers of a column are dense from 1 and never change their
// meaning.
class CodedWords {
 public:
  virtual ~CodedWords() = default;

  [[nodiscard]] virtual std::string_view term(CodedTerm which, WordCode code) const = 0;
  // The places that a cell names: several where the column holds lists of them.
  [[nodiscard]] virtual std::vector<std::string> places(std::size_t column,
                                                        WordCode code) const = 0;
  // Of the columns of places those of country, stateProvince and county, as far as there are such.
  [[nodiscard]] virtual std::span<std::size_t const> regions() const = 0;
  [[nodiscard]] virtual std::string_view character(std::size_t column, WordCode code) const = 0;
  [[nodiscard]] virtual std::span<CodedCharacter const> characters() const = 0;
};

}  // namespace keydrift
