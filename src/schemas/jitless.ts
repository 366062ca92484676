import { config } from 'zod';

// A schema is asked once or twice a run: writing and compiling a function for it would take longer than its answer.
config({ jitless: true });
