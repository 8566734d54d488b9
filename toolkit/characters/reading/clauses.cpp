#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/key/sort_stably.hpp"

#include <algorithm>
#include <array>

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

bool is_pointer(LeadText const& text, Index at) {
  static constexpr std::array<std::string_view, 9> kPointers{"see",  "as", "cf",  "compare", "vgl",
                                                             "voir", "v",  "ver", "siehe"};
  return text.is_word(at) &&
         std::find(kPointers.begin(), kPointers.end(), text.tokens[at].word) != kPointers.end();
}

// "3", "3a", "a", "II", and what stands between them.
bool is_number_of_figure(LeadText const& text, Index at) {
  auto const& token = text.tokens[at];
  if (token.kind == TokenKind::number) return true;
  if (token.kind == TokenKind::sign) {
    return token.sign == U',' || token.sign == U'-' || token.sign == U'.' || token.sign == U'&' ||
           token.sign == U'/' || token.sign == U':' || token.sign == U';';
  }
  if (token.kind != TokenKind::word) return false;
  if (token.word == "and" || token.word == "et" || token.word == "und") return true;
  if (token.word.size() == 1) return !token.blank_before || !text.info[at].is(kArticle);
  return std::all_of(token.word.begin(), token.word.end(),
                     [](char c) { return c == 'i' || c == 'v' || c == 'x' || c == 'l'; });
}

bool is_figure_word(LeadText const& text, Index at) {
  return text.is_word(at) && text.info[at].is(kFigure);
}

// "see couplet 7", "see note"
bool is_place_in_key(LeadText const& text, Index at) {
  static constexpr std::array<std::string_view, 10> kPlaces{
      "couplet", "couplets", "lead", "leads", "key", "note", "notes", "remark", "remarks", "page"};
  return text.is_word(at) &&
         std::find(kPlaces.begin(), kPlaces.end(), text.tokens[at].word) != kPlaces.end();
}

// The contents of a parenthesis are nothing but a reference.
bool all_reference(LeadText const& text, Index begin, Index end) {
  auto i = begin;
  bool pointed = false;
  for (; i < end; ++i) {
    bool const pointer = is_pointer(text, i);
    if (!pointer && !text.is_word(i, "in") && !text.is_word(i, "but") && !text.is_word(i, "also") &&
        !text.is_sign(i, U'.')) {
      break;
    }
    pointed = pointed || pointer;
  }
  if (i == end) return false;
  if (pointed && is_place_in_key(text, i)) return true;
  if (is_figure_word(text, i)) {
    // "(Fig. 3 and Pl. II)"; words behind ("Fig. 3, left") belong to it.
    return true;
  }
  if (i != begin) return false;
  bool any_number = false;
  for (; i < end; ++i) {
    auto const& token = text.tokens[i];
    bool const number = token.kind == TokenKind::number;
    bool const sign = token.kind == TokenKind::sign &&
                      (token.sign == U',' || token.sign == U'-' || token.sign == U';');
    if (!number && !sign) return false;
    any_number = any_number || number;
  }
  if (!any_number) return false;
  // "(3–)" and "(–8)" are extremes of a range.
  return !text.is_sign(begin, U'-') && !text.is_sign(end - 1, U'-');
}

bool touches_number(LeadText const& text, Index open, Index close) {
  auto const numeric = [&](Index at) {
    return text.tokens[at].kind == TokenKind::number || text.info[at].is(kNumeral);
  };
  if (open > 0 && (numeric(open - 1) || text.is_sign(open - 1, U'-'))) return true;
  return close + 1 < text.size() && numeric(close + 1);
}

}  // namespace

void set_aside_figures(LeadText& text) {
  for (Index i = 0; i < text.size(); ++i) {
    bool const round = text.is_sign(i, U'(');
    if (round || text.is_sign(i, U'[')) {
      auto const close = text.partner[i];
      if (close != LeadText::kNone && close > i + 1 && all_reference(text, i + 1, close)) {
        bool const worded = !touches_number(text, i, close);
        if (worded || is_figure_word(text, i + 1)) {
          text.give(i, close + 1, Role::figure);
          i = close;
          continue;
        }
      }
    }
    // "see Fig. 7", "fig. 3a, b" outside parentheses.
    if (!text.is_open(i) || !is_figure_word(text, i)) continue;
    bool const pointed = i > 0 && is_pointer(text, i - 1);
    auto const& word = text.tokens[i].word;
    bool const plain = word.starts_with("fig") || word.starts_with("abb") ||
                       word.starts_with("taf") || word.starts_with("рис");
    if (!pointed && !plain) continue;
    auto end = i + 1;
    if (end < text.size() && text.is_sign(end, U'.')) ++end;
    if (end == text.size() || !is_number_of_figure(text, end) ||
        text.tokens[end].kind == TokenKind::sign) {
      continue;
    }
    auto stop = end + 1;
    while (stop < text.size() && is_number_of_figure(text, stop) && !text.is_sign(stop, U';')) {
      // A comma or stop must lead on to another number.
      if (text.tokens[stop].kind == TokenKind::sign &&
          (stop + 1 == text.size() || text.tokens[stop + 1].kind == TokenKind::sign ||
           !is_number_of_figure(text, stop + 1) ||
           (text.is_sign(stop, U'.') && text.tokens[stop + 1].blank_before))) {
        break;
      }
      ++stop;
    }
    text.give(pointed ? i - 1 : i, stop, Role::figure);
    i = stop - 1;
  }
}

