#include "keydrift/formats/json_tree.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <utility>

#include "keydrift/formats/text_encodings.hpp"

namespace keydrift::tables {
namespace {

// Tells how far the parser has come; nlohmann::json forgets places.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = char const*;
  using reference = char const&;

  CountingIterator(char const* at, char const** seen) : at_{at}, seen_{seen} {}
  reference operator*() const { return *at_; }
  CountingIterator& operator++() {
    *seen_ = ++at_;
    return *this;
  }
  CountingIterator operator++(int) {
    auto const before = *this;
    ++*this;
    return before;
  }
  bool operator==(CountingIterator const& other) const { return at_ == other.at_; }
  bool operator!=(CountingIterator const& other) const { return at_ != other.at_; }

 private:
  char const* at_;
  char const** seen_;
};

// Lines and columns of ascending offsets; looks at every byte once, however long the lines are.
class PlaceCursor {
 public:
  explicit PlaceCursor(std::string_view text) : text_{text} {}
  Place at(std::size_t begin, std::size_t end) {
    for (; offset_ < begin; ++offset_) {
      if (text_[offset_] == '\n') {
        ++line_;
        column_ = 1;
      } else if ((static_cast<unsigned char>(text_[offset_]) & 0xC0U) != 0x80) {
        ++column_;
      }
    }
    return {.line = line_, .column = column_, .begin = begin, .end = end};
  }

 private:
  std::string_view text_;
  std::size_t offset_{};
  std::uint32_t line_{1};
  std::uint32_t column_{1};
};

std::string without_ill_formed(std::string const& text) {
  auto cleaned = encodings::to_nfc(text);
  for (char& c : cleaned) {
    auto const byte = static_cast<unsigned char>(c);
    if ((byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7F) c = ' ';
  }
  return cleaned;
}

class TreeBuilder final : public nlohmann::json_sax<nlohmann::json> {
 public:
  TreeBuilder(DecodedText const& source, JsonLimits const& limits, std::vector<Finding>& findings)
      : source_{source},
        limits_{limits},
        findings_{findings},
        cursor_{source.text},
        seen_{source.text.data()} {}

  char const** seen() { return &seen_; }
  JsonValue take() { return std::move(root_); }

  bool null() override {
    return put(JsonType::null, token(), [](JsonValue&) {});
  }
  bool boolean(bool flag) override {
    return put(JsonType::boolean, token(), [&](JsonValue& value) { value.boolean = flag; });
  }
  bool number_integer(number_integer_t number) override {
    return put_number(static_cast<double>(number));
  }
  bool number_unsigned(number_unsigned_t number) override {
    return put_number(static_cast<double>(number));
  }
  bool number_float(number_float_t number, string_t const&) override { return put_number(number); }
  bool string(string_t& text) override {
    return put(JsonType::text, token(),
               [&](JsonValue& value) { value.text = without_ill_formed(text); });
  }
  bool binary(binary_t&) override { return false; }  // JSON text has none
  bool start_object(std::size_t) override { return open(JsonType::object); }
  bool start_array(std::size_t) override { return open(JsonType::list); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    auto const place = token();
    open_.back()->members.push_back({without_ill_formed(name), place, {}});
    return true;
  }

  bool parse_error(std::size_t, std::string const&,
                   nlohmann::json::exception const& error) override {
    std::string_view why = error.what();
    if (auto const dash = why.find(" - "); dash != std::string_view::npos) {
      why.remove_prefix(dash + 3);
    } else if (auto const bracket = why.find("] "); bracket != std::string_view::npos) {
      why.remove_prefix(bracket + 2);
    }
    auto const begin = token_begin();
    add("malformed-json", cursor_.at(begin, std::max(begin, consumed())),
        "this is not well-formed JSON: " + std::string{why},
        "mend it here, or a little before this place");
    return false;
  }

 private:
  std::size_t consumed() const { return static_cast<std::size_t>(seen_ - source_.text.data()); }

  // The parser reads a token right before it reports it; blanks and one comma or colon may stand
  // between two tokens.
  std::size_t token_begin() const {
    std::string_view const text = source_.text;
    auto const skip_blanks = [&](std::size_t at) {
      return std::min(text.find_first_not_of(" \t\r\n", at), text.size());
    };
    auto begin = skip_blanks(last_end_);
    if (begin < text.size() && (text[begin] == ',' || text[begin] == ':')) {
      begin = skip_blanks(begin + 1);
    }
    return begin;
  }
  Place token() {
    auto const begin = token_begin();
    last_end_ = std::max(begin, consumed());
    return cursor_.at(begin, last_end_);
  }

  Finding& add(std::string code, Place place, std::string message, std::string remedy) {
    findings_.push_back({std::move(code),
                         Severity::error,
                         source_.name,
                         place,
                         "",
                         std::move(message),
                         std::move(remedy),
                         {}});
    return findings_.back();
  }

  JsonValue& place_for_value() {
    if (open_.empty()) return root_;
    auto& parent = *open_.back();
    if (parent.type == JsonType::object) return parent.members.back().value;
    return parent.items.emplace_back();
  }

  template <class Fill>
  bool put(JsonType type, Place place, Fill fill) {
    auto& value = place_for_value();
    value.type = type;
    value.place = place;
    fill(value);
    return true;
  }
  bool put_number(double number) {
    // The parser has read one byte more than the number.
    auto const begin = token_begin();
    auto const end =
        std::min(source_.text.find_first_not_of("+-.0123456789eE", begin), source_.text.size());
    last_end_ = end;
    return put(JsonType::number, cursor_.at(begin, end), [&](JsonValue& value) {
      value.number = number;
      value.whole = std::trunc(number) == number && std::abs(number) <= 9007199254740992.0;
    });
  }
  bool open(JsonType type) {
    auto const place = token();
    if (open_.size() >= limits_.maximum_depth) {
      add("json-too-deep", place,
          "objects and lists are nested more than " + std::to_string(limits_.maximum_depth) +
              " deep",
          "check that this is the right file");
      return false;
    }
    auto& value = place_for_value();
    value.type = type;
    value.place = place;
    open_.push_back(&value);
    return true;
  }
  bool close() {
    last_end_ = consumed();
    report_repeated_fields(open_.back()->members);
    open_.back()->place.end = last_end_;
    open_.pop_back();
    return true;
  }

  void report_repeated_fields(std::vector<JsonMember> const& members) {
    std::vector<JsonMember const*> sorted;
    for (auto const& member : members) sorted.push_back(&member);
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](JsonMember const* a, JsonMember const* b) { return a->name < b->name; });
    for (std::size_t i = 1; i < sorted.size(); ++i) {
      if (sorted[i]->name != sorted[i - 1]->name) continue;
      auto& finding =
          add("repeated-field", sorted[i]->place,
              "\"" + sorted[i]->name + "\" stands twice in one object", "keep one of the two");
      finding.related.push_back({sorted[i - 1]->place, "the earlier one"});
    }
  }

