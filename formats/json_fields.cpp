#include "keydrift/formats/json_fields.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/wording.hpp"

namespace keydrift::tables {

Finding& JsonProblems::add(std::string code, Severity severity, Place place, std::string message,
                           std::string remedy) {
  findings_.push_back({std::move(code),
                       severity,
                       std::string{file_},
                       place,
                       "",
                       std::move(message),
                       std::move(remedy),
                       {}});
  return findings_.back();
}

void JsonProblems::wrong_type(std::string_view field, JsonValue const& value,
                              std::string_view wanted) {
  add("wrong-type", Severity::error, value.place,
      "\"" + std::string{field} + "\" wants " + std::string{wanted} + ", not " +
          to_phrase(value.type),
      "write " + std::string{wanted} + " here");
}

JsonFields::JsonFields(JsonValue const& object, std::string_view what, JsonProblems& problems)
    : object_{object}, what_{what}, problems_{problems} {
  if (object.type != JsonType::object) {
    problems.add("wrong-type", Severity::error, object.place,
                 "a " + std::string{what} + " is an object, not " + to_phrase(object.type),
                 "write an object in braces here");
  }
}

JsonValue const* JsonFields::find(std::string_view name) const {
  for (auto const& member : object_.members) {
    if (member.name == name) return &member.value;
  }
  return nullptr;
}

bool JsonFields::has(std::string_view name) const {
  auto const* const value = find(name);
  return value != nullptr && value->type != JsonType::null;
}

JsonValue const* JsonFields::any(std::string_view name) {
  asked_.push_back(name);
  auto const* const value = find(name);
  return value == nullptr || value->type == JsonType::null ? nullptr : value;
}

JsonValue const* JsonFields::of_type(std::string_view name, JsonType type) {
  auto const* const value = any(name);
  if (value == nullptr || value->type == type) return value;
  problems_.wrong_type(name, *value, to_phrase(type));
  return nullptr;
}

std::string JsonFields::text(std::string_view name) {
  auto const* const value = of_type(name, JsonType::text);
  return value == nullptr ? "" : value->text;
}

std::string JsonFields::required_text(std::string_view name) {
  if (!has(name) && object_.type == JsonType::object) {
    asked_.push_back(name);
    problems_.add("missing-field", Severity::error, object_.place,
                  "this " + std::string{what_} + " has no \"" + std::string{name} + "\"",
                  "add \"" + std::string{name} + "\" with a text");
    return "";
  }
  return text(name);
}

std::vector<std::string> JsonFields::texts(std::string_view name, std::vector<Place>* places) {
  std::vector<std::string> found;
  auto const* const value = of_type(name, JsonType::list);
  if (value == nullptr) return found;
  for (auto const& item : value->items) {
    if (item.type == JsonType::text) {
      found.push_back(item.text);
      if (places != nullptr) places->push_back(item.place);
    } else {
      problems_.wrong_type(name, item, "a list of texts");
    }
  }
  return found;
}

std::optional<double> JsonFields::number(std::string_view name) {
  auto const* const value = of_type(name, JsonType::number);
  return value == nullptr ? std::nullopt : std::optional{value->number};
}

std::optional<std::uint64_t> JsonFields::whole_number(std::string_view name) {
  auto const* const value = any(name);
  if (value == nullptr) return std::nullopt;
  if (value->type == JsonType::number && value->whole && value->number >= 0) {
    return static_cast<std::uint64_t>(value->number);
  }
  problems_.add("wrong-type", Severity::error, value->place,
                "\"" + std::string{name} + "\" wants a whole number of 0 or more",
                "write a whole number here");
  return std::nullopt;
}

bool JsonFields::flag(std::string_view name) {
  auto const* const value = of_type(name, JsonType::boolean);
  return value != nullptr && value->boolean;
}

Place JsonFields::source(std::string_view name, Place otherwise) {
  auto const* const value = of_type(name, JsonType::object);
  if (value == nullptr) return otherwise;
  JsonFields fields{*value, "source place", problems_};
  auto const narrow = [](std::optional<std::uint64_t> number) {
    return static_cast<std::uint32_t>(std::clamp<std::uint64_t>(number.value_or(1), 1, UINT32_MAX));
  };
  Place place{.line = narrow(fields.whole_number("line")),
              .column = narrow(fields.whole_number("column")),
              .begin = fields.whole_number("begin").value_or(0),
              .end = fields.whole_number("end").value_or(0)};
  place.end = std::max(place.begin, place.end);
  fields.finish();
  return place;
}

std::vector<JsonValue> const& JsonFields::objects(std::string_view name) {
  static std::vector<JsonValue> const kNone;
  auto const* const value = of_type(name, JsonType::list);
  return value == nullptr ? kNone : value->items;
}

void JsonFields::finish() {
  for (auto const& member : object_.members) {
    if (member.name == "$schema" || member.name.rfind("x-", 0) == 0) continue;
    if (std::find(asked_.begin(), asked_.end(), member.name) != asked_.end()) continue;
    problems_.add(
        "unknown-field", Severity::warning, member.place,
        "\"" + member.name + "\" is not a field of a " + std::string{what_} + "; it was not read",
        suggestion(member.name, asked_,
                   "remove it, or begin its name with \"x-\" to keep it beside"));
  }
}

}  // namespace keydrift::tables
