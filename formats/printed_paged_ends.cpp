#include "keydrift/formats/printed_paged_ends.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"

namespace keydrift::printed {
namespace {

// "47": of two to four digits.
bool is_bare_page(std::string_view text) {
  return text.size() >= 2 && text.size() <= 4 && only_figures(text);
}

// How the pages of a key are printed.
enum class Pages : std::uint8_t { marked, bare_as_well };

// What stands before the page of "… bus (p. 47)", "… bus Roe (p. 47).", "… bus, p. 47.", and of
// "… bus, 47." where such are the habit; empty where the text ends otherwise.
std::string_view before_page_of(std::string_view text, Pages pages) {
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
  if (pages == Pages::bare_as_well && is_bare_page(page)) return text.substr(0, comma);
  bool const last = number != std::string_view::npos && page.rfind(' ') == number &&
                    is_page(page.substr(0, number), page.substr(number + 1));
  return last ? text.substr(0, comma) : std::string_view{};
}

// Begin of the word before the author that begins at `at`, before the first of "Roe and Dorn".
std::size_t before_first_author(std::string_view text, std::size_t at) {
  auto const begin = last_word_begin(trim_right(text.substr(0, at)));
  if (!is_separator(trim_right(text.substr(begin, at - begin)))) return begin;
  auto const authors = trim_right(text.substr(0, begin));
  auto const first = last_word_begin(authors);
  if (!is_authorish(authors.substr(first))) return begin;
  return last_word_begin(trim_right(text.substr(0, first)));
}

// What "Dorni" of "… delicate striae, Dorni, p. 4" is.
enum class Capitals : std::uint8_t { honour_persons, name_authors };

// "… delicate striae, Dorni, p. 4": older works honour persons with a capital.
bool honours_person(std::string_view text, std::size_t at) {
  constexpr std::size_t kShortest = 5;  // bytes
  auto const word = text.substr(at);
  if (!trim_right(text.substr(0, at)).ends_with(',') || word.size() < kShortest) return false;
  return is_epithet_of_person(word) || (is_capitalised(word) && word.ends_with('i'));
}

// Begin of the epithet of "… bus (p. 47)", "… bus, new species (p. 47)"; the text's size where it
// ends otherwise.
std::size_t paged_epithet(std::string_view text, Pages pages,
                          Capitals capitals = Capitals::honour_persons) {
  auto const none = text.size();
  auto const paged = before_page_of(text, pages);
  if (paged.empty()) return none;
  auto const before = without_mark_of_new(paged);
  auto begin = last_word_begin(before);
  if (capitals == Capitals::honour_persons && honours_person(before, begin)) return begin;
  if (is_authorish(before.substr(begin))) {
    begin = before_first_author(before, begin);
    // "bus van Tichel (p. 47)"
    auto const particle = trim_right(before.substr(begin, before.find(' ', begin) - begin));
    if (begin > 0 && is_particle(particle)) {
      begin = last_word_begin(trim_right(before.substr(0, begin)));
    }
  }
  auto const epithet = before.substr(begin, before.find(' ', begin) - begin);
  if (!is_epithet(epithet)) return none;
  // "busa busa Roe (p. 47)", the subspecies of the type
  auto const species = trim_right(before.substr(0, begin));
  auto const first = last_word_begin(species);
  return species.substr(first) == epithet ? first : begin;
}

// Begin of "bus (p. 4), cus (p. 5) and dus (p. 6)" at the text's end; its size without.
std::size_t paged_list(std::string_view text, Pages pages, Capitals capitals) {
  auto begin = paged_epithet(text, pages, capitals);
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
    at = paged_epithet(before, pages);
    if (at == before.size()) break;
  }
  return begin;
}

using Epithets = std::set<std::string, std::less<>>;

Epithets epithets_led_to(std::vector<ReadLead> const& reads) {
  Epithets found;
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::taxa || read.to.taxa.taxa.empty()) continue;
    auto const& taxon = read.to.taxa.taxa.front();
    if (taxon.genusless) found.insert(taxon.name);
  }
  return found;
}

// Begin of "busa minor, p. 271." on a line of its own, of which the subspecies begins at `begin`,
// where another lead leads to the species.
std::size_t with_species(JoinedText const& joined, std::string_view text, std::size_t begin,
                         Epithets const& known) {
  auto const line = joined.spans.back().raw_begin;
  if (line == 0 || line >= begin || begin == text.size()) return begin;
  return known.contains(trim_right(text.substr(line, begin - line))) ? line : begin;
}

using WordCounts = std::map<std::string, std::size_t, std::less<>>;

// How many leads have the word before the page at their end.
WordCounts count_last_words(std::vector<ReadLead> const& reads, Pages pages) {
  WordCounts counts;
  for (auto const& read : reads) {
    auto const& end =
        read.lead.destination_printed.empty() ? read.lead.text : read.lead.destination_printed;
    auto const before = before_page_of(end, pages);
    if (!before.empty()) ++counts[std::string{before.substr(last_word_begin(before))}];
  }
  return counts;
}

// "Rossi, p. 4" where another lead ends so: a person is honoured once, an author named often.
bool names_author_again(std::string_view end, WordCounts const& counts, Pages pages) {
  if (!is_capitalised(end)) return false;
  auto const before = before_page_of(end, pages);
  auto const found = counts.find(before);
  return found != counts.end() && found->second > 1;
}

