#include <gtest/gtest.h>

#include "jats_support.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using test::article;
using test::key_section;
using test::kTwoCouplets;
using test::one_line_each;
using test::read_article;
using test::rows;
using test::sec;
using test::sketch_article;
using Lines = std::vector<std::string>;

constexpr std::string_view kFourRows =
    "1|Wings clear|2\n–|Wings dark|Aus bus\n2|Legs long|Aus cus\n–|Legs short|Aus dus";

TEST(JatsText, Paragraphs) {
  EXPECT_EQ(sketch_article(article(
                sec("Key to Aus",
                    "<p>1 Wings clear ... 2</p>\n<p>– Wings dark ... <italic>Aus bus</italic></p>\n"
                    "<p>2 Legs long ... <italic>Aus cus</italic></p><p>– Legs short ... "
                    "<italic>Aus dus</italic></p>"))),
            kTwoCouplets);
  // All of a key in one paragraph, its leads parted by breaks.
  EXPECT_EQ(sketch_article(article(sec("Key to Aus",
                                       "<p>1 Wings clear ... 2<break/>– Wings dark ... Aus "
                                       "bus<break/>2 Legs long ... Aus cus<break/>– Legs short "
                                       "... Aus dus</p>"))),
            kTwoCouplets);
  EXPECT_EQ(sketch_article(article(sec("Key to Aus",
                                       "<preformat>1  Wings clear ..... 2\n–  Wings dark .. Aus "
                                       "bus\n2  Legs long    Aus cus\n–  Legs short    Aus dus"
                                       "</preformat>"))),
            kTwoCouplets);
}

TEST(JatsText, NamesAndNumbersThatAreMarkedUpEndALead) {
  EXPECT_EQ(sketch_article(article(
                sec("Key to Aus",
                    "<p>1. Wings clear, setae 5 <xref ref-type=\"other\" rid=\"k2\">2</xref></p>\n"
                    "<p>– Wings dark, unlike those of <italic>Aus cus</italic> <tp:taxon-name>Aus "
                    "bus</tp:taxon-name> Smith, 1900 (<xref ref-type=\"fig\">Fig. 3</xref>)</p>\n"
                    "<p>2. Legs long, as in <italic>Aus bus</italic> <bold>3</bold></p>\n"
                    "<p>– Legs short <italic>Aus cus</italic> or <italic>A. dus</italic></p>\n"
                    "<p>3. Legs pale <italic>Aus eus</italic></p><p>– Legs dark, as in <italic>Aus "
                    "bus</italic> <italic>Aus fus</italic> (in part)</p>"))),
            "1[1] Wings clear, setae 5 -> 2\n"
            "1[–] Wings dark, unlike those of Aus cus -> Aus bus\n"
            "2[2] Legs long, as in Aus bus -> 3\n2[–] Legs short -> Aus cus + Aus dus\n"
            "3[3] Legs pale -> Aus eus\n3[–] Legs dark, as in Aus bus -> Aus fus (in part)\n");
}

TEST(JatsText, SignsBetweenThePartsOfANameTouchThem) {
  auto const part = [](std::string_view type, std::string_view word) {
    return "<tp:taxon-name-part taxon-name-part-type=\"" + std::string{type} + "\">" +
           std::string{word} + "</tp:taxon-name-part>";
  };
  auto const name = [&](std::string_view genus, std::string_view species) {
    return "<tp:taxon-name>" + part("genus", genus) + " (" + part("subgenus", "Neaus") + ") " +
           part("species", species) + "</tp:taxon-name>";
  };
  EXPECT_EQ(sketch_article(article(sec(
                "Key to Aus", "<p>1 Wings clear ... " + name("Aus", "bus") +
                                  "</p>\n<p>– Wings dark ... 2</p>\n<p>2 Legs long ... " +
                                  name("Aus", "cus") + "</p>\n<p>– Legs short ... <tp:taxon-name>" +
                                  part("genus", "Aus") + part("species", "dus") +
                                  "</tp:taxon-name>, " + "<tp:taxon-name>" + part("genus", "Aus") +
                                  part("species", "eus") + "</tp:taxon-name></p>"))),
            "1[1] Wings clear -> Aus (Neaus) bus\n1[–] Wings dark -> 2\n"
            "2[2] Legs long -> Aus (Neaus) cus\n2[–] Legs short -> Aus dus + Aus eus\n");
}

