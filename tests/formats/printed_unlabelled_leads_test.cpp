// Leads that print no label, among others that do and in keys where none does.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

TEST(PrintedUnlabelledLeads, Couplet1MayLackItsNumber) {
  auto const text =
      "Body metallic ..... 2\n"
      "Body dull ..... 8\n"
      "2. Legs pale ..... Aus bus\n"
      "2. Legs dark ..... Aus cus\n"
      "8. Head long ..... Aus dus\n"
      "8. Head short ..... Aus eus\n";
  EXPECT_EQ(sketch(text),
            "1[] Body metallic -> 2\n1[] Body dull -> 8\n2[2] Legs pale -> Aus bus\n"
            "2[2] Legs dark -> Aus cus\n8[8] Head long -> Aus dus\n8[8] Head short -> Aus eus\n");
  EXPECT_EQ(line_kinds(text), "lead, lead, lead, lead, lead, lead");
}

TEST(PrintedUnlabelledLeads, TheLeadersOfCouplet1MayStandOnTheSecondLine) {
  auto const text =
      "Body metallic, at the least with a sheen of green\n"
      "upon the thorax and the head ..... 2\n"
      "Body dull, of one colour from the head\n"
      "to the tip of the tail ..... 3\n"
      "2. Legs pale ..... Aus bus\n"
      "2. Legs dark ..... Aus cus\n"
      "3. Head long ..... Aus dus\n"
      "3. Head short ..... Aus eus\n";
  EXPECT_EQ(
      sketch(text),
      "1[] Body metallic, at the least with a sheen of green upon the thorax and the head -> 2\n"
      "1[] Body dull, of one colour from the head to the tip of the tail -> 3\n"
      "2[2] Legs pale -> Aus bus\n2[2] Legs dark -> Aus cus\n3[3] Head long -> Aus dus\n"
      "3[3] Head short -> Aus eus\n");
  EXPECT_EQ(line_kinds(text), "lead, continuation, lead, continuation, lead, lead, lead, lead");
}

TEST(PrintedUnlabelledLeads, Couplet1IsReadWithoutLeadersToo) {
  EXPECT_EQ(sketch("Corolla reflexed, 2.\n"
                   "Corolla erect, 3.\n"
                   "2. Umbels many, Aus bus.\n"
                   "Umbels few, Aus cus.\n"
                   "3. Leaves broad, Aus dus.\n"
                   "Leaves narrow, 4.\n"
                   "4. Stem low, Aus eus.\n"
                   "Stem tall, Aus fus.\n"),
            "1[] Corolla reflexed, -> 2\n1[] Corolla erect, -> 3\n2[2] Umbels many, -> Aus bus\n"
            "2[] Umbels few, -> Aus cus\n3[3] Leaves broad, -> Aus dus\n3[] Leaves narrow, -> 4\n"
            "4[4] Stem low, -> Aus eus\n4[] Stem tall, -> Aus fus\n");
}

TEST(PrintedUnlabelledLeads, TwoThatLeadToKeysStandAboveTheirTitles) {
  auto const text =
      "Plants in fruit ..... KEY A\n"
      "Plants with leaves only ..... KEY B\n"
      "\n"
      "KEY A. Fruiting plants\n"
      "\n"
      "1. Fruit red ..... Aus bus\n"
      "1. Fruit black ..... 2\n"
      "2. Stem low ..... Aus cus\n"
      "2. Stem tall ..... Aus dus\n"
      "\n"
      "KEY B. Leaves of midsummer\n"
      "\n"
      "1. Leaves hairy ..... Aus bus\n"
      "1. Leaves bare ..... 2\n"
      "2. Stem low ..... Aus cus\n"
      "2. Stem tall ..... Aus dus\n";
  EXPECT_EQ(sketch(text),
            "1[] Plants in fruit -> key: KEY A. Fruiting plants\n"
            "1[] Plants with leaves only -> key: KEY B. Leaves of midsummer\n"
            "1[1] Fruit red -> Aus bus\n1[1] Fruit black -> 2\n2[2] Stem low -> Aus cus\n"
            "2[2] Stem tall -> Aus dus\n1[1] Leaves hairy -> Aus bus\n1[1] Leaves bare -> 2\n"
            "2[2] Stem low -> Aus cus\n2[2] Stem tall -> Aus dus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, lead, blank, heading, blank, lead, lead, lead, lead, blank, heading, blank, "
            "lead, lead, lead, lead");
}

