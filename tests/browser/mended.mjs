// What words once made follows them when a figure is mended, two keys where it does not; phrases of the procedure's own;
// and what was taken out comes back with a step that is pasted.
import { goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkMended(tally, screen) {
  await visited(tally, screen, 'mended', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await writeNew(visit.page, ['Take off the belt guard: four M6 screws, 10 mm.']);
    await followed(place, visit, write);
    await both(place, visit, write);
    await kept(place, visit, write);
    await back(place, visit, write);
  });
}

const tokens = async (page) => (await page.locator('.row.selected .token').allInnerTexts()).join(' · ').replace(/\s+/g, ' ');

/** Puts other words in the place of some of the selected row, by the keyboard. */
async function retype(page, from, to) {
  await page.locator('.row.selected textarea').evaluate((field, from) => {
    const at = field.value.indexOf(from);
    field.focus();
    field.setSelectionRange(at, at + from.length);
  }, from);
  await page.keyboard.type(to, { delay: 10 });
}

async function followed({ tally }, { page }, write) {
  await tally.step('a number and a size that are mended reach the screws that the sentence made', async () => {
    await write.select(1);
    await soonMatch(() => tokens(page), /undo 4 belt guard screws/);
    await retype(page, 'four M6', 'six M8');
    await soonMatch(() => tokens(page), /undo 6 belt guard screws/);
    await goTo(page, 'Appliance');
    await page.getByText(/6 × M8|6 x M8|M8/).first().waitFor();
    await goTo(page, 'Write');
  });
  await tally.step('undo takes words and screws back together', async () => {
    const undo = page.getByRole('button', { name: /^Undo: change the words/ });
    while ((await undo.count()) > 0) await undo.click();
    await soonMatch(() => write.words(1), /four M6/);
    await write.select(1);
    await soonMatch(() => tokens(page), /undo 4 belt guard screws/);
  });
}

async function both(place, visit, write) {
  const { page } = visit;
  await place.tally.step('where another step says otherwise both stand, and a key puts the figure on the map', async () => {
    await write.append('Refit the belt guard: four M6 screws.');
    await write.select(1);
    await retype(page, 'four', 'six');
    await soonMatch(() => tokens(page), /undo 4 belt guard screws/, 'the action stays');
    const two = page.getByRole('group', { name: 'Two figures of the belt guard screws' });
    await two.getByText('the words say 6, the map says 4').waitFor();
    await look(place, visit, 'write-two-figures');
    await two.getByRole('button', { name: 'Write 4 here' }).click();
    await soonMatch(() => write.words(1), /: four M6 screws/);
    await retype(page, 'four', 'six');
    await two.getByRole('button', { name: 'Put 6 on the map' }).click();
    await two.waitFor({ state: 'detached' });
    await soonMatch(() => tokens(page), /undo 6 belt guard screws/);
    await write.select(2);
    await two.getByText('the words say 4, the map says 6').waitFor();
    await page.getByRole('group', { name: 'Two figures of the belt guard screws' }).getByRole('button', { name: 'Write 6 here' }).click();
    await soonMatch(() => write.words(2), /six M6 screws/);
  });
}

async function kept(place, visit, write) {
  const { page } = visit;
  const mark = (words) =>
    page.locator('.row.selected textarea').evaluate((field, words) => {
      const from = field.value.indexOf(words);
      field.focus();
      field.setSelectionRange(from, from + words.length);
    }, words);
  await place.tally.step('words of a meaning that is picked are offered as a phrase, and one key keeps it', async () => {
    await write.append('Knock off the belt guard.');
    await write.select(3);
    await mark('Knock off');
    await page.keyboard.press('Control+.');
    const readings = page.getByRole('group', { name: 'Other readings' });
    await readings.getByRole('button', { name: /remove belt guard/ }).click();
    const offer = page.getByRole('group', { name: 'A phrase of this procedure' });
    await offer.getByText('knock off').waitFor();
    await look(place, visit, 'write-own-phrase');
    await offer.getByRole('button', { name: 'Read it as remove in this procedure from now on' }).press('Enter');
    await offer.waitFor({ state: 'detached' });
    await soonMatch(() => tokens(page), /remove belt guard/);
    await page.getByRole('button', { name: /^Undo: read "knock off" as remove/ }).waitFor();
  });
  await place.tally.step('the line knows it, nothing is found of it, and Appliance lists it', async () => {
    await write.append('Knock off the motor cover.');
    await write.select(4);
    await soonMatch(() => tokens(page), /remove motor cover/);
    await soonEqual(() => page.getByText(/its words do not say so/).count(), 0);
    await goTo(page, 'Appliance');
    const list = page.getByRole('heading', { name: 'Phrases of this procedure' });
    await list.scrollIntoViewIfNeeded();
    await look(place, visit, 'appliance-phrases');
    await page.getByRole('button', { name: 'Take out the phrase knock off' }).click();
    await list.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Undo: take the phrase knock off out/ }).click();
    if ((await list.count()) === 0) await goTo(page, 'Appliance');
    await list.waitFor();
    await goTo(page, 'Write');
  });
}

async function back({ tally }, { page }, write) {
  await tally.step('what was taken out comes back with a step that is pasted, and a finding names no id', async () => {
    await write.selectRow(4);
    await page.keyboard.press('Control+c');
    await page.keyboard.press('Delete');
    await write.counts(3);
    await goTo(page, 'Appliance');
    await page.getByRole('checkbox', { name: 'in no step' }).check();
    await page.getByRole('button', { name: 'Take out the motor cover' }).click();
    await page.getByRole('checkbox', { name: 'in no step' }).uncheck();
    await goTo(page, 'Write');
    await write.selectRow(3);
    await page.keyboard.press('Control+v');
    await write.counts(4);
    await page.getByText('Back on the appliance: motor cover.').waitFor();
    await write.select(4);
    await soonMatch(() => tokens(page), /remove motor cover/);
  });
}
