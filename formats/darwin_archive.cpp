#include "keydrift/formats/darwin_archive.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/darwin_join.hpp"
#include "keydrift/formats/darwin_meta.hpp"
#include "keydrift/formats/file_error.hpp"
#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/packed_file.hpp"
#include "keydrift/formats/side_table.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/key/word_list.hpp"

namespace fs = std::filesystem;

namespace keydrift {

using namespace tables;

namespace {

// Tables may be as large as they like; what expands beyond reason may not.
ReadLimits archive_limits(ReadLimits limits) {
  limits.bytes = std::uint64_t{1} << 42;
  limits.unpacked_bytes = std::uint64_t{1} << 42;
  return limits;
}

bool is_table_name(std::string_view name) {
  constexpr std::array<std::string_view, 6> kEnds{".csv", ".tsv",    ".txt",
                                                  ".tab", ".csv.gz", ".txt.gz"};
  return std::any_of(kEnds.begin(), kEnds.end(), [&](std::string_view end) {
    return name.size() > end.size() && name.substr(name.size() - end.size()) == end;
  });
}

// What packing programs add of their own accord.
bool is_litter(std::string_view name) {
  return name.substr(0, 9) == "__MACOSX/" || name.find(".DS_Store") != std::string_view::npos ||
         name.substr(name.find_last_of('/') + 1).substr(0, 2) == "._";
}

constexpr std::uintmax_t kMetaBytes = std::uintmax_t{4} << 20;

}  // namespace

struct DarwinArchive::State {
  std::string path;  // as given
  fs::path folder;   // where meta.xml lies; empty for a zip file
  std::optional<PackedFile> packed;
  std::string prefix;  // of its entries, where meta.xml is not at the top
  Meta meta;
  bool declared{true};  // false: a single table without meta.xml
  std::vector<Finding> findings;
  ArchiveCounts counts;
  StreamLimits stream_limits;

  [[nodiscard]] std::string shown(std::string const& file) const {
    return packed ? path + ":" + prefix + file : (folder / file).string();
  }

  [[nodiscard]] Loaded<std::unique_ptr<ByteStream>> open_table(std::string const& file) const {
    if (!packed) return open_stream((folder / file).string(), stream_limits);
    auto const entry = packed->find(prefix + file);
    return unpacked(packed->stream(*entry), shown(file), stream_limits);
  }

  [[nodiscard]] bool exists(std::string const& file) const {
    std::error_code error;
    return packed ? packed->find(prefix + file).has_value()
                  : fs::is_regular_file(folder / file, error);
  }

  // The names of files beside meta.xml, for what is to be found without it.
  [[nodiscard]] std::vector<std::string> files() const {
    std::vector<std::string> names;
    if (packed) {
      for (auto const& entry : packed->entries()) {
        if (!is_litter(entry.name)) names.push_back(entry.name);
      }
    } else {
      std::error_code error;
      for (auto const& entry : fs::directory_iterator{folder, error}) {
        if (entry.is_regular_file(error)) names.push_back(entry.path().filename().string());
      }
    }
    std::sort(names.begin(), names.end());
    return names;
  }

  [[nodiscard]] std::optional<std::string> meta_text(Loaded<DarwinArchive>& loaded) {
    constexpr std::string_view kMeta = "meta.xml";
    if (packed) {
      std::optional<std::string> only;
      std::size_t found = 0;
      for (auto const& name : files()) {
        auto const slash = name.find('/');
        if (name == kMeta || (slash != std::string::npos && name.substr(slash + 1) == kMeta)) {
          if (name == kMeta) {
            only = "";
            found = 1;
            break;
          }
          only = name.substr(0, slash + 1);
          ++found;
        }
      }
      if (!only || found != 1) return std::nullopt;
      prefix = *only;
      auto text = packed->read(*packed->find(prefix + std::string{kMeta}));
      loaded.findings.insert(loaded.findings.end(), text.findings.begin(), text.findings.end());
      return std::move(text.value);
    }
    std::error_code error;
    if (!fs::exists(folder / kMeta, error)) {
      std::vector<fs::path> inside;
      for (auto const& entry : fs::directory_iterator{folder, error}) {
        if (entry.is_directory(error) && fs::exists(entry.path() / kMeta, error)) {
          inside.push_back(entry.path());
        }
      }
      if (inside.size() != 1) return std::nullopt;
      folder = inside.front();
    }
    auto const size = fs::file_size(folder / kMeta, error);
    if (error || size > kMetaBytes) return std::nullopt;
    std::string text(static_cast<std::size_t>(size), '\0');
    auto* const file = std::fopen((folder / kMeta).c_str(), "rb");
    if (file == nullptr) return std::nullopt;
    text.resize(std::fread(text.data(), 1, text.size(), file));
    std::fclose(file);
    return text;
  }

