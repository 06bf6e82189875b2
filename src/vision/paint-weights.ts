/** Weights of the over-stroke mark's judge. Written by tests/bench/assists-paint-fit.ts, which says how. */

/** Of the terms of paint-odds.ts. */
export const PLACE_WEIGHTS: readonly number[] = [
  -2.574, 13.935, -5.883, 2.131, 0.129, -0.345, 1.9, 1.756, 3.348, -1.672, 1.801, -2.684, 0.576, -0.568,
  -1.03, -1.992, -0.994, 1.097, -2.005, 2.029, -7.434, -5.841, 3.799, 6.3, 7.379, 0.596, -9.934, 3.448,
  -1.898, 1.013, -1.59,
];

export type RunWeights = {
  readonly bias: number;
  readonly weights: Readonly<Record<string, readonly number[]>>;
};

/** Of the properties of paint-score.ts, a weight for each piece between its knots. */
export const RED_WEIGHTS: RunWeights = {
  bias: -14.94,
  weights: {
    edge: [0.08, 0.64, 0.83, 1.07],
    drop: [0.1, 0.56, 0.22],
    'even-edge': [-0.22, 0.15, 0.19],
    'edge-across': [-1.05, 0.55],
    slope: [0.15, -0.87],
    aslant: [0.53, 0.89, -2.1],
    scatter: [-0.16, -0.56],
    width: [0.49, -0.4, 0.84],
    hue: [1.57, 0.01, -0.1, 0.04],
    amount: [0.59, -0.27, 0.01],
    covered: [-0.34, -0.31, 0.33],
    'rusty-rod': [-0.63, -0.22, -1.15],
    'above-the-rod': [1.66, 0.45, -1.07],
    'step-red': [4.44, 0.52, 1.2, 0.91],
    'step-green': [-1.05, -0.64, 0.26],
    'step-yellow': [0.56, -0.53, 0.75, -0.61],
    yellow: [-0.16, -0.54, -1.26, 0.2],
    'step-hue': [-0.05, 0.81, 0.52],
    'less-yellow': [-0.58, 0.32, 0.81],
    'red-past-it': [0.59, -0.04, 0.81],
    'yellow-past-it': [0.51, 0.09, -0.26],
    'mottled-past-it': [0.04, -0.55, 0.05],
    mottled: [-0.04, -0.21, -0.44],
    'hue-on-rod': [0.27, -0.24, 0.05],
    'hue-beside': [-1.46, -0.09, -0.75],
    about: [0.25, 0.55, 0.18],
    crosses: [-0.83, -0.46],
    'same-beside': [-0.14, 0.6],
    edgeless: [-1.26, -1.42],
    'at-face': [-0.06, 1.28],
    'goes-on-beside': [-0.66],
    'edge-beside': [-0.11, -0.16],
    'red-light': [0.02, -0.57],
    rival: [-0.41, 0.3, 0.29],
    'far-from-face': [0.07, -0.43, -1.31, -1.58],
    length: [8.59, -0.42, 0.43, -0.87],
  },
};

export const OTHER_WEIGHTS: RunWeights = {
  bias: 1.16,
  weights: {
    edge: [0.11, 0.3, -0.78, -0.25],
    drop: [0.75, -0.73, 0.05],
    'even-edge': [0.27, 0.42, 0.2],
    'edge-across': [-0.21, -0.67],
    slope: [-0.09, 0.01],
    width: [-1.07, -1.95, 0.23],
    hue: [0.47, 1.67, 1.42, 1.55],
    covered: [-1.39, 1.06, 1.06],
    'rusty-rod': [-0.94, -1.02, 0.42],
    'above-the-rod': [0.29, 1.02, -0.8],
    mottled: [0.27, -0.51, -0.5],
    'hue-on-rod': [-2.14, -0.88, 0.53],
    'hue-beside': [-0.91, 0.22, -0.05],
    about: [-1.33, -1.3, -0.12],
    crosses: [0.44, 0.62],
    'same-beside': [-0.2, 0.41],
    edgeless: [-1.82, 0.32],
    'at-face': [-1.1, -0.34],
    'goes-on-beside': [0.05],
    'edge-beside': [-0.21, -1.07],
    'far-from-face': [0.91, -0.31, 0.11, -1.13],
  },
};
