/** What the benches found so far, kept beside the page that is written from it: docs/accuracy/*.json. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';
import { nearCellSchema } from './accuracy-near.ts';
import { renderPairSchema, renderRowSchema } from './accuracy-render-summary.ts';
import { rowSchema } from './accuracy-summary.ts';

const FOLDER = new URL('../../docs/accuracy/', import.meta.url);

export const keptRows = kept('rows.json', rowSchema);
export const keptNear = kept('near.json', nearCellSchema);
export const keptRenders = kept('renders.json', renderRowSchema);
export const keptRenderPairs = kept('renders-pairs.json', renderPairSchema);

/** A list of results, each under its name: what is run anew takes the place of the old. */
export function kept<T extends { readonly name: string }>(fileName: string, schema: z.ZodType<T>) {
  const file = new URL(fileName, FOLDER);
  const read = (): readonly T[] =>
    existsSync(file) ? z.array(schema).parse(JSON.parse(readFileSync(file, 'utf8'))) : [];
  const put = (result: T): void => {
    const others = read().filter(({ name }) => name !== result.name);
    const lines = [...others, result].map((one) => JSON.stringify(one, rounded));
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, `[\n${lines.join(',\n')}\n]\n`);
  };
  return { read, put };
}

function rounded(_key: string, value: unknown): unknown {
  return typeof value === 'number' ? Number(value.toPrecision(6)) : value;
}
