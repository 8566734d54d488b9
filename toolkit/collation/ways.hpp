#pragma once
// The ways to a taxon within one edition: which characters lie on them, and whether all of them go
// through an exception.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/collation/exceptions.hpp"
#include "keydrift/collation/sides.hpp"

namespace keydrift::collating {

// The characters of both editions by number, in order of their ids.  Borrows the editions.
class CharacterNumbers {
 public:
  CharacterNumbers() = default;
  CharacterNumbers(Edition const& old_edition, Edition const& new_edition);
  // Precondition: the character occurs in one of the editions.
  [[nodiscard]] std::uint32_t number(std::string_view character) const;
  [[nodiscard]] std::string character(std::uint32_t number) const {
    return std::string{characters_[number]};
  }
  [[nodiscard]] std::size_t size() const { return characters_.size(); }

 private:
  std::vector<std::string_view> characters_;  // sorted
  std::unordered_map<std::string_view, std::uint32_t> number_;
};

// Borrows the side.
class Ways {
 public:
  Ways(Side const& side, Of of, Exceptions const& exceptions, CharacterNumbers const& numbers);

  // Of the lead in this row: by number, of firm and excepted statements, perhaps with repeats.
  [[nodiscard]] std::span<std::uint32_t const> characters_of(std::uint32_t row) const {
    return std::span{characters_}.subspan(
        first_character_[row], first_character_[row + std::size_t{1}] - first_character_[row]);
  }
  // Of both editions.
  [[nodiscard]] std::size_t character_count() const { return character_seen_.size(); }

  // Characters that a firm or excepted statement on some way to the taxon speaks of, each once.
  [[nodiscard]] std::vector<std::uint32_t> characters(TaxonId taxon);
  // Is the character among those that were asked for last?
  [[nodiscard]] bool among_last(std::uint32_t character) const {
    return character_seen_[character] == stamp_;
  }

  // A way goes through an exception at a lead one of whose excepted statements excepts a group that
  // the taxon belongs to.  True when there is a way from the start of the key and every way does
  // so: leads without such an exception alone do not connect the taxon with the start.
  [[nodiscard]] bool only_by_exception(TaxonId taxon);

 private:
  template <class Visit>
  void walk_back(TaxonId taxon, std::vector<std::uint32_t> const& without, Visit const& visit);

  Side const& side_;
  std::vector<std::uint32_t> first_character_;  // by row of lead, and one more
  std::vector<std::uint32_t> characters_;
  std::vector<std::vector<std::uint32_t>> excepting_;  // by taxon: rows of leads, ascending
  std::vector<std::uint32_t> couplet_seen_;            // stamps
  std::vector<std::uint32_t> character_seen_;
  std::uint32_t stamp_{0};
  std::vector<std::uint32_t> waiting_;
};

}  // namespace keydrift::collating
