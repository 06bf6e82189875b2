import type { InspectionRecord } from '../../record/record.ts';

/** Unit and day, in letters that every file system takes. */
export function recordFileName({ vehicle, createdAt }: InspectionRecord): string {
  const unit = vehicle.unit
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  return `strokewitness-${unit || 'wheel-end'}-${createdAt.slice(0, 10)}.json`;
}
