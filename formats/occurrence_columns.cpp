#include "keydrift/formats/occurrence_columns.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <utility>

#include "keydrift/formats/cell_text.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift::tables {
namespace {

using Text = std::string Specimen::*;

struct TextTerm {
  std::string_view term;  // as term_key() gives it
  Text member;
};
constexpr std::array kTextTerms{
    TextTerm{"catalognumber", &Specimen::catalog_number},
    TextTerm{"occurrenceid", &Specimen::occurrence_id},
    TextTerm{"scientificname", &Specimen::scientific_name},
    TextTerm{"scientificnameauthorship", &Specimen::authorship},
    TextTerm{"identificationqualifier", &Specimen::qualifier},
    TextTerm{"identifiedby", &Specimen::identified_by},
    TextTerm{"recordedby", &Specimen::recorded_by},
    TextTerm{"dateidentified", &Specimen::date_identified},
    TextTerm{"identificationreferences", &Specimen::identification_references},
    TextTerm{"typestatus", &Specimen::type_status},
    TextTerm{"sex", &Specimen::sex},
    TextTerm{"lifestage", &Specimen::life_stage},
    TextTerm{"reproductivecondition", &Specimen::reproductive_condition},
    TextTerm{"storagelocation", &Specimen::storage},
    TextTerm{"locationname", &Specimen::storage},
    TextTerm{"occurrenceremarks", &Specimen::remarks},
    TextTerm{"identificationremarks", &Specimen::remarks},
};
// From wide to narrow, which is the order of Specimen::places.
constexpr std::array<std::string_view, 9> kPlaceTerms{
    "highergeography", "waterbody", "island",       "country", "countrycode",
    "stateprovince",   "county",    "municipality", "locality"};
constexpr std::array<std::string_view, 3> kRegionTerms{"country", "stateprovince", "county"};
constexpr std::string_view kVoucher = "voucher";
constexpr std::string_view kInstitution = "institutioncode";
constexpr std::string_view kCollection = "collectioncode";
constexpr std::size_t kColumnsListed = 60;
constexpr std::size_t kColumnNameShown = 40;

using Target = OccurrenceTarget;

std::optional<Target> target_of(std::string const& key) {
  Target target;
  for (auto const& text : kTextTerms) {
    if (text.term != key) continue;
    target.member = text.member;
    return target;
  }
  auto const place = std::find(kPlaceTerms.begin(), kPlaceTerms.end(), key);
  if (place != kPlaceTerms.end()) {
    target.kind = place == kPlaceTerms.begin() ? Target::Kind::places : Target::Kind::place;
    target.rank = static_cast<std::size_t>(place - kPlaceTerms.begin());
    auto const region = std::find(kRegionTerms.begin(), kRegionTerms.end(), key);
    if (region != kRegionTerms.end()) {
      target.region = static_cast<std::size_t>(region - kRegionTerms.begin());
    }
    return target;
  }
  if (key == kVoucher) target.kind = Target::Kind::voucher;
  if (key == kInstitution) target.kind = Target::Kind::institution;
  if (key == kCollection) target.kind = Target::Kind::collection;
  if (target.kind == Target::Kind::text) return std::nullopt;
  return target;
}

// A column's name as messages print it.
std::string shown(std::string_view header) {
  auto name = CellCleaner::cleaned_copy(header);
  if (name.size() <= kColumnNameShown) return name;
  auto cut = kColumnNameShown;
  while (cut > 0 && (static_cast<unsigned char>(name[cut]) & 0xC0U) == 0x80) --cut;
  return name.substr(0, cut) + "…";
}

std::string listed(std::vector<std::string> const& columns) {
  auto const few = std::span{columns}.first(std::min(columns.size(), kColumnsListed));
  auto text = quoted_list(few);
  if (few.size() < columns.size()) {
    text += " and " + std::to_string(columns.size() - few.size()) + " more";
  }
  return text;
}

Finding finding_at(std::string_view table, CsvRow const& row, std::size_t column, std::string code,
                   Severity severity, std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = std::string{table};
  finding.place = place_of(row, column);
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

bool is_place(Target const& target) {
  return target.kind == Target::Kind::place || target.kind == Target::Kind::places;
}

}  // namespace

OccurrenceColumns::OccurrenceColumns(std::string_view table, OccurrenceOptions const& options)
    : table_{table}, options_{options}, characters_{options.characters} {}

std::string OccurrenceColumns::key_of(std::string_view header) const {
  for (auto const& [column, term] : options_.column_terms) {
    if (column_key(column) == column_key(header)) return term_key(term);
  }
  return term_key(header);
}

bool OccurrenceColumns::is_known(std::string_view header) const {
  CharacterHeader ignored;
  return target_of(key_of(header)).has_value() || characters_.find(header, ignored);
}

bool OccurrenceColumns::read_header(CsvRow const& row, std::vector<Finding>& findings) {
  std::vector<std::string> columns;
  std::vector<std::size_t> unused;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    columns.push_back(shown(row.cells[i]));
    if (!use_column(row, i, findings) && !columns.back().empty()) unused.push_back(i);
  }
  bool const has_name = std::any_of(targets_.begin(), targets_.end(), [](Target const& target) {
    return target.member == &Specimen::scientific_name;
  });
  if (!has_name && options_.join == nullptr) {
    report_missing_name(row, columns, findings);
    return false;
  }
  report_unused(row, unused, findings);
  std::stable_sort(targets_.begin(), targets_.end(), [](Target const& a, Target const& b) {
    return std::pair{is_place(a), a.rank} < std::pair{is_place(b), b.rank};
  });
  return true;
}

