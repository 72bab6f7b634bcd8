// The line while it is typed: the lines under its words, input methods, large text, and the keys of what it means.
import assert from 'node:assert/strict';
import { Appliance, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { begin, look, visited } from './visit.mjs';

const SENTENCE =
  'Undo the two union nuts of the strainer, G 1, 37 mm, then close the valve and prove dead at the terminals.';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkLine(tally, screen) {
  await visited(tally, screen, 'the line', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await underlines(place, visit);
    await composition(place, visit);
    await tokens(place, visit, write);
    await leadingKeys(place, visit, write);
    await links(place, visit, write);
    await legend(place, visit);
    if (screen.options.hasTouch) await docked(place, visit);
  });
}

/** The words that carry a mark in the layer below the line, and the shape of the line under them. */
const marked = (page, mark) =>
  page.locator(`.new-line .mirror .${mark}`).evaluateAll((spans) =>
    spans.map((span) => ({ words: span.textContent, line: getComputedStyle(span).textDecorationStyle })));

/** Fails unless the layer below a field has its text, its place and its height. */
async function liesUnder(field) {
  const seen = await field.evaluate((area) => {
    const layer = area.parentElement.querySelector('.mirror');
    const [one, other] = [area.getBoundingClientRect(), layer.getBoundingClientRect()];
    return {
      text: layer.textContent === `${area.value} `,
      moved: Math.max(Math.abs(one.left - other.left), Math.abs(one.top - other.top), Math.abs(one.width - other.width)),
      higher: area.scrollHeight - other.height,
      scrolled: area.scrollTop,
    };
  });
  assert.ok(seen.text, 'the layer has another text');
  assert.ok(seen.moved < 0.6 && Math.abs(seen.higher) < 1.5 && seen.scrolled === 0, JSON.stringify(seen));
}

async function underlines(place, visit) {
  const { page } = visit;
  const line = page.locator('#new-line');
  await place.tally.step('lines under what is typed say by their shape how it is understood', async () => {
    await line.fill(SENTENCE);
    await page.locator('.new-line .mirror .new').first().waitFor();
    await soonEqual(() => marked(page, 'new'), [{ words: 'union nuts', line: 'dashed' }, { words: 'strainer', line: 'dashed' }]);
    await soonEqual(() => marked(page, 'open'), [{ words: 'valve', line: 'double' }]);
    assert.ok((await marked(page, 'understood')).some(({ words, line: shape }) => /Undo/.test(words) && shape === 'solid'));
    assert.ok((await marked(page, 'practice')).every(({ line: shape }) => shape === 'dotted'));
    await soonEqual(() => page.locator('.new-line .mirror .pending').allTextContents(), ['union nuts']);
  });
  await look(place, visit, 'write-underlined');
  await place.tally.step('the layer lies under the words however they wrap, and with text twice as large', async () => {
    for (const text of [SENTENCE, `${SENTENCE}\n\nwhy: because`, `${'averyveryverylongword'.repeat(12)} and   blanks   `, 'x'.repeat(400)]) {
      await line.fill(text);
      await liesUnder(line);
    }
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    await line.fill(`${SENTENCE} ${SENTENCE}`);
    await liesUnder(line);
    await page.evaluate(() => document.documentElement.style.removeProperty('font-size'));
    await line.fill('');
  });
}

async function composition(place, visit) {
  const { page } = visit;
  await place.tally.step('an input method composes over the layer, and nothing is torn', async () => {
    await page.locator('li[data-step] .words').nth(1).click();
    const field = page.locator('.row.selected textarea');
    await field.click();
    const before = await field.inputValue();
    await field.press('End');
    const client = await page.context().newCDPSession(page);
    await client.send('Input.imeSetComposition', { text: '日本', selectionStart: 2, selectionEnd: 2 });
    await liesUnder(field);
    await soonEqual(() => page.locator('.row.selected .mirror span').count(), 0, 'marks while composing');
    await client.send('Input.insertText', { text: '日本語' });
    await page.waitForFunction(() => document.querySelector('.row.selected .mirror').textContent.includes('日本語'));
    await liesUnder(field);
    await soonEqual(async () => (await field.inputValue()).replace('日本語', ''), before);
    await page.getByRole('button', { name: /^Undo: change the words/ }).click();
    await soonEqual(() => field.inputValue(), before);
  });
}

