#pragma once
// How much a reader of keys takes in before it refuses: a file that was made to exhaust a machine
// must cost no more than one that was not.

#include <cstddef>
#include <cstdint>

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

}  // namespace keydrift