TEST(PrintedUnlabelledLeads, TheSecondOneMayStandBehindAPagesNumber) {
  auto const text =
      "1. Wings clear ..... 2\n"
      "Wings dark ..... 3\n"
      "2. Legs pale ..... Aus bus\n"
      "Legs dark ..... Aus cus\n"
      "3. Head long ..... Aus dus\n"
      "\n"
      "18\n"
      "\n"
      "Head short 4\n"
      "4. Tail long ..... Aus fus\n"
      "Tail short ..... Aus gus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[] Wings dark -> 3\n2[2] Legs pale -> Aus bus\n"
            "2[] Legs dark -> Aus cus\n3[3] Head long -> Aus dus\n3[] Head short -> 4\n"
            "4[4] Tail long -> Aus fus\n4[] Tail short -> Aus gus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, lead, lead, blank, page number, blank, lead, lead, lead");
}

TEST(PrintedUnlabelledLeads, AWrappedCountBeginsNoneInAKeySetInByLevel) {
  auto const text =
      "Leaves opposite\n"
      "   Flowers white\n"
      "      Stamens 8; capsules of most individuals\n"
      "      2-lobed ..... Aus bus\n"
      "      Stamens 10 ..... Aus cus\n"
      "   Flowers red ..... Aus dus\n"
      "Leaves alternate\n"
      "   Leaves hairy ..... Aus eus\n"
      "   Leaves bare ..... Aus fus\n";
  EXPECT_EQ(sketch(text),
            "1[] Leaves opposite -> 2\n1[] Leaves alternate -> 4\n2[] Flowers white -> 3\n"
            "2[] Flowers red -> Aus dus\n"
            "3[] Stamens 8; capsules of most individuals 2-lobed -> Aus bus\n"
            "3[] Stamens 10 -> Aus cus\n4[] Leaves hairy -> Aus eus\n4[] Leaves bare -> Aus fus\n");
  EXPECT_EQ(line_kinds(text), "lead, lead, lead, continuation, lead, lead, lead, lead, lead");
}

TEST(PrintedUnlabelledLeads, EachLeadMayBeAParagraphOfItsOwn) {
  auto const text =
      "KEY TO SPECIES OF TELDICARUS\n\n"
      "1. Dorsal shield entire, without lateral\n"
      "incisions; peritreme reaching coxa 2\n\n"
      "Dorsal shield with a pair of lateral\n"
      "incisions 3\n\n"
      "2(1). All dorsal setae except j1 plumose,\n"
      "the longest 110-130 (fig. 4)\n"
      "T. longisetus Roe\n\n"
      "41\n\n"
      "42\n"
      "Marsh Studies\n"
      "Vol. 11, no. 3\n\n"
      "Dorsal setae simple, only Z5 weakly\n"
      "serrate T. punctulifer n. sp.\n\n"
      "3(1). Sternal shield with coarse punctures,\n"
      "wider than long 4\n\n"
      "Sternal shield smooth\n"
      "T. tripartitus Dorn\n\n"
      "4(3). Setae brush-like, on common tubercle\n"
      "T. pilifrons n. sp.\n\n"
      "Setae slender, on separate tubercles T. busus Roe\n\n"
      "1. Field work was supported by a grant.\n\n"
      "Teldicarus punctulifer, n. sp. Fig. 5-8.\n\n"
      "5. Dorsal shield 412 long, 268 wide.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Dorsal shield entire, without lateral incisions; peritreme reaching coxa -> 2\n"
            "1[] Dorsal shield with a pair of lateral incisions -> 3\n"
            "2[2] All dorsal setae except j1 plumose, the longest 110-130 (fig. 4) -> Teldicarus "
            "longisetus\n"
            "2[] Dorsal setae simple, only Z5 weakly serrate -> Teldicarus punctulifer (n. sp.)\n"
            "3[3] Sternal shield with coarse punctures, wider than long -> 4\n"
            "3[] Sternal shield smooth -> Teldicarus tripartitus\n"
            "4[4] Setae brush-like, on common tubercle -> Teldicarus pilifrons (n. sp.)\n"
            "4[] Setae slender, on separate tubercles -> Teldicarus busus\n");
}

TEST(PrintedUnlabelledLeads, ParagraphsThatEndNowhereAreNoLeads) {
  auto const text =
      "1. Wings clear 2\n\n"
      "1. Wings dark 3\n\n"
      "Dark wings fade in old specimens.\n\n"
      "2. Legs pale Aus bus\n\n"
      "2. Legs dark Aus cus\n\n"
      "3. Head long Aus dus\n\n"
      "3. Head short Aus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n"
            "1[1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n"
            "2[2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n"
            "3[3] Head short -> Aus eus\n");
}

