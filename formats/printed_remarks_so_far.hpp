#pragma once
// The text that is no lead, line by line.  Inner header of formats.

#include <cstdint>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

// `lead`, everywhere: the last one before the text, or kNone.
class RemarksSoFar {
 public:
  // Further lines go on with the last remark.
  [[nodiscard]] bool is_open() const { return open_; }
  [[nodiscard]] bool is_caption() const { return caption_; }  // so does a caption's next line
  // A heading has no lead after it yet.
  [[nodiscard]] bool has_heading() const { return heading_ != kNone; }

  void add(RemarkKind kind, Piece piece, std::uint32_t lead) {
    remarks_.push_back({kind, lead, {piece}});
  }
  void open(RemarkKind kind, Piece piece, std::uint32_t lead) {
    add(kind, piece, lead);
    open_ = true;
  }
  void add_caption(Piece piece, std::uint32_t lead) {
    add(RemarkKind::caption, piece, lead);
    caption_ = true;
  }
  void add_heading(Piece piece, std::uint32_t lead) {
    add(RemarkKind::heading, piece, lead);
    heading_ = static_cast<std::uint32_t>(remarks_.size() - 1);
    open_ = false;
  }
  // Its last piece.  Precondition: has_heading()
  [[nodiscard]] Piece const& heading_end() const { return remarks_[heading_].pieces.back(); }
  void extend_heading(Piece piece) { remarks_[heading_].pieces.push_back(piece); }
  void extend(Piece piece) { remarks_.back().pieces.push_back(piece); }
  void close() { open_ = caption_ = false; }

  // The heading that stands directly before the lead that begins now; kNone without.
  [[nodiscard]] std::uint32_t take_heading() { return std::exchange(heading_, kNone); }

  // In printed order.
  [[nodiscard]] std::vector<Remark> all() && { return std::move(remarks_); }

 private:
  std::vector<Remark> remarks_;
  std::uint32_t heading_{kNone};
  bool open_{false};
  bool caption_{false};
};

}  // namespace keydrift::printed
