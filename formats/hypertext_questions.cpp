#include "keydrift/formats/hypertext_questions.hpp"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/formats/hypertext_blocks.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::hypertext {
namespace {

using printed::code_point_at;
using printed::is_digit;
using printed::skip_blanks;

constexpr std::size_t kFewestQuestions = 3;
constexpr std::size_t kMostAnswers = 6;
constexpr std::size_t kMostLinesOfAnswer = 4;  // of an answer
constexpr std::size_t kMostAsides = 2;         // lines between a title and the answers
constexpr std::uint32_t kWidestGap = 3;        // of the count, where a couplet is set otherwise

struct Title {
  std::uint32_t number{};
  bool worded{false};  // "Question 3"
  bool speaks{false};  // something stands behind the number
};

struct Answer {
  std::vector<std::size_t> lines;  // indices of blocks
  std::uint32_t to{};              // the number that it ends in; 0 without
};

struct Question {
  std::size_t title{};
  std::uint32_t number{};
  bool speaks{false};
  std::vector<std::size_t> asides;
  std::vector<Answer> answers;
};

// "1. Areola", "Question 1: areola", "Step 1", "3) Eyes"
std::optional<Title> title_of(Block const& block) {
  std::string_view const line = block.begin;
  Title title;
  std::size_t at = printed::behind_number_word(line);
  title.worded = at > 0;
  if (at == 0 && line.size() > 1 && line.front() == 'Q' && is_digit(code_point_at(line, 1).value)) {
    title.worded = true;
    at = 1;
  }
  auto const [end, failed] =
      std::from_chars(line.data() + at, line.data() + line.size(), title.number);
  auto const begin = at;
  at = static_cast<std::size_t>(end - line.data());
  if (failed != std::errc{} || at == begin || title.number == 0 ||
      title.number > printed::kMostCouplets) {
    return std::nullopt;
  }
  auto const behind = code_point_at(line, at);
  auto const rest = skip_blanks(line, at);
  bool const closes = behind.value == '.' || behind.value == ')' || behind.value == ':';
  if (closes) at += behind.length;
  title.speaks = skip_blanks(line, at) < line.size();
  if (at < line.size() && closes && is_digit(code_point_at(line, at).value)) return std::nullopt;
  bool const parted = closes || rest > at || rest == line.size() ||
                      printed::is_dash(code_point_at(line, rest).value);
  if (!parted) return std::nullopt;
  // "3 eyes", and not "3 Eyes"
  bool const words =
      closes || title.worded || block.heading || printed::is_dash(code_point_at(line, rest).value);
  if (!words) return std::nullopt;
  return title;
}

// The number that the line ends in; 0 without one, and for one that is a part of words.
std::uint32_t number_at_answer_end(std::string_view line) {
  while (!line.empty() &&
         (line.back() == ' ' || line.back() == '.' || line.back() == ')' || line.back() == ']')) {
    line.remove_suffix(1);
  }
  // "Go to 2 ›", "2 →"
  for (auto last = printed::code_point_before(line, line.size());
       last.value == 0x203A || last.value == 0xBB || last.value == 0x2192 || last.value == '>';
       last = printed::code_point_before(line, line.size())) {
    line = printed::trim_right(line.substr(0, line.size() - last.length));
  }
  auto begin = line.size();
  while (begin > 0 && is_digit(static_cast<unsigned char>(line[begin - 1]))) --begin;
  bool const alone = begin == 0 || line[begin - 1] == ' ' || line[begin - 1] == '(' ||
                     line[begin - 1] == '[' || line[begin - 1] == '.' || line[begin - 1] == '#';
  std::uint32_t number = 0;
  if (alone) std::from_chars(line.data() + begin, line.data() + line.size(), number);
  return number;
}

bool has_end(Block const& block) {
  return block.ends_in_mark || number_at_answer_end(block.end) > 0;
}

// A sign of a list that is written: "•", "-", "–".  Its bytes; 0 without.
std::size_t sign_length(std::string_view line) {
  auto const sign = code_point_at(line, 0);
  bool const bullet = printed::is_bullet(sign.value) || sign.value == '*' || sign.value == 0xB7 ||
                      printed::is_dash(sign.value);
  return bullet && code_point_at(line, sign.length).value == ' ' ? sign.length : 0;
}

// What parts the lines of a paragraph, or stands between elements that flow in one.
bool are_like(std::string_view one, std::string_view other) {
  auto const flows = [](std::string_view name) { return name == "br" || name.starts_with('/'); };
  return one == other || (flows(one) && flows(other));
}

// "b. Grooves apart", "B) Grooves apart" for the second answer.
bool has_letter(std::string_view line, std::size_t ordinal) {
  auto const own = printed::read_label(line);
  return own && own->number == ordinal && own->marks == 0 && own->end != printed::LabelEnd::none &&
         (own->family == printed::LabelFamily::lower || own->family == printed::LabelFamily::upper);
}

class Asker {
 public:
  explicit Asker(std::vector<Block> const& blocks) : blocks_{blocks} {
    titles_.reserve(blocks.size());
    for (auto const& block : blocks) titles_.push_back(title_of(block));
  }

