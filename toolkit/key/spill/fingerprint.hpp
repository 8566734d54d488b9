#pragma once
// What stands for a text that is too long to be kept.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string_view>

namespace keydrift {

// 128 bits.  That two of n different texts meet in one is expected once in 2^127 / n^2 archives:
// ten million texts, one archive in 10^24.  Good for one run: it hangs on the order of bytes.
struct Fingerprint {
  std::uint64_t high{};
  std::uint64_t low{};
  auto operator<=>(Fingerprint const&) const = default;
};
[[nodiscard]] Fingerprint fingerprint_of(std::string_view bytes);
// Of a text and another one that is known by its fingerprint.
[[nodiscard]] Fingerprint fingerprint_of(std::string_view bytes, Fingerprint const& with);

}  // namespace keydrift

template <>
struct std::hash<keydrift::Fingerprint> {
  std::size_t operator()(keydrift::Fingerprint const& print) const noexcept {
    return static_cast<std::size_t>(print.high);
  }
};
