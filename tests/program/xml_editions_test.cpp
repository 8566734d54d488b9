// Keys that come as XML, from the command line: an article, SDD, and what must be refused.

#include <gtest/gtest.h>

#include "binary.hpp"
#include "golden.hpp"

namespace keydrift::test {
namespace {

constexpr char kArticle[] = R"(<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE article PUBLIC "-//X//Invented DTD//EN" "invented.dtd">
<article xmlns:tp="urn:x" xml:lang="en">
<front><article-meta><title-group><article-title>The genus <italic>Aus</italic></article-title>
</title-group><pub-date><year>2021</year></pub-date></article-meta></front>
<body><sec sec-type="key"><title>Key to the species of <italic>Aus</italic></title>
<table-wrap content-type="key"><table><tbody>
<tr><td>1</td><td>Beak bifid</td><td>2</td></tr>
<tr><td>–</td><td>Beak entire</td><td><tp:taxon-name>Aus bus</tp:taxon-name> Orm, 1999</td></tr>
<tr><td>2(1)</td><td>Spike long</td><td><italic>Aus cus</italic></td></tr>
<tr><td>–</td><td>Spike short</td><td>27</td></tr>
</tbody></table></table-wrap></sec></body></article>
)";

std::string mended() {
  std::string text = kArticle;
  text.replace(text.find(">27<"), 4, ">Aus dus<");
  return text;
}

TEST(XmlEditions, AnArticleIsProofread) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("article.xml", kArticle));
  auto const ran = run_keydrift({"proof", "article.xml"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1) << ran.err;
  EXPECT_NE(ran.out.find("article.xml:11:39 [dangling-couplet]"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("lead 2b leads to couplet \"27\", which this edition lacks"),
            std::string::npos)
      << ran.out;
}

TEST(XmlEditions, AnArticleIsSetAsAPrintedKey) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("article.xml", mended()));
  auto const ran = run_keydrift({"convert", "article.xml", "--to", "text"}, sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_EQ(ran.out,
            "Title: The genus Aus\n"
            "Year: 2021\n"
            "Language: en\n"
            "\n"
            "Key to the species of Aus\n"
            "\n"
            "1.      Beak bifid "
            "........................................................... 2\n"
            "–       Beak entire .......................................... Aus bus Orm, 1999\n"
            "\n"
            "2 (1).  Spike long ..................................................... Aus cus\n"
            "–       Spike short .................................................... Aus dus\n");
}

TEST(XmlEditions, SddComesBackAsTheSameKey) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("article.xml", mended()));
  auto const written =
      run_keydrift({"convert", "article.xml", "--to", "sdd", "-o", "key.xml"}, sandbox.path());
  EXPECT_EQ(written.exit, 0) << written.err;
  EXPECT_NE(written.err.find("[sdd-own-words]"), std::string::npos) << written.err;
  auto const before = run_keydrift({"convert", "article.xml", "--to", "text"}, sandbox.path());
  auto const after = run_keydrift({"convert", "key.xml", "--to", "text"}, sandbox.path());
  EXPECT_EQ(after.exit, 0) << after.err;
  EXPECT_EQ(after.out, before.out);
  auto const collated = run_keydrift({"collate", "article.xml", "key.xml"}, sandbox.path());
  EXPECT_EQ(collated.exit, 0) << collated.out << collated.err;
  auto const again =
      run_keydrift({"convert", "article.xml", "--to", "sdd", "-o", "again.xml"}, sandbox.path());
  EXPECT_EQ(again.exit, 0);
  EXPECT_EQ(slurp((sandbox.path() / "again.xml").string()),
            slurp((sandbox.path() / "key.xml").string()));
}

TEST(XmlEditions, WhatCannotBeReadIsRefusedWithItsPlace) {
  struct Case {
    std::string text;
    std::string said;
  };
  std::string deep = "<article>";
  for (int i = 0; i < 1'000'000; ++i) deep += "<sec>";
  std::string bomb = "<!DOCTYPE article [\n<!ENTITY a \"aaaaaaaaaa\">\n";
  for (char c = 'b'; c <= 'k'; ++c) {
    bomb += "<!ENTITY " + std::string{c} + " \"";
    for (int i = 0; i < 10; ++i) bomb += "&" + std::string{static_cast<char>(c - 1)} + ";";
    bomb += "\">\n";
  }
  bomb += "]>\n<article><body><p>&k;</p></body></article>";
  std::string const article = kArticle;
  for (auto const& one :
       {Case{article.substr(0, article.find("Spike short")), "k.xml:11:19: error"},
        Case{deep, "[xml-too-deep]"}, Case{bomb, "k.xml:1:1: error"},
        Case{"<article><p>1 Beak</sec></article>", "the element \"p\" is ended by \"</sec>\""},
        Case{"<?xml version=\"1.0\"?>\n<letter>1 Beak</letter>",
             "of XML, articles and books (JATS, TaxPub, BITS) and SDD 1.1 are read"}}) {
    Sandbox const sandbox;
    static_cast<void>(sandbox.write("k.xml", one.text));
    auto const ran =
        run_keydrift({"convert", "k.xml", "--to", "text", "-o", "out"}, sandbox.path());
    EXPECT_EQ(ran.exit, 3) << ran.err;
    EXPECT_EQ(ran.out, "");
    EXPECT_NE(ran.err.find(one.said), std::string::npos) << one.said << "\n" << ran.err;
    EXPECT_EQ(sandbox.files(), std::vector<std::string>{"k.xml"});
  }
}

}  // namespace
}  // namespace keydrift::test
