// An archive's table of occurrences, plain or gzip-compressed, in chunks of an odd size.

#include "keydrift/formats/occurrences.hpp"
#include "checks.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  constexpr std::size_t kChunk = 37;  // so that records, quotes and code points fall on borders
  auto const bytes = fuzz::as_text(data, size);
  StreamLimits limits;
  limits.maximum_bytes = std::uint64_t{16} << 20;
  auto const stream = unpacked(stream_of(bytes, kChunk), "sheets.csv", limits);
  fuzz::check_loaded(stream);
  if (!stream) return 0;
  std::uint64_t specimens = 0;
  std::uint64_t rejects = 0;
  auto const counts = read_occurrences(
      **stream.value, "sheets.csv", {}, [&](Specimen const&) { ++specimens; },
      [&](Reject const&) { ++rejects; });
  fuzz::check_loaded(counts);
  if (!counts) return 0;
  fuzz::expect(counts.value->specimens == specimens && counts.value->rejected == rejects &&
                   counts.value->rows == specimens + rejects,
               "every row is a specimen or a reject");
  return 0;
}
