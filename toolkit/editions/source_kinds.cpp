#include "keydrift/editions/source_kinds.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kKinds{
    FindingKind{
        "empty-file", Severity::error, "The file is empty",
        "There is nothing in it, or nothing but blanks. See whether this is the right file, and\n"
        "whether it was saved."},
    FindingKind{"is-a-directory", Severity::error, "A folder where a file is wanted",
                "Name the file inside it."},
    FindingKind{"no-such-file", Severity::error, "There is no such file",
                "The path leads to nothing. Near names in the same folder are proposed."},
    FindingKind{
        "no-such-path", Severity::error, "The revision has no such file",
        "The repository and the revision were found, the path was not: it may have borne another\n"
        "name at that time."},
    FindingKind{
        "no-such-repository", Severity::error, "There is no such repository",
        "In REPO@REVISION:PATH, REPO must be the folder of a git repository (its working tree, or\n"
        "a bare one)."},
    FindingKind{
        "no-such-revision", Severity::error, "There is no such revision",
        "In REPO@REVISION:PATH, REVISION is a tag, a branch or a commit of the repository."},
    FindingKind{"not-a-file", Severity::error, "The path names no file",
                "It is a folder or a submodule of the repository."},
    FindingKind{
        "too-large", Severity::error, "More bytes than are read",
        "Inputs are bounded, so that a wrong file cannot fill the memory. A key takes far less;\n"
        "where the input is meant to be that large, raise the limit."},
    FindingKind{"unreadable-file", Severity::error, "The file cannot be read",
                "The system refuses it: rights, disk or device."},
};

}  // namespace

std::span<FindingKind const> source_finding_kinds() { return kKinds; }

}  // namespace keydrift
