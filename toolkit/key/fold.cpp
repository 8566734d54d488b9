#include "keydrift/key/fold.hpp"

#include <utf8proc.h>

#include <cstdlib>
#include <memory>

namespace keydrift {
namespace {

struct Free {
  void operator()(utf8proc_uint8_t* bytes) const { std::free(bytes); }
};

std::string squeeze(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  auto const is_blank = [](char byte) { return byte == ' ' || (byte >= '\t' && byte <= '\r'); };
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
      if (byte >= 'A' && byte <= 'Z') byte = static_cast<char>(byte - 'A' + 'a');
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
