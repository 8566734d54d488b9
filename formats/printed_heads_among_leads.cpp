#include "keydrift/formats/printed_heads_among_leads.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// Where a line stands: between a lead that has its end and the next label, or between words of one
// lead, which go on behind it and reach their end.
enum class Standing : std::uint8_t { elsewhere, between, within };

// "https://…", "doi: 10.9999/…", "ISSN 1234-5678 (print)": an address and nothing else.
bool is_web_address(std::string_view text) {
  static constexpr std::array kBeginnings{"http://"sv, "https://"sv, "www."sv,
                                          "doi:"sv,    "doi.org/"sv, "issn "sv};
  constexpr std::string_view kFetched = "Downloaded from ";
  constexpr std::size_t kLookedAt = 8;  // bytes
  constexpr std::size_t kMostWords = 3;
  if (text.starts_with(kFetched)) {
    return is_web_address(words_of(text.substr(kFetched.size()), 1)[0]);
  }
  auto const folded = fold(start_of(text, kLookedAt));
  bool const begins =
      std::any_of(kBeginnings.begin(), kBeginnings.end(), [&folded](std::string_view one) {
        return std::string_view{folded}.substr(0, one.size()) == one;
      });
  return begins && words_of(text, kMostWords + 1).size() <= kMostWords;
}

// "Roe et al.: Beetles of the Marsh", "J. Roe & P. Dorn: Review of Ausella".
bool begins_with_authors(std::string_view text) {
  constexpr std::size_t kMostWords = 8;  // of the authors
  auto const colon = text.find(": ");
  if (colon == std::string_view::npos || !starts_with_upper(text)) return false;
  if (!is_upper(code_point_at(text, skip_blanks(text, colon + 1)).value)) return false;
  auto const words = words_of(text.substr(0, colon), kMostWords + 1);
  if (words.size() < 2 || words.size() > kMostWords) return false;
  bool told = words.back() == "al." || words.back() == "al";
  for (auto const word : words) {
    if (word == "&" || is_abbreviated(word)) {
      told = true;
    } else if (word != "et" && word != "al" && word != "al." && !is_authorish(word)) {
      return false;
    }
  }
  return told;
}

// "Roe et al.", and nothing else.
bool is_first_author(std::string_view text) {
  auto const words = words_of(text, 4);
  return words.size() == 3 && is_authorish(words[0]) && words[1] == "et" && words[2] == "al.";
}

// "(continued)", "Forts.": the key goes on on this page.
bool says_continued(std::string_view word) {
  static constexpr std::array kWords{"continued"sv, "cont"sv,        "cont'd"sv, "contd"sv,
                                     "forts"sv,     "fortsetzung"sv, "suite"sv,  "continuación"sv,
                                     "cont’d"sv,    "continuação"sv, "vervolg"sv};
  auto const folded = fold(word);
  auto bare = std::string_view{folded};
  while (!bare.empty() && (bare.front() == '(' || bare.front() == '[')) bare.remove_prefix(1);
  while (!bare.empty() && (bare.back() == ')' || bare.back() == ']' || bare.back() == '.')) {
    bare.remove_suffix(1);
  }
  return is_one_of(kWords, bare);
}

// The text without "(continued)" at its end, folded and without the marks that close it.
std::string title_of(std::string_view text) {
  auto const last = last_word_begin(text);
  if (says_continued(text.substr(last))) text = text.substr(0, last);
  auto title = fold(squeeze(text));
  while (!title.empty() && (title.back() == '.' || title.back() == ':' || title.back() == ',' ||
                            is_dash(code_point_before(title, title.size()).value))) {
    title.resize(title.size() - code_point_before(title, title.size()).length);
    title.resize(trim_right(title).size());
  }
  return title;
}

class HeadAmongLeadsFinder {
 public:
  HeadAmongLeadsFinder(std::vector<SourceLine> const& lines, Numbering const& numbering,
                       std::vector<bool>& heads)
      : lines_{lines}, numbering_{numbering}, heads_{heads}, largest_{largest_of_key(numbering)} {}

