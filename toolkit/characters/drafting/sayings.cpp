#include "keydrift/characters/drafting/sayings.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string_view>
#include <tuple>
#include <utility>

#include "keydrift/characters/drafting/alternatives.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift::drafting {
namespace {

using reading::word_info;

// A lead with more statements is none that somebody wrote; see tying.cpp.
constexpr std::size_t kMostStatements = 200;
// Nobody names a structure by more words.
constexpr std::size_t kLongestSubject = 5;

std::vector<std::string> split_words(std::string const& text) {
  std::vector<std::string> words;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find(' ', begin), text.size());
    words.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return words;
}

bool may_end_subject(std::string const& word, std::string_view language) {
  auto const info = word_info(word, language);
  if (info.is(reading::kFunction | reading::kDegree | reading::kPreposition | reading::kCopula |
              reading::kNumeral | reading::kWith | reading::kOr)) {
    return false;
  }
  static std::set<std::string_view> const kDenials{
      "not", "never", "without", "lacking", "nicht", "ohne", "sans", "sin", "sem", "sine", "non"};
  bool const degree = word.size() > 4 && word.ends_with("ly");
  return !degree && !kDenials.contains(word) && word.find_first_of("0123456789") != 0;
}

// "longer than the head", "aussi large que le pronotum": what is named behind is no subject.
bool compares(std::string const& word) {
  static std::set<std::string_view> const kComparing{"aussi", "plus", "moins", "que",  "als", "wie",
                                                     "so",    "más",  "menos", "mais", "quam"};
  auto const info = word_info(word, "");
  return !info.dimension.empty() || info.comparative != 0 || kComparing.contains(word);
}

// "2" of "tergite 2 black", both of "tergites 2–4 black": see reading/numbered_parts.hpp.
bool numbers_part(Saying const& saying, std::size_t at) {
  auto const number = [&](std::size_t i) {
    return i < saying.ones.size() &&
           saying.ones[i].find_first_not_of("0123456789") == std::string::npos;
  };
  if (at == 0 || !number(at)) return false;
  if (number(at - 1)) return numbers_part(saying, at - 1);
  bool const several = reading::looks_plural(saying.words[at - 1]);
  return word_info(saying.ones[at - 1], "").is(reading::kNumbered) && (!several || number(at + 1));
}

// Behind the parts that stand together at the front: 2 of "lowest bract leafy", 3 of "beak of
// utricle bifid"; 0 when no part is known near the front.
std::size_t end_of_parts(Saying const& saying, std::string_view language) {
  auto const& ones = saying.ones;
  // "scale-like" names no scale.
  auto const is_part = [&](std::size_t i) {
    return word_info(ones[i], "").is(reading::kPart) && !saying.hyphened[i];
  };
  std::size_t end = 0;
  for (std::size_t i = 0; i < std::min(ones.size(), kLongestSubject); ++i) {
    if (is_part(i)) {
      end = i + 1;
      while (end < ones.size() && (is_part(end) || numbers_part(saying, end))) ++end;
      break;
    }
    // "palm of chela": an unknown noun and where it belongs.
    bool const of = i > 0 && word_info(ones[i], language).is(reading::kOf);
    if (compares(ones[i])) return 0;
    if (!of && !may_end_subject(ones[i], language)) return 0;
  }
  while (end > 0 && end + 1 < ones.size() && word_info(ones[end], language).is(reading::kOf)) {
    auto next = end + 1;
    while (next < ones.size() && word_info(ones[next], language).is(reading::kPosition)) ++next;
    if (next == ones.size() || !is_part(next)) break;
    end = next + 1;
  }
  // "inflorescence a spike": the last word is what is said.
  return end == ones.size() ? end - std::min<std::size_t>(end, 1) : end;
}

std::size_t common_front(Saying const& a, Saying const& b) {
  auto const most = std::min({a.ones.size(), b.ones.size(), kLongestSubject});
  std::size_t common = 0;
  while (common < most && a.ones[common] == b.ones[common]) ++common;
  return common;
}

