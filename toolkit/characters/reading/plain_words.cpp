#include "keydrift/characters/reading/plain_words.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

bool is_negation(LeadText const& text, Index token) {
  if (!text.may_qualify(token)) return false;
  auto const phrases = qualifiers_at(text, token, token + 1);
  return std::any_of(phrases.begin(), phrases.end(),
                     [](Phrased const& phrase) { return phrase.meaning.sense == Sense::negation; });
}

std::size_t content_count(LeadText const& text, std::vector<Index> const& tokens) {
  return static_cast<std::size_t>(std::count_if(tokens.begin(), tokens.end(), [&](Index token) {
    return text.is_content(token) && !text.is_degree(token) && !is_negation(text, token);
  }));
}

bool tokens_name_part(LeadText const& text, std::vector<Index> const& tokens) {
  return std::any_of(tokens.begin(), tokens.end(), [&](Index token) {
    return text.is_content(token) && text.info[token].is(kPart);
  });
}

// "A. III, 8" says by its letter what it speaks of.
bool begins_named_formula(LeadText const& text, std::vector<Index> const& tokens) {
  return !tokens.empty() && text.tokens[tokens.front()].formula && text.is_word(tokens.front());
}

// "atteignant" of "n'atteignant pas"
std::string_view without_particle(std::string_view word) {
  for (std::string_view const particle : {"n'", "n’"}) {
    if (word.size() > particle.size() && word.starts_with(particle)) {
      return word.substr(particle.size());
    }
  }
  return word;
}

// "Leaves of the stem not hairy" denies that they are; of "wings reduced to pads not reaching the
// abdomen" the pads alone are denied to reach it.
bool denies_all_behind(LeadText const& text, std::vector<Index> const& tokens,
                       std::size_t negation) {
  auto const subject = subject_tokens(text, tokens);
  for (std::size_t i = 0; i < negation; ++i) {
    auto const token = tokens[i];
    if (!text.is_content(token) || text.is_degree(token)) continue;
    if (text.info[token].is(kPart | kPosition)) continue;
    auto const& word = text.tokens[token].word;
    if (without_particle(word).size() < word.size()) continue;
    if (std::find(subject.begin(), subject.end(), token) == subject.end()) return false;
  }
  return true;
}

}  // namespace

std::string plain_words(LeadText const& text, std::vector<std::uint32_t> const& tokens,
                        std::string const& subject, bool* negated) {
  std::vector<std::string_view> words;
  words.reserve(tokens.size());
  std::size_t negations = 0;
  std::size_t negation_at = 0;
  bool of_the_whole = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    auto const token = tokens[i];
    auto const role = text.roles[token];
    if (role != Role::open && role != Role::state && role != Role::number) {
      // A hedge inside, behind the first words, is part of what is said ("flat or rarely rolled").
      bool const inside = role == Role::hedge && !words.empty() && i > 0 &&
                          tokens[i] > tokens[i - 1] + 1 && text.is_word(token);
      if (!inside) continue;
    }
    if (text.tokens[token].formula) {
      // "10 + 14" is not "10-14".
      if (!text.tokens[token].word.empty()) words.emplace_back(text.tokens[token].word);
      continue;
    }
    if (text.tokens[token].kind == TokenKind::sign || text.tokens[token].kind == TokenKind::mark) {
      continue;
    }
    if (text.is_word(token)) {
      if (text.info[token].is(kArticle) || is_either(text, token)) continue;
      if (words.empty() && text.info[token].is(kOr)) continue;
      if (is_negation(text, token)) {
        ++negations;
        negation_at = words.size();
        of_the_whole = denies_all_behind(text, tokens, i);
      }
    }
    words.emplace_back(text.tokens[token].word);
  }
  if (negated != nullptr) {
    *negated = negations == 1 && words.size() > 1 && of_the_whole;
    if (*negated) {
      words.erase(words.begin() + static_cast<std::ptrdiff_t>(negation_at));
      if (negation_at > 0) words[negation_at - 1] = without_particle(words[negation_at - 1]);
    }
  }
  if (words.empty()) return {};
  auto plain = join_words(words);
  return subject.empty() ? plain : subject + ' ' + plain;
}

std::string subject_words(LeadText const& text, std::vector<std::uint32_t> const& tokens) {
  return words_at(text, subject_tokens(text, tokens));
}

