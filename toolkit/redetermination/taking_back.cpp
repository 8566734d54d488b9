#include "keydrift/redetermination/taking_back.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/redetermination/identification.hpp"
#include "keydrift/redetermination/row_check.hpp"
#include "keydrift/redetermination/sheet_numbers.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kCandidatesKept = 8;
constexpr std::size_t kNumbersKept = 100'000;

std::string quoted(std::string_view words) { return "\"" + std::string{words} + "\""; }

std::string line_and_file(FilledRow const& row) {
  return "line " + std::to_string(row.line) + " of " + row.file;
}

// Words by which people say that they looked and cannot tell.
bool says_undecided(std::string_view answer) {
  static constexpr std::array<std::string_view, 14> kWords{
      "?",         "-",       "–",       "n/a",          "not visible", "not seen", "cannot see",
      "can't see", "unclear", "missing", "not recorded", "unknown",     "broken",   "undecided"};
  auto const word = fold_words(answer);
  return std::find(kWords.begin(), kWords.end(), word) != kWords.end();
}

bool same_recorded_name(std::string_view a, std::string_view b) {
  return fold_words(a) == fold_words(b) || (!name_key(a).empty() && name_key(a) == name_key(b));
}

// Do the letters of the row belong to its other cells?  Rows without any may come from anywhere.
bool fits_check(FilledRow const& row) {
  if (row.check.empty()) return true;
  std::string letters;
  for (char const c : row.check) {
    if (c != ' ') letters += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  return letters == RowCheck{row.question, row.character}.of(row.number, row.occurrence_id,
                                                             row.scientific_name);
}

}  // namespace

// One row while its sheet is being judged.
struct TakingBack::Reading {
  Entry* entry{};
  std::optional<CharacterIndex> character{};
  Cells cells{};
  std::optional<TaxonId> named{};
  bool name_elsewhere{false};  // a name that the new edition does not have
  [[nodiscard]] bool live() const { return !entry->decided; }
  [[nodiscard]] FilledRow const& row() const { return entry->taken.row; }
};

char const* to_word(Taken taken) {
  switch (taken) {
    case Taken::applied:
      return "applied";
    case Taken::noted:
      return "noted";
    case Taken::refused:
      return "refused";
  }
  return "refused";
}

TakingBack::TakingBack(std::vector<FilledRow> rows) {
  entries_.reserve(rows.size());
  for (auto& row : rows) {
    auto const at = entries_.size();
    if (!row.occurrence_id.empty()) by_id_[row.occurrence_id].push_back(at);
    if (!row.number.empty()) {
      by_number_[row.number].push_back(at);
      by_loose_[loose_number(row.number)].push_back(at);
    }
    entries_.push_back({.taken = {.row = std::move(row)}, .candidates = {}});
  }
}

void TakingBack::refuse(Entry& entry, std::string code, std::string message, std::string remedy) {
  entry.decided = true;
  entry.taken.taken = Taken::refused;
  entry.taken.code = std::move(code);
  entry.taken.message = std::move(message);
  entry.taken.remedy = std::move(remedy);
}

void TakingBack::note(Entry& entry, std::string code, std::string message) {
  refuse(entry, std::move(code), std::move(message), "");
  entry.taken.taken = Taken::noted;
}

// --- first run: which sheets are meant ---------------------------------------------------------

void TakingBack::offer(std::vector<std::size_t> const& entries, Specimen const& specimen,
                       bool by_id, bool exact) {
  for (auto const at : entries) {
    auto& entry = entries_[at];
    if (!entry.candidates.empty() && entry.candidates.back().ordinal == ordinal_) continue;
    ++entry.met;
    if (entry.candidates.size() == kCandidatesKept) continue;
    entry.candidates.push_back({.ordinal = ordinal_,
                                .by_id = by_id,
                                .exact = exact,
                                .number = sheet_number(specimen),
                                .occurrence_id = specimen.occurrence_id,
                                .name = specimen.scientific_name,
                                .storage = specimen.storage});
  }
}

