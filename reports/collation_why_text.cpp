// Why couplets correspond, or have no counterpart, for a terminal.
#include <fmt/format.h>

#include "keydrift/reports/collation_parts.hpp"
#include "keydrift/reports/terminal.hpp"

namespace keydrift {

using namespace reports;
namespace {

// More names than these are counted.
constexpr std::size_t kMostNames = 8;

std::string figure_of_agreement(double agreement) { return fmt::format("{:.2f}", agreement); }

class WhyPage {
 public:
  WhyPage(Edition const& old_edition, Edition const& new_edition, Alignment const& alignment,
          TerminalStyle style)
      : old_edition_{old_edition},
        new_edition_{new_edition},
        alignment_{alignment},
        called_{edition_names(old_edition, new_edition)},
        page_{style} {}

  void set(CoupletReasons const& reasons) {
    page_.blank();
    if (reasons.counterpart) {
      set_pair(reasons);
    } else {
      set_alone(reasons);
    }
    set_runners_up(reasons);
  }

  std::string take() { return page_.take(); }

 private:
  [[nodiscard]] Edition const& edition(bool of_new) const {
    return of_new ? new_edition_ : old_edition_;
  }
  [[nodiscard]] std::string const& called(bool of_new) const {
    return of_new ? called_.new_name : called_.old_name;
  }
  [[nodiscard]] std::string label(bool of_new, CoupletId couplet) const {
    return edition(of_new)[couplet].label;
  }
  [[nodiscard]] static std::string parts(Similarity const& similarity) {
    return fmt::format("taxa {:.2f}, statements {:.2f}, neighbours {:.2f}", similarity.taxa,
                       similarity.statements, similarity.neighbours);
  }

  void set_pair(CoupletReasons const& reasons) {
    auto const old_couplet = reasons.of_new ? *reasons.counterpart : reasons.couplet;
    auto const new_couplet = reasons.of_new ? reasons.couplet : *reasons.counterpart;
    old_label_ = label(false, old_couplet);
    new_label_ = label(true, new_couplet);
    page_.title(fmt::format("Couplet {} of {} is couplet {} of {}", old_label_, called_.old_name,
                            new_label_, called_.new_name));
    auto const [taxa, statements, neighbours] = similarity_weights();
    auto const whole = taxa + statements + neighbours;
    auto const& similarity = reasons.similarity;
    page_.leader("Agreement of the two couplets", figure_of_agreement(similarity.total), 2);
    page_.leader(fmt::format("in how they part the taxa, {} parts of {}", taxa, whole),
                 figure_of_agreement(similarity.taxa), 4);
    page_.leader(fmt::format("in what their leads say, {} parts", statements),
                 figure_of_agreement(similarity.statements), 4);
    page_.leader(fmt::format("in the couplets before and behind, {} parts", neighbours),
                 figure_of_agreement(similarity.neighbours), 4);
    page_.blank();
    if (reasons.together_with) set_together(old_couplet, new_couplet, *reasons.together_with);
    page_.paragraph(ground(similarity), 2);
    page_.heading("Leads that answer to each other");
    bool first = true;
    for (auto const& leads : reasons.leads) {
      if (!first) page_.blank();
      first = false;
      set_leads(leads);
    }
    page_.heading("Before and behind");
    for (auto const& neighbour : reasons.neighbours) {
      page_.leader(told(neighbour), figure_of_agreement(neighbour.agreement), 2);
    }
  }

  // Why the agreement of the leads below is not that of the couplets.
  void set_together(CoupletId old_couplet, CoupletId new_couplet, CoupletId next) {
    bool const few_is_new =
        new_edition_[new_couplet].leads.size() < old_edition_[old_couplet].leads.size();
    page_.paragraph(
        fmt::format("In the taxa and in what their leads say {} of {} was taken together with {} "
                    "behind it, since {} of {} has as many leads as the two but for the one that "
                    "joins them: so they agree more than the leads below do.",
                    few_is_new ? new_label_ : old_label_, called(few_is_new),
                    label(few_is_new, next), few_is_new ? old_label_ : new_label_,
                    called(!few_is_new)),
        2);
  }

