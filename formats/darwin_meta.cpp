#include "keydrift/formats/darwin_meta.hpp"

#include <algorithm>
#include <charconv>
#include <set>
#include <string_view>

#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/xml_document.hpp"
#include "keydrift/key/fold.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift {
namespace {

// "\t", "\n", "\\" … as the guide writes them; a real tab or line end that XML made a blank.
std::string unescaped(std::string_view printed) {
  std::string out;
  for (std::size_t i = 0; i < printed.size(); ++i) {
    if (printed[i] != '\\' || i + 1 == printed.size()) {
      out += printed[i];
      continue;
    }
    char const next = printed[++i];
    switch (next) {
      case 't':
        out += '\t';
        break;
      case 'n':
        out += '\n';
        break;
      case 'r':
        out += '\r';
        break;
      case 'f':
        out += '\f';
        break;
      default:
        out += next;
        break;
    }
  }
  return out;
}

class MetaReader {
 public:
  explicit MetaReader(xml::Document const& document) : document_{document} {}

  Loaded<Meta> read() {
    Loaded<Meta> loaded;
    Meta meta;
    bool core = false;
    for (auto const node : document_.root().children()) {
      auto const name = xml::local_name(node);
      if (name == "core" || (name == "table" && !core)) {
        if (core) {
          add("no-core", Severity::error, node, "the archive declares a second core",
              "keep one core; every other table is an extension");
          continue;
        }
        core = true;
        meta.core = read_table(node, "id");
      } else if (name == "extension") {
        meta.extensions.push_back(read_table(node, "coreid"));
      }
    }
    if (!core) {
      add("no-core", Severity::error, document_.root(), "meta.xml declares no core table",
          "check that the archive is complete");
    } else if (!meta.extensions.empty() && !meta.core.id) {
      add("no-core-id", Severity::warning, document_.root(),
          "the core has no id, so that its extensions cannot be joined to it",
          "give the core an element \"id\" with the column of its key");
      meta.extensions.clear();
    }
    loaded.findings = std::move(findings_);
    if (!tables::has_error(loaded.findings)) loaded.value = std::move(meta);
    return loaded;
  }

 private:
  void add(std::string code, Severity severity, pugi::xml_node node, std::string message,
           std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = document_.name();
    finding.place = document_.place(node);
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    findings_.push_back(std::move(finding));
  }

  static std::optional<std::string> attribute(pugi::xml_node node, char const* name) {
    auto const found = node.attribute(name);
    if (!found) return std::nullopt;
    return std::string{found.value()};
  }

  std::optional<std::size_t> index_of(pugi::xml_node node) {
    auto const printed = attribute(node, "index");
    if (!printed) return std::nullopt;
    std::size_t index = 0;
    auto const* const end = printed->data() + printed->size();
    auto const [stop, error] = std::from_chars(printed->data(), end, index);
    constexpr std::size_t kMost = 10'000;
    if (error != std::errc{} || stop != end || index >= kMost) {
      add("bad-index", Severity::error, node, in_quotes(*printed) + " is no index of a column",
          "write a whole number; the first column is 0");
      return std::nullopt;
    }
    return index;
  }

  MetaTable read_table(pugi::xml_node node, char const* id_name) {
    MetaTable table;
    table.place = document_.place(node);
    auto const type = attribute(node, "rowType").value_or("");
    table.row_type = type.substr(std::min(type.find_last_of("/#") + 1, type.size()));
    read_form(node, table);
    std::set<std::string> terms;
    for (auto const child : node.children()) {
      auto const name = xml::local_name(child);
      if (name == "files") {
        for (auto const location : child.children()) {
          auto const kind = xml::local_name(location);
          if (kind == "location" || kind == "file") add_file(location, table);
        }
      } else if (name == id_name) {
        table.id = index_of(child);
      } else if (name == "field") {
        add_field(child, table, terms);
      }
    }
    if (table.files.empty()) {
      add("no-files", Severity::error, node, "the table names no file",
          "name it in the elements \"files\" and \"location\"");
    }
    return table;
  }

