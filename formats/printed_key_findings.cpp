#include "keydrift/formats/printed_key_findings.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/related_places.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift::printed {
namespace {

using tables::counted;

constexpr std::size_t kMostUnevenShown = 6;
constexpr std::size_t kMostLoneShown = 20;  // leads without rivals that a refusal shows

constexpr char const* kExample =
    "write couplets as in \"1. Leaves opposite ..... 2\" and, on the next line, \"– Leaves "
    "alternate ..... Aus bus\"";

Finding refusal(std::string_view file, std::string code, std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = Severity::error;
  finding.file = std::string{file};
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

std::string quoted_start(std::string_view line) {
  constexpr std::size_t kShown = 60;
  auto const shown = start_of(line, kShown);
  return std::string{shown} + (shown.size() < line.size() ? "…" : "");
}

// The leads that are alone in their couplet, in printed order.
std::vector<std::uint32_t> lone_leads(Grouping const& grouping) {
  std::vector<std::uint32_t> lone;
  for (auto const& couplet : grouping.couplets) {
    if (couplet.member_count == 1) lone.push_back(grouping.members[couplet.first_member]);
  }
  std::sort(lone.begin(), lone.end());
  return lone;
}

}  // namespace

Finding scan_mended(std::string_view file, std::size_t count, char const* code,
                    char const* message) {
  auto finding = refusal(file, code, std::to_string(count) + message,
                         "see with --explain whether the lines are taken for what they are");
  finding.severity = Severity::information;
  return finding;
}

Finding emphasis_taken_off(std::string_view file, std::size_t passages) {
  auto finding =
      refusal(file, "emphasis-marks",
              std::to_string(passages) +
                  " passages between \"*\", \"_\" or \"=\" were taken for emphasised words; "
                  "the signs were left out",
              "take the signs out of the text if columns have to be exact");
  finding.severity = Severity::information;
  return finding;
}

Finding links_taken_off(std::string_view file, std::size_t links) {
  auto finding = refusal(file, "link-addresses",
                         counted(links, "address", "addresses") +
                             " behind words in brackets, \"[words](address)\", " +
                             (links == 1 ? "was" : "were") + " taken for links and left out",
                         "take the addresses out of the text if columns have to be exact");
  finding.severity = Severity::information;
  return finding;
}

Finding full_width_narrowed(std::string_view file, std::size_t characters) {
  auto finding = refusal(
      file, "full-width",
      std::to_string(characters) + " full-width digits, letters and signs were read as plain ones",
      "write plain ones if the words have to be exact");
  finding.severity = Severity::information;
  return finding;
}

Finding indentation_lost(std::string_view file, SourceLine const& first) {
  auto finding = refusal(file, "indentation-lost",
                         "no labels and no indentation tell which leads are rivals; behind a lead "
                         "with its destination the innermost lead without rival was taken to be "
                         "answered, or one that begins with the same word",
                         "compare each couplet with the print, or indent the leads as it does");
  finding.severity = Severity::warning;
  finding.place = place_in(first, first.begin, first.begin + first.text.size());
  finding.printed = quoted_start(first.text);
  return finding;
}

Finding indentation_uneven(std::string_view file, std::vector<SourceLine> const& lines,
                           SortedLines const& sorted, Grouping const& grouping) {
  auto const& leads = grouping.set_otherwise;
  auto const homes = homes_of(grouping, sorted.leads.size());
  auto const line_of = [&](std::uint32_t lead) -> SourceLine const& {
    return lines[sorted.leads[lead].line];
  };
  auto const place_of = [](SourceLine const& line) {
    return place_in(line, line.begin, line.begin + line.text.size());
  };
  auto finding =
      refusal(file, "uneven-indentation",
              std::to_string(leads.size()) + (leads.size() == 1 ? " lead was" : " leads were") +
                  " taken to belong where the ends of leads tell, not where indentation alone does",
              "compare these couplets with the print, or indent their leads alike");
  finding.severity = Severity::warning;
  finding.place = place_of(line_of(leads.front()));
  finding.printed = quoted_start(line_of(leads.front()).text);
  for (std::size_t i = 0; i < std::min(leads.size(), kMostUnevenShown); ++i) {
    auto const& line = line_of(leads[i]);
    auto const first = grouping.members[grouping.couplets[homes[leads[i]]].first_member];
    auto message =
        "set in by " + std::to_string(line.indent) + (line.indent == 1 ? " column" : " columns");
    message += first == leads[i] ? std::string{", the first of a couplet"}
                                 : "; it answers line " + std::to_string(line_of(first).number) +
                                       ", set in by " + std::to_string(line_of(first).indent);
    finding.related.push_back({place_of(line), std::move(message)});
  }
  return finding;
}

Finding column_of_destinations(std::string_view file) {
  auto finding = refusal(file, "destination-column",
                         "destinations stood in a column of their own behind leads without one; "
                         "they were put behind these leads in printed order",
                         "see with --explain whether each lead has its own");
  finding.severity = Severity::warning;
  return finding;
}

Finding braces_taken(std::string_view file, std::size_t couplets) {
  auto finding = refusal(
      file, "braces",
      std::to_string(couplets) +
          " couplets were read from braces at the margin; what stands for the braces was left out",
      "see with --explain whether each lead begins where it should");
  finding.severity = Severity::information;
  return finding;
}

// No lead has a rival, or none leads anywhere: says where pairing fails first.
Finding no_couplets(DecodedText const& decoded, std::vector<SourceLine> const& lines,
                    SortedLines const& sorted, Grouping const& grouping, bool leads_nowhere) {
  auto finding = refusal(decoded.name, "no-couplets", "no couplet was found", kExample);
  if (sorted.leads.empty()) {
    auto const first = std::find_if(lines.begin(), lines.end(),
                                    [](SourceLine const& line) { return !line.text.empty(); });
    if (first != lines.end()) {
      finding.place = place_in(*first, first->begin, first->begin + first->text.size());
      finding.printed = quoted_start(first->text);
    }
    finding.message += ": no line begins with a couplet's number";
    return finding;
  }
  auto const lone = leads_nowhere ? std::vector<std::uint32_t>{} : lone_leads(grouping);
  auto const first_lone = lone.empty() ? 0U : lone.front();
  auto const& lead = sorted.leads[first_lone];
  auto const& line = lines[lead.line];
  finding.place = place_in(line, line.begin, line.begin + line.text.size());
  finding.printed = quoted_start(line.text);
  if (lone.empty()) {
    finding.message += leads_nowhere ? ": no lead ends in a couplet's number or a name"
                                     : ": too few leads have a rival and lead somewhere";
    return finding;
  }
  finding.message += ": \"" + std::string{lead.label.printed} + "\" has no second lead";
  if (first_lone + 1 < sorted.leads.size()) {
    auto const& next = sorted.leads[first_lone + 1];
    finding.message += "; line " + std::to_string(lines[next.line].number) + " begins with \"" +
                       std::string{next.label.printed} + "\"";
  }
  for (std::size_t i = 1; i < std::min(lone.size(), kMostLoneShown + 1); ++i) {
    auto const& other = sorted.leads[lone[i]];
    auto const& other_line = lines[other.line];
    finding.related.push_back(
        {place_in(other_line, other_line.begin, other_line.begin + other_line.text.size()),
         "\"" + std::string{other.label.printed} + "\" has no second lead either"});
  }
  return finding;
}

std::string describe_layout(Grouping const& grouping, SortedLines const& sorted,
                            std::vector<ReadLead> const& reads, bool cells_are_printed) {
  std::string note;
  switch (grouping.layout) {
    case Layout::parallel:
      note = "parallel layout";
      break;
    case Layout::indented:
      note = "indented layout";
      break;
    case Layout::serial:
      note = "serial layout";
      break;
    case Layout::outline:
      note = "outline, rivals told by their labels";
      break;
    case Layout::by_indentation:
      note = "outline, rivals told by their indentation";
      break;
    case Layout::by_order:
      note = "outline without labels or indentation, rivals told by their order and first words";
      break;
  }
  // The labels of the first couplet with two leads show the numbering.
  for (auto const& couplet : grouping.couplets) {
    if (couplet.member_count < 2) continue;
    auto const shown = [&](std::uint32_t member) {
      auto const& label = sorted.leads[grouping.members[couplet.first_member + member]].label;
      return label.printed.empty() ? std::string{"no label"} : squeeze(label.printed);
    };
    bool const none = shown(0) == shown(1) && shown(0) == "no label";
    if (!none) note += ", leads marked " + shown(0) + " and " + shown(1);
    break;
  }
  std::size_t dots = 0;
  std::size_t cells = 0;
  std::size_t other = 0;
  for (auto const& read : reads) {
    if (read.leaders == LeaderKind::dots) {
      ++dots;
    } else if (read.leaders == LeaderKind::cell) {
      ++cells;
    } else if (read.leaders != LeaderKind::none) {
      ++other;
    }
  }
  if (cells_are_printed && cells > dots + other) {
    note += ", destinations in cells of their own";
  } else {
    note += dots >= other + cells ? ", destinations after dot leaders"
                                  : ", destinations without dot leaders";
  }
  // Numbers that a copy of the text lost leave no label.
  bool const lost = std::any_of(sorted.leads.begin(), sorted.leads.end(), [](RawLead const& lead) {
    return lead.label.family == LabelFamily::digits && lead.label.printed.empty();
  });
  if (grouping.numbered_here || lost) note += "; the couplets' numbers are not printed but counted";
  if (!sorted.names.empty()) note += "; accounts beneath leads are where they lead to";
  if (grouping.goes_on) note += "; a lead without destination goes on with the next lead";
  if (grouping.parts.size() > 1) note += "; " + std::to_string(grouping.parts.size()) + " keys";
  return note;
}

namespace {

// "U+202E"
std::string code_point_name(char32_t c) {
  constexpr std::string_view kHexDigits = "0123456789ABCDEF";
  std::string digits;
  for (; c > 0 || digits.size() < 4; c /= 16) digits.insert(0, 1, kHexDigits[c % 16]);
  return "U+" + digits;
}

// Byte of the first character that is not seen in the text, and none that hyphenation puts there;
// npos without one.
std::size_t find_invisible(std::string_view text) {
  constexpr char32_t kHyphenation = 0xAD;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (c.value != kHyphenation && is_invisible(c.value)) return at;
    at += c.length;
  }
  return std::string_view::npos;
}

}  // namespace