void TakingBack::meet(Specimen const& specimen) {
  auto const number = sheet_number(specimen);
  if (auto const found = by_id_.find(specimen.occurrence_id);
      !specimen.occurrence_id.empty() && found != by_id_.end()) {
    offer(found->second, specimen, true, true);
  }
  if (auto const found = by_number_.find(number); found != by_number_.end()) {
    offer(found->second, specimen, false, true);
  }
  if (auto const found = by_loose_.find(loose_number(number)); found != by_loose_.end()) {
    offer(found->second, specimen, false, false);
  }
  if (numbers_.size() < kNumbersKept) numbers_.push_back(number);
  ++ordinal_;
}

void TakingBack::end_of_first_run() {
  for (auto& entry : entries_) find_sheet(entry);
  for (std::size_t at = 0; at < entries_.size(); ++at) {
    auto& entry = entries_[at];
    if (!entry.decided) by_ordinal_[entry.candidates.front().ordinal].push_back(at);
  }
  numbers_.clear();
  numbers_.shrink_to_fit();
  ordinal_ = 0;
}

void TakingBack::find_sheet(Entry& entry) {
  auto const& row = entry.taken.row;
  auto const keep_if = [&](auto wanted) {
    if (std::none_of(entry.candidates.begin(), entry.candidates.end(), wanted)) return;
    std::erase_if(entry.candidates, [&](Candidate const& c) { return !wanted(c); });
    entry.met = std::min<std::uint64_t>(entry.met, entry.candidates.size());
  };
  auto const called = row.number.empty() ? row.occurrence_id : row.number;
  if (called.empty()) {
    refuse(entry, "no-number", "the row does not say which sheet is meant",
           "fill in the column catalogNumber or occurrenceID");
    return;
  }
  if (entry.candidates.empty()) {
    if (looks_like_power_of_ten(called)) {
      refuse(entry, "number-lost",
             "a spreadsheet made a power of ten of the number and wrote " + quoted(called),
             "format the column as text before the worklist is opened, and write the number again");
      return;
    }
    auto const near = did_you_mean(near_words(called, numbers_));
    refuse(entry, "unknown-sheet", "the archive has no sheet " + quoted(called),
           near.empty() ? "check the number; a spreadsheet may have changed it" : near);
    return;
  }
  if (!fits_check(row)) {
    refuse(entry, "row-check",
           quoted(row.check) +
               " in the column \"rowCheck\" does not belong to the sheet, the name " +
               "and the question of the row",
           "if a column was sorted without the others, fill in a new worklist; if a cell was "
           "changed, put back what it said");
    entry.taken.column = row.check_column;
    return;
  }
  keep_if([](Candidate const& c) { return c.by_id; });
  keep_if([](Candidate const& c) { return c.exact; });
  if (!row.scientific_name.empty()) {
    bool const known = std::any_of(entry.candidates.begin(), entry.candidates.end(), [&](auto& c) {
      return same_recorded_name(c.name, row.scientific_name);
    });
    if (!known) {
      refuse(entry, "another-name",
             "under " + quoted(called) + " the archive has " +
                 quoted(entry.candidates.front().name) + ", not " + quoted(row.scientific_name),
             "see whether the columns of the worklist were sorted apart, or the archive changed "
             "since");
      return;
    }
    keep_if([&](Candidate const& c) { return same_recorded_name(c.name, row.scientific_name); });
  }
  keep_if([&](Candidate const& c) { return c.storage == row.storage; });
  if (entry.candidates.size() > 1 || entry.met > 1) {
    refuse(entry, "several-sheets",
           quoted(called) + " stands for " +
               std::to_string(std::max<std::uint64_t>(entry.met, entry.candidates.size())) +
               " sheets of the archive",
           "fill in the column occurrenceID");
    return;
  }
  auto const& sheet = entry.candidates.front();
  bool const id_only = row.number.empty();
  if (sheet.by_id && !id_only && loose_number(sheet.number) != loose_number(row.number)) {
    refuse(entry, "another-name",
           "the occurrence " + quoted(row.occurrence_id) + " is the sheet " + quoted(sheet.number) +
               ", not " + quoted(row.number),
           "see whether the columns of the worklist were sorted apart");
    return;
  }
  if (!id_only && sheet.number != row.number) {
    entry.taken.message =
        "the number " + quoted(row.number) + " was taken for " + quoted(sheet.number);
    ++result_.numbers_mended;
  }
}

