#pragma once

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <functional>
#include <memory>
#include <string>
#include <string_view>

namespace keydrift::test {

// Base64 of the SHA-256 of the text, by coreutils and by hand: nothing of the project is trusted.
inline std::string sha256_base64(std::string_view text) {
  auto const file = std::filesystem::temp_directory_path() /
                    ("keydrift-sha-" + std::to_string(std::hash<std::string_view>{}(text)));
  std::ofstream{file, std::ios::binary} << text;
  std::unique_ptr<FILE, int (*)(FILE*)> pipe{::popen(("sha256sum " + file.string()).c_str(), "r"),
                                             ::pclose};
  std::array<char, 65> hex{};
  if (!pipe || std::fread(hex.data(), 1, 64, pipe.get()) != 64) ADD_FAILURE() << "no sha256sum";
  std::filesystem::remove(file);
  std::string bytes;
  for (std::size_t i = 0; i < 64; i += 2) {
    bytes += static_cast<char>(std::stoi(std::string(hex.data() + i, 2), nullptr, 16));
  }
  static constexpr char kDigits[] =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    unsigned word = 0;
    for (std::size_t k = 0; k < 3; ++k) {
      word = word << 8U | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0U);
    }
    for (std::size_t k = 0; k < 4; ++k) {
      out += i + k <= bytes.size() ? kDigits[word >> (18 - 6 * k) & 63U] : '=';
    }
  }
  return out;
}

}  // namespace keydrift::test
