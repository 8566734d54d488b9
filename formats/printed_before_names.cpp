#include "keydrift/formats/printed_before_names.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// Where the destination begins in the lead's text.
std::size_t begin_of_read_destination(std::string_view text, ReadLead const& read) {
  auto const behind = words_of(read.lead.destination_printed).size();
  auto const words = words_of(text);
  if (behind == 0 || behind > words.size()) return text.size();
  return static_cast<std::size_t>(words[words.size() - behind].data() - text.data());
}

// The number in "12", "12.", "1)", "(2)", "3a.", "7.1"; 0 for any other word.
std::uint32_t number_of_species_word(std::string_view word) {
  constexpr std::size_t kMostDigits = 4;
  while (!word.empty() && "(["sv.find(word.front()) != std::string_view::npos) {
    word.remove_prefix(1);
  }
  while (!word.empty() && ".)]"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  if (word.size() > 1 && is_lower(static_cast<unsigned char>(word.back()))) word.remove_suffix(1);
  auto const digits = word.substr(0, word.find('.'));
  bool const number = !digits.empty() && digits.size() <= kMostDigits &&
                      word.find_first_not_of("0123456789."sv) == std::string_view::npos;
  return number ? number_of(digits) : 0;
}

// "figs 14," "3 and", "A. III,": the number behind is another of a list, or counts what was named.
bool lists_numbers(std::string_view word) {
  if (word.starts_with('(')) word.remove_prefix(1);  // "(fig. 4). busa"
  static constexpr std::array kLinks{"and"sv, "or"sv,   "to"sv,   "und"sv,   "oder"sv, "bis"sv,
                                     "et"sv,  "ou"sv,   "y"sv,    "e"sv,     "o"sv,    "&"sv,
                                     "fig"sv, "figs"sv, "fig."sv, "figs."sv, "abb."sv, "pl."sv};
  return ends_item(word) || is_one_of(kLinks, fold(word));
}

struct Numbered {
  std::size_t lead{};
  std::size_t number_at{};  // in the lead's text
  std::size_t name_at{};    // behind the number
  std::uint32_t number{};
  bool within{false};  // taken with the destination so far
  bool listed{false};  // rather the words'
  bool bare{false};    // nothing but digits
};

std::optional<Numbered> number_before_name(std::size_t lead, std::string_view text,
                                           ReadLead const& read) {
  auto const begin = begin_of_read_destination(text, read);
  if (begin == 0 || begin >= text.size()) return std::nullopt;
  Numbered found;
  found.lead = lead;
  auto const first = words_of(text.substr(begin), 2);
  if (first.size() > 1 && number_of_species_word(first[0]) > 0) {
    found.within = true;
    found.number_at = begin;
    found.name_at = static_cast<std::size_t>(first[1].data() - text.data());
    found.number = number_of_species_word(first[0]);
  } else {
    auto const before = trim_right(text.substr(0, begin));
    found.number_at = last_word_begin(before);
    found.name_at = begin;
    found.number = found.number_at > 0 ? number_of_species_word(before.substr(found.number_at)) : 0;
  }
  if (found.number == 0) return std::nullopt;
  auto const token =
      text.substr(found.number_at, text.find(' ', found.number_at) - found.number_at);
  found.bare = token.find_first_not_of("0123456789"sv) == std::string_view::npos;
  auto const words = trim_right(text.substr(0, found.number_at));
  found.listed = !words.empty() && lists_numbers(words.substr(last_word_begin(words)));
  return found;
}

// "… externo tantum spinulosa." / "5. Ovipositor brevis" where other names bear the numbers of
// their species: the last of the words, above the couplet that the lead goes on with.
void take_epithets_for_words(SortedLines const& sorted, LeadCutter& cutter,
                             std::vector<ReadLead>& reads) {
  for (std::size_t i = 0; i + 1 < reads.size(); ++i) {
    auto& read = reads[i];
    auto const& taxa = read.to.taxa.taxa;
    bool const epithet = read.to.form == DestinationForm::taxa && taxa.size() == 1 &&
                         taxa.front().genusless && taxa.front().authorship.empty() &&
                         read.leaders == LeaderKind::blank && read.to.remark.empty();
    if (!epithet || sorted.leads[i].destination_told) continue;
    auto const& here = sorted.leads[i].label;
    auto const& next = sorted.leads[i + 1].label;
    bool const opens = !here.is_dash() && !next.is_dash() && next.number > here.number;
    if (!opens) continue;
    auto const joined = cutter.join(i);
    if (number_before_name(i, joined.raw, read)) continue;
    read.leaders = LeaderKind::none;
    auto const size = trim_right(joined.raw).size();
    cutter.cut(read, joined, size, size);
  }
}

// The words without a dash or a colon that parted them from the number.
std::size_t without_parting_sign(std::string_view words) {
  auto const whole = trim_right(words);
  auto const last = code_point_before(whole, whole.size());
  bool const apart = whole.size() > last.length && whole[whole.size() - last.length - 1] == ' ';
  if (is_dash(last.value) && apart)
    return trim_right(whole.substr(0, whole.size() - last.length)).size();
  if (last.value == ':') return whole.size() - 1;
  return whole.size();
}

}  // namespace

