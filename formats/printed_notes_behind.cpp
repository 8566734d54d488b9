#include "keydrift/formats/printed_notes_behind.hpp"

#include <optional>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "BUS, 349." at the end: an epithet in capitals with the number of its species.
bool ends_in_counted_capitals(std::string_view text) {
  constexpr std::size_t kShortest = 4;  // letters
  auto const number = last_word_begin(text);
  auto const before = trim_right(text.substr(0, number));
  if (!before.ends_with(',') || !is_digit(code_point_at(text, number).value)) return false;
  auto const word = before.substr(0, before.size() - 1);
  return is_in_capitals(word.substr(last_word_begin(word)), kShortest);
}

// A name with its number, "2. bus Roe.", "13. A. bus", "BUS, 349.".
bool ends_in_counted_name(std::string_view text) {
  if (ends_in_counted_capitals(text)) return true;
  auto const begin = trailing_name(text);
  if (!begin || *begin == 0) return false;
  auto const first = text.substr(*begin, text.find(' ', *begin) - *begin);
  auto const before = trim_right(text.substr(0, *begin));
  return is_species_number(first) || is_species_number(before.substr(last_word_begin(before)));
}

// The couplet of lead `lead` has another lead beside it: what stands behind the name is no rival.
bool has_rival(SortedLines const& sorted, std::size_t lead) {
  auto const& label = sorted.leads[lead].label;
  if (!label.back.empty()) return true;  // it names its rival
  auto const rivals = [](Label const& first, Label const& second) {
    return second.is_dash() || (first.number == second.number && first.family == second.family);
  };
  bool const answers = lead > 0 && rivals(sorted.leads[lead - 1].label, label);
  return answers || (lead + 1 < sorted.leads.size() && rivals(label, sorted.leads[lead + 1].label));
}

// "… without pores busus Roe"
bool ends_in_authored_epithet(std::string_view text) {
  auto const author = last_word_begin(text);
  auto const before = trim_right(text.substr(0, author));
  auto const epithet = before.substr(last_word_begin(before));
  return author > 0 && is_authorish(text.substr(author)) && is_epithet(epithet) &&
         has_strict_latin_ending(epithet);
}

}  // namespace

bool part_page_behind_name(KeyText const& key, SortedLines& sorted, std::size_t lead) {
  auto& raw = sorted.leads[lead];
  if (raw.piece_count < 2 || raw.further_taxa > 0) return false;
  auto const& piece = sorted.pieces[raw.first_piece + raw.piece_count - 1];
  auto const& above = sorted.pieces[raw.first_piece + raw.piece_count - 2];
  auto const line = piece.line;
  bool const apart = line > 0 && key.lines[line - 1].text.empty() && line + 1 < key.lines.size() &&
                     key.lines[line + 1].text.empty();
  if (!apart || !is_number_only(key.lines[line].text)) return false;
  auto const text = trim_right(key.text.substr(above.begin, above.end - above.begin));
  if (!ends_in_authored_epithet(text)) return false;
  --raw.piece_count;
  raw.destination_told = false;
  sorted.accounts[line].kind = LineKind::page_number;
  sorted.accounts[line].reason = "a number alone behind a name and its author";
  return true;
}

bool part_note_behind_name(KeyText const& key, SortedLines& sorted, std::size_t lead) {
  if (!has_rival(sorted, lead)) return false;
  auto& raw = sorted.leads[lead];
  auto const text_of = [&](std::uint32_t p) {
    auto const& piece = sorted.pieces[raw.first_piece + p];
    return trim(key.text.substr(piece.begin, piece.end - piece.begin));
  };
  for (std::uint32_t last = 0; last + 1 < raw.piece_count; ++last) {
    auto const text = text_of(last);
    auto const next = text_of(last + 1);
    bool const afresh = starts_with_upper(next) || is_digit(code_point_at(next, 0).value);
    bool const own = last > 0 && is_genusless_name(text);  // "bus n. sp." alone on its line
    bool const apart = own && next.starts_with('(');
    if (!(afresh || apart) || !(own || ends_in_counted_name(text))) continue;
    Remark note;
    note.kind = RemarkKind::lead_note;
    note.lead = static_cast<std::uint32_t>(lead);
    for (auto p = last + 1; p < raw.piece_count; ++p) {
      auto const& piece = sorted.pieces[raw.first_piece + p];
      note.pieces.push_back(piece);
      sorted.accounts[piece.line].kind = LineKind::note;
      sorted.accounts[piece.line].reason = "stands behind the destination of the lead";
    }
    raw.piece_count = last + 1;
    sorted.remarks.push_back(std::move(note));  // at the end: others are known by their places
    return true;
  }
  return false;
}

}  // namespace keydrift::printed
