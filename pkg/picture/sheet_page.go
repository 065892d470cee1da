package picture

// sheetStyle is for the screen, light and dark, for a phone, and for A4.
const sheetStyle = `
:root { color-scheme: light dark; --ink: #1a1a1a; --faint: #5c5c5c; --paper: #ffffff; --line: #c4c4c4; --alarm: #b34700; }
@media screen and (prefers-color-scheme: dark) { :root { --ink: #ececec; --faint: #a8a8a8; --paper: #161616; --line: #4a4a4a; --alarm: #ee7a26; } }
body { margin: 0 auto; padding: 1rem; max-width: 56rem; font: 1rem/1.4 sans-serif; color: var(--ink); background: var(--paper); overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; margin: 0; }
h2 { font-size: 1.25rem; margin: 1.6rem 0 .4rem; border-bottom: 2px solid var(--ink); }
h3 { font-size: 1rem; margin: 1rem 0 .3rem; }
p { margin: .3rem 0; }
ul, ol { margin: .3rem 0; padding-left: 1.3rem; }
.boxes { list-style: none; padding: 0; }
.boxes li { margin: .35rem 0; padding-left: 1.7rem; }
.boxes input { width: 1.05rem; height: 1.05rem; margin: 0 .65rem 0 -1.7rem; vertical-align: -.15rem; }
.boxes b, .dates { white-space: nowrap; }
.note { display: block; color: var(--faint); font-size: .85rem; }
.alarm { border: 2px solid var(--alarm); border-left-width: .6rem; padding: .2rem .8rem; }
.alarm h2 { border: 0; margin: .3rem 0; }
.paper { display: none; }
figure { margin: .6rem 0; overflow-x: auto; }
figure svg { display: block; width: 100%; min-width: 38rem; height: auto; }
table { border-collapse: collapse; margin: .4rem 0; }
.wide { overflow-x: auto; }
th, td { text-align: left; padding: .12rem .7rem .12rem 0; border-bottom: 1px solid var(--line); vertical-align: top; overflow-wrap: normal; }
.broad svg { min-width: 50rem; }
@page { size: A4; margin: 11mm; }
@media print {
  :root { font-size: 8.5pt; }
  body { max-width: none; padding: 0; line-height: 1.25; }
  header h1 { font-size: 1.4rem; }
  header h1, header p, header .paper { display: inline; margin-right: .6em; }
  .screen { display: none; }
  section.paper { display: block; }
  .chart { break-after: page; }
  .chart h2 { display: none; }
  .columns { columns: 2; column-gap: 8mm; }
  .columns section:first-child h2 { margin-top: 0; }
  figure { overflow: visible; break-inside: avoid; margin: 0; }
  figure svg { min-width: 0; width: auto; max-width: 100%; max-height: 260mm; margin: 0 auto; }
  .boxes li, article, tr { break-inside: avoid; }
  .boxes li { margin: .2rem 0; padding-left: 1.5rem; }
  .boxes input { width: .9rem; height: .9rem; margin: 0 .6rem 0 -1.5rem; }
  .note { display: inline; }
  .wide { overflow: visible; }
  h2 { margin: 1.1rem 0 .3rem; }
  h3 { margin: .6rem 0 .2rem; }
  h2, h3 { break-after: avoid; }
  ol { padding-left: 2rem; }
  table { font-size: .94em; }
  th, td { padding: .05rem .4rem .05rem 0; white-space: nowrap; }
  td:first-child { white-space: normal; }
  td.place { white-space: normal; overflow-wrap: anywhere; }
}
`

