// A procedure of one's own: its title.
import assert from 'node:assert/strict';
import { Procedures, goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkOneOfOnesOwn(tally, screen) {
  await visited(tally, screen, "a procedure of one's own", async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await titled(place, visit, write);
    await inNoStep(place, visit);
  });
}

const begin = async (page) => {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
};

async function titled(place, visit, write) {
  const { page } = visit;
  const title = page.getByRole('textbox', { name: 'Title', exact: true });
  await place.tally.step('the title can be written where a new procedure begins', async () => {
    await begin(page);
    await title.fill('Clean the fan of heater H3/2');
    await goTo(page, 'Write');
    await soonEqual(() => title.inputValue(), 'Clean the fan of heater H3/2');
    const line = await title.evaluate((field) => getComputedStyle(field).borderBottomColor);
    assert.ok(!/, 0\)$|transparent/.test(line), `the field has no edge: ${line}`);
  });
  await look(place, visit, 'write-titled');
  await place.tally.step('what stands for a title gives way to what is typed', async () => {
    await begin(page);
    await goTo(page, 'Write');
    await title.click();
    await page.keyboard.type('Clean the trap');
    await soonEqual(() => title.inputValue(), 'Clean the trap');
  });
}

async function inNoStep({ tally }, { page }) {
  await tally.step('one that nobody has named is told from another by how it begins', async () => {
    await writeNew(page, ['Undo the union nut.']);
    await goTo(page, 'Procedures');
    const facts = page.locator('.shelf li', { hasText: 'open now' }).locator('.facts');
    await soonMatch(() => facts.innerText(), /begins \u201cUndo the union nut\.\u201d · 1 steps? · kept today/);
  });
}
