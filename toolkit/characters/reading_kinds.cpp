#include "keydrift/characters/reading_kinds.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kStatementKinds{
    FindingKind{
        "ambiguous-words", Severity::warning, "Words that mean states of several characters",
        "The lexicon knows the words as a state of more than one character, and nothing near them\n"
        "tells which is meant. One is taken. Name the structure in the words, or add a mark\n"
        "{character: state}."},
    FindingKind{"backwards-range", Severity::warning, "A range ends below its beginning",
                "\"6-4 mm\": it is read the other way round. Print the smaller number first; if a "
                "digit is\n"
                "wrong, mend it."},
    FindingKind{
        "malformed-mark", Severity::error, "A mark that is not {character: state}",
        "Marks in braces say exactly what a statement means. This one has no end, no colon or no\n"
        "character, so the words are read instead."},
    FindingKind{
        "mark-without-number", Severity::error, "A mark gives words where a number is wanted",
        "The character is a measurement or a count. Write a number or a range, with the unit of\n"
        "the lexicon."},
    FindingKind{
        "missing-unit", Severity::warning, "A measurement without a unit",
        "A length, width or height is printed as a bare number, so that it can be compared with\n"
        "nothing. Print the unit behind it."},
    FindingKind{
        "unit-in-mark", Severity::error, "A mark gives another kind of unit than the lexicon",
        "The number cannot be turned into the unit that the lexicon gives the character. Write it\n"
        "in that unit."},
    FindingKind{
        "unknown-character", Severity::error,
        "A mark or a file names a character that is not there",
        "Nothing of that id or label is in the lexicon, nor (in a JSON key) among the characters\n"
        "of the file. Often it is a slip; near names are proposed."},
    FindingKind{"unknown-state", Severity::error, "A mark names a state that the character lacks",
                "The character is in the lexicon, the state is not. Near states are proposed."},
};

constexpr std::array kLexiconKinds{
    FindingKind{"lexicon-applicability-character", Severity::error,
                "\"Applicable if\" names an unknown character",
                "The character that another one depends on is not in the lexicon."},
    FindingKind{
        "lexicon-applicability-cycle", Severity::error,
        "Characters depend on each other in a circle",
        "If each is applicable only where another one is, none ever is. Take out one of the\n"
        "conditions."},
    FindingKind{"lexicon-applicability-state", Severity::error,
                "\"Applicable if\" names an unknown state",
                "The character that it depends on has no such state."},
    FindingKind{
        "lexicon-character-id", Severity::error, "A character id with other signs",
        "Ids are made of lower-case letters, digits and hyphens, so that they can stand in marks\n"
        "and as column names. Words for people go into the label."},
    FindingKind{
        "lexicon-duplicate-character", Severity::error, "A character is defined twice",
        "Two rows begin a character of the same id. Give one another id, or put their states into\n"
        "one character."},
    FindingKind{"lexicon-duplicate-label", Severity::warning, "Two characters bear the same label",
                "Reports could not tell them apart."},
    FindingKind{"lexicon-duplicate-state", Severity::error, "A state is defined twice",
                "Put the phrases of both into one state."},
    FindingKind{"lexicon-no-states", Severity::error, "A character of states without states",
                "List its states, or make its kind measurement or count."},
    FindingKind{
        "lexicon-not-told-apart", Severity::error,
        "A state is not told apart from one that is not there",
        "The column \"not told apart from\" names other states of the same character. A slip, "
        "or the\n"
        "state was renamed or removed: name the state as it is now called."},
    FindingKind{
        "lexicon-phrase-of-two-states", Severity::error, "One phrase for two states",
        "The same words stand for two states of one character, so a lead that uses them would\n"
        "mean both. Keep the phrase with one of the two."},
    FindingKind{"lexicon-state-without-words", Severity::error, "A state without words",
                "Neither its name nor a phrase is made of words, so no lead can express it."},
    FindingKind{"lexicon-states-of-number", Severity::error, "A measurement or count with states",
                "Numbers have no states. Leave them out, or make the kind categorical."},
    FindingKind{
        "lexicon-tolerance", Severity::error, "A tolerance that is no share",
        "The tolerance says by which share of a limit \"ca.\" widens it: a number from 0 to 1."},
    FindingKind{"lexicon-unit", Severity::error, "An unknown unit",
                "Units are mm, cm, m, µm, in, ft, mm2, ° and %; a ratio has none."},
};

}  // namespace

std::span<FindingKind const> statement_finding_kinds() { return kStatementKinds; }
std::span<FindingKind const> lexicon_finding_kinds() { return kLexiconKinds; }

}  // namespace keydrift
