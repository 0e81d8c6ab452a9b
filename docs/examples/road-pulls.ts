// How much more air does an engine take in cold weather, and how much of that does density explain?
// And the log has a column "intake_air_temp_C": is that the temperature of the charge?
//
// Measured: 85 full-load pulls of one turbocharged four-stroke passenger car on the road, July 2017 to April 2018, ambient -10 to 32 °C.
// Source: Marc Weber, Automotive OBD-II Dataset, Karlsruhe Institute of Technology, 2023, DOI 10.35097/1130, CC BY 4.0; cut into pulls
// and resampled to one row a second. It is read from ../shared/data beside this repository, or from the file named on the command line:
// npx tsx docs/examples/road-pulls.ts road-pulls.csv
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { dryAirDensity } from 'coldside/air';
import { mean } from 'coldside/calculation';
import { compare, type Comparison, type SideResult } from 'coldside/comparison';
import { airPerCycle, chargeDensity, volumetricEfficiencyOnManifoldDensity } from 'coldside/engine';
import { channel, keepRows, onGrid, readLog, setUpOf, type Channels, type Pull } from 'coldside/sweep';
import { absolutePressure, ratio, ratioOf, temperature, volume, type Quantity } from 'coldside/units';

const file = process.argv[2] ?? fileURLToPath(new URL('../../../shared/data/road-pulls.csv', import.meta.url));
if (existsSync(file)) answer(readFileSync(file, 'utf8'));
else
  console.log(
    `Nothing to show: there is no ${file}. Get the data set (DOI 10.35097/1130) or name your own copy of it.`,
  );

function answer(log: string): void {
  console.log('1. What the reader makes of the log, and what it asks');
  const guessed = readLog(log, { file: 'road-pulls.csv' });
  const asked = guessed.filter(({ questions }) => questions.length > 0);
  console.log(`${guessed.length} pulls, a question about ${asked.length}:`);
  //=> 85 pulls, a question about 84:
  console.log(asked[0]?.questions[0]?.message ?? 'no question');
  //=> "intake_air_temp_C" was read as charge temperature, but hardly moves while the engine is on boost: it may sit before the compressor.

  console.log('\n2. From 2400 to 2800 rpm, without the first 2 s of each pull, in which boost still builds');
  const steady = settled(guessed).flatMap(inRange).map(breathing);
  const air = spreadOf(steady.map((pull) => pull.air));
  const perPressure = spreadOf(steady.map((pull) => pull.perPressure));
  console.log(
    `${steady.length} pulls: ${air.mean.toFixed(2)} g of air per cycle, ${percent(air.share)} from pull to pull;`,
  );
  //=> 59 pulls: 4.25 g of air per cycle, 2.0 % from pull to pull;
  console.log(`divided by manifold pressure, ${percent(perPressure.share)}.`);
  //=> divided by manifold pressure, 1.5 %.

  console.log('\n3. If the intake temperature were that of the charge: the swept volume that the air flow would need');
  const ambient = steady.map((pull) => pull.ambient);
  const sweptVolume = lineThrough(
    ambient,
    steady.map((pull) => pull.sweptVolume),
  );
  const breath = lineThrough(
    ambient,
    steady.map((pull) => pull.perPressure),
  );
  console.log(`${sweptVolume(-4.5).toFixed(2)} L in weather of -4.5 °C, ${sweptVolume(25).toFixed(2)} L at 25 °C:`);
  //=> 1.48 L in weather of -4.5 °C, 1.62 L at 25 °C:
  console.log(`${signed(sweptVolume(25) / sweptVolume(-4.5) - 1)}, which no engine does.`);
  //=> +9.8 %, which no engine does.
  console.log(`Air per cycle over manifold pressure moves by ${signed(breath(25) / breath(-4.5) - 1)}.`);
  //=> Air per cycle over manifold pressure moves by -0.9 %.

  console.log('\n4. The same fault as the comparison shows it, with the column taken for charge temperature');
  const wrong = coldAgainstWarm(guessed);
  for (const { factor, percent } of wrong.split?.contributions ?? [])
    console.log(`${factor}: ${signed(percent / 100)}`);
  //=> charge pressure: +1.6 %
  //=> charge temperature: +11.2 %
  //=> volumetric efficiency: -9.0 %
  console.log('Breathing that drops by as much as the temperature gives is the temperature of something else.');

  console.log('\n5. The comparison, told where the sensor sits');
  const told = readLog(log, {
    file: 'road-pulls.csv',
    channels: { intakeTemperature: channel('intake_air_temp_C') },
  });
  const comparison = coldAgainstWarm(told);
  console.log(String(comparison));
  //=> The pulls of “cold weather” took in more air per cycle: +0.117 g (+2.8 %), between +0.035 and +0.200 g, averaged from 2400 to 2800 rpm (95 %). Speed by speed, for the whole curve at once: more air per cycle at 2700 rpm (+0.119 g); elsewhere not resolved.

  console.log('\n6. In words');
  const outside = (side: SideResult): Quantity<'density'> =>
    dryAirDensity({ temperature: meanWeather(side), pressure: absolutePressure(1, 'bar') });
  const denser = ratioOf(outside(comparison.candidate), outside(comparison.baseline)).in('1') - 1;
  const [pressure, rest] = comparison.split!.contributions.map(({ percent }) => percent / 100) as [number, number];
  console.log(
    `The cold air outside was ${percent(denser)} denser, yet the engine took in only ${percent(comparison.relative!)} more.`,
  );
  //=> The cold air outside was 11.3 % denser, yet the engine took in only 2.8 % more.
  console.log(
    `Of that, ${percent(pressure)} is charge pressure, which the turbocharger's control sets, not the weather.`,
  );
  //=> Of that, 1.6 % is charge pressure, which the turbocharger's control sets, not the weather.
  console.log(
    `The ${percent(rest)} left is charge temperature and breathing: without a sensor after the cooler they stay together.`,
  );
  //=> The 1.1 % left is charge temperature and breathing: without a sensor after the cooler they stay together.
  console.log('intake_air_temp_C is not the temperature of the charge: it is measured before the compressor.');
}

