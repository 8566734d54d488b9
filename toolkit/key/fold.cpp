#include "keydrift/key/fold.hpp"

#include <utf8proc.h>

#include <algorithm>
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
  bool parted = false;
  for (char const byte : text) {
    if (byte == ' ' || (byte >= '\t' && byte <= '\r')) {
      parted = !out.empty();
    } else {
      if (parted) out += ' ';
      parted = false;
      out += byte;
    }
  }
  return out;
}

}  // namespace

std::string fold_words(std::string_view text) {
  // Most words are ASCII, which folds letter by letter, at a small part of the cost.
  bool const is_ascii = std::all_of(
      text.begin(), text.end(), [](char byte) { return static_cast<unsigned char>(byte) < 0x80; });
  if (is_ascii) {
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
