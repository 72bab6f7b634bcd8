// What a typed script may be found wanting in, by the table beside the scripts; judged by the command line.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { commandLine, repository } from './places.mjs';

const table = () => JSON.parse(readFileSync(repository('tests/browser/scripts/findings.json'), 'utf8'));

/** Holds the findings of a saved procedure against the table of its script. */
export function onlyTrue(name, file) {
  const { stdout, stderr } = spawnSync(commandLine, ['check', '--format', 'json', file], { encoding: 'utf8' });
  const [{ findings }] = JSON.parse(stdout || assert.fail(stderr));
  const { true: known, unheard } = table()[name];
  const rejects = (code) => findings.filter((one) => one.level === 'reject' && one.code === code).length;
  const wrong = findings.filter(({ code, level }) => {
    const isTrue = known.some((row) => row.code === code);
    return !isTrue && (level === 'reject' || !unheard.some((row) => row.code === code));
  });
  assert.deepEqual(wrong.map(({ code, title }) => `${code} ${title}`), [], name);
  for (const row of known) assert.equal(rejects(row.code), row.rejects, `${name}: ${row.code}`);
}
