// A file that is opened over newer work on the device: what differs is told, and nothing goes until somebody says so.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { repository } from './places.mjs';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const FILE = 'gas-union.putback.json';
const TEXT = readFileSync(repository(`tests/suite/accepted/${FILE}`), 'utf8');
const N = JSON.parse(TEXT).steps.length;
const NEWER = 'Count the tools.';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkOpeningOver(tally, screen) {
  await visited(tally, screen, 'opening over newer work', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await overWhatIsOpen(place, visit, write);
    await overWhatLiesHere(place, visit, write);
    await whatIsNewerOpens(place, visit, write);
  });
}

/** Gives a file to the page as its field for files does. */
const give = (page, text = TEXT) =>
  page.locator('input[type=file]:not(.answers)').first().setInputFiles({ name: FILE, mimeType: 'application/json', buffer: Buffer.from(text) });

/** Drops a file onto the page. */
const drop = (page) =>
  page.evaluate(([name, text]) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], name));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, [FILE, TEXT]);

const asked = (page) => page.getByRole('alert').filter({ hasText: `${FILE} was not opened yet.` });
const press = (page, name) => page.getByRole('button', { name, exact: true }).click();
const other = (text, change) => {
  const document = JSON.parse(text);
  change(document);
  return `${JSON.stringify(document, null, 2)}\n`;
};

async function overWhatIsOpen(place, visit, write) {
  const { page } = visit;
  const { tally } = place;
  await tally.step('an older file is not opened over newer work, and what differs is told', async () => {
    await give(page);
    await write.counts(N);
    await write.untilKept(() => write.append(NEWER));
    await give(page);
    await asked(page).getByText(`1 step taken out: ${N + 1}`).waitFor();
    await write.counts(N + 1);
  });
  await look(place, visit, 'write-opened-over');
  await tally.step('what is here stays if somebody says so, also where the file is dropped', async () => {
    await press(page, 'Keep what is here');
    await asked(page).waitFor({ state: 'detached' });
    await drop(page);
    await asked(page).waitFor();
    await press(page, 'Keep what is here');
    await write.counts(N + 1);
    await soonEqual(() => write.words(N + 1), NEWER);
  });
  await tally.step('the file takes its place if somebody says so, as one entry of undo', async () => {
    await give(page);
    await press(page, 'Open the file instead');
    await write.counts(N);
    await write.untilKept(() => page.getByRole('button', { name: 'Undo: open gas-union', exact: true }).click());
    await write.counts(N + 1);
  });
}

async function overWhatLiesHere({ tally }, { page }, write) {
  await tally.step('that is so too where the newer work is not open', async () => {
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await goTo(page, 'Write');
    await write.counts(0);
    await give(page);
    await asked(page).waitFor();
    await write.counts(N + 1);
  });
  await tally.step('the file can be opened as a procedure of its own', async () => {
    await press(page, 'Open it as another procedure');
    await write.counts(N);
    await page.locator('#kept', { hasText: /^kept/ }).waitFor();
    await goTo(page, 'Procedures');
    const title = JSON.parse(TEXT).title;
    const titles = await new Procedures(page).titles();
    assert.ok([title, `${title} (from a file)`].every((one) => titles.includes(one)), titles.join('; '));
    await new Procedures(page).do('Open', title);
    await write.counts(N + 1);
  });
}

async function whatIsNewerOpens({ tally }, { page }, write) {
  await tally.step('a file that has all that is here and more opens at once', async () => {
    const here = await write.save(`${(await import('node:os')).tmpdir()}/putback-${process.pid}-${FILE}`);
    const text = readFileSync(here, 'utf8');
    const more = other(text, ({ steps }) => steps.push({ ...steps.at(-1), id: 'one-more', words: 'Lock the door.' }));
    await write.untilKept(() => write.append('Sweep the floor.'));
    await write.untilKept(() => write.undo());
    await give(page, more);
    await write.counts(N + 2);
    assert.equal(await asked(page).count(), 0);
  });
  await tally.step('what somebody else has changed in what is in a file opens at once; what it was before is asked about', async () => {
    const theirs = other(TEXT, ({ steps }) => { steps[0].words = 'Begin.'; });
    await give(page, theirs);
    await soonEqual(() => write.words(1), 'Begin.');
    await give(page);
    await asked(page).getByText(/ is newer\. /).waitFor();
    await soonEqual(() => write.words(1), 'Begin.');
  });
}
