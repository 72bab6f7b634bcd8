// The end-to-end tests: node tests/browser/run.mjs, after a build. `./dev test` does both.
import { existsSync } from 'node:fs';
import { walkAccepting } from './accepting.mjs';
import { walkAnswers } from './answers.mjs';
import { walkAppearance } from './appearance.mjs';
import { walkBin } from './bin.mjs';
import { walkBringing } from './bringing.mjs';
import { walkCountry } from './country.mjs';
import { walk } from './journey.mjs';
import { walkKeyboard } from './keyboard.mjs';
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
import { walkKit } from './kit.mjs';
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

const tally = new Tally();
for (const screen of SCREENS) {
  await walk(tally, screen);
  await walkAnswers(tally, screen);
  await walkAbsence(tally, screen);
  await walkRemembering(tally, screen);
  await walkFirst(tally, screen);
  await walkFromNothing(tally, screen);
  await walkSteps(tally, screen);
  await walkStages(tally, screen);
  await walkLosing(tally, screen);
  await walkTabs(tally, screen);
  await walkRefused(tally, screen);
  await walkVersions(tally, screen);
  await walkBin(tally, screen);
  await walkRescue(tally, screen);
  await walkFetching(tally, screen);
  await walkStaying(tally, screen);
  await walkFiling(tally, screen);
  await walkThings(tally, screen);
  await walkBringing(tally, screen);
  await walkKit(tally, screen);
  await walkFinding(tally, screen);
  await walkFindings(tally, screen);
  await walkCountry(tally, screen);
  await walkTyping(tally, screen);
  await walkLine(tally, screen);
  await walkKeyboard(tally, screen);
  await walkReadings(tally, screen);
  await walkMended(tally, screen);
  await walkGoingOn(tally, screen);
  await walkWithin(tally, screen);
  await walkWritingOn(tally, screen);
  await walkPasting(tally, screen);
  await walkDeciding(tally, screen);
  await walkAccepting(tally, screen);
  await walkRemedies(tally, screen);
  await walkMoving(tally, screen);
  await walkLanes(tally, screen);
  await walkPrinting(tally, screen);
}
await walkAppearance(tally);
process.exit(tally.close() ? 0 : 1);
