#include "keydrift/formats/text_scripts.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdint>

#include "keydrift/formats/text_iconv.hpp"

namespace keydrift::encodings {
namespace {

enum class Kind : std::uint8_t { other, damage, small, capital };

struct Sign {
  Kind kind{};
  bool common{};  // one of the script's commonest letters
};
using Signs = std::array<Sign, 128>;

struct Script {
  char32_t first;
  char32_t last;
  // The commonest small letters: of Cyrillic two of three letters of a text, of Greek six of seven.
  std::u32string_view common;
  std::size_t fewest_common;  // of a hundred letters
};
// Russian's ten, which are common in the other Slavonic languages too, and the "i" of some.
constexpr Script kCyrillic{0x400, 0x4FF, U"оеаинтсрвлі", 50};
constexpr Script kGreek{0x386, 0x3CE, U"αοιετσνηυρςάέήίόύ", 70};

struct ScriptCandidate {
  Encoding encoding;
  Script const& script;
  std::int64_t handicap;  // of a hundred letters
};
// Where the letters of a text are the same in two, the first of them is taken.
// Mac OS has Windows's small letters but "я"; some of Windows's capitals are its quotation marks.
constexpr std::array kScriptCandidates{ScriptCandidate{Encoding::windows_1251, kCyrillic, 0},
                                       ScriptCandidate{Encoding::koi8_r, kCyrillic, 0},
                                       ScriptCandidate{Encoding::koi8_u, kCyrillic, 0},
                                       ScriptCandidate{Encoding::ibm_866, kCyrillic, 0},
                                       ScriptCandidate{Encoding::mac_cyrillic, kCyrillic, 3},
                                       ScriptCandidate{Encoding::iso_8859_5, kCyrillic, 0},
                                       ScriptCandidate{Encoding::windows_1253, kGreek, 0},
                                       ScriptCandidate{Encoding::iso_8859_7, kGreek, 0}};

constexpr std::size_t kFewestLetters = 12;  // in words of the script; fewer tell nothing
constexpr std::size_t kShortestWord = 4;    // "ãõ", "ççã" and the like are shorter
constexpr std::size_t kLettersSample = std::size_t{1} << 20;  // bytes; more tell nothing more
constexpr std::size_t kFewestDistinct = 3;                    // rules and leaders repeat one sign

bool is_ascii_letter(unsigned char byte) {
  auto const small = byte | 0x20U;
  return small >= 'a' && small <= 'z';
}

Sign sign_of(char32_t character, Script const& script) {
  auto const code_point = static_cast<utf8proc_int32_t>(character);
  auto const category = utf8proc_category(code_point);
  bool const letter = category == UTF8PROC_CATEGORY_LU || category == UTF8PROC_CATEGORY_LL;
  if (letter && character >= script.first && character <= script.last) {
    auto const small = static_cast<char32_t>(utf8proc_tolower(code_point));
    return {category == UTF8PROC_CATEGORY_LU ? Kind::capital : Kind::small,
            script.common.find(small) != std::u32string_view::npos};
  }
  // Dashes, quotation marks, blanks and the signs of measures stand beside words; lines of tables,
  // letters of other scripts and what the encoding leaves undefined do not.
  bool const apart = category == UTF8PROC_CATEGORY_PD || category == UTF8PROC_CATEGORY_PI ||
                     category == UTF8PROC_CATEGORY_PF || category == UTF8PROC_CATEGORY_PS ||
                     category == UTF8PROC_CATEGORY_PO || category == UTF8PROC_CATEGORY_ZS ||
                     category == UTF8PROC_CATEGORY_NO || category == UTF8PROC_CATEGORY_CF ||
                     character == 0xB0 || character == 0xB1 || character == 0xD7 ||
                     character == 0x2116;
  return {apart ? Kind::other : Kind::damage, false};
}

// What reading the bytes in one encoding makes of them.
class ScriptTally {
 public:
  ScriptTally(Signs const& signs, ScriptCandidate const& candidate)
      : signs_{signs}, candidate_{candidate} {}

  void take(std::string_view bytes) {
    for (char const c : bytes) take(static_cast<unsigned char>(c));
    end_word();
  }

