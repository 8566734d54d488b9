#include "keydrift/formats/amendment_reader.hpp"

#include <algorithm>
#include <array>
#include <deque>
#include <iterator>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/amendment_instruction.hpp"
#include "keydrift/formats/amendment_labels.hpp"
#include "keydrift/formats/amendment_where.hpp"
#include "keydrift/formats/amendment_words.hpp"
#include "keydrift/formats/docx.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_fragment.hpp"
#include "keydrift/formats/printed_front.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/related_places.hpp"

namespace keydrift {
namespace printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostLinesOfInstruction = 4;
constexpr std::size_t kBytesLookedAt = 1000;  // of a line that may be an instruction
constexpr std::size_t kPieceBytesShown = 80;  // of the source that a finding quotes

// Moves the couplets of a fragment behind those of `piece` and returns their ids there.
std::vector<CoupletId> append_fragment(Edition& piece, Edition&& fragment) {
  auto const first = static_cast<std::uint32_t>(piece.couplets.size());
  std::vector<TaxonId> taxa;
  for (auto& taxon : fragment.taxa) {
    auto const same = std::find_if(piece.taxa.begin(), piece.taxa.end(),
                                   [&](Taxon const& one) { return one.name == taxon.name; });
    taxa.push_back({static_cast<std::uint32_t>(same - piece.taxa.begin())});
    if (same == piece.taxa.end()) {
      piece.taxa.push_back(std::move(taxon));
    } else if (same->authorship.empty()) {
      same->authorship = std::move(taxon.authorship);
    }
  }
  std::vector<CoupletId> ids;
  for (auto& couplet : fragment.couplets) {
    for (auto& lead : couplet.leads) {
      if (auto* to = std::get_if<ToCouplet>(&lead.destination)) to->couplet.index += first;
      if (auto* to = std::get_if<ToTaxa>(&lead.destination)) {
        for (auto& taxon : to->taxa) taxon = taxa[taxon.index];
      }
    }
    ids.push_back({static_cast<std::uint32_t>(piece.couplets.size())});
    piece.couplets.push_back(std::move(couplet));
  }
  return ids;
}

std::vector<CoupletId>* couplets_of(AmendmentStep& step) {
  if (auto* one = std::get_if<PlaceByNumber>(&step)) return &one->couplets;
  if (auto* one = std::get_if<ReplaceCouplets>(&step)) return &one->couplets;
  if (auto* one = std::get_if<InsertCouplets>(&step)) return &one->couplets;
  if (auto* one = std::get_if<AddToCouplet>(&step)) return &one->couplets;
  return nullptr;
}

// "Title:", "Amends:": front matter whatever else the line says.
bool is_front_line(std::string_view line) {
  static constexpr std::array kNames{"title:"sv,  "edition:"sv, "year:"sv,     "authors:"sv,
                                     "author:"sv, "amends:"sv,  "language:"sv, "synonyms:"sv};
  auto const folded = fold(start_of(line, 12));
  return std::any_of(kNames.begin(), kNames.end(),
                     [&](auto name) { return folded.starts_with(name); });
}

class AmendmentReader {
 public:
  AmendmentReader(std::string_view name, std::string_view text, std::vector<SourceLine> lines)
      : name_{name}, text_{text}, lines_{std::move(lines)} {
    amendment_.name = std::string{name};
    amendment_.piece.name = amendment_.name;
  }

  Loaded<Amendment> read() && {
    read_front();
    read_apart_ = take_letters_from_labels(lines_, made_);
    while (at_ < lines_.size()) {
      if (!take_instruction()) {
        // Anything but an instruction ends what a heading says.
        if (!lines_[at_].text.empty()) around_ = {};
        section_.push_back(lines_[at_++]);
      }
    }
    close_section();
    report_kept();
    Loaded<Amendment> loaded;
    if (amendment_.instructions.empty() && amendment_.not_understood.empty()) {
      findings_ = {nothing_found()};
    } else {
      loaded.value = std::move(amendment_);
    }
    sort_findings(findings_);
    loaded.findings = std::move(findings_);
    return loaded;
  }

