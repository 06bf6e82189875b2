import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { importFaults } from './layout/import-rule.ts';

const sources = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => posix.join('src', name.replaceAll('\\', '/')))
  .filter((path) => /\.tsx?$/.test(path))
  .map((path) => ({ path, text: readFileSync(path, 'utf8') }));

test('every import in src obeys the import rule', () => {
  expect(sources.length).toBeGreaterThan(10);
  expect(importFaults(sources)).toEqual([]);
});

test.each([
  ['an upward import, types included', 'src/marks/a.ts', "import type { X } from '../record/record.ts';"],
  ['an upward import in a re-export', 'src/basics/a.ts', "export { x } from '../marks/mark.ts';"],
  ['an upward dynamic import', 'src/frames/a.ts', "const x = await import('../app/main.tsx');"],
  ['a pure file that takes a browser file', 'src/captures/a.ts', "import { x } from './decode.browser.ts';"],
  ['React in a pure folder', 'src/finding/a.ts', "import { useState } from 'react';"],
  ['the DOM library in a pure file', 'src/captures/a.ts', "import { Input } from 'mediabunny';"],
  ['Node in a pure file', 'src/evidence/a.ts', "import { readFile } from 'node:fs/promises';"],
  ['Node in a browser file', 'src/captures/a.browser.ts', "import { readFile } from 'node:fs/promises';"],
  ['certificates in a record', 'src/record/a.ts', "import { Certificate } from 'pkijs';"],
  ['React in vision', 'src/vision/a.ts', "import { useState } from 'react';"],
  ['the screen in a command', 'src/cli/a.ts', "import { x } from '../app/words/failures.ts';"],
])('finds %s', (_what, path, text) => {
  expect(importFaults([{ path, text }])).toHaveLength(1);
});
