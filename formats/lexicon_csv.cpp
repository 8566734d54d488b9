#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <utility>

#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "keydrift/formats/lexicon_parts.hpp"
#include "keydrift/formats/side_table.hpp"

namespace keydrift {

using namespace tables;

namespace {

constexpr std::string_view kNotToldFromName = "not told apart from";

enum LexiconColumn : std::size_t {
  kCharacter,
  kLabelColumn,
  kStructure,
  kProperty,
  kSubjects,
  kKind,
  kUnitColumn,
  kDifficulty,
  kApplicableIf,
  kTolerance,
  kState,
  kPhrases,
  kNotToldFrom,
  kConfidence,
  kEvidence,
};
constexpr std::array kLexiconColumns{
    WantedColumn{"character", true},       WantedColumn{"label", false},
    WantedColumn{"structure", false},      WantedColumn{"property", false},
    WantedColumn{"subjects", false},       WantedColumn{"kind", false},
    WantedColumn{"unit", false},           WantedColumn{"difficulty", false},
    WantedColumn{"applicable if", false},  WantedColumn{"tolerance", false},
    WantedColumn{"state", true},           WantedColumn{"phrases", false},
    WantedColumn{kNotToldFromName, false}, WantedColumn{"confidence", false},
    WantedColumn{"evidence", false}};
// The last three columns are written where they hold something: a lexicon made by hand has no need
// of them.
constexpr std::size_t kPlainColumns = kPhrases + 1;
constexpr std::string_view kUndetermined = "und";  // BCP 47

bool is_tag_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_tag_letter_or_digit(char c) { return is_tag_letter(c) || (c >= '0' && c <= '9'); }

// Size of a language tag and the ": " behind it at the front of `text` (2 or 3 letters, then
// subtags of 2 to 8 letters or digits), or 0.
std::size_t language_prefix(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && is_tag_letter(text[at])) ++at;
  if (at < 2 || at > 3) return 0;
  while (at < text.size() && text[at] == '-') {
    auto const begin = ++at;
    while (at < text.size() && is_tag_letter_or_digit(text[at])) ++at;
    if (at - begin < 2 || at - begin > 8) return 0;
  }
  return text.substr(at, 2) == ": " ? at + 2 : 0;
}

// Items joined by "|"; "\|" and "\\" stand for a bar and a backslash within one.
std::vector<std::string> split_items(std::string_view cell) {
  std::vector<std::string> items;
  std::string item;
  auto const finish = [&] {
    auto const text = trimmed(item);
    if (!text.empty()) items.emplace_back(text);
    item.clear();
  };
  for (std::size_t i = 0; i < cell.size(); ++i) {
    if (cell[i] == '\\' && i + 1 < cell.size() && (cell[i + 1] == '|' || cell[i + 1] == '\\')) {
      item += cell[++i];
    } else if (cell[i] == '|') {
      finish();
    } else {
      item += cell[i];
    }
  }
  finish();
  return items;
}

std::string escaped_item(std::string_view item) {
  std::string out;
  for (char const c : item) {
    if (c == '\\' || c == '|') out += '\\';
    out += c;
  }
  return out;
}

void append_item(std::string& cell, std::string_view item) {
  if (!cell.empty()) cell += " | ";
  cell += escaped_item(item);
}

std::vector<Phrase> read_phrases(std::string_view cell) {
  std::vector<Phrase> phrases;
  for (auto const& item : split_items(cell)) {
    auto const prefix = language_prefix(item);
    std::string language = prefix == 0 ? "" : item.substr(0, prefix - 2);
    if (language == kUndetermined) language.clear();
    phrases.push_back({std::string{trimmed(std::string_view{item}.substr(prefix))}, language});
  }
  return phrases;
}

std::string phrases_in_cell(std::vector<Phrase> const& phrases) {
  std::string cell;
  for (auto const& phrase : phrases) {
    if (!phrase.language.empty()) {
      append_item(cell, phrase.language + ": " + phrase.text);
    } else if (language_prefix(phrase.text) != 0) {
      append_item(cell, std::string{kUndetermined} + ": " + phrase.text);
    } else {
      append_item(cell, phrase.text);
    }
  }
  return cell;
}

class CsvLexiconReader {
 public:
  CsvLexiconReader(std::string_view file, std::vector<Finding>& findings)
      : file_{file}, findings_{findings} {}

