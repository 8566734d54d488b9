#include "keydrift/formats/printed_label_signs.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

namespace {

constexpr std::size_t kFewestSoLabelled = 3;  // couplets so labelled
constexpr char32_t kBlackSquare = 0x25A0;
constexpr char32_t kSmallBlackSquare = 0x25AA;

constexpr char kUnread = '^';  // an index that only the count tells

struct Indexed {
  std::size_t at{};     // in the text
  std::size_t bytes{};  // up to and with the stop
  char letter{};
  char index{};      // kUnread where the count has to tell
  bool sound{true};  // the letter and the figure are as printed
};

std::optional<Indexed> read_indexed_front(std::size_t at, std::string_view line) {
  constexpr std::size_t kShortest = 6;  // "a 1. W"
  if (line.size() < kShortest) return std::nullopt;
  Indexed read;
  read.at = at;
  read.letter = line[0];
  read.sound = line[0] >= 'a' && line[0] <= 'z';
  if (line[0] == '6') read.letter = 'b';
  if (!read.sound && read.letter == line[0]) return std::nullopt;
  bool const parted = line[1] == ' ';
  auto const sign = line[parted ? 2 : 1];
  if (sign >= '1' && sign <= '3') {
    read.index = sign;
  } else if (sign == 'l' || sign == 'I') {
    read.index = '1';
    read.sound = false;
  } else if (sign == '-' && read.sound && line[parted ? 3 : 2] == ' ') {
    read.index = '2';
    read.sound = false;
  } else if ((sign == '^' || sign == '-') && read.sound) {
    read.index = kUnread;
    read.sound = false;
  } else {
    return std::nullopt;
  }
  auto stop = std::size_t{parted ? 3U : 2U};
  bool const apart = line[stop] == ' ';
  if (apart) ++stop;
  if (!(parted || apart || read.index == kUnread) || stop + 2 >= line.size()) return std::nullopt;
  if (line[stop] != '.' || line[stop + 1] != ' ') return std::nullopt;
  if (!is_upper(code_point_at(line, stop + 2).value)) return std::nullopt;
  read.bytes = stop + 1;
  return read;
}

// "a. Carapace"
bool begins_with_plain_letter(std::string_view line) {
  constexpr std::size_t kShortest = 5;  // bytes
  return line.size() >= kShortest && line[0] >= 'a' && line[0] <= 'z' &&
         line.substr(1).starts_with(". ") && is_upper(code_point_at(line, 3).value);
}

}  // namespace

std::size_t close_indexed_labels(std::string& text) {
  std::vector<Indexed> labels;
  std::map<char, std::uint32_t> indices;  // of sound labels, a bit for each, by letter
  std::map<char, char> last;              // index, by letter, within those of the letters before
  for (auto const& [at, line] : lines_of(text)) {
    auto read = read_indexed_front(at, line);
    if (!read && begins_with_plain_letter(line)) {
      indices[line[0]] |= 1U;
      last.erase(last.upper_bound(line[0]), last.end());
      last[line[0]] = '0';
    }
    if (!read) continue;
    if (read->index == kUnread) {
      auto const before = last.find(read->letter);
      if (before == last.end() || before->second >= '3') continue;
      read->index = static_cast<char>(before->second + 1);
    }
    labels.push_back(*read);
    last.erase(last.upper_bound(read->letter), last.end());
    last[read->letter] = read->index;
    if (read->sound) indices[read->letter] |= 1U << static_cast<unsigned>(read->index - '0');
  }
  // "a 1 ." answers "a.", or "a 2 ." answers "a 1 .".
  auto const paired = [&](char letter) {
    constexpr std::uint32_t kPlainAndFirst = 0b011;
    constexpr std::uint32_t kFirstAndSecond = 0b110;
    auto const found = indices.find(letter);
    if (found == indices.end()) return false;
    return (found->second & kPlainAndFirst) == kPlainAndFirst ||
           (found->second & kFirstAndSecond) == kFirstAndSecond;
  };
  auto const pairs = std::count_if(indices.begin(), indices.end(),
                                   [&](auto const& one) { return paired(one.first); });
  // Indices tell the rival of a letter, or the rank of all letters: "a 1 .", "b 1 .", "a 2 .", "b 2
  // .".
  constexpr std::size_t kFewestOfRanks = 6;
  bool const ranks = paired('b') && labels.size() >= kFewestOfRanks;
  if (!paired('a') || (!ranks && pairs < static_cast<std::ptrdiff_t>(kFewestSoLabelled))) return 0;
  std::size_t closed = 0;
  for (auto const& label : labels) {
    if (!label.sound && !indices.contains(label.letter)) continue;
    ++closed;
    auto const end = std::min(text.find('\n', label.at), text.size());
    std::string line{label.letter, label.index, '.'};
    line.append(text, label.at + label.bytes, end - label.at - label.bytes);
    line.resize(end - label.at, ' ');
    text.replace(label.at, end - label.at, line);
  }
  return closed;
}

