#include "keydrift/characters/reading/numbered_parts.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "keydrift/characters/units.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

// Which numbers stand behind a part, and how they are joined.
struct PartNumbers {
  Index end{};
  bool several{false};  // "1 and 2", "2–4"
  bool range{false};    // nothing but "2–4"
  bool listed{false};   // by "and": no count is printed so
  bool choice{false};   // by "or"
};

class PartNamer {
 public:
  PartNamer(LeadText& text, Clause const& clause) : text_{text}, clause_{clause} {}

  void run() {
    bool named = false;
    for (auto i = clause_.begin; i < clause_.end; ++i) {
      if (text_.tokens[i].kind != TokenKind::number) continue;
      if (i == clause_.begin || !plain(i)) continue;
      auto const end = named && behind_comparison(i) ? end_of_compared(i) : end_of_name(i);
      if (end == i) continue;
      name(i, end);
      named = true;
      i = end - 1;
    }
  }

 private:
  [[nodiscard]] bool open(Index at) const {
    return at >= clause_.begin && at < clause_.end && text_.is_open(at) &&
           !text_.tokens[at].formula;
  }
  [[nodiscard]] bool word(Index at) const { return open(at) && text_.is_word(at); }
  [[nodiscard]] bool is(Index at, std::uint32_t classes) const {
    return word(at) && text_.info[at].is(classes);
  }
  [[nodiscard]] bool sign(Index at, char32_t wanted) const {
    return open(at) && text_.is_sign(at, wanted);
  }

  // A whole number in digits that may well number something.
  [[nodiscard]] bool plain(Index at) const {
    constexpr double kMost = 99;
    if (!open(at) || text_.tokens[at].kind != TokenKind::number) return false;
    auto const& token = text_.tokens[at];
    return !token.is_fraction && token.value >= 1 && token.value <= kMost &&
           token.end - token.begin == token.word.size() &&
           std::all_of(token.word.begin(), token.word.end(),
                       [](char c) { return c >= '0' && c <= '9'; });
  }

  // "3", "1 and 2", "2–4", "1, 3 and 4", "1 or 2": the numbers that begin at `at`.
  [[nodiscard]] PartNumbers numbers(Index at) const {
    PartNumbers found{.end = at + 1};
    bool open_list = false;  // a comma wants an "and" behind it
    auto end = at + 1;
    for (;;) {
      bool const spans = sign(end, U'-') || is(end, kTo);
      bool const lists = is(end, kAnd) || sign(end, U'&');
      bool const choice = is(end, kOr);
      bool const comma = sign(end, U',');
      if (!(spans || lists || choice || comma) || !plain(end + 1)) break;
      if (spans && text_.tokens[end - 1].value >= text_.tokens[end + 1].value) break;
      open_list = comma || (spans && open_list);
      end += 2;
      found.choice = found.choice || choice;
      found.listed = found.listed || lists;
      found.range = spans && !found.several;
      if (open_list) continue;
      found.several = true;
      found.end = end;
    }
    return found;
  }

  // What stands behind makes a measure, a factor or a count of the number: "3 mm", "3 times",
  // "3-lobed", "3(–4)".
  [[nodiscard]] bool measures(Index at) const {
    if (at >= clause_.end) return false;
    auto const& token = text_.tokens[at];
    if (token.kind == TokenKind::mark) return false;
    if (token.kind == TokenKind::number) return false;  // "flagellomere 1 2.5 times"
    if (token.kind == TokenKind::sign) {
      if (token.sign == U'(') {
        return at + 1 < clause_.end && (text_.tokens[at + 1].kind == TokenKind::number ||
                                        text_.is_sign(at + 1, U'-') || is(at + 1, kOr));
      }
      if (token.sign == U'-') {
        if (at + 1 >= clause_.end) return false;
        auto const& next = text_.tokens[at + 1];
        return next.kind == TokenKind::number || (!token.blank_before && !next.blank_before);
      }
      static constexpr std::u32string_view kMeasuring{U"%°×\"+/~:"};
      return kMeasuring.find(token.sign) != std::u32string_view::npos &&
             !(token.sign == U':' && at + 1 < clause_.end &&
               text_.tokens[at + 1].kind != TokenKind::number);
    }
    if (!token.blank_before) return true;  // "2n", "3x"
    static constexpr std::array<std::string_view, 4> kTimes{"x", "mal", "pairs", "pair"};
    if (is_one_of(kTimes, token.word)) return true;
    // "2 thirds as long"
    if (token.word.ends_with('s') && denominator(token.word) > 0) return true;
    if (is(at, kTo) && at + 1 < clause_.end && text_.tokens[at + 1].kind == TokenKind::number) {
      return true;
    }
    auto const phrases = qualifiers_at(text_, at, clause_.end);
    bool const qualified = std::any_of(phrases.begin(), phrases.end(), [](Phrased const& phrase) {
      return phrase.meaning.sense == Sense::times || phrase.meaning.sense == Sense::or_more ||
             phrase.meaning.sense == Sense::or_less;
    });
    return qualified || (token.word != "in" && canonical_unit(token.word).has_value());
  }

  [[nodiscard]] bool ends(Index at) const {
    return at >= clause_.end || sign(at, U',') || text_.is_sign(at, U')') ||
           text_.tokens[at].kind == TokenKind::mark || !text_.is_open(at);
  }

