#include "history_cases.hpp"

#include <algorithm>
#include <cstdlib>
#include <iterator>

#include "history_look.hpp"
#include "sketch.hpp"

namespace keydrift::test {
namespace {

bool drops_one_at_a_time(CaseSpec& spec, std::size_t edits,
                         std::function<bool(CaseSpec const&)> const& fails) {
  bool any = false;
  if (!spec.kept) {
    spec.kept.emplace(edits);
    for (std::size_t i = 0; i < edits; ++i) (*spec.kept)[i] = i;
  }
  for (auto chunk = std::max<std::size_t>(spec.kept->size() / 2, 1); chunk > 0; chunk /= 2) {
    for (std::size_t i = 0; i < spec.kept->size();) {
      auto kept = *spec.kept;
      auto const begin = kept.begin() + static_cast<std::ptrdiff_t>(i);
      auto const count = std::min(chunk, kept.size() - i);
      kept.erase(begin, begin + static_cast<std::ptrdiff_t>(count));
      auto fewer = spec;
      fewer.kept = std::move(kept);
      if (fails(fewer)) {
        spec = std::move(fewer);
        any = true;
      } else {
        i += chunk;
      }
    }
  }
  return any;
}

}  // namespace

std::uint64_t seeds(std::uint64_t few) {
  auto const* more = std::getenv("KEYDRIFT_SEEDS");
  return more == nullptr ? few : std::strtoull(more, nullptr, 10);
}

Case make_case(CaseSpec const& spec) {
  Dice dice{spec.seed};
  Case made;
  made.old_draft = make_draft(spec.couplets, spec.shape, dice, spec.vocabulary);
  made.old_edition = sketched("old", print(made.old_draft, made.old_nodes));
  auto const planned = spec.gathered
                           ? plan_gathered_edits(made.old_draft, spec.percent, dice, spec.recipe)
                       : spec.kind ? plan_edits(made.old_draft, spec.percent, dice, *spec.kind)
                                   : plan_edits(made.old_draft, spec.percent, dice);
  for (std::size_t i = 0; i < planned.size(); ++i) {
    if (!spec.kept || std::find(spec.kept->begin(), spec.kept->end(), i) != spec.kept->end()) {
      made.edits.push_back(planned[i]);
    }
  }
  made.new_draft = made.old_draft;
  made.history = apply_edits(made.new_draft, made.edits);
  made.new_edition = sketched("new", print(made.new_draft, made.new_nodes));
  return made;
}

Collation collated(Case const& made) {
  return collated(made.old_edition, made.new_edition,
                  {.lexicon = {}, .rows = made.history.rows, .parents = {}});
}

CaseSpec shrunk(CaseSpec spec, std::function<bool(Case const&)> const& fails) {
  std::size_t left = 400;  // cases looked at before the search is given up
  auto const still_fails = [&](CaseSpec const& candidate) {
    if (left == 0) return false;
    --left;
    return fails(make_case(candidate));
  };
  for (auto step = spec.couplets / 2; step > 0; step /= 2) {
    while (spec.couplets > step + 1) {
      auto smaller = spec;
      smaller.couplets -= step;
      if (!still_fails(smaller)) break;
      spec = smaller;
    }
  }
  static_cast<void>(drops_one_at_a_time(spec, make_case(spec).edits.size(), still_fails));
  return spec;
}

std::string described(CaseSpec const& spec) {
  auto const made = make_case(spec);
  std::string text = "seed " + std::to_string(spec.seed) + ", " + std::to_string(spec.couplets) +
                     " couplets, " + to_word(spec.shape) + ", " + std::to_string(spec.percent) +
                     " % edited\n";
  if (spec.kept) {
    text += "edits kept:";
    for (auto const edit : *spec.kept) text += " " + std::to_string(edit);
    text += "\n";
  }
  for (auto const& edit : made.edits) {
    auto const at = std::find(made.old_nodes.begin(), made.old_nodes.end(), edit.node);
    text += std::string{"  "} + to_word(edit.kind) + " at old couplet " +
            std::to_string(at - made.old_nodes.begin() + 1) + "\n";
  }
  // Of a long key only what the two editions do not share.
  auto const lines_of = [](Edition const& edition) {
    Lines lines;
    for (auto const& couplet : edition.couplets) {
      for (auto const& lead : couplet.leads) {
        lines.insert("  " + lead.label + " " + lead.text + " … " + lead.destination_printed);
      }
    }
    return lines;
  };
  auto const olds = lines_of(made.old_edition);
  auto const news = lines_of(made.new_edition);
  bool const whole = olds.size() <= 24;
  for (bool const of_new : {false, true}) {
    text += std::string{of_new ? "new" : "old"} + (whole ? "\n" : ", where it differs\n");
    auto const& others = of_new ? olds : news;
    for (auto const& line : of_new ? news : olds) {
      if (whole || others.count(line) == 0) text += line + "\n";
    }
  }
  return text;
}

void Tally::add(Tally const& other) {
  right += other.right;
  reported += other.reported;
  planted += other.planted;
}
double Tally::precision() const {
  return reported == 0 ? 1.0 : static_cast<double>(right) / static_cast<double>(reported);
}
double Tally::recall() const {
  return planted == 0 ? 1.0 : static_cast<double>(right) / static_cast<double>(planted);
}
double Tally::f1() const {
  return reported + planted == 0
             ? 1.0
             : 2.0 * static_cast<double>(right) / static_cast<double>(reported + planted);
}

Pairs pairs_of(Alignment const& alignment) {
  Pairs pairs;
  for (auto const& pair : alignment.pairs) {
    pairs.emplace_back(pair.old_couplet.index, pair.new_couplet.index);
  }
  return pairs;
}

Tally tally_pairs(Case const& made, Pairs const& pairs) {
  std::set<std::size_t> const news{made.new_nodes.begin(), made.new_nodes.end()};
  std::set<std::pair<std::size_t, std::size_t>> const parts{made.history.parts.begin(),
                                                            made.history.parts.end()};
  Tally tally;
  auto const doubt = doubtful(made);
  auto const asked_for = [&](std::size_t node) {
    return news.count(node) != 0 && doubt.couplets.count(node) == 0;
  };
  for (auto const node : made.old_nodes) tally.planted += asked_for(node) ? 1U : 0U;
  for (auto const& [was, is] : pairs) {
    auto const old_node = made.old_nodes[was];
    auto const new_node = made.new_nodes[is];
    bool const part = parts.count({old_node, new_node}) != 0;
    bool const right = old_node == new_node || part;
    if (right && (doubt.couplets.count(old_node) != 0 || doubt.couplets.count(new_node) != 0)) {
      continue;
    }
    ++tally.reported;
    tally.right += right ? 1U : 0U;
  }
  return tally;
}

Tally tally_lines(Lines const& planted, Lines const& reported) {
  std::vector<std::string> both;
  std::set_intersection(planted.begin(), planted.end(), reported.begin(), reported.end(),
                        std::back_inserter(both));
  return {.right = both.size(), .reported = reported.size(), .planted = planted.size()};
}

std::string difference(Lines const& planted, Lines const& reported) {
  constexpr std::size_t most = 12;
  std::string text;
  auto const add = [&](char const* what, Lines const& these, Lines const& others) {
    std::vector<std::string> only;
    std::set_difference(these.begin(), these.end(), others.begin(), others.end(),
                        std::back_inserter(only));
    for (std::size_t i = 0; i < std::min(most, only.size()); ++i) {
      text += std::string{what} + only[i] + "\n";
    }
    if (only.size() > most) text += "  and " + std::to_string(only.size() - most) + " more\n";
  };
  add("planted, not reported: ", planted, reported);
  add("reported, not planted: ", reported, planted);
  return text;
}

}  // namespace keydrift::test
