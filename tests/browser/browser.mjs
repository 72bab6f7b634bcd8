// Starts and kills the Chromium of the system; no browser is fetched.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { accessSync, constants } from 'node:fs';
import { chromium } from 'playwright-core';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The Chromium on PATH. */
function executable() {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of ['chromium', 'chromium-browser', 'google-chrome']) {
      try {
        accessSync(join(folder, name), constants.X_OK);
        return join(folder, name);
      } catch {
        // The next place may have it.
      }
    }
  }
  throw new Error('no chromium on PATH; on Debian: apt-get install chromium');
}

/** A browser that keeps nothing. */
export const launch = () => chromium.launch({ executablePath: executable(), args: FLAGS });

/** A folder for what a browser keeps, empty at first. */
export const newProfile = () => mkdtempSync(join(tmpdir(), 'putback-profile-'));

/** Removes such a folder; a killed browser may still be letting go of its files. */
export const removeProfile = (profile) => rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });

/** A browser that keeps what it is told in `profile`. */
export const launchWith = (profile, options) =>
  chromium.launchPersistentContext(profile, { executablePath: executable(), args: FLAGS, ...options });

/** Kills every process of the browser with this profile at once, as a full memory or a dropped tablet would. */
export async function kill(profile) {
  for (let round = 0; round < 50; round += 1) {
    const processes = processesOf(profile);
    if (processes.length === 0) return;
    for (const process_ of processes) {
      try {
        process.kill(process_, 'SIGKILL');
      } catch {
        // It ended by itself in between.
      }
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('the browser would not die');
}

/** The ids of the processes whose command line names the profile. */
function processesOf(profile) {
  const mark = `--user-data-dir=${profile}`;
  return commandLines()
    .filter(({ id, line }) => id !== process.pid && line.split(/\0| /).includes(mark))
    .map(({ id }) => id);
}

function commandLines() {
  let names;
  try {
    names = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  } catch {
    // No /proc on macOS; ps says the same.
    const lines = execFileSync('ps', ['-axo', 'pid=,args='], { encoding: 'utf8' }).split('\n');
    return lines.map((line) => ({ id: Number.parseInt(line, 10), line: line.trim() }));
  }
  return names.flatMap((name) => {
    try {
      return [{ id: Number(name), line: readFileSync(`/proc/${name}/cmdline`, 'utf8') }];
    } catch {
      return [];
    }
  });
}
