// Steps that are moved: held by keys, mouse or finger with lanes and verdict as after the drop, or by a list.
import assert from 'node:assert/strict';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Something that must be done before the step that is held; moved behind it, it rejects. */
const MOVED = 'Prove the box terminals dead';
const BEHIND = 'Unplug the pump plug';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkMoving(tally, screen) {
  await visited(tally, screen, 'moving', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.putBack();
    await write.stamped('ACCEPTED');
    await byKeys(place, visit, write);
    await byPointer(place, visit, write);
    if (screen.options.hasTouch) await byFinger(place, visit, write);
    await byList(place, visit.page, write);
  });
}

/** The ids of the rows as they stand on the screen. */
const order = (page) => page.locator('li[data-step]').evaluateAll((rows) => rows.map((row) => row.dataset.step));

/** The words of the rows as they stand. */
const words = (page) =>
  page.locator('li[data-step]').evaluateAll((rows) =>
    rows.map((row) => row.querySelector('textarea')?.value ?? row.querySelector('.words').textContent));

async function at(page, start) {
  return (await words(page)).findIndex((text) => text.startsWith(start));
}

const change = (page) => page.locator('.change-held').innerText();

const headHeight = (page) => page.locator('.head').evaluate((head) => head.offsetHeight);

async function byKeys(place, visit, write) {
  const { page } = visit;
  const before = await order(page);
  await place.tally.step('a step that is held by Alt+Down shows lanes and verdict as after the drop', async () => {
    await write.selectRow((await at(page, MOVED)) + 1);
    await soonMatch(() => page.locator('.row.selected textarea').inputValue(), new RegExp(`^${MOVED}`));
    const lanes = () => page.locator('.row .lanes .unseen').allTextContents();
    const drawn = await lanes();
    const height = await headHeight(page);
    while ((await at(page, MOVED)) < (await at(page, BEHIND))) {
      await page.keyboard.press('Alt+ArrowDown');
      await page.locator('.row.held:focus').waitFor();
    }
    await write.stamped('REJECTED');
    await soonMatch(() => change(page), /^\+[1-9]\d* to mend$/);
    assert.notDeepEqual(await lanes(), drawn);
    await soonMatch(() => page.locator('.held-bar').innerText(), /^Step \d+ would be step \d+ · \+\d+ to mend/);
    await soonEqual(() => headHeight(page), height, 'the head grows, and the rows jump under the pointer');
  });
  await look(place, visit, 'write-held');
  await place.tally.step('Esc puts it back and leaves no trace', async () => {
    await page.keyboard.press('Escape');
    await write.stamped('ACCEPTED');
    await soonEqual(() => order(page), before);
    await page.locator('.row.selected:focus').waitFor();
    await soonEqual(() => page.getByRole('button', { name: /^Undo: move/ }).count(), 0);
    await soonEqual(() => page.locator('.held-bar').count(), 0);
  });
  await place.tally.step('a move that only brings a doubt says so, and the head says how many there are', async () => {
    const height = await headHeight(page);
    const besides = page.locator('.verdict .besides');
    await soonEqual(() => besides.count(), 0);
    await page.keyboard.press('Alt+ArrowUp');
    await page.locator('.row.held:focus').waitFor();
    await write.stamped('ACCEPTED');
    await soonEqual(() => change(page), '+1 doubt');
    await soonEqual(() => besides.innerText(), '1 doubt');
    await soonEqual(() => headHeight(page), height);
    await page.keyboard.press('Escape');
    await page.locator('.held-bar').waitFor({ state: 'detached' });
    await soonEqual(() => besides.count(), 0);
    await page.locator('.row.selected:focus').waitFor();
  });
  await place.tally.step('Enter drops it as one entry of undo, and so does whatever else is done', async () => {
    await page.keyboard.press('Alt+ArrowUp');
    await page.keyboard.press('Alt+ArrowUp');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Undo: move step/ }).waitFor();
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('Control+z');
    await soonEqual(() => order(page), before);
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('Alt+ArrowUp');
    await page.locator('.row.held:focus').waitFor();
    await page.keyboard.press('Control+d');
    await write.counts(before.length + 1);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await soonEqual(() => order(page), before);
  });
}

/** Where the handle of the selected row is, and a place within the row that begins with these words. */
async function handle(page) {
  const box = await page.locator('.row.selected .handle').boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function byPointer(place, visit, write) {
  const { page } = visit;
  const before = await order(page);
  const first = await at(page, 'Hang the notice');
  const drag = async () => {
    await write.selectRow(first + 1);
    await page.locator('.row.selected').evaluate((row) => row.scrollIntoView({ block: 'center' }));
    const from = await handle(page);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let step = 1; step <= 20; step += 1) await page.mouse.move(from.x, from.y + step * 12);
    await page.locator('.row.held').waitFor();
    assert.ok((await at(page, 'Hang the notice')) > first, 'it has not moved');
  };
  await place.tally.step('dragged by its handle a row follows the pointer, and Esc puts it back', async () => {
    await drag();
    await page.locator('.change-held').waitFor();
    await page.keyboard.press('Escape');
    await soonEqual(() => order(page), before);
    await page.mouse.move(10, 300);
    await page.mouse.up();
    await soonEqual(() => order(page), before);
    await soonEqual(() => page.locator('.move-to').count(), 0);
  });
  await place.tally.step('let go, it stays, and undo takes it back', async () => {
    await drag();
    await page.mouse.up();
    await soonEqual(() => page.locator('.row.held').count(), 0);
    assert.ok((await at(page, 'Hang the notice')) > first);
    await page.getByRole('button', { name: `Undo: move step ${first + 1}` }).click();
    await soonEqual(() => order(page), before);
  });
}

async function byFinger(place, visit, write) {
  const { page } = visit;
  const before = await order(page);
  const first = await at(page, 'Hang the notice');
  await place.tally.step('a finger drags the handle as a mouse does', async () => {
    await write.selectRow(first + 1);
    await page.locator('.row.selected').evaluate((row) => row.scrollIntoView({ block: 'center' }));
    const client = await page.context().newCDPSession(page);
    const touch = (type, points) => client.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    const { x, y } = await handle(page);
    await touch('touchStart', [{ x, y }]);
    for (let step = 1; step <= 20; step += 1) await touch('touchMove', [{ x, y: y + step * 12 }]);
    await page.locator('.row.held').waitFor();
    await touch('touchEnd', []);
    await page.locator('.row.held').waitFor({ state: 'detached' });
    assert.ok((await at(page, 'Hang the notice')) > first);
    await page.getByRole('button', { name: `Undo: move step ${first + 1}` }).click();
    await soonEqual(() => order(page), before);
  });
}

async function byList(place, page, write) {
  const before = await order(page);
  await place.tally.step('the list moves it without dragging', async () => {
    await write.selectRow((await at(page, 'Hang the notice')) + 1);
    await page.locator('.row.selected').getByRole('button', { name: 'Move to…' }).click();
    await page.getByRole('combobox', { name: 'Move to' }).selectOption({ label: 'the end' });
    await page.getByRole('button', { name: 'Move', exact: true }).click();
    await soonEqual(() => at(page, 'Hang the notice'), before.length - 1);
    await page.keyboard.press('Control+z');
    await soonEqual(() => order(page), before);
    await page.locator('.row.selected').getByRole('button', { name: /^Move step/ }).press('Enter');
    await page.getByRole('combobox', { name: 'Move to' }).waitFor();
  });
}
