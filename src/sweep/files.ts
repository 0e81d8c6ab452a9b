import { CalculationError } from '../units/index.js';
import { checkChannelMap } from './channel.js';
import { dayOf, logOptions, type LogFile, type ReadPullsOptions } from './day.js';
import type { Day, NotRead } from './set-up.js';
import { LONGEST_LOG } from './decode.js';
import { LogError, type LogErrorCode } from './errors.js';
import type { FindPullsOptions } from './find-pulls.js';
import type { Pull } from './pull.js';
import { readLogStream } from './read-log-stream.js';
import type { ReadingProgress } from './stream-options.js';

/** A folder with one sub-folder for each set-up, a list of logs, or the logs of each set-up by its name. */
export type PullSource = string | readonly string[] | Readonly<Record<string, readonly string[]>>;

/** How the logs of a day are read from files. */
export interface ReadFilesOptions extends ReadPullsOptions {
  /** How pulls are told in a log of more than 100 MB whose pulls no column numbers. */
  readonly findPulls?: FindPullsOptions | undefined;
  /** Called as files are read, for a long log several times. */
  readonly onProgress?: ((progress: ReadingProgress) => void) | undefined;
}

const LOG_NAME = /\.(csv|txt|tsv|log)$/i;
const RULE = 'Make one sub-folder for each set-up and put one log for each pull into it (.csv, .txt, .tsv or .log).';

interface Found {
  readonly files: { readonly path: string; readonly shown: string; readonly setup: string }[];
  readonly notRead: NotRead[];
}

/**
 * Reads a day of logs from files: a folder with one sub-folder for each set-up and one file for each pull, a list of files, or lists
 * by set-up. Files of other kinds beside the logs are left alone; a broken log never stops the others. A log of more than 100 MB is read
 * as by {@link readLogStream}, and its pulls are kept. For Node; a page uses {@link readPullsFrom}.
 *
 * @returns The pulls by set-up, in the order of the day where the logs have clocks, and what could not be read.
 * @throws LogError if the folder is not there or holds no log, or a set-up is named in the options that has none.
 * @throws CalculationError if a channel map is wrong in itself.
 * @example
 * const day = await readPulls('logs', { setups: { 'tall core': { boost: channel('Boost', 'gauge pressure', 'kPa') } } });
 */
export async function readPulls(source: PullSource, options: ReadFilesOptions = {}): Promise<Day> {
  checkChannelMap(options.channels ?? {}, 'readPulls');
  const found = await findLogs(source);
  if (found.files.length === 0 && found.notRead.length === 0) {
    const file = typeof source === 'string' ? source : undefined;
    throw new LogError({ code: 'no logs', file, expected: 'logs', found: 'none', mend: RULE });
  }
  const { readFile, stat } = await import('node:fs/promises');
  const files: LogFile[] = [];
  const streamed: Pull[] = [];
  const notRead = [...found.notRead];
  for (const { path, shown, setup } of found.files) {
    try {
      const { size } = await stat(path);
      if (size > LONGEST_LOG) streamed.push(...(await streamedPulls(path, size, shown, setup, options)));
      else {
        const data = await readFile(path);
        files.push({ path: shown, setup, data });
        options.onProgress?.({ file: shown, bytes: size, totalBytes: size, rows: undefined, pulls: undefined });
      }
    } catch (error) {
      if (error instanceof CalculationError) throw error;
      const why =
        error instanceof LogError
          ? { setup, file: shown, error }
          : refused(setup, shown, 'unreadable', 'a file that can be read', reasonOf(error));
      notRead.push(why);
    }
  }
  return dayOf(files, notRead, options, streamed);
}

async function streamedPulls(
  path: string,
  totalBytes: number,
  shown: string,
  setup: string,
  options: ReadFilesOptions,
): Promise<Pull[]> {
  const { createReadStream } = await import('node:fs');
  const { findPulls, onProgress } = options;
  const pulls: Pull[] = [];
  const source = createReadStream(path, { highWaterMark: 1 << 20 });
  const how = { ...logOptions(shown, setup, options), findPulls, onProgress, totalBytes };
  for await (const pull of readLogStream(source as AsyncIterable<Uint8Array>, how)) pulls.push(pull);
  return pulls;
}

async function findLogs(source: PullSource): Promise<Found> {
  if (typeof source === 'string') return findInFolder(source);
  const paths = await import('node:path');
  const lists: readonly (readonly [string | undefined, readonly string[]])[] = Array.isArray(source)
    ? [[undefined, source as readonly string[]]]
    : Object.entries(source as Readonly<Record<string, readonly string[]>>);
  const files = lists.flatMap(([setup, list]) =>
    list.map((path) => ({ path, shown: path, setup: setup ?? (paths.basename(paths.dirname(path)) || 'pulls') })),
  );
  return { files, notRead: [] };
}

async function findInFolder(folder: string): Promise<Found> {
  const { readdir, stat } = await import('node:fs/promises');
  const path = await import('node:path');
  const list = async (place: string): Promise<{ name: string; isFolder: boolean }[]> => {
    const names = (await readdir(place)).filter((name) => !/^[.~]/.test(name));
    return Promise.all(names.map(async (name) => ({ name, isFolder: await isFolder(path.join(place, name)) })));
  };
  const isFolder = async (place: string): Promise<boolean> => {
    try {
      return (await stat(place)).isDirectory();
    } catch {
      return false;
    }
  };
  let entries;
  try {
    entries = await list(folder);
  } catch (error) {
    throw new LogError({
      code: 'no logs',
      file: folder,
      expected: 'a folder of logs',
      found: reasonOf(error),
      mend: RULE,
    });
  }
  const found: Found = { files: [], notRead: [] };
  for (const { name } of entries.filter((entry) => entry.isFolder)) {
    let inside;
    try {
      inside = await list(path.join(folder, name));
    } catch (error) {
      found.notRead.push(refused(name, name, 'unreadable', 'a folder that can be read', reasonOf(error)));
      continue;
    }
    for (const entry of inside) {
      const shown = `${name}/${entry.name}`;
      if (entry.isFolder) {
        if (!(await hasLogs(path.join(folder, name, entry.name)))) continue;
        found.notRead.push(
          refused(name, shown, 'misplaced', 'logs in the folder of their set-up', 'logs in a folder below it'),
        );
      } else if (LOG_NAME.test(entry.name)) found.files.push({ path: path.join(folder, shown), shown, setup: name });
    }
  }
  const loose = entries.filter((entry) => !entry.isFolder && LOG_NAME.test(entry.name));
  const own = path.basename(path.resolve(folder));
  for (const { name } of loose) {
    // A folder of nothing but logs is one set-up; beside set-up folders it is not clear to which a log belongs.
    if (found.files.length === 0 || found.files[0]!.setup === own)
      found.files.push({ path: path.join(folder, name), shown: name, setup: own });
    else
      found.notRead.push(
        refused(own, name, 'misplaced', 'logs in the folder of their set-up', 'a log beside the set-up folders'),
      );
  }
  return found;

  async function hasLogs(place: string): Promise<boolean> {
    try {
      return (await readdir(place)).some((name) => LOG_NAME.test(name));
    } catch {
      return false;
    }
  }
}

function refused(setup: string, file: string, code: LogErrorCode, expected: string, found: string): NotRead {
  return { setup, file, error: new LogError({ code, file, expected, found }) };
}

/** What the system says, without its call and path. */
function reasonOf(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  if (message.startsWith('ENOENT')) return 'nothing there';
  return message.startsWith('ENOTDIR') ? 'a file' : message.split(',')[0]!;
}
