// From nothing: a procedure is begun, its appliance described, its steps typed; others on the device stay.
import { Appliance, Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const TITLE = 'Clean the fan of the cellar heater (invented)';
/** The steps, as they are typed. */
const STEPS = [
  'Shut down the heater at its panel.',
  'Switch off at the wall switch, lock it off and keep the key.',
  'Undo the four cover screws and take off the cover.',
  'Prove the terminals dead: tester on the known source, L to N, L to E and N to E 0 V to 5 V each, known source again.',
  'Clean the fan.',
  'Fit the cover and tighten its four cover screws.',
  'Switch on at the wall switch.',
  'Start the heater.',
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkFromNothing(tally, screen) {
  await visited(tally, screen, 'from nothing', async (place, visit) => {
    await new Write(visit.page).open(place.server.address);
    await beginOne(place, visit);
    await describe(place, visit);
    await writeSteps(place, visit);
    await shelve(place, visit);
  });
}

async function beginOne(place, visit) {
  const { page } = visit;
  await place.tally.step('a procedure is begun', async () => {
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await new Appliance(page).fill('What the job is for', 'Clean a fan that hums.');
    await new Appliance(page).fill('Plate of the right appliance', 'Cellar heater H3: 230 V');
    await new Appliance(page).touched('mains electricity');
  });
  // What lies half under the head is too small a target only until somebody scrolls.
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'appliance-begun');
}

async function describe(place, visit) {
  const appliance = new Appliance(visit.page);
  await place.tally.step('its appliance is described', async () => {
    await appliance.add('circuit', 'mains');
    await appliance.add('isolator', 'wall switch');
    await appliance.choose('Worked by', 'switch');
    await appliance.add('component', 'cover');
    await appliance.add('component', 'fan');
    await appliance.tick('cover', 'Reached once these are off');
    await appliance.add('connection', 'cover screws');
    await appliance.choose('Does', 'fixing');
    await appliance.tick('cover', 'Joins');
    await appliance.set('How many fasteners', '4');
    await appliance.add('connection', 'terminals');
    await appliance.choose('Carries what is in', 'mains');
    await appliance.tick('Reached otherwise than the parts that it joins');
    await appliance.tick('cover', 'Reached once these are off');
  });
  await visit.page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'appliance-described');
}

async function writeSteps(place, visit) {
  const { page } = visit;
  const write = new Write(page);
  await place.tally.step('its steps are typed one after the other', async () => {
    await goTo(page, 'Write');
    await page.getByRole('textbox', { name: 'Title' }).fill(TITLE);
    for (const words of STEPS) await write.append(words);
    await soonEqual(() => write.steps(), STEPS.length);
  });
  await place.tally.step('it lacks its test, and says so', async () => {
    await write.stamped('REJECTED');
    await page.getByText(/function test/).first().waitFor();
  });
  await place.tally.step('a finding tells why its rule is there', async () => {
    const finding = page.locator('.finding', { hasText: 'function test' }).first();
    await finding.getByRole('button', { name: 'Why' }).click();
    await finding.locator('.why-text').getByText(/Source/).waitFor();
  });
  await place.tally.step('its finding offers the test, and one key adds it', async () => {
    await write.mend('function test');
    await page.locator('.finding', { hasText: 'function test' }).waitFor({ state: 'detached' });
    await soonEqual(() => write.steps(), STEPS.length + 1);
    await write.stamped('ACCEPTED');
  });
  await place.tally.step('one undo takes it back', async () => {
    await page.getByRole('button', { name: /^Undo: add step/ }).click();
    await write.stamped('REJECTED');
  });
  await place.tally.step('a thing is renamed, and the words of its steps follow', async () => {
    await goTo(page, 'Appliance');
    await page.locator('.thing-row', { hasText: 'wall switch' }).click();
    await new Appliance(page).rename('isolating switch');
    await goTo(page, 'Write');
    await page.getByText('Switch on at the isolating switch.').waitFor();
    await page.getByRole('button', { name: 'Undo: rename the wall switch' }).click();
    await page.getByText('Switch on at the wall switch.').waitFor();
  });
  await place.tally.step('a thing in use stays, and its steps are told', async () => {
    await goTo(page, 'Appliance');
    await page.locator('.thing-row', { hasText: 'wall switch' }).click();
    await new Appliance(page).removeOpen();
    await page.getByText(/The wall switch stays: it is used in step 2, step 7/).waitFor();
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'appliance-in-use');
}

async function shelve(place, visit) {
  const { page } = visit;
  const procedures = new Procedures(page);
  const demo = 'Renew the heating pump P2 of a boiler plant (invented)';
  await place.tally.step('both procedures are on the device', async () => {
    await goTo(page, 'Procedures');
    await soonEqual(() => procedures.titles(), [TITLE, demo]);
  });
  await place.tally.step('the other is removed, and brought back', async () => {
    await procedures.do('Remove', demo);
    await page.getByRole('button', { name: `Put back ${demo}` }).waitFor();
    await procedures.do('Put back', demo);
    await page.getByRole('button', { name: `Open ${demo}`, exact: true }).waitFor();
  });
  await look(place, visit, 'procedures');
  await place.tally.step('the other is opened, and the first is still whole after a reload', async () => {
    await procedures.do('Open', demo);
    await page.locator('li[data-step]').first().waitFor();
    await page.reload();
    await goTo(page, 'Procedures');
    await procedures.do('Open', TITLE);
    await page.locator('li[data-step]').first().waitFor();
    await soonEqual(() => new Write(page).steps(), STEPS.length);
  });
}
