import fc from 'fast-check';

/**
 * The suite draws the same examples every time, so that it passes or fails for what was changed and nothing else. Other
 * examples: `PROPERTY_SEED=7 npm test`.
 */
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.PROPERTY_SEED ?? 20_261_125) });