async function tokens(place, visit, write) {
  const { page } = visit;
  await place.tally.step('Tab goes from the words to what they mean; a key opens its fields', async () => {
    const number = await numberOf(page, 'Undo the four lid screws');
    await write.select(number);
    await page.keyboard.press('Tab');
    await page.locator('.token:focus', { hasText: 'lid screws' }).waitFor();
    await page.keyboard.press('Enter');
    const count = page.getByRole('textbox', { name: 'How many' });
    await count.fill('2');
    await page.locator('.token', { hasText: 'undo 2 of 4 lid screws' }).waitFor();
    await page.getByRole('button', { name: /^Undo: change step/ }).click();
  });
  await look(place, visit, 'write-token');
  await place.tally.step('Backspace says that it is no action, for good, and undo brings it back', async () => {
    const row = page.locator('.row.selected');
    await row.locator('.token').nth(1).focus();
    await page.keyboard.press('Backspace');
    await row.locator('textarea:focus').waitFor();
    await soonEqual(() => row.locator('.token').count(), 1);
    await page.keyboard.press('End');
    await page.keyboard.type(' Slowly.');
    await soonEqual(() => row.locator('.token').count(), 1);
    assert.ok(!(await row.locator('.mirror span:not(.declined)').allTextContents()).includes('take off'));
    assert.ok((await row.locator('.mirror .declined').allTextContents()).includes('take off'), 'it carries a mark of its own');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await soonEqual(() => row.locator('.token').count(), 2);
  });
}

async function leadingKeys(place, visit, write) {
  const { page } = visit;
  await place.tally.step('a leading word is a key: it begins a line below the words, and the keyboard stays there', async () => {
    const number = await numberOf(page, 'Hang the notice');
    await write.select(number);
    const row = page.locator('.row.selected');
    // Where the line is docked, its keys serve the row.
    const docked = place.screen.options.hasTouch;
    const keys = docked ? page.getByRole('toolbar', { name: `Leading words, step ${number}` }) : row.getByRole('toolbar', { name: 'Leading words' });
    await keys.getByRole('button', { name: 'why' }).click();
    await row.locator('textarea:focus').waitFor();
    await page.keyboard.type('somebody may come back early');
    await soonMatch(() => row.locator('textarea').inputValue(), /\nwhy: somebody may come back early$/);
    await page.keyboard.press('Enter');
    await row.locator('.why', { hasText: 'why: somebody may come back early' }).waitFor();
    await soonMatch(() => row.locator('textarea').first().inputValue(), /^(?!.*why)/s);
  });
  await place.tally.step('Enter at the end of the words opens a line for the next step, and Enter in it with nothing typed closes it', async () => {
    await page.locator('#draft-line:focus').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('#draft-line').waitFor({ state: 'detached' });
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.row.selected textarea:focus').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('#draft-line:focus').waitFor();
    // Whoever goes elsewhere leaves no empty line behind.
    await write.select(1);
    await page.locator('#draft-line').waitFor({ state: 'detached' });
  });
}

async function links(place, visit, write) {
  const { page } = visit;
  const number = await numberOf(page, 'Hang the notice');
  const said = (step) => new RegExp(`As in step ${step}\\.$`);
  await place.tally.step('a typed number is offered to follow its step', async () => {
    await write.select(number);
    await page.keyboard.press('Control+End');
    await page.keyboard.type(` As in step ${number - 2}.`);
    const offer = page.getByRole('group', { name: `A link to step ${number - 2}` });
    await offer.getByText('Shut down the boiler plant', { exact: false }).waitFor();
    await offer.getByRole('button', { name: 'Let the number follow it' }).click();
    await offer.waitFor({ state: 'detached' });
    await soonMatch(() => write.words(number), said(number - 2));
    assert.ok((await page.locator('.row.selected .mirror span').allTextContents()).includes(`step ${number - 2}`));
  });
  await look(place, visit, 'write-linked');
  await place.tally.step('it renumbers when its step moves, and stays while the words around it are typed', async () => {
    await write.selectRow(number - 2);
    await page.keyboard.press('Alt+ArrowUp');
    await page.waitForFunction((words) => [...document.querySelectorAll('.words')].some((p) => p.textContent.endsWith(words)), `As in step ${number - 3}.`);
    await page.keyboard.press('Escape');
    await soonMatch(() => write.words(number), said(number - 2));
    await write.select(number);
    await page.keyboard.press('Control+Home');
    await page.keyboard.type('Now h');
    await page.keyboard.press('Delete');
    await soonMatch(() => write.words(number), /^Now hang the notice .* As in step \d+\.$/);
    await soonEqual(() => page.locator('.link-offer').count(), 0, 'the link has become words');
  });
  await place.tally.step('the sheets of Appliance tell the step in the words that people read', async () => {
    await goTo(page, 'Appliance');
    await new Appliance(page).open('notice');
    await page.getByRole('button', { name: 'It is two …' }).click();
    const panel = page.getByRole('group', { name: 'The steps for which it stands' });
    await panel.getByText(/hang the notice .* As in step \d+\.$/).waitFor();
    await goTo(page, 'Write');
  });
  await place.tally.step('copied together, the copy points at the copy', async () => {
    await write.selectRow(number - 2);
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+d');
    await soonMatch(() => write.words(number), said(number - 2));
    await soonMatch(() => write.words(number + 3), said(number + 1));
    await page.getByRole('button', { name: /^Undo: duplicate/ }).click();
  });
}

