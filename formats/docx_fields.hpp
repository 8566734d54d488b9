#pragma once
// The fields of a manuscript that are open at a place of its text (ISO/IEC 29500-1, 17.16.18):
// their code is passed over, their result is text.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::docx {

class Fields {
 public:
  // "begin", "separate", "end"; stray marks are passed over.
  void take_mark(std::string_view kind);
  // Code of the innermost field.
  void add_code(std::string_view code);

  [[nodiscard]] std::size_t open() const { return fields_.size(); }
  // What stands here is code.
  [[nodiscard]] bool in_code() const { return open_codes_ > 0; }
  // What stands here is a table of contents, or of figures: titles, and the numbers of their pages.
  [[nodiscard]] bool in_contents() const;

  // Closes the innermost ones, so that `left` stay open.
  void close_down_to(std::size_t left);

 private:
  struct Field {
    bool in_code{true};
    std::string code;  // " TOC \o ", or how it begins
  };

  void close_code_of_innermost();

  std::vector<Field> fields_;  // innermost last
  std::size_t open_codes_{};
};

}  // namespace keydrift::docx
