#include <gtest/gtest.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>

#include "edition_builder.hpp"
#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/sdd_read.hpp"
#include "keydrift/formats/sdd_write.hpp"
#include "printed_support.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using Lines = std::vector<std::string>;

Loaded<Edition> read_sdd_key(std::string_view bytes) {
  auto reading = read_edition({.name = "k.xml", .bytes = bytes});
  Loaded<Edition> loaded;
  loaded.findings = std::move(reading.findings);
  if (reading) loaded.value = std::move(reading.value->edition);
  return loaded;
}

// The standard's schema, which is not part of this repository: next to it, or where
// KEYDRIFT_SDD_SCHEMA says.
std::filesystem::path schema_folder() {
  if (auto const* folder = std::getenv("KEYDRIFT_SDD_SCHEMA")) return folder;
  return std::filesystem::path{KEYDRIFT_SOURCE_DIR} / ".." / "shared" / "standards" / "sdd";
}

// What xmllint says against it; "" when the text is valid.
std::string validate(std::vector<std::string> const& texts) {
  auto const folder = std::filesystem::path{testing::TempDir()} / "keydrift-sdd";
  std::filesystem::create_directories(folder);
  std::string command =
      "xmllint --nonet --noout --schema '" + (schema_folder() / "SDD.xsd").string() + "'";
  for (std::size_t i = 0; i < texts.size(); ++i) {
    auto const file = folder / ("made-" + std::to_string(i) + ".xml");
    std::ofstream{file, std::ios::binary} << texts[i];
    command += " '" + file.string() + "'";
  }
  auto const said = folder / "said.txt";
  command += " 2> '" + said.string() + "'";
  if (std::system(command.c_str()) == 0) return {};
  std::ifstream in{said};
  return {std::istreambuf_iterator<char>{in}, {}};
}

bool may_validate() {
  return std::filesystem::exists(schema_folder() / "SDD.xsd") &&
         std::system("xmllint --version > /dev/null 2>&1") == 0;
}

// Editions of any shape: reticulate, polytomous, with circles and couplets that nothing reaches,
// in several parts.
class EditionMaker {
 public:
  explicit EditionMaker(unsigned seed) : random_{seed} {}