async function legend({ tally }, { page }) {
  await tally.step('the sheet of keys shows every line that words can have, as it is drawn', async () => {
    await page.keyboard.press('F1');
    const shown = await page.locator('.legend dt span').evaluateAll((spans) => spans.map((span) => span.className));
    assert.deepEqual(shown.sort(), ['declined', 'new', 'open', 'pending', 'practice', 'understood']);
    await soonEqual(() => page.locator('.legend .declined').evaluate((span) => getComputedStyle(span).textDecorationLine), 'overline');
    for (const key of ['Ctrl+Shift+V', 'Backspace at the start of words']) {
      await page.locator('.keys-sheet dt', { hasText: key }).waitFor();
    }
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });
}

async function docked(place, visit) {
  const { page } = visit;
  const line = page.locator('#new-line');
  const field = page.locator('.row.last');
  await place.tally.step('the line docks at the foot of the screen with the leading words above it', async () => {
    await page.evaluate(() => scrollTo(0, 0));
    const { y, height } = await field.boundingBox();
    assert.ok(Math.abs(y + height - page.viewportSize().height) < 2, `it ends at ${y + height}`);
    await line.tap();
    await page.getByRole('toolbar', { name: 'Leading words, new step' }).getByRole('button', { name: 'warning' }).tap();
    await page.locator('#new-line:focus').waitFor();
    await soonEqual(() => line.inputValue(), 'warning: ');
    await page.keyboard.type('hot water');
    await field.getByText('warning for the next step', { exact: false }).or(field.getByText(/WARNING for the next step/i)).first().waitFor();
    await field.getByRole('button', { name: 'photo' }).tap();
    await soonEqual(() => line.inputValue(), 'photo: hot water');
  });
  await look(place, visit, 'write-docked');
  await place.tally.step('the leading words stand once, and the line keeps its height wherever the keyboard is', async () => {
    await line.fill('');
    const seen = () => page.evaluate(() => ({
      words: [...document.querySelectorAll('.leading-keys')].filter((keys) => keys.offsetHeight > 0).length,
      height: Math.round(document.querySelector('.row.last').offsetHeight),
    }));
    const inLine = await seen();
    assert.equal(inLine.words, 1);
    await page.locator('.row[aria-label="Step 2"] .words').tap();
    await page.getByRole('toolbar', { name: 'Leading words, step 2' }).waitFor();
    await soonEqual(() => seen(), inLine);
    await page.keyboard.press('Control+Enter');
    await page.locator('#draft-line:focus').waitFor();
    await page.getByRole('toolbar', { name: 'Leading words, new step' }).getByRole('button', { name: 'why' }).tap();
    await soonEqual(() => page.locator('#draft-line').inputValue(), 'why: ');
    await soonEqual(() => seen(), inLine);
    await page.keyboard.press('Escape');
  });
  await place.tally.step('on a narrow screen all leading words are in sight, in two lines', async () => {
    const size = page.viewportSize();
    await page.setViewportSize({ width: 320, height: 640 });
    const keys = field.locator('.leading-keys').getByRole('button');
    const boxes = await Promise.all((await keys.all()).map((key) => key.boundingBox()));
    assert.equal(boxes.length, 9);
    for (const { x, width } of boxes) assert.ok(x >= 0 && x + width <= 320, `${x} to ${x + width}`);
    assert.equal(new Set(boxes.map(({ y }) => y)).size, 2);
    await page.setViewportSize(size);
  });
  await place.tally.step('what is asked is answered by keys over the full width', async () => {
    await line.fill('Close the valve.');
    await line.press('Enter');
    const choices = page.getByRole('group', { name: 'Which one is "valve"?' });
    const wide = (await choices.boundingBox()).width;
    for (const key of await choices.getByRole('button').all()) {
      const box = await key.boundingBox();
      assert.ok(box.width > wide - 2 && box.height >= 48, JSON.stringify(box));
    }
    await choices.getByRole('button', { name: /suction valve/ }).tap();
    await page.locator('#new-line:focus').waitFor();
  });
}

/** The number of the step whose words begin like this. */
async function numberOf(page, words) {
  const all = await page.locator('li[data-step] .words').evaluateAll((all) => all.map((one) => one.value ?? one.textContent));
  return all.findIndex((text) => text.startsWith(words)) + 1;
}
