#include <array>

#include "keydrift/characters/contrast.hpp"

namespace keydrift {
namespace {

constexpr std::array kContrastKinds{
    FindingKind{
        "dead-lead", Severity::error, "A lead that no specimen can pass",
        "A statement of the lead excludes what the leads on every route to it require, or\n"
        "what the lead itself says before.  Whatever stands below cannot be reached.  Most\n"
        "often a couplet was moved, or a character was turned round in one place only.\n"
        "Only firm statements count, and of ranges the extremes.  Where all leads of a couplet "
        "but\n"
        "one are dead, the couplet is settled by what stands above it and asks nothing."},
    FindingKind{
        "exception-not-below", Severity::warning,
        "An exception for a group that keys out elsewhere",
        "\"Except in …\" lets the group pass although it fails the statement.  If the group\n"
        "does not key out below that lead, the exception leads its specimens astray; often\n"
        "the group was moved in a revision and the note was left behind."},
    FindingKind{
        "exception-unknown-group", Severity::warning,
        "An exception for a group that the key does not have",
        "No taxon of the key bears the name in the exception, nor a name within it.  It may\n"
        "be misspelt, an older name, or a group of higher rank that only a parent table\n"
        "can place."},
    FindingKind{
        "gapping-ranges", Severity::warning, "Measurements between the ranges fit no lead",
        "The leads' ranges leave values between them that none takes in.  Harmless for the\n"
        "taxa that were measured; a specimen in between is stranded.  A gap no wider than\n"
        "the last printed decimal is only information."},
    FindingKind{
        "hedged-only", Severity::warning, "A lead that rests on hedged statements only",
        "\"Usually\", \"mostly\" and the like refute nothing, so no specimen is ever kept from\n"
        "this lead.  Information when the other leads do state something firmly."},
    FindingKind{
        "mixed-units", Severity::warning, "One character measured in different kinds of unit",
        "A length cannot be compared with an angle or a share.  Millimetres and centimetres\n"
        "are one kind and are compared."},
    FindingKind{
        "no-contrast", Severity::error, "Two leads of a couplet do not contrast",
        "No character is stated differently in the two leads, so nothing tells which one to\n"
        "take.  Leads should answer each other, character by character and in one order.\n"
        "Information where the leads cite different figures, which may show the contrast, and\n"
        "where words that no lexicon explains may hold it (\"shrubs\", \"trees\")."},
    FindingKind{
        "one-sided", Severity::warning, "A character stated in one lead only",
        "A lead that is silent about a character does not deny it: a specimen that shows it\n"
        "may still belong under the other lead.  Information when the leads exclude each\n"
        "other in two other characters or more."},
    FindingKind{
        "inconsistent-terms", Severity::warning, "One thing under several names",
        "The lexicon knows both terms for the same structure.  A reader does not, and looks for\n"
        "two things.  Choose one term and use it throughout (common practice; glossaries ask it)."},
    FindingKind{
        "limited-couplet", Severity::warning, "A couplet for one sex or one life stage only",
        "Each statement of the couplet is limited to the same sex or stage, so a specimen of the\n"
        "other cannot be keyed past it.  Not reported where the front matter says that the key\n"
        "is for that sex or stage."},
    FindingKind{"needs-second-specimen", Severity::warning, "A comparison with nothing",
                "\"Larger\" or \"darker\" without \"than\" can only be told beside a second\n"
                "specimen.  Give a measure, or say what it is compared with.  Words that the\n"
                "lexicon ties to a state are taken to be explained there."},
    FindingKind{"overlapping-extremes", Severity::information, "Exceptional measurements overlap",
                "The values in outer parentheses of one lead reach into the other lead's range.\n"
                "Such specimens fit both leads."},
    FindingKind{"overlapping-ranges", Severity::warning, "Measurements of opposed leads overlap",
                "A specimen whose measurement lies in both ranges fits both leads.  A common end\n"
                "point counts, unless one side leaves it out (\"less than\")."},
    FindingKind{"repeated-couplet", Severity::warning, "A couplet asked twice on one route",
                "Its leads say, word for word, what a couplet above it says.  Whoever comes here\n"
                "has answered already.  Where the couplet above bars one of the leads here, that "
                "is reported\n"
                "instead, as a dead lead."},
    FindingKind{"same-state", Severity::warning, "Both leads say the same of a character",
                "The statement does not help to choose; one of the two may be a misprint."},
    FindingKind{
        "settled-above", Severity::information, "A statement that the leads above have settled",
        "On every route to this lead the character is already limited to what the statement\n"
        "allows, so it decides nothing here."},
    FindingKind{"shared-state", Severity::warning, "A state that both leads allow",
                "A specimen with that state fits both leads.  Information where another character\n"
                "parts the leads, or where one side is hedged."},
    FindingKind{"unit-missing", Severity::warning, "A measurement without its unit",
                "The same character is measured with a unit elsewhere.  Without one the number\n"
                "cannot be compared with a specimen or with the other lead."},
    FindingKind{"units-differ", Severity::information, "Two units in one couplet",
                "Centimetres in one lead and millimetres in the other can be compared, but are\n"
                "easily misread.  Guides for authors ask for one unit in both leads."},
};

constexpr std::array kStyleKinds{
    FindingKind{"first-lead-negative", Severity::information, "The first lead is negative",
                "It says what is not there, and the second lead what is.  A reader looks for\n"
                "things, not for their absence: print the positive lead first."},
    FindingKind{"hard-to-see-early", Severity::information,
                "A character that is hard to see, above an easier one",
                "Easy, visible and durable characters come first, microscopic and dissected ones\n"
                "last, so that most specimens are named with little trouble.  Taken from the\n"
                "difficulties in the lexicon."},
    FindingKind{"larger-side-first", Severity::information, "The lead of more taxa comes first",
                "Many guides for authors ask for the lead of the fewer taxa first, so that the\n"
                "short branch is out of the way."},
    FindingKind{"leads-begin-differently", Severity::information,
                "Leads of a couplet begin with different words",
                "Leads that begin with the same structure show at once what is contrasted."},
    FindingKind{"same-beginning-again", Severity::information,
                "A couplet begins as the one before it",
                "The eye slips from one to the other.  Begin the next with another structure."},
    FindingKind{"size-without-measure", Severity::information, "\"Large\" or \"small\"",
                "What is large to one reader is small to another.  Give the measurement."},
};

}  // namespace

std::span<FindingKind const> contrast_finding_kinds() { return kContrastKinds; }
std::span<FindingKind const> style_finding_kinds() { return kStyleKinds; }

}  // namespace keydrift
