#include "keydrift/formats/printed_account_leaves.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestAccountNumber = 4;  // digits; floras of a country count through
constexpr std::uint32_t kMostAccountsLost = 3;    // numbers of accounts that a scan may have lost
constexpr std::size_t kFewestUnnumbered = 3;      // the same, where accounts have no numbers
constexpr std::size_t kFewestAccountLeads = 2;    // leads with accounts; fewer are no habit
constexpr std::size_t kWordsOfHead = 8;           // looked at
constexpr std::size_t kShortestGenusInCapitals = 4;  // letters, in capitals
constexpr std::size_t kShortestEpithet = 3;          // bytes

// Signs of naturalised, extinct and hybrid kinds.
bool is_sign_of_kind(char32_t c) {
  return c == '*' || c == '+' || c == 0x2020 || c == 0x2021 || c == 0xD7;
}

std::size_t skip_account_signs(std::string_view line, std::size_t at) {
  while (is_sign_of_kind(code_point_at(line, at).value)) at += code_point_at(line, at).length;
  return skip_blanks(line, at);
}

// Without the comma or full stop at its end.
std::string_view bare(std::string_view word) {
  while (!word.empty() && std::string_view{",.;:"}.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return word;
}

bool is_epithet_of_account(std::string_view word) {
  auto const epithet = bare(word);
  if (epithet.size() < kShortestEpithet) return false;
  return is_epithet(epithet) ||
         (is_in_capitals(epithet, kShortestEpithet) && is_plain_word(epithet));
}

std::size_t end_of_bare(std::string_view line, std::string_view word) {
  return static_cast<std::size_t>(bare(word).data() - line.data()) + bare(word).size();
}

// Behind "var. bus", where it follows the name's last word w.
std::size_t with_ranks(std::string_view line, std::vector<std::string_view> const& words,
                       std::size_t w) {
  auto end = end_of_bare(line, words[w]);
  while (bare(words[w]) == words[w] && w + 2 < words.size() && is_rank(words[w + 1]) &&
         is_epithet_of_account(words[w + 2])) {
    w += 2;
    end = end_of_bare(line, words[w]);
  }
  return end;
}

// "sp. n.", "n. sp.", "sp. nov.": word i begins what says that a species is new.
bool says_new(std::vector<std::string_view> const& words, std::size_t i) {
  if (is_mark_of_new(words[i])) return true;
  if (i + 1 == words.size()) return false;
  auto const next = bare(words[i + 1]);
  if (words[i] == "sp." || words[i] == "spec.") return next == "n" || next == "nov";
  return (words[i] == "n." || words[i] == "nov.") && next == "sp";
}

// Behind the epithet an author, a synonym or the account's first sentence begins.
bool closes_epithet(std::vector<std::string_view> const& words, std::size_t w) {
  if (bare(words[w]) != words[w]) return true;
  if (w + 1 == words.size()) return true;
  if (is_rank(words[w + 1]) || says_new(words, w + 1)) return true;
  auto const next = code_point_at(words[w + 1], 0).value;
  return is_upper(next) || next == '(' || next == '[' || is_dash(next);
}

// Behind the number and its full stop; 0 where there is none.
std::size_t take_account_number(std::string_view line, AccountHead& head) {
  auto const begin = skip_account_signs(line, 0);
  auto at = begin;
  while (at < line.size() && is_digit(static_cast<unsigned char>(line[at]))) {
    if (at - begin == kLongestAccountNumber) return 0;
    head.number = head.number * 10 + static_cast<std::uint32_t>(line[at] - '0');
    ++at;
  }
  if (at == begin) {
    while (at < line.size() && is_letter(static_cast<unsigned char>(line[at]))) ++at;
    auto const number = misread_number(line.substr(begin, at - begin));
    if (!number || at >= line.size() || line[at] != '.') return 0;
    head.number = *number;
    head.doubtful = true;
  }
  bool const closed = at < line.size() && (line[at] == '.' || line[at] == ')');
  head.doubtful = head.doubtful || !closed;
  if (closed) ++at;
  auto behind = skip_account_signs(line, at);
  // "2701. — C. bus Roe"
  if (auto const dash = code_point_at(line, behind); closed && is_dash(dash.value)) {
    behind = skip_blanks(line, behind + dash.length);
  }
  if (behind > at && head.number > 0) return behind;
  head = {};  // "1.5 mm"
  return 0;
}

}  // namespace