// --- second run: what is answered --------------------------------------------------------------

bool TakingBack::has_person_and_day(Entry& entry) {
  auto const& row = entry.taken.row;
  if (row.answer.empty() && row.new_name.empty()) {
    note(entry, "nothing-answered", "neither an answer nor a new name is given");
  } else if (row.new_name.empty() && says_undecided(row.answer)) {
    note(entry, "not-visible", "the answer " + quoted(row.answer) + " decides nothing");
  } else if (row.by.empty()) {
    refuse(entry, "no-person", "it is not said who looked", "write a name into the column \"by\"");
  } else if (row.date.empty()) {
    refuse(entry, "no-date", "it is not said when", "write a day into the column \"date\"");
  } else if (row.day.empty()) {
    auto const semicolon = row.date_problem.find("; ");
    refuse(entry, "bad-date", row.date_problem.substr(0, semicolon),
           semicolon == std::string::npos ? "" : row.date_problem.substr(semicolon + 2));
  }
  return !entry.decided;
}

void TakingBack::read_answer(Redeterminer const& redeterminer, Verdict const& verdict,
                             Reading& reading) {
  auto const& row = reading.row();
  if (row.answer.empty() || says_undecided(row.answer)) return;
  auto const& space = redeterminer.space();
  Question const* asked = nullptr;
  if (!row.character.empty()) {
    reading.character = space.find(row.character);
    if (!reading.character) reading.character = space.find_column(row.character);
    for (auto const& question : verdict.questions) {
      if (asked == nullptr && question.character == row.character) asked = &question;
    }
  } else {
    auto const words = fold_words(row.question);
    for (auto const& question : verdict.questions) {
      if (words.empty() || words.find(fold_words(question.label)) != std::string::npos) {
        asked = &question;
        break;
      }
    }
    if (asked != nullptr) reading.character = space.find(asked->character);
  }
  if (!reading.character) {
    refuse(*reading.entry, "other-question",
           verdict.questions.empty()
               ? "the sheet is asked for no single character, so the answer " + quoted(row.answer) +
                     " belongs to none"
               : "the answer " + quoted(row.answer) + " belongs to no question about this sheet",
           "write the name into the column \"newName\", or take a new worklist");
    return;
  }
  auto const wanted = fold_words(row.answer);
  std::vector<Answer const*> begun;
  std::vector<std::string> words;
  if (asked != nullptr) {
    for (auto const& answer : asked->answers) {
      auto const one = fold_words(answer.words);
      if (one == wanted) reading.cells = answer.cells;
      if (wanted.size() >= 3 && one.substr(0, wanted.size()) == wanted) begun.push_back(&answer);
      words.push_back(answer.words);
    }
  }
  if (!reading.cells.empty()) return;
  auto observed = space.observe(*reading.character, row.answer, "");
  if (observed.problem.empty() && !observed.cells.empty()) {
    reading.cells = std::move(observed.cells);
    return;
  }
  if (begun.size() == 1) {
    reading.cells = begun.front()->cells;
    return;
  }
  std::string remedy = did_you_mean(near_words(row.answer, words));
  if (remedy.empty() && !words.empty()) {
    remedy = "write one of:";
    for (auto const& word : words) remedy += (&word == &words.front() ? " " : " | ") + word;
  }
  if (remedy.empty()) {
    auto const semicolon = observed.problem.find("; ");
    if (semicolon != std::string::npos) remedy = observed.problem.substr(semicolon + 2);
  }
  refuse(*reading.entry, "unknown-answer",
         quoted(row.answer) + " is no answer about " + space[*reading.character].label,
         std::move(remedy));
}

