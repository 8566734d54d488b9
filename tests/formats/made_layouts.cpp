#include "made_layouts.hpp"

#include <algorithm>
#include <string_view>

#include "made_scan.hpp"

namespace keydrift::test {
namespace {

struct Half {
  std::string_view words;
  unsigned couplet{};        // 0: it leads to a taxon
  std::string_view epithet;  // of that taxon
};

constexpr std::size_t kCouplets = 8;
constexpr std::array<std::array<Half, 2>, kCouplets> kLayoutKey{{
    {{{"Dorsal shield entire, without lateral incisions; peritreme reaching anterior margin of "
       "coxa "
       "II",
       2,
       {}},
      {"Shield with a pair of lateral incisions, or divided; peritreme shorter", 5, {}}}},
    {{{"Setae at least twice as long as distance between their bases; legs yellow, the femora "
       "often "
       "brownish above",
       3,
       {}},
      {"Setal pairs shorter, at most slightly exceeding distance between their bases", 4, {}}}},
    {{{"All dorsal setae except the first plumose, the longest 110-130; genital shield truncate "
       "behind (fig. 4)",
       0, "longisetus"},
      {"Dorsal setae simple, only the last weakly serrate", 0, "punctulatus"}}},
    {{{"Sternal shield with coarse punctures; anal shield wider than long; length 4.5-5.2 mm", 0,
       "magnus"},
      {"Sternum reticulate or smooth; anal shield longer than wide; northern parts of the area", 0,
       "tripartitus"}}},
    {{{"Margin of dorsal shield regularly crenate behind humeral angle; in nests of rats", 0,
       "crenatus"},
      {"Border of dorsal shield smooth; free living", 6, {}}}},
    {{{"Anterior setae thickened, brush-like, inserted on a common tubercle", 0, "pilifrons"},
      {"Foremost setae slender, on separate tubercles; ventral area with longitudinal striae",
       7,
       {}}}},
    {{{"Metapodal plates fused into a single elongate plate on each side; male unknown", 0,
       "ovigerus"},
      {"Plates two on each side, or only one small round plate; length less than 4 mm", 8, {}}}},
    {{{"Posterior margin of sternal shield with two shallow emarginations; femur without spur", 0,
       "bisinuatus"},
      {"Hind margin of sternal shield concave; femur with blunt ventral spur", 0, "laticoxus"}}},
}};
constexpr std::array<unsigned, kCouplets + 1> kLedToBy{0, 0, 1, 2, 2, 1, 5, 6, 7};

// The first words, which tell leads apart.
std::string beginning(std::string_view words) {
  constexpr std::size_t kLength = 16;  // bytes
  return std::string{words.substr(0, kLength)};
}

// The numbers of D. H. Lehmer's generator with the multiplier 48271 (Park, Miller & Stockmeyer
// 1993, Comm. ACM 36(7): 108): the same everywhere.
class Choices {
 public:
  explicit Choices(std::uint32_t seed) : state_{seed * 2654435761U % 2147483646U + 1} {}

  template <class T, std::size_t N>
  T const& one_of(char const* name, std::array<T, N> const& values) {
    for (int i = 0; i < 3; ++i) state_ = state_ * 48271U % 2147483647U;
    auto const at = static_cast<std::size_t>(state_ / 7U) % N;
    said_ += std::string{said_.empty() ? "" : " "} + name + std::to_string(at);
    return values[at];
  }
  [[nodiscard]] std::string const& said() const { return said_; }

