// What is written reads back the same, at any width, for editions of many shapes.

#include <gtest/gtest.h>

#include <array>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;

class EditionMaker {
 public:
  explicit EditionMaker(unsigned seed) : random_{seed} {}

  Edition make() {
    Edition edition;
    edition.name = "made";
    make_front(edition.front);
    make_taxa(edition);
    auto const count = 1 + below(14);
    edition.couplets.resize(count);
    make_labels(edition);
    std::uint64_t position = 100;
    for (std::uint32_t c = 0; c < count; ++c) {
      auto& couplet = edition.couplets[c];
      couplet.place.begin = position += 100;
      couplet.leads.resize(chance(8)                               ? 3 + below(4)
                           : chance(20) && may_be_lone(edition, c) ? 1
                                                                   : 2);
      for (auto& lead : couplet.leads) make_lead(edition, c, lead);
      if (chance(10)) couplet.notes.push_back(words(1 + below(30)) + ".");
      if (c > 0 && chance(2)) {
        couplet.back_references.push_back({edition.couplets[below(c)].label, {}});
        if (chance(5)) couplet.back_references.push_back({edition.couplets[c - 1].label + "'", {}});
        if (couplet.back_references.back().label == couplet.back_references.front().label) {
          couplet.back_references.resize(1);
        }
      }
      if (c > 0 && chance(10)) {
        edition.notes.push_back({chance(2) ? words(3) : words(40) + ".", couplet.place});
      }
    }
    edition.couplets[0].leads.resize(std::max<std::size_t>(2, edition.couplets[0].leads.size()));
    for (auto& lead : edition.couplets[0].leads) {
      if (lead.text.empty()) make_lead(edition, 0, lead);
    }
    edition.parts.push_back({chance(2) ? "Key to the " + words(2) : "", CoupletId{0}, {}});
    renumber_taxa(edition);
    return edition;
  }

 private:
  std::size_t below(std::size_t bound) { return random_() % bound; }
  bool chance(std::size_t one_in) { return below(one_in) == 0; }
  template <std::size_t N>
  std::string pick(std::array<std::string_view, N> const& from) {
    return std::string{from[below(N)]};
  }

  // Words that invite a reader to go astray at a line's end or front.
  std::string word() {
    static constexpr std::array kWords{
        "shell"sv,
        "with"sv,
        "Fühler"sv,
        "longer"sv,
        "than"sv,
        "3–5(–7)"sv,
        "mm"sv,
        "long;"sv,
        "and"sv,
        "7"sv,
        "12."sv,
        "1a"sv,
        "–"sv,
        "-"sv,
        "(rarely"sv,
        "8)"sv,
        "♂:"sv,
        "hair-like"sv,
        "long-"sv,
        "or"sv,
        "short,"sv,
        "I"sv,
        "A"sv,
        "a"sv,
        "Note:"sv,
        "Fig."sv,
        "p."sv,
        "*"sv,
        "usually"sv,
        "except"sv,
        "in"sv,
        "A."sv,
        "bus"sv,
        "Aus"sv,
        "[rare]"sv,
        "{tibia:"sv,
        "red}"sv,
        "5."sv,
        "ca."sv,
        "±"sv,
        "2"sv,
        "N.B."sv,
        "葉は対生"sv,
        "Größenverhältnis"sv,
        "ll"sv,
        "(3)"sv,
        "see"sv,
        "couplet"sv,
        "key"sv,
        "Plate"sv,
        "page"sv,
        "to"sv,
        "¹"sv,
        "Dus"sv,
        "eus"sv,
        "donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichenverleihungsurkundenbogen"sv};
    return pick(kWords);
  }
  std::string words(std::size_t count) {
    static constexpr std::array kStarts{"Shell"sv, "Fühler"sv, "Eyes"sv, "Länge"sv, "Tail"sv};
    static constexpr std::array kEnds{"smooth"sv, "ribbed"sv, "pale;"sv,   "dark."sv,
                                      "blaß"sv,   "7"sv,      "(Fig. 3)"sv};
    std::string text = pick(kStarts);
    for (std::size_t i = 0; i < count; ++i) text += " " + word();
    return text + " " + pick(kEnds);
  }

  void make_front(FrontMatter& front) {
    if (chance(2)) front.title = words(below(20));
    if (chance(2)) front.edition = "2nd";
    if (chance(2)) front.year = 1950 + static_cast<int>(below(70));
    if (chance(2)) front.authors = {"E. R.", "Ö. T. V."};
    if (chance(2)) front.language = "de-CH";
    if (chance(2)) front.scope.region = words(below(30));
    if (chance(2)) front.scope.places = {"Aldmere", "Süd-Mark", "Carrow Levels"};
    if (chance(2)) front.scope.listed_taxa = {"Aus bus", "Aus cus", "Dus"};
    if (chance(3)) front.scope.life_stage = "larva";
    if (chance(3)) front.scope.sex = "female";
    if (chance(3)) front.synonyms = {{"Aus bus", "Eus bus", {}}, {"Aus bus", "Eus cus", {}}};
    if (chance(3) && !front.title.empty()) front.other = {{"Series", words(5)}};
    if (front.edition.empty() && front.year && chance(2)) {
      front.edition = std::to_string(*front.year);
    }
  }

