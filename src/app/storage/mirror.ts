/**
 * A second copy of every site's newest state, in the browser's private files, because a damaged database can open as an
 * empty one without a word. Written content first, read back, and only then named in the manifest.
 */
import { sha256 } from '../digest.ts';

export interface Manifest {
  readonly site: string;
  readonly rev: number;
  readonly name: string;
  readonly saved: number;
  readonly sha256: string;
  readonly file: string;
}

export interface Mirror {
  list(): Promise<Manifest[]>;
  /** The body, or null when it is missing or is not what the manifest says. */
  read(manifest: Manifest): Promise<string | null>;
  /** Does nothing when a newer copy is there already. */
  write(copy: Omit<Manifest, 'file'>, body: string): Promise<void>;
}

const folder = 'meadowpost-sites';

/** Null where the browser has no private files or does not let a page write them. */
export async function privateFilesMirror(name = folder): Promise<Mirror | null> {
  try {
    const root = await navigator.storage.getDirectory();
    const dir = await root.getDirectoryHandle(name, { create: true });
    if (!('createWritable' in FileSystemFileHandle.prototype)) return null;
    return mirrorIn(dir);
  } catch {
    return null;
  }
}

function mirrorIn(dir: FileSystemDirectoryHandle): Mirror {
  const list = async () => {
    const found: Manifest[] = [];
    for await (const name of dir.keys()) {
      if (!name.endsWith('.manifest.json')) continue;
      const manifest = parseManifest(await textOf(dir, name));
      if (manifest) found.push(manifest);
    }
    return found;
  };
  const read = async (manifest: Manifest) => {
    const body = await textOf(dir, manifest.file);
    return body !== null && (await sha256(body)) === manifest.sha256 ? body : null;
  };
  return {
    list,
    read,
    write: async (copy, body) => {
      const base = encodeURIComponent(copy.site);
      const manifest = { ...copy, file: `${base}.${copy.rev}.${copy.sha256.slice(0, 8)}.json` };
      const before = parseManifest(await textOf(dir, `${base}.manifest.json`));
      if (before && before.saved > copy.saved) return;
      if (before?.sha256 === copy.sha256 && before.rev === copy.rev && (await read(before)) !== null) return;
      await put(dir, manifest.file, body);
      if ((await read(manifest)) === null) throw new Error('The second copy could not be read back.');
      await put(dir, `${base}.manifest.json`, JSON.stringify(manifest));
      if (before && before.file !== manifest.file) await dir.removeEntry(before.file).catch(() => undefined);
    },
  };
}

async function put(dir: FileSystemDirectoryHandle, name: string, text: string): Promise<void> {
  const handle = await dir.getFileHandle(name, { create: true });
  const stream = await handle.createWritable();
  await stream.write(text);
  await stream.close();
}

async function textOf(dir: FileSystemDirectoryHandle, name: string): Promise<string | null> {
  try {
    return await (await (await dir.getFileHandle(name)).getFile()).text();
  } catch {
    return null;
  }
}

function parseManifest(text: string | null): Manifest | null {
  try {
    const value = JSON.parse(text ?? '') as Manifest;
    return typeof value.site === 'string' && typeof value.file === 'string' && Number.isInteger(value.rev)
      ? value
      : null;
  } catch {
    return null;
  }
}
