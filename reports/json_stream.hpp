#pragma once
// A JSON object written member by member, so that long lists need not be held.  Internal to
// reports.

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/reports/json_parts.hpp"
#include "keydrift/reports/text_sink.hpp"

namespace keydrift::reports::json_parts {

// The same bytes as finish() of the whole.
class JsonStream {
 public:
  // Borrows the sink.
  explicit JsonStream(TextSink const& sink) : sink_{sink} {}

  void members(Json const& object);  // all of them, in their order
  // A list of `values`, each made by `make` when its turn comes.
  template <class Values, class Make>
  void list(std::string_view name, Values const& values, Make const& make) {
    begin(name);
    bool first = true;
    for (auto const& value : values) element(make(value), std::exchange(first, false));
    text_ += first ? "[]" : "\n  ]";
  }
  void finish();

 private:
  void pass_on_when_long();
  void begin(std::string_view name);
  void element(Json const& value, bool first);
  void append(Json const& value, std::string_view indent);
  TextSink const& sink_;
  std::string text_;
  bool any_{false};
};

}  // namespace keydrift::reports::json_parts
