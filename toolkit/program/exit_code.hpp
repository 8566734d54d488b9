#pragma once
// What the program says to a script by its exit status.

namespace keydrift::program {

enum ExitCode {
  kNothingToReport = 0,   // done; no error found, no change in meaning
  kFindings = 1,          // proof: findings of the asked severity; collate: a change in meaning;
                          // redetermine: a type or voucher that fails, when asked
  kBadUsage = 2,          // the command line is not understood
  kUnreadableInput = 3,   // an input is missing, unreadable or not usable
  kUnwritableOutput = 4,  // an output could not be written; nothing half-written is left
};

}  // namespace keydrift::program
