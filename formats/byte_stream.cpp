#include "keydrift/formats/byte_stream.hpp"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

#include "keydrift/formats/file_error.hpp"
#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text_encodings.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kBlock = std::size_t{256} << 10;
constexpr std::size_t kRecognisedBytes = std::size_t{64} << 10;

class MemoryStream final : public ByteStream {
 public:
  MemoryStream(std::string_view bytes, std::size_t chunk)
      : rest_{bytes}, chunk_{std::max<std::size_t>(chunk, 1)} {}
  std::size_t read(std::span<char> into) override {
    auto const size = std::min({into.size(), chunk_, rest_.size()});
    std::copy_n(rest_.begin(), size, into.begin());
    rest_.remove_prefix(size);
    return size;
  }
  std::optional<Finding> failure() const override { return std::nullopt; }

 private:
  std::string_view rest_;
  std::size_t chunk_;
};

class FileStream final : public ByteStream {
 public:
  FileStream(std::FILE* file, std::string name) : file_{file}, name_{std::move(name)} {
    std::setvbuf(file, nullptr, _IONBF, 0);  // readers ask for large blocks
  }
  std::size_t read(std::span<char> into) override {
    if (failure_) return 0;
    auto const size = std::fread(into.data(), 1, into.size(), file_.get());
    if (size == 0 && std::ferror(file_.get()) != 0) {
      failure_ = file_error(name_, "unreadable-file",
                            "reading stopped: " + std::generic_category().message(errno),
                            "check the disk or the connection and try again");
    }
    return size;
  }
  std::optional<Finding> failure() const override { return failure_; }

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  std::unique_ptr<std::FILE, Close> file_;
  std::string name_;
  std::optional<Finding> failure_;
};

// Gives back the bytes that were read to find out what the stream is.
class PrependedStream final : public ByteStream {
 public:
  PrependedStream(std::string first, std::unique_ptr<ByteStream> rest)
      : first_{std::move(first)}, rest_{std::move(rest)} {}
  std::size_t read(std::span<char> into) override {
    if (given_ == first_.size()) return rest_->read(into);
    auto const size = std::min(into.size(), first_.size() - given_);
    std::memcpy(into.data(), first_.data() + given_, size);
    given_ += size;
    if (given_ == first_.size()) {
      first_.clear();
      first_.shrink_to_fit();
      given_ = 0;
    }
    return size;
  }
  std::optional<Finding> failure() const override { return rest_->failure(); }

 private:
  std::string first_;
  std::size_t given_{};
  std::unique_ptr<ByteStream> rest_;
};

// RFC 1952; members that follow one another are one text.
class GzipStream final : public ByteStream {
 public:
  GzipStream(std::unique_ptr<ByteStream> packed, std::string name, StreamLimits const& limits)
      : packed_{std::move(packed)}, name_{std::move(name)}, limits_{limits}, block_(kBlock) {
    constexpr int kGzipOnly = 16;
    ready_ = inflateInit2(&zlib_, kGzipOnly + MAX_WBITS) == Z_OK;
    if (!ready_) failure_ = damaged("zlib could not start");
  }
  ~GzipStream() override {
    if (ready_) inflateEnd(&zlib_);
  }
  GzipStream(GzipStream const&) = delete;
  GzipStream& operator=(GzipStream const&) = delete;

  std::size_t read(std::span<char> into) override {
    if (failure_ || done_) return 0;
    zlib_.next_out = reinterpret_cast<Bytef*>(into.data());
    zlib_.avail_out = static_cast<uInt>(std::min(into.size(), kBlock));
    auto const wanted = zlib_.avail_out;
    while (zlib_.avail_out == wanted && !failure_ && !done_) step();
    std::size_t const got = wanted - zlib_.avail_out;
    out_ += got;
    if (auto limit = over_limit()) {
      failure_ = std::move(limit);
      return 0;
    }
    return got;
  }
  std::optional<Finding> failure() const override { return failure_; }