  Lexicon read(std::vector<SideRow> const& rows) {
    lexicon_.name = std::string{file_};
    for (auto const& row : rows) {
      auto const& id = row.cells[kCharacter];
      auto const known = by_id_.find(id);
      if (id.empty() && lexicon_.characters.empty()) {
        add("missing-name", row.places[kCharacter], "", "the first row names no character",
            "write the character's id in the column \"character\"");
        continue;
      }
      if (id.empty()) {
        take_cells(row, lexicon_.characters.size() - 1);
      } else if (known != by_id_.end()) {
        take_cells(row, known->second);
      } else {
        begin_character(row);
      }
    }
    return std::move(lexicon_);
  }

 private:
  Finding& add(std::string code, Place place, std::string const& printed, std::string message,
               std::string remedy) {
    findings_.push_back({std::move(code),
                         Severity::error,
                         std::string{file_},
                         place,
                         printed,
                         std::move(message),
                         std::move(remedy),
                         {}});
    return findings_.back();
  }

  void begin_character(SideRow const& row) {
    by_id_.emplace(row.cells[kCharacter], lexicon_.characters.size());
    LexiconCharacter character;
    character.id = row.cells[kCharacter];
    character.place = row.place;
    lexicon_.characters.push_back(std::move(character));
    // Each cell may stand in any row of the character; take what this one has.
    filled_.emplace_back();
    take_cells(row, lexicon_.characters.size() - 1);
  }

  void take_cells(SideRow const& row, std::size_t at) {
    auto& character = lexicon_.characters[at];
    for (std::size_t column = kLabelColumn; column <= kTolerance; ++column) {
      auto const& cell = row.cells[column];
      if (cell.empty()) continue;
      auto& filled = filled_[at][column];
      if (filled != nullptr) {
        if (filled->cells[column] != cell) report_conflict(row, column, *filled, character.id);
        continue;
      }
      filled = &row;
      set(character, static_cast<LexiconColumn>(column), cell, row.places[column]);
    }
    take_state(row, character);
  }

  void report_conflict(SideRow const& row, std::size_t column, SideRow const& earlier,
                       std::string const& id) {
    auto& finding = add("conflicting-cell", row.places[column], row.cells[column],
                        "\"" + id + "\" has the " + std::string{kLexiconColumns[column].name} +
                            " \"" + row.cells[column] + "\" here and \"" + earlier.cells[column] +
                            "\" in line " + std::to_string(earlier.places[column].line),
                        "keep one of the two and leave the cell blank in further rows");
    finding.related.push_back({earlier.places[column], "the earlier cell"});
  }

  void set(LexiconCharacter& character, LexiconColumn column, std::string const& cell,
           Place place) {
    switch (column) {
      case kLabelColumn:
        character.label = cell;
        break;
      case kStructure:
        character.structure = cell;
        break;
      case kProperty:
        character.property = cell;
        break;
      case kSubjects:
        character.subjects = read_phrases(cell);
        break;
      case kKind:
        character.kind = read_kind(cell, place, file_, findings_);
        break;
      case kUnitColumn:
        character.unit = cell;
        break;
      case kDifficulty:
        character.difficulty = read_difficulty(cell, place, file_, findings_);
        break;
      case kApplicableIf:
        set_condition(character, cell, place);
        break;
      case kTolerance:
        set_tolerance(character, cell, place);
        break;
      case kCharacter:
      case kState:
      case kPhrases:
      case kNotToldFrom:
      case kConfidence:
      case kEvidence:
        break;
    }
  }

  void set_condition(LexiconCharacter& character, std::string const& cell, Place place) {
    auto const equals = cell.find('=');
    auto states = equals == std::string::npos
                      ? std::vector<std::string>{}
                      : split_items(std::string_view{cell}.substr(equals + 1));
    auto const name = trimmed(std::string_view{cell}.substr(0, equals));
    if (states.empty() || name.empty()) {
      add("bad-applicability", place, cell,
          "\"" + cell + "\" does not say which states of which character are needed",
          "write it as \"beak = present | long\"");
      return;
    }
    character.applicable_if = Applicability{std::string{name}, std::move(states)};
  }

