#include "keydrift/formats/printed_taxa.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/printed_bracketed_names.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_remarks.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_only_species.hpp"
#include "keydrift/formats/printed_species_number.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "group of A. bus (A. bus, A. cus Roe)": the bracket says which.
std::optional<TaxaReading> read_group(std::string_view text) {
  auto const open = text.find(" (");
  if (open == std::string_view::npos || !text.ends_with(')')) return std::nullopt;
  auto const words = words_of(text.substr(0, open));
  if (words.empty() || !is_group_word(fold(words[0]))) return std::nullopt;
  auto const inside = text.substr(open + 2, text.size() - open - 3);
  auto reading = read_plain_taxa(inside);
  bool const species = std::all_of(reading.taxa.begin(), reading.taxa.end(),
                                   [](auto const& one) { return words_of(one.name).size() >= 2; });
  if (reading.taxa.size() < 2 || !species) return std::nullopt;
  reading.before = squeeze(text.substr(0, open));
  return reading;
}

// "(hardly to be told apart) – A. bus agg."
std::optional<TaxaReading> read_behind_remark(std::string_view text) {
  auto const close = text.find(") ");
  if (!text.starts_with('(') || close == std::string_view::npos) return std::nullopt;
  auto const at = skip_blanks(text, close + 1);
  auto const dash = code_point_at(text, at);
  if (!is_dash(dash.value)) return std::nullopt;
  auto const name = trim_left(text.substr(at + dash.length));
  if (!is_latin_name(name)) return std::nullopt;
  auto reading = read_taxa(name);
  reading.before = squeeze(text.substr(1, close - 1));
  return reading;
}

// "AUSELLA. Marshwort. 3 sp.": a genus, its common name and more; "AUSELLA. BUSELLA" are two.
std::optional<TaxaReading> read_genus_with_names(std::string_view text) {
  constexpr std::size_t kShortest = 5;  // bytes
  auto const stop = text.find(". ");
  if (stop == std::string_view::npos) return std::nullopt;
  auto const genus = text.substr(0, stop);
  if (!is_in_capitals(genus, kShortest) || !has_latin_ending(fold(genus))) return std::nullopt;
  auto const rest = words_of(text.substr(stop + 2), 1);
  if (rest.empty() || is_in_capitals(rest.front(), kShortest)) return std::nullopt;
  auto reading = read_taxa(genus);
  reading.remark += (reading.remark.empty() ? "" : "; ") + squeeze(text.substr(stop + 2));
  return reading;
}

// "Aus bus var, cus" with the full stop that a scan made a comma, and "Aus bus β. cus" as a
// variety, which Greek letters count (common practice of the nineteenth century).
std::string with_plain_ranks(std::string name) {
  static constexpr std::array kForms{
      std::pair{" var, "sv, " var. "sv},    std::pair{" subsp, "sv, " subsp. "sv},
      std::pair{" ssp, "sv, " ssp. "sv},    std::pair{" \u03B1. "sv, " var. "sv},
      std::pair{" \u03B2. "sv, " var. "sv}, std::pair{" \u03B3. "sv, " var. "sv},
      std::pair{" \u03B4. "sv, " var. "sv}};
  for (auto const& [printed, plain] : kForms) {
    auto const at = name.find(printed);
    if (at == std::string::npos || at == 0) continue;
    if (is_lower(code_point_at(name, at + printed.size()).value)) {
      name.replace(at, printed.size(), plain);
    }
  }
  return name;
}

// "GREEN WORM , Aus bus", "GREEN WORM (Fig. 2), Aus bus": without the blank, and with the figure of
// the common name at the end, as it stands behind others.
std::string with_commas_close(std::string_view text) {
  std::string closed{text};
  for (auto at = closed.find(" ,"); at != std::string::npos; at = closed.find(" ,", at)) {
    closed.erase(at, 1);
  }
  auto const open = closed.find(" (");
  auto const close = closed.find("),");
  if (open == std::string::npos || close == std::string::npos || close < open) return closed;
  auto const bracket = closed.substr(open, close + 1 - open);
  auto const named = words_of(std::string_view{closed}.substr(0, open));
  bool const common = std::all_of(named.begin(), named.end(),
                                  [](std::string_view word) { return is_in_capitals(word); });
  auto const figures = figures_in(bracket);
  bool const figure = figures.size() == 1 && " (" + figures.front() + ")" == bracket;
  return common && figure ? closed.erase(open, bracket.size()) + bracket : closed;
}

}  // namespace

TaxaReading read_taxa(std::string_view text) {
  // A full stop at the very end closes the lead, unless it belongs to an abbreviation.
  auto const last_blank = text.rfind(' ');
  auto const last = text.substr(last_blank == std::string_view::npos ? 0 : last_blank + 1);
  if (last.size() > 1 && last.back() == '.' && closes_lead(last)) text.remove_suffix(1);
  if (text.size() > 2 && text.front() == '[' && text.find(']') == text.size() - 1) {
    text = trim(text.substr(1, text.size() - 2));  // a taxon set apart as a whole
  }
  if (text.size() > 2 && text.front() == '(' && text.find(')') == text.size() - 1) {
    text = trim(text.substr(1, text.size() - 2));  // "(Aus bus)"
  }
  if (text.ends_with("\".")) text.remove_suffix(1);
  bool const commas = text.find(" ,") != std::string_view::npos || text.find("),") != text.npos;
  auto const close = commas ? with_commas_close(text) : std::string{};
  if (commas) text = close;
  // "21. *A. bus": the sign stands between the species' number and the name.
  std::string unsigned_name;
  std::string_view inner_sign;
  auto const number = text.substr(0, text.find(' '));
  if (number.size() < text.size() && is_species_number(number)) {
    auto const at = skip_blanks(text, number.size());
    inner_sign = text.substr(at, signs_before_name(text.substr(at)));
    if (!inner_sign.empty()) {
      unsigned_name.append(number).append(" ").append(text.substr(at + inner_sign.size()));
      text = unsigned_name;
    }
  }
  // "?Aus bus" is a name that is doubted.
  auto const sign = text.substr(0, text.starts_with('?') ? 0 : signs_before_name(text));
  if (auto named = read_behind_remark(text)) return *std::move(named);
  if (auto named = read_bracketed_names(text)) return *std::move(named);
  if (auto named = read_genus_with_names(text)) return *std::move(named);
  if (auto const only = only_species(text)) {
    auto reading = read_taxa(only->species);
    reading.before = only->before + (reading.before.empty() ? "" : "; ") + reading.before;
    return reading;
  }
  // Marks of stress that stand apart from their vowels.
  bool const marked = text.find_first_of("\xCC\xCD") != std::string_view::npos;
  auto const stressless = marked ? without_stress(text) : std::string{};
  if (marked) text = stressless;
  auto const plain = with_plain_ranks(in_plain_letters(with_notes_apart(text.substr(sign.size()))));
  auto reading = read_plain_taxa(plain);
  if (auto group = read_group(plain)) reading = *std::move(group);
  for (auto const one : {inner_sign, sign}) {
    if (one.empty()) continue;
    reading.before = squeeze(one) + (reading.before.empty() ? "" : " ") + reading.before;
  }
  for (auto& taxon : reading.taxa) {
    if (taxon.name.empty()) taxon.name = squeeze(text);
  }
  return reading;
}

}  // namespace keydrift::printed
