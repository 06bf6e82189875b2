/** The manifest: what a package holds. Its exact bytes are what is signed. */
import { z } from 'zod';
import { isPackagePath, PATH_LIMIT_CHARACTERS, ROLES, roleOfPath } from './package-path.ts';
import { ZIP_LIMIT_BYTES } from './zip-layout.ts';

export const PACKAGE_FORMAT = 'strokewitness-package';
export const PACKAGE_VERSION = 1;
export const PACKAGE_LIMIT_FILES = 5000;
/** No reader takes a larger one. */
export const MANIFEST_LIMIT_BYTES = 4e6;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

const fileSchema = z
  .strictObject({
    path: z.string().max(PATH_LIMIT_CHARACTERS).refine(isPackagePath),
    role: z.enum(ROLES),
    sizeBytes: z.int().min(0).max(ZIP_LIMIT_BYTES),
    sha256,
  })
  .readonly();

const ruleSetUsedSchema = z
  .strictObject({
    id: z.string().min(1).max(64),
    title: z.string().max(400),
    editions: z.array(z.string().max(900)).max(50).readonly(),
    /** Of the rule set's canonical JSON. */
    sha256,
  })
  .readonly();

export const manifestSchema = z
  .strictObject({
    format: z.literal(PACKAGE_FORMAT),
    version: z.literal(PACKAGE_VERSION),
    /** By the clock of the device, which nobody attests. */
    madeAt: z.iso.datetime(),
    /** Version of the program whose engine gave the results. */
    engine: z.string().min(1).max(40),
    /** The rule sets that the findings rest on. */
    ruleSets: z.array(ruleSetUsedSchema).max(20).readonly(),
    /** In the order in which they follow manifest.json and signature.json. */
    files: z.array(fileSchema).min(2).max(PACKAGE_LIMIT_FILES).readonly(),
  })
  .readonly()
  .refine(({ files }) => files.every(({ path, role }) => roleOfPath(path) === role), {
    error: 'a role that does not fit its path',
  })
  .refine(({ files }) => new Set(files.map(({ path }) => path)).size === files.length, {
    error: 'a path that comes twice',
  })
  .refine(({ files }) => files[0]?.role === 'record' && files[1]?.role === 'results', {
    error: 'record and results come first',
  });

export type Manifest = z.infer<typeof manifestSchema>;
export type RuleSetUsed = z.infer<typeof ruleSetUsedSchema>;
