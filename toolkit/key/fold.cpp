#include "keydrift/key/fold.hpp"

#include <utf8proc.h>

#include <cstdlib>
#include <memory>

namespace keydrift {
namespace {

struct Free {
  void operator()(utf8proc_uint8_t* bytes) const { std::free(bytes); }
};

bool is_blank(char byte) { return byte == ' ' || (byte >= '\t' && byte <= '\r'); }

// All bytes are looked at, many at a time: as a rule nothing is to be squeezed.
bool is_squeezed(std::string_view text) {
  if (text.empty()) return true;
  unsigned wide = 0;  // a bool would be looked at one by one
  for (char const byte : text) wide |= byte >= '\t' && byte <= '\r' ? 1U : 0U;
  for (std::size_t i = 1; i < text.size(); ++i) {
    wide |= static_cast<unsigned>(text[i] == ' ') & static_cast<unsigned>(text[i - 1] == ' ');
  }
  return wide == 0 && text.front() != ' ' && text.back() != ' ';
}

std::string squeeze(std::string_view text) {
  if (is_squeezed(text)) return std::string{text};
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    auto end = at;
    while (end < text.size() && !is_blank(text[end])) ++end;
    if (end > at) {
      if (!out.empty()) out += ' ';
      out.append(text, at, end - at);
    }
    at = end + 1;
  }
  return out;
}

}  // namespace

std::string fold_words(std::string_view text) {
  // Most words are ASCII, which folds letter by letter, at a small part of the cost.
  unsigned char all = 0;
  for (char const byte : text) all |= static_cast<unsigned char>(byte);
  if (all < 0x80) {
    auto folded = squeeze(text);
    for (auto& byte : folded) {
      byte = static_cast<char>(byte >= 'A' && byte <= 'Z' ? byte | 0x20 : byte);
    }
    return folded;
  }
  utf8proc_uint8_t* raw = nullptr;
  auto const length =
      utf8proc_map(reinterpret_cast<utf8proc_uint8_t const*>(text.data()),
                   static_cast<utf8proc_ssize_t>(text.size()), &raw,
                   static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE |
                                                  UTF8PROC_COMPAT | UTF8PROC_CASEFOLD));
  std::unique_ptr<utf8proc_uint8_t, Free> const folded{raw};
  if (length < 0) return squeeze(text);
  return squeeze({reinterpret_cast<char const*>(folded.get()), static_cast<std::size_t>(length)});
}

}  // namespace keydrift
