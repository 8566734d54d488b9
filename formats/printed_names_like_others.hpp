#pragma once
// Names that nothing but a blank sets apart from a lead's words, where other leads end in such.
// Inner header of formats.

#include <cstddef>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_joins.hpp"
#include "keydrift/formats/printed_known_authors.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

class NamesLikeOthers {
 public:
  // Borrows the lines.
  NamesLikeOthers(std::vector<ReadLead> const& reads, std::vector<SourceLine> const& lines);

  // Two leads of three that lead to taxa end in epithets or in words in capitals; one of two ends
  // in an epithet.
  [[nodiscard]] bool are_a_habit() const {
    return epithets_ || often_epithets_ || capitals_ || commas_;
  }

  // Begin of the epithet, or of the word in capitals, that ends the lead's words.
  [[nodiscard]] std::optional<std::size_t> name_begin(JoinedText const& joined) const;

 private:
  [[nodiscard]] bool is_known_author(std::string_view name) const;

  bool few_open_{false};  // hardly a lead leads nowhere
  bool epithets_{false};
  bool often_epithets_{false};  // one of two: enough where an author is known
  bool capitals_{false};
  bool commas_{false};  // two of three are "bus, Roe."
  KnownAuthors of_lines_;
  std::set<std::string, std::less<>> authors_;  // without the full stop at the end
};

}  // namespace keydrift::printed
