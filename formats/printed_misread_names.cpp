#include "keydrift/formats/printed_misread_names.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_numbered_species.hpp"
#include "keydrift/formats/printed_slips.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShortestAlike = 5;      // letters; shorter names are alike by chance
constexpr std::size_t kMostNameLines = 20000;  // that are looked at
constexpr std::size_t kLettersCompared = 3;    // in a row

// A letter that stands before a blank or behind it is marked by one.
template <class Use>
void for_each_row(std::string_view word, Use use) {
  auto const padded = " " + std::string{word} + " ";
  for (std::size_t i = 0; i + kLettersCompared <= padded.size(); ++i) {
    use(padded.substr(i, kLettersCompared));
  }
}

// The epithet of a taxon that a lead leads to, folded; empty for genera and other names.
std::string epithet_of(TaxonReading const& taxon) {
  auto const name = without_ligatures(taxon.name);  // as long in bytes
  auto const words = words_of(name);
  if (taxon.literal || words.empty()) return {};
  if (taxon.genusless && words.size() == 1) return fold(words[0]);
  bool const binomial = words.size() == 2 &&
                        (is_capitalised(words[0]) || is_abbreviated(words[0])) &&
                        !is_rank(words[0]) && is_epithet(words[1]);
  return binomial ? fold(words[1]) : std::string{};
}

class NamesInText {
 public:
  NamesInText(KeyText const& key, SortedLines const& sorted) {
    auto const lines = std::min(key.lines.size(), kMostNameLines);
    for (std::size_t i = 0; i < lines && i < sorted.accounts.size(); ++i) {
      look_at(key.lines[i], is_of_lead(sorted.accounts[i]));
    }
  }

  struct Seen {
    std::size_t times{};
    std::uint32_t line{};  // the number of the first
  };

  using Names = std::map<std::string, Seen>;
  // As a name, in lines that are of no lead: epithet to where it stands.  In the alphabet's order.
  [[nodiscard]] Names const& names() const { return names_; }
  // Any word outside of leads.
  [[nodiscard]] bool has_outside(std::string const& folded) const {
    return outside_.contains(folded);
  }

  // By how much the letters of `one` that `other` has not follow each other more as those of the
  // text's words do: the logarithm (base 2) of the counts' ratio, on the average.
  [[nodiscard]] double more_usual(std::string const& one, std::string const& other) const {
    return usualness(one, other) - usualness(other, one);
  }

 private:
  void look_at(SourceLine const& line, bool of_lead) {
    auto const words = words_of(line.text);
    for (std::size_t w = 0; w < words.size(); ++w) {
      auto const bare = without_closing_marks(words[w]);
      if (bare.size() < kShortestAlike || !is_plain_word(bare)) continue;
      auto folded = fold(bare);
      if (counted_.insert(folded).second) {
        for_each_row(folded, [this](std::string row) { ++rows_[std::move(row)]; });
      }
      if (of_lead) continue;
      outside_.insert(folded);
      if (!stands_as_name(words, w, bare)) continue;
      auto& seen = names_[std::move(folded)];
      if (seen.times++ == 0) seen.line = line.number;
    }
  }

  // Behind a genus, in full or short, both in capitals or this one in small letters; or in an
  // index, "busa, 12.".
  [[nodiscard]] static bool stands_as_name(std::vector<std::string_view> const& words,
                                           std::size_t w, std::string_view bare) {
    bool const small = is_lower(code_point_at(bare, 0).value);
    bool const number = w + 1 < words.size() && words[w].ends_with(',') &&
                        is_digit(code_point_at(words[w + 1], 0).value);
    if (number && (small || is_capitalised(bare))) return true;
    if (w == 0) return false;
    auto const genus = words[w - 1];
    if (is_abbreviated(genus)) return true;
    bool const whole = is_capitalised(genus) && genus.size() > 2;
    return whole && (small || (is_in_capitals(bare, kShortestAlike) && is_in_capitals(genus, 3)));
  }

  [[nodiscard]] double usualness(std::string const& word, std::string const& other) const {
    std::unordered_set<std::string> others;
    for_each_row(other, [&others](std::string row) { others.insert(std::move(row)); });
    double sum = 0;
    std::size_t count = 0;
    for_each_row(word, [&](std::string const& row) {
      if (others.contains(row)) return;
      auto const found = rows_.find(row);
      // The word itself was counted.
      auto const times = found == rows_.end() || found->second == 0 ? 0U : found->second - 1;
      sum += std::log2(1.0 + static_cast<double>(times));
      ++count;
    });
    return count == 0 ? 0 : sum / static_cast<double>(count);
  }

