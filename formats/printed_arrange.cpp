#include "keydrift/formats/printed_arrange.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>
#include <variant>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift {
namespace printed {
namespace {

constexpr std::uint32_t kNowhere = 0xFFFFFFFFU;

// The part that each couplet is printed in: the one that begins at or before it.
std::vector<std::uint32_t> parts_of(Edition const& edition) {
  std::vector<std::uint32_t> part(edition.couplets.size(), 0);
  std::vector<std::pair<std::uint32_t, std::uint32_t>> starts;  // couplet, part
  for (std::uint32_t p = 0; p < edition.parts.size(); ++p) {
    starts.emplace_back(edition.parts[p].start.index, p);
  }
  std::stable_sort(starts.begin(), starts.end());
  for (std::size_t s = 0; s < starts.size(); ++s) {
    auto const end = s + 1 < starts.size() ? starts[s + 1].first : part.size();
    for (auto c = s == 0 ? 0 : starts[s].first; c < end; ++c) part[c] = starts[s].second;
  }
  return part;
}

class Orderer {
 public:
  Orderer(Edition const& edition, PrintLayout layout)
      : edition_{edition},
        nested_{layout != PrintLayout::parallel},
        part_of_{parts_of(edition)},
        done_(edition.couplets.size(), false) {}

  std::vector<PrintedLead> run() && {
    std::vector<std::vector<std::uint32_t>> members(
        std::max<std::size_t>(1, edition_.parts.size()));
    for (std::uint32_t c = 0; c < part_of_.size(); ++c) members[part_of_[c]].push_back(c);
    bool const across = leads_across_parts();
    for (std::uint32_t p = 0; p < members.size(); ++p) {
      if (!across) number_ = 0;
      if (p < edition_.parts.size()) print(edition_.parts[p].start.index);
      for (auto const couplet : members[p]) print(couplet);
    }
    return std::move(order_);
  }

 private:
  [[nodiscard]] bool leads_across_parts() const {
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      for (auto const& lead : edition_.couplets[c].leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to != nullptr && part_of_[to->couplet.index] != part_of_[c]) return true;
      }
    }
    return false;
  }

  // The couplet and, in nested layouts, all that is beneath it and not yet printed.
  void print(std::uint32_t root) {
    if (done_[root]) return;
    struct Open {
      std::uint32_t couplet;
      std::uint32_t next_lead;
    };
    std::vector<Open> open{{root, 0}};
    done_[root] = true;
    while (!open.empty()) {
      auto& top = open.back();
      auto const& couplet = edition_.couplets[top.couplet];
      if (top.next_lead == couplet.leads.size()) {
        open.pop_back();
        continue;
      }
      auto const ordinal = top.next_lead++;
      PrintedLead lead;
      lead.lead = LeadId{CoupletId{top.couplet}, ordinal};
      lead.depth = static_cast<std::uint32_t>(open.size() - 1);
      lead.number = ++number_;
      lead.part = part_of_[top.couplet];
      auto const* to = std::get_if<ToCouplet>(&couplet.leads[ordinal].destination);
      bool const beneath = nested_ && to != nullptr && !done_[to->couplet.index] &&
                           part_of_[to->couplet.index] == lead.part &&
                           !edition_[to->couplet].leads.empty();
      lead.goes_on = beneath;
      order_.push_back(lead);
      if (beneath) {
        done_[to->couplet.index] = true;
        open.push_back({to->couplet.index, 0});
      }
    }
  }

  Edition const& edition_;
  bool nested_;
  std::vector<std::uint32_t> part_of_;
  std::vector<bool> done_;
  std::uint32_t number_{};
  std::vector<PrintedLead> order_;
};

// Builds the edition that a layout holds.
class Arranger {
 public:
  Arranger(Edition const& edition, PrintOptions const& options)
      : edition_{edition}, options_{options}, now_(edition.couplets.size(), kNowhere) {}

  Edition run() && {
    auto const order = lead_order(edition_, options_.layout);
    for (auto const& one : order) {
      if (one.lead.ordinal != 0) continue;
      now_[one.lead.couplet.index] = static_cast<std::uint32_t>(printed_.couplets.size());
      printed_.couplets.push_back(edition_[one.lead.couplet]);
    }
    printed_.name = edition_.name;
    printed_.front = edition_.front;
    squeeze_front();
    label_couplets(order);
    back_references();
    take_parts();
    place_notes();
    redirect();
    take_taxa();
    return std::move(printed_);
  }

 private:
  static void squeeze_in(std::string& text) { text = squeeze(text); }
  static void squeeze_all(std::vector<std::string>& texts) {
    for (auto& text : texts) squeeze_in(text);
  }

  void squeeze_front() {
    auto& front = printed_.front;
    auto& scope = front.scope;
    for (auto* text : {&front.title, &front.edition, &front.language, &scope.taxa, &scope.region,
                       &scope.life_stage, &scope.sex, &scope.material}) {
      squeeze_in(*text);
    }
    for (auto* list : {&front.authors, &scope.places, &scope.excluded_taxa, &scope.listed_taxa}) {
      squeeze_all(*list);
    }
    for (auto& [name, value] : front.other) {
      squeeze_in(name);
      squeeze_in(value);
    }
  }

  void label_couplets(std::vector<PrintedLead> const& order) {
    bool const serial = options_.layout == PrintLayout::serial;
    if (!serial && !options_.renumber) return;
    std::uint32_t count = 0;
    std::uint32_t last_number = 0;
    for (auto const& one : order) {
      if (one.number <= last_number) count = 0;  // a part that begins at 1 again
      last_number = one.number;
      if (one.lead.ordinal != 0) continue;
      ++count;
      printed_.couplets[now_[one.lead.couplet.index]].label =
          std::to_string(serial ? one.number : count);
    }
  }

