// Couplets asked a second time on one route.

#include <algorithm>
#include <optional>
#include <string>
#include <unordered_map>

#include "keydrift/characters/contrast_parts.hpp"
#include "keydrift/key/fold.hpp"

namespace keydrift::contrast {
namespace {

// What the couplet asks: the folded words of its leads in any order; empty where a lead has none.
std::string question(Couplet const& couplet) {
  std::vector<std::string> leads;
  leads.reserve(couplet.leads.size());
  std::size_t bytes = 0;
  for (auto const& lead : couplet.leads) {
    leads.push_back(fold_words(lead.text));
    bytes += leads.back().size() + 1;
  }
  std::sort(leads.begin(), leads.end());
  std::string words;
  words.reserve(bytes);
  for (auto const& lead : leads) {
    if (lead.empty()) return {};
    words += lead;
    words += '\n';
  }
  return leads.size() < 2 ? std::string{} : words;
}

class RepeatCheck {
 public:
  explicit RepeatCheck(ContrastContext& context)
      : context_{context}, edition_{context.edition}, asked_(edition_.couplets.size(), 0) {
    std::unordered_map<std::string, std::uint32_t> numbers;
    for (CoupletId c; c.index < asked_.size(); ++c.index) {
      auto words = question(edition_[c]);
      if (words.empty()) continue;
      auto const next = static_cast<std::uint32_t>(numbers.size() + 1);
      asked_[c.index] = numbers.emplace(std::move(words), next).first->second;
    }
    on_route_.resize(numbers.size() + 1);
  }

  // Depth first over one lead into each couplet: every route of a tree, and where routes meet some
  // of them, so that nothing is reported falsely.
  void run() {
    std::vector<char> seen(edition_.couplets.size(), 0);
    for (auto const& part : edition_.parts) {
      if (part.start.index < seen.size()) walk(part.start, seen);
    }
  }

 private:
  struct Step {
    CoupletId couplet;
    std::size_t next_lead{};
    std::optional<CoupletId> before;  // that asked the same on this route
  };

  void walk(CoupletId start, std::vector<char>& seen) {
    std::vector<Step> way;
    auto const enter = [&](CoupletId couplet) {
      if (seen[couplet.index] != 0) return;
      seen[couplet.index] = 1;
      auto& last = on_route_[asked_[couplet.index]];
      way.push_back({couplet, 0, last});
      if (asked_[couplet.index] == 0) return;
      if (last && context_.dead_couplets[couplet.index] == 0) report(couplet, *last);
      last = couplet;
    };
    enter(start);
    while (!way.empty()) {
      auto& step = way.back();
      auto const& leads = edition_[step.couplet].leads;
      if (step.next_lead < leads.size()) {
        auto const* to = std::get_if<ToCouplet>(&leads[step.next_lead++].destination);
        if (to != nullptr) enter(to->couplet);  // `step` is no longer valid
        continue;
      }
      if (asked_[step.couplet.index] != 0) on_route_[asked_[step.couplet.index]] = step.before;
      way.pop_back();
    }
  }

  void report(CoupletId again, CoupletId before) {
    auto const& couplet = edition_[again];
    auto const& earlier = edition_[before];
    Finding finding;
    finding.code = "repeated-couplet";
    finding.severity = Severity::warning;
    finding.file = edition_.name;
    finding.place = couplet.place;
    finding.printed = couplet.leads.front().text;
    finding.message = "couplet " + quoted(couplet.label) + " asks what couplet " +
                      quoted(earlier.label) + " above it has asked";
    finding.remedy = "drop one of the two, or say in one of them what it adds";
    finding.related.push_back({earlier.place, "couplet " + quoted(earlier.label) + " is here"});
    context_.findings.push_back(std::move(finding));
  }

  ContrastContext& context_;
  Edition const& edition_;
  std::vector<std::uint32_t> asked_;                // by couplet: number of its question; 0: none
  std::vector<std::optional<CoupletId>> on_route_;  // by question: the last couplet that asked it
};

}  // namespace

void check_repeats(ContrastContext& context) { RepeatCheck{context}.run(); }

}  // namespace keydrift::contrast
