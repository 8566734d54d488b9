#include "keydrift/formats/printed_arrange.hpp"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <utility>
#include <variant>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift {
namespace printed {
namespace {

constexpr std::uint32_t kNotPlaced = 0xFFFFFFFFU;

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

  PrintOrder run() && {
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
    std::vector<Open> open;
    auto const enter = [&](std::uint32_t couplet) {
      done_[couplet] = true;
      order_.couplets.push_back(couplet);
      open.push_back({couplet, 0});
    };
    enter(root);
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
      order_.leads.push_back(lead);
      if (beneath) enter(to->couplet.index);
    }
  }

  Edition const& edition_;
  bool nested_;
  std::vector<std::uint32_t> part_of_;
  std::vector<bool> done_;
  std::uint32_t number_{};
  PrintOrder order_;
};

// Builds the edition that a layout holds.
class Arranger {
 public:
  // `edition`: with the labels that are printed.
  Arranger(Edition const& edition, PrintLayout layout)
      : edition_{edition}, layout_{layout}, now_(edition.couplets.size(), kNotPlaced) {}

  Edition run() && {
    printed_.couplets.reserve(edition_.couplets.size());
    for (auto const couplet : print_order(edition_, layout_).couplets) {
      now_[couplet] = static_cast<std::uint32_t>(printed_.couplets.size());
      printed_.couplets.push_back(edition_.couplets[couplet]);
    }
    printed_.name = edition_.name;
    printed_.front = edition_.front;
    squeeze_front();
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
    std::vector<std::uint32_t> now(edition_.taxa.size(), kNotPlaced);
    for (auto& couplet : printed_.couplets) {
      for (auto& lead : couplet.leads) {
        auto* to = std::get_if<ToTaxa>(&lead.destination);
        if (to == nullptr) continue;
        for (auto& taxon : to->taxa) {
          auto& index = now[taxon.index];
          if (index == kNotPlaced) {
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
  PrintLayout layout_;
  Edition printed_;
  std::vector<std::uint32_t> now_;  // couplet of the edition -> couplet as printed
};

}  // namespace

PrintOrder print_order(Edition const& edition, PrintLayout layout) {
  return Orderer{edition, layout}.run();
}

}  // namespace printed

Edition as_printed(Edition const& edition, PrintOptions const& options) {
  return printed::Arranger{relabelled(edition, options), options.layout}.run();
}

}  // namespace keydrift
