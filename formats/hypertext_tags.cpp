#include <algorithm>
#include <array>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/text_encodings.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::hypertext {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestTag = 2000;      // bytes
constexpr std::size_t kLongestReference = 12;  // bytes
constexpr char32_t kUndefined = 0xFFFD;        // bytes that stand for nothing

// Those that begin and end lines of their own.
constexpr std::array kBreaking{
    "address"sv,   "article"sv, "aside"sv,   "blockquote"sv, "br"sv,     "break"sv, "caption"sv,
    "center"sv,    "dd"sv,      "details"sv, "div"sv,        "dl"sv,     "dt"sv,    "fieldset"sv,
    "figure"sv,    "footer"sv,  "form"sv,    "h1"sv,         "h2"sv,     "h3"sv,    "h4"sv,
    "h5"sv,        "h6"sv,      "header"sv,  "hr"sv,         "legend"sv, "li"sv,    "list"sv,
    "list-item"sv, "main"sv,    "nav"sv,     "ol"sv,         "p"sv,      "pre"sv,   "section"sv,
    "summary"sv,   "table"sv,   "tbody"sv,   "tfoot"sv,      "thead"sv,  "title"sv, "tr"sv,
    "ul"sv};
constexpr std::array kOthers{
    "a"sv,      "abbr"sv,  "acronym"sv, "b"sv,      "bdi"sv,      "big"sv,    "body"sv, "bold"sv,
    "button"sv, "cite"sv,  "code"sv,    "col"sv,    "colgroup"sv, "del"sv,    "dfn"sv,  "em"sv,
    "font"sv,   "head"sv,  "html"sv,    "i"sv,      "img"sv,      "input"sv,  "ins"sv,  "italic"sv,
    "kbd"sv,    "label"sv, "link"sv,    "mark"sv,   "meta"sv,     "nobr"sv,   "path"sv, "picture"sv,
    "q"sv,      "s"sv,     "samp"sv,    "script"sv, "small"sv,    "source"sv, "span"sv, "strike"sv,
    "strong"sv, "style"sv, "sub"sv,     "sup"sv,    "svg"sv,      "td"sv,     "th"sv,   "track"sv,
    "tt"sv,     "u"sv,     "use"sv,     "var"sv,    "wbr"sv,      "xref"sv};

struct Named {
  std::string_view name;
  char32_t value;
};
// The characters from U+00A0 on, in their order (HTML 4.01, 24.2.1).
constexpr std::array kLatin1{
    "nbsp"sv,   "iexcl"sv,  "cent"sv,   "pound"sv,  "curren"sv, "yen"sv,    "brvbar"sv, "sect"sv,
    "uml"sv,    "copy"sv,   "ordf"sv,   "laquo"sv,  "not"sv,    "shy"sv,    "reg"sv,    "macr"sv,
    "deg"sv,    "plusmn"sv, "sup2"sv,   "sup3"sv,   "acute"sv,  "micro"sv,  "para"sv,   "middot"sv,
    "cedil"sv,  "sup1"sv,   "ordm"sv,   "raquo"sv,  "frac14"sv, "frac12"sv, "frac34"sv, "iquest"sv,
    "Agrave"sv, "Aacute"sv, "Acirc"sv,  "Atilde"sv, "Auml"sv,   "Aring"sv,  "AElig"sv,  "Ccedil"sv,
    "Egrave"sv, "Eacute"sv, "Ecirc"sv,  "Euml"sv,   "Igrave"sv, "Iacute"sv, "Icirc"sv,  "Iuml"sv,
    "ETH"sv,    "Ntilde"sv, "Ograve"sv, "Oacute"sv, "Ocirc"sv,  "Otilde"sv, "Ouml"sv,   "times"sv,
    "Oslash"sv, "Ugrave"sv, "Uacute"sv, "Ucirc"sv,  "Uuml"sv,   "Yacute"sv, "THORN"sv,  "szlig"sv,
    "agrave"sv, "aacute"sv, "acirc"sv,  "atilde"sv, "auml"sv,   "aring"sv,  "aelig"sv,  "ccedil"sv,
    "egrave"sv, "eacute"sv, "ecirc"sv,  "euml"sv,   "igrave"sv, "iacute"sv, "icirc"sv,  "iuml"sv,
    "eth"sv,    "ntilde"sv, "ograve"sv, "oacute"sv, "ocirc"sv,  "otilde"sv, "ouml"sv,   "divide"sv,
    "oslash"sv, "ugrave"sv, "uacute"sv, "ucirc"sv,  "uuml"sv,   "yacute"sv, "thorn"sv,  "yuml"sv};
