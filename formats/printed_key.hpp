#pragma once
// Printed-key text to an Edition.  (Back: keydrift/formats/printed_write.hpp.)
//
// Reads what a person pastes from a publication or a manuscript: bracketed (parallel) keys with any
// usual numbering, with or without front matter ("Name: value" lines).  Every line of the input is
// accounted for.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

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

struct PrintedReading {
  Edition edition;  // Lead::statements are empty: keydrift/characters fills them
  SourceReading source;
};

// Codes of errors (nothing is loaded): those of decode_text, line-too-long, no-couplets.
// Everything else that is doubtful is a warning or an information with its place.  Couplet numbers
// that lead nowhere stay Unresolved and duplicate numbers keep both couplets: proof_structure
// reports them.  Linear in the size of the text; no recursion.
//
// `markup`: of each line, its offsets those of the decoded text; empty for plain text.
[[nodiscard]] Loaded<PrintedReading> read_printed_key(Source source, ReadLimits const& limits = {},
                                                      std::span<LineMarkup const> markup = {});

}  // namespace keydrift
