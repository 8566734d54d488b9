#include "keydrift/reports/worklist_html.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "keydrift/reports/csv.hpp"
#include "keydrift/reports/worklist_assets.hpp"
#include "sample.hpp"
#include "sha256.hpp"

namespace keydrift::test {
namespace {

std::size_t count_of(std::string const& text, std::string_view part) {
  std::size_t count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

TEST(WorklistPage, HasALineForEachSheetWithABoxForEachAnswer) {
  auto const sample = make_sample();
  auto html = worklist_html_begin(sample.old_edition, sample.new_edition, sample.redetermination);
  std::size_t sheets = 0;
  std::size_t boxes = 0;
  for (auto const& group : sample.redetermination.worklist) {
    append_group_begin(html, sample.new_edition, sample.redetermination, group, true);
    for (auto const index : group.specimens) {
      auto const& outcome = sample.redetermination.to_look_at[index];
      auto const& verdict = sample.redetermination.verdicts[outcome.verdict];
      append_work_line(html, outcome.specimen, answer_boxes(verdict));
      auto const& questions = verdict.questions;
      ++sheets;
      boxes += 1 + (questions.empty() ? 0 : questions.front().answers.size());
    }
    append_group_end(html);
  }
  html += worklist_html_end();
  EXPECT_TRUE(html.ends_with("</body>\n</html>\n"));
  EXPECT_NE(html.find("4 sheets to pull from 4 places"), std::string::npos);
  EXPECT_GT(sheets, 2U);
  EXPECT_EQ(count_of(html, "<td class=\"n\">"), sheets);
  EXPECT_EQ(count_of(html, "<i></i>"), boxes);
  EXPECT_NE(html.find("<i></i>red</span>"), std::string::npos);
  EXPECT_EQ(html.find("<script"), std::string::npos);
}

// A page that continues a group repeats the head of its table.
TEST(WorklistPage, HasQuestionAndPlaceInTheHeadOfEachTable) {
  auto const sample = make_sample();
  auto const& result = sample.redetermination;
  std::vector<std::string> heads;
  for (auto const& group : result.worklist) {
    std::string html;
    append_group_begin(html, sample.new_edition, result, group, false);
    EXPECT_EQ(html.find("<h2>"), std::string::npos);
    auto const begin = html.find("<thead>");
    auto const end = html.find("<tr><th>number");
    ASSERT_LT(begin, end);
    ASSERT_LT(end, html.find("</thead>"));
    heads.push_back(html.substr(begin, end - begin));
  }
  ASSERT_EQ(heads.size(), 4U);
  EXPECT_EQ(heads[0],
            "<thead><tr><th colspan=\"3\" class=\"q\">Underside of the claws: "
            "red → Orla rubra; white → stands<th colspan=\"3\" class=\"p\">Cabinet 1 / Shelf 1\n");
  EXPECT_EQ(
      heads[1],
      "<thead><tr><th colspan=\"3\" class=\"q\">No lead of couplet 5 fits: check the specimen "
      "against it<th colspan=\"3\" class=\"p\">No storage location\n");
}

TEST(WorklistPage, AllowsExactlyItsStyleSheet) {
  EXPECT_EQ(reports::kWorklistStyleHash, "sha256-" + test::sha256_base64(reports::kWorklistStyle));
}

}  // namespace
}  // namespace keydrift::test
