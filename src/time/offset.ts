/** Marks a wall clock that was written without an offset from UTC. */
export const NO_OFFSET = -32768;
