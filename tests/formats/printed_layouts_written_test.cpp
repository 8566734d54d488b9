// Editions of every shape in every layout: what is printed is the same key.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "made_editions.hpp"
#include "printed_support.hpp"
#include "seeds.hpp"

namespace keydrift {
namespace {

using test::Shape;

constexpr std::array kWrittenLayouts{PrintLayout::parallel, PrintLayout::indented,
                                     PrintLayout::serial};
constexpr std::array kShapes{Shape::balanced, Shape::comb, Shape::polytomous, Shape::reticulate,
                             Shape::several_keys};

std::string printed_with(Edition const& edition, PrintOptions const& options) {
  auto loaded = print_key(edition, options);
  for (auto const& finding : loaded.findings) {
    if (finding.severity == Severity::error) ADD_FAILURE() << test::one_line(finding);
  }
  return loaded ? *loaded.value : std::string{};
}

Edition read_printed(std::string_view text) {
  auto loaded = read_printed_key({.name = "printed", .bytes = text});
  if (!loaded) ADD_FAILURE() << test::one_line(loaded.findings.front());
  return loaded ? std::move(loaded.value->edition) : Edition{};
}

// The content of one lead without the numbers of couplets.
std::string words_of(Edition const& edition, Lead const& lead) {
  std::string words = lead.text + "|" + lead.taxon_remark;
  for (auto const& note : lead.notes) words += "|" + note;
  for (auto const& figure : lead.figures) words += "|" + figure;
  if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    for (auto const taxon : taxa->taxa) {
      words += "|" + edition[taxon].name + "=" + edition[taxon].authorship;
    }
  } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
    words += "|key " + key->key;
  } else if (auto const* unresolved = std::get_if<Unresolved>(&lead.destination)) {
    words += "|? " + unresolved->printed;
  }
  return words;
}

// Walks both keys side by side from their starts: the same leads with the same words to the same
// ends, whatever the numbers and the order of the couplets.  Nothing of the writer is trusted.
void expect_same_key(Edition const& a, Edition const& b) {
  ASSERT_EQ(a.parts.size(), b.parts.size());
  ASSERT_EQ(a.couplets.size(), b.couplets.size());
  constexpr std::uint32_t kUnmet = 0xFFFFFFFFU;
  std::vector<std::uint32_t> met(a.couplets.size(), kUnmet);
  std::vector<std::pair<CoupletId, CoupletId>> waiting;
  for (std::size_t p = 0; p < a.parts.size(); ++p) {
    EXPECT_EQ(a.parts[p].title, b.parts[p].title);
    waiting.emplace_back(a.parts[p].start, b.parts[p].start);
  }
  std::size_t walked = 0;
  while (!waiting.empty()) {
    auto const [ours, theirs] = waiting.back();
    waiting.pop_back();
    auto& meets = met[ours.index];
    if (meets != kUnmet) {
      ASSERT_EQ(meets, theirs.index) << "couplet " << a[ours].label;
      continue;
    }
    meets = theirs.index;
    ++walked;
    auto const& left = a[ours];
    auto const& right = b[theirs];
    EXPECT_EQ(left.notes, right.notes);
    ASSERT_EQ(left.leads.size(), right.leads.size()) << "couplet " << left.label;
    for (std::size_t i = 0; i < left.leads.size(); ++i) {
      ASSERT_EQ(words_of(a, left.leads[i]), words_of(b, right.leads[i]));
      auto const* to = std::get_if<ToCouplet>(&left.leads[i].destination);
      auto const* other = std::get_if<ToCouplet>(&right.leads[i].destination);
      ASSERT_EQ(to == nullptr, other == nullptr) << left.leads[i].text;
      if (to != nullptr) waiting.emplace_back(to->couplet, other->couplet);
    }
  }
  // All couplets of these shapes are reached, so the numbers of couplets above say the rest.
  EXPECT_EQ(walked, a.couplets.size());
}

