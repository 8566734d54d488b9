// Genera that end leads behind a full stop, with or without their authors.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

// Faunas of the early twentieth century set them so, and their couplets nested.
TEST(PrintedSentenceGenera, AuthorsThatComeBackTellThem) {
  EXPECT_EQ(sketch("1\" Körper behaart.\n"
                   "2\" Fühlerkeule zweigliederig, deutlich von der Geißel\n"
                   "abgesetzt. Ausella Dornb.\n"
                   "2' Fühlerkeule dreigliederig, undeutlich abgesetzt.\n"
                   "Busorina Hlm.\n"
                   "1' Körper kahl.\n"
                   "3\" Augen groß. Halsschild länger als breit. Cusocis Dornb.\n"
                   "3' Augen klein.\n"
                   "4\" Klauen gezähnt, das letzte Glied sehr lang. Dusoryctes\n"
                   "Hlm.\n"
                   "4' Klauen einfach. Fusatrestes Brinkw.\n"),
            "1[1\"] Körper behaart. -> 2\n"
            "1[1'] Körper kahl. -> 3\n"
            "2[2\"] Fühlerkeule zweigliederig, deutlich von der Geißel abgesetzt. -> Ausella\n"
            "2[2'] Fühlerkeule dreigliederig, undeutlich abgesetzt. -> Busorina\n"
            "3[3\"] Augen groß. Halsschild länger als breit. -> Cusocis\n"
            "3[3'] Augen klein. -> 4\n"
            "4[4\"] Klauen gezähnt, das letzte Glied sehr lang. -> Dusoryctes\n"
            "4[4'] Klauen einfach. -> Fusatrestes\n");
}

TEST(PrintedSentenceGenera, GeneraAloneBesideSecondLeadsWithoutLabels) {
  auto const text =
      "1. Kapsel ohne Deckel, unregelmässig sich öffnend, bleibend.\n"
      "2.\n"
      "Kapsel mit Deckel. 3.\n"
      "2. Felsmoose von schwarzer Farbe.\n"
      "Ausalis.\n"
      "Erdmoose von grüner Farbe. Busenum.\n"
      "3. Peristom einfach. 4.\n"
      "Peristom doppelt. 5.\n"
      "4. Zähne ganz. Cusomium.\n"
      "Zähne gespalten, an der Spitze gebräunt. Duso-\n"
      "tricha.\n"
      "5. Kapsel kugelig. Fusalia.\n"
      "Kapsel birnförmig. Gusella.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Kapsel ohne Deckel, unregelmässig sich öffnend, bleibend. -> 2\n"
            "1[] Kapsel mit Deckel. -> 3\n"
            "2[2] Felsmoose von schwarzer Farbe. -> Ausalis\n"
            "2[] Erdmoose von grüner Farbe. -> Busenum\n"
            "3[3] Peristom einfach. -> 4\n"
            "3[] Peristom doppelt. -> 5\n"
            "4[4] Zähne ganz. -> Cusomium\n"
            "4[] Zähne gespalten, an der Spitze gebräunt. -> Dusotricha\n"
            "5[5] Kapsel kugelig. -> Fusalia\n"
            "5[] Kapsel birnförmig. -> Gusella\n");
  EXPECT_EQ(
      line_kinds(text),
      "lead, destination, lead, lead, destination, lead, lead, lead, lead, lead, destination, "
      "lead, lead");
}

