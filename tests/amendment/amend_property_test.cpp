// Random keys, revised at random: the couplets that changed, printed as a piece, make the new
// edition of the old one.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "support.hpp"

namespace keydrift::test {
namespace {

struct SketchedLead {
  std::string words;
  std::string to;  // a couplet's label or a name
  bool operator==(SketchedLead const&) const = default;
};
struct SketchedCouplet {
  std::string label;
  std::vector<SketchedLead> leads;
};
struct SketchedKey {
  std::vector<SketchedCouplet> couplets;
  bool back_references{};
};

class Reviser {
 public:
  explicit Reviser(unsigned seed) : random_{seed} {}

  SketchedKey make() {
    SketchedKey key;
    key.back_references = flip();
    auto const count = pick(3, 14);
    for (unsigned c = 1; c <= count; ++c) {
      SketchedCouplet couplet{std::to_string(c), {}};
      for (unsigned l = pick(2, 3); l > 0; --l) couplet.leads.push_back({words(), name()});
      key.couplets.push_back(couplet);
    }
    // Each couplet but the first hangs on a lead of an earlier one, some on two.
    for (unsigned c = 1; c < count; ++c) {
      hang(key, c);
      if (flip(8)) hang(key, c);
    }
    return key;
  }

  // Revises the key and returns the labels of the couplets taken out.
  std::vector<std::string> revise(SketchedKey& key) {
    std::vector<std::string> removed;
    for (auto times = pick(1, 4); times > 0; --times) {
      auto const c = pick(0, static_cast<unsigned>(key.couplets.size()) - 1);
      auto& couplet = key.couplets[c];
      auto& lead = couplet.leads[pick(0, static_cast<unsigned>(couplet.leads.size()) - 1)];
      switch (pick(0, 5)) {
        case 0:
          lead.words = words();
          break;
        case 1:
          if (is_name(lead.to)) lead.to = name();
          break;
        case 2:
          std::swap(couplet.leads.front(), couplet.leads.back());
          break;
        case 3:
          couplet.leads.push_back({words(), name()});
          break;
        case 4:
          insert_behind(key, c);
          break;
        default:
          if (auto label = take_out(key, c); !label.empty()) removed.push_back(label);
      }
    }
    return removed;
  }

 private:
  unsigned pick(unsigned least, unsigned most) {
    return least + static_cast<unsigned>(random_()) % (most - least + 1);
  }
  bool flip(unsigned of = 2) { return random_() % of == 0; }
  static bool is_name(std::string const& to) { return to[0] < '0' || to[0] > '9'; }

  void hang(SketchedKey& key, unsigned c) {
    std::vector<SketchedLead*> ends;
    for (unsigned before = 0; before < c; ++before) {
      for (auto& lead : key.couplets[before].leads) {
        if (is_name(lead.to)) ends.push_back(&lead);
      }
    }
    if (ends.empty()) return;
    ends[pick(0, static_cast<unsigned>(ends.size()) - 1)]->to = key.couplets[c].label;
  }

  std::string words() {
    static constexpr char const* kParts[] = {"Wings", "Legs", "Antennae", "Head"};
    static constexpr char const* kStates[] = {"red", "pale", "striped", "glossy", "hairy above"};
    return std::string{kParts[pick(0, 3)]} + " " + kStates[pick(0, 4)] + " and " +
           kStates[pick(0, 4)] + ", number " + std::to_string(pick(100, 99999)) + " seen";
  }
  std::string name() {
    static constexpr char const* kGenera[] = {"Aus", "Bus", "Cus"};
    std::string epithet{static_cast<char>('a' + pick(0, 25)), static_cast<char>('a' + pick(0, 25))};
    return std::string{kGenera[pick(0, 2)]} + " " + epithet + "us";
  }

  // 7a behind 7, between a lead of 7 and what it led to.
  void insert_behind(SketchedKey& key, unsigned c) {
    auto const label = key.couplets[c].label + "a";
    bool const plain = key.couplets[c].label.back() != 'a';
    bool const taken = std::any_of(key.couplets.begin(), key.couplets.end(),
                                   [&](auto const& one) { return one.label == label; });
    if (!plain || taken) return;
    auto& lead = key.couplets[c].leads.back();
    SketchedCouplet fresh{label, {{words(), lead.to}, {words(), name()}}};
    lead.to = label;
    key.couplets.insert(key.couplets.begin() + c + 1, fresh);
  }