TEST(JatsText, ItalicsNeedNoLatinEnding) {
  EXPECT_EQ(
      sketch_article(article(
          sec("Key to the genera",
              "<p>1. Wings with <italic>2</italic> spots <italic>Aust novak</italic> Smith</p>\n"
              "<p>– Wings dark, often with those of <italic>Dus</italic> mixed <bold>2</bold></p>\n"
              "<p>2. Legs long <italic>Cus</italic></p>\n"
              "<p>– Legs short, not those of <italic>Eus fus</italic> which are pale "
              "<italic>Dus</italic> (in part)</p>"))),
      "1[1] Wings with 2 spots -> Aust novak\n"
      "1[–] Wings dark, often with those of Dus mixed -> 2\n2[2] Legs long -> Cus\n"
      "2[–] Legs short, not those of Eus fus which are pale -> Dus (in part)\n");
  // A name that the words go on after is no destination.
  EXPECT_EQ(sketch_article(article(sec(
                "Key to Aus",
                "<p>1. Wings clear <bold>2</bold></p><p>– Wings those of <italic>Aus cus</italic> "
                "which is pale ... Aus bus</p><p>2. Legs beside <italic>Aus cus</italic> always "
                "long ... Aus dus</p><p>– Legs short, rivals <italic>Aus bus</italic> often "
                "longer than all others are</p>"))),
            "1[1] Wings clear -> 2\n1[–] Wings those of Aus cus which is pale -> Aus bus\n"
            "2[2] Legs beside Aus cus always long -> Aus dus\n"
            "2[–] Legs short, rivals Aus bus often longer than all others are -> ?\n");
}

TEST(JatsText, NumbersOfTaxaStandBeforeTheirNames) {
  EXPECT_EQ(sketch_article(article(
                sec("Key to Aus",
                    "<p>1. Wings clear &#8212; 2<break/>1. Wings dark <bold>4. Ausella</bold>"
                    "<break/>2. Legs long: <bold>8a.</bold> <italic>Aus cus</italic><break/>"
                    "2. Legs short: <bold>8b.</bold> <italic>A. cus</italic> var. "
                    "<italic>dus</italic></p>"))),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Ausella\n"
            "2[2] Legs long: -> Aus cus\n2[2] Legs short: -> Aus cus var. dus\n");
}

TEST(JatsText, NumbersOfFiguresStayWithTheirWords) {
  EXPECT_EQ(sketch_article(article(
                sec("Key to Aus",
                    "<p>1 Wings clear (Fig. <xref ref-type=\"fig\" rid=\"F1\">12</xref>) "
                    "<italic>Aus bus</italic></p>\n"
                    "<p>– Wings dark (Fig. <xref ref-type=\"fig\" rid=\"F1\">12</xref>) 2</p>\n"
                    "<p>2 Head pale (Figs <xref ref-type=\"fig\" rid=\"F1\">12</xref>–<xref "
                    "ref-type=\"fig\" rid=\"F2\">13</xref>) <italic>Aus cus</italic></p>\n"
                    "<p>– Head dark, n = 9 (Orm <xref ref-type=\"bibr\" rid=\"B1\">1901</xref>) "
                    "3</p>\n<p>3 Legs long; Fig. <xref ref-type=\"fig\" rid=\"F1\">12</xref>. "
                    "<italic>Aus dus</italic></p>\n"
                    "<p>– Legs short (n = <bold>12</bold>) <italic>Aus eus</italic></p>"))),
            "1[1] Wings clear (Fig. 12) -> Aus bus\n1[–] Wings dark (Fig. 12) -> 2\n"
            "2[2] Head pale (Figs 12–13) -> Aus cus\n2[–] Head dark, n = 9 (Orm 1901) -> 3\n"
            "3[3] Legs long; Fig. 12. -> Aus dus\n3[–] Legs short (n = 12) -> Aus eus\n");
  // The last words of a lead that goes on with the next one.
  EXPECT_EQ(sketch_article(article(
                sec("Key to Aus",
                    "<p>1 (4) Wings clear, Fig. <xref ref-type=\"fig\" rid=\"F1\">3</xref></p>\n"
                    "<p>2 (3) Head pale <italic>Aus bus</italic></p>\n"
                    "<p>3 (2) Head dark <italic>Aus cus</italic></p>\n"
                    "<p>4 (1) Wings dark, Fig. <xref ref-type=\"fig\" rid=\"F1\">4</xref></p>\n"
                    "<p>5 (6) Legs long <italic>Aus dus</italic></p>\n"
                    "<p>6 (5) Legs short <italic>Aus eus</italic></p>"))),
            "1[1] Wings clear, Fig. 3 -> 2\n1[4] Wings dark, Fig. 4 -> 5\n"
            "2[2] Head pale -> Aus bus\n2[3] Head dark -> Aus cus\n"
            "5[5] Legs long -> Aus dus\n5[6] Legs short -> Aus eus\n");
}

