#include "keydrift/formats/printed_worn_label.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_ranks.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostSignsOfLabel = 12;  // of an expected label
constexpr std::size_t kMostSeen = 18;          // characters of the line
constexpr std::size_t kMostAdded = 6;          // of these beside the label
constexpr float kNeverSeen = std::numeric_limits<float>::infinity();
constexpr float kTooWorn = 4.0F;

constexpr float kUsualWear = 0.8F;    // what scans make of the sign every now and then
constexpr float kRare = 1.2F;         // what they may make of it
constexpr float kFigureWear = 1.5F;   // a figure for another that looks like it
constexpr float kLoss = 2.2F;         // a figure or letter is gone
constexpr float kMarkLoss = 1.6F;     // a prime is gone
constexpr float kAnySignWear = 3.0F;  // any sign for any other

bool is_small_sign(char32_t c) { return c >= U'a' && c <= U'z'; }
bool is_plain_letter(char32_t c) { return is_small_sign(c) || (c >= U'A' && c <= U'Z'); }

// What a sign comes out as.
struct LooksLike {
  char32_t sign{};
  std::u32string_view seen;
};
constexpr std::array kFigureLooks{
    LooksLike{U'0', U"68"},  LooksLike{U'1', U"47"}, LooksLike{U'2', U"7"},
    LooksLike{U'3', U"85"},  LooksLike{U'4', U"1"},  LooksLike{U'5', U"36"},
    LooksLike{U'6', U"058"}, LooksLike{U'7', U"12"}, LooksLike{U'8', U"360"},
    LooksLike{U'9', U"08"},
};
constexpr std::array kGreekLooks{
    LooksLike{U'α', U"auon«"}, LooksLike{U'β', U"ßBbp3"}, LooksLike{U'γ', U"yvr"},
    LooksLike{U'δ', U"85da"},  LooksLike{U'ε', U"ec8"},
};
constexpr std::array kLettersForFigures{
    LooksLike{U'0', U"GCDQ"}, LooksLike{U'1', U"ti/"},  LooksLike{U'2', U"aez"},
    LooksLike{U'3', U"Bs"},   LooksLike{U'4', U"hAti"}, LooksLike{U'7', U"TYt/"},
    LooksLike{U'9', U"oa"},
};
constexpr std::array kLetterLooks{
    LooksLike{U'a', U"ounes«"}, LooksLike{U'b', U"h6ltV"}, LooksLike{U'c', U"eor("},
    LooksLike{U'd', U"ao"},     LooksLike{U'e', U"co«a"},  LooksLike{U'f', U"ft/"},
    LooksLike{U'g', U"gq9"},    LooksLike{U'h', U"bli"},   LooksLike{U'i', U"lj1!"},
    LooksLike{U'l', U"1Ii!|/"}, LooksLike{U'A', U"4ΛXkÀ"}, LooksLike{U'B', U"8RPE"},
    LooksLike{U'C', U"GO(e"},   LooksLike{U'D', U"OBP0"},  LooksLike{U'E', U"FBKH"},
    LooksLike{U'F', U"PE"},     LooksLike{U'G', U"C6O"},   LooksLike{U'H', U"IK"},
    LooksLike{U'I', U"1l!|L"},  LooksLike{U'V', U"YvU"},   LooksLike{U'X', U"xK"},
    LooksLike{U'v', U"yu"},     LooksLike{U'x', U"s"},
};
template <class Table>
bool looks_so(Table const& table, char32_t sign, char32_t seen) {
  return std::any_of(table.begin(), table.end(), [&](LooksLike const& one) {
    return one.sign == sign && is_among(seen, one.seen);
  });
}

float wear_of_figure(char32_t sign, char32_t seen) {
  auto const figure = static_cast<std::uint32_t>(sign - U'0');
  if (sign == U'1' && seen == U'i') return kUsualWear;  // as old-style figures look
  if (is_digit(seen)) return looks_so(kFigureLooks, sign, seen) ? kFigureWear : kAnySignWear;
  if (may_be_figure(seen, figure)) return kUsualWear;
  if (may_replace_figure(seen, figure) || looks_so(kLettersForFigures, sign, seen)) return kRare;
  if (is_blank(seen) || seen == U'.' || seen == U',') return kNeverSeen;
  if (seen == U'^') return kAnySignWear;                // a raised sign, as of a footnote
  return is_letter(seen) ? kAnySignWear : kFigureWear;  // "?", "&", "«"
}