 private:
  struct Taken {
    std::vector<InstructionReading> readings;
    std::size_t lines{};
    std::string printed;
    std::optional<SourceLine> lead{};  // begins behind the instruction's colon, in its last line
    std::string label{};               // of that lead, where the instruction's words alone bear it
  };

  void read_front() {
    std::size_t end = 0;
    while (end < lines_.size()) {
      auto const& line = lines_[end];
      auto const label = read_label(line.text);
      if (label && !label->is_dash()) break;
      if (!line.text.empty() && !is_front_line(line.text) && recognise(end)) break;
      ++end;
    }
    at_ = read_front_matter(lines_, end, amendment_.piece, findings_).size();
  }

  // --- instructions ----------------------------------------------------------------------------

  [[nodiscard]] std::optional<Taken> recognise(std::size_t i) const {
    auto const& line = lines_[i];
    if (auto taken = before_words(i)) return taken;
    if (has_led_end(line.text, Numbering{})) return before_lead(i);
    if (auto const label = read_label(line.text)) return in_list(i, *label);
    if (auto taken = before_lead(i)) return taken;
    return over_lines(i, 0, around_);
  }

  // "8b: for 9 read 10"; "3. Delete couplet 9": a number before an instruction is what it is about
  // unless it says so itself.
  [[nodiscard]] std::optional<Taken> in_list(std::size_t i, Label const& label) const {
    if (begins_with_page(lines_[i].text)) return over_lines(i, 0, {});
    auto const words = lines_[i].text.substr(label.text_at);
    if (!may_begin_instruction(words)) {
      // "12–14 are replaced by", "7b should read": the number begins the sentence.
      return label.end == LabelEnd::none && label.back.empty() ? over_lines(i, 0, {})
                                                               : std::nullopt;
    }
    AmendmentTarget around;
    if (!label.is_dash()) around.label = std::string{label.printed};
    return over_lines(i, label.text_at, label.is_dash() ? around_ : around);
  }

  // As few lines as make an instruction, and as many as its sentence has.
  [[nodiscard]] std::optional<Taken> over_lines(std::size_t i, std::size_t from,
                                                AmendmentTarget const& around) const {
    std::string words;
    std::optional<Taken> taken;
    for (std::size_t n = 0; n < kMostLinesOfInstruction && i + n < lines_.size(); ++n) {
      auto const& line = lines_[i + n];
      if (line.text.empty()) break;
      if (n > 0 && (begins_lead(line) || ends_sentence(words))) break;
      if (n > 0 && !taken && !speaks_of_keys(words)) break;  // a heading above it
      if (taken && may_begin_instruction(line.text) && !read_instructions(line.text, {}).empty()) {
        break;  // the next one
      }
      words += (words.empty() ? "" : " ") + std::string{line.text.substr(n == 0 ? from : 0)};
      auto readings = read_instructions(words, around);
      if (readings.empty()) continue;
      taken = Taken{std::move(readings), n + 1, squeeze(words), std::nullopt};
    }
    return taken;
  }

  // Does any word belong to an instruction: a verb, "couplet", "for"?
  [[nodiscard]] static bool speaks_of_keys(std::string_view words) {
    auto const tokens = read_words(start_of(words, kBytesLookedAt));
    return std::any_of(tokens.begin(), tokens.end(), [](Token const& token) {
      return token.sense >= Sense::couplet && token.sense <= Sense::instead;
    });
  }

  // "p. 12, couplet 3" is no lead p.
  [[nodiscard]] static bool begins_with_page(std::string_view line) {
    auto const words = read_words(start_of(line, kPieceBytesShown));
    return words.size() > 1 && words[0].sense == Sense::page && words[1].sense == Sense::label;
  }

  [[nodiscard]] static bool begins_lead(SourceLine const& line) {
    auto const label = read_label(line.text);
    if (!label) return false;
    return label->is_dash() || starts_with_upper(line.text.substr(label->text_at));
  }
  [[nodiscard]] static bool ends_sentence(std::string_view words) {
    words = trim_right(words);
    return words.ends_with('.') || words.ends_with(':') || words.ends_with(';');
  }

