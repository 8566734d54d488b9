#include "keydrift/formats/printed_name_remarks.hpp"

#include <cstddef>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

// Bytes of the raised digit that the text begins with; 0 without.
std::size_t raised_digit(std::string_view text) {
  auto const c = code_point_at(text, 0);
  bool const raised = c.value == 0xB9 || c.value == 0xB2 || c.value == 0xB3 ||
                      (c.value >= 0x2074 && c.value <= 0x2079);
  return raised ? c.length : 0;
}

}  // namespace

std::string with_notes_apart(std::string_view text) {
  std::string apart;
  apart.reserve(text.size() + 1);
  for (std::size_t at = 0; at < text.size(); ++at) {
    bool const sign = text[at] == '[' && at > 0 && text[at - 1] != ' ' && text[at - 1] != '(';
    if (sign && !text.starts_with('"')) apart += ' ';
    bool const within = (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;  // a code point
    auto const raised = within ? 0 : raised_digit(text.substr(at));
    if (raised > 0 && at > 0 && text[at - 1] != ' ' && !text.starts_with('"')) {
      apart += " [";
      apart.append(text.substr(at, raised)).append("]");
      at += raised - 1;
      continue;
    }
    apart += text[at];
  }
  return apart;
}

std::string remark_in(std::string rest, std::vector<std::string> const& figures) {
  for (auto const& figure : figures) {
    auto const found = rest.find(figure);
    if (found == std::string::npos) continue;
    auto begin = found;
    auto end = found + figure.size();
    // Its brackets and the comma before it go with it.
    if (begin > 0 && end < rest.size() && (rest[begin - 1] == '(' || rest[begin - 1] == '[') &&
        (rest[end] == ')' || rest[end] == ']')) {
      --begin;
      ++end;
    }
    rest.erase(begin, end - begin);
  }
  std::string_view remark = trim(rest);
  auto const is_edge = [](char c) {
    return c == ',' || c == ';' || c == ' ' || c == ':' || c == '.';
  };
  while (!remark.empty() && is_edge(remark.front())) remark.remove_prefix(1);
  if (auto const dash = code_point_at(remark, 0);
      is_dash(dash.value) && is_blank(code_point_at(remark, dash.length).value)) {
    remark = trim(remark.substr(dash.length));
  }
  while (!remark.empty() &&
         (remark.back() == ',' || remark.back() == ';' || remark.back() == ' ')) {
    remark.remove_suffix(1);
  }
  if (remark.size() > 2 && ((remark.front() == '(' && remark.find(')') == remark.size() - 1) ||
                            (remark.front() == '[' && remark.find(']') == remark.size() - 1))) {
    remark = remark.substr(1, remark.size() - 2);
  }
  return squeeze(remark);
}

}  // namespace keydrift::printed