 private:
  std::uint64_t state_;
  std::string said_;
};

// Lines of at most `width` columns where words allow it.
std::vector<std::string> wrapped(std::string const& text, std::size_t width,
                                 std::string const& first, std::string const& rest) {
  std::vector<std::string> lines{first};
  bool begun = false;  // the line has a word
  for (std::size_t at = 0; at < text.size();) {
    auto const end = std::min(text.find(' ', at), text.size());
    auto const word = text.substr(at, end - at);
    if (begun && lines.back().size() + 1 + word.size() > width) {
      lines.push_back(rest);
      begun = false;
    }
    if (begun) lines.back() += ' ';
    lines.back() += word;
    begun = true;
    at = end + 1;
  }
  return lines;
}

enum class NameStyle : std::uint8_t { full, cut_short, epithet, numbered, numbered_full };
enum class EndStyle : std::uint8_t {
  dots,
  spaced_dots,
  blank,
  gap,
  tab,
  own_line,
  far_right,
  glued
};

struct Ends {
  NameStyle name{};
  EndStyle end{};
  bool stop{};
  bool authors{};
  std::size_t width{};
  std::size_t hang{};
  std::string dots;
};

Ends choose_ends(Choices& choose) {
  Ends ends;
  ends.name =
      choose.one_of("name", std::array{NameStyle::full, NameStyle::cut_short, NameStyle::epithet,
                                       NameStyle::numbered, NameStyle::numbered_full});
  ends.end = choose.one_of(
      "end", std::array{EndStyle::dots, EndStyle::spaced_dots, EndStyle::blank, EndStyle::gap,
                        EndStyle::tab, EndStyle::own_line, EndStyle::far_right, EndStyle::glued});
  ends.stop = choose.one_of("stop", std::array{false, true});
  ends.authors = choose.one_of("authors", std::array{false, true, true});
  ends.width = choose.one_of("width", std::array<std::size_t, 4>{40, 60, 80, 200});
  ends.hang = choose.one_of("hang", std::array<std::size_t, 4>{0, 2, 4, 6});
  ends.dots = choose.one_of("dots", std::array<std::string, 3>{"...", ".....", "............"});
  return ends;
}

std::string name_of(Ends const& ends, std::string const& genus, std::string_view epithet,
                    std::size_t order) {
  static constexpr std::array<std::string_view, 6> kAuthors{
      " Roe", " Dorn", " (Pokrand)", " n. sp.", " Roe & Dorn, 1968", " sp. nov."};
  auto const author = ends.authors ? std::string{kAuthors[order % kAuthors.size()]} : std::string{};
  auto const number = std::to_string(order + 1) + ". ";
  auto const cut = genus.substr(0, 1) + ". ";
  auto const named = std::string{epithet} + author;
  switch (ends.name) {
    case NameStyle::full:
      return genus + " " + named;
    case NameStyle::cut_short:
      return cut + named;
    case NameStyle::epithet:
      return named;
    case NameStyle::numbered:
      return number + cut + named;
    case NameStyle::numbered_full:
      break;
  }
  return number + genus + " " + named;
}

// Adds the lines of a lead.
void print_lead(std::string& text, Ends const& ends, std::string const& label,
                std::string_view words, std::string const& end, std::string const& rest,
                Scan* scan) {
  auto const stopped = std::string{words} + (ends.stop ? "." : "");
  auto const own = ends.end == EndStyle::own_line || ends.end == EndStyle::far_right;
  std::string leader;
  switch (ends.end) {
    case EndStyle::dots:
      leader = " " + ends.dots + " ";
      break;
    case EndStyle::spaced_dots:
      leader = " . . . . . ";
      break;
    case EndStyle::blank:
      leader = " ";
      break;
    case EndStyle::gap:
      leader = "        ";
      break;
    case EndStyle::tab:
      leader = "\t";
      break;
    case EndStyle::glued:
      leader = "......";
      break;
    case EndStyle::own_line:
    case EndStyle::far_right:
      break;
  }
  if (scan != nullptr) leader = scan->leader(leader);
  // What leaders set apart is not broken.
  constexpr char kBlank = '\1';
  auto kept = leader + end;
  if (ends.end != EndStyle::blank) std::replace(kept.begin(), kept.end(), ' ', kBlank);
  auto lines = wrapped(end.empty() || own ? stopped : stopped + kept, ends.width, label, rest);
  if (own && !end.empty()) {
    auto const column = ends.end == EndStyle::own_line || end.size() + 8 > ends.width
                            ? rest.size()
                            : ends.width - end.size();
    lines.push_back(std::string(column, ' ') + end);
  }
  for (auto& line : lines) {
    std::replace(line.begin(), line.end(), kBlank, ' ');
    text += line + "\n";
  }
}

}  // namespace

std::string made_genus(std::uint32_t seed) {
  static constexpr std::array<std::string_view, 8> kGenera{"Teldicarus", "Veldicarus", "Celdicarus",
                                                           "Meldicarus", "Aldicarus",  "Leldicarus",
                                                           "Ildicarus",  "Peldicarus"};
  return std::string{kGenera[seed % kGenera.size()]};
}

std::vector<MadeLead> made_leads(std::string const& genus) {
  std::vector<MadeLead> leads;
  for (auto const& couplet : kLayoutKey) {
    for (auto const& half : couplet) {
      leads.push_back({beginning(half.words), half.couplet > 0
                                                  ? beginning(kLayoutKey[half.couplet - 1][0].words)
                                                  : genus + " " + std::string{half.epithet}});
    }
  }
  return leads;
}

MadeLayout made_parallel(std::uint32_t seed, std::string const& genus, Scan* scan) {
  Choices choose{seed};
  auto const ends = choose_ends(choose);
  auto const first = choose.one_of("label", std::array{0, 1, 2, 3, 4, 2});
  auto const second =
      choose.one_of("second", std::array<std::string_view, 6>{"–", "", "=", "-", "—", "'"});
  auto const indent = choose.one_of("indent", std::array<std::size_t, 3>{0, 0, 3});
  auto const gap = choose.one_of("gap", std::array<std::string_view, 3>{" ", "  ", "\t"});
  auto const blank = choose.one_of("blank", std::array{0, 1, 2});
  std::string text = "Key to the species of " + genus + "\n\n";
  std::size_t order = 0;
  for (unsigned n = 1; n <= kCouplets; ++n) {
    auto const number = std::to_string(n);
    auto const back = n == 1 ? std::string{} : std::to_string(kLedToBy[n]);
    for (std::size_t half = 0; half < 2; ++half) {
      auto const& lead = kLayoutKey[n - 1][half];
      std::string label;
      if (first == 4) {
        label = number + (half == 0 ? "a." : "b.");
      } else if (half == 0) {
        label = first == 1 ? number : number + ".";
        if (first == 2 && n > 1) label = number + "(" + back + ").";
        if (first == 3 && n > 1) label = number + " (" + back + ").";
      } else if (second == "=") {
        label = number + ".";
      } else {
        label = second == "'" ? number + "'." : std::string{second};
      }
      auto end = lead.couplet > 0 ? std::to_string(lead.couplet)
                                  : name_of(ends, genus, lead.epithet, order++);
      auto set_in = indent;
      if (scan != nullptr) {
        label = scan->label(label);
        if (lead.couplet > 0) end = scan->number(end);
        set_in = scan->indent(indent);
      }
      auto const begin = std::string(set_in, ' ') +
                         (label.empty() ? std::string(ends.hang, ' ') : label + std::string{gap});
      print_lead(text, ends, begin, lead.words, end, std::string(ends.hang, ' '), scan);
      if (blank == 2) text += "\n";
    }
    if (blank == 1) text += "\n";
  }
  return {text, choose.said()};
}

namespace {

class Nested {
 public:
  Nested(std::uint32_t seed, std::string genus, Scan* scan)
      : choose_{seed}, genus_{std::move(genus)}, scan_{scan} {
    ends_ = choose_ends(choose_);
    label_ = choose_.one_of("label", std::array{0, 1, 2, 3, 4, 5, 6, 7, 8, 9});
    step_ = choose_.one_of("step", std::array<std::size_t, 4>{0, 2, 3, 4});
    blank_ = choose_.one_of("blank", std::array{false, false, true});
    // Without labels levels are told by indentation, and a lead's further lines by theirs.
    if (label_ == 0 && step_ == 0) step_ = 4;
    if (label_ == 0 && ends_.hang == step_) ends_.hang += 2;
  }

