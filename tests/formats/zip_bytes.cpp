#include "zip_bytes.hpp"

#include <gtest/gtest.h>
#include <zip.h>

namespace keydrift::test {

std::string zip_bytes(std::vector<ZipEntry> const& entries) {
  zip_error_t error;
  zip_error_init(&error);
  auto* target = zip_source_buffer_create(nullptr, 0, 0, &error);
  auto* archive = zip_open_from_source(target, ZIP_TRUNCATE, &error);
  zip_source_keep(target);
  for (auto const& entry : entries) {
    auto* source = zip_source_buffer(archive, entry.bytes.data(), entry.bytes.size(), 0);
    auto const index = zip_file_add(archive, entry.name.c_str(), source, ZIP_FL_ENC_UTF_8);
    if (index < 0) {
      ADD_FAILURE() << zip_strerror(archive);
      continue;
    }
    constexpr zip_uint16_t kDate = 0x4A21;  // 2017-01-01, so that the bytes stay
    zip_file_set_dostime(archive, static_cast<zip_uint64_t>(index), 0, kDate, 0);
  }
  if (zip_close(archive) != 0) ADD_FAILURE() << zip_strerror(archive);
  zip_stat_t stat;
  zip_source_stat(target, &stat);
  std::string bytes(stat.size, '\0');
  zip_source_open(target);
  zip_source_read(target, bytes.data(), bytes.size());
  zip_source_close(target);
  zip_source_free(target);
  zip_error_fini(&error);
  return bytes;
}

std::string patched(std::string bytes, std::string_view from, std::string_view to) {
  EXPECT_EQ(from.size(), to.size());
  std::size_t count = 0;
  for (auto at = bytes.find(from); at != std::string::npos; at = bytes.find(from, at + 1)) {
    bytes.replace(at, from.size(), to);
    ++count;
  }
  EXPECT_GT(count, 0U) << "nothing to replace";
  return bytes;
}

}  // namespace keydrift::test
