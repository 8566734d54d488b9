#include "keydrift/formats/text_double_bytes.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

#include "keydrift/formats/text_iconv.hpp"

namespace keydrift::encodings {
namespace {

constexpr std::size_t kFewestSigns = 12;  // fewer tell nothing

bool is_between(char32_t sign, char32_t first, char32_t last) {
  return sign >= first && sign <= last;
}

bool is_kana(char32_t sign) { return is_between(sign, 0x3041, 0x30FE); }
bool is_hangul(char32_t sign) { return is_between(sign, 0xAC00, 0xD7A3); }

bool is_common_in_korean(char32_t sign) {
  return std::u32string_view{U"이다의는에가을고로은하지사인를"}.find(sign) !=
         std::u32string_view::npos;
}

// Of any text, and of keys above all.
bool is_common_in_simplified(char32_t sign) {
  return std::u32string_view{U"的不色有中一小大部长面形或为毛生花叶上下个人是在了和黑黄"}.find(
             sign) != std::u32string_view::npos;
}
bool is_common_in_traditional(char32_t sign) {
  return std::u32string_view{U"的不色有中一小大部長面形或為毛生花葉上下個人是在了和黑黃"}.find(
             sign) != std::u32string_view::npos;
}

struct DoubleByteCandidate {
  Encoding encoding{};
  bool (*is_telling)(char32_t sign){};
  std::size_t fewest_of_hundred{};  // telling signs among the letters
  bool hangul{};                    // are nearly all letters Korean syllables, or none of them?
};
// Japanese first: what is wrong in its encodings is never kana.
constexpr std::array kDoubleByteCandidates{
    DoubleByteCandidate{Encoding::euc_jp, is_kana, 15, false},
    DoubleByteCandidate{Encoding::shift_jis, is_kana, 15, false},
    DoubleByteCandidate{Encoding::euc_kr, is_common_in_korean, 10, true},
    DoubleByteCandidate{Encoding::gb_18030, is_common_in_simplified, 6, false},
    DoubleByteCandidate{Encoding::big_5, is_common_in_traditional, 6, false}};

class DoubleByteTally {
 public:
  explicit DoubleByteTally(DoubleByteCandidate const& candidate) : candidate_{candidate} {}

  void take(std::string_view utf8) {
    auto const* at = reinterpret_cast<utf8proc_uint8_t const*>(utf8.data());
    auto left = static_cast<utf8proc_ssize_t>(utf8.size());
    while (left > 0) {
      utf8proc_int32_t sign = 0;
      auto const length = std::max<utf8proc_ssize_t>(utf8proc_iterate(at, left, &sign), 1);
      take(static_cast<char32_t>(sign));
      at += length;
      left -= length;
    }
    end_word();
  }

  // In Latin texts that happen to be well-formed, double bytes stand alone: "ü" and the next
  // letter.
  [[nodiscard]] bool convinces() const {
    return letters_ >= kFewestSigns && in_words_ * 10 >= letters_ * 8 && odd_ * 50 <= letters_ &&
           telling_ * 100 >= letters_ * candidate_.fewest_of_hundred &&
           (candidate_.hangul ? hangul_ * 10 >= letters_ * 9 : hangul_ == 0);
  }

 private:
  void take(char32_t sign) {
    bool const letter = is_kana(sign) || is_hangul(sign) || is_between(sign, 0x4E00, 0x9FFF);
    if (letter) {
      ++letters_;
      ++length_;
      if (is_hangul(sign)) ++hangul_;
      if (candidate_.is_telling(sign)) ++telling_;
      return;
    }
    end_word();
    // Punctuation, wide letters and figures, dashes and signs of measures; all else (half-wide
    // kana, letters with accents, characters for private use) is what wrong readings are full of.
    bool const usual = sign < 0x80 || is_between(sign, 0x3000, 0x3020) ||
                       is_between(sign, 0xFF01, 0xFF5E) || is_between(sign, 0x2010, 0x2642) ||
                       is_between(sign, 0xA0, 0xBF) || sign == 0xD7;
    if (!usual) ++odd_;
  }

  void end_word() {
    if (length_ > 1) in_words_ += length_;
    length_ = 0;
  }

  DoubleByteCandidate const& candidate_;
  std::size_t letters_{};
  std::size_t in_words_{};  // letters that stand beside others
  std::size_t hangul_{};
  std::size_t telling_{};
  std::size_t odd_{};
  std::size_t length_{};  // of the word so far
};

}  // namespace

std::optional<Encoding> japanese_chinese_or_korean(std::string_view bytes) {
  for (auto const& candidate : kDoubleByteCandidates) {
    auto const read = from_encoding(bytes, candidate.encoding, 0);
    if (!read || read->damage > 0) continue;
    DoubleByteTally tally{candidate};
    tally.take(read->text);
    if (tally.convinces()) return candidate.encoding;
  }
  return std::nullopt;
}

}  // namespace keydrift::encodings