 private:
  Finding damaged(std::string const& how) const {
    return file_error(name_, "damaged-gzip", "the gzip file cannot be unpacked: " + how,
                      "copy or download the file again, and try to unpack it by itself");
  }
  // How far it would go on is not known.
  std::string way_past_expansion() const {
    ReadLimits limits;
    limits.expansion = static_cast<std::uint64_t>(limits_.maximum_expansion);
    return to_lift(limits, ReadLimit::expansion);
  }
  std::optional<Finding> over_limit() const {
    if (out_ > limits_.maximum_bytes) {
      return file_error(name_, "too-large",
                        "the gzip file unpacks to more than the limit of " +
                            std::to_string(limits_.maximum_bytes) + " bytes",
                        "split the file into several and take them one by one");
    }
    if (out_ > limits_.expansion_from_bytes &&
        static_cast<double>(out_) > limits_.maximum_expansion * static_cast<double>(in_)) {
      return file_error(
          name_, "too-large",
          "the gzip file unpacks to " + std::to_string(out_ / std::max<std::uint64_t>(in_, 1)) +
              " times its size, as no table of specimens does",
          "check where the file comes from; " + way_past_expansion() + " takes it in");
    }
    return std::nullopt;
  }
  // One call of inflate; sets done_ at the end of the file and failure_ where it is damaged.
  void step() {
    if (zlib_.avail_in == 0) {
      auto const size = packed_->read(block_);
      if (size == 0) {
        failure_ = packed_->failure();
        if (!failure_ && !between_members_) failure_ = damaged("it ends too early");
        done_ = true;
        return;
      }
      in_ += size;
      zlib_.next_in = reinterpret_cast<Bytef*>(block_.data());
      zlib_.avail_in = static_cast<uInt>(size);
    }
    if (between_members_) {
      // What follows a member and is no member is padding (tapes) and ignored, as gzip does.
      if (*zlib_.next_in != 0x1F) {
        done_ = true;
        return;
      }
      between_members_ = false;
    }
    int const result = inflate(&zlib_, Z_NO_FLUSH);
    if (result == Z_STREAM_END) {
      between_members_ = true;
      inflateReset(&zlib_);
    } else if (result != Z_OK && result != Z_BUF_ERROR) {
      failure_ = damaged(zlib_.msg != nullptr ? zlib_.msg : "its data are damaged");
    }
  }

  std::unique_ptr<ByteStream> packed_;
  std::string name_;
  StreamLimits limits_;
  std::vector<char> block_;
  z_stream zlib_{};
  bool ready_{false};
  bool done_{false};
  bool between_members_{false};
  std::uint64_t in_{};
  std::uint64_t out_{};
  std::optional<Finding> failure_;
};

class Utf16Stream final : public ByteStream {
 public:
  Utf16Stream(std::unique_ptr<ByteStream> raw, encodings::ByteOrder order)
      : raw_{std::move(raw)}, order_{order} {}
  std::size_t read(std::span<char> into) override {
    while (given_ == text_.size()) {
      if (!convert_more()) return 0;
    }
    auto const size = std::min(into.size(), text_.size() - given_);
    std::memcpy(into.data(), text_.data() + given_, size);
    given_ += size;
    return size;
  }
  std::optional<Finding> failure() const override { return raw_->failure(); }

 private:
  // Keeps back an odd byte and the first half of a surrogate pair for the next block.
  bool convert_more() {
    std::array<char, 16384> block{};
    auto const size = raw_->read(block);
    if (size == 0 && pending_.empty()) return false;
    pending_.append(block.data(), size);
    std::size_t whole = size == 0 ? pending_.size() : pending_.size() / 2 * 2;
    if (size != 0 && whole >= 2) {
      std::size_t const high = order_ == encodings::ByteOrder::little ? whole - 1 : whole - 2;
      if ((static_cast<unsigned char>(pending_[high]) & 0xFCU) == 0xD8) whole -= 2;
    }
    text_ = encodings::utf_16_to_utf_8(std::string_view{pending_}.substr(0, whole), order_);
    pending_.erase(0, whole);
    given_ = 0;
    return true;
  }

  std::unique_ptr<ByteStream> raw_;
  encodings::ByteOrder order_;
  std::string pending_;
  std::string text_;
  std::size_t given_{};
};

// Reads ahead until `size` bytes or the end.
std::string first_bytes(ByteStream& stream, std::size_t size) {
  std::string bytes(size, '\0');
  std::size_t have = 0;
  while (have < size) {
    auto const got = stream.read(std::span{bytes}.subspan(have));
    if (got == 0) break;
    have += got;
  }
  bytes.resize(have);
  return bytes;
}

// Is the first line text, whatever comes behind it?
bool has_sound_first_line(std::string_view bytes) {
  auto const end = bytes.find('\n');
  if (end == std::string_view::npos || end == 0) return false;
  return std::all_of(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(end), [](char c) {
    return static_cast<unsigned char>(c) >= ' ' || c == '\t' || c == '\r';
  });
}

