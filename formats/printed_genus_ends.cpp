#include "keydrift/formats/printed_genus_ends.hpp"

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

std::optional<std::size_t> lone_genus_at_end(std::string_view text) {
  constexpr std::size_t kShortest = 5;  // bytes
  auto const blank = text.rfind(' ');
  if (blank == std::string_view::npos || blank == 0 || text[blank - 1] != '.') return std::nullopt;
  // "… of N. America"
  constexpr std::size_t kShortestWord = 4;
  auto const begin = last_word_begin(text.substr(0, blank));
  auto const before = words_of(text.substr(begin, blank - begin));
  if (before.empty() || before.back().size() <= kShortestWord ||
      !is_lower(code_point_at(before.back(), 0).value)) {
    return std::nullopt;
  }
  auto const name = without_closing_marks(text.substr(blank + 1));
  bool const genus = name.size() >= kShortest && is_plain_word(name) &&
                     is_upper(code_point_at(name, 0).value) && has_strict_latin_ending(fold(name));
  return genus ? std::optional{blank + 1} : std::nullopt;
}

void GenusAuthors::look() const {
  constexpr std::size_t kLongest = 60;  // bytes of a genus with its author
  auto& authors = authors_.emplace();
  for (auto const& line : lines_) {
    auto const split = split_at_leader(line.text, numbering_);
    auto const destination = line.text.substr(split.destination_begin);
    if (split.kind != LeaderKind::dots || destination.empty() || destination.size() > kLongest) {
      continue;
    }
    auto const read = read_taxa(destination);
    auto const& taxon = read.taxa.front();
    bool const genus = read.taxa.size() == 1 && read.remark.empty() && !taxon.genusless &&
                       is_latin_genus(taxon.name);
    if (genus && !taxon.authorship.empty()) authors.insert(taxon.authorship);
  }
}

std::optional<std::size_t> GenusAuthors::genus_at_end(std::string_view text) const {
  text = trim_right(text);
  auto const author = last_word_begin(text);
  auto const front = trim_right(text.substr(0, author));
  auto const begin = last_word_begin(front);
  if (begin == 0 || !is_capitalised(text.substr(author))) return std::nullopt;
  auto const genus = front.substr(begin);
  auto const before = trim_right(front.substr(0, begin));
  bool const sentence =
      before.ends_with('.') && !is_abbreviated(before.substr(last_word_begin(before)));
  if (!sentence || !is_capitalised(genus) || !has_strict_latin_ending(genus)) return std::nullopt;
  if (!authors_) look();
  return authors_->contains(std::string{text.substr(author)}) ? std::optional{begin} : std::nullopt;
}

}  // namespace keydrift::printed
