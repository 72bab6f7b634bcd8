// The page Follow as the person on the job sees it: by roles and names.
import assert from 'node:assert/strict';

export class Follow {
  #page;

  constructor(page) {
    this.#page = page;
  }

  key(name) {
    return this.#page.getByRole('button', { name });
  }

  /** Waits until a step is there to be done. */
  async ready() {
    await this.key(/^(Done, next|Take it|Read:)/i).first().waitFor();
  }

  /** How many steps are ticked, that is done and kept. */
  async ticks() {
    return this.#page.locator('li[data-ticked]').count();
  }

  /** The number of the step that is to be done now. */
  async current() {
    const current = this.#page.locator('[aria-current="step"]').first();
    return Number.parseInt(await current.getAttribute('data-number'), 10);
  }

  /** Does the step in front: reads its messages, takes its readings, ticks it. */
  async doStep() {
    const before = await this.ticks();
    for (let press = 0; press < 12 && (await this.ticks()) === before; press += 1) {
      await this.#pressOne();
    }
    await this.#page.waitForFunction((n) => document.querySelectorAll('li[data-ticked]').length > n, before);
  }

  async #pressOne() {
    await this.ready();
    for (const name of [/^Read:/i, /^Take it/i, /^Done, next/i]) {
      const key = this.key(name);
      if ((await key.count()) === 0 || !(await key.first().isEnabled())) continue;
      if (name.source.startsWith('^Take')) await this.#enterReading();
      await key.first().click();
      // A second press within 400 ms is ignored, as it should be.
      await this.#page.waitForTimeout(450);
      return;
    }
    assert.fail('no key to go on with');
  }

  async #enterReading() {
    const field = this.#page.getByRole('textbox', { name: /reading/i });
    if ((await field.count()) > 0 && (await field.first().inputValue()) === '') await field.first().fill('0');
  }
}
