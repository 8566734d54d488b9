#pragma once
// The automatic numbers of a manuscript's paragraphs (ISO/IEC 29500-1, 17.9), as they are printed.
// Inner header of formats.

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <pugixml.hpp>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::docx {

struct TabStop {
  std::int32_t at{};  // twips from the text's left border
  bool leader{false};
  bool cleared{false};
  bool operator==(TabStop const&) const = default;
};

// What a style, a level of a numbering or a paragraph itself says of its look.
struct ParagraphProperties {
  std::optional<std::int32_t> left;        // twips
  std::optional<std::int32_t> first_line;  // twips from `left`; negative: hanging
  std::vector<TabStop> tabs;               // ascending
  std::optional<std::uint32_t> num_id;     // 0: no number
  std::optional<std::uint32_t> level;
  std::optional<std::uint32_t> outline;  // of headings, from 0; 9 and more: body text
  std::optional<bool> centred;
  std::optional<bool> kept;  // on one page with the next paragraph

  // What `over` says wins.
  void put_over(ParagraphProperties const& over);
};

[[nodiscard]] ParagraphProperties read_paragraph_properties(pugi::xml_node properties);

class Numbering {
 public:
  static constexpr std::uint32_t kLevels = 9;

  // Adds what the numbering part defines.  Damaged definitions give no numbers.
  void add(pugi::xml_node numbering);
  // Which numbering a style stands for, for abstract numberings that name a style only.
  void link_style(std::string style, std::uint32_t num_id);

  // What the level says of the paragraph's look; nullptr without such a level.
  [[nodiscard]] ParagraphProperties const* look(std::uint32_t num_id, std::uint32_t level) const;
  // The level that is tied to a paragraph style.
  [[nodiscard]] std::optional<std::uint32_t> level_of_style(std::uint32_t num_id,
                                                            std::string_view style) const;

  // The number of the next paragraph of that level, with what follows it (a blank or nothing);
  // counts on.  "" where the level prints nothing.
  [[nodiscard]] std::string next(std::uint32_t num_id, std::uint32_t level);

  // Number formats that were met and are not known; their numbers were printed as decimal ones.
  [[nodiscard]] std::set<std::string> const& unknown_formats() const { return unknown_formats_; }

 private:
  struct Level {
    bool defined{false};
    std::uint32_t start{1};
    std::string format{"decimal"};
    std::string text;
    std::optional<std::uint32_t> restart;  // 1-based level after which it starts again; 0: never
    bool legal{false};                     // all its numbers decimal
    bool blank_after{true};
    std::string style;
    ParagraphProperties look;
  };
  struct Abstract {
    std::array<Level, kLevels> levels;
    std::string style_link;
    // The number last printed at each level; nullopt: the level starts anew.
    std::array<std::optional<std::uint32_t>, kLevels> counters;
  };
  struct Num {
    std::uint32_t abstract_id{};
    std::array<std::optional<std::uint32_t>, kLevels> starts;
    std::map<std::uint32_t, Level> levels;  // that replace those of the abstract numbering
    bool used{false};
  };

  static Level read_level(pugi::xml_node node);
  // By way of styles, where the abstract numbering names one.
  [[nodiscard]] std::optional<std::uint32_t> abstract_of(Num const& num) const;
  [[nodiscard]] Level const* level_of(std::uint32_t num_id, std::uint32_t level) const;
  [[nodiscard]] std::string render(std::uint32_t number, std::string const& format);

  std::map<std::uint32_t, Abstract> abstracts_;
  std::map<std::uint32_t, Num> nums_;
  std::map<std::string, std::uint32_t> styles_;
  std::set<std::string> unknown_formats_;
};

}  // namespace keydrift::docx
