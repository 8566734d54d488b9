#include "keydrift/formats/xml_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/shifted_digits.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::xml {
namespace {

using namespace std::string_view_literals;

// Elements that begin and end a line of their own.
constexpr std::array kBlocks{"break"sv,      "p"sv,     "list"sv,    "list-item"sv,  "def-item"sv,
                             "disp-quote"sv, "title"sv, "caption"sv, "verse-line"sv, "tr"sv,
                             "table-wrap"sv, "fig"sv,   "sec"sv,     "attrib"sv,     "row"sv};
// Elements whose words are parted from what follows, on the same line.
constexpr std::array kParted{"label"sv, "term"sv, "def"sv, "td"sv, "th"sv, "entry"sv};
constexpr std::array kUnprinted{"object-id"sv,    "tex-math"sv,   "graphic"sv,  "inline-graphic"sv,
                                "media"sv,        "index-term"sv, "alt-text"sv, "long-desc"sv,
                                "private-char"sv, "annotation"sv};
constexpr std::array kEmphasis{"bold"sv, "underline"sv, "named-content"sv, "styled-content"sv,
                               "sc"sv};
constexpr std::array kPointers{"xref"sv, "ext-link"sv, "uri"sv};

bool is_digits(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool is_footnote_mark(pugi::xml_node node) {
  std::string_view const type = node.attribute("ref-type").value();
  return local_name(node) == "xref" &&
         (type == "fn" || type == "table-fn" || type == "author-notes");
}

class FlowReader {
 public:
  explicit FlowReader(Document const& document) : document_{document} {}

  Flow read(pugi::xml_node top) && {
    if (local_name(top) == "preformat") verbatim_ = top;
    auto node = top.first_child();
    while (node) {
      if (enter(node) && node.first_child()) {
        node = node.first_child();
        continue;
      }
      leave(node);
      while (node != top && !node.next_sibling()) {
        node = node.parent();
        if (node != top) leave(node);
      }
      node = node == top ? pugi::xml_node{} : node.next_sibling();
    }
    end_line();
    return std::move(flow_);
  }

 private:
  struct Open {
    pugi::xml_node node;
    InlineKind kind;
    std::size_t line;
    std::size_t begin;
  };

  // False: its children are not for this text.
  bool enter(pugi::xml_node node) {
    if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata) {
      add_text(node);
      return false;
    }
    if (node.type() != pugi::node_element) return false;
    auto const name = local_name(node);
    // A picture within a lead's cell or paragraph interrupts its words as little as a footnote
    // does.
    if ((name == "fn" || name == "fig") && !within_footnote_) {
      footnotes_.push_back(node);
      return false;
    }
    // The mark of a footnote stands in neither place once the note is kept apart.
    bool const mark = name == "label" && local_name(node.parent()) == "fn";
    if (mark || is_one_of(kUnprinted, name) || is_footnote_mark(node)) return false;
    // A label stands on the line of the paragraph that it labels.
    if (is_one_of(kBlocks, name) && !std::exchange(after_label_, false)) end_line();
    if ((name == "sup" || name == "sub") && is_digits(node.text().get())) {
      digits_ = name == "sup" ? &kRaisedDigits : &kLoweredDigits;
    }
    raises_letter_ = name == "sup" && !blank_ && may_bear_footnote(line_.text) &&
                     is_letter_of_footnote(node.text().get());
    if (name == "preformat") verbatim_ = node;
    if (name == "taxon-name") {
      open(node, InlineKind::name);
    } else if (name == "italic") {
      open(node, InlineKind::italic);
    } else if (is_one_of(kEmphasis, name)) {
      open(node, InlineKind::emphasis);
    } else if (is_one_of(kPointers, name)) {
      open(node, InlineKind::pointer);
    }
    return true;
  }

  void leave(pugi::xml_node node) {
    if (node.type() != pugi::node_element) return;
    auto const name = local_name(node);
    if (is_one_of(kBlocks, name)) end_line();
    if (is_one_of(kParted, name)) blank_ = true;
    if (name == "taxon-name-part") after_name_part_ = true;
    if (name == "label" || name == "term") after_label_ = true;
    if (name == "sup" || name == "sub") {
      digits_ = nullptr;
      raises_letter_ = false;
    }
    if (node == verbatim_) verbatim_ = {};
    if (!open_.empty() && open_.back().node == node) {
      auto const mark = open_.back();
      open_.pop_back();
      if (mark.line == flow_.lines.size() && mark.begin < line_.text.size()) {
        // The blank before the first word was not yet set when the element began.
        auto const begin = line_.text[mark.begin] == ' ' ? mark.begin + 1 : mark.begin;
        line_.marks.push_back({mark.kind, begin, line_.text.size()});
      }
    }
  }

  [[nodiscard]] static bool is_letter_of_footnote(std::string_view text) {
    return text.size() == 1 && may_be_raised(text.front());
  }

  void open(pugi::xml_node node, InlineKind kind) {
    open_.push_back({node, kind, flow_.lines.size(), line_.text.size()});
  }

  void end_line() {
    while (!line_.text.empty() && line_.text.back() == ' ') line_.text.pop_back();
    if (!line_.empty()) flow_.lines.push_back(std::exchange(line_, {}));
    line_ = {};
    blank_ = false;
    after_name_part_ = false;
    after_label_ = false;
    for (auto node : std::exchange(footnotes_, {})) {
      auto footnote = FlowReader{document_, true}.read(node).joined();
      if (!footnote.empty()) flow_.footnotes.push_back(std::move(footnote));
    }
  }

  FlowReader(Document const& document, bool) : document_{document}, within_footnote_{true} {}

  // A reference that every XML reader puts the character for.
  [[nodiscard]] static bool is_resolved(std::string_view reference) {
    static constexpr std::array kResolved{"&#"sv,   "&amp;"sv,  "&lt;"sv,
                                          "&gt;"sv, "&quot;"sv, "&apos;"sv};
    return std::any_of(kResolved.begin(), kResolved.end(),
                       [&](auto one) { return reference.starts_with(one); });
  }

  // Stands right behind the word before it.
  [[nodiscard]] static bool closes(char c) {
    return std::string_view{")].,;:"}.find(c) != std::string_view::npos;
  }

  void add_text(pugi::xml_node node) {
    std::string_view value = node.value();
    std::string_view const source = document_.text();
    bool const references = node.type() == pugi::node_pcdata;
    auto at = document_.offset(node);
    while (!value.empty() && at < source.size()) {
      // Those that a DTD would declare stand in the value as they are written.
      if (references && value.front() == '&' && source[at] == '&' &&
          !is_resolved(source.substr(at))) {
        auto const named = hypertext::reference_at(source.substr(at));
        if (named.length > 0 && value.substr(0, named.length) == source.substr(at, named.length)) {
          add_character(named.character, at);
          at += named.length;
          expected_ = at;
          broken_ = true;
          value.remove_prefix(named.length);
          continue;
        }
      }
      // Characters of the value, each beside the source's bytes that it was written as.
      auto length = std::size_t{1};
      while (length < value.size() && (static_cast<unsigned char>(value[length]) & 0xC0U) == 0x80) {
        ++length;
      }
      auto written = length;
      // A reference that is not known stands in the value as it was written.
      if (references && source[at] == '&' &&
          (value.front() != '&' || source.substr(at, 2) == "&#" ||
           source.substr(at, 5) == "&amp;")) {
        written = source.find(';', at) + 1 - at;
      }
      add_character(value.substr(0, length), at);
      expected_ = at + written;
      broken_ = broken_ || written != length;
      at += written;
      value.remove_prefix(length);
    }
  }

  void add_character(std::string_view c, std::size_t at) {
    char const first = c.front();
    if (verbatim_ && first == '\n') {
      end_line();
      return;
    }
    if (first == '\n' || (!verbatim_ && (first == ' ' || first == '\t' || first == '\r'))) {
      broken_ = broken_ || blank_ || first == '\n' || at != expected_;
      blank_ = true;
      return;
    }
    // Parts of a name are words, but "(<subgenus>Neaus</subgenus>)" has no blank within it.
    blank_ = blank_ || (after_name_part_ && !closes(first));
    after_name_part_ = false;
    if (blank_ && !line_.empty() && line_.text.back() != ' ') line_.text += ' ';
    blank_ = false;
    after_label_ = false;
    if (std::exchange(broken_, false) || at != expected_ || line_.empty()) {
      auto const place = document_.place(at, at);
      line_.stretches.push_back({line_.text.size(), place.line, place.column});
    }
    if (digits_ != nullptr && first >= '0' && first <= '9') {
      line_.text += (*digits_)[static_cast<std::size_t>(first - '0')];
    } else if (raises_letter_ && may_be_raised(first)) {
      line_.text += raised_letter(first);
      broken_ = true;
    } else {
      line_.text += c;
    }
  }

  Document const& document_;
  bool within_footnote_{false};  // whose own footnotes are part of it
  Flow flow_;
  FlowText line_;
  std::vector<Open> open_;
  std::vector<pugi::xml_node> footnotes_;
  pugi::xml_node verbatim_;
  std::array<std::string_view, 10> const* digits_{nullptr};
  bool raises_letter_{false};
  std::size_t expected_{kNotTold};  // where the source goes on if nothing comes between
  bool blank_{false};               // blanks stand before the next character
  bool after_name_part_{false};     // what comes next is another word, unless it closes this one
  bool after_label_{false};
  bool broken_{false};  // it does not stand right behind the last one in the source
};

}  // namespace

