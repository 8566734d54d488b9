#pragma once
// Which couplet a lead belongs to where indentation wavers, as scans leave it: indentation and the
// ends of leads together.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <vector>

namespace keydrift::printed {

// A lead of a key whose couplets stand beneath the leads that lead to them.
struct IndentedLead {
  std::uint32_t indent{};  // columns
  bool led{false};         // it prints where it leads: no couplet stands beneath it
  bool opens_part{false};  // another key begins with it
};

// By lead: how many couplets are open above the couplet that it answers; nullopt where it opens one
// beneath the lead before.
using OpenLevels = std::vector<std::optional<std::uint32_t>>;

// What is amiss if the leads belong so.  The weights are estimates of ours.
struct Amiss {
  std::uint32_t structure{};    // lone leads, ends with couplets beneath them, leads without an end
  std::uint32_t indentation{};  // rivals that are set in differently

  [[nodiscard]] std::uint32_t cost() const { return structure + indentation; }
};
[[nodiscard]] Amiss amiss_in(std::vector<IndentedLead> const& leads, OpenLevels const& levels);

// The levels by which the least is amiss; nullopt where that is hardly less than in `levels`, or
// where nothing is amiss in those but uneven indentation.
[[nodiscard]] std::optional<OpenLevels> likelier_levels(std::vector<IndentedLead> const& leads,
                                                        OpenLevels const& levels);

// What is amiss in the likeliest levels; nullopt where indentation tells too little for that, and
// for more leads than are looked at.
[[nodiscard]] std::optional<Amiss> least_amiss(std::vector<IndentedLead> const& leads);

}  // namespace keydrift::printed
