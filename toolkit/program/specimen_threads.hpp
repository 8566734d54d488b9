#pragma once
// Counting specimens that are read one by one with several threads: those of tables that have to be
// joined, or whose columns are tied to the key by their words.

#include <cstdint>
#include <memory>

#include "keydrift/characters/drafting/record_tying.hpp"
#include "keydrift/characters/lexicon.hpp"
#include "keydrift/program/archive_threads.hpp"

namespace keydrift::program {

class SpecimenThreads {
 public:
  // Borrows all.  `tying`: what specimens record is tied to its lexicon `drafted`, and it is told
  // of all ties in the end; nullptr: they are taken as they come.
  SpecimenThreads(ThreadedRun const& run, Lexicon const& drafted, RecordTying* tying);
  ~SpecimenThreads();
  SpecimenThreads(SpecimenThreads const&) = delete;
  SpecimenThreads& operator=(SpecimenThreads const&) = delete;

  // In the order of the archive; copied.
  void add(Specimen const& specimen);
  void add(Reject const& reject);
  // Waits for all; to be called once, last.
  void finish();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace keydrift::program
