import type { Picked } from './dropped.ts';
import { addFaces } from './reader.ts';
import type { Screen } from './screen.ts';
import type { State } from './state.ts';
import type { Worker } from './worker.ts';

/** A face of Chinese characters holds some 10 MB. */
const MOST = 60_000_000;

/** Takes files of faces, and shows the paper again; or says which of them is none. */
export async function bringFaces(
  state: State,
  files: readonly Picked[],
  begun: () => Worker,
  screen: Screen,
  show: () => Promise<void>,
): Promise<void> {
  const large = files.find(({ file }) => file.size > MOST);
  if (large) return screen.drawFaces([], large.path);
  const bytes = await Promise.all(files.map(async ({ file }) => new Uint8Array(await file.arrayBuffer())));
  const { wrong } = await addFaces(begun(), bytes);
  if (wrong !== null) screen.drawFaces([], files[wrong]?.path ?? '');
  else if (state.step === 'papers') await show();
  else {
    state.run?.lacking.clear();
    screen.draw();
  }
}
