#include "keydrift/formats/packed_file.hpp"

#include <zip.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <system_error>
#include <unordered_map>
#include <utility>

#include "keydrift/formats/file_error.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {

// Out of the unnamed namespace, for PackedFile::Archive holds one.
struct CloseZipArchive {
  void operator()(zip_t* archive) const { zip_discard(archive); }
};
using ZipArchiveHandle = std::unique_ptr<zip_t, CloseZipArchive>;

namespace {

using namespace std::string_view_literals;

constexpr char const* kCopyAgain = "copy or download the file again, and try to open it by itself";
// Small entries may expand as they like: a page of blanks does so a thousandfold.
constexpr std::uint64_t kExpansionFrom = std::uint64_t{16} << 20;
// A central directory header (.ZIP File Format Specification 6.3.10, 4.3.12).
constexpr auto kListSignature = "PK\x01\x02"sv;

struct CloseEntry {
  void operator()(zip_file_t* entry) const { zip_fclose(entry); }
};
std::size_t times_in(std::string_view bytes, std::string_view part) {
  std::size_t count = 0;
  for (auto at = bytes.find(part); at != std::string_view::npos;
       at = bytes.find(part, at + part.size())) {
    ++count;
  }
  return count;
}

// Some programs write backslashes for slashes.
std::string clean_name(char const* raw) {
  std::string name{raw != nullptr ? raw : ""};
  std::replace(name.begin(), name.end(), '\\', '/');
  return name;
}

bool leaves_archive(std::string_view name) {
  if (name.empty() || name.front() == '/') return true;
  if (name.size() > 1 && name[1] == ':' && std::isalpha(static_cast<unsigned char>(name[0])) != 0) {
    return true;
  }
  while (!name.empty()) {
    auto const slash = name.find('/');
    if (name.substr(0, slash) == ".."sv) return true;
    if (slash == std::string_view::npos) break;
    name.remove_prefix(slash + 1);
  }
  return false;
}

bool same_without_case(std::string_view a, std::string_view b) {
  auto const lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c | 0x20) : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [lower](char x, char y) { return lower(x) == lower(y); });
}

// Why libzip could not open an archive or unpack an entry.
std::string reason_of(zip_error_t* error) {
  switch (zip_error_code_zip(error)) {
    case ZIP_ER_NOZIP:
      return "it has no list of entries, as if it were cut short";
    case ZIP_ER_INCONS:
      return "its parts contradict each other";
    case ZIP_ER_MULTIDISK:
      return "it is one of several parts of an archive";
    case ZIP_ER_CRC:
      return "its checksum is wrong";
    case ZIP_ER_EOF:
    case ZIP_ER_READ:
    case ZIP_ER_SEEK:
      return "it ends too early";
    case ZIP_ER_ZLIB:
    case ZIP_ER_COMPRESSED_DATA:
      return "its data are damaged";
    default:
      return zip_error_strerror(error);
  }
}

Finding damaged_archive(std::string_view file, std::string const& reason) {
  return file_error(file, "damaged-archive", "the zip file cannot be opened: " + reason,
                    kCopyAgain);
}

// "the entries "a" and "b" …", by up to eight names.
std::string entries_named(std::vector<std::string> names) {
  for (auto& name : names) name = in_quotes(name);
  return (names.size() == 1 ? "the entry " : "the entries ") + in_prose(names);
}

}  // namespace

struct PackedFile::Archive {
  std::string name;
  ReadLimits limits;
  ZipArchiveHandle zip;
  std::vector<PackedEntry> entries;
  std::vector<zip_uint64_t> indices;  // of the entries in the archive's list
  std::uint64_t unpacked{};           // by all streams so far
};

namespace {

// `make`: gives the source of the bytes.
template <class Make>
ZipArchiveHandle open_archive(std::string_view name, std::vector<Finding>& findings, Make make) {
  zip_error_t error;
  zip_error_init(&error);
  ZipArchiveHandle archive;
  zip_source_t* buffer = make(&error);
  if (buffer != nullptr) archive.reset(zip_open_from_source(buffer, ZIP_RDONLY, &error));
  if (!archive) {
    findings.push_back(damaged_archive(name, reason_of(&error)));
    if (buffer != nullptr) zip_source_free(buffer);
  }
  zip_error_fini(&error);
  return archive;
}

// What makes a whole archive unfit, gathered so that one run tells it all.
struct Faults {
  std::vector<std::string> unsafe;
  std::vector<std::string> encrypted;
  std::vector<std::string> twice;

  void report(std::string_view file, std::vector<Finding>& findings) const {
    if (!unsafe.empty()) {
      findings.push_back(file_error(file, "unsafe-archive",
                                    entries_named(unsafe) + " would lie outside of the archive",
                                    "check where the file comes from"));
    }
    if (!encrypted.empty()) {
      findings.push_back(file_error(
          file, "encrypted-archive",
          entries_named(encrypted) + (encrypted.size() == 1 ? " is" : " are") + " encrypted",
          "save the file without a password"));
    }
    if (!twice.empty()) {
      findings.push_back(
          file_error(file, "damaged-archive",
                     entries_named(twice) + (twice.size() == 1 ? " is" : " are") +
                         " there more than once, and programs differ in which one they read",
                     "open it in the program that made it and save it again"));
    }
  }
};

class EntryStream final : public ByteStream {
 public:
  EntryStream(std::string file, PackedEntry entry, ReadLimits const& limits,
              std::uint64_t& unpacked)
      : file_{std::move(file)}, entry_{std::move(entry)}, limits_{limits}, unpacked_{unpacked} {}

