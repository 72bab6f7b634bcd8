// The page Follow as the person on the job sees it: by roles and names.
import assert from 'node:assert/strict';

/** What the main key says, in the order in which a step asks for it. */
const MAIN_KEY = /^(Read: |Seen: |Take it|The hold is lifted|Start the wait|Done, next|Proved again: )/;
/** More than any step of the demo asks for. */
const MOST_PRESSES = 20;
/** Longer than any wait of the demo. */
const LONGEST_WAIT = '01:00:00';

/** What a press changes: the middle of the screen, or the key. */
const shown = () => [...document.querySelectorAll('main, footer')].map((part) => part.innerText).join('\n');

export class Follow {
  #page;

  constructor(page) {
    this.#page = page;
  }

  get #step() {
    return this.#page.getByRole('region', { name: 'Step to do' });
  }

  get #mainKey() {
    return this.#page.getByRole('button', { name: MAIN_KEY });
  }

  get #goOn() {
    return this.#page.getByRole('button', { name: /^Go on/ });
  }

  /** Waits until a step is there to be done; after a break, says first that one goes on. */
  async ready() {
    await this.#step.or(this.#goOn).first().waitFor();
    if ((await this.#goOn.count()) === 0) return;
    await this.#settled();
    await this.#goOn.click();
    await this.#step.waitFor();
  }

  /** The break is shown: where one was, and what is still apart. */
  async resumes() {
    await this.#page.getByRole('heading', { name: 'You were here' }).waitFor();
    await this.#page.getByText(/Still apart: \d+/).first().waitFor();
  }

  /** Begins a procedure that is rejected, with a name and a reason. */
  async startAllTheSame(reason) {
    await this.#page.getByRole('textbox', { name: /write your name and the reason$/ }).fill(reason);
    await this.#page.getByRole('button', { name: 'Start all the same' }).click();
    await this.#step.waitFor();
  }

  /** Answers the question in front. */
  async answer(words) {
    await this.#settled();
    await this.#page.getByRole('group', { name: /\?$/ }).getByRole('button', { name: words, exact: true }).click();
  }

  /** Takes the last tick back, and with it what was answered at it. */
  async undoTick() {
    await this.#page.getByRole('button', { name: 'Undo tick' }).click();
  }

  /** What comes, a line each. */
  coming() {
    return this.#page.getByRole('list', { name: 'Coming' }).getByRole('listitem').allInnerTexts();
  }

  /** How a circuit stands, in words. */
  async circuit(name) {
    const circuits = this.#page.getByRole('list', { name: 'Circuits now' });
    return circuits.getByRole('listitem').filter({ hasText: name }).locator('.state').first().innerText();
  }

  /** After a break: takes the proof in front again, with its readings. */
  async proveAgain() {
    const proof = this.#page.getByRole('button', { name: /^Proved again: / });
    for (let press = 0; press < MOST_PRESSES && !(await proof.isVisible()); press += 1) await this.#press();
    await this.#press();
  }

  /** The number of the step that is to be done now. */
  async current() {
    const heading = await this.#step.getByRole('heading', { level: 1 }).innerText();
    return Number.parseInt(/Step\s+(\d+)/.exec(heading)?.[1] ?? '', 10);
  }

  /** The number of the step that was ticked last; 0 before the first. */
  async lastTicked() {
    const lines = await this.#page.getByText(/Done:\s*\d+/).allInnerTexts();
    return Number.parseInt(/Done:\s*(\d+)/.exec(lines.join(' '))?.[1] ?? '0', 10);
  }

  /** Does the step in front: reads its messages, takes its readings, waits, ticks it. */
  async doStep() {
    const before = await this.current();
    for (let press = 0; press < MOST_PRESSES; press += 1) {
      if (await this.#press()) break;
    }
    await this.#page.waitForFunction(
      (n) => !new RegExp(`Step\\s+${n}:`).test(document.querySelector('section h1')?.innerText ?? ''),
      before,
    );
  }

  /** Goes on until a figure is asked for; ticks what comes before. */
  async untilReading() {
    for (let press = 0; press < 5 * MOST_PRESSES && (await this.asked()) !== 'Take it'; press += 1) await this.#press();
    assert.equal(await this.asked(), 'Take it');
  }

  /** What the main key says. */
  async asked() {
    return (await this.#mainKey.first().innerText()).trim();
  }

  /** Does what the main key asks for; true if that ticked the step. */
  async #press() {
    await this.#settled();
    const asked = await this.asked();
    if (asked === 'Take it') await this.#typeReading();
    const before = await this.#page.evaluate(shown);
    await this.#mainKey.first().click();
    await this.#changedFrom(before);
    if (asked.startsWith('Start the wait')) await this.#waitItOut();
    return asked === 'Done, next';
  }

  async #changedFrom(before) {
    for (let look = 0; look < 200; look += 1) {
      if ((await this.#page.evaluate(shown)) !== before) return;
      await this.#page.waitForTimeout(25);
    }
    assert.fail(`the key did nothing; the screen is still\n${before}`);
  }

  /** Lets the minutes of a wait pass in the page's clock, which the test has taken over. */
  async #waitItOut() {
    const waiting = this.#page.getByRole('button', { name: /^Waiting until/ });
    await waiting.waitFor();
    await this.#page.clock.fastForward(LONGEST_WAIT);
    await waiting.waitFor({ state: 'hidden' });
  }

  async openStop() {
    await this.#page.getByRole('button', { name: 'STOP' }).click();
    await this.#page.getByRole('dialog', { name: 'STOP' }).waitFor();
  }

  async closeStop() {
    await this.#page.getByRole('button', { name: 'Back to the step' }).click();
    await this.#page.getByRole('dialog', { name: 'STOP' }).waitFor({ state: 'hidden' });
  }

  /** A press within 400 ms after the key has changed is ignored, because a wet screen makes such. */
  #settled() {
    return this.#page.waitForTimeout(450);
  }

  /** Types the first figure that the step allows. */
  async #typeReading() {
    const allowed = await this.#page.getByText(/^allowed:/).innerText();
    const figure = /-?\d+(\.\d+)?/.exec(allowed)?.[0] ?? assert.fail(`no figure in "${allowed}"`);
    const pad = this.#page.getByRole('group', { name: 'Keypad' });
    const names = { '.': 'Decimal point', '-': 'Minus' };
    for (const character of figure) {
      await pad.getByRole('button', { name: names[character] ?? character, exact: true }).click();
      // The same key again at once would be a wet screen's.
      await this.#page.waitForTimeout(150);
    }
  }
}