  void set_tolerance(LexiconCharacter& character, std::string cell, Place place) {
    auto const printed = cell;
    std::replace(cell.begin(), cell.end(), ',', '.');
    double value = -1;
    auto const [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (error != std::errc{} || end != cell.data() + cell.size() || value < 0 || value >= 1) {
      add("bad-number", place, printed,
          "a tolerance is a share from 0 to less than 1, not \"" + printed + "\"",
          "write 0.1 for a tenth");
      return;
    }
    character.tolerance = value;
  }

  void take_state(SideRow const& row, LexiconCharacter& character) {
    auto const& id = row.cells[kState];
    Support support{row.cells[kConfidence], row.cells[kEvidence]};
    if (id.empty()) {
      for (auto const column : {kPhrases, kNotToldFrom}) {
        if (row.cells[column].empty()) continue;
        add("missing-name", row.places[kState], "",
            column == kPhrases
                ? "the row has phrases but no state of \"" + character.id + "\" that they express"
                : "the row of \"" + character.id +
                      "\" says what is not told apart, but not from which state",
            "write the state's id in the column \"state\"");
      }
      if (!support.empty()) character.support = std::move(support);
      return;
    }
    auto const twin = std::find_if(character.states.begin(), character.states.end(),
                                   [&](LexiconState const& state) { return state.id == id; });
    if (twin != character.states.end()) {
      add("repeated-state", row.places[kState], id,
          "\"" + character.id + "\" has the state \"" + id + "\" twice",
          "put all phrases of the state into one row");
      return;
    }
    character.states.push_back({.id = id,
                                .phrases = read_phrases(row.cells[kPhrases]),
                                .not_told_from = split_items(row.cells[kNotToldFrom]),
                                .support = std::move(support)});
  }

  std::string_view file_;
  std::vector<Finding>& findings_;
  Lexicon lexicon_;
  std::map<std::string, std::size_t> by_id_;
  // The row that gave a character its cell of a column.
  std::vector<std::array<SideRow const*, kLexiconColumns.size()>> filled_;
};

std::vector<std::string> first_cells(LexiconCharacter const& character) {
  std::vector<std::string> cells(kLexiconColumns.size());
  cells[kCharacter] = character.id;
  cells[kLabelColumn] = character.label;
  cells[kStructure] = character.structure;
  cells[kProperty] = character.property;
  cells[kSubjects] = phrases_in_cell(character.subjects);
  cells[kKind] = to_word(character.kind);
  cells[kUnitColumn] = character.unit;
  cells[kDifficulty] = to_word(character.difficulty);
  if (character.applicable_if) {
    std::string states;
    for (auto const& state : character.applicable_if->states) append_item(states, state);
    cells[kApplicableIf] = character.applicable_if->character + " = " + states;
  }
  cells[kTolerance] = shortest_number(character.tolerance);
  cells[kConfidence] = character.support.confidence;
  cells[kEvidence] = character.support.evidence;
  return cells;
}

bool has_support(Lexicon const& lexicon) {
  return std::any_of(
      lexicon.characters.begin(), lexicon.characters.end(), [](LexiconCharacter const& character) {
        return !character.support.empty() ||
               std::any_of(character.states.begin(), character.states.end(),
                           [](LexiconState const& state) {
                             return !state.not_told_from.empty() || !state.support.empty();
                           });
      });
}

}  // namespace

Loaded<Lexicon> tables::read_lexicon_csv(Source source) {
  Loaded<Lexicon> loaded;
  auto table = read_side_table(source, "lexicon", kLexiconColumns);
  loaded.findings = std::move(table.findings);
  if (!table) return loaded;
  auto lexicon = CsvLexiconReader{source.name, loaded.findings}.read(table.value->rows);
  if (!has_error(loaded.findings)) loaded.value = std::move(lexicon);
  return loaded;
}

std::string write_lexicon_csv(Lexicon const& lexicon) {
  std::string out;
  std::vector<std::string_view> header;
  for (auto const& column : kLexiconColumns) header.push_back(column.name);
  auto const columns = has_support(lexicon) ? kLexiconColumns.size() : kPlainColumns;
  append_csv_row(out, std::span<std::string_view const>{header}.first(columns));
  for (auto const& character : lexicon.characters) {
    auto cells = first_cells(character);
    // Beside states, what a character as a whole rests on has a row to itself.
    if (!character.states.empty() && !character.support.empty()) {
      append_csv_row(out, std::span<std::string const>{cells}.first(columns));
      for (std::size_t column = kLabelColumn; column < kLexiconColumns.size(); ++column) {
        cells[column].clear();
      }
    }
    std::size_t row = 0;
    do {
      if (row < character.states.size()) {
        auto const& state = character.states[row];
        cells[kState] = state.id;
        cells[kPhrases] = phrases_in_cell(state.phrases);
        for (auto const& other : state.not_told_from) append_item(cells[kNotToldFrom], other);
        cells[kConfidence] = state.support.confidence;
        cells[kEvidence] = state.support.evidence;
      }
      append_csv_row(out, std::span<std::string const>{cells}.first(columns));
      // The id stands in every row, so that sorting the sheet loses nothing.
      for (std::size_t column = kLabelColumn; column < kLexiconColumns.size(); ++column) {
        cells[column].clear();
      }
    } while (++row < character.states.size());
  }
  return out;
}

}  // namespace keydrift