  // By what the two are held to be one couplet.
  [[nodiscard]] static std::string ground(Similarity const& similarity) {
    auto const least = least_agreement();
    bool const by_taxa = similarity.taxa >= least.taxa;
    bool const by_statements =
        similarity.statements >= least.statements && similarity.total > least.total_with_statements;
    if (by_taxa && by_statements) {
      return fmt::format(
          "They are held to be one by how they part the taxa, for which {:.2f} is enough, and "
          "by what their leads say, for which {:.2f} is.",
          least.taxa, least.statements);
    }
    if (by_taxa) {
      return fmt::format(
          "They are held to be one by how they part the taxa, for which {:.2f} is enough.",
          least.taxa);
    }
    if (by_statements) {
      return fmt::format(
          "They are held to be one by what their leads say, for which {:.2f} is enough.",
          least.statements);
    }
    if (similarity.taxa >= least.taxa_with_neighbours &&
        similarity.neighbours >= least.neighbours) {
      return fmt::format(
          "They are held to be one by how they part the taxa together with the couplets before "
          "and behind, for which {:.2f} and {:.2f} are enough.",
          least.taxa_with_neighbours, least.neighbours);
    }
    if (similarity.statements >= least.statements_with_neighbours &&
        similarity.neighbours >= least.neighbours_with_statements) {
      return fmt::format(
          "They are held to be one by what their leads say together with the couplets before and "
          "behind, for which {:.2f} and {:.2f} are enough.",
          least.statements_with_neighbours, least.neighbours_with_statements);
    }
    if (similarity.taxa >= least.taxa_with_statements &&
        similarity.statements >= least.statements_with_taxa &&
        similarity.total >= least.total_with_both) {
      return fmt::format(
          "They are held to be one by all of it together, for which {:.2f} in the taxa, {:.2f} "
          "in what they say and {:.2f} in all are enough.",
          least.taxa_with_statements, least.statements_with_taxa, least.total_with_both);
    }
    return "By itself that would not be enough: they are the upper parts of a couplet that was "
           "divided or of several that were united.";
  }

  void set_leads(LeadReasons const& leads) {
    if (!leads.old_lead || !leads.new_lead) {
      page_.paragraph(leads.old_lead
                          ? fmt::format("{} has no like in {}.",
                                        name_of(old_edition_, leads.old_lead), called_.new_name)
                          : fmt::format("{} has no like in {}.",
                                        name_of(new_edition_, leads.new_lead), called_.old_name),
                      2, 2);
      return;
    }
    page_.paragraph(Words{{fmt::format("{} and {}", name_of(old_edition_, leads.old_lead),
                                       name_of(new_edition_, leads.new_lead)),
                           Face::bold}},
                    2, 2);
    page_.leader("Taxa below, of those that both editions have", figure_of_agreement(leads.taxa),
                 4);
    auto const below = [&](std::string const& where, Edition const& edition,
                           std::vector<TaxonId> const& taxa) {
      if (taxa.empty()) return;
      page_.paragraph(fmt::format("{}: {}", where,
                                  taxa.size() > kMostNames ? counted(taxa.size(), "taxon", "taxa")
                                                           : taxon_names(edition, taxa, ", ")),
                      6, 2);
    };
    below("below both", new_edition_, leads.below_both);
    below(fmt::format("in {} only", called_.old_name), old_edition_, leads.below_old_only);
    below(fmt::format("in {} only", called_.new_name), new_edition_, leads.below_new_only);
    page_.leader("Statements and words", figure_of_agreement(leads.statements), 4);
    for (auto const& pair : leads.compared) {
      auto const was = statement_words(old_edition_, pair.old_statement);
      auto const is = statement_words(new_edition_, pair.new_statement);
      std::string text;
      if (!pair.old_statement) {
        text = fmt::format("{} in {} only", in_curly_quotes(is), called_.new_name);
      } else if (!pair.new_statement) {
        text = fmt::format("{} in {} only", in_curly_quotes(was), called_.old_name);
      } else {
        text = was == is ? in_curly_quotes(is)
                         : fmt::format("{}, now {}", in_curly_quotes(was), in_curly_quotes(is));
      }
      page_.leader(text, figure_of_agreement(pair.agreement), 6);
    }
  }