// The words of the structure that both speak of; 0 when they speak of different ones.
std::size_t shared_subject(Saying const& a, Saying const& b, std::string_view language) {
  if (a.words == b.words) return 0;
  auto common = std::min(common_front(a, b), std::min(a.ones.size(), b.ones.size()) - 1);
  auto const parts_a = end_of_parts(a, language);
  auto const parts_b = end_of_parts(b, language);
  // "leaf blades flat" and "leaf margins smooth" share a word and speak of two things.
  if (parts_a != parts_b || parts_a > common) {
    if (parts_a > common || parts_b > common) return 0;
  }
  if (parts_a > 0 && parts_a == parts_b) {
    // "beak of perigynium", where "perigynium" is an unknown word.
    bool const of = parts_a + 2 <= common && word_info(a.ones[parts_a], language).is(reading::kOf);
    return of ? parts_a + 2 : parts_a;
  }
  while (common > 0 && !may_end_subject(a.ones[common - 1], language)) --common;
  if (common == 0) return 0;
  auto const begins_with_of = [&](Saying const& one) {
    return word_info(one.ones[common], language).is(reading::kOf);
  };
  return begins_with_of(a) || begins_with_of(b) ? 0 : common;
}

class Collector {
 public:
  explicit Collector(std::span<Edition const* const> editions) : editions_{editions} {}

  Sayings run() {
    for (std::uint32_t e = 0; e < editions_.size(); ++e) {
      for (std::uint32_t c = 0; c < editions_[e]->couplets.size(); ++c) collect(e, c);
    }
    settle_subjects();
    for (auto& saying : result_.all) cut_items(saying);
    keep_known_alternatives();
    return std::move(result_);
  }

 private:
  void collect(std::uint32_t e, std::uint32_t c) {
    auto const& couplet = editions_[e]->couplets[c];
    std::vector<std::pair<std::size_t, std::size_t>> ranges;  // of every lead, in result_.all
    for (std::uint32_t l = 0; l < couplet.leads.size(); ++l) {
      auto const begin = result_.all.size();
      auto const& statements = couplet.leads[l].statements;
      for (std::uint32_t s = 0; s < statements.size(); ++s) add({e, c, l, s}, statements[s]);
      ranges.emplace_back(begin, result_.all.size());
    }
    for (std::size_t i = 0; i < ranges.size(); ++i) {
      for (std::size_t j = i + 1; j < ranges.size(); ++j) contrast(ranges[i], ranges[j]);
    }
  }

  void add(Spot at, Statement const& statement) {
    bool const plain = statement.origin == Origin::opaque && statement.any_of.size() == 1 &&
                       !statement.any_of[0].states.empty();
    if (!plain) return;
    // The statement as a whole is the longest of what it takes in.
    auto const& states = statement.any_of[0].states;
    auto const whole = std::max_element(
        states.begin(), states.end(),
        [](std::string const& a, std::string const& b) { return a.size() < b.size(); });
    Saying saying{.at = at, .words = split_words(*whole)};
    if (saying.words.size() < 2) return;
    for (auto const& word : saying.words) saying.ones.push_back(reading::singular(word));
    saying.hyphened = hyphens_behind(statement.text, saying.words);
    result_.all.push_back(std::move(saying));
  }

  [[nodiscard]] std::string_view language_of(Saying const& saying) const {
    return editions_[saying.at.edition]->front.language;
  }

  // Pairs of two leads, those with the longest structure in common first, then the nearest.
  void contrast(std::pair<std::size_t, std::size_t> left,
                std::pair<std::size_t, std::size_t> right) {
    if (left.second - left.first > kMostStatements ||
        right.second - right.first > kMostStatements) {
      return;
    }
    struct Pair {
      std::size_t subject, apart, place, first, second;
    };
    std::vector<Pair> pairs;
    auto const& all = result_.all;
    for (auto i = left.first; i < left.second; ++i) {
      for (auto j = right.first; j < right.second; ++j) {
        auto const subject = shared_subject(all[i], all[j], language_of(all[i]));
        if (subject == 0) continue;
        auto const a = all[i].at.statement;
        auto const b = all[j].at.statement;
        pairs.push_back({subject, a > b ? a - b : b - a, a + b, i, j});
      }
    }
    auto const words = [&](Pair const& pair) {
      auto const& a = all[pair.first].words;
      auto const& b = all[pair.second].words;
      return a < b ? std::pair{a, b} : std::pair{b, a};
    };
    std::stable_sort(pairs.begin(), pairs.end(), [&](Pair const& x, Pair const& y) {
      auto const key = [](Pair const& p) {
        return std::tuple{-static_cast<long>(p.subject), p.apart, p.place};
      };
      if (key(x) != key(y)) return key(x) < key(y);
      return words(x) < words(y);
    });
    std::set<std::size_t> taken;
    for (auto const& pair : pairs) {
      if (taken.contains(pair.first) || taken.contains(pair.second)) continue;
      taken.insert({pair.first, pair.second});
      result_.contrasts.push_back({pair.first, pair.second});
      propose(pair.first, pair.subject);
      propose(pair.second, pair.subject);
    }
  }