  void make_taxa(Edition& edition) {
    static constexpr std::array kNames{"Aus bus"sv,
                                       "Aus cus"sv,
                                       "Aus dus var. eus"sv,
                                       "Dus"sv,
                                       "Dus (Eus) fus"sv,
                                       "×Aus gus"sv,
                                       "Grey Reed Warbler"sv,
                                       "common reed"sv,
                                       "Ærus ørus"sv,
                                       "Aus sp. 3"sv,
                                       "葉"sv,
                                       "Form A"sv,
                                       "Aus bus group"sv,
                                       "larva with two tails"sv,
                                       "Aus 7"sv,
                                       "7"sv,
                                       "Key B"sv,
                                       "Aus, the grey one"sv,
                                       "A. bus"sv,
                                       "hus"sv,
                                       "Megalodonopterus megalodonopteroides"sv};
    static constexpr std::array kAuthors{""sv,
                                         "(Smith, 1900)"sv,
                                         "Roe"sv,
                                         "L."sv,
                                         "Smith & Jones, 1900"sv,
                                         "de Roe, 1899"sv,
                                         "(L.) Mill. ex Roe"sv};
    auto const count = 2 + below(10);
    for (std::size_t i = 0; i < count; ++i) {
      auto name = pick(kNames);
      bool known = false;
      for (auto const& taxon : edition.taxa) known = known || taxon.name == name;
      if (!known) edition.taxa.push_back({name, pick(kAuthors), {}});
    }
  }

  void make_labels(Edition& edition) {
    static constexpr std::array kSuffixes{"a"sv, "b"sv, "bis"sv};
    bool const letters = chance(6) && edition.couplets.size() >= 2;
    std::size_t number = chance(3) ? 5 : 1;
    for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
      if (letters) {
        edition.couplets[c].label = std::string(1, static_cast<char>('A' + c));
      } else if (c > 0 && chance(6) &&
                 edition.couplets[c - 1].label == std::to_string(number - 1)) {
        edition.couplets[c].label = edition.couplets[c - 1].label + pick(kSuffixes);
      } else {
        if (chance(10)) number += below(5);
        edition.couplets[c].label = std::to_string(number++);
      }
    }
  }

  // A lone lead beside one of the same number would be its rival.
  static bool may_be_lone(Edition const& edition, std::uint32_t couplet) {
    auto const plain = [&](std::size_t c) {
      auto const& label = edition.couplets[c].label;
      return label.find_first_not_of("0123456789") == std::string::npos;
    };
    return couplet > 0 && plain(couplet) &&
           (couplet + 1 == edition.couplets.size() || plain(couplet + 1));
  }

  void make_lead(Edition& edition, std::uint32_t couplet, Lead& lead) {
    lead.text = words(below(30));
    lead.destination_printed.clear();
    auto const kind = below(12);
    auto const count = static_cast<std::uint32_t>(edition.couplets.size());
    if (kind < 5 && couplet + 1 < count) {
      auto const to = couplet + 1 + static_cast<std::uint32_t>(below(count - couplet - 1));
      lead.destination = ToCouplet{CoupletId{to}};
      if (chance(8)) lead.taxon_remark = chance(2) ? "Aus group" : "the grey ones, mostly";
    } else if (kind == 10) {
      lead.destination = chance(2) ? Destination{ToKey{"Key B"}} : Destination{ToKey{"Larvae"}};
    } else if (kind == 11) {
      lead.destination = chance(2) ? Destination{Unresolved{}} : Destination{Unresolved{"9999"}};
    } else {
      ToTaxa to;
      for (std::size_t i = chance(5) ? 1 + below(6) : 1; i > 0; --i) {
        TaxonId const taxon{static_cast<std::uint32_t>(below(edition.taxa.size()))};
        bool const again = std::find(to.taxa.begin(), to.taxa.end(), taxon) != to.taxa.end();
        if (!again) to.taxa.push_back(taxon);
      }
      lead.destination = to;
      static constexpr std::array kRemarks{
          ""sv, ""sv, "in part"sv, "p. 44"sv, "Only males"sv, "rare form only"sv, "see also 12"sv};
      lead.taxon_remark = pick(kRemarks);
    }
    if (chance(6)) lead.notes.push_back(chance(3) ? "[" + words(3) + "]" : words(below(30)) + ".");
    lead.figures = printed::figures_in(lead.text);
    if (chance(10) && !std::holds_alternative<Unresolved>(lead.destination)) {
      lead.figures.emplace_back("Figs 8, 9");
    }
  }

  // The table of taxa holds what leads name, in order of first naming.
  static void renumber_taxa(Edition& edition) {
    std::vector<Taxon> taxa;
    std::vector<std::uint32_t> now(edition.taxa.size(), 0xFFFFFFFFU);
    for (auto& couplet : edition.couplets) {
      for (auto& lead : couplet.leads) {
        auto* to = std::get_if<ToTaxa>(&lead.destination);
        if (to == nullptr) continue;
        for (auto& taxon : to->taxa) {
          auto& index = now[taxon.index];
          if (index == 0xFFFFFFFFU) {
            index = static_cast<std::uint32_t>(taxa.size());
            taxa.push_back(edition.taxa[taxon.index]);
          }
          taxon.index = index;
        }
      }
    }
    edition.taxa = std::move(taxa);
  }

  std::mt19937 random_;
};

