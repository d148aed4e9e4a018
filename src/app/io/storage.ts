/** Autosave: the project with its history's present state, kept in the browser's own database. */
import { openDB, type IDBPDatabase } from 'idb';

const DATABASE = 'swathscribe';
const STORE = 'kept';

export interface Kept {
  /** The project as a saved file. */
  readonly text: string;
  readonly stage: string;
  readonly at: number;
}

let opening: Promise<IDBPDatabase> | null = null;

function database(): Promise<IDBPDatabase> {
  opening ??= openDB(DATABASE, 1, { upgrade: (db) => void db.createObjectStore(STORE) });
  return opening;
}

export async function keep(key: string, value: unknown): Promise<void> {
  await (await database()).put(STORE, value, key);
}

export async function kept<T>(key: string): Promise<T | undefined> {
  return (await (await database()).get(STORE, key)) as T | undefined;
}
