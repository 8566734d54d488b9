#include "keydrift/characters/reading/qualifiers.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

bool is_german(LeadText const& text) { return text.language.substr(0, 2) == "de"; }

class ExceptionReader {
 public:
  ExceptionReader(LeadText& text, Clause const& clause, Genera const& genera, Qualifiers& found)
      : text_{text}, clause_{clause}, genera_{genera}, found_{found} {}

  // An exception that begins at tokens[at]; gives where to go on.
  Index read(Index at) {
    Index end = at;
    bool only_names = false;
    for (auto const& phrase : qualifiers_at(text_, at, clause_.end)) {
      if (phrase.meaning.sense != Sense::exception) continue;
      end = phrase.end;
      only_names = phrase.meaning.needs_context;
    }
    if (end == at && begins_name(at)) return name_excepted(at);
    if (end == at) return state_in_group(at);
    if (end < clause_.end && text_.is_sign(end, U'.') && text_.info[end - 1].is(kAbbreviation)) {
      ++end;
    }
    auto i = end;
    while (i < clause_.end && leads_to_name(i)) ++i;
    Exception exception;
    auto const names_end = read_names(i, exception.groups);
    if (!exception.groups.empty()) {
      exception.begin = at;
      exception.end = trailing_words(names_end);
      return keep(std::move(exception));
    }
    if (only_names) return at + 1;
    if (auto const next = other_sex(at, i); next > at) return next;
    return unnamed_group(at, end);
  }

 private:
  bool is_joining_preposition(Index at) const {
    static constexpr std::array<std::string_view, 9> kWords{"in",   "for", "by", "bei", "chez",
                                                            "dans", "en",  "em", "der"};
    return text_.is_word(at) &&
           std::find(kWords.begin(), kWords.end(), text_.tokens[at].word) != kWords.end();
  }

  // "in some", "in the": but "A." is a genus.
  bool leads_to_name(Index at) const {
    if (!text_.is_word(at) || begins_name(at)) return false;
    static constexpr std::array<std::string_view, 7> kWords{
        "some", "sometimes", "often", "usually", "rarely", "occasionally", "also"};
    return text_.info[at].is(kArticle) || is_joining_preposition(at) ||
           std::find(kWords.begin(), kWords.end(), text_.tokens[at].word) != kWords.end();
  }

  // A capitalised word of letters that can begin a taxon's name.
  bool begins_name(Index at) const {
    if (at >= clause_.end || !text_.is_open(at) || !text_.is_word(at)) return false;
    auto const& token = text_.tokens[at];
    if (!token.capital) return false;
    if (token.word.size() <= 2) {
      // "A. bus", "Au. bus"
      return at + 1 < clause_.end && text_.is_sign(at + 1, U'.') &&
             !text_.tokens[at + 1].blank_before;
    }
    if (genera_.contains(token.word)) return true;
    return !is_german(text_) ||
           (at + 1 < clause_.end && is_epithet(at + 1) && token.word.ends_with("us"));
  }
  bool is_epithet(Index at) const {
    if (at >= clause_.end || !text_.is_open(at) || !text_.is_word(at)) return false;
    auto const& token = text_.tokens[at];
    // "A. bo", in the case that "in" asks for
    bool const behind_initial = at > clause_.begin && text_.is_sign(at - 1, U'.');
    return !token.capital && token.word.size() > (behind_initial ? 1U : 2U) &&
           !text_.info[at].is(kFunction) && !text_.info[at].is(kPart) &&
           !text_.info[at].is(kPreposition) && text_.tokens[at].blank_before;
  }

