// Exit statuses, and what the terminal text may hold: 80 cells a line, no escape sequence in a pipe
// nor under NO_COLOR.

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>
#include <utf8proc.h>

#include <array>
#include <cstdlib>
#include <optional>

#include "golden.hpp"
#include "planted_support.hpp"

namespace keydrift::test {
namespace {

constexpr char kEscape = '\x1b';

std::size_t cell_count(std::string const& line) {
  std::size_t cells = 0;
  auto const* at = reinterpret_cast<utf8proc_uint8_t const*>(line.data());
  auto left = static_cast<utf8proc_ssize_t>(line.size());
  while (left > 0) {
    utf8proc_int32_t point = 0;
    auto const read = utf8proc_iterate(at, left, &point);
    if (read <= 0) {
      ADD_FAILURE() << "no UTF-8: " << line;
      return cells;
    }
    cells += static_cast<std::size_t>(utf8proc_charwidth(point));
    at += read;
    left -= read;
  }
  return cells;
}

void expect_narrow(std::string const& text, std::size_t width) {
  EXPECT_FALSE(text.empty());
  for (auto const& line : lines_of(text)) {
    EXPECT_LE(cell_count(line), width) << line;
    EXPECT_TRUE(line.empty() || (line.back() != ' ' && line.back() != '\r')) << line << "|";
  }
}

// Runs keydrift in the folder with all three streams on a terminal of the given width; what it
// printed, whichever stream it went to; nothing where the system has no pseudo-terminals (a bare
// chroot without /dev/pts).
std::optional<std::string> on_a_terminal(std::vector<std::string> const& arguments,
                                         std::filesystem::path const& folder,
                                         unsigned short columns, char const* no_colour) {
  int const main_end = ::posix_openpt(O_RDWR | O_NOCTTY);
  if (main_end < 0 || ::grantpt(main_end) != 0 || ::unlockpt(main_end) != 0) {
    return std::nullopt;
  }
  std::string const terminal = ::ptsname(main_end);
  std::vector<char*> argv{const_cast<char*>(KEYDRIFT_BINARY)};
  for (auto const& word : arguments) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  int const end = ::open(terminal.c_str(), O_RDWR | O_NOCTTY);
  winsize const size{24, columns, 0, 0};
  EXPECT_EQ(::ioctl(end, TIOCSWINSZ, &size), 0);
  pid_t const child = ::fork();
  if (child == 0) {
    for (int const stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) ::dup2(end, stream);
    ::close(end);
    ::close(main_end);
    if (::chdir(folder.c_str()) != 0) ::_exit(126);
    ::setenv("TERM", "xterm", 1);
    if (no_colour == nullptr) {
      ::unsetenv("NO_COLOR");
    } else {
      ::setenv("NO_COLOR", no_colour, 1);
    }
    ::execv(KEYDRIFT_BINARY, argv.data());
    ::_exit(127);
  }
  ::close(end);
  std::string text;
  std::array<char, 65536> buffer{};
  // Reading fails once the last process has closed its end.
  for (ssize_t got = 0; (got = ::read(main_end, buffer.data(), buffer.size())) > 0;) {
    text.append(buffer.data(), static_cast<std::size_t>(got));
  }
  ::close(main_end);
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) <= 1) << text;
  return text;
}

std::vector<std::string> crayfish_collation() {
  return {"collate",    "edition-2001.txt", "edition-2019.txt", "--lexicon",  "lexicon.csv",
          "--concepts", "concepts.csv",     "--parents",        "parents.csv"};
}

std::vector<std::string> crayfish_arguments() {
  return {"redetermine", "edition-2001.txt", "edition-2019.txt", "specimens.csv",
          "--lexicon",   "lexicon.csv",      "--concepts",       "concepts.csv",
          "--parents",   "parents.csv",      "--look-alikes",    "look-alikes.csv"};
}