float wear_of_letter(char32_t sign, char32_t seen) {
  if (is_small_sign(sign) ? seen + 0x20 == sign : seen == sign + 0x20) return kUsualWear;
  if (looks_so(kLetterLooks, sign, seen)) return kUsualWear;
  return is_letter(seen) ? kAnySignWear : kNeverSeen;
}

bool is_index(char32_t sign) { return sign > kIndex && sign <= kIndex + kMostIndex; }

float wear_of_index(std::uint32_t figure, char32_t seen) {
  if (index_figure(seen) == figure) return 0;
  if (is_among(seen, U"^*?\"'’")) return kUsualWear;
  return wear_of_figure(U'0' + figure, seen);
}

// Primes that the sign stands for; 0 for any other.
int primes_of(char32_t sign) {
  return sign == kOnePrime ? 1 : sign == kTwoPrimes ? 2 : sign == kThreePrimes ? 3 : 0;
}

bool is_single_prime(char32_t c) { return is_among(c, U"'’‘′´`"); }

// `seen` for the sign that is expected.
float wear(char32_t sign, char32_t seen) {
  if (seen == 0) return kNeverSeen;
  if (sign == seen) return 0;
  switch (sign) {
    case kAnyDash:
      if (is_dash(seen)) return 0;
      if (is_among(seen, U"~_■▪•·=*«^")) return kUsualWear;
      return seen == U'.' ? kRare : kNeverSeen;
    case kAnyFigures:
      if (is_digit(seen) || is_single_prime(seen)) return 0;  // "5(3')"
      return is_among(seen, U"lIi!|OoSsBbzZgqQ?V") ? kUsualWear : kNeverSeen;
    case U'+':
    case U'*':
    case U'=':
      return is_dash(seen) || is_among(seen, U"~_■▪•·=*«+") ? kUsualWear : kNeverSeen;
    case U'\'':
      if (is_mark(seen)) return 0;
      return is_among(seen, U"°¹^!i1l,;/") ? kUsualWear : kNeverSeen;
    case kOnePrime:
      if (is_single_prime(seen)) return 0;
      return is_among(seen, U"\"”“*/°¹^!i1l,;") ? kUsualWear : kNeverSeen;
    case kTwoPrimes:
      if (is_among(seen, U"\"”“″")) return 0;
      return is_single_prime(seen) || is_among(seen, U"*«»^") ? kUsualWear : kNeverSeen;
    case kThreePrimes:
      return is_among(seen, U"*«»^") ? kUsualWear : kNeverSeen;
    case U'¹':
      return is_among(seen, U"1'’‘`liI!*") ? kUsualWear : kNeverSeen;
    case U'²':
      return is_among(seen, U"2\"'*z?”“’") ? kUsualWear : kNeverSeen;
    case U'.':
      return is_among(seen, U",;:·•") ? kUsualWear / 2 : kNeverSeen;
    case U':':
      return is_among(seen, U".;,") ? kUsualWear / 2 : kNeverSeen;
    case U')':
      return is_among(seen, U"}]>Jj,;|") ? kUsualWear : kNeverSeen;
    case U'(':
      return is_among(seen, U"{[<CltIr") ? kUsualWear : kNeverSeen;
    default:
      break;
  }
  if (is_digit(sign)) return wear_of_figure(sign, seen);
  if (is_index(sign)) return wear_of_index(sign - kIndex, seen);
  if (is_plain_letter(sign)) return wear_of_letter(sign, seen);
  if (looks_so(kGreekLooks, sign, seen)) return kUsualWear;
  // Daggers and the like
  if (sign == U'†') return is_among(seen, U"tf+‡|") ? kUsualWear : kNeverSeen;
  return is_letter(sign) || is_letter(seen) || is_digit(seen) || is_blank(seen) ? kNeverSeen
                                                                                : kRare;
}

