// `proof --explain`: how a source was read, line by line, as a user sees it.

#include <gtest/gtest.h>

#include <string>

#include "binary.hpp"

namespace keydrift::test {
namespace {

constexpr char kKeyToExplain[] =
    "Key to the species of Aus\n\n"
    "1. Wings clear, not banded ..... l0\n"
    "– Wings dark ..... A. bus Roe, in part\n"
    "44\n"
    "10. Legs pale\n"
    "              Aus cus\n"
    "– Legs dark ..... 12\n";

TEST(ProofExplain, ShowsWhatEveryLineWasTakenFor) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kKeyToExplain));
  auto const ran = run_keydrift({"proof", "key.txt", "--explain"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1) << ran.err;  // couplet 12 is missing
  auto const listing = ran.out.substr(0, ran.out.find("THE LINES IN NUMBERS"));
  EXPECT_EQ(listing,
            "HOW KEY.TXT WAS READ\n"
            "════════════════════════════════════════════════════════════════════════════════\n"
            "Parallel layout, leads marked 1 and –, destinations after dot leaders.\n"
            "\n"
            "  line taken for     begins with; why\n"
            "     1 heading       Key to the species of Aus\n"
            "                       heading before the key\n"
            "     2 blank\n"
            "     3 lead          1. Wings clear, not banded ..... l0\n"
            "                       label “1”: couplet 1, lead 1 of 2\n"
            "                       words end in column 26: “Wings clear, not banded”\n"
            "                       destination “l0”: couplet 10, line 6\n"
            "     4 lead          – Wings dark ..... A. bus Roe, in part\n"
            "                       label “–”: couplet 1, lead 2 of 2\n"
            "                       words end in column 12: “Wings dark”\n"
            "                       destination “A. bus Roe, in part”: taxon Aus bus (author:\n"
            "                         Roe); remark “in part”\n"
            "     5 page number   44\n"
            "                       a number alone, where no destination is missing\n"
            "     6 lead          10. Legs pale\n"
            "                       label “10”: couplet 10, lead 1 of 2\n"
            "                       words end in column 13: “Legs pale”\n"
            "                       destination “Aus cus” in line 7: taxon Aus cus\n"
            "     7 destination   Aus cus\n"
            "                       destination on a line of its own\n"
            "     8 lead          – Legs dark ..... 12\n"
            "                       label “–”: couplet 10, lead 2 of 2\n"
            "                       words end in column 11: “Legs dark”\n"
            "                       destination “12”: a couplet, but none bears that number\n"
            "\n");
  EXPECT_NE(ran.out.find("PROOF OF KEY.TXT"), std::string::npos);
}

TEST(ProofExplain, GivesEachRowOfALineOfTheSourceItsOwnLead) {
  Sandbox const sandbox;
  static_cast<void>(
      sandbox.write("key.html",
                    "<table><tr><td>1</td><td>Wings clear</td><td>Aus bus</td></tr>"
                    "<tr><td>-</td><td>Wings dark</td><td>Aus cus</td></tr></table>\n"));
  auto const ran = run_keydrift({"proof", "key.html", "--explain"}, sandbox.path());
  auto const first = ran.out.find("1 Wings clear Aus bus\n");
  auto const second = ran.out.find("- Wings dark Aus cus\n");
  ASSERT_NE(first, std::string::npos) << ran.out;
  ASSERT_NE(second, std::string::npos) << ran.out;
  auto const label_of_second = ran.out.find("label “-”: couplet 1, lead 2 of 2");
  EXPECT_LT(ran.out.find("label “1”: couplet 1, lead 1 of 2"), second);
  EXPECT_GT(label_of_second, second);
  EXPECT_NE(label_of_second, std::string::npos);
}

TEST(ProofExplain, SaysThatAnEditionOfFieldsHasNoLines) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kKeyToExplain));
  auto const made =
      run_keydrift({"convert", "key.txt", "--to", "json", "-o", "key.json"}, sandbox.path());
  ASSERT_EQ(made.exit, 0) << made.err;
  auto const ran = run_keydrift({"proof", "key.json", "--explain"}, sandbox.path());
  EXPECT_EQ(ran.err,
            "keydrift: key.json says itself what each part of it is; there are no lines to "
            "explain\n");
}

}  // namespace
}  // namespace keydrift::test
