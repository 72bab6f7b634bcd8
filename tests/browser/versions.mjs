// Earlier versions: they are kept as somebody writes, a look changes nothing, one is brought back and that is undone;
// a file that takes the place of what is kept loses nothing; a database from before there were versions is taken over.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { held, makeOld } from './device.mjs';
import { out, repository } from './places.mjs';
import { Write } from './pages/write.mjs';
import { Versions } from './pages/versions.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkVersions(tally, screen) {
  await visited(tally, screen, 'earlier versions', async (place, visit) => {
    await visit.page.clock.install({ time: new Date('2026-03-09T09:00:00') });
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.untilKept(() => write.putBack());
    const file = await write.save(out(`${screen.name}-versions.putback.json`));
    await writeInSpells(place, visit, write);
    await lookAtOne(place, visit, write);
    await bringOneBack(place, visit, write);
    await openAFile(place, visit, write, file);
  });
  await visited(tally, screen, 'a database from before', takeOver);
}

async function writeInSpells({ tally }, { page }, write) {
  await tally.step('each spell of writing leaves what was there before it', async () => {
    await page.clock.fastForward('10:00');
    await write.untilKept(() => write.setWords(2, 'Tell the keeper of the building.'));
    await page.clock.fastForward('00:10');
    await write.untilKept(() => write.setWords(3, 'Written in the same spell.'));
    await page.clock.fastForward('24:00:00');
    await write.untilKept(() => write.remove(4));
    await page.clock.fastForward('20:00');
    await write.untilKept(() => write.append('Sweep the floor.'));
    await soonEqual(async () => (await held(page, 'versions')).length, 4);
  });
}

async function lookAtOne(place, visit, write) {
  const { page } = visit;
  const versions = new Versions(page);
  const n = await write.steps();
  await place.tally.step('they are listed with when, how many steps and what had changed', async () => {
    await versions.open();
    const rows = await versions.rows();
    assert.deepEqual(rows.map(({ when }) => when), ['Now', 'Today 09:10', 'Yesterday 09:10', 'Yesterday 09:00', 'Yesterday 09:00']);
    assert.match(rows[3].what, /^1 step added: \d+$/);
    assert.deepEqual(rows.map(({ what }) => what), [
      `1 step added: ${n}`,
      '1 step taken out: 4',
      '2 steps changed: 2 and 3',
      rows[3].what,
      'the first that is kept',
    ]);
    assert.equal(rows[0].steps, `${n} steps`);
  });
  await look(place, visit, 'versions');
  await place.tally.step('a look shows it with what is different now, and changes nothing', async () => {
    const before = await held(page, 'docs');
    await versions.look('Yesterday 09:10');
    await soonEqual(() => versions.wouldChange(), ['1 step added: 4', `1 step taken out: ${n}`]);
    await soonEqual(() => versions.marks(), [[4, 'not in it now']]);
    await soonEqual(() => versions.marksInPlace(), [true]);
    await soonEqual(() => held(page, 'docs'), before);
  });
  await look(place, visit, 'versions-look');
}

async function bringOneBack(place, visit, write) {
  const { page } = visit;
  const versions = new Versions(page);
  const n = await write.steps().then(() => versions.nSteps());
  await place.tally.step('it is brought back as one edit, and the present one stays as a version', async () => {
    await versions.bringBack();
    await write.counts(n);
    await soonEqual(() => write.words(3), 'Written in the same spell.');
    await page.getByRole('button', { name: 'Undo: bring back the version of yesterday 09:10' }).waitFor();
    await page.getByText('Sweep the floor.').waitFor({ state: 'detached' });
    await versions.open();
    const rows = await versions.rows();
    assert.equal(rows.length, 6);
    assert.deepEqual(rows.slice(0, 2).map(({ what }) => what), [`1 step added: 4; 1 step taken out: ${n}`, `1 step added: ${n}`]);
  });
  await place.tally.step('after a reload undo takes it back', async () => {
    await page.reload();
    await page.getByRole('button', { name: /^Undo: bring back/ }).click();
    await page.getByText('Sweep the floor.').waitFor();
  });
}

async function openAFile({ tally }, { page }, write, file) {
  const versions = new Versions(page);
  await tally.step('a file of the same procedure that is opened over it loses nothing', async () => {
    await page.getByLabel('File to open').setInputFiles(file);
    await page.getByRole('button', { name: 'Open the file instead' }).click();
    await page.getByText('Sweep the floor.').waitFor({ state: 'detached' });
    await page.locator('#kept', { hasText: /^kept/ }).waitFor();
    await versions.open();
    await versions.look((await versions.rows())[1].when);
    await page.locator('.look').getByText('Sweep the floor.').waitFor();
    await versions.bringBack();
    await page.getByText('Sweep the floor.').waitFor();
  });
}

async function takeOver(place, visit) {
  const { page } = visit;
  const text = readFileSync(repository('tests/suite/accepted/gas-union.putback.json'), 'utf8');
  const { id, title } = JSON.parse(text);
  const record = JSON.stringify({ name: 'gas-union', text, at_ms: Date.parse('2026-02-01T08:00:00') });
  await place.tally.step('what was kept before there were versions is taken over', async () => {
    await page.goto(`${place.server.address}manifest.webmanifest`);
    await makeOld(page, 2, { docs: { [id]: record }, undo: {}, jobs: {}, meta: { current: id } });
    const write = new Write(page);
    await write.open(place.server.address);
    await soonEqual(() => page.getByRole('textbox', { name: 'Title' }).inputValue(), title);
    await soonEqual(() => held(page, 'docs'), [[id, record]]);
    await write.untilKept(() => write.setWords(1, 'Written in the new one.'));
    assert.deepEqual((await held(page, 'versions')).map(([, kept]) => kept), [record]);
  });
}
