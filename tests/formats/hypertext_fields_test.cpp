// Pages whose leads are put together from fields: numbers, letters, words and destinations in
// elements of their own.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line;

std::string read_fields(std::string_view body) {
  auto const page = "<html><head><title>Key to Ausella</title></head><body>\n" + std::string{body} +
                    "\n</body></html>\n";
  auto const loaded = read_edition({.name = "key.html", .bytes = page});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return test::sketch(loaded.value->edition);
}

std::string field(std::string_view letter, std::string_view words, std::string_view to) {
  return "<div><span>" + std::string{letter} + "</span>\n<div><p>" + std::string{words} +
         "</p></div>\n<div>" + std::string{to} + "</div></div>\n";
}

TEST(HypertextFields, LettersStandInElementsOfTheirOwn) {
  auto const couplets = [](std::string_view a, std::string_view b) {
    return "<div>1</div>" + field(a, "Wings clear.", "<a href=\"#c2\">go to couplet 2</a>") +
           field(b, "Wings dark.", "<a href=\"#c3\">go to couplet 3</a>") + "<div>2</div>" +
           field(a, "Legs long.", "<em>Ausella busa</em>") +
           field(b, "Legs short.", "<em>Ausella</em> sp., young ones cannot be named") +
           "<div>3</div>" + field(a, "Head long.", "<em>Ausella cusa</em>") +
           field(b, "Head short.", "<em>Ausella</em> (\"great ausellas\")");
  };
  EXPECT_EQ(read_fields(couplets("a", "b")),
            "1[a] Wings clear. -> 2\n1[b] Wings dark. -> 3\n"
            "2[a] Legs long. -> Ausella busa\n"
            "2[b] Legs short. -> Ausella sp. (young ones cannot be named)\n"
            "3[a] Head long. -> Ausella cusa\n"
            "3[b] Head short. -> Ausella (\"great ausellas\")\n");
}

