#include "keydrift/formats/printed_cut.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::string_view kOwnLine = "destination on a line of its own";
constexpr std::size_t kCutBytesShown = 60;  // bytes of the source that a finding quotes

// Without low lines and hyphens that stand apart from the words before them.
std::string_view without_worn_row(std::string_view words) {
  auto text = trim_right(words);
  while (text.size() > 2) {
    bool const low = text.ends_with('_');
    bool const apart = text.ends_with(" -") || text.ends_with(" ~");
    if (!low && !apart) break;
    text = trim_right(text.substr(0, text.size() - 1));
  }
  return text.size() > 2 ? text : words;
}

bool begins_line(JoinedText const& joined, std::size_t at) {
  return std::any_of(joined.spans.begin(), joined.spans.end(),
                     [at](auto const& span) { return span.raw_begin == at; });
}

// "… tipped with white. (Tres Pinos Islands.) Aus bus", cut before "Pinos": behind the bracket that
// closes there; 0 elsewhere.
std::size_t behind_open_bracket(std::string_view raw, std::size_t words_end, std::size_t at) {
  if (at == 0 || at >= raw.size() || !leaves_bracket_open(raw.substr(0, words_end))) return 0;
  auto const close = raw.find_first_of("()", at);
  bool const closes = close != std::string_view::npos && raw[close] == ')';
  if (!closes) return 0;
  auto const behind = skip_blanks(raw, close + 1);
  return is_upper(code_point_at(raw, behind).value) ? close + 1 : 0;
}

// "… callus brun-" / "nea Roe", cut where the second line begins: where the word of both begins; 0
// elsewhere.
std::size_t begin_of_joined_word(JoinedText const& joined, std::size_t at) {
  std::string_view const raw = joined.raw;
  if (at == 0 || at >= raw.size() || !begins_line(joined, at)) return 0;
  bool const within =
      is_lower(code_point_before(raw, at).value) && is_lower(code_point_at(raw, at).value);
  return within ? last_word_begin(raw.substr(0, at)) : 0;
}

}  // namespace

std::span<Piece const> LeadCutter::pieces_of(std::size_t lead) const {
  auto const& raw = sorted_.leads[lead];
  return std::span{sorted_.pieces}.subspan(raw.first_piece, raw.piece_count - raw.further_taxa);
}

void LeadCutter::add_further_taxa(ReadLead& read, std::size_t lead) const {
  auto const& raw = sorted_.leads[lead];
  if (raw.further_taxa == 0 || read.to.form != DestinationForm::taxa) return;
  auto const pieces = std::span{sorted_.pieces}.subspan(
      raw.first_piece + raw.piece_count - raw.further_taxa, raw.further_taxa);
  for (auto const& piece : pieces) {
    auto const printed = squeeze(key_.text.substr(piece.begin, piece.end - piece.begin));
    auto further = read_destination(printed, key_.numbering);
    if (further.form != DestinationForm::taxa) continue;
    auto& taxa = read.to.taxa.taxa;
    std::move(further.taxa.taxa.begin(), further.taxa.taxa.end(), std::back_inserter(taxa));
    if (!further.remark.empty()) {
      read.to.remark += (read.to.remark.empty() ? "" : "; ") + further.remark;
      read.lead.taxon_remark = read.to.remark;
    }
    read.lead.destination_printed += "; " + printed;
  }
}