  std::vector<Question> questions() {
    std::vector<Question> found;
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
      if (!may_ask(b)) continue;
      auto question = question_at(b);
      if (!question.answers.empty()) found.push_back(std::move(question));
    }
    return found;
  }

 private:
  // A lead has its end on its own line.
  [[nodiscard]] bool may_ask(std::size_t b) const {
    auto const& block = blocks_[b];
    return titles_[b] && (block.heading || block.bold || !block.ends_in_mark);
  }
  [[nodiscard]] bool ends_answers(std::size_t b) const {
    auto const& block = blocks_[b];
    return block.heading || (titles_[b] && may_ask(b) && (block.bold || titles_[b]->worded)) ||
           block.name == "dt";
  }

  // "Step 2 of 9" over "Eyes"
  [[nodiscard]] bool completes_title(std::size_t title, std::size_t at) const {
    return at == title + 1 && titles_[title]->worded && blocks_[at].heading && !titles_[at];
  }

  [[nodiscard]] Question question_at(std::size_t title) const {
    Question question{.title = title,
                      .number = titles_[title]->number,
                      .speaks = titles_[title]->speaks,
                      .asides = {},
                      .answers = {}};
    auto at = title + 1;
    for (; at < blocks_.size() && at - title - 1 <= kMostAsides; ++at) {
      if (ends_answers(at) && !completes_title(title, at)) break;
      bool const item = blocks_[at].item != blocks_[title].item && blocks_[at].item != kNowhere;
      auto answers = item ? items_from(title, at) : lines_from(title, at);
      if (answers.size() >= 2) {
        question.answers = std::move(answers);
        break;
      }
      if (item) break;
      if (!printed::starts_caption(blocks_[at].begin)) question.asides.push_back(at);
    }
    return question;
  }

  // The items of a list; empty if they are no answers.
  [[nodiscard]] std::vector<Answer> items_from(std::size_t title, std::size_t at) const {
    std::vector<Answer> answers;
    auto const& above = blocks_[title];
    auto list = blocks_[at].list;
    if (list == above.list && !above.bold && !above.heading) return {};
    auto item = kNowhere;
    std::set<std::size_t> lists{list};
    for (; at < blocks_.size() && !ends_answers(at); ++at) {
      auto const& block = blocks_[at];
      if (block.list != list) {
        // Some pages make a list of each answer.
        bool const own =
            block.item != kNowhere && block.item != above.item && lists.size() == answers.size();
        if (!own) break;
        list = block.list;
        // One that comes again holds the others.
        if (!lists.insert(list).second) return {};
      }
      if (block.item != item) {
        item = block.item;
        answers.emplace_back();
        if (lists.size() > 1 && lists.size() < answers.size()) return {};
      }
      answers.back().lines.push_back(at);
      if (answers.size() > kMostAnswers || answers.back().lines.size() > kMostLinesOfAnswer) {
        return {};
      }
    }
    return checked(std::move(answers));
  }

  // Lines one below the other, each with an end.
  [[nodiscard]] std::vector<Answer> lines_from(std::size_t title, std::size_t at) const {
    auto const& above = blocks_[title];
    if (!above.heading && !above.bold && !titles_[title]->worded) return {};
    std::vector<Answer> answers;
    auto const& name = blocks_[at].name;
    for (; at < blocks_.size() && !ends_answers(at); ++at) {
      auto const& block = blocks_[at];
      bool const like = are_like(block.name, name) && block.item == above.item && has_end(block) &&
                        !printed::starts_caption(block.begin);
      if (!like) break;
      answers.push_back({.lines = {at}, .to = 0});
      if (answers.size() > kMostAnswers) return {};
    }
    return checked(std::move(answers));
  }

