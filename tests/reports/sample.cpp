#include "sample.hpp"

#include <algorithm>
#include <stdexcept>

#include "edition_builder.hpp"

namespace keydrift::test {
namespace {

// One statement per semicolon; the character is the statement's own words.
void state(Edition& edition) {
  for (auto& couplet : edition.couplets) {
    for (auto& each : couplet.leads) {
      for (std::size_t begin = 0; begin < each.text.size();) {
        auto end = each.text.find("; ", begin);
        if (end == std::string::npos) end = each.text.size();
        Statement statement;
        statement.text = each.text.substr(begin, end - begin);
        statement.text_begin = begin;
        statement.origin = Origin::lexicon;
        statement.any_of = {{.character = "~" + statement.text,
                             .states = {statement.text},
                             .ranges = {},
                             .unit = "",
                             .negated = false}};
        each.statements.push_back(std::move(statement));
        begin = end + 2;
      }
    }
  }
}

Edition old_edition() {
  auto edition = make_edition(
      "orlidae-1968.txt",
      {
          {"1",
           {{"Rostrum with teeth on its edges; claws hairy", "2"},
            {"Rostrum with even edges; claws bare", "4"}}},
          {"2",
           {{"Rostrum longer than the antennal scale; carapace 40–60 mm long", "Orla major"},
            {"Rostrum shorter than the antennal scale; carapace up to 40 mm long", "3"}}},
          {"3",
           {{"Fingers of the claw gaping", "Orla minor"},
            {"Fingers of the claw closing along their whole length", "Orla clausa"}}},
          {"4",
           {{"♂ with a hook on the third leg; tail fan with two spines", "Pellucina hamata"},
            {"♂ without hooks; tail fan without spines", "5"}}},
          {"5", {{"Eyes black", "Pellucina nigra"}, {"Eyes without colour", "Pellucina caeca"}}},
      });
  edition.front.title = "The crayfishes of the Halvern Basin";
  edition.front.edition = "1968";
  edition.front.year = 1968;
  edition.front.scope.region = "Halvern Basin";
  edition.front.scope.life_stage = "adult";
  state(edition);
  return edition;
}

Edition new_edition() {
  auto edition = make_edition(
      "orlidae-2003.txt",
      {
          {"1",
           {{"Rostrum with teeth on its edges; claws hairy (except in Orla clausa)", "2"},
            {"Rostrum with even edges; claws bare", "5"}}},
          {"2",
           {{"Rostrum longer than the antennal scale; carapace 35–60 mm long", "3"},
            {"Rostrum shorter than the antennal scale; carapace up to 40 mm long", "4"}}},
          {"3",
           {{"Underside of the claws red", "Orla rubra"},
            {"Underside of the claws white", "Orla major"}}},
          {"4",
           {{"Fingers of the claw closing along their whole length", "Orla clausa"},
            {"Fingers of the claw gaping", "Orla minor"}}},
          {"5",
           {{"♂ usually with a hook on the third leg; tail fan with two spines",
             "Pellucina hamata"},
            {"♂ without hooks; tail fan without spines", "Nigrella nigra"}}},
      });
  edition.front.title = "The crayfishes of the Halvern Basin and the Outer Marches";
  edition.front.edition = "2003";
  edition.front.year = 2003;
  edition.front.scope.region = "Halvern Basin and the Outer Marches";
  edition.front.scope.life_stage = "adult";
  state(edition);
  auto& claws = edition[lead(0, 0)].statements[1];
  claws.strength = Strength::excepted;
  claws.except = {"Orla clausa"};
  claws.exception_words = "(except in Orla clausa)";
  auto& hook = edition[lead(4, 0)].statements[0];
  hook.strength = Strength::hedged;
  hook.hedge = "usually";
  return edition;
}

std::vector<LeadPair> both() { return {{0, 0}, {1, 1}}; }

void add_couplets(Collation& collation) {
  Similarity const same{1, 1, 1, 1};
  Similarity const near{0.8, 0.75, 1, 0.81};
  collation.alignment.pairs = {
      {CoupletId{0}, CoupletId{0}, near, both()},
      {CoupletId{1}, CoupletId{1}, near, both()},
      {CoupletId{2}, CoupletId{3}, same, {{1, 0}, {0, 1}}},
      {CoupletId{3}, CoupletId{4}, near, both()},
  };
  collation.alignment.only_old = {CoupletId{4}};
  collation.alignment.only_new = {CoupletId{2}};
  collation.couplets = {
      {{CoupletId{0}}, {CoupletId{0}}, {CoupletEvent::restated}, near, both(), true},
      {{CoupletId{1}},
       {CoupletId{1}},
       {CoupletEvent::restated, CoupletEvent::redirected},
       near,
       both(),
       true},
      {{}, {CoupletId{2}}, {CoupletEvent::inserted}, {}, {}, true},
      {{CoupletId{2}},
       {CoupletId{3}},
       {CoupletEvent::renumbered, CoupletEvent::leads_swapped},
       same,
       {{1, 0}, {0, 1}},
       false},
      {{CoupletId{3}},
       {CoupletId{4}},
       {CoupletEvent::renumbered, CoupletEvent::restated, CoupletEvent::redirected},
       near,
       both(),
       true},
      {{CoupletId{4}}, {}, {CoupletEvent::removed}, {}, {}, true},
  };
}

RouteStep step(std::optional<LeadId> old_lead, std::optional<LeadId> new_lead, bool same_lead,
               bool restated) {
  return {old_lead, new_lead, old_lead.has_value() && new_lead.has_value(), same_lead, restated};
}

TaxonChange change(std::vector<TaxonId> before, std::vector<TaxonId> after,
                   std::vector<TaxonEvent> events, std::vector<RouteStep> steps,
                   std::size_t parting) {
  TaxonChange out;
  out.old_ends = before.size();
  out.new_ends = after.size();
  out.old_taxa = std::move(before);
  out.new_taxa = std::move(after);
  out.events = std::move(events);
  out.steps = std::move(steps);
  out.parting = parting;
  return out;
}

void add_taxa(Sample& sample) {
  auto const before = [&](std::string_view name) { return taxon(sample.old_edition, name); };
  auto const after = [&](std::string_view name) { return taxon(sample.new_edition, name); };
  auto& taxa = sample.collation.taxa;
  auto const none = std::nullopt;

  taxa.push_back(change({}, {after("Orla rubra")}, {TaxonEvent::entered},
                        {step(none, lead(0, 0), false, false), step(none, lead(1, 0), false, false),
                         step(none, lead(2, 0), false, false)},
                        0));
  taxa.push_back(
      change({before("Orla major")}, {after("Orla rubra"), after("Orla major")},
             {TaxonEvent::other_route, TaxonEvent::split},
             {step(lead(0, 0), lead(0, 0), true, true), step(lead(1, 0), lead(1, 0), true, true),
              step(none, lead(2, 1), false, false)},
             2));
  taxa.back().relation = Relation::includes;
  taxa.back().basis = MatchBasis::concept_map;
  taxa.back().characters_gained = {"claw-underside"};
  taxa.push_back(
      change({before("Orla clausa")}, {after("Orla clausa")},
             {TaxonEvent::restated_route, TaxonEvent::only_by_exception},
             {step(lead(0, 0), lead(0, 0), true, true), step(lead(1, 1), lead(1, 1), true, false),
              step(lead(2, 1), lead(3, 0), true, false)},
             0));
  taxa.push_back(
      change({before("Orla minor")}, {after("Orla minor")}, {TaxonEvent::restated_route},
             {step(lead(0, 0), lead(0, 0), true, true), step(lead(1, 1), lead(1, 1), true, false),
              step(lead(2, 0), lead(3, 1), true, false)},
             0));
  taxa.push_back(
      change({before("Pellucina nigra")}, {after("Nigrella nigra")},
             {TaxonEvent::other_route, TaxonEvent::renamed},
             {step(lead(0, 1), lead(0, 1), true, false), step(lead(3, 1), lead(4, 1), true, false),
              step(lead(4, 0), none, false, false)},
             2));
  taxa.back().basis = MatchBasis::synonymy;
  taxa.back().characters_lost = {"eye-colour"};
  taxa.push_back(change({before("Pellucina caeca")}, {}, {TaxonEvent::left},
                        {step(lead(0, 1), none, false, false), step(lead(3, 1), none, false, false),
                         step(lead(4, 1), none, false, false)},
                        0));
  sample.collation.taxa_matching.matches = {{before("Orla clausa"), after("Orla clausa"),
                                             Relation::congruent, MatchBasis::same_name, true, ""},
                                            {before("Orla minor"), after("Orla minor"),
                                             Relation::congruent, MatchBasis::same_name, true, ""}};
}

void add_roles(Sample& sample) {
  auto const before = [&](std::string_view name) { return taxon(sample.old_edition, name); };
  auto const after = [&](std::string_view name) { return taxon(sample.new_edition, name); };
  auto& collation = sample.collation;
  RoleChange claws;
  claws.character = "claw-hair";
  claws.transition = RoleTransition::became_exception;
  claws.old_lead = claws.new_lead = lead(0, 0);
  claws.old_statement = claws.new_statement = StatementId{lead(0, 0), 1};
  claws.exceptions_added = {"Orla clausa"};
  claws.old_taxa =
      TaxonSet::of({before("Orla major"), before("Orla minor"), before("Orla clausa")});
  claws.new_taxa = TaxonSet::of(
      {after("Orla rubra"), after("Orla major"), after("Orla clausa"), after("Orla minor")});
  RoleChange hook;
  hook.character = "third-leg-hook";
  hook.transition = RoleTransition::became_hedged;
  hook.old_lead = lead(3, 0);
  hook.new_lead = lead(4, 0);
  hook.old_statement = StatementId{lead(3, 0), 0};
  hook.new_statement = StatementId{lead(4, 0), 0};
  hook.old_taxa = TaxonSet::of({before("Pellucina hamata")});
  hook.new_taxa = TaxonSet::of({after("Pellucina hamata")});
  RoleChange eyes;
  eyes.character = "eye-colour";
  eyes.transition = RoleTransition::dropped;
  eyes.old_lead = lead(4, 0);
  eyes.old_statement = StatementId{lead(4, 0), 0};
  eyes.old_taxa = TaxonSet::of({before("Pellucina nigra")});
  RoleChange carapace;
  carapace.character = "carapace-length";
  carapace.transition = RoleTransition::limits_changed;
  carapace.old_lead = carapace.new_lead = lead(1, 0);
  carapace.old_statement = carapace.new_statement = StatementId{lead(1, 0), 1};
  carapace.old_taxa = TaxonSet::of({before("Orla major")});
  carapace.new_taxa = TaxonSet::of({after("Orla rubra"), after("Orla major")});
  carapace.numbers = "40–60 mm → 35–60 mm";
  collation.roles = {claws, hook, eyes, carapace};
  collation.characters = {
      {"carapace-length", "carapace length", false, {{lead(1, 0), 1}}, {{lead(1, 0), 1}}},
      {"eye-colour", "colour of the eyes", false, {{lead(4, 0), 0}, {lead(4, 1), 0}}, {}},
      {"claw-hair", "hair of the claws", false, {{lead(0, 0), 1}}, {{lead(0, 0), 1}}},
      {"third-leg-hook", "hook of the third leg", false, {{lead(3, 0), 0}}, {{lead(4, 0), 0}}},
      {"claw-underside", "underside of the claws", false, {}, {{lead(2, 0), 0}, {lead(2, 1), 0}}},
  };
}

void add_findings(Sample& sample) {
  sample.proof.findings = {
      finding("dangling-couplet", Severity::error, "orlidae-1968.txt", 4, "31",
              "lead \"2b\" leads to couplet \"31\", which this edition lacks",
              "did you mean \"3\"?"),
      finding("leads-overlap", Severity::warning, "orlidae-1968.txt", 3, "carapace 40–60 mm long",
              "carapace length: the leads of couplet \"2\" both admit 40 mm",
              "say which lead a specimen of exactly 40 mm belongs to"),
      finding("several-ends", Severity::information, "orlidae-1968.txt", 5, "Orla minor",
              "\"Orla minor\" keys out in 2 places", ""),
  };
  sample.proof.findings[0].related = {
      {{.line = 5, .column = 1, .begin = 0, .end = 0}, "couplet \"3\" stands here"}};
  sample.collation.mended = {sample.proof.findings[0]};
  sample.collation.introduced = {finding(
      "character-on-one-side", Severity::warning, "orlidae-2003.txt", 9,
      "♂ usually with a hook on the third leg",
      "the hook is hedged in lead \"5a\" and firm in lead \"5b\"", "hedge both leads or neither")};
  sample.collation.lasting = {sample.proof.findings[1]};
}

}  // namespace

LeadId lead(std::uint32_t couplet, std::uint32_t ordinal) {
  return LeadId{CoupletId{couplet}, ordinal};
}

Finding finding(std::string code, Severity severity, std::string file, std::uint32_t line,
                std::string printed, std::string message, std::string remedy) {
  return {.code = std::move(code),
          .severity = severity,
          .file = std::move(file),
          .place = {.line = line, .column = 5, .begin = 0, .end = 0},
          .printed = std::move(printed),
          .message = std::move(message),
          .remedy = std::move(remedy),
          .related = {}};
}

TaxonId taxon(Edition const& edition, std::string_view name) {
  auto const found = std::find_if(edition.taxa.begin(), edition.taxa.end(),
                                  [&](Taxon const& each) { return each.name == name; });
  if (found == edition.taxa.end()) throw std::logic_error{"no taxon of that name"};
  return TaxonId{static_cast<std::uint32_t>(found - edition.taxa.begin())};
}

Sample make_sample() {
  Sample sample;
  sample.old_edition = old_edition();
  sample.new_edition = new_edition();
  add_couplets(sample.collation);
  add_taxa(sample);
  add_roles(sample);
  add_findings(sample);
  sample.collation.scope_changes = {"region: Halvern Basin → Halvern Basin and the Outer Marches"};
  sample.collation.old_coverage = {18, 0, 12, 2, 4};
  sample.collation.new_coverage = {18, 1, 12, 2, 3};
  sample.collation.changes_meaning = true;
  sample.proof.coverage = sample.collation.old_coverage;
  sample.proof.numbers = KeyNumbers{.couplets = 5,
                                    .leads = 10,
                                    .terminals = 6,
                                    .terminal_ends = 6,
                                    .beyond_start = 0,
                                    .behind_circles = 0,
                                    .polytomies = 0,
                                    .reticulations = 0,
                                    .shortest_route = 2,
                                    .longest_route = 3,
                                    .mean_route = 2.6667,
                                    .entropy_bound = 2.585,
                                    .huffman_bound = 2.6667,
                                    .unparted_ends = 0,
                                    .evenness = 1,
                                    .colless = 0.1,
                                    .comb_couplets = 2,
                                    .root_share = 0.5,
                                    .single_statement_couplets = 2};
  sample.proof.frequencies = FrequencyNumbers{.taxa = 5,
                                              .total = 120,
                                              .mean_route = 2.2,
                                              .entropy = 1.9,
                                              .entropy_bound = 1.9,
                                              .huffman_bound = 2};
  sample.proof.difficulties = DifficultyNumbers{.couplets = {3, 1, 1, 0},
                                                .unrated = 0,
                                                .hard_early = 1,
                                                .mean_cost = 4.5,
                                                .taxa_behind_hard = 2,
                                                .taxa = 6};
  ExpectedRight right{.rates = {.rate = .02}, .mean = .941, .frequency_mean = .957, .taxa = {}};
  right.rates.by_difficulty[static_cast<std::size_t>(Difficulty::microscope)] = .1;
  double chance = .8645;
  for (TaxonId t; t.index < sample.old_edition.taxa.size(); ++t.index) {
    right.taxa.push_back({t, chance});
    chance += .0131;
  }
  sample.proof.right = right;
  add_archive(sample);
  return sample;
}

}  // namespace keydrift::test