  Edition make() {
    Edition edition;
    edition.name = "made";
    make_front(edition.front);
    edition.taxa = {{"Aus bus", "(Smith, 1900)", {}},
                    {"Aus cus", "", {}},
                    {"Ærus ørus", "L.", {}},
                    {"葉", "", {}},
                    {"×Aus <gus> & \"hus\"", "", {}}};
    auto const parts = 1 + below(3);
    for (std::size_t p = 0; p < parts; ++p) {
      auto const first = edition.couplets.size();
      auto const count = 1 + below(8);
      for (std::size_t c = 0; c < count; ++c) {
        Couplet couplet;
        couplet.label = std::to_string(c + 1) + (below(5) == 0 ? "a" : "");
        couplet.leads.resize(below(6) == 0 ? 1 + below(6) : 2);
        edition.couplets.push_back(std::move(couplet));
      }
      edition.parts.push_back({p == 0 && below(2) == 0 ? "" : "Key " + std::to_string(p) + " <ü>",
                               CoupletId{static_cast<std::uint32_t>(first)},
                               {}});
    }
    for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) fill(edition, c);
    if (below(2) == 0) edition.notes.push_back({"A note, with — signs", {}});
    return edition;
  }

 private:
  std::size_t below(std::size_t bound) { return random_() % bound; }
  bool chance(std::size_t one_in) { return below(one_in) == 0; }

  std::string words() {
    static constexpr std::array kWords{"shell"sv, "3–5(–7) mm;"sv, "<i>Aus</i>"sv, "&amp;"sv,
                                       "♂:"sv,    "葉は対生"sv,    "\"quoted\""sv, "Fühler"sv,
                                       "]]>"sv,   "{a: b}"sv};
    std::string text = "Words";
    for (auto n = below(8); n > 0; --n) text += " " + std::string{kWords[below(kWords.size())]};
    return text;
  }

  void make_front(FrontMatter& front) {
    if (chance(2)) front.title = "The <genus> " + words();
    if (chance(8)) front.title += std::string(300, 'x');
    if (chance(2)) front.edition = "2nd";
    if (chance(2)) front.year = 1990;
    if (chance(2)) front.authors = {"T. Orm", "Ö. V."};
    if (chance(2)) front.language = "de-CH";
    if (chance(2)) front.scope.region = "Süd-Mark";
    if (chance(2)) front.scope.places = {"Aldmere", "Carrow"};
    if (chance(3)) front.scope.sex = chance(2) ? "female" : "male";
    if (chance(3)) front.scope.life_stage = "larva";
    if (chance(3)) front.synonyms = {{"Aus bus", "Eus bus", {}}};
  }

  void fill(Edition& edition, std::uint32_t c) {
    auto const count = static_cast<std::uint32_t>(edition.couplets.size());
    auto& couplet = edition.couplets[c];
    if (chance(3)) couplet.back_references = {{"3", {}}, {"1'", {}}};
    if (chance(5)) couplet.notes = {words(), "Zweite Note"};
    for (std::uint32_t l = 0; l < couplet.leads.size(); ++l) {
      auto& lead = couplet.leads[l];
      lead.label = l == 0 ? couplet.label : "–";
      if (!chance(20)) lead.text = words();
      if (chance(6)) lead.notes = {words()};
      if (chance(6)) lead.figures = {"Fig. 3", "Abb. 2–4"};
      switch (below(8)) {
        case 0:
        case 1:
        case 2:
          lead.destination = ToCouplet{CoupletId{static_cast<std::uint32_t>(below(count))}};
          if (chance(4)) lead.taxon_remark = "Aus group";
          break;
        case 3:
          lead.destination = ToTaxa{{TaxonId{1}, TaxonId{0}}};
          break;
        case 4:
          lead.destination = ToKey{chance(2) ? "Key 1 <ü>" : "Key to elsewhere"};
          break;
        case 5:
          lead.destination = Unresolved{chance(2) ? "" : "99"};
          break;
        default:
          lead.destination = ToTaxa{{TaxonId{static_cast<std::uint32_t>(below(5))}}};
          if (chance(3)) lead.taxon_remark = "in part";
      }
    }
  }

  std::mt19937 random_;
};

TEST(Sdd, WhatIsWrittenReadsBackTheSame) {
  for (unsigned seed = 1; seed <= 120; ++seed) {
    auto const edition = EditionMaker{seed}.make();
    auto const written = write_sdd(edition);
    auto const loaded = read_sdd_key(written.text);
    ASSERT_TRUE(loaded) << "seed " << seed << "\n" << one_line_each(loaded.findings).front();
    ASSERT_EQ(one_line_each(loaded.findings), Lines{}) << "seed " << seed;
    ASSERT_EQ(test::sketch(*loaded.value), test::sketch(edition)) << "seed " << seed;
    ASSERT_TRUE(same_content(*loaded.value, edition)) << "seed " << seed << "\n" << written.text;
    for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
      for (std::size_t l = 0; l < edition.couplets[c].leads.size(); ++l) {
        ASSERT_EQ(loaded.value->couplets[c].leads[l].label, edition.couplets[c].leads[l].label);
      }
    }
    // A second writing is the same, but for what was filled in for printed destinations.
    auto const again = write_sdd(*loaded.value);
    auto const third = read_sdd_key(again.text);
    ASSERT_TRUE(third);
    auto renamed = *third.value;
    renamed.name = loaded.value->name;
    ASSERT_EQ(write_sdd(renamed).text, again.text) << "seed " << seed;
  }
}

