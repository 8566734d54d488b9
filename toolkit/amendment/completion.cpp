#include "keydrift/amendment/completion.hpp"

#include <algorithm>
#include <limits>
#include <set>

#include "keydrift/key/prose.hpp"

namespace keydrift::amending {
namespace {

constexpr auto kNowhere = std::numeric_limits<std::uint32_t>::max();

// Rows of the couplets that lead to each couplet, in printed order, each once.
std::vector<std::vector<std::uint32_t>> parents_of(std::vector<Couplet> const& couplets,
                                                   std::vector<std::uint32_t> const& order) {
  std::vector<std::vector<std::uint32_t>> parents(couplets.size());
  for (auto const row : order) {
    for (auto const& lead : couplets[row].leads) {
      auto const* to = std::get_if<ToCouplet>(&lead.destination);
      if (to == nullptr) continue;
      auto& mine = parents[to->couplet.index];
      if (mine.empty() || mine.back() != row) mine.push_back(row);
    }
  }
  return parents;
}

bool prints_back_references(Edition const& edition,
                            std::vector<std::vector<std::uint32_t>> const& parents) {
  std::size_t reached = 0;
  std::size_t printed = 0;
  for (std::size_t c = 0; c < parents.size(); ++c) {
    if (parents[c].empty()) continue;
    ++reached;
    if (!edition.couplets[c].back_references.empty()) ++printed;
  }
  return printed * 2 > reached;
}

bool printed_by_piece(Couplet const& couplet) {
  return std::any_of(couplet.back_references.begin(), couplet.back_references.end(),
                     [](BackReference const& one) { return piece_of(one.place).has_value(); });
}

std::vector<std::uint32_t> alive_rows(Draft const& draft) {
  std::vector<std::uint32_t> rows;
  for (auto const row : draft.order) {
    if (draft.gone[row] == 0) rows.push_back(row);
  }
  return rows;
}

class Settler {
 public:
  explicit Settler(Edition& edition) : edition_{edition} {}

  void run() {
    for (auto& couplet : edition_.couplets) {
      auto const here = couplet.place;
      settle(couplet.place);
      for (auto& reference : couplet.back_references) settle(reference.place);
      for (auto& lead : couplet.leads) settle(lead);
      if (!piece_of(here)) {
        last_ = here;
        last_.begin = last_.end;
      }
    }
    for (auto& taxon : edition_.taxa) settle(taxon.place);
    for (auto& part : edition_.parts) settle(part.place);
  }

 private:
  void settle(Place& place) const {
    if (piece_of(place)) place = last_;
  }
  void settle(Lead& lead) const {
    bool const moved = piece_of(lead.place).has_value();
    settle(lead.place);
    settle(lead.destination_place);
    for (auto& statement : lead.statements) settle(statement.place);
    if (moved) lead.runs.clear();
  }

  Edition& edition_;
  Place last_;
};

}  // namespace

void tell_back_references(Draft& draft, Edition const& original, std::size_t piece,
                          std::vector<OpenDeed>& deeds) {
  std::vector<std::uint32_t> before_order(original.couplets.size());
  for (std::uint32_t c = 0; c < before_order.size(); ++c) before_order[c] = c;
  auto before = parents_of(original.couplets, before_order);
  bool const usual = prints_back_references(original, before);
  before.resize(draft.edition.couplets.size());
  auto const now = parents_of(draft.edition.couplets, alive_rows(draft));
  std::set<std::uint32_t> dealt_with;
  for (auto const& deed : deeds) {
    if (deed.deed.act != AmendmentAct::renumbered) dealt_with.insert(deed.couplet.index);
  }
  for (auto const row : alive_rows(draft)) {
    auto& couplet = draft.edition.couplets[row];
    bool const wanted = usual || !couplet.back_references.empty();
    if (!wanted || printed_by_piece(couplet) || before[row] == now[row]) continue;
    couplet.back_references.clear();
    std::vector<std::string> labels;
    for (auto const parent : now[row]) {
      labels.push_back(draft.edition.couplets[parent].label);
      couplet.back_references.push_back({labels.back(), couplet.place});
    }
    if (dealt_with.count(row) != 0) continue;
    OpenDeed open;
    open.couplet = {row};
    open.deed.act = AmendmentAct::back_references;
    open.deed.couplet = couplet.label;
    open.deed.piece = piece;
    open.deed.detail =
        labels.empty() ? "nothing leads to it any more" : "now reached from " + in_prose(labels);
    deeds.push_back(std::move(open));
  }
}

Completed complete(Draft&& draft) {
  Completed completed;
  completed.rows.assign(draft.edition.couplets.size(), {kNowhere});
  auto const rows = alive_rows(draft);
  for (std::uint32_t c = 0; c < rows.size(); ++c) completed.rows[rows[c]] = {c};

  std::vector<KeyPart> parts;
  for (auto& part : draft.edition.parts) {
    auto const in_part = draft.part[part.start.index];
    if (!draft.alive(part.start)) {
      auto const next = std::find_if(rows.begin(), rows.end(),
                                     [&](auto row) { return draft.part[row] == in_part; });
      if (next == rows.end()) continue;
      part.start = {*next};
    }
    part.start = completed.rows[part.start.index];
    parts.push_back(std::move(part));
  }

  std::vector<Couplet> couplets;
  couplets.reserve(rows.size());
  for (auto const row : rows) couplets.push_back(std::move(draft.edition.couplets[row]));

  auto taxa = std::move(draft.edition.taxa);
  std::vector<std::uint32_t> now(taxa.size(), kNowhere);
  std::vector<Taxon> ordered;
  for (auto& couplet : couplets) {
    for (auto& lead : couplet.leads) {
      if (auto* to = std::get_if<ToCouplet>(&lead.destination)) {
        auto const row = to->couplet.index;
        bool const known = row < completed.rows.size();
        if (known && completed.rows[row].index != kNowhere) {
          to->couplet = completed.rows[row];
        } else {
          // Nothing of what was taken away is left to lead to; its number is still told.
          lead.destination = Unresolved{known ? draft.edition.couplets[row].label : std::string{}};
        }
      } else if (auto* to_taxa = std::get_if<ToTaxa>(&lead.destination)) {
        for (auto& taxon : to_taxa->taxa) {
          auto& row = now[taxon.index];
          if (row == kNowhere) {
            row = static_cast<std::uint32_t>(ordered.size());
            ordered.push_back(std::move(taxa[taxon.index]));
          }
          taxon.index = row;
        }
      }
    }
  }
  completed.edition = std::move(draft.edition);
  completed.edition.parts = std::move(parts);
  completed.edition.couplets = std::move(couplets);
  completed.edition.taxa = std::move(ordered);
  return completed;
}

void settle_places(Edition& edition) { Settler{edition}.run(); }

}  // namespace keydrift::amending
