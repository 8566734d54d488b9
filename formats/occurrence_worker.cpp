#include "keydrift/formats/occurrence_worker.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/repeated_numbers.hpp"

namespace keydrift {

using namespace tables;

namespace {

using Target = OccurrenceTarget;
using Kind = OccurrenceWorker::State::Column::Kind;

constexpr auto kNoColumn = static_cast<std::size_t>(-1);

// Different words that are numbered, of one column and of all (each some 150 bytes at most).
constexpr std::size_t kWordsOfColumn = 8'192;
constexpr std::size_t kWordsOfAllColumns = 65'536;

std::optional<CodedTerm> term_of(std::string Specimen::*member) {
  constexpr std::array<std::pair<std::string Specimen::*, CodedTerm>, kCodedTerms> kTerms{{
      {&Specimen::scientific_name, CodedTerm::scientific_name},
      {&Specimen::qualifier, CodedTerm::qualifier},
      {&Specimen::identified_by, CodedTerm::identified_by},
      {&Specimen::date_identified, CodedTerm::date_identified},
      {&Specimen::identification_references, CodedTerm::identification_references},
      {&Specimen::type_status, CodedTerm::type_status},
      {&Specimen::sex, CodedTerm::sex},
      {&Specimen::life_stage, CodedTerm::life_stage},
      {&Specimen::reproductive_condition, CodedTerm::reproductive_condition},
      {&Specimen::storage, CodedTerm::storage},
      {&Specimen::recorded_by, CodedTerm::recorded_by},
      {&Specimen::authorship, CodedTerm::authorship},
  }};
  for (auto const& [one, term] : kTerms) {
    if (one == member) return term;
  }
  return std::nullopt;
}

}  // namespace

OccurrenceWorker::State::State(OccurrenceOptions const& the_options,
                               std::vector<Target> const& targets)
    : options{the_options}, rows{the_options, targets} {
  term_columns.fill(kNoColumn);
  for (auto const& target : targets) {
    Column column;
    column.cell = target.column;
    column.codes = CellCodes{kWordsOfColumn};
    switch (target.kind) {
      case Target::Kind::text:
        if (auto const term = term_of(target.member)) {
          column.kind = Kind::term;
          column.ordinal = static_cast<std::size_t>(*term);
          term_columns[column.ordinal] = columns.size();
        } else if (target.member == &Specimen::catalog_number) {
          column.kind = Kind::catalog_number;
          number_cells.insert(number_cells.begin(), target.column);
        } else if (target.member == &Specimen::occurrence_id) {
          column.kind = Kind::occurrence_id;
          number_cells.push_back(target.column);
        }
        break;
      case Target::Kind::place:
      case Target::Kind::places:
        column.kind = target.kind == Target::Kind::place ? Kind::place : Kind::place_list;
        column.ordinal = place_columns.size();
        if (target.region) regions.push_back(place_columns.size());
        place_columns.push_back(columns.size());
        break;
      case Target::Kind::voucher:
        column.kind = Kind::voucher;
        break;
      case Target::Kind::institution:
        column.kind = Kind::institution;
        break;
      case Target::Kind::collection:
        column.kind = Kind::collection;
        break;
      case Target::Kind::observation:
        column.kind = Kind::character;
        column.ordinal = character_columns.size();
        character_columns.push_back(columns.size());
        characters.push_back({target.character.character, target.character.unit});
        break;
    }
    if (options.form != nullptr) {
      auto const& value = options.form->defaults[target.column];
      if (!value.empty()) {
        auto const padded = value + std::string(CsvBlock::kReadable, '\0');
        column.default_code =
            column.codes.add(std::string_view{padded}.substr(0, value.size()), value);
      }
    }
    columns.push_back(std::move(column));
  }
  place_codes.resize(place_columns.size());
  character_codes.resize(character_columns.size());
  specimen.places = place_codes;
  specimen.characters = character_codes;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    auto* const to = number_of(columns[i]);
    if (to == nullptr) {
      others.push_back(i);
      continue;
    }
    numbered.push_back({.cell = columns[i].cell, .column = i, .to = to});
    numbered.back().words.set_default(columns[i].default_code);
    cells_needed = std::max(cells_needed, columns[i].cell + 1);
  }
}

