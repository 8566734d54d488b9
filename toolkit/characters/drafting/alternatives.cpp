#include "keydrift/characters/drafting/alternatives.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>

#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift::drafting {
namespace {

using reading::Token;
using reading::TokenKind;

std::string joined(std::vector<std::string> const& words, std::size_t from, std::size_t to) {
  std::string text;
  for (auto i = from; i < to; ++i) text += (i == from ? "" : " ") + words[i];
  return text;
}

// By word behind the structure: its token in the text; nullopt where they cannot all be found.
std::optional<std::vector<std::size_t>> tokens_of(std::vector<Token> const& tokens,
                                                  std::vector<std::string> const& words,
                                                  std::size_t from) {
  std::vector<std::size_t> found;
  // From the end: a structure that was carried over is not in the text.
  std::size_t at = tokens.size();
  for (auto word = words.size(); word-- > from;) {
    while (at > 0 && tokens[at - 1].word != words[word]) --at;
    if (at == 0) return std::nullopt;
    found.push_back(--at);
  }
  std::reverse(found.begin(), found.end());
  return found;
}

std::string printed(std::string_view text, Token const& first, Token const& last) {
  return reading::fold(text.substr(first.begin, last.end - first.begin));
}

bool is_comma(Token const& token) { return token.kind == TokenKind::sign && token.sign == U','; }

}  // namespace

Item whole_item(std::string_view text, std::vector<std::string> const& words, std::size_t subject) {
  Item item{.words = joined(words, subject, words.size()), .printed = ""};
  item.printed = item.words;
  auto const tokens = reading::tokenise(text);
  auto const found = tokens_of(tokens, words, subject);
  if (!found) return item;
  // A hedge or an exception in between is no part of it.
  for (std::size_t i = 1; i < found->size(); ++i) {
    for (auto between = (*found)[i - 1] + 1; between < (*found)[i]; ++between) {
      auto const& token = tokens[between];
      bool const article =
          token.kind == TokenKind::word && reading::word_info(token.word, "").is(reading::kArticle);
      bool const joins = token.kind == TokenKind::sign && (token.sign == U'-' || is_comma(token));
      if (!article && !joins) return item;
    }
  }
  item.printed = printed(text, tokens[found->front()], tokens[found->back()]);
  return item;
}

Cut cut_alternatives(std::string_view text, std::string_view language,
                     std::vector<std::string> const& words, std::size_t subject) {
  Cut cut;
  auto const tokens = reading::tokenise(text);
  if (auto const all = tokens_of(tokens, words, 0)) {
    cut.printed_subject = printed(text, tokens[all->front()], tokens[(*all)[subject - 1]]);
  }
  cut.items = {whole_item(text, words, subject)};
  auto const found = tokens_of(tokens, words, subject);
  if (!found) return cut;
  auto const is_or = [&](std::string const& word) {
    return reading::word_info(word, language).is(reading::kOr);
  };
  if (std::none_of(words.begin() + static_cast<std::ptrdiff_t>(subject), words.end(), is_or)) {
    return cut;
  }
  std::vector<Item> items;
  std::optional<std::size_t> begin;  // row of *found
  auto const finish = [&](std::size_t end) {
    if (!begin) return;
    items.push_back(
        {.words = joined(words, subject + *begin, subject + end),
         .printed = printed(text, tokens[(*found)[*begin]], tokens[(*found)[end - 1]])});
    begin.reset();
  };
  for (std::size_t i = 0; i < found->size(); ++i) {
    bool comma = false;
    for (auto between = i == 0 ? (*found)[0] : (*found)[i - 1] + 1; between < (*found)[i];
         ++between) {
      comma = comma || is_comma(tokens[between]);
    }
    if (comma) finish(i);
    if (is_or(words[subject + i])) {
      finish(i);
    } else if (!begin) {
      begin = i;
    }
  }
  finish(found->size());
  if (items.size() > 1) cut.items = std::move(items);
  return cut;
}

std::vector<bool> hyphens_behind(std::string_view text, std::vector<std::string> const& words) {
  std::vector<bool> hyphened(words.size());
  auto const tokens = reading::tokenise(text);
  // What was carried over from another statement stands in front and is not in the text.
  for (std::size_t from = 0; from < words.size(); ++from) {
    auto const found = tokens_of(tokens, words, from);
    if (!found) continue;
    for (std::size_t i = 0; i + 1 < found->size(); ++i) {
      auto const hyphen = (*found)[i] + 1;
      hyphened[from + i] = hyphen + 1 == (*found)[i + 1] && tokens[hyphen].sign == U'-' &&
                           !tokens[hyphen].blank_before && !tokens[hyphen + 1].blank_before;
    }
    break;
  }
  return hyphened;
}

bool is_whole_alternative(Item const& item) {
  auto const tokens = reading::tokenise(item.printed);
  if (tokens.empty() || tokens.front().kind != TokenKind::word) return false;
  auto const info = reading::word_info(tokens.front().word, "");
  if (info.is(reading::kPreposition) || tokens.front().word == "like") return tokens.size() > 1;
  if (info.is(reading::kNumeral | reading::kFunction) || !info.dimension.empty()) return false;
  static constexpr std::string_view kAmounts[] = {"more", "less", "fewer", "few", "many"};
  if (std::find(std::begin(kAmounts), std::end(kAmounts), tokens.front().word) !=
      std::end(kAmounts)) {
    return false;
  }
  // "straw-coloured" is one word.
  return std::all_of(tokens.begin() + 1, tokens.end(), [](Token const& token) {
    return !token.blank_before && (token.kind == TokenKind::word || token.sign == U'-');
  });
}

}  // namespace keydrift::drafting
