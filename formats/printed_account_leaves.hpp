#pragma once
// Outlines whose leads lead to the accounts that stand beneath them, as cyclopedias and manuals
// have them: "B. Plant low." / "1. nana, Roe.  Lvs. blunt …".  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

// "3. A. bus Roe. Herbs …", "3. bus, Roe (A. cus, Dorn). …": how an account begins.
struct AccountHead {
  std::uint32_t number{};    // 0 without
  bool doubtful{false};      // its digits were misread ("l." for 1.), or no full stop closes them
  std::size_t name_begin{};  // bytes of the line
  std::size_t name_end{};
};
[[nodiscard]] std::optional<AccountHead> read_account_head(std::string_view line);

// "20. Ausella busa, Roe.": a number and a species with its genus in full.
[[nodiscard]] bool heads_account_in_full(std::string_view line);

// Does the account carry the count on, where the last one has number `last`?  Scans lose some of
// them, but a number that was misread has to be the next.
[[nodiscard]] bool carries_on(AccountHead const& head, std::uint32_t last);

// The name that an account begins with.  The accents that show how epithets are stressed, and
// ligatures, are no part of it.
[[nodiscard]] TaxonReading read_account_name(std::string_view name);

// Some lines begin as accounts do, numbered one by one or many without numbers: a plan of them is
// worth a try.
[[nodiscard]] bool may_have_accounts(std::vector<SourceLine> const& lines);

// Leads begin as plan_by_labels() finds them, but none within an account that answers no lead.
// nullopt where hardly a lead has an account beneath it.
[[nodiscard]] std::optional<LeadPlan> plan_by_labels_and_accounts(
    std::vector<SourceLine> const& lines);

// The same for leads without labels, ranks told by their indentation; blank lines stand around the
// accounts.
[[nodiscard]] std::optional<LeadPlan> plan_by_indentation_and_accounts(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
