#pragma once
// Writes JSON piece by piece, so that a large key needs no second copy in memory: fields in the
// order they are given, indented by two blanks, short lists on one line.  Inner header of formats.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::tables {

class JsonWriter {
 public:
  void begin_object();
  void end_object();
  void begin_list();
  void end_list();
  void name(std::string_view name);  // before each value within an object

  void value(std::string_view text);
  void value(char const* text) { value(std::string_view{text}); }
  void value(bool flag);
  void value(double number);  // the shortest digits that read back the same; infinite: null
  void value(std::uint64_t number);
  void value(int number);

  // Everything until the matching end stands on one line.
  void begin_inline_object();
  void begin_inline_list();

  template <class Value>
  void field(std::string_view field_name, Value const& field_value) {
    name(field_name);
    value(field_value);
  }
  // Left out when empty.
  void text_field(std::string_view field_name, std::string_view text);
  void texts_field(std::string_view field_name, std::span<std::string const> texts);

  // The document, ended by a line feed.  Precondition: all is closed.
  [[nodiscard]] std::string take();

 private:
  struct Level {
    bool inline_{false};
    bool empty{true};
  };
  void before_value();
  void next_item();
  void new_line();
  void begin(char bracket, bool on_one_line);
  void end(char bracket);
  void quoted(std::string_view text);

  std::string out_;
  std::vector<Level> levels_;
  bool named_{false};
};

}  // namespace keydrift::tables