bool has_utf_16_mark(std::string_view bytes) {
  return bytes.substr(0, 2) == "\xFF\xFE"sv || bytes.substr(0, 2) == "\xFE\xFF"sv;
}

bool has_utf_32_mark(std::string_view bytes) {
  return bytes.substr(0, 4) == "\xFF\xFE\0\0"sv || bytes.substr(0, 4) == "\0\0\xFE\xFF"sv;
}

// By the mark, else by where the NULs stand.  Precondition: file_kind() calls the bytes text.
std::optional<encodings::ByteOrder> utf_16_order(std::string_view bytes) {
  if (has_utf_16_mark(bytes)) {
    return bytes[0] == '\xFF' ? encodings::ByteOrder::little : encodings::ByteOrder::big;
  }
  auto const nul = bytes.find('\0');
  if (nul == std::string_view::npos) return std::nullopt;
  return nul % 2 == 1 ? encodings::ByteOrder::little : encodings::ByteOrder::big;
}

}  // namespace

std::unique_ptr<ByteStream> stream_of(std::string_view bytes, std::size_t chunk) {
  return std::make_unique<MemoryStream>(bytes, chunk);
}

Loaded<std::unique_ptr<ByteStream>> unpacked(std::unique_ptr<ByteStream> raw,
                                             std::string const& name, StreamLimits const& limits) {
  Loaded<std::unique_ptr<ByteStream>> loaded;
  auto const refuse = [&](std::string code, std::string message, char const* remedy) {
    loaded.findings.push_back(file_error(name, std::move(code), std::move(message), remedy));
    return std::move(loaded);
  };
  auto stream = std::move(raw);
  auto first = first_bytes(*stream, kRecognisedBytes);
  auto kind = file_kind(first);
  if (kind == FileKind::gzip) {
    stream = std::make_unique<GzipStream>(
        std::make_unique<PrependedStream>(std::move(first), std::move(stream)), name, limits);
    first = first_bytes(*stream, kRecognisedBytes);
    kind = file_kind(first);
  }
  if (auto failure = stream->failure()) {
    loaded.findings.push_back(*std::move(failure));
    return loaded;
  }
  if (kind == FileKind::empty) return refuse("empty-file", "the file is empty", way_to_text(kind));
  if (kind == FileKind::xml && first.find("<archive") != std::string::npos) {
    return refuse("binary-file",
                  "this is what describes a Darwin Core archive (meta.xml), not a table of text",
                  "unpack it, call it meta.xml, put the archive's tables beside it, and name it");
  }
  // A table's first column may bear any name, so what looks like JSON passes; and a damaged table
  // has NULs behind a sound header: its rows are looked at one by one.
  bool const table = kind == FileKind::text || kind == FileKind::json ||
                     (kind == FileKind::binary && has_sound_first_line(first));
  if (!table) {
    return refuse("binary-file",
                  std::string{"this is "} + to_phrase(kind) + ", not a table of text",
                  way_to_text(kind));
  }
  if (has_utf_32_mark(first)) {
    return refuse("binary-file", "this is text in UTF-32, which tables are not read in",
                  "save it as UTF-8 and load that file");
  }
  auto const order = kind == FileKind::binary ? std::nullopt : utf_16_order(first);
  if (order && has_utf_16_mark(first)) first.erase(0, 2);
  stream = std::make_unique<PrependedStream>(std::move(first), std::move(stream));
  if (order) stream = std::make_unique<Utf16Stream>(std::move(stream), *order);
  loaded.value = std::move(stream);
  return loaded;
}

Loaded<std::unique_ptr<ByteStream>> open_stream(std::string const& path,
                                                StreamLimits const& limits) {
  Loaded<std::unique_ptr<ByteStream>> loaded;
  std::error_code error;
  auto const status = std::filesystem::status(path, error);
  if (status.type() == std::filesystem::file_type::not_found) {
    loaded.findings.push_back(
        file_error(path, "no-such-file", "there is no such file", "check the path"));
    return loaded;
  }
  if (status.type() == std::filesystem::file_type::directory) {
    loaded.findings.push_back(file_error(path, "is-a-directory", "this is a directory, not a file",
                                         "name the table of specimens inside it"));
    return loaded;
  }
  auto* const file = std::fopen(path.c_str(), "rb");
  if (file == nullptr) {
    loaded.findings.push_back(
        file_error(path, "unreadable-file",
                   "the file cannot be opened: " + std::generic_category().message(errno),
                   "check that it may be read"));
    return loaded;
  }
  return unpacked(std::make_unique<FileStream>(file, path), path, limits);
}

}  // namespace keydrift
