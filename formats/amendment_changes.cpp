#include "keydrift/formats/amendment_changes.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/amendment_direction.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostWordsOfChange = 12;  // on either side, without quotation marks

// "the following", "folgende", "ce qui suit": no words of the key, but those below.
bool means_below(std::string_view text) {
  static constexpr std::array<std::string_view, 18> kBelow{
      "the following", "following",      "as follows",   "folgende",   "folgenden",
      "folgendes",     "wie folgt",      "ce qui suit",  "le suivant", "les suivants",
      "lo siguiente",  "los siguientes", "el siguiente", "o seguinte", "os seguintes",
      "sequens",       "sequentibus",    "below"};
  auto const plain = plain_words(text);
  return text.empty() || is_one_of(kBelow, plain);
}

class ChangeFinder {
 public:
  ChangeFinder(std::string_view text, std::vector<Token> const& tokens, bool placed)
      : text_{text}, tokens_{tokens}, placed_{placed} {
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      if (tokens[i].sense == Sense::quote) quotes_.push_back(i);
    }
  }

  std::optional<WordChange> find() const {
    // Two quotations are the words, and which are new is told by what stands around them.
    if (quotes_.size() == 2 && !adds()) {
      auto const direction = direction_of(tokens_, quotes_[0], quotes_[1]);
      if (direction == PairDirection::old_first) return change(quote(0), quote(1));
      if (direction == PairDirection::new_first) return change(quote(1), quote(0));
      if (direction == PairDirection::unknown) return std::nullopt;
    }
    auto change = read_instead();
    if (!change) change = between_quotes();
    if (!change) change = without_quotes();
    if (!change) change = should_read();
    return change && takes_all_quotes(*change) ? change : std::nullopt;
  }

 private:
  [[nodiscard]] std::size_t none() const { return tokens_.size(); }
  [[nodiscard]] std::size_t index_of(Sense sense, std::size_t from = 0) const {
    while (from < tokens_.size() && tokens_[from].sense != sense) ++from;
    return from;
  }
  [[nodiscard]] bool has(Sense sense) const { return index_of(sense) < none(); }
  [[nodiscard]] std::size_t verb() const {
    return std::min(index_of(Sense::change), index_of(Sense::replace));
  }

  // The words of text[begin, end): those of a quotation if it begins with one.
  [[nodiscard]] TextSpan words_in(std::size_t begin, std::size_t end) const {
    begin = skip_blanks(text_, begin);
    while (begin < end && (text_[begin] == ':' || text_[begin] == ',')) {
      begin = skip_blanks(text_, begin + 1);
    }
    if (begin >= end) return {begin, begin};
    for (auto const q : quotes_) {
      auto const& token = tokens_[q];
      if (token.begin == begin && token.end <= end) return {token.begin, token.end};
    }
    return {begin, begin + without_stop(text_.substr(begin, end - begin)).size()};
  }
  [[nodiscard]] std::string said(TextSpan const& span) const {
    for (auto const q : quotes_) {
      if (tokens_[q].begin == span.begin && tokens_[q].end == span.end) {
        return squeeze(tokens_[q].text);
      }
    }
    return squeeze(text_.substr(span.begin, span.end - span.begin));
  }
  [[nodiscard]] std::optional<WordChange> change(TextSpan from, TextSpan to) const {
    WordChange result{said(from), said(to), from, to};
    if (result.from.empty() || result.to.empty()) return std::nullopt;
    if (words_of(result.from).size() > kMostWordsOfChange && !is_quote(from)) return std::nullopt;
    if (words_of(result.to).size() > kMostWordsOfChange && !is_quote(to)) return std::nullopt;
    return result;
  }
  [[nodiscard]] std::optional<WordChange> change(std::optional<TextSpan> const& from,
                                                 std::optional<TextSpan> const& to) const {
    return from && to ? change(*from, *to) : std::nullopt;
  }
  [[nodiscard]] bool is_quote(TextSpan const& span) const {
    return std::any_of(quotes_.begin(), quotes_.end(),
                       [&](std::size_t q) { return tokens_[q].begin == span.begin; });
  }

  // A quotation left over behind the first words is another change, or words that this one does not
  // tell apart; one in front may say where ("in 'Wings pale', for 'pale' read 'dark'").
  [[nodiscard]] bool takes_all_quotes(WordChange const& change) const {
    auto const in = [](Token const& token, TextSpan const& span) {
      return token.begin >= span.begin && token.end <= span.end;
    };
    auto first = text_.size();
    for (auto const& span : {change.from_at, change.to_at}) {
      if (span.begin < span.end) first = std::min(first, span.begin);
    }
    std::size_t in_front = 0;
    for (auto const q : quotes_) {
      auto const& token = tokens_[q];
      if (in(token, change.from_at) || in(token, change.to_at)) continue;
      if (token.begin > first) return false;
      ++in_front;
    }
    return in_front < 2;
  }

  // Words between the token `first` and the byte `end`.  Where they are quoted they are nothing but
  // the quotation, for the couplet may be named in front of it ("read in couplet 3: 'dark' for
  // 'pale'").  nullopt where that leaves open what they are.
  [[nodiscard]] std::optional<TextSpan> words_between(std::size_t first, std::size_t end) const {
    std::optional<TextSpan> quoted;
    for (auto const q : quotes_) {
      if (q < first || tokens_[q].end > end) continue;
      if (quoted) return std::nullopt;
      quoted = TextSpan{tokens_[q].begin, tokens_[q].end};
    }
    if (quoted) return quoted;
    auto const begin = behind_couplet(first);
    return begin < none() ? std::optional{words_in(tokens_[begin].begin, end)} : std::nullopt;
  }

  // Index behind "in couplet 3:", "au couplet 3," or "in 3:" where such words begin at `i`.
  [[nodiscard]] std::size_t behind_couplet(std::size_t i) const {
    auto at = i;
    bool noun = false;
    while (at < none() &&
           (tokens_[at].sense == Sense::becomes || tokens_[at].sense == Sense::through ||
            tokens_[at].sense == Sense::joins || tokens_[at].sense == Sense::couplet)) {
      noun = noun || tokens_[at].sense == Sense::couplet;
      ++at;
    }
    if (at == i || at >= none() || tokens_[at].sense != Sense::label) return i;
    ++at;
    bool const parted =
        at < none() && (tokens_[at].sense == Sense::colon || tokens_[at].sense == Sense::joins);
    if (parted) return at + 1;
    return noun && at < none() && tokens_[at].sense != Sense::instead ? at : i;
  }

  // Where trailing words say in which couplet: "… in couplet 4", "… throughout the key".
  [[nodiscard]] std::size_t end_before_where(std::size_t from) const {
    for (auto i = from; i < tokens_.size(); ++i) {
      if (tokens_[i].sense == Sense::throughout) return tokens_[i].begin;
      if (tokens_[i].sense != Sense::becomes) continue;
      auto next = i + 1;
      while (next < tokens_.size() && tokens_[next].sense == Sense::other &&
             tokens_[next].text.size() <= 3) {
        ++next;  // an article
      }
      if (next < tokens_.size() && tokens_[next].sense == Sense::ordinal) ++next;
      if (next < tokens_.size() && tokens_[next].sense == Sense::couplet) return tokens_[i].begin;
    }
    return text_.size();
  }

  // "for X read Y", "statt X lies Y", "donde dice X debe decir Y"; "read Y for X".
  [[nodiscard]] std::optional<WordChange> read_instead() const {
    auto const read = index_of(Sense::read);
    auto const instead = index_of(Sense::instead);
    if (read == none() || instead == none()) return std::nullopt;
    if (instead < read) {
      auto const plain = words_in(tokens_[read].end, end_before_where(read + 1));
      if (is_number_of_couplet(instead + 1) && means_below(said(plain))) {
        return std::nullopt;  // "for couplet 7 read the following"
      }
      return change(words_between(instead + 1, tokens_[read].begin),
                    words_between(read + 1, end_before_where(read + 1)));
    }
    return change(words_between(instead + 1, end_before_where(instead + 1)),
                  words_between(read + 1, tokens_[instead].begin));
  }

  [[nodiscard]] bool is_number_of_couplet(std::size_t i) const {
    return i < tokens_.size() &&
           (tokens_[i].sense == Sense::couplet || tokens_[i].sense == Sense::label);
  }

  [[nodiscard]] TextSpan quote(std::size_t which) const {
    return {tokens_[quotes_[which]].begin, tokens_[quotes_[which]].end};
  }

  // Quotation marks say what the words are; the verb says what is done with them.
  [[nodiscard]] std::optional<WordChange> between_quotes() const {
    if (quotes_.size() == 1 && has(Sense::remove)) {
      WordChange taken{said(quote(0)), {}, quote(0), {}};
      return taken.from.empty() ? std::nullopt : std::optional{taken};
    }
    if (quotes_.size() == 2 && adds()) return joined_to_quote();
    return std::nullopt;
  }

  // "Add 'brown'"; not "for 'pale' read 'dark'", nor "delete 'pale' and insert 'dark'".
  [[nodiscard]] bool adds() const {
    bool const puts = has(Sense::insert) || has(Sense::add);
    bool const changes = verb() < none() || has(Sense::read) || has(Sense::remove);
    return puts && !changes;
  }

  // "after 'dark' insert 'brown'", "insert 'not' before 'dark'".
  [[nodiscard]] std::optional<WordChange> joined_to_quote() const {
    bool const after = has(Sense::after);
    auto const beside = index_of(after ? Sense::after : Sense::before);
    if (beside == none()) return std::nullopt;
    bool const first = beside < quotes_[0];
    auto const old_words = said(quote(first ? 0 : 1));
    auto const new_words = said(quote(first ? 1 : 0));
    if (old_words.empty() || new_words.empty()) return std::nullopt;
    bool const tight = new_words.front() == ',' || new_words.front() == ';';
    WordChange result{old_words, {}, quote(0), quote(1)};
    result.to = after ? old_words + (tight ? "" : " ") + new_words : new_words + " " + old_words;
    return result;
  }

  // "change 9 to 10 in couplet 8b", "Aus bus durch Aus cus ersetzen", "replace 'pale' by dark".
  [[nodiscard]] std::optional<WordChange> without_quotes() const {
    auto const v = verb();
    if (v == none()) return std::nullopt;
    for (auto b = index_of(Sense::becomes, v + 1); b < none();
         b = index_of(Sense::becomes, b + 1)) {
      if (b == v + 1) continue;
      // "modify 7b to lead to couplet 9": no words of the key.
      if (b + 1 < none() && tokens_[b + 1].sense == Sense::leads_to) return std::nullopt;
      auto const from = words_in(tokens_[v].end, tokens_[b].begin);
      auto const to = words_in(tokens_[b].end, end_before_where(b + 1));
      if (!is_quote(from) && is_no_wording(said(from))) return std::nullopt;
      if (names_couplet(v, b) || means_below(said(to))) return std::nullopt;
      // "replace 12 by 13" alone speaks of couplets.
      bool const numbers = tokens_[v + 1].sense == Sense::label && b == v + 2;
      if (numbers && !placed_ && !has_number_outside(v, b)) return std::nullopt;
      return change(from, to);
    }
    // The verb comes last; what is changed stands directly before "durch".
    for (auto b = index_of(Sense::becomes); b < v; b = index_of(Sense::becomes, b + 1)) {
      if (b == 0 || b + 1 >= v) continue;
      auto const& before = tokens_[b - 1];
      bool const whole = before.sense == Sense::quote || (before.sense == Sense::label && b >= 2 &&
                                                          tokens_[b - 2].sense != Sense::couplet);
      if (!whole) continue;
      auto end = tokens_[v].begin;
      if (tokens_[v - 1].sense == Sense::becomes) end = tokens_[v - 1].begin;  // "zu ersetzen"
      auto const to = words_in(tokens_[b].end, end);
      if (means_below(said(to))) return std::nullopt;
      return change({before.begin, before.end}, to);
    }
    return std::nullopt;
  }

  // "replace the couplets 12–14 by": couplets are replaced, no words.
  [[nodiscard]] bool names_couplet(std::size_t v, std::size_t b) const {
    auto const at = index_of(Sense::couplet, v);
    return at < b;
  }

  // "changed as follows, and a new couplet": no words of the key.
  [[nodiscard]] static bool is_no_wording(std::string const& words) {
    auto const plain = plain_words(words);
    return plain.find(',') != std::string::npos || plain.starts_with("as follows") ||
           plain.starts_with("wie folgt") || plain.starts_with("comme suit") ||
           plain.starts_with("como sigue");
  }

  // "In couplet 4, Aus bus should read Aus cus": the words stand between comma and verb.
  [[nodiscard]] std::optional<WordChange> should_read() const {
    auto const read = index_of(Sense::read);
    if (read == none() || !quotes_.empty() || has(Sense::instead)) return std::nullopt;
    auto from = read;
    while (from > 0 && tokens_[from - 1].sense != Sense::joins &&
           tokens_[from - 1].sense != Sense::colon) {
      --from;
    }
    bool const behind_number = from >= 2 && tokens_[from - 2].sense == Sense::label;
    if (!behind_number || is_number_of_couplet(from)) return std::nullopt;
    // "Couplet 10: the two leads should be interchanged".
    if (index_of(Sense::couplet, from) < read) return std::nullopt;
    auto end = read;
    while (end > from && is_auxiliary(tokens_[end - 1])) --end;
    if (end == from) return std::nullopt;
    auto const to = words_in(tokens_[read].end, end_before_where(read + 1));
    if (means_below(said(to))) return std::nullopt;
    return change({tokens_[from].begin, tokens_[end - 1].end}, to);
  }

  [[nodiscard]] static bool is_auxiliary(Token const& token) {
    static constexpr std::array<std::string_view, 9> kWords{
        "should", "must", "to", "soll", "muss", "doit", "debe", "deve", "now"};
    return is_one_of(kWords, plain_words(token.text));
  }

  // Does the text name a couplet before the verb or after the new words?
  [[nodiscard]] bool has_number_outside(std::size_t v, std::size_t b) const {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].sense == Sense::label && (i < v || i > b + 1)) return true;
    }
    return false;
  }

  std::string_view text_;
  std::vector<Token> const& tokens_;
  bool placed_;
  std::vector<std::size_t> quotes_;
};

}  // namespace

std::string_view without_stop(std::string_view text) {
  text = trim(text);
  while (!text.empty() && (text.back() == ',' || text.back() == ':' || text.back() == ';')) {
    text = trim_right(text.substr(0, text.size() - 1));
  }
  if (!text.empty() && text.back() == '.' && !text.ends_with("..")) text.remove_suffix(1);
  return trim_right(text);
}

std::optional<WordChange> find_change(std::string_view text, std::vector<Token> const& tokens,
                                      bool placed) {
  return ChangeFinder{text, tokens, placed}.find();
}

}  // namespace keydrift::printed
