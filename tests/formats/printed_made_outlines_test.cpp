// Outlines and lettered keys, each of another tree, in every usual way to label their leads, and as
// a scan leaves them.  KEYDRIFT_MADE_SHOW=1 prints each text that is misread.

#include <gtest/gtest.h>

#include <cstdlib>
#include <iostream>
#include <string>

#include "keydrift/formats/printed_key.hpp"
#include "made_outlines.hpp"
#include "made_reading.hpp"
#include "made_scan.hpp"

namespace keydrift {
namespace {

constexpr std::uint32_t kOutlines = 50;  // of each way

struct OutlineScore {
  std::size_t leads{};
  std::size_t right{};
};

OutlineScore outline_score(test::OutlineLabels labels, std::uint32_t damaged) {
  bool const show = std::getenv("KEYDRIFT_MADE_SHOW") != nullptr;
  OutlineScore all;
  for (std::uint32_t seed = 1; seed <= kOutlines; ++seed) {
    test::Scan scan{seed, damaged};
    auto const made = test::made_outline(labels, seed, damaged > 0 ? &scan : nullptr);
    auto const loaded = read_printed_key({.name = "made", .bytes = made.text});
    std::string misread;
    for (auto const& lead : made.leads) {
      auto const to =
          loaded ? test::destination_of(loaded.value->edition, lead.words) : std::string{};
      if (to.starts_with(lead.to)) {
        ++all.right;
      } else {
        misread += "    " + lead.words + " -> " + to + ", not " + lead.to + "\n";
      }
    }
    all.leads += made.leads.size();
    if (show && !misread.empty()) {
      std::cout << "== " << to_word(labels) << ' ' << seed << ": " << scan.said() << "\n"
                << misread << made.text << "\n";
    }
  }
  std::cout << to_word(labels) << ": " << all.right << " of " << all.leads << " leads right\n";
  return all;
}

class PrintedMadeOutlines : public testing::TestWithParam<test::OutlineLabels> {};

TEST_P(PrintedMadeOutlines, AreReadAsMade) {
  auto const all = outline_score(GetParam(), 0);
  EXPECT_EQ(all.right, all.leads);
}

// Every tenth label and letter at an end is damaged.
TEST_P(PrintedMadeOutlines, AreReadAsScanned) {
  auto const all = outline_score(GetParam(), 100);
  EXPECT_GE(all.right * 1000, all.leads * 950);
}

INSTANTIATE_TEST_SUITE_P(Labels, PrintedMadeOutlines, testing::ValuesIn(test::kOutlineLabels),
                         [](auto const& param) { return std::string{to_word(param.param)}; });

}  // namespace
}  // namespace keydrift