/** Without the first 2 s of each pull. */
function settled(pulls: readonly Pull[]): Pull[] {
  return pulls.map((pull) => {
    const seconds = pull.channels.time!.in('s');
    return keepRows(pull, (row) => seconds[row]! >= 2);
  });
}

/** The rows from 2400 to 2800 rpm, where there are at least two. */
function inRange(pull: Pull): Pull[] {
  const isInside = Array.from(pull.channels.engineSpeed!.in('rpm'), (speed) => speed >= 2400 && speed <= 2800);
  return isInside.filter(Boolean).length < 2 ? [] : [keepRows(pull, (row) => isInside[row]!)];
}

/** What one pull says about breathing, with its intake temperature taken for charge temperature. */
function breathing({ channels }: Pull): { ambient: number; air: number; perPressure: number; sweptVolume: number } {
  const { roomTemperature, manifoldPressure, chargeTemperature, airFlow, engineSpeed } = channels as Required<Channels>;
  const flow = { airMassFlow: airFlow, engineSpeed };
  const air = mean(airPerCycle.columns(flow)).in('g');
  const density = chargeDensity.columns({ manifoldPressure, chargeTemperature });
  // On a swept volume of 1 L, volumetric efficiency is the swept volume in litres of an engine that fills completely.
  const filling = volumetricEfficiencyOnManifoldDensity.columns({
    ...flow,
    chargeDensity: density,
    sweptVolume: volume(1, 'L'),
  });
  return {
    ambient: mean(roomTemperature).in('°C'),
    air,
    perPressure: air / mean(manifoldPressure).in('kPa'),
    sweptVolume: mean(filling).in('1'),
  };
}

/**
 * Compares the pulls of cold and of warm weather that reach from 2400 to 2800 rpm. Some are from one trip and share its weather, so the
 * interval is somewhat too narrow; and summer and winter differ by more than temperature.
 */
function coldAgainstWarm(pulls: readonly Pull[]): Comparison {
  const range = { from: 2400, to: 2800, step: 100 };
  const spanning = settled(pulls).filter((pull) => onGrid(pull, range).uncovered === 0);
  const ambient = (pull: Pull): number => mean(pull.channels.roomTemperature!).in('°C');
  const warm = setUpOf(
    'warm weather',
    spanning.filter((pull) => ambient(pull) >= 20),
  );
  const cold = setUpOf(
    'cold weather',
    spanning.filter((pull) => ambient(pull) < 10),
  );
  // On the road the gear and the hill set the ramp, not the tester, and air per cycle hardly depends on it.
  const limits = { rampRate: ratio(5) };
  return compare(warm, cold, { compare: 'air per cycle', engineSpeed: [2400, 2800], limits });
}

/** Mean temperature of the weather over the pulls that count. */
function meanWeather({ pulls }: SideResult): Quantity<'temperature'> {
  const accepted = pulls.filter((pull) => pull.accepted).flatMap(({ channels }) => channels);
  const weather = accepted.flatMap(({ name, mean }) => (name === 'room temperature' ? [mean.si] : []));
  return temperature(spreadOf(weather).mean, 'K');
}

/** Mean, and standard deviation as a share of it. */
function spreadOf(values: readonly number[]): { mean: number; share: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, share: Math.sqrt(squares / (values.length - 1)) / mean };
}

/** Least-squares line. */
function lineThrough(x: readonly number[], y: readonly number[]): (at: number) => number {
  const [middleX, middleY] = [spreadOf(x).mean, spreadOf(y).mean];
  const sxy = x.reduce((sum, each, at) => sum + (each - middleX) * (y[at]! - middleY), 0);
  const sxx = x.reduce((sum, each) => sum + (each - middleX) ** 2, 0);
  return (at) => middleY + (sxy / sxx) * (at - middleX);
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

function signed(share: number): string {
  return `${share > 0 ? '+' : ''}${percent(share)}`;
}
