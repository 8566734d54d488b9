#include "keydrift/amendment/amendment_kinds.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kAmendmentKinds{
    FindingKind{"abbreviation-not-resolved", Severity::warning,
                "A short genus of a piece that the edition does not tell",
                "Several genera of the edition have that initial, or none. The name stays short.\n"
                "Write it in full in the piece."},
    FindingKind{"ambiguous-couplet", Severity::error, "A number that several couplets bear",
                "The edition has the number in several of its keys, so that it is not known which\n"
                "couplet is meant. Nothing was changed. Name the key, or the couplet before it."},
    FindingKind{"amends-another-edition", Severity::warning,
                "A piece that was written for another edition",
                "Its front matter says so. It was applied all the same; give the edition that it\n"
                "amends, or see that its numbers are those of the one given."},
    FindingKind{"conflicting-instructions", Severity::error,
                "Two instructions deal with one couplet",
                "The first was followed and the second was not. Keep the one that is meant."},
    FindingKind{"couplet-without-leads", Severity::error, "A couplet of a piece without leads",
                "There is nothing to put into the key. Print its leads."},
    FindingKind{"couplet-without-number", Severity::error, "Leads of a piece without a number",
                "It is not known where they belong. Print the couplet's number before them, or\n"
                "\"Add to couplet 5:\" above them."},
    FindingKind{"destination-looked-up", Severity::information,
                "A lead of a piece without its destination",
                "It leads where the lead leads that it takes the place of."},
    FindingKind{"front-matter-not-applied", Severity::warning,
                "What a piece says of its scope was not applied",
                "The edition's own words stay. Change them in the amended edition where the piece\n"
                "widens or narrows what the key covers."},
    FindingKind{"instruction-without-couplets", Severity::error,
                "An instruction without the couplets that it speaks of",
                "It was not followed. Print them directly below it."},
    FindingKind{"kept-text", Severity::information, "Text of a piece that asks for nothing",
                "It is neither a couplet nor an instruction and changes nothing. See that no\n"
                "instruction is among it."},
    FindingKind{"no-amendment", Severity::error, "A source without an amendment",
                "Neither a couplet nor an instruction was found in it."},
    FindingKind{"no-such-couplet", Severity::error,
                "An instruction names a couplet that is missing",
                "The edition has no couplet or lead of that number, so nothing was changed. The\n"
                "numbers are those that the edition prints."},
    FindingKind{"note-left-out", Severity::information,
                "A note of a couplet that was taken out with it",
                "The couplet that takes its place does not repeat the note. Put it into the piece\n"
                "if it still holds."},
    FindingKind{"number-before-or-after", Severity::error,
                "A number that the same piece gives to another couplet",
                "The piece renumbers couplets, so that the number may be the old one or the new\n"
                "one. Nothing was changed. Put the instruction into a piece of its own."},
    FindingKind{"number-not-free", Severity::error,
                "A number that a couplet of the edition bears already",
                "An insertion replaces nothing, and no number is given twice. Say what becomes of\n"
                "the old couplet: \"Couplets 8–13 become 9–14\", or \"Replace couplet 8\"."},
    FindingKind{"number-taken", Severity::warning, "An inserted couplet got another number",
                "The edition has a couplet of its number already. Say which one it replaces, or\n"
                "give it a number that is free."},
    FindingKind{"numbers-do-not-fit", Severity::error,
                "Old and new numbers that do not fit each other",
                "The couplets were not renumbered. Say it as in \"Couplets 8–13 become 9–14\", or\n"
                "have them counted anew with --renumber."},
    FindingKind{"shares-nothing", Severity::warning,
                "A piece without a word or name of the edition",
                "It was applied all the same. Look at the files: the piece seems to have been\n"
                "written for another key, or in another language."},
    FindingKind{"unlinked-couplet", Severity::error, "No lead leads to an inserted couplet",
                "It is in the key, but nobody gets there. Say which lead is to lead to it."},
    FindingKind{"unplaced-lead", Severity::error, "A lead of a piece that was put nowhere",
                "The line leads somewhere by a row of dots, and neither its label nor an\n"
                "instruction says where it belongs. Print the couplet's number before it."},
    FindingKind{
        "unread-instruction", Severity::error,
        "Words that seem to ask for a change and were not understood",
        "Nothing was changed. Say it plainly, one change a line, as in \"Delete couplet 9\"\n"
        "or \"In couplet 8b, for 9 read 10\"."},
    FindingKind{"words-found-several-times", Severity::error,
                "Words to be changed that stand in several places",
                "It is not known which are meant, and none was changed. Name the lead, or say\n"
                "\"throughout\" if all are."},
    FindingKind{"words-not-found", Severity::error, "Words to be changed that do not stand there",
                "Nothing was changed. Copy the words from the edition; blanks and hyphens at the\n"
                "ends of lines do not matter."},
    FindingKind{"words-taken-for-destination", Severity::warning,
                "Words of an instruction were taken for a destination",
                "They stand among the lead's words and at its end as well; the end was changed."},
};

}  // namespace

std::span<FindingKind const> amendment_finding_kinds() { return kAmendmentKinds; }

}  // namespace keydrift
