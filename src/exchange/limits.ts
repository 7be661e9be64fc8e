/** How much a file may hold before it is said to be big, or refused. Ours; measured on a two-core machine (docs/exchange.md). */

const megabyte = 1024 * 1024;

export const importLimits = {
  /** Bytes above which a warning says that it will be slow. */
  warnBytes: 25 * megabyte,
  /** Bytes above which a file is not read; also of everything unpacked from a zip. */
  mostBytes: 150 * megabyte,
  /** Brackets or elements inside each other. */
  mostDepth: 32,
  mostVertices: 500_000,
  mostFeatures: 20_000,
  /** Files in a zip. */
  mostEntries: 1_000,
  /** Times a packed file may grow; text packs up to about 100:1, a bomb 1000:1. */
  mostGrowth: 250,
  /** Rows or columns of a picture or raster. */
  mostPixels: 50_000_000,
} as const;

/** "25 MB". */
export function megabytes(bytes: number): string {
  return `${Math.ceil(bytes / megabyte).toLocaleString('en-US')} MB`;
}