namespace {

bool ends_sentence(LeadText const& text, Index stop) {
  if (stop + 1 == text.size()) return true;
  auto const& next = text.tokens[stop + 1];
  if (next.kind == TokenKind::sign && next.sign == U'.') return false;  // leaders
  if (stop == 0) return false;
  auto const& before = text.tokens[stop - 1];
  auto const& info = text.info[stop - 1];
  bool const capital_follows = next.kind == TokenKind::word && next.capital;
  if (!next.blank_before &&
      !(capital_follows && before.kind == TokenKind::word && before.word.size() > 3)) {
    return false;
  }
  if (before.kind == TokenKind::word && !text.tokens[stop].blank_before) {
    if (before.word.size() == 1 && before.capital) return false;  // "A. bus"
    // "L. lat. 34–36".
    bool const after_letter = stop > 2 && text.is_sign(stop - 2, U'.') && text.is_word(stop - 3) &&
                              text.tokens[stop - 3].word.size() == 1 &&
                              text.tokens[stop - 3].capital && !before.capital;
    // "Sc. 31–33": so short a sentence is an abbreviation.
    bool const alone = stop == 1 || text.is_sign(stop - 2, U';') || text.is_sign(stop - 2, U'.');
    bool const brief = before.word.size() <= 4 && (after_letter || alone);
    if (brief && next.kind == TokenKind::number) return false;
    if (info.is(kAbbreviation) && !info.is(kSoftAbbreviation)) return false;
    if (info.is(kSoftAbbreviation)) return capital_follows;
  }
  if (next.kind == TokenKind::word) return next.capital;
  if (next.kind == TokenKind::number) return true;
  return next.kind == TokenKind::mark || next.sign == 0x2642 || next.sign == 0x2640 ||
         next.sign == U'(' || next.sign == U'[';
}

// "Leaves flat – stems winged": a dash between blanks joins what a semicolon would.
bool is_parting_dash(LeadText const& text, Index at) {
  if (!text.is_sign(at, U'-') || !text.tokens[at].blank_before || at == 0 ||
      at + 1 == text.size()) {
    return false;
  }
  auto const& next = text.tokens[at + 1];
  if (!next.blank_before || text.is_sign(at - 1, U'-') || text.is_sign(at + 1, U'-')) return false;
  auto const numeric = [&](Index i) {
    return text.tokens[i].kind == TokenKind::number || text.info[i].is(kNumeral) ||
           text.is_sign(i, U'(') || text.is_sign(i, U')');
  };
  return !numeric(at - 1) && !numeric(at + 1);
}

// "Note:", "N.B.", "NB": the number of tokens, or 0.
Index note_heading(LeadText const& text, Index at) {
  static constexpr std::array<std::string_view, 9> kHeadings{
      "note", "notes", "nb", "anmerkung", "anm", "nota", "remarque", "remark", "obs"};
  if (!text.is_word(at)) return 0;
  auto const& word = text.tokens[at].word;
  bool const sign_follows = at + 1 < text.size() && text.tokens[at + 1].kind == TokenKind::sign;
  if (!sign_follows && word != "nb") return 0;
  auto const colon = [&](Index i) { return i < text.size() && text.is_sign(i, U':'); };
  auto const stop = [&](Index i) { return i < text.size() && text.is_sign(i, U'.'); };
  if (std::find(kHeadings.begin(), kHeadings.end(), word) != kHeadings.end()) {
    if (colon(at + 1)) return 2;
    if (stop(at + 1) && colon(at + 2)) return 3;
    return word == "nb" ? 1 : 0;
  }
  if (word == "n" && stop(at + 1) && at + 3 < text.size() && text.is_word(at + 2, "b") &&
      stop(at + 3)) {
    return colon(at + 4) ? 5 : 4;
  }
  return 0;
}

}  // namespace

std::vector<Clause> split_clauses(LeadText const& text) {
  std::vector<Clause> clauses;
  Clause current{};
  auto const close = [&](Index end, Index next, bool sentence) {
    current.end = end;
    if (current.end > current.begin) clauses.push_back(current);
    bool const noted = current.noted && !sentence;  // a note goes on to the end of its sentence
    current = {.begin = next, .end = next, .noted = noted, .begins_sentence = sentence};
  };
  for (Index i = 0; i < text.size(); ++i) {
    if (text.roles[i] == Role::figure) continue;
    if (text.opens(i)) {
      i = text.partner[i];
      continue;
    }
    if (text.is_sign(i, U'[') && text.partner[i] != LeadText::kNone) {
      auto const end = text.partner[i];
      clauses.push_back({.begin = i, .end = end + 1, .noted = true, .begins_sentence = false});
      i = end;
      continue;
    }
    if (text.is_sign(i, U';') || is_parting_dash(text, i)) {
      close(i, i + 1, false);
    } else if (text.is_sign(i, U'.') && ends_sentence(text, i)) {
      close(i, i + 1, true);
    } else if (auto const heading = note_heading(text, i); heading > 0) {
      close(i, i, true);
      current.noted = true;
      i += heading - 1;
    }
  }
  close(text.size(), text.size(), true);
  sort_stably(clauses, [](Clause const& a, Clause const& b) { return a.begin < b.begin; });
  return clauses;
}

}  // namespace keydrift::reading
