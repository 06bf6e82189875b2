/** The demo's wheel ends: invented units of a county road department, pictures rendered; their truth lies beside them. */
import type { WheelEnd } from '../../record/wheel-end.ts';

export type DemoSet = {
  readonly folder: 'pair-tape' | 'clip-tape' | 'pair-band';
  readonly files: readonly string[];
  readonly unit: string;
  readonly position: WheelEnd['position'];
};

export const DEMO_SETS: readonly DemoSet[] = [
  {
    folder: 'pair-tape',
    files: ['released.jpg', 'applied.jpg'],
    unit: 'Gravel trailer GT-14',
    position: { axle: 2, side: 'left' },
  },
  {
    folder: 'clip-tape',
    files: ['application.mp4'],
    unit: 'Gravel trailer GT-14',
    position: { axle: 3, side: 'right' },
  },
  {
    folder: 'pair-band',
    files: ['released.jpg', 'applied.jpg'],
    unit: 'Gravel trailer GT-09',
    position: { axle: 1, side: 'right' },
  },
];

/** A whole inspection of another invented unit, with the pictures that its record names. Places below the sample media. */
export const DEMO_INSPECTION = {
  record: 'inspection/record.json',
  pictures: [
    'inspection/gauge.jpg',
    'pair-tape/released.jpg',
    'pair-tape/applied.jpg',
    'inspection/axle-1-right/released.jpg',
    'inspection/axle-1-right/applied.jpg',
    'inspection/axle-2-left-found/released.jpg',
    'inspection/axle-2-left-found/applied.jpg',
    'inspection/axle-2-left-repaired/released.jpg',
    'inspection/axle-2-left-repaired/applied.jpg',
    'inspection/axle-2-right/released.jpg',
    'inspection/axle-2-right/pulled.jpg',
    'inspection/axle-2-right/applied.jpg',
  ],
} as const;
