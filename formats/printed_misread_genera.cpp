#include "keydrift/formats/printed_misread_genera.hpp"

#include <map>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_slips.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShortest = 6;  // letters; shorter names are alike by chance

// The genus of a species that a lead leads to, as printed in full; empty for other names.
std::string_view genus_of(TaxonReading const& taxon) {
  auto const words = words_of(taxon.name, 2);
  bool const species = !taxon.literal && !taxon.genusless && words.size() == 2;
  return species && words[0].size() >= kShortest && is_capitalised(words[0]) &&
                 !is_abbreviated(words[0])
             ? words[0]
             : std::string_view{};
}

std::size_t times_in(std::string_view text, std::string_view word) {
  std::size_t times = 0;
  for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    ++times;
  }
  return times;
}

}  // namespace

void mend_misread_genera(KeyText const& key, std::vector<ReadLead>& reads,
                         std::vector<Finding>& findings) {
  std::map<std::string, std::size_t, std::less<>> uses;
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      if (auto const genus = genus_of(taxon); !genus.empty()) ++uses[std::string{genus}];
    }
  }
  auto const meant_by = [&uses](std::string const& genus) {
    std::string const* found = nullptr;
    for (auto const& [other, times] : uses) {
      if (times < 2 || !may_be_misread(fold(genus), fold(other))) continue;
      if (found != nullptr) return static_cast<std::string const*>(nullptr);
      found = &other;
    }
    return found;
  };
  for (auto& read : reads) {
    for (auto& taxon : read.to.taxa.taxa) {
      std::string const genus{genus_of(taxon)};
      if (genus.empty() || uses[genus] > 1) continue;
      auto const* meant = meant_by(genus);
      if (meant == nullptr || times_in(key.text, genus) > 1) continue;
      auto const whole = *meant + taxon.name.substr(genus.size());
      if (key.text.find(whole) == std::string_view::npos) continue;
      taxon.name = whole;
      Finding finding;
      finding.code = "misread-name";
      finding.severity = Severity::warning;
      finding.file = std::string{key.name};
      finding.place = read.lead.destination_place;
      finding.printed = read.lead.destination_printed;
      finding.message = "\"" + genus + "\" was read as \"" + *meant + "\", as the text has \"" +
                        whole + "\" and " + std::to_string(uses[*meant]) +
                        " other ends; scanning confuses such letters";
      finding.remedy = "compare the name with the original; print the genus that is meant";
      findings.push_back(std::move(finding));
    }
  }
}

}  // namespace keydrift::printed
