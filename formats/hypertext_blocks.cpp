#include "keydrift/formats/hypertext_blocks.hpp"

#include <unordered_set>
#include <utility>

#include "keydrift/formats/hypertext_frames.hpp"
#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_walk.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kBlockBytesKept = 96;  // bytes of a block's begin and end that are kept
constexpr std::size_t kMostBehind = 40;      // bytes behind the mark that a block ends in

bool is_list_or_table(std::string_view name) {
  return name == "ul" || name == "ol" || name == "dl" || name == "table";
}
bool is_item_or_row(std::string_view name) {
  return name == "li" || name == "dt" || name == "dd" || name == "tr";
}
bool titles(std::string_view name) {
  return is_heading(name) || name == "summary" || name == "legend";
}
bool is_bold(std::string_view name) {
  return name == "b" || name == "strong" || name == "dt" || name == "th";
}
bool is_mark(std::string_view name) {
  return name == "a" || name == "i" || name == "em" || name == "cite";
}

class BlockMaker {
 public:
  explicit BlockMaker(std::string_view text) : text_{text}, frames_{frame_cells(text)} {}

  std::vector<Block> make() && {
    walk(
        text_, [this](Tag const& tag, std::size_t at) { take(tag, at); },
        [this](std::size_t at) { return show(at); });
    end_block();
    return std::move(blocks_);
  }

 private:
  // An open list or item, and the innermost item that text within it belongs to.
  struct Open {
    bool list{false};
    std::size_t id{};
    std::size_t item{kNowhere};
    std::size_t list_of_item{kNowhere};
  };

  void take(Tag const& tag, std::size_t at) {
    auto const& name = tag.name;
    if (is_bold(name)) count(bold_, tag);
    if (is_mark(name)) count(marks_, tag);
    if (is_cell(name)) return take_cell(tag, at);
    bool const row = name == "tr" || name == "table" || name == "tbody" || name == "thead";
    if (row) in_cell_ = false;
    if (!breaks_line(name)) return;
    if (in_cell_ && !is_list_or_table(name) && !is_item_or_row(name)) {
      blank_ = true;
      return;
    }
    end_block();
    fresh_ = at;
    fresh_name_ = (tag.closes ? "/" : "") + name;
    // Cells of a row, and what no one closed.
    if (titles(name)) heading_ = !tag.closes;
    if (name == "p" || is_item_or_row(name) || is_list_or_table(name)) {
      bold_ = name == "dt" && !tag.closes ? 1 : 0;
    }
    if (!tag.empty && is_list_or_table(name)) take_list(tag);
    if (!tag.empty && is_item_or_row(name)) take_item(tag);
  }

  void take_cell(Tag const& tag, std::size_t at) {
    in_cell_ = !tag.closes;
    blank_ = true;
    if (tag.closes || !frames_.contains(at)) return;
    // A page within a cell: the row is no item.
    in_cell_ = false;
    end_block();
    fresh_ = at;
    fresh_name_ = tag.name;
    if (!open_.empty() && !open_.back().list) open_.pop_back();
  }

  void take_list(Tag const& tag) {
    if (!tag.closes) {
      auto const item = open_.empty() ? kNowhere : open_.back().item;
      auto const list = open_.empty() ? kNowhere : open_.back().list_of_item;
      open_.push_back({.list = true, .id = lists_++, .item = item, .list_of_item = list});
      ++open_lists_;
      return;
    }
    if (open_lists_ == 0) return;
    while (!open_.back().list) open_.pop_back();
    open_.pop_back();
    --open_lists_;
  }

  void take_item(Tag const& tag) {
    if (!open_.empty() && !open_.back().list) open_.pop_back();
    if (tag.closes) return;
    auto const list = open_.empty() ? kNowhere : open_.back().id;
    auto const id = items_++;
    open_.push_back({.list = false, .id = id, .item = id, .list_of_item = list});
  }

  static void count(std::size_t& depth, Tag const& tag) {
    if (tag.empty) return;
    if (!tag.closes) {
      ++depth;
    } else if (depth > 0) {
      --depth;
    }
  }

  std::size_t show(std::size_t at) {
    if (is_white(text_[at])) {
      blank_ = true;
      return 1;
    }
    if (text_[at] == '&') {
      if (auto const found = reference_at(text_.substr(at)); found.length > 0) {
        if (found.character == "\u00A0") {
          blank_ = true;
        } else {
          put(found.character);
        }
        return found.length;
      }
    }
    put(text_.substr(at, 1));
    return 1;
  }

  void put(std::string_view bytes) {
    if (!started_) {
      started_ = true;
      block_ = {.tag = fresh_, .name = fresh_name_, .heading = heading_, .bold = true};
      if (!open_.empty()) {
        block_.item = open_.back().item;
        block_.list = open_.back().list_of_item;
      }
      blank_ = false;
      marked_ = false;
    }
    if (blank_) add(" ");
    blank_ = false;
    block_.bold = block_.bold && bold_ > 0;
    if (marks_ > 0) {
      marked_ = true;
      behind_ = 0;
    } else {
      behind_ += bytes.size();
    }
    add(bytes);
  }
  void add(std::string_view bytes) {
    if (block_.begin.size() < kBlockBytesKept) block_.begin += bytes;
    block_.end += bytes;
    if (block_.end.size() > 2 * kBlockBytesKept) block_.end.erase(0, kBlockBytesKept);
  }

  void end_block() {
    blank_ = false;
    if (!std::exchange(started_, false)) return;
    block_.ends_in_mark = marked_ && behind_ <= kMostBehind;
    blocks_.push_back(std::move(block_));
  }

  std::string_view text_;
  std::unordered_set<std::size_t> frames_;
  std::vector<Block> blocks_;
  std::vector<Open> open_;  // the innermost last
  std::size_t open_lists_{};
  std::size_t lists_{};
  std::size_t items_{};
  std::size_t fresh_{};  // the tag that the next block begins with
  std::string fresh_name_{};
  Block block_;
  bool started_{false};  // block_ holds something
  bool blank_{false};
  bool in_cell_{false};
  bool heading_{false};
  std::size_t bold_{};  // elements that are open
  std::size_t marks_{};
  bool marked_{false};    // something of the block
  std::size_t behind_{};  // bytes since then
};

}  // namespace

std::vector<Block> blocks_of(std::string_view text) { return BlockMaker{text}.make(); }

}  // namespace keydrift::hypertext
