#include "keydrift/formats/hypertext_beside.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::hypertext {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostUnclosed = 64;  // elements whose end is looked for in vain

bool is_letter_or_figure(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

bool is_beside_word(std::string word) {
  static constexpr std::array kWords{"toc"sv,         "nav"sv,        "navbar"sv,  "navigation"sv,
                                     "topnav"sv,      "menu"sv,       "sidebar"sv, "breadcrumb"sv,
                                     "breadcrumbs"sv, "crumbs"sv,     "comment"sv, "comments"sv,
                                     "footer"sv,      "references"sv, "reflist"sv};
  for (auto& c : word) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return is_one_of(kWords, word);
}

bool says_beside(std::string_view tag, std::string_view attribute) {
  std::string word;
  for (char const c : attribute_of(tag, attribute)) {
    if (is_letter_or_figure(c)) {
      word += c;
    } else if (is_beside_word(std::exchange(word, {}))) {
      return true;
    }
  }
  return is_beside_word(word);
}

bool stands_beside(Tag const& tag, std::string_view written) {
  if (tag.closes || tag.empty) return false;
  auto const& name = tag.name;
  if (name == "p" && attribute_of(written, "class").find("caption") != std::string_view::npos) {
    return true;
  }
  if (name == "nav" || name == "aside" || name == "footer" || name == "figcaption") return true;
  bool const block =
      name == "div" || name == "ul" || name == "ol" || name == "section" || name == "table";
  return block && (says_beside(written, "class") || says_beside(written, "id"));
}

}  // namespace

std::size_t end_of_element(std::string_view text, std::size_t at, std::string_view name) {
  std::size_t depth = 0;
  while (at < text.size()) {
    auto const tag = tag_at(text.substr(at));
    if (tag.length > 0 && tag.name == name && !tag.empty) {
      if (!tag.closes) {
        ++depth;
      } else if (--depth == 0) {
        return at + tag.length;
      }
    }
    at = std::min(text.find('<', at + std::max<std::size_t>(tag.length, 1)), text.size());
  }
  return std::string_view::npos;
}

bool is_set_aside(std::string_view said) {
  static constexpr std::array kClasses{"editsection"sv, "pagenum"sv, "pageno"sv, "pagebreak"sv};
  return std::any_of(kClasses.begin(), kClasses.end(), [said](std::string_view one) {
    return said.find(one) != std::string_view::npos;
  });
}

std::vector<Stretch> beside_text(std::string_view text) {
  std::vector<Stretch> found;
  std::size_t unclosed = 0;
  for (auto at = text.find('<'); at != std::string_view::npos && unclosed < kMostUnclosed;) {
    auto const tag = tag_at(text.substr(at));
    auto next = at + std::max<std::size_t>(tag.length, 1);
    if (tag.length > 0 && stands_beside(tag, text.substr(at, tag.length))) {
      auto const end = end_of_element(text, at, tag.name);
      if (end == std::string_view::npos) {
        ++unclosed;
      } else if ((end - at) * 5 <= text.size() * 2) {
        found.push_back({at, end});
        next = end;
      }
    }
    at = text.find('<', next);
  }
  return found;
}

}  // namespace keydrift::hypertext
