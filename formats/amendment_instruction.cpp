#include "keydrift/formats/amendment_instruction.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "keydrift/formats/amendment_changes.hpp"
#include "keydrift/formats/amendment_words.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestInstruction = 1000;  // bytes; longer text is prose
constexpr std::size_t kLastLikelyCouplet = 1500;   // a larger number without a noun is a year

// "couplets 12–14 and 16": a list of numbers, and the tokens that it takes.
struct NumberList {
  std::vector<LabelRange> ranges;
  std::size_t first{};  // index of the first number's token
  std::size_t last{};   // index behind the list
  bool noun{false};     // "couplet" or the like stands before it
};

class Clause {
 public:
  Clause(std::string_view text, AmendmentTarget const& around)
      : text_{text}, around_{around}, tokens_{read_words(text)} {
    change_ = find_change(text, tokens_, !around.label.empty() || around.line);
    read_numbers();
  }

  std::vector<InstructionReading> read() {
    if (change_) return changes();
    std::vector<InstructionReading> readings;
    if (auto step = block()) {
      readings.push_back({std::move(*step), std::nullopt});
    } else if (auto where = heading()) {
      readings.push_back({PlaceByNumber{}, std::move(where)});
    }
    return readings;
  }

  [[nodiscard]] bool seems_to_instruct() const {
    bool const verb = has(Sense::replace) || has(Sense::insert) || has(Sense::remove) ||
                      has(Sense::change) || has(Sense::add) ||
                      (has(Sense::instead) && has(Sense::read));
    auto const quotes = std::count_if(tokens_.begin(), tokens_.end(), [](Token const& token) {
      return token.sense == Sense::quote;
    });
    bool const noun_and_number =
        std::any_of(lists_.begin(), lists_.end(), [](NumberList const& one) { return one.noun; });
    return verb && (noun_and_number || quotes >= 2);
  }

 private:
  [[nodiscard]] bool has(Sense sense) const { return index_of(sense) < tokens_.size(); }
  [[nodiscard]] std::size_t index_of(Sense sense, std::size_t from = 0) const {
    while (from < tokens_.size() && tokens_[from].sense != sense) ++from;
    return from;
  }
  [[nodiscard]] Sense sense_at(std::size_t i) const {
    return i < tokens_.size() ? tokens_[i].sense : Sense::stop;
  }

