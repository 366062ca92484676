import { setFlagsFromString } from 'node:v8';

/*
 * The engine translates a function into fast machine code once it has run for some time. A single report is over before
 * most of that work pays: with eight times the patience it takes half the processor time, and a year of one-minute
 * readings no more than before (docs/performance.md). A folder of people runs long enough for the engine's own measure.
 */
const OWN = 132 * 1024;

/** Before the program is compiled: what the engine keeps of an earlier compilation fits only under the same flags. */
export function forOneReport(): void {
  setFlagsFromString(`--interrupt-budget=${8 * OWN}`);
}

/**
 * Workers keep every core busy, so helpers that look through memory for them take the time of one of them: without these
 * a person costs about a tenth less processor time, and one worker alone is as fast as before.
 */
export function forManyPeople(): void {
  setFlagsFromString(`--interrupt-budget=${OWN}`);
  setFlagsFromString('--no-concurrent-marking');
  setFlagsFromString('--no-parallel-scavenge');
  // What outlives a person is small, so the engine, which looks through all memory once it has grown by half, would do so for
  // every ninth person. To let it double first takes a twentieth off a person for some 12 MB a worker.
  setFlagsFromString('--heap-growing-percent=100');
}

/** People after whom what a worker runs often is compiled. */
export const PRACTISED = 100;

/**
 * From then on as patient as one report: what is compiled later runs so little for each person that compiling it costs more
 * than it saves.
 */
export function forPractisedWorkers(): void {
  setFlagsFromString(`--interrupt-budget=${8 * OWN}`);
}
