// What the codes of rows mean that were not applied.

#include <array>

#include "keydrift/redetermination/taking_back.hpp"

namespace keydrift {
namespace {

constexpr std::array kRefusalKinds{
    FindingKind{
        "another-name", Severity::warning, "the archive has another name under that number",
        "Either the archive changed since the worklist was written, or some columns of the\n"
        "worklist were sorted without the others, so that every row is suspect."},
    FindingKind{"answers-contradict", Severity::warning,
                "two rows about one sheet exclude each other",
                "None of them is applied. Look at the sheet again and keep the row that is right."},
    FindingKind{
        "bad-date", Severity::warning, "the day cannot be told",
        "Write it as 2024-05-17. Where day and month may be mistaken for each other and no\n"
        "other date of the file shows which comes first, --dates tells."},
    FindingKind{"contradicts-record", Severity::warning,
                "the record of the sheet excludes the answer",
                "One of the two is wrong, and only somebody with the sheet can say which."},
    FindingKind{"entered-twice", Severity::warning, "an earlier row says the same",
                "It is counted once."},
    FindingKind{
        "misspelt-name", Severity::warning, "the new name is nearly one of the new edition",
        "Write the name as the edition prints it. A name that is like none of its names is\n"
        "taken as it is."},
    FindingKind{"name-contradicts-answer", Severity::warning,
                "the key leads from the answer to another name",
                "The answer or the name is a slip. A name without an answer is taken as it is:\n"
                "the person saw the specimen."},
    FindingKind{"no-date", Severity::warning, "no day is given", "A determination bears a day."},
    FindingKind{"no-number", Severity::warning, "the row names no sheet",
                "Neither its number nor its occurrence id is there. The columns may have been\n"
                "renamed: the run tells which of them it does not know."},
    FindingKind{"no-person", Severity::warning, "nobody is said to have looked",
                "A determination bears a name."},
    FindingKind{"not-visible", Severity::information, "it was looked at, and cannot be told",
                "The sheet stays on the worklist."},
    FindingKind{"nothing-answered", Severity::information,
                "neither an answer nor a new name is given",
                "Remarks, persons and dates by themselves change nothing; they are in the log."},
    FindingKind{
        "number-lost", Severity::warning, "a spreadsheet made a power of ten of the number",
        "Its last digits are gone. Have the column formatted as text before the worklist is\n"
        "opened, and write the number again."},
    FindingKind{"other-question", Severity::warning,
                "the answer belongs to no question about this sheet",
                "Without the column \"character\" an answer is taken for one to the question that\n"
                "the sheet is asked now."},
    FindingKind{"row-check", Severity::warning, "the letters of the row belong to other cells",
                "They were made of its number, occurrence id, name and question when the worklist\n"
                "was written. Somebody sorted a column without the others, so that every row is\n"
                "suspect, or changed one of these cells."},
    FindingKind{
        "several-sheets", Severity::warning, "the number stands for several sheets",
        "Name and storage place do not tell them apart either. The column occurrenceID does."},
    FindingKind{"unknown-answer", Severity::warning, "the words are no answer to the question",
                "Write one of the answers allowed, a state of the character, or a measurement."},
    FindingKind{"unknown-sheet", Severity::warning, "the archive has no sheet of that number",
                "Lost zeros, blanks and a \".0\" behind are seen through; other changes are not."},
    FindingKind{"unreadable-row", Severity::warning, "the row cannot be read as one",
                "Its cells or quotation marks do not come out even. Its bytes are in the log."},
};

}  // namespace

std::span<FindingKind const> refusal_kinds() { return kRefusalKinds; }

}  // namespace keydrift
