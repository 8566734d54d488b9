#include "keydrift/amendment/application.hpp"

namespace keydrift::amending {
namespace {

constexpr unsigned kPieceBits = 40;  // a file has fewer bytes than 2^40

Finding made(std::string code, Severity severity, std::string const& file, Place const& place,
             std::string printed, std::string message, std::string remedy) {
  return {.code = std::move(code),
          .severity = severity,
          .file = file,
          .place = place,
          .printed = std::move(printed),
          .message = std::move(message),
          .remedy = std::move(remedy),
          .related = {}};
}

}  // namespace

Finding& Application::refuse(std::string code, Place const& place, std::string printed,
                             std::string message, std::string remedy) {
  unplaced.push_back(made(std::move(code), Severity::error, piece.name, place, std::move(printed),
                          std::move(message), std::move(remedy)));
  return unplaced.back();
}

Finding& Application::remark(std::string code, Severity severity, Place const& place,
                             std::string printed, std::string message, std::string remedy) {
  remarks.push_back(made(std::move(code), severity, piece.name, place, std::move(printed),
                         std::move(message), std::move(remedy)));
  return remarks.back();
}

OpenDeed& Application::record(AmendmentAct act, CoupletId couplet,
                              AmendmentInstruction const& instruction) {
  OpenDeed open;
  open.couplet = couplet;
  open.deed.act = act;
  open.deed.couplet = draft.edition[couplet].label;
  open.deed.piece = number;
  open.deed.place = instruction.place;
  open.deed.printed = instruction.printed;
  deeds.push_back(std::move(open));
  return deeds.back();
}

Place marked(Place place, std::size_t piece) {
  auto const mark = static_cast<std::uint64_t>(piece + 1) << kPieceBits;
  place.begin |= mark;
  place.end |= mark;
  return place;
}

std::optional<std::size_t> piece_of(Place const& place) {
  auto const mark = place.begin >> kPieceBits;
  return mark == 0 ? std::nullopt : std::optional{static_cast<std::size_t>(mark - 1)};
}

Place unmarked(Place place) {
  constexpr auto kBytes = (std::uint64_t{1} << kPieceBits) - 1;
  place.begin &= kBytes;
  place.end &= kBytes;
  return place;
}

}  // namespace keydrift::amending
