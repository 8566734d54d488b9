#pragma once
// What a page's style sheets say of the classes of its elements.  Inner header of formats.

#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace keydrift::hypertext {

// Borrows the page's text.
struct Sheet {
  std::unordered_map<std::string_view, double> margins;  // at the left, in ems, by class
  std::unordered_set<std::string_view> floating;         // classes that stand at the right
};

// Of all <style> elements: rules for a class alone, or for a class of paragraphs, divisions and
// spans.  Linear in the text.
[[nodiscard]] Sheet sheet_of(std::string_view text);

}  // namespace keydrift::hypertext
