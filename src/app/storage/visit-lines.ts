/** The second copy of the visits: a file a site in the browser's private files, one line a record, only ever made longer. */

/** One record: a visit, or the mark that one was undone. `hash` is that of `body`, so a damaged record is noticed. */
export interface LogRecord {
  readonly site: string;
  readonly hash: string;
  readonly body: string;
}

export interface VisitLines {
  read(site: string): Promise<LogRecord[]>;
  append(records: readonly LogRecord[]): Promise<void>;
}

const folder = 'meadowpost-visits';

/** Null where the browser has no private files a page can write. */
export async function privateVisitLines(name = folder): Promise<VisitLines | null> {
  try {
    const root = await navigator.storage.getDirectory();
    const dir = await root.getDirectoryHandle(name, { create: true });
    if (!('createWritable' in FileSystemFileHandle.prototype)) return null;
    return linesIn(dir);
  } catch {
    return null;
  }
}

function linesIn(dir: FileSystemDirectoryHandle): VisitLines {
  return {
    async read(site) {
      const file = await dir
        .getFileHandle(fileName(site))
        .then((handle) => handle.getFile())
        .catch(() => null);
      return file ? parseLines(site, await file.text()) : [];
    },
    async append(records) {
      for (const site of new Set(records.map((record) => record.site))) {
        const own = records.filter((record) => record.site === site);
        await appendTo(dir, fileName(site), own.map(lineOf).join(''));
      }
    },
  };
}

/** Names of files may not hold everything a site's id may. */
const fileName = (site: string) => `${encodeURIComponent(site).slice(0, 200)}.jsonl`;

const lineOf = ({ hash, body }: LogRecord) => `${JSON.stringify({ hash, body })}\n`;

async function appendTo(dir: FileSystemDirectoryHandle, name: string, text: string): Promise<void> {
  const handle = await dir.getFileHandle(name, { create: true });
  const { size } = await handle.getFile();
  const stream = await handle.createWritable({ keepExistingData: true });
  await stream.seek(size);
  await stream.write(text);
  await stream.close();
}

/** Records of the lines that are whole; a line cut off by a crash is left out. */
export function parseLines(site: string, text: string): LogRecord[] {
  const seen = new Map<string, LogRecord>();
  for (const line of text.split('\n')) {
    const record = parseLine(site, line);
    if (record) seen.set(record.hash, record);
  }
  return [...seen.values()];
}

function parseLine(site: string, line: string): LogRecord | null {
  try {
    const { hash, body } = JSON.parse(line) as Partial<LogRecord>;
    return typeof hash === 'string' && typeof body === 'string' ? { site, hash, body } : null;
  } catch {
    return null;
  }
}
