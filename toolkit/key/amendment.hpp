#pragma once
// A piece published between two editions: couplets that replace or join those of a key, and words
// that say what else is to be changed in it.
//
// Values only.  Which couplet of the edition a number means is decided when the amendment is
// applied (keydrift/amendment): "7a" may be a couplet there or the first lead of couplet 7.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/id.hpp"

namespace keydrift {

// How the note begins that tells an amended edition from the one before.
inline constexpr std::string_view kAmendedNote = "Amended in couplet";

// "12–14" is {"12", "14", false}, "7" is {"7", "7", false}, "3 ff." is {"3", "3", true}.
struct LabelRange {
  std::string first;
  std::string last;
  bool onwards{false};
  bool operator==(LabelRange const&) const = default;
};

// Where in the key an instruction acts, as printed.
struct AmendmentTarget {
  std::string label;                  // couplet or lead: "7", "8b"; empty: anywhere in the key
  std::optional<std::uint32_t> lead;  // "the second lead": 1
  std::optional<std::uint32_t> line;  // "line 2" of the couplet as printed: 2
  bool operator==(AmendmentTarget const&) const = default;
};

// No instruction but the couplets' own numbers say where they belong: a number that the edition has
// is replaced; any other is inserted in order ("7a" behind 7).
struct PlaceByNumber {
  std::vector<CoupletId> couplets;
  // "Insert new couplet 8": no couplet of the edition is replaced by one of these numbers; by none
  // at all where the words name no number.
  bool inserts{false};
  std::vector<LabelRange> fresh{};
};
// "Couplets 12–14 are replaced by the following", "couplet 7 should read".
struct ReplaceCouplets {
  std::vector<LabelRange> labels;
  std::vector<CoupletId> couplets;
};
// "Insert after couplet 15"; the couplet named is in the edition.
struct InsertCouplets {
  std::string beside;
  bool before{false};
  std::vector<CoupletId> couplets;
};
// "Delete couplet 9".
struct RemoveCouplets {
  std::vector<LabelRange> labels;
};
// "Add to couplet 5": leads, or words ("except in Aus bus").
struct AddToCouplet {
  AmendmentTarget target;
  std::vector<CoupletId> couplets;  // whose leads are added
  std::string words;                // without quotation marks; empty where leads are added
};
// "Lead 7b now leads to 15a".
struct RedirectLead {
  AmendmentTarget target;
  std::string to;  // a couplet's number or a name
};
// "For 'pale' read 'dark'"; either may be empty (words added or taken out), but not both.
struct ChangeWords {
  AmendmentTarget target;
  std::string from;
  std::string to;
  bool throughout{false};  // everywhere in the key, however often
};

// "Couplets 8–13 become 9–14"; both empty: as many numbers up as couplets are inserted.  The
// couplets of the piece have the new numbers, whatever stands first.
struct RenumberCouplets {
  std::vector<LabelRange> from;
  std::vector<LabelRange> to;
};

using AmendmentStep = std::variant<PlaceByNumber, ReplaceCouplets, InsertCouplets, RemoveCouplets,
                                   AddToCouplet, RedirectLead, ChangeWords, RenumberCouplets>;

struct AmendmentInstruction {
  AmendmentStep step;
  std::string printed;  // the words that say so; empty where the couplets' numbers do
  Place place;          // of these words, else of the first couplet
};

// Couplet ids of the steps are of `piece`; each of its couplets is in one step.
struct Amendment {
  std::string name;  // what messages call it: the path that it came from
  // Couplets, taxa and front matter of the piece.  A lead whose number is no couplet of the piece
  // is Unresolved: it leads into the key amended.  A couplet may have one lead only ("7b. …") or no
  // label ("– …", a lead to be added).
  Edition piece;
  std::vector<AmendmentInstruction> instructions;  // in printed order
  // Asked for, but not understood or not whole: errors with the piece's places.
  std::vector<Finding> not_understood;
  std::vector<Note> kept;  // text that is neither couplet nor instruction, in printed order
};

}  // namespace keydrift
