// Leads of one couplet against each other.

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "keydrift/characters/contrast_parts.hpp"
#include "keydrift/characters/contrast_words.hpp"
#include "keydrift/characters/limit_words.hpp"
#include "keydrift/characters/printed_scale.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::contrast {
namespace {

// Couplets with more leads than this have each lead compared with the next one only.
constexpr std::size_t kMostLeadsInPairs = 32;

// What a lead says of one character (under one set of limits).
struct Said {
  Statement const* statement{};  // the first that says it
  Values extreme{};
  Values usual{};
  bool hedged{false};
  bool repeated{false};  // by several statements that cannot be cut, or of both sexes by one
  mutable std::optional<std::string> head{};  // see head_of(), once asked for
};

struct LeadView {
  LeadId id{};
  std::map<std::string, Said> said{};      // by character and limits
  std::set<std::string> mentioned{};       // in either-or statements
  std::vector<Statement const*> groups{};  // either-or statements over several characters
  std::size_t deciding{};
  bool guessed{false};  // some of it is words that no lexicon and no mark explains
  std::size_t hedged{};
  Statement const* first_hedged{};
};

std::string limits_key(Statement const& statement) {
  if (statement.limits.empty()) return {};
  std::vector<std::string> limits;
  for (auto const& limit : statement.limits) {
    limits.push_back(std::string{to_word(limit.kind)} + "=" + limit.value);
  }
  std::sort(limits.begin(), limits.end());
  std::string key;
  for (auto const& limit : limits) key += "\n" + limit;
  return key;
}

LeadView view_of(Edition const& edition, LeadId id) {
  LeadView view{.id = id};
  for (auto const& statement : edition[id].statements) {
    if (statement.strength == Strength::noted || statement.any_of.empty()) continue;
    ++view.deciding;
    view.guessed = view.guessed || is_guessed(statement);
    bool const hedged = statement.strength == Strength::hedged;
    if (hedged) {
      ++view.hedged;
      if (view.first_hedged == nullptr) view.first_hedged = &statement;
    }
    auto extreme = values_of(statement, Breadth::extreme);
    if (!extreme) {
      view.groups.push_back(&statement);
      for (auto const& atom : statement.any_of) {
        view.mentioned.insert(atom.character + limits_key(statement));
      }
      continue;
    }
    // States have no extremes apart from what is usual.
    auto usual = extreme->numeric ? *values_of(statement, Breadth::usual) : *extreme;
    auto const [at, fresh] =
        view.said.try_emplace(statement.any_of.front().character + limits_key(statement));
    auto& said = at->second;
    if (fresh) {
      said = {.statement = &statement,
              .extreme = std::move(*extreme),
              .usual = std::move(usual),
              .hedged = hedged,
              .repeated = measures_both_sexes(statement)};
      continue;
    }
    if (comparable(said.extreme, *extreme)) {
      said.extreme = intersection(said.extreme, *extreme);
      said.usual = intersection(said.usual, usual);
      said.hedged = said.hedged && hedged;
    } else {
      said.repeated = true;
    }
  }
  return view;
}

// How well two leads part: characters on which they exclude each other, and on which they merely
// differ.
struct Parting {
  std::size_t excluding{};
  std::size_t differing{};
  std::size_t shared{};
};

// The first word of a statement behind its hedge: as a rule the structure it speaks of.
std::string head_of(Statement const& statement) {
  std::string_view text{statement.text};
  if (!statement.hedge.empty() && text.starts_with(statement.hedge)) {
    text.remove_prefix(statement.hedge.size());
  }
  auto const first_word = [](std::string_view in) {
    auto words = normalised_words(in);
    return words.substr(0, words.find(' '));
  };
  // As a rule the first few words have it; marks may hold blanks.
  constexpr std::size_t few_bytes = 20;
  if (text.size() > few_bytes && text.find('{') == std::string_view::npos) {
    auto const blank = text.find(' ', few_bytes);
    if (auto word = first_word(text.substr(0, blank)); !word.empty()) return word;
  }
  return first_word(text);
}

// Two statements that no character ties, though they begin with the same word and one of them was
// not understood: most likely they answer each other.
bool may_answer(Said const& a, Said const& b) {
  if (!is_guessed(*a.statement) && !is_guessed(*b.statement)) return false;
  for (auto const* said : {&a, &b}) {
    if (!said->head) said->head = head_of(*said->statement);
  }
  std::string_view x{*a.head}, y{*b.head};
  if (x.size() > y.size()) std::swap(x, y);
  // "spike" and "spikes"
  return !x.empty() && (x == y || (x.size() >= 4 && y.starts_with(x) && y.size() <= x.size() + 2));
}

bool answered(LeadView const& view, std::string const& key, Said const& said,
              LeadView const& other) {
  return std::any_of(other.said.begin(), other.said.end(), [&](auto const& entry) {
    auto const& [other_key, other_said] = entry;
    return other_key != key && !view.said.contains(other_key) && may_answer(said, other_said);
  });
}

bool group_excludes(Statement const& group, LeadView const& other) {
  return std::all_of(group.any_of.begin(), group.any_of.end(), [&](Atom const& atom) {
    auto const found = other.said.find(atom.character + limits_key(group));
    if (found == other.said.end()) return false;
    auto const values = values_of(atom, Breadth::extreme);
    return comparable(values, found->second.extreme) && disjoint(values, found->second.extreme);
  });
}

Parting parting_of(LeadView const& a, LeadView const& b) {
  Parting parting;
  for (auto const& [key, x] : a.said) {
    auto const found = b.said.find(key);
    if (found == b.said.end()) {
      if (b.mentioned.contains(key) || answered(a, key, x, b)) {
        ++parting.shared;
        ++parting.differing;
      }
      continue;
    }
    auto const& y = found->second;
    ++parting.shared;
    bool const same_kind = !x.repeated && !y.repeated && comparable(x.extreme, y.extreme);
    if (same_kind && (disjoint(x.extreme, y.extreme) || disjoint(x.usual, y.usual))) {
      ++parting.excluding;
    } else if (!same_kind || !(x.extreme == y.extreme && x.usual == y.usual)) {
      ++parting.differing;
    }
  }
  auto const count_groups = [&](LeadView const& from, LeadView const& to) {
    for (auto const* group : from.groups) {
      if (group_excludes(*group, to)) {
        ++parting.excluding;
        ++parting.shared;
      }
    }
  };
  count_groups(a, b);
  count_groups(b, a);
  for (auto const& key : a.mentioned) {
    if (b.mentioned.contains(key) || b.said.contains(key)) ++parting.shared, ++parting.differing;
  }
  return parting;
}

std::string label_of(ContrastContext const& context, Statement const& statement) {
  auto const* character = context.character(statement.any_of.front().character);
  if (character == nullptr) return {};
  return character->label.empty() ? character->id : character->label;
}

class CoupletCheck {
 public:
  CoupletCheck(ContrastContext& context, CoupletId couplet) : context_{context} {
    auto const& leads = context.edition[couplet].leads;
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      views_.push_back(view_of(context.edition, LeadId{couplet, i}));
    }
    least_.assign(views_.size(), SIZE_MAX);
  }

