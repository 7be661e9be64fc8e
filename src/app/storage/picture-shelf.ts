/** Pictures that lie under a site's drawing, kept on this device and sent nowhere: a list a site, and the bytes of small pictures. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { GroundPicture } from '../picture-state.ts';

interface Shape extends DBSchema {
  lists: { key: string; value: readonly GroundPicture[] };
  bytes: { key: string; value: Blob };
}

export interface PictureShelf {
  list(site: string): Promise<readonly GroundPicture[]>;
  setList(site: string, list: readonly GroundPicture[]): Promise<void>;
  bytes(id: string): Promise<Blob | null>;
  setBytes(id: string, bytes: Blob): Promise<void>;
  remove(id: string): Promise<void>;
}

export function pictureShelf(name = 'meadowpost-pictures'): PictureShelf {
  let opened: Promise<IDBPDatabase<Shape>> | null = null;
  const open = () => {
    opened ??= openDB<Shape>(name, 1, {
      upgrade(db) {
        db.createObjectStore('lists');
        db.createObjectStore('bytes');
      },
      terminated: () => {
        opened = null;
      },
    });
    return opened;
  };
  return {
    list: async (site) => (await (await open()).get('lists', site)) ?? [],
    setList: async (site, list) => {
      await (await open()).put('lists', list, site);
    },
    bytes: async (id) => (await (await open()).get('bytes', id)) ?? null,
    setBytes: async (id, bytes) => {
      await (await open()).put('bytes', bytes, id);
    },
    remove: async (id) => {
      await (await open()).delete('bytes', id);
    },
  };
}
