import type { InspectionRecord } from '../../record/record.ts';

export const recordFileName = (record: InspectionRecord) => `${stemOf(record)}.json`;
export const packageFileName = (record: InspectionRecord) => `${stemOf(record)}-evidence.zip`;
export const stampedFileName = (name: string) => name.replace(/(\.zip)?$/i, '-stamped.zip');
export const recheckFileName = (name: string) => name.replace(/(\.zip)?$/i, '-recheck.json');
export const reportFileName = (record: InspectionRecord) => `${stemOf(record)}-report.html`;

/** Unit and day, in letters that every file system takes. */
function stemOf({ vehicle, createdAt }: InspectionRecord): string {
  const unit = vehicle.unit
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  return `strokewitness-${unit || 'wheel-end'}-${createdAt.slice(0, 10)}`;
}
