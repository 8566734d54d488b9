// How papers say what is to be changed in a key.
#include <gtest/gtest.h>

#include <string>

#include "amendment_support.hpp"

namespace keydrift::test {
namespace {

struct Phrase {
  std::string text;
  std::string told;
};
void PrintTo(Phrase const& phrase, std::ostream* out) { *out << phrase.text; }

std::string const kTwelve = "\n12  Wings pale ..... 13\n–   Wings dark ..... Aus bus\n";
std::string const kThirteen = "13 (12)  Legs pale ..... Aus cus\n–        Legs dark ..... 14\n";
std::string const kSevenA = "\n7a (7)  Wings pale ..... 8\n–       Wings dark ..... Aus dus\n";

class Phrases : public ::testing::TestWithParam<Phrase> {};

TEST_P(Phrases, AreUnderstood) { EXPECT_EQ(amendment_in_short(GetParam().text), GetParam().told); }

INSTANTIATE_TEST_SUITE_P(
    Replacing, Phrases,
    ::testing::Values(
        Phrase{"Replace couplet 12 by:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Couplet 12 of the key should read" + kTwelve, "replace 12: 12\n"},
        Phrase{"Couplet 12 of the key of Smith (1998: 44) should read as follows:" + kTwelve,
               "replace 12: 12\n"},
        Phrase{"Couplets 12–14 are replaced by the following:" + kTwelve + kThirteen,
               "replace 12-14: 12 13\n"},
        Phrase{"Couplets 12 to 14 are replaced by the\nfollowing:" + kTwelve,
               "replace 12-14: 12\n"},
        Phrase{"Couplets 12, 13 and 16 now read:" + kTwelve, "replace 12,13,16: 12\n"},
        Phrase{"The following couplets replace couplets 12-13 of the key:" + kTwelve,
               "replace 12-13: 12\n"},
        Phrase{"Replace couplet 12 by: 12. Wings pale ..... 13\n– Wings dark ..... Aus bus\n",
               "replace 12: 12\n"},
        Phrase{"Punkt 12 ist wie folgt zu ersetzen:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Die Gabelpunkte 12 bis 14 werden durch folgende ersetzt:" + kTwelve,
               "replace 12-14: 12\n"},
        Phrase{"Nr. 12 muss lauten:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Le couplet 12 est remplacé par le suivant :" + kTwelve, "replace 12: 12\n"},
        Phrase{"Remplacer les alinéas 12 à 14 par :" + kTwelve, "replace 12-14: 12\n"},
        Phrase{"Le numéro 12 doit se lire :" + kTwelve, "replace 12: 12\n"},
        Phrase{"Los dilemas 12 a 14 se sustituyen por los siguientes:" + kTwelve,
               "replace 12-14: 12\n"},
        Phrase{"La disyuntiva 12 debe leerse:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Substituir o passo 12 por:" + kTwelve, "replace 12: 12\n"},
        Phrase{"O passo 12 deve ler-se:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Numerus 12 ita legendus:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Modifications to couplets 12 ff." + kTwelve + kThirteen, "by number: 12 13\n"},
        Phrase{"Änderungen ab Punkt 12 ff.:" + kTwelve, "by number: 12\n"},
        Phrase{"Modifications aux couplets 12 et suivants" + kTwelve, "by number: 12\n"}));

INSTANTIATE_TEST_SUITE_P(
    Inserting, Phrases,
    ::testing::Values(
        Phrase{"Insert after couplet 7" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Insert the following couplet after couplet 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Add after 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Insert couplet 7a between couplets 7 and 8:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Before couplet 8 insert:" + kSevenA, "insert before 8: 7a\n"},
        Phrase{"Nach Punkt 7 ist einzufügen:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Hinter Nr. 7 einfügen:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Insérer après le couplet 7 :" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Après l’alinéa 7, intercaler :" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Insertar después del dilema 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Intercálese tras el paso 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Inserir após o passo 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Post numerum 7 inseratur:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Insert couplet 7a:" + kSevenA, "by number: 7a\n"}));

INSTANTIATE_TEST_SUITE_P(
    Removing, Phrases,
    ::testing::Values(Phrase{"Delete couplet 9.", "remove 9\n"},
                      Phrase{"Couplets 9 and 11–12 are deleted.", "remove 9,11-12\n"},
                      Phrase{"Omit the second lead of couplet 9", "remove 9b\n"},
                      Phrase{"Punkt 9 entfällt.", "remove 9\n"},
                      Phrase{"Gabelpunkt 9 ist zu streichen.", "remove 9\n"},
                      Phrase{"Supprimer le couplet 9.", "remove 9\n"},
                      Phrase{"Suprímase el dilema 9.", "remove 9\n"},
                      Phrase{"Eliminar o passo 9.", "remove 9\n"},
                      Phrase{"Numerus 9 delendus.", "remove 9\n"},
                      Phrase{"– Delete couplet 9.", "remove 9\n"},
                      Phrase{"2. Delete couplet 9.", "remove 9\n"}));

INSTANTIATE_TEST_SUITE_P(
    ChangingWords, Phrases,
    ::testing::Values(
        Phrase{"In couplet 4, change ‘Aus bus’ to ‘Aus cus’.", "change 4: {Aus bus} {Aus cus}\n"},
        Phrase{"In couplet 4, change 'Aus bus' to\n'Aus cus'.", "change 4: {Aus bus} {Aus cus}\n"},
        Phrase{"couplet 8b: for 9 read 10", "change 8b: {9} {10}\n"},
        Phrase{"8b: for 9 read 10.", "change 8b: {9} {10}\n"},
        Phrase{"p. 12, couplet 3, line 2: for 'pale' read 'dark'",
               "change 3 line 2: {pale} {dark}\n"},
        Phrase{"Couplet 3, second lead: for “4–6 mm” read “4.5–6 mm”",
               "change 3 lead 2: {4–6 mm} {4.5–6 mm}\n"},
        Phrase{"In couplet 3, read 'dark' instead of 'pale'.", "change 3: {pale} {dark}\n"},
        Phrase{"Change 9 to 10 in couplet 8b.", "change 8b: {9} {10}\n"},
        Phrase{"Couplet 8:\nfor 9 read 10\nline 2: for 'pale' read 'dark'\n",
               "change 8: {9} {10}\nchange 8 line 2: {pale} {dark}\n"},
        Phrase{"Couplet 3: for 'pale' read 'dark'; for 9 read 10.",
               "change 3: {pale} {dark}\nchange 3: {9} {10}\n"},
        Phrase{"Throughout the key, for Aus bus read Aus cus.",
               "change key: {Aus bus} {Aus cus} throughout\n"},
        Phrase{"In lead 5b delete 'in part'.", "change 5b: {in part} {}\n"},
        Phrase{"In couplet 5, after 'dark' insert 'brown'.", "change 5: {dark} {dark brown}\n"},
        Phrase{"Lead 7b should read “Wings dark, spotted”.",
               "change 7b: {} {Wings dark, spotted}\n"},
        Phrase{"Punkt 8b: statt 9 lies 10.", "change 8b: {9} {10}\n"},
        Phrase{"In Punkt 4 ist „blass“ durch „dunkel“ zu ersetzen.",
               "change 4: {blass} {dunkel}\n"},
        Phrase{"Bei Nr. 4 „blass“ in „dunkel“ ändern.", "change 4: {blass} {dunkel}\n"},
        Phrase{"Couplet 8b : au lieu de 9 lire 10.", "change 8b: {9} {10}\n"},
        Phrase{"Dans le couplet 4, remplacer « pâle » par « sombre ».",
               "change 4: {pâle} {sombre}\n"},
        Phrase{"Dilema 8b: donde dice «9» debe decir «10».", "change 8b: {9} {10}\n"},
        Phrase{"En el dilema 4, en vez de «pálido» léase «oscuro».",
               "change 4: {pálido} {oscuro}\n"},
        Phrase{"Passo 8b: onde se lê «9» leia-se «10».", "change 8b: {9} {10}\n"},
        Phrase{"Num. 8b: pro 9 lege 10.", "change 8b: {9} {10}\n"},
        Phrase{"Numero 4 pro “pallidus” lege “fuscus”.", "change 4: {pallidus} {fuscus}\n"}));

INSTANTIATE_TEST_SUITE_P(
    Leading, Phrases,
    ::testing::Values(Phrase{"Lead 7b now leads to couplet 15a.", "redirect 7b: 15a\n"},
                      Phrase{"Lead 7b leads to 7a instead of 8.", "redirect 7b: 7a\n"},
                      Phrase{"Punkt 7b führt nun zu 15a.", "redirect 7b: 15a\n"},
                      Phrase{"Le couplet 7b renvoie à 15a.", "redirect 7b: 15a\n"},
                      Phrase{"El paso 7b conduce a 15a.", "redirect 7b: 15a\n"},
                      Phrase{"O passo 7b conduz a 15a.", "redirect 7b: 15a\n"},
                      Phrase{"Numerus 7b ducit ad 15a.", "redirect 7b: 15a\n"},
                      Phrase{"Lead 7b goes to Aus dus.", "redirect 7b: Aus dus\n"}));

INSTANTIATE_TEST_SUITE_P(
    Adding, Phrases,
    ::testing::Values(
        Phrase{"Add to couplet 5:\n–  Wings red ..... Aus dus\n", "add to 5: ?(1)\n"},
        Phrase{"Add to couplet 5:\n5c. Wings red ..... Aus dus\n", "add to 5: 5(1)\n"},
        Phrase{"Add to lead 5b: 'except in Aus bus'", "add to 5b: {except in Aus bus}\n"},
        Phrase{"Zu Punkt 5 hinzufügen:\n–  Flügel rot ..... Aus dus\n", "add to 5: ?(1)\n"},
        Phrase{"Ajouter au couplet 5 :\n–  Ailes rouges ..... Aus dus\n", "add to 5: ?(1)\n"}));

INSTANTIATE_TEST_SUITE_P(
    OwnNumbers, Phrases,
    ::testing::Values(
        Phrase{"7a (7)  Wings pale ..... 8\n–       Wings dark ..... Aus dus\n", "by number: 7a\n"},
        Phrase{"7a(7)  Wings pale ..... 8\n7a'  Wings dark ..... Aus dus\n", "by number: 7a\n"},
        Phrase{"15’(15)  Wings pale ..... 16\n–  Wings dark ..... Aus dus\n", "by number: 15’\n"},
        Phrase{"7 (6)  Wings pale ..... 8\n–  Wings dark ..... Aus dus\n", "by number: 7\n"},
        Phrase{"7   Wings pale ..... 7a\n–   Wings dark ..... 9\n7a  Legs pale ..... 8\n"
               "–   Legs dark ..... Aus dus\n",
               "by number: 7 7a\n"},
        Phrase{"7a  Wings pale ..... 8\n7b  Wings dark ..... Aus dus\n", "by number: 7\n"},
        Phrase{"7b  Wings dark ..... Aus dus\n", "by number: 7(1)\n"},
        Phrase{"15 Wings pale 16\n– Wings dark Aus dus\n", "by number: 15\n"}));

}  // namespace
}  // namespace keydrift::test
