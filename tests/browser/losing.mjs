// Nothing that is typed is lost by going elsewhere, one act is one undo, and the sentence says what its fields say.
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { visited } from './visit.mjs';

const LONG = 'Cover the floor with a sheet and lay the tools out on it.';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkLosing(tally, screen) {
  await visited(tally, screen, 'losing nothing', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await lineBelow(place, visit.page, write);
    await reload(place, visit.page, write);
    await cutInTwo(place, visit.page, write);
    await torque(place, visit.page, write);
    await otherTab(place, visit, write);
  });
}

/** Goes to the end of the words of a step and opens the line below it. */
async function openLineBelow(page, write, number) {
  await write.select(number);
  await page.keyboard.press('End');
  await page.keyboard.press('Control+Enter');
  await page.locator('#draft-line:focus').waitFor();
}

async function lineBelow(place, page, write) {
  const n = await write.steps();
  await place.tally.step('what is typed below a step becomes a step when another is pressed', async () => {
    await openLineBelow(page, write, 12);
    await page.keyboard.type(LONG);
    await page.locator('li[data-step]').nth(3).locator('.words').click();
    await write.counts(n + 1);
    await soonEqual(() => write.words(13), LONG);
    await page.getByRole('button', { name: /^Undo: add step 13/ }).click();
    await write.counts(n);
  });
}

async function reload(place, page, write) {
  await place.tally.step('half a line below a step outlives a reload', async () => {
    await openLineBelow(page, write, 12);
    await page.keyboard.type('Cover the floor');
    await page.reload();
    await page.locator('#draft-line').waitFor();
    await soonEqual(() => page.locator('#draft-line').inputValue(), 'Cover the floor');
    await page.locator('#draft-line').press('Escape');
    await page.locator('#draft-line').waitFor({ state: 'detached' });
    await page.reload();
    await page.locator('li[data-step]').first().waitFor();
    await soonEqual(() => page.locator('#draft-line').count(), 0);
  });
}

async function cutInTwo(place, page, write) {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
  await goTo(page, 'Write');
  await place.tally.step('a step cut in two with all it means is one entry of undo', async () => {
    await write.append('Switch off at the wall isolator, lock it off and hang up the notice.');
    await write.counts(1);
    const before = await write.row(1).innerText();
    await write.select(1);
    const field = page.locator('.row.selected textarea');
    await field.evaluate((field) => field.setSelectionRange(field.value.indexOf(' and hang'), field.value.indexOf(' and hang')));
    await page.keyboard.press('Enter');
    await write.counts(2);
    await page.keyboard.press('Control+z');
    await write.counts(1);
    await soonEqual(async () => (await write.row(1).locator('.notation').innerText()).replace(/\s+/g, ' ').length > 10, true, before);
    await page.getByRole('button', { name: /^Undo: add step 1/ }).waitFor();
  });
}

async function torque(place, page, write) {
  await place.tally.step('a torque that is set in the fields of its token stands in the sentence', async () => {
    await write.append('Close the gas cock.');
    await write.append('Undo the gas union, G 1/2.');
    await write.append('Make the gas union with a new washer to 12 to 15 Nm.');
    await write.counts(4);
    await write.select(4);
    await page.locator('.row.selected .token').first().focus();
    await page.keyboard.press('Enter');
    const field = page.locator('.of-token').getByLabel(/^Torque to/);
    await soonEqual(() => field.inputValue(), '15');
    await field.fill('18');
    await field.press('Tab');
    await page.waitForFunction(() => document.querySelector('.row.selected textarea').value.includes('12 to 18 Nm'));
    await soonEqual(() => write.words(4), 'Make the gas union with a new washer to 12 to 18 Nm.');
  });
}

async function otherTab(place, visit, write) {
  const { page, browser } = visit;
  await place.tally.step('steps that were copied come into another tab with all that they mean', async () => {
    await write.selectRow(1);
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+c');
    const other = await browser.newPage();
    await other.goto(place.server.address);
    const there = new Write(other);
    await other.locator('#new-line').waitFor();
    await goTo(other, 'Procedures');
    await new Procedures(other).beginNew();
    await goTo(other, 'Write');
    await other.locator('#new-line').focus();
    await other.keyboard.press('Control+v');
    await there.counts(2);
    await soonMatch(() => there.row(1).innerText(), /isolate\s+wall isolator/);
    await other.reload();
    await there.counts(2);
    await other.close();
  });
}