TEST(JatsText, AKeyInTheAccountOfAGenusShortensItsName) {
  auto const key = sec("Key to the species",
                       "<p>1. Wings clear ... 2</p><p>– Wings dark ... <italic>A. bus</italic></p>"
                       "<p>2. Legs long ... <italic>A. cus</italic></p><p>– Legs short ... "
                       "<italic>A. dus</italic></p>");
  for (auto const* title : {"2. <bold>Austera</bold>", "<italic>Austera</italic> Roe, 1900",
                            "<tp:taxon-name>Austera</tp:taxon-name>"}) {
    EXPECT_EQ(sketch_article(article(sec(title, "<p>Small. Of the shore.</p>" + key))),
              "1[1] Wings clear -> 2\n1[–] Wings dark -> Austera bus\n"
              "2[2] Legs long -> Austera cus\n2[–] Legs short -> Austera dus\n")
        << title;
  }
  EXPECT_EQ(sketch_article(article(sec("Results on <italic>A.</italic> ", key))),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> A. bus\n"
            "2[2] Legs long -> A. cus\n2[–] Legs short -> A. dus\n");
}

TEST(JatsText, CharactersMayBeNamedAsTheirDtdsDo) {
  std::string const body =
      "<article><body><sec><title>Key to Aus</title><p>1. Wings 4&ndash;5&thinsp;mm &mdash; 2</p>"
      "<p>1. Wings 6 mm &mdash; <italic>Aus bus</italic> Ro&ccaron; &amp; Doe</p>"
      "<p>2. Legs &frac12; as long &mdash; 3</p><p>2. Legs longer &mdash; "
      "<italic>Aus cus</italic></p><p>3. Eyes &nosuch; &mdash; <italic>Aus dus</italic></p>"
      "<p>3. Eyes &amp;mdash; no &mdash; <italic>Aus eus</italic></p></sec></body></article>";
  auto const loaded = read_article("<!DOCTYPE article PUBLIC \"-//X//DTD\" \"x.dtd\">\n" + body);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition),
            "1[1] Wings 4–5 mm -> 2\n1[1] Wings 6 mm -> Aus bus\n"
            "2[2] Legs ½ as long -> 3\n2[2] Legs longer -> Aus cus\n"
            "3[3] Eyes &nosuch; -> Aus dus\n3[3] Eyes &mdash; no -> Aus eus\n");
  EXPECT_EQ(loaded.value->edition.couplets.at(1).leads.at(1).place.column, 209U);
  std::vector<std::string> unknown;
  for (auto const& finding : loaded.findings) {
    if (finding.code == "unknown-entity") unknown.push_back(finding.printed);
  }
  EXPECT_EQ(unknown, std::vector<std::string>{"&nosuch;"});
  // Without a document type nothing can have declared them.
  EXPECT_FALSE(read_article(body));
}

TEST(JatsText, ListsAndQuotations) {
  EXPECT_EQ(sketch_article(article(sec(
                "Key to Aus",
                "<list list-type=\"simple\"><list-item><label>1</label><p>Wings clear ... 2</p>"
                "</list-item>\n<list-item><label>–</label><p>Wings dark ... Aus bus</p></list-item>"
                "</list><disp-quote><p>2 Legs long ... Aus cus</p><p>– Legs short ... Aus dus</p>"
                "</disp-quote>"))),
            kTwoCouplets);
  EXPECT_EQ(sketch_article(article("<list list-content=\"key\"><list-item><p>1 Wings clear ... 2"
                                   "</p></list-item><list-item><p>– Wings dark ... Aus bus</p>"
                                   "</list-item><list-item><p>2 Legs long ... Aus cus</p>"
                                   "</list-item><list-item><p>– Legs short ... Aus dus</p>"
                                   "</list-item></list>")),
            kTwoCouplets);
}

