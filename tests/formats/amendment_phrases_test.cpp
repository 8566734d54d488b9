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
        Phrase{"Insert couplet 7a:" + kSevenA, "new by number: 7a\n"}));

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

std::string const kSecondLead = "\n–  Wings red ..... Aus dus\n";

// As met in print: longer sentences, several verbs, other orders of words.
INSTANTIATE_TEST_SUITE_P(
    AtLength, Phrases,
    ::testing::Values(
        Phrase{"Couplets 12–13 should be deleted and replaced with the following:" + kTwelve,
               "replace 12-13: 12\n"},
        Phrase{"Couplet 12 of Smith’s (1998: 44) key is amended to read:" + kTwelve,
               "replace 12: 12\n"},
        Phrase{"For couplet 12, read the following:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Couplet 12 is modified to:" + kTwelve, "by number: 12\n"},
        Phrase{"The second lead of couplet 12 should read:" + kSecondLead, "replace 12b: ?(1)\n"},
        Phrase{"Replace the second lead of couplet 12 with:" + kSecondLead, "replace 12b: ?(1)\n"},
        Phrase{"Couplet 7 of the key must be changed as follows, and a new couplet 7a added:" +
                   kSevenA,
               "by number: 7a\n"},
        Phrase{"Insert a new couplet between 7 and 8:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"In couplet 4, Aus bus should read Aus cus.", "change 4: {Aus bus} {Aus cus}\n"},
        Phrase{"Couplet 22: '23' should be '24'.", "change 22: {23} {24}\n"},
        Phrase{"Couplet 5: delete the words 'in part'.", "change 5: {in part} {}\n"},
        Phrase{"Couplet 10, second lead: change 11 to 10a.", "change 10 lead 2: {11} {10a}\n"},
        Phrase{"In couplet 10b replace “Aus bus” with “11”", "change 10b: {Aus bus} {11}\n"},
        Phrase{"p. 44, couplet 12b, line 3 from top: for \"Aus\" read \"Bus\".",
               "change 12b line 3: {Aus} {Bus}\n"},
        Phrase{"12b: read 'dark' for 'pale'", "change 12b: {pale} {dark}\n"},
        Phrase{"Couplet 9 to be deleted; 8b to lead to 10.", "remove 9\nredirect 8b: 10\n"},
        Phrase{"An Stelle von Punkt 12 lies:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Punkt 12 ist wie folgt zu ändern:" + kTwelve, "by number: 12\n"},
        Phrase{"Nach 7 füge ein:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Zu streichen: Punkt 9.", "remove 9\n"},
        Phrase{"S. 12, Nr. 3, Zeile 2: statt „blass“ lies „dunkel“.",
               "change 3 line 2: {blass} {dunkel}\n"},
        Phrase{"Gabelpunkt 8, zweite Alternative: statt 9 lies 10.", "change 8 lead 2: {9} {10}\n"},
        Phrase{"À la place du couplet 12, lire :" + kTwelve, "replace 12: 12\n"},
        Phrase{"Le couplet 12 est à modifier comme suit :" + kTwelve, "by number: 12\n"},
        Phrase{"p. 12, couplet 3, ligne 2 : au lieu de « pâle », lire « sombre ».",
               "change 3 line 2: {pâle} {sombre}\n"},
        Phrase{"Ajouter après le couplet 7 :" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"El paso 12 queda como sigue:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Añádase después del paso 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Debe suprimirse el paso 9.", "remove 9\n"},
        Phrase{"Donde dice: «9», debe decir: «10» (paso 8b).", "change 8b: {9} {10}\n"},
        Phrase{"O passo 12 passa a ter a seguinte redação:" + kTwelve, "replace 12: 12\n"},
        Phrase{"Acrescentar após o passo 7:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Passo 8b: em vez de “9”, leia-se “10”.", "change 8b: {9} {10}\n"},
        Phrase{"In clave, num. 8b, pro «9» lege «10».", "change 8b: {9} {10}\n"},
        Phrase{"Post numerum 7 adde:" + kSevenA, "insert after 7: 7a\n"},
        Phrase{"Numerus 9 deleatur.", "remove 9\n"}));

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