  // Is this a text of the script?
  [[nodiscard]] bool convinces() const {
    return in_words_ >= kFewestLetters && in_words_ * 10 >= letters_ * 6 &&
           common_ * 100 >= letters_ * candidate_.script.fewest_common && wrong_ * 20 <= letters_;
  }

  // Rare letters count against it: another encoding's dashes and quotation marks become letters.
  [[nodiscard]] std::int64_t score() const {
    auto const letters = static_cast<std::int64_t>(letters_);
    return 3 * static_cast<std::int64_t>(common_) - letters -
           4 * static_cast<std::int64_t>(wrong_) - letters * candidate_.handicap / 100;
  }

 private:
  void take(unsigned char byte) {
    if (byte < 0x80) {
      bool const latin = is_ascii_letter(byte);
      // "gr" before "ü": the word is of both.
      if (latin && length_ > 0) ++wrong_;
      end_word();
      after_latin_ = latin;
      after_damage_ = false;
      return;
    }
    auto const sign = signs_[byte - 0x80U];
    if (sign.kind == Kind::small || sign.kind == Kind::capital) {
      bool const breaks_case = after_small_ && sign.kind == Kind::capital;
      if (after_latin_ || after_damage_ || breaks_case) ++wrong_;
      ++letters_;
      if (sign.common) ++common_;
      ++length_;
      note_distinct(byte);
      after_small_ = sign.kind == Kind::small;
    } else {
      if (sign.kind == Kind::damage && (length_ > 0 || after_latin_)) ++wrong_;
      end_word();
    }
    after_latin_ = false;
    after_damage_ = sign.kind == Kind::damage;
  }

  void note_distinct(unsigned char byte) {
    auto* const end = seen_.begin() + distinct_;
    if (distinct_ < seen_.size() && std::find(seen_.begin(), end, byte) == end) {
      seen_[distinct_++] = byte;
    }
  }

  void end_word() {
    if (length_ >= kShortestWord && distinct_ >= kFewestDistinct) in_words_ += length_;
    length_ = 0;
    distinct_ = 0;
    after_small_ = false;
  }

  Signs const& signs_;
  ScriptCandidate const& candidate_;
  std::size_t letters_{};   // of the script
  std::size_t in_words_{};  // those in words of the script alone
  std::size_t common_{};
  std::size_t wrong_{};   // capitals behind small letters, signs and Latin letters within words
  std::size_t length_{};  // of the word so far
  std::array<unsigned char, kFewestDistinct> seen_{};
  std::size_t distinct_{};
  bool after_small_{false};
  bool after_latin_{false};
  bool after_damage_{false};
};

// A cheap look before the others: in Latin letters, nearly all high bytes stand alone.
bool has_words_of_high_bytes(std::string_view bytes) {
  std::size_t high = 0;
  std::size_t in_words = 0;
  std::size_t run = 0;
  for (char const c : bytes) {
    if (static_cast<unsigned char>(c) >= 0x80) {
      ++run;
      continue;
    }
    high += run;
    if (run >= kShortestWord) in_words += run;
    run = 0;
  }
  high += run;
  if (run >= kShortestWord) in_words += run;
  return in_words >= kFewestLetters && in_words * 2 >= high;
}

}  // namespace

std::optional<Encoding> cyrillic_or_greek(std::string_view bytes) {
  if (!has_words_of_high_bytes(bytes)) return std::nullopt;
  auto const first = std::find_if(bytes.begin(), bytes.end(),
                                  [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
  bytes = bytes.substr(static_cast<std::size_t>(first - bytes.begin()), kLettersSample);
  std::optional<Encoding> best;
  std::optional<std::int64_t> best_score;
  for (auto const& candidate : kScriptCandidates) {
    auto const table = high_bytes(candidate.encoding);
    if (!table) continue;
    Signs signs;
    std::transform(table->begin(), table->end(), signs.begin(),
                   [&](char32_t character) { return sign_of(character, candidate.script); });
    ScriptTally tally{signs, candidate};
    tally.take(bytes);
    if (!tally.convinces() || (best_score && tally.score() <= *best_score)) continue;
    best = candidate.encoding;
    best_score = tally.score();
  }
  return best;
}

}  // namespace keydrift::encodings
