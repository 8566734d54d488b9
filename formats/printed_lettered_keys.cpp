#include "keydrift/formats/printed_lettered_keys.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostLines = 8;   // of a lead
constexpr std::size_t kMostAbove = 40;  // lines between an account's head and its key
constexpr std::uint32_t kMostLetters = 26;

// "a." or "a)" before words with a capital.
std::optional<std::uint32_t> letter_of(std::string_view line) {
  auto const label = read_label(line);
  if (!label || label->family != LabelFamily::lower || label->marks > 0) return std::nullopt;
  bool const closed = label->end == LabelEnd::dot || label->end == LabelEnd::parenthesis;
  bool const words =
      label->text_at < line.size() && is_upper(code_point_at(line, label->text_at).value);
  if (!closed || !words || label->number > kMostLetters) return std::nullopt;
  return label->number;
}

class KeyFinder {
 public:
  KeyFinder(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {}

  std::vector<LetteredKey> find(std::size_t from) && {
    std::vector<LetteredKey> keys;
    LetteredKey key;
    std::size_t end = from;  // behind the last lead
    for (auto i = from; i < lines_.size(); ++i) {
      auto const letter = letter_of(lines_[i].text);
      if (!letter) continue;
      bool const next = *letter == key.lines.size() + 1 && is_blank(end, i);
      if (!next) close(key, keys);
      if (*letter != key.lines.size() + 1) continue;
      auto const behind = end_of_lead(i);
      if (!behind) {
        close(key, keys);
        continue;
      }
      if (key.lines.empty()) find_species_above(i, key);
      key.lines.push_back(i);
      end = *behind;
      i = end - 1;
    }
    close(key, keys);
    return keys;
  }

 private:
  static void close(LetteredKey& key, std::vector<LetteredKey>& keys) {
    if (key.lines.size() >= 2) keys.push_back(std::move(key));
    key = {};
  }

  [[nodiscard]] bool is_blank(std::size_t begin, std::size_t end) const {
    return std::all_of(lines_.begin() + static_cast<std::ptrdiff_t>(begin),
                       lines_.begin() + static_cast<std::ptrdiff_t>(end),
                       [](SourceLine const& line) { return line.text.empty(); });
  }

  // Behind the line whose leaders lead to something.
  [[nodiscard]] std::optional<std::size_t> end_of_lead(std::size_t i) const {
    for (auto at = i; at < std::min(lines_.size(), i + kMostLines); ++at) {
      auto const text = lines_[at].text;
      if (text.empty() || (at > i && letter_of(text))) return std::nullopt;
      auto const split = split_at_leader(text, numbering_);
      if (split.kind == LeaderKind::dots && split.destination_begin < text.size()) return at + 1;
    }
    return std::nullopt;
  }

  void find_species_above(std::size_t i, LetteredKey& key) const {
    for (auto at = i; at-- > i - std::min(i, kMostAbove);) {
      auto const text = lines_[at].text;
      auto const head = read_account_head(text);
      if (!head || head->number == 0) continue;
      auto const name = text.substr(head->name_begin, head->name_end - head->name_begin);
      auto const taxon = read_account_name(name);
      if (words_of(taxon.name).size() != 2 || taxon.genusless) continue;
      key.species = taxon.name;
      key.title = at;
      return;
    }
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
};

// "subsp. bus" of "a. subsp. bus Roe"; empty for other destinations.
std::string rank_and_epithet(std::string_view printed) {
  auto const words = words_of(printed, 3);
  std::size_t w = 0;
  if (!words.empty() && words[0].size() == 2 && words[0][1] == '.' && words.size() > 2) w = 1;
  if (w + 1 >= words.size() || !is_rank(words[w]) || words[w].size() < 2) return {};
  auto const epithet = without_end(words[w + 1]);
  if (!is_epithet(epithet)) return {};
  return std::string{words[w]} + " " + std::string{epithet};
}

}  // namespace

std::vector<LetteredKey> find_lettered_keys(std::vector<SourceLine> const& lines,
                                            Numbering const& numbering, std::size_t from) {
  return KeyFinder{lines, numbering}.find(from);
}

LeadPlan with_lettered_leads(SortedLines const& sorted, LeadPlan const* plan,
                             std::vector<LetteredKey> const& keys,
                             std::vector<SourceLine> const& lines) {
  LeadPlan with;
  if (plan != nullptr) {
    with = *plan;
  } else {
    with.start_at.assign(lines.size(), LeadPlan::kNoStart);
    for (auto const& lead : sorted.leads) {
      LeadStart start;
      start.line = lead.line;
      start.rank.alphabet = lead.label.is_dash() ? Alphabet::dash : Alphabet::digits;
      start.rank.label = lead.label;
      start.unlabelled = lead.unlabelled;
      start.misread = lead.misprinted;
      with.starts.push_back(start);
    }
  }
  if (with.parts.empty()) with.parts.assign(lines.size(), LinePart::other);
  for (auto const& key : keys) {
    if (!key.species.empty()) with.parts[key.title] = LinePart::title;
    for (auto const line : key.lines) {
      LeadStart start;
      start.line = static_cast<std::uint32_t>(line);
      start.rank.alphabet = Alphabet::lower;
      start.rank.label = *read_label(lines[line].text);
      with.starts.push_back(start);
    }
  }
  for (std::size_t s = 0; s < with.starts.size(); ++s) {
    with.start_at[with.starts[s].line] = static_cast<std::uint32_t>(s);
  }
  return with;
}

void add_lettered_couplets(std::vector<LetteredKey> const& keys, std::size_t first_lead,
                           SortedLines const& sorted, Grouping& grouping,
                           std::vector<ReadLead>& reads) {
  auto lead = static_cast<std::uint32_t>(first_lead);
  for (auto const& key : keys) {
    grouping.parts.push_back({lead, sorted.leads[lead].last_heading});
    RawCouplet couplet;
    couplet.label = "1";  // the only one of its key
    couplet.key = key_of(LabelFamily::digits, 1, {}, 0);
    couplet.first_member = static_cast<std::uint32_t>(grouping.members.size());
    couplet.member_count = static_cast<std::uint32_t>(key.lines.size());
    couplet.part = static_cast<std::uint32_t>(grouping.parts.size() - 1);
    for (std::size_t m = 0; m < key.lines.size(); ++m, ++lead) {
      grouping.members.push_back(lead);
      auto const below = rank_and_epithet(reads[lead].lead.destination_printed);
      if (below.empty() || key.species.empty()) continue;
      auto& to = reads[lead].to;
      to.form = DestinationForm::taxa;
      to.taxa.taxa.resize(1);
      to.taxa.taxa.front().name = key.species + " " + below;
      to.taxa.taxa.front().genusless = false;
    }
    grouping.couplets.push_back(std::move(couplet));
  }
}

}  // namespace keydrift::printed
