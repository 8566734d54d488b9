#include "keydrift/formats/printed_label_signs.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewest = 3;  // couplets so labelled

// Calls with where each line begins, and the line without the blanks before it.
template <typename Visit>
void visit_lines(std::string_view text, Visit visit) {
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const at = begin + skip_blanks(text.substr(begin, end - begin), 0);
    visit(at, text.substr(at, end - at));
    begin = end + 1;
  }
}

struct Indexed {
  std::size_t at{};     // in the text
  std::size_t bytes{};  // up to and with the stop
  char letter{};
  char index{};
  bool sound{true};  // the letter and the figure are as printed
};

std::optional<Indexed> read_indexed(std::size_t at, std::string_view line) {
  constexpr std::size_t kShortest = 6;  // "a 1. W"
  if (line.size() < kShortest) return std::nullopt;
  Indexed read;
  read.at = at;
  read.letter = line[0];
  read.sound = line[0] >= 'a' && line[0] <= 'z';
  if (line[0] == '6') read.letter = 'b';
  if (!read.sound && read.letter == line[0]) return std::nullopt;
  bool const parted = line[1] == ' ';
  auto const sign = line[parted ? 2 : 1];
  if (sign >= '1' && sign <= '3') {
    read.index = sign;
  } else if (sign == 'l' || sign == 'I') {
    read.index = '1';
    read.sound = false;
  } else if (sign == '-' && read.sound) {
    read.index = '2';
    read.sound = false;
  } else {
    return std::nullopt;
  }
  auto stop = std::size_t{parted ? 3U : 2U};
  bool const apart = line[stop] == ' ';
  if (apart) ++stop;
  if (!(parted || apart) || stop + 2 >= line.size()) return std::nullopt;
  if (line[stop] != '.' || line[stop + 1] != ' ') return std::nullopt;
  if (!is_upper(code_point_at(line, stop + 2).value)) return std::nullopt;
  read.bytes = stop + 1;
  return read;
}

}  // namespace

std::size_t close_indexed_labels(std::string& text) {
  std::vector<Indexed> labels;
  std::map<char, std::uint32_t> indices;  // of sound labels, a bit for each, by letter
  visit_lines(text, [&](std::size_t at, std::string_view line) {
    auto const read = read_indexed(at, line);
    if (!read) return;
    labels.push_back(*read);
    if (read->sound) indices[read->letter] |= 1U << static_cast<unsigned>(read->index - '0');
  });
  auto const paired = [&](char letter) {
    constexpr std::uint32_t kFirstAndSecond = 0b110;
    auto const found = indices.find(letter);
    return found != indices.end() && (found->second & kFirstAndSecond) == kFirstAndSecond;
  };
  auto const pairs = std::count_if(indices.begin(), indices.end(),
                                   [&](auto const& one) { return paired(one.first); });
  if (!paired('a') || pairs < static_cast<std::ptrdiff_t>(kFewest)) return 0;
  std::size_t closed = 0;
  for (auto const& label : labels) {
    if (!label.sound && !indices.contains(label.letter)) continue;
    ++closed;
    auto const end = std::min(text.find('\n', label.at), text.size());
    std::string line{label.letter, label.index, '.'};
    line.append(text, label.at + label.bytes, end - label.at - label.bytes);
    line.resize(end - label.at, ' ');
    text.replace(label.at, end - label.at, line);
  }
  return closed;
}

std::size_t restore_colons_of_labels(std::string& text) {
  std::set<std::string_view> bare;   // numbers that begin lines without a sign
  std::vector<std::size_t> damaged;  // where the semicolons stand
  std::size_t colons = 0;            // numbers that begin two lines, the second with a colon
  visit_lines(text, [&](std::size_t at, std::string_view line) {
    std::size_t digits = 0;
    while (digits < line.size() && is_digit(static_cast<unsigned char>(line[digits]))) ++digits;
    if (digits == 0 || digits > 3 || digits + 2 >= line.size()) return;
    auto const number = line.substr(0, digits);
    auto const sign = line[digits];
    auto const words = sign == ' ' ? digits + 1 : digits + 2;
    if (words > digits + 1 && line[digits + 1] != ' ') return;
    if (!is_upper(code_point_at(line, words).value)) return;
    if (sign == ' ') {
      bare.insert(number);
    } else if (sign == ':' && bare.contains(number)) {
      ++colons;
    } else if (sign == ';' && bare.contains(number)) {
      damaged.push_back(at + digits);
    }
  });
  if (colons < kFewest || colons <= damaged.size()) return 0;
  for (auto const at : damaged) text[at] = ':';
  return damaged.size();
}

}  // namespace keydrift::printed
