#include "keydrift/formats/printed_names_above_remarks.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostLeadLines = 8;    // between a label and the name
constexpr std::size_t kMostRemarkLines = 6;  // beneath a name

// A genus in full or short, an epithet, authors, the page where it was published: no other words.
bool is_species_alone(std::string_view text) {
  if (has_row_of_dots(text) || text.ends_with('-')) return false;
  auto const words = words_of(text, 3);
  bool const binomial = words.size() > 1 && is_capitalised(words[0]) &&
                        (is_abbreviated(words[0]) || has_latin_ending(words[0])) &&
                        is_latin_epithet(without_end(words[1]));
  return binomial && (is_latin_name(text) || is_name_with_page(text));
}

bool bears_label(SourceLine const& line) {
  if (line.told) return true;
  auto const label = read_label(line.text);
  if (!label || label->text_at >= line.text.size()) return false;
  return label->is_dash() || label->family == LabelFamily::digits || label->end != LabelEnd::none;
}

// The text ends as a lead does: in leaders' end, a number, or words that hang on.
bool ends_as_lead(std::string_view text) {
  return has_row_of_dots(text) || is_digit(code_point_before(text, text.size()).value);
}

class NamesAboveRemarks {
 public:
  explicit NamesAboveRemarks(std::vector<SourceLine> const& lines) : lines_{lines} {}

  // How many lines of remarks stand beneath the name on line i; none where it is no such name.
  [[nodiscard]] std::optional<std::size_t> remarks_beneath(std::size_t i) const {
    if (!is_name(i) || !(stands_in_lead(i) || stands_in_second_lead(i))) return std::nullopt;
    std::size_t count = 0;
    for (auto at = i + 1; at < lines_.size() && !lines_[at].text.empty(); ++at) {
      // Set further out than the name: a second lead without a label.
      if (bears_label(lines_[at]) || lines_[at].indent < lines_[i].indent) break;
      if (++count > kMostRemarkLines) return std::nullopt;
      // The second lead of a couplet that labels only its first, or its end.
      if (ends_as_lead(lines_[at].text) || is_species_alone(lines_[at].text)) return std::nullopt;
    }
    if (count > 0 && !begins_remark(lines_[i + 1].text)) return std::nullopt;
    return count;
  }

 private:
  [[nodiscard]] bool is_name(std::size_t i) const {
    auto const& line = lines_[i];
    return !line.text.empty() && !line.is_no_lead && !line.told &&
           line.markup.role == LineRole::told_by_text &&
           line.markup.destination_begin == kNotTold && is_species_alone(line.text);
  }

  // A label stands above, no blank line between, and the words have no end yet.
  [[nodiscard]] bool stands_in_lead(std::size_t i) const {
    for (std::size_t up = 1; up <= kMostLeadLines && up <= i; ++up) {
      auto const& above = lines_[i - up];
      if (above.text.empty() || above.is_title || above.is_no_lead) return false;
      if (has_row_of_dots(above.text) || is_species_alone(above.text)) return false;
      if (up == 1 && above.text.ends_with('-')) return false;
      if (bears_label(above)) return lines_[i].indent > above.indent;
    }
    return false;
  }

  // "   Hairs black" / "      Ausella busa Roe": beneath the first lead and its name, which are set
  // likewise; the lead bears no label.
  [[nodiscard]] bool stands_in_second_lead(std::size_t i) const {
    if (i == 0 || lines_[i - 1].text.empty()) return false;
    auto const& lead = lines_[i - 1];
    bool const words = lead.indent < lines_[i].indent && !bears_label(lead) &&
                       !ends_as_lead(lead.text) && !is_species_alone(lead.text) &&
                       is_upper(code_point_at(lead.text, 0).value);
    if (!words) return false;
    for (std::size_t up = 2; up <= kMostLeadLines && up <= i; ++up) {
      auto const& above = lines_[i - up];
      if (above.text.empty() || bears_label(above)) return false;
      bool const name = above.indent == lines_[i].indent && is_species_alone(above.text);
      if (name) return stands_in_lead(i - up);
    }
    return false;
  }

  // "(Orl, 1954)", "& Dorn", "1931, p. 12" go on with the name above.
  [[nodiscard]] static bool begins_remark(std::string_view text) {
    auto const first = code_point_at(text, 0).value;
    return is_upper(first) || first == '[';
  }

  std::vector<SourceLine> const& lines_;
};

}  // namespace

void mark_names_above_remarks(std::vector<SourceLine>& lines) {
  constexpr std::size_t kFewest = 2;  // names that make a habit
  NamesAboveRemarks const names{lines};
  struct Found {
    std::size_t line{};
    std::size_t remarks{};
  };
  std::vector<Found> found;
  std::size_t remarked = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const remarks = names.remarks_beneath(i);
    if (!remarks) continue;
    found.push_back({i, *remarks});
    if (*remarks > 0) ++remarked;
  }
  if (found.size() < kFewest || remarked == 0) return;
  for (auto const& one : found) {
    if (one.remarks == 0) continue;
    lines[one.line].markup.destination_begin = lines[one.line].begin;
    for (auto at = one.line + 1; at <= one.line + one.remarks; ++at) lines[at].is_no_lead = true;
  }
}

}  // namespace keydrift::printed
