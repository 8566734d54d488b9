#include "keydrift/formats/amendment_instruction.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "keydrift/formats/amendment_asking.hpp"
#include "keydrift/formats/amendment_changes.hpp"
#include "keydrift/formats/amendment_renumbering.hpp"
#include "keydrift/formats/amendment_where.hpp"
#include "keydrift/formats/amendment_words.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestInstruction = 1000;  // bytes; longer text is prose

class Clause {
 public:
  Clause(std::string_view text, AmendmentTarget const& around)
      : text_{text}, around_{around}, tokens_{read_words(text)} {
    change_ = find_change(text, tokens_, !around.label.empty() || around.line);
    auto where = read_where(tokens_, change_);
    lists_ = std::move(where.couplets);
    lead_ = where.lead;
    line_ = where.line;
  }

  std::vector<InstructionReading> read() {
    if (auto some = pairs(); !some.empty()) return some;
    if (change_) return changes();
    std::vector<InstructionReading> readings;
    if (auto step = block()) {
      // "Modify 3b to lead to couplet 4, and add:" has couplets below it as well.
      auto const* redirection = std::get_if<RedirectLead>(&*step);
      bool const adds =
          redirection != nullptr && end_of_destination(index_of(Sense::leads_to)) < text_.size();
      // "Lead 7b leads to a new couplet 14:" has it below.
      bool const shows = redirection != nullptr && tokens_.back().sense == Sense::colon &&
                         std::any_of(tokens_.begin(), tokens_.end(), is_said_new);
      PlaceByNumber below;
      if (shows) below = {{}, true, {{redirection->to, redirection->to, false}}};
      readings.push_back({std::move(*step), std::nullopt});
      if (adds || shows) readings.push_back({std::move(below), std::nullopt});
    } else if (auto where = heading()) {
      // "New couplet 8:" says that none is replaced.
      bool const fresh = std::any_of(tokens_.begin(), tokens_.end(), is_said_new);
      if (fresh) {
        readings.push_back({PlaceByNumber{{}, true, lists_.front().ranges}, std::nullopt});
      } else {
        readings.push_back({PlaceByNumber{}, std::move(where)});
      }
    }
    return readings;
  }

  [[nodiscard]] bool inserts() const { return has(Sense::insert) || has(Sense::add); }

  [[nodiscard]] bool seems_to_instruct() const { return asks_for_change(tokens_, lists_); }

 private:
  [[nodiscard]] std::size_t quotes() const {
    return static_cast<std::size_t>(
        std::count_if(tokens_.begin(), tokens_.end(),
                      [](Token const& token) { return token.sense == Sense::quote; }));
  }
  [[nodiscard]] bool has(Sense sense) const { return index_of(sense) < tokens_.size(); }
  [[nodiscard]] std::size_t index_of(Sense sense, std::size_t from = 0) const {
    while (from < tokens_.size() && tokens_[from].sense != sense) ++from;
    return from;
  }
  [[nodiscard]] Sense sense_at(std::size_t i) const {
    return i < tokens_.size() ? tokens_[i].sense : Sense::stop;
  }