  // A single table in a zip file may do without meta.xml.
  bool take_single_table() {
    if (!packed) return false;
    std::vector<std::string> tables;
    for (auto const& name : files()) {
      if (is_table_name(name)) tables.push_back(name);
    }
    if (tables.size() != 1) return false;
    declared = false;
    meta.core.files = tables;
    return true;
  }

  // Tables that are not there, and a core that holds no specimens.
  void check_tables(std::vector<Finding>& out) const {
    auto const check = [&](MetaTable const& table) {
      for (auto const& file : table.files) {
        if (exists(file)) continue;
        auto finding =
            file_error(shown("meta.xml"), "missing-table",
                       "the archive has no file " + in_quotes(file) + ", which meta.xml names",
                       "check that the archive is complete");
        finding.place = table.place;
        out.push_back(std::move(finding));
      }
    };
    check(meta.core);
    for (auto const& extension : meta.extensions) check(extension);
    static constexpr std::array<std::string_view, 5> kCores{
        "Occurrence", "SimpleDarwinRecord", "MaterialEntity", "MaterialSample", "Organism"};
    if (!declared || is_one_of(kCores, meta.core.row_type)) {
      return;
    }
    auto finding = file_error(shown("meta.xml"), "not-occurrences",
                              "the core of the archive is a table of " +
                                  in_quotes(meta.core.row_type) + ", and specimens are wanted",
                              "export an archive whose core is Occurrence");
    finding.place = meta.core.place;
    out.push_back(std::move(finding));
  }

  [[nodiscard]] TableForm form() const {
    TableForm form;
    form.separator = meta.core.separator;
    form.quote = meta.core.quote.value_or('\0');
    form.header_lines = meta.core.header_lines;
    std::size_t columns = 0;
    for (auto const& field : meta.core.fields) {
      if (field.index) columns = std::max(columns, *field.index + 1);
    }
    if (meta.core.id) columns = std::max(columns, *meta.core.id + 1);
    form.file_columns = columns;
    form.columns.resize(columns);
    form.defaults.resize(columns);
    for (auto const& field : meta.core.fields) {
      if (field.index && form.columns[*field.index].empty()) {
        form.columns[*field.index] = field.term;
        form.defaults[*field.index] = field.default_value;
      } else if (!field.index) {
        // Behind any column that a row can have.
        constexpr std::size_t kBehind = 10'001;
        form.columns.resize(std::max(form.columns.size(), kBehind));
        form.defaults.resize(form.columns.size());
        form.columns.push_back(field.term);
        form.defaults.push_back(field.default_value);
      }
    }
    return form;
  }