// Nothing but one epithet and its page.
bool is_paged(ReadLead const& read, Pages pages) {
  return read.to.form == DestinationForm::taxa && !read.to.taxa.taxa.empty() &&
         read.to.taxa.taxa.front().genusless &&
         paged_epithet(read.lead.destination_printed, pages) == 0;
}

// Nothing leads on, or a stop apart was taken for leaders: "… bus, p. 4 ."
bool has_no_end(ReadLead const& read) {
  return is_open(read) ||
         (read.to.form == DestinationForm::none && read.lead.destination_printed.empty());
}

// "… carmine busi Roe and Dorn (p. 4)": the authors were taken for genera.
bool may_be_authors_alone(ReadLead const& read) {
  auto const& taxa = read.to.taxa.taxa;
  return read.to.form == DestinationForm::taxa && read.leaders != LeaderKind::dots &&
         !taxa.empty() && std::all_of(taxa.begin(), taxa.end(), [](TaxonReading const& taxon) {
           return !taxon.genusless && taxon.authorship.empty() &&
                  taxon.name.find(' ') == std::string::npos;
         });
}

// "Both fingers alike bus, p. 4" is no name: of four words, none says a rank.
bool is_sentence_and_epithet(ReadLead const& read, Pages pages) {
  constexpr std::ptrdiff_t kFewestBlanks = 3;
  std::string_view const printed = read.lead.destination_printed;
  auto const begin = paged_epithet(printed, pages);
  auto const words = printed.substr(0, begin);
  if (begin == 0 || begin == printed.size() || words.find('.') != std::string_view::npos) {
    return false;
  }
  // "emargination busa (Roe) (p. 4)", of which the page became a part of the name.
  bool const unread = read.to.taxa.taxa.size() == 1 && read.to.taxa.taxa.front().name == printed;
  return unread || std::count(words.begin(), words.end(), ' ') >= kFewestBlanks;
}

// Leads whose dots lead to "auratus, 173.".
Pages pages_of(std::vector<ReadLead> const& reads) {
  constexpr std::size_t kFewest = 3;
  std::size_t named = 0;
  std::size_t bare = 0;
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::taxa || read.leaders != LeaderKind::dots) continue;
    ++named;
    std::string_view const printed = read.lead.destination_printed;
    bool const marked = paged_epithet(printed, Pages::marked) < printed.size();
    if (!marked && is_paged(read, Pages::bare_as_well)) ++bare;
  }
  return bare >= kFewest && bare * 3 >= named * 2 ? Pages::bare_as_well : Pages::marked;
}

}  // namespace

void take_paged_ends(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  constexpr std::size_t kFewestOpen = 5;
  constexpr std::size_t kFewest = 3;
  constexpr std::size_t kShortestWords = 3;  // bytes
  auto const pages = pages_of(reads);
  std::size_t paged = 0;
  std::size_t named = 0;
  std::size_t open = 0;  // paged, and not yet known for ends
  for (auto const& read : reads) {
    if (has_no_end(read)) {
      if (paged_epithet(read.lead.text, pages) < read.lead.text.size()) ++open;
    } else if (read.to.form == DestinationForm::taxa && !is_sentence_and_epithet(read, pages)) {
      ++named;
      if (is_paged(read, pages)) ++paged;
    }
  }
  bool const all = open >= kFewestOpen && (open + paged) * 3 >= (open + named) * 2;
  if (!all && (paged < kFewest || paged * 3 < named * 2)) return;
  auto const known = epithets_led_to(reads);
  auto const ends = count_last_words(reads, pages);
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto& read = reads[i];
    bool const genusless = read.to.form == DestinationForm::taxa &&
                           read.leaders != LeaderKind::dots && read.to.taxa.taxa.front().genusless;
    bool const sentence = is_sentence_and_epithet(read, pages);
    bool const authors = may_be_authors_alone(read);
    if (!genusless && !sentence && !authors && !has_no_end(read)) continue;
    auto const joined = cutter.join(i);
    auto const text = trim_right(joined.raw);
    auto list = paged_list(text, pages, Capitals::honour_persons);
    if (names_author_again(text.substr(list), ends, pages)) {
      list = paged_list(text, pages, Capitals::name_authors);
    }
    auto const begin = with_species(joined, text, list, known);
    if (begin == text.size() || begin < kShortestWords) continue;
    // "busa busa (p. 4)" is the type's subspecies; in "coil (fig. 2) busa (p. 5)" a bracket parts.
    std::string_view const printed = read.lead.destination_printed;
    auto const own = text.size() - begin;
    auto const epithet = text.substr(begin, text.find(' ', begin) - begin);
    if (authors && (own <= printed.size() || !has_epithet_ending(epithet))) continue;
    bool const same = genusless && printed.size() >= own &&
                      printed.substr(0, printed.size() - own).find(')') == std::string_view::npos &&
                      !(printed.size() > own && honours_person(before_page_of(text, pages), begin));
    auto const words = trim_right(text.substr(0, begin));
    // "A. bus (p. 4)"
    if (same || is_abbreviated(words.substr(last_word_begin(words)))) continue;
    read.leaders = LeaderKind::blank;
    cutter.cut(read, joined, words.size(), begin);
    cutter.say_name_taken(read);
  }
}

}  // namespace keydrift::printed
