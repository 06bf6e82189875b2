/** How the report looks, on paper and on a screen. Ink only: black, two grays for rules and labels. */
import type { Paper } from '../references/paper.ts';
import { cssString } from './markup.ts';
import type { ReportModel } from './report-model.ts';

/** The sheet's edges with what runs along them. Browsers that know no margin boxes leave the edges empty. */
export function pageRules({ head, foot, page }: ReportModel['running'], paper: Paper): string {
  const running = 'font: 400 8pt "Barlow Semi Condensed", "Arial Narrow", sans-serif; color: #444;';
  const numbers = `${cssString(page.before)} counter(page) ${cssString(page.between)} counter(pages)`;
  return `@page {
  size: ${paper === 'a4' ? 'A4' : 'letter'} portrait;
  margin: 14mm;
  @top-left { content: ${cssString(head)}; ${running} }
  @bottom-left { content: ${cssString(foot)}; ${running} }
  @bottom-right { content: ${numbers}; ${running} }
}`;
}

export const REPORT_STYLES = `
.report, .report * { box-sizing: border-box; margin: 0; padding: 0; }
.report {
  --ink: #16191b; --ink-2: #4a5056; --rule: #8a8f92; --rule-light: #c9cbc8;
  color: var(--ink); background: #fff; color-scheme: light;
  font: 400 9.5pt/1.34 "Barlow Semi Condensed", "Arial Narrow", sans-serif;
  font-variant-numeric: tabular-nums lining-nums;
  overflow-wrap: anywhere; text-align: left;
  -webkit-print-color-adjust: exact; print-color-adjust: exact;
}
.report h1, .report h2, .report h3, .report th, .report strong { font-weight: 600; }
.report h1 { font-size: 20pt; line-height: 1.1; }
.report h2 { font-size: 16pt; line-height: 1.15; }
.report h3 { font-size: 9.5pt; line-height: 1.25; }
.report ul { list-style: none; }
.report dt, .report th, .report figcaption { color: var(--ink-2); font-size: 8pt; line-height: 1.25; font-weight: 400; text-align: left; }
.report svg { display: block; width: 100%; height: auto; overflow: visible; }
.report svg text { font-family: inherit; }
.plan text, .bar text, .chart text { fill: var(--ink); }

.front .aid { margin: 0.4mm 0 2mm; color: var(--ink-2); }
.title-block { display: grid; grid-template-columns: repeat(12, 1fr); border: 0.5mm solid var(--ink); }
.title-block > div { grid-column: span 3; padding: 0.9mm 1.8mm 1.2mm; border: 0 solid var(--rule); border-left-width: 0.25mm; border-top-width: 0.25mm; min-width: 0; }
.title-block > div:nth-child(1) { grid-column: span 6; }
.title-block > div:nth-child(-n+3) { border-top-width: 0; }
.title-block > div:nth-child(1), .title-block > div:nth-child(4), .title-block > div:nth-child(8) { border-left-width: 0; }
.title-block > div:nth-child(1) dd { font-size: 15pt; font-weight: 600; line-height: 1.15; }
.title-block > div:nth-child(8) { grid-column: span 7; }
.title-block > div:nth-child(9) { grid-column: span 5; }
.title-block > div:nth-child(10) { grid-column: span 12; border-left-width: 0; border-top: 0.5mm solid var(--ink); }
.title-block > div:nth-child(10) dd { font-size: 12.5pt; font-weight: 600; line-height: 1.2; }

.part { position: relative; min-height: 11mm; padding: 1.8mm 0 2.4mm 30mm; border-top: 0.2mm solid var(--rule); break-inside: avoid; }
.part > h3 { position: absolute; left: 0; top: 1.8mm; width: 27mm; }
.part.wide { padding-left: 0; min-height: 0; break-inside: auto; }
.part.wide > h3 { position: static; width: auto; margin-bottom: 1mm; break-after: avoid; }
.closing > .part { break-inside: auto; }
.front + .part { margin-top: 1.5mm; border-top: 0; }
.content > * + * { margin-top: 1.6mm; }
.part.beside > .content { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); gap: 1.6mm 5mm; align-items: start; }
.part.beside > .content > * { grid-column: 1; margin-top: 0; }
.part.beside > .content > .facts { grid-template-columns: 1fr 1fr; }
.part.beside > .content > .pictures, .part.beside > .content > table { grid-column: 2; grid-row: 1 / span 3; }
.part.beside > .content > .pictures { grid-template-columns: minmax(0, 1fr); }
.part.beside > .content > .pictures:has(> :nth-child(2)) { grid-template-columns: 1fr 1fr; }

.facts { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 1.2mm 4mm; }
.facts > div { min-width: 0; break-inside: avoid; }
.facts:has(> :nth-child(7)) { grid-template-columns: repeat(4, minmax(0, 1fr)); gap: 1.2mm 3mm; }
.lines.look > li { font-weight: 600; }
.facts > .look, .lines.look > li { border-left: 0.7mm solid var(--ink); padding-left: 1.5mm; }
.lines { display: grid; gap: 0.7mm; }
.lines > li { break-inside: avoid; }

.report table { width: 100%; border-collapse: collapse; }
.report th { padding: 0 1.6mm 0.6mm 0; border-bottom: 0.35mm solid var(--ink); vertical-align: bottom; }
.report td { padding: 0.5mm 1.6mm 0.5mm 0; border-bottom: 0.2mm solid var(--rule-light); vertical-align: top; }
.report tr > :last-child { padding-right: 0; }
.report td { overflow-wrap: break-word; }
.report table.breaks td { overflow-wrap: anywhere; font-size: 8.5pt; }
.report table.states td:first-child { white-space: nowrap; }
.report tr { break-inside: avoid; }
.report .sign { display: inline-block; width: 2.3mm; height: 3.6mm; margin-right: 1.4mm; vertical-align: -0.6mm; }

.wheel-end { break-before: page; }
.wheel-end.brief { break-before: auto; break-inside: avoid; margin-top: 9mm; }
.wheel-end > header { display: flex; align-items: baseline; justify-content: space-between; gap: 4mm; padding-bottom: 1.4mm; border-bottom: 0.5mm solid var(--ink); }
.wheel-end > header .sign { width: 3mm; height: 4.7mm; margin-right: 2mm; vertical-align: -0.5mm; }
.finding { font-size: 13pt; font-weight: 600; line-height: 1.15; text-align: right; }
.glance { display: grid; grid-template-columns: 1fr 0.9fr 1fr 1.1fr; margin-bottom: 1.5mm; border-bottom: 0.2mm solid var(--rule); }
.glance > div { padding: 1.2mm 2mm 1.6mm; border-left: 0.2mm solid var(--rule); }
.glance > div:first-child { padding-left: 0; border-left: 0; }
.glance dd { font-size: 12pt; line-height: 1.2; font-weight: 600; }
.wheel-end > .part:first-of-type { border-top: 0; }

.pictures { display: grid; gap: 2.5mm 3mm; }
.pictures.large { grid-template-columns: 1fr 1fr; }
.pictures.large:has(> :nth-child(3)) { grid-template-columns: 1fr 1fr 1fr; }
.pictures.small { grid-template-columns: repeat(3, 1fr); }
.pictures > figure { break-inside: avoid; min-width: 0; }
.pictures svg, .pictures .missing { border: 0.2mm solid var(--rule); }
.pictures img { display: block; width: 100%; border: 0.2mm solid var(--rule); }
.pictures .missing { padding: 8mm 4mm; color: var(--ink-2); text-align: center; }
.pictures figcaption { margin-top: 0.7mm; }

.signatures { display: grid; grid-template-columns: 1fr 1fr; gap: 6mm; padding-top: 11mm; break-inside: avoid; }
.signatures > p { padding-top: 0.8mm; border-top: 0.25mm solid var(--ink); color: var(--ink-2); font-size: 8pt; }

.closing { break-before: page; }
.closing > .part:first-child { border-top: 0.5mm solid var(--ink); }

.report .plan.narrow { display: none; }
.plan .rail, .plan .axle { fill: none; stroke: var(--rule); stroke-width: 0.3; }
.plan .axle { stroke: var(--ink-2); }
.plan .front-arrow { fill: var(--ink); }
.plan text { font-size: 3.2px; }
.plan .plan-axle, .plan .plan-value { font-weight: 600; }
.plan .plan-value { font-size: 4.2px; }
.report svg .plan-kind { fill: var(--ink-2); font-size: 2.8px; }
.plan .plan-axle, .plan .plan-kind, .plan.narrow .plan-finding, .plan.narrow .plan-value { paint-order: stroke; stroke: #fff; stroke-width: 1.2px; stroke-linejoin: round; }
.tyre { fill: #fff; stroke: var(--ink); stroke-width: 0.4; }
.tyre.filled { fill: var(--ink); }
.tyre.dashed { stroke-dasharray: 1 0.7; stroke-width: 0.3; }
.tyre-hatch { fill: none; stroke: var(--ink); stroke-width: 0.35; }
.tyre-cross { fill: none; stroke: #fff; stroke-width: 0.55; }

.bar { max-width: 150mm; }
.chart .hatch, .bar .hatch { stroke: var(--ink); }

@media print {
  .report { padding-right: 0.4mm; }
}
@media screen {
  .report { max-width: 210mm; margin: 0 auto; padding: 8mm 9mm 12mm; font-size: 11pt; }
  .report h3 { font-size: 11pt; }
  .report dt, .report th, .report figcaption { font-size: 9.5pt; }
  .wheel-end, .closing { margin-top: 12mm; }
}
@media screen and (max-width: 700px) {
  .report { padding: 4mm; }
  .title-block > div:nth-child(n) { grid-column: 1 / -1; border-left-width: 0; border-top-width: 0.25mm; }
  .title-block > div:nth-child(1) { border-top-width: 0; }
  .part { padding-left: 0; min-height: 0; }
  .part > h3 { position: static; width: auto; margin-bottom: 1mm; }
  .part.beside > .content { display: block; }
  .part.beside > .content > * + * { margin-top: 1.6mm; }
  .facts, .facts:has(> :nth-child(7)), .pictures.small { grid-template-columns: 1fr 1fr; }
  .pictures.large, .pictures.large:has(> :nth-child(3)), .signatures { grid-template-columns: minmax(0, 1fr); }
  .wheel-end > header { display: block; }
  .finding { text-align: left; }
  .glance { grid-template-columns: 1fr 1fr; }
  .glance > div:nth-child(odd) { padding-left: 0; border-left: 0; }
  .content:has(> table), .content:has(> .chart) { overflow-x: auto; }
  .report .plan { display: none; }
  .report .plan.narrow { display: block; }
  .content > .chart { width: 140mm; }
  .bar { margin-top: 3mm; }
  .bar text { font-size: 46px; }
  .part td { min-width: 16mm; }
  .states thead { display: none; }
  .states tr { display: grid; grid-template-columns: 1fr 1fr; gap: 1mm 4mm; padding: 2mm 0; border-bottom: 0.2mm solid var(--rule); }
  .states tr:first-child { border-top: 0.35mm solid var(--ink); }
  .report .states td { padding: 0; border: 0; }
  .states td:first-child { grid-column: 1 / -1; font-weight: 600; }
  .states td:empty { display: none; }
  .states td[data-column]::before { content: attr(data-column); display: block; color: var(--ink-2); font-size: 9.5pt; line-height: 1.25; }
}
`;