TEST(PrintedUnlabelledLeads, EachMayEndInALineOfItsOwn) {
  EXPECT_EQ(sketch("KEY TO THE WORKERS OF MYRMELLA\n\n"
                   "1. Antennae of eleven segments, the club\nof four\n2\n"
                   "Antennae of twelve segments, the club\nof three\n3\n"
                   "2. Eyes with about 40 facets\nundecima Roe\n"
                   "Eyes with fewer than 15 facets\nparvocula, new species\n"
                   "3. Dorsum with erect hairs\n4\n"
                   "Dorsum without erect hairs\nnuda (Dorn)\n"
                   "4. Node pointed\nacuta Roe\n"
                   "Node round\nacuta subsp. rotunda, new subspecies\n\n"
                   "¹ Contribution No. 214 from the Department.\n"),
            "1[1] Antennae of eleven segments, the club of four -> 2\n"
            "1[] Antennae of twelve segments, the club of three -> 3\n"
            "2[2] Eyes with about 40 facets -> Myrmella undecima\n"
            "2[] Eyes with fewer than 15 facets -> Myrmella parvocula (new species)\n"
            "3[3] Dorsum with erect hairs -> 4\n"
            "3[] Dorsum without erect hairs -> Myrmella nuda\n"
            "4[4] Node pointed -> Myrmella acuta\n"
            "4[] Node round -> Myrmella acuta subsp. rotunda (new subspecies)\n");
}

TEST(PrintedUnlabelledLeads, EachMayBeginWithALineThatIsSetIn) {
  EXPECT_EQ(sketch("   1 Shield entire, without any\nincisions; coxa II. 2\n"
                   "   Shield divided, with a pair\nof incisions. 3\n"
                   "   2 Setae plumose, the longest\nones curved. Teldicarus longisetus\n"
                   "   Setae simple, only the last\nserrate. Teldicarus punctulatus\n"
                   "   3 Anal shield wide, smooth\nbehind. Teldicarus magnus\n"
                   "   Anal shield long. Teldicarus\ntripartitus\n"),
            "1[1] Shield entire, without any incisions; coxa II. -> 2\n"
            "1[] Shield divided, with a pair of incisions. -> 3\n"
            "2[2] Setae plumose, the longest ones curved. -> Teldicarus longisetus\n"
            "2[] Setae simple, only the last serrate. -> Teldicarus punctulatus\n"
            "3[3] Anal shield wide, smooth behind. -> Teldicarus magnus\n"
            "3[] Anal shield long. -> Teldicarus tripartitus\n");
}

TEST(PrintedUnlabelledLeads, AnAccountWithItsNumberSetOffIsNoLead) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red, their\n"
                   "tarsi paler ..... 2\n"
                   "\n"
                   "— Legs black ..... rufa (p. 3).\n"
                   "\n"
                   "2. Wings clear ..... levis (p. 2).\n"
                   "\n"
                   "— Wings dark ..... opaca (p. 3).\n"
                   "\n"
                   "1 . A. levis Roe. 1809 [tristis Dorn, nigra Hart.]. — Black; scape spotted\n"
                   "with yellow, tegulae brown.\n"),
            "1[1] Legs red, their tarsi paler -> 2\n"
            "1[—] Legs black -> Ausella rufa (p. 3)\n"
            "2[2] Wings clear -> Ausella levis (p. 2)\n"
            "2[—] Wings dark -> Ausella opaca (p. 3)\n");
}

