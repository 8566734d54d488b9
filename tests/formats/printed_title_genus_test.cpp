// The genus that a title names.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTitleGenus, GenitivesOfTheFirstDeclension) {
  EXPECT_EQ(sketch("Clavis specierum generis Ausellae\n"
                   "\n"
                   "1. Corpus carinatum ..... A. busa\n"
                   "— Corpus haud carinatum ..... A. cusa\n"),
            "1[1] Corpus carinatum -> Ausella busa\n"
            "1[—] Corpus haud carinatum -> Ausella cusa\n");
}

TEST(PrintedTitleGenus, IsNoOfficeAboveTheTitleOfTheKey) {
  EXPECT_EQ(sketch("FOLHAS AVULSAS DO MUSEU\n"
                   "DIRETORIA DO FOMENTO RURAL — BRASIL\n"
                   "Vol. III, N.º 14 — pp. 201-224	17-XI-1943\n"
                   "\n"
                   "SOBRE O GÊNERO TRACHYMENES CASTR. (COLEOPTERA)\n"
                   "por\n"
                   "F. SEABRA\n"
                   "\n"
                   "O gênero Trachymenes foi criado por Castro em 1861 para T. hirtipes.\n"
                   "\n"
                   "CHAVE PARA AS ESPÉCIES BRASILEIRAS DE TRACHYMENES\n"
                   "\n"
                   "1 — Élitros com espinho ...... 2\n"
                   "    Élitros inermes ...... bahiensis Lang., 1861\n"
                   "2 — Antenas longas ...... spinosus Castr., 1861\n"
                   "    Antenas curtas ...... hirtipes Castr., 1861\n"
                   "\n"
                   "Trachymenes spinosus Castr.\n"
                   "Trachymenes spinosus Castro, 1861, p. 443.\n"
                   "\n"
                   "Trachymenes bahiensis Lang.\n"
                   "Trachymenes bahiensis Langoni, 1861, p. 61.\n"),
            "1[1] Élitros com espinho -> 2\n"
            "1[] Élitros inermes -> Trachymenes bahiensis\n"
            "2[2] Antenas longas -> Trachymenes spinosus\n"
            "2[] Antenas curtas -> Trachymenes hirtipes\n");
}

}  // namespace
}  // namespace keydrift
