/** The state of a wheel end as a tyre seen from above, told by its hatching: readable in black and white. Millimetres. */
import { type Markup, markup } from './markup.ts';

/** within: blank. over: filled, crossed out. open (not decided): hatched. none (nothing measured): dashed. */
export type EndState = 'within' | 'over' | 'open' | 'none';

export type Tyre = {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly lengthMm: number;
};

const HATCH_STEP_MM = 1.3;

export function tyreMark(state: EndState, { leftMm, topMm, widthMm, lengthMm }: Tyre): Markup {
  const [right, bottom] = [leftMm + widthMm, topMm + lengthMm];
  const outline = `M${at(leftMm)} ${at(topMm)}H${at(right)}V${at(bottom)}H${at(leftMm)}Z`;
  switch (state) {
    case 'within':
      return markup`<path class="tyre" d="${outline}"/>`;
    case 'over':
      return markup`<path class="tyre filled" d="${outline}"/><path class="tyre-cross" d="M${at(leftMm)} ${at(topMm)}L${at(right)} ${at(bottom)}M${at(right)} ${at(topMm)}L${at(leftMm)} ${at(bottom)}"/>`;
    case 'open':
      return markup`<path class="tyre" d="${outline}"/><path class="tyre-hatch" d="${hatch({ leftMm, topMm, widthMm, lengthMm })}"/>`;
    case 'none':
      return markup`<path class="tyre dashed" d="${outline}"/>`;
  }
}

/** Beside a name in a line of text. */
export function stateSign(state: EndState): Markup {
  return markup`<svg class="sign" viewBox="0 0 3.2 5" aria-hidden="true">${tyreMark(state, { leftMm: 0.3, topMm: 0.3, widthMm: 2.6, lengthMm: 4.4 })}</svg>`;
}

/** Lines at 45 degrees, cut at the edges, so that no pattern and no name for one is needed. */
function hatch({ leftMm, topMm, widthMm, lengthMm }: Tyre): string {
  const count = Math.floor((widthMm + lengthMm) / HATCH_STEP_MM);
  return Array.from({ length: count }, (_, i) => {
    const along = (i + 0.5) * HATCH_STEP_MM;
    const from = [Math.min(along, widthMm), Math.max(0, along - widthMm)] as const;
    const to = [Math.max(0, along - lengthMm), Math.min(along, lengthMm)] as const;
    return `M${at(leftMm + from[0])} ${at(topMm + from[1])}L${at(leftMm + to[0])} ${at(topMm + to[1])}`;
  }).join('');
}

function at(mm: number): string {
  return String(Number(mm.toFixed(2)));
}