TEST(HypertextFields, LettersOfAnIndexStandAlone) {
  EXPECT_EQ(read_fields("<div>a</div><div>b</div><div>c</div>\n"
                        "<p>1 Wings clear ... 2</p><p>– Wings dark ... Ausella busa</p>\n"
                        "<p>2 Legs long ... Ausella cusa</p><p>– Legs short ... Ausella dusa</p>"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[–] Legs short -> Ausella dusa\n");
}

TEST(HypertextFields, SignsOfLinksAreNoneOfTheWords) {
  auto const row = [](std::string_view label, std::string_view words, std::string_view to) {
    return "<li><div>" + std::string{label} + "</div><div><p>" + std::string{words} +
           "</p></div><div><a href=\"#\">" + std::string{to} + "</a></div></li>\n";
  };
  EXPECT_EQ(read_fields(row("1a", "Folhas opostas", "Ir para o passo 2 <span>›</span>") +
                        row("1b", "Folhas alternas", "<em>Ausella busa</em>") +
                        row("2a", "Ramos verdes", "<em>Ausella cusa</em> &raquo;") +
                        row("2b", "Ramos cinzentos", "<em>Ausella dusa</em> &rarr;")),
            "1[1a] Folhas opostas -> 2\n1[1b] Folhas alternas -> Ausella busa\n"
            "2[2a] Ramos verdes -> Ausella cusa\n2[2b] Ramos cinzentos -> Ausella dusa\n");
}

TEST(HypertextFields, RemarksAboveANameAreNoDestination) {
  auto const row = [](std::string_view label, std::string_view words, std::string_view to) {
    return "<li><div>" + std::string{label} + "</div><div><p>" + std::string{words} +
           "</p></div><div><a href=\"#\">" + std::string{to} + "</a></div></li>\n";
  };
  EXPECT_EQ(
      read_fields(row("1a", "Wings clear", "go to 2") + row("1b", "Wings dark", "<em>Bus</em>") +
                  row("2a", "Legs long", "<em>Ausella cusa</em>") +
                  row("2b", "Legs short</p><small>Males alone</small><p>", "<em>Ausella</em> sp.")),
      "1[1a] Wings clear -> 2\n1[1b] Wings dark -> Bus\n"
      "2[2a] Legs long -> Ausella cusa\n2[2b] Legs short Males alone -> Ausella sp.\n");
}

TEST(HypertextFields, BadgesBesideTitlesAreNoLabels) {
  auto const card = [](std::string_view number, std::string_view a, std::string_view b) {
    auto const lead = [number](std::string_view letter, std::string_view words) {
      return "<li><div>" + std::string{number} + std::string{letter} + "</div><div>" +
             std::string{words} + "</div></li>";
    };
    return "<section><span>" + std::string{number} + "</span><h5>Passo " + std::string{number} +
           "</h5><a href=\"#\">Recomeçar</a><ul>" + lead("a", a) + lead("b", b) +
           "</ul></section>\n";
  };
  EXPECT_EQ(read_fields(card("1", "Folhas opostas</div><div>Ir para o passo 2",
                             "Folhas alternas</div><div><em>Ausella busa</em>") +
                        card("2", "Ramos verdes</div><div><em>Ausella cusa</em>",
                             "Ramos cinzentos</div><div><em>Ausella dusa</em>")),
            "1[1a] Folhas opostas -> 2\n1[1b] Folhas alternas -> Ausella busa\n"
            "2[2a] Ramos verdes -> Ausella cusa\n2[2b] Ramos cinzentos -> Ausella dusa\n");
}

TEST(HypertextFields, ConditionsForProgramsHoldTextForAll) {
  EXPECT_EQ(
      read_fields("<p><![if !lists]><span>1.&nbsp; </span><![endif]>Wings clear <b>2</b></p>\n"
                  "<p>1’.&nbsp; Wings dark <i>Ausella busa</i></p>\n"
                  "<p><![if !lists]><span>2.&nbsp; </span><![endif]>Legs long <i>Ausella "
                  "cusa</i></p>\n<p>2’.&nbsp; Legs <sup>1</sup>&frasl;<sub>4</sub> inch <i>Ausella "
                  "dusa</i></p>"),
      "1[1] Wings clear -> 2\n1[1’] Wings dark -> Ausella busa\n"
      "2[2] Legs long -> Ausella cusa\n2[2’] Legs ¹⁄₄ inch -> Ausella dusa\n");
}

TEST(HypertextFields, DefinitionsMayBearLetters) {
  // Beside a key with labels of another form.
  EXPECT_EQ(
      read_fields("<h2>Genera</h2><dl><dt>1</dt><dd>a. Wings clear → <a>2</a></dd>"
                  "<dd>b. Wings dark → <i>Bus</i></dd></dl>\n<dl><dt>2</dt><dd>a. Legs long → "
                  "<i>Cus</i></dd><dd>b. Legs short → <i>Dus</i></dd></dl>\n"
                  "<dl><dt>3</dt><dd>a. Head long → <i>Eus</i></dd>"
                  "<dd>b. Head short → <i>Fus</i></dd></dl>\n"),
      "1[1a] Wings clear -> 2\n1[1b] Wings dark -> Bus\n"
      "2[2a] Legs long -> Cus\n2[2b] Legs short -> Dus\n"
      "3[3a] Head long -> Eus\n3[3b] Head short -> Fus\n");
}

TEST(HypertextFields, CoupletsMayHaveTitles) {
  auto const couplet = [](std::string_view title, std::string_view a, std::string_view b) {
    return "<li><p>" + std::string{title} + "</p>\n<ol type=\"A\"><li>" + std::string{a} +
           "</li>\n<li>" + std::string{b} + "</li></ol></li>\n";
  };
  EXPECT_EQ(read_fields("<ol>" +
                        couplet("Wings", "Wings clear. <a>Go to step 2</a>",
                                "Wings dark. <a>Go to step 3</a>") +
                        couplet("Legs", "Legs long. Marsh ant, <em>Ausella busa</em>",
                                "Legs short. Hill ants, <em>Ausella</em> species") +
                        couplet("Shape of the head", "Head long. <em>Ausella cusa</em>",
                                "Head short. <em>Ausella dusa</em>") +
                        "</ol>"),
            "1[1a] Wings clear. -> 2\n1[1b] Wings dark. -> 3\n"
            "2[2a] Legs long. Marsh ant, -> Ausella busa\n"
            "2[2b] Legs short. Hill ants, -> Ausella (species)\n"
            "3[3a] Head long. -> Ausella cusa\n3[3b] Head short. -> Ausella dusa\n");
}

TEST(HypertextFields, SpansMaySetNamesInItalics) {
  auto const name = [](std::string_view words) {
    return "<span style=\"font-style: italic\">" + std::string{words} + "</span>";
  };
  EXPECT_EQ(read_fields("<div>1. Wings clear -&gt; 2<br>1'. Wings dark = " + name("Ausella busa") +
                        "<br>2. Legs long = " + name("Ausella cusa") +
                        "<br>2'. Legs short = " + name("Ausella dusa") +
                        "<br><br>Have fun</div>\n<div>Anna wrote it in May</div>"),
            "1[1] Wings clear -> 2\n1[1'] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[2'] Legs short -> Ausella dusa\n");
}

TEST(HypertextFields, LinksForEditorsAreNoPartOfTitles) {
  auto const edit =
      "<span class=\"editsection\"><span>[</span><a href=\"#\">edit</a><span>]</span></span>";
  auto const loaded = read_edition(
      {.name = "key.html",
       .bytes = std::string{"<h2>Species of Ausella"} + edit +
                "</h2><p>1 Wings clear <a href=\"#2\">2</a></p><p>– Wings dark <i>Ausella "
                "busa</i></p><p>2 Legs long <i>Ausella cusa</i></p><p>– Legs short <i>Ausella "
                "dusa</i></p>"});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->edition.parts.at(0).title, "Species of Ausella");
}

}  // namespace
}  // namespace keydrift
