// Keys within one file: does another lead to each of them?

#include <algorithm>
#include <set>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

std::vector<std::string> words_of_title(std::string_view title) {
  std::vector<std::string> words;
  std::string word;
  for (char const c : fold_words(title) + " ") {
    bool const parts = c == ' ' || c == '.' || c == ':' || c == ',' || c == '(' || c == ')';
    if (!parts) {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::move(word));
      word.clear();
    }
  }
  return words;
}

// "3", "B", "iv": what tells keys of one name apart.
bool is_designator(std::string const& word) {
  return word.size() == 1 || word.find_first_not_of("0123456789") == std::string::npos ||
         word.find_first_not_of("ivx") == std::string::npos;
}

bool differ_by_designator(std::vector<std::string> const& a, std::vector<std::string> const& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] != b[i] && !(is_designator(a[i]) && is_designator(b[i]))) return false;
  }
  return true;
}

// Taxa whose name stands in the title: a genus that keys out, and "Aus: males" below.  The name
// leads the reader there, though no lead does.
bool names_a_taxon(std::vector<std::string> const& title, std::set<std::string> const& taxa) {
  for (std::size_t from = 0; from < title.size(); ++from) {
    std::string name;
    for (std::size_t i = from; i < title.size() && i < from + 3; ++i) {
      name += (name.empty() ? "" : " ") + title[i];
      if (taxa.contains(name)) return true;
    }
  }
  return false;
}

}  // namespace

std::vector<std::size_t> keys_of_couplets(Edition const& edition) {
  std::vector<std::pair<CoupletId, std::size_t>> starts;
  for (std::size_t i = 0; i < edition.parts.size(); ++i) {
    starts.emplace_back(edition.parts[i].start, i);
  }
  std::sort(starts.begin(), starts.end());
  std::vector<std::size_t> key_of(edition.couplets.size());
  // Couplets in front of all starts belong to the key that comes first.
  auto mine = starts.empty() ? 0 : starts.front().second;
  std::size_t at = 0;
  for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
    while (at < starts.size() && starts[at].first <= c) mine = starts[at++].second;
    key_of[c.index] = mine;
  }
  return key_of;
}

std::vector<char> find_keys_led_to(Edition const& edition, KeyGraph const& graph,
                                   std::vector<std::size_t> const& key_of) {
  std::vector<char> led(edition.parts.size(), 0);
  if (led.size() < 2) return led;
  for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
    for (auto const lead : graph.leads_to(c)) {
      if (key_of[lead.couplet.index] != key_of[c.index]) led[key_of[c.index]] = 1;
    }
  }
  return led;
}

std::string near_keys(ProofContext& context, std::string_view title) {
  constexpr std::size_t kLookedAt = 20;
  constexpr std::size_t kProposed = 3;
  auto const& parts = context.edition.parts;
  context.near_comparisons += parts.size();
  if (context.near_comparisons > kNearComparisons) return {};
  std::vector<std::string> titles;
  std::set<std::string> without_lead;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    titles.push_back(parts[i].title);
    if (i > 0 && context.keys_led_to[i] == 0) without_lead.insert(parts[i].title);
  }
  auto const wanted = words_of_title(title);
  auto near = near_words(title, titles, kLookedAt);
  std::erase_if(near, [&](std::string const& one) {
    return !without_lead.contains(one) && differ_by_designator(wanted, words_of_title(one));
  });
  if (near.size() > kProposed) near.resize(kProposed);
  return did_you_mean(near);
}

void check_repeated_keys(ProofContext& context) {
  for (auto const& key : context.repeated) {
    auto const& part = context.edition.parts[key.part];
    auto const& first = context.edition.parts[key.of];
    auto const couplets = key.end.index - key.begin.index;
    // Where no title stands above a key, its place is that of its first couplet.
    auto& finding =
        context.report("repeated-key", part.place, part.title,
                       "a key stands here a second time: its " + std::to_string(couplets) +
                           " couplets are those of the key in line " +
                           std::to_string(first.place.line) + ", word for word",
                       "leave one of the two out");
    finding.related.push_back({first.place, "it stands here first"});
  }
}

void check_keys(ProofContext& context) {
  auto const& parts = context.edition.parts;
  auto const& led = context.keys_led_to;
  // Keys that stand beside each other are begun each by itself.
  if (std::find(led.begin(), led.end(), 1) == led.end()) return;
  std::set<std::string> taxa;
  for (auto const& taxon : context.edition.taxa) taxa.insert(fold_words(taxon.name));
  for (std::size_t i = 1; i < parts.size(); ++i) {
    if (led[i] != 0) continue;
    if (names_a_taxon(words_of_title(parts[i].title), taxa)) continue;
    context.report("unreached-key", parts[i].place, parts[i].title,
                   "no lead leads to " + context.key_name(i) +
                       ", though leads lead to other keys of this file",
                   "mend the lead that should lead here; where the key is begun by itself, all is "
                   "well");
  }
}

}  // namespace keydrift::proofing
