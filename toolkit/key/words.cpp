#include "keydrift/key/finding.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift {

char const* to_word(Severity severity) {
  switch (severity) {
    case Severity::information: return "information";
    case Severity::warning: return "warning";
    case Severity::error: return "error";
  }
  return "error";
}

char const* to_word(Strength strength) {
  switch (strength) {
    case Strength::firm: return "firm";
    case Strength::hedged: return "hedged";
    case Strength::excepted: return "excepted";
    case Strength::noted: return "noted";
  }
  return "noted";
}

std::optional<Strength> strength_from_word(std::string_view word) {
  for (auto const strength :
       {Strength::firm, Strength::hedged, Strength::excepted, Strength::noted}) {
    if (word == to_word(strength)) return strength;
  }
  return std::nullopt;
}

char const* to_word(PieceKind kind) {
  switch (kind) {
    case PieceKind::subject: return "subject";
    case PieceKind::state: return "state";
    case PieceKind::number: return "number";
    case PieceKind::hedge: return "hedge";
    case PieceKind::exception: return "exception";
    case PieceKind::limit: return "limit";
    case PieceKind::mark: return "mark";
    case PieceKind::unread: return "unread";
  }
  return "unread";
}

char const* to_word(LimitKind kind) {
  switch (kind) {
    case LimitKind::sex: return "sex";
    case LimitKind::life_stage: return "life stage";
    case LimitKind::material: return "material";
    case LimitKind::season: return "season";
    case LimitKind::other: return "other";
  }
  return "other";
}

char const* to_word(Origin origin) {
  switch (origin) {
    case Origin::mark: return "mark";
    case Origin::lexicon: return "lexicon";
    case Origin::number: return "number";
    case Origin::opaque: return "opaque";
  }
  return "opaque";
}

}  // namespace keydrift