  // --- numbers of couplets ---------------------------------------------------------------------

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
        // "the second lead"; not "the first of the couplets".
        if (sense_at(i + 1) == Sense::couplet) lead_ = token.number - 1;
        ++i;
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
      if (number > 0) line_ = number;
    }
    auto end = next + 1;
    while (sense_at(end) == Sense::through && sense_at(end + 1) == Sense::label) end += 2;
    return end;
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
      if (next == i) break;
      if (sense_at(next) == Sense::couplet) ++next;
      if (sense_at(next) != Sense::label || measures(next)) break;
      i = next;
    }
    list.last = i;
    lists_.push_back(std::move(list));
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

  // --- what is said ----------------------------------------------------------------------------

  [[nodiscard]] AmendmentTarget target_at(LabelRange const& range) const {
    return {range.first, lead_, line_};
  }

  std::vector<InstructionReading> changes() const {
    std::vector<InstructionReading> readings;
    auto const add = [&](AmendmentTarget target) {
      readings.push_back(
          {ChangeWords{std::move(target), change_->from, change_->to, has(Sense::throughout)},
           std::nullopt});
    };
    if (lists_.empty()) {
      auto target = around_;
      if (lead_) target.lead = lead_;
      if (line_) target.line = line_;
      add(std::move(target));
      return readings;
    }
    for (auto const& list : lists_) {
      for (auto const& range : list.ranges) add(target_at(range));
    }
    return readings;
  }

  // Labels of a list; "the second lead of couplet 9" is "9b".
  [[nodiscard]] std::vector<LabelRange> labels_of(NumberList const& list) const {
    auto ranges = list.ranges;
    if (lead_ && ranges.size() == 1) {
      ranges[0].first += static_cast<char>('a' + std::min<std::uint32_t>(*lead_, 25));
      ranges[0].last = ranges[0].first;
    }
    return ranges;
  }

  [[nodiscard]] NumberList const* list_behind(Sense sense) const {
    auto const at = index_of(sense);
    for (auto const& list : lists_) {
      if (list.first > at) return &list;
    }
    return nullptr;
  }

  // The words behind the last colon, or those of the only quotation.
  [[nodiscard]] std::string words_said() const {
    auto const quote = index_of(Sense::quote);
    if (quote < tokens_.size()) return squeeze(tokens_[quote].text);
    std::size_t from = std::string_view::npos;
    for (auto const& token : tokens_) {
      if (token.sense == Sense::colon) from = token.end;
    }
    if (from == std::string_view::npos) return {};
    return squeeze(without_stop(text_.substr(from)));
  }

  std::optional<AmendmentStep> block() const {
    if (lists_.empty()) return at_heading();
    auto const& list = lists_.front();
    if (has(Sense::leads_to)) return redirection();
    bool const adds = has(Sense::insert) || has(Sense::add);
    for (auto const beside : {Sense::after, Sense::before, Sense::between}) {
      if (!adds || !has(beside)) continue;
      auto const* where = list_behind(beside);
      if (where == nullptr) continue;
      auto const& range = beside == Sense::after ? where->ranges.back() : where->ranges.front();
      return InsertCouplets{
          beside == Sense::after ? range.last : range.first, beside == Sense::before, {}};
    }
    if (has(Sense::insert)) return PlaceByNumber{};
    // "Deleted and replaced by the following" replaces.
    if (has(Sense::remove) && !has(Sense::replace)) {
      RemoveCouplets removal;
      for (auto const& one : lists_) {
        for (auto& range : labels_of(one)) removal.labels.push_back(std::move(range));
      }
      return removal;
    }
    if (has(Sense::replace)) return ReplaceCouplets{labels_of(replaced_list()), {}};
    // "Couplet 7 is changed as follows, and couplet 7a added".
    if (has(Sense::add) && has(Sense::change)) return PlaceByNumber{};
    if (has(Sense::add)) return AddToCouplet{target_at(list.ranges.front()), {}, words_said()};
    if (has(Sense::read)) return reads_so(list);
    if (has(Sense::modification) || has(Sense::change)) return PlaceByNumber{};
    return std::nullopt;
  }

  // Instructions whose couplet the heading before them names: "add: except in Aus bus".
  [[nodiscard]] std::optional<AmendmentStep> at_heading() const {
    if (around_.label.empty() || tokens_.empty()) return std::nullopt;
    if (tokens_.front().sense == Sense::add) return AddToCouplet{around_, {}, words_said()};
    if (tokens_.front().sense == Sense::leads_to) {
      return RedirectLead{around_, destination_behind(tokens_.front())};
    }
    return std::nullopt;
  }

  [[nodiscard]] std::string destination_behind(Token const& token) const {
    auto const at = static_cast<std::size_t>(&token - tokens_.data()) + 1;
    auto const begin = sense_at(at) == Sense::couplet ? tokens_[at].end : token.end;
    return squeeze(without_stop(text_.substr(begin)));
  }

  [[nodiscard]] std::optional<AmendmentStep> redirection() const {
    auto const verb = index_of(Sense::leads_to);
    auto to = destination_behind(tokens_[verb]);
    auto target = lists_.front().first < verb ? target_at(lists_.front().ranges.front()) : around_;
    if (target.label.empty() || to.empty()) return std::nullopt;
    // "… to 7a instead of 8": where it led before is seen in the edition.
    auto const instead = index_of(Sense::instead, verb);
    if (instead < tokens_.size()) {
      auto const begin = tokens_[verb].end;
      to = squeeze(without_stop(text_.substr(begin, tokens_[instead].begin - begin)));
    }
    return RedirectLead{std::move(target), std::move(to)};
  }

  // "Couplets 12–14 are replaced by couplets 12–15"; "couplets 12–15 below replace couplets 12–14".
  [[nodiscard]] NumberList const& replaced_list() const {
    auto const verb = index_of(Sense::replace);
    bool const parted = index_of(Sense::becomes) < tokens_.size();
    if (lists_.size() > 1 && !parted && lists_[0].last <= verb) return lists_[1];
    return lists_.front();
  }

  // "Couplet 7 should read", with the couplet below or the lead's words in quotation marks.
  [[nodiscard]] std::optional<AmendmentStep> reads_so(NumberList const& list) const {
    auto const verb = index_of(Sense::read);
    if (list.first > verb && !has(Sense::instead)) return std::nullopt;
    if (has(Sense::quote)) {
      return ChangeWords{target_at(list.ranges.front()), {}, words_said(), false};
    }
    return ReplaceCouplets{labels_of(list), {}};
  }

  // "Couplet 8", "p. 12, couplet 3, line 2:" and nothing else.
  [[nodiscard]] std::optional<AmendmentTarget> heading() const {
    if (lists_.size() != 1 || lists_[0].ranges.size() != 1 || !lists_[0].noun) return std::nullopt;
    bool const only = std::all_of(tokens_.begin(), tokens_.end(), [](Token const& token) {
      return token.sense == Sense::couplet || token.sense == Sense::label ||
             token.sense == Sense::joins || token.sense == Sense::page ||
             token.sense == Sense::line || token.sense == Sense::colon ||
             token.sense == Sense::stop || token.sense == Sense::ordinal;
    });
    return only ? std::optional{target_at(lists_[0].ranges[0])} : std::nullopt;
  }

  std::string_view text_;
  AmendmentTarget const& around_;
  std::vector<Token> tokens_;
  std::optional<WordChange> change_;
  std::vector<NumberList> lists_;
  std::optional<std::uint32_t> lead_;
  std::optional<std::uint32_t> line_;
};

