#include "keydrift/formats/docx_fields.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::docx {

void Fields::take_mark(std::string_view kind) {
  if (kind == "begin") {
    fields_.emplace_back();
    ++open_codes_;
  }
  if (fields_.empty() || (kind != "separate" && kind != "end")) return;
  close_code_of_innermost();
  if (kind == "end") fields_.pop_back();
}

void Fields::add_code(std::string_view code) {
  constexpr std::size_t kLongest = 40;  // bytes; its first word tells
  if (!fields_.empty() && fields_.back().code.size() < kLongest) fields_.back().code += code;
}

bool Fields::in_contents() const {
  return std::any_of(fields_.begin(), fields_.end(), [](Field const& field) {
    return !field.in_code && printed::trim(field.code).starts_with("TOC");
  });
}

void Fields::close_down_to(std::size_t left) {
  for (; fields_.size() > left; fields_.pop_back()) close_code_of_innermost();
}

void Fields::close_code_of_innermost() {
  if (fields_.back().in_code) --open_codes_;
  fields_.back().in_code = false;
}

}  // namespace keydrift::docx
