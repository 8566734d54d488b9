#include "keydrift/program/error_rates.hpp"

#include <charconv>
#include <ostream>
#include <string_view>

namespace keydrift::program {
namespace {

std::optional<double> rate_of(std::string_view text) {
  bool const percent = text.ends_with('%');
  if (percent) text.remove_suffix(1);
  while (percent && text.ends_with(' ')) text.remove_suffix(1);
  double value = -1;
  auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if (percent) value /= 100;
  // Not a number is neither.
  return value >= 0 && value <= 1 ? std::optional{value} : std::nullopt;
}

}  // namespace

std::optional<ErrorRates> read_error_rates(std::vector<std::string> const& given,
                                           bool lexicon_given, Context& context) {
  ErrorRates rates;
  for (auto const& text : given) {
    auto const equals = text.find('=');
    auto const rate = rate_of(equals == std::string::npos ? text : text.substr(equals + 1));
    std::optional<Difficulty> difficulty;
    if (equals != std::string::npos) difficulty = difficulty_from_word(text.substr(0, equals));
    if (!rate || (equals != std::string::npos && !difficulty)) {
      context.err << "keydrift: --error-rate " << text
                  << ": write a share from 0 to 1 or a percentage, as in 0.025 or 2.5%, or "
                     "DIFFICULTY=SHARE with naked eye, hand lens, microscope or dissection\n";
      return std::nullopt;
    }
    if (difficulty && !lexicon_given) {
      context.err << "keydrift: --error-rate " << text
                  << ": without --lexicon no couplet is known to take "
                  << (*difficulty == Difficulty::naked_eye    ? "the naked eye"
                      : *difficulty == Difficulty::dissection ? "dissection"
                                                              : "a " + text.substr(0, equals))
                  << "; give the lexicon, or one rate for all couplets\n";
      return std::nullopt;
    }
    if (difficulty) {
      rates.by_difficulty[static_cast<std::size_t>(*difficulty)] = *rate;
    } else {
      rates.rate = *rate;
    }
  }
  return rates;
}

}  // namespace keydrift::program
