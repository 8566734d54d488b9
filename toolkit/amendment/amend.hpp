#pragma once
// Applies pieces published between two editions to the edition that they amend.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/key/amendment.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// A lead as a reader of the key would see it; owns its words.
struct LeadAsPrinted {
  std::string name;  // "7a"
  std::string text;
  std::string destination;  // "8", "Aus bus"; empty: none
  bool operator==(LeadAsPrinted const&) const = default;
};

enum class AmendmentAct : std::uint8_t {
  replaced,  // the couplet's leads, or some of them
  inserted,
  removed,          // a couplet, or a lead of one
  added,            // leads
  redirected,       // a lead leads elsewhere
  reworded,         // words of a lead
  renamed,          // a taxon, wherever it is named
  noted,            // a note was added or changed
  renumbered,       // a couplet of the edition has another number, as the piece says
  back_references,  // follow from the rest
};

// One thing that was done to one couplet.
struct AmendmentDeed {
  AmendmentAct act{};
  std::string couplet;                // its number in the result; where it was removed, before
  std::vector<LeadAsPrinted> before;  // of the edition amended; the leads concerned only
  std::vector<LeadAsPrinted> after;   // of the result
  std::string detail;                 // in words: "behind couplet 7", "because 7a was inserted"
  std::size_t piece{};                // row in the pieces given
  Place place;                        // in that piece
  std::string printed;                // the words that asked for it; empty: the couplets' numbers
};

struct Amended {
  Edition edition;  // complete; places of what a piece brought are where it was put
  std::vector<AmendmentDeed> deeds;     // in the order of the result's couplets
  std::vector<std::string> front;       // what was added to the front matter, in words
  std::vector<Finding> unplaced;        // what a piece asks for and could not be done
  std::vector<Finding> remarks;         // warnings and information on what was done
  std::vector<Finding> faults_made;     // found in the result, not in the edition amended
  std::vector<Finding> faults_mended;   // the reverse
  std::vector<Finding> faults_lasting;  // in both; as found in the result
};

// What is found wrong in an edition; the default is proof_structure.
using Proof = std::function<std::vector<Finding>(Edition)>;

// Applies the pieces one after the other.  In each, couplets of the edition get the numbers that
// the piece gives them; couplets are replaced, inserted and removed, in printed order; the
// destinations of its leads are looked up (in the piece, else in the edition); words are changed
// and leads redirected; and at last the couplets that nothing leads to yet are linked: a lead of
// the couplet before that leads where an inserted couplet leads on to now leads to the inserted
// one. Back-references are told anew where the edition prints them and the leads to a couplet
// changed.
//
// Codes of `unplaced` (errors): those of Amendment::not_understood; no-such-couplet,
// ambiguous-couplet, conflicting-instructions, couplet-without-number, couplet-without-leads,
// words-not-found, words-found-several-times, unlinked-couplet, number-not-free,
// numbers-do-not-fit, number-before-or-after.  Of `remarks`: number-taken, destination-looked-up,
// words-taken-for-destination, note-left-out, abbreviation-not-resolved, expanded-name,
// amends-another-edition, shares-nothing, front-matter-not-applied.  Findings on words of a piece
// bear the piece's file name and places.
[[nodiscard]] Amended amend(Edition const& edition, std::span<Amendment const> pieces,
                            Proof const& proof = {});

// Numbers the couplets of each key of the edition from 1 on, in printed order, with the numbers of
// their leads and their back-references.  A key whose couplets bear other labels than numbers stays
// as it is.  Returns old and new labels of the couplets that changed them, in printed order.
std::vector<std::pair<std::string, std::string>> renumber(Edition& edition);

}  // namespace keydrift
