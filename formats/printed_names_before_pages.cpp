#include "keydrift/formats/printed_names_before_pages.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestPageEnds = 2;  // leads that end in a page

// "p. 14", "pp. 42, 44", "page 7–9"
bool is_page_with_number(std::string_view text) {
  auto const word = text.find(' ');
  return word != std::string_view::npos && starts_with_page(text) &&
         text.find_first_not_of("0123456789,.- \xE2\x80\x93", word) == std::string_view::npos;
}

// "Black-shell (Ausella busa) or Southern Shell (Ausella cusa)", "Fluted Slab (Ausella dusa)"
bool ends_in_bracketed_name(std::string_view line) {
  auto const open = line.rfind('(');
  if (open == std::string_view::npos || !line.ends_with(')')) return false;
  return is_upper(code_point_at(line, 0).value) &&
         is_latin_name(line.substr(open + 1, line.size() - open - 2));
}

// "Square Ashling, Ausella busa", "Ashlings, see Key to the Ashlings": capitals, and behind the
// comma what the lead leads to.
bool ends_in_name_behind_comma(std::string_view line) {
  constexpr std::size_t kMostWords = 4;
  auto const comma = line.find(", ");
  if (comma == std::string_view::npos) return false;
  auto const behind = line.substr(comma + 2);
  auto const words = words_of(line.substr(0, comma));
  bool const capitals = std::all_of(words.begin(), words.end(), is_capitalised);
  if (!capitals || words.size() > kMostWords) return false;
  return is_latin_name(behind) || names_a_key(strip_pointer(behind));
}

// Where the name begins that ends the words: with their last line, or behind the words on it.
std::optional<std::size_t> name_begin_at_end(KeyText const& key, JoinedText const& joined,
                                             std::string_view words) {
  auto const last = std::find_if(joined.spans.rbegin(), joined.spans.rend(),
                                 [&](auto const& span) { return span.raw_begin < words.size(); });
  if (last != joined.spans.rend() && last->raw_begin > 0) {
    // "Busnose (Ausella busa) *"
    auto line = trim_right(words.substr(last->raw_begin));
    while (line.ends_with('*')) line = trim_right(line.substr(0, line.size() - 1));
    bool const name = certain_destination(line, key.numbering) || is_name_behind_common_one(line) ||
                      is_latin_name(line) || ends_in_bracketed_name(line) ||
                      ends_in_name_behind_comma(line);
    if (name) return last->raw_begin;
  }
  return trailing_name(words);
}

}  // namespace

void take_names_before_pages(KeyText const& key, LeadCutter& cutter, std::vector<ReadLead>& reads) {
  // Where letters number the couplets, "........ 14" is a page as well.
  bool const bare = key.numbering.family != LabelFamily::digits;
  auto const is_paged = [bare](ReadLead const& read) {
    auto const& end = read.lead.destination_printed;
    return read.leaders == LeaderKind::dots &&
           (is_page_with_number(end) || (bare && is_number_only(end)));
  };
  auto const paged = static_cast<std::size_t>(std::count_if(reads.begin(), reads.end(), is_paged));
  if (paged < kFewestPageEnds) return;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    if (!is_paged(reads[i])) continue;
    auto const joined = cutter.join(i);
    std::string_view const text = joined.raw;
    auto const split = split_at_leader(text, key.numbering);
    auto const begin = name_begin_at_end(key, joined, text.substr(0, split.words_end));
    if (!begin || *begin == 0) continue;
    cutter.cut(reads[i], joined, trim_right(text.substr(0, *begin)).size(), *begin,
               split.words_end);
  }
}

}  // namespace keydrift::printed
