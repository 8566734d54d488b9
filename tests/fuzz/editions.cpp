// Whatever calls itself an edition: text, JSON, XML, manuscripts, told by the first bytes.

#include "checks.hpp"
#include "keydrift/formats/edition_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  ReadLimits limits;
  limits.unpacked_bytes = std::uint64_t{16} << 20;  // keeps the fuzzer's own memory small
  auto const reading = read_edition({.name = "key", .bytes = fuzz::as_text(data, size)}, limits);
  fuzz::check_loaded(reading);
  if (reading) fuzz::check_edition(reading.value->edition);
  return 0;
}