// Cuts the joined text, fills in the lead, reads the destination's form.
void LeadCutter::cut(ReadLead& read, JoinedText const& joined, std::size_t words_end,
                     std::size_t destination_begin, std::size_t destination_end) {
  std::string_view const raw = joined.raw;
  if (auto const word = begin_of_joined_word(joined, destination_begin); word > 0) {
    if (words_end >= word) words_end = trim_right(raw.substr(0, word)).size();
    destination_begin = word;
  }
  if (auto const end = behind_open_bracket(raw, words_end, destination_begin); end > 0) {
    words_end = end;
    destination_begin = skip_blanks(raw, end);
  }
  auto behind = trim(raw.substr(std::min(destination_end, raw.size())));
  while (behind.starts_with('.') || behind.starts_with(',')) behind = trim(behind.substr(1));
  destination_end = trim_right(raw.substr(0, destination_end)).size();
  std::string_view group;
  if (destination_begin < destination_end) {
    auto const printed = raw.substr(destination_begin, destination_end - destination_begin);
    read.lead.destination_printed = squeeze(printed);
    read.lead.destination_place =
        place_of_raw(joined, destination_begin, destination_end, key_.lines);
    read.to = read_destination(read.lead.destination_printed, key_.numbering);
    read.lead.taxon_remark = read.to.remark;
    // Where labels are exact a group stands in brackets, and earlier leaders are words.
    bool const led = read.leaders == LeaderKind::dots && !key_.numbering.exact;
    if (read.to.form == DestinationForm::couplet && led) {
      group = group_between_leaders(raw, words_end);
      if (!group.empty()) {
        read.lead.taxon_remark = squeeze(group);
        words_end =
            trim_right(raw.substr(0, static_cast<std::size_t>(group.data() - raw.data()))).size();
        words_end = split_at_leader(raw.substr(0, words_end), key_.numbering).words_end;
      }
    }
  } else {
    read.to = {};
    read.lead.destination_printed.clear();
    read.lead.destination_place = {};
    read.lead.taxon_remark.clear();
  }
  // "… sessile. . Aus bus": what is left of a row of dots.
  if (read.leaders == LeaderKind::blank && destination_begin < destination_end) {
    while (words_end > 2 &&
           (raw.substr(0, words_end).ends_with(" .") || raw.substr(0, words_end).ends_with(".."))) {
      bool const close = raw[words_end - 2] == '.';
      words_end = trim_right(raw.substr(0, words_end - (close ? 2 : 1))).size();
    }
  }
  // "… stouter, black__ Aus bus", "… black - Aus bus": of a row of lines.
  if (read.leaders == LeaderKind::blank && destination_begin < destination_end) {
    words_end = without_worn_row(raw.substr(0, words_end)).size();
  }
  // A lead may be cut anew once the other leads are known.
  read.lead.text.clear();
  read.lead.runs.clear();
  read.lead.figures.clear();
  squeeze_with_runs(joined, 0, words_end, key_.lines, read.lead.text, read.lead.runs);
  if (read.leaders == LeaderKind::dots) say_leaders_within(read);
  for (auto& figure : figures_in(read.lead.text)) read.lead.figures.push_back(std::move(figure));
  for (auto const& figure : read.to.taxa.figures) read.lead.figures.push_back(figure);
  if (auto figures = figures_in(behind); !figures.empty()) {
    std::move(figures.begin(), figures.end(), std::back_inserter(read.lead.figures));
  } else if (!behind.empty()) {  // figures, plates, pages: which, the column's head may say
    auto& remark = read.lead.taxon_remark;
    remark += (remark.empty() ? "" : "; ") + squeeze(behind);
  }
  for (std::size_t s = 1; s < joined.spans.size(); ++s) {
    auto& account = sorted_.accounts[joined.spans[s].line];
    if (joined.spans[s].raw_begin >= destination_begin) {
      account.kind = LineKind::destination;
      account.reason = kOwnLine;
    } else if (account.reason == kOwnLine) {  // it was cut there before
      account.kind = LineKind::continuation;
      account.reason = "goes on with the words before";
    }
  }
}

// "Wings dark ..... Aus group ..... 6": the group's name between two rows of leaders.
std::string_view LeadCutter::group_between_leaders(std::string_view raw,
                                                   std::size_t words_end) const {
  auto const words = raw.substr(0, words_end);
  auto const split = split_at_leader(words, key_.numbering);
  if (split.kind != LeaderKind::dots || split.destination_begin >= words.size()) return {};
  auto const group = words.substr(split.destination_begin);
  auto const group_words = words_of(group);
  bool const name = split.words_end > 0 && group_words.size() <= 6 &&
                    std::any_of(group_words.begin(), group_words.end(),
                                [](auto word) { return is_upper(code_point_at(word, 0).value); });
  return name ? group : std::string_view{};
}

// "… ..... 5 Legs pale ..... Aus bus": two leads in one, or an ellipsis of the words.
void LeadCutter::say_leaders_within(ReadLead const& read) {
  std::string_view const words = read.lead.text;
  auto const split = split_at_leader(words, key_.numbering);
  if (split.kind == LeaderKind::none || split.destination_begin >= words.size()) return;
  auto const first = words.substr(split.destination_begin);
  bool const ellipsis = is_lower(code_point_at(first, 0).value);
  if (ellipsis) return;
  Finding finding = at_destination(read, "leaders-within-words");
  finding.severity = Severity::warning;
  auto const& runs = read.lead.runs;
  if (!runs.empty()) finding.place = place_in_text(read.lead, split.destination_begin, 1);
  finding.printed = std::string{start_of(first, kCutBytesShown)};
  finding.message =
      "leaders stand twice in this lead; what follows the first of them was taken "
      "for words, and \"" +
      read.lead.destination_printed + "\" for the destination";
  finding.remedy = "begin each lead on a line of its own, with its label";
  findings_.push_back(std::move(finding));
}

void LeadCutter::say_name_taken(ReadLead const& read) {
  Finding finding = at_destination(read, "assumed-destination");
  finding.severity = Severity::information;
  finding.message = "no leaders stand before \"" + read.lead.destination_printed +
                    "\"; it was taken for the lead's destination";
  finding.remedy = "print dot leaders before the destination";
  findings_.push_back(std::move(finding));
}

void LeadCutter::say_number_taken(ReadLead const& read, std::string_view number, bool elsewhere) {
  auto const printed = std::string{number};
  Finding finding = at_destination(read, "ambiguous-number");
  finding.severity = elsewhere ? Severity::warning : Severity::information;
  finding.message =
      "the number " + printed + " at the end of this lead was taken for couplet " + printed +
      (elsewhere ? ", to which another lead leads too" : ", to which no other lead leads");
  finding.remedy = "if it belongs to the words, print the lead's destination after dot leaders";
  findings_.push_back(std::move(finding));
}

Finding LeadCutter::at_destination(ReadLead const& read, std::string code) const {
  Finding finding;
  finding.code = std::move(code);
  finding.file = std::string{key_.name};
  finding.place = read.lead.destination_place;
  finding.printed = read.lead.destination_printed;
  return finding;
}

}  // namespace keydrift::printed
