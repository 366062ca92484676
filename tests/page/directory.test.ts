import { expect, test } from 'vitest';
import { type Directory, writeAllInto } from '../../src/page/save/directory.ts';

/** A folder in memory, as the File System standard of the WHATWG names its parts; a file is there once it is closed. */
function folder(there: Record<string, string>): { directory: Directory; files: Map<string, string> } {
  const files = new Map(Object.entries(there));
  const getFileHandle = async (name: string) => ({
    async createWritable() {
      let text = '';
      return {
        async write(bytes: Uint8Array) {
          text += new TextDecoder().decode(bytes);
        },
        close: async () => void files.set(name, text),
      };
    },
  });
  async function* keys() {
    yield* files.keys();
  }
  return { directory: { keys, getFileHandle } as unknown as Directory, files };
}

const file = (name: string, text: string) => ({ name, type: '', bytes: new TextEncoder().encode(text) });

test('files go into a folder beside what lies there', async () => {
  const { directory, files } = folder({ 'letter.txt': 'theirs' });
  expect(await writeAllInto(directory, [file('a.pdf', 'one'), file('b.json', 'two')])).toEqual([]);
  expect(Object.fromEntries(files)).toEqual({ 'letter.txt': 'theirs', 'a.pdf': 'one', 'b.json': 'two' });
});

test('where one would be written over, none is written, and its name comes back', async () => {
  const { directory, files } = folder({ 'b.json': 'theirs' });
  expect(await writeAllInto(directory, [file('a.pdf', 'one'), file('b.json', 'two')])).toEqual(['b.json']);
  expect(Object.fromEntries(files)).toEqual({ 'b.json': 'theirs' });
});
