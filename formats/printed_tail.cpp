#include "keydrift/formats/printed_tail.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// The sign behind the number of one label is the next in the other: "2b" and "2c", "2′" and "2″".
bool counts_on(SortedLines const& sorted, std::uint32_t one, std::uint32_t other) {
  auto const& label = sorted.leads[one].label;
  auto const& next = sorted.leads[other].label;
  bool const marked = !label.is_dash() && label.number == next.number && label.marks > 0;
  if (marked && label.marks + 1 == next.marks) return true;
  auto const a = label.letter;
  auto const b = next.letter;
  return a.size() == 1 && b.size() == 1 && b[0] == a[0] + 1;
}

// "3. Neither of these: tell us": behind the leads of couplet 3, the one for whatever is none of
// them.
bool is_for_the_rest(std::string_view words) {
  static constexpr std::array kBegins{
      "none of"sv, "neither of"sv, "not as"sv,    "not like"sv, "no match"sv, "anything else"sv,
      "keine"sv,   "keiner"sv,     "keines"sv,    "nichts"sv,   "weder"sv,    "aucun"sv,
      "aucune"sv,  "ninguno"sv,    "ninguna"sv,   "nenhum"sv,   "nenhuma"sv,  "nessuno"sv,
      "nessuna"sv, "geen van"sv,   "otherwise"sv, "ni uno"sv};
  auto const begin = fold(start_of(words, 24));
  return std::any_of(kBegins.begin(), kBegins.end(), [&begin](std::string_view one) {
    return begin.starts_with(one) && (begin.size() == one.size() || begin[one.size()] == ' ');
  });
}

// "Ausella busa Roe, 1901, p. 12", "Bull. Marsh Soc. 4, p. 61, 1899.": a line begins with a name or
// cites a work, as no lead's words do.
bool heads_account(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 2) return false;
  bool const genus = is_latin_genus(words[0]) || is_abbreviated(words[0]);
  bool const named = genus && is_epithet(without_closing_marks(words[1]));
  bool const cites = is_abbreviated(words[0]) &&
                     std::any_of(words.begin(), words.end(), [](std::string_view word) {
                       return is_year(without_closing_marks(word));
                     });
  return named || cites;
}

// By lead: the third of its couplet or a further one, without a label or leaders of its own, that
// is no lead: a heading stands above it, or it begins as accounts do and every taxon it leads to
// was led to above.  A row set as its rivals are stays, whatever it leads to.
std::vector<bool> says_again(Attempt const& attempt, std::vector<SourceLine> const& lines) {
  auto const& reads = attempt.read->reads;
  auto const& sorted = attempt.read->sorted;
  auto const& grouping = attempt.grouping;
  std::vector<bool> again(reads.size());
  std::vector<bool> third(reads.size());
  auto const headed = [&sorted](std::uint32_t lead) {
    auto const end = sorted.accounts.begin() + sorted.leads[lead].line;
    auto const begin = sorted.accounts.begin() + sorted.leads[lead - 1].line;
    return std::any_of(
        begin, end, [](LineAccount const& account) { return account.kind == LineKind::heading; });
  };
  for (auto const& couplet : grouping.couplets) {
    for (std::uint32_t m = 2; m < couplet.member_count; ++m) {
      auto const lead = grouping.members[couplet.first_member + m];
      third[lead] =
          sorted.leads[lead].label.printed.empty() && reads[lead].leaders != LeaderKind::dots;
    }
  }
  auto const epithet = [](TaxonReading const& taxon) {
    return std::string_view{taxon.name}.substr(taxon.name.rfind(' ') + 1);
  };
  std::unordered_set<std::string_view> above;  // their last words
  for (std::size_t i = 0; i < reads.size(); ++i) {
    if (reads[i].to.form != DestinationForm::taxa) continue;
    auto const& taxa = reads[i].to.taxa.taxa;
    again[i] = third[i] && !taxa.empty() &&
               (headed(static_cast<std::uint32_t>(i)) ||
                (heads_account(lines[sorted.leads[i].line].text) &&
                 std::all_of(taxa.begin(), taxa.end(), [&](TaxonReading const& taxon) {
                   return above.contains(epithet(taxon));
                 })));
    for (auto const& taxon : taxa) above.insert(epithet(taxon));
  }
  return again;
}

// Leads of what is counted like a key, but has no rivals and leads nowhere: a list.
std::vector<std::uint32_t> strays_of_lists(Grouping const& grouping, std::vector<bool> const& led) {
  std::unordered_set<std::uint32_t> keys;  // parts that are such
  for (auto const& couplet : grouping.couplets) {
    auto const* members = &grouping.members[couplet.first_member];
    bool const leads = std::any_of(members, members + couplet.member_count,
                                   [&led](auto lead) { return led[lead]; });
    if (couplet.member_count > 1 || leads) keys.insert(couplet.part);
  }
  std::vector<std::uint32_t> strays;
  for (auto const& couplet : grouping.couplets) {
    if (!keys.contains(couplet.part)) strays.push_back(grouping.members[couplet.first_member]);
  }
  return strays;
}

}  // namespace

