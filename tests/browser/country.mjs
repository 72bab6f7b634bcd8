// What follows from the country that a procedure is written for; and figures in the unit that they have.
import assert from 'node:assert/strict';
import { picture } from './looking.mjs';
import { Follow } from './pages/follow.mjs';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkCountry(tally, screen) {
  await visited(tally, screen, 'country and units', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await goTo(visit.page, 'Procedures');
    await new Procedures(visit.page).beginNew();
    await scope(place, visit);
    await everywhere(place, visit);
    await tokens(place, visit, write);
    await stop(place, visit, write);
  });
}

async function scope(place, visit) {
  const { page } = visit;
  const competent = page.getByRole('textbox', { name: 'Whoever follows it is competent for' });
  await place.tally.step('a country offers its words of competence', async () => {
    await goTo(page, 'Appliance');
    await soonEqual(() => page.getByRole('button', { name: /^Add: / }).count(), 0, 'none before it is said');
    await page.getByRole('combobox', { name: 'Country that it is written for' }).selectOption('US');
    await page.getByRole('button', { name: 'Add: licensed gas fitter' }).click();
    await page.getByRole('button', { name: 'Add: licensed gas fitter' }).waitFor({ state: 'detached' });
    await soonEqual(() => competent.inputValue(), 'licensed gas fitter');
  });
  await look(place, visit, 'country');
  await place.tally.step('the verdict says for which country it is', async () => {
    await goTo(page, 'Write');
    // A narrow screen has no room for it beside the stamp.
    await page.getByText(/^by \d+ rules, written for US, not for work yet$/).waitFor({ state: 'attached' });
  });
}

/** Goes to each screen of the editor, and to those that have no tab by the keys that lead there. */
const SCREENS = {
  Appliance: (page) => goTo(page, 'Appliance'),
  Kit: (page) => goTo(page, 'Kit'),
  Versions: async (page) => {
    await goTo(page, 'Write');
    await page.getByRole('button', { name: 'Earlier', exact: true }).click();
  },
  'Find out': (page) => page.evaluate(() => { location.hash = '/later'; }),
  Print: async (page) => {
    await goTo(page, 'Write');
    await page.getByRole('button', { name: 'Print', exact: true }).click();
  },
};

async function everywhere(place, visit) {
  const { page } = visit;
  const own = page.viewportSize();
  for (const width of [own.width, 320]) {
    await page.setViewportSize({ width, height: width === 320 ? 640 : own.height });
    for (const [name, go] of Object.entries(SCREENS)) {
      await place.tally.step(`${name} says beside the verdict for which country it is, ${width} wide`, async () => {
        await go(page);
        await page.getByRole('main').waitFor();
        const words = page.getByText(/by \d+ rules, written for US, not for work yet/).and(page.locator(':visible'));
        await words.first().waitFor();
        const { overflow } = await page.evaluate(() => ({ overflow: document.documentElement.scrollWidth - innerWidth }));
        assert.ok(overflow <= 0, `${overflow} px too wide`);
      });
      await picture(page, `${place.screen.name}-country-${name.toLowerCase().replace(' ', '-')}-${width}`);
    }
  }
  await page.setViewportSize(own);
  await goTo(page, 'Write');
}

async function tokens(place, visit, write) {
  const { page } = visit;
  const fields = page.locator('.row.selected .of-token');
  const field = (name) => fields.getByRole('textbox', { name, exact: true });
  await place.tally.step('a joint is measured as people there do', async () => {
    await write.append('Undo the two heating union nuts of the pump, G 1, 37 mm.');
    await write.append('Tighten the two union nuts of the pump.');
    await write.select(2);
    await page.locator('.row.selected .token').first().click();
    await field('Torque from, lbf·ft').fill('24');
    await write.row(2).getByText(/24 lbf·ft/).first().waitFor();
    // What is there already keeps its unit.
    await soonEqual(() => field('Across flats, mm').inputValue(), '37');
  });
  await place.tally.step('a unit that is typed is taken, by both ends', async () => {
    await field('Torque from, lbf·ft').fill('32 N·m');
    await field('Torque to, N·m').fill('36');
    await write.row(2).getByText(/32\D+36 N·m/).first().waitFor();
    await field('Across flats, mm').fill('1.5 in');
    await soonEqual(() => field('Across flats, in').inputValue(), '1.5');
  });
  await place.tally.step('the limits of what is read are changed in the token', async () => {
    await write.append('Switch off the boiler at the wall switch and prove it dead.');
    await write.select(3);
    const proof = page.locator('.row.selected .token', { hasText: 'prove' });
    await proof.first().click();
    const most = fields.getByRole('textbox', { name: /at most, V$/ }).first();
    const label = await most.evaluate((input) => input.closest('label').innerText);
    await most.fill('24');
    await soonEqual(() => most.inputValue(), '24');
    await page.locator('.row.selected').getByRole('button', { name: /^Details/ }).click();
    const own = page.locator('.row.selected .of-reading');
    assert.ok((await own.count()) > 1, `what is read by default is written down (${label})`);
    await own.getByRole('textbox', { name: 'At most' }).first().waitFor();
    await soonEqual(() => own.getByRole('textbox', { name: 'At most' }).first().inputValue(), '24');
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'limits');
}

async function stop(place, { page }, write) {
  await place.tally.step('STOP says whom to call there', async () => {
    await write.follow();
    const follow = new Follow(page);
    await follow.openStop();
    await page.getByText('call 911 in US').waitFor();
    await follow.closeStop();
  });
}
