// What the heads of the screens and the margin tell is read whole, on a narrow screen too, and not by colour alone.
import assert from 'node:assert/strict';
import { goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { visited } from './visit.mjs';

const LINES = [
  'Close the flow valve and the return valve.',
  'Open the drain valve until the gauge reads 0 to 0.1 bar.',
  'Undo the two union nuts of the pump, G 1, 37 mm.',
  'later: size of the pump union nuts, on site',
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkToldWhole(tally, screen) {
  await visited(tally, screen, 'told whole', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await writeNew(visit.page, LINES);
    await marked(place, visit);
    await acts(place, visit, write);
    await narrow(place, visit);
    await large(place, visit);
  });
}

async function marked({ tally }, { page }) {
  await tally.step('what rejects and what is only doubted have marks of different shapes beside their words', async () => {
    const shape = (level) => page.locator(`.finding.${level} .title .level-mark`).first().evaluate((mark) => [...mark.children].map(({ tagName }) => tagName));
    await page.locator('.finding.warn').first().waitFor();
    assert.deepEqual(await shape('reject'), ['circle', 'path']);
    assert.deepEqual(await shape('warn'), ['path']);
    const [n, nMarks] = [await page.locator('.finding:not(.accepted)').count(), await page.locator('.finding .level-mark').count()];
    assert.equal(nMarks, n);
  });
}

async function acts({ tally, screen }, { page }, write) {
  const undo = page.getByRole('button', { name: /^Undo/ });
  await tally.step('undo names the step that was duplicated', async () => {
    await write.selectRow(2);
    await page.keyboard.press('Control+d');
    await write.counts(LINES.length);
    await soonEqual(() => undo.innerText(), 'Undo: duplicate step 2');
    await page.keyboard.press('Control+z');
    await write.counts(LINES.length - 1);
  });
  await tally.step('what is undone is read whole on every screen', async () => {
    await write.setWords(1, 'Close the flow valve, then the return valve.');
    for (const width of [screen.options.viewport.width, 1280, 1024, 820]) {
      await page.setViewportSize({ width, height: 800 });
      for (const name of ['Appliance', 'Kit']) {
        await goTo(page, name);
        await soonEqual(() => undo.innerText(), 'Undo: change the words of step 1');
        const cut = await undo.evaluate((key) => [key, ...key.children].some((part) => part.scrollWidth > part.clientWidth + 1 || part.scrollHeight > part.clientHeight + 4));
        assert.ok(!cut, `${name} at ${width}`);
      }
    }
  });
}

async function narrow({ tally }, { page }) {
  await tally.step('the way to what is for later stands within a narrow window', async () => {
    const key = page.locator('.plain-head .later-key');
    for (const width of [320, 340, 375]) {
      await page.setViewportSize({ width, height: 640 });
      for (const name of ['Appliance', 'Kit']) {
        await goTo(page, name);
        const { x, width: wide } = await key.boundingBox();
        assert.ok(x >= 0 && x + wide <= width, `${name} at ${width}: from ${x}`);
      }
    }
  });
}

async function large({ tally, screen }, { page }) {
  const enlarge = (size) => page.evaluate((size) => document.documentElement.style.setProperty('font-size', size), size);
  await page.setViewportSize(screen.options.viewport);
  await tally.step('with text twice as large the names of the lanes stand clear of each other', async () => {
    await goTo(page, 'Write');
    await enlarge('200%');
    const gaps = () => page.evaluate(() => {
      const heads = [...document.querySelectorAll('.lane-head > span')].map((head) => head.getBoundingClientRect());
      return heads.slice(1).map((head, at) => head.left - heads[at].right);
    });
    await soonEqual(async () => (await gaps()).every((gap) => gap >= 2), true, `${await gaps()}`);
  });
  await tally.step('so do the numbers of steps, and fields are as wide as their text needs', async () => {
    await goTo(page, 'Appliance');
    const example = page.getByRole('textbox', { name: 'Find a thing' });
    const [wide, text] = await example.evaluate((field) => {
      const pen = document.createElement('canvas').getContext('2d');
      pen.font = getComputedStyle(field).font;
      return [field.clientWidth - 16, pen.measureText(field.placeholder).width];
    });
    assert.ok(wide >= text, `${wide} for ${text}`);
    const link = await page.locator('.link.step').first().evaluate((key) => key.getBoundingClientRect().width);
    assert.ok(link >= 50, `${link}`);
    await enlarge('');
  });
  await tally.step('each choice of a sheet is read whole', async () => {
    await page.locator('.thing-row', { hasText: 'pump union nuts' }).first().click();
    const field = page.getByRole('combobox', { name: 'Several are' });
    await field.selectOption('together');
    const [wide, text] = await field.evaluate((field) => {
      const pen = document.createElement('canvas').getContext('2d');
      pen.font = getComputedStyle(field).font;
      return [field.clientWidth - 40, pen.measureText(field.selectedOptions[0].text).width];
    });
    assert.ok(wide >= text, `${wide} for ${text}`);
  });
}
