#pragma once
// Comparing one couplet of each edition: which leads answer to each other, how alike the couplets
// part the shared taxa, and how alike they speak.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "keydrift/collation/sayings.hpp"
#include "keydrift/collation/shared_taxa.hpp"
#include "keydrift/collation/sides.hpp"

namespace keydrift::collating {

// What the parts of a similarity weigh in the total (sum 20).  How a couplet parts the taxa comes
// before what it says, since a reworded couplet is still the same couplet; the surroundings only
// settle what the couplet itself leaves open.  Chosen on generated edit histories
// (tests/collation/histories_test.cpp).
inline constexpr std::uint32_t taxa_weight = 9;
inline constexpr std::uint32_t statements_weight = 7;
inline constexpr std::uint32_t neighbours_weight = 4;

// Two couplets that neither part the taxa nor speak alike to this extent are not one: an inserted
// couplet that takes a newcomer off stands where a removed one stood, which makes it another
// couplet all the same.
inline constexpr Grade credible_taxa = whole * 7 / 10;
inline constexpr Grade credible_statements = whole * 9 / 20;

// Shared taxa below one lead or couplet.
struct Below {
  std::uint64_t mass{};
  std::uint64_t fingerprint{};
};

class Comparison {
 public:
  // Borrows the sides; they and what they borrow must outlive it.
  Comparison(Side const& old_side, Side const& new_side, TaxonMatching const& matching);
  // `sayings`: read_sayings() of both editions.
  Comparison(Side const& old_side, Side const& new_side, TaxonMatching const& matching,
             std::array<std::vector<SaidLead>, 2> sayings);

  [[nodiscard]] Side const& side(Of of) const { return *sides_[index_of(of)]; }
  [[nodiscard]] SharedTaxa const& shared() const { return shared_; }
  [[nodiscard]] SaidLead const& saying(Of of, std::uint32_t lead_row) const {
    return sayings_[index_of(of)][lead_row];
  }
  [[nodiscard]] Below const& below_lead(Of of, std::uint32_t lead_row) const {
    return below_lead_[index_of(of)][lead_row];
  }
  [[nodiscard]] Below const& below_couplet(Of of, std::uint32_t couplet) const {
    return below_couplet_[index_of(of)][couplet];
  }

  // Share of the shared taxa below either lead that are below both (Jaccard).  Two leads without
  // any taxon below agree; two leads below which nothing is shared do not.
  [[nodiscard]] Grade taxa_agreement(std::uint32_t old_row, std::uint32_t new_row) const;

  struct Result {
    Grade taxa{};
    Grade statements{};
    [[nodiscard]] std::uint64_t worth() const {
      return std::uint64_t{taxa_weight} * taxa + std::uint64_t{statements_weight} * statements;
    }
  };
  // Compares the couplets.  `pairing` gets, for each old lead, the ordinal of the new lead that
  // answers to it, or `none`.  Leads are matched best first whatever their order; with two leads on
  // both sides both are always matched (as the better of straight and crossed: Nye, Liò & Gilks
  // 2006, Bioinformatics 22: 117-119).  The grades are means over the leads of the couplet that has
  // more of them; where one has more leads, of the other and the next couplet behind it taken
  // together, if that is better (one was split, or two were merged).  Leads whose words are plainly
  // the same answer to each other in `pairing` also where the taxa say otherwise; the grades are
  // those of the better match, unless that is credible in neither and the words are.
  Result compare(std::uint32_t old_couplet, std::uint32_t new_couplet,
                 std::vector<std::uint32_t>& pairing) const;

  // A lead of two couplets taken together, and the lead of the polytomy that it was matched with.
  struct JoinedLead {
    std::uint32_t row{};
    std::uint32_t answer{};  // row of the polytomy's lead
    Grade taxa{};
    Grade words{};  // of the better of what it says and what is said on the way to it
  };
  // Two couplets of edition `few` taken together as one and compared with a couplet of the other
  // edition: the leads of the upper one but for `joint` (a row), and those of the lower one, to
  // which the joint leads or once led.  The grades are means over the leads, matched best first.
  // Preconditions: the polytomy has as many leads as the two together but for the joint, and no
  // more than most_leads_together.
  static constexpr std::uint32_t most_leads_together = 12;
  Result compare_joined(Of few, std::uint32_t upper, std::uint32_t joint, std::uint32_t lower,
                        std::uint32_t polytomy, ShortList<JoinedLead, 12>& leads) const;

 private:
  // Of a couplet, taken together with one that hangs on it, and a couplet of the other edition that
  // has as many leads as the two; zeros where there is no such.
  [[nodiscard]] Result with_next(Of few, std::uint32_t couplet, std::uint32_t polytomy) const;
  // `grades`: agreement_of_statements() by old ordinal and new ordinal.  True when it changed the
  // pairing.
  static bool pair_by_plain_statements(std::span<Grade const> grades, std::uint32_t news,
                                       std::vector<std::uint32_t>& pairing);

  std::array<Side const*, 2> sides_;
  SharedTaxa shared_;
  std::array<std::vector<SaidLead>, 2> sayings_;
  std::array<std::vector<Below>, 2> below_lead_;
  std::array<std::vector<Below>, 2> below_couplet_;
};

}  // namespace keydrift::collating
