#include "keydrift/formats/printed_ahead.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <unordered_map>

#include "keydrift/formats/printed_answered.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {

LinesAhead::LinesAhead(std::vector<SourceLine> const& lines, Numbering const& numbering,
                       LeadPlan const* plan)
    : lines_{lines}, numbering_{numbering}, plan_{plan}, genus_authors_{lines, numbering} {
  answered_ = find_answered(lines_, numbering_);
  epithets_alone_ = find_epithets_alone(lines_);
  usually_led_ = leads_are_led();
  find_usual_style();
  labelled_ = find_labelled();
  second_leads_unlabelled_ = leads_are_half_labelled();
}

void LinesAhead::find_usual_style() {
  constexpr std::size_t kFewest = 6;
  std::array<std::size_t, Label::kStyles> styles{};
  std::size_t all = 0;
  for (auto const& line : lines_) {
    auto const label = numbering_.label_of(line);
    if (!label || label->family != LabelFamily::digits) continue;
    ++styles[label->style()];
    ++all;
  }
  auto const most = std::max_element(styles.begin(), styles.end());
  if (all < kFewest || *most * 6 < all * 5) return;
  usual_style_ = static_cast<unsigned>(most - styles.begin());
  for (auto const& line : lines_) {
    auto const label = numbering_.label_of(line);
    if (label && label->style() == *usual_style_) usual_numbers_.insert(label->number);
  }
}

std::vector<char> LinesAhead::find_labelled() const {
  std::vector<char> labelled(lines_.size(), 0);
  for (std::size_t i = 0; i < lines_.size(); ++i) labelled[i] = judge_label_at(i) ? 1 : 0;
  if (plan_ == nullptr && numbering_.extent == Extent::whole) drop_numbered_genera(labelled);
  if (plan_ == nullptr) drop_starred_notes(labelled);
  if (plan_ == nullptr && numbering_.extent == Extent::whole) drop_wrapped_dashes(labelled);
  if (plan_ == nullptr && numbering_.extent == Extent::whole) drop_dashes_within(labelled);
  return labelled;
}

// "* Not yet recorded here", in a key that marks no second leads so: a note on names that bear the
// sign.
void LinesAhead::drop_starred_notes(std::vector<char>& labelled) const {
  constexpr std::size_t kMost = 2;
  constexpr std::size_t kFewestNumbers = 4;
  std::vector<std::size_t> starred;
  std::size_t numbered = 0;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (labelled[i] == 0) continue;
    auto const label = numbering_.label_of(lines_[i]);
    if (!label) continue;
    if (!label->is_dash()) ++numbered;
    auto sign = label->printed;
    if (sign.starts_with('(')) sign.remove_prefix(1);
    if (sign.ends_with(')')) sign.remove_suffix(1);
    if (sign == "*" || sign == "**" || sign == "\u2022") starred.push_back(i);
  }
  if (starred.size() > kMost || numbered < kFewestNumbers) return;
  for (auto const i : starred) {
    bool const apart = i > 0 && (lines_[i - 1].text.empty() || is_ruled(lines_[i - 1].text) ||
                                 (i == starred.back() && i - 1 == starred.front()));
    if (apart) labelled[i] = 0;
  }
}

// Do the words from line i to the next label, or to a blank line, lead to a number or a name?
bool LinesAhead::leads_somewhere(std::vector<char> const& labelled, std::size_t i) const {
  for (auto at = i; at < lines_.size() && !lines_[at].text.empty(); ++at) {
    if (at > i && labelled[at] != 0) return false;
    auto const text = lines_[at].text;
    if (split_at_leader(text, numbering_).kind != LeaderKind::none) return true;
    if (trailing_reference(text, &numbering_) || trailing_name(text)) return true;
  }
  return false;
}