  // Epithets follow the genus up to what is certainly no epithet; "Aus bus", "A. bus subsp. cus".
  Index read_name(Index at) const {
    auto i = at + 1;
    bool const initial = text_.tokens[at].word.size() <= 2;
    if (i < clause_.end && text_.is_sign(i, U'.')) ++i;
    bool const epithet_expected = initial || genera_.contains(text_.tokens[at].word);
    auto const take_group_words = [&] {
      static constexpr std::array<std::string_view, 9> kWords{
          "sp", "spp", "agg", "s", "group", "complex", "l", "str", "species"};
      while (i < clause_.end && text_.is_word(i) &&
             std::find(kWords.begin(), kWords.end(), text_.tokens[i].word) != kWords.end()) {
        ++i;
        if (i < clause_.end && text_.is_sign(i, U'.') && !text_.tokens[i].blank_before) ++i;
        if (i < clause_.end && text_.is_word(i - 2, "sp") &&
            text_.tokens[i].kind == TokenKind::number) {
          ++i;  // "Aus sp. 1"
        }
      }
    };
    take_group_words();
    if (is_epithet(i) &&
        (initial || (is_latin(i) && (epithet_expected || ends_group(i + 1) || is_rank(i + 1))))) {
      ++i;
      if (is_epithet(i) && is_latin(i) && ends_group(i + 1)) ++i;
      while (is_rank(i)) {
        auto j = i + 1;
        if (j < clause_.end && text_.is_sign(j, U'.')) ++j;
        if (!is_epithet(j)) break;
        i = j + 1;
      }
      take_group_words();
    }
    return i;
  }
  // Ends like an epithet: "palustris" and not "channelled".  English adjectives in -ous do not.
  bool is_latin(Index at) const {
    static constexpr std::array<std::string_view, 18> kEndings{
        "us", "a",  "um",   "is",  "ii",  "i",   "ae",  "ns", "or",
        "ax", "ix", "ense", "ale", "are", "ile", "des", "on", "os"};
    auto const& word = text_.tokens[at].word;
    if (word.ends_with("ous")) return false;
    return std::any_of(kEndings.begin(), kEndings.end(),
                       [&](std::string_view ending) { return word.ends_with(ending); });
  }
  bool is_rank(Index at) const {
    static constexpr std::array<std::string_view, 6> kRanks{"subsp", "ssp",  "var",
                                                            "f",     "sect", "subg"};
    return at < clause_.end && text_.is_word(at) &&
           std::find(kRanks.begin(), kRanks.end(), text_.tokens[at].word) != kRanks.end();
  }
  bool ends_group(Index at) const {
    if (at >= clause_.end) return true;
    auto const& token = text_.tokens[at];
    if (token.kind == TokenKind::sign) return token.sign != U'-';
    return text_.info[at].is(kAnd | kOr);
  }

  Index read_names(Index at, std::vector<std::string>& groups) const {
    auto i = at;
    auto end = at;
    while (begins_name(i)) {
      end = read_name(i);
      groups.emplace_back(text_.slice(i, end - 1));
      i = end;
      if (i < clause_.end && text_.is_sign(i, U',')) ++i;
      if (i < clause_.end && (text_.info[i].is(kAnd | kOr) || text_.is_sign(i, U'&'))) ++i;
      auto behind = i;
      while (behind < clause_.end && leads_to_name(behind)) ++behind;
      if (behind < clause_.end && begins_name(behind)) i = behind;
      if (i == end) break;
    }
    return end;
  }

  // ", where it is entire": says how the group differs.
  Index trailing_words(Index at) const {
    auto i = at;
    if (i < clause_.end && text_.is_sign(i, U',')) ++i;
    bool const tail =
        i < clause_.end &&
        (text_.is_word(i, "where") || text_.is_word(i, "which") || text_.is_word(i, "whose") ||
         (text_.is_word(i, "in") && i + 1 < clause_.end && text_.is_word(i + 1, "which")));
    if (!tail) return at;
    auto const inside = at > 0 ? text_.enclosing[at - 1] : LeadText::kNone;
    auto const stop = inside == LeadText::kNone ? clause_.end : text_.partner[inside];
    while (i < stop && text_.is_open(i)) ++i;
    return i;
  }

