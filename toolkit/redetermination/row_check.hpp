#pragma once
// Six letters that a row of the worklist carries, by which the take-back sees that its cells still
// belong together: somebody may have sorted one column without the others.
//
// They are a CRC-32 (zlib's; ITU-T V.42, 8.1.1.6.2) of the sheet's number, occurrence id and name
// and of the question, of which letters and digits of ASCII count and nothing else, so that a
// spreadsheet may change quotation marks, blanks, capitals and the encoding.  Numbers may lose
// zeros in front and gain a ".0" behind, as loose_number() has it.  24 bits of it are shown, as
// consonants: no spreadsheet takes them for a number, a date, a truth value or a word.

#include <cstdint>
#include <string>
#include <string_view>

namespace keydrift {

class RowCheck {
 public:
  RowCheck() = default;  // to be assigned to
  // What all rows of one question share.  `character`: the id of what is asked for, or "".
  RowCheck(std::string_view question, std::string_view character);
  // Of a sheet: its number as sheet_number() has it.
  [[nodiscard]] std::string of(std::string_view number, std::string_view occurrence_id,
                               std::string_view scientific_name) const;

 private:
  std::uint32_t sum_{};
};

}  // namespace keydrift
