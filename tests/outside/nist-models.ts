/** The models of NIST's nonlinear regression sets, as their files state them. x is one row of predictors. */
import { add, atan, cos, type Dual, div, exp, mul, pow, sin, square, sub, type Term } from './dual.ts';

type Model = (b: readonly Dual[], x: readonly number[]) => Dual;

/** c0 + c1 x + c2 x^2 + ... */
function polynomial(coefficients: readonly Term[], x: number): Dual {
  return add(...coefficients.map((c, power) => mul(c, x ** power)));
}

function at(b: readonly Dual[], i: number): Dual {
  const unknown = b[i - 1];
  if (!unknown) throw new Error(`the model has no b${i}`);
  return unknown;
}

const rational: Model = (b, [x = 0]) => {
  const above = b.length === 5 ? b.slice(0, 3) : b.slice(0, 4);
  return div(polynomial(above, x), polynomial([1, ...b.slice(above.length)], x));
};

const decays: Model = (b, [x = 0]) => add(...[1, 3, 5].map((i) => mul(at(b, i), exp(mul(at(b, i + 1), -x)))));

const bell = (height: Dual, centre: Dual, width: Dual, x: number): Dual =>
  mul(height, exp(mul(-1, square(div(sub(x, centre), width)))));

const twoBells: Model = (b, [x = 0]) =>
  add(
    mul(at(b, 1), exp(mul(at(b, 2), -x))),
    bell(at(b, 3), at(b, 4), at(b, 5), x),
    bell(at(b, 6), at(b, 7), at(b, 8), x),
  );

const chwirut: Model = (b, [x = 0]) => div(exp(mul(at(b, 1), -x)), add(at(b, 2), mul(at(b, 3), x)));

/** Cosine and sine of one period. */
const wave = (byCos: Dual, bySin: Dual, period: Term, x: number): Dual => {
  const angle = div(2 * Math.PI * x, period);
  return add(mul(byCos, cos(angle)), mul(bySin, sin(angle)));
};

const growth = (b: readonly Dual[], x: number): Dual => add(1, exp(sub(at(b, 2), mul(at(b, 3), x))));

export const NIST_MODELS: Readonly<Record<string, Model>> = {
  Bennett5: (b, [x = 0]) => mul(at(b, 1), pow(add(at(b, 2), x), div(-1, at(b, 3)))),
  BoxBOD: (b, [x = 0]) => mul(at(b, 1), sub(1, exp(mul(at(b, 2), -x)))),
  Chwirut1: chwirut,
  Chwirut2: chwirut,
  DanWood: (b, [x = 0]) => mul(at(b, 1), pow(x, at(b, 2))),
  ENSO: (b, [x = 0]) =>
    add(
      at(b, 1),
      wave(at(b, 2), at(b, 3), 12, x),
      wave(at(b, 5), at(b, 6), at(b, 4), x),
      wave(at(b, 8), at(b, 9), at(b, 7), x),
    ),
  Eckerle4: (b, [x = 0]) =>
    mul(div(at(b, 1), at(b, 2)), exp(mul(-0.5, square(div(sub(x, at(b, 3)), at(b, 2)))))),
  Gauss1: twoBells,
  Gauss2: twoBells,
  Gauss3: twoBells,
  Hahn1: rational,
  Kirby2: rational,
  Lanczos1: decays,
  Lanczos2: decays,
  Lanczos3: decays,
  MGH09: (b, [x = 0]) =>
    div(mul(at(b, 1), add(x * x, mul(x, at(b, 2)))), add(x * x, mul(x, at(b, 3)), at(b, 4))),
  MGH10: (b, [x = 0]) => mul(at(b, 1), exp(div(at(b, 2), add(x, at(b, 3))))),
  MGH17: (b, [x = 0]) =>
    add(at(b, 1), mul(at(b, 2), exp(mul(at(b, 4), -x))), mul(at(b, 3), exp(mul(at(b, 5), -x)))),
  // Of the logarithm of y.
  Nelson: (b, [x1 = 0, x2 = 0]) => sub(at(b, 1), mul(at(b, 2), x1, exp(mul(at(b, 3), -x2)))),
  Rat42: (b, [x = 0]) => div(at(b, 1), growth(b, x)),
  Rat43: (b, [x = 0]) => div(at(b, 1), pow(growth(b, x), div(1, at(b, 4)))),
  Roszman1: (b, [x = 0]) =>
    sub(sub(at(b, 1), mul(at(b, 2), x)), div(atan(div(at(b, 3), sub(x, at(b, 4)))), Math.PI)),
  Thurber: rational,
};