void settle_species_numbers(SortedLines const& sorted, LeadCutter& cutter,
                            std::vector<ReadLead>& reads) {
  std::size_t named = 0;
  std::vector<Numbered> found;
  std::size_t numbered = 0;
  std::unordered_set<std::uint32_t> distinct;
  bool counted = true;  // each number is the one before and one
  std::uint32_t last = 0;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const& read = reads[i];
    if (read.to.form != DestinationForm::taxa) continue;
    auto const joined = cutter.join(i);
    auto const one = number_before_name(i, joined.raw, read);
    // "… in nests. 5." / "A. busa": the name has a line of its own, its number stands above.
    bool const told = sorted.leads[i].destination_told;
    bool const above = told && one && !one->within && !one->bare && !one->listed;
    if (told && !above) continue;
    ++named;
    bool const plain =
        above || read.leaders == LeaderKind::blank || read.leaders == LeaderKind::dash;
    if (!one || (!plain && !one->within)) continue;
    if (plain) found.push_back(*one);
    if (one->listed) continue;
    ++numbered;
    counted = counted && (last == 0 || one->number == last + 1);
    last = one->number;
    distinct.insert(one->number);
  }
  bool const rule = numbered >= 2 && numbered * 3 >= named * 2 && distinct.size() == numbered;
  bool const seldom = numbered * 3 < named;
  constexpr std::size_t kFewestBare = 4;
  if (rule && numbered >= kFewestBare && numbered * 5 >= named * 4) {
    take_epithets_for_words(sorted, cutter, reads);
  }
  for (auto const& one : found) {
    bool const theirs = rule && (!one.bare || counted || numbered >= kFewestBare);
    if (theirs == one.within || (!theirs && !one.listed && !seldom)) continue;
    auto const joined = cutter.join(one.lead);
    auto const words = std::string_view{joined.raw};
    if (theirs) {
      cutter.cut(reads[one.lead], joined, without_parting_sign(words.substr(0, one.number_at)),
                 one.number_at);
    } else {
      cutter.cut(reads[one.lead], joined, trim_right(words.substr(0, one.name_at)).size(),
                 one.name_at);
    }
  }
}

void drop_signs_before_ends(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  constexpr auto kSigns = ">=»"sv;
  constexpr std::size_t kFewest = 3;
  auto const sign_of = [&](ReadLead const& read) {
    std::string_view const words = read.lead.text;
    auto const last = last_word_begin(words);
    auto const sign = words.substr(last);
    bool const may_be = last > 0 && read.leaders == LeaderKind::blank &&
                        read.to.form != DestinationForm::none && !sign.empty() &&
                        kSigns.find(sign) != std::string_view::npos;
    return may_be ? sign : std::string_view{};
  };
  std::size_t ends = 0;
  std::unordered_map<std::string, std::size_t> uses;
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::none) ++ends;
    if (auto const sign = sign_of(read); !sign.empty()) ++uses[std::string{sign}];
  }
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const sign = sign_of(reads[i]);
    if (sign.empty()) continue;
    auto const count = uses[std::string{sign}];
    if (count < kFewest || count * 4 < ends * 3) continue;
    auto const joined = cutter.join(i);
    std::string_view const text = joined.raw;
    auto const begin = begin_of_read_destination(text, reads[i]);
    auto const words = trim_right(text.substr(0, begin));
    cutter.cut(reads[i], joined, trim_right(words.substr(0, words.size() - sign.size())).size(),
               begin);
  }
}

}  // namespace keydrift::printed