WordCode* OccurrenceWorker::State::number_of(Column const& column) {
  switch (column.kind) {
    case Kind::term:
      return &specimen.terms[column.ordinal];
    case Kind::place:
    case Kind::place_list:
      return &place_codes[column.ordinal];
    case Kind::character:
      return &character_codes[column.ordinal];
    case Kind::voucher:
    case Kind::institution:
    case Kind::collection:
    case Kind::catalog_number:
    case Kind::occurrence_id:
    case Kind::text:
      return nullptr;
  }
  return nullptr;
}

std::string_view OccurrenceWorker::State::cell(CsvBlock::Row const& row, std::size_t column) const {
  if (column >= row.cell_count) return {};
  return block->csv.text(block->csv.cells[row.first_cell + column]);
}

bool OccurrenceWorker::State::clean(std::string_view cell, std::string& to) {
  if (!CellCleaner::is_sound(cell)) return false;
  CellCleaner cleaner;
  to.assign(cleaner.clean(cell, 0));
  return true;
}

bool OccurrenceWorker::State::code(Column& column, std::string_view cell, WordCode& code) {
  if (cell.empty()) {
    code = kNoWord;
  } else if (auto const* known = column.codes.find(cell)) {
    code = *known;
  } else if (!clean(cell, column.unnumbered)) {
    return false;
  } else if (column.codes.full() || words >= kWordsOfAllColumns) {
    code = column.unnumbered.empty() ? kNoWord : kUnnumbered;
  } else {
    code = column.codes.add(cell, column.unnumbered);
    ++words;
  }
  if (code == kNoWord) code = column.default_code;
  return true;
}

bool OccurrenceWorker::State::code(Numbered& one, std::string_view cell) {
  auto& column = columns[one.column];
  if (!code(column, cell, *one.to)) return false;
  if (!cell.empty() && cell.size() <= ShortCells::kBytes && *one.to != kUnnumbered) {
    auto const short_key = ShortCells::key_of(cell.data(), cell.size());
    WordCode known = kNoWord;
    if (!one.words.find(short_key, known)) one.words.add(short_key, *one.to);
  }
  return true;
}

bool OccurrenceWorker::State::take_numbered(CsvBlock::Row const& row) {
  if (row.cell_count < cells_needed) {
    return std::all_of(numbered.begin(), numbered.end(),
                       [&](Numbered& one) { return code(one, cell(row, one.cell)); });
  }
  // Nearly every cell of an archive comes by here.
  auto const* const slices = block->csv.cells.data() + row.first_cell;
  auto const* const bytes = block->csv.bytes.data();
  for (auto& one : numbered) {
    auto const [begin, end] = slices[one.cell];
    std::size_t const size = end - begin;
    if (size <= ShortCells::kBytes &&
        one.words.find(ShortCells::key_of(bytes + begin, size), *one.to)) {
      continue;
    }
    if (!code(one, {bytes + begin, size})) return false;
  }
  return true;
}

bool OccurrenceWorker::State::take_voucher(Column& column, std::string_view cell) {
  WordCode answer = kNoWord;
  if (!code(column, cell, answer)) return false;
  if (answer == kNoWord) return true;
  switch (voucher_answer(word(column, answer))) {
    case VoucherAnswer::yes:
      specimen.voucher = true;
      return true;
    case VoucherAnswer::no:
      return true;
    case VoucherAnswer::unclear:
      return false;
  }
  return false;
}

bool OccurrenceWorker::State::take(Column& column, std::string_view cell) {
  switch (column.kind) {
    case Kind::voucher:
      return take_voucher(column, cell);
    case Kind::institution:
      return clean(cell, institution);
    case Kind::collection:
      return clean(cell, collection);
    case Kind::catalog_number:
      return clean(cell, catalog_number);
    case Kind::occurrence_id:
      return clean(cell, occurrence_id);
    case Kind::text:
      return CellCleaner::is_sound(cell);
    case Kind::term:
    case Kind::place:
    case Kind::place_list:
    case Kind::character:
      break;  // take_numbered()
  }
  return false;
}

CodedSpecimen const* OccurrenceWorker::State::coded(std::size_t index) {
  auto const& row = block->csv.rows[index];
  by_words = false;
  taken = false;
  specimen.line = row.line;
  specimen.voucher = options.all_are_vouchers;
  if (!take_numbered(row)) return nullptr;
  for (auto const other : others) {
    auto& column = columns[other];
    if (!take(column, cell(row, column.cell))) return nullptr;
  }
  bool const something = specimen.term(CodedTerm::scientific_name) != kNoWord ||
                         !catalog_number.empty() || !occurrence_id.empty() ||
                         std::any_of(character_codes.begin(), character_codes.end(),
                                     [](WordCode code) { return code != kNoWord; });
  return something ? &specimen : nullptr;
}

