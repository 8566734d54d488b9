#include "keydrift/formats/hypertext_width.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kFewestFeeds = 12;     // fewer may end at a width by chance
constexpr std::size_t kNarrowest = 50;       // characters; leads may all be as short
constexpr std::size_t kLabelBytesKept = 12;  // bytes of a line's begin that may be a label

// A line of the source.
struct SourceLine {
  std::size_t length{};      // characters, tags and blanks included
  std::size_t first_word{};  // characters of it
  std::string shown{};       // how it begins, tags aside
  bool filled{false};
  bool begins_in_words{true};  // no tag that parts lines stands in front
  bool ends_in_words{true};
};

// A line feed between words.
struct Feed {
  std::size_t before{};      // characters of the line that it ends
  std::size_t first_word{};  // of the next
  std::size_t length{};
  bool labelled{false};
};

bool parts_lines(std::string_view name) {
  return breaks_line(name) || name == "td" || name == "th" || name == "body" || name == "head" ||
         name == "html" || name == "meta" || name == "link" || name == "!";
}
bool is_no_text(std::string_view name) {
  return name == "pre" || name == "script" || name == "style";
}

class FeedSurveyor {
 public:
  explicit FeedSurveyor(std::string_view text) : text_{text} {}

  std::vector<Feed> survey() && {
    while (at_ < text_.size()) {
      auto const tag = text_[at_] == '<' ? tag_at(text_.substr(at_)) : Tag{};
      if (tag.length == 0) {
        take(text_[at_++], false);
      } else {
        take_tag(tag);
      }
    }
    return std::move(feeds_);
  }

 private:
  void take_tag(Tag const& tag) {
    bool const parts = parts_lines(tag.name);
    if (parts && line_.shown.empty()) line_.begins_in_words = false;
    auto end = at_ + tag.length;
    if (!tag.closes && !tag.empty && is_no_text(tag.name)) {
      end = closing_tag(text_, end, tag.name);
    }
    for (; at_ < end; ++at_) take(text_[at_], true);
    if (parts) line_.ends_in_words = false;
  }

  void take(char c, bool of_tag) {
    if (c == '\n') return end_line(of_tag);
    if (!is_white(c)) {
      in_word_ = in_word_ || !line_.filled;
      line_.filled = true;
      if (!of_tag) line_.ends_in_words = true;
      if (!of_tag && line_.shown.size() < kLabelBytesKept) line_.shown += c;
    } else {
      in_word_ = false;
      if (!line_.shown.empty() && line_.shown.size() < kLabelBytesKept) line_.shown += ' ';
    }
    // Bytes that go on with a character of UTF-8 count for none.
    if ((static_cast<unsigned char>(c) & 0xC0U) == 0x80U) return;
    ++line_.length;
    if (in_word_) ++line_.first_word;
  }

  void end_line(bool within_tag) {
    if (line_.filled && before_.filled && line_.begins_in_words && before_.ends_in_words) {
      auto const label = printed::read_label(line_.shown);
      bool const of_lead =
          label && (label->is_dash() || label->family == printed::LabelFamily::digits);
      feeds_.push_back({before_.length, line_.first_word, line_.length, of_lead});
    }
    before_ = std::move(line_);
    line_ = {};
    in_word_ = false;
    if (within_tag) line_.begins_in_words = before_.ends_in_words = false;
  }

  std::string_view text_;
  std::size_t at_{};
  SourceLine before_;
  SourceLine line_;
  bool in_word_{false};
  std::vector<Feed> feeds_;
};

}  // namespace

bool wraps_at_width(std::string_view text) {
  auto const feeds = FeedSurveyor{text}.survey();
  if (feeds.size() < kFewestFeeds) return false;
  // A word may be longer than the width, so it is not the longest line that tells it.
  std::vector<std::size_t> lengths;
  lengths.reserve(feeds.size());
  for (auto const& feed : feeds) lengths.push_back(feed.length);
  auto const nth =
      lengths.begin() + static_cast<std::ptrdiff_t>(lengths.size() - 1 - lengths.size() / 20);
  std::nth_element(lengths.begin(), nth, lengths.end());
  auto const width = *nth;
  auto const full =
      static_cast<std::size_t>(std::count_if(feeds.begin(), feeds.end(), [width](Feed const& feed) {
        return feed.before + 1 + feed.first_word > width;
      }));
  auto const labelled = static_cast<std::size_t>(
      std::count_if(feeds.begin(), feeds.end(), [](Feed const& feed) { return feed.labelled; }));
  return width >= kNarrowest && full * 20 >= feeds.size() * 19 && labelled * 8 <= feeds.size();
}

}  // namespace keydrift::hypertext
