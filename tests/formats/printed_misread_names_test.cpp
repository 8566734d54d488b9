// Names at the ends of leads that the rest of the text prints otherwise.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::sketch;

// A key whose third end is `epithet`, and `behind` behind it.
std::string key_with_epithet(std::string const& epithet, std::string const& behind) {
  return "Key to the species of Stenella\n\n"
         "1. Leaves long, alternate ..... 2\n"
         "- Leaves short, opposite ..... S. alternata\n"
         "2. Petals hairy, with an ornate margin ..... S. " +
         epithet + "\n- Petals bare ..... S. grandis\n\n" + behind;
}

std::string third_end(std::string const& text) {
  auto const read = sketch(text);
  auto const begin = read.find("margin -> ") + 10;
  return read.substr(begin, read.find('\n', begin) - begin);
}

TEST(PrintedMisreadNames, AnAccountTellsWhatTheNameIs) {
  EXPECT_EQ(third_end(key_with_epithet("tenuifiora", "2. S. tenuiflora Roe. Petals 5 mm long.\n")),
            "Stenella tenuiflora");
  EXPECT_EQ(third_end(key_with_epithet("rnaritima", "Stenella maritima Roe grows on rocks.\n")),
            "Stenella maritima");
  EXPECT_EQ(third_end(key_with_epithet("oruatella", "S. ornatella was seen once.\n")),
            "Stenella ornatella");
}

TEST(PrintedMisreadNames, WhatElseIsPrintedSoStays) {
  // The text has both.
  EXPECT_EQ(third_end(key_with_epithet("oruatella", "S. ornatella and S. oruatella were seen.\n")),
            "Stenella oruatella");
  // Another lead leads to the other one.
  EXPECT_EQ(third_end(key_with_epithet("graudis", "Stenella grandis Roe grows on rocks.\n")),
            "Stenella graudis");
  // No slip makes the one of the other.
  EXPECT_EQ(third_end(key_with_epithet("montana", "Stenella maritima Roe grows on rocks.\n")),
            "Stenella montana");
  // Two may be meant.
  EXPECT_EQ(third_end(key_with_epithet("rnarina", "S. marina and S. mariua were seen.\n")),
            "Stenella rnarina");
}

TEST(PrintedMisreadNames, TheNumberOfTheEndTellsWhatIsMeant) {
  EXPECT_EQ(sketch("Key to the species of Stenella\n\n"
                   "1. Leaves long ..... 2\n"
                   "- Leaves short ..... 1. S. ghitinella\n"
                   "2. Petals hairy ..... 2. S. lubrica\n"
                   "- Petals bare ..... 3. S. aurantielhi\n"
                   "3. Seeds many ..... 4. S. griseola\n"
                   "- Seeds few ..... 5. S. media\n\n"
                   "1. STENELLA GLUTINELLA Roe.\n"
                   "2. STENELLA LUBRICA Roe.\n"
                   "3. STENELLA AURANTIELLA Dorn.\n"
                   "4. STENELLA GRISEOLA Dorn.\n"
                   "5. STENELLA VERNALIS Dorn.\n"),
            "1[1] Leaves long -> 2\n"
            "1[-] Leaves short -> Stenella glutinella\n"
            "2[2] Petals hairy -> Stenella lubrica\n"
            "2[-] Petals bare -> Stenella aurantiella\n"
            "3[3] Seeds many -> Stenella griseola\n"
            "3[-] Seeds few -> Stenella media\n");
}

TEST(PrintedMisreadNames, EachIsReported) {
  auto const findings =
      findings_of(key_with_epithet("tenuifiora", "2. S. tenuiflora Roe. Rare.\n"));
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](std::string const& one) {
    return one.find("misread-name") != std::string::npos && one.find("line 8") != std::string::npos;
  }));
}

TEST(PrintedMisreadNames, LettersOfAsManyStrokes) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "a. Palpi long ... 1. A. viaculosa, p. 3.\n"
                   "b. Palpi short ... 2. A. vittattis, p. 4.\n"
                   "\n"
                   "1. Ausella maculosa.\n"
                   "\n"
                   "Ausella maculosa, Roe, Cat. p. 3.\n"
                   "\n"
                   "2. Ausella vittata.\n"
                   "Ausella vittatus, Roe, Cat. p. 4.\n"),
            "1[a] Palpi long -> Ausella maculosa (p. 3.)\n"
            "1[b] Palpi short -> Ausella vittatus (p. 4.)\n");
}

