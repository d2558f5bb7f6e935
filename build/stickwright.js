/** The command line from a clone: builds first when stale, then runs it; nothing but its own output on standard output. */
import './check-node.js';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildIfStale, root } from './stale.js';

const built = buildIfStale();
if (built !== 0) process.exit(1);
await import(pathToFileURL(path.join(root, 'out/main/command-line.js')).href);
