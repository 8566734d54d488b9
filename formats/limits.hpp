#pragma once
// How much a reader of keys takes in before it refuses: a file that was made to exhaust a machine
// must cost no more than one that was not.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

struct ReadLimits {
  std::uint64_t bytes{std::uint64_t{256} << 20};  // of the file as it is
  // Of one line of printed text; a longer one is no line of a key.
  std::size_t line_bytes{std::size_t{1} << 20};
  // Of all that a container (a zip-based manuscript) unpacks to, and how many times larger than
  // its packed form an entry may be.
  std::uint64_t unpacked_bytes{std::uint64_t{512} << 20};
  std::uint64_t expansion{400};
  std::size_t entries{10'000};  // of a container
  std::size_t depth{256};       // nested elements of XML
  // Elements, attributes and stretches of text of XML, each of which costs some 60 bytes.
  std::size_t xml_nodes{8'000'000};
};

// The limits by the names that users know.
enum class ReadLimit : std::uint8_t { size, line, unpacked, expansion, entries, depth, nodes };
[[nodiscard]] char const* to_word(ReadLimit limit);  // "size", "line", …

[[nodiscard]] std::uint64_t limit_of(ReadLimits const& limits, ReadLimit limit);

// "256M", "10000": an amount as `--limit` takes it; K, M and G only for whole multiples of bytes.
[[nodiscard]] std::string in_words(ReadLimit limit, std::uint64_t amount);

// What a remedy says about lifting a limit, "--limit line=110M": enough for `needed` with some
// room, or twice the present value where nobody knows what is needed (0).
[[nodiscard]] std::string to_lift(ReadLimits const& limits, ReadLimit limit,
                                  std::uint64_t needed = 0);

// Sets one limit from "NAME=VALUE", where VALUE is a whole number, for bytes also with K, M or G
// (2^10, 2^20, 2^30) after it.  Returns what is wrong with it, or nullopt when it was set.
[[nodiscard]] std::optional<std::string> set_limit(ReadLimits& limits, std::string_view assignment);

// "size (256M)", "line (1M)", …: the names, each with its present value.
[[nodiscard]] std::vector<std::string> names_of(ReadLimits const& limits);

}  // namespace keydrift
