#include "keydrift/formats/printed_title_lines.hpp"

#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// Words that no title ends in: "Key to the males of the".
bool hangs_open(std::string_view title) {
  static constexpr std::array kWords{
      "of"sv,  "the"sv, "and"sv, "from"sv, "in"sv,  "with"sv, "for"sv, "to"sv,  "&"sv,  "der"sv,
      "die"sv, "des"sv, "und"sv, "aus"sv,  "von"sv, "de"sv,   "du"sv,  "les"sv, "et"sv, "del"sv,
      "los"sv, "las"sv, "do"sv,  "dos"sv,  "da"sv,  "das"sv,  "van"sv, "het"sv, "av"sv, "och"sv};
  return title.ends_with(',') || title.ends_with('-') ||
         is_one_of(kWords, fold(title.substr(last_word_begin(title))));
}

}  // namespace

bool goes_on_with_title(std::string_view title, std::string_view line, Numbering const& numbering) {
  if (!mentions_key(title) || title.size() + line.size() > kLongestHeading) return false;
  if (split_at_leader(line, numbering).kind != LeaderKind::none) return false;
  // "(adult males)"; more words are a remark.
  constexpr std::size_t kMostWords = 3;
  if (line.starts_with('(') && line.ends_with(')')) {
    return words_of(line, kMostWords + 1).size() <= kMostWords;
  }
  if (title.ends_with('.') || title.ends_with(':')) return false;
  return is_lower(code_point_at(line, 0).value) || hangs_open(title);
}

}  // namespace keydrift::printed
