import type { SavedFile } from '../messages.ts';
import { say } from '../say.ts';
import { startWorker } from '../state/worker.ts';
import { chooseDirectory, writeInto } from './directory.ts';
import { saveBlob } from './save.ts';

/** Where everything of a folder of people goes, file by file. */
export interface Target {
  add(files: SavedFile[]): Promise<void>;
  /** All is there. */
  end(): Promise<void>;
  /** Frees what it holds, whether all is there or not. */
  close(): void;
  saved: string;
  failed(reason: string): string;
}

/** Asked for at once by whoever pressed the button. A text: why nothing can be saved there. Nothing: nobody chose. */
export function openTarget(into: 'zip' | 'folder', name: string): Promise<Target | string | undefined> {
  return into === 'zip' ? Promise.resolve(zipTarget(name)) : folderTarget();
}

/** An archive packed by a worker of its own, of which the page holds what is ready. */
function zipTarget(name: string): Target {
  const worker = startWorker();
  const parts: Blob[] = [];
  const pack = async (files: SavedFile[], last: boolean): Promise<void> => {
    const buffers = files.map(({ bytes }) => bytes.buffer as ArrayBuffer);
    const ready = await worker.ask('pack', { files, last }, buffers);
    // Engines keep large Blobs out of the page's memory.
    if (ready.length > 0) parts.push(new Blob([ready as Uint8Array<ArrayBuffer>]));
  };
  return {
    add: (files) => pack(files, false),
    async end() {
      await pack([], true);
      saveBlob(name, new Blob(parts, { type: 'application/zip' }));
    },
    close: worker.stop,
    saved: say('folder.saved'),
    failed: (reason) => say('folder.unsaved', { reason }),
  };
}

async function folderTarget(): Promise<Target | string | undefined> {
  const chosen = await chooseDirectory();
  if (!chosen) return undefined;
  // Nothing that lies there is written over, least of all the exports themselves.
  for await (const _ of chosen.keys()) return say('folder.notEmpty');
  const folders = new Map<string, FileSystemDirectoryHandle>();
  const folderAt = async (name: string): Promise<FileSystemDirectoryHandle> => {
    const known = folders.get(name) ?? (await chosen.getDirectoryHandle(name, { create: true }));
    folders.set(name, known);
    return known;
  };
  return {
    async add(files) {
      for (const { name, bytes } of files) {
        const parts = name.split('/');
        const at = parts.length > 1 ? await folderAt(parts[0]!) : chosen;
        await writeInto(at, parts.at(-1)!, bytes);
      }
    },
    end: async () => {},
    close: () => {},
    saved: say('folder.saved'),
    failed: (reason) => say('folder.unsaved', { reason }),
  };
}