Specimen const* OccurrenceWorker::State::read(std::size_t index) {
  auto const& row = block->csv.rows[index];
  cells.clear();
  for (std::uint32_t i = 0; i < row.cell_count; ++i) {
    cells.push_back(block->csv.text(block->csv.cells[row.first_cell + i]));
  }
  auto& read = rows.read(cells, row.line);
  if (!taken) {
    by_words = true;
    if (OccurrenceRows::is_void(read)) {
      ++rejected;
      return nullptr;
    }
    rows.count(read);
    ++specimens;
  }
  return &read;
}

Specimen const& OccurrenceWorker::State::brief(std::size_t index) {
  auto& brief = brief_specimen;
  auto const term = [&](CodedTerm which) {
    auto const column = term_columns[static_cast<std::size_t>(which)];
    return column == kNoColumn ? std::string_view{} : word(columns[column], specimen.term(which));
  };
  brief.line = block->csv.rows[index].line;
  brief.voucher = specimen.voucher;
  brief.catalog_number.assign(catalog_number);
  brief.occurrence_id.assign(occurrence_id);
  brief.scientific_name.assign(term(CodedTerm::scientific_name));
  brief.type_status.assign(term(CodedTerm::type_status));
  brief.storage.assign(term(CodedTerm::storage));
  brief.identification_references.assign(term(CodedTerm::identification_references));
  brief.date_identified.assign(term(CodedTerm::date_identified));
  return brief;
}

std::uint64_t OccurrenceWorker::State::number() {
  if (by_words) {
    auto const& number = rows.number();
    return number.empty() ? 0 : RepeatedNumbers::fingerprint(number);
  }
  bool const has_number = !catalog_number.empty();
  auto const& id = has_number ? catalog_number : occurrence_id;
  if (id.empty()) return 0;
  key.assign(institution);
  key += '\x1F';
  key += collection;
  key += '\x1F';
  key += has_number ? 'n' : 'o';
  key += id;
  return RepeatedNumbers::fingerprint(key);
}

OccurrenceWorker::OccurrenceWorker(std::unique_ptr<State> state) : state_{std::move(state)} {}
OccurrenceWorker::~OccurrenceWorker() = default;

void OccurrenceWorker::begin(OccurrenceBlock const& block) { state_->block = &block; }
CodedSpecimen const* OccurrenceWorker::coded(std::size_t row) { return state_->coded(row); }
void OccurrenceWorker::take_coded() {
  auto& state = *state_;
  state.taken = true;
  ++state.specimens;
  state.rows.count_coded(state.specimen.term(CodedTerm::scientific_name) != kNoWord,
                         state.specimen.line);
}
Specimen const* OccurrenceWorker::read(std::size_t row) { return state_->read(row); }
Specimen const& OccurrenceWorker::brief(std::size_t row) { return state_->brief(row); }
std::uint64_t OccurrenceWorker::number() { return state_->number(); }

std::string OccurrenceWorker::printed_number(std::size_t row) {
  auto const* state = state_.get();
  for (auto const column : state->number_cells) {
    auto number = CellCleaner::cleaned_copy(state->cell(state->block->csv.rows[row], column));
    if (!number.empty()) return number;
  }
  return {};
}

std::string_view OccurrenceWorker::term(CodedTerm which, WordCode code) const {
  auto const column = state_->term_columns[static_cast<std::size_t>(which)];
  return column == kNoColumn ? std::string_view{} : state_->word(state_->columns[column], code);
}

std::vector<std::string> OccurrenceWorker::places(std::size_t column, WordCode code) const {
  auto const& one = state_->columns[state_->place_columns[column]];
  auto const word = state_->word(one, code);
  if (one.kind == Kind::place_list) return list_items(word);
  return word.empty() ? std::vector<std::string>{} : std::vector{std::string{word}};
}

std::span<std::size_t const> OccurrenceWorker::regions() const { return state_->regions; }

std::string_view OccurrenceWorker::character(std::size_t column, WordCode code) const {
  return state_->word(state_->columns[state_->character_columns[column]], code);
}

std::span<CodedCharacter const> OccurrenceWorker::characters() const { return state_->characters; }

}  // namespace keydrift
