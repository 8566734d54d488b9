#include "keydrift/taxa/name_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace keydrift::name_parts {
namespace {

// The definition, without a limit.
std::size_t plain_distance(std::string const& a, std::string const& b) {
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        d[i][j] = i + j;
        continue;
      }
      std::size_t const replaced = a[i - 1] == b[j - 1] ? 0 : 1;
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + replaced});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
      }
    }
  }
  return d[a.size()][b.size()];
}

TEST(EditDistance, EqualsItsDefinitionWithinTheLimit) {
  std::vector<std::string> words{""};
  for (std::size_t from = 0; words.back().size() < 4;) {
    auto const to = words.size();
    for (; from < to; ++from) {
      for (char const c : {'a', 'b', 'c'}) words.push_back(words[from] + c);
    }
  }
  for (auto const& a : words) {
    for (auto const& b : words) {
      auto const truth = plain_distance(a, b);
      for (std::size_t limit = 0; limit <= 4; ++limit) {
        auto const found = edit_distance(a, b, limit);
        if (truth <= limit) {
          ASSERT_EQ(found, truth) << a << " / " << b << " within " << limit;
        } else {
          ASSERT_EQ(found, std::nullopt) << a << " / " << b << " within " << limit;
        }
      }
    }
  }
}

TEST(EditDistance, TakesWordsThatFillMoreThanAStackRow) {
  std::string const a(500, 'a');
  auto b = a;
  b[100] = 'b';
  b.insert(300, "c");
  EXPECT_EQ(edit_distance(a, b, 3), 2U);
  EXPECT_EQ(edit_distance(a, b, 1), std::nullopt);
}

TEST(CleanedName, MakesOneKindOfEveryBlankDashQuoteAndSign) {
  EXPECT_EQ(cleaned_name("  Aus\u00a0\t bus\u2009—x "), "Aus bus -x");
  EXPECT_EQ(cleaned_name("Aus ‘Red’ ✕ “b”"), "Aus 'Red' × \"b\"");
  EXPECT_EQ(cleaned_name("Au\u00ads\u200b e\u0301"), "Aus é");
  EXPECT_EQ(cleaned_name("A\xff"
                         "us"),
            "Aus");
}

TEST(FoldedWord, WritesMarkedLettersInTwoWays) {
  EXPECT_EQ(folded_word("Mülleri", Marks::transcribed), "muelleri");
  EXPECT_EQ(folded_word("Mülleri", Marks::dropped), "mulleri");
  EXPECT_EQ(folded_word("ångströmi", Marks::transcribed), "aongstroemi");
  EXPECT_EQ(folded_word("ångströmi", Marks::dropped), "angstromi");
  // A diaeresis only says that the vowels are spoken apart.
  EXPECT_EQ(folded_word("isoëtes", Marks::transcribed), "isoetes");
  EXPECT_EQ(folded_word("aöna", Marks::transcribed), "aona");
  EXPECT_EQ(folded_word("Łukæþß", Marks::dropped), "lukaethss");
  EXPECT_EQ(folded_word("c-album", Marks::dropped), "calbum");
  EXPECT_EQ(folded_word("7-punctata", Marks::dropped), "septempunctata");
}

TEST(GenderStem, IsTheSameForAllGendersOfAnAdjective) {
  std::vector<std::vector<std::string>> const adjectives{{"albus", "alba", "album"},
                                                         {"viridis", "viride"},
                                                         {"niger", "nigra", "nigrum"},
                                                         {"asper", "aspera", "asperum"},
                                                         {"acer", "acris", "acre"},
                                                         {"minor", "minus"},
                                                         {"inferior", "inferius"},
                                                         {"lutensis", "lutense"},
                                                         {"elegans"},
                                                         {"florifer", "florifera", "floriferum"},
                                                         {"multiflorus", "multiflorum"},
                                                         {"decorus", "decora", "decorum"}};
  for (auto const& forms : adjectives) {
    for (auto const& form : forms) EXPECT_EQ(gender_stem(form), gender_stem(forms[0])) << form;
  }
  for (auto const* noun : {"smithi", "smithii", "smithae", "smithorum", "smitharum", "us", "bus"}) {
    EXPECT_EQ(gender_stem(noun), noun);
  }
}

}  // namespace
}  // namespace keydrift::name_parts
