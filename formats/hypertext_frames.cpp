#include "keydrift/formats/hypertext_frames.hpp"

#include <algorithm>
#include <vector>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_walk.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kMostLinesOfCell = 6;  // that holds a lead, or the leads of a couplet

struct Open {
  std::size_t at{};      // of the cell's tag
  std::size_t lines{};   // that begin within it
  bool is_table{false};  // a table rather than a cell: borders of what is open outside
};

class FrameFinder {
 public:
  explicit FrameFinder(std::string_view text) : text_{text} {}

  std::unordered_set<std::size_t> find() && {
    walk(
        text_, [this](Tag const& tag, std::size_t at) { take(tag, at); },
        [this](std::size_t at) { return std::min(text_.find('<', at + 1), text_.size()) - at; });
    while (!open_.empty()) close();
    return std::move(frames_);
  }

 private:
  void take(Tag const& tag, std::size_t at) {
    bool const cell = tag.name == "td" || tag.name == "th";
    if (tag.name == "table") {
      if (!tag.closes) {
        count();
        open_.push_back({at, 0, true});
      } else {
        while (!open_.empty() && !open_.back().is_table) close();
        if (!open_.empty()) open_.pop_back();
      }
    } else if (cell || tag.name == "tr") {
      // Old pages leave the closing tags out.
      while (!open_.empty() && !open_.back().is_table) close();
      if (cell && !tag.closes && !open_.empty()) open_.push_back({at, 0, false});
    } else if (breaks_line(tag.name) && !tag.closes) {
      count();
    }
  }
  void count() {
    if (!open_.empty() && !open_.back().is_table) ++open_.back().lines;
  }
  void close() {
    if (open_.back().lines > kMostLinesOfCell) frames_.insert(open_.back().at);
    open_.pop_back();
  }

  std::string_view text_;
  std::vector<Open> open_;
  std::unordered_set<std::size_t> frames_;
};

}  // namespace

std::unordered_set<std::size_t> frame_cells(std::string_view text) {
  return FrameFinder{text}.find();
}

}  // namespace keydrift::hypertext