  // "Couplet 7 should read: 7. Wings pale ..... 8".
  [[nodiscard]] std::optional<Taken> before_lead(std::size_t i) const {
    auto const& line = lines_[i];
    for (auto colon = line.text.find(':'); colon != std::string_view::npos;
         colon = line.text.find(':', colon + 1)) {
      auto const begin = skip_blanks(line.text, colon + 1);
      auto const rest = line.text.substr(begin);
      auto const label = read_label(rest);
      if (!label || label->is_dash() || !starts_with_upper(rest.substr(label->text_at))) continue;
      auto const words = line.text.substr(0, colon + 1);
      auto readings = read_instructions(words, {});
      if (readings.empty() || couplets_of(readings.back().step) == nullptr) return std::nullopt;
      SourceLine lead = line;
      lead.text = rest;
      lead.begin += begin;
      lead.blanks += count_code_points(line.text.substr(0, begin));
      return Taken{std::move(readings), 1, squeeze(words), lead};
    }
    return std::nullopt;
  }

  // "3b should read: Wings dark ..... 4", "Lead 3b: Wings dark ..... 4": the lead's number stands
  // in the words that ask for it only.
  [[nodiscard]] std::optional<Taken> before_words(std::size_t i) const {
    auto const& line = lines_[i];
    auto const end = words_before_lead(line.text);
    if (end == 0) return std::nullopt;
    auto const begin = skip_blanks(line.text, end);
    auto const rest = line.text.substr(begin);
    if (!starts_with_upper(rest)) return std::nullopt;
    // "Lead 2 of couplet 4 should read 'Eyes whitish'.": the marks are no part of the lead.
    auto const tokens = read_words(start_of(rest, kBytesLookedAt));
    if (!tokens.empty() && tokens.front().sense == Sense::quote) return std::nullopt;
    if (!is_led_on(i) && (line.text[end - 1] != ':' || asks_for_more(rest))) return std::nullopt;
    auto const words = trim_right(line.text.substr(0, end));
    auto readings = read_instructions(words, {});
    if (readings.size() != 1) return std::nullopt;
    std::string label;
    if (auto const& heading = readings[0].heading) {
      if (!is_led_on(i)) return std::nullopt;  // "Couplet 3: Aus bus should read Aus cus"
      label = heading->label;
      if (heading->lead)
        label += static_cast<char>('a' + std::min<std::uint32_t>(*heading->lead, 25));
    } else if (auto const* step = std::get_if<ReplaceCouplets>(&readings[0].step)) {
      if (step->labels.size() == 1 && step->labels[0].first == step->labels[0].last) {
        label = step->labels[0].first;
      }
    }
    if (label.empty() || label.size() + 2 > begin) return std::nullopt;
    // The number of the couplet is not enough, unless its other lead is printed as well.
    bool const whole = i + 1 < lines_.size() && begins_lead(lines_[i + 1]);
    if (is_digit(static_cast<unsigned char>(label.back())) && !whole) {
      return Taken{{{PlaceByNumber{}, {}, true}}, 1, squeeze(line.text)};
    }
    SourceLine lead = line;
    lead.text = rest;
    lead.begin += begin;
    lead.blanks += count_code_points(line.text.substr(0, begin));
    return Taken{
        {{ReplaceCouplets{{{label, label, false}}, {}}, {}}}, 1, squeeze(words), lead, label};
  }

  // "Aus bus for Aus cus", "Eyes small, and 2b: …": more than the words of a lead.
  [[nodiscard]] static bool asks_for_more(std::string_view words) {
    auto const tokens = read_words(start_of(words, kBytesLookedAt));
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      auto const sense = tokens[i].sense;
      bool const heads = i > 0 && sense == Sense::colon && tokens[i - 1].sense == Sense::label;
      bool const verb = sense >= Sense::replace && sense <= Sense::change;
      if (heads || verb || sense == Sense::quote || sense == Sense::instead) return true;
    }
    return false;
  }