std::optional<AccountHead> read_account_head(std::string_view line) {
  AccountHead head;
  auto const at = take_account_number(line, head);
  auto const words = words_of(line.substr(at), kWordsOfHead);
  if (words.empty()) return std::nullopt;
  head.name_begin = at;
  // "Leaves opposite, entire" is no name.
  bool const latin = words.size() > 1 && is_latin_genus(words[0]) &&
                     has_epithet_ending(bare(words[1])) && !ends_item(words[1]);
  bool const genus = words.size() > 1 && (is_abbreviated(words[0]) || latin);
  if (genus && is_epithet_of_account(words[1]) && closes_epithet(words, 1)) {
    head.name_end = with_ranks(line, words, 1);
    return head;
  }
  // "Aus × bus": a hybrid.
  bool const hybrid = words.size() > 2 && (words[1] == "×" || words[1] == "x") &&
                      (is_abbreviated(words[0]) || is_latin_genus(words[0]));
  if (hybrid && is_epithet_of_account(words[2]) && closes_epithet(words, 2)) {
    head.name_end = with_ranks(line, words, 2);
    return head;
  }
  bool const capital = is_upper(code_point_at(words[0], 0).value);
  // "8. AUS Roe." titles a genus.
  bool const title = capital && bare(words[0]) == words[0];
  bool const epithet = !title && is_epithet_of_account(words[0]);
  bool const authored =
      words[0].ends_with(',') && words.size() > 1 && is_upper(code_point_at(words[1], 0).value);
  // "Smithii, Roe." as older works print it.
  bool const of_person = capital && !epithet && authored && is_plain_word(bare(words[0]));
  bool const closed = epithet && closes_epithet(words, 0);
  bool const sure = head.number > 0 && !head.doubtful;
  if (!of_person && !(sure ? closed : epithet && authored)) return std::nullopt;
  head.name_end = with_ranks(line, words, 0);
  return head;
}

bool heads_account_in_full(std::string_view line) {
  auto const words = words_of(start_of(line, 80), 3);
  return words.size() == 3 && is_species_number(words[0]) && is_latin_genus(words[1]) &&
         is_epithet(without_end(words[2])) && has_epithet_ending(without_end(words[2]));
}

TaxonReading read_account_name(std::string_view name) {
  auto const plain = without_ligatures(without_stress(name));
  auto const words = words_of(plain);
  bool const genus = words.size() > 1 && (is_abbreviated(words[0]) || is_capitalised(words[0])) &&
                     (!is_rank(words[1]) || words[1] == "×" || words[1] == "x");
  TaxonReading taxon;
  for (std::size_t w = 0; w < words.size(); ++w) {
    if (w > 0) taxon.name += ' ';
    bool const epithet = w > 0 || !genus;
    taxon.name += epithet ? fold(words[w]) : std::string{words[w]};
  }
  taxon.genusless = !genus;
  return taxon;
}

bool carries_on(AccountHead const& head, std::uint32_t last) {
  return head.number > last && head.number <= last + (head.doubtful ? 1 : kMostAccountsLost);
}

