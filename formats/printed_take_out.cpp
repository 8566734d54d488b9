#include "keydrift/formats/printed_take_out.hpp"

#include <algorithm>
#include <utility>

namespace keydrift::printed {

void take_out(std::string& text, std::vector<Signs> const& signs) {
  std::string plain;
  plain.reserve(text.size());
  auto const end_of_line = [&text](std::size_t at) {
    return std::min(text.find('\n', at), text.size());
  };
  std::size_t done = 0;
  std::size_t taken = 0;  // on the line that is being written
  auto line_end = end_of_line(0);
  for (auto const& [begin, end] : signs) {
    while (line_end < begin) {
      if (taken > 0) {
        plain.append(text, done, line_end - done).append(taken, ' ');
        done = line_end;
        taken = 0;
      }
      line_end = end_of_line(line_end + 1);
    }
    plain.append(text, done, begin - done);
    taken += end - begin;
    done = end;
  }
  plain.append(text, done, line_end - done).append(taken, ' ').append(text, line_end);
  text = std::move(plain);
}

}  // namespace keydrift::printed
