/** The decoded pictures round the playhead; those farthest from it go first. */
export class PictureRing {
  readonly #size: number;
  readonly #pictures = new Map<number, ImageBitmap>();

  constructor(size: number) {
    this.#size = size;
  }

  get(index: number): ImageBitmap | undefined {
    return this.#pictures.get(index);
  }

  /** Whether a picture of that frame would stay. */
  wants(index: number, playhead: number): boolean {
    return Math.abs(index - playhead) < this.#size && !this.#pictures.has(index);
  }

  keep(index: number, picture: ImageBitmap, playhead: number): void {
    this.#pictures.get(index)?.close();
    this.#pictures.set(index, picture);
    while (this.#pictures.size > this.#size) {
      const [farthest] = [...this.#pictures.keys()].sort(
        (a, b) => Math.abs(b - playhead) - Math.abs(a - playhead),
      );
      if (farthest === undefined) return;
      this.#pictures.get(farthest)?.close();
      this.#pictures.delete(farthest);
    }
  }

  clear(): void {
    for (const picture of this.#pictures.values()) picture.close();
    this.#pictures.clear();
  }
}
