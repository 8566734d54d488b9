#include "keydrift/formats/printed_species_by_number.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_numbered_species.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// 5 of "No. 5", "Nr. 5", "n° 5", "Sp. 5"; 0 for any other end.
std::uint32_t marked_species_number(std::string_view end) {
  static constexpr std::array kMarks{"no"sv, "nr"sv,      "n°"sv,      "nº"sv,     "№"sv,
                                     "sp"sv, "species"sv, "especie"sv, "espèce"sv, "art"sv};
  auto const words = words_of(end, 3);
  if (words.size() != 2) return 0;
  auto mark = words[0];
  if (mark.ends_with('.')) mark.remove_suffix(1);
  auto digits = words[1];
  if (digits.ends_with('.')) digits.remove_suffix(1);
  auto const number = read_reference(digits);
  bool const plain = number && only_figures(digits);
  return plain && is_one_of(kMarks, fold(mark)) ? number->number : 0;
}

}  // namespace

void take_species_by_number(KeyText const& key, SortedLines const& sorted,
                            std::vector<ReadLead>& reads, std::vector<Finding>& findings) {
  constexpr std::size_t kFewest = 3;
  std::vector<std::size_t> ends;
  std::size_t bare = 0;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    std::string_view const printed = reads[i].lead.destination_printed;
    if (marked_species_number(printed) > 0) {
      ends.push_back(i);
    } else if (!printed.empty() && only_figures(printed)) {
      ++bare;
    }
  }
  if (ends.size() < kFewest || bare == 0) return;
  NumberedSpecies const species{key, sorted};
  ListedSpecies const* first = nullptr;
  std::size_t found = 0;
  for (auto const i : ends) {
    auto const* listed = species.find(marked_species_number(reads[i].lead.destination_printed));
    if (listed == nullptr) continue;
    if (first == nullptr) first = listed;
    ++found;
  }
  if (found * 3 < ends.size() * 2) return;
  for (auto const i : ends) {
    auto& read = reads[i];
    auto const* listed = species.find(marked_species_number(read.lead.destination_printed));
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
