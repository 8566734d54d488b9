#include "keydrift/formats/printed_full_width.hpp"

#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr char32_t kFirst = 0xFF01;
constexpr char32_t kLast = 0xFF5E;
constexpr char32_t kShift = 0xFEE0;  // from the plain form

bool is_narrowed(char32_t c) {
  if (c < kFirst || c > kLast) return false;
  auto const plain = static_cast<char>(c - kShift);
  return plain != ',' && plain != ':' && plain != ';' && plain != '!' && plain != '?';
}

}  // namespace

std::size_t narrow_full_width(std::string& text) {
  // All of them begin with this byte in UTF-8.
  constexpr char kLead = '\xEF';
  std::size_t found = 0;
  std::string out;
  std::size_t copied = 0;
  for (auto at = text.find(kLead); at != std::string::npos; at = text.find(kLead, at + 1)) {
    auto const c = code_point_at(text, at);
    if (!is_narrowed(c.value)) continue;
    out.append(text, copied, at - copied);
    out += static_cast<char>(c.value - kShift);
    copied = at + c.length;
    ++found;
  }
  if (found == 0) return 0;
  out.append(text, copied);
  text = std::move(out);
  return found;
}

}  // namespace keydrift::printed
