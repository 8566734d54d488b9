#include "keydrift/formats/printed_subspecies_ends.hpp"

#include <cstddef>
#include <set>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// The one epithet that the lead leads to; empty elsewhere.
std::string_view lone_epithet(ReadLead const& read) {
  auto const& taxa = read.to.taxa.taxa;
  bool const lone = read.to.form == DestinationForm::taxa && taxa.size() == 1 &&
                    taxa.front().genusless && taxa.front().name.find(' ') == std::string::npos;
  return lone ? std::string_view{taxa.front().name} : std::string_view{};
}

// Where the word begins that stands before the destination, if it may be an epithet, in the joined
// text; npos elsewhere.
std::size_t epithet_before(std::string_view text, std::string_view epithet) {
  auto const begin = text.rfind(epithet);
  if (begin == std::string_view::npos || begin == 0) return std::string_view::npos;
  auto const before = trim_right(text.substr(0, begin));
  auto const word = last_word_begin(before);
  return word > 0 && is_latin_epithet(before.substr(word)) && !ends_item(before.substr(word))
             ? word
             : std::string_view::npos;
}

std::string_view word_from(std::string_view text, std::size_t at) {
  return text.substr(at, text.find(' ', at) - at);
}

}  // namespace

void take_subspecies_at_ends(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  std::set<std::string> species;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const epithet = lone_epithet(reads[i]);
    if (epithet.empty() || reads[i].leaders != LeaderKind::blank) continue;
    auto const joined = cutter.join(i);
    auto const at = epithet_before(joined.raw, epithet);
    if (at == std::string_view::npos) continue;
    if (word_from(joined.raw, at) == epithet) species.emplace(epithet);
  }
  if (species.empty()) return;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const epithet = lone_epithet(reads[i]);
    if (epithet.empty()) continue;
    auto const joined = cutter.join(i);
    std::string_view const text = joined.raw;
    auto const at = epithet_before(text, epithet);
    if (at == std::string_view::npos || !species.contains(std::string{word_from(text, at)})) {
      continue;
    }
    cutter.cut(reads[i], joined, trim_right(text.substr(0, at)).size(), at);
  }
}

}  // namespace keydrift::printed
