#include "keydrift/formats/printed_titles_behind.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_second_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "AUSELLA BUSA (Roe)", "Ausella busa Roe", "12. Ausella busa Roe, comb. nov."
bool titles_species(std::string_view text) {
  constexpr std::size_t kMostWords = 8;
  auto const words = words_of(text, kMostWords + 1);
  if (words.size() < 2 || words.size() > kMostWords) return false;
  std::size_t const at = is_species_number(words[0]) ? 1 : 0;
  if (words.size() < at + 2 || !is_capitalised(words[at])) return false;
  auto const name = text.substr(static_cast<std::size_t>(words[at].data() - text.data()));
  bool const capitals = is_in_capitals(words[at], 3) && is_in_capitals(words[at + 1], 3);
  // "Ausella busa (Roe) Dorn, comb. nov."
  bool const authored = words.size() > at + 2 && is_epithet(words[at + 1]) &&
                        (words[at + 2].starts_with('(') || is_authorish(words[at + 2]));
  bool const strict = has_strict_latin_ending(words[at]);
  return capitals || (strict && (authored || is_certain_name(name))) || is_species_alone(name);
}

bool is_numbered(std::string_view text) {
  return is_species_number(text.substr(0, std::min(text.find(' '), text.size())));
}

// "… the petals 15. A. busa."
bool ends_in_numbered_name(std::string_view text) {
  constexpr std::size_t kLongest = 60;  // bytes
  auto const at = numbered_end(without_closing_marks(text), kLongest, is_numbered_name);
  return at > 0 && at < text.size();
}

// Nothing of the key follows the lead, or prose does.
bool stands_behind_key(SortedLines const& sorted, std::size_t lead) {
  if (lead + 1 == sorted.leads.size()) return true;
  return std::any_of(sorted.remarks.begin(), sorted.remarks.end(), [&](Remark const& remark) {
    return remark.lead == lead && remark.kind == RemarkKind::prose && remark.pieces.size() > 1;
  });
}

void make_heading(SortedLines& sorted, std::size_t lead, std::uint32_t number) {
  auto& raw = sorted.leads[lead];
  raw.piece_count -= 1;
  raw.destination_told = false;
  Remark title;
  title.kind = RemarkKind::heading;
  title.lead = static_cast<std::uint32_t>(lead);
  title.pieces.push_back(sorted.pieces[raw.first_piece + raw.piece_count]);
  auto const behind =
      std::find_if(sorted.remarks.begin(), sorted.remarks.end(), [&title](Remark const& remark) {
        return !remark.pieces.empty() && remark.pieces.front().begin > title.pieces.front().begin;
      });
  sorted.remarks.insert(behind, std::move(title));
  for (auto& account : sorted.accounts) {
    if (account.line != number) continue;
    account.kind = LineKind::heading;
    account.reason = "titles an account behind the key";
  }
}

}  // namespace

void leave_titles_behind(std::vector<SourceLine> const& lines, Numbering const& numbering,
                         SortedLines& sorted) {
  if (numbering.exact || !sorted.names.empty()) return;
  // A table pasted cell by cell, blank lines between them.
  auto const cells =
      std::count_if(sorted.leads.begin(), sorted.leads.end(), [&](RawLead const& raw) {
        if (raw.piece_count < 2) return false;
        auto const last = sorted.pieces[raw.first_piece + raw.piece_count - 1].line;
        return last > 0 && lines[last - 1].text.empty();
      });
  if (static_cast<std::size_t>(cells) * 2 > sorted.leads.size()) return;
  SecondLeads const ends{lines, numbering};
  for (std::size_t i = 0; i < sorted.leads.size(); ++i) {
    auto const& raw = sorted.leads[i];
    if (raw.piece_count < 2 || raw.further_taxa > 0) continue;
    auto const title = sorted.pieces[raw.first_piece + raw.piece_count - 1].line;
    auto const above = sorted.pieces[raw.first_piece + raw.piece_count - 2].line;
    // Of double spacing the blank lines are gone.
    bool const apart =
        (title > above + 1 && lines[title - 1].text.empty()) ||
        (is_numbered(lines[title].text) && ends_in_numbered_name(lines[above].text)) ||
        is_genusless_name(lines[above].text);
    if (!apart || lines[title].markup.destination_begin != kNotTold) continue;
    if (!titles_species(lines[title].text) || !stands_behind_key(sorted, i)) continue;
    if (ends.may_end(above)) make_heading(sorted, i, lines[title].number);
  }
}

}  // namespace keydrift::printed
