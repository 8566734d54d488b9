#pragma once
// Writing HTML with everything foreign escaped.  Internal to reports.

#include <string>
#include <string_view>

namespace keydrift::reports {

// Appends text; &, <, >, " and ' become character references, control characters U+FFFD.
void append_escaped(std::string& out, std::string_view text);
[[nodiscard]] std::string escaped(std::string_view text);

class HtmlWriter {
 public:
  // Markup of our own; never with foreign text in it.
  HtmlWriter& raw(std::string_view markup) {
    out_ += markup;
    return *this;
  }
  HtmlWriter& text(std::string_view foreign) {
    append_escaped(out_, foreign);
    return *this;
  }
  // <tag attributes>text</tag>
  HtmlWriter& element(std::string_view tag, std::string_view foreign,
                      std::string_view attributes = {});
  // A section with its heading; `id` is where the table of contents points.
  HtmlWriter& open_section(std::string_view id, std::string_view heading);
  HtmlWriter& close_section();

  [[nodiscard]] std::string take() && { return std::move(out_); }

 private:
  std::string out_;
};

// A page up to its body.  `style_hash` and `script_hash`: what the policy allows; without a script
// that is "".
[[nodiscard]] std::string html_head(std::string_view title, std::string_view style,
                                    std::string_view style_hash, std::string_view script_hash = {});

// The frame of a page: head with the policy, style and script; `body` is finished markup.
[[nodiscard]] std::string html_page(std::string_view title, std::string_view body);

// The style sheet and the script, whose SHA-256 the policy names (a test recomputes them).
[[nodiscard]] std::string_view html_style();
[[nodiscard]] std::string_view html_script();

}  // namespace keydrift::reports