// All that same_content compares, to see in the failure message what differs.
std::string content(Edition edition) {
  std::string text;
  for (auto const& part : edition.parts) text += "part " + part.title + "\n";
  for (auto const& taxon : edition.taxa)
    text += "taxon " + taxon.name + "|" + taxon.authorship + "\n";
  for (auto const& note : edition.notes) text += "note " + note.text + "\n";
  for (auto const& [name, value] : edition.front.other) text += name + ": " + value + "\n";
  text +=
      edition.front.title + "|" + edition.front.scope.region + "|" + edition.front.edition + "\n";
  for (auto& couplet : edition.couplets) {
    text += "couplet " + couplet.label;
    for (auto const& back : couplet.back_references) text += " <" + back.label;
    for (auto const& note : couplet.notes) text += " note " + note;
    text += "\n";
    for (auto& lead : couplet.leads) {
      lead.label.clear();
      for (auto const& note : lead.notes) text += "  note " + note + "\n";
      for (auto const& figure : lead.figures) text += "  figure " + figure + "\n";
    }
  }
  return text + test::sketch(edition);
}

TEST(PrintedRoundTrip, WhatIsWrittenReadsBackTheSameAtAnyWidth) {
  auto const first = static_cast<unsigned>(testing::UnitTest::GetInstance()->random_seed());
  for (unsigned i = 0; i < 40; ++i) {
    auto const seed = first * 1000 + i;
    auto const edition = EditionMaker{seed}.make();
    for (std::size_t const width : {80U, 34U, 132U, 400U}) {
      auto const text = write_printed_key(edition, {.width = width});
      auto const loaded = read_printed_key({.name = "made", .bytes = text});
      ASSERT_TRUE(loaded) << "seed " << seed << "\n"
                          << test::one_line(loaded.findings.front()) << "\n"
                          << text;
      ASSERT_EQ(content(edition), content(loaded.value->edition))
          << "seed " << seed << ", width " << width << "\n"
          << text;
      ASSERT_TRUE(same_content(edition, loaded.value->edition)) << "seed " << seed;
    }
  }
}

TEST(PrintedRoundTrip, KeepsLinesWithinTheWidthWhereWordsAllow) {
  auto const text = write_printed_key(
      test::read_key(
          "1. A lead with many words in it that has to be set in several lines ..... 2\n"
          "– Short ..... Aus bus Smith, 1900, in part\n2. x ..... Aus cus\n– y ..... 1\n")
          .edition,
      {.width = 40});
  std::size_t begin = 0;
  while (begin < text.size()) {
    auto const end = text.find('\n', begin);
    EXPECT_LE(count_code_points(text.substr(begin, end - begin)), 40U);
    begin = end + 1;
  }
}

TEST(PrintedRoundTrip, WritesBackReferencesOfTheGraphWhenAsked) {
  auto const edition = test::read_key(
                           "1. Small ..... 2\n– Large ..... 3\n2. Pale ..... 3\n"
                           "– Dark ..... Aus bus\n3. Round ..... Aus cus\n– Square ..... Aus dus\n")
                           .edition;
  auto const text = write_printed_key(edition, {.back_references = BackReferences::from_graph});
  EXPECT_NE(text.find("\n3 (1, 2).  Round"), std::string::npos) << text;
  EXPECT_EQ(write_printed_key(edition).find("(1"), std::string::npos);
}

TEST(PrintedRoundTrip, LooksLikeAPrintedKey) {
  auto const edition = test::read_key(
                           "Title: River shells of Halvern\nEdition: 2nd\nYear: 1998\n"
                           "Authors: E. R.; M. K.\nLists: Aus bus; Aus cus; Dus eus; Dus fus\n\n"
                           "Key to the shells\n\nMeasure dry shells only; those kept in spirit are "
                           "longer by a tenth or more.\n\n"
                           "1. Shell smooth, in fresh ones glossy and somewhat translucent towards "
                           "the margin (Fig. 2) ..... 2\n– Shell ribbed ..... Dus group, 3\n"
                           "2 (1). Foot pale {foot: pale} ..... Aus bus (Smith, 1900)\n"
                           "Note: bleached ones are paler.\n"
                           "– Foot dark; whorls usually 4–6(–8) ..... A. cus or A. bus, in part\n\n"
                           "Ribbed species\n\n3 (1). Eyes large ..... Dus eus\n"
                           "– Eyes small ..... Dus fus (Fig. 9)\n")
                           .edition;
  test::expect_golden("printed/shells.txt", write_printed_key(edition));
}

}  // namespace
}  // namespace keydrift
