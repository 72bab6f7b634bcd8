// What is left for later is found out on the job, goes home as a file, and is taken into the procedure on another
// device; undo takes it all back at once.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { kill, newProfile, removeProfile } from './browser.mjs';
import { Follow } from './pages/follow.mjs';
import { goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { out } from './places.mjs';
import { soonEqual } from './soon.mjs';
import { begin, look, visited } from './visit.mjs';

/** What is typed into Write first: two values that are found out on site. */
const LINES = [
  'Take the cover off.',
  'later: maximum pressure, the owner',
  'Undo the two union nuts of the pump.',
  'later: size of the pump unions, on site',
];
const SIZE = /^Size of the pump unions/;
const PRESSURE = /^Maximum pressure/;

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkFinding(tally, screen) {
  await visited(tally, screen, 'finding out on the job', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await writeNew(visit.page, LINES);
    const procedure = await saved(place, visit, 'Save', 'to-find.putback.json');
    const found = await onTheJob(place, visit);
    await onThisDevice(place, visit);
    await onPaper(place, visit);
    await elsewhere(place, procedure, found);
  });
}

/** Presses a key that saves a file, and gives the path of the file. */
async function saved({ screen }, { page }, key, name) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: key, exact: true }).click(),
  ]);
  const path = out(`${screen.name}-${name}`);
  await download.saveAs(path);
  return path;
}

const here = (page) => page.getByRole('region', { name: 'To find out here' });
const end = (page) => page.getByRole('region', { name: /^Found out on this job: \d of 2$/ });

async function onTheJob(place, visit) {
  const { page } = visit;
  const follow = new Follow(page);
  await goTo(page, 'Follow');
  await place.tally.step('a value is asked for where somebody stands before it, and nothing takes the keyboard', async () => {
    await follow.startAllTheSame('Invented, to look');
    await here(page).getByRole('textbox', { name: PRESSURE }).waitFor();
    await soonEqual(() => here(page).getByRole('textbox').count(), 1);
    await soonEqual(() => page.locator('.to-find input:focus').count(), 0);
    const { height } = await here(page).getByRole('button', { name: 'Keep' }).boundingBox();
    assert.ok(height >= 48, `${height}`);
  });
  await look(place, visit, 'follow-to-find');
  await place.tally.step('Done takes along what is only typed', async () => {
    await here(page).getByRole('textbox', { name: PRESSURE }).fill('3 bar');
    await soonEqual(() => here(page).getByText(/^kept/).count(), 0);
    await doStep(page, follow);
  });
  await place.tally.step('what the device refuses to keep is never said to be kept', async () => {
    await page.evaluate(refuseOnDemand);
    await page.evaluate(() => { globalThis.refuses = true; });
    await here(page).getByRole('textbox', { name: SIZE }).fill('37 mm');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: /^not kept yet: / }).waitFor();
    await soonEqual(() => here(page).getByText(/^kept/).count(), 0);
    await page.evaluate(() => { globalThis.refuses = false; });
    await here(page).getByRole('button', { name: 'Keep' }).click();
    await here(page).getByText(/^kept \d\d:\d\d$/).waitFor();
  });
  await place.tally.step('after a reload all of it stands at the end, and can be put right', async () => {
    await page.reload();
    await follow.ready();
    while ((await end(page).count()) === 0) await doStep(page, follow);
    await soonEqual(() => end(page).getByRole('textbox', { name: SIZE }).inputValue(), '37 mm');
    await soonEqual(() => end(page).getByRole('textbox', { name: PRESSURE }).inputValue(), '3 bar');
    await end(page).getByRole('textbox', { name: PRESSURE }).fill('2.5 bar');
    await end(page).getByRole('textbox', { name: PRESSURE }).press('Enter');
    await end(page).getByText(/^kept/).nth(1).waitFor();
  });
  await look(place, visit, 'follow-found');
  await place.tally.step('until it is given away it says that it is in no file', async () => {
    await end(page).getByText('not in a file yet').waitFor();
  });
  let path;
  await place.tally.step('a key gives it away as a file', async () => {
    path = await saved(place, visit, 'Save what was found', 'to-find.found.json');
    const { putback_found, answers } = JSON.parse(readFileSync(path, 'utf8'));
    assert.equal(putback_found, 1);
    assert.deepEqual(answers.map(({ answer }) => answer), ['2.5 bar', '37 mm']);
    await page.getByText(/^saved \d\d:\d\d$/).waitFor();
  });
  await page.getByRole('button', { name: 'Put the job away' }).click();
  return path;
}

/** Runs in the page: while `refuses` is set, the database refuses to be written. */
function refuseOnDemand() {
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function refusing(stores, mode, options) {
    if (mode === 'readwrite' && globalThis.refuses) throw new DOMException('not here', 'SecurityError');
    return transaction.call(this, stores, mode, options);
  };
}

