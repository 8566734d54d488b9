// What belongs to the author of a name, and what is told behind it.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::led_to;
using test::read_key;
using test::sketch;

// The author of the name that a lead ends in.
std::string author_behind_leaders(std::string const& destination) {
  auto const reading =
      read_key("1. Wings clear ..... " + destination + "\n– Wings dark ..... Bus cus\n");
  return reading.edition.taxa.empty() ? std::string{} : reading.edition.taxa.front().authorship;
}

TEST(PrintedAuthors, TheSonIsOne) {
  EXPECT_EQ(author_behind_leaders("Aus bus L. f."), "L. f.");
  EXPECT_EQ(author_behind_leaders("Aus bus L. f. (in part)"), "L. f.");
  EXPECT_EQ(led_to("Aus bus L. f. minor"), "Aus bus f. minor");
  EXPECT_EQ(led_to("Aus bus L. f. subsp. cus"), "Aus bus subsp. cus");
}

TEST(PrintedAuthors, ALetterThatAlsoStandsForAPageMayBeOne) {
  EXPECT_EQ(author_behind_leaders("Aus bus B. & S."), "B. & S.");
  EXPECT_EQ(author_behind_leaders("Aus bus Roe S. 12"), "Roe");
}

TEST(PrintedAuthors, AColonStandsBeforeTheOneWhoSanctioned) {
  EXPECT_EQ(author_behind_leaders("Aus bus Tor. : Fr."), "Tor. : Fr.");
  EXPECT_EQ(author_behind_leaders("Aus bus Tor.: Fr."), "Tor.: Fr.");
}

TEST(PrintedAuthors, AColonMayStandBeforeACommonName) {
  EXPECT_EQ(led_to("A. bus: Dwarf Weed"), "Aus bus (Dwarf Weed)");
  EXPECT_EQ(led_to("Aus bus: Dwarf Weed"), "Aus bus (Dwarf Weed)");
  EXPECT_EQ(led_to("Aus bus L.: Dwarf Weed"), "Aus bus (Dwarf Weed)");
  EXPECT_EQ(author_behind_leaders("Aus bus L.: Dwarf Weed"), "L.");
}

TEST(PrintedAuthors, ParticlesMayBeginBracketsAndStandBehindThem) {
  EXPECT_EQ(author_behind_leaders("Aus bus (de Tor.) van Weng."), "(de Tor.) van Weng.");
  EXPECT_EQ(author_behind_leaders("Aus bus (de la Tor.) van den Berm."),
            "(de la Tor.) van den Berm.");
  EXPECT_EQ(led_to("Aus bus (in part)"), "Aus bus (in part)");
  EXPECT_EQ(sketch("1. Flowers white Ausella alba (de la Tor.) van den Berm.\n"
                   "1. Flowers yellow Ausella flava L.\n"),
            "1[1] Flowers white -> Ausella alba\n1[1] Flowers yellow -> Ausella flava\n");
}

TEST(PrintedAuthors, OthersMayGoUnnamed) {
  EXPECT_EQ(author_behind_leaders("Aus bus (Tor.) Weng. & al."), "(Tor.) Weng. & al.");
  EXPECT_EQ(author_behind_leaders("Aus bus Weng. et al."), "Weng. et al.");
  EXPECT_EQ(author_behind_leaders("Aus bus L. em. Weng."), "L. em. Weng.");
}

TEST(PrintedAuthors, ThreeMayBeListed) {
  EXPECT_EQ(author_behind_leaders("Aus bus Roe, Dorn, and Vorn"), "Roe, Dorn, and Vorn");
}

TEST(PrintedAuthors, AnApostropheMayStandWithin) {
  EXPECT_EQ(author_behind_leaders("Aus bus d'Orvil, 1911"), "d'Orvil, 1911");
}

TEST(PrintedAuthors, NothingFollowsTheirYear) {
  EXPECT_EQ(author_behind_leaders("Aus bus Dorn, 1920 Busella Roe, 1888"), "Dorn, 1920");
  EXPECT_EQ(author_behind_leaders("Aus bus Roe, 1911: 23"), "Roe, 1911");
}

TEST(PrintedAuthors, MonthsInRomanFiguresAreNone) {
  EXPECT_EQ(led_to("Aus bus L. V–VII"), "Aus bus (V–VII)");
  EXPECT_EQ(author_behind_leaders("Aus bus L. V–VII"), "L.");
  EXPECT_EQ(author_behind_leaders("Aus bus L. VI, 2n = 24"), "L.");
  EXPECT_EQ(author_behind_leaders("Aus bus V–VII"), "");
  EXPECT_EQ(author_behind_leaders("Aus bus I. V. Tor."), "I. V. Tor.");
  EXPECT_EQ(sketch("1. Flowers white Ausella alba L. V–VII\n"
                   "1. Flowers yellow Ausella flava Tor. VI.\n"),
            "1[1] Flowers white -> Ausella alba (V–VII)\n"
            "1[1] Flowers yellow -> Ausella flava (VI.)\n");
}

