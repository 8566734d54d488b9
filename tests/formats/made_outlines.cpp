#include "made_outlines.hpp"

#include <algorithm>
#include <cstddef>
#include <map>

namespace keydrift::test {
namespace {

using namespace std::string_view_literals;

constexpr std::array kOutlineParts{"Wings"sv, "Head"sv,     "Thorax"sv,    "Abdomen"sv,
                                   "Legs"sv,  "Antennae"sv, "Scutellum"sv, "Elytra"sv,
                                   "Crown"sv, "Throat"sv,   "Breast"sv};
constexpr std::array kOutlineStates{"black"sv,  "rufous"sv,  "clear"sv,  "smooth"sv, "punctate"sv,
                                    "long"sv,   "short"sv,   "hairy"sv,  "bare"sv,   "broad"sv,
                                    "narrow"sv, "spotted"sv, "uniform"sv};
constexpr std::array kSyllables{"ra"sv,  "bel"sv, "cor"sv, "ni"sv,
                                "lum"sv, "dri"sv, "mel"sv, "gra"sv};
constexpr std::size_t kDeepest = 4;  // ranks

struct Couplet;
struct OutlineLead {
  std::size_t below{};  // couplet, or 0
};
struct Couplet {
  std::vector<OutlineLead> leads;
  std::size_t rank{};
};

class Maker {
 public:
  Maker(OutlineLabels labels, std::uint32_t seed, Scan* scan)
      : labels_{labels}, state_{seed * 69621U % 2147483646U + 1}, scan_{scan} {}

  MadeOutline make() {
    do {
      couplets_.assign(1, {});  // 0 is none
      grow(9 + below(6), 0);
    } while (deepest() >= kDeepest);
    made_.text = "Genus AUSELLA.\n\nKey to the Species.\n\n";
    if (labels_ == OutlineLabels::couplets) {
      for (std::size_t c = 1; c < couplets_.size(); ++c) print_couplet(c);
    } else {
      print_beneath(1);
    }
    return std::move(made_);
  }

 private:
  // As for Scan, with the multiplier 69621 (Fishman & Moore 1986, SIAM J. Sci. Stat. Comput. 7:
  // 24).
  std::size_t below(std::size_t bound) {
    for (int i = 0; i < 3; ++i) state_ = state_ * 69621U % 2147483647U;
    return static_cast<std::size_t>(state_ / 7U) % bound;
  }

  // A couplet over so many species.
  std::size_t grow(std::size_t species, std::size_t rank) {
    auto const at = couplets_.size();
    couplets_.push_back({{}, rank});
    bool const three = species > 3 && below(10) == 0;
    std::vector<std::size_t> parts(three ? 3 : 2, 1);
    for (auto left = species - parts.size(); left > 0; --left) ++parts[below(parts.size())];
    for (auto const part : parts) {
      auto const couplet = part > 1 ? grow(part, rank + 1) : 0;
      couplets_[at].leads.push_back({couplet});
    }
    return at;
  }
  [[nodiscard]] std::size_t deepest() const {
    std::size_t rank = 0;
    for (auto const& couplet : couplets_) rank = std::max(rank, couplet.rank);
    return rank;
  }

  [[nodiscard]] static std::string letters(char first, std::size_t ordinal, std::size_t times = 1) {
    return std::string(times, static_cast<char>(first + static_cast<char>(ordinal)));
  }
  [[nodiscard]] static std::string_view mark(std::size_t rank, bool figures) {
    static constexpr std::array kPrimes{""sv, "'"sv, "\""sv, "'\""sv};
    static constexpr std::array kFigures{""sv, "1"sv, "2"sv, "3"sv};
    return figures ? kFigures[rank] : kPrimes[rank];
  }

