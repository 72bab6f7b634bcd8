// Counts what passed and what failed, and prints the closing line.

export class Tally {
  #passed = 0;
  #failed = 0;
  #group = '';
  #print;

  /** `print` gets each line as it comes. */
  constructor(print = (line) => console.log(line)) {
    this.#print = print;
  }

  /** Whether something was wrong. */
  get wrong() {
    return this.#failed > 0;
  }

  /** What the journey is called. */
  get name() {
    return this.#group;
  }

  /** Takes over what another one counted. */
  add(other) {
    this.#passed += other.#passed;
    this.#failed += other.#failed;
  }

  /** A journey: its name, and what it does; a step that fails ends it. */
  async journey(name, walk) {
    this.#group = name;
    this.#print(`\n${name}`);
    try {
      await walk();
    } catch (error) {
      if (!(error instanceof Failed)) this.#fail('between two steps', error);
      this.#print('  the rest of this journey was not walked');
    }
  }

  /** A step that the rest of the journey stands on. */
  async step(name, act) {
    if (!(await this.look(name, act))) throw new Failed(name);
  }

  /** Something to look at; the journey goes on if it is wrong. */
  async look(name, act) {
    const start = Date.now();
    try {
      await act();
    } catch (error) {
      this.#fail(name, error);
      return false;
    }
    this.#passed += 1;
    this.#print(`  ok      ${name} (${Date.now() - start} ms)`);
    return true;
  }

  #fail(name, error) {
    this.#failed += 1;
    this.#print(`  FAILED  ${this.#group}: ${name}\n${String(error?.stack ?? error).replace(/^/gm, '          ')}`);
  }

  /** Prints the closing line; true if nothing failed and something passed. */
  close() {
    this.#print(`\n${this.#passed} passed, ${this.#failed} failed`);
    return this.#failed === 0 && this.#passed > 0;
  }
}

class Failed extends Error {}
