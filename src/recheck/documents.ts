/** The JSON files of a package that go through a schema of their own; the record has its own door. */
import { manifestSchema, PACKAGE_FORMAT, PACKAGE_VERSION } from '../evidence/manifest.ts';
import { RESULTS_FORMAT, RESULTS_VERSION, resultsSchema } from '../evidence/results.ts';
import { SIGNATURE_FORMAT, SIGNATURE_VERSION, signatureSchema } from '../evidence/signature.ts';
import type { Kind } from './read-document.ts';

export const MANIFEST = kind('manifest.json', PACKAGE_FORMAT, PACKAGE_VERSION, manifestSchema);
export const SIGNATURE = kind('signature.json', SIGNATURE_FORMAT, SIGNATURE_VERSION, signatureSchema);
export const RESULTS = kind('results.json', RESULTS_FORMAT, RESULTS_VERSION, resultsSchema);

function kind<T>(path: string, format: string, version: number, schema: Kind<T>['schema']): Kind<T> {
  return { path, format, version, schema };
}