bool OccurrenceColumns::use_column(CsvRow const& row, std::size_t column,
                                   std::vector<Finding>& findings) {
  auto const header = CellCleaner::cleaned_copy(row.cells[column]);
  if (header.empty()) return false;
  bool used = false;
  if (auto target = target_of(key_of(header))) {
    used = true;
    // Remarks of several kinds are joined; of everything else the first column counts.
    auto const twin = std::find_if(targets_.begin(), targets_.end(), [&](Target const& other) {
      return other.kind == target->kind && other.member == target->member &&
             other.rank == target->rank && target->member != &Specimen::remarks;
    });
    if (twin == targets_.end()) {
      target->column = column;
      targets_.push_back(*target);
    } else {
      findings.push_back(finding_at(table_, row, column, "duplicate-column", Severity::warning,
                                    "the column \"" + shown(header) + "\" means the same as \"" +
                                        shown(row.cells[twin->column]) + "\", which is used",
                                    "remove or rename one of the two"));
    }
  }
  Target target;
  bool character = characters_.find(header, target.character);
  if (!character && !used && options_.any_character && !is_darwin_core_term(key_of(header))) {
    target.character = character_header(header);
    character = true;
  }
  if (character) {
    used = true;
    target.kind = Target::Kind::observation;
    target.column = column;
    targets_.push_back(std::move(target));
  }
  return used;
}

void OccurrenceColumns::report_missing_name(CsvRow const& row,
                                            std::vector<std::string> const& columns,
                                            std::vector<Finding>& findings) const {
  std::vector<std::string_view> const wanted{"scientificName"};
  std::string remedy = "head the column that holds the current name \"scientificName\"";
  for (auto const& column : columns) {
    if (nearest_word(column, wanted).empty()) continue;
    remedy = "did you mean \"scientificName\" by \"" + column + "\"?";
    break;
  }
  findings.push_back(
      finding_at(table_, row, 0, "no-name-column", Severity::error,
                 "no column holds the name of the specimens; the columns are " + listed(columns),
                 std::move(remedy)));
}

void OccurrenceColumns::report_unused(CsvRow const& row, std::vector<std::size_t> const& unused,
                                      std::vector<Finding>& findings) const {
  if (unused.empty()) return;
  std::vector<std::string> names;
  for (auto const column : unused) {
    names.push_back(shown(row.cells[column]));
    auto const near = characters_.near(names.back());
    if (near.empty()) continue;
    findings.push_back(finding_at(
        table_, row, column, "unused-column", Severity::warning,
        "the column \"" + names.back() + "\" is not a character of the lexicon and was not used",
        "did you mean \"" + near + "\"?"));
  }
  findings.push_back(finding_at(
      table_, row, unused.front(), "unused-columns", Severity::information,
      names.size() == 1 ? "the column " + listed(names) + " was not used"
                        : "these columns were not used: " + listed(names),
      "to use one as a character, head it with the character's id or label in the lexicon"));
}

}  // namespace keydrift::tables