  void run() {
    for (std::size_t i = 0; i < views_.size(); ++i) check_hedges(i);
    if (views_.size() < 2) return;
    bool const all_pairs = views_.size() <= kMostLeadsInPairs;
    for (std::size_t i = 0; i + 1 < views_.size(); ++i) {
      auto const last = all_pairs ? views_.size() - 1 : i + 1;
      for (std::size_t j = i + 1; j <= last; ++j) check_pair(i, j);
    }
    check_characters();
  }

 private:
  [[nodiscard]] std::string lead(std::size_t i) const { return context_.lead(views_[i].id); }
  [[nodiscard]] std::string saying(std::size_t i, Said const& said) const {
    return quoted(said.statement->text) + " of lead " + lead(i);
  }

  void check_hedges(std::size_t i) {
    auto const& view = views_[i];
    if (view.deciding == 0 || view.hedged < view.deciding) return;
    bool const all = std::all_of(views_.begin(), views_.end(), [](LeadView const& other) {
      return other.hedged == other.deciding;
    });
    context_.report("hedged-only", all ? Severity::warning : Severity::information,
                    *view.first_hedged,
                    "lead " + lead(i) + " rests on hedged statements only, so nothing refutes it",
                    "add a statement that holds without exception, or name the exceptions");
  }