TEST(PrintedUnlabelledLeads, PersonsWithACapitalBeneathTheirLeads) {
  EXPECT_EQ(
      sketch("KYLLOCAREX Radd.\n"
             "\n"
             "Spikelet solitary, terminal ; leaves reduced to sheaths.\n"
             "\n"
             "Style 2-cleft ; achene lenticular.\n"
             "\n"
             "Rootstock creeping ; scales dark brown. 1. K. stolonifera.\n"
             "\n"
             "Rootstock none ; scales pale green. 2. K. caespitosa.\n"
             "\n"
             "Style 3-cleft ; achene triangular. 3. K. pumila.\n"
             "\n"
             "Spikelets normally more than one.\n"
             "\n"
             "Spikelets 1-5, far overtopped by the long leaves ; achene obovoid.\n"
             "\n"
             "4. K. Terryana.\n"
             "\n"
             "Spikelets 1-7, not overtopped by the leaves ; scales 2-cleft at the apex.\n"
             "\n"
             "5. K. Olmeyi.\n"
             "\n"
             "Spikelets numerous, in umbels.\n"
             "\n"
             "Style 3-cleft ; sheaths green ; spikelets in globose heads. 6. K. atrovirens.\n"
             "\n"
             "Style 2-cleft ; sheaths red ; spikelets in small glomerules. 7. K. rubrotincta.\n"),
      "1[] Spikelet solitary, terminal ; leaves reduced to sheaths. -> 2\n"
      "1[] Spikelets normally more than one. -> 4\n"
      "2[] Style 2-cleft ; achene lenticular. -> 3\n"
      "2[] Style 3-cleft ; achene triangular. -> Kyllocarex pumila\n"
      "3[] Rootstock creeping ; scales dark brown. -> Kyllocarex stolonifera\n"
      "3[] Rootstock none ; scales pale green. -> Kyllocarex caespitosa\n"
      "4[] Spikelets 1-5, far overtopped by the long leaves ; achene obovoid. -> Kyllocarex "
      "terryana\n"
      "4[] Spikelets 1-7, not overtopped by the leaves ; scales 2-cleft at the apex. -> Kyllocarex "
      "olmeyi\n"
      "4[] Spikelets numerous, in umbels. -> 5\n"
      "5[] Style 3-cleft ; sheaths green ; spikelets in globose heads. -> Kyllocarex atrovirens\n"
      "5[] Style 2-cleft ; sheaths red ; spikelets in small glomerules. -> Kyllocarex "
      "rubrotincta\n");
}

TEST(PrintedUnlabelledLeads, AnAccountOfASpeciesThatHonoursAPerson) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Lathyphora\n"
                   "\n"
                   "1. Tibias I à deux paires d'épines, tous les fémurs noirs en\n"
                   "dessous . . . . 1. L. meridionalis, p. 101.\n"
                   "\n"
                   "— Tibias I à une paire d'épines . . . . 2. L. Garrigueri, p. 102.\n"
                   "\n"
                   "1. Lathyphora Duvernoyi Roe, 1866, Hist. nat. Ar. Louve, p. 214.\n"
                   "\n"
                   "Céphalothorax noir.\n"),
            "1[1] Tibias I à deux paires d'épines, tous les fémurs noirs en dessous -> Lathyphora "
            "meridionalis (p. 101.)\n"
            "1[—] Tibias I à une paire d'épines -> Lathyphora garrigueri (p. 102.)\n");
}

TEST(PrintedUnlabelledLeads, ACountBehindASemicolonBeginsNoLead) {
  EXPECT_EQ(
      sketch("KEY TO AUSELLA.\n"
             "\n"
             "I. Lower eyelid scaly.\n"
             "Frontonasal broader than long ; toe with 17 lamellae beneath 1. olivaceus, p. 214.\n"
             "Frontonasal as long as broad ; toe with 12 lamellae beneath 2. theobaldi, p. 215.\n"
             "Frontonasal longer than broad, forming a suture with the frontal ;\n"
             "22 scales round the body 3. punctatolineatus, p. 215.\n"
             "II. Lower eyelid with a disk.\n"
             "Dorsal scales smooth ; a pair of nuchals 4. agilis, p. 218.\n"
             "Dorsal scales feebly tricarinate ; no nuchals 5. striolatus, p. 219.\n"),
      "1[I] Lower eyelid scaly. -> 2\n"
      "1[II] Lower eyelid with a disk. -> 3\n"
      "2[] Frontonasal broader than long ; toe with 17 lamellae beneath -> Ausella olivaceus (p. "
      "214.)\n"
      "2[] Frontonasal as long as broad ; toe with 12 lamellae beneath -> Ausella theobaldi (p. "
      "215.)\n"
      "2[] Frontonasal longer than broad, forming a suture with the frontal ; 22 scales round the "
      "body -> Ausella punctatolineatus (p. 215.)\n"
      "3[] Dorsal scales smooth ; a pair of nuchals -> Ausella agilis (p. 218.)\n"
      "3[] Dorsal scales feebly tricarinate ; no nuchals -> Ausella striolatus (p. 219.)\n");
}