std::size_t restore_colons_of_labels(std::string& text) {
  // A number of which figures may be letters, and the line that it begins.
  struct Misread {
    std::size_t at{};
    std::string_view printed;
  };
  std::set<std::string_view> bare;   // numbers that begin lines without a sign
  std::vector<std::size_t> damaged;  // where the semicolons stand
  std::vector<Misread> misread;      // that no line with a colon has answered yet
  std::vector<std::pair<std::size_t, std::string>> numbers;  // what stands there, put right
  std::size_t colons = 0;  // numbers that begin two lines, the second with a colon
  auto const take_colon = [&](std::string_view number) {
    if (bare.contains(number)) {
      ++colons;
      return;
    }
    auto const found = std::find_if(misread.rbegin(), misread.rend(), [number](Misread const& one) {
      return one.printed.size() == number.size() &&
             figures_of(number_of(number), one.printed) == number.size();
    });
    if (found == misread.rend()) return;
    numbers.emplace_back(found->at, number);
    misread.erase(std::prev(found.base()));
  };
  for (auto const& [at, line] : lines_of(text)) {
    constexpr std::size_t kMostFigures = 3;
    auto const stop = line.find_first_of(" :;");
    if (stop == 0 || stop > kMostFigures || stop + 2 >= line.size()) continue;
    auto const number = line.substr(0, stop);
    auto const sign = line[stop];
    auto const words = sign == ' ' ? stop + 1 : stop + 2;
    if (sign != ' ' && line[stop + 1] != ' ') continue;
    if (!is_upper(code_point_at(line, words).value)) continue;
    if (!only_figures(number)) {
      bool const figures = number.find_first_of("0123456789") != std::string_view::npos;
      if (sign == ' ' && figures) misread.push_back({at, number});
    } else if (sign == ' ') {
      bare.insert(number);
    } else if (sign == ':') {
      take_colon(number);
    } else if (bare.contains(number)) {
      damaged.push_back(at + stop);
    }
  }
  auto const count = damaged.size() + numbers.size();
  if (colons < kFewestSoLabelled || colons <= count) return 0;
  for (auto const at : damaged) text[at] = ':';
  for (auto const& [at, number] : numbers) text.replace(at, number.size(), number);
  return count;
}

