// The bin: what is removed is undone at once, put back later, deleted for good on purpose, and goes after thirty days.
import assert from 'node:assert/strict';
import { held } from './device.mjs';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const DEMO = 'Renew the heating pump P2 of a boiler plant (invented)';

const DAY_MS = 24 * 60 * 60 * 1000;

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkBin(tally, screen) {
  await visited(tally, screen, 'the bin', async (place, visit) => {
    await visit.page.clock.install({ time: new Date('2026-03-09T09:00:00') });
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.untilKept(() => write.putBack());
    await goTo(visit.page, 'Procedures');
    await new Procedures(visit.page).beginNew();
    await visit.page.getByRole('textbox', { name: 'What the job is for' }).fill('To be said.');
    await removeAndUndo(place, visit);
    await removeTheOpenOne(place, visit);
    await deleteForGood(place, visit);
    await afterThirtyDays(place, visit);
  });
  // A journey of its own, since the clock of the page stands after it was put forward so often.
  await visited(tally, screen, 'one that nobody has touched', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.untilKept(() => write.putBack());
    await goTo(visit.page, 'Procedures');
    await anEmptyOneGoes(place, visit);
  });
}

const bin = (page) => page.getByRole('region', { name: 'Bin' });
const idOf = async (page) => (await held(page, 'docs')).find(([, record]) => record.includes('heating pump P2'))?.[0];

async function removeAndUndo(place, visit) {
  const { page } = visit;
  const procedures = new Procedures(page);
  await goTo(page, 'Procedures');
  await place.tally.step('what is removed is in the bin, and the keyboard on the way back', async () => {
    await procedures.do('Remove', DEMO);
    await bin(page).getByText(DEMO).waitFor();
    assert.ok(!(await procedures.titles()).includes(DEMO));
    await page.getByRole('button', { name: 'Undo', exact: true }).and(page.locator(':focus')).waitFor();
  });
  await look(place, visit, 'procedures-undo-bar');
  await place.tally.step('one key undoes it', async () => {
    await page.keyboard.press('Enter');
    await bin(page).waitFor({ state: 'detached' });
    assert.ok((await procedures.titles()).includes(DEMO));
  });
  await place.tally.step('it can be put back days later', async () => {
    await procedures.do('Remove', DEMO);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.clock.fastForward(5 * DAY_MS);
    await page.reload();
    await bin(page).getByText(/goes for good in 25 days/).waitFor();
    await procedures.do('Put back', DEMO);
    await page.getByRole('button', { name: `Open ${DEMO}`, exact: true }).waitFor();
  });
}

async function removeTheOpenOne({ tally }, { page }) {
  const procedures = new Procedures(page);
  await tally.step('the open one can be removed too, with what was typed last; another is open then', async () => {
    await procedures.do('Open', DEMO);
    const write = new Write(page);
    await write.counts(43);
    await write.setWords(2, 'Typed just before.');
    await goTo(page, 'Procedures');
    await procedures.do('Remove', DEMO);
    await bin(page).getByText(DEMO).waitFor();
    await page.getByText('open now').waitFor();
    await procedures.untilTitles('Untitled procedure');
    await page.reload();
    await bin(page).getByText(DEMO).waitFor();
    assert.ok((await held(page, 'docs')).some(([, record]) => record.includes('Typed just before.')));
    await procedures.do('Put back', DEMO);
    await page.getByRole('button', { name: `Open ${DEMO}`, exact: true }).waitFor();
  });
}

async function deleteForGood(place, visit) {
  const { page } = visit;
  const procedures = new Procedures(page);
  const id = await idOf(page);
  await place.tally.step('deleting for good is asked once more, and can be left', async () => {
    await procedures.do('Remove', DEMO);
    await procedures.do('Delete for good', DEMO);
    await page.getByRole('button', { name: `Yes, delete for good ${DEMO}` }).and(page.locator(':focus')).waitFor();
  });
  await look(place, visit, 'procedures-delete');
  await place.tally.step('left, it is still there; deleted, nothing of it is left', async () => {
    await page.getByRole('button', { name: 'Leave it' }).click();
    await soonEqual(() => idOf(page), id);
    await procedures.do('Delete for good', DEMO);
    await page.getByRole('button', { name: `Yes, delete for good ${DEMO}` }).click();
    await bin(page).waitFor({ state: 'detached' });
    for (const store of ['docs', 'undo', 'versions']) {
      assert.deepEqual((await held(page, store)).filter(([key]) => key.startsWith(id)), [], store);
    }
    await page.getByRole('button', { name: 'Undo', exact: true }).waitFor({ state: 'detached' });
  });
}

async function afterThirtyDays(place, { page }) {
  const procedures = new Procedures(page);
  await place.tally.step('what has been in the bin for more than thirty days is gone', async () => {
    await page.getByRole('button', { name: 'Open a copy of Heating pump between two valves' }).click();
    await page.locator('li[data-step]').first().waitFor();
    await goTo(page, 'Procedures');
    await procedures.do('Remove', 'Untitled procedure');
    await bin(page).getByText('Untitled procedure').waitFor();
    await page.clock.fastForward(29 * DAY_MS);
    await page.reload();
    await bin(page).getByText(/goes for good within a day/).waitFor();
    await page.clock.fastForward(2 * DAY_MS);
    await page.reload();
    await procedures.titles();
    await bin(page).waitFor({ state: 'detached' });
    assert.ok(!(await held(page, 'docs')).some(([, record]) => record.includes('Untitled procedure')));
  });
}

async function anEmptyOneGoes({ tally }, { page }) {
  const procedures = new Procedures(page);
  const [only] = await procedures.titles();
  await tally.step('an empty one that nobody has touched goes when another is opened', async () => {
    await procedures.beginNew();
    await page.getByRole('textbox', { name: 'What the job is for' }).waitFor();
    await goTo(page, 'Write');
    await page.locator('#kept').filter({ hasText: /^kept \d/ }).waitFor();
    await goTo(page, 'Procedures');
    await procedures.untilTitles(only, 'Untitled procedure');
    await soonEqual(() => page.getByRole('button', { name: /^New from/ }).count(), 0);
    await procedures.do('Open', only);
    await goTo(page, 'Procedures');
    await procedures.untilTitles(only);
  });
  await tally.step('and when another is put back, which is open then', async () => {
    await procedures.do('Remove', only);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByRole('button', { name: `New from "${only}"` }).waitFor();
    await procedures.untilTitles(only);
    await page.getByText('open now').waitFor();
  });
}
