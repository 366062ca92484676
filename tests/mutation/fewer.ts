import fc from 'fast-check';

/** A quarter of the usual examples: a mutant that only a rare one notices wants a test of its own. */
fc.configureGlobal({ ...fc.readConfigureGlobal(), numRuns: 25 });