  void start(zip_t* archive, zip_uint64_t index) {
    if (entry_.unpacked_bytes >
        limits_.unpacked_bytes - std::min(unpacked_, limits_.unpacked_bytes)) {
      fail_for_size(unpacked_ + entry_.unpacked_bytes);
      return;
    }
    if (expands_too_far(entry_.unpacked_bytes)) return fail_for_expansion(entry_.unpacked_bytes);
    handle_.reset(zip_fopen_index(archive, index, 0));
    if (!handle_) fail(zip_get_error(archive));
  }

  std::size_t read(std::span<char> into) override {
    if (failure_ || !handle_) return 0;
    auto const got = zip_fread(handle_.get(), into.data(), into.size());
    if (got < 0) {
      fail(zip_file_get_error(handle_.get()));
      return 0;
    }
    auto const size = static_cast<std::uint64_t>(got);
    out_ += size;
    unpacked_ += size;
    // The stated size passed the limits already.
    if (out_ > entry_.unpacked_bytes || (size == 0 && out_ < entry_.unpacked_bytes)) {
      fail_as_damaged("its size is not the " + std::to_string(entry_.unpacked_bytes) +
                      " bytes that the archive states");
      return 0;
    }
    return static_cast<std::size_t>(size);
  }
  std::optional<Finding> failure() const override { return failure_; }

 private:
  [[nodiscard]] std::string in_entry() const { return "the entry " + in_quotes(entry_.name); }
  [[nodiscard]] bool expands_too_far(std::uint64_t size) const {
    return size > kExpansionFrom &&
           size / limits_.expansion > std::max<std::uint64_t>(entry_.packed_bytes, 1);
  }
  void fail(zip_error_t* error) {
    auto const code = zip_error_code_zip(error);
    if (code == ZIP_ER_COMPNOTSUPP || code == ZIP_ER_ENCRNOTSUPP) {
      failure_ = file_error(
          file_, "unsupported-archive", in_entry() + " is packed in a way that cannot be read",
          "unpack the archive, pack it as an ordinary zip file (deflate), and load "
          "that one");
      return;
    }
    fail_as_damaged(reason_of(error));
  }
  void fail_as_damaged(std::string const& reason) {
    failure_ = file_error(file_, "damaged-archive", in_entry() + " cannot be unpacked: " + reason,
                          kCopyAgain);
  }
  void fail_for_size(std::uint64_t needed) {
    failure_ = file_error(file_, "too-large",
                          in_entry() + " takes what is unpacked to " + std::to_string(needed) +
                              " bytes, more than the limit of " +
                              in_words(ReadLimit::unpacked, limits_.unpacked_bytes),
                          "see whether this is the right file; " +
                              to_lift(limits_, ReadLimit::unpacked, needed) + " takes it in");
  }
  void fail_for_expansion(std::uint64_t size) {
    auto const fold = size / std::max<std::uint64_t>(entry_.packed_bytes, 1);
    failure_ = file_error(file_, "too-large",
                          in_entry() + " unpacks to " + std::to_string(fold) +
                              " times its size, and at most " + std::to_string(limits_.expansion) +
                              " times is taken in",
                          "check where the file comes from; " +
                              to_lift(limits_, ReadLimit::expansion, fold) + " takes it in");
  }

  std::string file_;
  PackedEntry entry_;
  ReadLimits limits_;
  std::uint64_t& unpacked_;
  std::unique_ptr<zip_file_t, CloseEntry> handle_;
  std::uint64_t out_{};
  std::optional<Finding> failure_;
};

}  // namespace

PackedFile::PackedFile(std::unique_ptr<Archive> archive) : archive_{std::move(archive)} {}
PackedFile::PackedFile(PackedFile&&) noexcept = default;
PackedFile& PackedFile::operator=(PackedFile&&) noexcept = default;
PackedFile::~PackedFile() = default;

Loaded<PackedFile> PackedFile::open(Source source, ReadLimits const& limits) {
  Loaded<PackedFile> loaded;
  // Before libzip makes room for each of them.
  if (auto const count = times_in(source.bytes, kListSignature); count > limits.entries) {
    loaded.findings.push_back(
        file_error(source.name, "too-large",
                   "the zip file has " + std::to_string(count) +
                       " entries, more than the limit of " + std::to_string(limits.entries),
                   "see whether this is the right file; " +
                       to_lift(limits, ReadLimit::entries, count) + " takes it in"));
    return loaded;
  }
  if (source.bytes.empty()) {  // to libzip, an archive without entries
    loaded.findings.push_back(
        file_error(source.name, "damaged-archive", "the zip file is empty", kCopyAgain));
    return loaded;
  }
  auto archive = std::make_unique<Archive>();
  archive->name = std::string{source.name};
  archive->limits = limits;
  archive->zip = open_archive(source.name, loaded.findings, [&](zip_error_t* error) {
    return zip_source_buffer_create(source.bytes.data(), source.bytes.size(), /*freep=*/0, error);
  });
  if (!archive->zip) return loaded;
  return checked(std::move(archive), source.bytes.size(), std::move(loaded.findings));
}

