#pragma once
// What must hold of anything that a reader hands out, whatever it was given.  A target calls these
// on arbitrary bytes; a broken promise aborts, which is what a fuzzer looks for.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::fuzz {

// Aborts with `promise` on standard error unless `holds`.
void expect(bool holds, char const* promise);

// Every finding has code, message and a place within the source; a value is there iff no finding is
// an error that prevents loading.
void check_findings(std::vector<Finding> const& findings);

// A value or an error, never both, never neither.
template <class T>
void check_loaded(Loaded<T> const& loaded) {
  check_findings(loaded.findings);
  bool error = false;
  for (auto const& finding : loaded.findings) error = error || finding.severity == Severity::error;
  expect(loaded.value.has_value() != error, "a reader gives a value or an error");
}

// Ids in range; the analyses that take any edition run through; the interchange form keeps it.
void check_edition(Edition const& edition);

inline std::string_view as_text(std::uint8_t const* data, std::size_t size) {
  return {reinterpret_cast<char const*>(data), size};
}

}  // namespace keydrift::fuzz
