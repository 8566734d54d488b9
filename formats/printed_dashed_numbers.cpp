#include "keydrift/formats/printed_dashed_numbers.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewest = 4;

// A number and what stands before it, in bytes of the text.
struct Marked {
  std::size_t dash{};
  std::size_t number_at{};
  std::uint32_t number{};
};

// "1. Wings", "1. ♂ : wings": the label's number; 0 for anything else.
std::uint32_t labelled(std::string_view line) {
  if (line.empty() || !is_digit(static_cast<unsigned char>(line.front()))) return 0;
  auto const label = read_label(line);
  bool const plain = label && label->family == LabelFamily::digits && !label->decimal &&
                     label->end == LabelEnd::dot && label->text_at < line.size();
  bool const words = plain && !is_lower(code_point_at(line, label->text_at).value) &&
                     !is_digit(code_point_at(line, label->text_at).value);
  return words ? label->number : 0;
}

}  // namespace

std::size_t clear_dashes_before_numbers(std::string& text) {
  std::vector<Marked> marked;
  std::size_t bare = 0;    // numbers without a dash
  std::size_t dashes = 0;  // dashes before words
  std::string_view const whole = text;
  for (std::size_t begin = 0; begin < whole.size();) {
    auto const stop = std::min(whole.find('\n', begin), whole.size());
    auto const line = whole.substr(begin, stop - begin);
    auto const at = skip_blanks(line, 0);
    auto const sign = code_point_at(line, at);
    if (is_dash(sign.value)) {
      auto const behind = skip_blanks(line, at + sign.length);
      auto const number = behind > at + sign.length ? labelled(line.substr(behind)) : 0;
      if (number > 0) {
        marked.push_back({begin + at, begin + behind, number});
      } else {
        ++dashes;
      }
    } else if (labelled(line.substr(at)) > 0) {
      ++bare;
    }
    begin = stop + 1;
  }
  // "– 2. Antennal segment long" is a lead of couplets that are numbered otherwise.
  bool counts = marked.size() >= kFewest && marked.front().number == 1 &&
                bare * 4 <= marked.size() && dashes * 2 >= marked.size();
  for (std::size_t i = 1; counts && i < marked.size(); ++i) {
    counts = marked[i].number == marked[i - 1].number + 1;
  }
  if (!counts) return 0;
  std::string cleared;
  std::size_t done = 0;
  for (auto const& one : marked) {
    cleared.append(text, done, one.dash - done);
    done = one.number_at;
  }
  cleared.append(text, done);
  text = std::move(cleared);
  return marked.size();
}

}  // namespace keydrift::printed
