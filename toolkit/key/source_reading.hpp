#pragma once
// How the lines of a source were taken when an edition was read from it.  Values only.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

enum class LineKind : std::uint8_t {
  front_matter,  // "Title: …"
  heading,       // title of a key, cross-heading between leads
  lead,          // first line of a lead
  continuation,  // further line of a lead or of a destination
  destination,   // line that holds nothing but (the rest of) a destination
  note,          // note under a lead or a couplet, prose between couplets
  footnote,
  figure,  // caption or plate line
  page_number,
  running_head,
  blank,
  skipped,  // ruled line, or text outside the key that was kept nowhere
};
[[nodiscard]] char const* to_word(LineKind kind);  // "front matter", "heading", …

struct LineAccount {
  std::uint32_t line{};  // 1-based
  LineKind kind{LineKind::skipped};
  std::string_view reason;  // why it was taken so, in a few words; static storage
};

// How a source was read, for whoever wants to check it line by line.  Keys that are no plain text
// (manuscripts, article XML) are read by way of lines as well; `text` has them.
struct SourceReading {
  std::string text;                // the lines that were read: decoded, "\n" after each
  std::vector<LineAccount> lines;  // one for each line of `text`, in order
  std::string layout_note;  // "parallel layout, leads marked 1 / –, destinations after dots"
};

}  // namespace keydrift
