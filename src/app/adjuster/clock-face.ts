/** Shapes of the clock face, in its own units: centre (0, 0), y down, angles clockwise from the right as in a picture. */
export const RIM = 100;

type Point = readonly [x: number, y: number];

export function onRim(angleRad: number, radius: number): Point {
  return [round(radius * Math.cos(angleRad)), round(radius * Math.sin(angleRad))];
}

/** How a name outside the rim stands to its place, so that it does not run over the rim. */
export function anchorAt(angleRad: number): 'start' | 'middle' | 'end' {
  const right = Math.cos(angleRad);
  return Math.abs(right) < 0.26 ? 'middle' : right > 0 ? 'start' : 'end';
}

export function handPath(angleRad: number, from: number, to: number): string {
  return `M${onRim(angleRad, from)}L${onRim(angleRad, to)}`;
}

/** From one angle to another the way that is meant, up to a whole turn. */
export function arcPath(fromRad: number, toRad: number, radius: number): string {
  const turn = Math.min(Math.abs(toRad - fromRad), 2 * Math.PI - 1e-3);
  const end = fromRad + Math.sign(toRad - fromRad) * turn;
  const large = turn > Math.PI ? 1 : 0;
  const clockwise = toRad > fromRad ? 1 : 0;
  return `M${onRim(fromRad, radius)}A${radius} ${radius} 0 ${large} ${clockwise} ${onRim(end, radius)}`;
}

export function sectorPath(fromRad: number, toRad: number, radius: number): string {
  return `${arcPath(fromRad, toRad, radius)}L0 0Z`;
}

/** An arrow head that lies on the arc and points along it. */
export function arrowPath(atRad: number, radius: number, clockwise: boolean): string {
  const back = atRad + (clockwise ? -1 : 1) * (15 / radius);
  return `M${onRim(atRad, radius)}L${onRim(back, radius + 3)}L${onRim(back, radius - 3)}Z`;
}

export function hexPath(radius: number): string {
  const corners = Array.from({ length: 6 }, (_corner, i) => onRim((i * Math.PI) / 3, radius));
  return `M${corners.join('L')}Z`;
}

const round = (value: number) => Math.round(value * 100) / 100;
