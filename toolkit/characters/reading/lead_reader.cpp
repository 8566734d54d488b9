#include "keydrift/characters/reading/lead_reader.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/characters/reading/formulas.hpp"
#include "keydrift/characters/reading/marks.hpp"
#include "keydrift/characters/reading/number_kinds.hpp"
#include "keydrift/characters/reading/numbered_parts.hpp"
#include "keydrift/characters/reading/pieces.hpp"
#include "keydrift/key/sort_stably.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

class LeadReader {
 public:
  LeadReader(std::string_view text, std::string_view language, ReadingRules const& rules)
      : text_{text, language}, rules_{rules} {}

  LeadReading run() {
    set_aside_figures(text_);
    mark_formulas(text_);
    auto const clauses = split_clauses(text_);
    name_numbered_parts(text_, clauses);
    reading_.drafts.reserve(clauses.size());
    read_brackets(clauses);
    Carried carried;
    for (auto const& clause : clauses) {
      if (is_bracket(clause)) continue;
      if (clause.begins_sentence) carried.limits.clear();
      take(read_clause(text_, clause, rules_, carried), clause);
    }
    if (pending_begin_ != LeadText::kNone) note_pending();
    sort_stably(reading_.drafts, [](Draft const& a, Draft const& b) { return a.begin < b.begin; });
    take_doubtful_numbers_for_words(reading_.drafts);
    complain_of_braces();
    apply_marks(text_, rules_, reading_);
    // Nothing but a mark that cannot be used.
    for (auto& draft : reading_.drafts) {
      if (draft.any_of.empty()) draft.strength = Strength::noted;
      keep_within(draft.pieces, draft.begin, draft.end);
    }
    return std::move(reading_);
  }

 private:
  [[nodiscard]] bool is_bracket(Clause const& clause) const {
    return text_.is_sign(clause.begin, U'[') && text_.partner[clause.begin] + 1 == clause.end;
  }

  // Before the clauses around them, which then pass over them.
  void read_brackets(std::vector<Clause> const& clauses) {
    for (auto const& clause : clauses) {
      if (!is_bracket(clause)) continue;
      Carried none;
      Clause inside{.begin = clause.begin + 1, .end = clause.end - 1, .noted = true};
      if (inside.begin < inside.end) {
        auto inner = read_clause(text_, inside, rules_, none);
        for (auto& draft : inner.drafts) reading_.drafts.push_back(std::move(draft));
      }
      text_.give(clause.begin, clause.end, Role::note);
    }
  }

  void take(ClauseReading read, Clause const& clause) {
    if (read.drafts.empty()) {
      if (has_mark(clause)) {
        Draft draft;
        draft.begin = text_.tokens[clause.begin].begin;
        draft.end = text_.tokens[clause.end - 1].end;
        add({std::move(draft)}, clause);
        return;
      }
      if (last_ != kNoDraft) {
        qualify(reading_.drafts[last_], read.loose);
        add_pieces(text_, read.loose, reading_.drafts[last_].pieces);
        reading_.drafts[last_].end =
            std::max(reading_.drafts[last_].end, text_.tokens[clause.end - 1].end);
      } else {
        // Said in front of what it qualifies.
        merge(read.loose);
        if (pending_begin_ == LeadText::kNone) {
          pending_begin_ = text_.tokens[clause.begin].begin;
        }
        pending_end_ = text_.tokens[clause.end - 1].end;
      }
      return;
    }
    add(std::move(read.drafts), clause);
  }

  void add(std::vector<Draft> drafts, Clause const&) {
    if (pending_begin_ != LeadText::kNone) {
      qualify(drafts.front(), pending_);
      add_pieces(text_, pending_, drafts.front().pieces);
      drafts.front().begin = pending_begin_;
      pending_ = {};
      pending_begin_ = LeadText::kNone;
    }
    for (auto& draft : drafts) reading_.drafts.push_back(std::move(draft));
    last_ = reading_.drafts.size() - 1;
  }

  void merge(Qualifiers& loose) {
    auto const append = [](auto& into, auto& from) {
      into.insert(into.end(), from.begin(), from.end());
    };
    append(pending_.exceptions, loose.exceptions);
    append(pending_.limits, loose.limits);
    append(pending_.hedges, loose.hedges);
  }

  static void qualify(Draft& draft, Qualifiers const& loose) {
    for (auto const& hedge : loose.hedges) {
      if (draft.strength != Strength::noted) draft.strength = Strength::hedged;
      draft.hedge += (draft.hedge.empty() ? "" : ", ") + hedge.words;
    }
    for (auto const& exception : loose.exceptions) {
      if (draft.strength == Strength::firm) draft.strength = Strength::excepted;
      draft.except.insert(draft.except.end(), exception.groups.begin(), exception.groups.end());
      draft.exception_words += (draft.exception_words.empty() ? "" : ", ") + exception.words;
    }
    for (auto const& limit : loose.limits) draft.limits.push_back(limit.limit);
  }

  [[nodiscard]] bool has_mark(Clause const& clause) const {
    for (auto i = clause.begin; i < clause.end; ++i) {
      if (text_.tokens[i].kind == TokenKind::mark) return true;
    }
    return false;
  }

  // Nothing but references and qualifiers: kept, decides nothing.
  void note_pending() {
    Draft draft;
    draft.begin = pending_begin_;
    draft.end = pending_end_;
    draft.strength = Strength::noted;
    reading_.drafts.push_back(std::move(draft));
  }

  void complain_of_braces() {
    for (Index i = 0; i < text_.size(); ++i) {
      if (!text_.is_sign(i, U'{')) continue;
      reading_.complaints.push_back({.begin = text_.tokens[i].begin,
                                     .end = text_.tokens[i].end,
                                     .code = "malformed-mark",
                                     .severity = Severity::error,
                                     .message = "a mark begins with \"{\" and has no \"}\"",
                                     .remedy = "write it as {character: state}"});
    }
  }

  static constexpr std::size_t kNoDraft = static_cast<std::size_t>(-1);

  LeadText text_;
  ReadingRules const& rules_;
  LeadReading reading_;
  std::size_t last_{kNoDraft};
  Qualifiers pending_;
  Index pending_begin_{LeadText::kNone};
  Index pending_end_{};
};

}  // namespace

LeadReading read_lead(std::string_view text, std::string_view language, ReadingRules const& rules) {
  return LeadReader{text, language, rules}.run();
}

}  // namespace keydrift::reading
