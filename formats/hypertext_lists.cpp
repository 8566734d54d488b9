#include "keydrift/formats/hypertext_lists.hpp"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <set>
#include <utility>
#include <vector>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_walk.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::hypertext {
namespace {

using printed::is_digit;
using printed::read_label;

constexpr std::size_t kItemBytesKept = 40;   // bytes of a line's begin and end that are kept
constexpr std::size_t kFewestItems = 3;      // that make a key
constexpr std::size_t kMostLeadsOfList = 4;  // leads of a couplet
constexpr std::size_t kLongestTerm = 8;      // bytes of "12a."
constexpr std::size_t kNone = SIZE_MAX;

// A line of an item: what is shown of it.
struct Shown {
  std::size_t tag{};  // that begins it
  std::string begin;
  std::string end;
};

struct Item {
  bool term{false};        // a "<dt>"
  std::uint32_t number{};  // that is shown before it
  std::vector<Shown> lines;
  std::size_t list{kNone};  // the first list within it
};

struct List {
  std::string name;
  std::uint32_t start{1};
  bool lettered{false};  // shows "a.", "b." before its items
  Shown above;           // the line over it, of a list that stands in no other
  std::vector<Item> items;

  // Where the next item has no value="…" of its own.
  [[nodiscard]] std::uint32_t next() const {
    return items.empty() ? start : items.back().number + 1;
  }
};

bool is_list(std::string_view name) { return name == "ol" || name == "ul" || name == "dl"; }
bool is_item(std::string_view name) { return name == "li" || name == "dt" || name == "dd"; }

// The number of start="…" or value="…"; `without` where there is none.
std::uint32_t number_of(std::string_view tag, std::string_view attribute, std::uint32_t without) {
  auto const digits = attribute_of(tag, attribute);
  std::from_chars(digits.data(), digits.data() + digits.size(), without);
  return without;
}

class ListSurveyor {
 public:
  explicit ListSurveyor(std::string_view text) : text_{text} {}

  std::vector<List> survey() && {
    walk(
        text_, [this](Tag const& tag, std::size_t at) { take(tag, at); },
        [this](std::size_t at) {
          show(text_[at]);
          return std::size_t{1};
        });
    return std::move(lists_);
  }

 private:
  void take(Tag const& tag, std::size_t at) {
    if (is_list(tag.name)) {
      if (tag.closes) {
        if (!open_.empty()) open_.pop_back();
      } else if (!tag.empty) {
        if (auto* item = current(); item != nullptr && item->list == kNone) {
          item->list = lists_.size();
        }
        open_.push_back(lists_.size());
        auto const type = attribute_of(text_.substr(at, tag.length), "type");
        lists_.push_back({.name = tag.name,
                          .start = number_of(text_.substr(at, tag.length), "start", 1),
                          .lettered = type == "a" || type == "A",
                          .above = std::exchange(above_, {}),
                          .items = {}});
      }
      fresh_line_ = at;
      return;
    }
    if (!breaks_line(tag.name)) return;
    fresh_line_ = at;
    if (open_.empty()) return;
    if (is_item(tag.name) && !tag.closes) {
      auto& list = lists_[open_.back()];
      auto const number = number_of(text_.substr(at, tag.length), "value", list.next());
      list.items.push_back({.term = tag.name == "dt", .number = number, .lines = {}});
    }
  }

  [[nodiscard]] Item* current() {
    if (open_.empty() || lists_[open_.back()].items.empty()) return nullptr;
    return &lists_[open_.back()].items.back();
  }

  void show(char c) {
    bool const white = is_white(c);
    if (open_.empty()) return show_above(white ? ' ' : c);
    auto* item = current();
    if (item == nullptr) return;
    if (fresh_line_ != kNone) {
      if (white) return;
      item->lines.push_back({.tag = fresh_line_, .begin = {}, .end = {}});
      fresh_line_ = kNone;
    }
    if (item->lines.empty()) return;
    auto& line = item->lines.back();
    if (line.begin.size() < kItemBytesKept) line.begin += white ? ' ' : c;
    if (white && !line.end.empty() && line.end.back() == ' ') return;
    line.end += white ? ' ' : c;
    if (line.end.size() > 2 * kItemBytesKept) line.end.erase(0, kItemBytesKept);
  }

