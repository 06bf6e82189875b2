/** A report as one document that needs nothing else: no script, no address, styles and pictures inside. */

import type { Paper } from '../references/paper.ts';
import { type Markup, markup } from './markup.ts';
import type { Fact, Part, PictureRef, ReportModel, Section, Table, WheelEndSheet } from './report-model.ts';
import { pageRules, REPORT_STYLES } from './report-styles.ts';
import { stateSign } from './state-mark.ts';

/** By key. An annotated picture is one too: an SVG with the photo inside. */
export type ReportDrawings = ReadonlyMap<string, Markup>;

export type ReportFonts = readonly { readonly weight: 400 | 600; readonly dataUri: string }[];

/** The whole file. */
export function reportDocument(
  model: ReportModel,
  drawings: ReportDrawings,
  { paper, fonts }: { readonly paper: Paper; readonly fonts: ReportFonts },
): string {
  const styles = [...fonts.map(fontRule), REPORT_STYLES, pageRules(model.running, paper)].join('\n');
  const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:";
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    markup`<title>${model.title}</title>`.text,
    `<style>${styles}</style>`,
    '</head>',
    `<body>${reportBody(model, drawings).text}</body>`,
    '</html>',
    '',
  ].join('\n');
}

/** What stands in the body: for showing it inside another page. */
export function reportBody(model: ReportModel, drawings: ReportDrawings): Markup {
  const draw = (section: Section) => sectionMarkup(section, drawings);
  return markup`<article class="report">
<header class="front">
<h1>${model.title}</h1>
<p class="aid">${model.aid}</p>
${facts(model.titleBlock, 'title-block')}
</header>
${model.summary.map(draw)}
${model.wheelEnds.map((sheet) => wheelEndMarkup(sheet, draw))}
<div class="closing">${model.closing.map(draw)}</div>
</article>`;
}

function wheelEndMarkup(sheet: WheelEndSheet, draw: (section: Section) => Markup): Markup {
  return markup`<section class="${sheet.brief ? 'wheel-end brief' : 'wheel-end'}">
<header><h2>${stateSign(sheet.state)}${sheet.name}</h2><p class="finding">${sheet.finding}</p></header>
${facts(sheet.glance, 'glance')}
${sheet.sections.map(draw)}
</section>`;
}

function sectionMarkup({ heading, parts, layout }: Section, drawings: ReportDrawings): Markup {
  return markup`<section class="part ${layout}"><h3>${heading}</h3><div class="content">${parts.map((part) => partMarkup(part, drawings))}</div></section>`;
}

function partMarkup(part: Part, drawings: ReportDrawings): Markup {
  switch (part.kind) {
    case 'facts':
      return facts(part.facts, 'facts');
    case 'lines':
      return markup`<ul class="${part.look ? 'lines look' : 'lines'}">${part.lines.map((line) => markup`<li>${held(line)}</li>`)}</ul>`;
    case 'table':
      return table(part.table);
    case 'drawing':
      return drawings.get(part.key) ?? markup``;
    case 'signatures':
      return markup`<div class="signatures">${part.names.map((name) => markup`<p>${name}</p>`)}</div>`;
    case 'pictures':
      return markup`<div class="pictures ${part.size}">${part.pictures.map((ref) => picture(ref, drawings))}</div>`;
  }
}

function picture({ key, caption, missing }: PictureRef, drawings: ReportDrawings): Markup {
  const drawn = drawings.get(key) ?? markup`<p class="missing">${missing}</p>`;
  return markup`<figure>${drawn}<figcaption>${caption}</figcaption></figure>`;
}

function facts(all: readonly Fact[], className: string): Markup {
  return markup`<dl class="${className}">${all.map(
    ({ label, value, look }) =>
      markup`<div${look ? markup` class="look"` : null}><dt>${label}</dt><dd>${held(value)}</dd></div>`,
  )}</dl>`;
}

function table({ columns, rows, states, breaks = false }: Table): Markup {
  const className = [states ? 'states' : '', breaks ? 'breaks' : ''].join(' ').trim();
  const head = columns.map((column) => markup`<th scope="col">${column}</th>`);
  const body = rows.map((row, i) => {
    const state = states?.[i];
    const [first = '', ...others] = row;
    const rest = others.map(
      (cell, at) => markup`<td data-column="${columns[at + 1] ?? ''}">${held(cell)}</td>`,
    );
    return markup`<tr><td>${state ? stateSign(state) : null}${held(first)}</td>${rest}</tr>`;
  });
  return markup`<table class="${className}"><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table>`;
}

/** A number is never parted from its fraction, its U or its unit at the end of a line. */
function held(text: string): string {
  return text.replace(/(?<=[\d±]) (?=[\d±]|(?:in|mm|psi|kPa|%)(?![A-Za-z]))/g, '\u00a0');
}

export function fontRule({ weight, dataUri }: ReportFonts[number]): string {
  const safe = /^data:font\/woff2;base64,[A-Za-z0-9+/=]+$/.test(dataUri) ? dataUri : 'data:,';
  return `@font-face{font-family:"Barlow Semi Condensed";font-weight:${weight};src:url(${safe}) format("woff2")}`;
}