  void check_pair(std::size_t i, std::size_t j) {
    auto const& a = views_[i];
    auto const& b = views_[j];
    if (a.deciding == 0 || b.deciding == 0) return;
    auto const parting = parting_of(a, b);
    least_[i] = std::min(least_[i], parting.excluding);
    least_[j] = std::min(least_[j], parting.excluding);
    if (parting.excluding + parting.differing == 0) {
      // Leads of the same words are a finding of proof_structure.
      if (context_.edition[a.id].text == context_.edition[b.id].text) return;
      no_contrast_ = true;
      report_no_contrast(i, j, parting);
      return;
    }
    bool const only_pair = views_.size() == 2;
    for (auto const& [key, x] : a.said) {
      auto const found = b.said.find(key);
      if (found == b.said.end()) continue;
      auto const& y = found->second;
      if (x.repeated || y.repeated || !comparable(x.extreme, y.extreme)) continue;
      // Among several leads a common value matters only where nothing else parts the two.
      if (!only_pair && parting.excluding > 0) continue;
      if (x.extreme.numeric) {
        check_ranges(i, x, j, y);
      } else if (x.extreme == y.extreme) {
        if (only_pair) report_same(i, x, j, y);
      } else {
        check_states(i, x, j, y, parting);
      }
    }
  }

  // Words that nothing ties to one another may well contrast ("shrubs", "trees"), and so may what
  // is drawn: neither is an error.
  void report_no_contrast(std::size_t i, std::size_t j, Parting const& parting) {
    auto const& a = context_.edition[views_[i].id];
    auto const& b = context_.edition[views_[j].id];
    bool const untied = parting.shared == 0 && (views_[i].guessed || views_[j].guessed);
    bool const drawn = parting.shared > 0 && cite_other_figures(a, b);
    auto const leads = "leads " + lead(i) + " and " + lead(j);
    auto& finding = context_.report(
        "no-contrast", untied || drawn ? Severity::information : Severity::error,
        b.statements.front(),
        untied ? "nothing ties what " + leads +
                     " say to one character, so how they contrast is "
                     "not seen"
        : drawn ? leads + " contrast in their figures alone"
                : leads + " do not contrast: " +
                      (parting.shared == 0 ? "they have no character in common"
                                           : "they say the same of each character that they share"),
        untied ? "name the same structure in both, or tie their words to one character in a lexicon"
        : drawn ? "say in words as well what the figures show"
                : "say of one character how the leads differ in it");
    finding.place = b.place;
    finding.printed = b.text;
    finding.related.push_back({.place = a.place, .message = "lead " + lead(i) + " is here"});
  }

  void report_same(std::size_t i, Said const& x, std::size_t j, Said const& y) {
    if (cite_other_figures(*x.statement, *y.statement)) return;
    auto const of = label_of(context_, *y.statement);
    auto& finding =
        context_.report("same-state", Severity::warning, *y.statement,
                        "leads " + lead(i) + " and " + lead(j) + " say the same" +
                            (of.empty() ? "" : " of " + quoted(of)) + ": " +
                            quoted(x.statement->text) + " and " + quoted(y.statement->text),
                        "contrast the two, or leave the statement out of both leads");
    add_other(finding, i, x);
  }

  // What is "never toothed" is not "toothed below" either.
  static void leave_out_finer(Values& common, Values const& denying) {
    if (common.numeric || common.all_but || !denying.all_but) return;
    auto const finer = [&denying](std::string_view state) {
      return std::any_of(denying.states.begin(), denying.states.end(), [state](auto denied) {
        return state.size() > denied.size() && state.starts_with(denied) &&
               state[denied.size()] == ' ';
      });
    };
    common.states.erase(std::remove_if(common.states.begin(), common.states.end(), finer),
                        common.states.end());
  }

  void check_states(std::size_t i, Said const& x, std::size_t j, Said const& y,
                    Parting const& parting) {
    auto common = intersection(x.extreme, y.extreme);
    leave_out_finer(common, x.extreme);
    leave_out_finer(common, y.extreme);
    if (is_empty(common)) return;
    bool const mild = parting.excluding > 0 || x.hedged || y.hedged;
    auto& finding = context_.report(
        "shared-state", mild ? Severity::information : Severity::warning, *y.statement,
        saying(i, x) + " and " + saying(j, y) + " both allow " + quoted(in_words(common)),
        "allow each state in one lead only, or part the taxa that share it by another character");
    add_other(finding, i, x);
  }

