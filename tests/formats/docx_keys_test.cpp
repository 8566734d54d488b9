// Keys as word processors set them.

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "docx_support.hpp"
#include "keydrift/formats/docx.hpp"

namespace keydrift::test {
namespace {

// A list whose first level has numbers and whose second has letters.
constexpr std::string_view kSteps =
    "<w:abstractNum w:abstractNumId=\"0\">"
    "<w:lvl w:ilvl=\"0\"><w:start w:val=\"1\"/><w:numFmt w:val=\"decimal\"/>"
    "<w:lvlText w:val=\"%1.\"/></w:lvl>"
    "<w:lvl w:ilvl=\"1\"><w:start w:val=\"1\"/><w:numFmt w:val=\"lowerLetter\"/>"
    "<w:lvlText w:val=\"%2)\"/><w:pPr><w:ind w:left=\"720\"/></w:pPr></w:lvl></w:abstractNum>"
    "<w:num w:numId=\"1\"><w:abstractNumId w:val=\"0\"/></w:num>";

TEST(DocxKeys, TitlesWithTheNumbersOfTheirCouplets) {
  auto const title = [](std::string_view text) { return paragraph(text, numbered("1")); };
  auto const lead = [](std::string_view text) { return paragraph(text, numbered("1", "1")); };
  auto const read =
      read_body(paragraph("Key to snails") + title("Shell") + lead("shell visible → go to 2") +
                    lead("shell hidden → Nudora alba") + title("Height") +
                    lead("higher than wide → 3") + lead("wider than high → Latora nigra") +
                    title("Teeth (lens!)") + lead("four teeth → Dentora quarta") +
                    lead("five teeth → Dentora quinta") + lead("one tooth → Dentora prima"),
                {.numbering = std::string{kSteps}});
  EXPECT_EQ(read.sketch,
            "1[a] shell visible -> 2\n1[b] shell hidden -> Nudora alba\n"
            "2[a] higher than wide -> 3\n2[b] wider than high -> Latora nigra\n"
            "3[a] four teeth -> Dentora quarta\n3[b] five teeth -> Dentora quinta\n"
            "3[c] one tooth -> Dentora prima\n");
}

TEST(DocxKeys, OutlinesOfNumbersAndLettersStayOutlines) {
  auto const upper = [](std::string_view text) { return paragraph(text, numbered("1")); };
  auto const lower = [](std::string_view text) { return paragraph(text, numbered("1", "1")); };
  auto const read =
      read_body(paragraph("Key to snails") + upper("Shell visible") +
                    lower("Shell 2 mm high ..... Parvora alba") +
                    lower("Shell 9 mm high ..... Magnora alba") + upper("Shell hidden") +
                    lower("Mantle red ..... Nudora rufa") +
                    lower("Mantle black ..... Nudora nigra") + upper("Shell none") +
                    lower("Sole red ..... Limora rufa") + lower("Sole black ..... Limora nigra"),
                {.numbering = std::string{kSteps}});
  EXPECT_EQ(read.sketch,
            "1[1] Shell visible -> 2\n1[2] Shell hidden -> 3\n1[3] Shell none -> 4\n"
            "2[a] Shell 2 mm high -> Parvora alba\n2[b] Shell 9 mm high -> Magnora alba\n"
            "3[a] Mantle red -> Nudora rufa\n3[b] Mantle black -> Nudora nigra\n"
            "4[a] Sole red -> Limora rufa\n4[b] Sole black -> Limora nigra\n");
}

// What word processors make of "bold" and of "keep with next".
constexpr std::string_view kKept = "<w:keepNext/>";
std::string bold(std::string_view text, std::string_view properties) {
  return paragraph_of(run(text, "<w:b/>"), properties);
}

TEST(DocxKeys, LinesSetAsTitlesEndTheLeadAbove) {
  auto const leads = [](std::string_view genus) {
    return paragraph("1 Scales large ..... 2") +
           paragraph("1′ Scales small ..... " + std::string{genus} + " bus") +
           paragraph("2 Tail red ..... " + std::string{genus} + " cus") +
           paragraph("2′ Tail black, with many others");
  };
  auto const read = read_body(bold("Clef générale", kKept) + leads("Aus") +
                              bold("Groupe 2. Longues queues", kKept) + leads("Rubraca"));
  EXPECT_EQ(read.sketch,
            "1[1] Scales large -> 2\n1[1′] Scales small -> Aus bus\n"
            "2[2] Tail red -> Aus cus\n2[2′] Tail black, with many others -> ?\n"
            "1[1] Scales large -> 2\n1[1′] Scales small -> Rubraca bus\n"
            "2[2] Tail red -> Rubraca cus\n2[2′] Tail black, with many others -> ?\n");
}

TEST(DocxKeys, LeadsInBoldTypeAreNoTitles) {
  auto const read =
      read_body(paragraph("Key to Aus") + bold("Wings clear", kKept) +
                paragraph("  Legs long ..... Aus bus") + paragraph("  Legs short ..... Aus cus") +
                bold("Wings dark ..... Aus dus", kKept));
  EXPECT_EQ(read.sketch,
            "1[] Wings clear -> 2\n1[] Wings dark -> Aus dus\n"
            "2[] Legs long -> Aus bus\n2[] Legs short -> Aus cus\n");
}

// A mark of a field of that kind, and its code.
std::string field(std::string_view kind) {
  return "<w:r><w:fldChar w:fldCharType=\"" + std::string{kind} + "\"/></w:r>";
}
constexpr std::string_view kContents =
    "<w:r><w:instrText xml:space=\"preserve\"> TOC \\o \"1-2\" </w:instrText></w:r>";

TEST(DocxKeys, TablesOfContentsAreNoLeads) {
  auto const entry = run("1. List of species") + "<w:r><w:tab/></w:r>" + run("2");
  auto const begin = field("begin") + std::string{kContents} + field("separate");
  auto const leads =
      paragraph("1 Scales large ..... 2") + paragraph("– Scales small ..... Aus bus") +
      paragraph("2 Tail red ..... Aus cus") + paragraph("– Tail black ..... Aus dus");
  constexpr std::string_view kLeads =
      "1[1] Scales large -> 2\n1[–] Scales small -> Aus bus\n"
      "2[2] Tail red -> Aus cus\n2[–] Tail black -> Aus dus\n";
  auto const heading = [](std::string_view text) {
    return paragraph(text, "<w:outlineLvl w:val=\"1\"/>");
  };
  auto const read =
      read_body(paragraph("Snakes of a valley") + paragraph_of(begin + entry) +
                paragraph_of(run("2. Key\t3") + field("end")) + heading("1. List of species") +
                paragraph("Aus bus, Aus cus.") + heading("2. Key") + leads);
  EXPECT_EQ(read.sketch, kLeads);
  // One without end reaches nowhere.
  EXPECT_EQ(read_body(paragraph_of(begin) + leads).sketch, kLeads);
}

TEST(DocxKeys, ColumnsOfCodesAndFiguresBehindTheDestinations) {
  auto const read = read_body(
      paragraph("Equipment") + table({cells({"Item", "Quantity"}), cells({"Lens", "1"})}) +
      paragraph("3. Keys", "<w:outlineLvl w:val=\"1\"/>") +
      paragraph("Table 3. Families of stoneflies") +
      table({cells({"Step", "Look for", "Result", "Code", "Fig."}),
             cells({"1a", "Gills branched", "Go to 2", "", "3.1"}),
             cells({"1b", "Gills none", "Go to 3", "", "3.1"}), cells({""}),
             cells({"2a", "Body flat, to 45 mm", "Pelissuridae", "2110", "3.2 a–b"}),
             cells({"2b", "Body round", "Acrossa", "2121", "3.2 a–b"}), cells({""}),
             cells({"3a", "Ocelli two", "Ombrillidae", "2200", ""}),
             cells({"3b", "Ocelli three", "Go to 4", "", ""}),
             cells({"3c", "Ocelli none", "Nemorvidae", "2300", ""}), cells({""}),
             cells({"4a", "Cerci long", "Isocrella", "2401", "3.6 a, 3.6 b"}),
             cells({"4b", "Cerci short", "Mandoperla", "2405", "3.6 a, 3.6 b"})}));
  EXPECT_EQ(read.sketch,
            "1[1a] Gills branched -> 2 (3.1)\n1[1b] Gills none -> 3 (3.1)\n"
            "2[2a] Body flat, to 45 mm -> Pelissuridae (2110 3.2 a–b)\n"
            "2[2b] Body round -> Acrossa (2121 3.2 a–b)\n"
            "3[3a] Ocelli two -> Ombrillidae (2200)\n3[3b] Ocelli three -> 4\n"
            "3[3c] Ocelli none -> Nemorvidae (2300)\n"
            "4[4a] Cerci long -> Isocrella (2401 3.6 a, 3.6 b)\n"
            "4[4b] Cerci short -> Mandoperla (2405 3.6 a, 3.6 b)\n");
}

// A parallel key under its title, and what tests put behind it.
std::string parallel_key() {
  return paragraph("Key A: Species of Ausella", "<w:outlineLvl w:val=\"1\"/>") +
         paragraph("1 Spire low ..... 2") + paragraph("1* Spire high ..... Ausella alta") +
         paragraph("2 Lip thin ..... Ausella cusa") + paragraph("2* Lip thick ..... Key B");
}
std::string parallel_key_read(std::string_view last_end) {
  return "1[1] Spire low -> 2\n1[1*] Spire high -> Ausella alta\n"
         "2[2] Lip thin -> Ausella cusa\n2[2*] Lip thick -> key: " +
         std::string{last_end} + "\n";
}

TEST(DocxKeys, NestedDecimalKeysBehindAKey) {
  auto const read = read_body(
      parallel_key() + paragraph("Key B: Forms of Ausella dusa", "<w:outlineLvl w:val=\"1\"/>") +
      paragraph("The forms are not sharply parted.") + paragraph("1 Whorls convex") +
      paragraph("1.1 Shell brown, clear") + paragraph("1.1.1 No band: A. dusa f. dusa") +
      paragraph("1.1.2 A dark band: A. dusa f. fusca") +
      paragraph("1.2 Shell white: A. dusa f. alba") + paragraph("2 Whorls flat") +
      paragraph("2.1 Navel wide: A. dusa f. lata") +
      paragraph("2.2 Navel narrow: A. dusa f. arta") +
      paragraph("Descriptions", "<w:outlineLvl w:val=\"1\"/>") +
      paragraph("Ausella alta. Shell 9 mm high."));
  EXPECT_EQ(read.sketch, parallel_key_read("Key B: Forms of Ausella dusa") +
                             "1[1] Whorls convex -> 2\n1[2] Whorls flat -> 4\n"
                             "2[1.1] Shell brown, clear -> 3\n"
                             "2[1.2] Shell white -> Ausella dusa f. alba\n"
                             "3[1.1.1] No band -> Ausella dusa f. dusa\n"
                             "3[1.1.2] A dark band -> Ausella dusa f. fusca\n"
                             "4[2.1] Navel wide -> Ausella dusa f. lata\n"
                             "4[2.2] Navel narrow -> Ausella dusa f. arta\n");
}

TEST(DocxKeys, KeysOfTwoLettersAmongAccounts) {
  auto const read = read_body(
      parallel_key() + paragraph("1. Ausella dusa Roe, Shells 9. 1836.") +
      paragraph("Shell 9 mm high, brown.") + paragraph("Two varieties are known:") +
      paragraph("a. Navel wide, open ..... 1a. A. dusa var. dusa") +
      paragraph("b. Navel narrow ..... 1b. A. dusa var. arta") +
      paragraph("Distribution. On chalk, in the hills of the north and along the rivers."));
  EXPECT_EQ(read.sketch, parallel_key_read("Key B") +
                             "1[a] Navel wide, open -> Ausella dusa var. dusa\n"
                             "1[b] Navel narrow -> Ausella dusa var. arta\n");
}

TEST(DocxKeys, KeysNamedBehindTheirGroup) {
  for (std::string_view const between : {", see ", ": see ", ": "}) {
    auto const read =
        read_body(paragraph("Key A") + paragraph("1 Wings clear ..... 2") +
                  paragraph("1* Wings dark ..... Ausella busa") +
                  paragraph("2 Legs long ..... Ausella cusa") +
                  paragraph("2* Legs short ..... Tolmella" + std::string{between} + "Key B") +
                  paragraph("Key B", kKept) + paragraph("1 Tail red ..... Tolmella rubra") +
                  paragraph("1* Tail black ..... Tolmella nigra"));
    EXPECT_EQ(read.sketch,
              "1[1] Wings clear -> 2\n1[1*] Wings dark -> Ausella busa\n"
              "2[2] Legs long -> Ausella cusa\n2[2*] Legs short -> key: Key B (Tolmella)\n"
              "1[1] Tail red -> Tolmella rubra\n1[1*] Tail black -> Tolmella nigra\n")
        << between;
  }
}

TEST(DocxKeys, ANestedKeyOfLettersBeforeThoseOfNumbers) {
  auto const indented = [](std::string_view text, std::string_view depth) {
    return paragraph(text, "<w:ind w:left=\"" + std::string{depth} + "\"/>");
  };
  auto const read = read_body(
      bold("Leaflet 6", kKept) + paragraph("Start at A, and read both choices.") +
      bold("Key 1. The first look", kKept) + indented("A Green all over", "0") +
      indented("B Flat sheets\nPool Lettuce (Viridulva lata)", "300") +
      indented("BB Tubes\nGut Laver (Enterulva bullosa)", "300") + indented("AA Not green", "0") +
      indented("D Brown, leathery   GO TO KEY 2", "300") +
      indented("DD Red or pink   GO TO KEY 3", "300") + paragraph("") +
      paragraph("[The letters are the translator's.]") + bold("Key 2. Brown weeds", kKept) +
      paragraph("1 With bladders ..... 2") + paragraph("1′ No bladders ..... Laminora rigida") +
      paragraph("2 Bladders in pairs ..... Fucomora gemella") +
      paragraph("2′ Bladders single ..... Fucomora torta") + bold("Key 3. Red weeds", kKept) +
      paragraph("1 Hard, chalky ..... Lithora rosea") + paragraph("1′ Soft ..... Purpurora umbra"));
  EXPECT_EQ(read.sketch,
            "A[A] Green all over -> B\nA[AA] Not green -> D\n"
            "B[B] Flat sheets -> Viridulva lata (Pool Lettuce)\nB[BB] Tubes -> Enterulva bullosa "
            "(Gut Laver)\n"
            "D[D] Brown, leathery -> key: Key 2. Brown weeds\n"
            "D[DD] Red or pink -> key: Key 3. Red weeds\n"
            "1[1] With bladders -> 2\n1[1′] No bladders -> Laminora rigida\n"
            "2[2] Bladders in pairs -> Fucomora gemella\n"
            "2[2′] Bladders single -> Fucomora torta\n"
            "1[1] Hard, chalky -> Lithora rosea\n1[1′] Soft -> Purpurora umbra\n");
}

TEST(DocxKeys, WordsInSmallerTypeBehindANameAreARemark) {
  auto const lead = [](std::string_view words, std::string_view name, std::string_view where) {
    return paragraph_of(run(std::string{words} + " — ") + run(name, "<w:b/>") + run(" (Bold) ") +
                        run(where, "<w:sz w:val=\"16\"/>"));
  };
  auto const read = read_body(
      paragraph("Key to Ausella") + paragraph("1 (4). Wings banded.") +
      lead("2 (3). One band. Legs pale.", "A. cincta", "Southern part.") +
      lead("3 (2). Two bands. Legs ringed.", "A. bifasciata", "Widely spread; also elsewhere.") +
      paragraph("4 (1). Wings plain.") + lead("5 (6). Legs red.", "A. rubra", "In the hills.") +
      lead("6 (5). Legs black.", "A. nigra",
           "Two forms: the nominate one on the plain and A. nigra montis Bold above 1500 m.") +
      paragraph_of(run("Ausella clavigera", "<w:b/>") + run(" Bold et Kurm, sp. nov.")) +
      paragraph("Male. Length 3.9 mm."));
  EXPECT_EQ(
      read.sketch,
      "1[1] Wings banded. -> 2\n1[4] Wings plain. -> 5\n"
      "2[2] One band. Legs pale. -> Ausella cincta (Southern part.)\n"
      "2[3] Two bands. Legs ringed. -> Ausella bifasciata (Widely spread; also elsewhere.)\n"
      "5[5] Legs red. -> Ausella rubra (In the hills.)\n"
      "5[6] Legs black. -> Ausella nigra (Two forms: the nominate one on the plain and A. nigra "
      "montis Bold above 1500 m.)\n");
}

TEST(DocxKeys, SmallerTypeEndsALeadForGood) {
  auto const dots = [](std::string_view words, std::string_view name) {
    return paragraph(std::string{words} + " . . . " + std::string{name} + " Starob.");
  };
  auto const read = read_body(
      paragraph("1 (4). Vertex long.") + dots("2 (3). Process turned up", "Zarkulia") +
      dots("3 (2). Process level", "Rhinodelpha") + paragraph("4 (1). Vertex short.") +
      paragraph("5 (8). Tibia with teeth.") + dots("6 (7). Vertex narrow", "Halimocixa") +
      dots("7 (6). Vertex wide", "Turanora") + dots("8 (5). Tibia bare", "Glabrifrons") +
      bold("Genus TURANORA Kurm., 1959", "<w:jc w:val=\"center\"/>") +
      bold("Key to Species", kKept) + paragraph("1 (2). Veins pale.") +
      paragraph_of(run("2 (1). Veins dark. — ") + run("T. nebulosa", "<w:b/>") + run(" Kurm. ") +
                   run("Two subspecies: one on the plain and T. nebulosa montis Kurm. on hills.",
                       "<w:sz w:val=\"16\"/>")) +
      paragraph_of(run("Turanora clavigera", "<w:b/>") + run(" Starob et Kurm, sp. nov.")));
  EXPECT_EQ(read.reading.edition.couplets.back().leads.back().destination_printed,
            "T. nebulosa Kurm.");
}

TEST(DocxKeys, NumberedRowsOfListsAreNoLeads) {
  auto const key = parallel_key();
  auto const stations =
      table({cells({"Station", "Place", "Bed", "Genera found"}),
             cells({"1", "Old Bridge", "boulders", ""}), cells({"2", "Small Oak", "gravel", ""}),
             cells({"3", "Duck Pond", "mud", ""})});
  auto const codes = table({cells({"Code", "Taxon", "Grade"}), cells({"2110", "Ausellidae", "9"}),
                            cells({"2121", "Busella", "10"}), cells({"2124", "Cusella", "10"}),
                            cells({"2200", "Dusellidae", "7"})});
  auto const wanted = parallel_key_read("Key B");
  EXPECT_EQ(read_body(key + bold("Records", kKept) + stations).sketch, wanted);
  EXPECT_EQ(read_body(key + bold("Taxon codes", kKept) + codes).sketch, wanted);
}

}  // namespace
}  // namespace keydrift::test