  // A couplet of names only; what led to it leads to its first name.
  static std::string take_out(SketchedKey& key, unsigned c) {
    auto const couplet = key.couplets[c];
    if (c == 0) return {};
    for (auto const& lead : couplet.leads) {
      if (!is_name(lead.to)) return {};
    }
    for (auto& other : key.couplets) {
      for (auto& lead : other.leads) {
        if (lead.to == couplet.label) lead.to = couplet.leads.front().to;
      }
    }
    key.couplets.erase(key.couplets.begin() + c);
    return couplet.label;
  }

  std::mt19937 random_;
};

std::string printed(SketchedKey const& key, SketchedCouplet const& couplet) {
  std::string parents;
  for (auto const& other : key.couplets) {
    for (auto const& lead : other.leads) {
      if (lead.to != couplet.label) continue;
      parents += (parents.empty() ? "" : ", ") + other.label;
      break;
    }
  }
  std::string text;
  for (auto const& lead : couplet.leads) {
    bool const first = &lead == &couplet.leads.front();
    auto const back = parents.empty() || !key.back_references ? "" : " (" + parents + ")";
    text += (first ? couplet.label + back + "." : std::string{"–"}) + "  " + lead.words +
            " ..... " + lead.to + "\n";
  }
  return text;
}

std::string printed(SketchedKey const& key, std::string const& edition) {
  auto text = "Title: Key to Aus\nEdition: " + edition + "\n\n";
  for (auto const& couplet : key.couplets) text += printed(key, couplet) + "\n";
  return text;
}

class Revision : public ::testing::TestWithParam<unsigned> {};

TEST_P(Revision, IsWhatTheChangedCoupletsMakeOfTheOldEdition) {
  Reviser reviser{GetParam()};
  auto const old_key = reviser.make();
  auto new_key = old_key;
  auto const removed = reviser.revise(new_key);

  std::map<std::string, std::vector<SketchedLead>> before;
  for (auto const& couplet : old_key.couplets) before[couplet.label] = couplet.leads;
  std::string piece = "Edition: new\n\n";
  bool const apart = GetParam() % 2 == 0;  // with an instruction for each couplet, or none
  std::size_t changed = 0;
  for (auto const& couplet : new_key.couplets) {
    auto const was = before.find(couplet.label);
    if (was != before.end() && was->second == couplet.leads) continue;
    ++changed;
    if (apart && was != before.end()) piece += "Replace couplet " + couplet.label + " by:\n";
    if (apart && was == before.end()) {
      piece += "Insert after couplet " + couplet.label.substr(0, couplet.label.size() - 1) + ":\n";
    }
    piece += printed(new_key, couplet) + "\n";
  }
  bool deletes = false;
  for (auto const& label : removed) {
    if (before.count(label) == 0) continue;  // inserted before it was taken out
    piece += "Delete couplet " + label + ".\n";
    deletes = true;
  }
  if (changed == 0 && !deletes) return;

  auto const old_edition = read_key(printed(old_key, "old"));
  auto const new_edition = read_key(printed(new_key, "new"));
  ASSERT_EQ(new_edition.couplets.size(), new_key.couplets.size());
  auto const amendment = read_piece(piece);
  auto const result = amend(old_edition, {&amendment, 1});
  EXPECT_EQ(told(result.unplaced), "") << piece;
  EXPECT_EQ(key_in_short(result.edition), key_in_short(new_edition)) << piece;
  EXPECT_TRUE(same_content(result.edition, new_edition)) << piece;

  if (deletes || apart) return;
  auto const again = amend(result.edition, {&amendment, 1});
  EXPECT_TRUE(same_content(again.edition, result.edition)) << piece;
  EXPECT_EQ(told(again.unplaced), "");
}

INSTANTIATE_TEST_SUITE_P(Seeds, Revision, ::testing::Range(1U, 301U));

}  // namespace
}  // namespace keydrift::test
