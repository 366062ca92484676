import { catalogues } from './catalogues.ts';
import { missing } from './recipes.ts';
import { tree } from './tree.ts';

/** Says what a unit that is being added still lacks; what is generated from it comes last. */
const lacking = missing(tree);
const stale = lacking.length > 0 ? [] : Object.entries(catalogues()).filter(([path, text]) => tree.text(path) !== text);
for (const line of [...lacking, ...stale.map(([path]) => `${path} is stale: run npm run docs`)]) console.error(line);
process.exitCode = lacking.length + stale.length === 0 ? 0 : 1;
