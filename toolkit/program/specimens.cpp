#include "keydrift/program/specimens.hpp"

#include <ostream>

#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/darwin_archive.hpp"
#include "keydrift/formats/measurements.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift::program {
namespace {

// Warnings of an archive are worth reading in full: each is given once, however many rows it means.
void print_archive_findings(Context& context, std::vector<Finding> const& findings) {
  for (auto const& finding : findings) {
    if (finding.severity != Severity::information) print_finding(context, finding);
  }
}

}  // namespace

namespace {

// What the report tells of a table by itself.
void take_counts(OccurrenceReader const& reader, ArchiveCounts* counts) {
  if (counts == nullptr) return;
  counts->repeated_ids = reader.counts().repeated_numbers;
  counts->repeats = reader.repeats();
}

bool run_darwin_archive(ArchiveRun const& run, OccurrenceOptions const& options, Context& context) {
  auto archive = DarwinArchive::open(run.path, context.limits);
  if (!run.quiet || has_error(archive.findings)) print_archive_findings(context, archive.findings);
  if (!archive.value) return false;
  bool stopped = false;
  auto const read = archive.value->read(
      options,
      [&](Specimen const& specimen) {
        run.on_specimen(specimen);
        stopped = run.stop && run.stop();
        return !stopped;
      },
      run.on_reject);
  if (run.counts != nullptr) *run.counts = archive.value->counts();
  if (stopped) return true;
  if (!run.quiet || has_error(read.findings)) print_archive_findings(context, read.findings);
  return read.value.has_value() && !has_error(read.findings);
}

}  // namespace

std::optional<bool> count_archive(ArchiveRun const& run, ThreadedRun const& threads,
                                  Context& context) {
  if (!run.measurements.empty()) return std::nullopt;
  OccurrenceOptions options;
  options.characters = run.characters;
  options.all_are_vouchers = run.all_are_vouchers;
  options.any_character = run.any_character;
  auto const count = [&](ByteStream& stream, std::string const& name) {
    OccurrenceReader reader{stream, name, options};
    bool const sound = count_specimens(reader, threads);
    take_counts(reader, run.counts);
    auto const findings = reader.findings();
    print_archive_findings(context, findings);
    return sound && !has_error(findings);
  };
  if (DarwinArchive::is_archive(run.path)) {
    auto const archive = DarwinArchive::open(run.path, context.limits);
    if (!archive.value) return std::nullopt;  // and it is told why
    auto core = archive.value->plain_core();
    if (!core) return std::nullopt;
    print_archive_findings(context, archive.findings);
    print_archive_findings(context, core->findings);
    if (!core->value) return false;
    if (core->value->form) options.form = &*core->value->form;
    return count(*core->value->stream, core->value->name);
  }
  auto stream = open_stream(run.path, stream_limits(context));
  print_archive_findings(context, stream.findings);
  if (!stream.value) return false;
  return count(**stream.value, run.path);
}

bool run_archive(ArchiveRun const& run, Context& context) {
  std::optional<MeasurementTable> measurements;
  if (!run.measurements.empty()) {
    auto stream = open_stream(run.measurements, stream_limits(context));
    print_archive_findings(context, stream.findings);
    if (!stream.value) return false;
    auto loaded = read_measurements(
        **stream.value, run.measurements,
        {.characters = run.any_character ? std::vector<std::string>{} : run.characters},
        run.on_reject);
    print_archive_findings(context, loaded.findings);
    if (!loaded.value) return false;
    measurements = std::move(*loaded.value);
  }
  OccurrenceOptions options;
  options.characters = run.characters;
  options.all_are_vouchers = run.all_are_vouchers;
  options.any_character = run.any_character;
  if (measurements) options.measurements = &*measurements;
  if (DarwinArchive::is_archive(run.path)) return run_darwin_archive(run, options, context);

  auto stream = open_stream(run.path, stream_limits(context));
  print_archive_findings(context, stream.findings);
  if (!stream.value) return false;
  OccurrenceReader reader{**stream.value, run.path, std::move(options)};
  bool sound = false;
  for (bool more = true; more;) {
    switch (reader.next()) {
      case OccurrenceReader::Next::specimen:
        run.on_specimen(reader.specimen());
        if (run.stop && run.stop()) return true;
        break;
      case OccurrenceReader::Next::reject:
        if (run.on_reject) run.on_reject(reader.reject());
        break;
      case OccurrenceReader::Next::end:
        sound = true;
        more = false;
        break;
      case OccurrenceReader::Next::failed:
        more = false;
        break;
    }
  }
  take_counts(reader, run.counts);
  auto const findings = reader.findings();
  if (!run.quiet || has_error(findings)) print_archive_findings(context, findings);
  return sound && !has_error(findings);
}

std::optional<Specimen> find_specimen(std::string const& path, std::string const& measurements,
                                      std::string const& catalog_number,
                                      std::vector<std::string> const& characters,
                                      Context& context) {
  std::optional<Specimen> found;
  std::vector<std::string> numbers;  // a few, for "did you mean"
  constexpr std::size_t kRemembered = 100'000;
  ArchiveRun run{.path = path,
                 .measurements = measurements,
                 .characters = characters,
                 .all_are_vouchers = false,
                 .any_character = false,
                 .on_specimen =
                     [&](Specimen const& specimen) {
                       if (specimen.catalog_number == catalog_number) found = specimen;
                       if (numbers.size() < kRemembered) numbers.push_back(specimen.catalog_number);
                     },
                 .on_reject = {},
                 .stop = [&] { return found.has_value(); }};
  if (!run_archive(run, context)) return std::nullopt;
  if (!found) {
    context.err << "keydrift: " << path << " has no specimen \"" << catalog_number << "\"\n";
    auto const near = did_you_mean(near_names(catalog_number, numbers));
    if (!near.empty()) context.err << "  " << near << '\n';
  }
  return found;
}

}  // namespace keydrift::program