TEST(PrintedLayouts, HoldEveryShape) {
  auto const seeds = test::seeds(2);
  for (auto seed = seeds.begin; seed < seeds.end; ++seed) {
    for (auto const shape : kShapes) {
      for (std::uint32_t const couplets : {3U, 7U, 40U}) {
        auto const edition = test::shaped_edition(shape, couplets, seed);
        for (auto const layout : kWrittenLayouts) {
          SCOPED_TRACE("seed " + std::to_string(seed) + ", shape " +
                       std::to_string(static_cast<int>(shape)) + ", couplets " +
                       std::to_string(couplets) + ", layout " +
                       std::to_string(static_cast<int>(layout)));
          expect_same_key(edition, read_printed(printed_with(edition, {.layout = layout})));
        }
      }
    }
  }
}

TEST(PrintedLayouts, ChangeIntoEachOther) {
  auto const seeds = test::seeds(1);
  for (auto seed = seeds.begin; seed < seeds.end; ++seed) {
    for (auto const shape : kShapes) {
      auto const edition = test::shaped_edition(shape, 24, seed);
      for (auto const first : kWrittenLayouts) {
        auto const once = read_printed(printed_with(edition, {.layout = first, .width = 60}));
        for (auto const second : kWrittenLayouts) {
          SCOPED_TRACE("seed " + std::to_string(seed) + ", shape " +
                       std::to_string(static_cast<int>(shape)) + ", layouts " +
                       std::to_string(static_cast<int>(first)) +
                       std::to_string(static_cast<int>(second)));
          expect_same_key(edition, read_printed(printed_with(once, {.layout = second})));
        }
      }
    }
  }
}

TEST(PrintedLayouts, GoThroughJsonToTheSameBytes) {
  auto const seeds = test::seeds(10);
  for (auto seed = seeds.begin; seed < seeds.end; ++seed) {
    auto const edition = test::odd_edition(seed);
    auto const text = printed_with(edition, {});
    auto const first = read_printed(text);
    auto const json = write_key_json(first);
    auto const again = read_key_json({.name = "again.json", .bytes = json});
    ASSERT_TRUE(again) << test::one_line(again.findings.front());
    EXPECT_TRUE(same_content(first, *again.value)) << "seed " << seed;
    EXPECT_EQ(printed_with(*again.value, {}), text) << "seed " << seed;
    EXPECT_EQ(write_key_json(*again.value), json) << "seed " << seed;
  }
}

TEST(PrintedLayouts, ReadBackWithAnyLeaders) {
  auto const seeds = test::seeds(2);
  for (auto seed = seeds.begin; seed < seeds.end; ++seed) {
    for (auto const shape : kShapes) {
      auto const edition = test::shaped_edition(shape, 12, seed);
      for (auto const layout : kWrittenLayouts) {
        for (auto const leaders : {PrintLeaders::tab, PrintLeaders::none}) {
          for (std::size_t const width : {50U, 100U}) {
            SCOPED_TRACE("seed " + std::to_string(seed) + ", shape " +
                         std::to_string(static_cast<int>(shape)) + ", layout " +
                         std::to_string(static_cast<int>(layout)) + ", leaders " +
                         std::to_string(static_cast<int>(leaders)));
            auto const text =
                printed_with(edition, {.layout = layout, .width = width, .leaders = leaders});
            EXPECT_EQ(text.find("..."), std::string::npos) << text;
            expect_same_key(edition, read_printed(text));
          }
        }
      }
    }
  }
}

#ifdef __OPTIMIZE__
constexpr std::uint32_t kDeep = 100'000;
#else
constexpr std::uint32_t kDeep = 10'000;  // ten times as slow
#endif

// A key of any depth stays on the page, and is written and read without recursion.
TEST(PrintedLayouts, HoldAKeyAsDeepAsItHasCouplets) {
  auto const edition = test::shaped_edition(Shape::comb, kDeep, 1);
  auto const text = printed_with(edition, {.layout = PrintLayout::indented});
  EXPECT_LT(text.size(), edition.couplets.size() * 2 * 400);
  std::uint32_t widest = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = text.find('\n', begin);
    widest = std::max(widest, count_code_points(std::string_view{text}.substr(begin, end - begin)));
    begin = end + 1;
  }
  EXPECT_LE(widest, 80U);
}

