#include "keydrift/formats/printed_names_like_others.hpp"

#include <algorithm>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewOpen = 12;  // leads for each one that leads nowhere

bool is_word_in_capitals(std::string_view word) {
  constexpr std::size_t kShortest = 4;  // bytes; shorter ones are signs
  return word.size() >= kShortest && is_plain_word(word) &&
         std::none_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

// "(Roe)" of a species that was moved is the same person.
std::string_view author_without_stop(std::string_view author) {
  if (author.starts_with('(') && author.ends_with(')')) {
    author = author.substr(1, author.size() - 2);
  }
  if (author.ends_with('.')) author.remove_suffix(1);
  return author;
}

}  // namespace

NamesLikeOthers::NamesLikeOthers(std::vector<ReadLead> const& reads,
                                 std::vector<SourceLine> const& lines)
    : of_lines_{lines} {
  std::size_t epithets = 0;
  std::size_t capitals = 0;
  std::size_t named = 0;
  std::size_t commas = 0;
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::taxa) continue;
    ++named;
    auto const& taxon = read.to.taxa.taxa.front();
    authors_.insert(std::string{author_without_stop(taxon.authorship)});
    // "bus, Roe."
    auto const& remark = read.to.remark;
    if (taxon.genusless && taxon.authorship.empty() && is_capitalised(remark)) {
      authors_.insert(std::string{author_without_stop(remark)});
    }
    if (taxon.genusless) ++epithets;
    auto const printed = authored_end(read.lead.destination_printed);
    if (taxon.genusless && printed.latin && printed.comma) ++commas;
    auto const words = words_of(read.lead.destination_printed);
    if (is_word_in_capitals(without_end(words.front()))) ++capitals;
  }
  epithets_ = epithets * 3 > named * 2;
  auto const open = static_cast<std::size_t>(std::count_if(reads.begin(), reads.end(), is_open));
  few_open_ = open * kFewOpen <= reads.size();
  constexpr std::size_t kFewest = 3;
  std::size_t authored = 0;     // leads that end in the author of a name, as lines tell
  std::size_t open_commas = 0;  // those that may end in "bus, Roe"
  for (auto const& read : reads) {
    auto const end = is_open(read) ? authored_end(read.lead.text) : AuthoredEnd{};
    if (end.latin && end.comma) ++open_commas;
    if (end.latin && of_lines_.knows(end)) ++authored;
  }
  auto const likely = epithets + authored;
  often_epithets_ = likely >= kFewest && likely * 2 >= named + authored;
  capitals_ = capitals * 3 > named * 2;
  commas += open_commas;
  commas_ = commas > kFewest && commas * 3 > (named + open_commas) * 2;
}

std::optional<std::size_t> NamesLikeOthers::name_begin(JoinedText const& joined) const {
  constexpr std::size_t kShortest = 3;  // bytes of words before a name
  std::string_view const text = joined.raw;
  // "… two foveae" / " bus, n. sp."
  auto const own = joined.spans.size() < 2 ? 0 : joined.spans.back().raw_begin;
  if (epithets_ && own > 0 && is_genusless_name(trim(text.substr(own)))) return own;
  auto const begin = last_word_begin(trim_right(text));
  if (begin < kShortest) return std::nullopt;
  auto const name = trim_right(text.substr(begin));
  // "… a single female sp. A"
  constexpr std::size_t kLongestCode = 2;  // bytes
  auto const mark = last_word_begin(trim_right(text.substr(0, begin)));
  bool const code = name.size() <= kLongestCode && !is_lower(code_point_at(name, 0).value);
  if (epithets_ && code && mark > 0 && trim_right(text.substr(mark, begin - mark)) == "sp.") {
    return mark;
  }
  // "… with five stripes. Maximilianae Roe"
  auto const author = last_word_begin(trim_right(text));
  if (often_epithets_ && author > kShortest && is_known_author(trim_right(text.substr(author)))) {
    auto const before = trim_right(text.substr(0, author));
    auto const person = last_word_begin(before);
    if (person > kShortest && is_epithet_of_person(before.substr(person))) return person;
  }
  // "… exceeding the diameter bus Roe.": other leads name this author.
  if (auto const end = authored_end(text); end.begin > kShortest && (often_epithets_ || commas_)) {
    // "… clubbed bus, Roe.", as nearly all others
    bool const alike = commas_ && end.latin && end.comma;
    bool const known = end.latin && is_known_author(end.author);
    if (alike || known || of_lines_.knows(end)) return end.begin;
  }
  // "… apex pale (fig. 16, d) ferrandi": hardly a lead is left that leads nowhere.
  constexpr std::size_t kShortestGenitive = 6;  // bytes
  auto const before = code_point_before(text, trim_right(text.substr(0, begin)).size()).value;
  bool const closed = before == ')' || before == ']' || before == '.';
  if (epithets_ && few_open_ && closed && name.size() >= kShortestGenitive && is_genitive(name)) {
    return begin;
  }
  bool const apart = is_blank(code_point_before(text, begin - 1).value);
  bool const bare = epithets_ && apart && is_bare_epithet(name);
  return bare || (capitals_ && is_word_in_capitals(name)) ? std::optional{begin} : std::nullopt;
}

// "Ogbourne" and "Ogb." are the same author.
bool NamesLikeOthers::is_known_author(std::string_view name) const {
  constexpr std::size_t kShortest = 3;  // bytes
  name = author_without_stop(name);
  if (name.size() < kShortest || !is_upper(code_point_at(name, 0).value)) return false;
  auto const longer = authors_.lower_bound(name);
  if (longer != authors_.end() && longer->starts_with(name)) return true;
  for (auto size = kShortest; size < name.size(); ++size) {
    if (authors_.contains(name.substr(0, size))) return true;
  }
  return false;
}

}  // namespace keydrift::printed
