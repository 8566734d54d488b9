// Epithets with a capital before their authors in capitals.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedEpithetAuthors, EpithetsBeforeAuthorsInCapitals) {
  EXPECT_EQ(sketch("Genre Podocalymna, PODOCALYMNE; Roe.\n"
                   "\n"
                   "A. Elytres à deux bandes.\n"
                   "B. Bande postérieure couvrant l'extrémité. Bifasciella; ROE.\n"
                   "BB. Bande postérieure n'atteignant pas l'extrémité. Undulifera;\n"
                   "DORN.\n"
                   "AA. Elytres sans bandes.\n"
                   "C. Prothorax marqué de fossettes. Vires-\n"
                   "centula; ROE.\n"
                   "CC. Prothorax sans fossettes. Cincta; HOLL-\n"
                   "MANN.\n"),
            "A[A] Elytres à deux bandes. -> B\n"
            "A[AA] Elytres sans bandes. -> C\n"
            "B[B] Bande postérieure couvrant l'extrémité. -> Podocalymna bifasciella\n"
            "B[BB] Bande postérieure n'atteignant pas l'extrémité. -> Podocalymna undulifera\n"
            "C[C] Prothorax marqué de fossettes. -> Podocalymna virescentula\n"
            "C[CC] Prothorax sans fossettes. -> Podocalymna cincta\n");
}

}  // namespace
}  // namespace keydrift
