#include "keydrift/reports/csv_cell.hpp"

namespace keydrift {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

bool is_plain_number(std::string_view text) {
  std::size_t at = 0;
  auto const digits = [&] {
    auto const from = at;
    while (at < text.size() && is_digit(text[at])) ++at;
    return at - from;
  };
  if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
  auto const whole = digits();
  std::size_t part = 0;
  if (at < text.size() && text[at] == '.') {
    ++at;
    part = digits();
  }
  if (whole + part == 0) return false;
  if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    ++at;
    if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
    if (digits() == 0) return false;
  }
  return at == text.size();
}

void append_csv_cell(std::string& out, std::string_view text) {
  if (text.empty()) return;
  bool const formula = std::string_view{"=+-@\t\r"}.find(text.front()) != std::string_view::npos &&
                       !is_plain_number(text);
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

}  // namespace keydrift
