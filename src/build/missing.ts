import { catalogues } from './catalogues.ts';
import { missing } from './recipes.ts';
import { tree } from './tree.ts';

/** Says what a unit that is being added still lacks; what is generated from it comes last. */
const told = missing(tree);
const stale = told.length > 0 ? [] : Object.entries(catalogues()).filter(([path, text]) => tree.text(path) !== text);
for (const line of [...told, ...stale.map(([path]) => `${path} is stale: run npm run docs`)]) console.error(line);
process.exitCode = told.length + stale.length === 0 ? 0 : 1;