void FlowText::append(FlowText const& more, std::string_view joint) {
  if (more.empty()) return;
  if (!empty()) text += joint;
  auto const shift = text.size();
  text += more.text;
  for (auto stretch : more.stretches) {
    stretch.text_begin += shift;
    stretches.push_back(stretch);
  }
  for (auto mark : more.marks) {
    mark.begin += shift;
    mark.end += shift;
    marks.push_back(mark);
  }
}

void FlowText::drop_front(std::size_t count) {
  count = std::min(count, text.size());
  ManuscriptStretch cut{};
  bool any = false;
  std::vector<ManuscriptStretch> kept;
  for (auto const& stretch : stretches) {
    if (stretch.text_begin <= count) {
      cut = stretch;
      any = true;
    } else {
      kept.push_back({stretch.text_begin - count, stretch.number, stretch.column});
    }
  }
  if (any) {
    auto const passed = std::string_view{text}.substr(cut.text_begin, count - cut.text_begin);
    kept.insert(kept.begin(), {0, cut.number, cut.column + count_code_points(passed)});
  }
  stretches = std::move(kept);
  text.erase(0, count);
  std::erase_if(marks, [&](InlineMark const& mark) { return mark.end <= count; });
  for (auto& mark : marks) {
    mark.begin = mark.begin > count ? mark.begin - count : 0;
    mark.end -= count;
  }
}

FlowText Flow::joined() const {
  FlowText whole;
  for (auto const& line : lines) whole.append(line, " ");
  return whole;
}

Flow read_flow(Document const& document, pugi::xml_node element) {
  return FlowReader{document}.read(element);
}

}  // namespace keydrift::xml
