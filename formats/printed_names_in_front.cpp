#include "keydrift/formats/printed_names_in_front.hpp"

#include <cstddef>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestNamedInFront = 3;     // leads with a name in front
constexpr std::size_t kMostLinesOfNamedLead = 12;  // of a lead

// "Ausella busa (Roe, 1884)", "* Ausella busa", "Ausella busa n. sp."
bool is_name_alone(std::string_view text) {
  auto const name = text.substr(signs_before_name(text));
  auto const old = without_mark_of_new(name);
  return is_species_alone(name) || (old.size() < name.size() && is_latin_name(old));
}

// The label of a line that holds nothing else but a name.
std::optional<Label> label_before_name(SourceLine const& line) {
  if (line.is_no_lead || line.text.empty()) return std::nullopt;
  auto const label = read_label(line.text);
  bool const named =
      label && label->text_at < line.text.size() && is_name_alone(line.text.substr(label->text_at));
  return named ? label : std::nullopt;
}

// Behind the words of the lead that begins with line i; i + 1 where there are none.
std::size_t end_of_words(std::vector<SourceLine> const& lines, std::size_t i) {
  auto end = i + 1;
  while (end < lines.size() && end - i < kMostLinesOfNamedLead && !lines[end].text.empty()) {
    // "2 articles" of the words stands further in than labels.
    bool const labelled = read_label(lines[end].text) && lines[end].indent <= lines[i].indent;
    if (labelled || starts_note(lines[end].text)) break;
    ++end;
  }
  bool const words =
      end > i + 1 && is_upper(code_point_at(lines[i + 1].text, 0).value) && !lines[i + 1].is_title;
  return words ? end : i + 1;
}

}  // namespace

std::optional<std::vector<SourceLine>> put_names_behind_words(
    std::vector<SourceLine> const& lines) {
  std::vector<SourceLine> put;
  put.reserve(lines.size() * 2);
  std::size_t found = 0;
  for (std::size_t i = 0; i < lines.size();) {
    auto const label = label_before_name(lines[i]);
    auto const end = label ? end_of_words(lines, i) : i + 1;
    if (end == i + 1) {
      put.push_back(lines[i++]);
      continue;
    }
    auto const& line = lines[i];
    put.push_back(part_of_line(line, 0, label->text_at));
    auto& front = put.back();
    front.told = label;
    front.told->text_at = front.text.size();
    front.told_as_printed = true;
    put.insert(put.end(), lines.begin() + static_cast<std::ptrdiff_t>(i + 1),
               lines.begin() + static_cast<std::ptrdiff_t>(end));
    put.push_back(part_of_line(line, label->text_at, line.text.size()));
    put.back().markup.destination_begin = put.back().begin;
    put.back().goes_on = true;
    ++found;
    i = end;
  }
  return found < kFewestNamedInFront ? std::nullopt : std::optional{std::move(put)};
}

}  // namespace keydrift::printed
