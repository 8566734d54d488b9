#include "keydrift/key/finding.hpp"

#include <gtest/gtest.h>

namespace keydrift {
namespace {

TEST(Findings, AreWrittenWithPlaceSeverityMessageCodePrintedWordsAndRemedy) {
  Finding const finding{
      .code = "dangling-couplet",
      .severity = Severity::error,
      .file = "fens.txt",
      .place = {.line = 14, .column = 39, .begin = 0, .end = 0},
      .printed = "– Beak bifid ..... 27\nnext line",
      .message = "lead 3b leads to couplet \"27\", which this edition lacks",
      .remedy = "did you mean \"21\"?",
      .related = {{.place = {.line = 90, .column = 5, .begin = 0, .end = 0},
                   .message = "the last couplet is here"}},
  };
  EXPECT_EQ(to_text(finding),
            "fens.txt:14:39: error: lead 3b leads to couplet \"27\", which this edition lacks "
            "[dangling-couplet]\n"
            "  – Beak bifid ..... 27\n"
            "  next line\n"
            "  fens.txt:90:5: the last couplet is here\n"
            "  did you mean \"21\"?\n");
}

TEST(Findings, WithoutPrintedWordsAndRemedyTakeOneLine) {
  Finding finding;
  finding.code = "comb";
  finding.severity = Severity::information;
  finding.message = "the key is a comb";
  EXPECT_EQ(to_text(finding), "1:1: information: the key is a comb [comb]\n");
}

TEST(Findings, OfNoLineNameTheFileAlone) {
  Finding finding;
  finding.code = "temporary-file";
  finding.file = "/tmp";
  finding.place.line = 0;
  finding.message = "a temporary file cannot be made";
  EXPECT_EQ(to_text(finding), "/tmp: error: a temporary file cannot be made [temporary-file]\n");
}

TEST(Findings, ShowControlCharactersInsteadOfObeyingThem) {
  Finding finding;
  finding.code = "x";
  finding.file = "a\nb";
  finding.printed = "red \x1B[31m\ttab \x7F \xC2\x9B done\r\nmore";
  finding.message = "one\ntwo";
  EXPECT_EQ(to_text(finding),
            "a␊b:1:1: error: one␊two [x]\n"
            "  red ␛[31m tab ␡ \xEF\xBF\xBD done\n"
            "  more\n");
}

TEST(Findings, AreSortedByFileLineColumnCodeAndMessageAndOtherwiseKeepTheirOrder) {
  auto const make = [](std::string file, std::uint32_t line, std::uint32_t column, std::string code,
                       std::string message, std::string remedy) {
    return Finding{.code = std::move(code),
                   .severity = Severity::error,
                   .file = std::move(file),
                   .place = {.line = line, .column = column, .begin = 0, .end = 0},
                   .printed = {},
                   .message = std::move(message),
                   .remedy = std::move(remedy),
                   .related = {}};
  };
  std::vector<Finding> findings{
      make("b", 1, 1, "c", "m", "8"), make("a", 10, 1, "c", "m", "7"),
      make("a", 9, 2, "c", "m", "6"), make("a", 9, 1, "d", "m", "5"),
      make("a", 9, 1, "c", "n", "4"), make("a", 9, 1, "c", "m", "2"),
      make("a", 9, 1, "c", "m", "3"), make("a", 2, 80, "z", "z", "1"),
  };
  sort_findings(findings);
  std::string order;
  for (auto const& finding : findings) order += finding.remedy;
  EXPECT_EQ(order, "12345678");
}

}  // namespace
}  // namespace keydrift
