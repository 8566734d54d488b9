#include "keydrift/formats/printed_keys_behind.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <memory>
#include <optional>
#include <utility>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostLinesOfAccountKey = 80;  // of a key within an account
constexpr std::size_t kMostEnds = 4;                // of stretches that begin on one line
constexpr std::size_t kMostKeysTried = 600;         // bounds the work on texts that are all labels
constexpr std::size_t kTitleAbove = 12;             // lines between an account's title and its key

// Lines [begin, end).
struct KeyStretch {
  std::size_t begin{};
  std::size_t end{};
};

class KeyBehindFinder {
 public:
  KeyBehindFinder(DecodedText const& text, std::vector<SourceLine> const& lines, Attempt& attempt)
      : text_{text}, lines_{lines}, attempt_{attempt} {}

  void run() && {
    if (attempt_.read->sorted.leads.empty() || attempt_.read->numbering.exact) return;
    auto const found = find_all();
    if (found.empty()) return;
    auto rest = lines_;
    std::int64_t points = 0;
    for (auto const& one : found) {
      points += one.key.judgement.points();
      for (auto i = one.at.begin; i < one.at.end; ++i) rest[i].clear();
    }
    auto other = choose_reading(text_, rest);
    if (other.refused || other.judgement.points() + points <= attempt_.judgement.points()) return;
    if (last_line(other) >= found.front().at.begin) return;
    attempt_ = std::move(other);
    for (auto const& one : found) append(one);
  }

 private:
  struct Found {
    KeyStretch at;
    Attempt key;
  };

  [[nodiscard]] static std::size_t last_line(Attempt const& attempt) {
    auto const& sorted = attempt.read->sorted;
    if (sorted.leads.empty()) return 0;
    auto const& last = sorted.leads.back();
    return sorted.pieces[last.first_piece + last.piece_count - 1].line;
  }

  [[nodiscard]] std::vector<Found> find_all() {
    std::vector<Found> found;
    auto at = std::size_t{attempt_.read->sorted.leads.front().line} + 1;
    for (; at < lines_.size() && tries_ < kMostKeysTried; ++at) {
      if (lines_[at].text.empty() || !opens(at)) continue;
      if (auto key = key_at(at)) {
        at = key->at.end;
        found.push_back(std::move(*key));
      }
    }
    return found;
  }

  // The first lead of a first couplet, labelled as the key's are not.
  [[nodiscard]] bool opens(std::size_t at) const {
    if (lines_[at].markup.role != LineRole::told_by_text) return false;
    auto const label = read_label(lines_[at].text);
    if (!label || label->is_dash() || label->number != 1 || label->decimal) return false;
    return label->family != attempt_.read->numbering.family || opens_sections(at, *label);
  }

  // "1 Whorls convex" above "1.1 Shell brown", which the key's numbers are not like.
  [[nodiscard]] bool opens_sections(std::size_t at, Label const& label) const {
    if (attempt_.grouping.layout == Layout::outline || at + 1 >= lines_.size()) return false;
    auto const below = read_label(lines_[at + 1].text);
    return label.family == LabelFamily::digits && below && below->decimal &&
           below->printed == "1.1";
  }

  [[nodiscard]] bool is_within(std::size_t i) const {
    return !lines_[i].text.empty() && lines_[i].markup.role == LineRole::told_by_text;
  }

  // Where paragraphs end that begin with labels, one behind the other from line `begin` on.  First
  // where the first line stands that has no label: those of a manuscript are paragraphs.
  [[nodiscard]] std::vector<std::size_t> ends_of(std::size_t begin) const {
    std::vector<std::size_t> ends;
    auto const limit = std::min(lines_.size(), begin + kMostLinesOfAccountKey);
    auto i = begin;
    while (i < limit && is_within(i) && read_label(lines_[i].text)) ++i;
    if (i > begin + 1 && i < limit && is_within(i)) ends.push_back(i);
    for (;;) {
      while (i < limit && is_within(i)) ++i;
      ends.push_back(i);
      // The next one stands a single blank line behind it.
      bool const over = ends.size() == kMostEnds || i + 1 >= limit;
      if (over || lines_[i + 1].text.empty() || !read_label(lines_[i + 1].text)) break;
      ++i;
    }
    return ends;
  }