// "— Common everywhere", in a key that labels both leads of its couplets: words that a line's end
// brought to the front.
void LinesAhead::drop_wrapped_dashes(std::vector<char>& labelled) const {
  constexpr std::size_t kFewestNumbers = 8;
  // Most keys have no dash at all, or as many as numbers.
  std::size_t all = 0;
  std::size_t begin_so = 0;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (labelled[i] == 0) continue;
    ++all;
    if (is_dash(code_point_at(lines_[i].text, 0).value)) ++begin_so;
  }
  // Beneath leads that lead somewhere, dashes that lead nowhere may be many.
  bool const few = begin_so * 5 <= all;
  if (begin_so == 0 || begin_so * 2 > all) return;
  std::unordered_map<std::uint32_t, std::size_t> labels;  // by number
  std::size_t numbered = 0;
  std::size_t backed = 0;
  std::vector<std::size_t> dashes;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (labelled[i] == 0) continue;
    auto const label = numbering_.label_of(lines_[i]);
    if (!label) continue;
    if (label->is_dash()) {
      if (is_dash(code_point_at(label->printed, 0).value)) dashes.push_back(i);
      continue;
    }
    ++numbered;
    ++labels[label->number];
    if (!label->back.empty()) ++backed;
  }
  auto const paired = static_cast<std::size_t>(
      std::count_if(labels.begin(), labels.end(), [](auto const& one) { return one.second > 1; }));
  auto const leads_on = [&](std::size_t i) { return leads_somewhere(labelled, i); };
  bool const wrapped = few && numbered >= kFewestNumbers && dashes.size() * 4 <= numbered &&
                       (paired * 10 >= labels.size() * 9 || backed * 10 >= numbered * 9);
  // "1. Leaves bald ..... A. bus Roe" / "— Fens; common." / "1*. Leaves hairy ..... 2"
  bool const remarks = labels.size() > 1 && paired == labels.size() &&
                       std::none_of(dashes.begin(), dashes.end(), leads_on);
  if (!wrapped && !remarks) return;
  for (auto const i : dashes) {
    if (i > 0 && !lines_[i - 1].text.empty()) labelled[i] = 0;
  }
}

// "7. Leaves round; flowers single." / "— Marshes ..... A. bus" / "— Leaves long ..... 8": of two
// dashes behind a first lead that leads nowhere, where all other couplets have one, the first
// stands before the rest of that lead.
void LinesAhead::drop_dashes_within(std::vector<char>& labelled) const {
  constexpr std::size_t kPairsEach = 4;  // couplets with one dash, for each with two
  std::vector<std::size_t> starts;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (labelled[i] != 0) starts.push_back(i);
  }
  auto const is_dash_at = [&](std::size_t s) {
    return s < starts.size() && is_dash(code_point_at(lines_[starts[s]].text, 0).value);
  };
  std::vector<std::size_t> within;
  std::size_t pairs = 0;
  for (std::size_t s = 0; s < starts.size(); ++s) {
    if (is_dash_at(s) || !is_dash_at(s + 1)) continue;
    if (!is_dash_at(s + 2)) {
      ++pairs;
      continue;
    }
    auto const dash = starts[s + 1];
    bool const within_lead = !is_dash_at(s + 3) && lines_[dash - 1].text.ends_with('.') &&
                             !leads_somewhere(labelled, starts[s]) &&
                             leads_somewhere(labelled, dash) &&
                             leads_somewhere(labelled, starts[s + 2]);
    if (!within_lead) return;  // couplets may have three leads
    within.push_back(dash);
  }
  if (within.size() * kPairsEach > pairs) return;
  for (auto const dash : within) labelled[dash] = 0;
}

// "4. Aus Roe" above a key that has a couplet 4 of its own: the number of the genus in its book,
// and again in the heads of the pages ("4. Aus").
void LinesAhead::drop_numbered_genera(std::vector<char>& labelled) const {
  constexpr std::size_t kLongest = 60;        // bytes
  constexpr std::size_t kLongestTitle = 120;  // "3. Key to the species of the western provinces"
  constexpr std::size_t kLookedAt = 200;      // lines before the key
  auto const printed_number = [&](std::size_t i) -> std::uint32_t {
    auto const label = numbering_.label_of(lines_[i]);
    bool const plain = label && label->family == LabelFamily::digits && label->letter.empty();
    return plain && !label->decimal ? label->number : 0;
  };
  auto const number_of = [&](std::size_t i) -> std::uint32_t {
    return labelled[i] == 0 ? 0 : printed_number(i);
  };
  auto const limit = std::min(lines_.size(), kLookedAt);
  std::size_t first = 0;
  while (first < limit && number_of(first) != 1) ++first;
  if (first == limit) return;
  for (std::size_t i = 0; i < first; ++i) {
    // One that is known for no lead may head further pages.
    auto const number = lines_[i].is_no_lead ? printed_number(i) : number_of(i);
    auto const text = lines_[i].text;
    if (number == 0 || text.size() > (mentions_key(text) ? kLongestTitle : kLongest)) continue;
    auto const words = words_of(text.substr(numbering_.label_of(lines_[i])->text_at));
    auto const group = read_group_head(text);
    bool const headed = group && group->sure;
    if (!headed && split_at_leader(text, numbering_).kind != LeaderKind::none) continue;
    if (words.empty() || !(headed || is_capitalised(words[0]))) continue;
    // "3. Aus Roe" needs no blank line behind it.
    constexpr std::size_t kWords = 5;
    bool const authored =
        words.size() >= 2 && words.size() <= kWords && has_strict_latin_ending(words[0]) &&
        std::all_of(words.begin() + 1, words.end(),
                    [](auto word) { return is_authorish(word) || is_particle(word); });
    if (!gap_after(i) && !authored && !headed) continue;
    labelled[i] = 0;
    for (auto j = first; j < lines_.size(); ++j) {
      if (number_of(j) != number || !gap_after(j)) continue;
      auto const head = words_of(lines_[j].text.substr(numbering_.label_of(lines_[j])->text_at));
      if (head.size() == 1 && head[0] == words[0]) labelled[j] = 0;
    }
  }
}