  // Empty where an answer has a number of its own.
  [[nodiscard]] std::vector<Answer> checked(std::vector<Answer> answers) const {
    for (std::size_t a = 0; a < answers.size(); ++a) {
      auto const& begin = blocks_[answers[a].lines.front()].begin;
      auto const own = printed::read_label(begin);
      // "3 spines" begins with a number as well.
      bool const labelled = own && !own->is_dash() && !has_letter(begin, a + 1) &&
                            (own->end != printed::LabelEnd::none || !own->letter.empty());
      if (labelled || printed::label_alone(begin)) return {};
      for (auto const line : answers[a].lines) {
        auto const to = number_at_answer_end(blocks_[line].end);
        if (to > 0) answers[a].to = to;
      }
    }
    return answers;
  }

  std::vector<Block> const& blocks_;
  std::vector<std::optional<Title>> titles_;  // by block
};

// Do a quarter of the answers or more lead to one of the questions?
bool make_a_key(std::vector<Question> const& run) {
  if (run.size() < kFewestQuestions) return false;
  std::set<std::uint32_t> numbers;
  for (auto const& question : run) numbers.insert(question.number);
  std::size_t answers = 0;
  std::size_t leading = 0;
  for (auto const& question : run) {
    for (auto const& answer : question.answers) {
      ++answers;
      if (numbers.contains(answer.to)) ++leading;
    }
  }
  return leading >= 2 && leading * 4 >= answers;
}

class AnswerLabeller {
 public:
  AnswerLabeller(std::vector<Block> const& blocks,
                 std::unordered_map<std::size_t, ListLine>& labels)
      : blocks_{blocks}, labels_{labels} {}

  void label(Question const& question) {
    if (is_labelled(question)) return;
    labels_[blocks_[question.title].tag] = {.label = {}, .beside = true};
    for (auto const aside : question.asides) {
      labels_[blocks_[aside].tag] = {.label = {}, .beside = true};
    }
    for (std::size_t a = 0; a < question.answers.size(); ++a) {
      label(question.answers[a], a, question.number);
    }
  }

 private:
  // A list that shows letters has labelled its items by these.  A number alone over them is found
  // there; one with words is not.
  [[nodiscard]] bool is_labelled(Question const& question) const {
    auto const has = [&](std::size_t b) {
      auto const found = labels_.find(blocks_[b].tag);
      return found != labels_.end() && !(question.speaks && shows_letter(found->second));
    };
    return has(question.title) ||
           std::any_of(question.answers.begin(), question.answers.end(), [&](Answer const& answer) {
             return std::any_of(answer.lines.begin(), answer.lines.end(), has);
           });
  }
  static bool shows_letter(ListLine const& line) {
    return line.label.size() == 3 && line.label[0] >= 'a' && line.label[0] <= 'z' &&
           line.label[1] == '.' && !line.joins && !line.beside;
  }

  void label(Answer const& answer, std::size_t ordinal, std::uint32_t number) {
    auto const& first = blocks_[answer.lines.front()];
    auto label = std::to_string(number);
    if (!has_letter(first.begin, ordinal + 1)) {
      label += static_cast<char>('a' + ordinal);
      label += ". ";
    }
    labels_[first.tag] = {.label = std::move(label), .signless = sign_length(first.begin) > 0};
    auto const& last = blocks_[answer.lines.back()];
    if (answer.lines.size() < 2 || !has_end(last)) return;
    for (std::size_t l = 1; l < answer.lines.size(); ++l) {
      bool const ends = l + 1 == answer.lines.size();
      labels_[blocks_[answer.lines[l]].tag] = {.label = {}, .joins = true, .ends = ends};
    }
  }

  std::vector<Block> const& blocks_;
  std::unordered_map<std::size_t, ListLine>& labels_;
};

}  // namespace

void label_answers(std::string_view text, std::unordered_map<std::size_t, ListLine>& labels) {
  auto const blocks = blocks_of(text);
  auto const questions = Asker{blocks}.questions();
  AnswerLabeller labeller{blocks, labels};
  std::vector<Question> run;
  auto const end_run = [&] {
    if (make_a_key(run)) {
      for (auto const& question : run) labeller.label(question);
    }
    run.clear();
  };
  for (auto const& question : questions) {
    bool const follows = !run.empty() && question.number > run.back().number &&
                         question.number - run.back().number <= kWidestGap;
    if (!follows) end_run();
    if (follows || question.number == 1) run.push_back(question);
  }
  end_run();
}

}  // namespace keydrift::hypertext