  // The lead of the other edition that answers to a lead, "" where there is none.
  [[nodiscard]] std::string answering(bool of_new, LeadId lead) const {
    auto const* pair = of_new ? alignment_.of_new(lead.couplet) : alignment_.of_old(lead.couplet);
    if (pair == nullptr) return {};
    for (auto const& leads : pair->leads) {
      auto const& mine = of_new ? leads.new_lead : leads.old_lead;
      auto const& theirs = of_new ? leads.old_lead : leads.new_lead;
      if (!mine || *mine != lead.ordinal || !theirs) continue;
      return of_new ? name_of(old_edition_, LeadId{pair->old_couplet, *theirs})
                    : name_of(new_edition_, LeadId{pair->new_couplet, *theirs});
    }
    return {};
  }

  [[nodiscard]] std::string told_before(bool of_new, LeadId lead, double agreement) const {
    auto const& here = of_new ? new_label_ : old_label_;
    auto const& there = of_new ? old_label_ : new_label_;
    auto const name = name_of(edition(of_new), std::optional{lead});
    auto const other = answering(of_new, lead);
    auto text = fmt::format("{} is reached from {} of {}", here, name, called(of_new));
    if (agreement == 1.0)
      return text + fmt::format(", and {} from its counterpart {}", there, other);
    if (agreement > 0) {
      return text + fmt::format(", and {} from the like of it by another lead or a couplet between",
                                there);
    }
    if (other.empty()) return text + ", which has no counterpart";
    return text + fmt::format(", but {} not from its counterpart {}", there, other);
  }

  [[nodiscard]] std::string told(NeighbourReasons const& neighbour) const {
    switch (neighbour.place) {
      case NeighbourPlace::start:
        return neighbour.agreement > 0 ? "both begin a key" : "only one of them begins a key";
      case NeighbourPlace::before:
        return neighbour.old_lead ? told_before(false, *neighbour.old_lead, neighbour.agreement)
                                  : told_before(true, *neighbour.new_lead, neighbour.agreement);
      case NeighbourPlace::behind:
        break;
    }
    auto const leads_to = [](Edition const& edition, LeadId lead) {
      auto const words = destination_words(edition, edition[lead]);
      return fmt::format("{} leads to {}", name_of(edition, std::optional{lead}),
                         words.empty() ? "nothing" : words);
    };
    if (!neighbour.old_lead || !neighbour.new_lead) {
      return neighbour.old_lead
                 ? leads_to(old_edition_, *neighbour.old_lead) + ", but no lead answers to it"
                 : leads_to(new_edition_, *neighbour.new_lead) + ", but no lead answers to it";
    }
    return fmt::format("{}, and {}: {}", leads_to(old_edition_, *neighbour.old_lead),
                       leads_to(new_edition_, *neighbour.new_lead),
                       neighbour.agreement == 1.0 ? "these correspond"
                       : neighbour.agreement > 0  ? "these correspond across a couplet between"
                                                  : "these do not correspond");
  }

  void set_alone(CoupletReasons const& reasons) {
    old_label_ = reasons.of_new ? "" : label(false, reasons.couplet);
    new_label_ = reasons.of_new ? label(true, reasons.couplet) : "";
    auto const& mine = reasons.of_new ? new_label_ : old_label_;
    page_.title(fmt::format("Couplet {} of {} has no counterpart in {}", mine,
                            called(reasons.of_new), called(!reasons.of_new)));
    if (reasons.part_of) {
      page_.paragraph(
          fmt::format("It is a part of couplet {} of {}, which was {}: {}.",
                      label(!reasons.of_new, *reasons.part_of), called(!reasons.of_new),
                      reasons.of_new ? "divided" : "united from several",
                      reasons.part_apart
                          ? "it hangs elsewhere than the other part, but its leads are said there "
                            "again together with those of that part, and lead to the same taxa or "
                            "are said word for word"
                          : "it hangs beside that couplet's counterpart, the taxa below it lie "
                            "below that couplet, and what it says or where it leads was taken "
                            "from there"),
          2);
    }
    if (!reasons.part_of && !reasons.runners_up.empty()) {
      set_least_agreement();
    }
    if (reasons.runners_up.empty()) {
      page_.paragraph(fmt::format("No couplet of {} has a taxon, a statement or a word in common "
                                  "with it.",
                                  called(!reasons.of_new)),
                      2);
    }
  }

