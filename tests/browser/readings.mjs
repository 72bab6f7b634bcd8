// Other readings of words, by keys and by tap; another name for a thing, and the way to make it one with another.
import assert from 'node:assert/strict';
import { Appliance, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { begin, look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkReadings(tally, screen) {
  await visited(tally, screen, 'readings', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await atWordsWithoutAny(place, visit, write);
    await atTheCaret(place, visit, write);
    await marked(place, visit, write);
    await declined(place, visit, write);
    await inTheLine(place, visit);
    await named(place, visit, write);
    await merged(place, visit, write);
  });
}

const readings = (page) => page.getByRole('group', { name: 'Other readings' });
const tokens = (page) => page.locator('.row.selected .token').allInnerTexts();

/** The number of the first step whose words begin like this. */
async function numberOf(page, words) {
  const all = await page.locator('li[data-step] .words').evaluateAll((all) => all.map((one) => one.value ?? one.textContent));
  return all.findIndex((text) => text.startsWith(words)) + 1;
}

/** Puts the caret before some words of the selected row, or marks them. */
const caretAt = (page, words, marks = false) =>
  page.locator('.row.selected textarea').evaluate((field, [words, marks]) => {
    const from = field.value.indexOf(words);
    field.focus();
    field.setSelectionRange(from, from + (marks ? words.length : 0));
  }, [words, marks]);

async function atWordsWithoutAny(place, visit, write) {
  const { page } = visit;
  await place.tally.step('behind words without any reading, those of the action before are told', async () => {
    await write.select(await numberOf(page, 'Switch off at the pump isolator'));
    await caretAt(page, 'the key.');
    await page.locator('.row.selected').getByRole('button', { name: 'Other readings' }).click();
    await readings(page).getByText('lock it off').waitFor();
    const offered = await readings(page).getByRole('button').allInnerTexts();
    assert.ok(offered.some((text) => /lock pump isolator.*as it is/.test(text)), offered.join('; '));
    await readings(page).getByRole('button', { name: 'Leave it' }).click();
  });
}

async function atTheCaret(place, visit, write) {
  const { page } = visit;
  await place.tally.step('Ctrl+. tells what the words at the caret can say, and a digit takes a reading', async () => {
    await write.addBelow(await numberOf(page, 'Undo the four lid screws'), 'Close the suction valve.');
    await page.keyboard.press('Escape');
    await write.select(await numberOf(page, 'Close the suction valve.'));
    const before = await tokens(page);
    await caretAt(page, 'valve');
    await page.keyboard.press('Control+.');
    await page.locator('.readings button:focus').waitFor();
    const offered = await readings(page).getByRole('button').allInnerTexts();
    assert.match(offered[0], /^1\s*isolate suction valve.*as it is/, offered.join('; '));
    assert.ok(offered.some((text) => /lock suction valve|isolate discharge valve/.test(text)), offered.join('; '));
    const other = offered.findIndex((text) => /isolate discharge valve/.test(text)) + 1;
    assert.ok(other > 1, offered.join('; '));
    await look(place, visit, 'write-readings');
    await page.keyboard.press(`${other}`);
    await page.locator('.row.selected textarea:focus').waitFor();
    assert.notDeepEqual(await tokens(page), before);
    await soonEqual(() => page.locator('.row.selected textarea').evaluate((field) => field.selectionStart), 18);
  });
  await place.tally.step('what is typed behind it is read all the same', async () => {
    await page.keyboard.press('End');
    await page.keyboard.type(' Take the notice away.');
    await soonEqual(() => tokens(page), ['isolate discharge valve', 'take away notice']);
    // A slow machine types it in more than one entry of undo.
    const undo = page.getByRole('button', { name: /^Undo: change the words/ });
    while ((await undo.count()) > 0) await undo.click();
    await soonEqual(() => tokens(page), ['isolate discharge valve']);
    await caretAt(page, 'valve');
  });
  await place.tally.step('the reading that gave way is offered again, and one undo brings it back', async () => {
    await page.keyboard.press('Control+.');
    const back = readings(page).getByRole('button', { name: /isolate suction valve/ });
    await soonEqual(() => back.getAttribute('aria-pressed'), 'false');
    await page.keyboard.press('Escape');
    await readings(page).waitFor({ state: 'detached' });
    await page.locator('.row.selected textarea:focus').waitFor();
    await page.getByRole('button', { name: /^Undo: read step \d+ otherwise/ }).click();
    await soonEqual(() => tokens(page), ['isolate suction valve']);
  });
}

async function marked(place, visit, write) {
  const { page } = visit;
  await place.tally.step('words that no verb is known in are marked and read by tap', async () => {
    const number = await numberOf(page, 'Close the suction valve.');
    await write.setWords(number, 'Swivel the lid over the box.');
    await caretAt(page, 'Swivel the lid over the box', true);
    await page.locator('.row.selected .tokens').getByRole('button', { name: 'Other readings' }).click();
    const fit = readings(page).getByRole('button', { name: /fit lid/ });
    await fit.click();
    await soonMatch(async () => (await tokens(page)).join(), /fit.*lid/);
    const said = await page.locator('.row.selected .mirror .understood').allTextContents();
    assert.deepEqual(said, ['Swivel the lid over the box']);
    await page.getByRole('button', { name: /^Undo: read step/ }).click();
  });
}

async function declined(place, visit, write) {
  const { page } = visit;
  await place.tally.step('what was declined is read again when it is picked', async () => {
    const number = await numberOf(page, 'Swivel');
    await write.setWords(number, 'Close the suction valve.');
    await page.locator('.row.selected .token').first().focus();
    await page.keyboard.press('Backspace');
    await page.locator('.row.selected .token').first().waitFor({ state: 'detached' });
    await caretAt(page, 'Close');
    await page.keyboard.press('Control+.');
    await page.locator('.readings button:focus').waitFor();
    await page.keyboard.press('1');
    await page.locator('.row.selected .token').first().waitFor();
    await soonEqual(() => tokens(page), ['isolate suction valve']);
    await page.getByRole('button', { name: /^Undo: read step/ }).click();
    await soonEqual(() => tokens(page), []);
    await page.getByRole('button', { name: /^Undo: leave words/ }).click();
  });
  await place.tally.step('a token has its readings too, and comes back to it', async () => {
    await page.locator('.row.selected .token').first().focus();
    await page.keyboard.press('Control+.');
    await page.locator('.readings button:focus').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.row.selected .token:focus').waitFor();
  });
}

async function inTheLine(place, visit) {
  const { page } = visit;
  await place.tally.step('in the line it keeps the step, and the line is ready again', async () => {
    const line = page.locator('#new-line');
    await line.fill('Close the discharge valve.');
    await line.press('Control+.');
    await page.locator('.readings button:focus').waitFor();
    await soonEqual(() => line.inputValue(), '');
    await page.keyboard.press('1');
    await page.locator('#new-line:focus').waitFor();
    await page.getByRole('button', { name: /^Undo: add step/ }).click();
  });
}

async function named(place, visit, write) {
  const { page } = visit;
  const below = await numberOf(page, 'Close the suction valve.');
  await place.tally.step('N on a token: the words that call its thing become another name of it', async () => {
    await write.setWords(below, 'Close the intake stopper.');
    await caretAt(page, 'Close');
    await page.keyboard.press('Control+.');
    await readings(page).getByRole('button', { name: /isolate suction valve/ }).click();
    await page.locator('.row.selected .token').first().focus();
    await page.keyboard.press('n');
    const field = page.getByRole('textbox', { name: 'Another name for the suction valve' });
    await page.waitForFunction(() => document.activeElement?.closest('.other-name'));
    await soonEqual(() => field.inputValue(), 'intake stopper');
  });
  await look(place, visit, 'write-other-name');
  await place.tally.step('and the next sentence with that name is read', async () => {
    await page.keyboard.press('Enter');
    await page.locator('.row.selected .token:focus').waitFor();
    await page.getByRole('button', { name: 'Undo: call the suction valve intake stopper too' }).waitFor();
    const line = page.locator('#new-line');
    await line.fill('Open the intake stopper.');
    await page.locator('.row.last .notation', { hasText: 'suction valve' }).waitFor();
    await line.fill('');
  });
  await place.tally.step('a name that another thing has is not given twice', async () => {
    await page.locator('.row.selected .token').first().focus();
    await page.keyboard.press('N');
    const field = page.getByRole('textbox', { name: 'Another name for the suction valve' });
    await field.fill('discharge valve');
    await field.press('Enter');
    await page.getByText('Another thing is called discharge valve.', { exact: false }).waitFor();
    await field.press('Escape');
    await field.waitFor({ state: 'detached' });
  });
}

async function merged(place, visit, write) {
  const { page } = visit;
  await place.tally.step('"Same as …" leads to the sheet where the two are made one', async () => {
    await write.select(await numberOf(page, 'Close the intake stopper.'));
    await page.locator('.of-token').getByRole('button', { name: 'Same as …' }).click();
    await page.getByRole('combobox', { name: 'It is the same as' }).waitFor();
    const open = page.locator('.map-list li.open');
    await soonMatch(() => open.innerText(), /suction valve/);
    await page.waitForFunction(() => document.activeElement?.matches('.map-list li.open .thing-row'));
    await soonEqual(() => new Appliance(page).row('suction valve').getAttribute('aria-expanded'), 'true');
  });
  await place.tally.look('the sheet is in sight', async () => {
    const box = await page.locator('.map-list li.open .thing-row').boundingBox();
    assert.ok(box.y >= 0 && box.y < page.viewportSize().height - 40, JSON.stringify(box));
  });
  await look(place, visit, 'appliance-wanted');
  await place.tally.step('a thing that words have just made is made one with a known one from there', async () => {
    await goTo(page, 'Write');
    await write.append('Slacken the standpipe screw.');
    await page.locator('p.fresh', { hasText: 'standpipe screw' }).getByRole('button', { name: 'Same as …' }).click();
    const appliance = new Appliance(page);
    await appliance.choose('It is the same as', 'vent screw');
    await page.getByRole('button', { name: 'Make one of the two' }).waitFor();
    await soonEqual(() => appliance.row('standpipe screw').getAttribute('aria-expanded'), 'true');
    await page.getByRole('button', { name: /^Undo: add step/ }).click();
  });
}
