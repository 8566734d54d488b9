#include "keydrift/formats/text_iconv.hpp"

#include <iconv.h>

#include <algorithm>
#include <cerrno>

#include "keydrift/formats/text_encodings.hpp"

namespace keydrift::encodings {
namespace {

class Converter {
 public:
  Converter(char const* to, char const* from) : handle_{::iconv_open(to, from)} {}
  Converter(Converter const&) = delete;
  Converter& operator=(Converter const&) = delete;
  ~Converter() {
    if (is_open()) ::iconv_close(handle_);
  }

  [[nodiscard]] bool is_open() const { return handle_ != reinterpret_cast<iconv_t>(-1); }

  // Takes converted bytes off the front of `in`.  0, or the errno of what stopped it.
  int step(std::string_view& in, std::string& out) {
    std::array<char, 4096> buffer;
    // iconv's input is not const by a slip of old; it writes nothing there.
    auto* from = const_cast<char*>(in.data());
    auto left = in.size();
    auto* to = buffer.data();
    auto room = buffer.size();
    auto const result = ::iconv(handle_, &from, &left, &to, &room);
    int const stopped = result == static_cast<std::size_t>(-1) ? errno : 0;
    out.append(buffer.data(), buffer.size() - room);
    in.remove_prefix(in.size() - left);
    return stopped;
  }

  // What is held back, such as a letter that might still take an accent.
  void flush(std::string& out) {
    std::array<char, 64> buffer;
    auto* to = buffer.data();
    auto room = buffer.size();
    ::iconv(handle_, nullptr, nullptr, &to, &room);
    out.append(buffer.data(), buffer.size() - room);
  }

 private:
  iconv_t handle_;
};

char32_t little_endian(std::string_view unit) {
  char32_t value = 0;
  for (std::size_t k = 4; k-- > 0;) value = (value << 8U) | static_cast<unsigned char>(unit[k]);
  return value;
}

std::optional<Foreign> by_table(std::string_view bytes, Encoding encoding,
                                std::size_t most_damage) {
  auto const table = high_bytes(encoding);
  if (!table) return std::nullopt;
  Foreign foreign;
  foreign.text.reserve(bytes.size() + bytes.size() / 8);
  for (char const c : bytes) {
    auto const byte = static_cast<unsigned char>(c);
    auto const character = byte < 0x80 ? char32_t{byte} : (*table)[byte - 0x80U];
    append_code_point(foreign.text, character);
    if (character == kReplacement && ++foreign.damage > most_damage) break;
  }
  return foreign;
}

}  // namespace

std::optional<HighBytes> high_bytes(Encoding encoding) {
  HighBytes table{};
  if (encoding == Encoding::windows_1252 || encoding == Encoding::mac_roman) {
    for (unsigned i = 0; i < table.size(); ++i) {
      auto const byte = static_cast<unsigned char>(0x80U + i);
      table[i] = encoding == Encoding::mac_roman ? mac_roman(byte) : windows_1252(byte);
    }
    return table;
  }
  Converter converter{"UTF-32LE", iconv_name(encoding)};
  if (!converter.is_open()) return std::nullopt;
  for (unsigned i = 0; i < table.size(); ++i) {
    char const byte = static_cast<char>(0x80U + i);
    std::string_view in{&byte, 1};
    std::string out;
    bool const sound = converter.step(in, out) == 0;
    converter.flush(out);
    auto const character = sound && out.size() == 4 ? little_endian(out) : kReplacement;
    // No text holds the controls of ISO 8859: these bytes are the dashes and quotation marks of a
    // Windows encoding under a wrong name.
    table[i] = character < 0xA0 ? windows_1252(static_cast<unsigned char>(byte)) : character;
  }
  return table;
}

std::optional<Foreign> from_encoding(std::string_view bytes, Encoding encoding,
                                     std::size_t most_damage) {
  if (is_single_byte(encoding)) return by_table(bytes, encoding, most_damage);
  Converter converter{"UTF-8", iconv_name(encoding)};
  if (!converter.is_open()) return std::nullopt;
  Foreign foreign;
  foreign.text.reserve(bytes.size() + bytes.size() / 2);
  while (!bytes.empty()) {
    int const stopped = converter.step(bytes, foreign.text);
    if (stopped == 0 || stopped == E2BIG) continue;
    if (++foreign.damage > most_damage) return foreign;
    append_code_point(foreign.text, kReplacement);
    // One byte only: the next may be a sign of its own, as the "<" behind a lost half of a letter.
    // EINVAL: the text ends within a character.  Nothing may be left in either case: glibc steps
    // over the bytes A2 E8 of code page 949 itself.
    bytes.remove_prefix(stopped == EINVAL ? bytes.size() : std::min<std::size_t>(bytes.size(), 1));
  }
  converter.flush(foreign.text);
  return foreign;
}

}  // namespace keydrift::encodings
