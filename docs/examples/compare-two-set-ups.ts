// What was a taller intercooler core worth, how sure is that, and why? And did a duct, or a shorter inlet hose, change anything?
//
// The logs are those of the demo day beside this file (invented; its README says what was planted). For your own logs:
// npm start -- --baseline a1.csv a2.csv --candidate b1.csv b2.csv
import { fileURLToPath } from 'node:url';
import { compare, planTest, rippleFollows, type CompareOptions } from 'coldside/comparison';
import { report } from 'coldside/report';
import { readPulls } from 'coldside/sweep';
import { power } from 'coldside/units';
import { run } from '../../src/bin/program.js';

const ownLogs = process.argv.slice(2);
if (ownLogs.length > 0) {
  process.exitCode = await run(ownLogs, { print: (text) => console.log(text), warn: (text) => console.error(text) });
} else {
  const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

  console.log('Reading the logs of the demo day ...');
  const day = await readPulls(here('demo-data'));
  console.log(String(day));

  // Set before looking at any result: a difference below 2 kW would not be worth the work, and the three comparisons share the chance of
  // error, so that with 95 % all three intervals hold the truth.
  const options: CompareOptions = {
    engineSpeed: [3500, 6500],
    worthwhile: power(2, 'kW'),
    loggedPower: 'observed',
    measuredAt: 'at the hub',
    setUps: 3,
  };
  const answers = [
    compare(day.setup('stock core'), day.setup('tall core'), options),
    compare(day.setup('tall core'), day.setup('tall core + duct'), options),
    compare(day.setup('stock core'), day.setup('short inlet hose'), options),
  ];
  for (const answer of answers) console.log(`\n${String(answer)}`);

  // Is a bump in torque the wastegate hunting? And what would settle the duct?
  console.log(`\n${rippleFollows(day.setup('stock core')).answer}`);
  console.log(`\n${String(planTest(answers[1]!))}`);

  console.log('\nDrawing the report ...');
  const file = here('out/compare-two-set-ups.html');
  await report(answers, { day }).write(file);
  console.log(`Report: ${file}`);
}
