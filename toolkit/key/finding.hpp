#pragma once
// Places in a source file, and what is found wrong (or worth knowing) there.

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace keydrift {

// A range of a source file.  Lines and columns are 1-based; columns count Unicode code points of
// the decoded line (a tab counts as one).  begin/end are byte offsets, half open, into the text
// after decoding to UTF-8.
struct Place {
  std::uint32_t line{1};
  std::uint32_t column{1};
  std::uint64_t begin{};
  std::uint64_t end{};
  bool operator==(Place const&) const = default;
};

enum class Severity { information, warning, error };
[[nodiscard]] char const* to_word(Severity severity);  // "information", "warning", "error"

// Another place that the finding speaks of ("last defined here").
struct RelatedPlace {
  Place place;
  std::string message;
};

struct Finding {
  std::string code;  // stable, lower case with hyphens, e.g. "dangling-couplet"
  Severity severity{Severity::error};
  std::string file;     // as the user named it: a path or REPO@REVISION:PATH
  Place place;          // line 0: the file as a whole, or something that has no lines
  std::string printed;  // the words of the source it is about; may be empty
  std::string message;  // what is wrong, one sentence, no final full stop
  std::string remedy;   // what to do, one sentence, no final full stop; may be empty
  std::vector<RelatedPlace> related;
};

// What a reader returns.  value is set iff no finding is an error that prevents loading; a reader
// never hands out half of a thing.
template <class T>
struct [[nodiscard]] Loaded {
  std::optional<T> value;
  std::vector<Finding> findings;
  explicit operator bool() const { return value.has_value(); }
};

// Sorts by file, line, column, code, message: the order in which findings are shown.
void sort_findings(std::vector<Finding>& findings);

// "file:line:column: severity: message [code]", then the printed words, the related places and the
// remedy on lines of their own, indented by two blanks.  Ends in a line feed.  Control characters
// are shown as their pictures (U+2400 ff.), so that a file cannot command the terminal.
[[nodiscard]] std::string to_text(Finding const& finding);

}  // namespace keydrift
