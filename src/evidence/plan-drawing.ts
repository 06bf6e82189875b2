/** The vehicle seen from above, front at the top, each wheel end with its state and what was found. In millimetres of the paper. */
import { type Markup, markup } from './markup.ts';
import { type EndState, tyreMark } from './state-mark.ts';

export type PlanEnd = { readonly state: EndState; readonly value: string; readonly finding: string };

export type PlanAxle = {
  readonly name: string;
  readonly kind: string;
  /** One tyre a side, as on a steer axle; else two. */
  readonly single: boolean;
  readonly left: PlanEnd;
  readonly right: PlanEnd;
};

export type PlanWords = { readonly label: string; readonly front: string };

const WIDTH = 182;
const MIDDLE = WIDTH / 2;
const APART = 15.5;
const FIRST = 15.5;
const RAIL = 9;
const TRACK = 30;
const TYRE = { widthMm: 4.6, lengthMm: 12 };
const TWIN = 5.4;
const TEXT = TRACK + 6;

export function planDrawing(axles: readonly PlanAxle[], words: PlanWords): Markup {
  const last = FIRST + APART * (axles.length - 1);
  const height = last + 8;
  return markup`<svg class="plan" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${words.label}">
<path class="rail" d="M${MIDDLE - RAIL} ${FIRST - 8}V${last + 7}M${MIDDLE + RAIL} ${FIRST - 8}V${last + 7}M${MIDDLE - RAIL - 3} ${FIRST - 8}H${MIDDLE + RAIL + 3}"/>
<path class="front-arrow" d="M${MIDDLE} 1.5L${MIDDLE - 1.6} 6.5H${MIDDLE + 1.6}Z"/>
<text class="plan-kind" x="${MIDDLE + 4}" y="5.6">${words.front}</text>
${axles.map((axle, i) => axleMarkup(axle, FIRST + APART * i))}
</svg>`;
}

function axleMarkup(axle: PlanAxle, y: number): Markup {
  const tyres = axle.single ? [0] : [0, -TWIN];
  const side = (end: PlanEnd, sign: 1 | -1) => {
    const drawn = tyres.map((inset) => {
      const middle = MIDDLE + sign * (TRACK + inset);
      return tyreMark(end.state, {
        leftMm: middle - TYRE.widthMm / 2,
        topMm: y - TYRE.lengthMm / 2,
        ...TYRE,
      });
    });
    const anchor = sign === 1 ? 'start' : 'end';
    const x = MIDDLE + sign * TEXT;
    return markup`${drawn}<text class="plan-value" x="${x}" y="${y - 0.6}" text-anchor="${anchor}">${end.value}</text><text class="plan-finding" x="${x}" y="${y + 4}" text-anchor="${anchor}">${end.finding}</text>`;
  };
  const reach = TRACK - (axle.single ? 0 : TWIN) - TYRE.widthMm / 2;
  return markup`<g>
<path class="axle" d="M${MIDDLE - reach} ${y - 0.7}H${MIDDLE + reach}M${MIDDLE - reach} ${y + 0.7}H${MIDDLE + reach}"/>
${side(axle.left, -1)}${side(axle.right, 1)}
<text class="plan-axle" x="${MIDDLE}" y="${y - 2.4}" text-anchor="middle">${axle.name}</text>
<text class="plan-kind" x="${MIDDLE}" y="${y + 5}" text-anchor="middle">${axle.kind}</text>
</g>`;
}
