#pragma once
// One piece on its way into a draft.  Inner header of the folder.

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/amendment/amend.hpp"
#include "keydrift/amendment/draft.hpp"

namespace keydrift::amending {

// A deed while ids still say what it is about; `after` is told when all is done.
struct OpenDeed {
  AmendmentDeed deed;
  CoupletId couplet;
  std::vector<std::uint32_t> leads;  // ordinals concerned; empty: all of the couplet
};

// What the stages of applying one piece share.  Borrows all but what it gathers.
struct Application {
  Draft& draft;
  Amendment const& piece;
  std::size_t number;  // row of the piece among those given
  std::vector<OpenDeed>& deeds;
  std::vector<Finding>& unplaced;
  std::vector<Finding>& remarks;

  // By couplet of the piece: where it went.
  std::vector<std::optional<CoupletId>> placed{};
  // Leads that the piece brought: where each is now, and where it stands in the piece.
  std::vector<std::pair<LeadId, LeadId>> leads{};
  // By lead as placed: where the lead led that it replaces.
  std::vector<std::pair<LeadId, Destination>> led_before{};
  struct Inserted {
    CoupletId couplet;
    CoupletId beside;  // the couplet that it was put behind, or before
    bool before{false};
    AmendmentInstruction const* instruction{};
  };
  std::vector<Inserted> inserted{};
  // What led to a removed couplet leads to another one instead.
  std::vector<std::pair<CoupletId, CoupletId>> moved{};

  // The numbers that the piece changes, and those that they become: from the least to the greatest.
  std::optional<std::pair<std::uint64_t, std::uint64_t>> renumbered{};
  // Refused before anything is done.
  std::set<AmendmentInstruction const*> set_aside{};

  [[nodiscard]] bool moves(std::string_view label) const;
  void refuse_number(Place const& place, std::string printed);
  Finding& refuse(std::string code, Place const& place, std::string printed, std::string message,
                  std::string remedy);
  Finding& remark(std::string code, Severity severity, Place const& place, std::string printed,
                  std::string message, std::string remedy);
  OpenDeed& record(AmendmentAct act, CoupletId couplet, AmendmentInstruction const& instruction);
};

// Places with the piece that they are in: editions hold places of one file only, so those of piece
// n bear n + 1 in the upper bits of their byte offsets while findings are made.
[[nodiscard]] Place marked(Place place, std::size_t piece);
[[nodiscard]] std::optional<std::size_t> piece_of(Place const& place);
[[nodiscard]] Place unmarked(Place place);

// The stages, in order.
void number_anew(Application& application);
void place_couplets(Application& application);
void look_up_destinations(Application& application);
void change_words(Application& application);
void link_inserted(Application& application);

}  // namespace keydrift::amending