  Index keep(Exception exception) {
    // "(except in Aus)": the parentheses belong to it.
    if (exception.begin > clause_.begin && text_.opens(exception.begin - 1) &&
        text_.partner[exception.begin - 1] == exception.end) {
      --exception.begin;
      ++exception.end;
      exception.words = std::string{text_.slice(exception.begin + 1, exception.end - 2)};
    } else {
      exception.words = std::string{text_.slice(exception.begin, exception.end - 1)};
    }
    text_.give(exception.begin, exception.end, Role::exception);
    auto const next = exception.end;
    found_.exceptions.push_back(std::move(exception));
    return next;
  }

  // "Aus excepted"
  Index name_excepted(Index at) {
    Exception exception;
    auto const end = read_names(at, exception.groups);
    bool const excepted =
        end < clause_.end && (text_.is_word(end, "excepted") || text_.is_word(end, "excluded") ||
                              text_.is_word(end, "ausgenommen"));
    if (!excepted) return at + 1;
    exception.begin = at;
    exception.end = end + 1;
    return keep(std::move(exception));
  }

  // "awns present in Aus only", "present only in Aus": where nothing else is said of the others.
  Index only_in_group(Index at, Index names_end, std::vector<std::string> groups) {
    bool const in_front = at > clause_.begin && text_.is_word(at - 1, "only");
    bool const behind = names_end < clause_.end && text_.is_word(names_end, "only");
    // "in Fen only" names a place, as likely as not.
    bool const known =
        text_.tokens[at + 1].word.size() <= 2 || genera_.contains(text_.tokens[at + 1].word);
    if (!known || (!in_front && !behind)) return at + 1;
    Exception exception;
    exception.begin = in_front ? at - 1 : at;
    exception.end = behind ? names_end + 1 : names_end;
    exception.groups = std::move(groups);
    exception.only = true;
    return keep(std::move(exception));
  }

  // "(bifid in Aus)", ", in Aus bifid": another state, of the named groups.
  Index state_in_group(Index at) {
    if (!text_.info[at].is(kFunction | kPreposition)) return at + 1;
    if (!is_joining_preposition(at) || text_.is_word(at, "for") || text_.is_word(at, "by") ||
        !begins_name(at + 1)) {
      return at + 1;
    }
    // "höchstens an der Spitze gerade": an article behind its preposition names no group.
    bool const article = text_.is_word(at, "der") && at > clause_.begin && text_.is_open(at - 1) &&
                         text_.info[at - 1].is(kPreposition);
    if (article) return at + 1;
    auto begin = at;
    while (begin > clause_.begin && text_.is_open(begin - 1) && !text_.is_sign(begin - 1, U',') &&
           !text_.is_sign(begin - 1, U'(')) {
      --begin;
    }
    Exception exception;
    auto end = read_names(at + 1, exception.groups);
    if (begin == clause_.begin) {  // the main statement itself
      return only_in_group(at, end, std::move(exception.groups));
    }
    // "flat or, in Aus, grooved"
    if (begin == at && begin > clause_.begin + 1 && text_.is_sign(begin - 1, U',') &&
        text_.info[begin - 2].is(kOr) && end < clause_.end && text_.is_sign(end, U',')) {
      begin -= 2;
      ++end;
    }
    while (end < clause_.end && text_.is_open(end) && !text_.is_sign(end, U',') &&
           !text_.is_sign(end, U')') && end > at) {
      ++end;
    }
    bool const says_something = std::any_of(
        text_.tokens.begin() + begin, text_.tokens.begin() + end, [&](Token const& token) {
          auto const i = static_cast<Index>(&token - text_.tokens.data());
          return token.kind == TokenKind::number || (text_.is_content(i) && !token.capital);
        });
    if (!says_something) return at + 1;
    exception.begin = begin;
    exception.end = end;
    return keep(std::move(exception));
  }

