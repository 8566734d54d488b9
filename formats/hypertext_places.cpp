#include "keydrift/formats/hypertext_places.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/formats/hypertext_beside.hpp"
#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_walk.hpp"
#include "keydrift/formats/hypertext_words.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::hypertext {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewestPositions = 8;  // of elements; fewer are ornaments
constexpr double kSameHeight = 3;            // pixels between what stands in one line
constexpr double kApart = 1.6;               // usual distances between lines that stand apart
constexpr double kColumn = 6;                // pixels of a column; common practice for 12 px type
constexpr std::uint32_t kDeepestColumns = 60;
constexpr std::size_t kFewestGlued = 3;  // borders of one kind

// The number of "top:90px" in a style; nullopt without one.
std::optional<double> length_in(std::string_view style, std::string_view property) {
  for (auto at = style.find(property); at != std::string_view::npos;
       at = style.find(property, at + 1)) {
    // Not the "top" of "margin-top".
    if (at > 0 && style[at - 1] != ';' && !is_white(style[at - 1])) continue;
    auto rest = style.substr(at + property.size());
    while (!rest.empty() && is_white(rest.front())) rest.remove_prefix(1);
    if (!rest.starts_with(':')) continue;
    rest.remove_prefix(1);
    while (!rest.empty() && is_white(rest.front())) rest.remove_prefix(1);
    double value = 0;
    auto const [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value);
    if (error == std::errc{}) return value;
  }
  return std::nullopt;
}

struct Position {
  std::size_t at{};
  double top{};
  double left{};
};

std::optional<Position> position_of(std::string_view written, std::size_t at) {
  auto const style = attribute_of(written, "style");
  if (style.find("absolute") == std::string_view::npos) return std::nullopt;
  auto const top = length_in(style, "top");
  if (!top) return std::nullopt;
  return Position{at, *top, length_in(style, "left").value_or(0)};
}

bool is_inline(std::string_view name) {
  static constexpr std::array kInline{"span"sv, "b"sv, "strong"sv, "i"sv, "em"sv, "a"sv};
  return is_one_of(kInline, name);
}

// A sign that nothing but a style sheet parts from a letter or digit behind it: "3'", "1.", "dark".
bool ends_cell(char32_t sign) {
  constexpr std::u32string_view kSigns = U".;:)'\u2019\u2032\u2033";
  return printed::is_letter(sign) || printed::is_digit(sign) || kSigns.find(sign) != kSigns.npos;
}
bool begins_cell(char32_t sign) { return printed::is_letter(sign) || printed::is_digit(sign); }

class PlaceSurveyor {
 public:
  PlaceSurveyor(std::string_view text, Sheet const& sheet) : text_{text}, sheet_{sheet} {}

  Placement survey() && {
    walk(
        text_, [this](Tag const& tag, std::size_t at) { take(tag, at); },
        [this](std::size_t at) { return show(at); });
    Placement placement;
    placement.by_coordinates =
        positions_.size() >= kFewestPositions && positions_.size() * 2 > breaks_;
    if (placement.by_coordinates) {
      place_by_coordinates(placement);
    } else {
      place_glued(placement);
      for (auto const at : floating_) placement.elements[at] = {};
    }
    return placement;
  }

 private:
  struct Border {
    std::size_t at{};  // of the tag that opens the second
    std::string_view from;
    std::string_view to;  // classes
  };

  // An element that the style sheet sets at the right: at the end of its block it is what leads
  // lead to, before other words a note.
  struct Float {
    std::size_t at{};
    std::size_t depth{};  // inline elements around it
    bool closed{false};
  };

