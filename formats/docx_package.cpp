#include "keydrift/formats/docx_package.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "keydrift/formats/docx_xml.hpp"
#include "keydrift/formats/packed_file.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::docx {
namespace {

constexpr std::size_t kMostMargins = 64;  // parts; only whether they say anything matters

Finding damaged(std::string_view file, std::string message) {
  Finding finding;
  finding.code = "damaged-manuscript";
  finding.severity = Severity::error;
  finding.file = std::string{file};
  finding.message = std::move(message);
  finding.remedy = "open it in a word processor, save it again as .docx, or as plain text (UTF-8)";
  return finding;
}

struct Relationship {
  std::string kind;    // last word of its type: "styles"
  std::string target;  // name of the entry
};

// "word" and "../media/a.png" give "media/a.png".
std::string resolved(std::string_view folder, std::string_view target) {
  std::string name = target.substr(0, 1) == "/" ? "" : std::string{folder};
  while (!target.empty()) {
    auto const slash = target.find('/');
    auto const step = target.substr(0, slash);
    if (step == "..") {
      auto const last = name.rfind('/');
      name.erase(last == std::string::npos ? 0 : last);
    } else if (!step.empty() && step != ".") {
      if (!name.empty()) name += '/';
      name += step;
    }
    if (slash == std::string_view::npos) break;
    target.remove_prefix(slash + 1);
  }
  return name;
}

std::string_view folder_of(std::string_view name) {
  auto const slash = name.rfind('/');
  return slash == std::string_view::npos ? std::string_view{} : name.substr(0, slash);
}

class Opener {
 public:
  Opener(Source source, ReadLimits const& limits, PackedFile const& file,
         std::vector<Finding>& findings)
      : source_{source}, limits_{limits}, file_{file}, findings_{findings} {
    limits_.bytes = limits.unpacked_bytes;  // the archive has seen to it already
  }

  std::optional<Package> open() {
    auto const name = main_name();
    auto main = part(name);
    if (!main) return std::nullopt;
    if (xml::local_name(main->root()) != "document" || !child(main->root(), "body")) {
      findings_.push_back(
          damaged(source_.name, "its part " + in_quotes(name) + " is no text of a manuscript"));
      return std::nullopt;
    }
    Package package{.main = *std::move(main),
                    .styles = {},
                    .numbering = {},
                    .footnotes = {},
                    .endnotes = {},
                    .comments = {},
                    .margins = {}};
    bool sound = true;
    for (auto const& [kind, target] : relationships(name)) {
      auto* const home = home_of(package, kind);
      bool const margin = kind == "header" || kind == "footer";
      if ((home == nullptr || home->has_value()) && !margin) continue;
      if (margin && package.margins.size() >= kMostMargins) continue;
      auto read = part(target);
      sound = sound && read;
      if (!read) continue;
      if (margin) {
        package.margins.push_back(*std::move(read));
      } else {
        *home = std::move(read);
      }
    }
    if (!sound || failed_) return std::nullopt;
    return package;
  }

 private:
  static std::optional<xml::Document>* home_of(Package& package, std::string_view kind) {
    if (kind == "styles") return &package.styles;
    if (kind == "numbering") return &package.numbering;
    if (kind == "footnotes") return &package.footnotes;
    if (kind == "endnotes") return &package.endnotes;
    if (kind == "comments") return &package.comments;
    return nullptr;
  }

  std::string main_name() {
    for (auto const& [kind, target] : relationships("")) {
      if (kind == "officeDocument") return target;
    }
    return "word/document.xml";  // the usual name
  }

  // Of the part of that name, or of the package ("").  A package may do without any.
  std::vector<Relationship> relationships(std::string const& of) {
    auto const folder = folder_of(of);
    auto const file = folder.empty() ? of : of.substr(folder.size() + 1);
    auto const name = std::string{folder} + (folder.empty() ? "" : "/") + "_rels/" + file + ".rels";
    std::vector<Relationship> found;
    if (!file_.find(name)) return found;
    auto const read = part(name);
    failed_ = failed_ || !read;
    if (!read) return found;
    for (auto const node : read->root().children()) {
      if (xml::local_name(node) != "Relationship") continue;
      auto const type = attribute(node, "Type").value_or("");
      if (attribute(node, "TargetMode") == "External") continue;
      found.push_back({std::string{type.substr(type.rfind('/') + 1)},
                       resolved(folder, attribute(node, "Target").value_or(""))});
    }
    return found;
  }

  std::optional<xml::Document> part(std::string const& name) {
    auto const entry = file_.find(name);
    if (!entry) {
      findings_.push_back(damaged(source_.name, "its part " + in_quotes(name) + " is missing"));
      return std::nullopt;
    }
    auto bytes = file_.read(*entry);
    std::move(bytes.findings.begin(), bytes.findings.end(), std::back_inserter(findings_));
    if (!bytes) return std::nullopt;
    auto const shown = std::string{source_.name} + " (" + file_.entries()[*entry].name + ")";
    auto parsed = xml::parse({.name = shown, .bytes = *bytes.value}, limits_);
    std::move(parsed.findings.begin(), parsed.findings.end(), std::back_inserter(findings_));
    return std::move(parsed.value);
  }

  Source source_;
  ReadLimits limits_;
  PackedFile const& file_;
  std::vector<Finding>& findings_;
  bool failed_{false};
};

}  // namespace

Loaded<Package> open_package(Source source, ReadLimits const& limits) {
  Loaded<Package> loaded;
  auto file = PackedFile::open(source, limits);
  loaded.findings = std::move(file.findings);
  if (!file) return loaded;
  loaded.value = Opener{source, limits, *file.value, loaded.findings}.open();
  return loaded;
}

}  // namespace keydrift::docx
