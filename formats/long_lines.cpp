#include "keydrift/formats/long_lines.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>

namespace keydrift {
namespace {

using namespace std::string_view_literals;

// Normalisation composes up to three characters (nine bytes) of Hangul into one of three, and
// commonly two into one.
constexpr std::size_t kShrinkage = 4;

// What ends a line besides a line feed, as bytes of UTF-8 or Windows-1252.
constexpr std::array kOtherEnds{"\r"sv, "\v"sv, "\xC2\x85"sv, "\xE2\x80\xA8"sv, "\xE2\x80\xA9"sv};

Finding finding_of_long_line(std::string_view name, std::uint32_t number, std::size_t begin,
                             std::size_t end, ReadLimits const& limits) {
  Finding finding;
  finding.code = "line-too-long";
  finding.severity = Severity::error;
  finding.file = std::string{name};
  finding.place = {.line = number, .column = 1, .begin = begin, .end = end};
  finding.message = "line " + std::to_string(number) + " has " + std::to_string(end - begin) +
                    " bytes, more than the limit of " +
                    in_words(ReadLimit::line, limits.line_bytes);
  finding.remedy = "break the key into lines, one lead each; if such a line is meant, " +
                   to_lift(limits, ReadLimit::line, end - begin) + " takes it in";
  return finding;
}

template <class TooLong>
std::optional<Finding> first_line(std::string_view name, std::string_view text,
                                  ReadLimits const& limits, TooLong too_long) {
  std::size_t begin = 0;
  std::uint32_t number = 1;
  while (begin < text.size()) {
    auto const end = std::min(text.find('\n', begin), text.size());
    if (too_long(text.substr(begin, end - begin))) {
      return finding_of_long_line(name, number, begin, end, limits);
    }
    begin = end + 1;
    ++number;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Finding> too_long_line(std::string_view name, std::string_view text,
                                     ReadLimits const& limits) {
  return first_line(name, text, limits,
                    [&limits](std::string_view line) { return line.size() > limits.line_bytes; });
}

std::optional<Finding> too_long_at_sight(Source const& source, ReadLimits const& limits) {
  auto const bytes = source.bytes;
  // UTF-16 and UTF-32 end their lines otherwise.
  if (bytes.substr(0, 4096).find('\0') != std::string_view::npos ||
      bytes.substr(0, 2) == "\xFF\xFE"sv || bytes.substr(0, 2) == "\xFE\xFF"sv) {
    return std::nullopt;
  }
  return first_line(source.name, bytes, limits, [&limits](std::string_view line) {
    return line.size() / kShrinkage > limits.line_bytes &&
           std::none_of(kOtherEnds.begin(), kOtherEnds.end(), [line](std::string_view end) {
             return line.find(end) != std::string_view::npos;
           });
  });
}

}  // namespace keydrift
