#include "keydrift/formats/text.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/related_places.hpp"
#include "keydrift/formats/text_convert.hpp"
#include "keydrift/formats/text_encodings.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;

Finding make_finding(Source const& source, std::string code, Severity severity, std::string message,
                     std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = std::string{source.name};
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

struct ForeignSignature {
  std::string_view bytes;
  std::string_view kind;
};

// First bytes of files that people take for text (each from its own format's specification).
constexpr std::array kForeignSignatures{
    ForeignSignature{"PK\x03\x04"sv, "a word-processor, spreadsheet or zip file"},
    ForeignSignature{"\xD0\xCF\x11\xE0"sv, "an old word-processor or spreadsheet file"},
    ForeignSignature{"%PDF-"sv, "a PDF"},
    ForeignSignature{"{\\rtf"sv, "a rich-text file"},
    ForeignSignature{"\x89PNG"sv, "a picture"},
    ForeignSignature{"\xFF\xD8\xFF"sv, "a picture"},
    ForeignSignature{"\x1F\x8B"sv, "a compressed file"},
};

std::optional<std::string_view> kind_by_signature(std::string_view bytes) {
  for (auto const& signature : kForeignSignatures) {
    if (bytes.substr(0, signature.bytes.size()) == signature.bytes) return signature.kind;
  }
  return std::nullopt;
}

bool is_forbidden_control(char c) {
  auto const byte = static_cast<unsigned char>(c);
  return (byte < 0x20 && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != '\v') ||
         byte == 0x7F;
}

// Line ends become "\n"; stray control characters become blanks, so that columns stay.
std::string normalise_lines(std::string&& text) {
  // Bytes that may have to be changed, by value.
  static constexpr auto odd = [] {
    std::array<bool, 256> table{};
    for (std::size_t byte = 0; byte < 0x20; ++byte) table[byte] = byte != '\n' && byte != '\t';
    table[0x7F] = table[0xC2] = table[0xE2] = true;
    return table;
  }();
  auto const is_odd = [](char c) { return odd[static_cast<unsigned char>(c)]; };
  auto const next_odd = [&](std::string_view in) {
    return static_cast<std::size_t>(std::find_if(in.begin(), in.end(), is_odd) - in.begin());
  };
  if (next_odd(text) == text.size()) return std::move(text);
  std::string out;
  out.reserve(text.size());
  std::string_view rest{text};
  while (!rest.empty()) {
    auto const ordinary = next_odd(rest);
    out.append(rest, 0, ordinary);
    rest.remove_prefix(ordinary);
    if (rest.empty()) break;
    char const c = rest.front();
    std::size_t taken = 1;
    if (c == '\r') {
      if (rest.size() > 1 && rest[1] == '\n') taken = 2;
      out.push_back('\n');
    } else if (c == '\v') {
      out.push_back('\n');
    } else if (is_forbidden_control(c)) {
      out.push_back(' ');
    } else if (rest.substr(0, 2) == "\xC2\x85"sv) {
      taken = 2;
      out.push_back('\n');
    } else if (rest.substr(0, 3) == "\xE2\x80\xA8"sv || rest.substr(0, 3) == "\xE2\x80\xA9"sv) {
      taken = 3;
      out.push_back('\n');
    } else {
      out.push_back(c);
    }
    rest.remove_prefix(taken);
  }
  return out;
}

// UTF-8 that was taken for Windows-1252 and converted once more: a letter for a lead byte followed
// by a character for a tail byte.  Only combinations that no language writes.
std::size_t misconversion_at(std::string_view text) {
  // "Â" or "Ã" followed by a character of U+0080..U+00BF ("Ã©", "Â°", "Â ").
  if (text.size() >= 4 && text[0] == '\xC3' && (text[1] == '\x82' || text[1] == '\x83') &&
      text[2] == '\xC2') {
    return 4;
  }
  if (text.substr(0, 5) == "\xC3\xA2\xE2\x82\xAC"sv) return 5;  // "â€": a dash or a quotation mark
  if (text.substr(0, 4) == "\xC3\xA2\xC2\x80"sv) return 4;      // the same by way of Latin-1
  if (text.substr(0, 3) == "\xEF\xBF\xBD"sv) return 3;          // U+FFFD
  return 0;
}

struct DecodingDamage {
  std::size_t count{};
  std::vector<Place> places;  // the first few
};

DecodingDamage find_damage(std::string_view text) {
  DecodingDamage damage;
  std::optional<TextPlaces> places;
  auto const next_suspect = [text](std::size_t from) {
    auto const found = std::find_if(text.begin() + static_cast<std::ptrdiff_t>(from), text.end(),
                                    [](char c) { return c == '\xC3' || c == '\xEF'; });
    return found == text.end() ? std::string_view::npos
                               : static_cast<std::size_t>(found - text.begin());
  };
  std::size_t at = next_suspect(0);
  while (at != std::string_view::npos) {
    auto length = misconversion_at(text.substr(at));
    if (length == 0) {
      length = 1;
    } else {
      ++damage.count;
      if (!places) places.emplace(text);
      if (damage.places.size() <= kMaximumRelatedPlaces) {
        damage.places.push_back(places->at(at, at + length));
      }
    }
    at = next_suspect(at + length);
  }
  return damage;
}

Finding damage_finding(Source const& source, DecodedText const& decoded,
                       encodings::Converted const& converted, DecodingDamage const& damage) {
  auto finding = make_finding(source, "encoding-damage", Severity::warning, "",
                              "open the original, save it as UTF-8 text and compare these places");
  finding.place = damage.places.front();
  // Show the damaged word, not the bare characters.
  std::string_view const text = decoded.text;
  auto const blank = [](char c) { return c == ' ' || c == '\n' || c == '\t'; };
  std::size_t begin = finding.place.begin;
  std::size_t end = finding.place.end;
  while (begin > 0 && finding.place.begin - begin < 40 && !blank(text[begin - 1])) --begin;
  while (end < text.size() && end - finding.place.end < 40 && !blank(text[end])) ++end;
  while (begin < finding.place.begin && (static_cast<unsigned char>(text[begin]) & 0xC0U) == 0x80) {
    ++begin;
  }
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80) ++end;
  finding.printed = std::string{text.substr(begin, end - begin)};
  bool const one = damage.count == 2;
  auto const further = tables::counted(damage.count - 1, "further place", "further places");
  if (converted.damage > 0) {
    finding.message = "the word \"" + finding.printed + "\" holds bytes that are not " +
                      to_word(converted.encoding);
    if (damage.count > 1) finding.message += (one ? ", and so does " : ", and so do ") + further;
    finding.remedy =
        "see whether the file is in another encoding, which --encoding NAME tells; "
        "else compare these places with the original";
  } else {
    finding.message = "the word \"" + finding.printed + "\" was damaged by a wrong conversion";
    if (damage.count > 1) finding.message += (one ? ", and so was " : ", and so were ") + further;
  }
  for (std::size_t i = 1; i < damage.places.size(); ++i) {
    finding.related.push_back({damage.places[i], "damaged here too"});
  }
  return finding;
}

Finding mixed_finding(Source const& source, encodings::Converted const& converted) {
  auto const& lines = converted.other_lines;
  auto const one = lines.size() == 1;
  auto finding =
      make_finding(source, "mixed-encodings", Severity::warning,
                   "the file mixes encodings: " + std::to_string(lines.size()) +
                       (one ? " line is" : " lines are") + " not UTF-8 as the others are, and " +
                       (one ? "was" : "were") + " read as Windows-1252",
                   "compare " + std::string{one ? "this line" : "these lines"} +
                       " with the original, and save the file as UTF-8");
  finding.place.line = lines.front();
  for (std::size_t i = 1; i < std::min(lines.size(), kMaximumRelatedPlaces + 1); ++i) {
    finding.related.push_back({{.line = lines[i]}, "not UTF-8 either"});
  }
  return finding;
}

Finding encoding_finding(Source const& source, encodings::Converted const& converted) {
  std::string message{"the file is not UTF-8; it was read as "};
  message += to_word(converted.encoding);
  if (converted.told == encodings::Told::by_declaration) message += ", as it declares";
  if (converted.told == encodings::Told::by_user) message += ", as --encoding says";
  return make_finding(source, "encoding", Severity::information, std::move(message),
                      "if any character looks wrong, save it as UTF-8, or tell what it is in with "
                      "--encoding NAME");
}

Finding unavailable_finding(Source const& source, encodings::Converted const& converted) {
  return make_finding(source, "unknown-encoding", Severity::warning,
                      std::string{"this system has no conversion of "} +
                          to_word(*converted.unavailable) + "; the file was read as " +
                          to_word(converted.encoding),
                      "save it as UTF-8");
}

Finding unknown_finding(Source const& source, std::string_view declared,
                        encodings::Converted const& converted) {
  constexpr std::size_t kLongestLabel = 40;
  auto finding = make_finding(source, "unknown-encoding", Severity::warning, "",
                              "save it as UTF-8, or tell what it is in with --encoding NAME");
  // As written in the file: it may hold bytes of any kind.
  finding.printed = encodings::repair_utf_8(declared.substr(0, kLongestLabel));
  finding.message = "the file declares the encoding \"" + finding.printed +
                    "\", which is not known; it was read as " + to_word(converted.encoding);
  return finding;
}

Finding binary_finding(Source const& source, std::string_view kind) {
  return make_finding(source, "binary-file", Severity::error,
                      "this is " + std::string{kind} + ", not text",
                      "export it as plain text (UTF-8) and load that file");
}

// Has every other byte from `at` on been NUL for a while?
bool goes_on_in_utf_16(std::string_view bytes, std::size_t at) {
  constexpr std::size_t kLooked = 64;  // bytes
  constexpr std::size_t kFewest = 8;
  auto const window = bytes.substr(at, kLooked);
  std::array<std::size_t, 2> nuls{};
  for (std::size_t i = 0; i < window.size(); ++i) {
    if (window[i] == '\0') ++nuls[i % 2];
  }
  return nuls[0] >= kFewest && nuls[1] == 0 && nuls[0] * 3 >= window.size();
}

}  // namespace

std::optional<Finding> nul_in_text(Source const& source, std::string code) {
  auto const bytes = source.bytes;
  auto const at = bytes.find('\0');
  if (at == std::string_view::npos) return std::nullopt;
  auto const before = bytes.substr(0, at);
  auto const lines = static_cast<std::uint32_t>(std::count(before.begin(), before.end(), '\n'));
  auto const nuls = static_cast<std::size_t>(std::count(bytes.begin(), bytes.end(), '\0'));
  bool const mixed = lines > 0 && goes_on_in_utf_16(bytes, at);
  auto const looked_at = mixed ? before : bytes;
  auto const odd = static_cast<std::size_t>(
      std::count_if(looked_at.begin(), looked_at.end(), is_forbidden_control));
  // NUL is one of them.
  if (odd * 20 > looked_at.size() || (!mixed && odd > nuls * 2)) return std::nullopt;
  auto finding = make_finding(source, std::move(code), Severity::error, "", "");
  finding.place.line = lines + 1;
  auto const line_begin = lines == 0 ? 0 : before.rfind('\n') + 1;
  finding.place.column = count_code_points(before.substr(line_begin)) + 1;
  if (mixed) {
    finding.message = "two encodings are mixed in this file: from line " +
                      std::to_string(lines + 1) +
                      " on it is UTF-16, which the lines before are not";
    finding.remedy = "save both parts as UTF-8 and put them together anew";
  } else {
    finding.message = "a NUL byte stands here, and text holds none";
    if (nuls > 1) {
      finding.message += "; it has " + tables::counted(nuls - 1, "further one", "further ones");
    }
    finding.remedy = "take it out and compare the word with the original";
  }
  return finding;
}