  // "Replace 'a' by 'b' and 'c' by 'd'": one verb, and nothing but pairs.
  [[nodiscard]] std::vector<InstructionReading> pairs() const {
    if (quotes() < 4 || quotes() % 2 != 0 || !(has(Sense::replace) || has(Sense::change)))
      return {};
    std::vector<std::size_t> at;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].sense == Sense::quote) at.push_back(i);
    }
    for (std::size_t q = 0; q + 1 < at.size(); ++q) {
      auto const between = q % 2 == 0 ? Sense::becomes : Sense::joins;
      for (auto i = at[q] + 1; i < at[q + 1]; ++i) {
        if (tokens_[i].sense != between) return {};
      }
      if (at[q + 1] == at[q] + 1) return {};
    }
    std::vector<InstructionReading> readings;
    auto const add = [&](AmendmentTarget const& target) {
      for (std::size_t q = 0; q < at.size(); q += 2) {
        auto from = squeeze(tokens_[at[q]].text);
        auto to = squeeze(tokens_[at[q + 1]].text);
        if (from.empty() || to.empty()) continue;
        readings.push_back(
            {ChangeWords{target, std::move(from), std::move(to), has(Sense::throughout)},
             std::nullopt});
      }
    };
    if (lists_.empty()) {
      add(around_);
    } else {
      for (auto const& list : lists_) {
        for (auto const& range : list.ranges) add(target_at(range));
      }
    }
    return readings;
  }

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
    if (quotes() > 1) return std::nullopt;  // words, and not known which
    // "The two leads should be interchanged" is no new wording.
    if (speaks_of_swapping(tokens_) && !has(Sense::replace) && !has(Sense::insert))
      return std::nullopt;
    bool const adds = inserts();
    // "At the end of the key add:", "insert the following couplets:".
    bool const says_below = !tokens_.empty() && tokens_.back().sense == Sense::colon;
    if (lists_.empty() && around_.label.empty() && adds && says_below && quotes() == 0 &&
        !has(Sense::change) && !has(Sense::replace)) {
      return PlaceByNumber{{}, true, {}};
    }
    if (lists_.empty()) return at_heading();
    auto const& list = lists_.front();
    if (has(Sense::leads_to)) return redirection();
    for (auto const beside : {Sense::after, Sense::before, Sense::between}) {
      if (!adds || !has(beside)) continue;
      auto const* where = list_behind(beside);
      if (where == nullptr) continue;
      auto const& range = beside == Sense::after ? where->ranges.back() : where->ranges.front();
      return InsertCouplets{
          beside == Sense::after ? range.last : range.first, beside == Sense::before, {}};
    }
    // "Change couplet 7 and insert 7a" changes one of the two.
    bool const changes = has(Sense::change) || has(Sense::replace);
    if (has(Sense::insert) && changes) return PlaceByNumber{};
    if (has(Sense::insert)) return PlaceByNumber{{}, true, inserted_numbers()};
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
    if (has(Sense::add) && is_added(list)) return PlaceByNumber{{}, true, list.ranges};
    if (has(Sense::add)) return AddToCouplet{target_at(list.ranges.front()), {}, words_said()};
    if (has(Sense::read)) return reads_so(list);
    if (has(Sense::modification) || has(Sense::change)) {
      if (lead_ && lists_.size() == 1) return ReplaceCouplets{labels_of(list), {}};
      return PlaceByNumber{};
    }
    return std::nullopt;
  }

  // "Add new couplet 8:", "add couplet 8:"; not "add to couplet 8:".
  [[nodiscard]] bool is_added(NumberList const& list) const {
    bool const couplet =
        list.noun && is_digit(static_cast<unsigned char>(list.ranges[0].first.back()));
    if (!couplet || quotes() > 0 || list.first < 2) return false;
    auto const& before = tokens_[list.first - 2];
    return before.sense == Sense::add || is_said_new(before);
  }

  [[nodiscard]] std::vector<LabelRange> inserted_numbers() const {
    std::vector<LabelRange> numbers;
    for (auto const& list : lists_) {
      numbers.insert(numbers.end(), list.ranges.begin(), list.ranges.end());
    }
    return numbers;
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
    auto const verb = static_cast<std::size_t>(&token - tokens_.data());
    auto at = verb + 1;
    while (sense_at(at) == Sense::couplet || sense_at(at) == Sense::becomes ||
           (at < tokens_.size() && (is_said_new(tokens_[at]) || is_article(tokens_[at])))) {
      ++at;
    }
    auto end = end_of_destination(verb);
    for (auto i = at; i < tokens_.size() && tokens_[i].begin < end; ++i) {
      // "… to 7a instead of 8", "… to 7a, not 8": where it led before is seen in the edition.
      if (tokens_[i].sense == Sense::instead || denies(i)) {
        auto last = i;
        while (last > at && tokens_[last - 1].sense == Sense::joins) --last;
        end = tokens_[last].begin;
      }
    }
    // "Couplet 12", and no name behind it.
    if (sense_at(at) == Sense::label) {
      auto const next = at + 1;
      bool const whole = next >= tokens_.size() || tokens_[next].begin >= end ||
                         tokens_[next].sense == Sense::bracket ||
                         tokens_[next].sense == Sense::stop || tokens_[next].sense == Sense::colon;
      if (whole) return std::string{tokens_[at].text};
    }
    auto const begin = sense_at(verb + 1) == Sense::couplet ? tokens_[verb + 1].end : token.end;
    return begin < end ? squeeze(without_stop(text_.substr(begin, end - begin))) : std::string{};
  }

  [[nodiscard]] bool denies(std::size_t i) const {
    static constexpr std::array<std::string_view, 5> kWords{"not", "nicht", "non", "nao", "rather"};
    return is_one_of(kWords, plain_words(tokens_[i].text));
  }
  [[nodiscard]] static bool is_article(Token const& token) {
    static constexpr std::array<std::string_view, 19> kWords{
        "a",   "an", "the", "einem",   "einen", "einer", "dem", "den", "der", "un",
        "une", "le", "la",  "nouveau", "el",    "o",     "um",  "uma", "now"};
    return is_one_of(kWords, plain_words(token.text));
  }

  // Before ", and add:", which is no part of a name.
  [[nodiscard]] std::size_t end_of_destination(std::size_t verb) const {
    for (auto i = verb + 1; i < tokens_.size(); ++i) {
      if (tokens_[i].sense != Sense::joins) continue;
      auto next = i + 1;
      while (sense_at(next) == Sense::joins) ++next;
      if (sense_at(next) == Sense::add || sense_at(next) == Sense::insert) return tokens_[i].begin;
    }
    return text_.size();
  }

  [[nodiscard]] std::optional<AmendmentStep> redirection() const {
    auto const verb = index_of(Sense::leads_to);
    auto to = destination_behind(tokens_[verb]);
    if (lists_.front().first < verb && !is_subject(lists_.front(), verb)) return std::nullopt;
    auto target = lists_.front().first < verb ? target_at(lists_.front().ranges.front()) : around_;
    if (target.label.empty() || to.empty()) return std::nullopt;
    return RedirectLead{std::move(target), std::move(to)};
  }

  // "Lead 3b now keys to Aus bus"; not "In couplet 2 Aus bus keys to couplet 3".
  [[nodiscard]] bool is_subject(NumberList const& list, std::size_t verb) const {
    static constexpr std::array<std::string_view, 6> kVerbs{
        "keys to", "now keys to", "keys now to", "runs to", "now runs to", "runs now to"};
    if (!is_one_of(kVerbs, plain_words(tokens_[verb].text))) return true;
    return list.last == verb;
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
      if (has(Sense::instead)) return std::nullopt;
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
             token.sense == Sense::stop || token.sense == Sense::ordinal || is_said_new(token);
    });
    return only ? std::optional{target_at(lists_[0].ranges[0])} : std::nullopt;
  }

  [[nodiscard]] static bool is_said_new(Token const& token) {
    static constexpr std::array<std::string_view, 11> kWords{
        "new",      "neu",   "neue",  "neuer", "neues", "nouveau",
        "nouvelle", "nuevo", "nueva", "novo",  "nova"};
    return is_one_of(kWords, plain_words(token.text));
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
      bool const initial = i > 0 && tokens[i - 1].text.size() == 1 &&
                           is_upper(code_point_at(tokens[i - 1].text, 0).value);
      bool const sentence =
          !initial && next > token.end && is_upper(code_point_at(text, next).value);
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

// "… and renumber couplets 8–13 as 9–14", with what else the sentence asks for.
std::optional<std::vector<InstructionReading>> read_renumbering(std::string_view text,
                                                                AmendmentTarget const& around) {
  auto found = find_renumbering(text);
  if (!found) return std::nullopt;
  std::vector<InstructionReading> readings;
  readings.push_back({std::move(found->step), std::nullopt});
  Clause rest{found->rest, around};
  auto others = rest.read();
  // "… and insert:"
  if (others.empty() && rest.inserts()) {
    others.push_back({PlaceByNumber{{}, true, {}}, std::nullopt});
  }
  std::move(others.begin(), others.end(), std::back_inserter(readings));
  return readings;
}

// "Delete couplet 3 and let lead 1b lead to Aus bus": a redirection beside another thing that needs
// no couplets below it.
std::vector<InstructionReading> read_clause(std::string_view text, AmendmentTarget const& around) {
  if (auto readings = read_renumbering(text, around)) return *std::move(readings);
  auto const tokens = read_words(text);
  auto const redirects = [](InstructionReading const& one) {
    return std::holds_alternative<RedirectLead>(one.step);
  };
  auto const acts = [&](std::vector<InstructionReading> const& some) {
    return some.size() == 1 &&
           (redirects(some[0]) || std::holds_alternative<RemoveCouplets>(some[0].step));
  };
  bool const leads = std::any_of(tokens.begin(), tokens.end(),
                                 [](Token const& token) { return token.sense == Sense::leads_to; });
  for (auto const& token : tokens) {
    if (!leads || token.sense != Sense::joins || token.text.size() < 2) continue;
    auto both = Clause{trim(text.substr(0, token.begin)), around}.read();
    auto right = Clause{trim(text.substr(token.end)), around}.read();
    if (!acts(both) || !acts(right) || (!redirects(both[0]) && !redirects(right[0]))) continue;
    both.push_back(std::move(right[0]));
    return both;
  }
  return Clause{text, around}.read();
}

// What the clauses say; empty where they are but one instruction, or none.
std::vector<InstructionReading> read_clauses(std::vector<std::string_view> const& clauses,
                                             AmendmentTarget const& around) {
  std::vector<InstructionReading> all;
  auto near = around;
  bool any = false;
  for (auto const clause : clauses) {
    auto some = read_clause(clause, near);
    if (some.empty()) {
      // "Errata." asks for nothing.
      if (Clause{clause, near}.seems_to_instruct()) all.push_back({PlaceByNumber{}, {}, true});
      continue;
    }
    any = any || !some.back().heading;
    // "Couplet 8b: for 9 read 10; for 'pale' read 'dark'" speaks of 8b twice.
    if (auto const* change = std::get_if<ChangeWords>(&some.back().step)) near = change->target;
    if (some.back().heading) near = *some.back().heading;
    near.line.reset();
    std::move(some.begin(), some.end(), std::back_inserter(all));
  }
  // What is printed below belongs to the last of them.
  std::stable_partition(all.begin(), all.end(), [](InstructionReading const& one) {
    return std::holds_alternative<RenumberCouplets>(one.step);
  });
  return any ? all : std::vector<InstructionReading>{};
}

}  // namespace

std::vector<InstructionReading> read_instructions(std::string_view text,
                                                  AmendmentTarget const& around) {
  if (text.size() > kLongestInstruction) return {};
  auto const clauses = clauses_of(text);
  if (clauses.size() > 1) {
    auto all = read_clauses(clauses, around);
    if (!all.empty()) return all;
  }
  return read_clause(text, around);
}

bool seems_to_instruct(std::string_view text) {
  if (text.size() > kLongestInstruction) text = start_of(text, kLongestInstruction);
  auto const clauses = clauses_of(text);
  return std::any_of(clauses.begin(), clauses.end(), [](std::string_view clause) {
    return Clause{clause, {}}.seems_to_instruct();
  });
}

bool may_begin_instruction(std::string_view text) {
  auto const tokens = read_words(start_of(text, 120));
  if (tokens.empty()) return false;
  return tokens.front().sense != Sense::other && tokens.front().sense != Sense::bracket &&
         tokens.front().sense != Sense::through;
}

}  // namespace keydrift::printed