  void take(Tag const& tag, std::size_t at) {
    auto const written = text_.substr(at, tag.length);
    if (!tag.closes) {
      if (auto const position = position_of(written, at)) {
        positions_.push_back(*position);
      } else if (breaks_line(tag.name)) {
        ++breaks_;
      }
    }
    if (!is_inline(tag.name)) {
      if (breaks_line(tag.name)) {
        open_.clear();
        closed_ = {};
        border_.reset();
        if (last_float_ && last_float_->closed) floating_.push_back(last_float_->at);
        last_float_.reset();
      }
      return;
    }
    if (tag.closes) {
      while (!open_.empty()) {
        auto const last = open_.back();
        open_.pop_back();
        if (last_float_ && open_.size() == last_float_->depth) last_float_->closed = true;
        if (last.first != tag.name) continue;
        if (!last.second.empty()) closed_ = last.second;
        break;
      }
    } else if (!tag.empty) {
      auto const style = attribute_of(written, "style");
      bool const floats = style.find("float") != std::string_view::npos &&
                          style.find("right") != std::string_view::npos;
      if (floats) floating_.push_back(at);
      auto const said = attribute_of(written, "class");
      for_parts(said, ' ', [&](std::string_view one) {
        bool const at_right = sheet_.floating.contains(one) && !is_set_aside(one);
        if (!last_float_ && at_right) last_float_ = Float{at, open_.size()};
      });
      open_.emplace_back(tag.name, said);
      // Nothing but tags has stood since an element of another class was closed.
      if (!closed_.empty() && !said.empty() && said != closed_) {
        border_ = Border{at, closed_, said};
      }
    }
  }

  // The bytes of the sign that stands there.
  std::size_t show(std::size_t at) {
    auto sign = printed::code_point_at(text_, at);
    if (sign.value == '&') {
      if (auto const reference = reference_at(text_.substr(at)); reference.length > 0) {
        sign.value = printed::code_point_at(reference.character, 0).value;
        sign.length = reference.length;
      }
    }
    if (border_ && ends_cell(last_) && begins_cell(sign.value)) borders_.push_back(*border_);
    border_.reset();
    closed_ = {};
    if (last_float_ && last_float_->closed && !is_white(text_[at])) last_float_.reset();
    last_ = sign.value;
    return std::max<std::size_t>(sign.length, 1);
  }

  // Between a line and the one beneath it, as half of them or more have it.
  [[nodiscard]] double usual_distance() const {
    std::vector<double> distances;
    for (std::size_t i = 1; i < positions_.size(); ++i) {
      auto const distance = positions_[i].top - positions_[i - 1].top;
      if (distance >= kSameHeight) distances.push_back(distance);
    }
    if (distances.empty()) return 0;
    auto const middle = distances.begin() + static_cast<std::ptrdiff_t>(distances.size() / 2);
    std::nth_element(distances.begin(), middle, distances.end());
    return *middle;
  }

  void place_by_coordinates(Placement& placement) const {
    auto const least =
        std::min_element(positions_.begin(), positions_.end(),
                         [](Position const& a, Position const& b) { return a.left < b.left; });
    auto const usual = usual_distance();
    std::optional<double> top;
    for (auto const& position : positions_) {
      bool const same = top && std::abs(position.top - *top) < kSameHeight;
      bool const turned = top && position.top < *top;
      bool const gap = top && !same && (turned || position.top - *top > kApart * usual);
      auto const columns = (position.left - least->left) / kColumn;
      placement.elements[position.at] = {
          !same, gap, static_cast<std::uint32_t>(std::min<double>(columns, kDeepestColumns))};
      top = position.top;
    }
  }

  void place_glued(Placement& placement) const {
    std::map<std::pair<std::string_view, std::string_view>, std::size_t> counts;
    for (auto const& border : borders_) ++counts[{border.from, border.to}];
    for (auto const& border : borders_) {
      if (counts[{border.from, border.to}] >= kFewestGlued) placement.elements[border.at] = {};
    }
  }

  std::string_view text_;
  Sheet const& sheet_;
  std::optional<Float> last_float_;
  std::vector<Position> positions_;
  std::vector<std::size_t> floating_;  // inline elements that stand at the right
  std::size_t breaks_{};
  std::vector<std::pair<std::string, std::string_view>> open_;  // name and class, inline only
  std::string_view closed_;  // class of the element that has just been closed
  std::optional<Border> border_;
  std::vector<Border> borders_;
  char32_t last_{};  // sign that was shown
};

}  // namespace

Placement placement_of(std::string_view text, Sheet const& sheet) {
  return PlaceSurveyor{text, sheet}.survey();
}

}  // namespace keydrift::hypertext