TEST(Sdd, WhatIsWrittenIsValid) {
  if (!may_validate()) GTEST_SKIP() << "no schema at " << schema_folder() << ", or no xmllint";
  std::vector<std::string> texts;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    texts.push_back(write_sdd(EditionMaker{seed}.make()).text);
  }
  auto statements = read_sdd_key(R"({"keydrift": 1, "couplets": [{"label": "1", "leads": [
    {"text": "Beak bifid, 3-5 mm, except in Aus", "statements": [
      {"text": "Beak bifid", "character": "beak", "states": ["bifid"], "strength": "excepted",
       "except": ["Aus"]},
      {"text": "3-5 mm", "character": "length", "range": {"usual": [3, 5]}, "unit": "mm"}]},
    {"text": "Beak entire"}]}]})");
  ASSERT_TRUE(statements) << one_line_each(statements.findings).front();
  texts.push_back(write_sdd(*statements.value).text);
  EXPECT_NE(texts.back().find("<CategoricalCharacter"), std::string::npos);
  EXPECT_NE(texts.back().find("<QuantitativeCharacter"), std::string::npos);
  EXPECT_EQ(validate(texts), "");
  // The check itself: a text that is not valid.
  EXPECT_NE(validate({"<Datasets xmlns=\"http://rs.tdwg.org/UBIF/2006/\"/>"}), "");
}

TEST(Sdd, TheExamplesOfTheStandardsFolder) {
  auto const slurp = [](std::filesystem::path const& path) {
    std::ifstream in{path, std::ios::binary};
    return std::string{std::istreambuf_iterator<char>{in}, {}};
  };
  if (!std::filesystem::exists(schema_folder() / "example-key-full.xml")) {
    GTEST_SKIP() << "no examples at " << schema_folder();
  }
  auto const minimal = read_sdd_key(slurp(schema_folder() / "example-key-minimal.xml"));
  ASSERT_TRUE(minimal);
  EXPECT_EQ(one_line_each(minimal.findings), Lines{});
  EXPECT_EQ(minimal.value->couplets.size(), 2U);
  EXPECT_EQ(minimal.value->taxa.size(), 3U);
  auto const full = read_sdd_key(slurp(schema_folder() / "example-key-full.xml"));
  ASSERT_TRUE(full);
  EXPECT_EQ(one_line_each(full.findings), Lines{});
  EXPECT_EQ(full.value->parts.size(), 2U);
  EXPECT_EQ(full.value->couplets.size(), 3U);
  EXPECT_EQ(full.value->front.edition, "2");
}

TEST(Sdd, SaysWhatOtherProgramsWillPassOver) {
  auto edition = test::make_edition(
      "key.txt", {{"1", {{"Wings clear", "2"}, {"Wings dark", "Aus bus | Aus cus"}}},
                  {"2", {{"Legs long", "1"}, {"Legs short", "9"}}},
                  {"3", {{"Body red", "Aus bus"}, {"Body blue", "Aus cus"}}}});
  edition.couplets[0].leads[0].notes = {"often torn"};
  edition.couplets.push_back(
      {.label = "4", .leads = {}, .back_references = {}, .notes = {}, .place = {}});
  auto const written = write_sdd(edition);
  EXPECT_EQ(one_line_each(written.findings),
            (Lines{"key.txt:1:1: information: SDD has no place for these; they were written in a "
                   "namespace of their own, which other programs pass over: the printed labels, "
                   "notes [sdd-own-words]",
                   "key.txt:1:1: information: SDD lets a lead end in one taxon; where several are "
                   "printed it ends in a name that stands for them [sdd-own-words]",
                   "key.txt:1:1: information: SDD has no couplet without a way to it; 1 couplet "
                   "begins a key of its own [sdd-own-words]",
                   "key.txt:1:1: warning: couplet \"4\" has no leads and was left out "
                   "[sdd-loss]"}));
}

std::string sdd(std::string_view content, std::string_view root_attributes = "") {
  return "<?xml version=\"1.0\"?>\n<Datasets xmlns=\"http://rs.tdwg.org/UBIF/2006/\" " +
         std::string{root_attributes} +
         ">\n<Dataset xml:lang=\"en\"><Representation><Label>Lanterns</Label></Representation>\n"
         "<TaxonNames><TaxonName id=\"t1\"><Representation><Label>Aus bus (Doe, 1901)</Label>"
         "</Representation></TaxonName><TaxonName id=\"t2\"><Representation><Label>Aus cus</Label>"
         "</Representation></TaxonName></TaxonNames>\n<IdentificationKeys>\n" +
         std::string{content} + "\n</IdentificationKeys></Dataset></Datasets>\n";
}