  static bool is_used(MetaTable const& table) {
    return table.row_type == "Identification" || table.row_type == "MeasurementOrFact" ||
           table.row_type == "ExtendedMeasurementOrFact";
  }
  bool has_extensions() const {
    return std::any_of(meta.extensions.begin(), meta.extensions.end(), is_used);
  }
};

DarwinArchive::DarwinArchive(std::unique_ptr<State> state) : state_{std::move(state)} {}
DarwinArchive::DarwinArchive(DarwinArchive&&) noexcept = default;
DarwinArchive& DarwinArchive::operator=(DarwinArchive&&) noexcept = default;
DarwinArchive::~DarwinArchive() = default;

bool DarwinArchive::is_archive(std::string const& path) {
  std::error_code error;
  if (fs::is_directory(path, error)) return true;
  if (fs::path{path}.filename() == "meta.xml") return true;
  if (!fs::is_regular_file(path, error)) return false;
  auto* const file = std::fopen(path.c_str(), "rb");
  if (file == nullptr) return false;
  std::array<char, 4096> first{};
  auto const size = std::fread(first.data(), 1, first.size(), file);
  std::fclose(file);
  auto const kind = file_kind({first.data(), size});
  return kind == FileKind::zip || kind == FileKind::darwin_core_archive;
}

Loaded<DarwinArchive> DarwinArchive::open(std::string const& path, ReadLimits const& limits) {
  Loaded<DarwinArchive> loaded;
  auto state = std::make_unique<State>();
  state->path = path;
  state->stream_limits.maximum_expansion = static_cast<double>(limits.expansion);
  std::error_code error;
  if (fs::is_directory(path, error)) {
    state->folder = path;
  } else if (fs::path{path}.filename() == "meta.xml") {
    state->folder = fs::path{path}.parent_path();
    if (state->folder.empty()) state->folder = ".";
  } else {
    auto packed = PackedFile::open_file(path, archive_limits(limits));
    if (!packed.value) {
      loaded.findings = std::move(packed.findings);
      return loaded;
    }
    state->packed = std::move(*packed.value);
  }
  auto const text = state->meta_text(loaded);
  if (has_error(loaded.findings)) return loaded;
  if (text) {
    auto const name = state->shown("meta.xml");
    auto meta = read_meta({.name = name, .bytes = *text});
    loaded.findings.insert(loaded.findings.end(), meta.findings.begin(), meta.findings.end());
    if (!meta.value) return loaded;
    state->meta = std::move(*meta.value);
    state->findings = loaded.findings;
  } else if (!state->take_single_table()) {
    loaded.findings.push_back(
        state->packed
            ? file_error(path, "no-meta",
                         "there is no meta.xml in the zip file, and not exactly one table either",
                         "name the table of specimens, or an archive with its meta.xml")
            : file_error(path, "is-a-directory", "this is a directory without a meta.xml",
                         "name the table of specimens inside it"));
    return loaded;
  }
  state->check_tables(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = DarwinArchive{std::move(state)};
  return loaded;
}

Loaded<OccurrenceCounts> DarwinArchive::read(
    OccurrenceOptions options, std::function<bool(Specimen const&)> const& on_specimen,
    std::function<void(Reject const&)> const& on_reject) const {
  Loaded<OccurrenceCounts> loaded;
  auto const& meta = state_->meta;
  auto const add = [&](std::vector<Finding> const& findings) {
    loaded.findings.insert(loaded.findings.end(), findings.begin(), findings.end());
  };
  // A stream of a table, or nothing after its findings.
  auto const open_table = [&](std::string const& file) -> std::unique_ptr<ByteStream> {
    auto stream = state_->open_table(file);
    // A table of an extension may well be empty.
    add(stream.findings);
    return stream.value ? std::move(*stream.value) : nullptr;
  };

  TableForm form;
  if (state_->declared) {
    form = state_->form();
    options.form = &form;
  }
  std::optional<DarwinJoin> join;
  if (state_->has_extensions()) {
    join.emplace(options.characters);
    bool sound = true;
    for (std::size_t part = 0; part < meta.core.files.size() && sound; ++part) {
      auto const stream = open_table(meta.core.files[part]);
      sound =
          stream && join->add_core(*stream, state_->shown(meta.core.files[part]), meta.core, part);
    }
    for (auto const& extension : meta.extensions) {
      if (!State::is_used(extension)) continue;
      for (auto const& file : extension.files) {
        if (!sound) break;
        auto const stream = open_table(file);
        sound = stream && join->add_extension(*stream, state_->shown(file), extension, on_reject);
      }
    }
    sound = sound && join->join();
    if (!sound) {
      add(join->findings());
      return loaded;
    }
    options.join = &*join;
  }

  OccurrenceCounts counts;
  for (std::size_t part = 0; part < meta.core.files.size(); ++part) {
    auto const& file = meta.core.files[part];
    auto const stream = open_table(file);
    if (!stream) return loaded;
    if (join) join->begin_part(part);
    OccurrenceReader reader{*stream, state_->shown(file), options};
    bool stopped = false;
    bool failed = false;
    for (bool more = true; more;) {
      switch (reader.next()) {
        case OccurrenceReader::Next::specimen:
          if (on_specimen && !on_specimen(reader.specimen())) {
            stopped = true;
            more = false;
          }
          break;
        case OccurrenceReader::Next::reject:
          if (on_reject) on_reject(reader.reject());
          break;
        case OccurrenceReader::Next::failed:
          failed = true;
          more = false;
          break;
        case OccurrenceReader::Next::end:
          more = false;
          break;
      }
    }
    auto const found = reader.findings();
    add(found);
    if (failed || has_error(found)) return loaded;
    auto const& one = reader.counts();
    counts.rows += one.rows;
    counts.specimens += one.specimens;
    counts.rejected += one.rejected;
    counts.without_name += one.without_name;
    counts.repeated_numbers += one.repeated_numbers;
    if (stopped) break;
  }
  if (join) {
    auto const found = join->findings();
    add(found);
    state_->counts = join->counts();
    if (has_error(found)) return loaded;
  }
  loaded.value = counts;
  return loaded;
}

std::optional<Loaded<DarwinArchive::PlainCore>> DarwinArchive::plain_core() const {
  if (state_->has_extensions() || state_->meta.core.files.size() != 1) return std::nullopt;
  auto const& file = state_->meta.core.files.front();
  auto stream = state_->open_table(file);
  Loaded<PlainCore> core;
  core.findings = std::move(stream.findings);
  if (!stream.value) return core;
  core.value.emplace();
  core.value->stream = std::move(*stream.value);
  core.value->name = state_->shown(file);
  if (state_->declared) core.value->form = state_->form();
  return core;
}

ArchiveCounts const& DarwinArchive::counts() const { return state_->counts; }

}  // namespace keydrift
