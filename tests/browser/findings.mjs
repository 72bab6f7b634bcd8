// From finding to finding on every screen: what is mended on the map is shown in its row on Appliance, all others at
// their steps; and why a rule is there, as a whole.
import assert from 'node:assert/strict';
import { Appliance, Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** What is written of each rule. */
const HEADINGS = ['What it finds', 'Why it matters', 'Source', 'An example in which it is found', 'An example in which all is well'];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkFindings(tally, screen) {
  await visited(tally, screen, 'findings', async (place, visit) => {
    await new Write(visit.page).open(place.server.address);
    await toSteps(place, visit);
    await why(place, visit);
    await toThings(place, visit);
    await nothing(place, visit);
    await toCensus(place, visit);
  });
}

/** Goes to a screen, and waits until it is there. */
async function shown(page, screen) {
  await goTo(page, screen);
  await page.locator('.tab[aria-current]', { hasText: screen }).waitFor();
}

/** Waits until the keyboard is on the row of a step at which something is found, and gives its words. */
async function atFinding(page) {
  const row = page.locator('.row.found.selected:focus');
  await row.waitFor();
  return row.locator('textarea, .words').first().evaluate((words) => words.value ?? words.textContent);
}

async function toSteps({ tally }, { page }) {
  await tally.step('from every screen beside Follow, F8 and Shift+F8 lead to the step at which something is found', async () => {
    for (const screen of ['Kit', 'Appliance', 'Procedures']) {
      for (const key of ['F8', 'Shift+F8']) {
        await shown(page, screen);
        await page.keyboard.press(key);
        await atFinding(page);
      }
    }
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.getByRole('heading', { name: 'On paper' }).waitFor();
    await page.keyboard.press('F8');
    await atFinding(page);
  });
}

async function why(place, visit) {
  const { page } = visit;
  await place.tally.step('why opens all that is written of the rule, in words that can be read', async () => {
    const finding = page.locator('.finding').first();
    await finding.getByRole('button', { name: 'Why', exact: true }).click();
    const text = finding.locator('.why-text');
    await text.waitFor();
    await soonEqual(() => text.locator('h3, summary').allInnerTexts(), HEADINGS);
    for (const part of await text.locator('p').all()) assert.ok(await part.isVisible());
    await soonEqual(() => text.locator('pre').first().isVisible(), false);
    await text.locator('summary').first().click();
    await soonMatch(() => text.locator('pre').first().innerText(), /^map: .+\n/);
  });
  await look(place, visit, 'write-why');
  await page.locator('.finding').first().getByRole('button', { name: 'Why', exact: true }).click();
}

async function toThings(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  const name = (text) => page.locator('.map-list .sheet').getByRole('textbox', { name: text, exact: true });
  await place.tally.step('a seal of which nothing is known says so in its row', async () => {
    await goTo(page, 'Appliance');
    await appliance.open('gasket');
    await name('Size').fill('');
    await name('Number of a new one').fill('');
    await page.locator('.found-here').getByText(/takes the gasket, of which neither size nor number is known/).waitFor();
    await appliance.row('gasket').click();
  });
  await look(place, visit, 'things-found-here');
  await place.tally.step('F8 leads to that row from any screen, then to the steps, and going back to the row', async () => {
    await appliance.find('pump');
    for (const screen of ['Kit', 'Appliance']) {
      await shown(page, screen);
      if (screen === 'Appliance') await page.getByRole('textbox', { name: 'Find a thing' }).click();
      await page.keyboard.press('F8');
      await page.locator('.thing-row:focus', { hasText: 'gasket' }).waitFor();
      assert.ok(await page.locator('.thing-row:focus').evaluate((row) => row.getBoundingClientRect().top > 40 && row.getBoundingClientRect().bottom < innerHeight));
    }
    await page.keyboard.press('F8');
    await soonMatch(() => atFinding(page), /^(?!Make the suction flange)/);
    await page.goBack();
    await page.locator('.thing-row:focus', { hasText: 'gasket' }).waitFor();
    await page.keyboard.press('Shift+F8');
    await atFinding(page);
  });
}

async function nothing({ tally }, { page }) {
  await tally.step('where nothing is found, that is said', async () => {
    await goTo(page, 'Procedures');
    await page.getByRole('button', { name: /^Open a copy of/ }).first().click();
    await new Write(page).stamped('ACCEPTED');
    await shown(page, 'Kit');
    await page.keyboard.press('F8');
    await page.getByRole('alert').getByText('Nothing is found.').waitFor();
  });
}

async function toCensus({ tally }, { page }) {
  await tally.step('of a new procedure F8 leads to what the job is for, then to the census', async () => {
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await page.getByRole('heading', { name: /0 of 15 kinds answered/ }).first().waitFor();
    await shown(page, 'Kit');
    await page.keyboard.press('F8');
    await page.locator('.scope textarea:focus').waitFor();
    await page.keyboard.press('F8');
    await page.locator('.census input:focus').waitFor();
    await page.keyboard.press('Shift+F8');
    await page.locator('.scope textarea:focus').waitFor();
  });
}
