#include "keydrift/formats/printed_common_names.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostCommonWords = 5;

struct PartedNames {
  std::string_view front;
  std::string_view back;
  bool equals{false};  // "=" stands between
};

// One species with its author and nothing else.
bool is_authored_species(std::string_view text) {
  if (!is_latin_name(text)) return false;
  auto const reading = read_taxa(text);
  return reading.taxa.size() == 1 && reading.remark.empty() &&
         !reading.taxa.front().authorship.empty();
}

// "DWARF SANDLET"
bool is_in_plain_capitals(std::string_view word) {
  constexpr std::size_t kShortest = 3;
  return is_in_capitals(word, kShortest) && word.find_first_of(".,;()") == word.npos;
}

// Words without stops, commas and figures; the first may be cut short, "A. bleue".
bool may_be_common_front(std::string_view front) {
  auto const words = words_of(front, kMostCommonWords + 1);
  if (words.size() < 2 || words.size() > kMostCommonWords) return false;
  return (is_capitalised(words.front()) || is_abbreviated(words.front())) &&
         std::all_of(words.begin() + 1, words.end(), [](std::string_view word) {
           return is_plain_word(word) || is_in_plain_capitals(word);
         });
}

// At the first bracket, dash or "=" between blanks.
std::optional<PartedNames> part(std::string_view printed) {
  for (auto blank = printed.find(' ');
       blank != std::string_view::npos && blank + 2 < printed.size();
       blank = printed.find(' ', blank + 1)) {
    auto const sign = code_point_at(printed, blank + 1);
    auto const behind = blank + 1 + sign.length;
    bool const bracket = sign.value == '(' && printed.ends_with(')');
    bool const joins = (is_dash(sign.value) || sign.value == '=') && behind < printed.size() &&
                       printed[behind] == ' ';
    if (!bracket && !joins) continue;
    PartedNames parted{printed.substr(0, blank), trim(printed.substr(behind)), sign.value == '='};
    if (bracket) parted.back.remove_suffix(1);
    bool const fits = may_be_common_front(parted.front) && is_authored_species(parted.back);
    return fits ? std::optional{parted} : std::nullopt;
  }
  return std::nullopt;
}

// "Aus bus" of "Aus bus (p. 90)"
std::string_view without_remark(std::string_view name) {
  return name.ends_with(')') ? trim(name.substr(0, name.find('('))) : name;
}

// "Pale ivy scale, Planaspella hederina": what stands before the only comma and behind it.
std::optional<PartedNames> part_at_comma(std::string_view printed) {
  auto const comma = printed.find(", ");
  if (comma == std::string_view::npos || printed.find(',', comma + 1) != std::string_view::npos) {
    return std::nullopt;
  }
  PartedNames const parted{printed.substr(0, comma), trim(printed.substr(comma + 2)), false};
  auto const words = words_of(without_remark(parted.back), 3);
  bool const species = words.size() == 2 && is_capitalised(words[0]) &&
                       (is_plain_word(words[1]) || words[1] == "sp." || words[1] == "spp.");
  return species && may_be_common_front(parted.front) ? std::optional{parted} : std::nullopt;
}

// "Banana Bat (Bananella nana)": a species without its author in the bracket that closes it, behind
// words that all have capitals.
std::optional<PartedNames> part_at_bracket(std::string_view printed) {
  auto const open = printed.find(" (");
  if (open == std::string_view::npos || !printed.ends_with(')')) return std::nullopt;
  PartedNames const parted{printed.substr(0, open),
                           printed.substr(open + 2, printed.size() - open - 3), false};
  auto const words = words_of(parted.back, 3);
  bool const species = words.size() == 2 && is_capitalised(words[0]) && is_epithet(words[1]);
  auto const front = words_of(parted.front);
  bool const capitals = std::all_of(front.begin(), front.end(), [](std::string_view word) {
    return is_upper(code_point_at(word, 0).value);
  });
  return species && capitals && may_be_common_front(parted.front) ? std::optional{parted}
                                                                  : std::nullopt;
}

