#include "keydrift/formats/hypertext_letters.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_number_heads.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kFewestOfEachLetter = 3;  // of "a", and of "b"

// 1 of "a", "a.", "(A)"; 0 for any other line.
std::uint32_t letter_alone(ManuscriptLine const& line) {
  bool const told = line.markup.role == LineRole::told_by_text;
  auto const label = told ? printed::label_alone(line.text) : std::nullopt;
  if (!label) return 0;
  bool const letter =
      label->family == printed::LabelFamily::lower || label->family == printed::LabelFamily::upper;
  return letter && label->marks == 0 ? label->number : 0;
}

// "3" of a line that is nothing but a couplet's number; 0 for any other.
std::uint32_t number_alone(ManuscriptLine const& line) {
  auto const label = printed::label_alone(line.text);
  bool const number =
      label && label->family == printed::LabelFamily::digits && label->letter.empty();
  return number && line.markup.role == LineRole::told_by_text ? label->number : 0;
}

// "Step 3" as a title.
bool is_step(ManuscriptLine const& line, std::uint32_t number) {
  if (line.markup.role != LineRole::heading) return false;
  auto const text = printed::trim(line.text);
  auto const behind = printed::behind_number_word(text);
  return behind > 0 && text.substr(behind) == std::to_string(number);
}

}  // namespace

void set_badges_aside(std::vector<ManuscriptLine>& lines) {
  std::vector<std::size_t> badges;
  bool first = false;
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    auto const number = number_alone(lines[i]);
    if (number == 0 || !is_step(lines[i + 1], number)) continue;
    badges.push_back(i);
    first = first || number == 1;
  }
  if (!first) return;
  for (auto const i : badges) lines[i].markup.role = LineRole::aside;
}

void join_letters(std::vector<ManuscriptLine>& lines) {
  std::array<std::size_t, 3> counts{};
  for (auto const& line : lines) {
    if (auto const letter = letter_alone(line); letter < counts.size()) ++counts[letter];
  }
  if (counts[1] < kFewestOfEachLetter || counts[2] < kFewestOfEachLetter) return;
  std::size_t kept = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    bool const words_follow =
        letter_alone(lines[i]) > 0 && i + 1 < lines.size() && !lines[i + 1].text.empty() &&
        lines[i + 1].markup.role == LineRole::told_by_text && letter_alone(lines[i + 1]) == 0;
    if (words_follow) {
      put_before(std::move(lines[i]), lines[i + 1]);
    } else if (kept != i) {
      lines[kept++] = std::move(lines[i]);
    } else {
      ++kept;
    }
  }
  lines.resize(kept);
}

}  // namespace keydrift::hypertext