float wear_of_loss(char32_t sign) {
  switch (sign) {
    case kAnyDash:
      return kNeverSeen;
    case kAnyFigures:
      return kUsualWear / 2;
    case U'.':
    case U':':
      return kUsualWear;
    case U'(':
    case U')':
      return kRare;
    case kOnePrime:
    case kTwoPrimes:
    case kThreePrimes:
      return kMarkLoss;
    default:
      return kLoss;
  }
}

// `next`: the expected sign that stands behind.
float wear_of_addition(char32_t seen, char32_t next) {
  if (is_blank(seen)) return next == U'(' || next == kAnyDash ? 0 : kUsualWear / 2;
  return is_among(seen, U"'`´’‘′.,·•*|^~_([«■▪:;") || is_dash(seen) ? kUsualWear : kNeverSeen;
}

// Whether the words may begin at byte `at`, and at which wear.
float wear_of_words(std::string_view line, std::size_t at, char32_t last, bool upper) {
  if (at >= line.size()) return kUsualWear;
  auto const next = code_point_at(line, at).value;
  bool const closed = last == U'.' || last == U')' || last == U':' || last == kAnyDash;
  float extra = 0;
  if (!is_blank(next)) {
    if (!is_upper(next)) return kNeverSeen;
    // "AUSELLA" is a word, and no a before one.
    auto const behind = code_point_at(line, at + code_point_at(line, at).length).value;
    if (is_letter(code_point_before(line, at).value) && is_upper(behind)) return kNeverSeen;
    extra = closed ? kUsualWear / 2 : kRare;
  }
  auto const words = skip_blanks(line, at);
  auto const first = code_point_at(line, words).value;
  if (is_lower(first)) return upper ? kNeverSeen : extra;
  // "2 3 4 mm": figures that are words
  if (is_digit(first)) return extra + kRare;
  if (!is_letter(first) && !is_among(first, U"(\"'“‘„«±♂♀[")) return extra + kAnySignWear;
  return extra;
}

// "(Plate IX, fig. 2.)": words in brackets, and no C before others.
bool is_aside(std::string_view line) {
  constexpr std::size_t kLongestLabel = 6;  // bytes, "(14'a)"
  if (!line.starts_with('(')) return false;
  auto const end = line.find(')');
  return end != std::string_view::npos && end >= kLongestLabel;
}

class Matcher {
 public:
  Matcher(std::string_view line, std::u32string_view expected, bool upper)
      : line_{line}, expected_{expected}, upper_{upper} {
    offsets_[0] = 0;
    auto const most = std::min(kMostSeen, expected.size() + kMostAdded);
    for (std::size_t at = 0; seen_ < most && at < line.size(); ++seen_) {
      auto const c = code_point_at(line, at);
      values_[seen_] = c.value;
      at += c.length;
      offsets_[seen_ + 1] = at;
    }
  }

  std::optional<WornLabel> match() {
    if (expected_.empty() || expected_.size() > kMostSignsOfLabel) return std::nullopt;
    fill();
    std::optional<WornLabel> best;
    auto const signs = expected_.size();
    for (std::size_t j = 1; j <= seen_; ++j) {
      if (least_[signs][j] > kTooWorn) continue;
      auto const doubt = wear_of_words(line_, offsets_[j], expected_.back(), upper_);
      auto const total = least_[signs][j] + doubt;
      if (total > kTooWorn || (best && best->wear + best->doubt < total)) continue;
      best = WornLabel{least_[signs][j], doubt, offsets_[j], skip_blanks(line_, offsets_[j])};
    }
    return best;
  }

  // Of the whole line.
  float match_all() {
    if (offsets_[seen_] < line_.size()) return kNeverSeen;
    fill();
    return least_[expected_.size()][seen_];
  }

 private:
  void fill() {
    for (std::size_t p = 0; p <= expected_.size(); ++p) {
      std::fill_n(least_[p].begin(), seen_ + 1, kNeverSeen);
    }
    least_[0][0] = 0;
    for (std::size_t p = 0; p <= expected_.size(); ++p) {
      for (std::size_t j = 0; j <= seen_; ++j) {
        if (least_[p][j] <= kTooWorn) go_on(p, j);
      }
    }
  }

  void reach(std::size_t p, std::size_t j, float total) {
    least_[p][j] = std::min(least_[p][j], total);
  }

