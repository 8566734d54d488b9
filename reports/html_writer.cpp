#include "keydrift/reports/html_writer.hpp"

#include "keydrift/reports/html_assets.hpp"

namespace keydrift::reports {

void append_escaped(std::string& out, std::string_view text) {
  for (char const c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        // Control characters are not allowed in HTML; line ends and tabs are white space.
        if (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') {
          out += "\xEF\xBF\xBD";
        } else {
          out += c;
        }
    }
  }
}

std::string escaped(std::string_view text) {
  std::string out;
  append_escaped(out, text);
  return out;
}

HtmlWriter& HtmlWriter::element(std::string_view tag, std::string_view foreign,
                                std::string_view attributes) {
  out_ += '<';
  out_ += tag;
  if (!attributes.empty()) {
    out_ += ' ';
    out_ += attributes;
  }
  out_ += '>';
  append_escaped(out_, foreign);
  out_ += "</";
  out_ += tag;
  out_ += '>';
  return *this;
}

HtmlWriter& HtmlWriter::open_section(std::string_view id, std::string_view heading) {
  out_ += "<section id=\"";
  out_ += id;
  out_ += "\">\n";
  element("h2", heading);
  out_ += '\n';
  return *this;
}

HtmlWriter& HtmlWriter::close_section() {
  out_ += "</section>\n";
  return *this;
}

std::string_view html_style() { return kHtmlStyle; }
std::string_view html_script() { return kHtmlScript; }

std::string html_head(std::string_view title, std::string_view style, std::string_view style_hash,
                      std::string_view script_hash) {
  std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n";
  out += "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src '";
  out += style_hash;
  if (!script_hash.empty()) {
    out += "'; script-src '";
    out += script_hash;
  }
  out += "'; img-src data:; base-uri 'none'; form-action 'none'\">\n";
  out += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
  // Without an icon of its own a browser asks the server for one.
  out += "<link rel=\"icon\" href=\"data:,\">\n<title>";
  append_escaped(out, title);
  out += "</title>\n<style>";
  out += style;
  out += "</style>\n</head>\n<body>\n";
  return out;
}

std::string html_page(std::string_view title, std::string_view body) {
  auto out = html_head(title, kHtmlStyle, kHtmlStyleHash, kHtmlScriptHash);
  out.reserve(out.size() + body.size() + kHtmlScript.size() + 64);
  out += body;
  out += "<script>";
  out += kHtmlScript;
  out += "</script>\n</body>\n</html>\n";
  return out;
}

}  // namespace keydrift::reports