  // "except in females": a limit to the males.
  Index other_sex(Index at, Index object) {
    if (object >= clause_.end) return at;
    for (auto const& phrase : qualifiers_at(text_, object, clause_.end)) {
      if (phrase.meaning.sense != Sense::sex) continue;
      auto const value = phrase.meaning.value;
      if (value != "male" && value != "female") continue;
      found_.limits.push_back(
          {.begin = at,
           .end = phrase.end,
           .limit = {.kind = LimitKind::sex, .value = value == "male" ? "female" : "male"},
           .heading = false});
      text_.give(at, phrase.end, Role::limit);
      return phrase.end;
    }
    return at;
  }

  // "except in the aquatic forms": who that is cannot be told, so the statement is weak.
  // "except at the base", "except the tarsi" speak of parts and stay with the words.
  Index unnamed_group(Index at, Index end) {
    auto const& last = text_.tokens[end - 1].word;
    bool const of_group = last == "in" || last == "for" || last == "bei" || last == "chez" ||
                          last == "en" || last == "em" || last == "dans" ||
                          (end < clause_.end && text_.is_word(end, "when"));
    if (!of_group) return at + 1;
    auto stop = end;
    bool part = false;
    while (stop < clause_.end && text_.is_open(stop) && !text_.is_sign(stop, U',') &&
           !text_.is_sign(stop, U')')) {
      part = part || text_.info[stop].is(kPart);
      ++stop;
    }
    if (part || stop == end) return at + 1;
    auto begin = at;
    if (begin > clause_.begin && text_.opens(begin - 1) && text_.partner[begin - 1] == stop) {
      --begin;
      ++stop;
    }
    found_.hedges.push_back(
        {.begin = begin,
         .end = stop,
         .kind = HedgeKind::unnamed_exception,
         .words = std::string{text_.slice(at, begin < at ? stop - 2 : stop - 1)}});
    text_.give(begin, stop, Role::hedge);
    return stop;
  }

  LeadText& text_;
  Clause const& clause_;
  Genera const& genera_;
  Qualifiers& found_;
};

LimitKind kind_of(Sense sense) {
  switch (sense) {
    case Sense::sex:
      return LimitKind::sex;
    case Sense::life_stage:
      return LimitKind::life_stage;
    case Sense::material:
      return LimitKind::material;
    case Sense::season:
      return LimitKind::season;
    default:
      return LimitKind::other;
  }
}

bool is_limit(Sense sense) { return kind_of(sense) != LimitKind::other; }

// The flowers, spikes and cones of one plant have a sex of their own.
bool is_sexed_part(LeadText const& text, Index at) {
  static constexpr std::array<std::string_view, 16> kParts{
      "flower",        "floret",   "spike", "spikelet", "cone",       "catkin",
      "inflorescence", "scale",    "glume", "head",     "receptacle", "strobilus",
      "ament",         "cyathium", "zone",  "branch"};
  if (at >= text.size() || !text.is_word(at)) return false;
  auto const one = singular(text.tokens[at].word);
  return std::find(kParts.begin(), kParts.end(), one) != kParts.end();
}

