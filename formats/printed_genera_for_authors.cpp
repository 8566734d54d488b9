#include "keydrift/formats/printed_genera_for_authors.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestAuthorGenera = 2;   // genera that look like authors
constexpr std::size_t kFewestEndingAlone = 3;    // genera that other leads end in
constexpr std::size_t kShortestAuthorGenus = 6;  // bytes of a genus

// The last word of a name without a genus, its author as it was read, or what stands behind the
// figure of a character: "apicale Oecetopsis", "ventrale (fig. 14) Potamocharis".  Empty where no
// word with a capital stands there.
std::string_view last_capital(ReadLead const& read) {
  auto const& taxa = read.to.taxa.taxa;
  bool const one =
      read.to.form == DestinationForm::taxa && taxa.size() == 1 && taxa.front().genusless;
  if (!one) return {};
  auto const printed = trim_right(without_full_stop(read.lead.destination_printed));
  auto const last = printed.substr(last_word_begin(printed));
  return last.size() < printed.size() && is_capitalised(last) ? last : std::string_view{};
}

bool may_be_author_genus(std::string_view word) {
  return word.size() >= kShortestAuthorGenus && is_capitalised(word) && is_plain_word(word) &&
         has_strict_latin_ending(fold(word));
}

}  // namespace

void take_genera_for_authors(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  std::map<std::string, std::size_t> authors;
  for (auto const& read : reads) {
    if (auto const author = last_capital(read); !author.empty()) ++authors[std::string{author}];
  }
  std::size_t genera = 0;
  std::size_t others = 0;
  for (auto const& [author, times] : authors) {
    if (times == 1 && may_be_author_genus(author)) {
      ++genera;
    } else {
      others += times;
    }
  }
  auto const alone = std::count_if(reads.begin(), reads.end(), [](ReadLead const& read) {
    auto const& taxa = read.to.taxa.taxa;
    return read.to.form == DestinationForm::taxa && taxa.size() == 1 &&
           may_be_author_genus(taxa[0].name);
  });
  bool const many =
      genera >= kFewestAuthorGenera && static_cast<std::size_t>(alone) >= kFewestEndingAlone;
  if (!many || others * 2 > genera) return;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const author = std::string{last_capital(reads[i])};
    if (author.empty() || authors[author] > 1 || !may_be_author_genus(author)) continue;
    auto const joined = cutter.join(i);
    std::string_view const text = joined.raw;
    auto const begin = text.rfind(author);
    if (begin == std::string_view::npos || begin == 0) continue;
    cutter.cut(reads[i], joined, trim_right(text.substr(0, begin)).size(), begin);
  }
}

}  // namespace keydrift::printed
