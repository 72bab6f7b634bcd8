// What to bring, what is still to be found out, and the questions of the job.
import { goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** What is typed into Write first. */
const LINES = [
  'Undo the two union nuts of the pump.',
  'bring: 17 mm spanner',
  'bring: 2 new washers',
  'later: number of the pump, the stores',
  'Inspect the seal.',
  'ask: Is the seal sound?',
  'Clean the seal face.',
  'Fit a new seal.',
  'later: maximum pressure, the owner',
  'Take off the cover: four screws, 8 mm.',
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkKit(tally, screen) {
  await visited(tally, screen, 'kit, later and questions', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await writeNew(visit.page, LINES);
    await kit(place, visit);
    await later(place, visit);
    await questions(place, visit);
  });
}

async function kit(place, visit) {
  const { page } = visit;
  const entry = (name) => page.getByRole('group', { name, exact: true });
  const field = (name, label) => entry(name).getByRole('textbox', { name: label, exact: true });
  await place.tally.step('what leading words bring is in the kit', async () => {
    await goTo(page, 'Kit');
    await soonEqual(() => field('tool 1', 'Name').inputValue(), '17 mm spanner');
    await soonEqual(() => field('spare 1', 'How many').inputValue(), '2');
  });
  await place.tally.step('what the steps need stands there by itself, and leads to them', async () => {
    const line = page.getByRole('list', { name: 'From the steps' }).getByRole('listitem').filter({ hasText: 'spanner · 8 mm' });
    await line.getByRole('button', { name: /^Step \d+$/ }).click();
    await page.locator('[aria-current="true"]').getByText('Take off the cover').first().waitFor();
    await goTo(page, 'Kit');
    await line.getByRole('button', { name: 'Change spanner · 8 mm' }).click();
    await soonEqual(() => field('tool 2', 'Size').inputValue(), '8 mm');
    await line.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo: add to the tools' }).click();
    await line.waitFor();
  });
  await place.tally.step('an entry is added and filled in', async () => {
    await page.getByRole('button', { name: 'Add a consumable' }).click();
    await page.keyboard.type('inhibitor');
    await field('consumable 1', 'How much').fill('a drop');
    await page.keyboard.press('Enter');
    await page.getByText(/^Not taken: "a drop" is not one value with its unit/).waitFor();
    await soonEqual(() => field('consumable 1', 'How much').inputValue(), '');
    await field('consumable 1', 'How much').fill('1 l');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await soonEqual(() => field('consumable 1', 'How much').inputValue(), '1 l');
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'kit');
  await place.tally.step('an entry is taken out, and brought back', async () => {
    await page.getByRole('button', { name: 'Take out 17 mm spanner' }).click();
    await entry('tool 1').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo: take out of the tools' }).click();
    await entry('tool 1').waitFor();
  });
}

async function later(place, visit) {
  const { page } = visit;
  await place.tally.step('what is still to be found out is a form of its own', async () => {
    await page.getByRole('button', { name: /^2 later/ }).click();
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
  });
  await look(place, visit, 'later');
  await place.tally.step('Enter keeps an answer and goes to the next', async () => {
    await page.getByRole('textbox', { name: /^Number of the pump/ }).fill('K-17');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'One value is still to be found out' }).waitFor();
    await page.locator('.later-walk input:focus').waitFor();
    await page.keyboard.type('3 bar');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Nothing is left to find out' }).waitFor();
  });
  await place.tally.step('an answer is taken back', async () => {
    await page.getByRole('button', { name: 'Undo: find out: maximum pressure' }).click();
    await page.getByRole('textbox', { name: /^Maximum pressure/ }).waitFor();
  });
}

async function questions(place, visit) {
  const { page } = visit;
  const sheet = page.locator('.question-sheet');
  const answer = (name) => sheet.getByRole('group', { name: `Answer ${name}`, exact: true });
  await place.tally.step('a question has its answers and their steps', async () => {
    await goTo(page, 'Appliance');
    await page.locator('.thing-row', { hasText: 'Is the seal sound?' }).click();
    await sheet.getByRole('button', { name: 'Add an answer' }).click();
    await rename(answer('answer 3'), 'not seen');
    await answer('no').getByRole('combobox', { name: 'Done on it' }).selectOption({ label: '5  Fit a new seal.' });
    await answer('no').getByText('5 Fit a new seal.').first().waitFor();
  });
  // What lies half below the head is no target, and where the page has come to is chance.
  await page.evaluate(() => scrollTo(0, 0));
  await look(place, visit, 'question');
  await place.tally.step('a renamed answer keeps its steps', async () => {
    await rename(answer('no'), 'worn');
    await answer('worn').getByText('5 Fit a new seal.').first().waitFor();
  });
  await place.tally.step('an answer in use stays, and its steps are told', async () => {
    await answer('worn').getByRole('button', { name: 'Take this answer out: worn' }).click();
    await page.getByText('The answer "worn" stays: step 5 is done on it. Take them off it first.').waitFor();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });
  await place.tally.step('one that is not in use goes, and undo brings it back', async () => {
    await answer('not seen').getByRole('button', { name: 'Take this answer out: not seen' }).click();
    await answer('not seen').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo: take an answer out' }).click();
    await answer('not seen').waitFor();
  });
}

async function rename(answer, name) {
  const field = answer.getByRole('textbox');
  await field.fill(name);
  await field.press('Enter');
}
