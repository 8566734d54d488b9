#include "keydrift/formats/printed_stamps.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestStamp = 240;  // bytes

template <class Words>
bool begins_with_any(std::string_view folded, Words const& openings) {
  return std::any_of(openings.begin(), openings.end(),
                     [folded](std::string_view words) { return folded.starts_with(words); });
}

// "marsh.example", "https://marsh.example/7", "192.0.2.7", "08:13:55PM", "11/23/2020": no words of
// a sentence.
bool is_address_or_time(std::string_view word) {
  if (word.find("://") != std::string_view::npos) return true;
  auto const inner = without_full_stop(word);
  for (std::size_t at = 1; at + 1 < inner.size(); ++at) {
    auto const before = static_cast<unsigned char>(inner[at - 1]);
    auto const behind = static_cast<unsigned char>(inner[at + 1]);
    bool const figures = is_digit(before) && is_digit(behind);
    bool const letters = is_small(inner[at - 1]) && is_small(inner[at + 1]);
    if (inner[at] == '.' && (figures || letters)) return true;
    if ((inner[at] == ':' || inner[at] == '/') && figures) return true;
  }
  return false;
}

// "4", "IV", "4-6".
bool is_plate_number(std::string_view word) {
  word = word.substr(0, word.find_last_not_of(".,") + 1);
  if (word.empty()) return false;
  auto const rest = word.find_first_not_of("0123456789");
  if (rest != 0) return rest == std::string_view::npos || is_dash(code_point_at(word, rest).value);
  return word.find_first_not_of("IVXLC") == std::string_view::npos;
}

bool is_plate_word(std::string_view word) {
  static constexpr std::array kWords{"fig"sv,   "figs"sv,   "figure"sv, "figures"sv,
                                     "plate"sv, "plates"sv, "pl"sv,     "pls"sv,
                                     "table"sv, "tables"sv, "map"sv,    "maps"sv};
  return is_one_of(kWords, fold(without_full_stop(word)));
}

}  // namespace

bool is_stamp(std::string_view line) {
  static constexpr std::array kWordings{"this content downloaded from "sv, "all use subject to "sv};
  static constexpr std::array kMakers{"digitized by "sv, "digitised by "sv};
  static constexpr std::array kLoads{"downloaded from "sv, "downloaded from: "sv,
                                     "downloaded by "sv,   "downloaded by: "sv,
                                     "downloaded on "sv,   "downloaded: "sv};
  constexpr std::size_t kMostWordsOfMaker = 6;
  constexpr std::size_t kStart = 32;  // bytes
  if (line.size() > kLongestStamp) return false;
  auto const folded = fold(start_of(line, kStart));
  if (folded.empty() || (folded[0] != 't' && folded[0] != 'a' && folded[0] != 'd')) return false;
  if (begins_with_any(folded, kWordings)) return true;
  if (begins_with_any(folded, kMakers)) {
    auto const words = words_of(line, kMostWordsOfMaker + 1);
    return words.size() > 2 && words.size() <= kMostWordsOfMaker && starts_with_upper(words[2]);
  }
  if (!begins_with_any(folded, kLoads)) return false;
  auto const words = words_of(line);
  return std::any_of(words.begin(), words.end(), is_address_or_time);
}

bool goes_on_with_stamp(std::string_view line) {
  static constexpr std::array kOpenings{"via free access"sv, "via open access"sv, "terms of use:"sv,
                                        "by guest on "sv, "for personal use only"sv};
  constexpr std::size_t kStart = 32;  // bytes
  if (line.size() > kLongestStamp) return false;
  return begins_with_any(fold(start_of(line, kStart)), kOpenings);
}

bool tells_place_of_plate(std::string_view line) {
  static constexpr std::array kPlaces{"near"sv, "about"sv, "around"sv};
  constexpr std::size_t kMostWords = 6;
  constexpr std::string_view kOpen = "[(<";
  constexpr std::string_view kClose = "])>.";
  while (!line.empty() && kOpen.find(line.front()) != kOpen.npos) line.remove_prefix(1);
  while (!line.empty() && kClose.find(line.back()) != kClose.npos) line.remove_suffix(1);
  auto words = words_of(line, kMostWords + 1);
  if (words.size() < 3 || words.size() > kMostWords || fold(words.back()) != "here") return false;
  bool const inserted = fold(words.front()) == "insert" || fold(words.front()) == "place";
  if (inserted) words.erase(words.begin());
  if (words.size() < 3 || !is_plate_word(words[0]) || !is_plate_number(words[1])) return false;
  return inserted || is_one_of(kPlaces, fold(words[words.size() - 2]));
}

bool is_head_of_plate(std::string_view line) {
  static constexpr std::array kWords{"plate"sv, "pl"sv,      "planche"sv, "tafel"sv,
                                     "taf"sv,   "estampa"sv, "est"sv};
  auto const words = words_of(line, 3);
  if (words.size() != 2 || !is_plate_number(words[1])) return false;
  auto const word = without_full_stop(words[0]);
  return is_in_capitals(word) && is_one_of(kWords, fold(word));
}

}  // namespace keydrift::printed
