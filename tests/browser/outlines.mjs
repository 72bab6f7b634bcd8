// The screens as a screen reader meets them, kept as text in `outlines/` and compared line by line.
// After a change that is meant, `PUTBACK_OUTLINES=renew node tests/browser/run.mjs` writes them anew; read the
// difference before it is committed.
import assert from 'node:assert/strict';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { repository } from './places.mjs';

const folder = repository('tests/browser/outlines');
const isRenewing = process.env.PUTBACK_OUTLINES === 'renew';

/** What differs from run to run, or with every new rule. */
const VARYING = [
  [/\d\d:\d\d:\d\d/g, 'HH:MM:SS'],
  [/Works offline: [^"\n]*/g, 'Works offline: …'],
  [/by \d+ rules/g, 'by N rules'],
  [/\b\d{1,2} [A-Z][a-z]{2}( \d{4})?,? \d\d:\d\d\b/g, 'DATE'],
  [/(today|yesterday),? \d\d:\d\d/g, 'DATE'],
  // The set of rules is named by a number made of what the rules say of themselves.
  [/\d+ rules, set [0-9a-f]{8}/g, 'N rules, set PRINT'],
];

/** Fails if the outline of the page is not the one that is kept under this name. */
export async function compareOutline(page, name) {
  const file = `${folder}/${name}.yaml`;
  const seen = VARYING.reduce((text, [from, to]) => text.replace(from, to), await page.locator('body').ariaSnapshot());
  if (isRenewing) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, `${seen}\n`);
    return;
  }
  assert.ok(existsSync(file), `${file} is missing; PUTBACK_OUTLINES=renew writes it`);
  assert.deepEqual(seen.split('\n'), readFileSync(file, 'utf8').trimEnd().split('\n'));
}
