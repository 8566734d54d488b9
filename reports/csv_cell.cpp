#include "keydrift/reports/csv_cell.hpp"

namespace keydrift::reports {
namespace {

// Apostrophes (possibly none), then the start of a formula: so that taking one apostrophe off a
// guarded cell always gives the cell back.
bool starts_like_a_formula(std::string_view text) {
  auto const first = text.find_first_not_of('\'');
  return first != std::string_view::npos &&
         std::string_view{"=+-@\t\r\n"}.find(text[first]) != std::string_view::npos;
}

}  // namespace

bool is_plain_number(std::string_view text) {
  auto const digits = [&text] {
    std::size_t count = 0;
    while (!text.empty() && text.front() >= '0' && text.front() <= '9') {
      text.remove_prefix(1);
      ++count;
    }
    return count;
  };
  auto const sign = [&text] {
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) text.remove_prefix(1);
  };
  sign();
  if (digits() == 0) return false;
  if (!text.empty() && (text.front() == '.' || text.front() == ',')) {
    text.remove_prefix(1);
    if (digits() == 0) return false;
  }
  if (!text.empty() && (text.front() == 'e' || text.front() == 'E')) {
    text.remove_prefix(1);
    sign();
    if (digits() == 0) return false;
  }
  return text.empty();
}

void append_csv_cell(std::string& out, std::string_view text) {
  if (text.empty()) return;
  bool const formula = starts_like_a_formula(text) && !is_plain_number(text);
  bool const quote = text.find_first_of(",\"\r\n") != std::string_view::npos ||
                     text.front() == ' ' || text.back() == ' ' || text.front() == '\t' ||
                     text.back() == '\t';
  if (quote) out += '"';
  if (formula) out += '\'';
  if (!quote) {
    out += text;
    return;
  }
  for (auto const c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
}

}  // namespace keydrift::reports
