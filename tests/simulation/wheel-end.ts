/** A simulated wheel end: exact arc of the pin, exact swivel of the stiff rod, in the chamber frame of scene.ts. */
import type { Draw } from '../../src/basics/random.ts';
import type { BrakeState } from '../../src/marks/view.ts';
import type { SceneOptions } from './scene-options.ts';

export type WheelEnd = ReturnType<typeof drawWheelEnd>;

export function drawWheelEnd(draw: Draw, hand: 1 | -1, options: SceneOptions) {
  const stampedMm = [127, 139.7, 152.4, 165.1][Math.floor(draw.uniform(0, 3.999))] as number;
  const armMm = options.armMm ?? (options.typical ? 146 : stampedMm);
  const drawnBandMm = [161.93, 172.24, 183.36, 205.58][Math.floor(draw.uniform(0, 3.999))] as number;
  const bandMm = options.bandMm ?? drawnBandMm;
  const releasedX = draw.uniform(90, 180);
  const strokeMm = options.strokeMm ?? draw.uniform(25, 70);
  const innerMm = draw.normal(85, 20);
  const releasedAngle = ((95 + draw.uniform(0, 18)) * Math.PI) / 180;
  const pinY = draw.normal(0, 7);
  // Camshaft from the released pin: the arm makes the angle with the direction back along the axis.
  const camshaft = [
    releasedX - armMm * Math.cos(releasedAngle),
    pinY + armMm * Math.sin(releasedAngle),
  ] as const;
  const onArc = (x: number) => camshaft[1] - Math.sqrt(armMm ** 2 - (x - camshaft[0]) ** 2);
  const appliedX = releasedX + strokeMm;
  const appliedY = onArc(appliedX);
  const pulledX = releasedX + (options.freeStrokeMm ?? 0);
  const rodLength = Math.hypot(releasedX + innerMm, pinY);
  const stateOf = (x: number, y: number) => {
    const innerX = x - Math.sqrt(rodLength ** 2 - y ** 2);
    const rodYAtFace = (y * -innerX) / (x - innerX);
    const rod = [innerX - x, -y] as const;
    const arm = [camshaft[0] - x, camshaft[1] - y] as const;
    const angle = Math.acos((rod[0] * arm[0] + rod[1] * arm[1]) / (Math.hypot(...rod) * Math.hypot(...arm)));
    return { pin: [x, y] as const, rodYAtFace, angle };
  };
  const states = {
    released: stateOf(releasedX, pinY),
    applied: stateOf(appliedX, appliedY),
    pulled: stateOf(pulledX, onArc(pulledX)),
  };
  return {
    hand,
    armMm,
    bandMm,
    bandX: draw.normal(-55, 20),
    camshaft,
    states,
    pinDepth: draw.normal(-22, 6),
    faceDepth: draw.normal(-6, 4),
    camshaftDepth: draw.normal(-28, 12),
    truth: {
      strokeMm,
      armAngleReleasedRad: states.released.angle,
      armAngleAppliedRad: states.applied.angle,
      straightLineChangeMm: Math.hypot(appliedX, appliedY) - Math.hypot(releasedX, pinY),
      releasedReachMm: releasedX,
    },
  };
}

/** The pin's place while something is laid beside it: in that state, or in the middle of the stroke where it lies there for all. */
export function pinBeside(
  wheelEnd: WheelEnd,
  state: BrakeState,
  unmoved: boolean,
): readonly [number, number] {
  const { released, applied } = wheelEnd.states;
  if (!unmoved) return wheelEnd.states[state].pin;
  return [(released.pin[0] + applied.pin[0]) / 2, (released.pin[1] + applied.pin[1]) / 2];
}
