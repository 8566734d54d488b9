#pragma once
// Values as bytes, for records that this very process reads back.

#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace keydrift {

class ByteWriter {
 public:
  explicit ByteWriter(std::string& out) : out_{out} {}
  // Seven bits to a byte, the lowest first: small numbers are short.
  void number(std::uint64_t value) {
    for (; value >= 0x80; value >>= 7) out_ += static_cast<char>(value | 0x80);
    out_ += static_cast<char>(value);
  }
  void text(std::string_view text) {
    number(text.size());
    out_ += text;
  }
  // As it is in memory.
  template <class Value>
  void raw(Value const& value) {
    out_.append(reinterpret_cast<char const*>(&value), sizeof value);
  }

 private:
  std::string& out_;
};

// Reads what was written; zeros and empty texts behind the end.
class ByteReader {
 public:
  explicit ByteReader(std::string_view bytes) : bytes_{bytes} {}
  [[nodiscard]] std::uint64_t number() {
    std::uint64_t value = 0;
    for (unsigned shift = 0; !bytes_.empty() && shift < 64; shift += 7) {
      auto const byte = static_cast<unsigned char>(bytes_.front());
      bytes_.remove_prefix(1);
      value |= std::uint64_t{byte & 0x7FU} << shift;
      if (byte < 0x80) break;
    }
    return value;
  }
  [[nodiscard]] bool flag() { return number() != 0; }
  [[nodiscard]] std::string_view text() {
    auto const size = number();
    auto const text = bytes_.substr(0, static_cast<std::size_t>(size));
    bytes_.remove_prefix(text.size());
    return text;
  }
  template <class Value>
  [[nodiscard]] Value raw() {
    Value value{};
    if (bytes_.size() < sizeof value) {
      bytes_ = {};
      return value;
    }
    std::memcpy(&value, bytes_.data(), sizeof value);
    bytes_.remove_prefix(sizeof value);
    return value;
  }
  [[nodiscard]] std::string_view rest() const { return bytes_; }

 private:
  std::string_view bytes_;
};

}  // namespace keydrift