constexpr std::array kNamed{
    Named{"quot"sv, 0x22}, Named{"amp"sv, 0x26}, Named{"lt"sv, 0x3C}, Named{"gt"sv, 0x3E},
    Named{"apos"sv, 0x27}, Named{"OElig"sv, 0x152}, Named{"oelig"sv, 0x153},
    Named{"Scaron"sv, 0x160}, Named{"scaron"sv, 0x161}, Named{"Yuml"sv, 0x178},
    Named{"Alpha"sv, 0x391}, Named{"Beta"sv, 0x392}, Named{"alpha"sv, 0x3B1},
    Named{"beta"sv, 0x3B2}, Named{"gamma"sv, 0x3B3}, Named{"delta"sv, 0x3B4},
    Named{"epsilon"sv, 0x3B5}, Named{"lambda"sv, 0x3BB}, Named{"mu"sv, 0x3BC}, Named{"pi"sv, 0x3C0},
    Named{"sigma"sv, 0x3C3}, Named{"phi"sv, 0x3C6}, Named{"omega"sv, 0x3C9},
    Named{"ensp"sv, 0x2002}, Named{"emsp"sv, 0x2003}, Named{"thinsp"sv, 0x2009},
    Named{"ndash"sv, 0x2013}, Named{"mdash"sv, 0x2014}, Named{"lsquo"sv, 0x2018},
    Named{"rsquo"sv, 0x2019}, Named{"sbquo"sv, 0x201A}, Named{"ldquo"sv, 0x201C},
    Named{"rdquo"sv, 0x201D}, Named{"bdquo"sv, 0x201E}, Named{"dagger"sv, 0x2020},
    Named{"Dagger"sv, 0x2021}, Named{"bull"sv, 0x2022}, Named{"hellip"sv, 0x2026},
    Named{"permil"sv, 0x2030}, Named{"prime"sv, 0x2032}, Named{"Prime"sv, 0x2033},
    Named{"frasl"sv, 0x2044}, Named{"lsaquo"sv, 0x2039}, Named{"rsaquo"sv, 0x203A},
    Named{"trade"sv, 0x2122}, Named{"larr"sv, 0x2190}, Named{"uarr"sv, 0x2191},
    Named{"rarr"sv, 0x2192}, Named{"darr"sv, 0x2193}, Named{"minus"sv, 0x2212},
    Named{"asymp"sv, 0x2248}, Named{"sim"sv, 0x223C}, Named{"ne"sv, 0x2260}, Named{"le"sv, 0x2264},
    Named{"ge"sv, 0x2265}, Named{"female"sv, 0x2640}, Named{"male"sv, 0x2642},
    Named{"caron"sv, 0x2C7},
    // ISO's Latin letters and blanks that journals' markup has besides (W3C, XML Entity
    // Definitions for Characters).
    Named{"Abreve"sv, 0x102}, Named{"abreve"sv, 0x103}, Named{"Amacr"sv, 0x100},
    Named{"amacr"sv, 0x101}, Named{"Aogon"sv, 0x104}, Named{"aogon"sv, 0x105},
    Named{"Cacute"sv, 0x106}, Named{"cacute"sv, 0x107}, Named{"Ccaron"sv, 0x10C},
    Named{"ccaron"sv, 0x10D}, Named{"Ccirc"sv, 0x108}, Named{"ccirc"sv, 0x109},
    Named{"Dcaron"sv, 0x10E}, Named{"dcaron"sv, 0x10F}, Named{"Dstrok"sv, 0x110},
    Named{"dstrok"sv, 0x111}, Named{"Ecaron"sv, 0x11A}, Named{"ecaron"sv, 0x11B},
    Named{"Emacr"sv, 0x112}, Named{"emacr"sv, 0x113}, Named{"Eogon"sv, 0x118},
    Named{"eogon"sv, 0x119}, Named{"Gbreve"sv, 0x11E}, Named{"gbreve"sv, 0x11F},
    Named{"Idot"sv, 0x130}, Named{"Imacr"sv, 0x12A}, Named{"imacr"sv, 0x12B},
    Named{"inodot"sv, 0x131}, Named{"Lacute"sv, 0x139}, Named{"lacute"sv, 0x13A},
    Named{"Lcaron"sv, 0x13D}, Named{"lcaron"sv, 0x13E}, Named{"Lstrok"sv, 0x141},
    Named{"lstrok"sv, 0x142}, Named{"Nacute"sv, 0x143}, Named{"nacute"sv, 0x144},
    Named{"Ncaron"sv, 0x147}, Named{"ncaron"sv, 0x148}, Named{"Odblac"sv, 0x150},
    Named{"odblac"sv, 0x151}, Named{"Omacr"sv, 0x14C}, Named{"omacr"sv, 0x14D},
    Named{"Racute"sv, 0x154}, Named{"racute"sv, 0x155}, Named{"Rcaron"sv, 0x158},
    Named{"rcaron"sv, 0x159}, Named{"Sacute"sv, 0x15A}, Named{"sacute"sv, 0x15B},
    Named{"Scedil"sv, 0x15E}, Named{"scedil"sv, 0x15F}, Named{"Tcaron"sv, 0x164},
    Named{"tcaron"sv, 0x165}, Named{"Tcedil"sv, 0x162}, Named{"tcedil"sv, 0x163},
    Named{"Udblac"sv, 0x170}, Named{"udblac"sv, 0x171}, Named{"Umacr"sv, 0x16A},
    Named{"umacr"sv, 0x16B}, Named{"Uring"sv, 0x16E}, Named{"uring"sv, 0x16F},
    Named{"Zacute"sv, 0x179}, Named{"zacute"sv, 0x17A}, Named{"Zcaron"sv, 0x17D},
    Named{"zcaron"sv, 0x17E}, Named{"Zdot"sv, 0x17B}, Named{"zdot"sv, 0x17C}, Named{"half"sv, 0xBD},
    Named{"frac13"sv, 0x2153}, Named{"frac23"sv, 0x2154}, Named{"hyphen"sv, 0x2010},
    Named{"dash"sv, 0x2010}, Named{"numsp"sv, 0x2007}, Named{"puncsp"sv, 0x2008},
    Named{"emsp13"sv, 0x2004}, Named{"emsp14"sv, 0x2005}, Named{"lsquor"sv, 0x201A},
    Named{"ldquor"sv, 0x201E}, Named{"hairsp"sv, 0x200A}, Named{"epsi"sv, 0x3B5}};