/** Ticks the step in front, the last one included. */
async function doStep(page, follow) {
  await page.waitForTimeout(450);
  const before = await page.locator('section h1').first().innerText();
  await soonEqual(() => follow.asked(), 'Done, next');
  await page.getByRole('button', { name: 'Done, next' }).click();
  await page.waitForFunction((before) => document.querySelector('section h1')?.innerText !== before, before);
}

const offers = (page) => page.getByText(/^Found on a job, today \d\d:\d\d/);

async function onThisDevice(place, visit) {
  const { page } = visit;
  await place.tally.step('it is offered on this device beside what is open, and Enter in an empty field does not take it', async () => {
    await page.waitForTimeout(300);
    await goTo(page, 'Write');
    await page.getByRole('button', { name: /^2 later/ }).click();
    await offers(page).nth(1).waitFor();
    await page.getByRole('textbox', { name: SIZE }).press('Enter');
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
  });
  await look(place, visit, 'later-found');
  await place.tally.step('one is taken with its key, and brought back by undo', async () => {
    await page.getByRole('button', { name: 'Take it: 37 mm' }).click();
    await page.getByRole('heading', { name: 'One value is still to be found out' }).waitFor();
    await page.getByRole('button', { name: /^Undo: find out: size of the pump unions/ }).click();
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
  });
}

async function onPaper(place, visit) {
  const { page } = visit;
  await place.tally.step('the sheet to find out on site has a box for each answer', async () => {
    await page.getByRole('button', { name: 'Print the sheet' }).click();
    const rows = page.locator('.pages .to-find-row');
    await rows.nth(1).waitFor();
    await soonEqual(() => rows.count(), 2);
    await rows.filter({ hasText: 'the owner' }).filter({ hasText: 'step 1' }).waitFor();
    await soonEqual(() => page.locator('.pages .step-on-paper').count(), 0);
  });
  await look(place, visit, 'print-to-find');
}

/** Another device, onto which both files have come. */
async function elsewhere(place, procedure, found) {
  const profile = newProfile();
  try {
    const visit = await begin({ ...place, profile });
    const { page } = visit;
    await page.goto(place.server.address);
    await bring(place, visit, procedure, found);
    await taken(place, visit);
    await look(place, visit, 'later-taken');
    await visit.browser.close();
  } finally {
    await kill(profile);
    removeProfile(profile);
  }
}

async function bring({ tally }, { page }, procedure, found) {
  const file = page.getByLabel('File to open', { exact: true });
  await tally.step('answers for another procedure are refused with its title', async () => {
    await new Write(page).open(page.url());
    await file.setInputFiles(found);
    await page.getByText(/was not taken: it holds answers found on a job for "Untitled procedure"/).waitFor();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });
  await tally.step('opened anywhere, answers lead to where they are taken, and say what they are', async () => {
    await file.setInputFiles(procedure);
    await page.getByText('Take the cover off.').first().waitFor();
    await file.setInputFiles(found);
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
    await page.getByText(/: 2 answers found on a job, today/).waitFor();
    await offers(page).nth(1).waitFor();
  });
  await tally.step('a file of answers that is dropped leads there too', async () => {
    await goTo(page, 'Kit');
    await page.evaluate((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'dropped.found.json'));
      document.querySelector('main').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, readFileSync(found, 'utf8'));
    await page.getByRole('status').filter({ hasText: /^dropped\.found\.json: 2 answers/ }).waitFor();
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
  });
  await tally.step('a procedure is no answers, and changes nothing', async () => {
    await page.getByLabel('File with answers').setInputFiles(procedure);
    await page.getByText(/was not taken: This is a procedure and holds no answers/).waitFor();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });
}

async function taken({ tally }, { page }) {
  await tally.step('all are taken at once, and undo takes them back at once', async () => {
    await page.getByRole('button', { name: 'Take both' }).click();
    await page.getByRole('heading', { name: 'Nothing is left to find out' }).waitFor();
    await page.getByRole('button', { name: 'Undo: take 2 answers found on a job' }).click();
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
    await page.getByRole('button', { name: 'Take both' }).click();
    await goTo(page, 'Appliance');
    await page.getByText(/Size of the pump unions: 37 mm\./).or(page.locator('textarea, input')).first().waitFor();
    const texts = await page.locator('textarea, input[type=text]').evaluateAll((all) => all.map((one) => one.value));
    assert.ok(texts.some((text) => text.includes('Size of the pump unions: 37 mm.') && text.includes('Maximum pressure: 2.5 bar.')), texts.join('|'));
    await page.getByRole('button', { name: 'Undo: take 2 answers found on a job' }).click();
    await goTo(page, 'Write');
    await page.getByRole('button', { name: /^2 later/ }).click();
    await page.getByRole('heading', { name: '2 values are still to be found out' }).waitFor();
  });
}