// Rows about one sheet: of the same character, and of the names given.
void TakingBack::refuse_contradictions(Redeterminer const& redeterminer,
                                       std::vector<Reading>& readings) {
  for (auto& reading : readings) {
    if (!reading.live() || reading.row().new_name.empty()) continue;
    auto const& name = reading.row().new_name;
    auto const placement = redeterminer.place_in_new(name);
    if (placement.kind == PlacementKind::exact || placement.kind == PlacementKind::finer) {
      reading.named = placement.taxa.front();
    } else if (placement.kind == PlacementKind::none) {
      if (!placement.near.empty()) {
        refuse(*reading.entry, "misspelt-name", "the new edition has no " + quoted(name),
               did_you_mean(placement.near));
        continue;
      }
      reading.name_elsewhere = true;
    }
  }
  std::set<Reading*> clashing;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    auto& a = readings[i];
    for (std::size_t j = i + 1; j < readings.size(); ++j) {
      auto& b = readings[j];
      if (!a.live() || !b.live()) continue;
      bool const same_question = a.character && b.character && *a.character == *b.character;
      bool const answers = same_question && !meets(a.cells, b.cells);
      bool const names = !a.row().new_name.empty() && !b.row().new_name.empty() &&
                         name_key(a.row().new_name) != name_key(b.row().new_name);
      if (answers || names) {
        clashing.insert(&a);
        clashing.insert(&b);
      } else if (a.character == b.character && a.cells == b.cells &&
                 name_key(a.row().new_name) == name_key(b.row().new_name)) {
        refuse(*b.entry, "entered-twice", "it says the same as " + line_and_file(a.row()), "");
      }
    }
  }
  for (auto& reading : readings) {
    if (!clashing.contains(&reading)) continue;
    std::string others;
    for (auto& other : readings) {
      if (&other != &reading && clashing.contains(&other)) {
        others += (others.empty() ? "" : ", ") + line_and_file(other.row());
      }
    }
    refuse(*reading.entry, "answers-contradict", "it contradicts " + others,
           "look at the sheet again and keep the row that is right");
  }
}

// Is the name given one to which the key leads from what was seen?
void TakingBack::check_name(Redeterminer const& redeterminer, Verdict const& verdict,
                            Reading& reading) {
  auto const& row = reading.row();
  if (row.new_name.empty() || verdict.terminals.empty()) return;
  bool const by_answer = reading.character.has_value();
  auto const placement = redeterminer.place_in_new(row.new_name);
  bool const possible =
      std::any_of(verdict.terminals.begin(), verdict.terminals.end(), [&](auto const& terminal) {
        return std::find(placement.taxa.begin(), placement.taxa.end(), terminal.taxon) !=
               placement.taxa.end();
      });
  // Without an answer the person overrules the leads, and may: they saw the specimen.
  if (possible || !by_answer) return;
  refuse(*reading.entry, "name-contradicts-answer",
         "from " + quoted(row.answer) + " the key leads to " + redeterminer.new_names(verdict) +
             ", not to " + quoted(row.new_name),
         "mend the answer or the name; a name without an answer is taken as it is");
}

