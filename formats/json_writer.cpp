#include "keydrift/formats/json_writer.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace keydrift::tables {

void JsonWriter::new_line() {
  out_ += '\n';
  out_.append(levels_.size() * 2, ' ');
}

void JsonWriter::next_item() {
  if (levels_.empty()) return;
  auto& level = levels_.back();
  if (!level.empty) out_ += ',';
  if (!level.inline_) {
    new_line();
  } else if (!level.empty) {
    out_ += ' ';
  }
  level.empty = false;
}

void JsonWriter::before_value() {
  if (!std::exchange(named_, false)) next_item();
}

void JsonWriter::begin(char bracket, bool on_one_line) {
  before_value();
  bool const within_line = !levels_.empty() && levels_.back().inline_;
  out_ += bracket;
  levels_.push_back({on_one_line || within_line, true});
}

void JsonWriter::end(char bracket) {
  auto const level = levels_.back();
  levels_.pop_back();
  if (!level.empty && !level.inline_) new_line();
  out_ += bracket;
}

void JsonWriter::begin_object() { begin('{', false); }
void JsonWriter::begin_inline_object() { begin('{', true); }
void JsonWriter::end_object() { end('}'); }
void JsonWriter::begin_list() { begin('[', false); }
void JsonWriter::begin_inline_list() { begin('[', true); }
void JsonWriter::end_list() { end(']'); }

void JsonWriter::name(std::string_view name) {
  next_item();
  quoted(name);
  out_ += ": ";
  named_ = true;
}

void JsonWriter::value(std::string_view text) {
  before_value();
  quoted(text);
}

void JsonWriter::value(bool flag) {
  before_value();
  out_ += flag ? "true" : "false";
}

void JsonWriter::value(double number) {
  before_value();
  if (!std::isfinite(number)) {
    out_ += "null";
    return;
  }
  std::array<char, 32> digits{};
  auto const end = std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr;
  out_.append(digits.data(), end);
}

void JsonWriter::value(std::uint64_t number) {
  before_value();
  out_ += std::to_string(number);
}

void JsonWriter::value(int number) {
  before_value();
  out_ += std::to_string(number);
}

void JsonWriter::text_field(std::string_view field_name, std::string_view text) {
  if (!text.empty()) field(field_name, text);
}

void JsonWriter::texts_field(std::string_view field_name, std::span<std::string const> texts) {
  if (texts.empty()) return;
  constexpr std::size_t kFitsOnALine = 80;
  std::size_t width = 0;
  for (auto const& text : texts) width += text.size() + 4;
  name(field_name);
  begin('[', width <= kFitsOnALine);
  for (auto const& text : texts) value(std::string_view{text});
  end_list();
}

void JsonWriter::quoted(std::string_view text) {
  constexpr std::string_view kHex = "0123456789abcdef";
  out_ += '"';
  for (char const c : text) {
    auto const byte = static_cast<unsigned char>(c);
    switch (c) {
      case '"':
        out_ += "\\\"";
        break;
      case '\\':
        out_ += "\\\\";
        break;
      case '\n':
        out_ += "\\n";
        break;
      case '\t':
        out_ += "\\t";
        break;
      default:
        if (byte < 0x20 || byte == 0x7F) {
          out_ += "\\u00";
          out_ += kHex[byte >> 4U];
          out_ += kHex[byte & 0xFU];
        } else {
          out_ += c;
        }
    }
  }
  out_ += '"';
}

std::string JsonWriter::take() {
  out_ += '\n';
  levels_.clear();
  return std::move(out_);
}

}  // namespace keydrift::tables
