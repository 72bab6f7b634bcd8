// The page Write as its user sees it: by roles and names.
import assert from 'node:assert/strict';

export class Write {
  #page;

  constructor(page) {
    this.#page = page;
  }

  get #stamp() {
    return this.#page.getByRole('status').filter({ hasText: /^\s*(ACCEPTED|REJECTED)/i });
  }

  get #rows() {
    return this.#page.locator('li[data-step]');
  }

  /** Opens the site; on a first visit, the demo by its key. */
  async open(address) {
    await this.#page.goto(address);
    const first = this.#page.getByRole('button', { name: /^Try it/ });
    await first.or(this.#rows.first()).first().waitFor();
    if ((await first.count()) > 0) await first.click();
    await this.#rows.first().waitFor();
  }

  /** Waits until the stamp begins with this word. */
  async stamped(verdict) {
    await this.#stamp.filter({ hasText: new RegExp(`^\\s*${verdict}`, 'i') }).first().waitFor();
  }

  async steps() {
    return this.#rows.count();
  }

  row(number) {
    return this.#page.getByRole('listitem', { name: `Step ${number}`, exact: true });
  }

  /** The words of a step; they are a field only while the step is selected. */
  async words(number) {
    const field = this.#field(number);
    return (await field.count()) > 0 ? field.inputValue() : this.row(number).locator('.words').textContent();
  }

  #field(number) {
    return this.#page.getByRole('textbox', { name: `Words of step ${number}`, exact: true });
  }

  /** Selects a step, so that its keys and the field of its words are there. */
  async select(number) {
    if ((await this.#field(number).count()) === 0) await this.row(number).locator('.words').click();
    await this.#field(number).click();
  }

  /** Selects a step with the keyboard on its row, not in its words. */
  async selectRow(number) {
    await this.select(number);
    await this.#field(number).press('Escape');
    await this.#page.locator('.row.selected:focus').waitFor();
  }

  /** Waits until there are so many steps. */
  async counts(n) {
    await this.#page.waitForFunction((n) => document.querySelectorAll('li[data-step]').length === n, n);
  }

  /** Replaces the words of a step. */
  async setWords(number, words) {
    await this.select(number);
    await this.#field(number).fill(words);
  }

  /** Types where the keyboard is. */
  async type(text) {
    await this.#page.keyboard.type(text);
  }

  async putBack() {
    await this.#page.getByRole('button', { name: 'Put it back' }).first().click();
  }

  /** Removes a step with the key in its row. */
  async remove(number) {
    await this.select(number);
    await this.row(number).getByRole('button', { name: 'Remove step' }).click();
  }

  async undo() {
    await this.#page.getByRole('button', { name: /^Undo/ }).click();
  }

  /** Writes a step of its own at the end. */
  async append(words) {
    const line = this.#page.getByRole('textbox', { name: 'New step' });
    await line.click();
    await line.pressSequentially(words, { delay: 15 });
    await line.press('Enter');
  }

  /** Writes a step below another, as in the flow of writing. */
  async addBelow(number, words) {
    await this.select(number);
    await this.#page.keyboard.press('Control+Enter');
    const line = this.#page.getByRole('textbox', { name: `Step after ${number}`, exact: true });
    await line.pressSequentially(words, { delay: 15 });
    await line.press('Enter');
  }

  /** The text that says until when everything is kept. */
  async kept() {
    return this.#page.locator('#kept').innerText();
  }

  /** Does something, then waits until the page says of a later moment that everything is kept. */
  async untilKept(act) {
    // Two moments of one second look the same, so every change of the line is watched, not its text alone.
    await this.#page.evaluate(() => {
      const line = document.getElementById('kept');
      globalThis.keptAgain = new Promise((resolve) => {
        const observer = new MutationObserver(() => {
          if (!/^kept \d\d:\d\d:\d\d$/.test(line.innerText.trim())) return;
          observer.disconnect();
          resolve();
        });
        observer.observe(line, { childList: true, characterData: true, subtree: true });
      });
    });
    await act();
    await this.#page.evaluate(
      () => Promise.race([
        globalThis.keptAgain,
        new Promise((_, reject) => setTimeout(() => reject(new Error(document.getElementById('kept')?.innerText)), 10_000)),
      ]),
    );
  }

  /** Saves to a file, and gives its path. */
  async save(to) {
    const [download] = await Promise.all([
      this.#page.waitForEvent('download'),
      this.#page.getByRole('button', { name: 'Save', exact: true }).click(),
    ]);
    assert.match(download.suggestedFilename(), /\.putback\.json$/);
    await download.saveAs(to);
    return to;
  }

  /** Goes to the page Follow. */
  async follow() {
    await this.#page.getByRole('navigation', { name: 'Screens' }).getByRole('button', { name: 'Follow' }).click();
  }

  /** Applies what would mend a finding; on a slow machine it has to be asked for. */
  async mend(text) {
    const finding = this.#page.locator('.finding', { hasText: text }).first();
    const ask = finding.getByRole('button', { name: 'Look for a remedy' });
    const mend = finding.locator('.key.mend');
    await ask.or(mend).waitFor();
    if (await ask.isVisible()) await ask.click();
    await mend.click();
  }
}
