// Where a press on words puts the caret, and where the keyboard is then.
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkKeyboardStays(tally, screen) {
  await visited(tally, screen, 'the keyboard stays', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await pressed(place, visit, write);
  });
}

/** What has the keyboard: the name of a row, the id of a field, or the words of a key. */
const holder = (page) =>
  page.evaluate(() => {
    const active = document.activeElement;
    return active.getAttribute('aria-label') || active.id || active.innerText?.trim() || active.tagName;
  });

async function pressed({ tally, screen }, { page }, write) {
  const caret = () => page.evaluate(() => [document.activeElement.closest('li')?.ariaLabel, document.activeElement.selectionStart ?? 'none']);
  const before = (n, words) => {
    // Where a part of the words stands.
    const of = (row, words) => {
      const text = row.querySelector('p.words').firstChild;
      const range = document.createRange();
      range.setStart(text, text.data.indexOf(words));
      range.setEnd(text, text.data.indexOf(words) + 1);
      const { left, top, height } = range.getBoundingClientRect();
      return { x: left + 1, y: top + height / 2 };
    };
    return write.row(n).evaluate(of, words);
  };
  await tally.step('a press on words puts the caret there, and beside them it selects the row', async () => {
    for (const [n, words] of [[2, 'keeper'], [4, 'boiler'], [1, 'pump']]) {
      const at = (await write.words(n)).indexOf(words);
      const { x, y } = await before(n, words);
      await page.mouse.click(x, y);
      await soonEqual(caret, [`Step ${n}`, at]);
    }
    await page.keyboard.type('old ');
    await soonMatch(() => write.words(1), /the new old pump/);
    const { x, y } = await write.row(3).locator('.number').boundingBox();
    await page.mouse.click(x + 2, y + 30);
    await soonEqual(() => holder(page), 'Step 3');
  });
  if (!screen.options.hasTouch) return;
  await tally.step('a finger selects first, so that no keyboard comes unasked', async () => {
    const { x, y } = await before(2, 'keeper');
    await page.touchscreen.tap(x, y);
    await soonEqual(() => holder(page), 'Step 2');
  });
}
