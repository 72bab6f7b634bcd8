// A stage as a whole: selected by its heading, copied, doubled, cut, pasted elsewhere; and the clipboard of the device.
import assert from 'node:assert/strict';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkStages(tally, screen) {
  await visited(tally, screen, 'stages', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.putBack();
    await doubled(place, visit, write);
    await cutByKey(place, visit, write);
    await acrossReload(place, visit, write);
    await refused(place, visit, write);
    await elsewhere(place, visit, write);
  });
}

const heading = (page, name) => page.getByRole('heading', { name, exact: true });
const headings = (page) => page.locator('.row .stage').allInnerTexts();
const keys = (page) => page.locator('.row.selected');
const within = (page) => page.locator('.row.within').count();

async function doubled(place, visit, write) {
  const { page } = visit;
  const n = await write.steps();
  await place.tally.step('the heading selects the stage with its steps', async () => {
    await heading(page, 'Bench work').getByRole('button').click();
    await keys(page).getByRole('button', { name: 'Copy the stage' }).waitFor();
    await soonEqual(() => within(page), 2);
  });
  await look(place, visit, 'write-stage');
  await place.tally.step('it is doubled, and undo names the stage', async () => {
    await keys(page).getByRole('button', { name: 'Duplicate the stage' }).click();
    await write.counts(n + 2);
    await page.getByRole('button', { name: 'Undo: duplicate the stage bench work' }).click();
    await write.counts(n);
  });
  await place.tally.step('Ctrl+Shift+A on a row selects it too, and Delete takes it out', async () => {
    await write.selectRow(22);
    await page.keyboard.press('Control+Shift+A');
    await page.locator('.row.selected:focus').waitFor();
    await soonEqual(() => within(page), 2);
    await page.keyboard.press('Delete');
    await write.counts(n - 2);
    assert.ok(!(await headings(page)).includes('Bench work'));
    await page.getByRole('button', { name: 'Undo: take out the stage bench work' }).click();
    await write.counts(n);
  });
}

async function cutByKey(place, { page }, write) {
  const n = await write.steps();
  await place.tally.step('it is cut by its key and pasted behind the stage that it would cut in two', async () => {
    await heading(page, 'Bench work').getByRole('button').click();
    await keys(page).getByRole('button', { name: 'Cut the stage' }).click();
    await write.counts(n - 2);
    await write.selectRow(5);
    await keys(page).getByRole('button', { name: 'Paste the copied stage' }).click();
    await write.counts(n);
    const all = await headings(page);
    assert.deepEqual(all.slice(0, 4), ['Prepare', 'Make safe', 'Bench work', 'Strip']);
    await page.getByRole('button', { name: 'Undo: paste the stage bench work' }).click();
    await page.getByRole('button', { name: 'Undo: take out the stage bench work' }).click();
    await write.counts(n);
  });
}

async function acrossReload(place, { page }, write) {
  const n = await write.steps();
  await place.tally.step('what the key copies is on the clipboard of the device: a reload does not lose it', async () => {
    await heading(page, 'Bench work').getByRole('button').click();
    await write.untilKept(() => keys(page).getByRole('button', { name: 'Duplicate the stage' }).click());
    await page.getByRole('button', { name: 'Undo: duplicate the stage bench work' }).click();
    await heading(page, 'Bench work').getByRole('button').click();
    await keys(page).getByRole('button', { name: 'Copy the stage' }).click();
    await soonEqual(() => page.locator('.banner.notice').count(), 0, 'the browser took it');
    assert.ok(await keys(page).getByRole('button', { name: 'Copy the stage' }).evaluate((key) => key === document.activeElement));
    await page.reload();
    await write.counts(n);
    await write.selectRow(5);
    await page.keyboard.press('Control+v');
    await write.counts(n + 2);
    await page.getByRole('button', { name: 'Undo: paste the stage bench work' }).click();
    await write.counts(n);
  });
  await place.tally.step('other programs get the words', async () => {
    const line = page.getByRole('textbox', { name: 'New step' });
    await write.selectRow(1);
    await keys(page).getByRole('button', { name: 'Copy', exact: true }).click();
    await line.click();
    await page.keyboard.type('x');
    await page.keyboard.press('Control+v');
    assert.equal((await line.inputValue()).trim(), `x${await write.words(1)}`);
    await line.fill('');
  });
}

async function refused(place, visit, write) {
  const { page } = visit;
  await place.tally.step('where the browser refuses, that is said, and the page itself still has it', async () => {
    await page.evaluate(() => { document.execCommand = () => false; });
    await write.selectRow(5);
    await keys(page).getByRole('button', { name: 'Copy', exact: true }).click();
    await page.getByText(/^Copied, but the browser does not let this page write to the clipboard of the device\./).waitFor();
  });
  // Whatever lies half under the head that stays at the top would count as too small.
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'write-copy-refused');
  await place.tally.step('it is pasted by its key then', async () => {
    const n = await write.steps();
    await keys(page).getByRole('button', { name: 'Paste the copied step' }).click();
    await write.counts(n + 1);
    await page.getByRole('button', { name: 'Undo: paste step 6' }).click();
    await write.counts(n);
  });
  await page.evaluate(() => { delete document.execCommand; });
}

async function elsewhere(place, visit, write) {
  const { page } = visit;
  await place.tally.step('it goes into another procedure as a stage, with its things', async () => {
    await heading(page, 'Bench work').getByRole('button').click();
    await keys(page).getByRole('button', { name: 'Copy the stage' }).click();
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await goTo(page, 'Write');
    await write.append('Shut down the boiler.');
    await write.append('Close the flow valve of the boiler.');
    await write.selectRow(1);
    await page.keyboard.press('Control+v');
    await write.counts(4);
    await soonEqual(async () => (await headings(page)).at(-1), 'Bench work');
    await page.getByRole('button', { name: 'Undo: paste the stage bench work' }).waitFor();
    await page.locator('.banner').getByText(/^New on the appliance: /).waitFor();
  });
}