TEST(JatsText, OrderedListsNumberTheirCouplets) {
  EXPECT_EQ(sketch_article(article(sec(
                "Key to Aus",
                "<list list-type=\"order\"><list-item><p>Wings clear ... 2</p><p>Wings dark ... "
                "Aus bus</p></list-item><list-item><list list-type=\"bullet\"><list-item><p>Legs "
                "long <italic>Aus cus</italic></p></list-item><list-item><p>Legs short "
                "<italic>Aus dus</italic></p></list-item></list></list-item></list>"))),
            kTwoCouplets);
}

TEST(JatsText, ListsWhoseItemsBeginWithTheirNumberAlone) {
  auto const item = [](std::string_view number, std::string_view one, std::string_view other) {
    return "<list-item><p><bold>" + std::string{number} +
           "</bold></p><list list-type=\"bullet\"><list-item><p>" + std::string{one} +
           "</p></list-item><list-item><p>" + std::string{other} +
           "</p></list-item></list></list-item>\n";
  };
  EXPECT_EQ(
      sketch_article(article(sec("Key to Aus", "<list list-type=\"simple\">" +
                                                   item("1", "Wings clear → go to 2",
                                                        "Wings dark → <italic>Aus bus</italic>") +
                                                   item("2", "Legs long → <italic>Aus cus</italic>",
                                                        "Legs short <italic>Aus dus</italic>") +
                                                   "</list>"))),
      kTwoCouplets);
}

TEST(JatsText, ASectionForEachCouplet) {
  auto const couplets = [](std::string_view element) {
    auto const one = [&](std::string_view number, std::string_view leads) {
      return "<sec><" + std::string{element} + ">" + std::string{number} + "</" +
             std::string{element} + ">" + std::string{leads} + "</sec>\n";
    };
    return sec("Key to Aus",
               one("1", "<p>Wings clear … 2</p><p>– Wings dark … <italic>Aus bus</italic></p>") +
                   one("2",
                       "<p>Legs long <italic>Aus cus</italic></p>"
                       "<p>– Legs short <italic>Aus dus</italic></p>"));
  };
  EXPECT_EQ(sketch_article(article(couplets("title"))), kTwoCouplets);
  EXPECT_EQ(sketch_article(article(couplets("label"))), kTwoCouplets);
}

TEST(JatsText, BoxesHaveTheirTitleInACaption) {
  auto const loaded = read_article(article(
      "<boxed-text content-type=\"key\"><caption><title>Key to Aus</title></caption>"
      "<p>1 Wings clear ... 2</p><p>– Wings dark ... Aus bus</p><p>2 Legs long ... Aus cus</p>"
      "<p>– Legs short ... Aus dus</p></boxed-text>"));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition), kTwoCouplets);
  EXPECT_EQ(loaded.value->edition.parts[0].title, "Key to Aus");
}

TEST(JatsText, TranslationsAreNoFurtherKeys) {
  auto const table = sec("Key", "<table-wrap><table>" + rows(kFourRows) + "</table></table-wrap>");
  EXPECT_EQ(sketch_article("<article><body>" + table + "</body><sub-article><body>" + table +
                           "</body></sub-article></article>"),
            kTwoCouplets);
}

TEST(JatsText, TitlesInSevenLanguages) {
  for (auto const* title :
       {"Key to the species", "Bestimmungsschlüssel der Arten", "Clé des espèces",
        "Chiave delle specie", "Clave de las especies", "Chave das espécies", "Clavis specierum",
        "Identification keys (males)", "KEY."}) {
    EXPECT_EQ(sketch_article(article(
                  sec("Discussion", "<p>1 Not this ... 2</p><p>– Nor this ... Cus</p>") +
                  sec(title, "<table-wrap><table>" + rows(kFourRows) + "</table></table-wrap>"))),
              kTwoCouplets)
        << title;
  }
}

TEST(JatsText, KeysThatNothingCallsAKey) {
  // By the table's shape …
  EXPECT_EQ(sketch_article(
                article(sec("Results", "<table-wrap><table>" + rows("Site|n|Mean\nA|1|4\nB|2|3") +
                                           "</table></table-wrap><table-wrap><table>" +
                                           rows(kFourRows) + "</table></table-wrap>"))),
            kTwoCouplets);
  // … or by the section's.
  EXPECT_EQ(sketch_article(article(sec("Results", "<p>Three sites were visited in 2020.</p>") +
                                   sec("Species of Aus",
                                       "<p>1 Wings clear ... 2</p><p>– Wings dark ... Aus bus</p>"
                                       "<p>2 Legs long ... Aus cus</p><p>– Legs short ... Aus "
                                       "dus</p>"))),
            kTwoCouplets);
}