  // "longer than", "as long as", "länger als", "plus long que"
  [[nodiscard]] bool behind_comparison(Index at) const {
    if (at < clause_.begin + 2 || !word(at - 1) || !word(at - 2)) return false;
    static constexpr std::array<std::string_view, 7> kJoining{"than", "als",  "as",    "wie",
                                                              "que",  "como", "quanto"};
    return is_one_of(kJoining, text_.tokens[at - 1].word) && !text_.info[at - 2].dimension.empty();
  }

  // "antennomere 3 longer than 4": another of them.
  [[nodiscard]] Index end_of_compared(Index at) const {
    auto const found = numbers(at);
    return measures(found.end) ? at : found.end;
  }

  // "article" of "l'article".
  [[nodiscard]] static std::string_view without_elision(std::string_view word) {
    for (std::string_view const elided : {"l'", "l’"}) {
      if (word.starts_with(elided)) return word.substr(elided.size());
    }
    return word;
  }

  // Behind the numbers that belong to the name of the part in front of `at`.
  [[nodiscard]] Index end_of_name(Index at) const {
    auto const noun = at - 1;
    if (!word(noun)) return at;
    auto const info = word_info(without_elision(text_.tokens[noun].word), text_.language);
    bool const numbered = info.is(kNumbered);
    if (!numbered && !(info.is(kPart) && has_twin(noun, at))) return at;
    static constexpr std::array<std::string_view, 8> kEach{"each", "every", "per",   "pro",
                                                           "je",   "jede",  "jedes", "chaque"};
    if (noun > clause_.begin && word(noun - 1) && is_one_of(kEach, text_.tokens[noun - 1].word)) {
      return at;
    }
    auto const found = numbers(at);
    if (measures(found.end)) return at;
    bool const named = looks_plural(text_.tokens[noun].word) ? names_several(noun, found)
                                                             : names_one(noun, at, found);
    return named ? found.end : at;
  }

  [[nodiscard]] bool names_one(Index noun, Index at, PartNumbers const& found) const {
    if (found.range) return false;
    // "Spur 1" alone may count; with more behind it, and with any other number, it does not.
    bool const alone = ends(found.end) || is(found.end, kOr);
    return !alone || pointed_at(noun) || (text_.tokens[at].value != 1 && !found.choice);
  }

  // "Tergites 2–4 with spots", "segments 1 and 2"; "segments 5–7" alone is a count, and so are
  // the numbers of what grows in any number.
  [[nodiscard]] bool names_several(Index noun, PartNumbers const& found) const {
    if (!found.several || found.choice) return false;
    if (found.listed || pointed_at(noun)) return true;
    auto const behind = found.end;
    if (ends(behind) || is(behind, kOr | kAnd) || grows(noun)) return false;
    if (is(behind, kPreposition)) return is(behind, kWith | kOf);
    return true;
  }

  // "on tergites 2–4", "longer than segment 1", "0.5× article 1"
  [[nodiscard]] bool pointed_at(Index noun) const {
    if (noun > clause_.begin && sign(noun - 1, 0xD7)) return true;
    auto before = noun;
    while (before > clause_.begin && word(before - 1) && text_.is_content(before - 1) &&
           !text_.info[before - 1].is(kPreposition) && noun - before < 2) {
      --before;
    }
    if (before == clause_.begin || !word(before - 1)) return false;
    auto const& info = text_.info[before - 1];
    if (info.is(kWith)) return false;
    return info.is(kPreposition | kOf | kTo | kArticle) || text_.is_word(before - 1, "as") ||
           text_.is_word(before - 1, "wie") || text_.is_word(before - 1, "que");
  }

  // "leaf segments", "calyx segments"
  [[nodiscard]] bool grows(Index noun) const {
    static constexpr std::array<std::string_view, 16> kGrowing{
        "leaf",  "calyx",    "corolla", "perianth", "perigone", "frond",   "pod",       "fruit",
        "sepal", "ultimate", "petal",   "blade",    "lamina",   "lateral", "secondary", "main"};
    return noun > clause_.begin && word(noun - 1) &&
           is_one_of(kGrowing, text_.tokens[noun - 1].word);
  }

  // "spine 1 half as long as spine 2"
  [[nodiscard]] bool has_twin(Index noun, Index number) const {
    auto const& name = text_.tokens[noun].word;
    if (looks_plural(name)) return false;
    for (auto i = clause_.begin; i + 1 < clause_.end; ++i) {
      bool const numbered = plain(i + 1) || text_.tokens[i + 1].names_part;
      if (i != noun && text_.is_word(i, name) && numbered &&
          text_.tokens[i + 1].word != text_.tokens[number].word) {
        return true;
      }
    }
    return false;
  }

  void name(Index begin, Index end) {
    auto& noun = text_.tokens[begin - 1].word;
    if (auto const word = without_elision(noun); word.size() < noun.size()) {
      noun = std::string{word};
    }
    for (auto i = begin; i < end; ++i) {
      auto& token = text_.tokens[i];
      if (token.kind == TokenKind::number) {
        token.kind = TokenKind::word;
        token.names_part = true;
        text_.info[i].classes = kPart;
      } else if (token.kind == TokenKind::sign && token.sign == U',') {
        token.formula = true;  // parts no statements here
      }
    }
  }

  LeadText& text_;
  Clause const& clause_;
};

}  // namespace

void name_numbered_parts(LeadText& text, std::vector<Clause> const& clauses) {
  for (auto const& clause : clauses) PartNamer{text, clause}.run();
}

}  // namespace keydrift::reading