std::string identification_key(std::string_view leads) {
  return "<IdentificationKey "
         "id=\"k1\"><Representation><Label>Key</Label></Representation><Leads>\n" +
         std::string{leads} + "\n</Leads></IdentificationKey>";
}

TEST(Sdd, WritesQuestionsWhereSddHasThem) {
  auto edition = test::make_edition(
      "key.txt", {{"1", {{"Tibia red", "Aus bus"}, {"Tibia black", "2"}}},
                  {"2", {{"Head keeled", "Aus cus"}, {"Head flat", "Aus dus"}}}});
  edition.couplets[0].notes = {"Colour of tibia?"};
  edition.couplets[1].notes = {"Best seen from above.", "Shape of head?"};
  auto const written = write_sdd(edition);
  EXPECT_NE(
      written.text.find("<Text>Colour of tibia?</Text>\n        </Question>\n        <Leads>"),
      std::string::npos)
      << written.text;
  EXPECT_NE(written.text.find("<Text>Shape of head?</Text>"), std::string::npos);
  EXPECT_EQ(written.text.find("<kd:couplet-note>Shape"), std::string::npos);
  auto const loaded = read_sdd_key(written.text);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->couplets[0].notes, edition.couplets[0].notes);
  EXPECT_EQ(loaded.value->couplets[1].notes, edition.couplets[1].notes);
  // Answers alone would be read with the question as their words.
  edition.couplets[1].leads[0].text = "Yes";
  edition.couplets[1].leads[1].text = "No";
  EXPECT_EQ(read_sdd_key(write_sdd(edition).text).value->couplets[1].leads[0].text, "Yes");
}

TEST(Sdd, ReadsParentsReticulationsAndSubkeys) {
  auto const loaded = read_sdd_key(sdd(
      identification_key(
          "<Lead id=\"b\"><Parent ref=\"a\"/><Statement>Legs long</Statement><TaxonName "
          "ref=\"t1\"/>"
          "</Lead>\n<Lead id=\"a\"><Statement>Wings &lt;i&gt;very&lt;/i&gt; "
          "clear</Statement></Lead>"
          "\n<Lead id=\"c\"><Statement>Wings dark</Statement><Reticulation ref=\"b\"/></Lead>\n"
          "<Lead><Parent ref=\"a\"/><Statement>Legs short</Statement>"
          "<Reticulation ref=\"b\" leadspecific=\"true\"/></Lead>\n"
          "<Lead><Parent ref=\"a\"/><Statement>Legs absent</Statement><Subkey "
          "ref=\"k2\"/></Lead>") +
      "<IdentificationKey id=\"k2\"><Representation><Label>Legless</Label></Representation><Leads>"
      "<Lead><Statement>Red</Statement><TaxonName ref=\"t2\"/></Lead>"
      "<Lead><Statement>Blue</Statement></Lead></Leads></IdentificationKey>"));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  EXPECT_EQ(test::sketch(*loaded.value),
            "1[1a] Wings very clear -> 2\n1[1b] Wings dark -> 2\n2[2a] Legs long -> Aus bus\n"
            "2[2b] Legs short -> Aus bus\n2[2c] Legs absent -> key: Legless\n"
            "1[1a] Red -> Aus cus\n1[1b] Blue -> ?\n");
  EXPECT_EQ(loaded.value->taxa[0].authorship, "(Doe, 1901)");
  auto const& lead = loaded.value->couplets[0].leads[0];
  EXPECT_EQ(lead.place.line, 8U);
  EXPECT_EQ(place_in_text(lead, 11, 5).column, 55U);  // "clear", behind the escaped tags
}