TEST(JatsText, SeveralKeysBecomeParts) {
  auto const table = [](std::string_view caption, std::string_view text) {
    return "<table-wrap><caption><title>" + std::string{caption} + "</title></caption><table>" +
           rows(text) + "</table></table-wrap>\n";
  };
  auto const loaded = read_article(article(
      sec("Taxonomy with keys",
          "<p>Prose about the keys.</p>" +
              sec("Key to genera", table("Adults", "1|Body red|Key B\n–|Body blue|Bus bus")) +
              sec("<italic>Aus</italic>", "<p>Body red. 12 setae.</p>") +
              sec("Key B: <italic>Aus</italic>",
                  table("", kFourRows) + "<p>1 Prose about couplet 1 ... 2</p>"))));
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  auto const& edition = loaded.value->edition;
  EXPECT_EQ(test::sketch(edition), "1[1] Body red -> key: Key B: Aus\n1[–] Body blue -> Bus bus\n" +
                                       std::string{kTwoCouplets});
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(edition.parts[0].title, "Key to genera");
  EXPECT_EQ(edition.parts[1].title, "Key B: Aus");
  Lines notes;
  for (auto const& note : edition.notes) notes.push_back(note.text);
  EXPECT_EQ(notes, (Lines{"Taxonomy with keys", "Prose about the keys.", "Adults",
                          "1 Prose about couplet 1 ... 2"}));
  EXPECT_EQ(loaded.value->source.layout_note,
            "article XML; parallel layout, leads marked 1 and –, destinations in cells of their "
            "own; 2 keys; what stands outside its keys was left aside");
}

TEST(JatsText, PartsAreCalledByTheTitlesOfTheirSections) {
  auto const adults =
      sec("Adults", "<table-wrap><table>" + rows(kFourRows) + "</table></table-wrap>");
  auto const larvae =
      sec("Larvae", "<table-wrap><table>" + rows("1|Body red|Aus bus\n–|Body blue|Aus cus") +
                        "</table></table-wrap>");
  auto const both = read_article(article(sec("Keys to the Aidae", adults + larvae)));
  ASSERT_TRUE(both);
  ASSERT_EQ(both.value->edition.parts.size(), 2U);
  EXPECT_EQ(both.value->edition.parts[0].title, "Adults");
  EXPECT_EQ(both.value->edition.parts[1].title, "Larvae");
  auto const one = read_article(article(sec("Key to the Aidae", adults)));
  ASSERT_TRUE(one);
  EXPECT_EQ(one.value->edition.parts[0].title, "Key to the Aidae");
}

TEST(JatsText, FrontMatterAndFootnotes) {
  auto const loaded = read_article(
      "<article xml:lang=\"de\"><front><article-meta><title-group><article-title>Die Gattung "
      "<italic>Aus</italic></article-title><subtitle>ein Schlüssel</subtitle></title-group>"
      "<contrib-group><contrib contrib-type=\"author\"><name><surname>Orm</surname><given-names>T."
      "</given-names></name></contrib><contrib contrib-type=\"editor\"><name><surname>Nobody"
      "</surname></name></contrib><contrib><string-name>Una Vel</string-name></contrib>"
      "</contrib-group><pub-date><year>1998</year></pub-date></article-meta></front><body>"
      "<sec sec-type=\"key\"><table-wrap><table>" +
      rows("1|Wings clear<fn id=\"a\"><label>*</label><p>Dried: dull.</p></fn>|2\n–|Wings dark|Aus "
           "bus\n2|Legs long|Aus cus\n–|Legs short|Aus dus") +
      "</table><table-wrap-foot><p>All drawn from life.</p></table-wrap-foot></table-wrap></sec>"
      "</body></article>");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  auto const& edition = loaded.value->edition;
  EXPECT_EQ(edition.front.title, "Die Gattung Aus: ein Schlüssel");
  EXPECT_EQ(edition.front.authors, (Lines{"T. Orm", "Una Vel"}));
  EXPECT_EQ(edition.front.year, 1998);
  EXPECT_EQ(edition.front.language, "de");
  EXPECT_EQ(test::sketch(edition), kTwoCouplets);
  Lines notes;
  for (auto const& note : edition.notes) notes.push_back(note.text);
  EXPECT_EQ(notes, (Lines{"Dried: dull.", "All drawn from life."}));
}

