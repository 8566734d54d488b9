#include "keydrift/key/finding.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>

namespace keydrift {
namespace {

// Findings quote files that anybody may have written, and are shown on a terminal: control
// characters are shown as their pictures (U+2400 ff.) instead of being obeyed.
std::string visible(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    auto const byte = static_cast<unsigned char>(text[i]);
    auto const next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
    if (byte == '\t') {
      out += ' ';
    } else if (byte < 0x20) {
      out += "\xE2\x90";
      out += static_cast<char>(0x80 + byte);
    } else if (byte == 0x7F) {
      out += "\xE2\x90\xA1";
    } else if (byte == 0xC2 && next >= 0x80 && next < 0xA0) {  // C1 controls
      out += "\xEF\xBF\xBD";
      ++i;
    } else {
      out += text[i];
    }
  }
  return out;
}

std::string at(std::string const& file, Place const& place) {
  if (place.line == 0) return visible(file);
  auto const position = std::to_string(place.line) + ":" + std::to_string(place.column);
  return file.empty() ? position : visible(file) + ":" + position;
}

// Every line of `text` on a line of its own, indented by two blanks.
void append_indented(std::string& out, std::string_view text) {
  while (!text.empty()) {
    auto const feed = text.find('\n');
    auto line = text.substr(0, feed);
    if (line.ends_with('\r')) line.remove_suffix(1);
    out += "  " + visible(line) + "\n";
    text = feed == std::string_view::npos ? std::string_view{} : text.substr(feed + 1);
  }
}

}  // namespace

void sort_findings(std::vector<Finding>& findings) {
  auto const order = [](Finding const& f) {
    return std::tie(f.file, f.place.line, f.place.column, f.code, f.message);
  };
  std::stable_sort(findings.begin(), findings.end(),
                   [&](Finding const& a, Finding const& b) { return order(a) < order(b); });
}

std::string to_text(Finding const& finding) {
  auto text = at(finding.file, finding.place) + ": " + to_word(finding.severity) + ": " +
              visible(finding.message) + " [" + visible(finding.code) + "]\n";
  append_indented(text, finding.printed);
  for (auto const& related : finding.related) {
    append_indented(text, at(finding.file, related.place) + ": " + related.message);
  }
  append_indented(text, finding.remedy);
  return text;
}

}  // namespace keydrift
