// Before a command: the packages it needs. Whoever calls it sends its output to stderr.
import { setUpPackages } from './setup.mjs';

setUpPackages();
