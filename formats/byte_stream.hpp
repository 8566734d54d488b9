#pragma once
// Bytes in chunks, for readers of files that need not fit in memory: plain or gzip-compressed,
// UTF-8 or UTF-16.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "keydrift/key/finding.hpp"

namespace keydrift {

class ByteStream {
 public:
  ByteStream() = default;
  ByteStream(ByteStream const&) = delete;
  ByteStream& operator=(ByteStream const&) = delete;
  virtual ~ByteStream() = default;

  // Fills the front of `into` and says how many bytes; 0 only at the end or after a failure.
  // Precondition: `into` is not empty.
  [[nodiscard]] virtual std::size_t read(std::span<char> into) = 0;
  // What ended the stream early (unreadable-file, damaged-gzip, too-large); nullopt: it is sound.
  [[nodiscard]] virtual std::optional<Finding> failure() const = 0;
};

struct StreamLimits {
  // Of what comes out, after unpacking.
  std::uint64_t maximum_bytes{std::uint64_t{1} << 40};
  // gzip: how many times larger than the file its content may be, looked at once so many bytes came
  // out.  Tables pack 5- to 50-fold; DEFLATE's utmost, which only made-up files reach, is
  // 1032-fold.
  double maximum_expansion{400};
  std::uint64_t expansion_from_bytes{std::uint64_t{64} << 20};
};

// Serves bytes that the caller keeps, in chunks of at most `chunk` bytes (tests use small ones).
[[nodiscard]] std::unique_ptr<ByteStream> stream_of(std::string_view bytes,
                                                    std::size_t chunk = std::size_t{256} << 10);

// Looks at the first bytes of `raw`: gzip is unpacked (several members too), UTF-16 becomes UTF-8,
// everything else passes through.  Findings are about `name`. Errors: what cannot be read as a
// table of text (a zip file, a PDF, a spreadsheet, binary data): binary-file; nothing in it:
// empty-file.
[[nodiscard]] Loaded<std::unique_ptr<ByteStream>> unpacked(std::unique_ptr<ByteStream> raw,
                                                           std::string const& name,
                                                           StreamLimits const& limits = {});

// Opens the file at `path` and looks at it as above.  Further errors: no-such-file,
// is-a-directory, unreadable-file.
[[nodiscard]] Loaded<std::unique_ptr<ByteStream>> open_stream(std::string const& path,
                                                              StreamLimits const& limits = {});

}  // namespace keydrift
