// The side tables: lexicon (CSV and JSON), concept map, parents, measurements.  The first byte
// tells which, so that one corpus serves all.

#include <cstdio>

#include "checks.hpp"
#include "keydrift/formats/concept_map_file.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "keydrift/formats/measurements.hpp"
#include "keydrift/formats/parents_file.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  if (size == 0) return 0;
  Source const source{.name = "table", .bytes = fuzz::as_text(data + 1, size - 1)};
  switch (data[0] % 4) {
    case 0: {
      auto const lexicon = read_lexicon(source);
      fuzz::check_loaded(lexicon);
      if (!lexicon) break;
      auto const again =
          read_lexicon({.name = "table", .bytes = write_lexicon_csv(*lexicon.value)});
      if (!again) std::fputs(to_text(again.findings.front()).c_str(), stderr);
      fuzz::expect(again.value.has_value(), "a lexicon that was read can be written and read");
      break;
    }
    case 1:
      fuzz::check_loaded(read_concept_map(source));
      break;
    case 2:
      fuzz::check_loaded(read_parents(source));
      break;
    default: {
      auto const stream = unpacked(stream_of(source.bytes), "table");
      fuzz::check_loaded(stream);
      if (stream) fuzz::check_loaded(read_measurements(**stream.value, "table", {}, {}));
      break;
    }
  }
  return 0;
}
