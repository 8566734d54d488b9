#include "keydrift/formats/amendment_renumbering.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

#include "keydrift/formats/amendment_words.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostWordsBetween = 6;  // "… 8–13 are to be renumbered as couplets 9–14"

bool renumbers(Token const& token) {
  static constexpr std::array kWords{
      "renumber"sv,        "renumbered"sv,   "renumbers"sv,     "renumbering"sv, "umnummerieren"sv,
      "umzunummerieren"sv, "umnummeriert"sv, "umzubeziffern"sv, "nummeriert"sv,  "numeriert"sv,
      "renumeroter"sv,     "renumerotes"sv,  "renumerotees"sv,  "renumerotez"sv, "renumerar"sv,
      "renumerense"sv,     "renumeran"sv,    "renumerarse"sv,   "renumerados"sv, "renumeradas"sv,
      "renumeram"sv,       "renumerem"sv,    "renumerentur"sv,  "numerantur"sv,  "numerentur"sv,
      "renumerandi"sv};
  return token.sense != Sense::quote && is_one_of(kWords, plain_words(token.text));
}

// "Become", and what may mean it between two lists of numbers.
bool is_becoming(Token const& token) {
  static constexpr std::array kWords{
      "become"sv,     "becomes"sv, "werden"sv, "wird"sv,         "deviennent"sv,
      "devient"sv,    "pasan a"sv, "pasan"sv,  "pasa"sv,         "passam"sv,
      "passa"sv,      "fiunt"sv,   "fit"sv,    "passam a ser"sv, "passa a ser"sv,
      "convierten"sv, "tornam"sv,  "fiant"sv,  "erhalten"sv};
  return is_one_of(kWords, plain_words(token.text));
}

// Words that may stand beside the numbers without saying anything else of them.
bool goes_with_numbers(Token const& token) {
  static constexpr std::array kWords{
      "as"sv,         "als"sv,       "comme"sv,       "como"sv,         "be"sv,       "are"sv,
      "is"sv,         "now"sv,       "the"sv,         "new"sv,          "nun"sv,      "jetzt"sv,
      "die"sv,        "der"sv,       "ser"sv,         "les"sv,          "los"sv,      "las"sv,
      "os"sv,         "sind"sv,      "sont"sv,        "should"sv,       "must"sv,     "will"sv,
      "se"sv,         "then"sv,      "thus"sv,        "respectively"sv, "old"sv,      "former"sv,
      "bisherigen"sv, "bisherige"sv, "alten"sv,       "anciens"sv,      "antiguos"sv, "antigos"sv,
      "existing"sv,   "previous"sv,  "present"sv,     "original"sv,     "den"sv,      "o"sv,
      "le"sv,         "el"sv,        "accordingly"sv, "entsprechend"sv, "have"sv,     "therefore"sv,
      "thereby"sv,    "dadurch"sv,   "damit"sv,       "somit"sv,        "demnach"sv,  "dann"sv,
      "kunftig"sv,    "ainsi"sv,     "donc"sv,        "alors"sv,        "entonces"sv, "asi"sv,
      "entao"sv,      "assim"sv};
  return token.sense == Sense::couplet || token.sense == Sense::becomes || renumbers(token) ||
         is_becoming(token) || is_one_of(kWords, plain_words(token.text));
}

class RenumberingFinder {
 public:
  explicit RenumberingFinder(std::string_view text) : text_{text}, tokens_{read_words(text)} {}

  [[nodiscard]] std::optional<RenumberingRead> find() const {
    // "Couplets 8–13 are replaced by …" gives no number to an old couplet.
    bool const replaces = std::any_of(tokens_.begin(), tokens_.end(), [](Token const& token) {
      return token.sense == Sense::replace || token.sense == Sense::quote;
    });
    if (replaces) return std::nullopt;
    // "8 to 13" is a list, unless nothing but that "to" parts old numbers from new ones.
    for (bool const words : {true, false}) {
      for (std::size_t i = 0; i < tokens_.size(); ++i) {
        if (tokens_[i].sense != Sense::label || !is_named(i)) continue;
        if (auto found = from_list(i, words)) return found;
      }
    }
    return accordingly();
  }

 private:
  struct Numbers {
    std::vector<LabelRange> ranges;
    std::size_t end{};  // behind them
  };

  [[nodiscard]] std::size_t first_verb() const {
    return static_cast<std::size_t>(std::find_if(tokens_.begin(), tokens_.end(), renumbers) -
                                    tokens_.begin());
  }
  [[nodiscard]] Sense sense_at(std::size_t i) const {
    return i < tokens_.size() ? tokens_[i].sense : Sense::stop;
  }

  // "couplets 8–13", "couplets (old) 8–13", "renumber 8–13".
  [[nodiscard]] bool is_named(std::size_t i) const {
    for (auto at = i; at > 0 && i - at < 3; --at) {
      auto const& before = tokens_[at - 1];
      if (before.sense == Sense::couplet || renumbers(before)) return true;
      if (before.sense == Sense::label) return false;
    }
    return false;
  }