  void show_above(char c) {
    if (fresh_line_ != kNone) {
      if (c == ' ') return;
      above_ = {.tag = fresh_line_, .begin = {}, .end = {}};
      fresh_line_ = kNone;
    }
    if (above_.begin.size() < kItemBytesKept) above_.begin += c;
  }

  std::string_view text_;
  std::vector<List> lists_;
  Shown above_;                    // the line that was shown last outside lists
  std::vector<std::size_t> open_;  // indices of lists_, the innermost last
  std::size_t fresh_line_{kNone};  // the tag that began a line of which nothing is shown yet
};

// The number that the line ends in; 0 without one.
std::uint32_t number_at_item_end(std::string_view line) {
  while (!line.empty() && (is_white(line.back()) || line.back() == '.' || line.back() == ')')) {
    line.remove_suffix(1);
  }
  auto begin = line.size();
  while (begin > 0 && is_digit(static_cast<unsigned char>(line[begin - 1]))) --begin;
  std::uint32_t number = 0;
  std::from_chars(line.data() + begin, line.data() + line.size(), number);
  return number;
}

// Do a quarter of the lines or more lead to one of the items?
class Destinations {
 public:
  void add(std::uint32_t number) { numbers_.insert(number); }
  void see(Shown const& line) { ends_.push_back(number_at_item_end(line.end)); }
  [[nodiscard]] bool make_a_key() const {
    auto const leading = static_cast<std::size_t>(
        std::count_if(ends_.begin(), ends_.end(),
                      [this](std::uint32_t number) { return numbers_.contains(number); }));
    return leading >= 2 && leading * 4 >= ends_.size();
  }

 private:
  std::set<std::uint32_t> numbers_;
  std::vector<std::uint32_t> ends_;
};

bool writes_number(Shown const& line) {
  auto const label = read_label(line.begin);
  return label && label->family == printed::LabelFamily::digits;
}

class Labeller {
 public:
  explicit Labeller(std::vector<List> const& lists) : lists_{lists} {}

  std::unordered_map<std::size_t, ListLine> label() && {
    bool const terms_count = numbers_among_terms() >= kFewestItems;
    auto const of_leads = label_inner_lists();
    for (auto const& list : lists_) {
      if (list.items.size() < kFewestItems) continue;
      if (list.name == "dl") {
        if (terms_count) label_terms(list);
      } else if (list.name == "ol" && !of_leads.contains(&list)) {
        label_lines(list);
      }
    }
    label_lists_of_one();
    label_lettered_lists();
    join_titled_lists();
    return std::move(labels_);
  }

 private:
  // The leads of an item that is a list of a few, a line with its title aside; none for any other.
  [[nodiscard]] std::vector<Item> const& leads_within(Item const& item) const {
    static std::vector<Item> const kNobody;
    if (item.list == kNone || item.lines.size() > 1) return kNobody;
    auto const& leads = lists_[item.list].items;
    return leads.size() < 2 || leads.size() > kMostLeadsOfList ? kNobody : leads;
  }

  // Lists of which each item is nothing but a list of leads.  Words between couplets part a key
  // into several.
  std::set<List const*> label_inner_lists() {
    std::set<List const*> found;
    Destinations destinations;
    std::size_t couplets = 0;
    for (auto const& list : lists_) {
      if (list.name != "ol" || !holds_leads(list)) continue;
      found.insert(&list);
      for (auto const& item : list.items) {
        destinations.add(item.number);
        for (auto const& lead : leads_within(item)) destinations.see(lead.lines.back());
        ++couplets;
      }
    }
    if (couplets < kFewestItems || !destinations.make_a_key()) return {};
    for (auto const* list : found) label_inner_list(*list);
    return found;
  }
  [[nodiscard]] bool holds_leads(List const& list) const {
    std::size_t couplets = 0;
    for (auto const& item : list.items) {
      auto const& leads = leads_within(item);
      if (!leads.empty()) ++couplets;
      for (auto const& lead : leads) {
        if (lead.lines.empty() || writes_number(lead.lines.front())) return false;
      }
    }
    return couplets > 0 && couplets * 4 >= list.items.size() * 3;
  }
  void label_inner_list(List const& list) {
    for (auto const& item : list.items) {
      auto const& leads = leads_within(item);
      // "Shape of the head" over its leads
      if (!leads.empty() && !item.lines.empty()) {
        labels_[item.lines.front().tag] = {.label = {}, .beside = true};
      }
      for (std::size_t l = 0; l < leads.size(); ++l) {
        auto const& line = leads[l].lines.front();
        auto const own = read_label(line.begin);  // "a. Wings clear"
        auto label = std::to_string(item.number);
        if (!own || own->family != printed::LabelFamily::lower) {
          label += static_cast<char>('a' + l);
          label += ". ";
        }
        labels_[line.tag] = {.label = std::move(label)};
      }
    }
  }

