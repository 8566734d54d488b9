#include "keydrift/formats/printed_course_reading.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>

#include "keydrift/formats/edition_places.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label_course.hpp"
#include "keydrift/formats/printed_label_fronts.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

// Signs, numbers or names were misread.
bool shows_scan(TextReading const& reading) {
  constexpr std::ptrdiff_t kFewest = 2;
  auto const misread = [](std::vector<Finding> const& findings) {
    return std::count_if(findings.begin(), findings.end(),
                         [](Finding const& one) { return one.code.starts_with("misread-"); });
  };
  return misread(reading.findings) + misread(reading.attempt.read->findings) >= kFewest;
}

Finding label_put_right(std::string_view file, SourceLine const& line, LabelChange const& change) {
  auto const label = std::string{trim_right(change.label)};
  auto const printed = line.text.substr(0, change.bytes);
  Finding finding;
  finding.code = "misprinted-label";
  finding.severity = Severity::warning;
  finding.file = std::string{file};
  finding.place = place_in(line, line.begin, line.begin + change.bytes);
  finding.printed = std::string{printed};
  finding.message = printed.empty() ? "no label is printed; the labels around tell that \"" +
                                          label + "\" begins here"
                                    : "\"" + std::string{printed} + "\" was read as \"" + label +
                                          "\", which the labels around call for";
  finding.remedy = "print the label as the others are";
  return finding;
}

std::ptrdiff_t lines_in(std::string_view text) {
  return std::count(text.begin(), text.end(), '\n');
}

// Of a code point of several bytes.
bool is_inside(std::string_view text, std::size_t at) {
  return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
}

// From bytes of a changed text to those of the text before, line by line: what stands alike at both
// ends of a line keeps its place there.  What was changed between is told no more closely.
class WayBack {
 public:
  // Precondition: both have as many lines.
  WayBack(std::string_view changed, std::string_view before)
      : changed_{changed}, before_{before}, from_{changed}, to_{before} {}

  [[nodiscard]] Place move(Place const& place) const {
    auto moved = place;
    moved.begin = byte_before(place.begin);
    moved.end = std::max(moved.begin, byte_before(place.end));
    auto const told = to_.at(moved.begin, moved.end);
    // Some findings tell no more than a line.
    if (told.line == place.line) moved.column = told.column;
    return moved;
  }

 private:
  [[nodiscard]] std::size_t byte_before(std::size_t at) const {
    at = std::min(at, changed_.size());
    auto const number = from_.at(at, at).line;
    if (number > to_.line_count()) return before_.size();
    auto const now = from_.line(number);
    auto const then = to_.line(number);
    auto const within = at - from_.line_begin(number);
    auto const shorter = std::min(now.size(), then.size());
    std::size_t tail = 0;
    while (tail < shorter && now[now.size() - 1 - tail] == then[then.size() - 1 - tail]) ++tail;
    while (tail > 0 && is_inside(now, now.size() - tail)) --tail;
    std::size_t head = 0;
    while (head < shorter - tail && now[head] == then[head]) ++head;
    while (head > 0 && is_inside(now, head)) --head;
    auto const begin = to_.line_begin(number);
    if (within <= head) return begin + within;
    return begin + then.size() - std::min(tail, now.size() - std::min(within, now.size()));
  }

  std::string_view changed_;
  std::string_view before_;
  TextPlaces from_;
  TextPlaces to_;
};

}  // namespace

bool hides_labels(TextReading const& reading) {
  auto const& sorted = reading.attempt.read->sorted;
  auto const& lines = reading.lines;
  auto const& reads = reading.attempt.read->reads;
  bool const within = std::any_of(reads.begin(), reads.end(), [](ReadLead const& read) {
    return may_begin_with_label(read.lead.text);
  });
  if (within) return true;
  // Of lines among the leads and just above them those that begin none.
  constexpr std::size_t kLinesAbove = 3;
  if (sorted.leads.empty()) return false;
  std::size_t const first = sorted.leads.front().line;
  auto const last = std::min<std::size_t>(sorted.leads.back().line, sorted.accounts.size());
  for (auto i = first - std::min(first, kLinesAbove); i < last; ++i) {
    auto const kind = sorted.accounts[i].kind;
    bool const beside = kind == LineKind::continuation || kind == LineKind::note ||
                        (i < first && kind == LineKind::heading);
    if (beside && may_begin_with_label(lines[i].text)) return true;
  }
  return false;
}

std::optional<TextReading> read_by_label_course(DecodedText const& text, TextReading const& reading,
                                                std::optional<Relabelled>& relabelled) {
  auto const course = label_course(reading.lines, shows_scan(reading));
  if (course.empty()) return std::nullopt;
  relabelled.emplace(Relabelled{text, {}, {}});
  std::vector<TextChange> changes;
  for (auto const& change : course) {
    auto const& line = reading.lines[change.line];
    if (change.unprinted) {
      relabelled->dashes.insert(line.number);
    } else {
      relabelled->findings.push_back(label_put_right(text.name, line, change));
    }
    changes.push_back({line.begin, change.bytes, change.label});
  }
  // Lines of columns do not stand in the order of the text.
  std::sort(changes.begin(), changes.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(changes, relabelled->text.text);
  auto other = read_text(relabelled->text, {});
  auto const& now = other.attempt.judgement;
  auto const& before = reading.attempt.judgement;
  auto const amiss = [](Judgement const& one) {
    return static_cast<std::int64_t>(one.leads) - one.points();
  };
  // Of readings that hang together alike that one in which no label stands among the words.
  auto const ahead = now.points() - before.points();
  bool const clearer = ahead == 0 && hides_labels(reading) && !hides_labels(other);
  // Where much more of the key is read, less of each lead is to be amiss.
  bool const reads_more =
      now.leads * 4 >= before.leads * 5 && amiss(now) * static_cast<std::int64_t>(before.leads) <
                                               amiss(before) * static_cast<std::int64_t>(now.leads);
  bool const better = lines_in(relabelled->text.text) == lines_in(text.text) &&
                      !other.attempt.refused && now.hangs_together() &&
                      (reading.attempt.refused ||
                       ((ahead > 0 || clearer) && (amiss(now) <= amiss(before) || reads_more)));
  if (!better) {
    relabelled.reset();
    return std::nullopt;
  }
  other.findings.insert(other.findings.end(), reading.findings.begin(), reading.findings.end());
  return other;
}

void take_back_dashes(Relabelled const& relabelled, TextReading& reading) {
  auto& read = *reading.attempt.read;
  for (std::size_t i = 0; i < read.sorted.leads.size(); ++i) {
    auto& lead = read.sorted.leads[i];
    bool const added = relabelled.dashes.contains(reading.lines[lead.line].number);
    if (!added || !lead.label.is_dash()) continue;
    lead.label.printed = {};
    lead.unlabelled = true;
    read.reads[i].lead.label.clear();
  }
}

void refer_to_text_before(Relabelled const& relabelled, std::string_view before, Edition& edition,
                          std::vector<Finding>& findings) {
  WayBack const way{relabelled.text.text, before};
  auto const move = [&way](Place& place) { place = way.move(place); };
  move_places(edition, move);
  for (auto& finding : findings) move_places(finding, move);
}

}  // namespace keydrift::printed
