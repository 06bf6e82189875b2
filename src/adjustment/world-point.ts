/**
 * A point of the chamber frame (mm) with its derivatives by the unknowns it depends on. Filled anew for every mark in every
 * iteration: new objects would cost more here than the geometry itself.
 */

/** A point on the tape's edge depends on ten unknowns, the spot that was followed beside it on two more. */
const MOST_UNKNOWNS = 12;

export class WorldPoint {
  readonly at: [number, number, number] = [0, 0, 0];
  readonly indexes = new Int32Array(MOST_UNKNOWNS);
  /** Three for each unknown: dx, dy, dz. */
  readonly derivatives = new Float64Array(3 * MOST_UNKNOWNS);
  unknowns = 0;

  /** Begins a new point. */
  place(x: number, y: number, z: number): void {
    this.at[0] = x;
    this.at[1] = y;
    this.at[2] = z;
    this.unknowns = 0;
  }

  by(index: number, dx: number, dy: number, dz: number): void {
    const k = 3 * this.unknowns;
    this.indexes[this.unknowns++] = index;
    this.derivatives[k] = dx;
    this.derivatives[k + 1] = dy;
    this.derivatives[k + 2] = dz;
  }

  /** In addition to what it may depend on that unknown by already. */
  byMore(index: number, dx: number, dy: number, dz: number): void {
    const known = this.indexes.subarray(0, this.unknowns).indexOf(index);
    if (known < 0) {
      this.by(index, dx, dy, dz);
      return;
    }
    const k = 3 * known;
    this.derivatives[k] = (this.derivatives[k] as number) + dx;
    this.derivatives[k + 1] = (this.derivatives[k + 1] as number) + dy;
    this.derivatives[k + 2] = (this.derivatives[k + 2] as number) + dz;
  }
}
