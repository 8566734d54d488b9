// Names cut short whose parts the article marks with what they stand for.

#include <gtest/gtest.h>

#include "jats_support.hpp"

namespace keydrift {
namespace {

using test::key_section;
using test::one_line_each;
using test::read_article;
using test::rows;

std::string part(std::string_view type, std::string_view printed, std::string_view whole) {
  std::string out = "<tp:taxon-name-part taxon-name-part-type=\"" + std::string{type} + '"';
  if (!whole.empty()) out += " reg=\"" + std::string{whole} + '"';
  return out + ">" + std::string{printed} + "</tp:taxon-name-part>";
}
std::string name(std::string_view parts) {
  return "<italic><tp:taxon-name>" + std::string{parts} + "</tp:taxon-name></italic>";
}
std::string species(std::string_view genus, std::string_view whole, std::string_view epithet) {
  return name(part("genus", genus, whole) + " " + part("species", epithet, epithet));
}

// A key of two couplets with these ends; what it names, and what is printed.
std::string names_of(std::string const& first, std::string const& second,
                     std::string const& third) {
  auto const loaded = read_article(key_section(
      "Identification key", rows("1|Wings clear|2\n–|Wings dark|" + first + "\n2|Legs long|" +
                                 second + "\n–|Legs short|" + third)));
  std::string out;
  if (!loaded) return out;
  auto const& edition = loaded.value->edition;
  for (auto const& taxon : edition.taxa) out += taxon.name + "\n";
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) out += "[" + lead.destination_printed + "]";
  }
  for (auto const& finding : loaded.findings) out += "\n" + finding.code;
  return out;
}

TEST(JatsToldNames, GenusStandsInItsPart) {
  EXPECT_EQ(names_of(species("H.", "Halmia", "rubra"), species("H.", "Halmia", "nigra"),
                     species("H.", "Halmia", "alba")),
            "Halmia rubra\nHalmia nigra\nHalmia alba\n[2][H. rubra][H. nigra][H. alba]");
}

TEST(JatsToldNames, EachNameHasItsOwnGenus) {
  EXPECT_EQ(names_of(species("H.", "Halmia", "rubra"), species("H.", "Hessia", "nigra"),
                     species("H.", "Halmia", "alba")),
            "Halmia rubra\nHessia nigra\nHalmia alba\n[2][H. rubra][H. nigra][H. alba]");
}

TEST(JatsToldNames, GenusThatIsNotPrinted) {
  EXPECT_EQ(names_of(species("", "Halmia", "rubra"), species("", "Halmia", "nigra"),
                     species("", "Halmia", "alba")),
            "Halmia rubra\nHalmia nigra\nHalmia alba\n[2][rubra][nigra][alba]");
}

TEST(JatsToldNames, LowerRanksAreToldToo) {
  auto const lower = [](std::string_view epithet) {
    return name(part("genus", "H.", "Halmia") + " " + part("species", "r.", "rubra") + " " +
                part("subspecies", epithet, ""));
  };
  EXPECT_EQ(names_of(lower("minor"), lower("major"), species("H.", "Halmia", "alba")),
            "Halmia rubra minor\nHalmia rubra major\nHalmia alba\n"
            "[2][H. r. minor][H. r. major][H. alba]");
}

TEST(JatsToldNames, WhatIsPrintedWholeStays) {
  // Somebody else's spelling of the genus is no reason to change the edition's.
  EXPECT_EQ(
      names_of(species("Halmia", "Hallmia", "rubra"), species("Halmia", "Hallmia", "nigra"),
               species("Halmia", "Hallmia", "alba")),
      "Halmia rubra\nHalmia nigra\nHalmia alba\n[2][Halmia rubra][Halmia nigra][Halmia alba]");
  // An attribute that cannot be what was cut short.
  EXPECT_EQ(names_of(species("H.", "Tarnia", "rubra"), species("H.", "Tarnia", "nigra"),
                     species("H.", "Tarnia", "alba")),
            "H. rubra\nH. nigra\nH. alba\n[2][H. rubra][H. nigra][H. alba]\ngenus-unknown");
}

TEST(JatsToldNames, NameToldInTwoWaysIsNotTold) {
  EXPECT_EQ(names_of(species("H.", "Halmia", "rubra"), species("H.", "Hessia", "rubra"),
                     species("H.", "Halmia", "alba")),
            "H. rubra\nHalmia alba\n[2][H. rubra][H. rubra][H. alba]\ngenus-unknown");
}

}  // namespace
}  // namespace keydrift
