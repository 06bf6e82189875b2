import { version } from '../../../package.json';

/** Of the program whose engine gave the results. */
export const ENGINE_VERSION = version;
