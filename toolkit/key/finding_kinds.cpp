#include <array>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {
namespace {

// In byte order of the codes.
constexpr std::array<FindingKind, 31> kKinds{{
    {"backward-lead", Severity::information, "A lead leads to a couplet printed before it",
     "Branches of a key may meet again, and then a lead may have to point upwards.  Far more "
     "often\n"
     "the number is a slip, so every such lead deserves a look."},
    {"couplet-without-leads", Severity::error, "A couplet has no leads",
     "Whoever arrives at such a couplet cannot go on.  Print its leads, or leave the number out."},
    {"cycle", Severity::error, "Leads go round in a circle",
     "A specimen that takes these leads comes back to a couplet it has passed and never gets a\n"
     "name.  Usually one number is a misprint; the finding shows the shortest way round."},
    {"dangling-back-reference", Severity::warning,
     "A back-reference names a couplet that is missing",
     "The number in parentheses behind a couplet's own should say which couplet leads to it, so\n"
     "that a user can walk back out of a dead end.  The one given does not exist."},
    {"dangling-couplet", Severity::error, "A lead leads to a couplet that is missing",
     "Every specimen that takes the lead is stranded there.  Mend the number, or print the "
     "missing\n"
     "couplet."},
    {"duplicate-couplet", Severity::error, "Two couplets bear the same number",
     "Leads to that number could mean either; they are taken to mean the first.  Give the second\n"
     "a number of its own and mend the leads that mean it."},
    {"exception-names-nothing", Severity::warning, "An exception does not say for whom it holds",
     "An exception relaxes a statement for the groups that it names.  One that names none relaxes\n"
     "the statement for everything, so that it decides nothing.  Name the groups."},
    {"key-elsewhere", Severity::information, "A lead leads to a key that this file does not hold",
     "Keys refer to one another, and the other one may be in another publication.  Routes end "
     "here\n"
     "all the same.  If the key is in this file, its title differs from the words of the lead."},
    {"keyed-not-listed", Severity::warning, "A taxon keys out that the list of taxa lacks",
     "The front matter lists the taxa that the key covers; this one is not among them.  Either "
     "the\n"
     "list or the key is out of date, or the name is misspelt in one of the two."},
    {"keyed-though-excluded", Severity::warning, "A taxon keys out that is said to be left out",
     "The front matter says that this taxon, or its group, is not covered, yet it keys out."},
    {"lead-without-destination", Severity::error, "A lead leads nowhere",
     "A lead must end in a couplet or a taxon.  Specimens that take this one are stranded."},
    {"lead-without-words", Severity::warning, "A lead says nothing",
     "A lead without words can be neither taken nor refused.  Its contrasting lead alone decides,\n"
     "which a reader must guess."},
    {"listed-not-keyed", Severity::error, "A listed taxon does not key out",
     "The front matter claims that the key covers this taxon, but no lead ends in it: specimens "
     "of\n"
     "it get another name.  Names are compared as printed, with or without author."},
    {"misnumbered-couplet", Severity::warning, "A couplet's number is out of order",
     "Numbers should rise through a key, so that a couplet can be found.  This one stands between\n"
     "others that it does not fit; most often it is a misprint for the number expected there."},
    {"missing-back-reference", Severity::warning, "A couplet does not name every lead to it",
     "Where a key prints back-references, a couplet reached from several places must list them\n"
     "all; otherwise a user who walks back ends up on the wrong branch."},
    {"missing-couplet", Severity::error,
     "A couplet that leads lead to is missing from the sequence",
     "The numbers skip this one and leads lead to it, so a couplet was probably lost in printing\n"
     "or copying."},
    {"no-couplets", Severity::error, "The edition holds no couplets",
     "Nothing in the text was recognised as a couplet.  Each needs a number and at least two "
     "leads."},
    {"not-as-above", Severity::warning, "A lead only negates the other",
     "\"Not as above\" cannot be answered character by character, and leaves open which of "
     "several\n"
     "statements fails.  Say what the taxa under this lead do show."},
    {"polytomy", Severity::information, "A couplet has three leads or more",
     "Some editors refuse these; others allow an occasional triplet.  Each lead should be\n"
     "contrasted with every other."},
    {"repeated-key", Severity::warning, "A key stands in the file twice",
     "Its couplets are, word for word, those of a key above it: most likely it was pasted a "
     "second\n"
     "time.  What else there is to say of it is said of the first one only."},
    {"same-destination", Severity::warning, "All leads of a couplet lead to the same place",
     "Whatever is chosen, the result is the same: either a destination is a misprint, or the\n"
     "couplet can be left out."},
    {"same-text", Severity::error, "Two leads of a couplet say the same",
     "Case and spacing apart, the words are the same, so nobody can choose between the leads."},
    {"single-lead", Severity::error, "A couplet has one lead only",
     "There is nothing to choose.  Usually the contrasting lead was lost, or its label was not\n"
     "recognised."},
    {"skipped-number", Severity::warning, "The numbering skips",
     "No couplet bears these numbers and no lead leads to them.  Harmless if couplets were taken\n"
     "out on purpose; otherwise a couplet was lost."},
    {"taxon-repeated", Severity::information, "A taxon keys out several times",
     "Variable taxa may have to.  It is worth knowing where, because a change at one end leaves\n"
     "the others as they are."},
    {"two-destinations", Severity::warning, "A lead ends in both a taxon and a couplet",
     "A lead must have one destination.  The reader took one of the two; keep the one meant."},
    {"unclear-destination", Severity::error, "A lead ends in something unknown",
     "The words at its end are neither the number of a couplet nor recognisable as a name."},
    {"unlabelled-couplet", Severity::warning, "A couplet bears no number",
     "No lead can lead to it."},
    {"unreachable-couplet", Severity::error, "Nothing leads to a couplet",
     "No specimen can ever get to it, so its taxa do not key out there.  Usually the lead that\n"
     "should lead here bears a wrong number.  Couplets below it are counted, not reported again."},
    {"unreached-key", Severity::information, "No lead leads to a key of the file",
     "Leads of this file lead to other keys in it, but none to this one, so that its taxa cannot\n"
     "be reached from the first couplet.  Usually the lead that should lead here bears another\n"
     "title or number.  Where no key of a file leads to another, nothing is said, nor of a key\n"
     "whose title names a taxon that keys out: whoever gets to the taxon goes on there."},
    {"wrong-back-reference", Severity::warning, "A back-reference disagrees with the leads",
     "The couplet says that it is reached from another one, no lead of which leads to it.  One of\n"
     "the two numbers is wrong."},
}};

}  // namespace

std::span<FindingKind const> structural_finding_kinds() { return kKinds; }

}  // namespace keydrift
