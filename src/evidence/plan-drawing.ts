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

/** Room for the words: beside the tyres on paper, below them where the screen is as narrow as a hand. */
type PlanLayout = {
  readonly className: string;
  readonly width: number;
  readonly apart: number;
  readonly track: number;
  readonly below: boolean;
};

const WIDE: PlanLayout = { className: 'plan', width: 182, apart: 15.5, track: 30, below: false };
const NARROW: PlanLayout = { className: 'plan narrow', width: 100, apart: 25, track: 38, below: true };

const FIRST = 15.5;
const RAIL = 9;
const TYRE = { widthMm: 4.6, lengthMm: 12 };
const TWIN = 5.4;

/** Twice: the styles show the one that fits the paper or the screen. */
export function planDrawing(axles: readonly PlanAxle[], words: PlanWords): Markup {
  return markup`${[WIDE, NARROW].map((layout) => layoutMarkup(layout, axles, words))}`;
}

function layoutMarkup(layout: PlanLayout, axles: readonly PlanAxle[], words: PlanWords): Markup {
  const { className, width, apart, below } = layout;
  const middle = width / 2;
  const last = FIRST + apart * (axles.length - 1);
  const height = last + (below ? 16 : 8);
  return markup`<svg class="${className}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${words.label}">
<path class="rail" d="M${middle - RAIL} ${FIRST - 8}V${last + 7}M${middle + RAIL} ${FIRST - 8}V${last + 7}M${middle - RAIL - 3} ${FIRST - 8}H${middle + RAIL + 3}"/>
<path class="front-arrow" d="M${middle} 1.5L${middle - 1.6} 6.5H${middle + 1.6}Z"/>
<text class="plan-kind" x="${middle + 4}" y="5.6">${words.front}</text>
${axles.map((axle, i) => axleMarkup(layout, axle, FIRST + apart * i))}
</svg>`;
}

function axleMarkup(layout: PlanLayout, axle: PlanAxle, y: number): Markup {
  const { width, track } = layout;
  const middle = width / 2;
  const tyres = axle.single ? [0] : [0, -TWIN];
  const side = (end: PlanEnd, sign: 1 | -1) => {
    const drawn = tyres.map((inset) => {
      const centre = middle + sign * (track + inset);
      return tyreMark(end.state, {
        leftMm: centre - TYRE.widthMm / 2,
        topMm: y - TYRE.lengthMm / 2,
        ...TYRE,
      });
    });
    return markup`${drawn}${endWords(layout, end, sign, y)}`;
  };
  const reach = track - (axle.single ? 0 : TWIN) - TYRE.widthMm / 2;
  return markup`<g>
<path class="axle" d="M${middle - reach} ${y - 0.7}H${middle + reach}M${middle - reach} ${y + 0.7}H${middle + reach}"/>
${side(axle.left, -1)}${side(axle.right, 1)}
<text class="plan-axle" x="${middle}" y="${y - 2.4}" text-anchor="middle">${axle.name}</text>
<text class="plan-kind" x="${middle}" y="${y + 5}" text-anchor="middle">${axle.kind}</text>
</g>`;
}

function endWords({ width, track, below }: PlanLayout, end: PlanEnd, sign: 1 | -1, y: number): Markup {
  // Below, they begin at the paper's edge, so that two long ones do not meet in the middle.
  const x = width / 2 + sign * (below ? width / 2 - 0.5 : track + 6);
  const anchor = (sign === 1) === below ? 'end' : 'start';
  const [valueY, findingY] = below ? [y + 10.6, y + 15] : [y - 0.6, y + 4];
  return markup`<text class="plan-value" x="${x}" y="${valueY}" text-anchor="${anchor}">${end.value}</text><text class="plan-finding" x="${x}" y="${findingY}" text-anchor="${anchor}">${end.finding}</text>`;
}
