#include "keydrift/formats/printed_group_titles.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

using Form = std::pair<std::string_view, std::string_view>;
// Case-folded words for a rank, and the one that stands for all of them.
constexpr std::array kRankForms{Form{"subg.", "subgenus"},        Form{"subgen.", "subgenus"},
                                Form{"untergattung", "subgenus"}, Form{"sous-genre", "subgenus"},
                                Form{"subgénero", "subgenus"},    Form{"sect.", "section"},
                                Form{"sectio", "section"},        Form{"sektion", "section"},
                                Form{"sección", "section"},       Form{"seção", "section"},
                                Form{"ser.", "series"},           Form{"serie", "series"},
                                Form{"série", "series"},          Form{"subsect.", "subsection"},
                                Form{"subsectio", "subsection"}};

}  // namespace

std::string in_common_form(std::string_view title) {
  // "(spp. 1–4)" tells what the group holds.
  if (title.ends_with(')')) {
    auto const open = title.rfind(" (");
    if (open != std::string_view::npos && open > 0) title = trim_right(title.substr(0, open));
  }
  auto const folded = fold(title);
  std::string common;
  for (auto const word : words_of(folded)) {
    auto const form = std::find_if(kRankForms.begin(), kRankForms.end(),
                                   [word](Form const& one) { return one.first == word; });
    if (!common.empty()) common += ' ';
    common += form == kRankForms.end() ? word : form->second;
  }
  return common;
}

}  // namespace keydrift::printed
