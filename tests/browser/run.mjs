// The end-to-end tests: node tests/browser/run.mjs, after a build. `./dev test` does both.
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { walkAccepting } from './accepting.mjs';
import { walkAnswers } from './answers.mjs';
import { APPEARANCES } from './appearance.mjs';
import { walkBin } from './bin.mjs';
import { walkBringing } from './bringing.mjs';
import { walkCountry } from './country.mjs';
import { walk } from './journey.mjs';
import { walkKeyboard } from './keyboard.mjs';
import { walkKeyboardStays } from './keyboard_stays.mjs';
import { walkAbsence } from './absence.mjs';
import { walkLanes } from './lanes.mjs';
import { walkLine } from './line.mjs';
import { walkLosing } from './losing.mjs';
import { walkMended } from './mended.mjs';
import { walkMoving } from './moving.mjs';
import { walkDeciding } from './deciding.mjs';
import { walkFetching } from './fetching.mjs';
import { walkFiling } from './filing.mjs';
import { walkFinding } from './finding.mjs';
import { walkFindings } from './findings.mjs';
import { walkFirst } from './first.mjs';
import { walkGoingOn } from './going_on.mjs';
import { walkFromNothing } from './nothing.mjs';
import { walkInSight } from './in_sight.mjs';
import { walkKit } from './kit.mjs';
import { walkOneOfOnesOwn } from './one_of_ones_own.mjs';
import { walkOpeningOver } from './opening_over.mjs';
import { commandLine, page, repository } from './places.mjs';
import { walkPasting } from './pasting.mjs';
import { walkPrinting } from './printing.mjs';
import { walkRemedies } from './remedies.mjs';
import { walkReadings } from './readings.mjs';
import { walkRemembering } from './remembering.mjs';
import { walkRefused } from './refused.mjs';
import { walkRescue } from './rescue.mjs';
import { walkStages } from './stages.mjs';
import { walkStaying } from './staying.mjs';
import { walkSteps } from './steps.mjs';
import { walkTabs } from './tabs.mjs';
import { Tally } from './tally.mjs';
import { walkThings } from './things.mjs';
import { walkToldWhole } from './told_whole.mjs';
import { walkTyping } from './typing.mjs';
import { walkWithin } from './within.mjs';
import { walkWritingOn } from './writing_on.mjs';
import { walkVersions } from './versions.mjs';

const SCREENS = [
  { name: 'desk-1280x800', options: { viewport: { width: 1280, height: 800 } } },
  { name: 'tablet-820x1180', options: { viewport: { width: 820, height: 1180 }, hasTouch: true } },
];

for (const needed of [page, commandLine, repository('tests/browser/node_modules')]) {
  if (!existsSync(needed)) {
    console.error(`${needed} is missing; \`./dev test\` makes it`);
    process.exit(2);
  }
}

/** What is walked on each screen: each in a browser, in a profile and from a server of its own. */
const WALKS = [
  walk,
  walkAnswers,
  walkAbsence,
  walkRemembering,
  walkFirst,
  walkFromNothing,
  walkSteps,
  walkStages,
  walkLosing,
  walkTabs,
  walkRefused,
  walkVersions,
  walkBin,
  walkRescue,
  walkFetching,
  walkStaying,
  walkFiling,
  walkOpeningOver,
  walkOneOfOnesOwn,
  walkThings,
  walkToldWhole,
  walkBringing,
  walkKit,
  walkFinding,
  walkFindings,
  walkCountry,
  walkTyping,
  walkLine,
  walkKeyboard,
  walkKeyboardStays,
  walkReadings,
  walkMended,
  walkGoingOn,
  walkWithin,
  walkWritingOn,
  walkInSight,
  walkPasting,
  walkDeciding,
  walkAccepting,
  walkRemedies,
  walkMoving,
  walkLanes,
  walkPrinting,
];

/** Two walks go at a time where there are two cores: a walk waits for its browser more than it works. */
const AT_ONCE = Math.min(2, availableParallelism());

const tally = new Tally();
// The longest come first, so that no core is without work at the end.
const left = [...APPEARANCES, ...SCREENS.flatMap((screen) => WALKS.map((walk) => (own) => walk(own, screen)))];

/** What was right only when it was walked a second time. */
const unsteady = [];

/** Walks what is left, one after the other; what was wrong is walked once more. */
async function hand() {
  for (let walk = left.shift(); walk; walk = left.shift()) {
    const first = await walked(walk);
    if (!first.wrong) {
      tally.add(first);
      continue;
    }
    console.log('\n  walked once more, to tell what is wrong from what is unsteady:');
    const second = await walked(walk);
    tally.add(second);
    if (!second.wrong) unsteady.push(first.name);
  }
}

/** One walk; what it says is printed when it has ended, so that it stands together. */
async function walked(walk) {
  const lines = [];
  const own = new Tally((line) => lines.push(line));
  await walk(own);
  console.log(lines.join('\n'));
  return own;
}

await Promise.all(Array.from({ length: AT_ONCE }, hand));
const right = tally.close();
if (unsteady.length > 0) console.log(`UNSTEADY, right only at the second walk: ${unsteady.join('; ')}`);
process.exit(right ? 0 : 1);
