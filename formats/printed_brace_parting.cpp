#include "keydrift/formats/printed_brace_parting.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <utility>

#include "keydrift/formats/printed_brace_fronts.hpp"

namespace keydrift::printed {
namespace {

// Where a couplet's number stands beside its lines.
enum class NumberAt : std::uint8_t { middle, first };

class BraceParter {
 public:
  explicit BraceParter(BraceRows const& rows) : rows_{rows} {}

  [[nodiscard]] std::vector<std::size_t> run() const {
    auto middle = parted(NumberAt::middle);
    auto first = parted(NumberAt::first);
    return first.second < middle.second ? std::move(first.first) : std::move(middle.first);
  }

 private:
  // What speaks against a brace of rows [begin, end) with the k-th number.
  [[nodiscard]] BraceCost cost_of_brace(std::size_t begin, std::size_t end, std::size_t k,
                                        NumberAt at) const {
    auto const number = rows_.numbers[k];
    // No lead leads to its own couplet.
    constexpr BraceCost kToItself = 12;
    auto const row = [this](std::size_t r) {
      return rows_.leads_to.begin() + static_cast<std::ptrdiff_t>(r);
    };
    bool const to_itself =
        rows_.couplets[k] > 0 && std::find(row(begin), row(end), rows_.couplets[k]) != row(end);
    // A number alone stands before its first lead.
    auto first = begin;
    while (first < end && !rows_.words[first]) ++first;
    auto const leads = first == end ? 0 : 1 + rows_.rivals[end - 1] - rows_.rivals[first];
    static constexpr std::array<BraceCost, 5> kLeads{20, 14, 0, 2, 4};
    auto const cost = kLeads[std::min(leads, kLeads.size() - 1)];
    auto const off = at == NumberAt::first           ? 2 * (number - begin)
                     : 2 * number + 1 >= begin + end ? 2 * number + 1 - begin - end
                                                     : begin + end - 2 * number - 1;
    return cost + static_cast<BraceCost>(std::min<std::size_t>(off, 8)) +
           (to_itself ? kToItself : 0);
  }

  struct Step {
    std::size_t begin{};
    std::size_t from{};  // the step before that costs least
    BraceCost cost{};
  };

  [[nodiscard]] std::vector<std::size_t> begins_between(std::size_t k) const {
    auto const& at = rows_.numbers;
    auto const key = std::upper_bound(rows_.key_begins.begin(), rows_.key_begins.end(), at[k]);
    auto const begin = *std::prev(key);
    if (k == 0 || at[k - 1] < begin) return {begin};
    std::vector<std::size_t> begins;
    for (auto r = at[k]; r > at[k - 1] && at[k] - r < kLongestBrace; --r) begins.push_back(r);
    return begins;
  }

  [[nodiscard]] std::pair<std::vector<std::size_t>, BraceCost> parted(NumberAt number_at) const {
    auto const& at = rows_.numbers;
    std::vector<std::vector<Step>> steps(at.size());
    for (std::size_t k = 0; k < at.size(); ++k) {
      for (auto const begin : begins_between(k)) {
        Step step{begin, 0, 0};
        if (k > 0) {
          step.cost = std::numeric_limits<BraceCost>::max();
          for (std::size_t s = 0; s < steps[k - 1].size(); ++s) {
            auto const& one = steps[k - 1][s];
            auto const cost = one.cost + cost_of_brace(one.begin, begin, k - 1, number_at);
            if (cost < step.cost) {
              step.cost = cost;
              step.from = s;
            }
          }
          step.cost += rows_.begin_costs[begin];
        }
        steps[k].push_back(step);
      }
    }
    std::size_t best = 0;
    BraceCost least = std::numeric_limits<BraceCost>::max();
    for (std::size_t s = 0; s < steps.back().size(); ++s) {
      auto const& step = steps.back()[s];
      auto const cost =
          step.cost + cost_of_brace(step.begin, rows_.words.size(), at.size() - 1, number_at);
      if (cost < least) {
        least = cost;
        best = s;
      }
    }
    std::vector<std::size_t> begins(at.size());
    for (auto k = at.size(); k-- > 0;) {
      begins[k] = steps[k][best].begin;
      best = steps[k][best].from;
    }
    return {std::move(begins), least};
  }

  BraceRows const& rows_;
};

}  // namespace

std::vector<std::size_t> part_braces(BraceRows const& rows) { return BraceParter{rows}.run(); }

}  // namespace keydrift::printed
