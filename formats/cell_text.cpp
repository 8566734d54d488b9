#include "keydrift/formats/cell_text.hpp"

#include <cstring>

#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/text_encodings.hpp"

namespace keydrift::tables {
namespace {

bool is_nothing(std::string_view cell) { return cell == "NULL" || cell == "\\N"; }

std::string_view without_outer_blanks(std::string_view cell) {
  while (!cell.empty() && cell.front() == ' ') cell.remove_prefix(1);
  while (!cell.empty() && cell.back() == ' ') cell.remove_suffix(1);
  return cell;
}

// Line breaks of any kind and control characters become one blank each.
std::string on_one_line(std::string text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    auto const byte = static_cast<unsigned char>(text[i]);
    if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') continue;
    out += byte < 0x20 || byte == 0x7F ? ' ' : text[i];
  }
  return out;
}

}  // namespace

// Only printable ASCII: nothing to do.  Eight bytes at a time, since every cell that is used passes
// here.
bool is_plain_cell(std::string_view cell) {
  constexpr std::uint64_t kHighs = 0x8080808080808080U;
  constexpr std::uint64_t kBlanks = 0x2020202020202020U;
  std::size_t at = 0;
  for (; at + 8 <= cell.size(); at += 8) {
    std::uint64_t word = 0;
    std::memcpy(&word, cell.data() + at, 8);
    if (((word | ((word - kBlanks) & ~word)) & kHighs) != 0) return false;
  }
  for (; at < cell.size(); ++at) {
    auto const byte = static_cast<unsigned char>(cell[at]);
    if (byte < 0x20 || byte >= 0x80) return false;
  }
  return true;
}

std::string CellCleaner::cleaned_copy(std::string_view cell) {
  if (is_plain_cell(cell)) return std::string{without_outer_blanks(cell)};
  bool const sound = encodings::first_ill_formed(cell) == std::string_view::npos;
  auto text = encodings::to_nfc(
      on_one_line(sound ? std::string{cell} : encodings::windows_1252_to_utf_8(cell)));
  return std::string{trimmed(text)};
}

std::string_view CellCleaner::clean(std::string_view cell, std::uint64_t line) {
  if (is_plain_cell(cell)) {
    cell = without_outer_blanks(cell);
    return is_nothing(cell) ? std::string_view{} : cell;
  }
  if (encodings::first_ill_formed(cell) != std::string_view::npos && converted_++ == 0) {
    first_converted_line_ = line;
  }
  scratch_ = cleaned_copy(cell);
  return is_nothing(scratch_) ? std::string_view{} : std::string_view{scratch_};
}

bool CellCleaner::is_sound(std::string_view cell) {
  return is_plain_cell(cell) || encodings::first_ill_formed(cell) == std::string_view::npos;
}

void CellCleaner::absorb(CellCleaner const& other) {
  if (other.converted_ > 0 &&
      (converted_ == 0 || other.first_converted_line_ < first_converted_line_)) {
    first_converted_line_ = other.first_converted_line_;
  }
  converted_ += other.converted_;
}

std::vector<Finding> CellCleaner::remarks(std::string_view file) const {
  std::vector<Finding> findings;
  if (converted_ == 0) return findings;
  Finding finding;
  finding.code = "encoding";
  finding.severity = Severity::information;
  finding.file = std::string{file};
  finding.place.line = static_cast<std::uint32_t>(first_converted_line_);
  finding.message = std::to_string(converted_) + (converted_ == 1 ? " cell is" : " cells are") +
                    " not UTF-8 and were read as Windows-1252";
  if (converted_ == 1) finding.message = "1 cell is not UTF-8 and was read as Windows-1252";
  finding.remedy = "save the table as UTF-8 if any character looks wrong";
  findings.push_back(std::move(finding));
  return findings;
}

}  // namespace keydrift::tables