// Where species live is said behind full stops as well.
TEST(PrintedSentenceGenera, PlacesBehindSentencesAreNone) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n"
                   "- Wings dark ..... 3\n"
                   "2. Legs red ..... Ausella busa Roe. Marshes. Arvoria.\n"
                   "- Legs black ..... Ausella cusa Roe. Meadows. Belloria.\n"
                   "3. Eyes red ..... 4\n"
                   "- Eyes black ..... Ausella dusa Roe. Forests. Calloria.\n"
                   "4. Tail long ..... Ausella fusa Roe. Forests. Dalloria.\n"
                   "- Tail short ..... 5\n"
                   "5. Horns long ..... Ausella gusa Roe. Meadows. Elloria.\n"
                   "- Horns short ..... Ausella husa Roe. Marshes. Falloria.\n"),
            "1[1] Wings clear -> 2\n1[-] Wings dark -> 3\n"
            "2[2] Legs red -> Ausella busa\n2[-] Legs black -> Ausella cusa\n"
            "3[3] Eyes red -> 4\n3[-] Eyes black -> Ausella dusa\n"
            "4[4] Tail long -> Ausella fusa\n4[-] Tail short -> 5\n"
            "5[5] Horns long -> Ausella gusa\n5[-] Horns short -> Ausella husa\n");
}

// Nor are common names behind species, and places, however many.
TEST(PrintedSentenceGenera, WordsBesideSpeciesAreNone) {
  EXPECT_EQ(sketch("A. Stängel bladlös l. med små, fjällika blad.\n\n"
                   "1. Stängel 1-blomstrig. Torra backar. Blommor gula, små.\n"
                   "L. pilosella Roe. Gråfibbla.\n\n"
                   "2. Stängel med flera korgar. Ängar och Fjellbranta.\n"
                   "L. auricula Roe. Skogsfibbla.\n\n"
                   "B. Stängel bladig, med flera väl utbildade blad.\n\n"
                   "1. Rotblad gröna, svartluden. Blad tungformiga. Fjelltrakterna.\n"
                   "L. alpestris Roe. Fjellfibbla.\n\n"
                   "2. Rotblad vissna.\n\n"
                   "a) Blad breda. Norra trakterna. Norrbotna.\n"
                   "L. silvatica Roe. Klippfibbla.\n\n"
                   "b) Blad smala. Södra trakterna. Gotlandia.\n"
                   "L. campestris Roe. Sandfibbla.\n"),
            "1[A] Stängel bladlös l. med små, fjällika blad. -> 2\n"
            "1[B] Stängel bladig, med flera väl utbildade blad. -> 3\n"
            "2[1] Stängel 1-blomstrig. Torra backar. Blommor gula, små. -> L. pilosella\n"
            "2[2] Stängel med flera korgar. Ängar och Fjellbranta. -> L. auricula\n"
            "3[1] Rotblad gröna, svartluden. Blad tungformiga. Fjelltrakterna. -> L. alpestris\n"
            "3[2] Rotblad vissna. -> 4\n"
            "4[a] Blad breda. Norra trakterna. Norrbotna. -> L. silvatica\n"
            "4[b] Blad smala. Södra trakterna. Gotlandia. -> L. campestris\n");
}

// Hosts have authors too; leads go on behind them.
TEST(PrintedSentenceGenera, HostsWithinLeadsAreNone) {
  EXPECT_EQ(sketch("1. Flügel gelb. Larven auf Weiden. Salixa Roe.\n"
                   "Fühler lang. Ausella busa Dorn\n"
                   "- Flügel rot. Larven auf Eichen. Quercusa Dorn.\n"
                   "Fühler kurz 2\n"
                   "2. Augen gross. Larven auf Pappeln. Populusa Roe.\n"
                   "Beine rot. Ausella cusa Dorn\n"
                   "- Augen klein. Larven auf Erlen. Alnusa Dorn.\n"
                   "Beine gelb. Ausella dusa Dorn\n"),
            "1[1] Flügel gelb. Larven auf Weiden. Salixa Roe. -> Ausella busa (Fühler lang.)\n"
            "1[-] Flügel rot. Larven auf Eichen. Quercusa Dorn. Fühler kurz -> 2\n"
            "2[2] Augen gross. Larven auf Pappeln. Populusa Roe. -> Ausella cusa (Beine rot.)\n"
            "2[-] Augen klein. Larven auf Erlen. Alnusa Dorn. -> Ausella dusa (Beine gelb.)\n");
}

}  // namespace
}  // namespace keydrift
