#include "keydrift/taxa/taxa_kinds.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kKinds{
    FindingKind{
        "concept-ambiguous", Severity::error, "A name of the concept map fits several taxa",
        "Write it in full, with author or rank, so that it means one taxon of the edition."},
    FindingKind{"concept-contradiction", Severity::error,
                "Two rows of the concept map exclude each other",
                "The same pair of taxa cannot stand in both relations. The first row is kept."},
    FindingKind{"concept-doubled", Severity::information, "A row of the concept map is said twice",
                "Drop one of the two."},
    FindingKind{"concept-unknown-taxon", Severity::error,
                "The concept map names a taxon that the edition lacks",
                "Names are compared by the habits of the Codes, and near names are proposed."},
    FindingKind{"concept-wrong-edition", Severity::error,
                "The concept map names a taxon of the other edition",
                "The columns \"old\" and \"new\" seem to be exchanged in this row."},
    FindingKind{
        "frequency-of-group", Severity::warning, "A count for a group of several taxa",
        "Nothing says how the count is to be shared out, so it is left aside. Give a count for\n"
        "each of them."},
    FindingKind{
        "frequency-of-unknown-taxon", Severity::warning,
        "A count for a taxon that does not key out",
        "It is left aside. Near names are proposed; a taxon out of scope may be left out of the\n"
        "file."},
    FindingKind{
        "homonym", Severity::warning, "The same name with authors that disagree",
        "It is a homonym, or it is misapplied in one edition, so it is not taken for the same\n"
        "taxon. Say in the concept map what it is."},
    FindingKind{
        "likely-same-taxon", Severity::information, "Two names that may mean one taxon",
        "They are alike beyond what the Codes treat as the same spelling. If they mean one taxon,\n"
        "say so in the concept map."},
    FindingKind{"taxa-without-frequency", Severity::information, "Taxa without a count",
                "They count as never met with."},
};

}  // namespace

std::span<FindingKind const> taxa_finding_kinds() { return kKinds; }

}  // namespace keydrift