  void propose(std::size_t saying, std::size_t subject) {
    auto& known = result_.all[saying].subject;
    known = known == 0 ? subject : std::min(known, subject);
    auto const& ones = result_.all[saying].ones;
    ++subjects_[join(ones, subject)];
  }

  static std::string join(std::vector<std::string> const& words, std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) text += (i == 0 ? "" : " ") + words[i];
    return text;
  }

  // Where no part is known, a shorter structure that is met elsewhere is the better one: "Blüten
  // gross rot" beside "Blüten klein".
  void settle_subjects() {
    auto const met = subjects_;
    for (auto& saying : result_.all) {
      auto const parts = end_of_parts(saying, language_of(saying));
      if (saying.subject == 0) {
        bool const longer = parts > 0 && parts + 2 < saying.ones.size() &&
                            met.contains(join(saying.ones, parts + 2));
        saying.subject = longer ? parts + 2 : parts;
      }
      if (parts > 0) continue;
      auto const longest =
          saying.subject == 0 ? std::min(saying.ones.size() - 1, kLongestSubject) : saying.subject;
      std::size_t best = saying.subject;
      for (auto length = longest; length > 0; --length) {
        auto const found = met.find(join(saying.ones, length));
        if (found == met.end()) continue;
        if (best == 0 || found->second > 2) best = length;
      }
      saying.subject = best;
    }
    // Statements that contrast speak of one thing.
    std::erase_if(result_.contrasts, [&](Contrast const& pair) {
      return result_.all[pair.first].structure() != result_.all[pair.second].structure();
    });
  }

  void cut_items(Saying& saying) {
    if (saying.subject == 0 || saying.subject >= saying.words.size()) {
      saying.subject = 0;
      return;
    }
    // "head and pronotum punctate" speaks of two structures.
    if (word_info(saying.words[saying.subject], language_of(saying))
            .is(reading::kAnd | reading::kOf)) {
      saying.subject = 0;
      return;
    }
    auto const& edition = *editions_[saying.at.edition];
    auto const& statement =
        edition.couplets[saying.at.couplet].leads[saying.at.lead].statements[saying.at.statement];
    auto cut =
        cut_alternatives(statement.text, edition.front.language, saying.words, saying.subject);
    saying.items = std::move(cut.items);
    saying.printed_subject = std::move(cut.printed_subject);
  }

  // "deeply lobed or cut": parts of several words are alternatives only where they are met alone.
  void keep_known_alternatives() {
    std::set<std::pair<std::string, std::string>> alone;
    for (auto const& saying : result_.all) {
      if (saying.items.size() == 1) alone.emplace(saying.structure(), saying.items[0].words);
    }
    for (auto& saying : result_.all) {
      if (saying.items.size() < 2) continue;
      bool const sure =
          std::all_of(saying.items.begin(), saying.items.end(), [&](Item const& item) {
            return is_whole_alternative(item) || alone.contains({saying.structure(), item.words});
          });
      if (!sure) join_items(saying);
    }
  }

  void join_items(Saying& saying) {
    auto const& edition = *editions_[saying.at.edition];
    auto const& statement =
        edition.couplets[saying.at.couplet].leads[saying.at.lead].statements[saying.at.statement];
    saying.items = {whole_item(statement.text, saying.words, saying.subject)};
  }

  std::span<Edition const* const> editions_;
  Sayings result_;
  std::map<std::string, std::size_t> subjects_;  // proposed structures, and how often
};

}  // namespace

std::string Saying::structure() const {
  std::string text;
  for (std::size_t i = 0; i < subject; ++i) text += (i == 0 ? "" : " ") + ones[i];
  return text;
}

Sayings collect_sayings(std::span<Edition const* const> editions) {
  return Collector{editions}.run();
}

}  // namespace keydrift::drafting
