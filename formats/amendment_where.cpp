#include "keydrift/formats/amendment_where.hpp"

#include <array>
#include <string>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostBytesBeforeLead = 300;
constexpr std::size_t kLastLikelyCouplet = 1500;  // a larger number without a noun is a year

class PlaceFinder {
 public:
  PlaceFinder(std::vector<Token> const& tokens, std::optional<WordChange> const& change)
      : tokens_{tokens}, change_{change} {}

  NamedPlaces find() && {
    read_numbers();
    return std::move(found_);
  }

 private:
  [[nodiscard]] Sense sense_at(std::size_t i) const {
    return i < tokens_.size() ? tokens_[i].sense : Sense::stop;
  }

  [[nodiscard]] bool is_changed_words(Token const& token) const {
    if (!change_) return false;
    auto const in = [&](TextSpan const& span) {
      return token.begin >= span.begin && token.begin < span.end;
    };
    return in(change_->from_at) || in(change_->to_at);
  }

  // "3 mm", "5 %": no number of a couplet.
  [[nodiscard]] bool measures(std::size_t i) const {
    static constexpr std::array<std::string_view, 6> kUnits{"mm", "cm", "m", "µm", "μm", "%"};
    if (i + 1 >= tokens_.size()) return false;
    return is_one_of(kUnits, tokens_[i + 1].text);
  }

  [[nodiscard]] bool may_be_number(std::size_t i) const {
    if (measures(i)) return false;
    if (i == 0) return true;
    switch (tokens_[i - 1].sense) {
      case Sense::couplet:
        return true;
      case Sense::after:
      case Sense::before:
      case Sense::between:
      case Sense::remove:
      case Sense::replace:
      case Sense::insert:
      case Sense::add:
      case Sense::change:
      case Sense::modification:
      case Sense::instead:
      case Sense::becomes:
      case Sense::colon:
      case Sense::stop:
      case Sense::ordinal: {
        std::size_t number = 0;
        for (char const c : tokens_[i].text) {
          if (c < '0' || c > '9' || number > kLastLikelyCouplet) break;
          number = number * 10 + static_cast<std::size_t>(c - '0');
        }
        return number <= kLastLikelyCouplet;
      }
      default:
        return false;
    }
  }

  void read_numbers() {
    for (std::size_t i = 0; i < tokens_.size();) {
      auto const& token = tokens_[i];
      if (is_changed_words(token)) {
        ++i;
      } else if (token.sense == Sense::line || token.sense == Sense::page) {
        i = read_line_or_page(i);
      } else if (token.sense == Sense::ordinal) {
        // "the second lead", "the second half of couplet 3"; not "the first of the couplets".
        if (sense_at(i + 1) == Sense::couplet || is_half(i + 1)) found_.lead = token.number - 1;
        ++i;
      } else if (auto const couplet = couplet_of_lead(i)) {
        i = couplet;
      } else if (token.sense == Sense::label && may_be_number(i)) {
        i = read_list(i);
      } else {
        ++i;
      }
    }
  }

  // "p. 12", "line 2": index behind it.
  std::size_t read_line_or_page(std::size_t i) {
    auto const next = i + 1;
    if (sense_at(next) != Sense::label) return next;
    if (tokens_[i].sense == Sense::line) {
      std::uint32_t number = 0;
      for (char const c : tokens_[next].text) {
        if (c < '0' || c > '9' || number > 9999) break;
        number = number * 10 + static_cast<std::uint32_t>(c - '0');
      }
      if (number > 0) found_.line = number;
    }
    auto end = next + 1;
    while (sense_at(end) == Sense::through && sense_at(end + 1) == Sense::label) end += 2;
    return end;
  }

  // "half of couplet 3", "Teil von Punkt 3", or at the end of a heading; not "part of the paper".
  [[nodiscard]] bool is_half(std::size_t i) const {
    static constexpr std::array<std::string_view, 11> kHalves{
        "half",   "part",  "halfte", "haelfte", "teil", "moitie",
        "partie", "mitad", "parte",  "metade",  "pars"};
    if (i >= tokens_.size() || !is_one_of(kHalves, plain_words(tokens_[i].text))) return false;
    auto next = i + 1;
    while (next < i + 3 && next < tokens_.size() && tokens_[next].sense == Sense::other) ++next;
    return next == i + 1 ? sense_at(next) != Sense::other : sense_at(next) == Sense::couplet;
  }

  [[nodiscard]] bool is_lead_noun(std::size_t i) const {
    static constexpr std::array<std::string_view, 5> kNouns{"lead", "leads", "half couplet",
                                                            "alternative", "alternativen"};
    return sense_at(i) == Sense::couplet && is_one_of(kNouns, plain_words(tokens_[i].text));
  }

  // "lead 2", "lead b" at `i`: the second one.
  [[nodiscard]] std::optional<std::uint32_t> numbered_lead(std::size_t i) const {
    if (!is_lead_noun(i) || i + 1 >= tokens_.size() || tokens_[i + 1].text.size() != 1) {
      return std::nullopt;
    }
    auto const sign = tokens_[i + 1].text[0];
    if (sign >= '1' && sign <= '9') return static_cast<std::uint32_t>(sign - '1');
    bool const letter = sign >= 'a' && sign <= 'h';
    return letter ? std::optional{static_cast<std::uint32_t>(sign - 'a')} : std::nullopt;
  }