std::optional<Label> LinesAhead::label_at(std::size_t i) const {
  if (labelled_[i] == 0) return std::nullopt;
  return plan_ != nullptr ? plan_->at(i)->rank.label : numbering_.label_of(lines_[i]);
}

// "7. MABWENIA, Roe in Journ. Marsh. xxxi. 118.": the genus in capitals, its author, no
// destination.
bool LinesAhead::heads_account(std::size_t i, std::string_view words) const {
  constexpr std::size_t kShortest = 5;  // letters
  auto const first = words_of(words, 1);
  if (first.empty() || !is_in_capitals(without_end(first[0]), kShortest)) return false;
  if (split_at_leader(words, numbering_).kind != LeaderKind::none) return false;
  auto const head = read_group_head(lines_[i].text);
  return head && head->sure && !head->genus.empty();
}

std::optional<Label> LinesAhead::judge_label_at(std::size_t i) const {
  if (plan_ != nullptr) {
    auto const* start = plan_->at(i);
    return start == nullptr ? std::nullopt : std::optional{start->rank.label};
  }
  if (lines_[i].told) return lines_[i].told;
  if (lines_[i].is_no_lead || is_numbered_title(i)) return std::nullopt;
  auto const label = numbering_.label_of(lines_[i]);
  if (!label) return label;
  auto const words = lines_[i].text.substr(label->text_at);
  if (label->number > kMostCouplets && !numbering_.has_number(label->number - 1)) {
    return std::nullopt;
  }
  // "2–5 m, scales" / "0. INFL: cyme": only a piece may put a couplet 0 before the first.
  bool const zero = label->family == LabelFamily::digits && label->number == 0;
  if (zero && numbering_.extent == Extent::whole) return std::nullopt;
  if (label->family == LabelFamily::digits && titles_genus(words) &&
      split_at_leader(words, numbering_).kind == LeaderKind::none) {
    return std::nullopt;
  }
  if (label->family == LabelFamily::digits &&
      (titles_group(lines_, i, label->text_at) || heads_account(i, words))) {
    return std::nullopt;
  }
  if (label->is_dash()) {
    bool const account =
        titles_account(words) && split_at_leader(words, numbering_).kind == LeaderKind::none;
    bool const name = is_destination_behind_dash(words) || is_dated_name(words) || account;
    return name ? std::nullopt : label;
  }
  if (is_numbered_species(i) || is_taxon_far_in(i)) return std::nullopt;
  if (label->family == LabelFamily::upper && is_known_name(i, words)) return std::nullopt;
  if (titles_numbered_account(*label, words)) return std::nullopt;
  if (!titles_account(words) && !titles_known_account(words)) return label;
  // "7. A. bus Roe - Marsh Mouse. Small …"
  auto const split = split_at_leader(words, numbering_);
  bool const account = split.kind == LeaderKind::none || split.kind == LeaderKind::dash ||
                       is_genus_before_gap(words, split) ||
                       starts_caption(words.substr(split.destination_begin));
  return account ? std::nullopt : label;
}

// "A. bus" on a line of its own, where leads lead to "A. cus".
bool LinesAhead::is_known_name(std::size_t i, std::string_view words) const {
  auto const text = lines_[i].text;
  auto const genus = text.substr(0, text.find(' '));
  return is_lower(code_point_at(words, 0).value) && is_abbreviated(genus) && is_latin_name(text) &&
         known_genera().contains(genus);
}