  void set_least_agreement() {
    auto const least = least_agreement();
    page_.paragraph(fmt::format("Two couplets are held to be one when they agree to more than "
                                "{:.2f} in all, and besides to as much as this in any of:",
                                least.total),
                    2);
    page_.leader("the taxa", figure_of_agreement(least.taxa), 4);
    page_.leader("what they say, and more than this in all",
                 fmt::format("{:.2f}, {:.2f}", least.statements, least.total_with_statements), 4);
    page_.leader("the taxa, and the couplets before and behind",
                 fmt::format("{:.2f}, {:.2f}", least.taxa_with_neighbours, least.neighbours), 4);
    page_.leader("what they say, and the couplets before and behind",
                 fmt::format("{:.2f}, {:.2f}", least.statements_with_neighbours,
                             least.neighbours_with_statements),
                 4);
    page_.leader("the taxa, what they say, and all of it",
                 fmt::format("{:.2f}, {:.2f}, {:.2f}", least.taxa_with_statements,
                             least.statements_with_taxa, least.total_with_both),
                 4);
    page_.paragraph("None of those most like it does so and is free.", 2);
  }

  void set_runners_up(CoupletReasons const& reasons) {
    if (reasons.runners_up.empty()) return;
    page_.heading(reasons.counterpart
                      ? fmt::format("Next like {} in {}", label(reasons.of_new, reasons.couplet),
                                    called(!reasons.of_new))
                      : fmt::format("Most like it in {}", called(!reasons.of_new)));
    for (auto const& one : reasons.runners_up) {
      page_.leader(fmt::format("Couplet {}", label(!reasons.of_new, one.couplet)),
                   figure_of_agreement(one.similarity.total), 2);
      page_.paragraph(parts(one.similarity), 4, 2);
      page_.paragraph(why_not(one, reasons), 4, 2);
    }
  }

  [[nodiscard]] std::string why_not(RunnerUp const& one, CoupletReasons const& reasons) const {
    auto const taken_by =
        one.taken_by ? fmt::format("the counterpart of {} of {}",
                                   label(reasons.of_new, *one.taken_by), called(reasons.of_new))
                     : std::string{};
    switch (one.why) {
      case WhyNot::too_unlike:
        return one.taken_by ? fmt::format("too unlike to be one couplet; it is {} ({:.2f})",
                                          taken_by, one.taken_with.total)
                            : "too unlike to be one couplet";
      case WhyNot::better_taken:
        return fmt::format("it is {}, with which it agrees more ({:.2f})", taken_by,
                           one.taken_with.total);
      case WhyNot::worth_more_so:
        return fmt::format("it is {} ({:.2f}): all pairs together agree more so", taken_by,
                           one.taken_with.total);
      case WhyNot::agrees_less:
        return "it agrees less";
      case WhyNot::part:
        return "it is a further part of the same couplet";
      case WhyNot::no_candidate:
        return "not looked at: it shares no set of taxa, no rare word and no neighbour";
    }
    return {};
  }

  Edition const& old_edition_;
  Edition const& new_edition_;
  Alignment const& alignment_;
  EditionNames called_;
  Page page_;
  std::string old_label_;
  std::string new_label_;
};

}  // namespace

std::string collation_why_text(Edition const& old_edition, Edition const& new_edition,
                               Collation const& collation, std::span<CoupletReasons const> reasons,
                               TerminalStyle style) {
  WhyPage page{old_edition, new_edition, collation.alignment, style};
  for (auto const& one : reasons) page.set(one);
  return page.take();
}

}  // namespace keydrift
