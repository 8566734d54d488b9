#include "made_scan.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace keydrift::test {
namespace {

using namespace std::string_view_literals;

struct Misread {
  std::string_view printed;
  std::array<std::string_view, 4> seen;
};
constexpr std::array kMisread{
    Misread{"0"sv, {"O"sv, "o"sv, "Q"sv, "6"sv}},  Misread{"1"sv, {"l"sv, "I"sv, "i"sv, "!"sv}},
    Misread{"2"sv, {"z"sv, "Z"sv, "?"sv, "a"sv}},  Misread{"3"sv, {"8"sv, "8"sv, "B"sv, "5"sv}},
    Misread{"4"sv, {"A"sv, "i"sv, "1"sv, "h"sv}},  Misread{"5"sv, {"S"sv, "s"sv, "6"sv, "3"sv}},
    Misread{"6"sv, {"G"sv, "b"sv, "0"sv, "5"sv}},  Misread{"7"sv, {"1"sv, "T"sv, "/"sv, "?"sv}},
    Misread{"8"sv, {"B"sv, "3"sv, "S"sv, "&"sv}},  Misread{"9"sv, {"g"sv, "q"sv, "0"sv, "8"sv}},
    Misread{"a"sv, {"o"sv, "u"sv, "n"sv, "«"sv}},  Misread{"b"sv, {"h"sv, "6"sv, "l"sv, "t"sv}},
    Misread{"c"sv, {"e"sv, "o"sv, "("sv, "r"sv}},  Misread{"d"sv, {"a"sv, "cl"sv, "il"sv, "<l"sv}},
    Misread{"e"sv, {"c"sv, "o"sv, "«"sv, "a"sv}},  Misread{"A"sv, {"4"sv, "Λ"sv, "X"sv, "k"sv}},
    Misread{"B"sv, {"8"sv, "R"sv, "P"sv, "E"sv}},  Misread{"C"sv, {"G"sv, "O"sv, "("sv, "c"sv}},
    Misread{"D"sv, {"I)"sv, "O"sv, "B"sv, "P"sv}}, Misread{"E"sv, {"F"sv, "B"sv, "K"sv, "H"sv}},
    Misread{"–"sv, {"~"sv, "■"sv, "."sv, "_"sv}},  Misread{"—"sv, {"~"sv, "■"sv, "-"sv, "_"sv}},
    Misread{"-"sv, {"~"sv, "."sv, "•"sv, "_"sv}},  Misread{"'"sv, {"\""sv, "*"sv, "’"sv, "!"sv}},
    Misread{"¹"sv, {"'"sv, "\""sv, "i"sv, "l"sv}}, Misread{"²"sv, {"\""sv, "'"sv, "*"sv, "z"sv}},
    Misread{"("sv, {"{"sv, "["sv, "<"sv, "C"sv}},  Misread{")"sv, {"}"sv, "]"sv, ">"sv, "J"sv}},
    Misread{"."sv, {","sv, ":"sv, ""sv, " ."sv}},
};

}  // namespace

Scan::Scan(std::uint32_t seed, std::uint32_t per_mille)
    : state_{seed * 2654435761U % 2147483646U + 1}, per_mille_{per_mille} {}

// D. H. Lehmer's generator with the multiplier 48271 (Park, Miller & Stockmeyer 1993, Comm. ACM
// 36(7): 108).
std::size_t Scan::below(std::size_t bound) {
  for (int i = 0; i < 3; ++i) state_ = state_ * 48271U % 2147483647U;
  return static_cast<std::size_t>(state_ / 7U) % bound;
}

bool Scan::is_damaged() { return below(1000) < per_mille_; }

std::string Scan::with_sign_misread(std::string_view printed) {
  struct Found {
    std::size_t at;
    Misread const* sign;
  };
  std::vector<Found> found;
  for (auto const& sign : kMisread) {
    for (auto at = printed.find(sign.printed); at != std::string_view::npos;
         at = printed.find(sign.printed, at + 1)) {
      found.push_back({at, &sign});
    }
  }
  std::string seen{printed};
  if (found.empty()) return seen;
  auto const& chosen = found[below(found.size())];
  seen.replace(chosen.at, chosen.sign->printed.size(),
               chosen.sign->seen[below(chosen.sign->seen.size())]);
  return seen;
}

std::string Scan::say(std::string_view what, std::string_view printed, std::string seen) {
  if (seen == printed) return seen;
  said_ += " " + std::string{what} + " " + std::string{printed} + ">" + seen + ";";
  return seen;
}

std::string Scan::label(std::string_view printed) {
  if (printed.empty() || !is_damaged()) return std::string{printed};
  return say("label", printed, label_seen(printed));
}

std::string Scan::label_seen(std::string_view printed) {
  static constexpr std::array kStray{"'"sv, "."sv, "•"sv, "|"sv};
  switch (below(12)) {
    case 0:
      return std::string{kStray[below(kStray.size())]} + std::string{printed};
    case 1:
      return {};
    case 2: {
      if (printed.size() < 2 || static_cast<unsigned char>(printed[0]) >= 0x80) break;
      return std::string{printed.substr(0, 1)} + " " + std::string{printed.substr(1)};
    }
    case 3:
      if (!printed.ends_with('.')) break;
      return std::string{printed.substr(0, printed.size() - 1)};
    default:
      break;
  }
  return with_sign_misread(printed);
}

std::string Scan::leader(std::string_view printed) {
  std::string seen{printed};
  if (printed.find('.') == std::string_view::npos || !is_damaged()) return seen;
  static constexpr std::array kSigns{","sv, "•"sv, "-"sv, " "sv, "_"sv, ":"sv, "*"sv};
  for (auto count = 1 + below(3); count > 0; --count) {
    std::vector<std::size_t> dots;
    for (std::size_t at = 0; at < seen.size(); ++at) {
      if (seen[at] == '.') dots.push_back(at);
    }
    if (dots.size() < 3) break;
    seen.replace(dots[below(dots.size())], 1, kSigns[below(kSigns.size())]);
  }
  return say("leader", printed, seen);
}

std::string Scan::number(std::string_view printed) {
  if (!is_damaged()) return std::string{printed};
  return say("number", printed, with_sign_misread(printed));
}

std::size_t Scan::indent(std::size_t printed) {
  if (!is_damaged()) return printed;
  auto const by = below(2) + 1;
  return below(2) == 0 && printed >= by ? printed - by : printed + by;
}

std::string as_text_layer(std::string_view text, TextLayer layer, bool flush, std::uint32_t seed) {
  constexpr std::uint64_t kStep = 0x9E3779B97F4A7C15U;  // of splitmix64 (Vigna 2015), from memory
  std::uint64_t state = seed;
  std::string set;
  bool blank = false;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto line = text.substr(begin, end - begin);
    begin = end + 1;
    if (flush) line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
    if (line.empty()) {
      if (!blank) set += '\n';
      blank = true;
      continue;
    }
    set += line;
    set += '\n';
    state += kStep;
    auto const mixed = (state ^ (state >> 30U)) * 0xBF58476D1CE4E5B9U;
    blank = layer == TextLayer::between_lines || (mixed >> 33U) % 5 < 2;
    if (blank) set += '\n';
  }
  return set;
}

}  // namespace keydrift::test