namespace {

// The letter that what stands before a raised index was: "6" for b, "(P" for d^ with its index.
char letter_of_raised_label(std::string_view label) {
  struct Misread {
    std::string_view printed;
    char letter;
  };
  static constexpr std::array kMisread{
      Misread{"6^.", 'b'}, Misread{"6\\", 'b'},  Misread{"6'.", 'b'},  Misread{"cl^.", 'd'},
      Misread{"(P.", 'd'}, Misread{"(i^.", 'd'}, Misread{"rf\\", 'd'}, Misread{"rf^.", 'd'}};
  auto const found = std::find_if(kMisread.begin(), kMisread.end(),
                                  [label](Misread const& one) { return one.printed == label; });
  if (found != kMisread.end()) return found->letter;
  auto const behind = label.substr(1);
  bool const small = label[0] >= 'a' && label[0] <= 'z';
  bool const index = behind == "\\" || behind == "\\." || behind == "-." || behind == "*.";
  return small && index ? label[0] : '\0';
}

// "h^." and "o^." where no key has so many ranks: b and c.
char letter_of_rank(char letter, std::set<char> const& letters) {
  if (letter == 'h' && !letters.contains('g') && letters.contains('b')) return 'b';
  if (letter == 'o' && !letters.contains('n') && letters.contains('c')) return 'c';
  return letter;
}

}  // namespace

std::size_t restore_raised_labels(std::string& text) {
  constexpr std::size_t kFewestSound = 4;
  constexpr std::size_t kMostDamaged = 3;  // for each sound one
  std::vector<TextChange> damaged;
  std::vector<TextChange> sound;  // as they stand
  std::set<char> letters;         // of sound labels
  for (auto const& [at, line] : lines_of(text)) {
    auto const stop = line.find(' ');
    if (stop < 2 || stop > 4 || stop == std::string_view::npos) continue;
    if (!is_upper(code_point_at(line, stop + 1).value)) continue;
    auto const label = line.substr(0, stop);
    bool const small = label[0] >= 'a' && label[0] <= 'z';
    auto const behind = label.substr(1);
    // Where strokes count the ranks, "a'.", "a\".", no index does.
    if (small && (behind == "\"." || behind == "''.")) return 0;
    if (small && (behind == "^." || behind == "'.")) {
      sound.push_back({at, stop, std::string{label}});
      letters.insert(label[0]);
    } else if (auto const letter = letter_of_raised_label(label); letter != '\0') {
      damaged.push_back({at, stop, {letter, '^', '.'}});
    }
  }
  if (letters.size() < kFewestSoLabelled || sound.size() < kFewestSound) return 0;
  if (damaged.size() > sound.size() * kMostDamaged) return 0;
  for (auto& one : damaged) one.put[0] = letter_of_rank(one.put[0], letters);
  for (auto& one : sound) {
    auto const letter = letter_of_rank(one.put[0], letters);
    if (letter == one.put[0]) continue;
    one.put[0] = letter;
    damaged.push_back(one);
  }
  // The next rank may have no sound label at all.
  std::erase_if(damaged, [&](TextChange const& one) { return one.put[0] > *letters.rbegin() + 1; });
  std::sort(damaged.begin(), damaged.end(),
            [](TextChange const& a, TextChange const& b) { return a.at < b.at; });
  make_changes(damaged, text);
  return damaged.size();
}

std::size_t restore_capital_indices(std::string& text) {
  constexpr std::size_t kBoth = 0b11;  // "A1." and "A2."
  std::map<char, std::size_t> seen;    // by letter
  std::vector<TextChange> damaged;
  for (auto const& [at, line] : lines_of(text)) {
    auto const stop = line.find(' ');
    if (stop == std::string_view::npos || stop < 3 || line[0] < 'A' || line[0] > 'Z') continue;
    if (line[stop - 1] != '.' || !is_upper(code_point_at(line, stop + 1).value)) continue;
    auto const sign = code_point_at(line, 1);
    if (sign.length + 2 != stop) continue;
    if (sign.value == '1' || sign.value == '2') {
      seen[line[0]] |= 1U << (sign.value - '1');
    } else if (!is_letter(sign.value) && !is_digit(sign.value)) {
      damaged.push_back({at, stop, {line[0], '1', '.'}});
    }
  }
  auto const sound =
      std::count_if(seen.begin(), seen.end(), [](auto const& one) { return one.second == kBoth; });
  // A letter that has both is another key's where it has more.
  std::erase_if(damaged, [&](TextChange const& one) { return seen[one.put[0]] == kBoth; });
  bool const rare = static_cast<std::ptrdiff_t>(damaged.size()) <= sound;
  if (sound < static_cast<std::ptrdiff_t>(kFewestSoLabelled) || !rare) return 0;
  for (auto& change : damaged) {
    auto& indices = seen[change.put[0]];
    if ((indices & 1U) != 0) change.put[1] = '2';
    indices |= 1U << (change.put[1] - '1');
  }
  // Only what makes a couplet of its letter.
  std::erase_if(damaged, [&](TextChange const& one) { return seen[one.put[0]] != kBoth; });
  make_changes(damaged, text);
  return damaged.size();
}

