#include <gtest/gtest.h>

#include "keydrift/taxa/names.hpp"

namespace keydrift {
namespace {

struct Pair {
  char const* a;
  char const* b;
};

class SameAuthors : public testing::TestWithParam<Pair> {};
TEST_P(SameAuthors, Agree) {
  EXPECT_TRUE(same_authorship(GetParam().a, GetParam().b)) << GetParam().a << " / " << GetParam().b;
  EXPECT_TRUE(same_authorship(GetParam().b, GetParam().a)) << GetParam().b << " / " << GetParam().a;
}
INSTANTIATE_TEST_SUITE_P(
    Table, SameAuthors,
    testing::Values(Pair{"", "Smith"}, Pair{"", ""}, Pair{"Smith", "Smith"},
                    Pair{"Smith, 1900", "(Smith, 1900)"}, Pair{"Smith, 1900", "Smith 1900"},
                    Pair{"J. M. Smith", "Smith"}, Pair{"J.M.Smith", "J.-M. Smith"},
                    Pair{"Smith & Jones", "Smith et Jones"},
                    Pair{"Smith and Jones, 1900", "Smith & Jones, 1900"}, Pair{"(L.) Smith", "L."},
                    Pair{"Linnaeus", "L."}, Pair{"Linné", "Linnaeus"},
                    Pair{"(L.) Smith", "(Linnaeus) Jones"}, Pair{"DC.", "de Candolle"},
                    Pair{"A.DC.", "A. DC."}, Pair{"Torr.", "Torrey"}, Pair{"Schltr.", "Schlechter"},
                    Pair{"Müller", "Mueller"}, Pair{"Müller", "Muller"}, Pair{"Øster", "Oster"},
                    Pair{"Smith ex Jones", "Jones"}, Pair{"Smith ex Jones", "Smith"},
                    Pair{"Smith in Jones", "Smith"}, Pair{"Smith et al.", "Smith, Jones & Brown"},
                    Pair{"Smith & al.", "Smith & Jones"}, Pair{"de Geer", "De Geer"},
                    Pair{"van der Berg", "Berg"}, Pair{"Smith, 1900", "Smith"},
                    Pair{"Hook.f.", "Hook. f."}, Pair{"Smith, 1900 [1899]", "Smith, 1899"},
                    Pair{"Smith non Jones", "Smith"}));

class OtherAuthors : public testing::TestWithParam<Pair> {};
TEST_P(OtherAuthors, Disagree) {
  EXPECT_FALSE(same_authorship(GetParam().a, GetParam().b)) << GetParam().a << GetParam().b;
  EXPECT_FALSE(same_authorship(GetParam().b, GetParam().a)) << GetParam().b << GetParam().a;
}
INSTANTIATE_TEST_SUITE_P(Table, OtherAuthors,
                         testing::Values(Pair{"Smith", "Jones"}, Pair{"Smith, 1900", "Smith, 1950"},
                                         Pair{"(L.) Smith", "(Jones) Smith"},
                                         Pair{"Hook.f.", "Hook."}, Pair{"L.", "L.f."},
                                         Pair{"Smith & Jones", "Smith"},
                                         Pair{"Smith & Jones", "Jones & Smith"},
                                         Pair{"Torr.", "Gray"}, Pair{"Smith", "Smithers"}));

}  // namespace
}  // namespace keydrift
