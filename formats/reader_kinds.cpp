#include "keydrift/formats/reader_kinds.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kReaderKinds{
    FindingKind{"ambiguous-abbreviation", Severity::warning,
                "An abbreviated genus that fits several",
                "\"A. bus\" could be written out in more than one way; the nearest genus printed "
                "before was\n"
                "taken. Write the genus out."},
    FindingKind{
        "ambiguous-layout", Severity::information, "Two ways of reading the layout come close",
        "The reader tries the layouts that the numbering allows and takes the one whose leads\n"
        "find their couplets. Another one comes close here: see that the couplets are the right\n"
        "ones."},
    FindingKind{"ambiguous-number", Severity::information,
                "A number at the end of a lead that may be no couplet",
                "It may belong to the words (\"stamens 5\") or be where the lead leads. It was "
                "taken for a\n"
                "couplet. Dot leaders before the destination leave no doubt."},
    FindingKind{"assumed-destination", Severity::information,
                "A destination without leaders before it",
                "The last words of the lead look like a name or a number and were taken for its\n"
                "destination. Dot leaders, a tab or wide space before it leave no doubt."},
    FindingKind{"bad-applicability", Severity::error, "\"Applicable if\" that cannot be read",
                "Write it as \"beak = present | long\"."},
    FindingKind{"bad-count", Severity::error, "A count that is none",
                "Write a number of 0 or more, with a point before decimals."},
    FindingKind{"bad-index", Severity::error, "A number in meta.xml that is none",
                "Columns count from 0; header lines are a whole number."},
    FindingKind{"bad-number", Severity::error, "A number that cannot be read",
                "The message says what is wanted."},
    FindingKind{"bad-range", Severity::error, "A range in JSON that is none",
                "Write two numbers, as in [4, 6], or null for an open end."},
    FindingKind{"bad-synonym", Severity::warning,
                "A line of synonyms that does not say which is one",
                "Write \"Accepted name = old name\", several of them parted by semicolons."},
    FindingKind{"bad-year", Severity::warning, "A year that is none",
                "Write four digits, as in \"Year: 1998\". What stands there is kept as it is."},
    FindingKind{"binary-file", Severity::error, "A binary file where a table is wanted",
                "Save the table as CSV."},
    FindingKind{
        "braces", Severity::information, "Couplets were read from braces",
        "The numbers stand beside braces at the margin, and each brace holds a couplet. Pieces\n"
        "of braces, and letters that a scan made of them, were left out of the words."},
    FindingKind{"comments", Severity::information, "Comments in the margin are not read",
                "Put into the text what belongs to the key."},
    FindingKind{
        "conflicting-cell", Severity::warning, "Two rows disagree about one thing",
        "The rows of one character must agree in what is said once for it. Keep one cell and\n"
        "leave the others blank."},
    FindingKind{"contradictory-rows", Severity::error, "Two rows exclude each other",
                "Keep the one that is right."},
    FindingKind{
        "damaged-archive", Severity::error, "A zip file that cannot be opened",
        "Manuscripts and archives are zip files. This one was cut short, or holds two entries of\n"
        "one name. Copy it again."},
    FindingKind{"damaged-field", Severity::warning, "A field that does not end",
                "Its code was kept as text. Update the fields in the word processor and save the\n"
                "manuscript again."},
    FindingKind{"damaged-gzip", Severity::error, "A gzip file that cannot be unpacked",
                "It was cut short or damaged. Copy it again."},
    FindingKind{"damaged-manuscript", Severity::error, "A manuscript without its parts",
                "Open it in a word processor and save it again, or save it as plain text."},
    FindingKind{
        "dashed-numbers", Severity::information, "Dashes before the numbers of couplets",
        "\"— 1. Wings clear\" beside \"— Wings dark\": the dash is no part of the number, and was\n"
        "left out."},
    FindingKind{
        "destination-column", Severity::warning, "Destinations in a column of their own",
        "Programs that copy text may take the words of leads first and their destinations behind\n"
        "them. Where both are as many, each destination was put behind its lead in printed order."},
    FindingKind{"doctype", Severity::error, "A document type declaration where none may be",
                "It may hold entities that expand without end. Take it out."},
    FindingKind{"duplicate-column", Severity::warning, "Two columns mean the same",
                "One of them is used. Remove or rename the other."},
    FindingKind{"duplicate-label", Severity::error, "Two couplets of a JSON key bear one label",
                "References could mean either. Renumber one, or give it an \"id\" of its own."},
    FindingKind{"duplicate-taxon", Severity::error, "Two taxa of a JSON key bear one name",
                "Remove one of the two, or give it an \"id\" of its own."},
    FindingKind{"duplicate-term", Severity::warning, "A term that is declared twice in meta.xml",
                "The first column counts."},
    FindingKind{"embedded-document", Severity::warning, "A document within the manuscript",
                "It was not read. Save the manuscript with the text itself in it."},
    FindingKind{
        "encoding", Severity::information, "The file is not UTF-8",
        "It was read in another encoding, or some cells were: the one that --encoding names, else\n"
        "the one that a page or article declares, else the one that its letters tell. Cyrillic,\n"
        "Greek, Japanese, Chinese, Korean and Windows-1252 are told so; Central European, Turkish\n"
        "and Baltic letters are not.\n"
        "If any letter looks wrong, save it as UTF-8 or say what it is in with --encoding."},
    FindingKind{"encoding-conflict", Severity::warning,
                "The XML declaration disagrees with the bytes",
                "The bytes were believed. Check the letters with accents."},
    FindingKind{
        "encoding-damage", Severity::warning, "Letters were lost on the way",
        "The text holds replacement characters, or letters that come of reading one encoding as\n"
        "another. What was lost cannot be had back from this file: compare the places with the\n"
        "original."},
    FindingKind{"encrypted-archive", Severity::error, "A file with a password",
                "Save it without one."},
    FindingKind{
        "emphasis-marks", Severity::information, "Signs of emphasis were left out",
        "The text has names between \"*\" or \"_\", as plain text shows italics. The signs were\n"
        "taken out before it was read; columns behind them count without them."},
    FindingKind{"expanded-name", Severity::information, "An abbreviated genus was written out",
                "Names are compared in full. See whether the genus meant is the one taken."},
    FindingKind{"external-dtd", Severity::information, "A document type outside the file",
                "It was not looked up: nothing is fetched."},
    FindingKind{"footnotes", Severity::information, "Footnotes were kept as notes",
                "They are notes of the edition and decide nothing."},
    FindingKind{"full-width", Severity::information, "Full-width digits and signs",
                "Digits, letters and signs as wide as an ideograph were read as plain ones."},
    FindingKind{"further-data-sets", Severity::warning, "Several data sets with keys",
                "Only the first was read, since they have nothing to do with one another."},
    FindingKind{"further-languages", Severity::information, "Texts in several languages",
                "Those of the language of the data set were read."},
    FindingKind{"fused-name", Severity::warning, "Genus and epithet printed as one word",
                "They were parted because the text names both elsewhere."},
    FindingKind{
        "genus-unknown", Severity::warning, "A genus that the text does not tell",
        "Leads abbreviate the genus or leave it out, and no title, head or other line says\n"
        "clearly enough which it is. The names stay as they are printed."},
    FindingKind{"headers", Severity::information, "Headers and footers are not read",
                "They hold page numbers and running heads as a rule."},
    FindingKind{"hidden-text", Severity::warning, "Hidden text was left out",
                "Unhide it in the word processor if it belongs to the key."},
    FindingKind{
        "hypertext", Severity::information, "The text was read as HTML",
        "Tables, paragraphs and line breaks became lines, cells were parted, named characters\n"
        "written out. Lines and columns are those of the source as it stands."},
    FindingKind{"indentation-lost", Severity::warning, "Neither labels nor indentation tell rivals",
                "A scan's text often loses the blanks before its lines. Behind a lead with its "
                "destination\n"
                "the innermost lead without rival is answered: in a key of two leads a couplet "
                "there is no\n"
                "other way. Where couplets have three, the word that leads begin with decides, and "
                "may err."},
    FindingKind{"json-too-deep", Severity::error, "JSON nested too deeply",
                "No file of ours is. See whether this is the right file."},
    FindingKind{
        "leaders-within-words", Severity::warning, "Dot leaders within a lead",
        "Leaders stand before words that are no destination. Either the destination is elsewhere,\n"
        "or two leads ran together."},
    FindingKind{
        "line-too-long", Severity::error, "A line beyond the limit",
        "Lines are bounded, so that a wrong file cannot take hours. Break the key into lines, one\n"
        "lead each, or raise the limit with --limit line=…"},
    FindingKind{
        "invisible-characters", Severity::information, "Characters in names that nobody sees",
        "Blanks without width and signs that turn the direction of writing come along when\n"
        "text is copied. Names are read without them."},
    FindingKind{"link-addresses", Severity::information, "Addresses of links were left out",
                "The text has links as plain text writes them, \"[words](address)\" or\n"
                "\"words <address>\". Only their words were read; columns behind them count\n"
                "without the addresses."},
    FindingKind{"malformed-json", Severity::error, "This is not well-formed JSON",
                "The fault is at the place named or a little before it."},
    FindingKind{"malformed-xml", Severity::error, "This is not well-formed XML",
                "The fault is at the place named or a little before it."},
    FindingKind{
        "misprinted-label", Severity::warning, "A number read in spite of a misprint",
        "\"l3\" was read as 13, \"4·\" as 4, or a lead got a number that it does not print: only\n"
        "where the couplets around it say so. Print the label as the others are."},
    FindingKind{
        "misread-destination", Severity::warning, "A destination read in spite of a misprint",
        "Letters and signs were read as the figures they look like, because that couplet exists\n"
        "and no other lead leads to it; one figure for another only beside other damage."},
    FindingKind{"misread-name", Severity::warning, "A name read in spite of a slip of scanning",
                "\"rnaior\" at a lead's end was read as \"maior\": the text prints that name "
                "elsewhere and\n"
                "the other nowhere, and scanning confuses such letters."},
    FindingKind{
        "misread-signs", Severity::information, "Signs that scanning had made others of",
        "A dagger comes out as \"t\", a cross as \"-|-\", a beta as \"ß\" and the alpha above it "
        "as\n"
        "\"a\". They were read as what they were, since other lines begin with such signs, or no\n"
        "lettered label stands there in the count."},
    FindingKind{
        "shortened-abbreviations", Severity::information, "Abbreviations that say something else",
        "\"Pl. busa\" may be a species of Plusa or a plate. Where the text names such a genus and\n"
        "epithets follow, it is read as \"P. busa\"."},
    FindingKind{
        "missing-column", Severity::error, "A column is missing",
        "The first row names the columns; the message says which are wanted and which are there."},
    FindingKind{"missing-edition", Severity::error, "A cited work without an edition",
                "Write the label of the edition that the work is, or OLD or NEW."},
    FindingKind{"missing-field", Severity::error, "A field is missing",
                "The object wants it; the message says where."},
    FindingKind{"missing-name", Severity::error, "A row without a name",
                "Name the taxon that it is about."},
    FindingKind{"missing-table", Severity::error, "A table that meta.xml names is not there",
                "The archive is not complete. Export or copy it again."},
    FindingKind{"mixed-encodings", Severity::warning, "Lines in another encoding",
                "Some lines are not UTF-8 as the others are, as happens when texts of different\n"
                "origin are put together. They were read as Windows-1252. Check their accents."},
    FindingKind{
        "newer-version", Severity::error, "A newer version of the format",
        "The file was written by a newer program. Reading it by halves would lose what is new in\n"
        "it."},
    FindingKind{"no-core", Severity::error, "An archive without a core table, or with two",
                "Export it again with Occurrence as its core."},
    FindingKind{"no-core-id", Severity::warning, "A core without a key",
                "Extensions cannot be joined to it and were left aside."},
    FindingKind{
        "no-couplets", Severity::error, "No couplet was found",
        "Nothing in the text looks like a numbered couplet of two leads or more. The message\n"
        "shows how one looks."},
    FindingKind{"no-files", Severity::error, "A table of meta.xml without a file",
                "Name the file in the element location."},
    FindingKind{"no-id", Severity::warning, "A measurement that names no specimen",
                "The row is set aside."},
    FindingKind{"no-meta", Severity::error, "A zip file without meta.xml",
                "A Darwin Core archive says in meta.xml which of its files are tables. A single "
                "table may do\n"
                "without."},
    FindingKind{"no-name", Severity::information, "Specimens without a name",
                "They are keyed by their characters alone."},
    FindingKind{"no-name-column", Severity::error, "No column holds the names of the specimens",
                "Name the column scientificName, as Darwin Core does."},
    FindingKind{
        "no-row-check", Severity::information, "A worklist without the letters of its rows",
        "The column rowCheck shows when a column was sorted without the others. Without it,\n"
        "or without one of the columns that its letters were made of, that is not seen."},
    FindingKind{"no-specimens", Severity::warning, "A table without rows",
                "There is a header and nothing below it."},
    FindingKind{"no-type", Severity::warning, "A measurement that does not say of what",
                "The row is set aside."},
    FindingKind{"no-version", Severity::error, "The file does not say what it is",
                "JSON files of ours begin with \"keydrift\": 1 (lexicons: \"keydrift-lexicon\": "
                "1). This is\n"
                "another kind of file, or that field was lost."},
    FindingKind{"not-a-table", Severity::error, "JSON where a table is wanted",
                "The message names the columns of the CSV file that is wanted."},
    FindingKind{"not-occurrences", Severity::error, "An archive whose core is not about specimens",
                "Export it with Occurrence as its core."},
    FindingKind{"nothing-usable", Severity::warning,
                "A row with neither name nor number nor character", "The row is set aside."},
    FindingKind{"nul-byte", Severity::warning, "A row holds a NUL byte",
                "The row is set aside: text holds none, so the file is damaged or no text."},
    FindingKind{
        "numbering-format", Severity::warning, "An unknown format of automatic numbers",
        "They are read as decimal numbers. Compare the labels with the printed manuscript."},
    FindingKind{"own-parent", Severity::error, "A taxon is said to be its own parent",
                "Name the next higher taxon."},
    FindingKind{"parent-cycle", Severity::error, "Taxa contain each other",
                "Walking up from one comes back to it. Remove the row that is wrong."},
    FindingKind{"points-at-lead", Severity::warning, "A lead leads to a lead",
                "Destinations are couplets; \"7a\" was taken for couplet 7, since no couplet is "
                "called 7a."},
    FindingKind{
        "remote-table", Severity::error, "A table that lies on another machine",
        "Nothing is fetched. Download it, put it beside meta.xml, and write its name there."},
    FindingKind{"repeated-field", Severity::error, "A field stands twice in one object",
                "Which one counts is not defined by JSON. Keep one."},
    FindingKind{"repeated-id", Severity::warning, "An id that stands twice",
                "References to it mean the first."},
    FindingKind{"repeated-number", Severity::information, "A catalogue number occurs twice",
                "Both rows are used. Check whether it is one specimen."},
    FindingKind{"repeated-occurrence", Severity::warning,
                "An id occurs twice in the core of an archive",
                "Each row is a specimen to itself. Rows of extensions name an id, and belong to\n"
                "the first row that has it."},
    FindingKind{"repeated-row", Severity::information, "A row is said twice",
                "Remove one of the two."},
    FindingKind{"repeated-state", Severity::error, "A state of the lexicon has two rows",
                "Put all phrases of the state into one row."},
    FindingKind{"row-too-long", Severity::warning, "A row beyond the limit",
                "Most often a quotation mark is not closed. The row is set aside."},
    FindingKind{"sdd-loss", Severity::warning, "Something that SDD cannot hold was left out",
                "Keep the key in a form that holds all of it as well."},
    FindingKind{"sdd-own-words", Severity::information, "Something that SDD has no place for",
                "It was written in a namespace of its own, which other programs pass over."},
    FindingKind{"sdd-version", Severity::error, "SDD of another version",
                "Keys are built in another way there. Convert the file to SDD 1.1."},
    FindingKind{"short-rows", Severity::information, "Rows with fewer cells than the header",
                "The missing cells were taken as empty."},
    FindingKind{
        "skipped-lines", Severity::information, "Lines that are no part of the key",
        "Page numbers, running heads and the like were left out. See that no lead is among them."},
    FindingKind{
        "spaced-letters", Severity::information, "Words set with blanks between their letters",
        "Print spaces words to make them stand out. Five small letters or more with one blank\n"
        "between each were read as one word; columns behind them count without the blanks."},
    FindingKind{
        "species-by-number", Severity::information, "Leads that end in a species' number",
        "\"No. 5\" at a lead's end was read as the species that stands behind 5 in a list or over\n"
        "an account of the text."},
    FindingKind{"stray-quotes", Severity::information, "Quotation marks where none should be",
                "They are kept as they stand. Double them inside quoted cells."},
    FindingKind{
        "stray-text", Severity::information, "Text that belongs to no lead",
        "It stands between couplets and is neither a heading nor a note. It is kept as a note of\n"
        "the key. See that it is no lead whose number was lost."},
    FindingKind{
        "struck-text", Severity::warning, "Text that is struck through was read",
        "It is in the manuscript. Delete it in the word processor if the key is to be read\n"
        "without it."},
    FindingKind{"temporary-file", Severity::error,
                "A temporary file cannot be made, written or read back",
                "What memory does not hold of an archive is kept in files of TMPDIR, or /tmp, that "
                "are gone\n"
                "with the run. Make room, or say by TMPDIR where there is some."},
    FindingKind{"text-boxes", Severity::information, "Text boxes were read behind their paragraph",
                "See whether their text is meant to stand there."},
    FindingKind{"text-breaks-off", Severity::warning, "The text ends within a couplet",
                "What there is of it was kept. The rest is lost, or on another page."},
    FindingKind{"too-many-cells", Severity::warning, "A row with more cells than the header",
                "Put cells that hold the separator in quotation marks."},
    FindingKind{
        "tracked-changes", Severity::information, "Tracked changes were read as accepted",
        "Insertions belong to the text, deletions do not. Accept or reject them in the word\n"
        "processor if that is not meant."},
    FindingKind{"two-days", Severity::error, "An edition that was published twice",
                "Keep the day that is right."},
    FindingKind{"two-editions", Severity::error, "A cited work that is two editions",
                "Keep the row that is right."},
    FindingKind{"two-parents", Severity::error, "A taxon has two parents",
                "Keep the row that is right."},
    FindingKind{"two-predicates", Severity::error,
                "A statement with both \"character\" and \"anyOf\"",
                "Put the character among the alternatives."},
    FindingKind{"unclear-day", Severity::error, "A day of publication that is none",
                "Write the year, or a date as ISO 8601 writes it: 1998, 1998-07, 1998-07-14."},
    FindingKind{"unclear-voucher", Severity::warning,
                "A cell that does not say whether this is a voucher", "Write true or false."},
    FindingKind{"unclosed-quote", Severity::warning, "A quoted cell that does not close",
                "Add the closing quotation mark."},
    FindingKind{"underlined-words", Severity::information, "Low lines that stand for underlining",
                "Typescripts and plain text mark names so, \"_A. busa_\". They were left out."},
    FindingKind{
        "uneven-indentation", Severity::warning, "Indentation contradicts the ends of leads",
        "No labels tell rivals, and by their indentation alone a couplet would lack its second\n"
        "lead, or stand beneath a lead that leads elsewhere. The leads named were taken to belong\n"
        "where the least is amiss. Compare these couplets with the print."},
    FindingKind{"unknown-column", Severity::information, "A column that is not read",
                "It may be meant as one of those that are; then near names are proposed."},
    FindingKind{"unknown-couplet", Severity::error,
                "A lead of a JSON key leads to a couplet that is missing",
                "Mend the label, or add the couplet."},
    FindingKind{"unknown-difficulty", Severity::error, "A difficulty that is not known",
                "It is naked eye, hand lens, microscope or dissection."},
    FindingKind{
        "unknown-encoding", Severity::warning, "A page or article in an encoding that is not known",
        "It declares one that the Encoding Standard of the web does not have, and was read in the\n"
        "one that its letters tell. See whether they are right; --encoding says what it is in."},
    FindingKind{"unknown-entity", Severity::error, "An entity that is not defined",
                "Write the character itself, or its number."},
    FindingKind{"unknown-field", Severity::warning, "A field that is not known",
                "It was not read. Names that begin with \"x-\" may be kept beside ours."},
    FindingKind{"unknown-id", Severity::warning, "Measurements of a specimen that is not there",
                "No specimen of the archive bears that number."},
    FindingKind{"unknown-kind", Severity::error, "A kind of character that is not known",
                "It is categorical, measurement or count."},
    FindingKind{"unknown-reference", Severity::warning, "A reference to an id that is not there",
                "Mend it, or add what it names."},
    FindingKind{
        "unknown-relation", Severity::error, "A relation that is not known",
        "It is congruent (==), includes (>), included in (<), overlaps (><) or disjoint (|)."},
    FindingKind{
        "unknown-symbol", Severity::warning, "A symbol of a special font",
        "What it looks like is not known, so it stands as an empty square. Type the character\n"
        "itself."},
    FindingKind{"unknown-type", Severity::information,
                "Measurements of characters that the lexicon lacks", "They are not used."},
    FindingKind{"unknown-word", Severity::error, "A word where one of a few is wanted",
                "The message lists them."},
    FindingKind{"unmapped-field", Severity::warning, "A field of meta.xml that stands for nothing",
                "It has neither an index nor a default."},
    FindingKind{
        "unread-lead", Severity::warning, "A line that looks like a lead and was read as none",
        "It stands among the leads and leads by a row of dots to a couplet or a taxon, but its\n"
        "label is not of the key's kind or is missing. See with --explain what it was taken for."},
    FindingKind{
        "unread-section", Severity::information, "A section that speaks of a key and holds none",
        "It was left aside. If it holds one, its rows are built in another way than keys in\n"
        "articles are."},
    FindingKind{"unsafe-archive", Severity::error,
                "A zip file that would write outside of its folder",
                "Check where the file comes from."},
    FindingKind{"unsafe-path", Severity::error,
                "A location in meta.xml that leads out of the archive",
                "Check where the archive comes from."},
    FindingKind{"unsupported-archive", Severity::error,
                "A zip file packed in a way that cannot be read",
                "Pack it anew as an ordinary zip file (deflate)."},
    FindingKind{"unsupported-encoding", Severity::error, "An encoding that is not read",
                "Save the file as UTF-8, or say what it is in with --encoding."},
    FindingKind{
        "unsupported-file", Severity::error, "A file of a kind that is not read",
        "Its first bytes say what it is, and that is no form in which keys are read. Save it in\n"
        "one of the forms that the README names."},
    FindingKind{
        "unsupported-separator", Severity::error,
        "A table written with separators that are not read",
        "One character between the cells, at most one around them, and the line ends of text."},
    FindingKind{"unused-column", Severity::warning,
                "A column that is nearly the name of a character",
                "It is not used. The name meant is proposed."},
    FindingKind{"unused-columns", Severity::information, "Columns that are not used",
                "To use one as a character, head it with the id or label of the lexicon."},
    FindingKind{"wrong-type", Severity::error, "A value of another type than wanted",
                "A text where a number is wanted, or the like."},
    FindingKind{
        "xml-entities", Severity::error, "XML with declarations of its own",
        "They may hold entities that expand without end, so they are not read. Take them out."},
    FindingKind{"xml-too-deep", Severity::error, "XML nested too deeply",
                "Check that this is the right file, or raise the limit with --limit depth=…"},
    FindingKind{"xml-too-large", Severity::error, "XML with too many parts",
                "Cut the key out of the file, or raise the limit with --limit nodes=…"},
};

}  // namespace

std::span<FindingKind const> reader_finding_kinds() { return kReaderKinds; }

}  // namespace keydrift
