#include "keydrift/formats/printed_misread_genera.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_misread_names.hpp"
#include "keydrift/formats/printed_slips.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShortestMisreadGenus = 6;  // letters; shorter names are alike by chance

// The genus of a species that a lead leads to, as printed in full; empty for other names.
std::string_view genus_led_to(TaxonReading const& taxon) {
  auto const words = words_of(taxon.name, 2);
  bool const species = !taxon.literal && !taxon.genusless && words.size() == 2;
  return species && words[0].size() >= kShortestMisreadGenus && is_capitalised(words[0]) &&
                 !is_abbreviated(words[0])
             ? words[0]
             : std::string_view{};
}

std::size_t times_named_in(std::string_view text, std::string_view word) {
  std::size_t times = 0;
  for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    ++times;
  }
  return times;
}

// The number of the line of a list or an account that begins with the species, behind its number or
// not; 0 where none does.
std::uint32_t line_headed_by(std::vector<SourceLine> const& lines, std::string_view species) {
  auto const found = std::find_if(lines.begin(), lines.end(), [species](SourceLine const& line) {
    auto text = line.text;
    auto const number = text.find_first_not_of("0123456789. ");
    if (number != std::string_view::npos) text.remove_prefix(number);
    return text.starts_with(species) && !is_letter(code_point_at(text, species.size()).value);
  });
  return found == lines.end() ? 0 : found->number;
}

// Genera that two ends at least have, found by those that scanning may have made of them.
class UsedGenera {
 public:
  explicit UsedGenera(std::vector<ReadLead> const& reads) {
    for (auto const& read : reads) {
      for (auto const& taxon : read.to.taxa.taxa) {
        if (auto const genus = genus_led_to(taxon); !genus.empty()) ++uses_[std::string{genus}];
      }
    }
    for (auto const& [genus, times] : uses_) {
      if (times < 2) continue;
      words_.add(fold(genus));
      often_.push_back(genus);
    }
  }
  [[nodiscard]] std::size_t uses(std::string const& genus) const {
    auto const found = uses_.find(genus);
    return found == uses_.end() ? 0 : found->second;
  }
  // nullptr where none is like it, or several are.
  [[nodiscard]] std::string const* like(std::string const& genus) const {
    auto const found = words_.like(fold(genus));
    return found.size() == 1 ? &often_[found.front()] : nullptr;
  }

 private:
  std::map<std::string, std::size_t> uses_;
  MisreadWords words_;
  std::vector<std::string> often_;  // in the order of words_
};

}  // namespace

void mend_misread_genera(KeyText const& key, std::vector<ReadLead>& reads,
                         std::vector<Finding>& findings) {
  UsedGenera const genera{reads};
  for (auto& read : reads) {
    for (auto& taxon : read.to.taxa.taxa) {
      std::string const genus{genus_led_to(taxon)};
      if (genus.empty() || genera.uses(genus) > 1) continue;
      auto const* meant = genera.like(genus);
      if (meant == nullptr || times_named_in(key.text, genus) > 1) continue;
      auto const whole = *meant + taxon.name.substr(genus.size());
      auto const line = line_headed_by(key.lines, whole);
      if (line == 0) continue;
      taxon.name = whole;
      findings.push_back(misread_name(key, read, genus, *meant, line));
    }
  }
}

}  // namespace keydrift::printed