  void check_ranges(std::size_t i, Said const& x, std::size_t j, Said const& y) {
    if (is_empty(x.extreme) && is_empty(y.extreme)) return;  // each contradicts itself
    if (x.extreme == y.extreme && x.usual == y.usual) {
      report_same(i, x, j, y);
      return;
    }
    auto const usual = intersection(x.usual, y.usual);
    auto const extreme = intersection(x.extreme, y.extreme);
    if (is_empty(extreme)) return;
    bool const hedged = x.hedged || y.hedged;
    if (!is_empty(usual)) {
      auto& finding = context_.report(
          "overlapping-ranges", hedged ? Severity::information : Severity::warning, *y.statement,
          saying(i, x) + " and " + saying(j, y) + " both take in " + words_as_printed(usual, x, y),
          "part the ranges, or add a character that decides where they overlap");
      add_other(finding, i, x);
    } else {
      auto& finding = context_.report(
          "overlapping-extremes", Severity::information, *y.statement,
          "the extremes of " + saying(i, x) + " and of " + saying(j, y) + " both take in " +
              words_as_printed(extreme, x, y),
          "add a character that decides there, or key such taxa out under both leads");
      add_other(finding, i, x);
    }
  }

  [[nodiscard]] std::string words_as_printed(Values const& values, Said const& x,
                                             Said const& y) const {
    auto const scale = printed_scale(std::array{y.statement, x.statement}, values,
                                     context_.edition.front.language);
    return in_words(as_printed(values, scale));
  }

  void add_other(Finding& finding, std::size_t i, Said const& said) const {
    finding.related.push_back(
        {.place = said.statement->place,
         .message = "lead " + lead(i) + " says " + quoted(said.statement->text)});
  }

  // Over all leads at once: characters that one lead alone speaks of, and values that none takes.
  void check_characters() {
    std::map<std::string, std::vector<std::size_t>> by_character;
    for (std::size_t i = 0; i < views_.size(); ++i) {
      if (views_[i].deciding == 0) return;
      for (auto const& entry : views_[i].said) by_character[entry.first].push_back(i);
      for (auto const& key : views_[i].mentioned) {
        auto& leads = by_character[key];
        if (leads.empty() || leads.back() != i) leads.push_back(i);
      }
    }
    for (auto const& [key, leads] : by_character) {
      if (leads.size() == 1) {
        check_one_sided(key, leads.front());
      } else if (leads.size() == views_.size()) {
        check_gaps(key);
      }
    }
  }

  void check_one_sided(std::string const& key, std::size_t i) {
    auto const found = views_[i].said.find(key);
    // Where nothing contrasts, that is the finding; an either-or needs no partner for each part.
    if (found == views_[i].said.end() || no_contrast_) return;
    auto const& said = found->second;
    // What "5–7" alone is said of, the other lead may well say something of.
    if (!has_words(*said.statement)) return;
    if (tells_of_knowledge(*said.statement)) return;
    if (inapplicable_elsewhere(*said.statement, i)) return;
    for (std::size_t j = 0; j < views_.size(); ++j) {
      if (j != i && is_denied(*said.statement, context_.edition[views_[j].id])) return;
    }
    for (std::size_t j = 0; j < views_.size(); ++j) {
      if (j != i && answered(views_[i], key, said, views_[j])) return;
    }
    bool const several = least_[i] >= 2;
    bool const opaque = said.statement->origin == Origin::opaque;
    std::string const others = views_.size() == 2 ? "lead " + lead(1 - i) : "no other lead";
    context_.report(
        "one-sided", several ? Severity::information : Severity::warning, *said.statement,
        "lead " + lead(i) + " says " + quoted(said.statement->text) + ", but " + others +
            (views_.size() == 2 ? " does not say" : " says") + " how it is there",
        std::string{"state it in "} + (views_.size() == 2 ? "both leads" : "the other leads") +
            ", or leave it out" +
            (opaque ? "; if other words stand for it, tie them to one character in a "
                      "lexicon"
                    : ""));
  }

  // "without metallic sheen" against "with metallic green sheen", whichever of them is looked at.
  [[nodiscard]] static bool is_denied(Statement const& said, Lead const& other) {
    if (said.origin != Origin::opaque) return false;
    return std::any_of(
        other.statements.begin(), other.statements.end(),
        [&said](Statement const& one) { return denies(one, said) || denies(said, one); });
  }

  // "beak present; beak bifid" against "beak absent": the lexicon says that nothing is missing.
  [[nodiscard]] bool inapplicable_elsewhere(Statement const& statement, std::size_t i) const {
    auto const* character = context_.character(statement.any_of.front().character);
    if (character == nullptr || !character->applicable_if) return false;
    Values wanted;
    auto const& states = character->applicable_if->states;
    wanted.states.assign(states.begin(), states.end());
    std::sort(wanted.states.begin(), wanted.states.end());
    for (std::size_t j = 0; j < views_.size(); ++j) {
      if (j == i) continue;
      auto const found = views_[j].said.find(character->applicable_if->character);
      if (found == views_[j].said.end() || !comparable(found->second.extreme, wanted) ||
          !disjoint(found->second.extreme, wanted)) {
        return false;
      }
    }
    return true;
  }

