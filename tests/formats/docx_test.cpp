#include "keydrift/formats/docx.hpp"

#include <gtest/gtest.h>

#include <array>

#include "docx_support.hpp"
#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"

namespace keydrift::test {
namespace {

using Lines = std::vector<std::string>;

// Two leads of couplet 1 that tests put their own words after.
std::string const kFirst = paragraph("1. Beak bifid ..... Aus bus");
std::string const kSecond = paragraph("– Beak entire ..... Aus cus");

// What the first lead says when its words are these runs.
std::string words_of(std::string const& runs, DocxParts const& parts = {}) {
  auto const read =
      read_body(paragraph_of(run("1. ") + runs + run(" ..... Aus bus")) + kSecond, parts);
  EXPECT_FALSE(read.sketch.empty()) << (read.findings.empty() ? "" : read.findings.front());
  if (read.sketch.empty()) return "";
  return read.reading.edition.couplets[0].leads[0].text;
}

TEST(Docx, ReadsParagraphsInOrder) {
  auto const read = read_body(
      paragraph("Key to Aus") + paragraph("") + paragraph("1. Beak bifid ..... 2") +
      paragraph("– Beak entire ..... Aus bus") + paragraph("2. Spike long ..... Aus cus") +
      paragraph("– Spike short ..... Aus dus"));
  EXPECT_EQ(read.findings, Lines{});
  EXPECT_EQ(read.lines,
            "Key to Aus\n\n1. Beak bifid ..... 2\n– Beak entire ..... Aus bus\n"
            "2. Spike long ..... Aus cus\n– Spike short ..... Aus dus\n");
  EXPECT_EQ(read.sketch,
            "1[1] Beak bifid -> 2\n1[–] Beak entire -> Aus bus\n"
            "2[2] Spike long -> Aus cus\n2[–] Spike short -> Aus dus\n");
}

TEST(Docx, PlacesAreParagraphsAndTypedCharacters) {
  auto const read = read_body(paragraph("Key") + paragraph("") +
                              paragraph("1. Größe klein ..... Aus bus") + kSecond);
  auto const& lead = read.reading.edition.couplets.at(0).leads.at(0);
  EXPECT_EQ(lead.place.line, 3U);
  EXPECT_EQ(lead.destination_place.line, 3U);
  EXPECT_EQ(lead.destination_place.column, 22U);
  EXPECT_EQ(read.reading.edition.couplets[0].leads[1].place.line, 4U);
}

TEST(Docx, JoinsRunsAndKeepsTheirSpecialCharacters) {
  EXPECT_EQ(words_of(run("Be") + run("ak bi", "<w:b/><w:caps/>") + run("fid")), "Beak bifid");
  EXPECT_EQ(words_of("<w:r><w:t>Beak red</w:t><w:noBreakHyphen/><w:t>brown, bi</w:t>"
                     "<w:softHyphen/><w:t>fid</w:t></w:r>"),
            "Beak red-brown, bifid");
  EXPECT_EQ(words_of("<w:r><w:t xml:space=\"preserve\">Beak 4 </w:t>"
                     "<w:sym w:font=\"Symbol\" w:char=\"F0B4\"/><w:t xml:space=\"preserve\"> 2 mm, "
                     "</w:t><w:sym w:font=\"Aus Sans\" w:char=\"2642\"/></w:r>"),
            "Beak 4 × 2 mm, ♂");
  EXPECT_EQ(words_of(run("Beak 5 ") + run("mm", "<w:rFonts w:ascii=\"Symbol\"/>") + run(" long")),
            "Beak 5 μμ long");
}

TEST(Docx, SaysWhichSymbolsItCannotTell) {
  auto const read =
      read_body(kFirst + paragraph_of(run("– Beak ") +
                                      "<w:r><w:sym w:font=\"Aus Signs\" w:char=\"F041\"/></w:r>" +
                                      run(" entire ..... Aus cus")));
  EXPECT_EQ(read.reading.edition.couplets.at(0).leads.at(1).text, "Beak □ entire");
  EXPECT_EQ(read.findings.at(0),
            "k.docx:2:8: warning: a symbol of the font \"Aus Signs\" cannot be told and is read as "
            "\"□\" [unknown-symbol] (type the character itself in the word processor)");
}

TEST(Docx, NamesInItalicsEndLeads) {
  constexpr auto kItalic = "<w:i/>";
  DocxParts const styles{.styles =
                             "<w:style w:type=\"character\" w:styleId=\"Taxon\"><w:rPr>"
                             "<w:i/></w:rPr></w:style>"};
  auto const read = read_body(
      paragraph("Key to Quagga") +
          paragraph_of(run("1. Beak bifid, as in ") + run("Quagga bifax", kItalic) + run(" ") +
                       run("Quag", kItalic) + run("ga rubo", kItalic) + run(" Roe, 1901")) +
          paragraph_of(run("1. Beak entire, unlike that of ") + run("Quagga rubo", kItalic) +
                       run(" Quagga", "<w:rStyle w:val=\"Taxon\"/>") +
                       run(" sp. 2", "<w:rStyle w:val=\"Taxon\"/>")),
      styles);
  EXPECT_EQ(read.sketch,
            "1[1] Beak bifid, as in Quagga bifax -> Quagga rubo\n"
            "1[1] Beak entire, unlike that of Quagga rubo -> Quagga sp. 2\n");
  // Where the line is set in the offset is still that of the name.
  auto const nested = read_body(
      paragraph("Key to Quagga") + paragraph("1. Beak bifid ") +
      paragraph_of(run("2. Wings pale ") + run("Quagga bifax", kItalic),
                   "<w:ind w:left=\"720\"/>") +
      paragraph_of(run("2. Wings dark ") + run("Quagga rubo", kItalic), "<w:ind w:left=\"720\"/>") +
      paragraph_of(run("1. Beak entire ") + run("Quagga elo", kItalic)));
  EXPECT_EQ(nested.sketch,
            "1[1] Beak bifid -> 2\n1[1] Beak entire -> Quagga elo\n"
            "2[2] Wings pale -> Quagga bifax\n2[2] Wings dark -> Quagga rubo\n");
}

TEST(Docx, BreaksEndLines) {
  auto const read =
      read_body(paragraph("1. Beak bifid ..... Aus bus\n– Beak entire ..... Aus cus"));
  EXPECT_EQ(read.lines, "1. Beak bifid ..... Aus bus\n– Beak entire ..... Aus cus\n");
  EXPECT_EQ(read.sketch, "1[1] Beak bifid -> Aus bus\n1[–] Beak entire -> Aus cus\n");
  EXPECT_EQ(read.reading.edition.couplets.at(0).leads.at(1).place.line, 1U);
  EXPECT_EQ(read.reading.edition.couplets[0].leads[1].place.column, 29U);
  auto const paged =
      read_body(kFirst + paragraph_of("<w:r><w:br w:type=\"page\"/></w:r>") + kSecond);
  EXPECT_EQ(paged.sketch, read.sketch);
}

TEST(Docx, ReadsWhatIsWrapped) {
  EXPECT_EQ(
      words_of("<w:hyperlink>" + run("Beak") + "</w:hyperlink><w:smartTag>" + run(" bifid") +
               "</w:smartTag><w:sdt><w:sdtPr><w:text/></w:sdtPr><w:sdtContent>" + run(", hard") +
               "</w:sdtContent></w:sdt><w:customXml>" + run(", red") + "</w:customXml>"),
      "Beak bifid, hard, red");
  auto const block =
      read_body("<w:sdt><w:sdtPr/><w:sdtContent>" + kFirst + kSecond + "</w:sdtContent></w:sdt>");
  EXPECT_EQ(block.sketch, "1[1] Beak bifid -> Aus bus\n1[–] Beak entire -> Aus cus\n");
}

TEST(Docx, TakesTheResultsOfFieldsAndNotTheirCode) {
  auto const mark = [](std::string const& kind) {
    return "<w:r><w:fldChar w:fldCharType=\"" + kind + "\"/></w:r>";
  };
  auto const code = [](std::string const& text) {
    return "<w:r><w:instrText>" + text + "</w:instrText></w:r>";
  };
  auto const read = read_body(
      paragraph_of(run("1. Beak bifid ..... ") + mark("begin") + code(" REF _Ref1 \\h ") +
                   mark("separate") + run("2") + mark("end")) +
      paragraph_of(run("– Beak entire ..... ") + "<w:fldSimple w:instr=\" REF _Ref2 \">" +
                   run("3") + "</w:fldSimple>") +
      paragraph_of(run("2. Spike long ..... Aus bus") + mark("begin") + code(" XE \"Aus bus\" ") +
                   mark("end")) +
      // A field within the code of another, whose result is code as well.
      paragraph_of(run("– Spike short") + mark("begin") + code(" IF ") + mark("begin") +
                   code("REF x") + mark("separate") + run("lost") + mark("end") + code("= 1 ") +
                   mark("separate") + run(" ..... Aus cus") + mark("end")) +
      paragraph("3. Leaf long ..... Aus dus") + paragraph("– Leaf short ..... Aus eus"));
  EXPECT_EQ(read.findings, Lines{});
  EXPECT_EQ(read.sketch,
            "1[1] Beak bifid -> 2\n1[–] Beak entire -> 3\n2[2] Spike long -> Aus bus\n"
            "2[–] Spike short -> Aus cus\n3[3] Leaf long -> Aus dus\n3[–] Leaf short -> Aus eus\n");
}

TEST(Docx, KeepsTheTextOfAFieldWithoutEnd) {
  auto const read = read_body(kFirst +
                              paragraph_of(run("– Beak entire") +
                                           "<w:r><w:fldChar w:fldCharType=\"begin\"/></w:r>" +
                                           run(" ..... Aus cus")) +
                              paragraph("Note: seen once"));
  EXPECT_EQ(read.sketch, "1[1] Beak bifid -> Aus bus\n1[–] Beak entire -> Aus cus\n");
  ASSERT_FALSE(read.findings.empty());
  EXPECT_EQ(read.findings[0],
            "k.docx:2:14: warning: a field does not end; its code was kept as text "
            "[damaged-field] (update the fields in the word processor and save it again)");
}

TEST(Docx, ReadsTrackedChangesAsAccepted) {
  auto const deleted = [](std::string const& text) {
    return "<w:del w:id=\"1\" w:date=\"2021-03-04T10:00:00Z\"><w:r><w:delText>" + text +
           "</w:delText></w:r></w:del>";
  };
  auto const inserted = [](std::string const& text) {
    return "<w:ins w:id=\"2\" w:date=\"2021-05-06T10:00:00Z\">" + run(text) + "</w:ins>";
  };
  auto const read = read_body(
      paragraph_of(run("1. Beak ") + deleted("entire") + inserted("bifid") +
                   run(" ..... Aus bus")) +
      // The end of this paragraph is deleted: its text runs on into the next.
      paragraph_of(run("– Beak"), "<w:rPr><w:del w:date=\"2021-04-01T00:00:00Z\"/></w:rPr>") +
      paragraph(" entire ..... Aus cus") +
      paragraph_of(deleted("– Beak none ..... Aus dus"), "<w:rPr><w:del/></w:rPr>") +
      paragraph_of("<w:moveFrom w:id=\"4\">" + run("moved away") + "</w:moveFrom>",
                   "<w:rPr><w:moveFrom/></w:rPr>") +
      paragraph_of("<w:moveTo w:id=\"4\">" + run("Note: moved here") + "</w:moveTo>"));
  EXPECT_EQ(read.lines,
            "1. Beak bifid ..... Aus bus\n– Beak entire ..... Aus cus\nNote: moved here\n");
  EXPECT_EQ(read.findings,
            Lines{"k.docx:1:9: information: tracked changes are read as accepted: 1 insertion, 4 "
                  "deletions and 1 move of 2021-03-04 to 2021-05-06 [tracked-changes] (accept or "
                  "reject them in the word processor if that is not what is meant)"});
}

TEST(Docx, ReadsInsertedRowsAndNotDeletedOnes) {
  auto const cells = [](std::string const& a, std::string const& b, std::string const& c) {
    return "<w:tc>" + paragraph(a) + "</w:tc><w:tc>" + paragraph(b) + "</w:tc><w:tc>" +
           paragraph(c) + "</w:tc>";
  };
  auto const read = read_body(table(
      {"<w:tr>" + cells("1", "Beak bifid", "Aus bus") + "</w:tr>",
       "<w:tr><w:trPr><w:del/></w:trPr>" + cells("–", "Beak none", "Aus dus") + "</w:tr>",
       "<w:tr><w:trPr><w:ins/></w:trPr>" + cells("–", "Beak entire", "Aus cus") + "</w:tr>"}));
  EXPECT_EQ(read.sketch, "1[1] Beak bifid -> Aus bus\n1[–] Beak entire -> Aus cus\n");
  EXPECT_EQ(
      read.findings.at(0).substr(0, 89),
      "k.docx:4:1: information: tracked changes are read as accepted: 1 insertion and 1 deletion");
}

TEST(Docx, KeepsLettersBesideAMergedNumberOutOfTheWords) {
  auto const merged = [](std::string_view text, std::string_view value) {
    return "<w:tcPr><w:vMerge" + std::string{value} + "/></w:tcPr>" + paragraph(text);
  };
  std::string const restart = " w:val=\"restart\"";
  auto const reading = test::read_body(table(
      {row({merged("1", restart), paragraph("a"), paragraph("Wings clear"), paragraph("2")}),
       row({merged("", ""), paragraph("b"), paragraph("Wings dark"), paragraph("Aus bus")}),
       row({merged("2", restart), paragraph("a"), paragraph("Legs long"), paragraph("Aus cus")}),
       row({merged("", ""), paragraph("b"), paragraph("Legs short"), paragraph("Aus dus")})}));
  EXPECT_EQ(reading.sketch,
            "1[1 a] Wings clear -> 2\n1[b] Wings dark -> Aus bus\n"
            "2[2 a] Legs long -> Aus cus\n2[b] Legs short -> Aus dus\n");
}

TEST(Docx, TakesNoHeadingWithANumberForALead) {
  DocxParts const parts{
      .styles =
          "<w:style w:type=\"paragraph\" w:styleId=\"H\"><w:name w:val=\"heading 1\"/>"
          "<w:pPr><w:outlineLvl w:val=\"0\"/></w:pPr></w:style>"};
  std::string const style = "<w:pStyle w:val=\"H\"/>";
  auto const leads = paragraph("1\tWings clear\tAus bus") + paragraph("–\tWings dark\t2") +
                     paragraph("2\tLegs long\tAus cus") + paragraph("–\tLegs short\tAus dus");
  constexpr std::string_view kLeads =
      "1[1] Wings clear -> Aus bus\n1[–] Wings dark -> 2\n"
      "2[2] Legs long -> Aus cus\n2[–] Legs short -> Aus dus\n";
  EXPECT_EQ(
      read_body(paragraph("2. Key to species of Aus", style) + leads +
                    paragraph("3. Descriptions", style) +
                    paragraph("3.1. Aus bus Varro, 1901", style) + paragraph("Body 5 mm long."),
                parts)
          .sketch,
      kLeads);
  // Nor one that bears the number of the last couplet.
  EXPECT_EQ(read_body(leads + paragraph("2. Material", style) + paragraph("Twelve sheets."), parts)
                .sketch,
            kLeads);
  // Leads that are set as headings stay leads.
  EXPECT_EQ(read_body(paragraph("1. Wings clear ..... Aus bus", style) +
                          paragraph("1. Wings dark ..... 2", style) +
                          paragraph("2. Legs long ..... Aus cus", style) +
                          paragraph("2. Legs short ..... Aus dus", style),
                      parts)
                .sketch,
            "1[1] Wings clear -> Aus bus\n1[1] Wings dark -> 2\n"
            "2[2] Legs long -> Aus cus\n2[2] Legs short -> Aus dus\n");
}

TEST(Docx, TakesNoNumberedTitleOfAKeyForALead) {
  auto const heading = "<w:outlineLvl w:val=\"0\"/>";
  auto const read = read_body(
      paragraph("1. Einleitung", heading) + paragraph("Acht Arten.") +
      paragraph("2. Bestimmungsschlüssel", heading) +
      paragraph("Alle Maße an trockenem Material.") + paragraph("1 Blätter grundständig ..... 2") +
      paragraph("1* Blätter am Stängel ..... Aus bus") + paragraph("2 Hülle lang ..... Aus cus") +
      paragraph("2* Hülle kurz ..... Aus dus"));
  EXPECT_EQ(read.sketch,
            "1[1] Blätter grundständig -> 2\n1[1*] Blätter am Stängel -> Aus bus\n"
            "2[2] Hülle lang -> Aus cus\n2[2*] Hülle kurz -> Aus dus\n");
}

TEST(Docx, RowsOfAWholeCoupletWithItsNumberOnce) {
  auto const lines = [](std::string_view one, std::string_view other) {
    return paragraph(one) + paragraph(other);
  };
  EXPECT_EQ(
      read_body(
          paragraph("Key to Aus") +
          table({row({paragraph("1"), lines("Wings clear", "Wings dark"), lines("2", "Aus bus")}),
                 row({paragraph("2"), lines("Legs pale", "Legs dark"),
                      lines("Aus cus", "Aus dus")})}))
          .sketch,
      "1[1] Wings clear -> 2\n1[] Wings dark -> Aus bus\n"
      "2[2] Legs pale -> Aus cus\n2[] Legs dark -> Aus dus\n");
  // A lead a row, its words and its name of two lines.
  EXPECT_EQ(
      read_body(
          paragraph("Key to Aus") +
          table(
              {row({paragraph("1"), lines("Wings clear", "(Fig. 2)"), lines("Aus bus", "p. 34")}),
               row({paragraph("–"), lines("Wings dark", "(Fig. 3)"), lines("Aus cus", "p. 35")})}))
          .sketch,
      "1[1] Wings clear (Fig. 2) -> Aus bus (p. 34)\n"
      "1[–] Wings dark (Fig. 3) -> Aus cus (p. 35)\n");
}

TEST(Docx, HeadingsEndTheLeadAbove) {
  auto const heading = [](std::string_view text) {
    return paragraph(text, "<w:outlineLvl w:val=\"1\"/>");
  };
  auto const leads = paragraph("1 Rizoma longo – Aus bus") +
                     paragraph("1 Rizoma curto, escamas 0,8 – A. cus var. cus");
  auto const read = read_body(heading("Chave de Aus") + leads + heading("Tratamento taxonômico") +
                              heading("Aus bus Brev.") + paragraph("Rizoma longo-reptante. Rara."));
  EXPECT_EQ(read.sketch,
            "1[1] Rizoma longo -> Aus bus\n"
            "1[1] Rizoma curto, escamas 0,8 -> Aus cus var. cus\n");
  // A nested key whose leads are set as headings of levels.
  auto const nested = read_body(
      paragraph("Key to Aus") + heading("Wings clear") + heading("  Legs long ..... Aus bus") +
      heading("  Legs short ..... Aus cus") + heading("Wings dark ..... Aus dus"));
  EXPECT_EQ(nested.sketch,
            "1[] Wings clear -> 2\n"
            "1[] Wings dark -> Aus dus\n"
            "2[] Legs long -> Aus bus\n"
            "2[] Legs short -> Aus cus\n");
}

TEST(Docx, LetsLeadsOfSerialTablesGoOn) {
  std::vector<std::string> rows;
  for (auto const& [label, words, end] :
       std::vector<std::array<std::string, 3>>{{"1 (4)", "Wings clear", ""},
                                               {"2 (3)", "Legs long", "Aus bus"},
                                               {"3 (2)", "Legs short", "Aus cus"},
                                               {"4 (1)", "Wings dark", ""},
                                               {"5 (6)", "Head red", "Aus dus"},
                                               {"6 (5)", "Head black", "Aus eus"}}) {
    rows.push_back(row({paragraph(label), paragraph(words), paragraph(end)}));
  }
  EXPECT_EQ(read_body(table(rows)).sketch,
            "1[1] Wings clear -> 2\n1[4] Wings dark -> 5\n2[2] Legs long -> Aus bus\n"
            "2[3] Legs short -> Aus cus\n5[5] Head red -> Aus dus\n5[6] Head black -> Aus eus\n");
}

TEST(Docx, LeavesHiddenTextOutAndSaysSo) {
  auto const read = read_body(
      paragraph_of(run("1. Beak bifid") + run(" not rarely", "<w:vanish/>") +
                   run(", red", "<w:vanish w:val=\"0\"/>") + run(" ..... Aus bus")) +
          kSecond + paragraph_of(run("all hidden", "<w:vanish/>"), "<w:rPr><w:vanish/></w:rPr>") +
          paragraph_of(run("by style", "<w:rStyle w:val=\"Ghost\"/>")),
      {.styles = "<w:style w:type=\"character\" w:styleId=\"Ghost\"><w:basedOn w:val=\"Base\"/>"
                 "</w:style><w:style w:type=\"character\" w:styleId=\"Base\"><w:rPr><w:vanish/>"
                 "</w:rPr></w:style>"});
  EXPECT_EQ(read.lines, "1. Beak bifid, red ..... Aus bus\n– Beak entire ..... Aus cus\n\n");
  EXPECT_EQ(read.findings,
            Lines{"k.docx:1:14: warning: hidden text was left out at 3 places [hidden-text] "
                  "(unhide it in the word processor if it belongs to the key)"});
}

TEST(Docx, SaysWhereTextIsStruckThrough) {
  auto const read =
      read_body(paragraph_of(run("1. Beak bifid") + run(" or not", "<w:strike/>") +
                             run(", red", "<w:strike w:val=\"0\"/>") + run(" ..... Aus bus")) +
                kSecond);
  EXPECT_EQ(read.lines, "1. Beak bifid or not, red ..... Aus bus\n– Beak entire ..... Aus cus\n");
  EXPECT_EQ(read.findings,
            Lines{"k.docx:1:14: warning: text that is struck through was read like any other "
                  "[struck-text] (delete it in the word processor if it does not belong to the "
                  "key)"});
}

TEST(Docx, KeepsDigitsAboveAndBelowTheLine) {
  auto const raised = [](std::string_view text) {
    return run(text, "<w:vertAlign w:val=\"superscript\"/>");
  };
  auto const read =
      read_body(paragraph_of(run("1. Area 5 mm") + raised("2") + run("; H") +
                             run("2", "<w:vertAlign w:val=\"subscript\"/>") + run("O in the 5") +
                             raised("th") + run(" cell ..... Aus bus")) +
                kSecond);
  EXPECT_EQ(read.lines.substr(0, read.lines.find('\n')),
            "1. Area 5 mm²; H₂O in the 5th cell ..... Aus bus");
}

TEST(Docx, KeepsFootnotesAsNotesAndSaysWhatStandsBeside) {
  DocxParts parts;
  parts.footnotes = "<w:footnote w:type=\"separator\" w:id=\"0\">" + paragraph("----") +
                    "</w:footnote><w:footnote w:id=\"2\">" + paragraph("Seen in spring only.") +
                    paragraph("Twice.") + "</w:footnote>";
  parts.comments = "<w:comment w:id=\"7\">" + paragraph("Is this true?") + "</w:comment>";
  parts.header = paragraph("Aus manuscript, draft");
  auto const read = read_body(
      paragraph_of(run("1. Beak bifid") + "<w:r><w:footnoteReference w:id=\"2\"/></w:r>" +
                   run(" ..... Aus bus") + "<w:r><w:commentReference w:id=\"7\"/></w:r>") +
          kSecond,
      parts);
  EXPECT_EQ(read.sketch, "1[1] Beak bifid -> Aus bus\n1[–] Beak entire -> Aus cus\n");
  EXPECT_TRUE(read.reading.edition.notes.empty());
  EXPECT_EQ(read.reading.edition.couplets[0].leads[0].notes,
            std::vector<std::string>{"Seen in spring only. Twice."});
  EXPECT_EQ(read.findings,
            (Lines{"k.docx:1:1: information: 1 header or footer is not read [headers]",
                   "k.docx:1:14: information: 1 footnote was kept as a note [footnotes]",
                   "k.docx:1:28: information: the manuscript has 1 comment, which is not read "
                   "[comments] (put into the text what belongs to the key)"}));
}

TEST(Docx, ReadsTextBoxesOnceAndAfterTheirAnchor) {
  auto const box =
      "<w:txbxContent>" + paragraph("– Beak entire ..... Aus cus") + "</w:txbxContent>";
  auto const read = read_body(paragraph_of(
      run("1. Beak bifid") + "<w:r><mc:AlternateContent><mc:Choice Requires=\"wps\"><w:drawing>" +
      box + "</w:drawing></mc:Choice><mc:Fallback><w:pict><v:textbox>" + box +
      "</v:textbox></w:pict></mc:Fallback></mc:AlternateContent></w:r>" + run(" ..... Aus bus")));
  EXPECT_EQ(read.lines, "1. Beak bifid ..... Aus bus\n– Beak entire ..... Aus cus\n");
  EXPECT_EQ(read.findings,
            Lines{"k.docx:1:14: information: 1 text box was read after the paragraph that it is "
                  "anchored in [text-boxes] (see whether its text is meant to stand there)"});
}

TEST(Docx, ReadsTheStrictForm) {
  auto const read = read_body(kFirst + kSecond, {.strict = true});
  EXPECT_EQ(read.findings, Lines{});
  EXPECT_EQ(read.sketch, "1[1] Beak bifid -> Aus bus\n1[–] Beak entire -> Aus cus\n");
}

TEST(Docx, AccountsForEveryLine) {
  auto const read = read_body(paragraph("Key to Aus") + kFirst + kSecond + paragraph("\n\nEnd."));
  auto const& source = read.reading.source;
  ASSERT_EQ(source.lines.size(), 6U);
  EXPECT_EQ(source.lines[1].line, 2U);
  EXPECT_EQ(source.lines[5].line, 4U);
  EXPECT_STREQ(to_word(source.lines[1].kind), "lead");
}

TEST(Docx, IsToldByItsBytesWhateverItsName) {
  auto const bytes = docx_bytes(kFirst + kSecond);
  auto const loaded = read_edition({.name = "key.txt", .bytes = bytes});
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(loaded.value->edition.couplets.size(), 1U);
  auto const text = read_edition({.name = "key.docx",
                                  .bytes = "1. Beak bifid ..... Aus\n"
                                           "– Beak entire ..... Bus\n"});
  EXPECT_TRUE(text);
  // The compound file that holds a manuscript under a password.
  std::string locked = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1";
  for (char const c : std::string{"EncryptedPackage"}) (locked += c) += '\0';
  EXPECT_EQ(one_line_each(read_edition({.name = "k.docx", .bytes = locked}).findings),
            Lines{"k.docx:1:1: error: this is a manuscript that is locked with a password "
                  "[unsupported-file] (open it in the word processor and save it without a "
                  "password)"});
}

TEST(Docx, SaysWhichPartIsMissingOrBroken) {
  auto entries = docx_entries(kFirst + kSecond, {.styles = "<w:style/>"});
  auto without = entries;
  without.erase(without.begin() + 1);
  EXPECT_EQ(read_manuscript_bytes(zip_bytes(without)).findings,
            Lines{"k.docx:1:1: error: its part \"word/document.xml\" is missing "
                  "[damaged-manuscript] (open it in a word processor, save it again as .docx, or "
                  "as plain text (UTF-8))"});
  auto no_styles = entries;
  no_styles.erase(no_styles.begin() + 2);
  EXPECT_EQ(read_manuscript_bytes(zip_bytes(no_styles)).findings.at(0).substr(0, 54),
            "k.docx:1:1: error: its part \"word/styles.xml\" is missi");
  auto cut = entries;
  cut[1].bytes.resize(cut[1].bytes.size() - 20);
  auto const findings = read_manuscript_bytes(zip_bytes(cut)).findings;
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].substr(0, 26), "k.docx (word/document.xml)") << findings[0];
  EXPECT_NE(findings[0].find("[malformed-xml]"), std::string::npos) << findings[0];
  auto entities = entries;
  entities[1].bytes =
      "<!DOCTYPE w [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;\">]>"
      "<w:document xmlns:w=\"x\"><w:body>&b;</w:body></w:document>";
  auto const refused = read_manuscript_bytes(zip_bytes(entities));
  EXPECT_EQ(refused.lines, "");
  EXPECT_FALSE(refused.findings.empty());
  auto other = entries;
  other[1].bytes = "<w:workbook xmlns:w=\"x\"/>";
  EXPECT_EQ(read_manuscript_bytes(zip_bytes(other)).findings.at(0).substr(0, 75),
            "k.docx:1:1: error: its part \"word/document.xml\" is no text of a manuscript ");
}