bool LinesAhead::titles_known_account(std::string_view words) const {
  constexpr std::size_t kLongest = 100;  // bytes
  auto const blank = words.find(' ');
  if (blank == std::string_view::npos || words.size() > kLongest) return false;
  auto const genus = words.substr(0, blank);
  if (!is_upper(code_point_at(genus, 0).value)) return false;
  bool const account = is_account_of_genus(words);
  bool const dated = is_abbreviated(genus) && is_dated_name(words);
  if (!account && !dated) return false;
  return !is_abbreviated(genus) && known_genera().contains(genus) ? account : dated;
}

bool LinesAhead::titles_numbered_account(Label const& label, std::string_view words) const {
  if (label.family != LabelFamily::digits || label.end == LabelEnd::none) return false;
  auto const few = words_of(words, 3);
  if (few.size() < 2 || !is_abbreviated(few[0]) || !is_epithet(few[1])) return false;
  if (few.size() == 3) {
    auto const& third = few[2];
    bool const behind_name = is_authorish(third) || is_rank(third) || third.front() == '(' ||
                             is_dash(code_point_at(third, 0).value);
    if (!behind_name) return false;
  }
  return numbered_names().contains(numbered_name(label.number, few[0], few[1]));
}

// Whatever its first word is: may an account begin so?
bool LinesAhead::is_account_of_genus(std::string_view words) {
  // As a rule the first few words tell that it does not.
  auto const few = words_of(words, 3);
  if (few.size() < 2) return false;
  bool const plain = few.size() == 3 && few[1].front() != '(' && !is_authorish(few[1]);
  if (plain && !is_authorish(few[2]) && !is_rank(few[2])) return false;
  auto parts = words_of(words);
  bool const subgenus = parts.size() > 3 && parts[1].front() == '(' && !is_year(parts[2]);
  while (subgenus && parts.size() > 2) {  // "Aus (s. str.) bus"
    bool const closes = parts[1].ends_with(')');
    parts.erase(parts.begin() + 1);
    if (closes) break;
  }
  constexpr std::size_t kMostOfGenus = 6;  // words: "Aus Roe & Dorn, 1911"
  if (is_authorish(parts[1]) && parts.size() <= kMostOfGenus) {
    return std::all_of(parts.begin() + 1, parts.end(), [](std::string_view word) {
      return is_authorish(word) || is_particle(without_end(word));
    });
  }
  auto epithet = parts[1];
  if (parts.size() == 2 && epithet.ends_with('.')) epithet.remove_suffix(1);
  if (!is_epithet(epithet) || ends_item(epithet) || !has_epithet_ending(epithet)) return false;
  return parts.size() == 2 || is_authorish(parts[2]) || is_rank(parts[2]);
}

// "— 5", "— A. bus": no words of a lead, but what the one above leads to.
bool LinesAhead::is_destination_behind_dash(std::string_view words) const {
  constexpr std::size_t kLongest = 80;  // bytes
  if (words.empty() || words.size() > kLongest) return false;
  if (auto const number = numbering_.read(strip_pointer(words))) {
    return number->family == LabelFamily::digits && numbering_.has_number(number->number);
  }
  if (!numbering_.ends.dash) return false;
  return is_genusless_name(words) || is_bare_epithet(words) ||
         (is_latin_name(words) && is_certain_name(words)) ||
         (words_of(words).size() <= 2 && certain_destination(words, numbering_));
}

bool LinesAhead::is_numbered_title(std::size_t i) const {
  constexpr std::size_t kLongestTitle = 80;  // bytes
  auto const text = lines_[i].text;
  bool const apart =
      text.size() <= kLongestTitle && gap_after(i) && (i == 0 || lines_[i - 1].text.empty());
  if (!apart) return false;
  auto const label = numbering_.label_of(text);
  if (!label || label->family != LabelFamily::digits || label->text_at >= text.size()) return false;
  if (split_at_leader(text, numbering_).kind != LeaderKind::none || text.ends_with('.'))
    return false;
  // "4. The species"; a number that fills a gap of the count has only lost its full stop.
  bool const other = usual_style_ && label->style() != *usual_style_;
  bool const fills = usual_numbers_.contains(label->number - 1) &&
                     usual_numbers_.contains(label->number + 1) &&
                     !usual_numbers_.contains(label->number);
  if (other && !fills) return true;
  auto const next = next_filled(i + 1);
  if (next >= lines_.size()) return false;
  auto const first = numbering_.label_of(lines_[next]);
  return first && first->number == 1 && first->family == LabelFamily::digits &&
         first->style() != label->style();
}

