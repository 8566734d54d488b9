#include "keydrift/formats/jats_text.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::jats {
namespace {

using namespace marked;
using namespace printed;
using xml::FlowText;

// A list with an item for each couplet, its leads one below the other: the list is numbered where
// it is shown, or each item begins with its number alone.  Nothing for any other list.
std::vector<ManuscriptLine> listed_couplets(xml::Document const& document, pugi::xml_node list) {
  bool const ordered = std::string_view{list.attribute("list-type").value()} == "order";
  if (!ordered && xml::local_name(list) != "list") return {};
  std::vector<ManuscriptLine> lines;
  std::size_t counted = 0;
  for (auto const& item : list.children()) {
    if (xml::local_name(item) != "list-item") continue;
    auto flow = xml::read_flow(document, item);
    FlowText number;
    if (!flow.lines.empty() && is_number_alone(flow.lines.front())) {
      number = std::move(flow.lines.front());
      flow.lines.erase(flow.lines.begin());
    } else if (ordered) {
      number.text = std::to_string(++counted);
    } else {
      return {};
    }
    if (flow.lines.size() < 2) return {};
    for (std::size_t i = 0; i < flow.lines.size(); ++i) {
      auto& words = flow.lines[i];
      auto const label = read_label(words.text);
      if (label && !label->is_dash() && label->family == LabelFamily::digits) return {};
      if (label) words.drop_front(label->text_at);
      auto const end = told_destination(words);
      FlowText whole;
      if (i == 0) {
        whole = std::move(number);
      } else {
        whole.text = "–";
      }
      whole.text += '\t';
      auto const begin = whole.text.size();
      whole.append(words, "");
      auto line = to_line(std::move(whole), LineRole::lead);
      line.markup.words_begin = begin;
      if (end != kNotTold) line.markup.destination_begin = begin + end;
      lines.push_back(std::move(line));
    }
    for (auto& footnote : flow.footnotes) {
      lines.push_back(to_line(std::move(footnote), LineRole::aside));
    }
  }
  return lines;
}

}  // namespace

bool is_number_alone(FlowText const& words) {
  auto const label = read_label(words.text);
  return label && label->family == LabelFamily::digits && !label->decimal &&
         label->text_at >= words.text.size();
}

ManuscriptLine to_line(FlowText&& flow, LineRole role) {
  ManuscriptLine line;
  if (!flow.stretches.empty()) {
    line.number = flow.stretches.front().number;
    line.column = flow.stretches.front().column;
  }
  line.text = std::move(flow.text);
  line.stretches = std::move(flow.stretches);
  line.markup.role = role;
  return line;
}

std::vector<ManuscriptLine> text_lines(xml::Document const& document, pugi::xml_node element) {
  if (auto couplets = listed_couplets(document, element); !couplets.empty()) return couplets;
  auto flow = xml::read_flow(document, element);
  std::vector<ManuscriptLine> lines;
  for (auto& words : flow.lines) {
    auto const begin = told_destination(words);
    auto line = to_line(std::move(words), LineRole::told_by_text);
    line.markup.destination_begin = begin;
    lines.push_back(std::move(line));
  }
  for (auto& footnote : flow.footnotes) {
    lines.push_back(to_line(std::move(footnote), LineRole::aside));
  }
  return lines;
}

std::vector<ManuscriptLine> whole_line(xml::Document const& document, pugi::xml_node element,
                                       LineRole role) {
  auto flow = xml::read_flow(document, element);
  std::vector<ManuscriptLine> lines;
  if (auto words = flow.joined(); !words.empty()) lines.push_back(to_line(std::move(words), role));
  for (auto& footnote : flow.footnotes) {
    lines.push_back(to_line(std::move(footnote), LineRole::aside));
  }
  return lines;
}

}  // namespace keydrift::jats
