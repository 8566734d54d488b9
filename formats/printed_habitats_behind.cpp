#include "keydrift/formats/printed_habitats_behind.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "Roth. Wiesen": where the second word begins, if it is one in full behind one cut short.
std::optional<std::size_t> whole_word_behind_short(std::string_view authorship) {
  constexpr std::size_t kShortest = 4;  // bytes of the habitat
  auto const begin = last_word_begin(authorship);
  if (begin < 2 || authorship[begin - 1] != ' ' || authorship[begin - 2] != '.')
    return std::nullopt;
  auto const word = authorship.substr(begin);
  bool const whole = word.size() >= kShortest && is_capitalised(word) && is_plain_word(word);
  return whole ? std::optional{begin} : std::nullopt;
}

std::string_view last_author(std::string_view authorship) {
  return authorship.substr(last_word_begin(authorship));
}

// "DC.": no forename is cut short so.
bool is_in_two_capitals(std::string_view author) {
  return author.size() == 3 && is_in_capitals(author.substr(0, 2), 2);
}

}  // namespace

void part_habitats_from_authors(std::vector<ReadLead>& reads) {
  std::vector<std::size_t> found;
  std::unordered_set<std::string_view> authors;  // that close the authors of a name
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto const& read = reads[i];
    if (read.to.form != DestinationForm::taxa) continue;
    auto const& authorship = read.to.taxa.taxa.back().authorship;
    if (authorship.empty()) continue;
    // "…; häufig", and not "…, Fl. 2: 33"
    bool const said =
        is_lower(code_point_at(read.to.remark, 0).value) &&
        is_plain_word(without_closing_marks(read.to.remark.substr(0, read.to.remark.find(' '))));
    if (read.to.taxa.taxa.size() == 1 && said && whole_word_behind_short(authorship)) {
      found.push_back(i);
    } else {
      authors.insert(last_author(authorship));
    }
  }
  for (auto const i : found) {
    auto& read = reads[i];
    auto& authorship = read.to.taxa.taxa.back().authorship;
    auto const begin = *whole_word_behind_short(authorship);
    auto const word = authorship.substr(begin);
    auto const author = trim_right(std::string_view{authorship}.substr(0, begin));
    auto const shown = last_author(author);
    if (authors.contains(word) || !(authors.contains(shown) || is_in_two_capitals(shown))) continue;
    auto const& printed = read.lead.destination_printed;
    auto const at = printed.find(authorship);
    if (at == std::string::npos) continue;
    auto const sign = printed.substr(at + authorship.size(), 1);
    if (sign != ";" && sign != ",") continue;
    read.to.remark = word + sign + " " + read.to.remark;
    read.lead.taxon_remark = read.to.remark;
    authorship.erase(author.size());
  }
}

}  // namespace keydrift::printed
