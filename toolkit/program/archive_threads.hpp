#pragma once
// Counting a table of specimens with several threads: this one reads, the others judge, and what
// they make of the rows is handed on in the order of the rows.

#include <functional>
#include <string>

#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/program/archive_rows.hpp"
#include "keydrift/program/progress.hpp"

namespace keydrift::program {

struct ThreadedRun {
  Comparison const& comparison;
  Redeterminer& redeterminer;  // takes in what the threads count
  RowsWanted wanted;
  unsigned threads{1};  // that judge; with 1 there is no other thread than the caller's
  // What was made of some rows, in their order.
  std::function<void(RowTexts const&)> in_order;
  Progress* progress{};
};

// Nothing that is written hangs on the number of threads.  The reader's findings say how it went.
[[nodiscard]] bool count_specimens(OccurrenceReader& reader, ThreadedRun const& run);

// As many as the machine has cores, and no more than can be kept busy.
[[nodiscard]] unsigned usual_threads();

}  // namespace keydrift::program
