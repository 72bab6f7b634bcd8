// A procedure of one's own: its title, the name of its file, ladders and fixes that suit it, and questions with few answers.
import assert from 'node:assert/strict';
import { basename } from 'node:path';
import { out } from './places.mjs';
import { Appliance, Procedures, goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkOneOfOnesOwn(tally, screen) {
  await visited(tally, screen, "a procedure of one's own", async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await titled(place, visit, write);
    await declining(place, visit, write);
    await ladders(place, visit, write);
    await fewAnswers(place, visit, write);
    await inNoStep(place, visit);
  });
}

const begin = async (page) => {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
};

/** Presses Save, and gives the name that the file is offered under. */
async function savedAs(page) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  await download.saveAs(out(`saved-${basename(download.suggestedFilename())}`));
  return download.suggestedFilename();
}

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
  await place.tally.step('the list has no other name for it', async () => {
    await write.untilKept(() => write.append('Clean the fan.'));
    await goTo(page, 'Procedures');
    const facts = page.locator('.shelf li', { hasText: 'open now' }).locator('.facts');
    await soonMatch(() => facts.innerText(), /^1 steps? · kept today/);
    await goTo(page, 'Write');
  });
  await place.tally.step('the file is called after the title until it is saved, and keeps that name', async () => {
    await title.fill('Clean the fan of heater H4');
    assert.match(await savedAs(page), /^clean-the-fan-of-heater-h4(\.[A-Z-]+)?\.putback\.json$/);
    await title.fill('Renew the fan of heater H4');
    assert.match(await savedAs(page), /^clean-the-fan-of-heater-h4(\.[A-Z-]+)?\.putback\.json$/);
  });
  await place.tally.step('what stands for a title gives way to what is typed', async () => {
    await begin(page);
    await goTo(page, 'Write');
    await title.click();
    await page.keyboard.type('Clean the trap');
    await soonEqual(() => title.inputValue(), 'Clean the trap');
  });
}

async function declining({ tally }, { page }, write) {
  await tally.step('Alt+Enter leaves no words unread: that is done by its own key alone', async () => {
    await writeNew(page, ['Take out the fuse and the fan.', 'Take off the lid.']);
    const found = page.locator('.finding').filter({ hasText: 'names "fan" too' });
    await found.getByRole('button', { name: /without an action$/ }).waitFor();
    await write.selectRow(1);
    await page.keyboard.press('Alt+Enter');
    await page.getByText(/^Nothing ready would mend this step/).waitFor();
    await found.getByRole('button', { name: /without an action$/ }).click();
    await found.waitFor({ state: 'detached' });
  });
}

async function ladders(place, visit, write) {
  const { page } = visit;
  const words = async () => {
    const n = await write.steps();
    return Promise.all(Array.from({ length: n }, (_, at) => write.words(at + 1)));
  };
  const ladder = async (circuit) => {
    // Where the line is docked only the rows have the key.
    await write.select(await write.steps());
    await page.locator('.row.selected').getByRole('button', { name: 'Ladder', exact: true }).click();
    await page.getByRole('button', { name: circuit }).click();
  };
  await place.tally.step('a ladder does not say again what is so already', async () => {
    await begin(page);
    await page.getByRole('combobox', { name: 'Country that it is written for' }).selectOption('US');
    await goTo(page, 'Write');
    await write.append('Close the gas cock.');
    await ladder(/^Make safe: .*gas/);
    await page.getByRole('button', { name: /^Undo: make .* safe/ }).waitFor();
    const all = await words();
    assert.equal(all.filter((one) => /Close the gas cock/.test(one)).length, 1, all.join('\n'));
    assert.ok(all.some((one) => /^Prove the/.test(one)), all.join('\n'));
  });
  await place.tally.step('where all of it is so already, that is said and nothing is added', async () => {
    const before = await words();
    await ladder(/^Make safe: .*gas/);
    await page.getByText(/is cut off and proved there already/).waitFor();
    assert.deepEqual(await words(), before);
  });
  await place.tally.step('a ladder is written in the units of the country', async () => {
    await write.append('Undo the two heating union nuts of the pump, G 1, 37 mm.');
    await ladder(/^Make safe: heating/);
    await page.getByText(/gauge 0 to 1\.4 psi, .*water temperature 32 to 109 °F/).first().waitFor();
  });
  await look(place, visit, 'write-ladder-us');
}

async function fewAnswers(place, visit, write) {
  const { page } = visit;
  const choices = page.locator('.choices').first();
  const others = choices.getByRole('button', { name: /^Others: \d+$/ });
  await place.tally.step('a question has five answers at most, and the others behind a key', async () => {
    await writeNew(page, ['Undo the union nut.']);
    await others.waitFor();
    await soonEqual(() => choices.locator('.nth').count(), 5);
  });
  await look(place, visit, 'write-few-answers');
  await place.tally.step('it shows them, with the keyboard on the first of them, and digits pick them then', async () => {
    await choices.locator('button').first().focus();
    await page.keyboard.press('6');
    await others.click();
    await choices.locator('button:focus', { hasText: /^\s*6/ }).waitFor();
    const name = (await choices.locator('button:focus').innerText()).replace(/^\s*6\s*/, '').split(' · ')[0].trim();
    await page.keyboard.press('6');
    await choices.waitFor({ state: 'detached' });
    await soonMatch(() => write.row(1).innerText(), new RegExp(name.split(' ').at(-1)));
  });
}

async function inNoStep({ tally }, { page }) {
  const appliance = new Appliance(page);
  await tally.step('one that nobody has named is told from another by how it begins', async () => {
    await goTo(page, 'Procedures');
    const facts = page.locator('.shelf li', { hasText: 'open now' }).locator('.facts');
    await soonMatch(() => facts.innerText(), /^begins \u201cUndo the union nut\.\u201d · 1 steps? · kept today/);
  });
  await tally.step('what a row says is in no step is found as that', async () => {
    await begin(page);
    await appliance.add('component', 'bracket');
    await appliance.add('connection', 'bracket screws');
    await appliance.tick('bracket', 'Joins');
    await soonEqual(() => appliance.says('bracket', 'Step'), 'in no step yet');
    await page.getByRole('checkbox', { name: 'in no step' }).check();
    await soonEqual(() => appliance.rows(), ['bracket', 'bracket screws']);
    await soonEqual(() => page.getByRole('button', { name: /^Take out the/ }).allInnerTexts(), ['Take out']);
  });
}
