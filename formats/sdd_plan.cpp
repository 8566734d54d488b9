#include "keydrift/formats/sdd_plan.hpp"

#include <algorithm>

#include "keydrift/formats/sdd_objects.hpp"
#include "keydrift/key/labels.hpp"

namespace keydrift::sdd {
namespace {

class Planner {
 public:
  explicit Planner(Edition const& edition) : edition_{edition}, labels_{edition} {
    plan_.key_of.assign(edition.couplets.size(), kNowhere);
    plan_.parent.resize(edition.couplets.size());
    is_start_.assign(edition.couplets.size(), false);
    for (auto const& part : edition.parts) {
      if (part.start.index < is_start_.size()) is_start_[part.start.index] = true;
    }
  }

  Plan run() && {
    for (std::uint32_t p = 0; p < edition_.parts.size(); ++p) {
      auto const start = edition_.parts[p].start.index;
      if (start < edition_.couplets.size() && plan_.key_of[start] == kNowhere) begin(start, p);
    }
    // What is left, in printed order, behind the keys of the parts.
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      if (plan_.key_of[c] == kNowhere && !edition_.couplets[c].leads.empty()) {
        begin(c, std::nullopt);
      }
    }
    std::uint32_t last = 0;
    for (auto& key : plan_.keys) {
      std::sort(key.couplets.begin(), key.couplets.end());
      for (auto const couplet : key.couplets) {
        plan_.in_order = plan_.in_order && couplet >= last;
        last = couplet;
      }
    }
    return std::move(plan_);
  }

 private:
  void begin(std::uint32_t root, std::optional<std::uint32_t> part) {
    auto const key = static_cast<std::uint32_t>(plan_.keys.size());
    plan_.keys.push_back({part, {}, root});
    auto const home = labels_.part_of(CoupletId{root});
    plan_.key_of[root] = key;
    std::vector<std::uint32_t> waiting{root};
    for (std::size_t at = 0; at < waiting.size(); ++at) {
      auto const c = waiting[at];
      plan_.keys[key].couplets.push_back(c);
      auto const& leads = edition_.couplets[c].leads;
      for (std::uint32_t l = 0; l < leads.size(); ++l) {
        auto const* to = std::get_if<ToCouplet>(&leads[l].destination);
        if (to == nullptr) continue;
        auto const next = to->couplet.index;
        if (plan_.key_of[next] != kNowhere || is_start_[next] ||
            labels_.part_of(to->couplet) != home || edition_.couplets[next].leads.empty()) {
          continue;
        }
        plan_.key_of[next] = key;
        plan_.parent[next] = LeadId{CoupletId{c}, l};
        waiting.push_back(next);
      }
    }
  }

  Edition const& edition_;
  LabelIndex labels_;
  std::vector<bool> is_start_;  // by couplet
  Plan plan_;
};

}  // namespace

Plan plan_keys(Edition const& edition) { return Planner{edition}.run(); }

}  // namespace keydrift::sdd