Redeterminer::Counted TakingBack::count(Redeterminer& redeterminer, Specimen const& specimen) {
  auto const found = by_ordinal_.find(ordinal_++);
  if (found == by_ordinal_.end()) return redeterminer.count(specimen);

  std::vector<Reading> readings;
  for (auto const at : found->second) {
    if (has_person_and_day(entries_[at])) readings.push_back({.entry = &entries_[at]});
  }
  auto const before = redeterminer.weigh(specimen);
  auto const asked = redeterminer.verdict(before.verdict);
  for (auto& reading : readings) read_answer(redeterminer, asked, reading);
  refuse_contradictions(redeterminer, readings);

  Looks looks;
  std::vector<Reading> applied;
  for (auto& reading : readings) {
    if (!reading.live()) continue;
    auto trial = looks;
    if (reading.character) trial.seen.push_back({*reading.character, reading.cells});
    trial.named.reset();
    auto const weighed = redeterminer.weigh(specimen, trial);
    if (weighed.contradictory) {
      refuse(*reading.entry, "contradicts-record",
             before.contradictory
                 ? std::string{"the recorded characters of the sheet exclude each other already"}
                 : quoted(reading.row().answer) + " is excluded by what is recorded of the sheet",
             "see which of the two is right, and mend the record if need be");
      continue;
    }
    auto const verdict = redeterminer.verdict(weighed.verdict);
    check_name(redeterminer, verdict, reading);
    if (!reading.live()) continue;
    trial.named = reading.named ? reading.named : looks.named;
    trial.settled = looks.settled || reading.name_elsewhere;
    looks = std::move(trial);
    reading.entry->decided = true;
    reading.entry->taken.taken = Taken::applied;
    applied.push_back(reading);
  }
  auto const counted = redeterminer.count(specimen, looks);
  if (applied.empty()) return counted;
  auto const verdict = redeterminer.verdict(counted.verdict);
  for (auto& reading : applied) {
    reading.entry->taken.outcome = verdict.outcome;
    reading.entry->taken.new_names = redeterminer.new_names(verdict);
  }
  ++result_.sheets;
  identify(redeterminer, specimen, verdict, applied);
  return counted;
}

void TakingBack::identify(Redeterminer const& redeterminer, Specimen const& specimen,
                          Verdict const& verdict, std::vector<Reading> const& readings) {
  auto const& edition = redeterminer.new_edition();
  std::vector<FilledRow const*> rows;
  std::string written;
  bool elsewhere = false;
  for (auto const& reading : readings) {
    rows.push_back(&reading.row());
    if (!reading.row().new_name.empty()) written = reading.row().new_name;
    elsewhere = elsewhere || reading.name_elsewhere;
  }
  bool const one = verdict.terminals.size() == 1;
  bool const keyed =
      verdict.outcome == Outcome::stands ||
      (one && (verdict.outcome == Outcome::renamed || verdict.outcome == Outcome::changes));
  if (!keyed && !elsewhere) {
    ++result_.still_asked;
    return;
  }
  std::vector<SeenWords> seen;
  for (auto const& reading : readings) {
    if (!reading.character) continue;
    seen.push_back(
        {.label = redeterminer.space()[*reading.character].label, .words = reading.row().answer});
  }
  auto identification = make_identification(specimen, edition, rows, seen);
  if (elsewhere) {
    identification.scientific_name = written;
    identification.remarks += "; the name is not in the edition";
  } else if (!one) {
    // A name above several terminals stands whichever of them it is.
    identification.scientific_name = specimen.scientific_name;
    identification.authorship = specimen.authorship;
  } else {
    auto const& terminal = verdict.terminals.front();
    auto const& taxon = edition[terminal.taxon];
    // A name finer than the terminal is kept where it still belongs there.
    auto const finer = [&](std::string const& name) {
      auto const placement = redeterminer.place_in_new(name);
      return placement.kind == PlacementKind::finer && placement.taxa.front() == terminal.taxon;
    };
    if (!written.empty() && finer(written)) {
      identification.scientific_name = written;
    } else if (written.empty() && specimen.qualifier.empty() && finer(specimen.scientific_name)) {
      identification.scientific_name = specimen.scientific_name;
      identification.authorship = specimen.authorship;
    } else {
      identification.scientific_name = taxon.name;
      identification.authorship = taxon.authorship;
    }
    add_way(identification, edition, terminal.route);
  }
  for (auto const& reading : readings) {
    reading.entry->taken.identification_id = identification.identification_id;
  }
  result_.identifications.push_back(std::move(identification));
}

TakenBack TakingBack::finish() && {
  for (auto& entry : entries_) {
    ++result_.counts[static_cast<std::size_t>(entry.taken.taken)];
    result_.rows.push_back(std::move(entry.taken));
  }
  return std::move(result_);
}

}  // namespace keydrift