TEST(JatsText, FootnotesAtTheArticlesEnd) {
  auto const key =
      sec("Key to Aus",
          "<p>1 Wings clear ... 2</p><p>– Wings dark ... <italic>Aus bus</italic>"
          "<xref ref-type=\"fn\" rid=\"n1\"><sup>1</sup></xref></p><p>2 Legs long ... <italic>Aus "
          "cus</italic></p><p>– Legs short ... <italic>Aus dus</italic></p>");
  auto const loaded = read_article(
      "<article><body>" + key +
      "</body><back><fn-group><fn id=\"n1\"><label>1</label><p>The type is lost.</p></fn>"
      "<fn id=\"n2\"><p>No fund paid for this.</p></fn></fn-group></back></article>");
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition), kTwoCouplets);
  ASSERT_EQ(loaded.value->edition.notes.size(), 1U);
  EXPECT_EQ(loaded.value->edition.notes[0].text, "The type is lost.");
}

TEST(JatsText, SaysWhatItLeavesAside) {
  auto const loaded = read_article(article(
      sec("Key features", "<p>The wings matter most.</p>") +
      sec("Key to Aus", "<table-wrap><table>" + rows(kFourRows) + "</table></table-wrap>")));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(
      one_line_each(loaded.findings),
      Lines{"a.xml:3:1: information: this section speaks of a key, but no couplets were found "
            "in it; it was left aside [unread-section]"});
  auto const none = read_article(article(sec("Results", "<p>Nothing but prose.</p>")));
  EXPECT_FALSE(none);
  EXPECT_EQ(one_line_each(none.findings),
            Lines{"a.xml:2:1: error: no key was found in the article: no table and no section has "
                  "numbered leads [no-couplets] (check that the file is the whole article; a key "
                  "that is a picture, or in another file, cannot be read)"});
}

TEST(JatsText, CommentsInstructionsAndReferences) {
  EXPECT_EQ(sketch_article(key_section(
                "Key",
                rows("1|Wi<!-- no -->ngs <?page 7?>clear|2\n&#8211;|<![CDATA[Wings]]> d&#97;rk|Aus "
                     "b&#x75;s\n2|Legs <named-content>long</named-content>|Aus cus\n–|Legs<!-- -->"
                     " short|Aus dus"))),
            kTwoCouplets);
}

TEST(JatsText, ReadEditionRecognisesArticles) {
  auto const read = [](std::string_view bytes) {
    return read_edition({.name = "a.xml", .bytes = bytes});
  };
  auto const whole = key_section("Key", rows(kFourRows));
  auto const bare = whole.substr(whole.find('\n') + 1);
  for (auto const& bytes : {whole, bare, "\xEF\xBB\xBF" + whole,
                            "<!DOCTYPE article PUBLIC \"-//X//Y\" \"x.dtd\">\n" + bare,
                            "<?xml version=\"1.0\"?><articles><article>" +
                                bare.substr(bare.find("<body>")) + "</articles>"}) {
    auto const loaded = read(bytes);
    ASSERT_TRUE(loaded) << bytes;
    EXPECT_EQ(test::sketch(loaded.value->edition), kTwoCouplets);
    EXPECT_TRUE(loaded.value->source);
  }
  auto const other = read("<?xml version='1.0'?>\n<notes>1 Wings</notes>");
  EXPECT_FALSE(other);
  EXPECT_EQ(one_line_each(other.findings),
            Lines{"a.xml:2:1: error: this is an XML file of a form that is not read "
                  "[unsupported-file] (of XML, articles and books (JATS, TaxPub, BITS) and SDD 1.1 "
                  "are read; "
                  "convert it to one of these, or to plain text, and load that file)"});
}

TEST(JatsText, DamagedArticles) {
  std::string const whole =
      "<article><sec><title>Key</title><table>"
      "<tr><td rowspan=\"1\">1</td><td><p>A</p>&#8211;</td><td>2</td></tr>"
      "<tr><td>–</td><td>C</td><td><italic>Aus</italic></td></tr>"
      "<tr><td>2</td><td>D</td><td>Bus</td></tr><tr><td>–</td><td>E</td><td>Cus</td></tr>"
      "</table></sec></article>";
  EXPECT_TRUE(read_article(whole));
  test::read_damaged(whole, [](std::string const& bytes) { return read_article(bytes); });
}

}  // namespace
}  // namespace keydrift
