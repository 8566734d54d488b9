// "* 1a. Wings clear", "3. 2a. Legs long", "1. 1a. Wings clear" / "1b. Wings dark": keys copied
// from lists that set a bullet or a count of their own before each label.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestListed = 4;  // leads behind signs of a list

struct ListSign {
  std::size_t line{};
  std::size_t words{};     // bytes before the lead's own label
  char32_t bullet{};       // 0: a number
  std::uint32_t number{};  // of the list
  Label label;             // the lead's own
};

char32_t bullet_at(std::string_view line) {
  auto const c = code_point_at(line, 0);
  bool const bullet = c.value == '*' || c.value == '-' || c.value == 0x2022 || c.value == 0x2013 ||
                      c.value == 0x25CF || c.value == 0x25E6 || c.value == 0x25AA ||
                      c.value == 0xB7;
  return bullet && is_blank(code_point_at(line, c.length).value) ? c.value : 0;
}

// "12.", "12)" in front of a blank: its length.
std::size_t count_length(std::string_view line) {
  constexpr std::size_t kMostDigits = 3;
  std::size_t at = 0;
  while (at < line.size() && is_digit(static_cast<unsigned char>(line[at]))) ++at;
  if (at == 0 || at > kMostDigits || at + 1 >= line.size()) return 0;
  bool const closed = line[at] == '.' || line[at] == ')';
  return closed && is_blank(code_point_at(line, at + 1).value) ? at + 1 : 0;
}

// The label behind the sign, before words.
std::optional<ListSign> list_sign_of(SourceLine const& line, std::size_t at) {
  ListSign sign{.line = at, .words = 0, .bullet = bullet_at(line.text), .number = 0, .label = {}};
  auto const count = count_length(line.text);
  if (sign.bullet != 0) {
    sign.words = skip_blanks(line.text, code_point_at(line.text, 0).length);
  } else if (count > 0) {
    sign.number = number_of(line.text.substr(0, count - 1));
    sign.words = skip_blanks(line.text, count);
  } else {
    return std::nullopt;
  }
  auto const rest = line.text.substr(sign.words);
  auto const label = read_label(rest);
  if (!label || label->decimal || !is_upper(code_point_at(rest, label->text_at).value)) {
    return std::nullopt;
  }
  if (label->family != LabelFamily::digits && !is_dash(code_point_at(rest, 0).value)) {
    return std::nullopt;
  }
  sign.label = *label;
  return sign;
}

// The leads' own labels count couplets: each number follows the one before, or answers it.
bool count_couplets(std::vector<ListSign> const& signs) {
  std::uint32_t last = 0;
  std::size_t rivals = 0;
  std::size_t couplets = 0;
  for (auto const& [line, words, bullet, number, label] : signs) {
    if (label.is_dash() || (last != 0 && label.number == last)) {
      ++rivals;
    } else if (label.number == last + 1) {
      ++couplets;
      last = label.number;
    }
  }
  auto const counted = rivals + couplets;
  return couplets >= 2 && rivals >= 2 && counted * 10 >= signs.size() * 9 &&
         rivals * 3 >= signs.size();
}

// A bullet before every lead, or all lines of a list that are counted through.
bool stand_before_leads(std::vector<ListSign> const& signs, std::size_t without_label) {
  if (signs.size() < kFewestListed || without_label * 10 > signs.size()) return false;
  std::size_t alike = 0;
  for (std::size_t i = 0; i < signs.size(); ++i) {
    bool const bullet = signs[i].bullet != 0 && signs[i].bullet == signs[0].bullet;
    bool const count = signs[i].bullet == 0 && signs[i].number == i + 1;
    if (bullet || count) ++alike;
  }
  return alike == signs.size() && count_couplets(signs);
}

// "1. 1a. Wings clear" / "1b. Wings dark" / "2. 2a. Legs long": the list counts the couplets.
std::vector<ListSign> doubled_numbers(std::vector<ListSign> const& signs,
                                      std::vector<SourceLine> const& lines) {
  std::vector<ListSign> doubled;
  for (auto const& sign : signs) {
    bool const closed = sign.label.end != LabelEnd::none || !sign.label.letter.empty();
    if (sign.bullet != 0 || sign.number != sign.label.number || !closed) continue;
    if (!doubled.empty() && sign.number != doubled.back().number &&
        sign.number != doubled.back().number + 1) {
      return {};
    }
    doubled.push_back(sign);
  }
  if (doubled.size() < 2) return {};
  // Labels that stand alone are the rivals of those that are doubled.
  std::size_t alone = 0;
  for (auto const& line : lines) {
    auto const label = read_label(line.text);
    if (label && label->family == LabelFamily::digits && label->text_at < line.text.size() &&
        is_upper(code_point_at(line.text, label->text_at).value)) {
      ++alone;
    }
  }
  return alone <= doubled.size() * 2 ? doubled : std::vector<ListSign>{};
}

}  // namespace

void take_off_list_signs(std::vector<SourceLine>& lines) {
  std::vector<ListSign> signs;
  std::size_t without_label = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].text.empty() || lines[i].markup.role != LineRole::told_by_text) continue;
    if (auto const sign = list_sign_of(lines[i], i)) {
      signs.push_back(*sign);
    } else if (bullet_at(lines[i].text) != 0 || count_length(lines[i].text) > 0) {
      ++without_label;
    }
  }
  if (!stand_before_leads(signs, without_label)) signs = doubled_numbers(signs, lines);
  for (auto const& sign : signs) {
    auto& line = lines[sign.line];
    line.blanks += count_code_points(line.text.substr(0, sign.words));
    line.text.remove_prefix(sign.words);
    line.begin += sign.words;
  }
}

}  // namespace keydrift::printed