  // Accounts may begin with labels as the key does: the longest stretch that is a key.
  [[nodiscard]] std::optional<Found> key_at(std::size_t begin) {
    auto const ends = ends_of(begin);
    for (auto end = ends.rbegin(); end != ends.rend(); ++end) {
      if (tries_++ == kMostKeysTried) return std::nullopt;
      KeyStretch const stretch{begin, *end};
      if (auto key = read(stretch)) return Found{stretch, std::move(*key)};
    }
    return std::nullopt;
  }

  // A second line has a label of the first one's kind, and two lead somewhere.
  [[nodiscard]] bool has_rivals(KeyStretch const& stretch) const {
    auto const first = read_label(lines_[stretch.begin].text);
    bool rival = false;
    std::size_t led = 0;
    for (auto i = stretch.begin; i < stretch.end && (!rival || led < 2); ++i) {
      auto const text = lines_[i].text;
      bool const told = lines_[i].markup.destination_begin != kNotTold;
      if (told || split_at_leader(text, attempt_.read->numbering).kind != LeaderKind::none) ++led;
      auto const label = i == stretch.begin ? std::nullopt : read_label(text);
      rival = rival || (label && first && label->family == first->family && label->number <= 2);
    }
    return rival && led >= 2;
  }

  [[nodiscard]] std::optional<Attempt> read(KeyStretch const& stretch) const {
    if (!has_rivals(stretch)) return std::nullopt;
    std::vector<SourceLine> own(lines_.begin() + static_cast<std::ptrdiff_t>(stretch.begin),
                                lines_.begin() + static_cast<std::ptrdiff_t>(stretch.end));
    // "1.1" counts sections in the whole file, and leads in a key of its own.
    auto const first = read_label(lines_[stretch.begin].text);
    if (first && opens_sections(stretch.begin, *first)) {
      for (auto& line : own) line.is_no_lead = line.is_title = false;
    }
    auto key = choose_reading(text_, own);
    auto const& reads = key.read->reads;
    bool const whole =
        !key.refused && reads.size() >= 2 && key.judgement.is_faultless() &&
        (key.grouping.layout == Layout::parallel || key.grouping.layout == Layout::outline) &&
        key.grouping.parts.size() == 1;
    if (!whole || !key.read->sorted.remarks.empty()) return std::nullopt;
    // Numbers such as 1.1 tell by themselves which leads go on with which.
    auto const& leads = key.read->sorted.leads;
    bool const sections = std::any_of(leads.begin(), leads.end(),
                                      [](RawLead const& one) { return one.label.decimal; });
    if (sections && key.grouping.layout == Layout::outline) return key;
    bool const led = std::all_of(reads.begin(), reads.end(), [](ReadLead const& one) {
      bool const leaders = one.leaders == LeaderKind::dots || one.leaders == LeaderKind::gap ||
                           one.leaders == LeaderKind::arrow;
      return leaders && one.to.form != DestinationForm::none;
    });
    return led ? std::optional{std::move(key)} : std::nullopt;
  }

  void append(Found const& found) {
    auto const& [stretch, key] = found;
    // Other attempts may share what this one has read.
    if (attempt_.read.use_count() > 1) {
      attempt_.read = std::make_shared<LeadsRead>(*attempt_.read);
    }
    auto& sorted = attempt_.read->sorted;
    auto const& other = key.read->sorted;
    auto const line = static_cast<std::uint32_t>(stretch.begin);
    auto const leads = static_cast<std::uint32_t>(sorted.leads.size());
    auto const pieces = static_cast<std::uint32_t>(sorted.pieces.size());
    auto title = take_title(stretch);
    if (title == kNone) title = heading_above(stretch.begin);
    for (auto piece : other.pieces) {
      piece.line += line;
      sorted.pieces.push_back(piece);
    }
    for (auto lead : other.leads) {
      lead.line += line;
      lead.first_piece += pieces;
      sorted.leads.push_back(lead);
    }
    std::copy(other.accounts.begin(), other.accounts.end(),
              sorted.accounts.begin() + static_cast<std::ptrdiff_t>(stretch.begin));
    auto& reads = attempt_.read->reads;
    reads.insert(reads.end(), key.read->reads.begin(), key.read->reads.end());
    auto& findings = attempt_.read->findings;
    findings.insert(findings.end(), key.read->findings.begin(), key.read->findings.end());
    auto& grouping = attempt_.grouping;
    auto const members = static_cast<std::uint32_t>(grouping.members.size());
    auto const part = static_cast<std::uint32_t>(grouping.parts.size());
    for (auto couplet : key.grouping.couplets) {
      couplet.first_member += members;
      couplet.part += part;
      grouping.couplets.push_back(std::move(couplet));
    }
    for (auto const member : key.grouping.members) grouping.members.push_back(member + leads);
    grouping.parts.push_back(
        {.first_lead = leads, .heading = title, .goes_on = key.grouping.goes_on});
  }

