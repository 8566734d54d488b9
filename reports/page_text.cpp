// Measuring, cleaning and breaking text.
#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "keydrift/reports/page.hpp"

namespace keydrift::reports {
namespace {

constexpr std::int32_t kReplacement = 0xFFFD;

// The next code point at `at`, which is moved behind it; kReplacement for bytes that are no UTF-8.
std::int32_t next_code_point(std::string_view text, std::size_t& at) {
  utf8proc_int32_t code = -1;
  auto const rest = text.substr(at);
  auto const used =
      utf8proc_iterate(reinterpret_cast<utf8proc_uint8_t const*>(rest.data()),
                       static_cast<utf8proc_ssize_t>(std::min<std::size_t>(rest.size(), 4)), &code);
  if (used <= 0) {
    ++at;
    return kReplacement;
  }
  at += static_cast<std::size_t>(used);
  return code;
}

void append(std::string& out, std::int32_t code) {
  std::array<utf8proc_uint8_t, 4> bytes{};
  auto const used = utf8proc_encode_char(code, bytes.data());
  out.append(reinterpret_cast<char const*>(bytes.data()), static_cast<std::size_t>(used));
}

std::size_t cells(std::int32_t code) {
  if (code >= 0x20 && code < 0x7F) return 1;
  auto const width = utf8proc_charwidth(code);
  if (width > 0) return static_cast<std::size_t>(width);
  auto const category = utf8proc_category(code);
  return category == UTF8PROC_CATEGORY_CN || category == UTF8PROC_CATEGORY_CO ? 1 : 0;
}

bool is_blank(std::int32_t code) {
  return code == ' ' || code == '\t' || code == '\n' || code == '\r' || code == 0x85 ||
         code == '\f' || code == 0x2028 || code == 0x2029;
}

// Overrides and isolates could show the words in another order than they stand in the source.
bool is_bidi_control(std::int32_t code) {
  return code == 0x200E || code == 0x200F || (code >= 0x202A && code <= 0x202E) ||
         (code >= 0x2066 && code <= 0x2069);
}

struct Spelling {
  std::int32_t code;
  std::string_view ascii;
};
// Sorted by code.  The marks of changed couplets are spelt so that they stay apart.
constexpr std::array kSpellings{
    Spelling{0x00A0, " "},      Spelling{0x00A7, "#"},    Spelling{0x00AB, "\""},
    Spelling{0x00AD, ""},       Spelling{0x00B0, " deg"}, Spelling{0x00B1, "+/-"},
    Spelling{0x00B5, "u"},      Spelling{0x00B6, "&"},    Spelling{0x00B7, "."},
    Spelling{0x00BB, "\""},     Spelling{0x00C6, "AE"},   Spelling{0x00D7, "x"},
    Spelling{0x00D8, "O"},      Spelling{0x00DF, "ss"},   Spelling{0x00E6, "ae"},
    Spelling{0x00F8, "o"},      Spelling{0x0152, "OE"},   Spelling{0x0153, "oe"},
    Spelling{0x03BC, "u"},      Spelling{0x2010, "-"},    Spelling{0x2011, "-"},
    Spelling{0x2012, "-"},      Spelling{0x2013, "-"},    Spelling{0x2014, "-"},
    Spelling{0x2018, "'"},      Spelling{0x2019, "'"},    Spelling{0x201A, "'"},
    Spelling{0x201C, "\""},     Spelling{0x201D, "\""},   Spelling{0x201E, "\""},
    Spelling{0x2020, "x"},      Spelling{0x2021, "^"},    Spelling{0x2026, "..."},
    Spelling{0x2032, "'"},      Spelling{0x2033, "\""},   Spelling{0x2190, "<-"},
    Spelling{0x2192, "->"},     Spelling{0x2212, "-"},    Spelling{0x2264, "<="},
    Spelling{0x2265, ">="},     Spelling{0x2500, "-"},    Spelling{0x2550, "="},
    Spelling{0x2640, "female"}, Spelling{0x2642, "male"},
};

void append_ascii(std::string& out, std::int32_t code) {
  if (code < 0x80) {
    out += static_cast<char>(code);
    return;
  }
  auto const* const known =
      std::lower_bound(kSpellings.begin(), kSpellings.end(), code,
                       [](Spelling const& spelling, std::int32_t c) { return spelling.code < c; });
  if (known != kSpellings.end() && known->code == code) {
    out += known->ascii;
    return;
  }
  // A letter with marks becomes the letter; combining marks vanish.
  std::array<utf8proc_int32_t, 32> parts{};
  int boundary = 0;
  auto const count = utf8proc_decompose_char(
      code, parts.data(), static_cast<utf8proc_ssize_t>(parts.size()),
      static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_STRIPMARK),
      &boundary);
  if (count < 0 || count > static_cast<utf8proc_ssize_t>(parts.size())) {
    out += '?';
    return;
  }
  for (std::size_t i = 0; i < static_cast<std::size_t>(count); ++i) {
    auto const part = parts[i];
    if (part == 0x2044) {  // fraction slash
      out += '/';
    } else {
      out += part >= 0x20 && part < 0x7F ? static_cast<char>(part) : '?';
    }
  }
}

bool is_plain(char c) { return c >= 0x20 && c < 0x7F; }

bool is_plain_ascii(std::string_view text) {
  // All bytes are looked at, many at a time: as a rule there is nothing else.
  unsigned other = 0;  // a bool would be looked at one by one
  for (char const c : text) other |= is_plain(c) ? 0U : 1U;
  return other == 0;
}

// Bytes in front that are printable ASCII.
std::size_t plain_length(std::string_view text) {
  auto const end = std::find_if_not(text.begin(), text.end(), is_plain);
  return static_cast<std::size_t>(end - text.begin());
}

// A stretch of a word in one face or a grapheme cluster of it, or the blank between two words.
struct Glyph {
  std::string_view bytes;
  std::size_t width{};
  Face face{Face::plain};
  bool blank{false};
};

void add_bytes(Line& line, std::string_view bytes, Face face, std::size_t width) {
  if (line.runs.empty() || line.runs.back().face != face) line.runs.push_back({"", face});
  line.runs.back().text += bytes;
  line.width += width;
}

// Appends the stretches of words and the blanks of `text`, which must outlive them.  `plain`: it is
// printable ASCII, a cell each.
void split_words(std::string_view text, bool plain, Face face, std::vector<Glyph>& glyphs) {
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == ' ') {
      glyphs.push_back({text.substr(at, 1), 1, face, true});
      ++at;
      continue;
    }
    auto const word = text.substr(at, text.find(' ', at) - at);
    glyphs.push_back({word, plain ? word.size() : display_width(word), face, false});
    at += word.size();
  }
}

