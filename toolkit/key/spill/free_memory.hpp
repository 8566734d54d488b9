#pragma once
// Memory between two stages of a run.

namespace keydrift {

// Gives the system back what was freed: GNU's C library keeps the pages of small pieces, each
// thread's apart, and what comes next would take its memory on top of them.  Costs a few
// milliseconds; without that library it does nothing.
void give_back_free_memory();

}  // namespace keydrift
