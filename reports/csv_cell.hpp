#pragma once
// Writing one CSV cell (RFC 4180), harmless to spreadsheets.

#include <string>
#include <string_view>

namespace keydrift::reports {

// Appends `text` as one cell.  A cell that a spreadsheet would run as a formula (it begins with
// = + - @, a tab or a carriage return, and is not a plain number) gets a leading apostrophe. Quoted
// where it holds a comma, a quotation mark, a line end, or a blank at either end.
void append_csv_cell(std::string& out, std::string_view text);

// "-5", "+3.2e-4", "-3,5": harmless, and to stay numbers.
[[nodiscard]] bool is_plain_number(std::string_view text);

// One row: cells joined by commas, closed by a line feed.
class CsvRowWriter {
 public:
  explicit CsvRowWriter(std::string& out) : out_{out} {}
  CsvRowWriter(CsvRowWriter const&) = delete;
  CsvRowWriter& operator=(CsvRowWriter const&) = delete;
  ~CsvRowWriter() { out_ += '\n'; }

  CsvRowWriter& cell(std::string_view text) {
    if (!first_) out_ += ',';
    first_ = false;
    append_csv_cell(out_, text);
    return *this;
  }

 private:
  std::string& out_;
  bool first_{true};
};

}  // namespace keydrift::reports