  Names names_;
  std::unordered_set<std::string> outside_;
  std::unordered_set<std::string> counted_;              // words whose letters were counted
  std::unordered_map<std::string, std::uint32_t> rows_;  // letters in a row, by words
};

// Letters to be put in, left out or changed to make the one word the other.
std::size_t edits_between(std::string_view one, std::string_view other) {
  std::vector<std::size_t> costs(other.size() + 1);
  for (std::size_t j = 0; j <= other.size(); ++j) costs[j] = j;
  for (std::size_t i = 1; i <= one.size(); ++i) {
    auto diagonal = std::exchange(costs[0], i);
    for (std::size_t j = 1; j <= other.size(); ++j) {
      auto const changed = diagonal + (one[i - 1] == other[j - 1] ? 0 : 1);
      diagonal = std::exchange(costs[j], std::min({changed, costs[j] + 1, costs[j - 1] + 1}));
    }
  }
  return costs.back();
}

// The names that lists and accounts give the numbers that stand at leads' ends.
class NamesByNumber {
 public:
  NamesByNumber(KeyText const& key, SortedLines const& sorted, std::vector<ReadLead> const& reads)
      : species_{key, sorted} {
    for (auto const& read : reads) {
      if (read.to.form != DestinationForm::taxa || read.to.taxa.taxa.size() != 1) continue;
      auto const* listed = listed_for(read);
      if (listed != nullptr && epithet_in(*listed) == epithet_of(read.to.taxa.taxa.front())) {
        ++agree_;
      }
    }
  }

  // What stands there behind the number of the lead's end, if the two are much alike and other ends
  // agree with their numbers; nullptr otherwise.
  [[nodiscard]] ListedSpecies const* meant_by(ReadLead const& read) const {
    constexpr std::size_t kAgree = 2;
    constexpr std::size_t kMostEdits = 3;
    auto const* listed = agree_ >= kAgree ? listed_for(read) : nullptr;
    if (listed == nullptr) return nullptr;
    auto const epithet = epithet_of(read.to.taxa.taxa.front());
    auto const edits = edits_between(epithet, epithet_in(*listed));
    bool const alike = edits > 0 && edits <= kMostEdits && edits * 5 <= epithet.size() * 2;
    return alike ? listed : nullptr;
  }

  [[nodiscard]] static std::string epithet_in(ListedSpecies const& listed) {
    return fold(std::string_view{listed.name}.substr(listed.name.find(' ') + 1));
  }

 private:
  [[nodiscard]] ListedSpecies const* listed_for(ReadLead const& read) const {
    auto const number = species_number_at(read.lead.destination_printed);
    return number == 0 ? nullptr : species_.find(number);
  }

  NumberedSpecies species_;
  std::size_t agree_{};  // ends whose epithet is that of their number
};

// By doubted epithet: the names of the text that it may be misread for and that end no lead.
using MeantNames = std::unordered_map<std::string, std::vector<NamesInText::Names::const_pointer>>;
MeantNames names_meant(std::vector<std::string> const& doubted, NamesInText const& text,
                       std::unordered_map<std::string, std::size_t> const& ends) {
  MisreadWords words;
  for (auto const& epithet : doubted) words.add(epithet);
  MeantNames meant;
  for (auto const& name : text.names()) {
    if (ends.contains(name.first)) continue;
    for (auto const word : words.like(name.first)) meant[doubted[word]].push_back(&name);
  }
  return meant;
}

