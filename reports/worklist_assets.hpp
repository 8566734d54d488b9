#pragma once
// The style sheet of the printed worklist.  Internal to reports.
//
// The page's policy allows exactly this by its SHA-256; tests/reports/worklist_html_test recomputes
// it, so whoever edits a line here is told the new value.

#include <string_view>

namespace keydrift::reports {

inline constexpr std::string_view kWorklistStyleHash =
    "sha256-0uvc0Nmxcl1isUuNyUa60q2XAImJtGuSJPGqwG81j0M=";

// Lines of a sheet never part between pages, and a group's heading stays with its first sheet: the
// question and the place are in the head of the table, which every page that continues it repeats.
// The page is left to the printer (A4 or Letter); only its margins are asked for.
inline constexpr std::string_view kWorklistStyle = R"css(
@page { margin: 14mm 12mm 16mm;
  @bottom-right { content: counter(page) " / " counter(pages); font: 8pt "DejaVu Serif", Georgia, serif; color: #444; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 62rem; padding: 1.5rem 1rem 3rem; color: #111; background: #fff;
  font: 10pt/1.3 "Libertinus Serif", "Linux Libertine O", Palatino, "DejaVu Serif", Georgia, serif; }
h1 { font-size: 1.5em; font-weight: normal; margin: 0 0 .3rem; }
h2 { font-size: 1.15em; margin: 1.4rem 0 0; padding-top: .3rem; border-top: 2px solid #111; break-after: avoid; }
p { margin: .2rem 0; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; break-inside: auto; margin-top: .5rem; }
thead { display: table-header-group; }
th { text-align: left; font-size: .8em; font-weight: normal; font-style: italic; color: #444; padding: 0 .5rem .1rem 0; }
td { vertical-align: top; border-top: 1px solid #999; padding: .35rem .5rem .35rem 0; }
tr { break-inside: avoid; }
.q { font-size: 1em; color: #111; padding-bottom: .3rem; }
.p { font-style: normal; text-align: right; vertical-align: top; padding-right: 0; overflow-wrap: break-word; }
col:nth-child(1) { width: 15.5%; }
col:nth-child(2) { width: 20%; }
col:nth-child(3) { width: 37%; }
col:nth-child(4) { width: 13.5%; }
col:nth-child(5) { width: 6%; }
col:nth-child(6) { width: 8%; }
.n { font-weight: bold; overflow-wrap: break-word; }
.s { font-style: italic; overflow-wrap: break-word; }
.s b { font-style: normal; font-size: .85em; display: block; }
.a span { display: inline-block; margin-right: .6rem; max-width: 100%; overflow-wrap: break-word; }
.a i { display: inline-block; width: .85em; height: .85em; border: 1px solid #111; margin-right: .35em; vertical-align: -.08em; }
.f { border-bottom: 1px dotted #555; display: block; height: 1.2em; }
.key { font-size: .9em; }
)css";

}  // namespace keydrift::reports