const sheetHTML = `{{define "alarm"}}
<h2>In the way</h2>
<ul>
{{- range .Conflicts}}
<li>{{.Message}}</li>
{{- end}}
</ul>
{{- end}}<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>{{with .Keeper}}{{.}}: {{end}}season as planned on {{.On}}</title>
<style>` + sheetStyle + `</style>
</head>
<body>
<header>
<h1>{{with .Keeper}}{{.}}{{else}}Season{{end}}</h1>
<p>Season as planned on {{day .On}}</p>
{{- with .HowGood}}
<p>{{.}}.</p>
{{- end}}
{{- with .Conflicts}}
<p class="paper"><b>In the way: {{len .}}; read on after the chart.</b></p>
{{- end}}
</header>
<main>
{{- if .Conflicts}}
<section class="alarm screen">
{{- template "alarm" .}}
</section>
{{- end}}
<section class="chart">
<h2>The season</h2>
{{- range .Charts}}
<figure{{if $.Broad}} class="broad"{{end}}>
{{.}}
</figure>
{{- end}}
</section>
<div class="columns">
{{- if .Conflicts}}
<section class="alarm paper">
{{- template "alarm" .}}
</section>
{{- end}}
<section>
<h2>The next eight weeks</h2>
{{- with .Agenda.Overdue}}
<h3>Overdue: look, and write down what you see</h3>
<ul class="boxes">
{{- range .}}
<li><label><input type="checkbox">{{.Text}}</label></li>
{{- end}}
</ul>
{{- end}}
{{- range .Weeks}}
<h3>From {{day .First}}</h3>
{{- range .Away}}
<p>Nobody in the room: {{.}}</p>
{{- end}}
{{- range .Free}}
<p>{{day .On}}: {{.Name}}, no parcels</p>
{{- end}}
{{- if or .Tasks .Watch}}
<ul class="boxes">
{{- range .Tasks}}
<li><label><input type="checkbox"><b>{{day .On}}</b> {{.What}}</label>{{with .Note}}{{range $.Lines .}}
<span class="note">{{.}}</span>{{end}}{{end}}</li>
{{- end}}
{{- range .Watch}}
<li><label><input type="checkbox"><b>likely {{day .Window.Likely}}</b> {{.Clutch}}{{.Pairing}}{{with .Place}} ({{apart .}}){{end}}: {{stage .Stage}}</label>
<span class="note dates">early {{short .Window.Early}}, late {{short .Window.Late}}</span></li>
{{- end}}
</ul>
{{- else}}
<p>Nothing is due.</p>
{{- end}}
{{- end}}
{{- with .Notes}}
<h3>Notes</h3>
<ol>
{{- range .}}
<li>{{.}}</li>
{{- end}}
</ol>
{{- end}}
{{- with .Agenda.Parcels}}
<p>Next days on which a parcel can be handed over: {{range $i, $d := .}}{{if $i}}, {{end}}{{day $d}}{{end}}. Look at the forecast at both ends first.</p>
{{- end}}
</section>
{{- if .Targets}}
<section>
<h2>Targets</h2>
{{- range .Targets}}
<p><b>{{apart .Name}}</b>, {{day .On}}: {{.Wanted}} froglets of {{.Species}} wanted{{with .ChancePct}}, ready by then with a chance of {{.}} %, if every pairing lays{{end}}{{if .CertaintyPct}}; wished {{.CertaintyPct}} %{{end}}.
{{- with .OneMorePct}} With one more clutch {{.}} %.{{end}}
{{- if .LastShipping.Known}} Last day to hand over a parcel: {{day .LastShipping}}.{{end}}</p>
{{- end}}
</section>
{{- end}}
<section>
<h2>Pairings</h2>
{{- range .Pairings}}
<article>
<h3>{{.ID}}: {{$.Parents .}}</h3>
{{- if .Refused}}
<p><b>Should not be made.</b></p>
{{- end}}
<p>{{.Species}}{{with $.For .}}, {{.}}{{end}}. {{$.Young .}}</p>
{{- if or (index $.Reasons .ID) .Findings .Warnings}}
<ul>
{{- range index $.Reasons .ID}}
<li>{{.}}</li>
{{- end}}
{{- range .Findings}}
<li><b>Careful:</b> {{.}}</li>
{{- end}}
{{- range .Warnings}}
<li><b>Careful:</b> {{.}}</li>
{{- end}}
</ul>
{{- end}}
<div class="wide">
<table>
<tr><th scope="col">phase</th><th scope="col">from</th><th scope="col">to</th><th scope="col">days</th><th scope="col">place</th></tr>
{{- range .Phases}}
<tr><td>{{.Name}}{{if .Recorded}} (began){{end}}</td><td>{{day .Span.First}}</td><td>{{day .Span.Last}}</td><td>{{.Span.Days}}</td><td class="place">{{.Place}}</td></tr>
{{- end}}
</table>
</div>
{{- if .Stages}}
<div class="wide">
<table>
<tr><th scope="col">young</th><th scope="col">early</th><th scope="col">likely</th><th scope="col">late</th></tr>
{{- range .Stages}}
<tr><td>{{stage .Stage}}</td><td>{{.Window.Early}}</td><td>{{.Window.Likely}}</td><td>{{.Window.Late}}</td></tr>
{{- end}}
</table>
</div>
{{- end}}
</article>
{{- else}}
<p>No pairing is planned.</p>
{{- end}}
{{- with .LeftOut}}
<p>Left out, at their cost:{{range .}} {{.}}{{end}}.</p>
{{- end}}
{{- with .WhyLeftOut}}
<ul>
{{- range .}}
<li>{{.}}</li>
{{- end}}
</ul>
{{- end}}
{{- with .Over}}
<p>Over by their dates, and so not planned:{{range .}} {{.}}{{end}}.</p>
{{- end}}
</section>
{{- if .Peaks}}
<section>
<h2>The room</h2>
<table>
<tr><th scope="col">what</th><th scope="col">most in use or kept free</th><th scope="col">on</th></tr>
{{- range .Peaks}}
<tr><td>{{place .What}}</td><td>{{$.Share .}}{{if gt .Most .Of}}, too few{{end}}</td><td>{{if .Most}}{{day .On}}{{end}}</td></tr>
{{- end}}
</table>
{{- with .Risks}}
<p>With clutches that come as large, as early and as late as they may, if every pairing lays:</p>
<ul>
{{- range .}}
<li>{{.Text}}</li>
{{- end}}
</ul>
{{- end}}
</section>
{{- end}}
<section>
<h2>Be careful</h2>
<ul>
{{- range .Cautions}}
<li>{{.}}</li>
{{- end}}
<li>Windows are early, likely, late: the days by which 10, 50 and 90 of 100 clutches are there.</li>
{{- range .Unchecked}}
<li>Not checked: {{.}}.</li>
{{- end}}
<li>Animals come before the plan: local rules, a veterinarian and the state of the animals decide.</li>
</ul>
</section>
</div>
</main>
</body>
</html>
`
