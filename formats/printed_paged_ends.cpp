#include "keydrift/formats/printed_paged_ends.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"

namespace keydrift::printed {
namespace {

// What stands before the page of "… bus (p. 47)", "… bus Roe (p. 47).", "… bus, p. 47."; empty
// where the text ends otherwise.
std::string_view before_page(std::string_view text) {
  if (text.ends_with('.')) text = trim_right(text.substr(0, text.size() - 1));
  if (text.ends_with(')')) {
    auto const open = text.rfind(" (");
    if (open == std::string_view::npos) return {};
    auto const inside = text.substr(open + 2, text.size() - open - 3);
    return starts_with_page(inside) ? trim_right(text.substr(0, open)) : std::string_view{};
  }
  auto const comma = text.rfind(", ");
  if (comma == std::string_view::npos) return {};
  auto const page = text.substr(comma + 2);
  auto const number = page.find(' ');
  bool const last = number != std::string_view::npos && page.rfind(' ') == number &&
                    is_page(page.substr(0, number), page.substr(number + 1));
  return last ? text.substr(0, comma) : std::string_view{};
}

// Begin of the epithet of "… bus (p. 47)", "… bus, new species (p. 47)"; the text's size where it
// ends otherwise.
std::size_t paged_epithet(std::string_view text) {
  auto const none = text.size();
  auto const paged = before_page(text);
  if (paged.empty()) return none;
  auto const before = without_mark_of_new(paged);
  auto begin = last_word_begin(before);
  if (is_authorish(before.substr(begin))) {
    begin = last_word_begin(trim_right(before.substr(0, begin)));
    // "bus van Tichel (p. 47)"
    auto const particle = trim_right(before.substr(begin, before.find(' ', begin) - begin));
    if (begin > 0 && is_particle(particle)) {
      begin = last_word_begin(trim_right(before.substr(0, begin)));
    }
  }
  return is_epithet(before.substr(begin, before.find(' ', begin) - begin)) ? begin : none;
}

// Begin of "bus (p. 4), cus (p. 5) and dus (p. 6)" at the text's end; its size without.
std::size_t paged_list(std::string_view text) {
  auto begin = paged_epithet(text);
  for (auto at = begin; at < text.size();) {
    begin = at;
    auto before = trim_right(text.substr(0, at));
    if (before.ends_with(',')) {
      before.remove_suffix(1);
    } else if (auto const joins = last_word_begin(before); is_separator(before.substr(joins))) {
      before = trim_right(before.substr(0, joins));
    } else {
      break;
    }
    at = paged_epithet(before);
    if (at == before.size()) break;
  }
  return begin;
}

// Nothing but one epithet and its page.
bool is_paged(ReadLead const& read) {
  return read.to.form == DestinationForm::taxa && !read.to.taxa.taxa.empty() &&
         read.to.taxa.taxa.front().genusless && paged_epithet(read.lead.destination_printed) == 0;
}

// Nothing leads on, or a stop apart was taken for leaders: "… bus, p. 4 ."
bool has_no_end(ReadLead const& read) {
  return is_open(read) ||
         (read.to.form == DestinationForm::none && read.lead.destination_printed.empty());
}

// "Both fingers alike bus, p. 4" is no name: of four words, none says a rank.
bool is_sentence_and_epithet(ReadLead const& read) {
  constexpr std::ptrdiff_t kFewestBlanks = 3;
  std::string_view const printed = read.lead.destination_printed;
  auto const begin = paged_epithet(printed);
  auto const words = printed.substr(0, begin);
  return begin > 0 && begin < printed.size() && words.find('.') == std::string_view::npos &&
         std::count(words.begin(), words.end(), ' ') >= kFewestBlanks;
}

}  // namespace

void take_paged_ends(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  constexpr std::size_t kFewestOpen = 5;
  constexpr std::size_t kFewest = 3;
  constexpr std::size_t kShortestWords = 3;  // bytes
  std::size_t paged = 0;
  std::size_t named = 0;
  std::size_t open = 0;  // paged, and not yet known for ends
  for (auto const& read : reads) {
    if (has_no_end(read)) {
      if (paged_epithet(read.lead.text) < read.lead.text.size()) ++open;
    } else if (read.to.form == DestinationForm::taxa && !is_sentence_and_epithet(read)) {
      ++named;
      if (is_paged(read)) ++paged;
    }
  }
  bool const all = open >= kFewestOpen && (open + paged) * 3 >= (open + named) * 2;
  if (!all && (paged < kFewest || paged * 3 < named * 2)) return;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto& read = reads[i];
    bool const genusless = read.to.form == DestinationForm::taxa &&
                           read.leaders != LeaderKind::dots && read.to.taxa.taxa.front().genusless;
    bool const sentence = is_sentence_and_epithet(read);
    if (!genusless && !sentence && !has_no_end(read)) continue;
    auto const joined = cutter.join(i);
    auto const text = trim_right(joined.raw);
    auto const begin = paged_list(text);
    if (begin == text.size() || begin < kShortestWords) continue;
    // "busa busa (p. 4)" is the type's subspecies; in "coil (fig. 2) busa (p. 5)" a bracket parts.
    std::string_view const printed = read.lead.destination_printed;
    auto const own = text.size() - begin;
    bool const same = genusless && printed.size() >= own &&
                      printed.substr(0, printed.size() - own).find(')') == std::string_view::npos;
    auto const words = trim_right(text.substr(0, begin));
    // "A. bus (p. 4)"
    if (same || is_abbreviated(words.substr(last_word_begin(words)))) continue;
    read.leaders = LeaderKind::blank;
    cutter.cut(read, joined, words.size(), begin);
    cutter.say_name_taken(read);
  }
}

}  // namespace keydrift::printed