// Appends the grapheme clusters of a stretch of a word.
void split_clusters(Glyph const& stretch, std::vector<Glyph>& clusters) {
  auto const& text = stretch.bytes;
  std::size_t at = 0;
  std::size_t begin = 0;
  std::size_t width = 0;
  std::int32_t previous = -1;
  utf8proc_int32_t state = 0;
  auto const flush = [&](std::size_t end) {
    if (end > begin) {
      clusters.push_back({text.substr(begin, end - begin), width, stretch.face, false});
    }
    begin = end;
    width = 0;
  };
  while (at < text.size()) {
    auto const from = at;
    auto const code = next_code_point(text, at);
    if (previous >= 0 && utf8proc_grapheme_break_stateful(previous, code, &state)) flush(from);
    width += cells(code);
    previous = code;
  }
  flush(text.size());
}

bool is_unit(std::string_view word) {
  static constexpr std::array<std::string_view, 8> kUnits{"mm", "cm", "µm", "μm",
                                                          "m",  "um", "%",  "°"};
  // "mm;" and "mm)" end a clause.
  while (!word.empty() && std::string_view{".,;:)"}.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return std::find(kUnits.begin(), kUnits.end(), word) != kUnits.end();
}

// "A." before "bus"
bool is_initial(std::string_view word) {
  while (!word.empty() && std::string_view{"(“"}.find(word.front()) != std::string_view::npos) {
    word.remove_prefix(1);
  }
  return word.size() == 2 && word[0] >= 'A' && word[0] <= 'Z' && word[1] == '.';
}

bool ends_a_number(std::string_view word) {
  if (word.empty()) return false;
  auto const last = word.back();
  return (last >= '0' && last <= '9') ||
         (last == ')' && word.find_first_of("0123456789") != std::string_view::npos);
}

// Blanks that no printer breaks at: between a number and its unit, between the initial of a genus
// and the epithet.
void join_what_belongs_together(std::vector<Glyph>& glyphs, std::string_view text) {
  auto const word_behind = [&](char const* begin) {
    std::string_view const rest{begin, static_cast<std::size_t>(text.data() + text.size() - begin)};
    return rest.substr(0, rest.find(' '));
  };
  auto const word_before = [&](char const* end) {
    std::string_view const rest{text.data(), static_cast<std::size_t>(end - text.data())};
    auto const blank = rest.rfind(' ');
    return blank == std::string_view::npos ? rest : rest.substr(blank + 1);
  };
  for (auto& glyph : glyphs) {
    if (!glyph.blank || glyph.bytes.data() == text.data()) continue;
    // Behind most words the last character tells that they are neither.
    auto const last = glyph.bytes.data()[-1];
    if (last != '.' && last != ')' && !(last >= '0' && last <= '9')) continue;
    auto const before = word_before(glyph.bytes.data());
    auto const behind = word_behind(glyph.bytes.data() + 1);
    if (behind.empty()) continue;
    if ((ends_a_number(before) && is_unit(behind)) ||
        (is_initial(before) && behind[0] >= 'a' && behind[0] <= 'z')) {
      glyph.blank = false;
    }
  }
}

}  // namespace

