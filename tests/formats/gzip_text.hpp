#pragma once
// Packs a text as one gzip member.

#include <zlib.h>

#include <string>
#include <string_view>

namespace keydrift::test {

inline std::string gzip_text(std::string_view text) {
  z_stream zlib{};
  constexpr int kGzip = 16 + MAX_WBITS;
  deflateInit2(&zlib, Z_BEST_COMPRESSION, Z_DEFLATED, kGzip, 8, Z_DEFAULT_STRATEGY);
  std::string source{text};
  std::string packed(deflateBound(&zlib, source.size()) + 32, '\0');
  zlib.next_in = reinterpret_cast<Bytef*>(source.data());
  zlib.avail_in = static_cast<uInt>(source.size());
  zlib.next_out = reinterpret_cast<Bytef*>(packed.data());
  zlib.avail_out = static_cast<uInt>(packed.size());
  deflate(&zlib, Z_FINISH);
  packed.resize(zlib.total_out);
  deflateEnd(&zlib);
  return packed;
}

}  // namespace keydrift::test