std::size_t restore_marked_numbers(std::string& text) {
  struct Misread {
    std::size_t at{};
    std::string number;
  };
  std::vector<Misread> misread;
  std::set<std::string_view> open;  // numbers that begin lines, and that no mark has answered yet
  std::size_t marked = 0;
  for (auto const& [at, line] : lines_of(text)) {
    constexpr std::size_t kMostFigures = 3;
    auto const stop = line.find_first_of(" '");
    if (stop == 0 || stop > kMostFigures || stop + 2 >= line.size()) continue;
    auto const number = line.substr(0, stop);
    bool const figures = only_figures(number);
    if (line[stop] == ' ') {
      if (figures) open.insert(number);
    } else if (figures) {
      marked += open.erase(number);
    } else if (line[stop + 1] == ' ') {
      auto const meant = std::find_if(open.begin(), open.end(), [number](std::string_view one) {
        return one.size() == number.size() && figures_of(number_of(one), number) == one.size();
      });
      if (meant == open.end()) continue;
      misread.push_back({at, std::string{*meant}});
      open.erase(meant);
    }
  }
  if (marked < kFewestSoLabelled || marked <= misread.size()) return 0;
  for (auto const& one : misread) text.replace(one.at, one.number.size(), one.number);
  return misread.size();
}

std::size_t restore_fused_primes(std::string& text) {
  // Numbers with the signs of a couplet's first lead, and those with a prime.
  std::set<std::string, std::less<>> firsts;
  std::set<std::string, std::less<>> seconds;
  std::vector<TextChange> fused;
  for (auto const& [at, line] : lines_of(text)) {
    constexpr std::size_t kMostFigures = 3;
    auto const stop = line.find(' ');
    if (stop == std::string_view::npos || stop == 0 || stop + 1 >= line.size()) continue;
    if (!is_upper(code_point_at(line, stop + 1).value)) continue;
    auto const label = line.substr(0, stop);
    auto const figures = leading_figures(label);
    if (figures > kMostFigures) continue;
    auto const sign = label.substr(figures);
    if (sign == "V") {
      fused.push_back({at, stop, std::string{label.substr(0, figures)}});
    } else if (figures > 0 && (sign == "'" || sign == "’" || sign == "´" || sign == "′")) {
      seconds.emplace(label.substr(0, figures));
    } else if (figures > 0 && (sign.empty() || sign == "\"" || sign == "''" || sign == "”")) {
      firsts.emplace(label.substr(0, figures));
    }
  }
  if (fused.empty() || seconds.size() < kFewestSoLabelled) return 0;
  // "V" for 1' or 7', whichever is missing.
  std::vector<TextChange> sure;
  for (auto& one : fused) {
    auto const is_missing = [&](std::string const& number) {
      return firsts.contains(number) && !seconds.contains(number);
    };
    bool const first = is_missing(one.put + '1');
    if (first == is_missing(one.put + '7')) continue;
    one.put += first ? "1'" : "7'";
    sure.push_back(std::move(one));
  }
  make_changes(sure, text);
  return sure.size();
}