  void back_references() {
    if (options_.layout == PrintLayout::serial ||
        options_.back_references == BackReferences::none) {
      for (auto& couplet : printed_.couplets) couplet.back_references.clear();
    } else if (options_.back_references == BackReferences::from_graph) {
      back_references_from_graph();
    } else if (options_.renumber) {
      renumber_back_references();
    }
  }

  void back_references_from_graph() {
    for (auto& couplet : printed_.couplets) couplet.back_references.clear();
    for (std::size_t from = 0; from < printed_.couplets.size(); ++from) {
      auto const& label = printed_.couplets[from].label;
      for (auto const& lead : printed_.couplets[from].leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to == nullptr || now_[to->couplet.index] == kNowhere) continue;
        auto& parents = printed_.couplets[now_[to->couplet.index]].back_references;
        // Both leads of one couplet may lead here.
        if (parents.empty() || parents.back().label != label) parents.push_back({label, {}});
      }
    }
  }

  // The new number of the couplet that was meant; what named no couplet is left out.
  void renumber_back_references() {
    std::unordered_map<std::string_view, std::uint32_t> by_label;
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      by_label.emplace(edition_.couplets[c].label, c);
    }
    for (auto& couplet : printed_.couplets) {
      std::vector<BackReference> kept;
      for (auto const& reference : couplet.back_references) {
        std::string_view label = reference.label;
        auto found = by_label.find(label);
        while (found == by_label.end() && !label.empty() &&
               !is_digit(code_point_before(label, label.size()).value)) {
          label.remove_suffix(code_point_before(label, label.size()).length);  // "5'", "5b"
          found = by_label.find(label);
        }
        if (found == by_label.end() || now_[found->second] == kNowhere) continue;
        kept.push_back({printed_.couplets[now_[found->second]].label, {}});
      }
      couplet.back_references = std::move(kept);
    }
  }

  // Places in the new order: part i and what stands around it lie between couplets i - 1 and i.
  static constexpr std::uint64_t kStep = 4;  // note, title, note, couplet

  void take_parts() {
    for (auto part : edition_.parts) {
      part.start = CoupletId{now_[part.start.index]};
      squeeze_in(part.title);
      part.place.begin = part.start.index * kStep + 1;
      printed_.parts.push_back(std::move(part));
    }
    for (std::size_t c = 0; c < printed_.couplets.size(); ++c) {
      printed_.couplets[c].place.begin = c * kStep + 3;
    }
  }

  // A note keeps its place before the couplet that it stood before.
  void place_notes() {
    std::unordered_map<std::uint32_t, Place> title_before;
    for (auto const& part : edition_.parts) {
      if (!part.title.empty()) title_before.emplace(part.start.index, part.place);
    }
    std::uint32_t next = 0;
    for (auto note : edition_.notes) {
      auto const begin = note.place.begin;
      while (next < edition_.couplets.size() && edition_.couplets[next].place.begin < begin) ++next;
      if (next == edition_.couplets.size()) {
        note.place.begin = printed_.couplets.size() * kStep;
      } else {
        auto const title = title_before.find(next);
        bool const behind_title = title != title_before.end() && title->second.begin < begin;
        note.place.begin = now_[next] * kStep + (behind_title ? 2U : 0U);
      }
      squeeze_in(note.text);
      if (!note.text.empty()) printed_.notes.push_back(std::move(note));
    }
    std::stable_sort(printed_.notes.begin(), printed_.notes.end(),
                     [](Note const& a, Note const& b) { return a.place.begin < b.place.begin; });
  }

  void redirect() {
    for (auto& couplet : printed_.couplets) {
      squeeze_in(couplet.label);
      squeeze_all(couplet.notes);
      for (auto& lead : couplet.leads) {
        squeeze_in(lead.text);
        squeeze_in(lead.taxon_remark);
        squeeze_all(lead.notes);
        squeeze_all(lead.figures);
        if (auto* to = std::get_if<ToCouplet>(&lead.destination)) {
          to->couplet.index = now_[to->couplet.index];
        } else if (auto* key = std::get_if<ToKey>(&lead.destination)) {
          squeeze_in(key->key);
        } else if (auto* unresolved = std::get_if<Unresolved>(&lead.destination)) {
          squeeze_in(unresolved->printed);
        }
      }
    }
  }

  // In order of first naming.
  void take_taxa() {
    std::vector<std::uint32_t> now(edition_.taxa.size(), kNowhere);
    for (auto& couplet : printed_.couplets) {
      for (auto& lead : couplet.leads) {
        auto* to = std::get_if<ToTaxa>(&lead.destination);
        if (to == nullptr) continue;
        for (auto& taxon : to->taxa) {
          auto& index = now[taxon.index];
          if (index == kNowhere) {
            index = static_cast<std::uint32_t>(printed_.taxa.size());
            printed_.taxa.push_back(edition_[taxon]);
            squeeze_in(printed_.taxa.back().name);
            squeeze_in(printed_.taxa.back().authorship);
          }
          taxon.index = index;
        }
      }
    }
  }

  Edition const& edition_;
  PrintOptions const& options_;
  Edition printed_;
  std::vector<std::uint32_t> now_;  // couplet of the edition -> couplet as printed
};

}  // namespace

std::vector<PrintedLead> lead_order(Edition const& edition, PrintLayout layout) {
  return Orderer{edition, layout}.run();
}

}  // namespace printed

Edition as_printed(Edition const& edition, PrintOptions const& options) {
  return printed::Arranger{edition, options}.run();
}

}  // namespace keydrift