TEST(Sdd, AttributesOfOtherNamespacesLabelCouplets) {
  auto const loaded = read_sdd_key(sdd(
      identification_key(
          "<Lead id=\"a\" ex:couplet=\"7\" ex:lead=\"x\"><Statement>Clear</Statement></Lead>"
          "<Lead ex:couplet=\"7\" ex:lead=\"y\"><Statement>Dark</Statement><TaxonName ref=\"t1\"/>"
          "</Lead><Lead ex:couplet=\"9\"><Parent ref=\"a\"/><Statement>Long</Statement><TaxonName "
          "ref=\"t1\"/></Lead><Lead><Parent ref=\"a\"/><Statement>Short</Statement></Lead>"),
      "xmlns:ex=\"urn:example:x\""));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(*loaded.value),
            "7[7x] Clear -> 9\n7[7y] Dark -> Aus bus\n9[9a] Long -> Aus bus\n9[9b] Short -> ?\n");
}

TEST(Sdd, ReadsTheDialectOfThePrimer) {
  auto const loaded = read_sdd_key(sdd(identification_key(
      "<Lead id=\"a\"><Statement><Label>Clear</Label></Statement><Question><Label>Legs?</Label>"
      "</Question></Lead><Result><Statement><Representation><Label>Dark</Label>"
      "</Representation></Statement><TaxonName ref=\"t1\"/></Result>"
      "<Result><Parent ref=\"a\"/><Statement><Label>Yes</Label></Statement><TaxonName "
      "ref=\"t1\"/></Result><Result><Parent ref=\"a\"/><Statement><Label>No</Label></Statement>"
      "<TaxonName ref=\"t2\"/></Result>")));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(*loaded.value),
            "1[1a] Clear -> 2\n1[1b] Dark -> Aus bus\n2[2a] Legs? Yes -> Aus bus\n"
            "2[2b] Legs? No -> Aus cus\n");
}

TEST(Sdd, PrefixesLanguagesAndIntermediateResults) {
  auto text = sdd(identification_key(
      "<Lead id=\"a\"><Statement xml:lang=\"de\">Hell</Statement><Statement xml:lang=\"en-us\">"
      "Clear</Statement><TaxonName ref=\"t2\"/></Lead><Lead><Statement>Dark</Statement>"
      "<TaxonName ref=\"t1\"/></Lead><Lead><Parent ref=\"a\"/><Statement>Long</Statement>"
      "<TaxonName ref=\"t1\"/></Lead><Lead><Parent ref=\"a\"/><Statement>Short</Statement>"
      "<TaxonName ref=\"t2\"/></Lead>"));
  auto const loaded = read_sdd_key(text);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(*loaded.value),
            "1[1a] Clear -> 2 (Aus cus)\n1[1b] Dark -> Aus bus\n2[2a] Long -> Aus bus\n"
            "2[2b] Short -> Aus cus\n");
  EXPECT_EQ(
      one_line_each(loaded.findings),
      Lines{"k.xml:3:1: information: a text is in another language than the data set's own, and "
            "left aside [further-languages]"});
  // The same with every element prefixed.
  std::string prefixed;
  for (std::size_t i = 0; i < text.size(); ++i) {
    prefixed += text[i];
    if (text[i] != '<' || text[i + 1] == '?') continue;
    if (text[i + 1] == '/') prefixed += text[++i];
    prefixed += "s:";
  }
  prefixed.replace(prefixed.find("xmlns="), 6, "xmlns:s=");
  auto const same = read_sdd_key(prefixed);
  ASSERT_TRUE(same) << one_line_each(same.findings).front();
  EXPECT_TRUE(same_content(*same.value, *loaded.value));
}

