/** A file of a person, not yet read. */
export interface Picked {
  path: string;
  file: File;
}

/**
 * Files of a drop, folders walked through. Handles where there are any: opened from disk, one engine refuses to open the
 * entries of the older way. Both are asked for before the first await: the list of a drop is empty afterwards.
 */
export async function droppedFiles(transfer: DataTransfer): Promise<Picked[]> {
  const asked = [...transfer.items]
    .filter(({ kind }) => kind === 'file')
    .map((item) => {
      const handle = (item as { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> }).getAsFileSystemHandle;
      return handle ? handle.call(item) : (item.webkitGetAsEntry?.() ?? item.getAsFile());
    });
  const found: Picked[] = [];
  for (const one of await Promise.all(asked)) {
    if (one === null) continue;
    if (one instanceof File) found.push({ path: one.name, file: one });
    else if ('kind' in one) await walkHandle(one, one.name, found);
    else await walkEntry(one, found);
  }
  // Engines give a folder in an order of their own.
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** A folder that holds nothing is somebody's too. */
const emptyFolder = (path: string): Picked => ({ path: `${path}/`, file: new File([], '') });

async function walkHandle(handle: FileSystemHandle, path: string, found: Picked[]): Promise<void> {
  if (handle.kind === 'file') {
    found.push({ path, file: await (handle as FileSystemFileHandle).getFile() });
    return;
  }
  const folder = handle as FileSystemDirectoryHandle & { values(): AsyncIterable<FileSystemHandle> };
  const before = found.length;
  for await (const one of folder.values()) await walkHandle(one, `${path}/${one.name}`, found);
  if (found.length === before) found.push(emptyFolder(path));
}

async function walkEntry(entry: FileSystemEntry, found: Picked[]): Promise<void> {
  if (entry.isFile) {
    const file = await new Promise<File>((done, fail) => (entry as FileSystemFileEntry).file(done, fail));
    found.push({ path: entry.fullPath.replace(/^\//, ''), file });
    return;
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const before = found.length;
  // At most a hundred a call: asked until there are none.
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) {
      if (found.length === before) found.push(emptyFolder(entry.fullPath.replace(/^\//, '')));
      return;
    }
    for (const one of some) await walkEntry(one, found);
  }
}

/** Of a file button, with or without folders. */
export const chosenFiles = ({ files }: HTMLInputElement): Picked[] =>
  [...(files ?? [])]
    .map((file) => ({ path: file.webkitRelativePath || file.name, file }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));

/** Files that were copied elsewhere; or a table, which becomes a file of its own. */
export function pastedFiles(data: DataTransfer): Picked[] {
  const files = [...data.files].map((file) => ({ path: file.name, file }));
  const text = data.getData('text/plain');
  return files.length > 0 || !text.includes('\n') ? files : [pastedTable(text)];
}

export function pastedTable(text: string): Picked {
  const file = new File([text], 'pasted-table.csv', { type: 'text/csv' });
  return { path: file.name, file };
}
