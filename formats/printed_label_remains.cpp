#include "keydrift/formats/printed_label_remains.hpp"

#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostSpecks = 2;
constexpr std::size_t kMostSignsBehindLabel = 3;  // behind a label
constexpr std::string_view kLeadLetters = "abcdefghijklmnopqrstuvwxyz";

// Dirt and rules at a page's margin.
bool is_speck_behind_label(char32_t c) {
  return is_among(c, U"'`´’‘′.,·•*|^~_([«■▪") || is_dash(c);
}
// What a full stop or a bracket behind a number comes out as.
bool is_end_sign(char32_t c) { return is_among(c, U".,;:·•)]}>_'’*°") || is_dash(c); }
// What primes and stars come out as.
bool is_mark_remains(char32_t c) { return is_mark(c) || is_among(c, U"°¹,1lIi!;^"); }

// What the letter of a lead comes out as.
std::string_view looks_of_letter(char letter) {
  switch (letter) {
    case 'a':
      return "aoeA";
    case 'b':
      return "bh6B";
    case 'c':
      return "ceC";
    default:
      return {};
  }
}

class Remains {
 public:
  Remains(std::string_view line, MissingLabel const& missing) : line_{line}, missing_{missing} {}

  std::optional<Label> read() && {
    skip_specks();
    if (!take_number() || !take_letter() || !take_mark()) return std::nullopt;
    if (missing_.back && !take_bracket()) return std::nullopt;
    auto const before = at_;
    auto const signs = take_signs();
    // A letter needs the full stop to be a number, where numbers have one.
    bool const stop = signs == 1 && (line_[before] == '.' || line_[before] == ')');
    bool const closed = missing_.end == LabelEnd::none ? signs == 0 : stop;
    if (misread_ && !closed) return std::nullopt;
    auto const words = skip_blanks(line_, at_);
    auto const first = code_point_at(line_, words).value;
    bool const begins = missing_.upper ? is_upper(first) : is_letter(first);
    // "4,Legs", "4 .Legs": the sign may touch the words.
    if ((words == at_ && signs == 0) || !begins) return std::nullopt;
    auto label = unprinted_label(line_, words, missing_);
    // As of other labels, without the sign behind it that is right.
    bool const right = stop && line_[before] == (missing_.end == LabelEnd::dot ? '.' : ')');
    label.printed = line_.substr(0, right ? before : at_);
    label.back = back_;
    return label;
  }

 private:
  [[nodiscard]] char32_t value() const { return code_point_at(line_, at_).value; }
  void step() { at_ += code_point_at(line_, at_).length; }

  void skip_specks() {
    for (std::size_t specks = 0; specks < kMostSpecks && is_speck_behind_label(value()); ++specks) {
      auto const before = at_;
      bool const dash = is_dash(value());
      step();
      auto const behind = skip_blanks(line_, at_);
      // "- 4 spines": the dash of a further lead, which counts.
      if (dash && behind > at_) {
        at_ = before;
        return;
      }
      at_ = behind;
      specks_ = true;
    }
  }

  bool take_number() {
    auto const digits = std::to_string(missing_.number);
    for (std::size_t d = 0; d < digits.size(); ++d) {
      char const digit = digits[d];
      auto const c = value();
      // "V. Legs" for 1' and 7'
      if (missing_.marked && d + 1 == digits.size() && c == 'V' && (digit == '1' || digit == '7')) {
        misread_ = with_mark_ = true;
        step();
        break;
      }
      if (c != static_cast<char32_t>(digit)) {
        if (!may_replace_figure(c, static_cast<std::uint32_t>(digit - '0'))) return false;
        misread_ = true;
      }
      step();
    }
    // "S. Legs" may be misread; "'S. Legs" is no number.
    if (misread_ && specks_) return false;
    return missing_.marked || missing_.letter == 'b' || missing_.back || !is_digit(value());
  }

