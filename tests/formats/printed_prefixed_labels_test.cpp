// Couplets numbered with the letter of their key.

#include "keydrift/formats/printed_prefixed_labels.hpp"

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using printed::number_prefixed_labels;
using test::read_key;
using test::sketch;

std::string const kPrefixedKey =
    "Key to species\n"
    "A1. Wings clear, long ..... A2\n"
    "A1'. Wings dark ..... B1\n"
    "A2(A1). Legs long ..... Ausella busa\n"
    "A2'. Legs short ..... A3\n"
    "A3(A2). Eyes red ..... Ausella cusa\n"
    "A3'. Eyes black ..... Ausella dusa\n"
    "B1(A1). Tarsi of four joints ..... Ausella eusa\n"
    "B1'. Tarsi of five joints ..... B2\n"
    "B2(B1). Antennae long ..... Ausella fusa\n"
    "B2'. Antennae short ..... Ausella gusa\n";

TEST(PrintedPrefixedLabels, LettersBeforeNumbers) {
  EXPECT_EQ(sketch(kPrefixedKey),
            "A1[A1] Wings clear, long -> A2\nA1[A1'] Wings dark -> B1\n"
            "A2[A2] Legs long -> Ausella busa\nA2[A2'] Legs short -> A3\n"
            "A3[A3] Eyes red -> Ausella cusa\nA3[A3'] Eyes black -> Ausella dusa\n"
            "B1[B1] Tarsi of four joints -> Ausella eusa\nB1[B1'] Tarsi of five joints -> B2\n"
            "B2[B2] Antennae long -> Ausella fusa\nB2[B2'] Antennae short -> Ausella gusa\n");
}

TEST(PrintedPrefixedLabels, BehindAKeyToGroups) {
  auto const text =
      "Groepentabel\n1 Derde antennelid rond ... Groep A\n– Derde antennelid lang ... Groep B\n"
      "Groep A\nA1 Vleugel met vlek ... A2\n– Vleugel helder ... A3\n"
      "A2 Dijen zwart ... Ausella busa\n– Dijen geel ... Ausella cusa\n"
      "A3 Wangen breed ... Ausella dusa\n– Wangen smal ... Ausella eusa\n"
      "Groep B\nB1 Arista geveerd ... Ausella fusa\n– Arista kort ... B2\n"
      "B2 Borststuk gestreept ... Ausella gusa\n– Borststuk grijs ... Ausella husa\n";
  EXPECT_EQ(sketch(text),
            "1[1] Derde antennelid rond -> key: Groep A\n"
            "1[–] Derde antennelid lang -> key: Groep B\n"
            "A1[A1] Vleugel met vlek -> A2\nA1[–] Vleugel helder -> A3\n"
            "A2[A2] Dijen zwart -> Ausella busa\nA2[–] Dijen geel -> Ausella cusa\n"
            "A3[A3] Wangen breed -> Ausella dusa\nA3[–] Wangen smal -> Ausella eusa\n"
            "B1[B1] Arista geveerd -> Ausella fusa\nB1[–] Arista kort -> B2\n"
            "B2[B2] Borststuk gestreept -> Ausella gusa\nB2[–] Borststuk grijs -> Ausella husa\n");
}

TEST(PrintedPrefixedLabels, TheTextAndItsPlacesAreThoseOfThePrint) {
  auto const loaded = read_printed_key({.name = "key.txt", .bytes = kPrefixedKey});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->source.text, kPrefixedKey);
  EXPECT_EQ(loaded.value->source.layout_note,
            "parallel layout, leads marked A1 and A1', destinations after dot leaders");
  auto const& lead = loaded.value->edition.couplets.at(0).leads.at(0);
  EXPECT_EQ(lead.destination_printed, "A2");
  EXPECT_EQ(lead.destination_place.line, 2U);
  EXPECT_EQ(kPrefixedKey.substr(lead.destination_place.begin,
                                lead.destination_place.end - lead.destination_place.begin),
            "A2");
  EXPECT_EQ(lead.place.column, 1U);
  auto const& couplet = loaded.value->edition.couplets.at(1);
  EXPECT_EQ(couplet.label, "A2");
  ASSERT_EQ(couplet.back_references.size(), 1U);
  EXPECT_EQ(couplet.back_references[0].label, "A1");
}

TEST(PrintedPrefixedLabels, OtherLettersWithNumbersStay) {
  // Veins, figures and teeth at the fronts and ends of lines.
  for (
      std::string text :
      {"1 Wings clear ... 2\nM1 straight ... Ausella busa\n2 Vein R1 longer than M1\nM2 ...\n",
       "A1 Site of the first trap\nA2 Site of the second trap\nA3 Site of the third trap\n",
       "A1. Wings clear ... A2\nA1. Wings dark ... Ausella busa\n",
       "1. Body red ... 5\n1. Body blue ... A1\nA1. Wings clear ... A2\nA1. Wings dark ... Ausella "
       "busa\nA2. Legs long ... A3\nA2. Legs short ... Ausella cusa\nA3. Eyes red ... A4\nA3. Eyes "
       "black ... Ausella dusa\nA4. Palps red ... Ausella fusa\nA4. Palps black ... Ausella eusa\n",
       "A1. Wings clear ... A3\nA3. Wings dark ... A4\nA4. Legs long ... Ausella busa\n"}) {
    auto const before = text;
    EXPECT_FALSE(number_prefixed_labels(text)) << before;
    EXPECT_EQ(text, before);
  }
}

TEST(PrintedPrefixedLabels, NumbersThatWouldBeLongerAreLeft) {
  std::string text;
  for (int n = 1; n <= 99; ++n) {
    auto const number = std::to_string(n);
    text += number + ". Wings clear ... " + std::to_string(n + 1) + "\n" + number +
            ". Wings dark ... Ausella busa\n";
  }
  text +=
      "A1. Legs long ... A2\nA1. Legs short ... Ausella cusa\n"
      "A2. Eyes red ... A3\nA2. Eyes black ... Ausella dusa\n"
      "A3. Palps red ... Ausella eusa\nA3. Palps black ... Ausella fusa\n";
  auto const before = text;
  EXPECT_FALSE(number_prefixed_labels(text));
  EXPECT_EQ(text, before);
}

TEST(PrintedPrefixedLabels, MayBeRomanNumeralsWithASign) {
  EXPECT_EQ(sketch("1 Wings clear ... 2\n1* Wings dark ... Ausella busa\n"
                   "2 Legs long ... Ausella cusa\n2* Legs short ... Part key II\n\n"
                   "Part key II\n"
                   "II/1 Eyes red ... II/2\nII/1* Eyes black ... II/3\n"
                   "II/2 Palps red ... Ausella dusa\nII/2* Palps black ... Ausella eusa\n"
                   "II/3 Head round ... Ausella fusa\nII/3* Head flat ... Ausella gusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[1*] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n"
            "2[2*] Legs short -> key: Part key II\n"
            "II/1[II/1] Eyes red -> II/2\n"
            "II/1[II/1*] Eyes black -> II/3\n"
            "II/2[II/2] Palps red -> Ausella dusa\n"
            "II/2[II/2*] Palps black -> Ausella eusa\n"
            "II/3[II/3] Head round -> Ausella fusa\n"
            "II/3[II/3*] Head flat -> Ausella gusa\n");
}

}  // namespace
}  // namespace keydrift
