/** Files on their way out of the window: saved, or handed to the device's share sheet where there is one. */

export interface OutFile {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

const fileOf = ({ name, type, text }: OutFile): File => new File([text], name, { type });

/** Share sheets take few kinds of file: JSON goes as plain text. Chromium refuses other kinds (from memory). */
const shareable = (file: OutFile): OutFile =>
  file.type === 'text/calendar' ? file : { ...file, name: `${file.name}.txt`, type: 'text/plain' };

/** Whether this device can share such a file. */
export function canShare(file: OutFile): boolean {
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [fileOf(shareable(file))] });
}

/** `cancelled` when the person closed the sheet. */
export async function shareFile(file: OutFile, title: string): Promise<'sent' | 'cancelled'> {
  try {
    await navigator.share({ files: [fileOf(shareable(file))], title });
    return 'sent';
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled';
    throw error;
  }
}

export function saveFile(file: OutFile): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(fileOf(file));
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A site's name as part of a file's name. */
export function fileWords(...parts: readonly string[]): string {
  return parts
    .map((part) =>
      part
        .toLowerCase()
        .normalize('NFKD')
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 40),
    )
    .filter((part) => part !== '')
    .join('-');
}