TEST(PrintedMisreadNames, CapitalsWithinEpithets) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF MESOMA.\n"
                   "\n"
                   "1. Club of antenna white albiclaTa Roe, p. 5.\n"
                   "- Club of antenna black flavipes Dorn, p. 6.\n"
                   "\n"
                   "MESOMA ALBICLAVA Roe.\n"
                   "\n"
                   "Female. - Length 2.1 mm. Head and thorax dark green, the face with coppery "
                   "reflections.\n"),
            "1[1] Club of antenna white -> Mesoma albiclava (p. 5.)\n"
            "1[-] Club of antenna black -> Mesoma flavipes (p. 6.)\n");
}

TEST(PrintedMisreadNames, TheGenusThatTheListHas) {
  EXPECT_EQ(sketch("Key to the species of the coast\n"
                   "\n"
                   "1 Crest with teeth ........ Selbycuma serrata\n"
                   "- Crest without teeth ........ 2\n"
                   "2 Ramus of three joints ........ Selbycurna orrina\n"
                   "- Ramus of two joints ........ Selbycuma lenta\n"
                   "\n"
                   "Selbycuma serrata Roe 1889. Common on mud.\n"
                   "Selbycuma orrina Dorn 1971. Known from six stations.\n"),
            "1[1] Crest with teeth -> Selbycuma serrata\n"
            "1[-] Crest without teeth -> 2\n"
            "2[2] Ramus of three joints -> Selbycuma orrina\n"
            "2[-] Ramus of two joints -> Selbycuma lenta\n");
}

TEST(PrintedMisreadNames, GeneraThatNoListTellsStayAsPrinted) {
  EXPECT_EQ(sketch("Key to the species of the coast\n"
                   "\n"
                   "1 Crest with teeth ........ Selbycuma serrata\n"
                   "- Crest without teeth ........ 2\n"
                   "2 Ramus of three joints ........ Selbycurna orrina\n"
                   "- Ramus of two joints ........ Selbycuma lenta\n"
                   "\n"
                   "Selbycuma serrata Roe 1889. Common on mud.\n"),
            "1[1] Crest with teeth -> Selbycuma serrata\n"
            "1[-] Crest without teeth -> 2\n"
            "2[2] Ramus of three joints -> Selbycurna orrina\n"
            "2[-] Ramus of two joints -> Selbycuma lenta\n");
}

TEST(PrintedMisreadNames, LigaturesThatCameOutAsOtherLetters) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Leaves broad . . . . A. ccespitosa\n"
                   "- Leaves narrow . . . . 2\n"
                   "2. Petals red . . . . A. seneus\n"
                   "- Petals blue . . . . A. grata\n"
                   "\n"
                   "1. A. caespitosa Roe. Stems in tufts.\n"
                   "2. A. aeneus Dorn. Stems bronze.\n"),
            "1[1] Leaves broad -> Ausella caespitosa\n"
            "1[-] Leaves narrow -> 2\n"
            "2[2] Petals red -> Ausella aeneus\n"
            "2[-] Petals blue -> Ausella grata\n");
}

TEST(PrintedMisreadNames, LigaturesOfWhichOneWasMisread) {
  EXPECT_EQ(sketch("1. Body domed ..... 2\n"
                   "– Body flat ..... Globella nana Roe\n"
                   "2. Eyes none ..... Globella cœcuma Roe\n"
                   "– Eyes of ten parts ..... Globella picta Roe\n"
                   "\n"
                   "Globella caecuma Roe, 1911. White, without eyes.\n"
                   "\n"
                   "Globella picta Roe, 1889. Brown.\n"
                   "\n"
                   "Globella nana Roe, 1889. Small.\n"),
            "1[1] Body domed -> 2\n"
            "1[–] Body flat -> Globella nana\n"
            "2[2] Eyes none -> Globella caecuma\n"
            "2[–] Eyes of ten parts -> Globella picta\n");
}

}  // namespace
}  // namespace keydrift