std::string words_at(LeadText const& text, std::vector<std::uint32_t> const& tokens) {
  std::string words;
  for (auto const token : tokens) {
    if (!words.empty()) words += ' ';
    words += text.tokens[token].word;
  }
  return words;
}

std::vector<std::uint32_t> subject_tokens(LeadText const& text,
                                          std::vector<std::uint32_t> const& tokens) {
  if (begins_named_formula(text, tokens)) return {tokens.front()};
  std::vector<Index> content;
  content.reserve(tokens.size());
  std::size_t before_break = 0;  // content words in front of the first preposition or number
  bool broken = false;
  for (auto const token : tokens) {
    auto const role = text.roles[token];
    bool const word = text.is_word(token);
    if (role == Role::number || role == Role::state ||
        (word && (text.info[token].is(kPreposition) || text.is_degree(token) ||
                  text.info[token].is(kCopula) || is_negation(text, token)))) {
      broken = broken || !content.empty();
    }
    if (!text.is_content(token) || text.is_degree(token)) continue;
    content.push_back(token);
    if (!broken) ++before_break;
  }
  if (content.empty()) return {};
  // Up to the last of the parts that stand together at the beginning.
  std::size_t end = 0;
  for (std::size_t i = 0; i < before_break; ++i) {
    if (!text.info[content[i]].is(kPart)) continue;
    end = i + 1;
    while (end < before_break && text.info[content[end]].is(kPart)) ++end;
    break;
  }
  if (end == 0) {
    // Unknown words: all but the last, which says what they are like.
    end = broken ? before_break : content.size() - 1;
    end = std::min<std::size_t>(end, 2);
  }
  content.resize(end);
  return content;
}

bool names_subject(LeadText const& text, std::vector<std::uint32_t> const& tokens,
                   bool begins_clause) {
  if (tokens_name_part(text, tokens) || begins_named_formula(text, tokens)) return true;
  auto const content = content_count(text, tokens);
  if (begins_clause) return content > 1;
  auto const first = std::find_if(tokens.begin(), tokens.end(), [&](Index token) {
    return text.is_content(token) && !text.is_degree(token);
  });
  if (first != tokens.end()) {
    // "with a deep groove"
    if (text.info[tokens.front()].is(kWith)) return false;
    // "separated by less than their diameter"
    auto const& word = text.tokens[*first].word;
    if (word.ends_with("ed") || word.ends_with("ing")) return false;
  }
  return content > 2;
}

bool is_either(LeadText const& text, std::uint32_t token) {
  return text.is_word(token, "either") || text.is_word(token, "entweder") ||
         text.is_word(token, "soit");
}

bool is_mere_phrase(LeadText const& text, Segment const& segment) {
  static constexpr std::array<std::string_view, 14> kOpenings{
      "if", "when", "where", "then", "especially", "particularly", "which",
      "in", "at",   "on",    "near", "along",      "except",       "around"};
  auto const first = segment.parts.front().tokens.front();
  return text.is_word(first) && text.is_open(first) &&
         std::find(kOpenings.begin(), kOpenings.end(), text.tokens[first].word) != kOpenings.end();
}

bool joins_previous(LeadText const& text, std::vector<Segment> const& segments, std::size_t at,
                    std::size_t previous) {
  auto const short_and_partless = [&](Segment const& segment) {
    std::size_t content = 0;
    for (auto const& part : segment.parts) {
      if (tokens_name_part(text, part.tokens)) return false;
      content = std::max(content, content_count(text, part.tokens));
    }
    return content <= 2;
  };
  if (at == 0 || previous + 1 != at) return false;
  auto const& segment = segments[at];
  if (segment.parenthesis) return true;  // "(rolled when dry)": part of what is said
  if (is_mere_phrase(text, segment)) return true;
  // The end of a list, or its middle when the end follows.
  for (auto later = at; later < segments.size(); ++later) {
    auto const& next = segments[later];
    if (next.parenthesis) continue;
    if (!short_and_partless(next)) return false;
    if (next.parts.size() > 1) return true;
  }
  // "densely, finely hairy"
  auto const& before = segments[previous].parts.back().tokens;
  return !before.empty() && text.is_degree(before.back());
}

}  // namespace keydrift::reading