std::vector<std::string> velunaceae_collation(std::string const& old_year,
                                              std::string const& new_year) {
  return {"collate",
          "edition-" + old_year + ".txt",
          "edition-" + new_year + ".txt",
          "--lexicon",
          "lexicon.csv",
          "--concepts",
          "concepts-" + old_year + "-" + new_year + ".csv",
          "--parents",
          "parents.csv"};
}

std::vector<std::string> with(std::vector<std::string> words,
                              std::vector<std::string> const& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

TEST(PlantedStatus, CollatingAnEditionWithItselfIs0AndWithAnotherIs1) {
  auto const folder = fixture("velunaceae");
  for (std::string const year : {"1974", "1998", "2024"}) {
    auto const same =
        run_keydrift({"collate", "edition-" + year + ".txt", "edition-" + year + ".txt"}, folder);
    EXPECT_EQ(same.exit, 0) << same.out;
    EXPECT_NE(same.out.find("The meaning of the key does not change"), std::string::npos)
        << same.out;
  }
  EXPECT_EQ(run_keydrift(velunaceae_collation("1998", "2024"), folder).exit, 1);
  EXPECT_EQ(run_keydrift(velunaceae_collation("1974", "1998"), folder).exit, 1);
  EXPECT_EQ(run_keydrift(crayfish_collation(), fixture("halvern-crayfish")).exit, 1);
}

TEST(PlantedStatus, RedetermineIs1ForAFailingVoucherOnlyWhenAsked) {
  auto const folder = fixture("halvern-crayfish");
  EXPECT_EQ(run_keydrift(crayfish_arguments(), folder).exit, 0);
  EXPECT_EQ(run_keydrift(with(crayfish_arguments(), {"--check-vouchers"}), folder).exit, 1);
}

TEST(PlantedStatus, RedetermineIs0WhenEveryVoucherKeysOutToItsName) {
  // Under the edition that they were named by.
  std::vector<std::string> const arguments{"redetermine",   "edition-2001.txt", "edition-2001.txt",
                                           "specimens.csv", "--lexicon",        "lexicon.csv",
                                           "--parents",     "parents.csv",      "--check-vouchers"};
  auto const ran = run_keydrift(arguments, fixture("halvern-crayfish"));
  EXPECT_EQ(ran.exit, 0) << ran.out;
  // With all specimens for vouchers the doubtful ones fail.
  EXPECT_EQ(run_keydrift(with(arguments, {"--all-are-vouchers"}), fixture("halvern-crayfish")).exit,
            1);
}

TEST(PlantedTerminal, NoLineOfARedeterminationIsWiderThan80Cells) {
  expect_narrow(velunaceae().ran.out, 80);
  expect_narrow(run_keydrift(crayfish_arguments(), fixture("halvern-crayfish")).out, 80);
}

TEST(PlantedTerminal, NoLineOfACollationIsWiderThan80Cells) {
  for (std::vector<std::string> const& more : {std::vector<std::string>{}, {"--every-couplet"}}) {
    expect_narrow(
        run_keydrift(with(velunaceae_collation("1998", "2024"), more), fixture("velunaceae")).out,
        80);
    expect_narrow(
        run_keydrift(with(velunaceae_collation("1974", "1998"), more), fixture("velunaceae")).out,
        80);
    expect_narrow(run_keydrift(with(crayfish_collation(), more), fixture("halvern-crayfish")).out,
                  80);
  }
}

TEST(PlantedTerminal, NoLineOfAProofOrAKeyoutIsWiderThan80Cells) {
  for (std::string const year : {"1974", "1998", "2024"}) {
    expect_narrow(run_keydrift({"proof", "edition-" + year + ".txt", "--lexicon", "lexicon.csv"},
                               fixture("velunaceae"))
                      .out,
                  80);
  }
}

TEST(PlantedTerminal, TheWidthThatIsAskedForIsKept) {
  for (std::string const width : {"60", "100"}) {
    expect_narrow(
        run_keydrift(with(crayfish_arguments(), {"--width", width}), fixture("halvern-crayfish"))
            .out,
        std::stoul(width));
    expect_narrow(
        run_keydrift(with(crayfish_collation(), {"--width", width}), fixture("halvern-crayfish"))
            .out,
        std::stoul(width));
  }
}

TEST(PlantedTerminal, AsciiMeansAsciiWhenTheInputIs) {
  auto const ran = run_keydrift(
      {"collate", "edition-a.txt", "edition-b.txt", "--lexicon", "lexicon.csv", "--ascii"},
      fixture("two-editions"));
  EXPECT_EQ(ran.exit, 1);
  for (auto const& line : lines_of(ran.out)) {
    for (char const c : line) {
      if (static_cast<unsigned char>(c) < 0x80) continue;
      ADD_FAILURE() << line;
      break;
    }
  }
}

TEST(PlantedTerminal, APipeGetsNoEscapeSequences) {
  EXPECT_EQ(velunaceae().ran.out.find(kEscape), std::string::npos);
  EXPECT_EQ(velunaceae().ran.err.find(kEscape), std::string::npos);
  EXPECT_EQ(velunaceae().ran.err.find('\r'), std::string::npos);
  auto const ran = run_keydrift(velunaceae_collation("1998", "2024"), fixture("velunaceae"));
  EXPECT_EQ(ran.out.find(kEscape), std::string::npos);
  EXPECT_EQ(ran.err, "");
}

TEST(PlantedTerminal, ATerminalGetsFacesAndNoColorTakesThemAway) {
  auto const folder = fixture("halvern-crayfish");
  auto const piped = run_keydrift(crayfish_collation(), folder).out;
  auto const shown = on_a_terminal(crayfish_collation(), folder, 80, nullptr);
  if (!shown) GTEST_SKIP() << "this system gives no pseudo-terminal";
  auto const& faced = *shown;
  EXPECT_NE(faced.find("\x1b["), std::string::npos);
  // An empty NO_COLOR is none (no-color.org).
  EXPECT_EQ(on_a_terminal(crayfish_collation(), folder, 80, ""), faced);
  auto const plain = on_a_terminal(crayfish_collation(), folder, 80, "1").value_or("");
  EXPECT_EQ(plain.find(kEscape), std::string::npos) << plain;
  EXPECT_EQ(replaced(plain, "\r\n", "\n"), piped);
  // What the faces mark is marked in the words as well.
  auto bare = replaced(faced, "\r\n", "\n");
  for (auto const* face : {"\x1b[0m", "\x1b[1m", "\x1b[2m", "\x1b[4m"}) {
    bare = replaced(std::move(bare), face, "");
  }
  EXPECT_EQ(bare, piped);
}

TEST(PlantedTerminal, ANarrowTerminalGetsNarrowLines) {
  auto const text = on_a_terminal(crayfish_arguments(), fixture("halvern-crayfish"), 64, "1");
  if (!text) GTEST_SKIP() << "this system gives no pseudo-terminal";
  expect_narrow(replaced(*text, "\r\n", "\n"), 64);
}

TEST(PlantedTerminal, WhyACoupletHasItsCounterpartOrNone) {
  auto const why = [](std::string const& couplet) {
    return run_keydrift(
        {"collate", "edition-1998.txt", "edition-2024.txt", "--lexicon", "lexicon.csv",
         "--concepts", "concepts-1998-2024.csv", "--parents", "parents.csv", "--why", couplet},
        fixture("velunaceae"));
  };
  auto const both = why("11");  // moved in 1998, inserted in 2024
  EXPECT_EQ(both.exit, 1);
  EXPECT_EQ(both.err, "");
  expect_narrow(both.out, 80);
  expect_golden("program/collate-why.txt", both.out);
  auto const nobody = why("77");
  EXPECT_EQ(nobody.exit, 2);
  EXPECT_EQ(nobody.out, "");
  EXPECT_EQ(
      nobody.err,
      "keydrift collate: --why 77: no couplet of either edition bears that number; give it as "
      "printed, without the letter of a lead\n");
}

}  // namespace
}  // namespace keydrift::test
