// Other numbers and back-references for the couplets of an edition.

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <variant>
#include <vector>

#include "keydrift/formats/printed_arrange.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_write.hpp"

namespace keydrift {
namespace printed {
namespace {

// The labels and back-references that the options ask for.
class Relabeller {
 public:
  Relabeller(Edition const& edition, PrintOptions const& options)
      : edition_{edition}, options_{options}, relabelled_{edition} {}

  Edition run() && {
    if (options_.layout == PrintLayout::serial || options_.renumber) label_couplets();
    if (options_.layout == PrintLayout::serial ||
        options_.back_references == BackReferences::none) {
      for (auto& couplet : relabelled_.couplets) couplet.back_references.clear();
    } else if (options_.back_references == BackReferences::from_graph) {
      back_references_from_graph();
    } else if (options_.renumber) {
      renumber_back_references();
    }
    return std::move(relabelled_);
  }

 private:
  void label_couplets() {
    bool const serial = options_.layout == PrintLayout::serial;
    std::uint32_t count = 0;
    std::uint32_t last_number = 0;
    for (auto const& one : print_order(edition_, options_.layout).leads) {
      if (one.number <= last_number) count = 0;  // a part that begins at 1 again
      last_number = one.number;
      auto& couplet = relabelled_[one.lead.couplet];
      couplet.leads[one.lead.ordinal].label.clear();  // it had the old number
      if (one.lead.ordinal != 0) continue;
      ++count;
      couplet.label = std::to_string(serial ? one.number : count);
    }
  }

  void back_references_from_graph() {
    for (auto& couplet : relabelled_.couplets) couplet.back_references.clear();
    for (auto const& from : relabelled_.couplets) {
      for (auto const& lead : from.leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to == nullptr) continue;
        auto& parents = relabelled_[to->couplet].back_references;
        // Both leads of one couplet may lead here.
        if (parents.empty() || parents.back().label != from.label) {
          parents.push_back({from.label, {}});
        }
      }
    }
  }

  // The new number of the couplet that was meant; what named no couplet is left out.
  void renumber_back_references() {
    std::unordered_map<std::string_view, std::uint32_t> by_label;
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      by_label.emplace(edition_.couplets[c].label, c);
    }
    for (auto& couplet : relabelled_.couplets) {
      std::vector<BackReference> kept;
      for (auto const& reference : couplet.back_references) {
        std::string_view label = reference.label;
        auto found = by_label.find(label);
        // "5'" and "5b" are leads of couplet 5.
        for (auto last = code_point_before(label, label.size());
             found == by_label.end() && last.length > 0 && !is_digit(last.value);
             last = code_point_before(label, label.size())) {
          label.remove_suffix(last.length);
          found = by_label.find(label);
        }
        if (found == by_label.end()) continue;
        kept.push_back({relabelled_.couplets[found->second].label, reference.place});
      }
      couplet.back_references = std::move(kept);
    }
  }

  Edition const& edition_;
  PrintOptions const& options_;
  Edition relabelled_;
};

}  // namespace
}  // namespace printed

Edition relabelled(Edition const& edition, PrintOptions const& options) {
  return printed::Relabeller{edition, options}.run();
}

}  // namespace keydrift
