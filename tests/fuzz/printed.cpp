// Printed-key text: every line accounted for, and what was read holds together.

#include "checks.hpp"
#include "keydrift/formats/printed_key.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  auto const reading = read_printed_key({.name = "key.txt", .bytes = fuzz::as_text(data, size)});
  fuzz::check_loaded(reading);
  if (!reading) return 0;
  auto const& source = reading.value->source;
  fuzz::expect(source.lines.size() == TextPlaces{source.text}.line_count(),
               "every line has one account");
  for (std::size_t i = 0; i < source.lines.size(); ++i) {
    fuzz::expect(source.lines[i].line == i + 1, "accounts stand in the order of the lines");
  }
  fuzz::check_edition(reading.value->edition);
  return 0;
}
