#include "keydrift/key/source_reading.hpp"

namespace keydrift {

char const* to_word(LineKind kind) {
  switch (kind) {
    case LineKind::front_matter:
      return "front matter";
    case LineKind::heading:
      return "heading";
    case LineKind::lead:
      return "lead";
    case LineKind::continuation:
      return "continuation";
    case LineKind::destination:
      return "destination";
    case LineKind::note:
      return "note";
    case LineKind::footnote:
      return "footnote";
    case LineKind::figure:
      return "figure";
    case LineKind::page_number:
      return "page number";
    case LineKind::running_head:
      return "running head";
    case LineKind::blank:
      return "blank";
    case LineKind::skipped:
      return "skipped";
  }
  return "skipped";
}

}  // namespace keydrift
