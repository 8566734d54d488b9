// A key as HTML and as CommonMark: nothing foreign becomes markup, everything is there.

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <random>
#include <string>
#include <string_view>

#include "golden.hpp"
#include "keydrift/reports/key_assets.hpp"
#include "keydrift/reports/key_pages.hpp"
#include "sha256.hpp"

namespace keydrift {
namespace {

// Two couplets, a group's name, several taxa at one end, notes, figures, back-references.
Edition shells() {
  Edition edition;
  edition.name = "shells.txt";
  edition.front.title = "River shells of Halvern";
  edition.front.edition = "2nd";
  edition.front.year = 1998;
  edition.front.authors = {"E. R.", "M. K."};
  edition.front.scope.region = "Halvern Basin";
  edition.taxa = {{"Aus bus", "(Smith, 1900)", {}},
                  {"Aus cus", "", {}},
                  {"Dus", "", {}},
                  {"Aus eus", "Roe", {}}};
  edition.couplets.resize(2);
  auto& first = edition.couplets[0];
  first.label = "1";
  first.place.begin = 100;
  first.leads.resize(2);
  first.leads[0].text = "Shell smooth (Fig. 2)";
  first.leads[0].figures = {"Fig. 2"};
  first.leads[0].destination = ToCouplet{CoupletId{1}};
  first.leads[0].taxon_remark = "Aus group";
  first.leads[1].text = "Shell ribbed";
  first.leads[1].destination = ToTaxa{{TaxonId{2}}};
  first.leads[1].figures = {"Fig. 9"};
  auto& second = edition.couplets[1];
  second.label = "2";
  second.place.begin = 200;
  second.back_references = {{"1", {}}};
  second.notes = {"Dry shells only."};
  second.leads.resize(3);
  second.leads[0].text = "Foot pale";
  second.leads[0].destination = ToTaxa{{TaxonId{0}, TaxonId{1}}};
  second.leads[0].taxon_remark = "in part";
  second.leads[0].notes = {"bleached ones are paler"};
  second.leads[1].text = "Foot dark";
  second.leads[1].destination = ToKey{"Key to the larvae"};
  second.leads[2].text = "Foot blue";
  second.leads[2].destination = Unresolved{"7"};
  edition.parts = {{"Key to the shells", CoupletId{0}, {}}};
  edition.notes = {{"Smooth species", {.begin = 150}}};
  return edition;
}

TEST(KeyMarkdown, LooksLikeAPrintedKey) {
  test::expect_golden("reports/key.md", key_markdown(shells()));
}

TEST(KeyHtml, LooksLikeAPrintedKey) {
  auto html = key_html(shells());
  auto const style = html.find("<style>");
  html.erase(style, html.find("</style>") - style);
  test::expect_golden("reports/key.html", html);
}

TEST(KeyHtml, PolicyAllowsItsOwnStyleAndNoScript) {
  auto const page = key_html(shells());
  auto const style =
      "style-src 'sha256-" + test::sha256_base64(reports::kKeyStyle) + "'; img-src data:";
  EXPECT_NE(page.find(style), std::string::npos) << style;
  EXPECT_NE(page.find("default-src 'none'"), std::string::npos);
  for (auto const* word :
       {"<script", "http://", "https://", "url(", "@import", " src=", " style="}) {
    EXPECT_EQ(page.find(word), std::string::npos) << word;
  }
}

// Every text of an edition, each made of what HTML and CommonMark would take for markup.
Edition hostile(std::string const& text) {
  Edition edition = shells();
  edition.front.title = text;
  edition.front.language = text;
  edition.front.other = {{text, text}};
  edition.parts[0].title = text + " too";
  edition.notes[0].text = text;
  for (auto& taxon : edition.taxa) taxon.name = taxon.authorship = text;
  for (auto& couplet : edition.couplets) {
    couplet.label = text;
    couplet.notes = {text};
    for (auto& back : couplet.back_references) back.label = text;
    for (auto& lead : couplet.leads) {
      lead.text = lead.taxon_remark = text;
      lead.notes = lead.figures = {text};
    }
  }
  edition.couplets[1].leads[1].destination = ToKey{text};
  edition.couplets[1].leads[2].destination = Unresolved{text};
  return edition;
}

TEST(KeyHtml, EscapesEveryWordOfTheEdition) {
  auto const page = key_html(hostile("<b onclick=\"x\">&amp;'"));
  EXPECT_EQ(page.find("<b onclick"), std::string::npos);
  EXPECT_EQ(page.find("\"x\""), std::string::npos);
  EXPECT_EQ(page.find("&amp;'"), std::string::npos);
  EXPECT_NE(page.find("&lt;b onclick=&quot;x&quot;&gt;&amp;amp;&#39;"), std::string::npos);
}

// What a CommonMark parser that is none of ours makes of it; empty when none is installed.
std::string parsed(std::string const& markdown) {
  auto const file = std::filesystem::temp_directory_path() /
                    ("keydrift-markdown-" + std::to_string(std::hash<std::string>{}(markdown)));
  std::ofstream{file, std::ios::binary} << markdown;
  std::unique_ptr<FILE, int (*)(FILE*)> pipe{
      ::popen(("cmark --to xml " + file.string() + " 2>/dev/null").c_str(), "r"), ::pclose};
  std::string out;
  std::array<char, 4096> buffer{};
  for (std::size_t got = 1; pipe && got > 0;) {
    got = std::fread(buffer.data(), 1, buffer.size(), pipe.get());
    out.append(buffer.data(), got);
  }
  std::filesystem::remove(file);
  return out;
}

// The words of the parser's XML, line by line; its elements must be those that the writer means.
std::string words_of(std::string const& xml) {
  std::string words;
  for (std::size_t at = xml.find("<document"); at < xml.size();) {
    auto const open = xml.find('<', at);
    words += xml.substr(at, open - at);
    if (open == std::string::npos) break;
    auto const close = xml.find('>', open);
    auto const tag = xml.substr(open + 1, close - open - 1);
    auto const name =
        tag.substr(tag[0] == '/' ? 1 : 0, tag.find_first_of(" /", 1) - (tag[0] == '/' ? 1 : 0));
    static constexpr std::array<std::string_view, 8> kMeant{
        "document", "heading", "paragraph", "text", "strong", "emph", "linebreak", "softbreak"};
    EXPECT_NE(std::find(kMeant.begin(), kMeant.end(), name), kMeant.end()) << tag;
    at = close + 1;
  }
  std::string plain;
  for (std::size_t i = 0; i < words.size(); ++i) {
    auto const entity = [&](std::string_view code, char c) {
      if (words.compare(i, code.size(), code) != 0) return false;
      plain += c;
      i += code.size() - 1;
      return true;
    };
    if (words[i] == '\n' || words[i] == ' ') continue;  // indentation
    if (entity("&amp;", '&') || entity("&lt;", '<') || entity("&gt;", '>') || entity("&quot;", '"'))
      continue;
    plain += words[i];
  }
  return plain;
}

std::string without_blanks(std::string text) {
  std::erase(text, ' ');
  return text;
}

TEST(KeyMarkdown, ShowsEveryWordAsPrintedInAParserOfItsOwn) {
  if (parsed("x").empty()) GTEST_SKIP() << "the program cmark is not installed";
  static constexpr std::string_view kSigns{"\\`*_{}[]()<>#+-.!|~&\"'=:;/^$%@,?1a Ab "};
  for (std::uint32_t seed = 0; seed < 60; ++seed) {
    std::mt19937 random{seed};
    std::string text;
    for (auto length = 1 + random() % 24; length > 0; --length) {
      text += kSigns[random() % kSigns.size()];
    }
    // What begins and ends with a letter is not trimmed.
    text = seed % 3 == 0 ? text + "z" : seed % 3 == 1 ? "&lt;" + text + "z" : "1. " + text + "##";
    auto const edition = hostile(text);
    auto const shown = words_of(parsed(key_markdown(edition)));
    auto const wanted = without_blanks(text);
    std::size_t count = 0;
    for (auto at = shown.find(wanted); at != std::string::npos;
         at = shown.find(wanted, at + wanted.size())) {
      ++count;
    }
    // title, front matter 2, part, note, labels 2, couplet notes 2 (with the label),
    // back-reference, leads 5 × (text, remark, note), their figures not (the words name them),
    // destinations: couplet label, taxa 3 with authors (4 namings, "Dus" and two others), key,
    // unresolved.
    EXPECT_GE(count, 30U) << "seed " << seed << ": " << text << "\n" << key_markdown(edition);
  }
}

}  // namespace
}  // namespace keydrift