  // Each item a few lines, each of them a lead.
  void label_lines(List const& list) {
    Destinations destinations;
    std::size_t couplets = 0;
    for (auto const& item : list.items) {
      destinations.add(item.number);
      for (auto const& line : item.lines) {
        if (writes_number(line)) return;
        destinations.see(line);
      }
      if (item.lines.size() >= 2 && item.lines.size() <= kMostLeadsOfList) ++couplets;
    }
    if (couplets * 4 < list.items.size() * 3 || !destinations.make_a_key()) return;
    for (auto const& item : list.items) {
      auto const& lines = item.lines;
      for (std::size_t l = 0; l < lines.size(); ++l) {
        if (l > 0 && (read_label(lines[l].begin) || printed::starts_caption(lines[l].begin))) {
          continue;
        }
        labels_[lines[l].tag] = {.label = l == 0 ? std::to_string(item.number) + ". " : "– "};
      }
    }
  }

  // "<ol><li>Wings clear … 2</ol>" "<p>– Wings dark …", "<ol start="2"><li>Legs long …</ol>": the
  // lists of one item each that word processors set for numbered paragraphs.  One at least leads to
  // another; titles of sections do not.
  void label_lists_of_one() {
    std::vector<List const*> run;
    auto const leads_to_another = [&run](List const* list) {
      auto const number = number_at_item_end(list->items[0].lines.back().end);
      return number >= run.front()->start && number <= run.back()->start;
    };
    auto const end_run = [&] {
      if (run.size() >= 2 && std::any_of(run.begin(), run.end(), leads_to_another)) {
        for (auto const* list : run) {
          labels_[list->items[0].lines[0].tag] = {.label = std::to_string(list->start) + ". "};
        }
      }
      run.clear();
    };
    for (auto const& list : lists_) {
      bool const one = list.name == "ol" && list.items.size() == 1 && list.items[0].list == kNone &&
                       !list.items[0].lines.empty() && !read_label(list.items[0].lines[0].begin);
      if (!one) continue;
      bool const follows = !run.empty() && list.start == run.back()->start + 1;
      if (!follows) end_run();
      if (follows || list.start == 1) run.push_back(&list);
    }
    end_run();
  }

  // "Step 3" over "a. Head hooded … go to step 4", "b. Head plain …".
  void label_lettered_lists() {
    std::vector<List const*> found;
    for (auto const& list : lists_) {
      bool const leads =
          list.name == "ol" && list.lettered && list.items.size() >= 2 &&
          list.items.size() <= kMostLeadsOfList &&
          std::all_of(list.items.begin(), list.items.end(), [this](Item const& item) {
            return item.list == kNone && !item.lines.empty() &&
                   !labels_.contains(item.lines.front().tag) &&
                   !read_label(item.lines.front().begin);
          });
      if (leads) found.push_back(&list);
    }
    if (found.size() < kFewestItems) return;
    for (auto const* list : found) {
      for (auto const& item : list->items) {
        auto const letter = static_cast<char>('a' + (item.number - 1) % 26);
        labels_[item.lines.front().tag] = {.label = std::string{letter} + ". "};
      }
    }
  }

  // "Couplet 3 [back to 1]" over "Head hooded / Couplet 4", "Head plain / Aus bus".
  void join_titled_lists() {
    std::vector<List const*> found;
    Destinations destinations;
    for (auto const& list : lists_) {
      auto const number = numbering_title(list.above.begin);
      bool const leads =
          number > 0 && list.items.size() >= 2 && list.items.size() <= kMostLeadsOfList &&
          std::all_of(list.items.begin(), list.items.end(), [this](Item const& item) {
            return item.list == kNone && item.lines.size() == 2 &&
                   !labels_.contains(item.lines.front().tag) &&
                   !read_label(item.lines.front().begin) &&
                   !printed::starts_caption(item.lines.back().begin);
          });
      if (!leads) continue;
      found.push_back(&list);
      destinations.add(number_at_item_end(list.above.begin.substr(0, number)));
      for (auto const& item : list.items) destinations.see(item.lines.back());
    }
    if (found.size() < kFewestItems || !destinations.make_a_key()) return;
    for (auto const* list : found) {
      labels_[list->above.tag] = {.label = {}, .numbers = true};
      for (auto const& item : list->items) {
        labels_[item.lines.back().tag] = {.label = {}, .joins = true, .ends = true};
      }
    }
  }

