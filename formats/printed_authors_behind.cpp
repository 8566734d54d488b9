#include "keydrift/formats/printed_authors_behind.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "Roe", "Torv.", "(Fell.) Torv.", "Roe & Dorn": authors and nothing else.
bool are_authors(std::string_view text) {
  constexpr std::size_t kMostWords = 5;
  auto const words = words_of(text, kMostWords + 1);
  if (words.empty() || words.size() > kMostWords) return false;
  bool const begins = is_upper(code_point_at(text, text.front() == '(' ? 1 : 0).value);
  return begins && std::all_of(words.begin(), words.end(), [](std::string_view word) {
           return is_authorish(word) || is_particle(word);
         });
}

bool is_candidate(ReadLead const& read) {
  if (read.to.form != DestinationForm::taxa || read.to.taxa.taxa.size() != 1) return false;
  auto const& taxon = read.to.taxa.taxa.front();
  bool const species = taxon.genusless || taxon.name.find(' ') != std::string::npos;
  auto const& remark = read.to.remark;
  auto const& printed = read.lead.destination_printed;
  return species && taxon.authorship.empty() && are_authors(remark) &&
         printed.find(", " + remark) != std::string::npos;
}

}  // namespace

void take_authors_behind_commas(std::vector<ReadLead>& reads) {
  constexpr std::size_t kFewest = 3;
  std::size_t species = 0;
  std::size_t count = 0;
  std::size_t stopped = 0;  // "Torv."
  bool told = false;
  std::unordered_set<std::string_view> distinct;
  for (auto const& read : reads) {
    if (read.to.form == DestinationForm::taxa) ++species;
    if (!is_candidate(read)) continue;
    ++count;
    std::string_view const remark = read.to.remark;
    distinct.insert(remark.substr(0, remark.find_last_not_of('.') + 1));
    if (remark.ends_with('.')) ++stopped;
    told = told || remark.starts_with('(') || remark.find('&') != std::string_view::npos ||
           remark.find(". ") != std::string_view::npos;
  }
  if (count < kFewest || count * 3 < species * 2) return;
  // "Torv." among "Dresk" is cut short; where all end so, the stop closes the lead.
  bool const shortened = stopped > 0 && stopped < count;
  if (!told && !shortened && distinct.size() * 2 > count) return;
  for (auto& read : reads) {
    if (!is_candidate(read)) continue;
    read.to.taxa.taxa.front().authorship = std::move(read.to.remark);
    read.to.remark.clear();
    read.lead.taxon_remark.clear();
  }
}

}  // namespace keydrift::printed
