/** The tables of docs/tracking.md. */
import type { TrackingCase } from './tracking-case.ts';
import { type Errors, rms, worst } from './tracking-score.ts';

const row = (cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]) =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
const text = (value: number | null | undefined, digits = 2) =>
  value === null || value === undefined || !Number.isFinite(value) ? '-' : value.toFixed(digits);

const errorText = (errors: Errors | null | undefined) =>
  errors && errors.px.length > 0
    ? `${text(rms(errors.px))}, ${text(worst(errors.lengthPx))}, ${text(rms(errors.standardised), 1)}`
    : '-';

export function pinTable(cases: readonly TrackingCase[]): string {
  return table(
    [
      'clip',
      'size, frames/s, frames',
      'pin, px: rms, worst; error / stated',
      'over 1 px',
      'hidden: told, wrong',
      'seen, yet a gap',
      'smeared by 3 px: gaps',
      'plain: rms, worst, px; lost',
    ],
    cases.map(({ clip, run, score, plain }) => {
      const [view] = clip.truth.views;
      const gaps = score?.gaps;
      const lost = plain?.pinErrorPx.filter((error) => error === null).length ?? 0;
      const plainPx = plain?.pinErrorPx.flatMap((error) => error ?? []) ?? [];
      return [
        clip.name,
        `${view?.widthPx} x ${view?.heightPx}, ${clip.truth.framesPerSecond}, ${clip.truth.frames.length}`,
        'code' in run ? run.code : errorText(score?.pin),
        score ? score.pin.lengthPx.filter((length) => length !== null && length > 1).length : '-',
        gaps ? (gaps.hidden > 0 ? `${gaps.hiddenFound} of ${gaps.hidden}, ${gaps.hiddenWrong}` : '-') : '-',
        gaps ? gaps.falseGaps : '-',
        gaps ? (gaps.blurred > 0 ? `${gaps.blurredGaps} of ${gaps.blurred}` : '-') : '-',
        plain ? `${text(rms(plainPx) / Math.SQRT2)}, ${text(worst(plainPx))}; ${lost - 1}` : '-',
      ];
    }),
  );
}

export function otherTable(cases: readonly TrackingCase[]): string {
  return table(
    [
      'clip',
      'stills, px: rms, worst; error / stated',
      'stills over 1 px',
      'tape graduations',
      'camshaft end',
      "camshaft end, its mark's offset turned with the arm",
      'face',
    ],
    cases.map(({ clip, score }) => {
      const lengths = score?.stills?.lengthPx.filter((length) => length !== null) ?? [];
      return [
        clip.name,
        errorText(score?.stills),
        lengths.length > 0 ? `${lengths.filter((length) => length > 1).length} of ${lengths.length}` : '-',
        errorText(score?.tape),
        errorText(score?.camshaft),
        errorText(score?.camshaftTurned),
        errorText(score?.face),
      ];
    }),
  );
}

export function strokeTable(cases: readonly TrackingCase[]): string {
  return table(
    [
      'clip',
      'true, mm',
      'error, mm',
      'U95, mm',
      'within U95',
      'curve: rms error, mm',
      'applications: found, true',
      'error / U95 of each, mm',
      'still scatter',
      'warnings',
      'plain: error, mm',
    ],
    cases.map(({ clip, stroke, plain }) => {
      const { truth } = clip;
      const found = stroke && !('code' in stroke) ? stroke : null;
      const error = found ? found.strokeMm - found.trueMm : null;
      const there = truth.applications?.length ?? 1;
      const plainError = plain ? plain.strokeMm - (found?.trueMm ?? truth.strokeMm) : null;
      return [
        clip.name,
        text(found?.trueMm ?? truth.strokeMm),
        stroke && 'code' in stroke ? stroke.code : text(error),
        text(found?.U95Mm),
        found && error !== null ? (Math.abs(error) <= found.U95Mm ? 'yes' : '**no**') : '-',
        text(found?.curveRmsMm),
        found ? `${found.applicationErrorsMm.length}, ${there}` : `-, ${there}`,
        found?.applicationErrorsMm
          .map((each, i) => `${text(each)} / ${text(found.applicationU95Mm[i])}`)
          .join('; ') || '-',
        text(found?.stillScatter, 1),
        found?.warnings.join(', ') || '-',
        text(plainError),
      ];
    }),
  );
}

export function speedTable(cases: readonly TrackingCase[]): string {
  return table(
    [
      'clip',
      'clip, frames/s',
      'decoding alone, frames/s',
      'followed, frames/s',
      'followed / decoded',
      'start, s',
      'most memory, MB: decoding, following',
      'plain: decoding, whole, frames/s',
    ],
    cases.flatMap(({ clip, run, plain }) => {
      if ('code' in run) return [];
      return [
        [
          clip.name,
          clip.truth.framesPerSecond,
          text(run.decodePerS, 0),
          text(run.followPerS, 0),
          text(run.followPerS / run.decodePerS),
          text(run.startS, 1),
          `${text(run.decodeMb, 0)}, ${text(run.followMb, 0)}`,
          plain ? `${text(plain.frames / plain.decodeS, 0)}, ${text(plain.frames / plain.wholeS, 0)}` : '-',
        ],
      ];
    }),
  );
}

export function memoryTable(
  rows: readonly { readonly frames: number; readonly decodeMb: number; readonly followMb: number }[],
): string {
  return table(
    ['frames, 1920 x 1080', 'most memory while decoding, MB', 'while following, MB'],
    rows.map(({ frames, decodeMb, followMb }) => [frames, text(decodeMb, 0), text(followMb, 0)]),
  );
}
