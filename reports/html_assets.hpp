#pragma once
// The style sheet and script of the HTML reports.  Internal to reports.
//
// The page's policy allows exactly these two by their SHA-256; reports/html_test recomputes both,
// so whoever edits a line here is told the new value.

#include <string_view>

namespace keydrift::reports {

inline constexpr std::string_view kHtmlStyleHash =
    "sha256-DJQR6/06du2tJbYOiYIztQzzRLuW/n8sAgKgq7ypRQI=";
inline constexpr std::string_view kHtmlScriptHash =
    "sha256-TRZm7Q1EviyT5a0R2sEJnm+40KIuxdCwEySAM28i7Lo=";

inline constexpr std::string_view kHtmlStyle = R"css(
:root { --ink: #1b1a17; --faint: #6b675e; --rule: #b9b3a4; --paper: #fffefb; --tint: #f4f1e8; }
* { box-sizing: border-box; }
html { background: var(--tint); }
body { margin: 0 auto; max-width: 76rem; padding: 2.5rem clamp(1rem, 4vw, 4rem) 4rem; background: var(--paper);
  color: var(--ink); font: 1rem/1.45 "Libertinus Serif", "Linux Libertine O", Palatino, "Palatino Linotype",
  "Book Antiqua", "DejaVu Serif", Georgia, serif; font-variant-numeric: oldstyle-nums; }
h1 { font-size: 1.9em; font-weight: normal; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.25em; font-weight: normal; letter-spacing: .06em; font-variant: small-caps; margin: 2.6rem 0 .8rem;
  padding-bottom: .2rem; border-bottom: 3px double var(--rule); }
h3 { font-size: 1.02em; font-style: italic; font-weight: normal; margin: 1.4rem 0 .4rem; }
p { margin: .4rem 0; max-width: 46rem; }
a { color: inherit; text-decoration-color: var(--rule); text-underline-offset: .15em; }
.sub { color: var(--faint); font-style: italic; }
.small { font-size: .88em; color: var(--faint); }
nav { display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; margin: 1.2rem 0 0; padding: .5rem 0; border-top: 1px solid var(--rule);
  border-bottom: 1px solid var(--rule); }
.caution { border: 1px solid var(--ink); padding: .6rem .9rem; margin: 1.2rem 0; max-width: 46rem; }
.filter { display: none; position: sticky; top: 0; z-index: 2; background: var(--paper); padding: .6rem 0; border-bottom: 1px solid var(--rule); }
.filter label { margin-right: .5rem; }
.filter input { font: inherit; width: min(28rem, 60%); padding: .25rem .5rem; border: 1px solid var(--faint); background: #fff; color: inherit; }
.filter output { margin-left: .8rem; color: var(--faint); font-style: italic; }
.js .filter { display: block; }
table { border-collapse: collapse; width: 100%; margin: .6rem 0; }
th { text-align: left; font-weight: normal; font-style: italic; color: var(--faint); border-bottom: 1px solid var(--rule);
  padding: .2rem .9rem .2rem 0; vertical-align: bottom; }
td { padding: .28rem .9rem .28rem 0; vertical-align: top; border-bottom: 1px solid #e6e1d4; }
th.n, td.n { text-align: right; white-space: nowrap; font-variant-numeric: lining-nums tabular-nums; }
caption { text-align: left; font-style: italic; color: var(--faint); padding-bottom: .2rem; }
.figures { max-width: 44rem; }
.figures > div { display: flex; align-items: baseline; gap: .4rem; }
.figures .dots { flex: 1 1 2rem; border-bottom: 1px dotted var(--faint); transform: translateY(-.25em); min-width: 1.5rem; }
.figures .n { font-variant-numeric: lining-nums tabular-nums; white-space: nowrap; }
.figures .m { flex: 0 0 1.2rem; text-align: center; }
.outcome-word { white-space: nowrap; }
.bar { display: inline-block; height: .55rem; background: var(--ink); min-width: 1px; vertical-align: baseline; }
.pair { display: grid; grid-template-columns: 2.2rem minmax(0, 1fr) minmax(0, 1fr); gap: 0 1.6rem; padding: .7rem 0 .8rem;
  border-bottom: 1px solid #e6e1d4; break-inside: avoid; }
.pair > .mark { font-size: 1.05rem; text-align: center; }
.pair > .told { grid-column: 2 / -1; font-style: italic; color: var(--faint); margin-bottom: .25rem; }
.pair .head { font-style: italic; color: var(--faint); }
.colheads { font-variant: small-caps; letter-spacing: .05em; border-bottom: 1px solid var(--rule); padding-bottom: .2rem; }
.lead { display: flex; flex-wrap: wrap; align-items: baseline; margin: .1rem 0; }
.lead .l { flex: 0 0 2.6rem; }
.lead .t { flex: 1 1 0; min-width: 0; padding-left: 0; }
.lead .t p { margin: 0; text-indent: 0; }
.lead .d { display: flex; flex: 1 0 100%; align-items: baseline; padding-left: 2.6rem; }
.lead .d::before { content: ""; flex: 1; border-bottom: 1px dotted var(--faint); margin-right: .4rem; transform: translateY(-.25em); }
.none { color: var(--faint); font-style: italic; }
ul.plain { list-style: none; padding: 0; margin: .3rem 0; }
ul.plain li { padding-left: 1.2rem; text-indent: -1.2rem; margin: .15rem 0; }
.sheets { font-size: .92em; }
.work { padding: .6rem 0 .7rem; border-bottom: 1px solid #e6e1d4; break-inside: avoid; }
.work h3 { margin: 0 0 .2rem; font-style: normal; }
.answers { margin: .1rem 0 .3rem 1.2rem; }
i.taxon { font-style: italic; }
details > summary { cursor: pointer; }
.hidden { display: none; }
footer { margin-top: 3rem; border-top: 3px double var(--rule); padding-top: .6rem; }
@media (max-width: 46rem) { .pair { grid-template-columns: 1.4rem minmax(0, 1fr); } .pair > .new { grid-column: 2; }
  .pair > .new::before { content: attr(data-edition); font-style: italic; color: var(--faint); } .colheads { display: none; } }
@media print { html { background: none; } body { max-width: none; padding: 0; font-size: 9.5pt; background: none; }
  nav, .filter, .js .filter { display: none; } h2 { break-after: avoid; margin-top: 1.4rem; } h3 { break-after: avoid; }
  tr, .lead { break-inside: avoid; } thead { display: table-header-group; } a { text-decoration: none; } .hidden { display: inherit; }
  details.route > summary { display: none; } details.route::details-content { content-visibility: visible; display: block; }
  @page { margin: 16mm 15mm; } }
)css";

inline constexpr std::string_view kHtmlScript = R"js(
(function () {
  var root = document.documentElement, box = document.getElementById("filter"), told = document.getElementById("told");
  if (!box) { return; }
  root.className = "js";
  var rows = [].slice.call(document.querySelectorAll("[data-row]")), texts = null, timer = 0;
  function apply() {
    if (!texts) { texts = rows.map(function (row) { return row.textContent.toLowerCase(); }); }
    var words = box.value.toLowerCase().split(/\s+/).filter(Boolean), shown = 0;
    rows.forEach(function (row, i) {
      var fits = words.every(function (word) { return texts[i].indexOf(word) >= 0; });
      row.classList.toggle("hidden", !fits);
      if (fits) { shown += 1; }
    });
    told.textContent = words.length ? shown + " of " + rows.length + " entries" : "";
  }
  box.addEventListener("input", function () { clearTimeout(timer); timer = setTimeout(apply, 80); });
  if (box.value) { apply(); }
})();
)js";

}  // namespace keydrift::reports