// "albiclaTa" for albiclava: the name of the text that differs in no letter but where a capital
// stands within the epithet, as none is printed; nullptr where none does, or several do.
NamesInText::Names::const_pointer name_beneath_capitals(
    std::string_view printed, NamesInText const& text,
    std::unordered_map<std::string, std::size_t> const& ends) {
  constexpr std::size_t kShortestSound = 5;  // letters
  auto const small = [](char c) { return c >= 'a' && c <= 'z'; };
  auto const sound = static_cast<std::size_t>(std::count_if(printed.begin(), printed.end(), small));
  if (sound == printed.size() || sound < kShortestSound || !small(printed.front())) return nullptr;
  auto const capital = static_cast<std::size_t>(
      std::find_if_not(printed.begin(), printed.end(), small) - printed.begin());
  // "vanRoei", "mcDornae": after a person.
  static constexpr std::array<std::string_view, 11> kParticles{
      "van", "von", "de", "le", "la", "du", "st", "mc", "mac", "o", "d"};
  auto const front = printed.substr(0, capital);
  if (std::find(kParticles.begin(), kParticles.end(), front) != kParticles.end()) return nullptr;
  NamesInText::Names::const_pointer found = nullptr;
  auto const& names = text.names();
  for (auto at = names.lower_bound(std::string{front}); at != names.end(); ++at) {
    auto const& name = *at;
    if (!name.first.starts_with(front)) break;
    bool const alike =
        name.first.size() == printed.size() &&
        std::equal(printed.begin(), printed.end(), name.first.begin(), [&](char seen, char meant) {
          return seen == meant || (seen >= 'A' && seen <= 'Z');
        });
    if (!alike || ends.contains(name.first)) continue;
    if (found != nullptr) return nullptr;
    found = &name;
  }
  return found;
}

}  // namespace

Finding misread_name(KeyText const& key, ReadLead const& read, std::string_view printed,
                     std::string_view meant, std::uint32_t line) {
  Finding finding;
  finding.code = "misread-name";
  finding.severity = Severity::warning;
  finding.file = std::string{key.name};
  finding.place = read.lead.destination_place;
  finding.printed = read.lead.destination_printed;
  finding.message = "\"" + std::string{printed} + "\" was read as \"" + std::string{meant} +
                    "\", as line " + std::to_string(line) +
                    " has it; scanning confuses such letters";
  finding.remedy = "compare the two with the original; print the right one in both places";
  return finding;
}

void mend_misread_names(KeyText const& key, SortedLines const& sorted, std::vector<ReadLead>& reads,
                        std::vector<Finding>& findings) {
  std::unordered_map<std::string, std::size_t> ends;  // epithets that leads lead to
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::taxa) continue;
    for (auto const& taxon : read.to.taxa.taxa) ++ends[epithet_of(taxon)];
  }
  if (ends.empty()) return;
  NamesInText const text{key, sorted};
  if (text.names().empty()) return;
  auto const stands_nowhere_else = [&](std::string const& epithet) {
    return epithet.size() >= kShortestAlike && !text.has_outside(epithet);
  };
  std::vector<std::string> doubted;
  for (auto const& [epithet, times] : ends) {
    if (stands_nowhere_else(epithet)) doubted.push_back(epithet);
  }
  if (doubted.empty()) return;
  auto const meant = names_meant(doubted, text, ends);
  NamesByNumber const numbered{key, sorted, reads};
  for (auto& read : reads) {
    if (read.to.form != DestinationForm::taxa) continue;
    for (auto& taxon : read.to.taxa.taxa) {
      auto const epithet = epithet_of(taxon);
      if (!stands_nowhere_else(epithet)) continue;
      auto const mend = [&](std::string const& name, std::uint32_t line) {
        auto const begin = taxon.name.size() - epithet.size();
        auto const damaged = taxon.name.substr(begin);
        taxon.name.replace(begin, epithet.size(), name);
        findings.push_back(misread_name(key, read, damaged, name, line));
      };
      if (auto const* listed = numbered.meant_by(read)) {
        auto const name = NamesByNumber::epithet_in(*listed);
        if (!ends.contains(name)) {
          mend(name, listed->line);
          continue;
        }
      }
      auto const printed = std::string_view{taxon.name}.substr(taxon.name.size() - epithet.size());
      if (auto const* name = name_beneath_capitals(printed, text, ends)) {
        mend(name->first, name->second.line);
        continue;
      }
      auto const alike = meant.find(epithet);
      if (alike == meant.end() || alike->second.size() != 1) continue;
      auto const& [name, seen] = *alike->second.front();
      constexpr double kClearlyLess = -1;  // half as usual
      constexpr double kLess = -0.5;
      auto const usual = text.more_usual(name, epithet);
      if (usual < (seen.times > ends[epithet] ? kClearlyLess : kLess)) continue;
      mend(name, seen.line);
    }
  }
}

}  // namespace keydrift::printed
