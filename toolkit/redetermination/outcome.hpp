#pragma once
// What becomes of a specimen between two editions: the result values.  Reports show these and
// compute nothing.

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/archive_counts.hpp"
#include "keydrift/characters/drafting/record_tying.hpp"
#include "keydrift/characters/lexicon.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/spill/fingerprint.hpp"
#include "keydrift/key/spill/stored_list.hpp"
#include "keydrift/redetermination/editions_used.hpp"
#include "keydrift/taxa/concepts.hpp"

namespace keydrift {

enum class Outcome {
  stands,    // same concept, same name, on every possible way
  renamed,   // same concept (or one that takes it in whole), new name: relabel without looking
  changes,   // every possible new terminal is another concept
  narrowed,  // the old concept was split; the evidence does not say which part
  open,      // something must be looked at
  stranded,  // no lead fits at some couplet of the new edition
  leaves_scope,
  enters_scope,
  doubtful,   // the recorded characters never fitted the recorded name
  not_keyed,  // name in neither edition, or evidence unusable
};
inline constexpr std::size_t kOutcomes = 10;
[[nodiscard]] char const* to_word(Outcome outcome);  // "stands", …, "leaves scope", "not keyed"
[[nodiscard]] std::optional<Outcome> outcome_from_word(std::string_view word);

// How a person reads a lead of several statements.
enum class Reading {
  strict,         // all firm statements must hold
  primary_first,  // where they conflict, the first statement decides
  best_overall,   // the lead that fits more of its statements
};
inline constexpr std::size_t kReadings = 3;
[[nodiscard]] char const* to_word(Reading reading);

// The weakest kind of fit along a route.
enum class Arrival { fits, through_exception, open };
[[nodiscard]] char const* to_word(Arrival arrival);

// One possible new terminal.
struct PossibleTerminal {
  TaxonId taxon{};
  Arrival arrival{Arrival::fits};
  Route route{};                        // one way to it that the evidence allows
  std::vector<std::string> rests_on{};  // characters on that way that the evidence leaves open
  bool operator==(PossibleTerminal const&) const = default;
};

// For some completion of the evidence the old edition gives old_taxon and the new one new_taxon.
// An absent member: no lead fits there.
struct PossiblePair {
  std::optional<TaxonId> old_taxon{};
  std::optional<TaxonId> new_taxon{};
  auto operator<=>(PossiblePair const&) const = default;
};

// A statement that decides, in one of the editions.
struct DecidingStatement {
  bool in_new{false};
  LeadId lead{};
  std::uint32_t statement{};
  std::string known{};   // what the evidence says of its character, in words; "" = not recorded
  bool recorded{false};  // known from the record (true) or implied by the old route
};

// Where the ways part.
struct Parting {
  std::optional<LeadId> old_lead{};  // lead that the old route takes there
  std::optional<CoupletId> new_couplet{};
  std::optional<LeadId> new_lead{};  // lead that the first other way takes in the new edition
  std::vector<DecidingStatement> deciding{};
};

// A lead that the specimen fits in part and fails in part: where strays go wrong.
struct PartialFit {
  bool in_new{false};
  LeadId lead{};
  std::vector<std::uint32_t> holds{};  // ordinals of statements
  std::vector<std::uint32_t> fails{};
};

// A question and what follows from each answer.  Nodes of a small decision; node 0 is first.
struct Answer {
  std::string words{};                 // "bifid", "less than 3 mm"
  std::vector<std::uint64_t> cells{};  // the same as a set of cells of the question's character
  Outcome outcome{Outcome::open};      // what follows
  std::vector<TaxonId> new_taxa{};     // possible new names under that answer
  std::optional<std::size_t> next{};   // question to ask then, if the answer does not settle it
};
struct Question {
  std::string character{};  // id
  std::string label{};      // for people
  Difficulty difficulty{Difficulty::naked_eye};
  std::vector<Answer> answers{};
};

// What an outcome rests on: the firm statements of the leads on the ways to its possible terminals,
// those of the old edition that the name implies among them.
enum class Footing {
  understood,  // by marks, the lexicon or numbers
  partly,      // some are known by their own words only
  words_only,  // all are
  nothing,     // no way was walked: scope, or no name
};
inline constexpr std::size_t kFootings = 4;

// What the evidence of a specimen leads to.  Specimens of equal evidence share one verdict.
struct Verdict {
  Outcome outcome{Outcome::not_keyed};
  std::string why{};                          // for not keyed / scope / doubtful: one clause
  std::vector<TaxonId> old_taxa{};            // terminals that the recorded name means
  std::vector<PossibleTerminal> terminals{};  // by taxon
  std::vector<PossiblePair> pairs{};          // ascending
  bool may_strand{false};                     // some completion finds no lead in the new edition
  std::optional<CoupletId> strands_at{};      // for stranded: the new couplet
  std::optional<Parting> parting{};
  std::vector<PartialFit> partly{};
  std::vector<Question> questions{};  // empty when nothing is to be asked
  std::array<Outcome, kReadings> by_reading{};
  bool complete{true};  // false: a limit on routes cut the search (never silent)
  Footing footing{Footing::nothing};
};

struct SpecimenOutcome {
  Specimen specimen{};      // without observations, to stay small
  std::size_t verdict{};    // index into Redetermination::verdicts
  std::string new_names{};  // possible new names joined by " | "; empty when not keyed
};

// One line of the worklist: a group to be answered together.
struct WorkGroup {
  Fingerprint id{};  // Redeterminer::Counted::group of its sheets
  std::string storage{};
  std::string question{};  // equal where the same is asked; reports put it into words
  double cost{1};          // difficulty of the look
  bool has_types{false};
  bool has_vouchers{false};
  std::vector<std::size_t> specimens{};  // indexes into Redetermination::to_look_at, as far as kept
  std::uint64_t sheets{};                // all of them
  std::size_t verdict{};                 // of one of its sheets: says what is asked
};

struct ExpectationFailure {
  std::size_t specimen{};  // index into Redetermination::expectations
  bool in_new{false};      // fails in the new edition (else already in the old one)
};

// A look-alike run through both editions.
struct LookAlikeResult {
  Specimen specimen{};
  std::vector<TaxonId> old_taxa{};  // names that the old edition lets it have; empty: stopped
  std::vector<TaxonId> new_taxa{};
  std::optional<CoupletId> old_stop{};  // where it is stopped
  std::optional<CoupletId> new_stop{};
  std::vector<PartialFit> partly{};
};

struct FromTo {
  std::string from{};  // recorded name's terminal(s), old edition
  std::string to{};    // new names joined by " | ", or "(stranded)" …
  std::array<std::uint64_t, kOutcomes> by_outcome{};
  std::uint64_t specimens{};
};

struct ReadingDependence {
  CoupletId couplet{};  // of the new edition
  std::uint64_t specimens{};
};

// With which editions the specimens were determined.
struct EditionCount {
  std::string edition{};  // label; "" where it is not known, or older than any
  EditionRole role{EditionRole::old_edition};
  EditionBasis basis{EditionBasis::unknown};
  std::uint64_t specimens{};
};
struct EditionCounts {
  // Does what follows from the edition hold?  Only with a table of citations; without one all are
  // judged as named by the old edition.
  bool decides{false};
  std::vector<EditionCount> counts{};  // OLD, NEW, others by label; within one as in EditionBasis
  std::uint64_t unnamed{};             // specimens that cite nothing but works that no row fits
  // Those works, most specimens first; of no more than a bound of them.
  std::vector<std::pair<std::string, std::uint64_t>> unnamed_works{};
};

// In outcome_bytes.cpp; lists that grow with the archive are on the disk (spill/stored_list.hpp).
void write_bytes(ByteWriter& writer, Verdict const& verdict);
void read_bytes(ByteReader& reader, Verdict& verdict);
void write_bytes(ByteWriter& writer, FromTo const& row);
void read_bytes(ByteReader& reader, FromTo& row);
void write_bytes(ByteWriter& writer, WorkGroup const& group);
void read_bytes(ByteReader& reader, WorkGroup& group);

// Everything that the reports of a run show.
struct Redetermination {
  std::uint64_t read{};      // records read
  std::uint64_t rejected{};  // rows set aside by the reader
  ArchiveCounts archive{};   // what else the reader met; whoever read the archive sets it
  Reading reading{Reading::strict};
  std::array<std::uint64_t, kOutcomes> totals{};
  std::array<std::array<std::uint64_t, kOutcomes>, kReadings> totals_by_reading{};
  std::uint64_t reading_dependent{};  // specimens whose outcome differs between readings
  std::vector<ReadingDependence> reading_couplets{};  // most specimens first
  std::uint64_t with_characters{};  // specimens with at least one usable recorded character
  std::uint64_t name_only{};
  std::uint64_t examined{};  // answers about them were taken back
  EditionCounts editions{};
  StoredList<FromTo> from_to{};  // most specimens first, then by name
  std::map<std::string, std::array<std::uint64_t, kOutcomes>> by_storage;
  std::map<std::string, std::array<std::uint64_t, kOutcomes>> by_decade;  // of determination
  std::map<std::string, std::array<std::uint64_t, kOutcomes>> by_person;
  std::map<std::string, std::array<std::uint64_t, kOutcomes>> by_collector;
  std::map<std::string, std::array<std::uint64_t, kOutcomes>> by_region;  // Specimen::region
  StoredList<Verdict> verdicts{};  // by their first specimens
  // The first of each kind in input order, as many as RedetermineOptions say; and how many there
  // are in all.
  std::vector<SpecimenOutcome> to_look_at{};  // narrowed, open, stranded, doubtful
  std::vector<SpecimenOutcome> to_relabel{};  // renamed, changes
  std::uint64_t sheets_to_look_at{};
  std::uint64_t sheets_to_relabel{};
  StoredList<WorkGroup> worklist{};     // types, then vouchers first, then storage, then cost
  std::uint64_t different_questions{};  // WorkGroup::question
  // Types and vouchers in input order; kept as above, those that fail apart from those that do not.
  std::vector<SpecimenOutcome> expectations{};
  std::vector<ExpectationFailure> failures{};
  std::uint64_t expected{};
  std::uint64_t failed{};
  std::vector<LookAlikeResult> look_alikes{};
  std::array<std::array<std::uint64_t, kOutcomes>, kFootings> by_footing{};
  std::uint64_t untied{};           // specimens with a record that could not be tied to the key
  std::vector<RecordTie> ties{};    // what records were taken for by their words; see RecordTying
  std::vector<Finding> findings{};  // unknown states, unusable values (each once, counted)

  // temporary-file: the lists are not whole, and nothing of this may be used.
  [[nodiscard]] std::optional<Finding> failure() const;
  std::optional<Finding> broken{};  // while they were made
};

}  // namespace keydrift