  void run() {
    if (numbering_.numbers.empty() || !look_at_labels()) return;
    for (auto i = first_ + 1; i < last_; ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || lines_[i].told || heads_[i] || !may_be_running_head(text)) continue;
      auto const look = look_of(i);
      if (look == Look::none) continue;
      auto const standing = standing_of(i, look);
      bool const head = standing == Standing::within ||
                        (standing == Standing::between && is_head_between(i, look));
      if (head) heads_[i] = true;
    }
    // The foot of the last page: behind the lines of the last lead.
    constexpr std::size_t kMostBehind = 6;  // lines
    for (auto i = last_ + 1; i < lines_.size() && i <= last_ + kMostBehind && !linked_; ++i) {
      if (is_web_address(lines_[i].text)) heads_[i] = true;
    }
  }

 private:
  enum class Look : std::uint8_t {
    none,
    far_number,   // "Marsh Beetles          37"
    near_number,  // "212 J. Roe"
    capitals,     // "THE BEETLES OF THE MARSH"
    authors,      // "Roe et al.: Beetles of the Marsh"
    et_al,        // "Roe et al.", which may be the rest of a name as well
    volume,       // "Annals of the Marsh 12 (3)"
    address,      // "https://…"
    title,        // "Key to the species of Ausella (continued)"
    signature,    // "3*"
  };

  // Finds the first and the last label; false where rivals are told by other than labels.
  bool look_at_labels() {
    std::size_t all = 0;
    std::size_t pages = 0;
    std::unordered_set<std::string_view> addresses;  // one that comes back is of each page
    std::unordered_set<std::uint32_t> numbers;
    first_ = lines_.size();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (is_web_address(text)) addresses.insert(text);
      auto const label = numbering_.label_of(lines_[i]);
      if (label && leads_to_page(text.substr(label->text_at))) ++pages;
      if (!label || (first_ == lines_.size() && label->is_dash())) {
        if (first_ == lines_.size()) note_title(text);
        continue;
      }
      ++all;
      if (!label->is_dash()) numbers.insert(label->number);
      if (first_ == lines_.size()) first_ = i;
      last_ = i;
      if (label->text_at < text.size() && label->printed.ends_with('*')) starred_ = true;
    }
    constexpr std::size_t kFewestPages = 2;
    leads_to_pages_ = pages >= kFewestPages;
    // Beneath every other lead they tell of its taxon.
    linked_ = addresses.size() > 1 && addresses.size() * 3 > all;
    return all * 5 >= numbers.size() * 8;
  }

  [[nodiscard]] bool leads_to_page(std::string_view words) const {
    auto const split = split_at_leader(words, numbering_);
    if (split.kind == LeaderKind::none) return false;
    auto const to = trim(words.substr(split.destination_begin));
    return is_number_only(to) && number_of(to.substr(0, to.find('.'))) > largest_;
  }

  void note_title(std::string_view text) {
    constexpr std::size_t kFewestWords = 2;
    if (!may_be_running_head(text) || words_of(text, kFewestWords).size() < kFewestWords) {
      return;
    }
    titles_.insert(title_of(text));
  }

  [[nodiscard]] Look look_of(std::size_t i) const {
    auto const text = lines_[i].text;
    if (is_web_address(text)) return linked_ ? Look::none : Look::address;
    auto const first = static_cast<unsigned char>(text.front());
    if (is_digit(first) && text.ends_with('*') && text.size() <= kLongestPageNumber &&
        text.find_first_not_of("0123456789") == text.size() - 1) {
      return starred_ ? Look::none : Look::signature;
    }
    auto const last = last_word_begin(text);
    bool const continued = says_continued(text.substr(last));
    if (continued && (last == 0 || mentions_key(text))) return Look::title;
    if (starts_caption(text) || starts_note(text)) return Look::none;
    if (auto const number = look_of_number(i); number != Look::none) return number;
    if (numbering_.label_of(lines_[i])) return Look::none;
    constexpr std::size_t kFewestWords = 3;
    if (mostly_capitals(text) && words_of(text, kFewestWords).size() >= kFewestWords &&
        !set_in_capitals()) {
      return Look::capitals;
    }
    if (begins_with_authors(text)) return Look::authors;
    if (is_first_author(text)) return Look::et_al;
    if (names_a_volume(text) && reads_as_head(text)) return Look::volume;
    return titles_.contains(title_of(text)) ? Look::title : Look::none;
  }

  [[nodiscard]] Look look_of_number(std::size_t i) const {
    constexpr std::uint32_t kLeastPage = 10;
    constexpr std::uint32_t kLeastYear = 1700;
    constexpr std::uint32_t kFar = 30;    // beyond the key's numbers
    constexpr std::uint32_t kMost = 150;  // of a key; larger numbers are pages
    auto const edge = number_at_edge(lines_[i]);
    if (!edge || edge->number <= largest_ || edge->number < kLeastPage || leads_to_pages_) {
      return Look::none;
    }
    auto const label = numbering_.label_of(lines_[i]);
    if (label && (label->number != edge->number || label->end != LabelEnd::none)) return Look::none;
    if (is_of_key(edge->number, numbering_)) return Look::none;
    // "AUSELLA Roe, p. 69"; "43 — head; 44 — leg" beneath a figure.
    auto const beside = edge->words.substr(last_word_begin(edge->words));
    if (is_page_word(beside) || edge->words.find(';') != std::string_view::npos) return Look::none;
    bool const bar = edge->words.starts_with('|') || edge->words.ends_with('|');
    bool const dot = edge->words.ends_with("\u00B7") || edge->words.ends_with("\u2022");
    bool const apart = edge->blanks >= kGapBlanks || dot;
    if (bar || (apart && !(label && edge->number <= kMost))) return Look::far_number;
    bool const far = edge->number > largest_ + kFar && edge->number < kLeastYear;
    return far && reads_as_head(edge->words) ? Look::near_number : Look::none;
  }

  // "J. Roe & P. Dorn", "Beetles of the Marsh": words of titles and names, most with a capital.
  [[nodiscard]] bool reads_as_head(std::string_view text) const {
    constexpr std::size_t kFewestWords = 2;
    constexpr std::size_t kMostWords = 10;
    auto const words = words_of(text, kMostWords + 1);
    if (words.size() < kFewestWords || words.size() > kMostWords) return false;
    if (is_latin_epithet(words[1])) return false;  // "Ausella busa 213"
    auto const begin_so = [&words](auto const& is_so) {
      return std::count_if(words.begin(), words.end(), [&is_so](std::string_view word) {
        return is_so(code_point_at(word, 0).value);
      });
    };
    // "Review of the genus Ausella"
    auto const little = std::count_if(words.begin(), words.end(), [](std::string_view word) {
      static constexpr std::array kWords{"of"sv, "the"sv, "and"sv, "et"sv, "al."sv};
      return is_one_of(kWords, word);
    });
    return is_upper(code_point_at(words.front(), 0).value) &&
           begin_so(is_upper) >= begin_so(is_lower) - little && !set_in_capitals();
  }

  [[nodiscard]] bool set_in_capitals() const {
    if (!set_in_capitals_) set_in_capitals_ = is_set_in_capitals(lines_);
    return *set_in_capitals_;
  }

  // Another head, a page's number or a blank line stands there.
  [[nodiscard]] bool is_of_page(std::size_t i) const {
    auto const text = lines_[i].text;
    return text.empty() || heads_[i] || is_page_number(text) ||
           (is_number_only(text) && number_of(text.substr(0, text.find('.'))) > largest_);
  }

  [[nodiscard]] Standing standing_of(std::size_t i, Look look) const {
    constexpr std::size_t kMostOfPage = 6;  // lines around the turn of a page
    auto before = i - 1;
    while (before > first_ && i - before <= kMostOfPage && is_of_page(before)) --before;
    auto behind = i + 1;
    while (behind < last_ && behind - i <= kMostOfPage &&
           (is_of_page(behind) || look_of(behind) != Look::none)) {
      ++behind;
    }
    if (is_of_page(before) || is_of_page(behind)) return Standing::elsewhere;
    auto const label = numbering_.label_of(lines_[behind]);
    bool const ended = !lines_[before].text.ends_with('-') && has_end(lines_[before]);
    if (label) {
      // "THE SPECIES OF THE HILLS" above another key.
      bool const opens = !label->is_dash() && label->number == 1 && number_above(before) != 1;
      return ended && !opens ? Standing::between : Standing::elsewhere;
    }
    // "7. Ausella Roe" / "Annals of Sarn 12 (3)" / "Shrubs with …": a genus and where it is named.
    bool const cites = look == Look::volume || look == Look::capitals || look == Look::title;
    // "Flora of Sarn 61, 2004" / "7": the page's number, though the key has that couplet.
    bool const page =
        behind == i + 1 && is_number_only(lines_[behind].text) && lines_[behind + 1].text.empty();
    bool const goes_on =
        !page && (!cites || !is_upper(code_point_at(lines_[behind].text, 0).value));
    return !ended && goes_on && lead_ends_behind(behind) ? Standing::within : Standing::elsewhere;
  }

  // Of the last label with a number at or above line i; 0 where none is near.
  [[nodiscard]] std::uint32_t number_above(std::size_t i) const {
    constexpr std::size_t kMostLines = 16;  // of two leads
    for (std::size_t n = 0; n < kMostLines && i >= first_ + n; ++n) {
      auto const label = numbering_.label_of(lines_[i - n]);
      if (label && !label->is_dash()) return label->number;
    }
    return 0;
  }

  [[nodiscard]] bool has_end(SourceLine const& line) const {
    auto text = line.text;
    if (is_number_only(text)) return true;  // those of pages are none
    if (auto const label = numbering_.label_of(line)) text.remove_prefix(label->text_at);
    auto const split = split_at_leader(text, numbering_);
    if (split.kind != LeaderKind::none && split.kind != LeaderKind::dash) {
      return split.destination_begin < text.size();
    }
    auto const reference = trailing_reference(text, &numbering_);
    if (reference && numbering_.has_number(reference->reference.number)) return true;
    return trailing_name(text).has_value();
  }

  // Words from line i on reach a destination before the next label.
  [[nodiscard]] bool lead_ends_behind(std::size_t i) const {
    constexpr std::size_t kMostLines = 8;
    for (auto at = i; at < std::min(lines_.size(), i + kMostLines); ++at) {
      auto const text = lines_[at].text;
      if (text.empty() || (at > i && numbering_.label_of(lines_[at]))) return false;
      if (has_end(lines_[at]) || is_latin_name(text)) return true;
    }
    return false;
  }

  [[nodiscard]] bool stands_close(std::size_t i) const {
    return !lines_[i - 1].text.empty() && !lines_[i + 1].text.empty();
  }

  [[nodiscard]] bool is_head_between(std::size_t i, Look look) const {
    // "Key to the females", named before among the contents, heads a key of its own.
    bool const title = look == Look::title &&
                       !says_continued(lines_[i].text.substr(last_word_begin(lines_[i].text)));
    if (title) return stands_close(i);
    if (look == Look::et_al) return false;
    if (look != Look::capitals) return true;
    // With blank lines it is a heading; "AUSELLA BUSA ROE" is a destination.
    auto const text = lines_[i].text;
    return stands_close(i) && !mentions_key(text) && !is_latin_name(in_plain_letters(text));
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  std::vector<bool>& heads_;
  std::uint32_t largest_;
  std::unordered_set<std::string> titles_;  // of lines above the first lead
  std::size_t first_{};                     // lines with the first and the last label
  std::size_t last_{};
  bool leads_to_pages_{false};
  bool starred_{false};  // leads bear stars
  bool linked_{false};   // leads have addresses of the web beneath them
  mutable std::optional<bool> set_in_capitals_;
};

}  // namespace

void find_heads_among_leads(std::vector<SourceLine> const& lines, Numbering const& numbering,
                            std::vector<bool>& heads) {
  HeadAmongLeadsFinder{lines, numbering, heads}.run();
}

}  // namespace keydrift::printed
