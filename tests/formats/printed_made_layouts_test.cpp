// One key in hundreds of layouts: undamaged print has to be read rightly however its labels, ends,
// wraps and indentation combine.  KEYDRIFT_MADE_SHOW=1 prints each text that is misread.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <iostream>
#include <string>

#include "keydrift/formats/printed_key.hpp"
#include "made_layouts.hpp"
#include "made_reading.hpp"
#include "made_scan.hpp"

namespace keydrift {
namespace {

constexpr std::uint32_t kMadeLayouts = 600;

struct LayoutScore {
  std::size_t leads{};
  std::size_t right{};
};

// `damaged`: how many labels, leaders and numbers of a thousand scanning damaged.
// `layer`: what becomes of a text before it is read.
template <class Make>
LayoutScore layout_score(
    Make make, std::uint32_t damaged = 0,
    std::function<std::string(std::string const&, std::uint32_t)> const& layer = {}) {
  bool const show = std::getenv("KEYDRIFT_MADE_SHOW") != nullptr;
  LayoutScore all;
  for (std::uint32_t seed = 1; seed <= kMadeLayouts; ++seed) {
    auto const genus = test::made_genus(seed);
    test::Scan scan{seed, damaged};
    auto layout = make(seed, genus, damaged > 0 ? &scan : nullptr);
    if (layer) layout.text = layer(layout.text, seed);
    auto const loaded = read_printed_key({.name = "made", .bytes = layout.text});
    auto const leads = test::made_leads(genus);
    std::string misread;
    for (auto const& lead : leads) {
      auto const to =
          loaded ? test::destination_of(loaded.value->edition, lead.words) : std::string{};
      if (to.starts_with(lead.to)) {
        ++all.right;
      } else {
        misread += "    " + lead.words + " -> " + to + "\n";
      }
    }
    all.leads += leads.size();
    if (show && !misread.empty()) {
      std::cout << "== " << seed << ": " << layout.choices << scan.said() << "\n"
                << misread << layout.text << "\n";
    }
  }
  std::cout << all.right << " of " << all.leads << " leads right\n";
  return all;
}

TEST(PrintedMadeLayouts, Couplets) {
  auto const all = layout_score(test::made_parallel);
  EXPECT_GE(all.right * 1000, all.leads * 995);
}

TEST(PrintedMadeLayouts, CoupletsBeneathTheirLeads) {
  auto const all = layout_score(test::made_nested);
  EXPECT_GE(all.right * 1000, all.leads * 985);
}

// Of a thousand labels, leaders and numbers at ends so many are damaged.
constexpr std::uint32_t kDamaged = 200;

TEST(PrintedMadeLayouts, ScannedCouplets) {
  auto const all = layout_score(test::made_parallel, kDamaged);
  EXPECT_GE(all.right * 1000, all.leads * 940);
}

TEST(PrintedMadeLayouts, ScannedCoupletsBeneathTheirLeads) {
  auto const all = layout_score(test::made_nested, kDamaged);
  EXPECT_GE(all.right * 1000, all.leads * 955);
}

std::function<std::string(std::string const&, std::uint32_t)> layer_of(test::TextLayer layer,
                                                                       bool flush) {
  return [layer, flush](std::string const& text, std::uint32_t seed) {
    return test::as_text_layer(text, layer, flush, seed);
  };
}

TEST(PrintedMadeLayouts, CoupletsWithBlankLinesBetweenAllLines) {
  auto const all =
      layout_score(test::made_parallel, 0, layer_of(test::TextLayer::between_lines, true));
  EXPECT_GE(all.right * 1000, all.leads * 985);
}

TEST(PrintedMadeLayouts, CoupletsWithBlankLinesByChance) {
  auto const all = layout_score(test::made_parallel, 0, layer_of(test::TextLayer::by_chance, true));
  EXPECT_GE(all.right * 1000, all.leads * 970);
}

TEST(PrintedMadeLayouts, NestedCoupletsWithBlankLinesBetweenAllLines) {
  auto const all =
      layout_score(test::made_nested, 0, layer_of(test::TextLayer::between_lines, false));
  EXPECT_GE(all.right * 1000, all.leads * 985);
}

TEST(PrintedMadeLayouts, NestedCoupletsWithBlankLinesByChance) {
  auto const all = layout_score(test::made_nested, 0, layer_of(test::TextLayer::by_chance, false));
  EXPECT_GE(all.right * 1000, all.leads * 965);
}

}  // namespace
}  // namespace keydrift
