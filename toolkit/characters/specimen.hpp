#pragma once
// One specimen record as an archive gives it: names, people, dates, place, storage, and recorded
// characters, all verbatim.  formats/ fills it in, keydrift/redetermination reads it.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

// One recorded character, still in the words of the record.
struct Observation {
  std::string character{};  // column name or measurementType, as printed
  std::string value{};      // as printed; several states joined by " | " or " or "
  std::string unit{};       // may be empty
  std::uint64_t line{};     // line in its file (1-based)
  std::uint32_t column{};   // column number in that row (1-based), 0 for a measurement row
  bool operator==(Observation const&) const = default;
};

// Between the parts of Specimen::region.
inline constexpr std::string_view kWithin = " / ";

struct Specimen {
  std::uint64_t line{};  // line of its record in the file (1-based)
  std::string catalog_number{};
  std::string occurrence_id{};
  std::string scientific_name{};  // the current determination, verbatim
  std::string authorship{};
  std::string qualifier{};  // identificationQualifier: "cf.", "aff." …
  std::string identified_by{};
  std::string recorded_by{};      // the collector, as printed
  std::string date_identified{};  // ISO 8601 as printed
  std::string identification_references{};
  std::string type_status{};  // e.g. "holotype of Aus bus"
  std::string sex{};
  std::string life_stage{};
  std::string reproductive_condition{};
  std::vector<std::string> places{};  // country, stateProvince, county, municipality, locality …
  std::string region{};   // of these country, stateProvince and county: "Halvern / Aldmere"
  std::string storage{};  // "Cabinet 3 / Shelf 2 / Folder 7", as printed
  std::string remarks{};
  bool voucher{false};  // marked as voucher (column "voucher" true/yes/1, or by option)
  std::vector<Observation> observations{};
  // Recorded characters, as the record calls them, that evidently speak of the key's characters and
  // could not be tied to them; ascending.  What they say is not known.
  std::vector<std::string> untied{};
  // Recorded characters that were tied with low confidence; ascending.  Where they contradict the
  // name, the tie may be what is wrong.
  std::vector<std::string> loosely_tied{};
};

}  // namespace keydrift