  // The title of the account above the key becomes a heading of its own; kNone without one.  The
  // key's own lines were read apart from all others.
  [[nodiscard]] std::uint32_t take_title(KeyStretch const& stretch) {
    auto const line = account_above(stretch.begin);
    if (!line) return kNone;
    auto& sorted = attempt_.read->sorted;
    auto const is_title = [line](Piece const& piece) { return piece.line == *line; };
    auto const remark =
        std::find_if(sorted.remarks.begin(), sorted.remarks.end(), [&](Remark const& one) {
          return std::any_of(one.pieces.begin(), one.pieces.end(), is_title);
        });
    if (remark == sorted.remarks.end()) return kNone;
    auto const piece = std::find_if(remark->pieces.begin(), remark->pieces.end(), is_title);
    // The text around it stays what it was.
    std::vector<Remark> parted;
    Remark above{remark->kind, remark->lead, {remark->pieces.begin(), piece}};
    Remark beneath{remark->kind, remark->lead, {piece + 1, remark->pieces.end()}};
    if (!above.pieces.empty()) parted.push_back(std::move(above));
    auto const last_lead = static_cast<std::uint32_t>(sorted.leads.size() - 1);
    auto const first = static_cast<std::uint32_t>(remark - sorted.remarks.begin());
    auto const title = first + static_cast<std::uint32_t>(parted.size());
    parted.push_back({RemarkKind::heading, last_lead, {*piece}});
    if (!beneath.pieces.empty()) parted.push_back(std::move(beneath));
    auto const added = static_cast<std::uint32_t>(parted.size() - 1);
    auto const at = sorted.remarks.erase(remark);
    sorted.remarks.insert(at, std::make_move_iterator(parted.begin()),
                          std::make_move_iterator(parted.end()));
    for (auto& part : attempt_.grouping.parts) {
      if (part.heading != kNone && part.heading > first) part.heading += added;
    }
    auto& account = sorted.accounts[*line];
    account.kind = LineKind::heading;
    account.reason = "titles the account that the key below belongs to";
    return title;
  }

  // The title of the key itself, "Key B: Forms of Aus bus", some lines above.
  [[nodiscard]] std::uint32_t heading_above(std::size_t begin) const {
    auto const& remarks = attempt_.read->sorted.remarks;
    for (auto i = remarks.size(); i-- > 0;) {
      auto const& remark = remarks[i];
      bool const near = !remark.pieces.empty() && remark.pieces.back().line < begin &&
                        remark.pieces.back().line + kTitleAbove >= begin;
      if (remark.kind == RemarkKind::heading && near) return static_cast<std::uint32_t>(i);
    }
    return kNone;
  }

  // "7. A. bus Roe (A. cus auct.). Perennial …", some lines above.
  [[nodiscard]] std::optional<std::size_t> account_above(std::size_t begin) const {
    auto const first = begin > kTitleAbove ? begin - kTitleAbove : 0;
    for (auto i = begin; i-- > first;) {
      auto const head = read_account_head(lines_[i].text);
      if (head && head->number > 0 && !head->doubtful) return i;
    }
    return std::nullopt;
  }

  DecodedText const& text_;
  std::vector<SourceLine> const& lines_;
  Attempt& attempt_;
  std::size_t tries_{};
};

}  // namespace

void take_keys_behind(DecodedText const& text, std::vector<SourceLine> const& lines,
                      Attempt& attempt) {
  KeyBehindFinder{text, lines, attempt}.run();
}

}  // namespace keydrift::printed
