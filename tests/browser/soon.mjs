// What a page shows a moment after a key: asked again until it is right, as a person would look again.
import assert from 'node:assert/strict';
import { PATIENCE } from './visit.mjs';

/** Asks `get` until `holds` complains no more of what it gives; what it said last is the failure. */
async function soon(get, holds) {
  for (const end = Date.now() + PATIENCE; ; await new Promise((resolve) => setTimeout(resolve, 50))) {
    const is = await get();
    try {
      return holds(is);
    } catch (wrong) {
      if (Date.now() > end) throw wrong;
    }
  }
}

/** What `get` gives becomes `wanted`, to its last part. */
export const soonEqual = (get, wanted, why) => soon(get, (is) => assert.deepEqual(is, wanted, why));

/** What `get` gives comes to match `wanted`. */
export const soonMatch = (get, wanted, why) => soon(get, (is) => assert.match(is, wanted, why));

/** What `get` gives comes to be something else than `unwanted`. */
export const soonOther = (get, unwanted, why) => soon(get, (is) => assert.notDeepEqual(is, unwanted, why));
