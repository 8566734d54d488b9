#pragma once
// "The second lead of couplet 12": where in the key an instruction acts.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/amendment_changes.hpp"
#include "keydrift/formats/amendment_words.hpp"
#include "keydrift/key/amendment.hpp"

namespace keydrift::printed {

// "couplets 12–14 and 16": a list of numbers, and the tokens that it takes.
struct NumberList {
  std::vector<LabelRange> ranges;
  std::size_t first{};  // index of the first number's token
  std::size_t last{};   // index behind the list
  bool noun{false};     // "couplet" or the like stands before it
};

struct NamedPlaces {
  std::vector<NumberList> couplets;
  std::optional<std::uint32_t> lead;  // "the second lead": 1
  std::optional<std::uint32_t> line;  // "line 2": 2
};

// What the words say of it; `change`: the words of the key among them, which say nothing of it.
[[nodiscard]] NamedPlaces read_where(std::vector<Token> const& tokens,
                                     std::optional<WordChange> const& change);

// "3b should read: Wings dark ..... 4", "Lead 3b: Wings dark ..... 4": where the lead's own words
// may begin, behind those that say which it is; 0 where none do.
[[nodiscard]] std::size_t words_before_lead(std::string_view text);

}  // namespace keydrift::printed