bool is_ascii_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_ascii_digit(char c) { return c >= '0' && c <= '9'; }
char in_small_letter(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

// "#233", "#xE9"; 0 for what is no character, or one that controls.
char32_t numbered(std::string_view digits) {
  bool const hex = digits.size() > 1 && (digits[1] == 'x' || digits[1] == 'X');
  char32_t value = 0;
  digits.remove_prefix(hex ? 2 : 1);
  if (digits.empty()) return 0;
  for (char const c : digits) {
    char32_t digit = 16;
    if (is_ascii_digit(c)) digit = static_cast<char32_t>(c - '0');
    if (hex && c >= 'a' && c <= 'f') digit = static_cast<char32_t>(c - 'a' + 10);
    if (hex && c >= 'A' && c <= 'F') digit = static_cast<char32_t>(c - 'A' + 10);
    if (digit >= (hex ? 16U : 10U)) return 0;
    value = value * (hex ? 16U : 10U) + digit;
    if (value > 0x10FFFF) return 0;
  }
  bool const surrogate = value >= 0xD800 && value <= 0xDFFF;
  bool const control = value < 0x20 || value == 0x7F;
  return surrogate || control ? 0 : value;
}

char32_t named(std::string_view name) {
  auto const latin = std::find(kLatin1.begin(), kLatin1.end(), name);
  if (latin != kLatin1.end()) return 0xA0U + static_cast<char32_t>(latin - kLatin1.begin());
  auto const other = std::find_if(kNamed.begin(), kNamed.end(),
                                  [name](Named const& one) { return one.name == name; });
  return other == kNamed.end() ? 0 : other->value;
}

}  // namespace

