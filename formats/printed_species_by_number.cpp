#include "keydrift/formats/printed_species_by_number.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// 5 of "No. 5", "Nr. 5", "n° 5", "Sp. 5"; 0 for any other end.
std::uint32_t species_number(std::string_view end) {
  static constexpr std::array kMarks{"no"sv, "nr"sv, "n°"sv, "nº"sv, "№"sv,
                                     "sp"sv, "species"sv, "especie"sv, "espèce"sv, "art"sv};
  auto const words = words_of(end, 3);
  if (words.size() != 2) return 0;
  auto mark = words[0];
  if (mark.ends_with('.')) mark.remove_suffix(1);
  auto digits = words[1];
  if (digits.ends_with('.')) digits.remove_suffix(1);
  auto const number = read_reference(digits);
  bool const plain = number && digits.find_first_not_of("0123456789") == std::string_view::npos;
  return plain && is_one_of(kMarks, fold(mark)) ? number->number : 0;
}

struct Listed {
  std::string name;
  std::uint32_t line{};  // its number
};

// By number; of several with one number, the first that stands.
class NumberedSpecies {
 public:
  NumberedSpecies(KeyText const& key, SortedLines const& sorted) {
    for (std::size_t i = 0; i < key.lines.size() && i < sorted.accounts.size(); ++i) {
      auto const kind = sorted.accounts[i].kind;
      bool const of_lead = kind == LineKind::lead || kind == LineKind::continuation ||
                           kind == LineKind::destination;
      if (!of_lead) look_at(key.lines[i]);
    }
  }

  [[nodiscard]] Listed const* find(std::uint32_t number) const {
    auto const found = listed_.find(number);
    return found == listed_.end() ? nullptr : &found->second;
  }

 private:
  // "5. A. busa Roe          12. A. cusa Roe": a list may have several columns.
  void look_at(SourceLine const& line) {
    auto rest = line.text;
    while (true) {
      auto const label = read_label(rest);
      if (!label || label->family != LabelFamily::digits || label->end != LabelEnd::dot) return;
      auto const words = rest.substr(label->text_at);
      auto const gap = std::min(words.find("  "), words.size());
      add(label->number, words.substr(0, gap), line.number);
      if (gap == words.size()) return;
      rest = trim_left(words.substr(gap));
    }
  }

  // "A. busa Roe", "AUSELLA BUSA Roe, Trans. …"
  void add(std::uint32_t number, std::string_view printed, std::uint32_t line) {
    auto const words = words_of(printed, 2);
    if (words.size() < 2) return;
    auto const epithet = without_closing_marks(words[1]);
    bool const capitals = is_in_capitals(words[0], 3) && is_in_capitals(epithet, 3);
    bool const genus = is_abbreviated(words[0]) || is_capitalised(words[0]);
    if (!genus || !(capitals || is_epithet(epithet))) return;
    auto name = std::string{words[0]} + " " + (capitals ? fold(epithet) : std::string{epithet});
    if (capitals) {
      std::transform(name.begin() + 1, name.begin() + static_cast<std::ptrdiff_t>(words[0].size()),
                     name.begin() + 1,
                     [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    }
    if (is_latin_name(name)) listed_.emplace(number, Listed{std::move(name), line});
  }

  std::unordered_map<std::uint32_t, Listed> listed_;
};

}  // namespace

void take_species_by_number(KeyText const& key, SortedLines const& sorted,
                            std::vector<ReadLead>& reads, std::vector<Finding>& findings) {
  constexpr std::size_t kFewest = 3;
  std::vector<std::size_t> ends;
  std::size_t bare = 0;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    std::string_view const printed = reads[i].lead.destination_printed;
    if (species_number(printed) > 0) {
      ends.push_back(i);
    } else if (!printed.empty() && printed.find_first_not_of("0123456789") == std::string::npos) {
      ++bare;
    }
  }
  if (ends.size() < kFewest || bare == 0) return;
  NumberedSpecies const species{key, sorted};
  Listed const* first = nullptr;
  std::size_t found = 0;
  for (auto const i : ends) {
    auto const* listed = species.find(species_number(reads[i].lead.destination_printed));
    if (listed == nullptr) continue;
    if (first == nullptr) first = listed;
    ++found;
  }
  if (found * 3 < ends.size() * 2) return;
  for (auto const i : ends) {
    auto& read = reads[i];
    auto const* listed = species.find(species_number(read.lead.destination_printed));
    read.to.form = listed == nullptr ? DestinationForm::none : DestinationForm::taxa;
    if (listed != nullptr) read.to.taxa = read_taxa(listed->name);
  }
  Finding finding;
  finding.code = "species-by-number";
  finding.severity = Severity::information;
  finding.file = std::string{key.name};
  finding.place = reads[ends.front()].lead.destination_place;
  finding.printed = reads[ends.front()].lead.destination_printed;
  finding.message = std::to_string(found) +
                    " leads end in the number of a species; it was read as the name that stands "
                    "behind that number, as on line " +
                    std::to_string(first->line);
  finding.remedy = "see whether the numbers are those of that list";
  findings.push_back(std::move(finding));
}

}  // namespace keydrift::printed