  bool take_letter() {
    if (missing_.letter == '\0') return true;
    auto const blank = skip_blanks(line_, at_);
    auto const c = code_point_at(line_, blank);
    bool const seen = c.length == 1 &&
                      looks_of_letter(missing_.letter).find(line_[blank]) != std::string_view::npos;
    if (seen && !is_letter(code_point_at(line_, blank + 1).value)) {
      at_ = blank + 1;
      return true;
    }
    return false;
  }

  bool take_mark() {
    if (!missing_.marked || with_mark_) return true;
    auto const blank = skip_blanks(line_, at_);
    if (!is_mark_remains(code_point_at(line_, blank).value)) return false;
    at_ = blank;
    step();
    return true;
  }

  // "(l)", "(1J", "{1)", and "l1)" or "1)" where the first bracket is a letter or lost.
  bool take_bracket() {
    constexpr std::size_t kMost = 4;  // characters
    auto const begin = skip_blanks(line_, at_);
    bool const opens = is_among(code_point_at(line_, begin).value, U"([{");
    bool const letter = begin == at_ && is_among(value(), U"lItC");
    if (!opens && !letter && !(begin == at_ && is_digit(value()))) return true;  // none
    auto const inside = opens || letter ? begin + 1 : begin;
    auto const is_one = [](char32_t c) { return is_digit(c) || is_among(c, U"lIi!|OoSB"); };
    auto end = inside;
    while (end - inside < kMost && is_one(code_point_at(line_, end).value)) ++end;
    bool const closes = is_among(code_point_at(line_, end).value, U")]}jJ");
    if (!opens && !closes) return false;
    if (end == inside) return true;
    auto const number = line_.substr(inside, end - inside);
    if (only_figures(number)) back_ = number;
    at_ = end + (closes ? 1 : 0);
    return true;
  }

  std::size_t take_signs() {
    std::size_t signs = 0;
    while (signs < kMostSignsBehindLabel && is_end_sign(value())) {
      step();
      ++signs;
    }
    return signs;
  }

  std::string_view line_;
  MissingLabel const& missing_;
  std::size_t at_{};
  std::string_view back_;  // the number in the bracket
  bool specks_{false};
  bool misread_{false};    // letters stand for digits
  bool with_mark_{false};  // one for the last digit and the mark behind it
};

}  // namespace

Label unprinted_label(std::string_view line, std::size_t words_at, MissingLabel const& missing) {
  Label label;
  label.number = missing.number;
  label.end = missing.end;
  label.marks = missing.marked ? 1 : 0;
  if (missing.letter != '\0')
    label.letter = kLeadLetters.substr(static_cast<std::size_t>(missing.letter - 'a'), 1);
  label.printed = line.substr(0, 0);
  label.text_at = words_at;
  return label;
}

std::optional<Label> remains_of_label(std::string_view line, MissingLabel const& missing) {
  return Remains{line, missing}.read();
}

std::optional<Label> remains_of_dash(std::string_view line) {
  auto const first = code_point_at(line, 0);
  if (first.length == 0) return std::nullopt;
  bool const dash = is_dash(first.value);
  auto end = first.length;
  if (dash) {  // "-, Legs"
    if (!is_among(code_point_at(line, end).value, U",.;")) return std::nullopt;
    ++end;
  } else if (auto const behind = skip_blanks(line, end);
             is_speck_behind_label(first.value) &&
             is_dash(code_point_at(line, behind).value)) {  // ". - Legs"
    end = behind + code_point_at(line, behind).length;
  } else if (!is_among(first.value, U"_~.·•=")) {
    return std::nullopt;
  }
  auto const words = skip_blanks(line, end);
  if (words == end || !is_upper(code_point_at(line, words).value)) return std::nullopt;
  Label label;
  label.family = LabelFamily::dash;
  label.printed = line.substr(0, end);
  label.text_at = words;
  return label;
}

}  // namespace keydrift::printed