  // Does a lead that has begun at the line end with leaders and a destination?
  [[nodiscard]] bool is_led_on(std::size_t i) const {
    for (std::size_t n = 0; n < kMostLinesOfInstruction && i + n < lines_.size(); ++n) {
      auto const& line = lines_[i + n];
      if (line.text.empty() || (n > 0 && begins_lead(line))) return false;
      if (has_led_end(line.text, Numbering{})) return true;
    }
    return false;
  }

  // As though the number stood before the words; their places in the source stay.
  [[nodiscard]] SourceLine with_label(SourceLine lead, std::string const& label) {
    made_.push_back(label + ". " + std::string{lead.text});
    auto const shift = label.size() + 2;
    lead.begin -= shift;
    lead.blanks -= static_cast<std::uint32_t>(std::min<std::size_t>(shift, lead.blanks));
    lead.text = made_.back();
    return lead;
  }

  bool take_instruction() {
    if (lines_[at_].text.empty()) return false;
    auto taken = recognise(at_);
    if (!taken) return false;
    close_section();
    auto const& first = lines_[at_];
    auto const& last = lines_[at_ + taken->lines - 1];
    auto const end = taken->lead ? trim_right(text_.substr(0, taken->lead->begin)).size()
                                 : last.begin + last.text.size();
    auto const place = place_in(first, first.begin, end);
    open_ = false;
    for (auto& reading : taken->readings) {
      if (reading.unread) {
        report_unread(place, taken->printed);
        continue;
      }
      open_ = !reading.heading && couplets_of(reading.step) != nullptr;
      if (reading.heading) {
        around_ = *reading.heading;
        continue;
      }
      // Further lines of an erratum speak of the couplet that its heading names.
      bool const erratum = std::holds_alternative<ChangeWords>(reading.step) ||
                           std::holds_alternative<RedirectLead>(reading.step) ||
                           std::holds_alternative<AddToCouplet>(reading.step);
      if (!erratum) around_ = {};
      amendment_.instructions.push_back({std::move(reading.step), taken->printed, place});
    }
    at_ += taken->lines;
    if (taken->lead) {
      section_.push_back(taken->label.empty() ? *taken->lead
                                              : with_label(*taken->lead, taken->label));
    }
    return true;
  }

  // --- what stands between instructions --------------------------------------------------------

  // Couplets that are to be read apart from those before them.
  [[nodiscard]] std::vector<std::vector<SourceLine>> parts_of(std::vector<SourceLine> lines) const {
    std::vector<std::vector<SourceLine>> parts(1);
    for (auto& line : lines) {
      bool const apart = std::binary_search(read_apart_.begin(), read_apart_.end(), line.begin);
      if (apart && !parts.back().empty()) parts.emplace_back();
      parts.back().push_back(std::move(line));
    }
    return parts;
  }

  std::vector<CoupletId> read_part(std::vector<SourceLine> lines) {
    std::vector<Finding> found;
    auto fragment = read_fragment(name_, text_, std::move(lines), found);
    for (auto& finding : found) {
      // Stray text is told as kept text, with what stands outside couplets altogether.  Which
      // genus is meant is told when the edition is known.
      bool const later = finding.code == "stray-text" || finding.code == "expanded-name" ||
                         finding.code == "ambiguous-abbreviation";
      if (!later) findings_.push_back(std::move(finding));
    }
    std::move(fragment.notes.begin(), fragment.notes.end(), std::back_inserter(amendment_.kept));
    return append_fragment(amendment_.piece, std::move(fragment));
  }

