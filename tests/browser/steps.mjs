// Whole steps: asked about, copied, doubled, moved together, carried into another procedure.
import assert from 'node:assert/strict';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkSteps(tally, screen) {
  await visited(tally, screen, 'whole steps', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await ask(place, visit, write);
    await keys(place, visit);
    await copy(place, visit.page, write);
    await cut(place, visit.page, write);
    await carry(place, visit, write);
  });
}

async function ask(place, visit, write) {
  const { page } = visit;
  await place.tally.step('words that can mean two things are asked about, and a digit answers', async () => {
    const line = page.getByRole('textbox', { name: 'New step' });
    await line.fill('Close the valve.');
    await line.press('Enter');
    await page.getByRole('group', { name: 'Which one is "valve"?' }).waitFor();
  });
  await look(place, visit, 'write-asked');
  await place.tally.step('the answer is kept, and the line is ready again', async () => {
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.press('2');
    await page.locator('li[data-step]').last().getByText('isolate').waitFor();
    await page.locator('#new-line:focus').waitFor();
    await soonMatch(() => page.locator('li[data-step]').last().innerText(), /isolate\s+discharge valve/);
    await page.getByRole('button', { name: /^Undo: say that step/ }).click();
    await page.getByRole('button', { name: /^Undo: add step/ }).click();
    await write.counts(await write.steps());
  });
}

async function keys(place, visit) {
  const { page } = visit;
  await place.tally.step('the sheet of keys opens and closes', async () => {
    await page.getByRole('button', { name: 'Keys', exact: true }).click();
    await page.getByRole('dialog', { name: 'Keys of Write' }).waitFor();
  });
  await look(place, visit, 'write-keys');
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await place.tally.step('F1 opens it too, and Esc closes it', async () => {
    await page.keyboard.press('F1');
    await page.getByRole('dialog', { name: 'Keys of Write' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Keys of Write' }).waitFor({ state: 'hidden' });
  });
}

async function copy(place, page, write) {
  const n = await write.steps();
  await place.tally.step('several steps are selected, copied and pasted', async () => {
    await write.selectRow(4);
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await soonEqual(() => page.locator('.row.within').count(), 3);
    await page.keyboard.press('Control+c');
    await page.keyboard.press('Control+v');
    await write.counts(n + 3);
  });
  await place.tally.step('they are doubled, and taken out together', async () => {
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('Control+d');
    await write.counts(n + 6);
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('Delete');
    await write.counts(n + 3);
  });
  await place.tally.step('three undos bring the first state back', async () => {
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await write.counts(n);
  });
}

async function cut(place, page, write) {
  const before = await write.words(2);
  await place.tally.step('Esc takes back what was typed into words, and undo has it again', async () => {
    await write.select(2);
    await page.keyboard.press('Control+End');
    await page.keyboard.type(' And more.');
    await soonEqual(() => write.words(2), `${before} And more.`);
    await page.keyboard.press('Escape');
    await soonEqual(() => write.words(2), before);
    await page.keyboard.press('Control+z');
    await soonEqual(() => write.words(2), `${before} And more.`);
    await page.keyboard.press('Control+z');
    await soonEqual(() => write.words(2), before);
  });
  await place.tally.step('Enter within words cuts the step in two, and undo makes it one', async () => {
    const n = await write.steps();
    await write.select(2);
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('Control+ArrowRight');
    await page.keyboard.press('Enter');
    await page.waitForFunction((least) => document.querySelectorAll('li[data-step]').length === least, n + 1);
    const [head, tail] = [await write.words(2), await write.words(3)];
    assert.equal(`${head} ${tail}`, before);
    assert.equal(head, before.split(' ')[0]);
    await page.keyboard.press('Control+z');
    await page.waitForFunction((least) => document.querySelectorAll('li[data-step]').length === least, n);
    await soonEqual(() => write.words(2), before);
  });
}

async function carry(place, visit, write) {
  const { page } = visit;
  await place.tally.step('a step goes into another procedure with its things', async () => {
    await write.selectRow(5);
    await page.keyboard.press('Control+c');
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await goTo(page, 'Write');
    await write.append('Shut down the boiler.');
    await write.selectRow(1);
    await page.keyboard.press('Control+v');
    await write.counts(2);
    await page.getByText(/^New on the appliance: .*pump isolator/).waitFor();
  });
  await place.tally.step('what has the same name there is told, and can be another one', async () => {
    await page.keyboard.press('Control+v');
    const same = page.locator('.carried');
    await same.getByText('What has the same name here was taken for the same.').waitFor();
    await look(place, visit, 'write-carried');
    await same.getByRole('button', { name: 'The pump isolator is another one' }).click();
    await page.getByText('New on the appliance: pump isolator.').waitFor();
    await write.row(3).getByText('pump isolator 2').first().waitFor();
    await write.counts(3);
    await page.getByRole('button', { name: /^Undo: paste/ }).click();
    await write.counts(2);
    await same.waitFor({ state: 'detached' });
  });
}