  MadeLayout print() {
    count(1);
    text_ = "Key to the species of " + genus_ + "\n\n";
    walk(1, 0);
    return {text_, choose_.said()};
  }

 private:
  // The places of all leads in the order in which they stand.
  void count(unsigned couplet) {
    for (std::size_t half = 0; half < 2; ++half) {
      place_[couplet][half] = ++places_;
      if (kLayoutKey[couplet - 1][half].couplet > 0) count(kLayoutKey[couplet - 1][half].couplet);
    }
  }

  [[nodiscard]] std::string label(unsigned couplet, std::size_t half, std::size_t depth) const {
    auto const number = std::to_string(couplet);
    auto const letters = [half](char letter) { return std::string(half + 1, letter) + "."; };
    auto const here = std::to_string(place_[couplet][half]);
    auto const rival = std::to_string(place_[couplet][1 - half]);
    auto const small = static_cast<char>('a' + static_cast<char>(depth));
    switch (label_) {
      case 1:
        return number + ".";
      case 2:
        return half == 0 ? number + "." : "–";
      case 3:
        return number + (half == 0 ? "." : "'.");
      case 4:
        return letters(static_cast<char>('A' + static_cast<char>(depth)));
      case 5:
        return letters(small);
      case 6:
        return std::string{small} + (half == 0 ? "." : "'.");
      case 7:
        return std::string{small} + (half == 0 ? "¹." : "².");
      case 8:
        return letters(static_cast<char>('a' + static_cast<char>(couplet - 1)));
      case 9:
        return here + " (" + rival + ")";
      default:
        return {};
    }
  }

  void walk(unsigned couplet, std::size_t depth) {
    for (std::size_t half = 0; half < 2; ++half) {
      auto const& lead = kLayoutKey[couplet - 1][half];
      auto indent = std::string(step_ * depth, ' ');
      auto sign = label(couplet, half, depth);
      if (scan_ != nullptr) {
        sign = scan_->label(sign);
        indent = std::string(scan_->indent(indent.size()), ' ');
      }
      auto const end =
          lead.couplet > 0 ? std::string{} : name_of(ends_, genus_, lead.epithet, order_++);
      print_lead(text_, ends_, indent + (sign.empty() ? "" : sign + " "), lead.words, end,
                 indent + std::string(ends_.hang, ' '), scan_);
      if (blank_) text_ += "\n";
      if (lead.couplet > 0) walk(lead.couplet, depth + 1);
    }
  }

  Choices choose_;
  std::string genus_;
  Scan* scan_;  // nullptr: none
  Ends ends_;
  int label_{};
  std::size_t step_{};
  bool blank_{};
  std::array<std::array<unsigned, 2>, kCouplets + 1> place_{};
  unsigned places_{};
  std::size_t order_{};
  std::string text_;
};

}  // namespace

MadeLayout made_nested(std::uint32_t seed, std::string const& genus, Scan* scan) {
  return Nested{seed, genus, scan}.print();
}

}  // namespace keydrift::test
