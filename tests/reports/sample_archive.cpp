// An invented archive under the two editions of sample.cpp.
#include "sample.hpp"

namespace keydrift::test {
namespace {

Specimen specimen(std::uint64_t line, std::string number, std::string name, std::string storage) {
  Specimen out;
  out.line = line;
  out.catalog_number = std::move(number);
  out.scientific_name = std::move(name);
  out.storage = std::move(storage);
  return out;
}

PossibleTerminal terminal(TaxonId id, Arrival arrival, Route route,
                          std::vector<std::string> rests_on = {}) {
  return {id, arrival, std::move(route), std::move(rests_on)};
}

void add_verdicts(Sample& sample) {
  auto const before = [&](std::string_view name) { return taxon(sample.old_edition, name); };
  auto const after = [&](std::string_view name) { return taxon(sample.new_edition, name); };

  Verdict stands;
  stands.outcome = Outcome::stands;
  stands.old_taxa = {before("Orla minor")};
  stands.terminals = {
      terminal(after("Orla minor"), Arrival::fits, {lead(0, 0), lead(1, 1), lead(3, 1)})};
  stands.pairs = {{before("Orla minor"), after("Orla minor")}};

  Verdict renamed;
  renamed.outcome = Outcome::renamed;
  renamed.old_taxa = {before("Pellucina nigra")};
  renamed.terminals = {terminal(after("Nigrella nigra"), Arrival::fits, {lead(0, 1), lead(4, 1)})};
  renamed.pairs = {{before("Pellucina nigra"), after("Nigrella nigra")}};

  Verdict narrowed;
  narrowed.outcome = Outcome::narrowed;
  narrowed.old_taxa = {before("Orla major")};
  narrowed.terminals = {terminal(after("Orla rubra"), Arrival::open,
                                 {lead(0, 0), lead(1, 0), lead(2, 0)}, {"underside of the claws"}),
                        terminal(after("Orla major"), Arrival::open,
                                 {lead(0, 0), lead(1, 0), lead(2, 1)}, {"underside of the claws"})};
  narrowed.pairs = {{before("Orla major"), after("Orla rubra")},
                    {before("Orla major"), after("Orla major")}};
  narrowed.parting = Parting{.old_lead = lead(1, 0),
                             .new_couplet = CoupletId{2},
                             .new_lead = std::nullopt,
                             .deciding = {{true, lead(2, 0), 0, "", false}}};
  narrowed.questions = {
      {.character = "claw-underside",
       .label = "underside of the claws",
       .difficulty = Difficulty::naked_eye,
       .answers = {{"red", {}, Outcome::changes, {after("Orla rubra")}, std::nullopt},
                   {"white", {}, Outcome::stands, {after("Orla major")}, std::nullopt}}}};

  Verdict open;
  open.outcome = Outcome::open;
  open.old_taxa = {before("Orla clausa")};
  open.terminals = {
      terminal(after("Orla clausa"), Arrival::through_exception,
               {lead(0, 0), lead(1, 1), lead(3, 0)}, {"carapace length"}),
      terminal(after("Orla major"), Arrival::open, {lead(0, 0), lead(1, 0), lead(2, 1)},
               {"carapace length", "underside of the claws"})};
  open.pairs = {{before("Orla clausa"), after("Orla clausa")},
                {before("Orla clausa"), after("Orla major")}};
  open.parting = Parting{.old_lead = lead(1, 1),
                         .new_couplet = CoupletId{1},
                         .new_lead = lead(1, 0),
                         .deciding = {{true, lead(1, 0), 1, "", false},
                                      {false, lead(1, 1), 0, "shorter than the scale", false}}};
  open.questions = {
      {.character = "carapace-length",
       .label = "carapace length",
       .difficulty = Difficulty::hand_lens,
       .answers = {{"less than 35 mm", {}, Outcome::stands, {after("Orla clausa")}, std::nullopt},
                   {"35 to 40 mm", {}, Outcome::open, {}, 1}}},
      {.character = "rostrum",
       .label = "length of the rostrum",
       .difficulty = Difficulty::naked_eye,
       .answers = {
           {"shorter than the scale", {}, Outcome::stands, {after("Orla clausa")}, std::nullopt},
           {"longer", {}, Outcome::changes, {after("Orla major")}, std::nullopt}}}};
  open.partly = {{true, lead(1, 0), {1}, {0}}};

  Verdict stranded;
  stranded.outcome = Outcome::stranded;
  stranded.old_taxa = {before("Pellucina caeca")};
  stranded.strands_at = CoupletId{4};
  stranded.may_strand = true;
  stranded.parting = Parting{.old_lead = lead(4, 1),
                             .new_couplet = CoupletId{4},
                             .new_lead = std::nullopt,
                             .deciding = {{true, lead(4, 1), 1, "one spine", true}}};

  Verdict not_keyed;
  not_keyed.why = "“Aus incertus” is a terminal of neither edition";

  Verdict changes;
  changes.outcome = Outcome::changes;
  changes.old_taxa = {before("Orla minor")};
  changes.terminals = {
      terminal(after("Orla rubra"), Arrival::fits, {lead(0, 0), lead(1, 0), lead(2, 0)})};
  changes.pairs = {{before("Orla minor"), after("Orla rubra")}};
  changes.parting = Parting{.old_lead = lead(1, 1),
                            .new_couplet = CoupletId{1},
                            .new_lead = lead(1, 0),
                            .deciding = {{true, lead(1, 0), 1, "37 mm", true}}};

  sample.redetermination.verdicts = {stands, renamed, narrowed, open, stranded, not_keyed, changes};
}

void add_keyout(Sample& sample) {
  sample.specimen = specimen(9, "HLVN 0031", "Orla clausa", "Cabinet 2 / Shelf 1");
  sample.specimen.observations = {{"hair of the claws", "bare", "", 9, 12},
                                  {"carapace length", "37", "mm", 9, 13}};
  auto& keyout = sample.keyout;
  keyout.visits = {
      {CoupletId{0},
       0,
       {{lead(0, 0),
         LeadFit::through_exception,
         {{0, Truth::holds, "with teeth"}, {1, Truth::fails, "bare"}},
         true},
        {lead(0, 1),
         LeadFit::conflict,
         {{0, Truth::fails, "with teeth"}, {1, Truth::holds, "bare"}},
         false}}},
      {CoupletId{1},
       1,
       {{lead(1, 0), LeadFit::open, {{0, Truth::unknown, ""}, {1, Truth::holds, "37 mm"}}, true},
        {lead(1, 1), LeadFit::open, {{0, Truth::unknown, ""}, {1, Truth::holds, "37 mm"}}, true}}},
  };
  keyout.terminals = {terminal(taxon(sample.new_edition, "Orla clausa"), Arrival::through_exception,
                               {lead(0, 0), lead(1, 1), lead(3, 0)}, {"length of the rostrum"})};
  keyout.strands_at = {CoupletId{1}};
  keyout.open_characters = {"length of the rostrum"};
}

}  // namespace

void add_archive(Sample& sample) {
  auto& result = sample.redetermination;
  add_verdicts(sample);
  result.read = 1228;
  result.rejected = 2;
  result.totals = {1203, 1, 1, 2, 1, 1, 0, 0, 0, 19};
  result.totals_by_reading = {result.totals, result.totals, result.totals};
  result.totals_by_reading[2] = {1200, 1, 1, 2, 4, 1, 0, 0, 0, 19};
  result.reading_dependent = 3;
  result.reading_couplets = {{CoupletId{1}, 2}, {CoupletId{4}, 1}};
  result.with_characters = 301;
  result.name_only = 927;
  result.archive = {
      .history = DeterminationCounts{.accepted = 11, .by_core = 1200, .latest = 17, .several = 34},
      .repeated_ids = 2,
      .repeats = {{"urn:n:7", "core.txt", 8, "core.txt", 19},
                  {"urn:n:9", "core.txt", 10, "b.txt", 2}}};
  result.editions = {.decides = true,
                     .counts = {{"1968", EditionRole::old_edition, EditionBasis::cited, 120},
                                {"1968", EditionRole::old_edition, EditionBasis::by_date, 1000},
                                {"2003", EditionRole::new_edition, EditionBasis::cited, 11},
                                {"1951", EditionRole::other, EditionBasis::by_date, 15},
                                {"", EditionRole::old_edition, EditionBasis::unknown, 82}},
                     .unnamed = 8,
                     .unnamed_works = {{"Orm 1968, second printing", 4},
                                       {"Tal 1931", 1},
                                       {"Tal 1932", 1},
                                       {"Tal 1933", 1},
                                       {"Tal 1934", 1},
                                       {"Tal 1935", 1}}};
  result.from_to = {
      {"Orla minor", "Orla minor", {1203, 0, 0, 0, 0, 0, 0, 0, 0, 0}, 1203},
      {"Aus incertus", "(not keyed)", {0, 0, 0, 0, 0, 0, 0, 0, 0, 19}, 19},
      {"Orla major", "Orla rubra | Orla major", {0, 0, 0, 2, 0, 0, 0, 0, 0, 0}, 2},
      {"Orla clausa", "Orla clausa | Orla major", {0, 0, 0, 0, 1, 0, 0, 0, 0, 0}, 1},
      {"Orla minor", "Orla rubra", {0, 0, 1, 0, 0, 0, 0, 0, 0, 0}, 1},
      {"Pellucina caeca", "(stranded)", {0, 0, 0, 0, 0, 1, 0, 0, 0, 0}, 1},
      {"Pellucina nigra", "Nigrella nigra", {0, 1, 0, 0, 0, 0, 0, 0, 0, 0}, 1},
  };
  result.by_storage = {{"Cabinet 1 / Shelf 1", {0, 0, 0, 1, 0, 0, 0, 0, 0, 0}}};
  result.by_decade = {{"1970s", {1200, 1, 1, 2, 1, 1, 0, 0, 0, 10}},
                      {"", {3, 0, 0, 0, 0, 0, 0, 0, 0, 9}}};
  result.by_person = {{"A. Nomen", result.totals}};
  auto holotype = specimen(2, "HLVN 0007", "Orla major", "Cabinet 1 / Shelf 1");
  holotype.type_status = "holotype of Orla major";
  result.to_look_at = {
      {specimen(3, "HLVN 0010", "Orla major Smith, 1901", "Cabinet 1 / Shelf 2"), 2,
       "Orla rubra | Orla major"},
      {holotype, 2, "Orla rubra | Orla major"},
      {specimen(9, "HLVN 0031", "Orla clausa", "Cabinet 2 / Shelf 1"), 3,
       "Orla clausa | Orla major"},
      {specimen(12, "", "Pellucina caeca", ""), 4, ""},
  };
  result.to_relabel = {
      {specimen(5, "HLVN 0012", "Pellucina nigra", "Cabinet 4 / Shelf 1"), 1, "Nigrella nigra"}};
  std::string const underside = "underside of the claws: red → becomes Orla rubra; white → stands";
  result.worklist = {
      {{}, "Cabinet 1 / Shelf 1", underside, 1, true, false, {1}, 1, 2},
      {{}, "", "", 1, false, false, {3}, 1, 4},
      {{}, "Cabinet 1 / Shelf 2", underside, 1, false, false, {0}, 1, 2},
      {{},
       "Cabinet 2 / Shelf 1",
       "carapace length: less than 35 mm → stands; 35 to 40 mm → then length of the rostrum",
       2,
       false,
       false,
       {2},
       1,
       3},
  };
  result.different_questions = 3;
  auto voucher = specimen(40, "HLVN 0100", "Orla minor", "Cabinet 3 / Shelf 1");
  voucher.voucher = true;
  result.expectations = {{holotype, 2, "Orla rubra | Orla major"}, {voucher, 6, "Orla rubra"}};
  result.failures = {{1, true}};
  result.sheets_to_look_at = result.to_look_at.size();
  result.sheets_to_relabel = result.to_relabel.size();
  result.expected = result.expectations.size();
  result.failed = result.failures.size();
  LookAlikeResult look_alike;
  look_alike.specimen = specimen(2, "LA 1", "Extranea vaga", "");
  look_alike.old_taxa = {taxon(sample.old_edition, "Orla major")};
  look_alike.new_stop = CoupletId{1};
  look_alike.partly = {{true, lead(1, 0), {1}, {0}}};
  result.look_alikes = {look_alike};
  result.findings = {finding("unknown-state", Severity::warning, "archive.csv", 31, "purple",
                             "\"purple\" is no state of \"underside of the claws\" (in 3 records)",
                             "use red or white")};
  add_keyout(sample);
}

}  // namespace keydrift::test