  void close_section() {
    auto lines = std::exchange(section_, {});
    bool const wanted = std::exchange(open_, false);
    bool const empty = std::all_of(lines.begin(), lines.end(),
                                   [](SourceLine const& line) { return line.text.empty(); });
    std::vector<CoupletId> couplets;
    if (!empty) {
      for (auto& part : parts_of(std::move(lines))) {
        auto ids = read_part(std::move(part));
        couplets.insert(couplets.end(), ids.begin(), ids.end());
      }
    }
    if (wanted) {
      auto& instruction = amendment_.instructions.back();
      bool const heading = std::holds_alternative<PlaceByNumber>(instruction.step);
      auto const* addition = std::get_if<AddToCouplet>(&instruction.step);
      bool const says_words = addition != nullptr && !addition->words.empty();
      if (couplets.empty() && !says_words) {
        if (heading) {
          amendment_.kept.push_back({instruction.printed, instruction.place});
        } else {
          report_without_couplets(instruction);
        }
        amendment_.instructions.pop_back();
      } else {
        *couplets_of(instruction.step) = std::move(couplets);
      }
    } else if (!couplets.empty()) {
      auto const place = amendment_.piece[couplets.front()].place;
      amendment_.instructions.push_back({PlaceByNumber{std::move(couplets)}, {}, place});
    }
  }

  // --- findings --------------------------------------------------------------------------------

  [[nodiscard]] Finding finding(std::string code, Severity severity, Place const& place,
                                std::string_view printed, std::string message,
                                std::string remedy) const {
    auto const shown = start_of(printed, kPieceBytesShown);
    return {.code = std::move(code),
            .severity = severity,
            .file = amendment_.name,
            .place = place,
            .printed = std::string{shown} + (shown.size() < printed.size() ? "…" : ""),
            .message = std::move(message),
            .remedy = std::move(remedy),
            .related = {}};
  }

  void report_without_couplets(AmendmentInstruction const& instruction) {
    amendment_.not_understood.push_back(
        finding("instruction-without-couplets", Severity::error, instruction.place,
                instruction.printed, "no couplet stands below this instruction",
                "print the couplets that it speaks of directly below it"));
  }

  void report_unread(Place const& place, std::string_view printed) {
    amendment_.not_understood.push_back(finding(
        "unread-instruction", Severity::error, place, printed,
        "this seems to ask for a change of the key, but was not understood",
        "say it as in \"Delete couplet 9\" or \"Couplet 8b: for 9 read 10\", one change a line"));
  }

  // Does any line there end with leaders and a destination?
  [[nodiscard]] bool has_led_line(Place const& place) const {
    return std::any_of(lines_.begin(), lines_.end(), [&](SourceLine const& line) {
      return line.begin >= place.begin && line.begin < place.end &&
             has_led_end(line.text, Numbering{});
    });
  }

  void report_kept() {
    auto& kept = amendment_.kept;
    std::stable_sort(kept.begin(), kept.end(),
                     [](Note const& a, Note const& b) { return a.place.begin < b.place.begin; });
    std::vector<Note const*> harmless;
    for (auto const& note : kept) {
      if (seems_to_instruct(note.text)) {
        report_unread(note.place, note.text);
      } else if (has_led_line(note.place)) {
        amendment_.not_understood.push_back(
            finding("unplaced-lead", Severity::error, note.place, note.text,
                    "this looks like a lead, and it is not known where it belongs",
                    "print the lead with its number: \"8b. Wings dark ..... 9\""));
      } else {
        harmless.push_back(&note);
      }
    }
    if (harmless.empty()) return;
    auto said =
        finding("kept-text", Severity::information, harmless.front()->place, harmless.front()->text,
                "this is neither couplet nor instruction; nothing was done with it", "");
    for (std::size_t i = 1; i < std::min(harmless.size(), kMaximumRelatedPlaces + 1); ++i) {
      said.related.push_back({harmless[i]->place, "nothing was done with this either"});
    }
    findings_.push_back(std::move(said));
  }

  [[nodiscard]] Finding nothing_found() const {
    auto const first = std::find_if(lines_.begin(), lines_.end(),
                                    [](SourceLine const& line) { return !line.text.empty(); });
    Place place;
    std::string_view printed;
    if (first != lines_.end()) {
      place = place_in(*first, first->begin, first->begin + first->text.size());
      printed = first->text;
    }
    return finding("no-amendment", Severity::error, place, printed,
                   "neither a couplet nor an instruction was found",
                   "write couplets with their numbers, or lines such as \"Delete couplet 9\" and "
                   "\"Couplet 8b: for 9 read 10\"");
  }