  DecodedText const& source_;
  JsonLimits const& limits_;
  std::vector<Finding>& findings_;
  PlaceCursor cursor_;
  char const* seen_;  // behind the last byte that the parser took
  std::size_t last_end_{};
  JsonValue root_;
  std::vector<JsonValue*> open_;  // a parent's vector does not grow while a child is open
};

}  // namespace

char const* to_phrase(JsonType type) {
  switch (type) {
    case JsonType::null:
      return "null";
    case JsonType::boolean:
      return "true or false";
    case JsonType::number:
      return "a number";
    case JsonType::text:
      return "a text";
    case JsonType::list:
      return "a list";
    case JsonType::object:
      return "an object";
  }
  return "a value";
}

Loaded<JsonValue> parse_json(DecodedText const& source, JsonLimits const& limits) {
  Loaded<JsonValue> loaded;
  TreeBuilder builder{source, limits, loaded.findings};
  auto const* const begin = source.text.data();
  bool const sound = nlohmann::json::sax_parse(
      CountingIterator{begin, builder.seen()},
      CountingIterator{begin + source.text.size(), builder.seen()}, &builder);
  if (sound && loaded.findings.empty()) loaded.value = builder.take();
  return loaded;
}

void check_json_version(JsonValue const& root, std::string_view field, std::string_view file,
                        std::vector<Finding>& findings) {
  auto const add = [&](std::string code, Place place, std::string message, std::string remedy) {
    findings.push_back({std::move(code),
                        Severity::error,
                        std::string{file},
                        place,
                        "",
                        std::move(message),
                        std::move(remedy),
                        {}});
  };
  std::string const name{field};
  auto const found = std::find_if(root.members.begin(), root.members.end(),
                                  [&](JsonMember const& member) { return member.name == name; });
  if (root.type != JsonType::object) {
    add("no-version", root.place,
        std::string{"the JSON is "} + to_phrase(root.type) + ", not an object that says \"" + name +
            "\": 1",
        "check that this is the right file");
    return;
  }
  if (found == root.members.end()) {
    add("no-version", root.place,
        "the JSON does not say \"" + name + "\": 1, so it is of another kind",
        "check that this is the right file, or add \"" + name + "\": 1 to its outermost object");
    return;
  }
  auto const& version = found->value;
  if (version.type == JsonType::number && version.whole && version.number > 1) {
    add("newer-version", version.place,
        "the file has version " + std::to_string(static_cast<long long>(version.number)) +
            " of the format; this program reads version 1",
        "load it with a newer version of the program");
  } else if (version.type != JsonType::number || version.number != 1) {
    add("no-version", version.place, "\"" + name + "\" must be the number 1",
        "write \"" + name + "\": 1");
  }
}

}  // namespace keydrift::tables
