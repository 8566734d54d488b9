#include <gtest/gtest.h>

#include <string>

#include "keydrift/reports/html.hpp"
#include "keydrift/reports/html_writer.hpp"
#include "sha256.hpp"
#include "sample.hpp"

namespace keydrift::test {
using namespace reports;
namespace {

TEST(HtmlPage, PolicyAllowsExactlyItsOwnStyleAndScript) {
  auto const page = html_page("t", "");
  auto const style = "style-src 'sha256-" + sha256_base64(html_style()) + "'";
  auto const script = "script-src 'sha256-" + sha256_base64(html_script()) + "'";
  EXPECT_NE(page.find(style), std::string::npos) << style;
  EXPECT_NE(page.find(script), std::string::npos) << script;
  EXPECT_NE(page.find("default-src 'none'"), std::string::npos);
}

TEST(HtmlPage, FetchesNothing) {
  auto const page = html_page("t", "");
  for (auto const* word :
       {"http://", "https://", "url(", "@import", " src=", "fetch(", "XMLHttp"}) {
    EXPECT_EQ(page.find(word), std::string::npos) << word;
  }
}

TEST(HtmlProof, SetsFindingsBesideTheirCoupletAndTheRestApart) {
  auto sample = make_sample();
  sample.proof.findings[0].printed = "<b>31</b>";
  sample.proof.findings.push_back(finding("frequency-of-group", Severity::warning, "counts.csv", 3,
                                          "Orla", "\"Orla\" takes in <3> taxa", ""));
  auto const page = proof_html(sample.old_edition, sample.proof);
  EXPECT_EQ(page.find("<b>31"), std::string::npos);
  auto const couplets = page.find("Couplets, and what was found in them");
  ASSERT_NE(couplets, std::string::npos);
  // Of another file: above the couplets.
  EXPECT_LT(page.find("&quot;Orla&quot; takes in &lt;3&gt; taxa"), couplets);
  // Line 4 is couplet 2's second lead.
  auto const second = page.find("<div class=\"pair\" id=\"c1\"", couplets);
  auto const third = page.find("<div class=\"pair\" id=\"c2\"", couplets);
  auto const dangling = page.find("leads to couplet &quot;31&quot;", couplets);
  EXPECT_LT(second, dangling);
  EXPECT_LT(dangling, third);
  EXPECT_NE(page.find("● Errors in couplets <a href=\"#c1\">2</a></p>"), std::string::npos);
}

TEST(HtmlWriter, EscapesWhatIsForeign) {
  EXPECT_EQ(escaped("<b>\"A & B's\"</b>"), "&lt;b&gt;&quot;A &amp; B&#39;s&quot;&lt;/b&gt;");
  EXPECT_EQ(escaped(std::string_view{"a\x01z", 3}), "a\xEF\xBF\xBDz");
  HtmlWriter html;
  html.element("p", "</p><script>x</script>", "class=\"c\"");
  EXPECT_EQ(std::move(html).take(), "<p class=\"c\">&lt;/p&gt;&lt;script&gt;x&lt;/script&gt;</p>");
}

}  // namespace
}  // namespace keydrift::test