  // "lead 2 of couplet 3" at `i`: index of the couplet's number; 0 where nothing says so.
  [[nodiscard]] std::size_t couplet_of_lead(std::size_t i) {
    if (sense_at(i + 1) != Sense::label) return 0;
    auto const lead = numbered_lead(i);
    auto next = i + 2;
    while (next < i + 4 && sense_at(next) == Sense::other) ++next;
    bool const couplet = next > i + 2 && sense_at(next) == Sense::couplet && !is_lead_noun(next) &&
                         sense_at(next + 1) == Sense::label;
    if (!lead || !couplet) return 0;
    found_.lead = lead;
    return next + 1;
  }

  // "b of couplet" before a number: the letter of the lead.
  [[nodiscard]] std::string letter_before(std::size_t i) const {
    if (i < 3 || tokens_[i - 1].sense != Sense::couplet) return {};
    auto const& letter = tokens_[i - 3].text;
    bool const named = i >= 4 && tokens_[i - 4].sense == Sense::couplet;
    bool const one = letter.size() == 1 && letter[0] >= 'a' && letter[0] <= 'h';
    return named && one ? std::string{letter} : std::string{};
  }

  std::size_t read_list(std::size_t i) {
    NumberList list;
    list.first = i;
    list.noun = i > 0 && tokens_[i - 1].sense == Sense::couplet;
    auto const letter = letter_before(i);
    while (true) {
      auto label = std::string{tokens_[i].text} + letter;
      list.ranges.push_back({label, label, false});
      ++i;
      bool const range =
          (sense_at(i) == Sense::through || is_number_range(i)) && sense_at(i + 1) == Sense::label;
      if (range) {
        list.ranges.back().last = std::string{tokens_[i + 1].text};
        i += 2;
      }
      if (sense_at(i) == Sense::onwards) {
        list.ranges.back().onwards = true;
        ++i;
      }
      auto next = i;
      while (sense_at(next) == Sense::joins) ++next;
      // "couplet 3, lead 2"; but "leads 3 and 4".
      auto const lead = numbered_lead(next);
      if (lead && !range && list.ranges.size() == 1 && !is_lead_noun(list.first - 1)) {
        found_.lead = lead;
        i = next + 2;
        break;
      }
      if (next == i) break;
      if (sense_at(next) == Sense::couplet) ++next;
      if (sense_at(next) != Sense::label || measures(next)) break;
      i = next;
    }
    list.last = i;
    found_.couplets.push_back(std::move(list));
    return i;
  }

  // "12 to 14", "12 à 14", "12 a 14".
  [[nodiscard]] bool is_number_range(std::size_t i) const {
    if (sense_at(i) != Sense::becomes) return false;
    auto const word = plain_words(tokens_[i].text);
    bool const plural = i >= 2 && tokens_[i - 2].sense == Sense::couplet &&
                        plain_words(tokens_[i - 2].text).back() != 't';
    return (word == "to" || word == "a" || word == "ad") && plural;
  }

  std::vector<Token> const& tokens_;
  std::optional<WordChange> const& change_;
  NamedPlaces found_;
};

// "should", "muss", "as follows": what may stand between a lead's number and its new words.
bool joins_lead_to_words(Token const& token) {
  static constexpr std::array<std::string_view, 30> kWords{
      "should", "must", "is",   "be",   "now",  "the",   "of",    "half",  "as",  "follows",
      "thus",   "soll", "muss", "wird", "ist",  "wie",   "folgt", "doit",  "est", "se",
      "comme",  "suit", "debe", "es",   "como", "sigue", "deve",  "segue", "ita", "so"};
  return token.sense == Sense::bracket || (is_one_of(kWords, plain_words(token.text)) &&
                                           !is_upper(code_point_at(token.text, 0).value));
}

}  // namespace

NamedPlaces read_where(std::vector<Token> const& tokens, std::optional<WordChange> const& change) {
  return PlaceFinder{tokens, change}.find();
}

std::size_t words_before_lead(std::string_view text) {
  auto const tokens = read_words(start_of(text, kMostBytesBeforeLead));
  bool noun = false;
  bool number = false;
  bool verb = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    auto const& token = tokens[i];
    switch (token.sense) {
      case Sense::couplet:
        noun = true;
        continue;
      case Sense::label:
        number = true;
        continue;
      case Sense::read:
      case Sense::replace:
        if (!number) return 0;
        verb = true;
        continue;
      case Sense::ordinal:
      case Sense::joins:
      case Sense::page:
      case Sense::line:
      case Sense::becomes:
        continue;
      case Sense::stop:
      case Sense::colon: {
        // "3b. should read", "3b: should read".
        bool const goes_on =
            !verb && i + 1 < tokens.size() &&
            (tokens[i + 1].sense == Sense::read || joins_lead_to_words(tokens[i + 1]));
        if (number && goes_on) continue;
        return token.sense == Sense::colon && number && (noun || verb) ? token.end : 0;
      }
      default:
        if (joins_lead_to_words(token)) continue;
        return number && verb ? token.begin : 0;
    }
  }
  return 0;
}

}  // namespace keydrift::printed
