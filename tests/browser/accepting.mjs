// A warning is accepted with reason and name, told in its row, and taken back; what rejects cannot be accepted.
import assert from 'node:assert/strict';
import { openRecord } from './device.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkAccepting(tally, screen) {
  await visited(tally, screen, 'accepting', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await accept(place, visit, write);
    await findAgain(place, visit, write);
    await takeBack(place, visit, write);
  });
}

const vague = (page) => page.locator('.finding.warn', { hasText: 'words/vague' }).first();
const form = (page) => page.getByRole('group', { name: 'Accept this warning' });

async function accept(place, visit, write) {
  const { page } = visit;
  await place.tally.step('what rejects has no key to accept it', async () => {
    await page.locator('.finding.reject').first().waitFor();
    await soonEqual(() => page.locator('.finding.reject').getByRole('button', { name: 'Accept …' }).count(), 0);
    await soonEqual(() => page.locator('.finding.advise').getByRole('button', { name: 'Accept …' }).count(), 0);
  });
  await place.tally.step('the doubts stand beside the stamp, and lead past what rejects to their step', async () => {
    await write.setWords(3, 'Write down the duty setting of the old pump properly while it runs.');
    const besides = page.locator('.verdict').getByRole('button', { name: '1 doubt', exact: true });
    await write.selectRow(1);
    await besides.click();
    await page.locator('.row.selected[aria-label="Step 3"]:focus').waitFor();
    // There is one: from behind it the key leads to it again.
    await write.selectRow(5);
    await besides.click();
    await page.locator('.row.selected[aria-label="Step 3"]:focus').waitFor();
  });
  await place.tally.step('a warning is accepted only with reason and name', async () => {
    await vague(page).getByRole('button', { name: 'Accept …' }).click();
    const key = form(page).getByRole('button', { name: 'Accept this warning' });
    await page.waitForFunction(() => document.activeElement?.closest('.accepting'));
    assert.ok(await key.isDisabled());
    await page.keyboard.type('The plate of this pump says it so');
    assert.ok(await key.isDisabled(), 'without a name');
    await page.keyboard.press('Enter');
    await soonEqual(() => page.locator('.finding.accepted').count(), 0);
    await page.keyboard.press('Tab');
    await page.keyboard.type('A. Writer (invented)');
  });
  await look(place, visit, 'write-accepting');
  await place.tally.step('it is told in its row, by whom and why, and the verdict stays', async () => {
    await page.keyboard.press('Enter');
    const told = page.locator('.row', { has: page.locator('.finding.accepted') });
    await soonMatch(() => told.locator('.finding.accepted').innerText(), /Accepted by A\. Writer \(invented\), \d{4}-\d\d-\d\d: The plate of this pump says it so/);
    await soonEqual(() => told.getAttribute('aria-label'), 'Step 3');
    await soonEqual(() => vague(page).count(), 0);
    await soonEqual(() => page.locator('.verdict .besides').count(), 0);
    await write.stamped('REJECTED · 1 to mend');
  });
  await look(place, visit, 'write-told-accepted');
}

async function findAgain(place, visit, write) {
  const { page } = visit;
  await place.tally.step('the head leads to what was accepted, and it is kept with the document', async () => {
    await write.selectRow(1);
    await page.getByRole('button', { name: '1 accepted' }).click();
    await page.locator('.row.end:focus').waitFor();
    const list = page.getByRole('region', { name: 'Accepted warnings' });
    await soonMatch(() => list.innerText(), /Step 3 uses a word.*Accepted by A\. Writer \(invented\).*words\/vague/s);
    await list.getByRole('button', { name: /^Step 3 uses/ }).click();
    await page.locator('.row.selected[aria-label="Step 3"]').waitFor();
    await page.waitForFunction(() => /^kept/.test(document.getElementById('kept').innerText));
    const record = JSON.stringify(await openRecord(page));
    assert.match(record, /The plate of this pump says it so/);
  });
  await page.getByRole('button', { name: '1 accepted' }).click();
  await look(place, visit, 'write-accepted-list');
  await place.tally.step('once the words are mended, what was accepted stands at the end as found no more', async () => {
    await write.setWords(3, 'Write down the duty setting of the old pump while it runs.');
    const end = page.locator('.row.end');
    await end.getByText('This is found no more, and its acceptance can go').waitFor();
    await page.getByRole('button', { name: '1 accepted' }).click();
    await page.locator('.row.end:focus').waitFor();
    await page.getByRole('button', { name: /^Undo: change the words/ }).click();
    await page.locator('.row[aria-label="Step 3"] .finding.accepted').waitFor();
  });
}

async function takeBack(place, visit) {
  const { page } = visit;
  await place.tally.step('it is taken back, and found again; one undo accepts it again', async () => {
    await page.locator('.finding.accepted').first().getByRole('button', { name: 'Take back' }).click();
    await vague(page).waitFor();
    await soonEqual(() => page.locator('.finding.accepted').count(), 0);
    await page.getByRole('button', { name: 'Undo: take back that a warning is accepted' }).click();
    await page.locator('.finding.accepted').waitFor();
    await soonEqual(() => vague(page).count(), 0);
  });
  await place.tally.step('the next one is signed by the same name', async () => {
    await new Write(page).setWords(2, 'Tell the keeper of the building properly that the heating will be off.');
    await vague(page).getByRole('button', { name: 'Accept …' }).click();
    await soonEqual(() => form(page).getByRole('textbox', { name: 'Who says so' }).inputValue(), 'A. Writer (invented)');
    await page.keyboard.press('Escape');
    await form(page).waitFor({ state: 'detached' });
  });
}
