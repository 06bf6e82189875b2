/**
 * What JPEG coding does to gray levels: blocks of 8 x 8 go through the cosine transform and its coefficients are rounded.
 *
 * Source  ITU-T T.81 (JPEG), A.3.3 and table K.1 (from memory); the scaling by quality is the Independent JPEG Group's usual
 *         one: (200 - 2 quality) % of the table above quality 50.
 */
const STEPS = [
  16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22,
  29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103,
  121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99,
];

const N = 8;
const BASIS = Float64Array.from({ length: N * N }, (_, at) => {
  const [frequency, place] = [Math.floor(at / N), at % N];
  const scale = frequency === 0 ? Math.sqrt(1 / N) : Math.sqrt(2 / N);
  return scale * Math.cos(((2 * place + 1) * frequency * Math.PI) / (2 * N));
});

export function jpegLoss(values: Uint8Array, widthPx: number, heightPx: number, quality: number): Uint8Array {
  const steps = STEPS.map((step) => Math.max(1, Math.round((step * (200 - 2 * quality)) / 100)));
  const coded = new Uint8Array(values.length);
  for (let top = 0; top < heightPx; top += N)
    for (let left = 0; left < widthPx; left += N) {
      const at = (row: number, column: number) =>
        Math.min(heightPx - 1, top + row) * widthPx + Math.min(widthPx - 1, left + column);
      const block = Float64Array.from(
        { length: N * N },
        (_, i) => (values[at(Math.floor(i / N), i % N)] ?? 0) - 128,
      );
      const rounded = transformed(block, false).map((value, i) => {
        const step = steps[i] as number;
        return step * Math.round(value / step);
      });
      transformed(rounded, true).forEach((value, i) => {
        const [row, column] = [Math.floor(i / N), i % N];
        if (top + row < heightPx && left + column < widthPx)
          coded[at(row, column)] = Math.max(0, Math.min(255, Math.round(value + 128)));
      });
    }
  return coded;
}

function transformed(block: Float64Array, back: boolean): Float64Array {
  const weight = (to: number, from: number) => BASIS[back ? from * N + to : to * N + from] as number;
  const pass = (values: Float64Array, index: (line: number, at: number) => number) => {
    const result = new Float64Array(N * N);
    for (let line = 0; line < N; line++)
      for (let to = 0; to < N; to++) {
        let sum = 0;
        for (let from = 0; from < N; from++) sum += weight(to, from) * (values[index(line, from)] as number);
        result[index(line, to)] = sum;
      }
    return result;
  };
  return pass(
    pass(block, (line, at) => line * N + at),
    (line, at) => at * N + line,
  );
}