  // "8–13", "8 and 9", "8, 9 and 11–13" from the token `i` on.
  [[nodiscard]] Numbers numbers_at(std::size_t i, bool words) const {
    Numbers found;
    while (true) {
      auto label = std::string{tokens_[i].text};
      found.ranges.push_back({label, label, false});
      ++i;
      bool const ranges =
          (sense_at(i) == Sense::through || (words && is_to(i))) && sense_at(i + 1) == Sense::label;
      if (ranges) {
        found.ranges.back().last = std::string{tokens_[i + 1].text};
        i += 2;
      }
      found.end = i;
      auto next = i;
      while (sense_at(next) == Sense::joins) ++next;
      if (next == i || sense_at(next) != Sense::label) return found;
      i = next;
    }
  }
  [[nodiscard]] bool is_to(std::size_t i) const {
    static constexpr std::array kWords{"to"sv, "a"sv, "ad"sv};
    return sense_at(i) == Sense::becomes && is_one_of(kWords, plain_words(tokens_[i].text));
  }

  [[nodiscard]] std::optional<RenumberingRead> from_list(std::size_t i, bool words) const {
    auto const old = numbers_at(i, words);
    auto at = old.end;
    bool says = first_verb() < i && i - first_verb() <= kMostWordsBetween;
    while (at < tokens_.size() && at - old.end <= kMostWordsBetween &&
           goes_with_numbers(tokens_[at])) {
      says = says || renumbers(tokens_[at]) || is_becoming(tokens_[at]);
      ++at;
    }
    if (!says || at == old.end || sense_at(at) != Sense::label) return std::nullopt;
    auto const fresh = numbers_at(at, words);
    // "Couplets 8 and 9 become 12 mm wide" speaks of something else.
    auto end = fresh.end;
    while (end < tokens_.size() && goes_with_numbers(tokens_[end])) ++end;
    bool const closed = end == tokens_.size() || sense_at(end) == Sense::stop ||
                        sense_at(end) == Sense::joins || sense_at(end) == Sense::colon ||
                        tokens_[end].text == ")";
    if (!closed) return std::nullopt;
    return RenumberingRead{{old.ranges, fresh.ranges}, without(begin_before(i), end)};
  }

  // "Subsequent couplets are renumbered accordingly".
  [[nodiscard]] std::optional<RenumberingRead> accordingly() const {
    static constexpr std::array kThoseBehind{
        "subsequent"sv, "following"sv,     "remaining"sv, "later"sv,     "succeeding"sv,
        "folgenden"sv,  "nachfolgenden"sv, "ubrigen"sv,   "weiteren"sv,  "suivants"sv,
        "suivantes"sv,  "siguientes"sv,    "seguintes"sv, "sequentes"sv, "restantes"sv};
    auto const verb = first_verb();
    if (verb == tokens_.size()) return std::nullopt;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (!is_one_of(kThoseBehind, plain_words(tokens_[i].text))) continue;
      bool const couplets =
          sense_at(i + 1) == Sense::couplet || (i > 0 && tokens_[i - 1].sense == Sense::couplet);
      auto const from = std::min(i, verb);
      auto end = std::max(i, verb) + 1;
      bool const near = end - from <= kMostWordsBetween;
      bool const numbered =
          std::any_of(tokens_.begin() + static_cast<std::ptrdiff_t>(from),
                      tokens_.begin() + static_cast<std::ptrdiff_t>(end),
                      [](Token const& token) { return token.sense == Sense::label; });
      if (!couplets || !near || numbered) continue;
      while (end < tokens_.size() && goes_with_numbers(tokens_[end])) ++end;
      if (sense_at(end) == Sense::label) continue;
      return RenumberingRead{{}, without(begin_before(from), end)};
    }
    return std::nullopt;
  }

  // The token that the words about numbers begin with.
  [[nodiscard]] std::size_t begin_before(std::size_t i) const {
    while (i > 0 && goes_with_numbers(tokens_[i - 1])) --i;
    while (i > 0 && (tokens_[i - 1].sense == Sense::joins || tokens_[i - 1].text == "(")) --i;
    return i;
  }

  [[nodiscard]] std::string without(std::size_t begin, std::size_t end) const {
    while (end < tokens_.size() &&
           (sense_at(end) == Sense::joins || tokens_[end].text == ")" ||
            (begin == 0 && (sense_at(end) == Sense::stop || sense_at(end) == Sense::colon)))) {
      ++end;
    }
    auto const before = begin == 0 ? std::string_view{} : text_.substr(0, tokens_[begin].begin);
    auto const after =
        end == tokens_.size() ? std::string_view{} : text_.substr(tokens_[end].begin);
    return squeeze(std::string{before} + " " + std::string{after});
  }

  std::string_view text_;
  std::vector<Token> tokens_;
};

}  // namespace

std::optional<RenumberingRead> find_renumbering(std::string_view text) {
  return RenumberingFinder{text}.find();
}

bool speaks_of_renumbering(std::vector<Token> const& tokens) {
  return std::any_of(tokens.begin(), tokens.end(), renumbers);
}

}  // namespace keydrift::printed
