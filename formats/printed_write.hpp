#pragma once
// An Edition to printed-key text, in any of the usual layouts.

#include <cstddef>
#include <cstdint>
#include <string>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

enum class PrintLayout : std::uint8_t {
  parallel,  // the leads of a couplet stand together
  indented,  // the couplets beneath a lead stand between it and its rival, set deeper
  serial,    // every lead has a number, its rivals' numbers stand in brackets: 1 (6), 2 (3)
};

enum class PrintLeaders : std::uint8_t {
  dots,
  tab,   // one tab before the destination
  none,  // blanks up to the right margin
};

enum class BackReferences : std::uint8_t {
  as_printed,  // those of the edition
  from_graph,  // the couplets that lead to each couplet, whatever the edition prints
  none,
};

struct PrintOptions {
  PrintLayout layout{PrintLayout::parallel};
  std::size_t width{80};  // columns; words and names longer than a line stand out
  PrintLeaders leaders{PrintLeaders::dots};
  BackReferences back_references{BackReferences::as_printed};
  // Number the couplets 1, 2, 3 … in printed order, part by part.
  bool renumber{false};
};

// The edition with the labels and back-references that the options ask for, otherwise as it is.
// Leads of couplets that got another label lose their printed labels.
[[nodiscard]] Edition relabelled(Edition const& edition, PrintOptions const& options);

// The edition as the layout holds it: relabelled(), couplets in printed order, blanks in
// words squeezed, taxa that no lead names left out; places tell the order and nothing else.
// Couplets beneath a lead follow it in the layouts indented and serial; serial gives every couplet
// the number of its first lead and has no back-references.  A couplet that is reached twice stands
// where it is reached first.  No recursion; linear in the size of the edition.
[[nodiscard]] Edition as_printed(Edition const& edition, PrintOptions const& options);

// The printed key: hanging indents, leaders to a right-aligned destination, front matter first.
// Destinations, notes and titles stand as the edition printed them, names in full, wherever that
// reads back; else in a plainer wording (printed_ends.hpp).
// It is read back before it is handed out, and gives the content of as_printed().  Where a reader
// would go astray (labels such as 7a among couplets 7, a lone lead, a layout that a small key does
// not show), a line "Layout: LAYOUT, exact" in the front matter says how to take the labels.
//
// What the text does not hold of the edition is told: renumbered, back-references-left-out,
// unnamed-taxa (information).  Error, without a text: not-printable, one for each couplet (up to
// 20) that would not read back, with what would be read instead.
[[nodiscard]] Loaded<std::string> print_key(Edition const& edition,
                                            PrintOptions const& options = {});

}  // namespace keydrift
