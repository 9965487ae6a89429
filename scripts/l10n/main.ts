// no-unit-test: writes what bundle.ts finds
import fs from 'node:fs/promises';
import path from 'node:path';
import { BUNDLE, bundleOf } from './bundle';

void bundleOf(process.cwd()).then(text => fs.writeFile(path.resolve(BUNDLE), text));
