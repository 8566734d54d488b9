// Leads that end in what points to another key.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedKeyPointers, BehindLeaders) {
  EXPECT_EQ(
      sketch(
          "Key to woods\n"
          "\n"
          "1a. Wood without pores ..... see key to the coniferous woods, p. 61\n"
          "1b. Wood with pores visible to the naked eye or with a lens (hardwoods)........... 2\n"
          "2a. Wood brown ..... A. busa\n"
          "2b. Wood grey ..... (see key to the grey woods)\n"),
      "1[1a] Wood without pores -> key: key to the coniferous woods\n"
      "1[1b] Wood with pores visible to the naked eye or with a lens (hardwoods) -> 2\n"
      "2[2a] Wood brown -> A. busa\n"
      "2[2b] Wood grey -> key: key to the grey woods\n");
}

// The key stands in the same file, further down or up.
TEST(PrintedKeyPointers, SayOnWhichSideTheKeyStands) {
  for (auto const& [pointer, title] :
       {std::pair{"Key A, below", "Key A"}, std::pair{"Key A below", "Key A"},
        std::pair{"Key A (below)", "Key A"}, std::pair{"see Key A, below", "Key A"},
        std::pair{"Key A, p. 14, below", "Key A"}, std::pair{"Schlüssel A, unten", "Schlüssel A"},
        std::pair{"siehe Schlüssel A (weiter unten)", "Schlüssel A"},
        std::pair{"clé A, ci-dessous", "Clé A"}, std::pair{"clave A, abajo", "Clave A"},
        std::pair{"Clave A (más abajo)", "Clave A"}}) {
    auto const edition =
        test::read_key("Key to Ausidae\n\n1. Wings clear ..... 2\n– Wings dark ..... " +
                       std::string{pointer} +
                       "\n2. Legs long ..... Ausa busa\n– Legs short ..... Ausa cusa\n\n" + title +
                       ". Genus Busella\n\n1. Head keeled ..... Busella dusa\n"
                       "– Head flat ..... Busella eusa\n")
            .edition;
    auto const* to = std::get_if<ToKey>(&edition.couplets[0].leads[1].destination);
    ASSERT_NE(to, nullptr) << pointer;
    EXPECT_EQ(to->key, title + std::string{". Genus Busella"}) << pointer;
  }
}

TEST(PrintedKeyPointers, BehindSentencesAndInBrackets) {
  EXPECT_EQ(
      sketch(
          "Key to woods\n"
          "\n"
          "1a. Wood without pores. See key to the coniferous woods, p. 61.\n"
          "1b. Wood with pores visible to the naked eye or with a lens (hardwoods)........... 2\n"
          "2a. Wood brown ..... A. busa\n"
          "2b. Wood grey. (See key to the grey woods.)\n"),
      "1[1a] Wood without pores. -> key: key to the coniferous woods\n"
      "1[1b] Wood with pores visible to the naked eye or with a lens (hardwoods) -> 2\n"
      "2[2a] Wood brown -> A. busa\n"
      "2[2b] Wood grey. -> key: key to the grey woods\n");
}

TEST(PrintedKeyPointers, BehindAWordInABracket) {
  EXPECT_EQ(
      sketch(
          "Key to woods\n"
          "\n"
          "1a. Wood without pores; growth rings marked by bands of dense summerwood.\n"
          "(Softwoods; see key to the coniferous woods, p. 61.)\n"
          "1b. Wood with pores visible to the naked eye or with a lens (hardwoods)........... 2\n"
          "2a. Wood brown ..... A. busa\n"
          "2b. Wood grey ..... A. cusa\n"),
      "1[1a] Wood without pores; growth rings marked by bands of dense summerwood. (Softwoods; -> "
      "key: key to the coniferous woods\n"
      "1[1b] Wood with pores visible to the naked eye or with a lens (hardwoods) -> 2\n"
      "2[2a] Wood brown -> A. busa\n"
      "2[2b] Wood grey -> A. cusa\n");
}

TEST(PrintedKeyPointers, MayNameAGenusOrAFamily) {
  EXPECT_EQ(sketch("Key to woods\n"
                   "\n"
                   "1   Holz mit Poren . . . . . . . . . . . . . . 2\n"
                   "–   Holz ohne Poren . . . . . . s. Gattung Ruvia, S. 44\n"
                   "2   Holz braun . . . . . . . . . . . . Ausa busa\n"
                   "–   Holz grau . . . . . . . . . see genus Tessa\n"),
            "1[1] Holz mit Poren -> 2\n"
            "1[–] Holz ohne Poren -> key: Gattung Ruvia\n"
            "2[2] Holz braun -> Ausa busa\n"
            "2[–] Holz grau -> key: genus Tessa\n");
}

TEST(PrintedKeyPointers, DoNotTakeASeriesOrAGenusThatKeysOut) {
  EXPECT_EQ(sketch("Key to woods\n"
                   "\n"
                   "1. Wood with pores ........... 2\n"
                   "-. Wood without pores ........ Genus Tessa\n"
                   "2. Wood brown ................ Ausa busa\n"
                   "-. Wood grey ................. S. alba\n"),
            "1[1] Wood with pores -> 2\n"
            "1[-] Wood without pores -> Tessa (Genus)\n"
            "2[2] Wood brown -> Ausa busa\n"
            "2[-] Wood grey -> S. alba\n");
}

TEST(PrintedKeyPointers, MaySayGoTo) {
  EXPECT_EQ(sketch("Key to crayfishes\n\n1a. Wings clear. Go to 2\n"
                   "1b. Wings dark. Go to the Key to burrowing crayfishes\n"
                   "2a. Legs long. Go to key to pond crayfishes\n2b. Legs short. Aus bus\n"),
            "1[1a] Wings clear. -> 2\n"
            "1[1b] Wings dark. -> key: Key to burrowing crayfishes\n"
            "2[2a] Legs long. -> key: key to pond crayfishes\n2[2b] Legs short. -> Aus bus\n");
}

TEST(PrintedKeyPointers, AGroupBeforeTheWordsThatPoint) {
  EXPECT_EQ(sketch("Key to the clams\n"
                   "\n"
                   "1a. Shell small .......... Pea clams: go to the Key to Small Clams, page 41\n"
                   "1b. Shell large .......... 2\n"
                   "2a. Hinge smooth .......... Ausunio busus\n"
                   "2b. Hinge toothed .......... Ausunio cusus\n"),
            "1[1a] Shell small -> key: Key to Small Clams (Pea clams)\n"
            "1[1b] Shell large -> 2\n"
            "2[2a] Hinge smooth -> Ausunio busus\n"
            "2[2b] Hinge toothed -> Ausunio cusus\n");
}

}  // namespace
}  // namespace keydrift
