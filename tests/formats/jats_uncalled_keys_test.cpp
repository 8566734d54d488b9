// Keys in article XML that no title calls so, chapters of books, and what the words around a key
// tell of its names.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "jats_support.hpp"
#include "keydrift/formats/edition_reader.hpp"

namespace keydrift {
namespace {

using test::article;
using test::one_line_each;
using test::read_article;
using test::sec;
using test::sketch_article;

std::string item(std::string_view label, std::string_view words) {
  return "<list-item><label>" + std::string{label} + "</label><p>" + std::string{words} +
         "</p></list-item>\n";
}

std::string const kKeyToGenera = sec("Key to the genera",
                                     "<p>1 Body red ... <italic>Aus</italic></p><p>– Body blue ... "
                                     "<italic>Bus</italic></p>");
std::string const kSpecies = "<list list-type=\"simple\">" + item("1", "Wings clear … 2") +
                             item("–", "Wings dark … <italic>B. cusa</italic>") +
                             item("2", "Legs long … <italic>B. dusa</italic>") +
                             item("–", "Legs short … <italic>B. eusa</italic>") + "</list>";
constexpr auto kBoth =
    "1[1] Body red -> Aus\n1[–] Body blue -> Bus\n"
    "1[1] Wings clear -> 2\n1[–] Wings dark -> Bus cusa\n"
    "2[2] Legs long -> Bus dusa\n2[–] Legs short -> Bus eusa\n";

TEST(JatsUncalledKeys, AKeyInAnAccountBesideOneThatIsCalledSo) {
  auto const account = sec("Genus <italic>Bus</italic> Roe, 1901",
                           "<p>Type species: <italic>Bus cusa</italic> Roe, by monotypy.</p>"
                           "<p>Of uncertain position.</p><p>Three species are known.</p>"
                           "<p>They may be told apart as follows:</p>" +
                               kSpecies + "<p>Females of the last two are hardly known.</p>");
  EXPECT_EQ(sketch_article(article(sec("Systematics", kKeyToGenera + account))), kBoth);
  // The order is that of the article.
  EXPECT_EQ(
      sketch_article(article(sec("Systematics", account + kKeyToGenera))),
      std::string{std::string_view{kBoth}.substr(std::string_view{kBoth}.find("1[1] Wings"))} +
          "1[1] Body red -> Aus\n1[–] Body blue -> Bus\n");
}

TEST(JatsUncalledKeys, GroupsBesideTheKeyToThem) {
  auto const groups =
      sec("Key to the groups",
          "<p>1 Body red, hairy ... Group A</p><p>– Body blue, bare ... Group B</p>");
  auto const group = [](std::string_view letter, std::string_view epithets) {
    auto const one = std::string{epithets.substr(0, 4)};
    auto const other = std::string{epithets.substr(5, 4)};
    auto const third = std::string{epithets.substr(10, 4)};
    return sec("Group " + std::string{letter},
               "<p>1 Wings clear ... 2</p><p>– Wings dark ... <italic>Aus " + one +
                   "</italic></p><p>2 Legs long ... <italic>Aus " + other +
                   "</italic></p><p>– Legs short ... <italic>Aus " + third + "</italic></p>");
  };
  EXPECT_EQ(sketch_article(article(
                sec("Keys", groups + group("A", "busa cusa dusa") + group("B", "eusa fusa gusa")))),
            "1[1] Body red, hairy -> key: Group A\n"
            "1[–] Body blue, bare -> key: Group B\n"
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> Aus busa\n"
            "2[2] Legs long -> Aus cusa\n"
            "2[–] Legs short -> Aus dusa\n"
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> Aus eusa\n"
            "2[2] Legs long -> Aus fusa\n"
            "2[–] Legs short -> Aus gusa\n");
}

TEST(JatsUncalledKeys, TablesWithLabelsBeforeTheWords) {
  auto const row = [](std::string_view words, std::string_view to) {
    return "<tr><td>" + std::string{words} + "</td><td>" + std::string{to} + "</td></tr>\n";
  };
  EXPECT_EQ(sketch_article(article(
                sec("Key to species of Aus", "<table-wrap><table>" + row("1. Wings clear", "2") +
                                                 row("Wings dark", "<italic>Aus busa</italic>") +
                                                 row("2. Legs pale", "<italic>Aus cusa</italic>") +
                                                 row("Legs dark", "<italic>Aus dusa</italic>") +
                                                 "</table></table-wrap>"))),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Aus busa\n"
            "2[2] Legs pale -> Aus cusa\n2[] Legs dark -> Aus dusa\n");
}

TEST(JatsUncalledKeys, ListsOfOtherThingsAreNoKeys) {
  auto const steps = sec("Methods",
                         "<list list-type=\"order\"><list-item><p>specimens were "
                         "sieved;</p></list-item><list-item><p>parts were "
                         "mounted.</p></list-item></list>");
  auto const material =
      sec("Material", "<p>1 (♂) from Sarn, 2 (♀) from Mere.</p><p>3 (♂) from Sarn.</p>");
  auto const captions = sec("Results",
                            "<p>1 Body of <italic>Aus busa</italic></p><p>2 Wing of <italic>Aus "
                            "cusa</italic></p><p>3 Leg of <italic>Aus dusa</italic></p>");
  EXPECT_EQ(sketch_article(article(steps + material + kKeyToGenera + captions)),
            "1[1] Body red -> Aus\n1[–] Body blue -> Bus\n");
}

// --- names ---------------------------------------------------------------------------------------

TEST(JatsUncalledKeys, TheTitleOfTheArticleTellsTheGenus) {
  auto const with_title = [](std::string_view title, std::string_view key) {
    auto text = article(key);
    text.insert(text.find("<body>"), "<front><article-meta><title-group><article-title>" +
                                         std::string{title} +
                                         "</article-title></title-group></article-meta></front>");
    return text;
  };
  auto const key = sec("Key to the species of Sarn",
                       "<p>1 Wings clear ... <italic>Bu. cusa</italic> Roe, 1901</p><p>– Wings "
                       "dark ... <italic>Bu. dusa</italic> Roe, 1901</p>");
  EXPECT_EQ(sketch_article(with_title("The genus <italic>Busella</italic> Roe in Sarn", key)),
            "1[1] Wings clear -> Busella cusa\n1[–] Wings dark -> Busella dusa\n");
  EXPECT_EQ(sketch_article(with_title("The flies of Sarn", key)),
            "1[1] Wings clear -> Bu. cusa\n1[–] Wings dark -> Bu. dusa\n");
}

TEST(JatsUncalledKeys, NamesInBracketsBehindANameAreARemark) {
  EXPECT_EQ(
      sketch_article(article(sec("Key to the genera",
                                 "<p>1 Body red <bold>5. <italic>Ausella</italic></bold> (see also "
                                 "<italic>Busella</italic>)</p><p>1 Body blue <bold>7. "
                                 "<italic>Busella</italic></bold></p>"))),
      "1[1] Body red -> Ausella (see also Busella)\n1[1] Body blue -> Busella\n");
}

// --- books ---------------------------------------------------------------------------------------

TEST(JatsUncalledKeys, ChaptersOfBooks) {
  auto const book = [](std::string_view chapters) {
    return "<?xml version=\"1.0\"?>\n<book xml:lang=\"en\"><book-meta><book-title-group>"
           "<book-title>Beetles of Sarn</book-title></book-title-group><pub-date><year>2017</year>"
           "</pub-date></book-meta><front-matter><toc><title-group><title>Contents</title>"
           "</title-group><toc-entry><title>1. Key</title><nav-pointer>31</nav-pointer>"
           "</toc-entry></toc></front-matter><book-body>" +
           std::string{chapters} + "</book-body></book>\n";
  };
  auto const chapter = [](std::string_view title) {
    return "<book-part book-part-type=\"chapter\"><book-part-meta><title-group><title>" +
           std::string{title} + "</title></title-group></book-part-meta><body>" + kKeyToGenera +
           sec("7. <italic>Bus</italic>", kSpecies) + "</body></book-part>";
  };
  auto const one = read_article(book(chapter("Wood beetles")));
  ASSERT_TRUE(one) << one_line_each(one.findings).front();
  EXPECT_EQ(test::sketch(one.value->edition), kBoth);
  EXPECT_EQ(one.value->edition.front.title, "Wood beetles");
  auto const two = read_article(book(chapter("Wood beetles") + chapter("Bark beetles")));
  ASSERT_TRUE(two);
  EXPECT_EQ(two.value->edition.front.title, "Beetles of Sarn");
  EXPECT_EQ(two.value->edition.front.year, 2017);
  // A chapter on its own.
  auto const alone = read_edition({.name = "a.xml", .bytes = chapter("Wood beetles")});
  ASSERT_TRUE(alone) << one_line_each(alone.findings).front();
  EXPECT_EQ(test::sketch(alone.value->edition), kBoth);
  EXPECT_EQ(alone.value->edition.front.title, "Wood beetles");
}

}  // namespace
}  // namespace keydrift
