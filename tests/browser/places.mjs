// Where the end-to-end tests find the repository, the built page and the command line.
import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';

const top = resolve(import.meta.dirname, '../..');

/** A path in the repository. */
export const repository = (path) => resolve(top, path);

/** The built page; `./dev test` names the fast build. */
export const page = process.env.PUTBACK_PAGE ?? repository('dist');

/** The command line. */
export const commandLine = process.env.PUTBACK_COMMAND ?? repository('target/debug/putback');

/** A path for what a run leaves behind to be looked at. */
export function out(name) {
  const folder = repository('tests/browser/out');
  mkdirSync(folder, { recursive: true });
  return resolve(folder, name);
}
