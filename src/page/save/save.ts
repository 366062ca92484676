import type { SavedFile } from '../messages.ts';

/** Hands a file to the browser to save. The address is freed late: it is read after the click. */
const save = ({ name, bytes, type }: SavedFile): void =>
  saveBlob(name, new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));

export function saveBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Several, one after the other: of four at once one engine saves only the last. */
export async function saveAll(files: readonly SavedFile[]): Promise<void> {
  for (const [i, file] of files.entries()) {
    if (i > 0) await new Promise((done) => setTimeout(done, 300));
    save(file);
  }
}