Loaded<PackedFile> PackedFile::open_file(std::string const& path, ReadLimits const& limits) {
  Loaded<PackedFile> loaded;
  auto archive = std::make_unique<Archive>();
  archive->name = path;
  archive->limits = limits;
  std::error_code error;
  auto const size = std::filesystem::file_size(path, error);
  archive->zip = open_archive(path, loaded.findings, [&](zip_error_t* failure) {
    return zip_source_file_create(path.c_str(), 0, -1, failure);
  });
  if (!archive->zip) return loaded;
  auto const count = static_cast<std::uint64_t>(zip_get_num_entries(archive->zip.get(), 0));
  if (count > limits.entries) {
    loaded.findings.push_back(file_error(path, "too-large",
                                         "the zip file has " + std::to_string(count) +
                                             " entries, more than the limit of " +
                                             std::to_string(limits.entries),
                                         "see whether this is the right file"));
    return loaded;
  }
  return checked(std::move(archive), error ? 0 : size, std::move(loaded.findings));
}

Loaded<PackedFile> PackedFile::checked(std::unique_ptr<Archive> archive, std::uint64_t size,
                                       std::vector<Finding> findings) {
  Loaded<PackedFile> loaded;
  loaded.findings = std::move(findings);
  auto const& name = archive->name;
  Faults faults;
  std::unordered_map<std::string, std::size_t> seen;
  std::uint64_t packed = 0;
  auto const count = static_cast<zip_uint64_t>(zip_get_num_entries(archive->zip.get(), 0));
  for (zip_uint64_t i = 0; i < count; ++i) {
    zip_stat_t stat;
    zip_stat_init(&stat);
    if (zip_stat_index(archive->zip.get(), i, 0, &stat) != 0) {
      loaded.findings.push_back(
          damaged_archive(name, reason_of(zip_get_error(archive->zip.get()))));
      return loaded;
    }
    PackedEntry entry{
        .name = clean_name(stat.name), .packed_bytes = stat.comp_size, .unpacked_bytes = stat.size};
    packed += std::min<std::uint64_t>(entry.packed_bytes, std::uint64_t{1} << 40);
    if (leaves_archive(entry.name)) faults.unsafe.push_back(entry.name);
    if ((stat.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 && stat.encryption_method != ZIP_EM_NONE) {
      faults.encrypted.push_back(entry.name);
    }
    if (++seen[entry.name] == 2) faults.twice.push_back(entry.name);
    if (!entry.name.empty() && entry.name.back() == '/') continue;
    archive->entries.push_back(std::move(entry));
    archive->indices.push_back(i);
  }
  faults.report(name, loaded.findings);
  if (packed > size) {
    loaded.findings.push_back(
        damaged_archive(name, "its entries overlap, as only those of a made-up file do"));
  }
  if (loaded.findings.empty()) loaded.value = PackedFile{std::move(archive)};
  return loaded;
}

std::vector<PackedEntry> const& PackedFile::entries() const { return archive_->entries; }

std::optional<std::size_t> PackedFile::find(std::string_view name) const {
  std::optional<std::size_t> alike;
  for (std::size_t i = 0; i < archive_->entries.size(); ++i) {
    auto const& known = archive_->entries[i].name;
    if (known == name) return i;
    if (!alike && same_without_case(known, name)) alike = i;
  }
  return alike;
}

std::unique_ptr<ByteStream> PackedFile::stream(std::size_t entry) const {
  auto stream = std::make_unique<EntryStream>(archive_->name, archive_->entries[entry],
                                              archive_->limits, archive_->unpacked);
  stream->start(archive_->zip.get(), archive_->indices[entry]);
  return stream;
}

Loaded<std::string> PackedFile::read(std::size_t entry) const {
  Loaded<std::string> loaded;
  auto const from = stream(entry);
  std::string bytes;
  if (!from->failure()) {
    // One byte more than stated, so that the last read meets the end and the checksum is tested.
    bytes.resize(static_cast<std::size_t>(archive_->entries[entry].unpacked_bytes) + 1);
  }
  std::size_t size = 0;
  while (size < bytes.size()) {
    auto const got = from->read(std::span{bytes}.subspan(size));
    if (got == 0) break;
    size += got;
  }
  if (auto failure = from->failure()) {
    loaded.findings.push_back(*std::move(failure));
    return loaded;
  }
  bytes.resize(size);
  loaded.value = std::move(bytes);
  return loaded;
}

}  // namespace keydrift
