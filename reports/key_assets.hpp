#pragma once
// The style sheet of a key's HTML page.  Internal to reports.
//
// The page's policy allows exactly this by its SHA-256; tests/reports/key_html_test recomputes it,
// so whoever edits a line here is told the new value.

#include <string_view>

namespace keydrift::reports {

inline constexpr std::string_view kKeyStyleHash =
    "sha256-cNfAxsiL8U2roJBL5Lp5XmLy+2R+QpyB73bErn6zN2g=";

// Dot leaders: a row of dots begins behind the words' last line and is cut off by the lead's box;
// the destination floats at the right end of that line, or of the next where it does not fit, and
// covers the dots beneath it.
inline constexpr std::string_view kKeyStyle = R"css(
:root { --ink: #1b1a17; --faint: #6b675e; --rule: #b9b3a4; --paper: #fffefb; --tint: #f4f1e8; --label: 2.6rem; }
.refs { --label: 4.4rem; }
* { box-sizing: border-box; }
html { background: var(--tint); }
body { margin: 0 auto; max-width: 48rem; min-height: 100vh; padding: 2.5rem clamp(1rem, 5vw, 4rem) 4rem; background: var(--paper);
  color: var(--ink); font: 1.02rem/1.45 "Libertinus Serif", "Linux Libertine O", Palatino, "Palatino Linotype",
  "Book Antiqua", "DejaVu Serif", Georgia, serif; font-variant-numeric: lining-nums; overflow-wrap: break-word; }
h1 { font-size: 1.7em; font-weight: normal; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.2em; font-weight: normal; font-variant: small-caps; letter-spacing: .05em; margin: 2.4rem 0 .8rem; }
a { color: inherit; text-decoration: none; }
a:hover, a:focus { text-decoration: underline; text-underline-offset: .15em; }
.by { color: var(--faint); font-style: italic; margin: 0 0 1.2rem; }
.front { margin: 0 0 2rem; padding: .6rem 0; border-top: 1px solid var(--rule); border-bottom: 1px solid var(--rule); font-size: .9em; }
.front div { display: flex; gap: .8rem; padding: .1rem 0; }
.front dt { flex: 0 0 5.2rem; font-style: italic; color: var(--faint); }
.front dd { margin: 0; min-width: 0; }
.between { margin: 1.4rem 0 .6rem; }
.c { margin: 0 0 .8rem; break-inside: avoid; scroll-margin-top: 1rem; }
.c:target { background: var(--tint); box-shadow: 0 0 0 .35rem var(--tint); --paper: var(--tint); }
.lead { position: relative; overflow: hidden; margin: .1rem 0; padding-left: var(--label); }
.l { position: absolute; left: 0; top: 0; width: calc(var(--label) - .5rem); }
.l.wide { position: static; margin-left: calc(-1 * var(--label)); margin-right: .5rem; }
.back { font-size: .88em; color: var(--faint); white-space: nowrap; }
.t::after { content: " . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . . .";
  position: absolute; white-space: pre; color: var(--faint); letter-spacing: .08em; }
.d { float: right; position: relative; z-index: 1; max-width: 100%; margin-left: 1.6em; padding-left: .4em; background: var(--paper); text-align: right;
  -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.d a { padding-left: .6em; }
.note { margin: .1rem 0 .2rem; padding-left: calc(var(--label) + 1.2rem); text-indent: -1.2rem; font-size: .92em; }
footer { margin-top: 2.4rem; padding-top: .6rem; border-top: 1px solid var(--rule); font-size: .9em; }
@media (max-width: 34rem) { :root { --label: 2.2rem; } .refs { --label: 3.6rem; } body { font-size: 1rem; padding-top: 1.2rem; } .front div { display: block; } }
@media print { :root { --paper: #fff; --tint: #fff; } html, body { background: #fff; } body { max-width: none; padding: 0; font-size: 10pt; min-height: 0; }
  .c:target { box-shadow: none; } h2 { break-after: avoid; } a:hover { text-decoration: none; } @page { margin: 18mm 17mm; } }
)css";

}  // namespace keydrift::reports
