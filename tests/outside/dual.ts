/**
 * Numbers that carry their exact derivatives, so that a published model is written down once and differentiated by rule.
 *
 * Model    forward differentiation: f(v) with d = f'(v) dv, two arguments by the chain rule.
 * Assumes  every number of one calculation carries derivatives by the same unknowns; a plain number has none.
 */
export type Dual = { readonly v: number; readonly d: readonly number[] };
export type Term = Dual | number;

export function unknowns(values: ArrayLike<number>): readonly Dual[] {
  return Array.from(values, (v, i) => ({
    v,
    d: Array.from({ length: values.length }, (_, k) => (k === i ? 1 : 0)),
  }));
}

function parts(a: Term): Dual {
  return typeof a === 'number' ? { v: a, d: [] } : a;
}

function joined(v: number, a: Dual, byA: number, b: Dual, byB: number): Dual {
  const size = Math.max(a.d.length, b.d.length);
  return { v, d: Array.from({ length: size }, (_, k) => byA * (a.d[k] ?? 0) + byB * (b.d[k] ?? 0)) };
}

function chained(v: number, a: Dual, byA: number): Dual {
  return { v, d: a.d.map((d) => byA * d) };
}

export function add(...terms: readonly Term[]): Dual {
  return terms.map(parts).reduce((a, b) => joined(a.v + b.v, a, 1, b, 1));
}

export function sub(first: Term, second: Term): Dual {
  const [a, b] = [parts(first), parts(second)];
  return joined(a.v - b.v, a, 1, b, -1);
}

export function mul(...factors: readonly Term[]): Dual {
  return factors.map(parts).reduce((a, b) => joined(a.v * b.v, a, b.v, b, a.v));
}

export function div(first: Term, second: Term): Dual {
  const [a, b] = [parts(first), parts(second)];
  return joined(a.v / b.v, a, 1 / b.v, b, -a.v / (b.v * b.v));
}

export function exp(a: Term): Dual {
  const value = Math.exp(parts(a).v);
  return chained(value, parts(a), value);
}

export function log(a: Term): Dual {
  return chained(Math.log(parts(a).v), parts(a), 1 / parts(a).v);
}

export function sin(a: Term): Dual {
  return chained(Math.sin(parts(a).v), parts(a), Math.cos(parts(a).v));
}

export function cos(a: Term): Dual {
  return chained(Math.cos(parts(a).v), parts(a), -Math.sin(parts(a).v));
}

export function atan(a: Term): Dual {
  return chained(Math.atan(parts(a).v), parts(a), 1 / (1 + parts(a).v ** 2));
}

/** Base above zero. */
export function pow(base: Term, exponent: Term): Dual {
  const [a, b] = [parts(base), parts(exponent)];
  const value = a.v ** b.v;
  return joined(value, a, b.v * a.v ** (b.v - 1), b, value * Math.log(a.v));
}

export function square(a: Term): Dual {
  return mul(a, a);
}
