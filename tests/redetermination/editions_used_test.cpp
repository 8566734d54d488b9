// Cited works and dates against the editions that they mean.
#include "keydrift/redetermination/editions_used.hpp"

#include <gtest/gtest.h>

#include "../formats/finding_text.hpp"

namespace keydrift {
namespace {

CitationRow row(std::string citation, std::string edition, std::string const& published = "") {
  return {.citation = std::move(citation),
          .edition = std::move(edition),
          .published = published.empty() ? std::nullopt : read_period(published),
          .place = {}};
}

FrontMatter front(std::string label, int year) {
  FrontMatter matter;
  matter.edition = std::move(label);
  matter.year = year;
  return matter;
}

struct Editions {
  explicit Editions(std::vector<CitationRow> rows)
      : table{.name = "c.csv", .rows = std::move(rows)},
        used{&table, front("1998", 1998), front("2024", 2024)} {}
  // "1998 old cited", "- other presumed by date".
  std::string operator()(std::string const& cited, std::string const& dated = "") {
    auto const& use = used.of(cited, dated);
    auto const& label = used.labels()[use.edition];
    std::string text = label.empty() ? "-" : label;
    text += use.role == EditionRole::new_edition ? " new "
            : use.role == EditionRole::other     ? " other "
                                                 : " old ";
    text += to_word(use.basis);
    return text + (use.unnamed_work ? ", unnamed work" : "");
  }
  CitationTable table;
  EditionsUsed used;
};

Editions orm() {
  return Editions{{row("Orm & Tal 1998", "1998", "1998-05"), row("Orm 2024", "NEW", "2024-02-10"),
                   row("Tal 1974, A field key", "1974"), row("", "2010", "2010")}};
}

TEST(EditionsUsed, FindsCitationsByTheirWords) {
  auto editions = orm();
  EXPECT_EQ(editions("Orm & Tal 1998"), "1998 old cited");
  EXPECT_EQ(editions("ORM and TAL, 1998."), "1998 old cited");
  EXPECT_EQ(editions("Orm, A. & B. Tal (1998): A key to all."), "1998 old cited");
  EXPECT_EQ(editions("A key by Orm et Tal 1998, p. 4–9"), "1998 old cited");
  EXPECT_EQ(editions("Orm 2024"), "2024 new cited");
  EXPECT_EQ(editions("Tal 1974, A field key"), "1974 other cited");
  EXPECT_EQ(editions("Tal & Orm 1998"), "- old not known, unnamed work");
  EXPECT_EQ(editions("Orm & Tal 1998a"), "- old not known, unnamed work");
  EXPECT_EQ(editions("Tal 1974"), "- old not known, unnamed work");
  EXPECT_EQ(editions(" | "), "- old not known");
}

TEST(EditionsUsed, TakesTheRowThatSaysMoreOfAWork) {
  Editions editions{
      {row("Orm 1998", "1974"), row("Orm 1998 second part", "1998"), row("1998", "2010")}};
  EXPECT_EQ(editions("Orm 1998"), "1974 other cited");
  EXPECT_EQ(editions("Orm 1998, second part"), "1998 old cited");
  EXPECT_EQ(editions("see Orm 1998, second part, p. 4"), "1998 old cited");
  EXPECT_EQ(editions("Tal 1998"), "2010 other cited");
}

TEST(EditionsUsed, NobodyUsedAnEditionBeforeItWasPublished) {
  auto editions = orm();
  EXPECT_EQ(editions("Orm & Tal 1998", "1998"), "1998 old cited");
  EXPECT_EQ(editions("Orm & Tal 1998", "1998-05-01"), "1998 old cited");
  EXPECT_EQ(editions("Orm & Tal 1998", "1998-04-30"), "1998 old citation and date contradict");
  EXPECT_EQ(editions("Orm & Tal 1998", "1990/1999"), "1998 old cited");
  EXPECT_EQ(editions("Orm 2024", "2023"), "2024 old citation and date contradict");
  // Of two works the date leaves one.
  EXPECT_EQ(editions("Orm & Tal 1998 | Orm 2024", "2023"), "1998 old cited");
  EXPECT_EQ(editions("Orm & Tal 1998 | Orm 2024", "2025"), "2024 new cited");
  EXPECT_EQ(editions("Orm & Tal 1998 | Orm 2024"), "2024 new cited");
}

TEST(EditionsUsed, PresumesByDateWhatWasPublishedLastButNeverTheNewEdition) {
  auto editions = orm();
  EXPECT_EQ(editions("", "1960"), "- other presumed by date");
  EXPECT_EQ(editions("", "1975-03"), "1974 other presumed by date");
  EXPECT_EQ(editions("", "1998-05-31"), "1998 old presumed by date");
  EXPECT_EQ(editions("", "2005/2007"), "1998 old presumed by date");
  EXPECT_EQ(editions("", "2012"), "2010 other presumed by date");
  EXPECT_EQ(editions("", "2025"), "2010 other presumed by date");
  // May or may not be before it came out.
  EXPECT_EQ(editions("", "1998"), "- old not known");
  EXPECT_EQ(editions("", "1970/2000"), "- old not known");
  EXPECT_EQ(editions("", "14.7.2005"), "- old not known");
  EXPECT_EQ(editions("", ""), "- old not known");
  EXPECT_EQ(editions("Bul 1901", "2005"), "1998 old presumed by date, unnamed work");
}

TEST(EditionsUsed, WithoutATableGoesByLabelAndYear) {
  EditionsUsed used{nullptr, front("second", 1998), front("third", 2024)};
  auto const told = [&](std::string const& cited) {
    auto const& use = used.of(cited, "");
    return used.labels()[use.edition] + " " + to_word(use.basis);
  };
  EXPECT_FALSE(used.has_table());
  EXPECT_EQ(told("Orm, second edition"), "second cited");
  EXPECT_EQ(told("Orm (1998)"), "second cited");
  EXPECT_EQ(told("Orm 2024"), "third cited");
  EXPECT_EQ(told("Orm 1998, 2024"), "second cited");
  EXPECT_EQ(told("Orm 19980"), " not known");
}

TEST(EditionsUsed, WarnsOfATableThatMeansNeitherEdition) {
  EXPECT_EQ(test::one_line_each(Editions{{row("Orm 1974", "1974")}}.used.findings()),
            std::vector<std::string>{
                "c.csv:1:1: warning: no citation of the table means \"1998\" or \"2024\" "
                "[no-such-edition] (write the labels of the editions as they print them, or OLD "
                "and NEW)"});
  CitationTable const table{.name = "c.csv", .rows = {row("Orm 1998", "OLD")}};
  EditionsUsed const same{&table, front("", 1998), front("1998", 1999)};
  EXPECT_EQ(test::one_line_each(same.findings()),
            std::vector<std::string>{
                "c.csv:1:1: warning: both editions are called \"1998\", so that a row with that "
                "label means the old one [same-label] (write OLD and NEW into the column "
                "\"edition\", or give the editions labels)"});
}

}  // namespace
}  // namespace keydrift