  void read_form(pugi::xml_node node, MetaTable& table) {
    auto const separator = unescaped(attribute(node, "fieldsTerminatedBy").value_or(","));
    if (separator.size() == 1) {
      // A real tab in an attribute reaches us as a blank (XML 1.0, 3.3.3).
      table.separator = separator == " " ? '\t' : separator.front();
    } else {
      add("unsupported-separator", Severity::error, node,
          "the cells are parted by " + in_quotes(separator) + ", and one character is read",
          "write the tables anew, with tabs between the cells");
    }
    auto const quote = unescaped(attribute(node, "fieldsEnclosedBy").value_or("\""));
    if (quote.empty()) {
      table.quote.reset();
    } else if (quote.size() == 1) {
      table.quote = quote.front();
    } else {
      add("unsupported-separator", Severity::error, node,
          "cells are enclosed by " + in_quotes(quote) + ", and one character is read",
          "write the tables anew, with double quotes or with nothing around the cells");
    }
    auto const line_end = unescaped(attribute(node, "linesTerminatedBy").value_or("\n"));
    if (line_end.find_first_not_of("\r\n ") != std::string::npos) {
      add("unsupported-separator", Severity::error, node,
          "lines end with " + in_quotes(line_end) + ", and line ends of text are read",
          "write the tables anew, one record a line");
    }
    auto const encoding = fold_words(attribute(node, "encoding").value_or("utf-8"));
    static constexpr std::array<std::string_view, 14> kRead{
        "",         "utf-8", "utf8",   "utf-16",     "utf16",     "utf-16le",     "utf-16be",
        "us-ascii", "ascii", "latin1", "iso-8859-1", "iso8859-1", "windows-1252", "cp1252"};
    if (!is_one_of(kRead, encoding)) {
      add("unsupported-encoding", Severity::error, node,
          "the encoding " + in_quotes(attribute(node, "encoding").value_or("")) + " is not read",
          "write the tables anew in UTF-8");
    }
    auto const lines = attribute(node, "ignoreHeaderLines").value_or("0");
    std::uint64_t count = 0;
    auto const [stop, error] = std::from_chars(lines.data(), lines.data() + lines.size(), count);
    if ((error != std::errc{} || stop != lines.data() + lines.size()) && !lines.empty()) {
      add("bad-index", Severity::error, node,
          "ignoreHeaderLines is " + in_quotes(lines) + ", which is no number of lines",
          "write a whole number");
    }
    table.header_lines = count;
  }

  void add_file(pugi::xml_node node, MetaTable& table) {
    std::string path{tables::trimmed(node.child_value())};
    std::replace(path.begin(), path.end(), '\\', '/');
    while (path.substr(0, 2) == "./") path.erase(0, 2);
    if (path.find("://") != std::string::npos) {
      add("remote-table", Severity::error, node,
          "the table " + in_quotes(path) + " lies on another machine, and nothing is fetched",
          "download it, put it beside meta.xml, and write its name there");
      return;
    }
    bool out = path.empty() || path.front() == '/' || (path.size() > 1 && path[1] == ':');
    for (std::string_view rest = path; !rest.empty() && !out;) {
      auto const slash = std::min(rest.find('/'), rest.size());
      out = rest.substr(0, slash) == "..";
      rest.remove_prefix(std::min(slash + 1, rest.size()));
    }
    if (out) {
      add("unsafe-path", Severity::error, node,
          "the location " + in_quotes(path) + " leads out of the archive",
          "check where the archive comes from");
      return;
    }
    table.files.push_back(std::move(path));
  }

  void add_field(pugi::xml_node node, MetaTable& table, std::set<std::string>& terms) {
    MetaField field;
    field.index = index_of(node);
    field.term = attribute(node, "term").value_or("");
    field.default_value = attribute(node, "default").value_or("");
    field.delimited_by = attribute(node, "delimitedBy").value_or("");
    if (!field.index && field.default_value.empty()) {
      add("unmapped-field", Severity::warning, node,
          "the field " + in_quotes(field.term) + " has neither an index nor a default",
          "give it the index of its column");
      return;
    }
    if (!terms.insert(tables::term_key(field.term)).second) {
      add("duplicate-term", Severity::warning, node,
          "the field " + in_quotes(field.term) + " is declared twice; the first one counts",
          "remove one of the two");
      return;
    }
    table.fields.push_back(std::move(field));
  }

  xml::Document const& document_;
  std::vector<Finding> findings_;
};

}  // namespace

Loaded<Meta> read_meta(Source source) {
  Loaded<Meta> loaded;
  auto document = xml::parse(source);
  if (!document.value) {
    loaded.findings = std::move(document.findings);
    return loaded;
  }
  loaded = MetaReader{*document.value}.read();
  loaded.findings.insert(loaded.findings.begin(), document.findings.begin(),
                         document.findings.end());
  return loaded;
}

}  // namespace keydrift