Tag tag_at(std::string_view text) {
  static constexpr auto kComment = "<!--"sv;
  Tag tag;
  if (text.substr(0, kComment.size()) == kComment) {
    auto const end = text.find("-->", kComment.size());
    tag.name = "!";
    tag.length = end == std::string_view::npos ? text.size() : end + 3;
    return tag;
  }
  // "<![if !lists]>1.<![endif]>": what stands between is for every reader.
  static constexpr auto kCondition = "<!["sv;
  std::size_t at = 1;
  if (text.starts_with(kCondition) && !text.starts_with("<![CDATA["sv)) {
    at = kCondition.size();
  } else if (at < text.size() && (text[at] == '/' || text[at] == '!' || text[at] == '?')) {
    ++at;
  }
  tag.closes = at == 2 && text[1] == '/';
  auto const begin = at;
  if (at >= text.size() || !is_ascii_letter(text[at])) return {};
  while (at < text.size() && (is_ascii_letter(text[at]) || is_ascii_digit(text[at]) ||
                              text[at] == '-' || text[at] == ':')) {
    ++at;
  }
  tag.name = text.substr(begin, at - begin);
  if (auto const colon = tag.name.find(':'); colon != std::string::npos) {
    tag.name.erase(0, colon + 1);
  }
  std::transform(tag.name.begin(), tag.name.end(), tag.name.begin(), in_small_letter);
  // Attributes; a bracket within quotation marks closes nothing.  A further opening one ends the
  // search, so that each byte is looked at once.
  char quote = 0;
  for (; at < text.size() && at < kLongestTag; ++at) {
    char const c = text[at];
    if (c == '<') return {};
    if (quote != 0) {
      if (c == quote) quote = 0;
    } else if ((c == '"' || c == '\'') && text[at - 1] == '=') {
      quote = c;
    } else if (c == '>') {
      tag.empty = text[at - 1] == '/';
      tag.length = at + 1;
      return tag;
    }
  }
  return {};
}

std::string_view attribute_of(std::string_view tag, std::string_view attribute) {
  auto const same = [](char a, char b) { return in_small_letter(a) == b; };
  for (auto from = tag.begin();;) {
    auto const found = std::search(from, tag.end(), attribute.begin(), attribute.end(), same);
    if (found == tag.end()) return {};
    auto const at = static_cast<std::size_t>(found - tag.begin());
    auto rest = tag.substr(at + attribute.size());
    from = found + 1;
    if (at == 0 || !is_white(tag[at - 1]) || !rest.starts_with('=')) continue;
    rest.remove_prefix(1);
    char const quote = rest.empty() ? ' ' : rest.front();
    if (quote == '"' || quote == '\'') return rest.substr(1, rest.find(quote, 1) - 1);
    return rest.substr(0, rest.find_first_of(" \t\f\n>"));
  }
}

std::size_t closing_tag(std::string_view text, std::size_t at, std::string_view name) {
  for (at = text.find("</", at); at != std::string_view::npos; at = text.find("</", at + 1)) {
    auto const tag = tag_at(text.substr(at));
    if (tag.length > 0 && tag.name == name) return at;
  }
  return text.size();
}

bool breaks_line(std::string_view name) { return is_one_of(kBreaking, name); }

bool is_cell(std::string_view name) { return name == "td" || name == "th"; }

bool is_heading(std::string_view name) {
  return name == "title" || name == "caption" ||
         (name.size() == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6');
}

bool is_known(std::string_view name) { return breaks_line(name) || is_one_of(kOthers, name); }

Reference reference_at(std::string_view text) {
  auto const end = text.substr(0, kLongestReference).find(';');
  if (end == std::string_view::npos || end < 2) return {};
  auto const name = text.substr(1, end - 1);
  auto value = name.front() == '#' ? numbered(name) : named(name);
  if (value == 0) return {};
  // "&#150;": browsers take the numbers of controls for bytes of Windows-1252 (HTML, 13.2.5.80).
  if (value >= 0x80 && value < 0xA0) {
    value = encodings::windows_1252(static_cast<unsigned char>(value));
    if (value == kUndefined) return {};
  }
  Reference found{.length = end + 1, .character = {}};
  encodings::append_code_point(found.character, value);
  return found;
}

}  // namespace keydrift::hypertext