void take_common_name(ReadLead& read, PartedNames const& parted) {
  auto taxa = read_taxa(parted.back);
  taxa.figures = read.to.taxa.figures;
  read.to.remark = squeeze(parted.front);
  if (!taxa.remark.empty()) read.to.remark += "; " + taxa.remark;
  read.to.taxa = std::move(taxa);
  read.lead.taxon_remark = read.to.remark;
}

// Where species stand behind a common name and a comma, or in a bracket, as a rule, the words
// before the others are such names, too, though they may look like Latin.
void take_names_by_habit(std::vector<ReadLead>& reads,
                         std::optional<PartedNames> (*part_at)(std::string_view)) {
  constexpr std::size_t kFewest = 3;
  std::vector<std::pair<std::size_t, PartedNames>> others;
  std::size_t common = 0;
  std::set<std::string_view> genera;
  auto const first_of = [](std::string_view text) { return words_of(text, 1).front(); };
  for (std::size_t i = 0; i < reads.size(); ++i) {
    if (reads[i].to.form != DestinationForm::taxa) continue;
    auto const parted = part_at(reads[i].lead.destination_printed);
    if (!parted) continue;
    genera.insert(first_of(parted->back));
    auto const& taxa = reads[i].to.taxa.taxa;
    bool const behind = without_remark(parted->back).starts_with(taxa.front().name);
    if (taxa.size() == 1 && behind && reads[i].to.remark.starts_with(squeeze(parted->front))) {
      ++common;
    } else {
      others.emplace_back(i, *parted);
    }
  }
  if (common < kFewest || common < others.size()) return;
  for (auto const& [i, parted] : others) {
    // "Aus bus, Aus cus" are two species.
    if (!genera.contains(first_of(parted.front))) take_common_name(reads[i], parted);
  }
}

// "Rusty flour beetle Tribolodes ferrugo" where another lead ends in nothing but these last two
// words: they are a name, however it ends.
void take_names_that_stand_alone(std::vector<ReadLead>& reads) {
  std::set<std::string> alone;
  for (auto const& read : reads) {
    auto const& printed = read.lead.destination_printed;
    auto const& taxa = read.to.taxa.taxa;
    bool const whole = read.to.form == DestinationForm::taxa && taxa.size() == 1 &&
                       taxa.front().name == printed && words_of(printed, 3).size() == 2;
    if (whole) alone.insert(printed);
  }
  for (auto& read : reads) {
    if (read.to.form != DestinationForm::taxa || read.to.taxa.taxa.size() != 1) continue;
    std::string_view const printed = read.lead.destination_printed;
    auto const last = last_word_begin(printed);
    auto const begin = last > 0 ? last_word_begin(printed.substr(0, last - 1)) : 0;
    if (begin == 0) continue;
    std::string const name{printed.substr(begin)};
    PartedNames const parted{trim(printed.substr(0, begin)), printed.substr(begin), false};
    if (read.to.taxa.taxa.front().name == name || !alone.contains(name) ||
        !may_be_common_front(parted.front)) {
      continue;
    }
    take_common_name(read, parted);
  }
}

}  // namespace

void take_names_behind_common_ones(std::vector<ReadLead>& reads) {
  take_names_that_stand_alone(reads);
  take_names_by_habit(reads, part_at_comma);
  take_names_by_habit(reads, part_at_bracket);
  constexpr std::size_t kFewest = 3;
  std::vector<std::size_t> found;
  std::size_t authored = 0;  // leads to a species with its author and no common name
  for (std::size_t i = 0; i < reads.size(); ++i) {
    if (reads[i].to.form != DestinationForm::taxa) continue;
    std::string_view const printed = reads[i].lead.destination_printed;
    if (auto const parted = part(printed)) {
      // "Aus bus = A. cus Roe": a synonym.
      if (parted->equals && is_latin_name(parted->front)) return;
      if (is_authored_species(parted->front)) return;
      found.push_back(i);
    } else if (is_latin_name(printed)) {
      if (read_taxa(printed).taxa.front().authorship.empty()) return;
      ++authored;
    }
  }
  if (found.size() < kFewest || found.size() < authored) return;
  for (auto const i : found) take_common_name(reads[i], *part(reads[i].lead.destination_printed));
}

}  // namespace keydrift::printed
