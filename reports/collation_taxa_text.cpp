// Taxa that change couplet, with both routes laid side by side.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "keydrift/reports/collation_parts.hpp"
#include "keydrift/reports/page_parts.hpp"
#include "keydrift/reports/setting.hpp"

namespace keydrift::reports {
namespace {

// One step of the table of routes: both leads' names over the mark.
struct Cell {
  std::string old_name;
  std::string new_name;
  std::string mark;
  std::size_t width{};
};

// Of a run of steps that all bear the same mark so many at its start and at its end are set, of a
// way that is still too long so many steps in all, and so many names of characters or leads: the
// JSON has more of them.
constexpr std::size_t most_of_a_run = 3;
constexpr std::size_t most_cells = 48;
constexpr std::size_t most_names = 12;

std::string padded(std::string_view text, std::size_t width) {
  std::string out{text};
  auto const taken = display_width(text);
  if (width > taken) out.append(width - taken, ' ');
  return out;
}

// The steps of a taxon: of long runs and of very long ways the middle is left out and stands as an
// ellipsis, with the number of steps and the mark that all of them bear below it.
std::vector<Cell> cells_of(Page const& page, CollationView const& view, TaxonChange const& taxon) {
  auto const clean = [&page](std::string_view text) { return clean_text(text, page.unicode()); };
  bool const one_sided = taxon.old_taxa.empty() || taxon.new_taxa.empty();
  auto const mark = [&](RouteStep const& step) {
    return clean(one_sided ? std::string_view{} : mark_of(step));
  };
  auto const ellipsis = [&](std::size_t left_out, std::string const& all_bear) {
    Cell cell{taxon.old_taxa.empty() ? "" : clean("…"), taxon.new_taxa.empty() ? "" : clean("…"),
              grouped(left_out) + all_bear, 0};
    cell.width = std::max(display_width(cell.mark), display_width(clean("…"))) + 2;
    return cell;
  };
  std::vector<Cell> cells;
  std::vector<std::size_t> stand_for;  // steps, by cell
  auto const leave_out = [&](std::size_t count, std::string const& all_bear) {
    if (count == 0) return;
    cells.push_back(ellipsis(count, all_bear));
    stand_for.push_back(count);
  };
  auto const& steps = taxon.steps;
  auto before = taxon.steps_before;  // they agree, as what follows them does
  for (std::size_t begin = 0; begin < steps.size();) {
    auto const all_bear = mark(steps[begin]);
    auto end = begin + 1;
    while (end < steps.size() && mark(steps[end]) == all_bear) ++end;
    if (!all_bear.empty()) leave_out(std::exchange(before, 0), "");
    bool const shortened = before > 0 || end - begin > 2 * most_of_a_run + 1;
    auto const first = before > 0 ? std::size_t{0} : most_of_a_run;
    for (auto i = begin; i < end; ++i) {
      if (shortened && i == begin + first) {
        auto const last = std::max(i, end - std::min(most_of_a_run, end - begin));
        leave_out(std::exchange(before, 0) + last - i, all_bear);
        i = last;
      }
      auto const& step = steps[i];
      Cell cell{clean(step.old_lead ? lead_name(view.old_edition, *step.old_lead) : "·"),
                clean(step.new_lead ? lead_name(view.new_edition, *step.new_lead) : "·"), all_bear,
                0};
      cell.width = std::max(display_width(cell.old_name), display_width(cell.new_name)) + 2;
      cells.push_back(std::move(cell));
      stand_for.push_back(1);
    }
    begin = end;
  }
  leave_out(before + taxon.steps_after, "");
  if (cells.size() > most_cells) {
    auto const first = cells.begin() + static_cast<std::ptrdiff_t>(most_cells - 8);
    auto const last = cells.end() - 7;
    std::size_t left_out = 0;
    for (auto i = most_cells - 8; i < cells.size() - 7; ++i) left_out += stand_for[i];
    *first = ellipsis(left_out, "");
    cells.erase(first + 1, last);
  }
  return cells;
}

// Does cells_of() leave any of it out?
bool is_shortened(TaxonChange const& taxon) {
  if (taxon.steps_before + taxon.steps_after > 0 || taxon.steps.size() > most_cells) return true;
  std::size_t run = 0;
  for (std::size_t i = 0; i < taxon.steps.size(); ++i) {
    bool const goes_on = i > 0 && mark_of(taxon.steps[i]) == mark_of(taxon.steps[i - 1]);
    run = goes_on ? run + 1 : 1;
    if (run > 2 * most_of_a_run + 1) return true;
  }
  return false;
}

// The steps as rows: the old route, the new one, and marks where they differ; set in as many
// blocks as the width asks for.
void set_steps(Page& page, CollationView const& view, TaxonChange const& taxon) {
  auto const clean = [&page](std::string_view text) { return clean_text(text, page.unicode()); };
  auto const old_head = clean(view.called.old_name);
  auto const new_head = clean(view.called.new_name);
  auto const cells = cells_of(page, view, taxon);
  auto const head_width =
      std::min(std::max(display_width(old_head), display_width(new_head)) + 2, page.width() / 3);
  std::size_t at = 0;
  while (at < cells.size()) {
    std::string old_row;
    std::string new_row;
    std::string marks;
    std::size_t used = Page::kMargin + head_width;
    auto const begin = at;
    while (at < cells.size() && (at == begin || used + cells[at].width <= page.width())) {
      auto const& cell = cells[at];
      old_row += padded(cell.old_name, cell.width);
      new_row += padded(cell.new_name, cell.width);
      marks += padded(cell.mark, cell.width);
      used += cell.width;
      ++at;
    }
    auto const row = [&](std::string_view head, std::string const& text) {
      // Set as it stands: the blanks between the steps keep them in line.
      auto const cut =
          wrap({{std::string{head}, Face::plain}}, head_width - 1, 0, 0, page.unicode());
      Line line = cut.front();
      line.runs.push_back({std::string(head_width - line.width, ' ') + text, Face::plain});
      page.line(line, Page::kMargin);
    };
    if (begin > 0) page.blank();
    if (!taxon.old_taxa.empty()) row(old_head, old_row);
    if (!taxon.new_taxa.empty()) row(new_head, new_row);
    if (marks.find_first_not_of(' ') != std::string::npos) row("", marks);
  }
}

// The step that a block of taxa is set under: the first that takes another way, else the first that
// says something else.  Absent for taxa that entered or left, whose whole way is new or gone.
std::optional<RouteStep> parting_of(TaxonChange const& taxon) {
  if (taxon.old_taxa.empty() || taxon.new_taxa.empty()) return std::nullopt;
  for (auto const& step : taxon.steps) {
    if (auto const mark = mark_of(step); !mark.empty() && mark != "§") return step;
  }
  if (taxon.parting && *taxon.parting < taxon.steps.size()) return taxon.steps[*taxon.parting];
  return std::nullopt;
}

void set_parting(Page& page, CollationView const& view, RouteStep const& step) {
  auto const column = [&page](Edition const& edition, std::optional<LeadId> const& lead) {
    if (!lead) {
      return wrap({{"no such step", Face::plain}}, page.column_width(), 0, 0, page.unicode());
    }
    return set_lead(lead_setting(edition, *lead, label_width(edition, lead->couplet)),
                    page.column_width(), page.unicode());
  };
  page.blank();
  page.columns(mark_of(step), column(view.old_edition, step.old_lead),
               column(view.new_edition, step.new_lead));
}

void set_characters(Page& page, CollationView const& view, std::string_view how,
                    std::vector<std::string> const& ids, std::size_t others) {
  if (ids.empty()) return;
  std::vector<std::string> labels;
  for (auto const& id : ids) {
    if (labels.size() == most_names) break;
    labels.push_back(view.label(id));
  }
  others += ids.size() - labels.size();
  if (others > 0) labels.push_back(counted(others, "other"));
  page.paragraph(fmt::format("{} {}.", how, enumerated(labels)), Page::kMargin, 2);
}

void set_taxon(Page& page, CollationView const& view, TaxonChange const& taxon) {
  page.blank();
  Words headline{
      {capitalised(taxa_in_words(taxon, view.old_edition, view.new_edition)), Face::bold},
      {fmt::format(": {}", events_in_words(taxon.events)), Face::plain}};
  if (!taxon.old_taxa.empty() && !taxon.new_taxa.empty() && taxon.old_ends != taxon.new_ends) {
    headline.push_back({fmt::format(" ({} before, {} now)", counted(taxon.old_ends, "end"),
                                    grouped(taxon.new_ends)),
                        Face::plain});
  }
  page.paragraph(headline, 2, 2);
  set_steps(page, view, taxon);
  if (taxon.old_taxa.empty() || taxon.new_taxa.empty()) return;
  set_characters(page, view, "No longer told by", taxon.characters_lost, taxon.others_lost);
  set_characters(page, view, "Now told by", taxon.characters_gained, taxon.others_gained);
}

}  // namespace

bool changes_couplet(TaxonChange const& taxon) {
  return std::any_of(taxon.events.begin(), taxon.events.end(), [](TaxonEvent event) {
    return event != TaxonEvent::same_route && event != TaxonEvent::restated_route &&
           event != TaxonEvent::renamed;
  });
}

void set_taxa(Page& page, CollationView const& view) {
  auto const& taxa = view.collation.taxa;
  // Taxa that part at one place are set under it, in the order in which the places come up.
  struct Place {
    std::optional<RouteStep> step;
    std::vector<TaxonChange const*> members;
  };
  std::vector<Place> places;
  std::map<std::pair<std::optional<LeadId>, std::optional<LeadId>>, std::size_t> known;
  for (auto const& taxon : taxa) {
    if (!changes_couplet(taxon)) continue;
    auto const step = parting_of(taxon);
    auto const leads = step ? std::pair{step->old_lead, step->new_lead}
                            : std::pair<std::optional<LeadId>, std::optional<LeadId>>{};
    auto const [at, fresh] = known.try_emplace(leads, places.size());
    if (fresh) places.push_back({step, {}});
    places[at->second].members.push_back(&taxon);
  }
  if (!places.empty()) {
    page.heading("Taxa that change couplet");
    bool const shortened = std::any_of(taxa.begin(), taxa.end(), [](TaxonChange const& taxon) {
      return changes_couplet(taxon) && is_shortened(taxon);
    });
    page.paragraph(
        fmt::format("By the place where the ways part; then the leads on the way to each taxon, "
                    "step beside step: * a step of the new edition only, † of the old one only, "
                    "‡ another couplet or lead, § a lead that says something else{}.",
                    shortened ? ", … steps left out, with their number and the mark that they all "
                                "bear"
                              : ""),
        2);
    page.blank();
    set_column_heads(page, view);
  }
  set_in_parts(page, places.size(), [&](Page& part, std::size_t at) {
    auto const& [place, members] = places[at];
    if (place) set_parting(part, view, *place);
    for (auto const* taxon : members) set_taxon(part, view, *taxon);
  });

  bool any = false;
  for (auto const& taxon : taxa) {
    if (!has_event(taxon, TaxonEvent::renamed)) continue;
    if (!any) {
      page.heading("Names");
      page.paragraph("The same taxon under another name.", 2);
      page.blank();
    }
    any = true;
    page.leader(
        fmt::format("{}, by {}", taxon_names(view.old_edition, taxon.old_taxa, ", "),
                    taxon.basis == MatchBasis::same_name ? "its name" : to_word(taxon.basis)),
        taxon_names(view.new_edition, taxon.new_taxa, ", "), 2);
  }

  std::vector<std::string> restated;
  for (auto const& taxon : taxa) {
    if (changes_couplet(taxon) || !has_event(taxon, TaxonEvent::restated_route)) continue;
    std::string name = taxon_names(view.new_edition, taxon.new_taxa, ", ");
    std::vector<std::string> leads;
    for (auto const& step : taxon.steps) {
      if (step.restated && step.new_lead) {
        leads.push_back(lead_name(view.new_edition, *step.new_lead));
      }
    }
    if (leads.size() > most_names + 1) {
      auto const others = leads.size() - most_names;
      leads.resize(most_names);
      leads.push_back(counted(others, "other"));
    }
    if (!leads.empty()) name += fmt::format(" (at {})", enumerated(leads));
    restated.push_back(std::move(name));
  }
  if (!restated.empty()) {
    page.heading("Taxa on the same way, which says something else");
    for (auto const& name : restated) page.paragraph(name, 2, 2);
  }
}

}  // namespace keydrift::reports