std::vector<std::uint32_t> strays_around(Attempt const& attempt,
                                         std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 4;  // leads that lead somewhere
  auto const& reads = attempt.read->reads;
  auto const& grouping = attempt.grouping;
  std::unordered_set<LabelKey> numbers;
  std::vector<std::uint32_t> part(reads.size());
  for (auto const& couplet : grouping.couplets) {
    numbers.insert(number_key(couplet.key));
    for (std::uint32_t m = 0; m < couplet.member_count; ++m) {
      part[grouping.members[couplet.first_member + m]] = couplet.part;
    }
  }
  std::vector<bool> led(reads.size());
  std::unordered_set<LabelKey> led_to;
  auto const again = says_again(attempt, lines);
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const& to = reads[i].to;
    auto const number = number_key(to.couplet);
    led[i] = (to.form == DestinationForm::taxa && !again[i]) || to.form == DestinationForm::key ||
             to.form == DestinationForm::nowhere ||
             (to.form == DestinationForm::couplet && numbers.contains(number));
    if (led[i] && to.form == DestinationForm::couplet) led_to.insert(in_part(part[i], number));
  }
  auto const last = std::find(led.rbegin(), led.rend(), true);
  auto const tail = static_cast<std::uint32_t>(led.rend() - last);
  if (static_cast<std::size_t>(std::count(led.begin(), led.end(), true)) < kFewest) return {};
  auto strays = strays_of_lists(grouping, led);
  std::unordered_set<LabelKey> seen;
  for (auto const& couplet : grouping.couplets) {
    auto const number = in_part(couplet.part, number_key(couplet.key));
    bool const seen_above = !seen.insert(number).second;
    auto const* members = &grouping.members[couplet.first_member];
    auto const behind = static_cast<std::size_t>(std::count_if(
        members, members + couplet.member_count, [tail](auto lead) { return lead >= tail; }));
    auto const before = couplet.member_count - behind;
    // "2c" behind "2b" goes on with the couplet, whether it leads somewhere or not.
    if (before >= 2 && before < couplet.member_count &&
        (counts_on(attempt.read->sorted, members[before - 1], members[before]) ||
         is_for_the_rest(reads[members[before]].lead.text))) {
      continue;
    }
    bool const stray = before >= 2 || (before == 0 && (seen_above || !led_to.contains(number)));
    for (std::uint32_t m = 0; stray && m < couplet.member_count; ++m) {
      if (members[m] >= tail) strays.push_back(members[m]);
    }
  }
  std::sort(strays.begin(), strays.end());
  strays.erase(std::unique(strays.begin(), strays.end()), strays.end());
  return strays;
}

std::vector<std::uint32_t> strays_behind_text(Attempt const& attempt,
                                              std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 4;  // leads before the text
  auto const& reads = attempt.read->reads;
  auto const& sorted = attempt.read->sorted;
  auto const again = says_again(attempt, lines);
  auto tail = reads.size();
  while (tail > 0 && (reads[tail - 1].to.form == DestinationForm::none || again[tail - 1])) --tail;
  if (tail < kFewest || tail == reads.size()) return {};
  // Text of no lead, or two headings: one may stand within a key.  Accounts count lines from 1.
  std::uint32_t outside = 0;
  std::size_t headings = 0;
  for (auto const& account : sorted.accounts) {
    if (account.line <= sorted.leads[tail - 1].line + 1) continue;
    if (account.kind == LineKind::heading) ++headings;
    if (account.kind == LineKind::note || headings > 1) {
      outside = account.line;
      break;
    }
  }
  if (outside == 0) return {};
  std::vector<std::uint32_t> strays;
  for (auto const& couplet : attempt.grouping.couplets) {
    auto const* members = &attempt.grouping.members[couplet.first_member];
    auto const is_behind = [&](auto lead) {
      return lead >= tail && sorted.leads[lead].line + 1 > outside;
    };
    bool const stray = std::all_of(members, members + couplet.member_count, is_behind);
    if (stray) strays.insert(strays.end(), members, members + couplet.member_count);
    for (std::uint32_t m = 0; !stray && m < couplet.member_count; ++m) {
      if (again[members[m]] && is_behind(members[m])) strays.push_back(members[m]);
    }
  }
  std::sort(strays.begin(), strays.end());
  return strays;
}

void take_out(LeadPlan& plan, std::vector<SourceLine> const& lines) {
  std::erase_if(plan.starts,
                [&lines](LeadStart const& start) { return lines[start.line].is_no_lead; });
  std::fill(plan.start_at.begin(), plan.start_at.end(), LeadPlan::kNoStart);
  for (std::size_t s = 0; s < plan.starts.size(); ++s) {
    plan.start_at[plan.starts[s].line] = static_cast<std::uint32_t>(s);
  }
}

}  // namespace keydrift::printed
