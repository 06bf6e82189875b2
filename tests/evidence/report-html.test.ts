import { expect, test } from 'vitest';
import { markup } from '../../src/evidence/markup.ts';
import { reportDocument } from '../../src/evidence/report-html.ts';
import type { ReportModel } from '../../src/evidence/report-model.ts';
import { attributesOf, tagsOf } from './tags.ts';

const HOSTILE = `"><script>alert(1)</script><img src=x onerror=alert(2)>'</style></svg>&lt;\u0000`;

/** The same text wherever a report can hold text. */
const model: ReportModel = {
  title: HOSTILE,
  aid: HOSTILE,
  titleBlock: [{ label: HOSTILE, value: HOSTILE, look: true }],
  summary: [
    {
      heading: HOSTILE,
      layout: 'wide',
      parts: [
        { kind: 'facts', facts: [{ label: HOSTILE, value: HOSTILE }] },
        { kind: 'lines', lines: [HOSTILE], look: true },
        {
          kind: 'table',
          table: { columns: [HOSTILE, HOSTILE], rows: [[HOSTILE, HOSTILE]], states: ['over'] },
        },
        { kind: 'pictures', size: 'large', pictures: [{ key: HOSTILE, caption: HOSTILE, missing: HOSTILE }] },
        { kind: 'signatures', names: [HOSTILE] },
        { kind: 'drawing', key: 'drawn' },
      ],
    },
  ],
  wheelEnds: [
    {
      name: HOSTILE,
      state: 'open',
      brief: false,
      finding: HOSTILE,
      glance: [{ label: HOSTILE, value: HOSTILE }],
      sections: [],
    },
  ],
  closing: [],
  running: { head: HOSTILE, foot: HOSTILE, page: { before: HOSTILE, between: HOSTILE } },
};

const drawn = markup`<svg aria-label="${HOSTILE}"><text>${HOSTILE}</text></svg>`;
const html = reportDocument(model, new Map([['drawn', drawn]]), {
  paper: 'a4',
  fonts: [{ weight: 400, dataUri: `data:font/woff2;base64,AA==)${HOSTILE}` }],
});

test('what people wrote comes out as text, wherever it stands', () => {
  expect(tagsOf(html)).not.toContain('script');
  expect(tagsOf(html)).not.toContain('img');
  expect(tagsOf(html).filter((tag) => tag === 'style')).toHaveLength(1);
  expect(attributesOf(html).filter((name) => name.startsWith('on'))).toEqual([]);
  expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
  expect(html).not.toContain('\u0000');
});

test('nothing of it closes the style sheet or opens another rule in it', () => {
  const styles = html.slice(html.indexOf('<style>') + 7, html.indexOf('</style>'));
  expect(styles).toContain('counter(pages)');
  expect(styles).not.toContain('alert(1)');
  expect(styles).toContain('url(data:,)');
});

test('a page of the other paper differs in its size alone', () => {
  const letter = reportDocument(model, new Map([['drawn', drawn]]), { paper: 'letter', fonts: [] });
  const a4 = reportDocument(model, new Map([['drawn', drawn]]), { paper: 'a4', fonts: [] });
  expect(letter.replace('size: letter', 'size: A4')).toBe(a4);
});