TEST(PrintedLayouts, PrintASharedCoupletOnceAndPointToIt) {
  auto const edition =
      test::read_key(
          "1. Small ..... 2\n– Large ..... 3\n2. Pale ..... 3\n– Dark ..... Aus bus\n"
          "3. Round ..... Aus cus\n– Square ..... Aus dus\n")
          .edition;
  EXPECT_EQ(printed_with(edition, {.layout = PrintLayout::indented, .width = 40}),
            "1.  Small\n"
            "  2.  Pale\n"
            "    3.  Round .................. Aus cus\n"
            "    3.  Square ................. Aus dus\n"
            "  2.  Dark ..................... Aus bus\n"
            "1.  Large ............................ 3\n");
  EXPECT_EQ(printed_with(edition, {.layout = PrintLayout::serial, .width = 40}),
            "1 (6).  Small\n"
            "2 (5).  Pale\n"
            "3 (4).  Round .................. Aus cus\n"
            "4 (3).  Square ................. Aus dus\n"
            "5 (2).  Dark ................... Aus bus\n"
            "6 (1).  Large ........................ 3\n");
}

TEST(PrintedLayouts, SayHowToTakeLabelsThatWouldBeMisread) {
  auto const edition =
      test::read_key(
          "7. Small ..... 7a\n– Large ..... Aus bus\n7a. Pale ..... 8\n7a'. Dark ..... Aus cus\n"
          "8. Round ..... Aus dus\n– Square ..... Aus eus\n")
          .edition;
  EXPECT_EQ(printed_with(edition, {.layout = PrintLayout::indented, .width = 40}),
            "Layout: indented, exact\n"
            "\n"
            "7.   Small\n"
            "  7a.  Pale\n"
            "    8.   Round ................. Aus dus\n"
            "    8.   Square ................ Aus eus\n"
            "  7a.  Dark .................... Aus cus\n"
            "7.   Large ..................... Aus bus\n");
}

TEST(PrintedLayouts, NumberAnewOnDemand) {
  auto const edition = test::read_key(
                           "5. Small ..... 7a\n– Large ..... Aus bus\n"
                           "7a (5'). Pale ..... Aus cus\n7a'. Dark ..... Aus dus\n")
                           .edition;
  EXPECT_EQ(printed_with(edition, {.width = 40, .renumber = true}),
            "1.      Small ........................ 2\n"
            "–       Large .................. Aus bus\n"
            "\n"
            "2 (1).  Pale ................... Aus cus\n"
            "–       Dark ................... Aus dus\n");
}

std::vector<std::string> told_losses(Edition const& edition, PrintOptions const& options) {
  return test::one_line_each(print_key(edition, options).findings);
}

TEST(PrintedLayouts, TellWhatTheyDoNotHold) {
  auto edition = test::read_key(
                     "1. Small ..... 2\n– Large ..... Aus bus\n"
                     "2 (1). Pale ..... Aus cus\n– Dark ..... Aus dus\n")
                     .edition;
  edition.taxa.push_back({"Aus eus", "", {}});
  EXPECT_EQ(
      told_losses(edition, {.layout = PrintLayout::serial}),
      (std::vector<std::string>{
          "key.txt:1:1: information: the serial layout numbers the leads, so couplets got the "
          "numbers of their first leads [renumbered]",
          "key.txt:1:1: information: 1 back-reference is not printed: in serial layout the "
          "brackets "
          "hold the rivals' numbers [back-references-left-out]",
          "key.txt:1:1: information: 1 taxon that no lead names is not printed [unnamed-taxa] "
          "(list "
          "them in the front matter (\"Lists: …\") if the key claims to hold them)"}));
}

TEST(PrintedLayouts, RefuseWhatCannotBePrinted) {
  auto edition = test::read_key(
                     "1. Small ..... 2\n– Large ..... Aus bus\n"
                     "2. Pale ..... Aus cus\n– Dark ..... Aus dus\n")
                     .edition;
  edition.couplets[1].label = "II.3";
  auto const loaded = print_key(edition);
  EXPECT_FALSE(loaded);
  ASSERT_FALSE(loaded.findings.empty());
  EXPECT_EQ(loaded.findings.front().code, "not-printable");
  edition.couplets[1].leads.clear();
  EXPECT_EQ(told_losses(edition, {}),
            (std::vector<std::string>{"key.txt:3:1: error: couplet \"II.3\" has no leads to print "
                                      "[not-printable] (give it leads, or take it out)"}));
}

}  // namespace
}  // namespace keydrift