  // A number, or the dash of a second lead.
  static bool is_number(Item const& item) {
    if (!item.term || item.lines.size() != 1) return false;
    std::string_view term = item.lines[0].begin;
    while (!term.empty() && is_white(term.back())) term.remove_suffix(1);
    auto const sign = printed::code_point_at(term, 0);
    if (!term.empty() && sign.length == term.size() && printed::is_dash(sign.value)) return true;
    if (term.empty() || term.size() > kLongestTerm || term.find(' ') != term.npos) return false;
    // "A1" in the key to group A
    bool const lettered = term.size() > 1 && term.front() >= 'A' && term.front() <= 'Z';
    return is_digit(static_cast<unsigned char>(term[lettered ? 1 : 0]));
  }

  // In all lists: a key to groups may be one couplet in a list of its own.
  [[nodiscard]] std::size_t numbers_among_terms() const {
    std::size_t numbers = 0;
    for (auto const& list : lists_) {
      numbers +=
          static_cast<std::size_t>(std::count_if(list.items.begin(), list.items.end(), is_number));
    }
    return numbers;
  }

  // "b. Wings dark" for 2
  static bool has_letter(Shown const& line, std::uint32_t ordinal) {
    auto const own = read_label(line.begin);
    return own && own->family == printed::LabelFamily::lower && own->number == ordinal &&
           own->marks == 0 && own->end != printed::LabelEnd::none;
  }
  // Of a term that is nothing but digits, a blank at its end aside; else 0.
  static std::uint32_t digits_of(Item const& term) {
    std::string_view const text = printed::trim(term.lines[0].begin);
    bool const plain = std::all_of(text.begin(), text.end(),
                                   [](char c) { return is_digit(static_cast<unsigned char>(c)); });
    return plain ? number_at_item_end(text) : 0;
  }

  void label_terms(List const& list) {
    Item const* number = nullptr;  // the term before, if it is a number
    std::uint32_t leads = 0;
    bool own_letters = false;  // "<dt>3<dd>a. Wings clear<dd>b. Wings dark"
    for (auto const& item : list.items) {
      if (item.term) {
        number = is_number(item) ? &item : nullptr;
        if (number != nullptr) labels_[item.lines[0].tag] = {};
        leads = 0;
        continue;
      }
      if (number == nullptr || item.lines.empty()) continue;
      auto const& line = item.lines.front();
      bool const numbered_itself = leads > 0 && read_label(line.begin);
      bool const lettered =
          number->lines[0].begin.find_first_of("abcdefghijklmnopqrstuvwxyz") != std::string::npos;
      if (leads == 0) own_letters = !lettered && has_letter(line, 1) && digits_of(*number) > 0;
      ++leads;
      if (own_letters && has_letter(line, leads)) {
        labels_[line.tag] = {.label = leads == 1 ? "" : std::to_string(digits_of(*number)),
                             .joins = leads == 1,
                             .touches = leads == 1};
      } else if (leads == 1) {
        labels_[line.tag] = {.label = {}, .joins = true};
      } else if (!numbered_itself && !lettered && !printed::starts_caption(line.begin)) {
        labels_[line.tag] = {.label = "– "};
      }
    }
  }

  std::vector<List> const& lists_;
  std::unordered_map<std::size_t, ListLine> labels_;
};

}  // namespace

std::size_t numbering_title(std::string_view line) {
  auto const begin = printed::behind_number_word(line);
  auto end = begin;
  while (end < line.size() && is_digit(static_cast<unsigned char>(line[end]))) ++end;
  if (begin == 0 || end == begin) return 0;
  auto rest = printed::trim(line.substr(end));
  if (rest.starts_with('.') || rest.starts_with(':')) rest.remove_prefix(1);
  rest = printed::trim(rest);
  return rest.empty() || rest.front() == '[' || rest.front() == '(' ? end : 0;
}

std::unordered_map<std::size_t, ListLine> couplets_in_lists(std::string_view text) {
  auto const lists = ListSurveyor{text}.survey();
  return Labeller{lists}.label();
}

}  // namespace keydrift::hypertext
