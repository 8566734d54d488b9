#include "keydrift/redetermination/keyout.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

char const* to_word(Outcome outcome) {
  switch (outcome) {
    case Outcome::stands:
      return "stands";
    case Outcome::renamed:
      return "renamed";
    case Outcome::changes:
      return "changes";
    case Outcome::narrowed:
      return "narrowed";
    case Outcome::open:
      return "open";
    case Outcome::stranded:
      return "stranded";
    case Outcome::leaves_scope:
      return "leaves scope";
    case Outcome::enters_scope:
      return "enters scope";
    case Outcome::doubtful:
      return "doubtful";
    case Outcome::not_keyed:
      return "not keyed";
  }
  return "not keyed";
}

std::optional<Outcome> outcome_from_word(std::string_view word) {
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    auto const outcome = static_cast<Outcome>(i);
    if (word == to_word(outcome)) return outcome;
  }
  return std::nullopt;
}

char const* to_word(Reading reading) {
  switch (reading) {
    case Reading::strict:
      return "strict";
    case Reading::primary_first:
      return "primary-first";
    case Reading::best_overall:
      return "best-overall";
  }
  return "strict";
}

char const* to_word(Arrival arrival) {
  switch (arrival) {
    case Arrival::fits:
      return "fits";
    case Arrival::through_exception:
      return "fits through its exception";
    case Arrival::open:
      return "open";
  }
  return "open";
}

char const* to_word(LeadFit fit) {
  switch (fit) {
    case LeadFit::refuted:
      return "does not fit";
    case LeadFit::conflict:
      return "partly fits";
    case LeadFit::open:
      return "open";
    case LeadFit::through_exception:
      return "fits through its exception";
    case LeadFit::fits:
      return "fits";
  }
  return "open";
}

}  // namespace keydrift