  void go_on(std::size_t p, std::size_t j) {
    auto const here = least_[p][j];
    if (p < expected_.size()) {
      auto const sign = expected_[p];
      bool const end = sign == kAnyDash && p > 0;  // "4 Wings" for "4 — Wings"
      reach(p + 1, j, here + (end ? kUsualWear : wear_of_loss(sign)));
      if (j < seen_) {
        auto const total = here + wear(sign, values_[j]);
        reach(p + 1, j + 1, total);
        if (sign == kAnyFigures) reach(p, j + 1, total);
      }
      take_two(p, j);
      take_primes(p, j);
    }
    if (j < seen_) {
      auto const next = p < expected_.size() ? expected_[p] : char32_t{0};
      reach(p, j + 1, here + wear_of_addition(values_[j], next));
    }
  }

  // "'\"" and "\"'" for three primes, "''" for two; one too many or too few.
  void take_primes(std::size_t p, std::size_t j) {
    constexpr std::size_t kMostMarks = 3;
    auto const due = primes_of(expected_[p]);
    if (due == 0) return;
    int primes = 0;
    for (auto k = j; k < std::min(seen_, j + kMostMarks) && primes_in(values_[k]) > 0; ++k) {
      primes += primes_in(values_[k]);
      auto const off = static_cast<float>(std::abs(primes - due));
      reach(p + 1, k + 1, least_[p][j] + off * kUsualWear);
    }
  }

  // Two signs for one, "cl" for d, or one for two, "n" for 11.
  void take_two(std::size_t p, std::size_t j) {
    auto const here = least_[p][j];
    auto const sign = expected_[p];
    if (j + 1 < seen_) {
      auto const first = values_[j];
      auto const second = values_[j + 1];
      bool const parted = (sign == U'h' && is_among(first, U"7/l1") && second == U'i') ||
                          (sign == U'd' && is_among(first, U"c<i") && is_among(second, U"lt")) ||
                          (sign == U'k' && is_among(first, U"JIlf|") && second == U'c') ||
                          (sign == U'D' && first == U'I' && second == U')') ||
                          (sign == U'b' && is_among(first, U"l1I") && second == U')') ||
                          (sign == U'H' && first == U'I' && second == U'I');
      if (parted) reach(p + 1, j + 2, here + kUsualWear);
    }
    if (p + 1 < expected_.size() && j < seen_) {
      bool const numeral =
          sign == U'I' && expected_[p + 1] == U'I' && is_among(values_[j], U"HnUN");
      bool const joined = sign == U'1' && expected_[p + 1] == U'1' && is_among(values_[j], U"nUuП");
      bool const two_i = sign == U'i' && expected_[p + 1] == U'i' && is_among(values_[j], U"unü");
      bool const b = sign == U'b' && expected_[p + 1] == kOnePrime && values_[j] == U'V';
      bool const marked = (sign == U'1' || sign == U'7') &&
                          (expected_[p + 1] == U'\'' || expected_[p + 1] == kOnePrime) &&
                          is_among(values_[j], U"VrTP");
      if (joined || two_i || marked || numeral || b) reach(p + 2, j + 1, here + kUsualWear);
    }
  }

  std::string_view line_;
  std::u32string_view expected_;
  bool upper_;
  std::array<char32_t, kMostSeen> values_;
  std::array<std::size_t, kMostSeen + 1> offsets_;
  std::size_t seen_{};
  std::array<std::array<float, kMostSeen + 1>, kMostSignsOfLabel + 1> least_;  // filled by fill()
};

}  // namespace

int primes_in(char32_t c) {
  if (is_among(c, U"\"”“″")) return 2;
  return is_single_prime(c) ? 1 : 0;
}

std::optional<WornLabel> worn_label(std::string_view line, std::u32string_view expected,
                                    bool upper) {
  if (is_aside(line) && !expected.starts_with(U'(')) return std::nullopt;
  return Matcher{line, expected, upper}.match();
}

std::optional<float> worn_sign(std::string_view text, std::string_view sign) {
  std::u32string const expected{sign.begin(), sign.end()};
  auto const wear = Matcher{text, expected, true}.match_all();
  if (wear == 0 || wear > kTooWorn) return std::nullopt;
  return wear;
}

}  // namespace keydrift::printed
