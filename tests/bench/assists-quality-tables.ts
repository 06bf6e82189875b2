/** The tables of the study of picture quality. */

/** Whether a fault was there by what was done to the picture, and whether it was said. */
export type Judged = { readonly fault: string; readonly truth: boolean; readonly said: boolean };

export function confusion(judged: readonly Judged[]): string {
  const rows = [...new Set(judged.map(({ fault }) => fault))].map((fault) => {
    const count = (truth: boolean, said: boolean) =>
      judged.filter((each) => each.fault === fault && each.truth === truth && each.said === said).length;
    return `| ${fault} | ${count(true, true)} | ${count(true, false)} | ${count(false, true)} | ${count(false, false)} |`;
  });
  return `Said of spoiled renders:\n\n| fault | there and said | there and not said | not there and said | not there, not said |\n| --- | --- | --- | --- | --- |\n${rows.join('\n')}`;
}

export function widthTable(
  widths: readonly { readonly want: number; readonly got: number }[],
  ways: readonly number[],
): string {
  const rows = [
    [0, 1.5],
    [1.5, 2.5],
    [2.5, 4],
    [4, 6],
  ].map(([from, to]) => {
    const those = widths
      .filter(({ want }) => want >= (from as number) && want < (to as number))
      .map(({ want, got }) => got / want);
    return `| ${from} to ${to} | ${those.length} | ${at(those, 0.1).toFixed(2)} | ${at(those, 0.5).toFixed(2)} | ${at(those, 0.9).toFixed(2)} |`;
  });
  return `Width of its edges over the known blur:\n\n| known blur, px | pictures | 10 % | median | 90 % |\n| --- | --- | --- | --- | --- |\n${rows.join('\n')}\n\nWay of the smear, off by (degrees): median ${at(ways, 0.5).toFixed(0)}, 90 % ${at(ways, 0.9).toFixed(0)}, of ${ways.length}.`;
}

export function tapeTable(
  tapes: ReadonlyMap<string, { readonly asked: number; readonly found: number }>,
): string {
  const rows = [...tapes].map(([name, { asked, found }]) => `| ${name} | ${asked} | ${found} |`);
  return `Graduations between two named, in pictures spoiled beyond their own blur of 0.6 to 1.3 px:\n\n| picture | asked | found |\n| --- | --- | --- |\n${rows.join('\n')}`;
}

export function at(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
}
