#pragma once
// Feeds a reader every prefix and every single-byte corruption of a small file: it must not crash,
// and must yield either a value or an error, never both and never neither.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "keydrift/key/finding.hpp"

namespace keydrift::test {

template <class Read>
void read_damaged(std::string_view whole, Read read) {
  auto const check = [&](std::string const& bytes) {
    auto const loaded = read(bytes);
    bool const error =
        std::any_of(loaded.findings.begin(), loaded.findings.end(), [](Finding const& finding) {
          EXPECT_FALSE(finding.message.empty());
          EXPECT_FALSE(finding.code.empty());
          return finding.severity == Severity::error;
        });
    EXPECT_NE(loaded.value.has_value(), error) << bytes;
  };
  for (std::size_t i = 0; i < whole.size(); ++i) {
    check(std::string{whole.substr(0, i)});
    for (char const c : {'\0', '"', ',', '{', '9', ' ', '\xFF', '\xC3', '\n', '\r', '\t'}) {
      std::string damaged{whole};
      damaged[i] = c;
      check(damaged);
    }
  }
  check(std::string{whole});
}

}  // namespace keydrift::test
