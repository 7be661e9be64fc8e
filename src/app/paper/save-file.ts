/** Hands a file to the person: nothing is sent anywhere. */

/** Longest file name before its ending (ours: short enough for every file system). */
const longest = 60;

/** The browser's own download. */
export function saveFile(name: string, type: string, body: BlobPart): void {
  const url = URL.createObjectURL(new Blob([body], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has its own hold on the bytes once it has begun.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** "Tansy Hollow Park" → "tansy-hollow-park.gpx": letters, figures and dashes of any alphabet; "site" when none is left. */
export function fileName(name: string, ending: string): string {
  const words = name.slice(0, 1000).normalize('NFKC').toLowerCase();
  const plain = words.replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  const cut = [...plain].slice(0, longest).join('').replace(/-+$/, '');
  return `${cut || 'site'}${ending}`;
}