  std::string_view name_;
  std::string_view text_;
  std::vector<SourceLine> lines_;
  Amendment amendment_;
  std::vector<Finding> findings_;
  std::size_t at_{};
  std::vector<std::size_t> read_apart_;
  std::deque<std::string> made_;     // texts of lines that are not as printed
  std::vector<SourceLine> section_;  // lines since the last instruction
  bool open_{false};                 // the last instruction waits for couplets
  AmendmentTarget around_;           // "Couplet 8:" on a line of its own
};

Loaded<Amendment> read_piece_text(std::string_view name, std::string_view text,
                                  std::vector<LineAccount> const& origin,
                                  ReadLimits const& limits) {
  auto lines = split_lines(text);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].text.size() > limits.line_bytes) {
      Finding finding;
      finding.code = "line-too-long";
      finding.file = std::string{name};
      finding.place = place_in(lines[i], lines[i].begin, lines[i].begin);
      finding.message = "this line has " + std::to_string(lines[i].text.size()) +
                        " bytes, more than the limit of " + std::to_string(limits.line_bytes);
      finding.remedy = "break the piece into lines, one lead each, or allow more with " +
                       to_lift(limits, ReadLimit::line, lines[i].text.size());
      Loaded<Amendment> refused;
      refused.findings.push_back(std::move(finding));
      return refused;
    }
    // Lines of a manuscript are known by its paragraphs.
    if (origin.size() == lines.size()) lines[i].number = origin[i].line;
  }
  return AmendmentReader{name, text, std::move(lines)}.read();
}

Loaded<Amendment> read_lines(std::string_view name, std::vector<ManuscriptLine> const& lines,
                             ReadLimits const& limits) {
  std::string text;
  std::vector<LineAccount> origin;
  for (auto const& line : lines) {
    for (char const c : line.text) text += c == '\n' || c == '\r' ? ' ' : c;
    text += '\n';
    origin.push_back({line.number, LineKind::skipped, ""});
  }
  return read_piece_text(name, text, origin, limits);
}

// JSON says itself what is a couplet; what each does follows from its number.
Loaded<Amendment> from_edition(Edition edition, std::vector<Finding> findings) {
  Loaded<Amendment> loaded;
  loaded.findings = std::move(findings);
  Amendment amendment;
  amendment.name = edition.name;
  PlaceByNumber step;
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) step.couplets.push_back({c});
  amendment.kept = std::exchange(edition.notes, {});
  auto const place = edition.couplets.empty() ? Place{} : edition.couplets.front().place;
  amendment.piece = std::move(edition);
  amendment.instructions.push_back({std::move(step), {}, place});
  loaded.value = std::move(amendment);
  return loaded;
}

}  // namespace
}  // namespace printed

Loaded<Amendment> read_amendment(Source source, ReadLimits const& limits) {
  using namespace printed;
  Loaded<Amendment> loaded;
  std::vector<Finding> found;
  auto const kind = file_kind(source.bytes);
  if (kind == FileKind::text || kind == FileKind::empty) {
    auto decoded = decode_text(source, {.maximum_bytes = limits.bytes});
    found = std::move(decoded.findings);
    if (decoded) loaded = read_piece_text(decoded.value->name, decoded.value->text, {}, limits);
  } else if (kind == FileKind::word_2007) {
    // A piece may hold instructions only, which no reader of keys takes.
    auto lines = read_docx_lines(source, limits);
    found = std::move(lines.findings);
    if (lines) loaded = read_lines(source.name, *lines.value, limits);
  } else {
    auto reading = read_edition(source, limits);
    if (!reading) {
      loaded.findings = std::move(reading.findings);
      return loaded;
    }
    auto const& from = reading.value->source;
    if (!from) return from_edition(std::move(reading.value->edition), std::move(reading.findings));
    loaded = read_piece_text(reading.value->edition.name, from->text, from->lines, limits);
  }
  loaded.findings.insert(loaded.findings.begin(), found.begin(), found.end());
  sort_findings(loaded.findings);
  return loaded;
}

}  // namespace keydrift
