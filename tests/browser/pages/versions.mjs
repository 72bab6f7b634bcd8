// The screen Earlier versions as its user sees it: by roles and names.
import { goTo } from './screens.mjs';

export class Versions {
  #page;

  constructor(page) {
    this.#page = page;
  }

  async open() {
    await goTo(this.#page, 'Write');
    await this.#page.getByRole('button', { name: 'Earlier', exact: true }).click();
    await this.#page.getByRole('heading', { name: 'Earlier versions' }).waitFor();
  }

  async back() {
    await this.#page.getByRole('button', { name: 'Back to Write' }).click();
  }

  /** The rows from the present one on, once all of them have been read: when, how many steps, what had changed. */
  async rows() {
    const rows = this.#page.locator('.version');
    await rows.last().getByText('the first that is kept').waitFor();
    const read = (row) => ({
      when: row.querySelector('strong').textContent,
      steps: row.querySelector('.facts').textContent,
      what: row.querySelector('.what').textContent,
    });
    return rows.evaluateAll((rows, read) => rows.map(new Function(`return ${read}`)()), read.toString());
  }

  async look(when) {
    await this.#page.getByRole('button', { name: when }).first().click();
    await this.#page.getByRole('heading', { name: /^As it was/ }).waitFor();
  }

  get #look() {
    return this.#page.getByRole('region', { name: /^As it was/ });
  }

  wouldChange() {
    return this.#look.locator('.would li').allInnerTexts();
  }

  nSteps() {
    return this.#look.locator('.look-step').count();
  }

  /** The steps that are otherwise now: number and mark. */
  async marks() {
    const marked = this.#look.locator('.look-step.differs');
    const numbers = await marked.locator('.number').allInnerTexts();
    const marks = await marked.locator('.mark').allInnerTexts();
    return numbers.map((number, at) => [Number(number), marks[at]]);
  }

  /** For each of them, whether its mark stands within its row, clear of its words. */
  marksInPlace() {
    const isInPlace = (row) => {
      const [of, mark, words] = [row, ...['.mark', '.words'].map((part) => row.querySelector(part))].map((part) => part.getBoundingClientRect());
      const isClear = mark.left >= words.right || mark.top >= words.bottom;
      return isClear && mark.left >= of.left && mark.right <= of.right + 1 && mark.bottom <= of.bottom && mark.width > 60;
    };
    return this.#look.locator('.look-step.differs').evaluateAll((rows, isIn) => rows.map(new Function(`return ${isIn}`)()), isInPlace.toString());
  }

  async bringBack() {
    await this.#page.getByRole('button', { name: 'Bring this version back' }).click();
    await this.#page.locator('li[data-step]').first().waitFor();
  }
}
