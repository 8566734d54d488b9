#include "keydrift/redetermination/redetermination_kinds.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kRedeterminationKinds{
    FindingKind{
        "no-such-edition", Severity::warning,
        "no citation of the table means either of the two editions",
        "Nothing can cite them then, and every name is judged by its date or presumed to be\n"
        "the old edition's. The column \"edition\" takes the labels as the editions print\n"
        "them, or OLD and NEW."},
    FindingKind{"same-label", Severity::warning, "both editions have one label",
                "A row of the table of citations with that label means the old edition. Write OLD\n"
                "and NEW instead, or give the editions labels of their own."},
    FindingKind{"unusable-observation", Severity::warning, "a recorded character cannot be used",
                "Its value is no state of the character, or no number. The specimen is judged by\n"
                "the rest of its record."},
};

}  // namespace

std::span<FindingKind const> redetermination_finding_kinds() { return kRedeterminationKinds; }

}  // namespace keydrift
