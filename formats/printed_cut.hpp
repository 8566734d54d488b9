#pragma once
// Cutting a lead into its words and its destination.  Inner header of formats.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_joins.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// Borrows everything that it is made from.  A lead may be cut again once more is known.
class LeadCutter {
 public:
  LeadCutter(KeyText const& key, SortedLines& sorted, std::vector<Finding>& findings)
      : key_{key},
        sorted_{sorted},
        findings_{findings},
        joiner_{key.text, sorted.leads, sorted.pieces} {}

  [[nodiscard]] std::span<Piece const> pieces_of(std::size_t lead) const;
  // The lead's lines as one text.
  [[nodiscard]] JoinedText join(std::size_t lead) const { return joiner_.join(pieces_of(lead)); }

  // Fills `read` in: words joined.raw[0, words_end), destination joined.raw[destination_begin, …),
  // none where that is the end; reads the destination's form.  `read.leaders` is told before.
  // joined.raw[destination_end, …) are numbers of figures or pages.
  void cut(ReadLead& read, JoinedText const& joined, std::size_t words_end,
           std::size_t destination_begin, std::size_t destination_end = std::string::npos);

  // Those of the lines behind the lead's destination that name one each (RawLead::further_taxa).
  void add_further_taxa(ReadLead& read, std::size_t lead) const;

  // No leaders stand before the name.
  void say_name_taken(ReadLead const& read);
  // A number at the end of the words; `elsewhere`: another lead leads to that couplet.
  void say_number_taken(ReadLead const& read, std::string_view number, bool elsewhere);

 private:
  [[nodiscard]] Finding at_destination(ReadLead const& read, std::string code) const;
  void say_leaders_within(ReadLead const& read);
  [[nodiscard]] std::string_view group_between_leaders(std::string_view raw,
                                                       std::size_t words_end) const;

  KeyText const& key_;
  SortedLines& sorted_;
  std::vector<Finding>& findings_;
  LineJoiner joiner_;
};

}  // namespace keydrift::printed