// Parts at ";" and at full stops before a capital, outside quotations; and before the second and
// further "for" of "for 9 read 10 and for 11 read 12".
std::vector<std::string_view> clauses_of(std::string_view text) {
  auto const tokens = read_words(text);
  std::vector<std::string_view> clauses;
  std::size_t begin = 0;
  bool pair_seen = false;
  auto const cut = [&](std::size_t end, std::size_t next) {
    auto const clause = trim(text.substr(begin, end - begin));
    if (!clause.empty()) clauses.push_back(clause);
    begin = next;
    pair_seen = false;
  };
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    auto const& token = tokens[i];
    if (token.sense == Sense::stop) {
      bool const semicolon = token.text == ";";
      auto const next = skip_blanks(text, token.end);
      bool const sentence = next > token.end && is_upper(code_point_at(text, next).value);
      if (semicolon || sentence) cut(token.begin, token.end);
    } else if (token.sense == Sense::read) {
      pair_seen = pair_seen || (i > 0 && begin < token.begin);
    } else if (token.sense == Sense::instead && pair_seen && i > 0) {
      auto from = i;
      while (from > 0 && tokens[from - 1].sense == Sense::joins) --from;
      bool const joined = from < i;
      if (joined) cut(tokens[from].begin, token.begin);
    }
  }
  cut(text.size(), text.size());
  return clauses;
}

}  // namespace

std::vector<InstructionReading> read_instructions(std::string_view text,
                                                  AmendmentTarget const& around) {
  if (text.size() > kLongestInstruction) return {};
  auto const clauses = clauses_of(text);
  if (clauses.size() > 1) {
    std::vector<InstructionReading> all;
    auto near = around;
    bool every = true;
    for (auto const clause : clauses) {
      auto some = Clause{clause, near}.read();
      every = every && !some.empty();
      if (some.empty()) break;
      // "Couplet 8b: for 9 read 10; for 'pale' read 'dark'" speaks of 8b twice.
      if (auto const* change = std::get_if<ChangeWords>(&some.back().step)) near = change->target;
      near.line.reset();
      std::move(some.begin(), some.end(), std::back_inserter(all));
    }
    if (every) return all;
  }
  return Clause{text, around}.read();
}

bool seems_to_instruct(std::string_view text) {
  if (text.size() > kLongestInstruction) text = start_of(text, kLongestInstruction);
  return Clause{text, {}}.seems_to_instruct();
}

bool may_begin_instruction(std::string_view text) {
  auto const tokens = read_words(start_of(text, 120));
  if (tokens.empty()) return false;
  return tokens.front().sense != Sense::other && tokens.front().sense != Sense::bracket &&
         tokens.front().sense != Sense::through;
}

}  // namespace keydrift::printed
