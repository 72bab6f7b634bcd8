// The screens and their main states, one after the other, as a visitor of the demo can reach them.
import { Follow } from './pages/follow.mjs';
import { goTo } from './pages/screens.mjs';
import { Versions } from './pages/versions.mjs';
import { Write } from './pages/write.mjs';

/** Shows every state in turn and calls `see(name)` at each. `page` shows the demo of a first visit. */
export async function everyState(page, see) {
  await writing(page, see);
  await others(page, see);
  await following(page, see);
}

async function writing(page, see) {
  const write = new Write(page);
  await see('write-rejected');
  await page.keyboard.press('F9');
  await page.getByRole('dialog', { name: 'All findings' }).waitFor();
  await see('all-findings');
  await page.keyboard.press('Escape');
  await write.putBack();
  await write.stamped('ACCEPTED');
  await see('write-accepted');
  await lapse(page, write, see);
  const line = page.locator('#new-line');
  await line.fill('Undo the two union nuts of the strainer, G 1, 37 mm, then close the valve.');
  await page.locator('.mirror .new').first().waitFor();
  await see('write-line');
  await line.fill('Close the valve.');
  await line.press('Enter');
  await page.locator('.choices').waitFor();
  await see('write-asked');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /^Undo: add step/ }).click();
  const proves = await numberOf(write, /^Prove the box terminals/);
  await write.select(proves);
  await page.locator('.row.selected .token').first().click();
  await see('write-token');
  await page.locator('.row.selected').getByRole('button', { name: 'Details' }).click();
  await see('write-details');
  await page.locator('.row.selected').getByRole('button', { name: 'Details' }).click();
  await page.locator('.row.selected').getByRole('button', { name: 'Move to…' }).click();
  await see('write-places');
  await write.selectRow(proves);
  for (let n = 0; n < 9; n += 1) await page.keyboard.press('Alt+ArrowDown');
  await page.locator('.finding').first().waitFor();
  await see('write-held');
  await page.keyboard.press('Escape');
  await write.stamped('ACCEPTED');
  // Findings that go make the page shorter, and a button at its foot could move away under a pointer.
  await page.keyboard.press('F1');
  const sheet = page.getByRole('dialog', { name: 'Keys of Write' });
  await sheet.waitFor();
  await see('write-keys');
  await sheet.getByRole('button', { name: 'Close', exact: true }).click();
}

/** A proof that no longer holds: closed again, the pump body may fill while somebody waits. */
async function lapse(page, write, see) {
  const proves = await numberOf(write, /^Prove the pump body at zero/);
  await write.addBelow(proves, 'Close the drain cock and the vent screw.');
  const next = page.getByRole('textbox', { name: `Step after ${proves + 1}`, exact: true });
  await next.fill('Wait 60 min.');
  await next.press('Enter');
  await page.locator('li[data-step] .lane .question').first().waitFor();
  await see('write-lapsed');
  await page.keyboard.press('Escape');
  for (let n = 0; n < 2; n += 1) await page.getByRole('button', { name: /^Undo: add step/ }).click();
  await write.stamped('ACCEPTED');
}

async function numberOf(write, words) {
  for (let number = 1; number <= (await write.steps()); number += 1) {
    if (words.test(await write.words(number))) return number;
  }
  throw new Error(`no step says ${words}`);
}

async function others(page, see) {
  await goTo(page, 'Procedures');
  await page.locator('.shelf').first().waitFor();
  await see('procedures');
  await new Versions(page).open();
  await page.locator('button.version').first().click();
  await page.locator('.look-step').first().waitFor();
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await see('versions');
  await goTo(page, 'Write');
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  await page.getByRole('region', { name: 'Page 1 of' }).waitFor();
  await see('print');
  await goTo(page, 'Appliance');
  await page.locator('.map-list .thing-row').first().waitFor();
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await see('appliance');
  await page.locator('.map-list .thing-row').first().click();
  await see('appliance-sheet');
}

async function following(page, see) {
  const follow = new Follow(page);
  await goTo(page, 'Follow');
  await follow.ready();
  await see('follow-step');
  await follow.openStop();
  await see('follow-stop');
  await follow.closeStop();
}