bool LinesAhead::gap_after(std::size_t i) const {
  return i + 1 < lines_.size() && lines_[i + 1].text.empty();
}

bool LinesAhead::label_follows(std::size_t i) const {
  return i + 1 < lines_.size() && !lines_[i + 1].text.empty() && label_at(i + 1).has_value();
}

std::size_t LinesAhead::next_filled(std::size_t i) const {
  while (i < lines_.size() && lines_[i].text.empty()) ++i;
  return i;
}

std::size_t LinesAhead::next_of_key(std::size_t i) const {
  i = next_filled(i);
  while (i < lines_.size() && heads_ != nullptr && (*heads_)[i]) i = next_filled(i + 1);
  return i;
}

std::string_view LinesAhead::text_behind_label(std::size_t i) const {
  auto text = lines_[i].text;
  // What stands between a label and its words is no leader.
  if (plan_ != nullptr && plan_->at(i) != nullptr) {
    text.remove_prefix(std::min(plan_->at(i)->rank.label.text_at, text.size()));
  }
  return text;
}

bool LinesAhead::leads_are_led() const {
  // Wrapped words may look like labels; their numbers are few.
  std::size_t led = 0;
  for (std::size_t i = 0; i < lines_.size() && led * 2 < numbering_.numbers.size(); ++i) {
    auto const text = text_behind_label(i);
    auto const split = split_at_leader(text, numbering_);
    // The dots before "go to 5" are none that names would have as well.
    bool const pointed = points_in_words(text.substr(split.destination_begin));
    if (split.kind != LeaderKind::none && !pointed) ++led;
  }
  return led * 2 >= numbering_.numbers.size();
}

std::unordered_set<std::string_view> const& LinesAhead::known_genera() const {
  if (!genera_) find_names_led_to();
  return *genera_;
}

std::unordered_set<std::string> const& LinesAhead::numbered_names() const {
  if (!genera_) find_names_led_to();
  return numbered_names_;
}

std::string LinesAhead::numbered_name(std::uint32_t number, std::string_view genus,
                                      std::string_view epithet) {
  return std::to_string(number) + ' ' + std::string{genus} + ' ' + std::string{epithet};
}

void LinesAhead::find_names_led_to() const {
  auto& genera = genera_.emplace();
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    auto const text = text_behind_label(i);
    auto const split = split_at_leader(text, numbering_);
    if (split.kind == LeaderKind::none) continue;
    auto const name = text.substr(split.destination_begin);
    auto const genus = without_end(name.substr(0, name.find(' ')));
    // A gap behind a label stands before words.
    constexpr std::size_t kLabel = 16;  // bytes
    bool const label = split.kind == LeaderKind::gap && split.words_end <= kLabel;
    if (!label && (is_capitalised(genus) || is_abbreviated(genus))) genera.insert(genus);
    auto const number = label ? std::nullopt : read_label(name);
    if (!number || number->is_dash() || number->family != LabelFamily::digits) continue;
    auto const words = words_of(name.substr(number->text_at), 2);
    if (words.size() == 2) {
      numbered_names_.insert(numbered_name(number->number, words[0], without_end(words[1])));
    }
  }
}

bool LinesAhead::leads_are_half_labelled() const {
  if (plan_ != nullptr) return false;
  constexpr std::size_t kFewest = 3;  // couplets that make a habit
  std::vector<std::uint32_t> numbers;
  std::size_t dashes = 0;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    auto const label = label_at(i);
    if (!label || label->text_at >= lines_[i].text.size()) continue;
    if (label->is_dash()) {
      ++dashes;
    } else if (label->family == LabelFamily::digits) {
      numbers.push_back(label->number);
    }
  }
  std::sort(numbers.begin(), numbers.end());
  std::size_t single = 0;
  std::size_t distinct = 0;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t j = i;
    while (j < numbers.size() && numbers[j] == numbers[i]) ++j;
    ++distinct;
    if (j == i + 1) ++single;
    i = j;
  }
  return distinct >= kFewest && single * 5 >= distinct * 4 && dashes * 4 <= distinct;
}

}  // namespace keydrift::printed
