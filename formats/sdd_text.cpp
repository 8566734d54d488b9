#include "keydrift/formats/sdd_text.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::sdd {

std::string clean(std::string_view text) {
  std::string out;
  for (char const c : text) {
    auto const byte = static_cast<unsigned char>(c);
    if (byte > 0x20 && byte != 0x7F) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::size_t code_points(std::string_view text) { return count_code_points(text); }

std::string start_of_text(std::string_view text, std::size_t characters) {
  std::size_t end = 0;
  std::size_t count = 0;
  while (end < text.size()) {
    if ((static_cast<unsigned char>(text[end]) & 0xC0U) != 0x80 && count++ == characters) break;
    ++end;
  }
  auto start = clean(text.substr(0, end));
  return start;
}

std::string short_text(std::string_view text) { return start_of_text(clean(text), kShortText); }

bool is_language(std::string_view text) {
  std::size_t run = 0;
  bool first = true;
  for (char const c : text) {
    bool const letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    bool const digit = c >= '0' && c <= '9';
    if (c == '-') {
      if (run == 0) return false;
      run = 0;
      first = false;
    } else if (letter || (digit && !first)) {
      if (++run > 8) return false;
    } else {
      return false;
    }
  }
  return run > 0;
}

void add_representation(pugi::xml_node object, std::string_view text, std::string_view fallback) {
  auto const whole = clean(text);
  auto label = short_text(whole);
  auto representation = object.append_child("Representation");
  if (label.empty()) label = short_text(fallback);
  representation.append_child("Label").text().set(label.c_str());
  if (label.size() < whole.size()) {
    representation.append_child("Detail").text().set(start_of_text(whole, kLongText).c_str());
  }
}

bool answers_yes_or_no(std::string_view words) {
  using namespace std::string_view_literals;
  static constexpr std::array kAnswers{"yes"sv, "no"sv,  "ja"sv,   "nein"sv, "oui"sv,
                                       "non"sv, "sí"sv,  "si"sv,   "sì"sv,   "sim"sv,
                                       "não"sv, "ita"sv, "true"sv, "false"sv};
  auto folded = printed::fold(words);
  while (!folded.empty() && folded.back() == '.') folded.pop_back();
  return is_one_of(kAnswers, folded);
}

pugi::xml_node add_own(pugi::xml_node object, char const* name, std::string_view text) {
  auto element = object.append_child((std::string{"kd:"} + name).c_str());
  element.text().set(clean(text).c_str());
  return element;
}

void add_attribute(pugi::xml_node object, char const* name, std::string_view value) {
  auto const text = clean(value);
  if (!text.empty()) object.append_attribute(name) = text.c_str();
}

}  // namespace keydrift::sdd
