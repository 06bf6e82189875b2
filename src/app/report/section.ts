import type { Fact, Layout, Part, Section } from '../../evidence/report-model.ts';
import { REPORT } from '../words/report.ts';

/** None where nothing is in it. */
export function section(heading: string, parts: readonly Part[], layout: Layout = 'label'): Section[] {
  const filled = parts.filter(isFilled);
  return filled.length > 0 ? [{ heading, parts: filled, layout }] : [];
}

function isFilled(part: Part): boolean {
  switch (part.kind) {
    case 'facts':
      return part.facts.length > 0;
    case 'lines':
      return part.lines.length > 0;
    case 'table':
      return part.table.rows.length > 0;
    case 'pictures':
      return part.pictures.length > 0;
    case 'drawing':
    case 'signatures':
      return true;
  }
}

/** What nobody said is said to be so. */
export function said(label: string, value: string | null): Fact {
  return value === null || value.trim() === ''
    ? { label, value: REPORT.notSaid, look: true }
    : { label, value };
}
