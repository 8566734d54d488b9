#include "keydrift/formats/limits.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "keydrift/key/near.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {
namespace {

struct SizeUnit {
  char letter;
  std::uint64_t bytes;
};
constexpr std::array kSizeUnits{SizeUnit{'G', std::uint64_t{1} << 30},
                                SizeUnit{'M', std::uint64_t{1} << 20},
                                SizeUnit{'K', std::uint64_t{1} << 10}};

constexpr std::array kReadLimits{ReadLimit::size,      ReadLimit::line,    ReadLimit::unpacked,
                                 ReadLimit::expansion, ReadLimit::entries, ReadLimit::depth,
                                 ReadLimit::nodes};

bool counts_bytes(ReadLimit limit) {
  return limit == ReadLimit::size || limit == ReadLimit::line || limit == ReadLimit::unpacked;
}

// Lines and columns of a Place have 32 bits; of what is counted, a thousand million is
// as good as no limit.
std::uint64_t utmost(ReadLimit limit) {
  return counts_bytes(limit) ? std::uint64_t{4} << 30 : std::uint64_t{1'000'000'000};
}

void set(ReadLimits& limits, ReadLimit limit, std::uint64_t value) {
  switch (limit) {
    case ReadLimit::size:
      limits.bytes = value;
      break;
    case ReadLimit::line:
      limits.line_bytes = static_cast<std::size_t>(value);
      break;
    case ReadLimit::unpacked:
      limits.unpacked_bytes = value;
      break;
    case ReadLimit::expansion:
      limits.expansion = value;
      break;
    case ReadLimit::entries:
      limits.entries = static_cast<std::size_t>(value);
      break;
    case ReadLimit::depth:
      limits.depth = static_cast<std::size_t>(value);
      break;
    case ReadLimit::nodes:
      limits.xml_nodes = static_cast<std::size_t>(value);
      break;
  }
}

std::optional<std::uint64_t> read_amount(std::string_view text, bool with_units) {
  std::uint64_t unit = 1;
  if (with_units && !text.empty()) {
    auto const letter = static_cast<char>(text.back() & ~0x20);
    for (auto const& known : kSizeUnits) {
      if (letter != known.letter) continue;
      unit = known.bytes;
      text.remove_suffix(1);
      break;
    }
  }
  std::uint64_t value = 0;
  auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if (value > (std::uint64_t{1} << 40)) return std::nullopt;  // so that the product fits
  return value * unit;
}

}  // namespace

char const* to_word(ReadLimit limit) {
  switch (limit) {
    case ReadLimit::size:
      return "size";
    case ReadLimit::line:
      return "line";
    case ReadLimit::unpacked:
      return "unpacked";
    case ReadLimit::expansion:
      return "expansion";
    case ReadLimit::entries:
      return "entries";
    case ReadLimit::depth:
      return "depth";
    case ReadLimit::nodes:
      return "nodes";
  }
  return "size";
}

std::uint64_t limit_of(ReadLimits const& limits, ReadLimit limit) {
  switch (limit) {
    case ReadLimit::size:
      return limits.bytes;
    case ReadLimit::line:
      return limits.line_bytes;
    case ReadLimit::unpacked:
      return limits.unpacked_bytes;
    case ReadLimit::expansion:
      return limits.expansion;
    case ReadLimit::entries:
      return limits.entries;
    case ReadLimit::depth:
      return limits.depth;
    case ReadLimit::nodes:
      return limits.xml_nodes;
  }
  return limits.bytes;
}

std::string in_words(ReadLimit limit, std::uint64_t amount) {
  if (counts_bytes(limit) && amount > 0) {
    for (auto const& unit : kSizeUnits) {
      if (amount % unit.bytes == 0) return std::to_string(amount / unit.bytes) + unit.letter;
    }
  }
  return std::to_string(amount);
}

std::string to_lift(ReadLimits const& limits, ReadLimit limit, std::uint64_t needed) {
  auto const present = limit_of(limits, limit);
  auto wanted = std::max(needed, present);
  wanted = std::min(needed > present ? wanted + wanted / 8 : 2 * wanted, utmost(limit));
  if (counts_bytes(limit)) {
    for (auto const& unit : kSizeUnits) {
      // Four of a unit and more are near enough to any amount.
      if (wanted < 4 * unit.bytes) continue;
      wanted = (wanted + unit.bytes - 1) / unit.bytes * unit.bytes;
      break;
    }
  }
  return std::string{"--limit "} + to_word(limit) + "=" + in_words(limit, wanted);
}

std::optional<std::string> set_limit(ReadLimits& limits, std::string_view assignment) {
  auto const sign = assignment.find('=');
  auto const name = assignment.substr(0, sign);
  auto const* const limit = std::find_if(kReadLimits.begin(), kReadLimits.end(),
                                         [&](ReadLimit known) { return to_word(known) == name; });
  if (limit == kReadLimits.end()) {
    std::vector<std::string> names;
    for (auto const known : kReadLimits) names.emplace_back(to_word(known));
    auto near = did_you_mean(near_words(name, names));
    return "there is no limit " + in_quotes(name) + "; " +
           (near.empty() ? "there are " + in_prose(names) : near);
  }
  bool const bytes = counts_bytes(*limit);
  auto const shape = std::string{"a whole number"} + (bytes ? ", K, M or G may follow it" : "");
  auto const example =
      std::string{to_word(*limit)} + "=" + in_words(*limit, 2 * limit_of(ReadLimits{}, *limit));
  if (sign == std::string_view::npos) {
    return "the limit " + in_quotes(name) + " has no value; write " + in_quotes(example);
  }
  auto const printed = assignment.substr(sign + 1);
  auto const value = read_amount(printed, bytes);
  if (!value) {
    return in_quotes(printed) + " is no value of the limit " + in_quotes(name) + ": it takes " +
           shape + ", as in " + in_quotes(example);
  }
  if (*value == 0 || *value > utmost(*limit)) {
    return "the limit " + in_quotes(name) + " may be 1 to " + in_words(*limit, utmost(*limit)) +
           ", not " + in_quotes(printed);
  }
  set(limits, *limit, *value);
  return std::nullopt;
}

std::vector<std::string> names_of(ReadLimits const& limits) {
  std::vector<std::string> names;
  for (auto const limit : kReadLimits) {
    names.push_back(std::string{to_word(limit)} + " (" + in_words(limit, limit_of(limits, limit)) +
                    ")");
  }
  return names;
}

}  // namespace keydrift