// Whatever is cut off or changed, there is a whole reading or an error.
TEST(Docx, NeverYieldsAnEditionTogetherWithAnError) {
  auto const whole = docx_bytes(kFirst + kSecond, {.styles = "<w:style/>"});
  auto const check = [](std::string const& bytes) {
    auto const loaded = read_edition({.name = "k.docx", .bytes = bytes});
    bool error = false;
    for (auto const& finding : loaded.findings)
      error = error || finding.severity == Severity::error;
    EXPECT_NE(loaded.value.has_value(), error);
    return loaded.value.has_value();
  };
  for (std::size_t size = 0; size < whole.size(); ++size) {
    EXPECT_FALSE(check(whole.substr(0, size))) << size;
  }
  for (std::size_t i = 0; i < whole.size(); ++i) {
    auto damaged = whole;
    damaged[i] = static_cast<char>(damaged[i] ^ (i % 2 == 0 ? 0xFF : 0x10));
    static_cast<void>(check(damaged));
  }
  // Damage to the text itself, which no checksum covers.
  auto entries = docx_entries(kFirst + kSecond, {.styles = "<w:style/>"});
  for (std::size_t i = 0; i < entries[1].bytes.size(); i += 3) {
    auto damaged = entries;
    damaged[1].bytes[i] = i % 2 == 0 ? '<' : 'x';
    static_cast<void>(check(zip_bytes(damaged)));
  }
}

}  // namespace
}  // namespace keydrift::test