  void check_gaps(std::string const& key) {
    std::optional<Values> taken;
    std::string who;
    std::vector<Statement const*> statements;  // the last first
    for (std::size_t i = 0; i < views_.size(); ++i) {
      auto const found = views_[i].said.find(key);
      if (found == views_[i].said.end()) return;
      auto const& said = found->second;
      // A hedged or excepted range refuses nothing outright, so nothing is left out.
      bool const refuses = said.statement->strength == Strength::firm && !said.repeated;
      if (!refuses || !said.extreme.numeric || is_empty(said.extreme)) return;
      if (taken && !comparable(*taken, said.extreme)) return;
      taken = taken ? joined(*taken, said.extreme) : said.extreme;
      who += (who.empty() ? "" : i + 1 == views_.size() ? " and " : ", ") + saying(i, said);
      statements.insert(statements.begin(), said.statement);
    }
    auto gaps = complement(*taken);
    // What lies below or above all leads is no gap between them.
    std::erase_if(gaps.intervals, [](Interval const& gap) {
      return gap.low == -std::numeric_limits<double>::infinity() ||
             gap.high == std::numeric_limits<double>::infinity();
    });
    if (gaps.intervals.empty()) return;
    auto const scale = printed_scale(statements, gaps, context_.edition.front.language);
    gaps = as_printed(gaps, scale);
    bool const wide = gaps.unit == "1" ||
                      std::any_of(gaps.intervals.begin(), gaps.intervals.end(), wider_than_print);
    context_.report("gapping-ranges", wide ? Severity::warning : Severity::information,
                    *statements.front(), gap_words(gaps) + " fits no lead: " + who,
                    "let the ranges meet, or say what becomes of such specimens");
  }

  // "3.9 / 4.0": a gap of one unit of the last decimal is how ranges that meet are often printed.
  static bool wider_than_print(Interval const& gap) {
    auto const decimals = [](double number) {
      auto const words = number_words(number);
      auto const point = words.find('.');
      return point == std::string::npos ? std::size_t{0} : words.size() - point - 1;
    };
    auto const places = std::max(decimals(gap.low), decimals(gap.high));
    if (gap.low == gap.high) return gap.low_open || gap.high_open;
    if (places == 0 || places > 6) return true;
    double step = 1;
    for (std::size_t i = 0; i < places; ++i) step /= 10;
    return gap.high - gap.low > step * 1.5;
  }

  static std::string gap_words(Values const& gaps) {
    std::string words;
    std::string const unit =
        gaps.unit.empty() || gaps.unit == "1" ? "" : " " + std::string{gaps.unit};
    for (auto const& gap : gaps.intervals) {
      words += words.empty() ? "" : " or ";
      if (gap.low == gap.high) {
        words += "exactly " + number_words(gap.low);
      } else if (gaps.unit == "1") {
        words += "a count of " + number_words(gap.low) + " to " + number_words(gap.high);
      } else {
        words += "what lies between " + number_words(gap.low) + " and " + number_words(gap.high);
      }
    }
    return words + unit;
  }

  ContrastContext& context_;
  std::vector<LeadView> views_{};
  std::vector<std::size_t> least_{};  // by lead: fewest exclusions against any other lead
  bool no_contrast_{false};
};

}  // namespace

void check_couplet_contrasts(ContrastContext& context) {
  // Couplets are checked apart from each other; what is found is told in their order.
  constexpr std::size_t worth_a_thread = 1000;
  auto const check = [&context](std::size_t begin, std::size_t end) {
    ContrastContext part{
        .edition = context.edition, .graph = context.graph, .options = context.options};
    part.characters = context.characters;
    for (auto c = begin; c < end; ++c) {
      CoupletCheck{part, CoupletId{static_cast<std::uint32_t>(c)}}.run();
    }
    return std::move(part.findings);
  };
  for (auto& found : made_in_parts(context.edition.couplets.size(), worth_a_thread, check)) {
    context.findings.insert(context.findings.end(), std::make_move_iterator(found.begin()),
                            std::make_move_iterator(found.end()));
  }
}

}  // namespace keydrift::contrast
