#include "keydrift/characters/reading/pieces.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/key/sort_stably.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

// Tokens, half open, without the parentheses around them and the colon behind.
std::optional<Piece> piece(LeadText const& text, PieceKind kind, Index begin, Index end) {
  while (begin < end && text.is_sign(end - 1, U':')) --end;
  while (end > begin + 1 && text.opens(begin) && text.partner[begin] + 1 == end) {
    ++begin;
    --end;
  }
  if (begin >= end) return std::nullopt;
  return Piece{.kind = kind, .begin = text.tokens[begin].begin, .end = text.tokens[end - 1].end};
}

template <class Use>
void each_qualifier(Qualifiers const& qualifiers, Use const& use) {
  for (auto const& found : qualifiers.exceptions) use(PieceKind::exception, found.begin, found.end);
  for (auto const& found : qualifiers.limits) use(PieceKind::limit, found.begin, found.end);
  for (auto const& found : qualifiers.hedges) use(PieceKind::hedge, found.begin, found.end);
}

class PieceMaker {
 public:
  PieceMaker(LeadText const& text, Origin origin, std::vector<Index> const& subject,
             ClauseMatches const* matches)
      : text_{text}, origin_{origin}, subject_{subject}, matches_{matches} {}

  std::vector<Piece> run(Index first, Index last, Qualifiers const& found) {
    for (auto i = first; i <= last; ++i) take(i);
    close();
    each_qualifier(found, [&](PieceKind kind, Index begin, Index end) {
      if (begin < first || end > last + 1) return;
      if (auto made = piece(text_, kind, begin, end)) pieces_.push_back(*made);
    });
    return std::move(pieces_);
  }

 private:
  void take(Index at) {
    auto const kind = kind_of(at);
    if (!kind) {
      if (parts(at)) close();
      return;
    }
    if (kind_ != kind) close();
    if (!kind_) begin_ = at;
    kind_ = kind;
    end_ = at + 1;
  }

  void close() {
    if (kind_) {
      if (auto made = piece(text_, *kind_, begin_, end_)) pieces_.push_back(*made);
    }
    kind_.reset();
  }

  [[nodiscard]] std::optional<PieceKind> kind_of(Index at) const {
    switch (text_.roles[at]) {
      case Role::number:
        return PieceKind::number;
      case Role::state:
        return PieceKind::state;
      case Role::mark:
        return PieceKind::mark;
      case Role::open:
        break;
      default:
        return std::nullopt;
    }
    if (text_.tokens[at].kind == TokenKind::number) return PieceKind::state;
    if (!text_.is_content(at)) return std::nullopt;
    bool const subject =
        (matches_ != nullptr && matches_->in_subject(at)) ||
        (is_opaque() && std::find(subject_.begin(), subject_.end(), at) != subject_.end());
    if (subject) return PieceKind::subject;
    switch (origin_) {
      case Origin::opaque:
        return PieceKind::state;
      case Origin::number:
        // Its own words name the character.
        return text_.is_degree(at) ? PieceKind::unread : PieceKind::subject;
      default:
        return PieceKind::unread;
    }
  }

  // Whether what stands between two words of one kind makes two pieces of them.
  [[nodiscard]] bool parts(Index at) const {
    if (text_.roles[at] != Role::open) return true;
    if (text_.tokens[at].kind == TokenKind::sign) return !text_.is_sign(at, U'-');
    return text_.info[at].is(kAnd | kOr) && !(kind_ == PieceKind::state && is_opaque());
  }
  [[nodiscard]] bool is_opaque() const { return origin_ == Origin::opaque; }

  LeadText const& text_;
  Origin origin_;
  std::vector<Index> const& subject_;
  ClauseMatches const* matches_;
  std::vector<Piece> pieces_;
  std::optional<PieceKind> kind_;
  Index begin_{};
  Index end_{};
};

}  // namespace

std::vector<Piece> pieces_of(LeadText const& text, std::uint32_t first, std::uint32_t last,
                             Origin origin, std::vector<std::uint32_t> const& subject,
                             Qualifiers const& found, ClauseMatches const* matches) {
  return PieceMaker{text, origin, subject, matches}.run(first, last, found);
}

void add_pieces(LeadText const& text, Qualifiers const& qualifiers, std::vector<Piece>& pieces) {
  each_qualifier(qualifiers, [&](PieceKind kind, Index begin, Index end) {
    if (auto made = piece(text, kind, begin, end)) pieces.push_back(*made);
  });
}

void keep_within(std::vector<Piece>& pieces, std::uint32_t begin, std::uint32_t end) {
  std::erase_if(pieces, [&](Piece const& piece) { return piece.begin < begin || piece.end > end; });
  sort_stably(pieces, [](Piece const& a, Piece const& b) { return a.begin < b.begin; });
}

}  // namespace keydrift::reading
