// Words and actions that state two figures take either with a key; all that is found stands in one list, from which each
// leads to its place and back; and the stamp with its doubts is the same on every screen.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { goTo } from './pages/screens.mjs';
import { Versions } from './pages/versions.mjs';
import { Write } from './pages/write.mjs';
import { repository } from './places.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkRemedies(tally, screen) {
  await visited(tally, screen, 'remedies', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await opened(place, visit, write);
    await either(place, visit, write);
    await listed(place, visit, write);
    await onEveryScreen(place, visit, write);
    await nothingFound(place, visit, write);
  });
}

/** The demonstration with words that part from their actions, as somebody may have changed the file by hand. */
function parted() {
  const demo = JSON.parse(readFileSync(repository('public/demo/circulation-pump.putback.json'), 'utf8'));
  for (const [from, to] of [['Wait 30 min until', 'Wait three minutes until'], ['1.2 bar to 1.5 bar', '1.2 bar to 2.5 bar']]) {
    const step = demo.steps.find(({ words }) => words.includes(from));
    step.words = step.words.replace(from, to);
  }
  // What rejects: nobody puts the drain cock back.
  demo.steps = demo.steps.filter(({ words }) => !/^Close the drain cock/.test(words));
  return Buffer.from(JSON.stringify(demo));
}

async function opened({ tally }, { page }, write) {
  await tally.step('a file whose words part from its actions has two doubts beside the stamp', async () => {
    const file = { name: 'parted.putback.json', mimeType: 'application/json', buffer: parted() };
    await page.getByLabel('File to open').setInputFiles(file);
    await page.locator('.verdict').getByRole('button', { name: /^2 doubts/ }).waitFor();
    await write.stamped('REJECTED');
  });
}

const differs = (page, words) => page.locator('.finding.warn', { hasText: 'words/differs' }).filter({ hasText: words });
const stamp = (page) => page.locator('.stamp-key');
const list = (page) => page.getByRole('dialog', { name: 'All findings' });
const besides = (page) => page.locator('.verdict').getByRole('button', { name: /doubt/ });

async function stepOf(page, words) {
  const row = page.locator('.row', { has: differs(page, words) });
  return Number((await row.getAttribute('aria-label')).replace(/\D/g, ''));
}

async function either(place, visit, write) {
  const { page } = visit;
  await place.tally.step('two keys: the action takes what the words say, or the words what the action says', async () => {
    await besides(page).click();
    const finding = differs(page, 'three minutes');
    await finding.getByRole('button', { name: 'Put three minutes into the action' }).waitFor();
    await finding.getByRole('button', { name: 'Write 30 minutes in the words' }).waitFor();
  });
  await look(place, visit, 'write-two-figures');
  await place.tally.step('the words take it, and undo takes it back', async () => {
    const number = await stepOf(page, 'three minutes');
    await differs(page, 'three minutes').getByRole('button', { name: 'Write 30 minutes in the words' }).click();
    await page.locator('.verdict').getByRole('button', { name: /^1 doubt/ }).waitFor();
    await soonMatch(() => write.words(number), /^Wait 30 minutes until/);
    await page.getByRole('button', { name: 'Undo: write 30 minutes in the words' }).click();
    await page.locator('.verdict').getByRole('button', { name: /^2 doubts/ }).waitFor();
  });
  await place.tally.step('Alt+Enter puts the figure of the words into the reading, and undo takes it back', async () => {
    const number = await stepOf(page, '2.5 bar');
    await write.selectRow(number);
    await page.keyboard.press('Alt+Enter');
    await page.getByRole('button', { name: 'Undo: put 1.2 bar to 2.5 bar into the reading' }).waitFor();
    await soonEqual(() => differs(page, '2.5 bar').count(), 0);
    await soonMatch(() => page.locator('.row.selected .notation').first().innerText(), /2\.5 bar/);
    await page.keyboard.press('Control+z');
    await differs(page, '2.5 bar').first().waitFor();
  });
}

