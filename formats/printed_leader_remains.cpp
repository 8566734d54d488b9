#include "keydrift/formats/printed_leader_remains.hpp"

#include <algorithm>
#include <cstddef>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

bool is_remaining_dot(char32_t c) { return c == U'.' || c == U'•' || c == U'·' || c == U'…'; }

bool is_row_of_leader_dots(std::string_view word) {
  while (!word.empty()) {
    auto const sign = code_point_at(word, 0);
    if (!is_remaining_dot(sign.value)) return false;
    word.remove_prefix(sign.length);
  }
  return true;
}

}  // namespace

std::size_t without_leader_remains(std::string_view words) {
  auto const whole = trim_right(words);
  auto rest = whole;
  for (;;) {
    auto const last = last_word_begin(rest);
    if (last == 0 || !is_row_of_leader_dots(rest.substr(last))) break;
    rest = trim_right(rest.substr(0, last));
  }
  bool const own_stop = whole.size() == rest.size() + 2 && whole.ends_with(" .") && !rest.empty() &&
                        std::string_view{".;:!?"}.find(rest.back()) == std::string_view::npos;
  return own_stop || rest.empty() ? words.size() : rest.size();
}

void drop_leader_remains(std::vector<ReadLead>& reads) {
  for (auto& read : reads) {
    auto& lead = read.lead;
    auto const size = without_leader_remains(lead.text);
    if (size == lead.text.size()) continue;
    lead.text.resize(size);
    while (!lead.runs.empty() && lead.runs.back().text_begin >= size) lead.runs.pop_back();
    if (lead.runs.empty()) continue;
    // A run stands in the source byte for byte.
    auto& last = lead.runs.back();
    last.place.end = std::min(last.place.end, last.place.begin + (size - last.text_begin));
  }
}

}  // namespace keydrift::printed
