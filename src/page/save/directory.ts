import type { SavedFile } from '../messages.ts';

export type Directory = FileSystemDirectoryHandle & { keys(): AsyncIterable<string> };
interface Picker {
  showDirectoryPicker?(asked: { mode: 'readwrite' }): Promise<Directory>;
}

/** Whether this engine writes into a folder that somebody chose. */
export const writesFolders = (): boolean => (globalThis as Picker).showDirectoryPicker !== undefined;

/** Asked for at once by whoever pressed the button; nothing: nobody chose. */
export async function chooseDirectory(): Promise<Directory | undefined> {
  try {
    return await (globalThis as Picker).showDirectoryPicker!({ mode: 'readwrite' });
  } catch {
    return undefined;
  }
}

export async function writeInto(directory: FileSystemDirectoryHandle, name: string, bytes: Uint8Array): Promise<void> {
  const file = await (await directory.getFileHandle(name, { create: true })).createWritable();
  // A file appears whole, when it is closed.
  await file.write(bytes as Uint8Array<ArrayBuffer>);
  await file.close();
}

/** Writes all files, or none where one of the same name lies there: those are given back. */
export async function writeAllInto(directory: Directory, files: readonly SavedFile[]): Promise<string[]> {
  const there = new Set<string>();
  for await (const name of directory.keys()) there.add(name);
  const clash = files.map(({ name }) => name).filter((name) => there.has(name));
  if (clash.length === 0) for (const { name, bytes } of files) await writeInto(directory, name, bytes);
  return clash;
}
