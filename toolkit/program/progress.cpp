#include "keydrift/program/progress.hpp"

#include <ostream>
#include <utility>

#include "keydrift/reports/wording.hpp"

namespace keydrift::program {

Progress::Progress(Context& context, std::string what)
    : context_{context}, what_{std::move(what)}, last_{std::chrono::steady_clock::now()} {}

Progress::~Progress() {
  // Back to the line's begin and clear to its end (ECMA-48).
  if (shown_) context_.err << "\r\x1b[K" << std::flush;
}

void Progress::show() {
  auto const now = std::chrono::steady_clock::now();
  if (now - last_ < std::chrono::milliseconds{250}) return;
  last_ = now;
  shown_ = true;
  context_.err << '\r' << reports::grouped(count_) << ' ' << what_ << " …" << std::flush;
}

}  // namespace keydrift::program
