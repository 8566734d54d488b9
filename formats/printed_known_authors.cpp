#include "keydrift/formats/printed_known_authors.hpp"

#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

AuthoredEnd authored_end(std::string_view text) {
  text = trim_right(text);
  if (text.ends_with('.')) text = trim_right(text.substr(0, text.size() - 1));
  auto author = text.substr(last_word_begin(text));
  auto const before = trim_right(text.substr(0, text.size() - author.size()));
  // "bus (Roe)"
  bool const bracketed = author.size() > 2 && author.front() == '(' && author.back() == ')';
  if (bracketed) author = author.substr(1, author.size() - 2);
  AuthoredEnd end{author, last_word_begin(before), before.ends_with(','), false};
  auto epithet = before.substr(end.begin);
  if (end.comma) epithet.remove_suffix(1);
  // "Gerst.-Hahn"
  auto const capital =
      author.size() > 1 && is_capitalised(author.substr(0, author.find_first_of(".-")));
  end.latin = has_epithet_ending(epithet);
  if (!capital || !is_epithet(epithet) || ends_item(epithet)) return {};
  // "bus var. cus Roe"
  auto const above = trim_right(before.substr(0, end.begin));
  auto const rank = last_word_begin(above);
  auto const species = trim_right(above.substr(0, rank));
  auto const begin = last_word_begin(species);
  bool const ranked = rank > 0 && above.ends_with('.') && is_rank(above.substr(rank)) &&
                      is_epithet(species.substr(begin)) &&
                      has_epithet_ending(species.substr(begin));
  if (ranked) end.begin = begin;
  return end;
}

bool KnownAuthors::knows(AuthoredEnd const& end) const {
  constexpr std::size_t kFewest = 3;
  constexpr std::size_t kFewestBehindCommas = 2;
  if (end.author.empty()) return false;
  if (!std::exchange(counted_, true)) {
    for (auto const& line : lines_) {
      auto const one = authored_end(line.text);
      if (!one.latin) continue;
      auto& uses = uses_[one.author];
      ++uses.lines;
      if (one.comma) ++uses.commas;
    }
  }
  auto const found = uses_.find(end.author);
  if (found == uses_.end()) return false;
  return found->second.lines >= kFewest ||
         (end.latin && end.comma && found->second.commas >= kFewestBehindCommas);
}

}  // namespace keydrift::printed
