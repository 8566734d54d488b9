#pragma once
// "--error-rate 0.02" and "--error-rate microscope=0.1".

#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/difficulty.hpp"
#include "keydrift/program/context.hpp"

namespace keydrift::program {

// nullopt after a message when one of them cannot be read, or goes by difficulty without a lexicon
// that tells it.
[[nodiscard]] std::optional<ErrorRates> read_error_rates(std::vector<std::string> const& given,
                                                         bool lexicon_given, Context& context);

}  // namespace keydrift::program
