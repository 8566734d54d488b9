#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/taxa/name_text.hpp"
#include "keydrift/taxa/name_tokens.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

struct Author {
  std::string transcribed;  // folded surname, particles joined on
  std::string dropped;      // the same with marks dropped
  bool abbreviated{false};
  bool filius{false};
};

struct Authorship {
  std::vector<std::vector<Author>> readings;  // "A ex B" is read as A's and as B's
  std::optional<int> year;
  std::optional<int> printed_year;  // a second, bracketed year
  bool open{false};                 // "et al."
};

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  auto const flush = [&] {
    if (!word.empty()) words.push_back(std::move(word));
    word.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    char const c = text[i];
    if (c == ' ' || c == '[' || c == ']' || c == '(' || c == ')' || c == '"' || c == '?') {
      flush();
    } else if (c == ',' || c == ';' || c == ':' || c == '&') {
      flush();
      words.emplace_back(1, c == '&' ? '&' : ',');
    } else if (c == '.') {
      word += c;
      flush();  // "J.M.Aus", "A.DC." and "Aus.f." are glued
    } else if (c == '-' && word.empty() && !words.empty() && words.back().ends_with('.')) {
      // "J.-M.": the hyphen goes with the initials
    } else {
      word += c;
    }
  }
  flush();
  return words;
}

std::optional<int> year_of(std::string_view word) {
  if (word.size() < 4) return std::nullopt;
  for (std::size_t i = 0; i < 4; ++i) {
    if (word[i] < '0' || word[i] > '9') return std::nullopt;
  }
  if (word.size() > 4 && word[4] >= '0' && word[4] <= '9') return std::nullopt;
  return (word[0] - '0') * 1000 + (word[1] - '0') * 100 + (word[2] - '0') * 10 + (word[3] - '0');
}

bool is_initial(std::string_view word) {
  if (!word.ends_with('.')) return false;
  word.remove_suffix(1);
  if (word.empty() || initial_of(word) != Initial::capital) return false;
  return folded_word(word, Marks::dropped).size() == 1;
}

// Standard forms that are no prefix of the name (Linnaeus, Candolle).
void expand_short_form(Author& author) {
  auto const set = [&](char const* name) {
    author.transcribed = author.dropped = name;
    author.abbreviated = false;
  };
  if (author.abbreviated && (author.dropped == "l" || author.dropped == "linn")) set("linnaeus");
  if (author.dropped == "linne") set("linnaeus");
  if (author.abbreviated && author.dropped == "dc") set("candolle");
  if (author.dropped == "decandolle") set("candolle");
}

std::vector<Author> authors_of(std::vector<std::string> const& words, bool& open) {
  std::vector<Author> authors;
  std::vector<std::string> parts;
  bool filius = false;
  auto const flush = [&] {
    if (!parts.empty()) {
      // Initials go, unless nothing else is there ("L.").
      std::vector<std::string> kept;
      for (auto const& part : parts) {
        if (!is_initial(part)) kept.push_back(part);
      }
      if (kept.empty()) kept.push_back(parts.back());
      Author author;
      for (auto const& part : kept) {
        author.transcribed += folded_word(part, Marks::transcribed);
        author.dropped += folded_word(part, Marks::dropped);
      }
      author.abbreviated = kept.back().ends_with('.');
      author.filius = filius;
      expand_short_form(author);
      if (!author.dropped.empty()) authors.push_back(std::move(author));
    }
    parts.clear();
    filius = false;
  };
  for (auto const& word : words) {
    auto const low = lowered(word);
    if (low == "," || low == "&" || low == "et" || low == "and" || low == "und" || low == "y") {
      flush();
    } else if (low == "al." || low == "al") {
      open = true;
    } else if ((low == "f." || low == "fil." || low == "filius") && word != "F.") {
      if (!parts.empty()) {
        filius = true;
      }
    } else if (low == "jr" || low == "jr." || low == "sr" || low == "sr.") {
      continue;
    } else {
      parts.push_back(word);
    }
  }
  flush();
  return authors;
}

Authorship read_authorship(std::string_view text) {
  auto const clean = cleaned_name(text);
  std::string_view part{clean};
  // Only the basionym's author counts; a year behind the parentheses is the combination's.
  if (part.starts_with('(')) {
    auto const close = part.find(')');
    if (close != std::string_view::npos) part = part.substr(1, close - 1);
  }
  Authorship result;
  std::vector<std::string> words;
  std::vector<std::vector<std::string>> readings;
  bool cut = false;
  for (auto& word : words_of(part)) {
    if (auto const year = year_of(word)) {
      (result.year ? result.printed_year : result.year) = year;
      continue;
    }
    auto const low = lowered(word);
    if (low == "in" || low == "apud" || low == "non" || low == "nec" || low == "sensu" ||
        low == "emend." || low == "auct.") {
      cut = true;
    }
    if (cut) continue;
    if (low == "ex") {
      readings.push_back(std::move(words));
      words.clear();
      continue;
    }
    words.push_back(std::move(word));
  }
  readings.push_back(std::move(words));
  for (auto const& reading : readings) {
    auto authors = authors_of(reading, result.open);
    if (!authors.empty()) result.readings.push_back(std::move(authors));
  }
  return result;
}

// Is `shorter` an abbreviation of `longer`: its beginning, or its letters in order ("Schltr.")?
bool abbreviates(std::string_view shorter, std::string_view longer) {
  if (shorter.empty() || shorter.size() > longer.size() || shorter[0] != longer[0]) return false;
  if (longer.starts_with(shorter)) return true;
  if (shorter.size() < 3) return false;
  std::size_t at = 0;
  for (char const c : longer) {
    if (at < shorter.size() && shorter[at] == c) ++at;
  }
  return at == shorter.size();
}

std::string_view without_particle(std::string_view name) {
  static constexpr std::string_view kParticles[] = {"vander", "vanden", "vonder", "dela",
                                                    "van",    "von",    "de",     "du"};
  for (auto const particle : kParticles) {
    if (name.starts_with(particle) && name.size() >= particle.size() + 3) {
      return name.substr(particle.size());
    }
  }
  return name;
}

bool same_author(Author const& a, Author const& b) {
  if (a.filius != b.filius) return false;
  auto const agree = [&](std::string_view x, std::string_view y) {
    if (x == y || without_particle(x) == without_particle(y)) return true;
    return (a.abbreviated && abbreviates(x, y)) || (b.abbreviated && abbreviates(y, x));
  };
  return agree(a.transcribed, b.transcribed) || agree(a.dropped, b.dropped) ||
         agree(a.transcribed, b.dropped) || agree(a.dropped, b.transcribed);
}

bool same_list(std::vector<Author> const& a, std::vector<Author> const& b, bool open_a,
               bool open_b) {
  if (open_a || open_b) return same_author(a.front(), b.front());
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), same_author);
}

}  // namespace

bool same_authorship(std::string_view a, std::string_view b) {
  auto const left = read_authorship(a);
  auto const right = read_authorship(b);
  if (left.year && right.year) {
    auto const shares = [](Authorship const& x, int year) {
      return x.year == year || x.printed_year == year;
    };
    bool const agree =
        shares(right, *left.year) || (left.printed_year && shares(right, *left.printed_year));
    if (!agree) return false;
  }
  if (left.readings.empty() || right.readings.empty()) return true;
  for (auto const& x : left.readings) {
    for (auto const& y : right.readings) {
      if (same_list(x, y, left.open, right.open)) return true;
    }
  }
  return false;
}

}  // namespace keydrift