  // `before`: letters of the rank before this couplet.
  [[nodiscard]] std::string label(std::size_t rank, std::size_t ordinal, std::size_t before) const {
    static constexpr std::array kRoman{"I"sv, "II"sv, "III"sv};
    static constexpr std::array kGreek{"α"sv, "β"sv, "γ"sv};
    auto const digit = std::to_string(ordinal + 1);
    switch (labels_) {
      case OutlineLabels::primes:
      case OutlineLabels::indices:
        return letters('a', ordinal) + std::string{mark(rank, figures())} + ".";
      case OutlineLabels::running_primes:
      case OutlineLabels::running_indices:
        return letters('a', before + ordinal) + std::string{mark(rank, figures())} + ".";
      case OutlineLabels::doubled:
        return letters('a', rank, ordinal + 1) + ".";
      case OutlineLabels::levels:
        return letters('a', rank) + ".";
      case OutlineLabels::alphabets: {
        auto const roman = std::string{kRoman[ordinal]};
        return std::array{letters('A', ordinal), roman, letters('a', ordinal), digit}[rank] + ".";
      }
      case OutlineLabels::alphabets_closed: {
        auto const greek = std::string{kGreek[ordinal]} + ")";
        return std::array{letters('A', ordinal) + ".", digit + ".", letters('a', ordinal) + ")",
                          greek}[rank];
      }
      case OutlineLabels::brackets:
        return std::array{letters('A', ordinal) + ".", letters('a', ordinal) + ".", digit + ".",
                          "(" + letters('a', ordinal) + ")"}[rank];
      case OutlineLabels::couplets:
        break;
    }
    return {};
  }
  [[nodiscard]] bool figures() const {
    return labels_ == OutlineLabels::indices || labels_ == OutlineLabels::running_indices;
  }

  // In the order in which they are printed; unlike all before it.
  std::string words() {
    auto const n = written_++;
    return std::string{kOutlineParts[n % kOutlineParts.size()]} + " " +
           std::string{kOutlineStates[(n / kOutlineParts.size() * 5 + n) % kOutlineStates.size()]};
  }
  std::string name() {
    auto const n = named_++;
    return "A. " + std::string{kSyllables[n % kSyllables.size()]} +
           std::string{kSyllables[(n / kSyllables.size() + 3 * n) % kSyllables.size()]} + "ella";
  }
  static std::string in_full(std::string const& name) { return "Ausella" + name.substr(2); }
  [[nodiscard]] std::string damaged_label(std::string const& printed) const {
    auto seen = scan_ != nullptr ? scan_->label(printed) : printed;
    return seen.empty() ? seen : seen + " ";
  }

  // Returns the words of its first lead.
  std::string print_beneath(std::size_t at) {
    auto const& couplet = couplets_[at];
    auto const before = used_[couplet.rank];
    used_[couplet.rank] += couplet.leads.size();
    std::string first;
    for (std::size_t i = 0; i < couplet.leads.size(); ++i) {
      auto const lead_words = words();
      if (i == 0) first = lead_words;
      auto const number = made_.leads.size();
      made_.leads.push_back({lead_words, {}});
      made_.text += damaged_label(label(couplet.rank, i, before)) + lead_words;
      if (couplet.leads[i].below != 0) {
        made_.text += ".\n";
        made_.leads[number].to = print_beneath(couplet.leads[i].below);
      } else {
        auto const species = name();
        made_.text += " ..... " + species + "\n";
        made_.leads[number].to = in_full(species);
      }
    }
    return first;
  }

  void print_couplet(std::size_t at) {
    auto const letter = [](std::size_t couplet) { return letters('a', couplet - 1) + "."; };
    for (std::size_t i = 0; i < couplets_[at].leads.size(); ++i) {
      auto const lead_words = words();
      if (i == 0) {
        for (auto& lead : made_.leads) {
          if (lead.to == letter(at)) lead.to = lead_words;
        }
      }
      made_.text += damaged_label(letter(at)) + lead_words;
      if (auto const couplet = couplets_[at].leads[i].below; couplet != 0) {
        auto const printed = letter(couplet);
        made_.text += " " + (scan_ != nullptr ? scan_->number(printed) : printed) + "\n";
        made_.leads.push_back({lead_words, printed});
      } else {
        auto const species = name();
        made_.text += "\n" + std::to_string(named_) + ". " + species + ".\n";
        made_.leads.push_back({lead_words, in_full(species)});
      }
    }
  }

  OutlineLabels labels_;
  std::uint64_t state_;
  Scan* scan_;
  std::vector<Couplet> couplets_;
  std::array<std::size_t, kDeepest> used_{};  // by rank, letters of its couplets so far
  std::size_t written_{};
  std::size_t named_{};
  MadeOutline made_;
};

}  // namespace

std::string_view to_word(OutlineLabels labels) {
  static constexpr std::array kWords{
      "primes"sv,    "running_primes"sv,   "indices"sv,  "running_indices"sv, "doubled"sv,
      "alphabets"sv, "alphabets_closed"sv, "brackets"sv, "levels"sv,          "couplets"sv};
  return kWords[static_cast<std::size_t>(labels)];
}

MadeOutline made_outline(OutlineLabels labels, std::uint32_t seed, Scan* scan) {
  return Maker{labels, seed, scan}.make();
}

}  // namespace keydrift::test
