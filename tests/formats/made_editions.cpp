#include "made_editions.hpp"

#include <algorithm>
#include <array>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::test {
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

}  // namespace

Edition odd_edition(std::uint32_t seed) { return EditionMaker{seed}.make(); }

namespace {

class ShapeMaker {
 public:
  ShapeMaker(Shape shape, std::uint32_t couplets, std::uint32_t seed)
      : shape_{shape}, count_{couplets}, random_{seed} {}

  Edition make() && {
    edition_.name = "made";
    edition_.front.title = "Shells of the Halvern Basin";
    edition_.front.edition = "2024";
    edition_.front.year = 2024;
    auto const keys = shape_ == Shape::several_keys ? 3U : 1U;
    for (std::uint32_t k = 0; k < keys; ++k) make_key(k, std::max(1U, count_ / keys));
    return std::move(edition_);
  }

 private:
  std::uint32_t below(std::uint32_t bound) { return static_cast<std::uint32_t>(random_() % bound); }

  void make_key(std::uint32_t key, std::uint32_t count) {
    auto const first = static_cast<std::uint32_t>(edition_.couplets.size());
    auto const title = std::string{"Key to group "} + static_cast<char>('A' + key);
    edition_.parts.push_back({shape_ == Shape::several_keys ? title : "", CoupletId{first}, {}});
    edition_.couplets.resize(first + count);
    std::uint32_t next = first + 1;  // couplet that no lead leads to yet
    for (std::uint32_t c = first; c < first + count; ++c) {
      auto& couplet = edition_.couplets[c];
      couplet.label = std::to_string(c - first + 1);
      couplet.place.begin = (c + 1) * 100;
      auto const leads = shape_ == Shape::polytomous ? 2 + below(6) : 2;
      for (std::uint32_t i = 0; i < leads; ++i) {
        // Combs lead on from the last lead, the rest from as many as there are couplets to reach.
        bool const waits =
            next < first + count && (c + 1 == next || below(4) != 0 || shape_ == Shape::balanced);
        bool const on = shape_ == Shape::comb ? i == 1 && next < first + count : waits;
        couplet.leads.push_back(make_lead(c, i));
        auto& lead = couplet.leads.back();
        if (on) {
          lead.destination = ToCouplet{CoupletId{next}};
          if (shape_ != Shape::comb)
            edition_.couplets[next].back_references.push_back({couplet.label, {}});
          ++next;
        } else if (shape_ == Shape::reticulate && c + 2 < first + count && below(3) == 0) {
          lead.destination = ToCouplet{CoupletId{c + 1 + below(first + count - c - 1)}};
        } else {
          name_taxon(lead);
        }
      }
    }
  }

  Lead make_lead(std::uint32_t couplet, std::uint32_t ordinal) {
    static constexpr std::array kParts{"Shell"sv, "Foot"sv, "Fühler"sv, "Œil"sv, "葉"sv};
    static constexpr std::array kStates{"smooth"sv, "ribbed; usually pale"sv, "longer than wide"sv,
                                        "(3–)4–6(–8) mm long"sv, "blaß, except in Aus"sv};
    Lead lead;
    lead.text = std::string{kParts[couplet % kParts.size()]} + " " +
                std::string{kStates[(couplet + ordinal) % kStates.size()]};
    for (auto words = below(12); words > 0; --words) lead.text += " and glossy";
    return lead;
  }

  void name_taxon(Lead& lead) {
    bool const again = !edition_.taxa.empty() && below(10) == 0;
    if (!again) {
      static constexpr std::array kEndings{"us"sv, "ea"sv, "ium"sv};
      std::string epithet;
      for (auto n = edition_.taxa.size() + 1; n > 0; n /= 20) {
        epithet += "bcdfghklmnprstvwxzjq"[n % 20];
        epithet += "aeiou"[n % 5];
      }
      edition_.taxa.push_back(
          {"Aus " + epithet + std::string{kEndings[edition_.taxa.size() % kEndings.size()]},
           below(3) == 0 ? "Roe, 1899" : "",
           {}});
    }
    auto const taxon = again ? below(static_cast<std::uint32_t>(edition_.taxa.size()))
                             : static_cast<std::uint32_t>(edition_.taxa.size() - 1);
    lead.destination = ToTaxa{{TaxonId{taxon}}};
    if (again) lead.taxon_remark = "in part";
  }

  Shape shape_;
  std::uint32_t count_;
  std::mt19937 random_;
  Edition edition_;
};

}  // namespace

Edition shaped_edition(Shape shape, std::uint32_t couplets, std::uint32_t seed) {
  return ShapeMaker{shape, couplets, seed}.make();
}

}  // namespace keydrift::test