std::size_t restore_stroked_primes(std::string& text) {
  if (text.find("\\ ") == std::string::npos) return 0;
  std::size_t primes = 0;
  std::size_t stopped = 0;  // with a full stop behind them
  std::vector<TextChange> stroked;
  for (auto const& [at, line] : lines_of(text)) {
    constexpr std::size_t kMostSigns = 2;  // letters or figures of a label
    auto const indent = skip_blanks(line, 0);
    auto sign = indent;
    while (sign < line.size() && std::isalnum(static_cast<unsigned char>(line[sign])) != 0) ++sign;
    if (sign == indent || sign - indent > kMostSigns || sign >= line.size()) continue;
    auto const rest = line.substr(sign);
    auto const behind = skip_blanks(rest, 1);
    auto const words = code_point_at(rest, behind).value;
    if (rest.starts_with("\\ ") && (is_dash(words) || is_upper(words))) {
      stroked.push_back({at + sign, 1, "'"});
    } else if (rest.starts_with("'") || rest.starts_with("\u2019") || rest.starts_with("\u2032")) {
      ++primes;
      if (rest.substr(code_point_at(rest, 0).length).starts_with('.')) ++stopped;
    }
  }
  if (stopped * 2 > primes) {
    for (auto& one : stroked) one.put += '.';
  }
  if (primes < kFewestSoLabelled || stroked.size() > primes) return 0;
  make_changes(stroked, text);
  return stroked.size();
}

std::size_t clear_squares_before_dashes(std::string& text) {
  constexpr std::string_view kFirstBytes = "\xE2\x96";  // of both squares
  if (text.find(kFirstBytes) == std::string::npos) return 0;
  std::vector<TextChange> squares;
  std::size_t dashes = 0;
  for (auto const& [at, line] : lines_of(text)) {
    auto const sign = code_point_at(line, 0);
    if (is_dash(sign.value) && line.substr(sign.length).starts_with(' ')) ++dashes;
    if (sign.value != kBlackSquare && sign.value != kSmallBlackSquare) continue;
    if (!line.substr(sign.length).starts_with(' ')) continue;
    if (is_dash(code_point_at(line, sign.length + 1).value))
      squares.push_back({at, sign.length, " "});
  }
  if (dashes < std::max(kFewestSoLabelled, squares.size())) return 0;
  make_changes(squares, text);
  return squares.size();
}

namespace {

// The bytes of `behind` that the second letter of a label was read as, "II" of "HII. Wings"; 0
// where a full stop and a blank do not follow it (the pairs are common practice, not measured).
std::size_t misread_second(char letter, std::string_view behind) {
  static constexpr std::array kPairs{
      std::pair{'B', "I3"sv}, std::pair{'B', "13"sv}, std::pair{'B', "8"sv},
      std::pair{'C', "G"sv},  std::pair{'C', "("sv},  std::pair{'D', "I)"sv},
      std::pair{'D', "1)"sv}, std::pair{'E', "F"sv},  std::pair{'F', "P"sv},
      std::pair{'G', "C"sv},  std::pair{'G', "("sv},  std::pair{'H', "II"sv},
      std::pair{'K', "Iv"sv}, std::pair{'M', "IM"sv}, std::pair{'N', "IN"sv}};
  for (auto const& [of, misread] : kPairs) {
    if (of != letter || !behind.starts_with(misread)) continue;
    if (behind.substr(misread.size()).starts_with(". ")) return misread.size();
  }
  return 0;
}

}  // namespace

