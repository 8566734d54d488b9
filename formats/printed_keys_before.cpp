#include "keydrift/formats/printed_keys_before.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <memory>
#include <optional>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLeadsBefore = 4;

// Lines [begin, end) between two titles; `title` is the line of the one above.
struct TitledStretch {
  std::size_t title{};
  std::size_t begin{};
  std::size_t end{};
};

bool is_title_of_key(SourceLine const& line) {
  return line.markup.role == LineRole::heading && mentions_key(line.text);
}

// Lines behind the last blank line without a label among them are notes.
void leave_notes_behind(std::vector<SourceLine> const& lines, TitledStretch& stretch) {
  for (auto i = stretch.end; i > stretch.begin; --i) {
    auto const text = lines[i - 1].text;
    auto const label = read_label(text);
    bool const lead = label && !label->is_dash() && label->text_at < text.size() &&
                      starts_with_upper(text.substr(label->text_at));
    if (lead) return;
    if (text.empty()) stretch.end = i - 1;
  }
}

// The lines beneath the first title of a key above line `first`, from the first label of another
// kind on, up to the next title; nullopt where the first lead stands beneath that title itself.
std::optional<TitledStretch> stretch_above(std::vector<SourceLine> const& lines, std::size_t first,
                                           LabelFamily family) {
  TitledStretch stretch;
  while (stretch.title < first && !is_title_of_key(lines[stretch.title])) ++stretch.title;
  stretch.begin = stretch.title + 1;
  auto const opens = [&](SourceLine const& line) {
    auto const label = read_label(line.text);
    return label && !label->is_dash() && label->number == 1 && label->family != family;
  };
  auto const told_by_text = [&](std::size_t i) {
    return lines[i].markup.role == LineRole::told_by_text;
  };
  while (stretch.begin < first && told_by_text(stretch.begin) && !opens(lines[stretch.begin])) {
    ++stretch.begin;
  }
  stretch.end = stretch.begin;
  while (stretch.end < first && told_by_text(stretch.end)) ++stretch.end;
  bool const titled = stretch.end < first && is_title_of_key(lines[stretch.end]);
  leave_notes_behind(lines, stretch);
  return titled && stretch.end > stretch.begin ? std::optional{stretch} : std::nullopt;
}

// Puts the leads of `key`, which are those of the stretch, before all others.
void put_key_before(Attempt& attempt, Attempt const& key, TitledStretch const& stretch) {
  attempt.read = std::make_shared<LeadsRead>(*attempt.read);  // other attempts may share it
  auto& sorted = attempt.read->sorted;
  auto const& own = key.read->sorted;
  auto const line = static_cast<std::uint32_t>(stretch.begin);
  auto const leads = static_cast<std::uint32_t>(own.leads.size());
  auto const pieces = static_cast<std::uint32_t>(own.pieces.size());
  for (auto& lead : sorted.leads) lead.first_piece += pieces;
  for (auto& name : sorted.names) name.lead += leads;
  std::uint32_t title = kNone;
  for (std::uint32_t i = 0; i < sorted.remarks.size(); ++i) {
    auto& remark = sorted.remarks[i];
    auto const at = remark.pieces.empty() ? 0 : remark.pieces.front().line;
    if (remark.kind == RemarkKind::heading && at == stretch.title) title = i;
    if (remark.lead != kNone) remark.lead += leads;
    if (remark.lead == kNone && at >= stretch.end) remark.lead = leads - 1;
  }
  auto first_pieces = own.pieces;
  for (auto& piece : first_pieces) piece.line += line;
  sorted.pieces.insert(sorted.pieces.begin(), first_pieces.begin(), first_pieces.end());
  auto first_leads = own.leads;
  for (auto& lead : first_leads) lead.line += line;
  sorted.leads.insert(sorted.leads.begin(), first_leads.begin(), first_leads.end());
  std::copy(own.accounts.begin(), own.accounts.end(),
            sorted.accounts.begin() + static_cast<std::ptrdiff_t>(stretch.begin));
  auto& reads = attempt.read->reads;
  reads.insert(reads.begin(), key.read->reads.begin(), key.read->reads.end());
  auto& findings = attempt.read->findings;
  findings.insert(findings.begin(), key.read->findings.begin(), key.read->findings.end());

  auto& grouping = attempt.grouping;
  auto const members = static_cast<std::uint32_t>(key.grouping.members.size());
  for (auto& couplet : grouping.couplets) {
    couplet.first_member += members;
    ++couplet.part;
  }
  grouping.couplets.insert(grouping.couplets.begin(), key.grouping.couplets.begin(),
                           key.grouping.couplets.end());
  for (auto& member : grouping.members) member += leads;
  grouping.members.insert(grouping.members.begin(), key.grouping.members.begin(),
                          key.grouping.members.end());
  for (auto& part : grouping.parts) part.first_lead += leads;
  grouping.parts.insert(
      grouping.parts.begin(),
      RawPart{.first_lead = 0, .heading = title, .goes_on = key.grouping.goes_on});
  for (auto& lead : grouping.set_otherwise) lead += leads;
}

}  // namespace

void take_key_before(DecodedText const& text, std::vector<SourceLine> const& lines,
                     Attempt& attempt) {
  auto const& read = *attempt.read;
  if (read.sorted.leads.empty() || read.numbering.exact) return;
  auto const stretch = stretch_above(lines, read.sorted.leads.front().line, read.numbering.family);
  if (!stretch) return;
  std::vector<SourceLine> own(lines.begin() + static_cast<std::ptrdiff_t>(stretch->begin),
                              lines.begin() + static_cast<std::ptrdiff_t>(stretch->end));
  for (auto& line : own) line.is_no_lead = line.is_title = false;
  auto const key = choose_reading(text, own);
  bool const whole = !key.refused && key.read->reads.size() >= kFewestLeadsBefore &&
                     key.judgement.sound == key.judgement.leads && key.judgement.strays == 0 &&
                     key.grouping.parts.size() == 1 && key.read->sorted.remarks.empty();
  if (!whole) return;
  auto rest = lines;
  for (auto i = stretch->begin; i < stretch->end; ++i) rest[i].clear();
  auto other = choose_reading(text, rest);
  if (other.refused || other.judgement.points() < attempt.judgement.points() ||
      other.read->sorted.leads.front().line < stretch->end) {
    return;
  }
  attempt = std::move(other);
  put_key_before(attempt, key, *stretch);
}

}  // namespace keydrift::printed
