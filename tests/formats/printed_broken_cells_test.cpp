// Cells one below the other that markup broke within their sentences.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedBrokenCells, FiguresWithinASentenceAreNoLabels) {
  EXPECT_EQ(sketch("Key to males of\nAusella\nRoe, 2011\n\n"
                   "1\nApophysis bifid (\nFigs 3A\n,\n5C\n); embolus short\n2\n"
                   "–\nApophysis simple (\nFig. 3B\n); embolus long\nAusella busa\nRoe, 2011\n"
                   "2\nBranches equal\nAusella cusa\nsp. nov.\n"
                   "–\nBranches unequal\nAusella dusa\nsp. nov.\n"
                   "\nKey to females of\nAusella\n\n"
                   "1\nSeptum broad\nAusella busa\n"
                   "–\nSeptum narrow\nAusella cusa\n"),
            "1[1] Apophysis bifid ( Figs 3A , 5C ); embolus short -> 2\n"
            "1[–] Apophysis simple ( Fig. 3B ); embolus long -> Ausella busa\n"
            "2[2] Branches equal -> Ausella cusa (sp. nov.)\n"
            "2[–] Branches unequal -> Ausella dusa (sp. nov.)\n"
            "1[1] Septum broad -> Ausella busa\n"
            "1[–] Septum narrow -> Ausella cusa\n");
}

// The blank line is the empty cell of the second lead's label.
TEST(PrintedBrokenCells, BlankLinesForLabels) {
  EXPECT_EQ(sketch("Key to species\n\n1\nWings clear; legs red\n2\n\nWings dark; legs black\nAus "
                   "bus\n2\nLegs long; head 5 mm\nAus cus\n\nLegs short; head 7 mm\nAus dus\n"),
            "1[1] Wings clear; legs red -> 2\n1[] Wings dark; legs black -> Aus bus\n"
            "2[2] Legs long; head 5 mm -> Aus cus\n2[] Legs short; head 7 mm -> Aus dus\n");
  EXPECT_EQ(sketch("1\nWings clear; legs red\n2\n\nWings dark; legs black\n3\n"
                   "2\nLegs long; head 5 mm\nAus cus\n\nLegs short; head 7 mm\nAus dus\n"
                   "3\nEyes red\nAus bus\n\nEyes black\n4\n"
                   "4\nHorn long\nAus eus\n\nHorn short\nAus fus\n"),
            "1[1] Wings clear; legs red -> 2\n1[] Wings dark; legs black -> 3\n"
            "2[2] Legs long; head 5 mm -> Aus cus\n2[] Legs short; head 7 mm -> Aus dus\n"
            "3[3] Eyes red -> Aus bus\n3[] Eyes black -> 4\n"
            "4[4] Horn long -> Aus eus\n4[] Horn short -> Aus fus\n");
}

TEST(PrintedBrokenCells, AColumnOfRemarksBehindNames) {
  EXPECT_EQ(
      sketch("KEY A.  SNAILS AND LIMPETS\n"
             "\n"
             " 1.  a.  Shell cap-shaped, not coiled in adult . . . . . . . .   2\n"
             "     b.  Shell coiled . . . . . . . . . . . . . . . . . . . . .   3\n"
             "\n"
             " 2.  a.  Shell black to purple, top worn white; two knobs\n"
             "         on columella  . . . . . . Tegularion funebre        R, mid\n"
             "     b.  Shell brown or orange; one knob on columella\n"
             "             . . . . . . . . . . . T. brunnescens         kelp, low\n"
             "\n"
             " 3.  a.  Both radiating ribs and concentric rings present\n"
             "             . . . . . . . . . . . Venerascus stamineus      gravel\n"
             "     b.  Concentric lines only; large; shell gapes at hind\n"
             "         end . . . . . . . . . . . Schizascus sp.            M\n"),
      "1[1. a] Shell cap-shaped, not coiled in adult -> 2\n"
      "1[b] Shell coiled -> 3\n"
      "2[2. a] Shell black to purple, top worn white; two knobs on columella -> Tegularion funebre "
      "(R, mid)\n"
      "2[b] Shell brown or orange; one knob on columella -> Tegularion brunnescens (kelp, low)\n"
      "3[3. a] Both radiating ribs and concentric rings present -> Venerascus stamineus (gravel)\n"
      "3[b] Concentric lines only; large; shell gapes at hind end -> Schizascus sp. (M)\n");
}

TEST(PrintedBrokenCells, CaptionsBehindALeadWithItsEnd) {
  EXPECT_EQ(
      sketch("Key to the genera\n"
             "\n"
             "1.\n"
             "Antenna without scale … 2\n"
             "—\n"
             "Antenna with scale … 3\n"
             "2.\n"
             "Coxa excavate … Ausella busa Roe\n"
             "—\n"
             "Coxa not excavate … Ausella cusa Roe\n"
             "Figure 3. Urosome, left view. A, Ausella busa; B, Ausella cusa. Scale bars: 1 mm.\n"
             "Open in new tab\n"
             "3.\n"
             "Uropod biramous … Ausella dusa Roe\n"
             "—\n"
             "Uropod uniramous … Ausella fusa Roe\n"),
      "1[1] Antenna without scale -> 2\n"
      "1[—] Antenna with scale -> 3\n"
      "2[2] Coxa excavate -> Ausella busa\n"
      "2[—] Coxa not excavate -> Ausella cusa\n"
      "3[3] Uropod biramous -> Ausella dusa\n"
      "3[—] Uropod uniramous -> Ausella fusa\n");
}

// Column heads stand above the first label as well; a lead's words with its end do not.
TEST(PrintedBrokenCells, LeadsPrintedTwiceAreNoColumnHeads) {
  EXPECT_EQ(sketch("Key to the hoverflies\n\n"
                   "1\nThorax shiny\n2\n"
                   "1\nNot as above\nMarsh hover\n"
                   "2\nThorax red\n3\n"
                   "2\nNot as above\nMarsh hover\n"
                   "3\nThorax red\n4\n"
                   "3\nThorax blue and spotted\nAusella busa\n"
                   "4\nThorax red\n5\n"
                   "4\nNot as above\nAusella busa\n"
                   "5\nThorax shiny\nCommon hover\n"
                   "5\nThorax blue\nMarsh hover\n"),
            "1[1] Thorax shiny -> 2\n"
            "1[1] Not as above -> Marsh hover\n"
            "2[2] Thorax red -> 3\n"
            "2[2] Not as above -> Marsh hover\n"
            "3[3] Thorax red -> 4\n"
            "3[3] Thorax blue and spotted -> Ausella busa\n"
            "4[4] Thorax red -> 5\n"
            "4[4] Not as above -> Ausella busa\n"
            "5[5] Thorax shiny -> Common hover\n"
            "5[5] Thorax blue -> Marsh hover\n");
}

TEST(PrintedBrokenCells, WaysOnFromAPageAreNoLeads) {
  EXPECT_EQ(sketch("Key to the mussels\n"
                   "\n"
                   "1a. Shell long; rays broken .......... Ausella busa\n"
                   "1b. Shell short .......... 2\n"
                   "2a. Rays broken .......... Ausella cusa\n"
                   "Back to top\n"
                   "2b. Rays absent .......... Ausella dusa\n"
                   "< Previous | Contents | Next >\n"),
            "1[1a] Shell long; rays broken -> Ausella busa\n"
            "1[1b] Shell short -> 2\n"
            "2[2a] Rays broken -> Ausella cusa\n"
            "2[2b] Rays absent -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift
