#include "keydrift/formats/xml_scan.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/related_places.hpp"

namespace keydrift::xml {
namespace {

using namespace std::string_view_literals;

constexpr std::string_view kBlanks = " \t\r\n\f";
constexpr std::size_t kShown = 40;  // bytes of a word in a message

bool is_blank(char c) { return kBlanks.find(c) != std::string_view::npos; }

bool starts_name(char c) {
  auto const byte = static_cast<unsigned char>(c);
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == ':' || byte >= 0x80;
}

bool continues_name(char c) {
  return starts_name(c) || (c >= '0' && c <= '9') || c == '-' || c == '.';
}

std::string word_in_quotes(std::string_view word) {
  auto shown = word.substr(0, kShown);
  while (shown.size() < word.size() && !shown.empty() &&
         (static_cast<unsigned char>(word[shown.size()]) & 0xC0U) == 0x80) {
    shown.remove_suffix(1);
  }
  return "\"" + std::string{shown} + (shown.size() < word.size() ? "…" : "") + "\"";
}

// Section 2.2, "Char".
bool is_character(std::uint32_t code) {
  return code == 0x9 || code == 0xA || code == 0xD || (code >= 0x20 && code <= 0xD7FF) ||
         (code >= 0xE000 && code <= 0xFFFD) || (code >= 0x10000 && code <= 0x10FFFF);
}

// The code point of "#38" or "#x26"; nullopt when that is none.
std::optional<std::uint32_t> character_of(std::string_view reference) {
  reference.remove_prefix(1);
  bool const hexadecimal = !reference.empty() && reference.front() == 'x';
  if (hexadecimal) reference.remove_prefix(1);
  if (reference.empty()) return std::nullopt;
  std::uint32_t code = 0;
  for (char const c : reference) {
    std::uint32_t digit = 16;
    if (c >= '0' && c <= '9') digit = static_cast<std::uint32_t>(c - '0');
    if (c >= 'a' && c <= 'f') digit = static_cast<std::uint32_t>(c - 'a' + 10);
    if (c >= 'A' && c <= 'F') digit = static_cast<std::uint32_t>(c - 'A' + 10);
    std::uint32_t const base = hexadecimal ? 16 : 10;
    if (digit >= base) return std::nullopt;
    code = code * base + digit;
    if (code > 0x10FFFF) return std::nullopt;
  }
  if (!is_character(code)) return std::nullopt;
  return code;
}

bool is_predefined(std::string_view entity) {
  return entity == "amp" || entity == "lt" || entity == "gt" || entity == "quot" ||
         entity == "apos";
}

class Scanner {
 public:
  Scanner(std::string_view file, std::string_view text, PlaceIndex const& places,
          ReadLimits const& limits, Doctype doctype, std::vector<Finding>& findings)
      : file_{file},
        text_{text},
        places_{places},
        limits_{limits},
        doctype_{doctype},
        findings_{findings} {}

  bool run() {
    while (sound_ && at_ < text_.size()) {
      if (text_[at_] != '<') {
        read_text();
      } else if (starts("<!--"sv)) {
        pass_over("-->"sv, "a comment (\"<!--\")");
      } else if (starts("<![CDATA["sv)) {
        if (open_.empty()) {
          malformed(at_, at_ + 9, "text stands outside the outermost element");
        } else if (count(at_)) {
          pass_over("]]>"sv, "a CDATA section");
        }
      } else if (starts("<?"sv)) {
        pass_over("?>"sv, "a processing instruction (\"<?\")");
      } else if (starts("<!DOCTYPE"sv)) {
        read_doctype();
      } else if (starts("</"sv)) {
        read_end_tag();
      } else {
        read_start_tag();
      }
    }
    if (sound_) check_end();
    if (sound_) report_entities();
    return sound_;
  }

 private:
  struct Element {
    std::string_view name;
    std::size_t begin;
  };

  bool starts(std::string_view what) const { return text_.substr(at_, what.size()) == what; }

  Finding& add(std::string code, Severity severity, std::size_t begin, std::size_t end,
               std::string message, std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = std::string{file_};
    finding.place = places_.at(begin, end);
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    if (severity == Severity::error) sound_ = false;
    return findings_.emplace_back(std::move(finding));
  }
  Finding& malformed(std::size_t begin, std::size_t end, std::string const& what) {
    return add("malformed-xml", Severity::error, begin, end, "this is not well-formed XML: " + what,
               "mend it here, or a little before this place");
  }

  bool count(std::size_t node) {
    if (++nodes_ <= limits_.xml_nodes) return true;
    add("xml-too-large", Severity::error, node, node,
        "the file has more than " + std::to_string(limits_.xml_nodes) +
            " elements, attributes and stretches of text",
        "cut the key out of the file; " + to_lift(limits_, ReadLimit::nodes) + " takes in more");
    return false;
  }

  void pass_over(std::string_view end, std::string const& what) {
    auto const found = text_.find(end, at_ + 2);
    if (found == std::string_view::npos) {
      malformed(at_, at_ + 2, what + " has no end");
      return;
    }
    at_ = found + end.size();
  }

  void skip_blanks() { at_ = std::min(text_.find_first_not_of(kBlanks, at_), text_.size()); }

  std::string_view read_name() {
    auto const begin = at_;
    if (at_ < text_.size() && starts_name(text_[at_])) {
      while (at_ < text_.size() && continues_name(text_[at_])) ++at_;
    }
    return text_.substr(begin, at_ - begin);
  }

  void read_text() {
    auto const end = std::min(text_.find('<', at_), text_.size());
    auto const words = text_.substr(at_, end - at_);
    if (open_.empty()) {
      auto const stray = words.find_first_not_of(kBlanks);
      if (stray != std::string_view::npos) {
        malformed(at_ + stray, end, "text stands outside the outermost element");
        return;
      }
    } else if (!count(at_)) {
      return;
    }
    check_references(at_, end);
    at_ = end;
  }

  // "&name;" and "&#n;" within [begin, end).
  void check_references(std::size_t begin, std::size_t end) {
    auto const words = text_.substr(0, end);
    for (auto at = words.find('&', begin); sound_ && at != std::string_view::npos;
         at = words.find('&', at + 1)) {
      auto const semicolon = words.find(';', at);
      auto const name =
          words.substr(at + 1, semicolon == std::string_view::npos ? std::string_view::npos
                                                                   : semicolon - at - 1);
      bool const numeric = !name.empty() && name.front() == '#';
      bool const named = !name.empty() && starts_name(name.front()) &&
                         std::all_of(name.begin(), name.end(), continues_name);
      if (semicolon == std::string_view::npos || (!numeric && !named)) {
        malformed(at, at + 1, "\"&\" begins no reference such as \"&amp;\"");
      } else if (numeric && !character_of(name)) {
        malformed(at, semicolon + 1,
                  word_in_quotes(words.substr(at, semicolon + 1 - at)) + " names no character");
      } else if (named && !is_predefined(name)) {
        bool const known =
            seen_doctype_ && hypertext::reference_at(words.substr(at)).length == name.size() + 2;
        if (!known) entities_.emplace_back(at, semicolon + 1);
      }
    }
  }

  void read_doctype() {
    auto const begin = at_;
    if (seen_root_ || seen_doctype_) {
      malformed(begin, begin + 9, "a document type declaration stands in the wrong place");
      return;
    }
    seen_doctype_ = true;
    at_ += 9;
    std::string_view outside;  // the last literal: where the DTD is
    while (at_ < text_.size() && text_[at_] != '>') {
      char const c = text_[at_];
      if (c == '[') {
        add("xml-entities", Severity::error, begin, begin + 9,
            "the document type declaration holds declarations of its own (entities may be among "
            "them), which are not read",
            "take it out, from \"<!DOCTYPE\" to \"]>\", and write the characters that entities "
            "stood for");
        return;
      }
      if (c == '"' || c == '\'') {
        auto const close = text_.find(c, at_ + 1);
        if (close == std::string_view::npos) break;
        outside = text_.substr(at_ + 1, close - at_ - 1);
        at_ = close;
      }
      ++at_;
    }
    if (at_ >= text_.size() || text_[at_] != '>') {
      malformed(begin, begin + 9, "the document type declaration has no end");
      return;
    }
    ++at_;
    if (doctype_ == Doctype::refused) {
      add("doctype", Severity::error, begin, at_,
          "the file has a document type declaration, which this form must not have",
          "take it out, from \"<!DOCTYPE\" to \">\"")
          .printed = std::string{text_.substr(begin, std::min<std::size_t>(at_ - begin, 200))};
    } else if (!outside.empty()) {
      add("external-dtd", Severity::information, begin, at_,
          "the document type declaration names " + word_in_quotes(outside) +
              " outside the file; it was not looked up",
          "");
    }
  }

  void read_end_tag() {
    auto const begin = at_;
    at_ += 2;
    auto const name = read_name();
    skip_blanks();
    if (at_ >= text_.size() || text_[at_] != '>') {
      malformed(begin, at_,
                "the end tag " + word_in_quotes("</" + std::string{name}) + " has no \">\"");
      return;
    }
    ++at_;
    if (open_.empty()) {
      malformed(
          begin, at_,
          "the end tag " + word_in_quotes("</" + std::string{name} + ">") + " ends no element");
      return;
    }
    auto const element = open_.back();
    if (element.name != name) {
      malformed(begin, at_,
                "the element " + word_in_quotes(element.name) + " is ended by " +
                    word_in_quotes("</" + std::string{name} + ">"))
          .related.push_back({places_.at(element.begin, element.begin + 1), "it begins here"});
      return;
    }
    open_.pop_back();
  }

  void read_start_tag() {
    auto const begin = at_;
    ++at_;
    auto const name = read_name();
    if (name.empty()) {
      malformed(begin, begin + 1, "\"<\" begins no tag; as a sign it is written \"&lt;\"");
      return;
    }
    if (open_.empty() && seen_root_) {
      malformed(begin, at_,
                "a second outermost element, " + word_in_quotes(name) + ", follows the first");
      return;
    }
    seen_root_ = true;
    if (open_.size() >= limits_.depth) {
      add("xml-too-deep", Severity::error, begin, at_,
          "elements are nested more than " + std::to_string(limits_.depth) + " deep",
          "check that this is the right file; " + to_lift(limits_, ReadLimit::depth) +
              " takes in more");
      return;
    }
    if (!count(begin)) return;
    std::vector<std::string_view> attributes;
    while (sound_) {
      bool const parted = at_ < text_.size() && is_blank(text_[at_]);
      skip_blanks();
      if (at_ >= text_.size()) {
        malformed(begin, begin + 1 + name.size(),
                  "the tag " + word_in_quotes("<" + std::string{name}) + " has no \">\"");
      } else if (text_[at_] == '>') {
        ++at_;
        open_.push_back({name, begin});
        break;
      } else if (starts("/>"sv)) {
        at_ += 2;
        break;
      } else {
        read_attribute(name, parted, attributes);
      }
    }
    if (sound_) check_repeated(begin, name, attributes);
  }

  void read_attribute(std::string_view element, bool parted,
                      std::vector<std::string_view>& attributes) {
    auto const begin = at_;
    auto const name = read_name();
    if (name.empty() || !parted) {
      malformed(begin, begin, "the tag of " + word_in_quotes(element) + " is damaged");
      return;
    }
    skip_blanks();
    bool const equals = at_ < text_.size() && text_[at_] == '=';
    if (equals) ++at_;
    skip_blanks();
    char const quote = at_ < text_.size() ? text_[at_] : ' ';
    if (!equals || (quote != '"' && quote != '\'')) {
      malformed(begin, begin + name.size(),
                "the attribute " + word_in_quotes(name) + " has no value in quotation marks");
      return;
    }
    auto const close = text_.find(quote, at_ + 1);
    auto const value =
        text_.substr(at_ + 1, close == std::string_view::npos ? close : close - at_ - 1);
    if (close == std::string_view::npos || value.find('<') != std::string_view::npos) {
      malformed(
          begin, begin + name.size(),
          "the value of the attribute " + word_in_quotes(name) + " has no end, or holds \"<\"");
      return;
    }
    if (!count(begin)) return;
    check_references(at_ + 1, close);
    attributes.push_back(name);
    at_ = close + 1;
  }

  void check_repeated(std::size_t begin, std::string_view element,
                      std::vector<std::string_view>& attributes) {
    std::sort(attributes.begin(), attributes.end());
    auto const twice = std::adjacent_find(attributes.begin(), attributes.end());
    if (twice == attributes.end()) return;
    malformed(begin, begin + 1 + element.size(),
              "the attribute " + word_in_quotes(*twice) + " stands twice in " +
                  word_in_quotes("<" + std::string{element}));
  }

  void check_end() {
    auto const end = text_.find_last_not_of(kBlanks) + 1;
    if (!open_.empty()) {
      auto const element = open_.back();
      malformed(end, end, "the file ends within the element " + word_in_quotes(element.name))
          .related.push_back({places_.at(element.begin, element.begin + 1), "it begins here"});
    } else if (!seen_root_) {
      malformed(0, 0, "there is no element");
    }
  }

  // Only a DTD that was not read could declare them (section 4.1, "Entity Declared").
  void report_entities() {
    if (entities_.empty()) return;
    auto const [begin, end] = entities_.front();
    auto message = "nothing in the file says what " +
                   word_in_quotes(text_.substr(begin, end - begin)) + " stands for";
    if (entities_.size() > 1) {
      auto const more = entities_.size() - 1;
      message += more == 1 ? ", and so it is at one further place"
                           : ", and so it is at " + std::to_string(more) + " further places";
    }
    if (seen_doctype_) message += "; the references stay as they are printed";
    auto& finding =
        add("unknown-entity", seen_doctype_ ? Severity::warning : Severity::error, begin, end,
            std::move(message), "write the character itself, or its number as in \"&#8211;\"");
    finding.printed = std::string{text_.substr(begin, end - begin)};
    for (std::size_t i = 1; i < std::min(entities_.size(), kMaximumRelatedPlaces + 1); ++i) {
      finding.related.push_back(
          {places_.at(entities_[i].first, entities_[i].second), "not known here either"});
    }
  }

  std::string_view file_;
  std::string_view text_;
  PlaceIndex const& places_;
  ReadLimits const& limits_;
  Doctype doctype_;
  std::vector<Finding>& findings_;
  std::size_t at_{};
  std::size_t nodes_{};
  bool sound_{true};
  bool seen_root_{false};
  bool seen_doctype_{false};
  std::vector<Element> open_;
  std::vector<std::pair<std::size_t, std::size_t>> entities_;
};

}  // namespace

bool scan(std::string_view file, std::string_view text, PlaceIndex const& places,
          ReadLimits const& limits, Doctype doctype, std::vector<Finding>& findings) {
  return Scanner{file, text, places, limits, doctype, findings}.run();
}

std::string_view declared_encoding(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of(kBlanks), text.size()));
  if (text.substr(0, 6) != "<?xml "sv && text.substr(0, 6) != "<?xml\n"sv) return {};
  text = text.substr(0, text.find("?>"));
  auto const name = text.find("encoding");
  if (name == std::string_view::npos) return {};
  auto const quote = text.find_first_of("\"'", name);
  if (quote == std::string_view::npos) return {};
  auto const close = text.find(text[quote], quote + 1);
  if (close == std::string_view::npos) return {};
  return text.substr(quote + 1, close - quote - 1);
}

}  // namespace keydrift::xml
