// Undo that outlives a reload, and one procedure in two tabs: one writes, the other shows it and may take over.
import { Write } from './pages/write.mjs';
import { soonOther } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkTabs(tally, screen) {
  await visited(tally, screen, 'reloads and tabs', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await undoAfterReload(place, visit, write);
    await leftAtOnce(place, visit, write);
    await twoTabs(place, visit, write);
  });
}

async function undoAfterReload(place, visit, write) {
  const { page } = visit;
  const n = await write.steps();
  await place.tally.step('after a reload, undo and redo go on where they were', async () => {
    await write.untilKept(() => write.setWords(2, 'Tell the caretaker.'));
    await write.untilKept(() => write.remove(6));
    await write.untilKept(() => write.undo());
    await page.reload();
    await write.counts(n);
    await page.getByRole('button', { name: 'Redo' }).click();
    await write.counts(n - 1);
    await write.undo();
    await page.getByRole('button', { name: 'Undo: change the words of step 2' }).click();
    await write.counts(n);
    await soonOther(() => write.words(2), 'Tell the caretaker.');
  });
}

/** A tablet puts a page away without asking; what was typed last must be on its way by then. */
async function leftAtOnce({ tally }, { page }, write) {
  await tally.step('what was typed is there even if the page is left at once', async () => {
    for (const words of ['Typed and left.', 'Typed and left again.', 'And once more.']) {
      await write.setWords(4, words);
      await page.reload();
      await write.row(4).getByText(words, { exact: true }).waitFor();
    }
    for (let n = 0; n < 3; n += 1) await write.untilKept(() => page.getByRole('button', { name: /^Undo: change the words of step 4/ }).click());
  });
}

async function twoTabs(place, visit, write) {
  const other = await visit.page.context().newPage();
  const second = new Write(other);
  const banner = /^Another tab writes this procedure/;
  await place.tally.step('a second tab shows the procedure and says who writes', async () => {
    await second.open(place.server.address);
    await other.getByText(banner).waitFor();
  });
  await look(place, { ...visit, page: other }, 'write-other-tab');
  await place.tally.step('it follows what the first one writes, and refuses edits', async () => {
    await write.untilKept(() => write.setWords(3, 'Written in the first tab.'));
    await other.getByText('Written in the first tab.').first().waitFor();
    await other.getByRole('button', { name: /^Undo/ }).click();
    await other.getByText(/^Nothing was changed/).waitFor();
  });
  await place.tally.step('it takes over, with undo, and the first one shows', async () => {
    await other.getByRole('button', { name: 'Write here instead' }).click();
    await visit.page.getByText(banner).waitFor();
    await other.getByText(banner).waitFor({ state: 'detached' });
    await second.undo();
    await other.getByText('Written in the first tab.').first().waitFor({ state: 'detached' });
    await visit.page.getByText('Written in the first tab.').first().waitFor({ state: 'detached' });
  });
  await other.close();
  await place.tally.step('once the writing tab is gone, the other takes over', async () => {
    await visit.page.getByRole('button', { name: 'Write here instead' }).click();
    await visit.page.getByText(banner).waitFor({ state: 'detached' });
    await write.untilKept(() => write.setWords(3, 'Written in the first tab again.'));
  });
}
