#pragma once
// An edition while it is being amended.  Inner header of the folder.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/amendment/amend.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/labels.hpp"

namespace keydrift::amending {

// Couplets keep their ids while others come and go; `order` has the printed order.  Removed ones
// stay in the table until the end, so that what led to them can be told.
class Draft {
 public:
  explicit Draft(Edition const& edition);

  Edition edition;                   // couplets: the table, original ones first
  std::vector<std::uint32_t> order;  // rows of the table, removed ones included
  std::vector<char> gone;            // by row
  std::vector<std::size_t> part;     // by row: which key of the file
  std::size_t part_count{1};
  std::vector<char> serial;  // by row: its leads bear numbers of their own, "5 (6)" and "6 (5)"

  [[nodiscard]] bool alive(CoupletId id) const { return gone[id.index] == 0; }
  // Couplets so labelled that are not removed, in printed order.
  [[nodiscard]] std::vector<CoupletId> all(std::string_view label) const;
  // The only one; nullopt for none or several.
  [[nodiscard]] std::optional<CoupletId> find(std::string_view label) const;
  // The one in the part, else the only one.
  [[nodiscard]] std::optional<CoupletId> find(std::string_view label, std::size_t in_part) const;
  // The only lead of a serial couplet that bears this number.
  [[nodiscard]] std::optional<LeadId> find_serial_lead(std::string_view label) const;
  // "8b": the lead so called, of the only couplet 8; else find_serial_lead.
  [[nodiscard]] std::optional<LeadId> find_lead(std::string_view label) const;
  [[nodiscard]] std::optional<std::uint32_t> ordinal_of(CoupletId couplet,
                                                        std::string_view label) const;

  // Position in `order`.
  [[nodiscard]] std::size_t position(CoupletId id) const;
  // Where a couplet of that number belongs behind `anchor`: after those that a later author put
  // between (7a before 7b).
  [[nodiscard]] std::size_t position_behind(CoupletId anchor, std::string_view label) const;
  CoupletId insert(Couplet couplet, std::size_t position, std::size_t in_part);
  void remove(CoupletId id);
  void relabel(CoupletId id, std::string label);
  // Gives these rows their numbers at once, with the numbers of their leads, of what leads to them
  // and of the back-references to them.
  void renumber(std::unordered_map<std::uint32_t, std::string> const& fresh);
  // The number with the first letter that is free: "7a" beside 7.
  [[nodiscard]] std::string free_label(std::string_view beside) const;
  // "the nearest couplets are 16 and 18", "did you mean …"; "" where the edition has none.
  [[nodiscard]] std::string nearest(std::string_view label) const;

  // The taxon of that name, made where it is new.  An abbreviated genus is completed; `completed`
  // is set to false where it could not be.
  TaxonId taxon(std::string name, std::string const& authorship, Place const& place,
                bool& completed);
  // "T. bus" with the only genus of the edition that it may stand for; other names as they are.
  [[nodiscard]] std::string full_name(std::string const& name, bool& completed) const;

  [[nodiscard]] LeadAsPrinted as_printed(LeadId id) const;
  [[nodiscard]] std::vector<LeadAsPrinted> as_printed(CoupletId id) const;

  // Leads to the couplet from couplets that are not removed, in printed order.
  [[nodiscard]] std::vector<LeadId> leads_to(CoupletId id) const;

 private:
  std::unordered_map<std::string, std::vector<std::uint32_t>> by_label_;
};

// "8", "Aus bus, Aus cus", "Key B"; as printed where it is none of these.
[[nodiscard]] std::string destination_words(Edition const& edition, Lead const& lead);

}  // namespace keydrift::amending
