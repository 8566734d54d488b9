#pragma once
// An error that concerns a whole file.  Inner header of formats.

#include <string>
#include <string_view>
#include <utility>

#include "keydrift/key/finding.hpp"

namespace keydrift {

[[nodiscard]] inline Finding file_error(std::string_view file, std::string code,
                                        std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = Severity::error;
  finding.file = std::string{file};
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

}  // namespace keydrift