std::optional<Finding> invisible_in_names(KeyText const& key, Edition const& edition) {
  std::vector<Place> places;
  char32_t first = 0;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      auto const& place = lead.destination_place;
      if (!std::holds_alternative<ToTaxa>(lead.destination) || place.end > key.text.size())
        continue;
      auto const printed = key.text.substr(place.begin, place.end - place.begin);
      auto const at = find_invisible(printed);
      if (at == std::string_view::npos) continue;
      if (places.empty()) first = code_point_at(printed, at).value;
      auto found = place;
      found.column += count_code_points(printed.substr(0, at));
      found.begin += at;
      places.push_back(found);
    }
  }
  if (places.empty()) return std::nullopt;
  Finding finding;
  finding.code = "invisible-characters";
  finding.severity = Severity::information;
  finding.file = std::string{key.name};
  finding.place = places.front();
  finding.message = "the invisible character " + code_point_name(first) +
                    " stands in this name, which was read without it";
  if (places.size() > 1) {
    finding.message += std::string{places.size() == 2 ? ", as was " : ", as were "} +
                       counted(places.size() - 1, "further name", "further names");
  }
  finding.remedy = "take such characters out, so that names are found and compared as they look";
  for (std::size_t i = 1; i < std::min(places.size(), kMaximumRelatedPlaces + 1); ++i) {
    finding.related.push_back({places[i], "here too"});
  }
  return finding;
}

}  // namespace keydrift::printed