TEST(PrintedUnlabelledLeads, NamesOfLeavesMayStandBehindBlankLines) {
  EXPECT_EQ(sketch("Synopsis of the Species.\n"
                   "\n"
                   "I. Lower eyelid scaly.\n"
                   "\n"
                   "A. Ear-opening distinct ; frontonasal broader than long.\n"
                   "\n"
                   "a. Prefrontals forming a median suture ; a pair of nuchals.\n"
                   "\n"
                   "1. halberdi, p. 150.\n"
                   "\n"
                   "b. Prefrontals widely separated.\n"
                   "\n"
                   "The hind limb reaches the axilla ; subdigital lamellae 18\n"
                   "\n"
                   "to 21 under the fourth toe 2. longipes, p. 151.\n"
                   "\n"
                   "The hind limb reaches halfway between axilla and groin ;\n"
                   "\n"
                   "subdigital lamellae 11 to 13 under the fourth toe.\n"
                   "\n"
                   "3. tardigrada, p. 152.\n"
                   "\n"
                   "B. Ear-opening minute, or hidden under the scales.\n"
                   "\n"
                   "20 scales round the body ; limbs pentadactyle ; frontal not\n"
                   "\n"
                   "longer than the frontoparietals 4. cryptotis, p. 153.\n"
                   "\n"
                   "18 scales round the body ; limbs tetradactyle ; frontal\n"
                   "as long as frontoparietals and interparietal together.\n"
                   "\n"
                   "5. tetradactyla, p. 153.\n"
                   "\n"
                   "II. Lower eyelid with an undivided transparent disk.\n"
                   "\n"
                   "OPHRYMORA. 149\n"
                   "\n"
                   "A. Frontoparietal single 6. fenestrata, p. 154.\n"
                   "\n"
                   "B. Two frontoparietals 7. binotata, p. 156.\n"),
            "1[I] Lower eyelid scaly. -> 2\n"
            "1[II] Lower eyelid with an undivided transparent disk. -> 6\n"
            "2[A] Ear-opening distinct ; frontonasal broader than long. -> 3\n"
            "2[B] Ear-opening minute, or hidden under the scales. -> 5\n"
            "3[a] Prefrontals forming a median suture ; a pair of nuchals. -> Ophrymora halberdi "
            "(p. 150.)\n"
            "3[b] Prefrontals widely separated. -> 4\n"
            "4[] The hind limb reaches the axilla ; subdigital lamellae 18 to 21 under the fourth "
            "toe -> Ophrymora longipes (p. 151.)\n"
            "4[] The hind limb reaches halfway between axilla and groin ; subdigital lamellae 11 "
            "to 13 under the fourth toe. -> Ophrymora tardigrada (p. 152.)\n"
            "5[] 20 scales round the body ; limbs pentadactyle ; frontal not longer than the "
            "frontoparietals -> Ophrymora cryptotis (p. 153.)\n"
            "5[] 18 scales round the body ; limbs tetradactyle ; frontal as long as "
            "frontoparietals and interparietal together. -> Ophrymora tetradactyla (p. 153.)\n"
            "6[A] Frontoparietal single -> Ophrymora fenestrata (p. 154.)\n"
            "6[B] Two frontoparietals -> Ophrymora binotata (p. 156.)\n");
}

TEST(PrintedUnlabelledLeads, CountsOfCellsAreStatements) {
  EXPECT_EQ(sketch("Type species, Triphragmidium rosarum Harl.\n"
                   "\n"
                   "Spores smooth or nearly so.\n"
                   "\n"
                   "Apex of spore conspicuously apiculate.\n"
                   "\n"
                   "Spores 3-5-celled.\n"
                   "\n"
                   "Pedicel uniform, not swelling in water. 1. T. comari.\n"
                   "\n"
                   "Pedicel much swollen below in water. 2. T. ulmariae.\n"
                   "\n"
                   "Spores 6-9-celled. 3. T. rosarum.\n"
                   "\n"
                   "Apex of spore rounded or obtuse.\n"
                   "\n"
                   "Walls thin, evanescent. 4. T. ivesianum.\n"
                   "\n"
                   "Walls thick. 5. T. crassum.\n"
                   "\n"
                   "Spores rough. 6. T. asperum.\n"),
            "1[] Spores smooth or nearly so. -> 2\n"
            "1[] Spores rough. -> Triphragmidium asperum\n"
            "2[] Apex of spore conspicuously apiculate. -> 3\n"
            "2[] Apex of spore rounded or obtuse. -> 5\n"
            "3[] Spores 3-5-celled. -> 4\n"
            "3[] Spores 6-9-celled. -> Triphragmidium rosarum\n"
            "4[] Pedicel uniform, not swelling in water. -> Triphragmidium comari\n"
            "4[] Pedicel much swollen below in water. -> Triphragmidium ulmariae\n"
            "5[] Walls thin, evanescent. -> Triphragmidium ivesianum\n"
            "5[] Walls thick. -> Triphragmidium crassum\n");
}