std::size_t restore_doubled_letters(std::string& text) {
  std::vector<TextChange> damaged;
  std::set<char> single;    // letters of labels
  std::size_t doubled = 0;  // lines that begin with a letter twice and a full stop
  for (auto const& [at, line] : lines_of(text)) {
    constexpr std::size_t kShortest = 6;  // "AA. Wi"
    if (line.size() < kShortest || line[0] < 'A' || line[0] > 'Z') continue;
    auto const letter = line[0];
    auto const words_at = [text_line = line](std::size_t begin) {
      return is_upper(code_point_at(text_line, begin).value);
    };
    if (line.substr(1).starts_with(". ")) {
      single.insert(letter);
    } else if (line[1] == letter && line.substr(2).starts_with(". ")) {
      ++doubled;
    } else if (!single.contains(letter)) {
      continue;
    } else if (auto const size = misread_second(letter, line.substr(1)); size > 0) {
      damaged.push_back({at, 1 + size, {letter, letter}});
    } else if (line[1] == letter && line[2] == ' ' && words_at(3)) {
      damaged.push_back({at, 2, {letter, letter, '.'}});
    }
  }
  if (doubled < kFewestSoLabelled || damaged.size() > doubled) return 0;
  make_changes(damaged, text);
  return damaged.size();
}

namespace {

// Bytes of the primes behind the letter of a label, "'\"" of "c'\". Wings", with a full stop and a
// blank behind them; 0 where there are none.
std::size_t primes_of_label(std::string_view behind) {
  auto const end = std::min(behind.find_first_not_of("'\""), behind.size());
  return end > 0 && behind.substr(end).starts_with(". ") ? end : 0;
}

}  // namespace

std::size_t restore_letters_of_pairs(std::string& text) {
  // "li." for h and the like, where each letter labels two leads.
  struct Parted {
    std::string_view seen;
    char letter;
  };
  static constexpr std::array kParted{Parted{"li.", 'h'}, Parted{"lh.", 'h'}, Parted{"rn.", 'm'},
                                      Parted{"cl.", 'd'}, Parted{"ii.", 'n'}, Parted{"1i.", 'h'}};
  std::map<char, std::size_t> labels;
  std::vector<TextChange> damaged;
  for (auto const& [at, line] : lines_of(text)) {
    constexpr std::size_t kShortest = 6;  // "a. Win"
    if (line.size() < kShortest) continue;
    bool const small = line[0] >= 'a' && line[0] <= 'z';
    if (small && line.substr(1).starts_with(". ") && is_upper(code_point_at(line, 3).value)) {
      ++labels[line[0]];
      continue;
    }
    for (auto const& one : kParted) {
      bool const words =
          line.starts_with(one.seen) && line[3] == ' ' && is_upper(code_point_at(line, 4).value);
      auto const first = labels.find(one.letter);
      // Its rival stands above, and has none yet.
      if (!words || first == labels.end() || first->second != 1) continue;
      ++first->second;
      damaged.push_back({at, 2, {one.letter}});
    }
  }
  auto const pairs =
      std::count_if(labels.begin(), labels.end(), [](auto const& one) { return one.second == 2; });
  if (static_cast<std::size_t>(pairs) < kFewestSoLabelled + damaged.size() ||
      static_cast<std::size_t>(pairs) * 4 < labels.size() * 3) {
    return 0;
  }
  make_changes(damaged, text);
  return damaged.size();
}

std::size_t restore_parted_letters(std::string& text) {
  std::set<std::string> primes;  // of labels with the letter c
  std::vector<TextChange> changes;
  for (auto const& [at, line] : lines_of(text)) {
    if (line.starts_with("cl")) {
      auto const found = primes_of_label(line.substr(2));
      if (found > 0 && primes.contains(std::string{line.substr(2, found)})) {
        changes.push_back({at, 2, "d"});
      }
      continue;
    }
    constexpr std::size_t kSigns = 3;  // "d!\""
    bool const small = line.size() > kSigns && line[0] >= 'a' && line[0] <= 'z';
    if (small && line.substr(1).starts_with("!\"") && primes_of_label(line.substr(2)) > 0 &&
        !primes.empty()) {
      changes.push_back({at + 1, 1, "'"});
    }
    if (!line.starts_with('c')) continue;
    if (auto const found = primes_of_label(line.substr(1)); found > 0) {
      primes.emplace(line.substr(1, found));
    }
  }
  make_changes(changes, text);
  return changes.size();
}

}  // namespace keydrift::printed
