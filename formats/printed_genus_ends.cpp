#include "keydrift/formats/printed_genus_ends.hpp"

#include <array>
#include <map>
#include <set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

std::optional<std::size_t> lone_genus_at_end(std::string_view text) {
  constexpr std::size_t kShortest = 5;  // bytes
  auto const blank = text.rfind(' ');
  if (blank == std::string_view::npos || blank == 0 || text[blank - 1] != '.') return std::nullopt;
  // "… of N. America"
  constexpr std::size_t kShortestWord = 4;
  auto const begin = last_word_begin(text.substr(0, blank));
  auto const before = words_of(text.substr(begin, blank - begin));
  if (before.empty() || before.back().size() <= kShortestWord ||
      !is_lower(code_point_at(before.back(), 0).value)) {
    return std::nullopt;
  }
  auto const name = without_closing_marks(text.substr(blank + 1));
  bool const genus = name.size() >= kShortest && is_plain_word(name) &&
                     is_upper(code_point_at(name, 0).value) && has_strict_latin_ending(fold(name));
  return genus ? std::optional{blank + 1} : std::nullopt;
}

namespace {

struct GenusWithAuthor {
  std::string_view genus;
  std::string_view author;
  std::string_view before;  // what stands in front of the genus
};

// "Alpha Group", "Santa Cruz", "Prairie Vole".
bool is_no_surname(std::string_view word) {
  static constexpr std::array kWords{
      "group"sv, "complex"sv, "section"sv, "series"sv, "island"sv, "islands"sv, "cruz"sv,
      "rica"sv,  "mouse"sv,   "vole"sv,    "shrew"sv,  "bat"sv,    "frog"sv,    "toad"sv,
      "snake"sv, "lizard"sv,  "bird"sv,    "fish"sv,   "beetle"sv, "bee"sv,     "ant"sv,
      "moth"sv,  "fly"sv,     "spider"sv,  "crab"sv,   "snail"sv,  "grass"sv,   "fern"sv,
      "moss"sv,  "lily"sv,    "county"sv,  "river"sv,  "lake"sv,   "valley"sv,  "form"sv};
  return is_one_of(kWords, fold(word));
}

// "Ausella Roe", "Ausella Roe (part)" at the end of the text.
std::optional<GenusWithAuthor> genus_with_author(std::string_view text) {
  text = trim_right(text);
  for (std::string_view const part : {"(part)", "(in part)", "(part.)", "(partim)", "(pars)"}) {
    if (text.ends_with(part)) text = trim_right(text.substr(0, text.size() - part.size()));
  }
  auto const surname = last_word_begin(text);
  if (surname == 0 || !is_capitalised(text.substr(surname))) return std::nullopt;
  auto author = surname;
  auto front = trim_right(text.substr(0, author));
  // "A. B. Roe", and not "A. Busa" for a genus
  for (int initials = 0; initials < 2; ++initials) {
    auto const at = last_word_begin(front);
    if (at == 0 || front.size() - at != 2 || !is_abbreviated(front.substr(at))) break;
    author = at;
    front = trim_right(front.substr(0, at));
  }
  auto const begin = last_word_begin(front);
  auto genus = front.substr(begin);
  while (genus.starts_with('.')) genus.remove_prefix(1);  // ". .Ausella Roe"
  if (!is_capitalised(genus) || !has_epithet_ending(genus) || is_region(fold(genus)) ||
      is_no_surname(text.substr(surname))) {
    return std::nullopt;
  }
  return GenusWithAuthor{genus, text.substr(author), trim_right(front.substr(0, begin))};
}

// "… tibiae hooked at apex", "… at apex..", "… of rostrum (fig. 3)": words that a name may follow.
bool may_end_before_genus(std::string_view before) {
  if (is_species_number(before.substr(last_word_begin(before)))) return false;
  while (before.ends_with('.')) before = trim_right(before.substr(0, before.size() - 1));
  auto const last = code_point_before(before, before.size()).value;
  if (last == ')' || is_digit(last)) return true;
  auto const word = before.substr(last_word_begin(before));
  // "of Ausella Roe" compares or tells a host.
  static constexpr std::array kBefore{"of"sv, "in"sv,  "to"sv,   "on"sv,   "than"sv,  "as"sv,
                                      "by"sv, "and"sv, "with"sv, "from"sv, "genus"sv, "see"sv};
  return is_lower(code_point_at(word, 0).value) && is_plain_word(word) && !is_one_of(kBefore, word);
}

}  // namespace

void GenusAuthors::look() const {
  constexpr std::size_t kLongest = 60;     // bytes of a genus with its author
  constexpr std::size_t kFewest = 2;       // genera of an author that ends lines without leaders
  constexpr std::size_t kFewestOfAll = 4;  // of all such authors
  auto& authors = authors_.emplace();
  std::map<std::string_view, std::set<std::string_view>> genera;  // by author, at ends of lines
  for (auto const& line : lines_) {
    if (auto const end = genus_with_author(line.text)) {
      bool const latin = has_strict_latin_ending(end->genus);
      bool const titled = end->before.empty() || says_genus(fold(end->before));
      if (latin && (titled || may_end_before_genus(end->before))) {
        genera[end->author].insert(end->genus);
      }
    }
    auto const split = split_at_leader(line.text, numbering_);
    auto const destination = line.text.substr(split.destination_begin);
    if (split.kind != LeaderKind::dots || destination.empty() || destination.size() > kLongest) {
      continue;
    }
    auto const read = read_taxa(destination);
    auto const& taxon = read.taxa.front();
    bool const genus = read.taxa.size() == 1 && read.remark.empty() && !taxon.genusless &&
                       is_latin_genus(taxon.name);
    if (genus && !taxon.authorship.empty()) authors.insert(taxon.authorship);
  }
  std::size_t all = 0;
  for (auto const& [author, of_author] : genera) {
    if (of_author.size() >= kFewest) all += of_author.size();
  }
  if (all < kFewestOfAll) return;
  for (auto const& [author, of_author] : genera) {
    if (of_author.size() >= kFewest) habitual_.emplace(author);
  }
}

bool GenusAuthors::is_habitual(std::string_view author) const {
  if (!authors_) look();
  return habitual_.contains(std::string{author});
}

std::optional<std::size_t> GenusAuthors::genus_at_end(std::string_view text) const {
  auto const end = genus_with_author(text);
  if (!end || end->before.empty()) return std::nullopt;
  auto const begin = static_cast<std::size_t>(end->genus.data() - text.data());
  bool const sentence = end->before.ends_with('.') &&
                        !is_abbreviated(end->before.substr(last_word_begin(end->before)));
  if (!authors_) look();
  auto const author = std::string{end->author};
  bool const latin = has_strict_latin_ending(end->genus);
  if (sentence && latin && authors_->contains(author)) return begin;
  return habitual_.contains(author) && may_end_before_genus(end->before) ? std::optional{begin}
                                                                         : std::nullopt;
}

}  // namespace keydrift::printed
