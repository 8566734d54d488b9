#pragma once
// The option --reading, as every command that keys has it.

#include "keydrift/redetermination/outcome.hpp"

namespace CLI {
class App;
}

namespace keydrift::program {

void add_reading_option(CLI::App& command, Reading& reading);

}  // namespace keydrift::program
