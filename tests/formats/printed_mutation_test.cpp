// Damaged keys: whatever is cut, doubled or strewn in, every line stays accounted for, every word
// points to its source, and a refusal says why.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>
#include <string>
#include <string_view>

#include "golden.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;

class Damager {
 public:
  explicit Damager(unsigned seed) : random_{seed} {}

  std::string damage(std::string text) {
    for (auto times = 1 + below(12); times > 0 && !text.empty(); --times) {
      auto const at = below(text.size());
      switch (below(4)) {
        case 0:
          text.erase(at, 1 + below(10));
          break;
        case 1:
          drop_line(text, at);
          break;
        case 2:
          double_line(text, at);
          break;
        default:
          text.insert(at, strewn());
          break;
      }
    }
    return text;
  }

 private:
  std::size_t below(std::size_t bound) { return random_() % bound; }

  std::string strewn() {
    static constexpr std::array kBits{
        "\n"sv,      "\n\n"sv,       "   "sv, "\t"sv,      "....."sv,  " … "sv,
        "–"sv,       "- "sv,         "1."sv,  "2 (1)."sv,  "7a'"sv,    "A."sv,
        "Aus bus"sv, "("sv,          "["sv,   "]"sv,       ")"sv,      "Note: "sv,
        "Fig. 3 "sv, "Key B"sv,      "→"sv,   "go to 5"sv, " or "sv,   ", "sv,
        "12"sv,      "\xC2\xAD\n"sv, "-\n"sv, "\""sv,      "{a: b}"sv, "¹ "sv,
        "* "sv,      "p. 44"sv,      "\f"sv,  "葉"sv,      "\xE9"sv,   "44\n"sv};
    return std::string{kBits[below(kBits.size())]};
  }

  static void drop_line(std::string& text, std::size_t at) {
    auto const begin = text.rfind('\n', at);
    auto const end = text.find('\n', at);
    if (begin != std::string::npos && end != std::string::npos) text.erase(begin, end - begin);
  }
  void double_line(std::string& text, std::size_t at) {
    auto const begin = text.rfind('\n', at);
    auto const end = text.find('\n', at);
    if (begin == std::string::npos || end == std::string::npos) return;
    auto const line = text.substr(begin, end - begin);
    text.insert(below(text.size()), line);
  }

  std::mt19937 random_;
};

void expect_sound(std::string const& text, unsigned seed) {
  auto const loaded = read_printed_key({.name = "damaged", .bytes = text});
  if (!loaded) {
    EXPECT_FALSE(loaded.findings.empty()) << "seed " << seed;
    return;
  }
  auto const decoded = decode_text({.name = "damaged", .bytes = text});
  ASSERT_TRUE(decoded);
  auto const& lines = loaded.value->source.lines;
  // Signs that were read as others are said, and no longer what the source prints.
  bool const mended =
      std::any_of(loaded.findings.begin(), loaded.findings.end(), [](Finding const& one) {
        return one.code == "misread-signs" || one.code == "spaced-letters";
      });
  TextPlaces const places{mended ? loaded.value->source.text : decoded.value->text};
  ASSERT_EQ(lines.size(), places.line_count()) << "seed " << seed;
  for (std::size_t i = 0; i < lines.size(); ++i) ASSERT_EQ(lines[i].line, i + 1) << "seed " << seed;
  for (auto const& couplet : loaded.value->edition.couplets) {
    for (auto const& lead : couplet.leads) {
      for (std::size_t r = 0; r < lead.runs.size(); ++r) {
        auto const& run = lead.runs[r];
        auto const end = r + 1 < lead.runs.size() ? lead.runs[r + 1].text_begin : lead.text.size();
        auto words = lead.text.substr(run.text_begin, end - run.text_begin);
        if (!words.empty() && words.back() == ' ') words.pop_back();  // the joint
        ASSERT_LE(run.place.end, loaded.value->source.text.size()) << "seed " << seed;
        if (!mended) {
          ASSERT_EQ(words,
                    decoded.value->text.substr(run.place.begin, run.place.end - run.place.begin))
              << "seed " << seed;
        }
        ASSERT_EQ(places.at(run.place.begin, run.place.end), run.place) << "seed " << seed;
      }
    }
  }
}

TEST(PrintedMutation, DamagedKeysStayAccountedFor) {
  auto const first = static_cast<unsigned>(testing::UnitTest::GetInstance()->random_seed());
  for (auto const* name :
       {"fixtures/velunaceae/edition-1974.txt", "fixtures/velunaceae/edition-1998.txt",
        "tests/golden/printed/shells.txt"}) {
    auto const text = test::slurp(std::string{KEYDRIFT_SOURCE_DIR} + "/" + name);
    for (unsigned i = 0; i < 40; ++i) {
      auto const seed = first * 1000 + i;
      expect_sound(Damager{seed}.damage(text), seed);
      if (HasFatalFailure()) return;
    }
  }
}

}  // namespace
}  // namespace keydrift