TEST(Sdd, SaysWhatIsWrong) {
  auto const loaded = read_sdd_key(sdd(identification_key(
      "<Lead id=\"a\"><Statement>Clear</Statement><TaxonName ref=\"t9\"/></Lead>\n"
      "<Lead id=\"a\"><Statement>Dark</Statement><Reticulation ref=\"z\"/></Lead>\n"
      "<Lead><Parent ref=\"y\"/><Statement>Lost</Statement><Subkey ref=\"k9\"/></Lead>")));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(*loaded.value),
            "1[1a] Clear -> ?t9\n1[1b] Dark -> ?z\n2[2a] Lost -> ?k9\n");
  EXPECT_EQ(
      one_line_each(loaded.findings),
      (Lines{
          "k.xml:7:42: warning: no taxon name has the id \"t9\" [unknown-reference] (mend the "
          "reference, or add what it names)",
          "k.xml:8:1: warning: the id \"a\" stands twice; references to it mean the first "
          "[repeated-id] (give one of the two another id)",
          "k.xml:8:41: warning: no lead has the id \"z\" [unknown-reference] (mend the "
          "reference, or add what it names)",
          "k.xml:9:7: warning: no lead has the id \"y\" [unknown-reference] (mend the reference, "
          "or add what it names)",
          "k.xml:9:51: warning: no key has the id \"k9\" [unknown-reference] (mend the "
          "reference, or add what it names)"}));
  auto const none = read_sdd_key(sdd(""));
  EXPECT_FALSE(none);
  EXPECT_EQ(
      one_line_each(none.findings),
      Lines{"k.xml:2:1: error: no data set of the file holds an identification key with leads "
            "[no-couplets] (check that this is the right file: SDD files may hold "
            "descriptions without a key)"});
  auto const old = read_sdd_key("<Datasets xmlns=\"http://www.tdwg.org/2005/UBIF\"/>");
  EXPECT_FALSE(old);
  EXPECT_EQ(one_line_each(old.findings),
            Lines{"k.xml:1:1: error: this is SDD 1.0, whose keys are built in another way "
                  "[sdd-version] (convert it to SDD 1.1 (namespace http://rs.tdwg.org/UBIF/2006/) "
                  "and load that file)"});
  auto two = sdd(identification_key("<Lead><Statement>A</Statement></Lead>"));
  auto const begin = two.find("<Dataset ");
  auto const end = two.find("</Datasets>");
  two.insert(end, "\n" + two.substr(begin, end - begin));
  auto const several = read_sdd_key(two);
  ASSERT_TRUE(several);
  ASSERT_FALSE(several.findings.empty());
  EXPECT_EQ(several.value->couplets.size(), 1U);
  auto const lines = one_line_each(several.findings);
  EXPECT_NE(std::find(lines.begin(), lines.end(),
                      "k.xml:10:1: warning: the file holds keys in several data sets, which have "
                      "nothing to do with one another; only the first was read [further-data-sets] "
                      "(load each data set from a file of its own)"),
            lines.end())
      << lines.back();
}

TEST(Sdd, CirclesDoNotHang) {
  auto const loaded = read_sdd_key(sdd(identification_key(
      "<Lead id=\"a\"><Parent ref=\"b\"/><Statement>A</Statement></Lead>"
      "<Lead id=\"b\"><Parent ref=\"a\"/><Statement>B</Statement></Lead>"
      "<Lead id=\"c\"><Statement>C</Statement><Reticulation ref=\"d\" leadspecific=\"true\"/>"
      "</Lead><Lead id=\"d\"><Statement>D</Statement><Reticulation ref=\"c\" "
      "leadspecific=\"true\"/></Lead>")));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(*loaded.value),
            "1[1a] C -> ?d\n1[1b] D -> ?c\n2[2a] A -> 3\n3[3a] B -> 2\n");
}

TEST(Sdd, DamagedDocuments) {
  std::string const whole =
      "<Datasets><Dataset xml:lang='en'><TaxonNames><TaxonName id='t'/></TaxonNames>"
      "<IdentificationKeys><IdentificationKey id='k'><Leads><Lead id='a'><Statement>A</Statement>"
      "</Lead><Lead><Parent ref='a'/><Statement>B &amp; C</Statement><TaxonName ref='t'/></Lead>"
      "</Leads></IdentificationKey></IdentificationKeys></Dataset></Datasets>";
  EXPECT_TRUE(read_sdd_key(whole));
  test::read_damaged(whole, [](std::string const& bytes) { return read_sdd_key(bytes); });
}

}  // namespace
}  // namespace keydrift