async function listed(place, visit, write) {
  const { page } = visit;
  await place.tally.step('the stamp opens the list, grouped, with the keyboard on what rejects', async () => {
    await stamp(page).click();
    await list(page).waitFor();
    const headings = await list(page).getByRole('heading', { level: 3 }).allInnerTexts();
    assert.match(headings[0], /^\d+ to mend$/);
    assert.equal(headings[1], '2 doubts');
    await page.locator('.found-group.reject .found-row:focus').first().waitFor();
    for (const row of await list(page).locator('.found-row').all()) {
      await soonMatch(() => row.innerText(), /^(Step \d+|Appliance|At the end)\s/);
    }
  });
  await look(place, visit, 'all-findings');
  await place.tally.step('a finding leads to its step, and F9 back to it in the list', async () => {
    const doubt = list(page).locator('.found-row', { hasText: 'three minutes' });
    const number = Number((await doubt.locator('.place').innerText()).replace(/\D/g, ''));
    await doubt.click();
    await page.locator(`.row.selected[aria-label="Step ${number}"]:focus`).waitFor();
    await soonEqual(() => list(page).count(), 0);
    await page.keyboard.press('F9');
    await page.locator('.found-row[aria-current]:focus', { hasText: 'three minutes' }).waitFor();
    await list(page).getByText('gone to last').waitFor();
  });
  await place.tally.step('Esc and F9 close it, and the keyboard is where it was', async () => {
    await page.keyboard.press('Escape');
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('F9');
    await list(page).waitFor();
    await page.keyboard.press('F9');
    await page.locator('.row.selected:focus').waitFor();
    await soonEqual(() => list(page).count(), 0);
  });
  await place.tally.step('it is not printed', async () => {
    await page.keyboard.press('F9');
    await list(page).waitFor();
    await page.emulateMedia({ media: 'print' });
    await soonEqual(() => list(page).isVisible(), false);
    await page.emulateMedia({ media: 'screen' });
    await page.keyboard.press('Escape');
  });
  await place.tally.step('a finding that is mended is gone from the list', async () => {
    await write.selectRow(await stepOf(page, '2.5 bar'));
    await page.keyboard.press('Alt+Enter');
    await page.locator('.verdict').getByRole('button', { name: /^1 doubt/ }).waitFor();
    await page.keyboard.press('F9');
    await list(page).getByRole('heading', { name: '1 doubt', exact: true }).waitFor();
    await soonEqual(() => list(page).locator('.found-row', { hasText: '2.5 bar' }).count(), 0);
    await page.keyboard.press('Escape');
  });
}

const SCREENS = {
  Appliance: (page) => goTo(page, 'Appliance'),
  Kit: (page) => goTo(page, 'Kit'),
  Print: async (page) => {
    await goTo(page, 'Write');
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.getByRole('heading', { name: 'On paper' }).waitFor();
  },
  'Earlier versions': (page) => new Versions(page).open(),
};

async function onEveryScreen(place, visit, write) {
  const { page } = visit;
  for (const [name, show] of Object.entries(SCREENS)) {
    await place.tally.step(`${name}: stamp and doubts stand there, and lead to the first doubt on Write`, async () => {
      await show(page);
      await page.locator('.plain-head .stamp-key').waitFor();
      await besides(page).click();
      await page.locator('.row.selected.found:focus').waitFor();
      await soonEqual(() => differs(page, 'three minutes').count(), 1);
    });
    await place.tally.step(`${name}: the list leads to a step and the browser back to the screen`, async () => {
      await show(page);
      await page.locator('.plain-head .stamp-key').click();
      await list(page).locator('.found-group.warn .found-row').first().click();
      await page.locator('.row.selected.found:focus').waitFor();
      await page.goBack();
      await page.locator('.plain-head .stamp-key').waitFor();
      await soonEqual(() => list(page).count(), 0);
    });
  }
  await look(place, visit, 'versions-doubts');
  await goTo(page, 'Kit');
  await look(place, visit, 'kit-doubts');
  await page.locator('.plain-head .stamp-key').click();
  await look(place, visit, 'kit-all-findings');
  await page.keyboard.press('Escape');
  await goTo(page, 'Write');
  await write.stamped('REJECTED');
}

async function nothingFound({ tally }, { page }, write) {
  await tally.step('where nothing is found, the list says so', async () => {
    await goTo(page, 'Procedures');
    await page.getByRole('button', { name: /^Open a copy of/ }).first().click();
    await write.stamped('ACCEPTED');
    await stamp(page).click();
    await list(page).getByText('Nothing is found.').waitFor();
    await page.keyboard.press('Escape');
  });
}