Loaded<DecodedText> decode_text(Source source, DecodeOptions const& options) {
  Loaded<DecodedText> loaded;
  auto const refuse = [&loaded](Finding finding) {
    loaded.findings.push_back(std::move(finding));
    return std::move(loaded);
  };
  if (source.bytes.size() > options.maximum_bytes) {
    return refuse(make_finding(
        source, "too-large", Severity::error,
        "the file has " + std::to_string(source.bytes.size()) + " bytes, more than the limit of " +
            in_words(ReadLimit::size, options.maximum_bytes),
        "split the file; if it is meant to be this large, " +
            to_lift({.bytes = options.maximum_bytes}, ReadLimit::size, source.bytes.size()) +
            " takes it in"));
  }
  if (auto const kind = kind_by_signature(source.bytes)) {
    return refuse(binary_finding(source, *kind));
  }
  auto converted = encodings::convert(source.bytes, source.encoding, options.declared);
  if (auto const nul = converted.text.find('\0'); nul != std::string::npos) {
    if (auto told = nul_in_text(source, "binary-file")) return refuse(*std::move(told));
    return refuse(binary_finding(source, "a binary file (it holds NUL bytes)"));
  }
  auto const controls = static_cast<std::size_t>(
      std::count_if(converted.text.begin(), converted.text.end(), is_forbidden_control));
  if (controls * 20 > converted.text.size()) {
    return refuse(binary_finding(source, "a binary file (it is full of control characters)"));
  }
  if (converted.text.find_first_not_of(" \t\r\n\f\v") == std::string::npos) {
    return refuse(make_finding(
        source, "empty-file", Severity::error,
        source.bytes.empty() ? "the file is empty" : "the file holds nothing but blanks",
        "check that this is the right file and that it was saved"));
  }
  DecodedText decoded;
  decoded.name = std::string{source.name};
  decoded.encoding = converted.encoding;
  decoded.text = normalise_lines(std::move(converted.text));
  if (options.composed) decoded.text = encodings::to_nfc(decoded.text);
  if (converted.unknown_label) {
    loaded.findings.push_back(unknown_finding(source, options.declared, converted));
  }
  if (converted.unavailable) loaded.findings.push_back(unavailable_finding(source, converted));
  if (decoded.encoding != Encoding::utf_8) {
    loaded.findings.push_back(encoding_finding(source, converted));
  }
  if (!converted.other_lines.empty()) {
    loaded.findings.push_back(mixed_finding(source, converted));
  }
  if (auto const damage = find_damage(decoded.text); damage.count > 0) {
    loaded.findings.push_back(damage_finding(source, decoded, converted, damage));
  }
  loaded.value = std::move(decoded);
  return loaded;
}

std::uint32_t count_code_points(std::string_view utf8) {
  return static_cast<std::uint32_t>(std::count_if(utf8.begin(), utf8.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80;
  }));
}

TextPlaces::TextPlaces(std::string_view text) : text_{text} {
  starts_.push_back(0);
  for (auto at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1)) {
    if (at + 1 < text.size()) starts_.push_back(at + 1);
  }
}

Place TextPlaces::at(std::size_t begin, std::size_t end) const {
  auto const after = std::upper_bound(starts_.begin(), starts_.end(), begin);
  auto const line = static_cast<std::size_t>(after - starts_.begin());
  auto const start = starts_[line - 1];
  return {.line = static_cast<std::uint32_t>(line),
          .column = count_code_points(text_.substr(start, begin - start)) + 1,
          .begin = begin,
          .end = end};
}

std::string_view TextPlaces::line(std::size_t number) const {
  auto const begin = starts_[number - 1];
  auto const end = number < starts_.size() ? starts_[number] : text_.size();
  auto line = text_.substr(begin, end - begin);
  if (!line.empty() && line.back() == '\n') line.remove_suffix(1);
  return line;
}

}  // namespace keydrift