TEST(PrintedAuthors, ACommaMaySetThemBehindTheirNames) {
  auto const authors = [](std::string const& first, std::string const& second,
                          std::string const& third) {
    auto const reading = read_key("1. Wings clear ..... 2\n– Wings dark ..... Aus bus, " + first +
                                  "\n2. Legs red ..... A. cus, " + second +
                                  "\n– Legs black ..... A. dus, " + third + "\n");
    std::string all;
    for (auto const& taxon : reading.edition.taxa) all += taxon.authorship + '|';
    return all;
  };
  EXPECT_EQ(authors("Roe", "Dorn", "(Fell.) Vorn"), "Roe|Dorn|(Fell.) Vorn|");
  EXPECT_EQ(authors("Roe", "Torv.", "Fell."), "Roe|Torv.|Fell.|");
  EXPECT_EQ(authors("Roe", "Roe", "Roe"), "Roe|Roe|Roe|");
  // Places are told so as well.
  EXPECT_EQ(authors("Alaska", "Yukon", "Oregon"), "|||");
}

TEST(PrintedAuthors, AVarietyBeforeAKnownAuthorKeepsItsSpecies) {
  EXPECT_EQ(sketch("Genus Ausella\n\nKey to adults\n\n"
                   "1. Membrane with spots . . . . . 2\n1. Membrane clear 4\n"
                   "2. Arista plumose\npicturata Farrow\n2. Arista bare . . . . . 3\n"
                   "3. Frons of $ wide ; spots about twelve, rounded. guttata\nLinden\n"
                   "3. Frons as in the last ; spots more or less united in the anal half\n"
                   "of the wing guttata var. confluens Farrow\n"
                   "4. Femora black .\nruddlestonei sp. n.\n4. Femora yellow . . . . . . 5\n"
                   "5. Wing dark at apex only apicalis Farrow\n"
                   "5. Wing with a spot in addition 6\n"
                   "6. Palpi black ; hypopygium small . discalis Farrow\n"
                   "6. Palpi yellow ; hypopygium large flava Linden\n"),
            "1[1] Membrane with spots -> 2\n"
            "1[1] Membrane clear -> 4\n"
            "2[2] Arista plumose -> Ausella picturata\n"
            "2[2] Arista bare -> 3\n"
            "3[3] Frons of $ wide ; spots about twelve, rounded. -> Ausella guttata\n"
            "3[3] Frons as in the last ; spots more or less united in the anal half of the wing -> "
            "Ausella guttata var. confluens\n"
            "4[4] Femora black -> Ausella ruddlestonei (sp. n.)\n"
            "4[4] Femora yellow -> 5\n"
            "5[5] Wing dark at apex only -> Ausella apicalis\n"
            "5[5] Wing with a spot in addition -> 6\n"
            "6[6] Palpi black ; hypopygium small -> Ausella discalis\n"
            "6[6] Palpi yellow ; hypopygium large -> Ausella flava\n");
}

TEST(PrintedAuthors, ASynonymOnALineOfItsOwnIsNotWhatTheLeadLeadsTo) {
  EXPECT_EQ(sketch("Chiave delle Sblendaria\n\n"
                   "1 Cheliceri con 3 denti => 2\n1 Cheliceri con 2 denti => 3\n"
                   "2 Sterno nero; tibia I con 5 paia di spine\n"
                   "Sblendaria tridentulata (Gravi, 1868)\n= Sblendaria corsenica Pesca, 1934\n"
                   "2 Sterno giallo\nSblendaria alba (Gravi, 1868)\n"
                   "3 Zampe rosse\nSblendaria rufa Gravi, 1868\n"
                   "3 Zampe nere\nSblendaria nigra Gravi, 1868\n"),
            "1[1] Cheliceri con 3 denti -> 2\n"
            "1[1] Cheliceri con 2 denti -> 3\n"
            "2[2] Sterno nero; tibia I con 5 paia di spine -> Sblendaria tridentulata (= "
            "Sblendaria corsenica Pesca, 1934)\n"
            "2[2] Sterno giallo -> Sblendaria alba\n"
            "3[3] Zampe rosse -> Sblendaria rufa\n"
            "3[3] Zampe nere -> Sblendaria nigra\n");
}

TEST(PrintedAuthors, ParticlesInCapitals) {
  EXPECT_EQ(sketch("Gen. LATHROXENUS DEJARDIN, 1834\n"
                   "\n"
                   "1. — Tempes longues. . . . . . 5. riparius DEJ.\n"
                   "— Tempes courtes. . . . . . 2.\n"
                   "2. — Tempes rondes. ... 6. paludosus DE BROSSE.\n"
                   "— Tibias sinués (fig. 45). 12. aubei DE BROSSE.\n"),
            "1[1] Tempes longues -> Lathroxenus riparius\n"
            "1[—] Tempes courtes -> 2\n"
            "2[2] Tempes rondes. -> Lathroxenus paludosus\n"
            "2[—] Tibias sinués (fig. 45). -> Lathroxenus aubei\n");
}

}  // namespace
}  // namespace keydrift