namespace {

// Floras count through: the number before that of the first account.  0 where the accounts count
// from 1, or where no three of them carry on from each other.
std::uint32_t number_before_accounts(std::vector<SourceLine> const& lines) {
  std::vector<std::uint32_t> numbers;
  for (auto const& line : lines) {
    auto const head = read_account_head(line.text);
    if (!head || head->number == 0 || head->doubtful) continue;
    if (carries_on(*head, 0)) return 0;
    numbers.push_back(head->number);
  }
  for (std::size_t i = 0; i + 2 < numbers.size(); ++i) {
    bool const run = numbers[i + 1] == numbers[i] + 1 && numbers[i + 2] == numbers[i] + 2;
    if (run) return numbers[i] - 1;
  }
  return 0;
}

class AccountPlanner {
 public:
  explicit AccountPlanner(std::vector<SourceLine> const& lines)
      : lines_{lines}, before_{lines.size()} {}

  std::optional<LeadPlan> plan() && {
    auto labels = plan_by_labels(lines_);
    if (!labels) return std::nullopt;
    see_habits(*labels);
    last_ = number_before_accounts(lines_);
    plan_.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan_.parts.assign(lines_.size(), LinePart::other);
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty() || is_page_furniture(lines_[i].text)) continue;
      take(i, labels->at(i));
      before_ = i;
    }
    bool const numbered = numbered_ >= kFewestAccountLeads;
    if (leaves_ < (numbered ? kFewestAccountLeads : kFewestUnnumbered)) return std::nullopt;
    return std::move(plan_);
  }

 private:
  // Without its number: directly beneath a lead whose words have come to an end, or behind another
  // account, where none has a number.
  [[nodiscard]] bool follows_lead(std::size_t i) const {
    if (before_ == lines_.size()) return false;
    bool const gap = lines_[i - 1].text.empty();
    if (in_account_) {
      auto const last = plan_.accounts.back().line;
      return numbered_ == 0 && gap && lines_[last].indent == lines_[i].indent;
    }
    auto const last = lines_[before_].text.back();
    return last == '.' || last == ':' || last == ';' || gap;
  }

  // Are A and AA rivals, A and B, or A and A?
  void see_habits(LeadPlan const& labels) {
    std::array<std::size_t, RankLabel::kRanks> plain{};
    std::array<std::size_t, RankLabel::kRanks> repeated{};
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::size_t> times;  // by rank and ordinal
    std::set<std::pair<std::uint32_t, std::uint32_t>> shared;              // rank and indentation
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> set_in;
    for (auto const& start : labels.starts) {
      auto const rank = start.rank.rank();
      auto const indent = lines_[start.line].indent;
      ++(start.rank.repeats > 0 ? repeated : plain)[rank];
      ++times[{rank, start.rank.ordinal}];
      auto const [first, fresh] = set_in.emplace(std::pair{rank, indent}, start.rank.ordinal);
      if (!fresh && first->second != start.rank.ordinal) shared.insert(first->first);
    }
    std::array<std::size_t, RankLabel::kRanks> twice{};
    for (auto const& [label, count] : times) {
      if (count == 2) twice[label.first] += count;
    }
    for (std::uint32_t rank = 0; rank < RankLabel::kRanks; ++rank) {
      repeats_[rank] = repeated[rank] > 0 && repeated[rank] * 4 >= plain[rank];
      // Each number twice; each letter at an indentation of its own.
      bool const numbers = rank / 6 == static_cast<std::uint32_t>(Alphabet::digits) &&
                           twice[rank] * 4 >= plain[rank] * 3;
      auto const at = shared.lower_bound({rank, 0});
      bool const apart = at == shared.end() || at->first != rank;
      same_[rank] = !repeats_[rank] && plain[rank] >= 4 && (numbers || apart);
    }
    auto const levels =
        levels_by_sign([&](std::uint32_t rank) { return plain[rank] >= 2 && repeated[rank] == 0; });
    for (auto const rank : levels) same_[rank] = true;
  }

  void take(std::size_t i, LeadStart const* start) {
    auto const text = lines_[i].text;
    auto const head = read_account_head(text);
    if (begins_genus(i) && (in_account_ || plan_.starts.empty())) return take_genus(i);
    bool const account = head && !open_.empty() && start_is_doubtful(start, *head) &&
                         (head->number == 0 ? follows_lead(i) : carries_on(*head, last_));
    // Behind the key the accounts of all species follow, "A. busa Roe. Length 4 mm …" or "Ausella
    // busa Roe.": from the first species that comes again on, no account is what the lead leads to.
    auto const named =
        account ? text.substr(head->name_begin, head->name_end - head->name_begin) : text;
    auto const epithet = named.substr(named.rfind(' ') + 1);
    if (account && in_account_ && head->number == 0) {
      behind_key_ = behind_key_ || named_.contains(epithet);
      if (behind_key_) {
        plan_.parts[i] = LinePart::account;
        return;
      }
    }
    if (account) {
      named_.insert(epithet);
      if (!in_account_) ++leaves_;
      if (head->number > 0) ++numbered_;
      in_account_ = true;
      last_ = head->number == 0 ? last_ + 1 : head->number;
      plan_.parts[i] = LinePart::account;
      plan_.accounts.push_back(
          {static_cast<std::uint32_t>(i), head->name_begin, head->name_end, head->number > 0});
      return;
    }
    if (start != nullptr && take_start(i, *start)) return;
    if (auto const section = section_at(i, text); section && take_start(i, *section)) return;
    if (!in_account_) return;
    plan_.parts[i] = LinePart::account;
  }

  // "B. bus, Roe" may be a lead's label and words, or an account without its number.
  [[nodiscard]] bool start_is_doubtful(LeadStart const* start, AccountHead const& head) const {
    if (start == nullptr || (head.number > 0 && !head.doubtful)) return true;
    return rival_of(*start) == open_.rend();
  }

  // "Section II.— BUSELLA. Petals white.": labelled as "§ 2." is.
  [[nodiscard]] static std::optional<LeadStart> section_at(std::size_t i, std::string_view text) {
    auto const words = words_of(text, 3);
    if (words.size() < 3) return std::nullopt;
    auto const word = fold(bare(words[0]));
    if (word != "section" && word != "sect" && word != "sectio" && word != "sektion") {
      return std::nullopt;
    }
    auto number = words[1].substr(0, words[1].find_first_of(".:,"));
    auto const ordinal = number.size() == 1 && is_digit(static_cast<unsigned char>(number[0]))
                             ? static_cast<std::uint32_t>(number[0] - '0')
                             : roman_number(number);
    if (ordinal == 0) return std::nullopt;
    LeadStart start;
    start.line = static_cast<std::uint32_t>(i);
    start.rank.alphabet = Alphabet::sign;
    start.rank.sign = 0xA7;
    start.rank.ordinal = ordinal;
    start.rank.label.family = LabelFamily::dash;
    auto const end = static_cast<std::size_t>(number.data() - text.data()) + number.size();
    start.rank.label.printed = text.substr(0, end);
    start.rank.label.text_at = static_cast<std::size_t>(words[2].data() - text.data());
    return start;
  }

  // "AUSELLA (after Dr. Aus). Herbs …", "AUSELLA Roe", "Genus Ausella Roe", "Key to the species"
  // behind a blank line.
  [[nodiscard]] bool begins_genus(std::size_t i) const {
    auto const text = lines_[i].text;
    if (i > 0 && !lines_[i - 1].text.empty()) return false;
    if (titles_genus(text) || mentions_key(text)) return true;
    auto const words = words_of(text, 2);
    return is_in_capitals(bare(words[0]), kShortestGenusInCapitals) &&
           (bare(words[0]) != words[0] || words.size() == 1 || words[1].front() == '(' ||
            is_capitalised(words[1]));
  }

  // The accounts and the leads of the genus before are at an end; which part of the plan the title
  // has, is told by what follows it.
  void take_genus(std::size_t i) {
    genus_ = i;
    fresh_ = true;
    in_account_ = false;
    open_.clear();
  }

  // The first lead behind the title of a genus opens a key of its own, if leads stand before it and
  // it begins a count; then the titles of this genus and the first one part the keys.
  void open_key(LeadStart& start) {
    bool const first = start.rank.repeats == 0 && start.rank.ordinal <= 1;
    if (!std::exchange(fresh_, false) || !first) return;
    if (!plan_.starts.empty()) {
      start.opens_key = true;
      last_ = 0;
      if (first_genus_) plan_.parts[*first_genus_] = LinePart::genus;
      plan_.parts[genus_] = LinePart::genus;
    } else {
      first_genus_ = genus_;
    }
  }

  // The innermost open lead that it answers; rend() where there is none.  No printed outline is
  // deeper, and a text made to be deep must not cost more than its size.
  [[nodiscard]] std::vector<LeadStart>::const_reverse_iterator rival_of(
      LeadStart const& start) const {
    constexpr std::size_t kDeepestOutline = 200;
    auto const depth = static_cast<std::ptrdiff_t>(std::min(open_.size(), kDeepestOutline));
    auto const end = open_.rbegin() + depth;
    auto const rival = std::find_if(open_.rbegin(), end,
                                    [&](LeadStart const& open) { return answers(open, start); });
    return rival == end ? open_.rend() : rival;
  }

  bool take_start(std::size_t i, LeadStart start) {
    auto const rival = rival_of(start);
    // "A. Roe" at the front of an account's line.
    if (in_account_ && rival == open_.rend()) return false;
    if (rival != open_.rend()) {
      open_.erase(std::next(rival).base(), open_.end());
    }
    open_.push_back(start);
    in_account_ = false;
    behind_key_ = false;
    open_key(start);
    plan_.start_at[i] = static_cast<std::uint32_t>(plan_.starts.size());
    plan_.starts.push_back(start);
    return true;
  }

  [[nodiscard]] bool answers(LeadStart const& before, LeadStart const& start) const {
    auto const& open = before.rank;
    auto const& next = start.rank;
    if (open.alphabet != next.alphabet || open.sign != next.sign) return false;
    if (open.alphabet == Alphabet::dash) return true;
    if (same_[next.rank()]) {
      return open.ordinal == next.ordinal && open.repeats == next.repeats &&
             lines_[before.line].indent == lines_[start.line].indent;
    }
    bool const again = open.ordinal == next.ordinal && next.repeats > open.repeats;
    bool const follows = next.ordinal == open.ordinal + 1 && next.repeats == open.repeats;
    return again || (!repeats_[next.rank()] && follows);
  }

  std::vector<SourceLine> const& lines_;
  LeadPlan plan_;
  std::array<bool, RankLabel::kRanks> repeats_{};  // A is answered by AA
  std::array<bool, RankLabel::kRanks> same_{};     // A is answered by A
  std::vector<LeadStart> open_;                    // the leads on the way to the last one
  bool in_account_{false};
  std::size_t before_{};    // the last line with text that is no furniture of a page
  std::size_t numbered_{};  // accounts with numbers
  std::uint32_t last_{};    // number of the last account
  std::size_t leaves_{};
  std::unordered_set<std::string_view> named_;  // epithets of accounts
  bool behind_key_{false};                      // the accounts at hand repeat species
  std::size_t genus_{};                         // line of the last title of a genus
  bool fresh_{false};                           // no lead has begun since
  std::optional<std::size_t> first_genus_;
};

}  // namespace

bool may_have_accounts(std::vector<SourceLine> const& lines) {
  auto last = number_before_accounts(lines);
  std::size_t numbered = 0;
  std::size_t others = 0;
  for (auto const& line : lines) {
    auto const head = read_account_head(line.text);
    if (!head) continue;
    if (head->number == 0) {
      ++others;
    } else if (carries_on(*head, last)) {
      last = head->number;
      ++numbered;
    }
  }
  return numbered >= kFewestAccountLeads || others >= kFewestUnnumbered;
}

std::optional<LeadPlan> plan_by_labels_and_accounts(std::vector<SourceLine> const& lines) {
  return AccountPlanner{lines}.plan();
}

}  // namespace keydrift::printed
