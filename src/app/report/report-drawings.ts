/** Every drawing of a report under its key: the plan, the bars, the charts, the pictures with their lines. */
import { type Markup, markup } from '../../evidence/markup.ts';
import { type PlanEnd, planDrawing } from '../../evidence/plan-drawing.ts';
import type { ReportDrawings } from '../../evidence/report-html.ts';
import type { MarkKind } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import { holdingResults } from '../../record/wheel-end-results.ts';
import { viewerMarks } from '../pictures/viewer-marks.ts';
import type { ViewerMark } from '../viewer/viewer-mark.ts';
import { PICTURE_LABELS } from '../words/en.ts';
import { FINDING } from '../words/findings.ts';
import { AXLE_KIND_NAMES, INSPECTION } from '../words/inspection.ts';
import { markName } from '../words/marks.ts';
import { purposeText, STATE_TEXTS, SUMMARY } from '../words/report.ts';
import { measuredLengthText } from '../words/values.ts';
import { barDrawing } from './bar-drawing.ts';
import { chartDrawing } from './chart-drawing.ts';
import type { ReportInput } from './compose-report.ts';
import { endStateOf } from './end-state.ts';
import { type PictureDrawing, pictureDrawing } from './picture-drawing.ts';
import {
  barKey,
  chartKey,
  PLAN_KEY,
  PURPOSES_SHOWN,
  type ShownMeasurement,
  shownMeasurement,
  viewCrop,
  viewKey,
} from './report-pictures.ts';
import { strokeText } from './stroke-text.ts';

/** Pictures as data: addresses, by key. */
export type ReportPictures = ReadonlyMap<string, string>;

export function reportDrawings(input: ReportInput, pictures: ReportPictures): ReportDrawings {
  const { record, results, clips, unit } = input;
  const whole = [...pictures].map(([key, href]) => [key, plainPicture(href)] as const);
  const ofEnds = record.wheelEnds.flatMap((wheelEnd, index) => {
    const end = results.wheelEnds[index];
    const bar = end ? [[barKey(index), endBar(end, input)] as const] : [];
    const charts = PURPOSES_SHOWN.flatMap((purpose) => {
      const shown = shownMeasurement(wheelEnd, results, index, purpose);
      const clip = shown && clips.get(shown.input.id);
      const limitMm = end?.limit?.values[0].limitMm ?? null;
      const key = chartKey(index, purpose);
      return clip ? [[key, chartDrawing(clip, { limitMm, unit, id: key })] as const] : [];
    });
    return [...bar, ...charts];
  });
  const annotated = annotatedPictures(input).map(
    ({ key, drawing }) => [key, pictureDrawing({ ...drawing, href: pictures.get(key) ?? null })] as const,
  );
  return new Map<string, Markup>([[PLAN_KEY, plan(input)], ...whole, ...ofEnds, ...annotated]);
}

export type AnnotatedPicture = {
  readonly key: string;
  readonly end: WheelEndResults;
  readonly purpose: Purpose;
  readonly state: View['state'];
  readonly drawing: Omit<PictureDrawing, 'href'>;
};

/** The pictures that were measured on, with their marks and the stroke's dimension. */
export function annotatedPictures({ record, results, unit }: ReportInput): AnnotatedPicture[] {
  const captureOf = (id: string) => record.captures.find((capture) => capture.id === id) ?? null;
  const drawn = (shown: ShownMeasurement, view: View): Omit<PictureDrawing, 'href'> | null => {
    const capture = captureOf(view.captureId);
    const crop = viewCrop(shown, view.state, captureOf);
    const { measured } = shown;
    return (
      capture &&
      crop && {
        picture: capture,
        crop,
        marks: namedOnce(viewerMarks(view, null, measured, unit), view),
        drawing: measured?.drawings.find(({ state }) => state === view.state) ?? null,
        dimension: measured ? measuredLengthText(measured.strokeMm, unit) : null,
        label: PICTURE_LABELS[view.state],
      }
    );
  };
  return record.wheelEnds.flatMap((wheelEnd, index) =>
    PURPOSES_SHOWN.flatMap((purpose) => {
      const shown = shownMeasurement(wheelEnd, results, index, purpose);
      const end = results.wheelEnds[index];
      return (shown?.input.views ?? []).flatMap((view) => {
        const drawing = shown && drawn(shown, view);
        const key = viewKey(index, purpose, view.state);
        return drawing && end ? [{ key, end, purpose, state: view.state, drawing }] : [];
      });
    }),
  );
}

/** A point that was set several times is named once; its other crosses stand small beside it. */
function namedOnce(marks: readonly ViewerMark[], view: View): readonly ViewerMark[] {
  const once: readonly MarkKind[] = ['chamber-face', 'clevis-pin', 'camshaft-end'];
  return marks.map((mark, i) => {
    const kind = view.marks[i]?.kind;
    if (!kind || !once.includes(kind)) return mark;
    const first = view.marks.findIndex((each) => each.kind === kind) === i;
    return first ? { ...mark, name: markName(kind, null) } : { ...mark, minor: true };
  });
}

function plainPicture(href: string): Markup {
  return markup`<img src="${href}" alt="">`;
}

function endBar(end: WheelEndResults, { unit }: ReportInput): Markup {
  const strokes = [end.asFound, end.afterRepair].flatMap(({ strokeMm, purpose }) =>
    strokeMm ? [{ ...strokeMm, name: purposeText(purpose) }] : [],
  );
  const limits = end.limit?.values.map(({ limitMm }) => limitMm) ?? [];
  return barDrawing(strokes, limits, unit, `${FINDING.bar}: ${strokeText(holdingResults(end), unit)}`);
}

function plan({ results, unit }: ReportInput): Markup {
  const drawn = (end: WheelEndResults | null): PlanEnd => {
    if (!end) return { state: 'none', value: '', finding: STATE_TEXTS['not-started'] };
    const { strokeMm } = holdingResults(end);
    const wasOver = end.holds === 'after-repair' && end.asFound.state !== 'not-started';
    return {
      state: endStateOf(end.state),
      value: strokeMm ? strokeText(holdingResults(end), unit) : '',
      finding: wasOver
        ? SUMMARY.afterState(STATE_TEXTS[end.state], STATE_TEXTS[end.asFound.state].toLowerCase())
        : STATE_TEXTS[end.state],
    };
  };
  const axles = results.axles.map(({ axle, kind, left, right }) => ({
    name: INSPECTION.axle(axle),
    kind: kind ? AXLE_KIND_NAMES[kind].toLowerCase() : '',
    single: kind === 'steer',
    left: drawn(left),
    right: drawn(right),
  }));
  return planDrawing(axles, { label: SUMMARY.planLabel, front: INSPECTION.front });
}