std::size_t display_width(std::string_view text) {
  if (is_plain_ascii(text)) return text.size();
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const plain = plain_length(text.substr(at));
    width += plain;
    at += plain;
    if (at < text.size()) width += cells(next_code_point(text, at));
  }
  return width;
}

std::string clean_text(std::string_view text, bool unicode) {
  if (is_plain_ascii(text)) return std::string{text};
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    auto const plain = plain_length(text.substr(at));
    out += text.substr(at, plain);
    at += plain;
    if (at == text.size()) break;
    auto const begin = at;
    auto const code = next_code_point(text, at);
    if (is_bidi_control(code) || code == 0xFEFF) continue;
    if (is_blank(code)) {
      out += ' ';
    } else if (code < 0x20 || (code >= 0x7F && code < 0xA0)) {
      if (unicode)
        append(out, kReplacement);
      else
        out += '?';
    } else if (unicode && code != kReplacement) {
      out += text.substr(begin, at - begin);
    } else if (unicode) {
      append(out, kReplacement);
    } else {
      append_ascii(out, code);
    }
  }
  return out;
}

std::string upper_case(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    append(out, utf8proc_toupper(next_code_point(text, at)));
  }
  return out;
}

std::vector<Line> wrap(Words const& words, std::size_t width, std::size_t first, std::size_t rest,
                       bool unicode) {
  std::string text;
  struct Stretch {
    std::size_t end{};
    bool plain{};
  };
  std::vector<Stretch> stretches;  // of the text, by run
  std::size_t bytes = 0;
  for (auto const& run : words) bytes += run.text.size();
  text.reserve(bytes);
  stretches.reserve(words.size());
  for (auto const& run : words) {
    bool const plain = is_plain_ascii(run.text);
    if (plain) {
      text += run.text;
    } else {
      text += clean_text(run.text, unicode);
    }
    stretches.push_back({text.size(), plain});
  }
  std::vector<Glyph> glyphs;
  glyphs.reserve(text.size() / 3 + words.size());
  for (std::size_t i = 0, begin = 0; i < words.size(); begin = stretches[i++].end) {
    split_words(std::string_view{text}.substr(begin, stretches[i].end - begin), stretches[i].plain,
                words[i].face, glyphs);
  }
  join_what_belongs_together(glyphs, text);

  // Room for two cells always, so that a wide character fits and the loop ends.
  width = std::max<std::size_t>(width, 2);
  first = std::min(first, width - 2);
  rest = std::min(rest, width - 2);

  std::vector<Line> lines;
  lines.reserve(text.size() / width + 2);
  bool fresh = true;  // nothing but the indent stands on the line
  auto const new_line = [&](std::size_t indent) {
    auto& line = lines.emplace_back();
    line.width = indent;
    auto& text_of_line = line.runs.emplace_back().text;
    text_of_line.reserve(std::min(width, indent + text.size()));
    text_of_line.assign(indent, ' ');
    fresh = true;
  };
  new_line(first);
  std::vector<Glyph> clusters;
  std::size_t at = 0;
  while (at < glyphs.size()) {
    bool parted = false;
    Face blank_face = Face::plain;
    while (at < glyphs.size() && glyphs[at].blank) {
      parted = true;
      blank_face = glyphs[at].face;
      ++at;
    }
    std::size_t end = at;
    std::size_t word_width = 0;
    while (end < glyphs.size() && !glyphs[end].blank) word_width += glyphs[end++].width;
    if (end == at) break;
    bool const gap = parted && !fresh;
    if (gap) {
      if (lines.back().width + 1 + word_width <= width) {
        // A blank within one face keeps it; one between two faces stays plain.
        auto const face = glyphs[at].face;
        bool const within = face == blank_face && face == lines.back().runs.back().face;
        add_bytes(lines.back(), " ", within ? face : Face::plain, 1);
      } else {
        new_line(rest);
      }
    }
    auto const set = [&](Glyph const& glyph) {
      if (lines.back().width + glyph.width > width && !fresh) new_line(rest);
      add_bytes(lines.back(), glyph.bytes, glyph.face, glyph.width);
      fresh = false;
    };
    bool const has_room = lines.back().width + word_width <= width;
    for (; at < end; ++at) {
      if (has_room) {
        set(glyphs[at]);
        continue;
      }
      clusters.clear();
      split_clusters(glyphs[at], clusters);
      for (auto const& cluster : clusters) set(cluster);
    }
  }
  return lines;
}

}  // namespace keydrift::reports
