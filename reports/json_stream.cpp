#include "keydrift/reports/json_stream.hpp"

namespace keydrift::reports::json_parts {

void JsonStream::pass_on_when_long() {
  constexpr std::size_t kPassedOn = std::size_t{256} << 10;
  if (text_.size() < kPassedOn) return;
  sink_(text_);
  text_.clear();
}

void JsonStream::append(Json const& value, std::string_view indent) {
  // Line feeds within texts are escaped: all that are left begin lines of the layout.
  for (char const c : dump(value)) {
    text_ += c;
    if (c == '\n') text_ += indent;
  }
}

void JsonStream::begin(std::string_view name) {
  pass_on_when_long();
  text_ += any_ ? ",\n  " : "{\n  ";
  any_ = true;
  text_ += dump(Json(name));
  text_ += ": ";
}

void JsonStream::element(Json const& value, bool first) {
  pass_on_when_long();
  text_ += first ? "[\n    " : ",\n    ";
  append(value, "    ");
}

void JsonStream::members(Json const& object) {
  for (auto const& [name, value] : object.items()) {
    begin(name);
    append(value, "  ");
  }
}

void JsonStream::finish() {
  text_ += any_ ? "\n}\n" : "{}\n";
  sink_(text_);
  text_.clear();
}

}  // namespace keydrift::reports::json_parts