TEST(PrintedUnlabelledLeads, BeneathLettersThatEndInLongDashes) {
  EXPECT_EQ(
      sketch("KEY TO THE SPECIES OF CALCONELLA.\n"
             "\n"
             "A. Lime-knots yellow, orange or red—\n"
             "\n"
             "a. Sporangia stalked—\n"
             "\n"
             "Stalk red ; spores 7 to 9 µ. 1. C. aurata.\n"
             "\n"
             "Stalk opaque, yellow ; spores smooth. 2. C. vitellina.\n"
             "\n"
             "b. Sporangia sessile—\n"
             "\n"
             "Plasmodiocarps splitting along the upper edge.\n"
             "\n"
             "3. C. serpula.\n"
             "\n"
             "Sporangia terete, heaped. 4. C. congesta.\n"
             "\n"
             "B. Lime-knots white—\n"
             "\n"
             "a. Columella present. 5. C. leucostyla.\n"
             "\n"
             "b. Columella none—\n"
             "\n"
             "Sporangia stalked :\n"
             "\n"
             "sporangia lenticular, nodding; capillitium\n"
             "with few lime-knots. 6. C. nutans.\n"
             "\n"
             "sporangia globose, erect; lime-knots\n"
             "numerous. 7. C. globifera.\n"
             "\n"
             "Sporangia sessile, grey. 8. C. cinerella.\n"),
      "1[A] Lime-knots yellow, orange or red— -> 2\n"
      "1[B] Lime-knots white— -> 5\n"
      "2[a] Sporangia stalked— -> 3\n"
      "2[b] Sporangia sessile— -> 4\n"
      "3[] Stalk red ; spores 7 to 9 µ. -> Calconella aurata\n"
      "3[] Stalk opaque, yellow ; spores smooth. -> Calconella vitellina\n"
      "4[] Plasmodiocarps splitting along the upper edge. -> Calconella serpula\n"
      "4[] Sporangia terete, heaped. -> Calconella congesta\n"
      "5[a] Columella present. -> Calconella leucostyla\n"
      "5[b] Columella none— -> 6\n"
      "6[] Sporangia stalked : -> 7\n"
      "7[] sporangia lenticular, nodding; capillitium with few lime-knots. -> Calconella nutans\n"
      "7[] sporangia globose, erect; lime-knots numerous. -> Calconella globifera\n"
      "7[] Sporangia sessile, grey. -> Calconella cinerella\n");
}

TEST(PrintedUnlabelledLeads, NumberedGeneraInCapitals) {
  EXPECT_EQ(
      sketch("KEY TO THE GENERA.\n"
             "\n"
             "   Fronds all alike.\n"
             "       Sori naked, without indusium.\n"
             "          Fronds simple or pinnatifid; rhizome scaly . .  1. SELIDOPTERIS.\n"
             "          Fronds 2 or 3 times pinnate; stipes brown, woolly  2. PHEGOCLAENA.\n"
             "       Sori covered by an indusium.\n"
             "          Indusium kidney-shaped, attached at the notch  . . . 11. NEPHROCLAENA.\n"
             "          Indusium round, attached by the centre  . . . . . .  12. OMPHALOTHECIA.\n"
             "   Fronds of two kinds . . . . . . . . . . . . . . . . . . 13. CYATHOLAENA.\n"),
      "1[] Fronds all alike. -> 2\n"
      "1[] Fronds of two kinds -> Cyatholaena\n"
      "2[] Sori naked, without indusium. -> 3\n"
      "2[] Sori covered by an indusium. -> 4\n"
      "3[] Fronds simple or pinnatifid; rhizome scaly -> Selidopteris\n"
      "3[] Fronds 2 or 3 times pinnate; stipes brown, woolly -> Phegoclaena\n"
      "4[] Indusium kidney-shaped, attached at the notch -> Nephroclaena\n"
      "4[] Indusium round, attached by the centre -> Omphalothecia\n");
}

}  // namespace
}  // namespace keydrift
