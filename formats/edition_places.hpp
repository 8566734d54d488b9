#pragma once
// Every place of an edition, for readers that read another text than the one that users see.  Inner
// header of formats.

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Calls move(Place&) for each, in no order that matters.
template <class Move>
void move_places(Lead& lead, Move const& move) {
  for (auto& run : lead.runs) move(run.place);
  move(lead.place);
  move(lead.destination_place);
  for (auto& statement : lead.statements) move(statement.place);
}

template <class Move>
void move_places(Edition& edition, Move const& move) {
  for (auto& synonymy : edition.front.synonyms) move(synonymy.place);
  for (auto& place : edition.front.scope.excluded_places) move(place);
  for (auto& place : edition.front.scope.listed_places) move(place);
  for (auto& part : edition.parts) move(part.place);
  for (auto& taxon : edition.taxa) move(taxon.place);
  for (auto& note : edition.notes) move(note.place);
  for (auto& couplet : edition.couplets) {
    move(couplet.place);
    for (auto& reference : couplet.back_references) move(reference.place);
    for (auto& lead : couplet.leads) move_places(lead, move);
  }
}

template <class Move>
void move_places(Finding& finding, Move const& move) {
  move(finding.place);
  for (auto& related : finding.related) move(related.place);
}

}  // namespace keydrift
