// The tabs, and the screens Procedures and Appliance, as their user sees them: by roles and names.
import assert from 'node:assert/strict';
import { setTimeout } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { Write } from './write.mjs';

/** Goes to a screen by its tab; Follow keeps the tabs behind a key where they have no room. */
export async function goTo(page, screen) {
  const menu = page.getByRole('button', { name: 'Menu', exact: true });
  if (await menu.isVisible()) await menu.click();
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('button', { name: screen, exact: true }).click();
}

/** Begins a procedure, and writes these lines on Write. */
export async function writeNew(page, lines) {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
  await goTo(page, 'Write');
  const write = new Write(page);
  for (const line of lines) await write.append(line);
}

export class Procedures {
  #page;

  constructor(page) {
    this.#page = page;
  }

  async beginNew() {
    await this.#page.getByRole('button', { name: 'New procedure' }).click();
  }

  /** The titles of the list, which has at least one when it has come; those that were removed are left out. */
  async titles() {
    await this.#listed.first().waitFor();
    return this.#listed.allInnerTexts();
  }

  /** Waits until these are the titles of the list, in whatever order: what the device holds is read in its own time. */
  async untilTitles(...wanted) {
    const deadline = performance.now() + 10_000;
    const sorted = wanted.toSorted();
    let found = await this.titles();
    while (!isDeepStrictEqual(found.toSorted(), sorted) && performance.now() < deadline) {
      await setTimeout(50);
      found = await this.titles();
    }
    assert.deepEqual(found.toSorted(), sorted);
  }

  get #listed() {
    return this.#page.locator('#on-device + .shelf strong');
  }

  async do(what, title) {
    await this.#page.getByRole('button', { name: `${what} ${title}`, exact: true }).click();
  }
}

export class Appliance {
  #page;

  constructor(page) {
    this.#page = page;
  }

  async fill(label, text) {
    await this.#page.getByRole('textbox', { name: label, exact: true }).fill(text);
  }

  /** Answers the census: one kind touched, all others not there. */
  async touched(kind) {
    await this.#page.getByRole('group', { name: kind, exact: true }).getByText('touched', { exact: true }).click();
    await this.#page.getByRole('button', { name: /^The other \d+ are not here$/ }).click();
  }

  /** Adds a thing and names it; its sheet stays open. */
  async add(kind, name) {
    await this.#page.getByRole('button', { name: new RegExp(`^Add an? ${kind}$`) }).click();
    await this.rename(name);
    await this.#page.locator('.map-list .thing-row', { hasText: name }).first().waitFor();
  }

  /** Names the open thing. */
  async rename(name) {
    const field = this.#sheet.getByRole('textbox', { name: 'Name', exact: true });
    await field.fill(name);
    await field.press('Enter');
  }

  get #sheet() {
    return this.#page.locator('.map-list .sheet');
  }

  async choose(label, option) {
    await this.#sheet.getByRole('combobox', { name: label, exact: true }).selectOption({ label: option });
  }

  async set(label, text) {
    await this.#sheet.getByRole('textbox', { name: label, exact: true }).fill(text);
  }

  /** Ticks something: in a group, if there are several of the name. */
  async tick(name, group) {
    const within = group ? this.#sheet.getByRole('group', { name: group, exact: true }) : this.#sheet;
    await within.getByRole('checkbox', { name, exact: true }).check();
  }

  /** Types into the line that finds things. */
  async find(text) {
    await this.#page.getByRole('textbox', { name: 'Find a thing' }).fill(text);
  }

  /** The names of the rows that are shown. */
  rows() {
    return this.#page.locator('.map-list .thing-row strong').allInnerTexts();
  }

  /** The row of a thing, which opens and closes its sheet. */
  row(name) {
    return this.#page.locator('.map-list .thing-row').filter({ has: this.#named(name) }).first();
  }

  #named(name) {
    return this.#page.locator('strong', { hasText: new RegExp(`^${name}$`) });
  }

  /** Everything that stands in the row of a thing. */
  line(name) {
    return this.#page.locator('.map-list .thing-line').filter({ has: this.#named(name) }).first();
  }

  /** What a column says of a thing. */
  async says(name, column) {
    const cell = this.line(name).locator('.cell').filter({ has: this.#page.locator('.what', { hasText: new RegExp(`^${column}s?\\s*$`) }) });
    return (await cell.locator('.says').innerText()).trim();
  }

  async open(name) {
    await this.row(name).click();
    await this.#sheet.waitFor();
  }

  /** Picks one of several answers of a group. */
  async pick(group, answer) {
    await this.#sheet.getByRole('group', { name: group, exact: true }).getByRole('radio', { name: answer, exact: true }).check();
  }

  async removeOpen() {
    await this.#sheet.getByRole('button', { name: /^Take this .* out$/ }).click();
  }
}