void find_limit(LeadText& text, Clause const& clause, Index at, Qualifiers& found, Index& next) {
  std::optional<Phrased> best;
  for (auto const& phrase : qualifiers_at(text, at, clause.end)) {
    if (is_limit(phrase.meaning.sense)) best = phrase;
  }
  if (!best) return;
  auto const end = best->end;
  bool const colon = end < clause.end && text.is_sign(end, U':');
  bool const closed = at > 0 && text.opens(at - 1) && text.partner[at - 1] == end;
  auto const in_front = [&](std::string_view word) {
    return at > clause.begin && text.is_word(at - 1, word);
  };
  // "than males", "as in females" compare; they do not limit.
  if (in_front("than") || in_front("as") ||
      (at > clause.begin + 1 && text.is_word(at - 1, "in") &&
       (text.is_word(at - 2, "than") || text.is_word(at - 2, "as")))) {
    return;
  }
  auto begin = at;
  if (best->meaning.needs_context) {
    // "male antennae long": of the males, unless flowers and the like are male.
    bool const beside = in_front("in") || in_front("of") || in_front("bei") || in_front("chez");
    bool const with_article =
        at > clause.begin + 1 && text.info[at - 1].is(kArticle) &&
        (text.is_word(at - 2, "in") || text.is_word(at - 2, "of") || text.is_word(at - 2, "bei"));
    bool const adjective = best->meaning.sense == Sense::sex && end < clause.end &&
                           text.is_word(end) && !is_sexed_part(text, end) &&
                           text.info[end].is(kPart | kWith);
    bool const head = at == clause.begin && best->meaning.sense != Sense::material &&
                      end < clause.end && text.info[end].is(kWith | kCopula);
    if (!(colon || closed || head || adjective || beside || with_article)) return;
    if (is_sexed_part(text, end) && !colon) return;
    if (beside) begin = at - 1;
    if (with_article) begin = at - 2;
  }
  // "Males unknown", "males and females alike": more than one may stand there.
  auto stop = colon ? end + 1 : end;
  if (closed) {
    begin = at - 1;
    stop = end + 1;
  }
  Limit limit{.kind = kind_of(best->meaning.sense), .value = std::string{best->meaning.value}};
  // "males and females", "♂♀": no limit at all.
  auto other = end;
  if (other < clause.end && (text.info[other].is(kAnd | kOr) || text.is_sign(other, U','))) ++other;
  for (auto const& phrase : qualifiers_at(text, other, clause.end)) {
    if (phrase.meaning.sense == best->meaning.sense && phrase.meaning.value != limit.value) {
      next = phrase.end;
      text.give(begin, next, Role::limit);
      return;
    }
  }
  text.give(begin, stop, Role::limit);
  found.limits.push_back({.begin = begin, .end = stop, .limit = limit, .heading = colon});
  next = stop;
}

}  // namespace

void find_exceptions_and_limits(LeadText& text, Clause const& clause, Genera const& genera,
                                Covered const& covered, Qualifiers& found) {
  ExceptionReader exceptions{text, clause, genera, found};
  for (Index i = clause.begin; i < clause.end;) {
    if (!text.is_open(i) || text.tokens[i].kind == TokenKind::number) {
      ++i;
      continue;
    }
    auto next = text.is_word(i) ? exceptions.read(i) : i + 1;
    if (text.is_open(i) && !covered[i] && text.may_qualify(i))
      find_limit(text, clause, i, found, next);
    i = std::max(next, i + 1);
  }
}

void drop_numbers(LeadText const& text, std::vector<Hedge>& hedges) {
  std::erase_if(hedges,
                [&](Hedge const& hedge) { return text.roles[hedge.begin] == Role::number; });
}

void find_hedges(LeadText& text, Clause const& clause, Covered const& covered, Qualifiers& found) {
  for (Index i = clause.begin; i < clause.end;) {
    if (!text.is_open(i) || covered[i] || !text.may_qualify(i)) {
      ++i;
      continue;
    }
    std::optional<HedgeKind> kind;
    Index end = i;
    for (auto const& phrase : qualifiers_at(text, i, clause.end)) {
      switch (phrase.meaning.sense) {
        case Sense::majority:
          kind = HedgeKind::majority;
          break;
        case Sense::minority:
          kind = HedgeKind::minority;
          break;
        case Sense::nearly:
          kind = HedgeKind::nearly;
          break;
        case Sense::condition:
          kind = HedgeKind::condition;
          break;
        case Sense::at_most:
          // "at most slightly hairy"; "to", "up to" are no hedges.
          if (phrase.end - i < 2 || !text.is_word(i, "at")) continue;
          kind = HedgeKind::nearly;
          break;
        default:
          continue;
      }
      end = phrase.end;
    }
    if (!kind || end == i) {
      ++i;
      continue;
    }
    found.hedges.push_back(
        {.begin = i, .end = end, .kind = *kind, .words = std::string{text.slice(i, end - 1)}});
    text.give(i, end, Role::hedge);
    i = end;
  }
}

}  // namespace keydrift::reading
