#include "keydrift/key/spill/fingerprint.hpp"

#include <bit>
#include <cstring>

namespace keydrift {
namespace {

// Two sums, each word spread over both (odd constants with many changes of bit; the last step is
// the mixer of 64 bits that the literature calls an avalanche: every bit of the sum turns half of
// the result's).
constexpr std::uint64_t kA = 0x9E3779B97F4A7C15U;
constexpr std::uint64_t kB = 0xC2B2AE3D27D4EB4FU;

std::uint64_t mixed(std::uint64_t x) {
  x ^= x >> 32;
  x *= 0xD6E8FEB86659FD93U;
  x ^= x >> 29;
  x *= kB;
  return x ^ (x >> 32);
}

void add(Fingerprint& sum, std::uint64_t word) {
  sum.high = std::rotl((sum.high ^ word) * kA, 29) + sum.low;
  sum.low = std::rotl((sum.low + word) * kB, 31) ^ sum.high;
}

}  // namespace

Fingerprint fingerprint_of(std::string_view bytes, Fingerprint const& with) {
  Fingerprint sum{with.high ^ kB, with.low + kA};
  add(sum, bytes.size());
  while (bytes.size() >= sizeof(std::uint64_t)) {
    std::uint64_t word = 0;
    std::memcpy(&word, bytes.data(), sizeof word);
    add(sum, word);
    bytes.remove_prefix(sizeof word);
  }
  if (!bytes.empty()) {
    std::uint64_t word = 0;
    std::memcpy(&word, bytes.data(), bytes.size());
    add(sum, word);
  }
  return {mixed(sum.high), mixed(sum.low ^ std::rotl(sum.high, 17))};
}

Fingerprint fingerprint_of(std::string_view bytes) { return fingerprint_of(bytes, {}); }

}  // namespace keydrift
